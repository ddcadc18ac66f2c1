//! The program from outside.

use std::path::Path;
use std::process::{Command, Output};

use serde_json::Value;

fn bayrise(args: &[&str]) -> Output {
    Command::new(env!("CARGO_BIN_EXE_bayrise"))
        .current_dir(env!("CARGO_MANIFEST_DIR"))
        .env_remove("CLICOLOR_FORCE")
        .args(args)
        .output()
        .unwrap()
}

fn text(output: &Output) -> String {
    String::from_utf8(output.stdout.clone()).unwrap()
}

const SHORT_OR_TALL: &str = "scenes/compare/short-or-tall.ron";

#[test]
fn the_choice_is_told_in_a_plain_sentence() {
    let run = bayrise(&["compare", SHORT_OR_TALL, "--quick"]);
    assert_eq!(run.status.code(), Some(0), "{run:?}");
    assert_eq!(String::from_utf8_lossy(&run.stderr), "");
    let said = text(&run).split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(
        said.contains("Take short columns (roof opened to 13 ft)"),
        "{said}"
    );
    assert!(said.contains("A raised vehicle kills"), "{said}");
    let run = bayrise(&["compare", "scenes/compare/cheaper-or-dearer.ron", "--quick"]);
    let said = text(&run).split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(
        said.contains("is the cheaper lift ($2,480 against $3,150) but the dearer whole"),
        "{said}"
    );
}

#[test]
fn text_csv_and_json_tell_the_same_and_are_the_same_each_time() {
    let json = bayrise(&["compare", SHORT_OR_TALL, "--format", "json"]);
    assert_eq!(
        json.stdout,
        bayrise(&["compare", SHORT_OR_TALL, "--format", "json"]).stdout
    );
    let json: Value = serde_json::from_str(&text(&json)).unwrap();
    let csv = text(&bayrise(&["compare", SHORT_OR_TALL, "--format", "csv"]));
    let rows: Vec<Vec<&str>> = csv.lines().map(|line| line.split(',').collect()).collect();
    let cells = json["cells"].as_array().unwrap();
    assert_eq!((cells.len(), rows.len()), (8, 9));
    let column = |name: &str| rows[0].iter().position(|head| *head == name).unwrap();
    for (cell, row) in cells.iter().zip(&rows[1..]) {
        assert_eq!(cell["lift"], row[column("lift")]);
        assert_eq!(cell["vehicle"], row[column("vehicle")]);
        let found = &cell["found"];
        let lock = row[column("highest_safe_lock")].parse::<u64>().ok();
        assert_eq!(found["highest_safe_lock"].as_u64(), lock);
        let height = row[column("underbody_m")].parse::<f64>().ok();
        assert_eq!(found["underbody_m"].as_f64(), height);
        let ceiling = row[column("full_rise_ceiling_m")].parse::<f64>().ok();
        assert_eq!(found["inverse"]["full_rise_ceiling_m"].as_f64(), ceiling);
        // No price is empty and null, never 0.
        assert_eq!(row[column("price_in_all")], "");
        assert_eq!(found["cost"]["in_all"], Value::Null);
    }
}

#[test]
fn rows_are_sorted_and_filtered() {
    let rows = |args: &[&str]| -> Vec<String> {
        let all = [
            &["compare", SHORT_OR_TALL, "--quick", "--format", "csv"],
            args,
        ]
        .concat();
        text(&bayrise(&all))
            .lines()
            .skip(1)
            .map(Into::into)
            .collect()
    };
    let by_height = rows(&["--sort", "underbody"]);
    let height = |row: &String| {
        row.split(',')
            .nth(8)
            .unwrap()
            .parse::<f64>()
            .unwrap_or(-1.0)
    };
    assert!(
        by_height
            .windows(2)
            .all(|pair| height(&pair[0]) >= height(&pair[1]))
    );
    assert_eq!(by_height.len(), 8);
    assert_eq!(rows(&["--filter", "safe"]).len(), 6);
    assert_eq!(
        rows(&["--filter", "lift=tall", "--filter", "safe"]).len(),
        2
    );
    assert_eq!(
        rows(&["--filter", "underbody>=5 ft"])
            .iter()
            .filter(|row| height(row) < 1.524)
            .count(),
        0
    );
    // A safe lock is there and its slab is not known in full: it is not dropped without a word.
    let held = bayrise(&[
        "compare",
        SHORT_OR_TALL,
        "--quick",
        "--filter",
        "slab-holds",
    ]);
    let note = String::from_utf8_lossy(&held.stderr).into_owned();
    assert!(note.contains("8 rows are left out by the filter"), "{note}");
    assert_eq!(rows(&["--filter", "slab-not-stopped"]).len(), 8);
    assert_eq!(
        rows(&["--filter", "underbody >= 5 ft"]),
        rows(&["--filter", "underbody>=5 ft"])
    );
    let cost = bayrise(&[
        "compare",
        SHORT_OR_TALL,
        "--quick",
        "--filter",
        "cost <= $9,000",
    ]);
    let note = String::from_utf8_lossy(&cost.stderr).into_owned();
    assert!(note.contains("a price is missing"), "{cost:?}");
    let unknown = bayrise(&[
        "compare",
        SHORT_OR_TALL,
        "--quick",
        "--filter",
        "lift=overhead",
    ]);
    let said = String::from_utf8_lossy(&unknown.stderr).into_owned();
    assert_eq!(unknown.status.code(), Some(2));
    assert!(said.contains("short columns, tall columns"), "{said}");
    for wrong in ["nonsense", "underbody>=tall", "cost<=x", "door=shut"] {
        let run = bayrise(&["compare", SHORT_OR_TALL, "--filter", wrong]);
        assert_eq!(
            (run.status.code(), run.stdout.len()),
            (Some(2), 0),
            "{wrong}"
        );
    }
}

#[test]
fn a_broken_option_is_told_and_the_rest_is_there() {
    let folder = tempfile::tempdir().unwrap();
    let scenes = Path::new(env!("CARGO_MANIFEST_DIR")).join("scenes/compare");
    std::fs::copy(
        scenes.join("south-bay.ron"),
        folder.path().join("south-bay.ron"),
    )
    .unwrap();
    let file = folder.path().join("options.ron");
    let whole = std::fs::read_to_string(scenes.join("short-or-tall.ron")).unwrap();
    std::fs::write(
        &file,
        whole.replace("preset: \"coupe\"", "preset: \"coup\""),
    )
    .unwrap();
    let run = bayrise(&["compare", file.to_str().unwrap(), "--quick"]);
    assert_eq!(run.status.code(), Some(0), "{run:?}");
    let errors = String::from_utf8_lossy(&run.stderr);
    assert!(
        errors.contains("options.ron:2") && errors.contains("coup"),
        "{errors}"
    );
    let said = text(&run);
    assert!(
        said.contains("no answer") && said.contains("12 of 17"),
        "{said}"
    );
    let csv = bayrise(&[
        "compare",
        file.to_str().unwrap(),
        "--quick",
        "--format",
        "csv",
    ]);
    let broken = text(&csv)
        .lines()
        .filter(|row| row.contains(",broken,") && row.contains("coup"))
        .count();
    assert_eq!(broken, 4);
    let json = bayrise(&[
        "compare",
        file.to_str().unwrap(),
        "--quick",
        "--format",
        "json",
    ]);
    let json: Value = serde_json::from_str(&text(&json)).unwrap();
    for cell in json["cells"].as_array().unwrap() {
        let is_broken = cell["outcome"] == "broken";
        assert_eq!(
            cell["why"].as_str().is_some_and(|why| why.contains("coup")),
            is_broken
        );
        assert_eq!(cell["faults"][0]["line"].is_number(), is_broken);
        let is_withheld = cell["found"]["limit"] == "withheld";
        assert_eq!(
            cell["found"]["withheld"][0].is_string(),
            is_withheld,
            "{cell}"
        );
    }
    // Nothing left to compare: refused as a bay file is.
    std::fs::write(
        &file,
        whole
            .replace("garage: (ceiling", "garage: (cieling")
            .replace("\"ceiling as it is\"", "\"a\", garage: (cieling: 1)"),
    )
    .unwrap();
    let run = bayrise(&["compare", file.to_str().unwrap()]);
    assert_eq!(
        (run.status.code(), run.stdout.len()),
        (Some(2), 0),
        "{run:?}"
    );
}
