//! Is a verdict that holds on a later day never taken for one of today?

use std::fs;

use serde_json::Value;

use crate::program::{bayrise_in, scene};

/// The scene whose anchors are on paper, poured on a day, with a day of the first raise.
fn bay(poured: &str) -> tempfile::TempDir {
    let folder = tempfile::tempdir().unwrap();
    let text = fs::read_to_string(scene("anchors-on-paper")).unwrap();
    let changed = text.replace(
        "poured: \"1968-06-01\",",
        &format!("{poured} curing: Moist, load_on: \"2027-11-05\","),
    );
    assert_ne!(text, changed);
    fs::write(folder.path().join("bay.ron"), changed).unwrap();
    folder
}

const TODAY: [&str; 2] = ["--on", "2026-11-28"];

#[test]
fn every_answer_says_not_yet() {
    for poured in ["age_days: 3,", "poured: \"2026-11-25\","] {
        let folder = bay(poured);
        let run = |args: &[&str]| bayrise_in(folder.path(), &[args, &TODAY].concat());
        let words = |text: &str| text.split_whitespace().collect::<Vec<_>>().join(" ");

        let text = run(&["check", "bay.ron"]);
        assert_eq!(text.code, 1);
        let said = words(&text.stdout);
        assert!(!said.contains("is the highest safe lock"), "{said}");
        assert!(said.contains("are counted as of 2027-11-05"), "{said}");

        let json = run(&["check", "bay.ron", "--format", "json", "--need-lock", "1"]);
        assert_eq!(json.code, 1);
        let report: Value = serde_json::from_str(&json.stdout).unwrap();
        let verdict = &report["verdict"];
        assert_eq!(verdict["highest_safe_lock"], Value::Null);
        assert_eq!(verdict["holds_from"], "2027-11-05");
        let withheld = verdict["withheld"].as_array().unwrap();
        assert_eq!(withheld.len(), 1, "{withheld:?}");
        assert!(withheld[0]["says"].as_str().unwrap().contains("2027-11-05"));
        assert_eq!(report["needs"][0]["met"], false);

        let plan = run(&["plan", "bay.ron"]);
        assert_eq!(plan.code, 1);
        let said = words(&plan.stdout);
        let slab = said.find("slab: Not yet: ").unwrap();
        let line = &said[slab..slab + 400];
        assert!(line.contains("2027-11-05") && line.contains("nothing is drilled before 2026-12-"));
    }
}

#[test]
fn on_the_day_itself_it_holds() {
    let folder = bay("poured: \"2026-11-25\",");
    let args = ["check", "bay.ron", "--format", "json", "--on", "2027-11-05"];
    let run = bayrise_in(folder.path(), &args);
    assert_eq!(run.code, 0, "{run:?}");
    let report: Value = serde_json::from_str(&run.stdout).unwrap();
    assert!(report["verdict"]["highest_safe_lock"].is_u64());
    assert_eq!(report["verdict"]["holds_from"], Value::Null);
}
