//! What does `bayrise asbuilt` say from outside: of the shipped readings, of wrong ones, of none?

#![allow(clippy::unwrap_used, clippy::panic)] // a failed unwrap here is a failed test

use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).into()
}

fn shipped() -> String {
    fs::read_to_string(root().join("scenes/asbuilt/sail-loft-measured.ron")).unwrap()
}

struct Said {
    code: i32,
    out: String,
    err: String,
}

/// The answer to readings with a bay file of `scenes/asbuilt`.
fn said_of(bay: &str, readings: &str, more: &[&str]) -> Said {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("measured.ron");
    fs::write(&file, readings).unwrap();
    let done = Command::new(env!("CARGO_BIN_EXE_bayrise"))
        .arg("asbuilt")
        .arg(root().join("scenes").join(bay))
        .arg(&file)
        .args(["--on", "2026-06-01"])
        .args(more)
        .output()
        .unwrap();
    Said {
        code: done.status.code().unwrap(),
        out: String::from_utf8(done.stdout).unwrap(),
        err: String::from_utf8(done.stderr).unwrap(),
    }
}

const BAY: &str = "asbuilt/sail-loft.ron";

#[test]
fn the_shipped_readings_leave_a_safe_lock() {
    let said = said_of(BAY, &shipped(), &[]);
    assert_eq!(said.code, 0, "{}{}", said.out, said.err);
    for words in [
        "is the highest safe lock",
        "Left post:",
        "Right post:",
        "Diagonals over the outer corners",
        "For a plumb post",
        "readings ",
        "never",
    ] {
        // Wherever the line breaks.
        let flat = said.out.split_whitespace().collect::<Vec<_>>().join(" ");
        assert!(flat.contains(words.trim()), "{words}: {}", said.out);
    }
    assert_eq!(said.out, said_of(BAY, &shipped(), &[]).out);
}

#[test]
fn a_program_gets_the_same() {
    let said = said_of(BAY, &shipped(), &["--format", "json"]);
    let value: serde_json::Value = serde_json::from_str(&said.out).unwrap();
    assert_eq!(value["schema_version"], 1);
    assert_eq!(value["program_version"], env!("CARGO_PKG_VERSION"));
    for print in ["input_fingerprint", "readings_fingerprint"] {
        assert_eq!(value[print].as_str().unwrap().len(), 16);
    }
    assert_ne!(value["input_fingerprint"], value["readings_fingerprint"]);
    assert!(value["highest_safe_lock"].as_u64().unwrap() > 0);
    assert_eq!(value["posts"].as_array().unwrap().len(), 2);
    let redundancy: f64 = value["readings"]
        .as_array()
        .unwrap()
        .iter()
        .map(|one| one["redundancy"].as_f64().unwrap())
        .sum();
    let spare = value["spare_readings"].as_f64().unwrap();
    assert!((redundancy - spare).abs() < 1e-6, "{redundancy} {spare}");
}

#[test]
fn a_slip_of_the_tape_is_pointed_out_and_nothing_is_called_safe() {
    let text = shipped();
    let line = text
        .lines()
        .find(|line| line.contains("LP1, to: RP4"))
        .unwrap();
    let right: f64 = line
        .split('"')
        .nth(1)
        .unwrap()
        .trim_end_matches(" mm")
        .parse()
        .unwrap();
    let wrong = line.replace(
        &format!("{right:.0} mm"),
        &format!("{:.0} mm", right + 30.0),
    );
    let said = said_of(BAY, &text.replace(line, &wrong), &[]);
    assert_eq!(said.code, 1, "{}", said.out);
    let words = said.out.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(
        words.contains("the reading LP1 to RP4 does not fit the others"),
        "{words}"
    );
    assert!(words.contains("No lock is called safe"), "{words}");
    assert!(!words.contains("is the highest safe lock"), "{words}");
}

#[test]
fn limits_that_are_not_given_are_not_known() {
    let said = said_of("coupe-full-rise.ron", &shipped(), &[]);
    assert_eq!(said.code, 1);
    let words = said.out.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(words.contains("Not known: how far out of plumb the manual lets a column be"));
}

#[test]
fn bad_readings_are_refused_with_place_and_cure() {
    let text = shipped();
    let line = text
        .lines()
        .find(|line| line.contains("LP1, to: RP4"))
        .unwrap();
    let put = |with: &str| text.replace(line, with);
    let bare = |fields: &str| format!("(format: 1, title: \"t\", {fields})");
    let cases = [
        (
            put("(from: LP9, to: RP4, reading: \"3 m\"),"),
            "`LP9` is not a letter",
        ),
        (
            put("(from: LP1, to: RP4, reading: \"-3 m\"),"),
            "must be more than zero",
        ),
        (
            put("(from: LP1, to: RP4, reading: \"9 m\"),"),
            "LP1 to RP4 can't be",
        ),
        (put("(from: LP1, to: RP4),"), "lacks `reading`"),
        (
            put("(from: LP1, to: LP1, reading: \"3 m\"),"),
            "from a mark to itself",
        ),
        (
            put("(from: LP1, to: LP3, reading: \"500 mm\"),"),
            "nothing of where a post stands",
        ),
        (
            put("(from: A, to: C, reading: \"3 m\"),"),
            "nothing of where a post stands",
        ),
        (
            put("(from: LP1, to: RP4, reading: \"3 m\", tolerance: \"1 m\"),"),
            "more than a length can be",
        ),
        (
            text.replace("post: Left, toward: Front", "post: Left, toward: Left"),
            "given twice",
        ),
        (
            text.replace("out: \"3 mm\"", "out: \"280 mm\""),
            "no post is plumbed like this",
        ),
        (
            text.replace("at: RP4, height: \"2 mm\"", "at: RP1, height: \"2 mm\""),
            "given twice",
        ),
        (
            text.replace("at: RP4, height: \"2 mm\"", "at: RP4, height: \"-2 mm\""),
            "can't be negative",
        ),
        (bare(""), "no tape reading"),
        (
            bare("distances: [(from: LP2, to: RP2, reading: \"2660 mm\")]"),
            "do not fix",
        ),
        (text.replace("format: 1,", ""), "does not say its format"),
        (text.replace("format: 1,", "format: 2,"), "newer Bayrise"),
        (String::new(), "the file is empty"),
    ];
    for (readings, expected) in cases {
        let said = said_of(BAY, &readings, &[]);
        assert_eq!(said.code, 2, "{expected}: {}", said.out);
        assert!(said.out.is_empty());
        let words = said.err.split_whitespace().collect::<Vec<_>>().join(" ");
        let words = words.replace(" │ ", " ");
        assert!(words.contains(expected), "{expected}: {}", said.err);
        assert!(words.contains("help"), "{}", said.err);
    }
}
