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

#[test]
fn an_answer_says_its_day_where_a_day_counts() {
    let folder = bay("poured: \"2026-11-25\",");
    let check = |on: &str| {
        let args = ["check", "bay.ron", "--format", "json", "--on", on];
        let run = bayrise_in(folder.path(), &args);
        let report: Value = serde_json::from_str(&run.stdout).unwrap();
        let program = &report["program"];
        assert_eq!(program["ages_counted_to"], on);
        program["input_fingerprint"].as_str().unwrap().to_owned()
    };
    // While it is young each day gives an answer of its own; from the first raise on it is settled.
    let young = [check("2026-11-28"), check("2026-11-29")];
    let settled = [
        check("2027-11-05"),
        check("2027-11-06"),
        check("2031-01-01"),
    ];
    assert_ne!(young[0], young[1]);
    assert_ne!(young[1], settled[0]);
    assert!(settled.iter().all(|one| *one == settled[0]), "{settled:?}");

    let on = ["--on", "2027-11-05"];
    for command in ["check", "plan"] {
        let run = bayrise_in(folder.path(), &[command, "bay.ron", on[0], on[1]]);
        let text = "Holds from 2027-11-05 only; not before";
        assert!(run.stdout.contains(text), "{run:?}");
        let again = bayrise_in(folder.path(), &[command, "bay.ron", on[0], on[1]]);
        assert_eq!(run.stdout, again.stdout);
    }
    for command in ["card", "record", "layout"] {
        let out = format!("{command}.svg");
        bayrise_in(folder.path(), &[command, "bay.ron", &out, on[0], on[1]]);
        let page = fs::read_to_string(folder.path().join(&out)).unwrap();
        assert!(page.contains("HOLDS FROM 2027-11-05 ONLY"), "{command}");
        let is_large = command == "layout" || page.contains("Holds from 2027-11-05 only");
        assert!(is_large, "{command}");
    }
    bayrise_in(
        folder.path(),
        &["report", "bay.ron", "bay.html", on[0], on[1]],
    );
    let page = fs::read_to_string(folder.path().join("bay.html")).unwrap();
    assert!(page.contains("<p class=\"bad\">Holds from 2027-11-05 only; not before.</p>"));
    bayrise_in(
        folder.path(),
        &["model", "bay.ron", "bay.glb", on[0], on[1]],
    );
    let model = fs::read(folder.path().join("bay.glb")).unwrap();
    let model = String::from_utf8_lossy(&model);
    assert!(model.contains("\"ages_counted_to\":\"2027-11-05\""));

    // Nobody asked for a day: it is said, and nothing is large.
    let run = bayrise_in(folder.path(), &["check", "bay.ron"]);
    assert!(run.stdout.contains("Ages counted to 20"), "{run:?}");
    assert!(!run.stdout.contains("Holds from"), "{run:?}");
}

#[test]
fn where_nothing_hangs_on_a_day_none_is_said() {
    let folder = tempfile::tempdir().unwrap();
    let text = fs::read_to_string(scene("tall-pickup")).unwrap();
    assert!(!text.contains("poured:") && !text.contains("age_days:"));
    fs::write(folder.path().join("bay.ron"), text).unwrap();
    let texts = ["2026-11-28", "2031-01-01"].map(|on| {
        ["check", "plan"]
            .map(|command| bayrise_in(folder.path(), &[command, "bay.ron", "--on", on]).stdout)
    });
    assert_eq!(texts[0], texts[1]);
    assert!(!texts[0][0].contains("2026-11-28") && !texts[0][0].contains("Ages"));
}
