//! The JSON report on hand-made studies.

use serde_json::{Value, json};

use super::super::sample;
use super::*;
use crate::clearance::Study;
use crate::report::{Need, judge};
use crate::solids::test_bay::test_bay;

fn report(study: &Study) -> Value {
    let needs = [judge(study, Need::Lock(4))];
    let report = Report {
        bay: &test_bay(),
        study,
        warnings: &[],
        needs: &needs,
        fingerprint: "0123456789abcdef",
        day: None,
    };
    serde_json::to_value(CheckReport::new(&report)).unwrap()
}

#[test]
fn keys_of_the_verdict() {
    let value = report(&sample::study());
    let verdict = &value["verdict"];
    assert_eq!(value["schema_version"], 3);
    assert_eq!(verdict["highest_safe_lock"], 3);
    assert_eq!(verdict["holds_from"], Value::Null);
    assert_eq!(verdict["highest_clear_lock"], 3);
    assert_eq!(verdict["withheld"], json!([]));
    assert_eq!(verdict["unknown"][0]["check"], "vehicle_mass");
    assert_eq!(verdict["pad_height_m"], 0.6858);
    assert_eq!(verdict["stop_mark_m"], 1.4351);
    assert_eq!(verdict["never_above_m"], 1.547_812);
    assert_eq!(verdict["full_rise"], false);
    assert_eq!(
        verdict["limited_by"],
        json!({
            "kind": "pair",
            "moving": "vehicle/roof 3",
            "fixed": "door/panel 4",
            "margin_m": 0.0762,
            "first_breach_m": 0.6604,
            "first_touch_m": 0.7366,
            "points_m": [[0.1, 3.0, 2.6], [0.1, 3.0, 2.6762]],
            "travel_m": null,
        })
    );
    assert_eq!(value["program"]["input_fingerprint"], "0123456789abcdef");
    assert_eq!(value["locks"][1]["state"], "clear");
    assert_eq!(
        value["locks"][1]["between"],
        json!(["vehicle/roof 3", "door/panel 4"])
    );
    // 0.2000007 m is not promised as 0.200001.
    assert_eq!(value["locks"][1]["clearance_m"], 0.2);
    assert_eq!(value["locks"][0]["between"], Value::Null);
    assert_eq!(value["doors"]["shut"]["highest_safe_lock"], 5);
    assert_eq!(value["doors"]["running"]["highest_clear_lock"], Value::Null);
    assert_eq!(value["warnings"], json!([]));
    assert_eq!(value["needs"][0]["met"], false);
    assert_eq!(value["needs"][0]["short_locks"], 1);
    assert_eq!(
        value["cautions"].as_array().map(Vec::len),
        Some(crate::report::CAUTIONS.len())
    );
}

#[test]
fn a_withheld_lock_gives_no_mark_and_no_height() {
    let value = report(&sample::withheld());
    let verdict = &value["verdict"];
    assert_eq!(verdict["highest_safe_lock"], Value::Null);
    assert_eq!(verdict["highest_clear_lock"], 3);
    assert_eq!(verdict["limited_by"]["kind"], "withheld");
    for key in ["pad_height_m", "stop_mark_m", "never_above_m"] {
        assert_eq!(verdict[key], Value::Null, "{key}");
    }
    assert_eq!(verdict["withheld"][0]["reason"], "arm_does_not_reach");
    assert_eq!(verdict["withheld"][0]["short_m"], 0.02);
    assert_eq!(verdict["withheld"][0]["about"], json!(["rear left"]));
}

#[test]
fn what_is_no_number_is_null() {
    let mut study = sample::study();
    study.locks[2].underbody_m = f64::NAN;
    study.phases.lift_off_m[0] = f64::INFINITY;
    let value = report(&study);
    assert_eq!(value["locks"][2]["underbody_m"], Value::Null);
    assert_eq!(value["phases"]["lift_off_m"][0], Value::Null);
}

#[test]
fn every_field_of_the_schema_is_described() {
    let schema = schema().to_value();
    let mut bare = Vec::new();
    let mut seen = 0;
    walk("report", &schema, &mut bare, &mut seen);
    assert!(seen > 100, "{seen}");
    assert!(bare.is_empty(), "{bare:?}");
}

fn walk(path: &str, value: &Value, bare: &mut Vec<String>, seen: &mut usize) {
    let Value::Object(object) = value else { return };
    if let Some(Value::Object(properties)) = object.get("properties") {
        for (name, property) in properties {
            *seen += 1;
            if property["description"].as_str().is_none_or(str::is_empty) {
                bare.push(format!("{path}.{name}"));
            }
        }
    }
    for (name, inner) in object {
        walk(&format!("{path}/{name}"), inner, bare, seen);
    }
}
