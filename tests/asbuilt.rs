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
        "Never above: ",
        "top of the base plate",
        "stop when the lower carriage is at its mark",
        "Not known in full, and no pass",
    ] {
        // Wherever the line breaks.
        let flat = said.out.split_whitespace().collect::<Vec<_>>().join(" ");
        assert!(flat.contains(words.trim()), "{words}: {}", said.out);
    }
    assert_eq!(said.out, said_of(BAY, &shipped(), &[]).out);
}

/// One rear corner 2 mm lower than was levelled: the plate rocks, and that is no safe lock.
#[test]
fn no_plate_that_can_rock_is_called_safe() {
    let low = once(&felt("")).replace("at: LP1, height: \"0 mm\"", "at: LP1, height: \"-2 mm\"");
    for within in ["0.2 mm", "1 mm", "5 mm"] {
        let text = low.replace(
            "level_tolerance: \"1 mm\"",
            &format!("level_tolerance: \"{within}\""),
        );
        let said = said_of(BAY, &text, &[]);
        let words = flat(&said.out);
        assert_eq!(said.code, 1, "{words}");
        assert!(words.contains("rocks on two corners"), "{words}");
        assert!(!words.contains("is the highest safe lock"), "{words}");
        assert!(
            words.contains("Its plate rocks, so that nothing checks"),
            "{words}"
        );
    }
}

/// Readings with each plumb as it was read first, and not again.
fn once(text: &str) -> String {
    let mut seen = Vec::new();
    let kept = text.lines().filter(|line| {
        let is_again = line.contains("(post: ") && line.contains("toward: ") && seen.contains(line);
        seen.push(line);
        !is_again
    });
    let kept: Vec<&str> = kept.collect();
    assert_eq!(kept.len() + 4, text.lines().count());
    kept.join("\n")
}

/// The shipped readings with another line, or none, for what was felt under the plates.
fn felt(line: &str) -> String {
    let text = shipped();
    let (before, rest) = text.split_once("    feeler: [").unwrap();
    let (_, after) = rest.split_once("],\n").unwrap();
    format!("{before}{line}\n{after}")
}

fn leaf(post: &str, gap: &str) -> String {
    format!("(post: {post}, gap: \"{gap}\"),")
}

/// Levels of ±1 mm leave room for a gap that tips a column past the limit: not known until somebody
/// feels under the plate.
#[test]
fn a_plate_that_nobody_felt_under_is_not_known_to_stand_still() {
    let none = said_of(BAY, &felt(""), &[]);
    let words = flat(&none.out);
    assert_eq!(none.code, 1, "{words}");
    for side in ["left", "right"] {
        let what =
            format!("Not known: whether the plate of the {side} post rocks: the levels leave");
        assert!(words.contains(&what), "{words}");
    }
    assert!(
        words.contains("try under every corner with a feeler gauge"),
        "{words}"
    );
    assert!(
        words.contains("see that its plate does not rock (above)"),
        "{words}"
    );

    let one = said_of(
        BAY,
        &felt(&format!("feeler: [{}],", leaf("Left", "0.1 mm"))),
        &[],
    );
    let words = flat(&one.out);
    assert_eq!(one.code, 1);
    assert!(
        !words.contains("whether the plate of the left post rocks"),
        "{words}"
    );
    assert!(
        words.contains("whether the plate of the right post rocks"),
        "{words}"
    );

    // Levels fine enough tell it without, and what they leave open counts.
    let fine = felt("").replace("level_tolerance: \"1 mm\"", "level_tolerance: \"0.1 mm\"");
    let fine = fine.replace("at: LP2, height: \"-1 mm\"", "at: LP2, height: \"-0.3 mm\"");
    let fine = fine.replace("at: LP3, height: \"-1 mm\"", "at: LP3, height: \"-0.3 mm\"");
    let said = said_of(BAY, &fine, &[]);
    let words = flat(&said.out);
    assert!(
        !words.contains("whether the plate of the left post rocks"),
        "{words}"
    );
    assert!(
        words.contains("leave no room for a gap over 0.3 mm"),
        "{words}"
    );
}

/// The thicker the leaf that goes in, the more counts, until a column may lean too far.
#[test]
fn what_was_felt_counts() {
    let of = |gap: &str| {
        let line = format!("feeler: [{}{}],", leaf("Left", gap), leaf("Right", gap));
        let said = said_of(BAY, &felt(&line), &["--format", "json"]);
        let value: serde_json::Value = serde_json::from_str(&said.out).unwrap();
        (said.code, value)
    };
    let off = |value: &serde_json::Value| value["posts_off_m"][0].as_f64().unwrap();
    let ((thin_code, thin), (thick_code, thick)) = (of("0.05 mm"), of("0.15 mm"));
    assert_eq!((thin_code, thick_code), (0, 0));
    assert!(
        off(&thick) > off(&thin) + 0.001,
        "{} {}",
        off(&thick),
        off(&thin)
    );
    assert!(thin["beside_lean_m"][0].as_f64().unwrap() < off(&thin));
    let post = &thick["posts"][0];
    assert!((post["felt_m"].as_f64().unwrap() - 0.000_15).abs() < 1e-12);
    assert!((post["rock_gap_m"].as_f64().unwrap() - 0.000_3).abs() < 1e-12);
    assert!(post["rock"][0].as_f64().unwrap() > 0.0);
    let (code, too_thick) = of("0.5 mm");
    assert_eq!(code, 1);
    let says = too_thick["findings"].to_string();
    assert!(says.contains("for what its plate can rock"), "{says}");
}

#[test]
fn a_gap_that_was_levelled_and_not_felt_is_a_contradiction() {
    let text = once(&shipped())
        .replace("at: LP1, height: \"0 mm\"", "at: LP1, height: \"-5 mm\"")
        .replace("level_tolerance: \"1 mm\"", "level_tolerance: \"0.5 mm\"");
    let said = said_of(BAY, &text, &[]);
    let words = flat(&said.out);
    assert_eq!(said.code, 1, "{words}");
    assert!(
        words.contains("and no leaf of 0.10 mm (0.004 in) went in under it"),
        "{words}"
    );
    assert!(words.contains("contradict what was felt"), "{words}");
    let rows: Vec<&str> = said
        .out
        .lines()
        .filter(|row| row.contains("not known"))
        .collect();
    for corner in ["LP1", "LP2", "LP3", "LP4"] {
        assert!(rows.iter().any(|row| row.contains(corner)), "{words}");
    }
}

/// A distance from the door that nothing checks: no bound is told of what hangs on it.
#[test]
fn a_slip_that_nothing_checks_has_no_bound() {
    let mut text = shipped();
    for marks in [
        "from: LP1, to: RP4,",
        "from: LP4, to: RP1,",
        "from: LP2, to: RP3,",
        "from: LP3, to: RP2,",
        "from: C, to: LP2,",
        "from: A, to: LP3,",
        "from: C, to: RP2,",
        "from: B, to: RP3,",
        "from: Door, to: LP1,",
    ] {
        let line = text.lines().find(|line| line.contains(marks)).unwrap();
        text = text.replace(line, "");
    }
    let said = said_of(BAY, &text, &[]);
    let words = flat(&said.out);
    assert_eq!(said.code, 1, "{words}{}", said.err);
    assert!(
        words.contains("any amount into the bay")
            && words.contains(": nothing checks door wall to LP2"),
        "{words}"
    );
    assert!(!flat(&said_of(BAY, &shipped(), &[]).out).contains("any amount"));

    // A program is told the same: no number is a bound there.
    let json = |text: &str| -> serde_json::Value {
        serde_json::from_str(&said_of(BAY, text, &["--format", "json"]).out).unwrap()
    };
    let value = json(&text);
    assert!(value["highest_safe_lock"].is_null());
    let left = &value["posts"][0];
    assert!(left["slip_m"][1].is_null(), "{left}");
    let hangs_on = left["hangs_on"].as_array().unwrap();
    assert!(
        hangs_on.iter().any(|one| one == "door wall to LP2"),
        "{left}"
    );
    for post in json(&shipped())["posts"].as_array().unwrap() {
        assert!(post["slip_m"][0].as_f64().unwrap() > 0.0);
        assert!(post["slip_m"][1].as_f64().unwrap() > 0.0);
        assert!(post["slip_turn_rad"].as_f64().unwrap() > 0.0);
        assert!(post["hangs_on"].as_array().unwrap().is_empty());
    }
    // No post is told to be moved, or left, on it.
    let out = said_of(BAY, &text, &["--format", "json"]).out;
    let said: serde_json::Value = serde_json::from_str(&out).unwrap();
    let to_do = said["posts"][0]["to_do"].as_str().unwrap();
    assert!(
        to_do.contains("not known well enough to move it"),
        "{to_do}"
    );
}

/// The shipped readings with other plumbs.
fn plumbed(lines: &str) -> String {
    let text = shipped();
    let (before, rest) = text.split_once("plumb: [").unwrap();
    let (_, after) = rest.split_once("],").unwrap();
    format!("{before}plumb: [{lines}],{after}")
}

fn plumb(post: &str, toward: &str, out: &str) -> String {
    format!("(post: {post}, toward: {toward}, out: \"{out} mm\", over: \"2400 mm\"),")
}

/// What is said of the left post's place.
fn of_the_left_post(words: &str) -> &str {
    let (_, rest) = words.split_once("Left post: ").unwrap();
    rest.split_once("Known to").unwrap().0
}

#[test]
fn no_post_is_left_whose_plumb_is_open() {
    let right = plumb("Right", "Left", "1") + &plumb("Right", "Rear", "2");
    let across = plumb("Left", "Right", "3");
    let along = plumb("Left", "Front", "1");
    let cases = [
        (
            right.clone(),
            "plumb its column across the bay and along the bay",
        ),
        (right.clone() + &across, "plumb its column along the bay"),
        (right.clone() + &along, "plumb its column across the bay"),
        (
            right.clone() + &across + &along + &plumb("Left", "Left", "4"),
            "clear up whether its column is plumb",
        ),
        (
            right.clone() + &plumb("Left", "Right", "11") + &along,
            "shim its column plumb",
        ),
    ];
    for (lines, first) in cases {
        let said = said_of(BAY, &plumbed(&lines), &[]);
        let words = flat(&said.out);
        let left = of_the_left_post(&words);
        assert_eq!(said.code, 1, "{words}");
        assert!(left.contains(first) && !left.contains("leave it"), "{left}");
    }
    // Plumbed both ways and once more: nothing of that is left to do, only what the posts' distance asks.
    let lines = (right + &across + &along).repeat(2);
    let words = flat(&said_of(BAY, &plumbed(&lines), &[]).out);
    let left = of_the_left_post(&words);
    assert!(
        left.contains("move its plate") && left.contains("to the left"),
        "{words}"
    );
    assert!(!left.contains("plumb") && !left.contains("then"), "{left}");
}

/// Leans that the manual lets a column have, with room: what they do to the height of the pads counts
/// from where the vehicle is on them, and the floor under it does not come nearer before.
#[test]
fn a_lean_that_may_be_keeps_a_vehicle_on_its_tyres_off_the_floor() {
    let lines = [
        plumb("Left", "Right", "4"),
        plumb("Left", "Rear", "3"),
        plumb("Right", "Left", "4"),
        plumb("Right", "Front", "3"),
    ]
    .concat()
    .repeat(2);
    // With the pads raised farther: an arm that leans comes nearer to the sill that its pad carries.
    let bay = fs::read_to_string(root().join("scenes").join(BAY)).unwrap();
    let raised = bay.replace("pad_raise: \"22 mm\"", "pad_raise: \"40 mm\"");
    assert_ne!(raised, bay);
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("raised.ron");
    fs::write(&file, raised).unwrap();
    let said = said_of(file.to_str().unwrap(), &plumbed(&lines), &[]);
    assert_eq!(said.code, 0, "{}", said.out);
    assert!(flat(&said.out).contains("is the highest safe lock"));
}

#[test]
fn each_reading_is_one_line_of_eighty_columns() {
    let said = said_of(BAY, &shipped(), &[]);
    let table = said.out.split_once("Off the fit").unwrap().1;
    let rows: Vec<&str> = table
        .lines()
        .skip(1)
        .take_while(|line| line.starts_with("  "))
        .collect();
    assert_eq!(rows.len(), 18, "{table}");
    for row in rows {
        assert!(row.ends_with("  fits"), "{row}");
        assert!(row.chars().count() <= 80, "{row}");
    }
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
        .chain(value["walls"].as_array().unwrap())
        .map(|one| one["redundancy"].as_f64().unwrap())
        .sum();
    let spare = value["spare_readings"].as_f64().unwrap();
    assert!((redundancy - spare).abs() < 1e-6, "{redundancy} {spare}");
    assert!(value["not_checked"].as_str().unwrap().contains("no pass"));
    assert!(value["marks"]["stop_m"].as_f64().unwrap() > 2.0);
    assert!(value["limits"]["shim_m"].as_f64().unwrap() > 0.0);
    assert!(value["posts"][0]["lean_within"][0].as_f64().unwrap() > 0.0);
}

#[test]
fn the_schema_names_every_field() {
    let done = Command::new(env!("CARGO_BIN_EXE_bayrise"))
        .args(["schema", "--of", "asbuilt"])
        .output()
        .unwrap();
    assert!(done.status.success());
    let schema: serde_json::Value = serde_json::from_slice(&done.stdout).unwrap();
    let said = said_of(BAY, &shipped(), &["--format", "json"]);
    let value: serde_json::Value = serde_json::from_str(&said.out).unwrap();
    let known = schema["properties"].as_object().unwrap();
    let written = value.as_object().unwrap();
    assert_eq!(known.len(), written.len());
    assert!(written.keys().all(|name| known.contains_key(name)));
}

fn flat(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// One post 20 mm ahead, and both turned until the outer diagonals are alike.
#[test]
fn alike_diagonals_do_not_make_square_what_is_not() {
    let mut text = shipped();
    for (marks, reading) in CANCELLING {
        let line = text.lines().find(|line| line.contains(marks)).unwrap();
        let head = line.split("reading:").next().unwrap();
        text = text.replace(line, &format!("{head}reading: \"{reading} mm\"),"));
    }
    let said = said_of(BAY, &text, &["--format", "json"]);
    let value: serde_json::Value = serde_json::from_str(&said.out).unwrap();
    let [one, other] = [0, 1].map(|i| value["diagonals_m"][i].as_f64().unwrap());
    assert!((one - other).abs() < 0.000_5, "{one} {other}");
    assert_eq!(value["square"], false);
    let said = flat(&said_of(BAY, &text, &[]).out);
    assert!(said.contains("the left post stands 20 mm"), "{said}");
    assert!(said.contains("the left post is turned") && said.contains("the right post is turned"));
}

const CANCELLING: [(&str, &str); 18] = [
    ("from: LP2, to: RP2,", "2660.1"),
    ("from: LP3, to: RP3,", "2660.1"),
    ("from: LP1, to: RP4,", "3572.5"),
    ("from: LP4, to: RP1,", "3572.5"),
    ("from: LP2, to: RP3,", "2703.0"),
    ("from: LP3, to: RP2,", "2703.0"),
    ("from: C, to: LP2,", "4195.5"),
    ("from: C, to: RP2,", "4178.2"),
    ("from: A, to: LP3,", "5050.1"),
    ("from: B, to: RP3,", "5033.5"),
    ("from: Door, to: LP1,", "3981.4"),
    ("from: Door, to: LP2,", "3978.6"),
    ("from: Door, to: RP2,", "3961.4"),
    ("from: Door, to: RP1,", "3958.6"),
    ("from: Left, to: LP1,", "1928.5"),
    ("from: Left, to: LP4,", "1931.6"),
    ("from: Right, to: RP1,", "1931.6"),
    ("from: Right, to: RP4,", "1928.5"),
];

/// With a \u{b1} of 40 mm nobody can say that a post stands on its marks.
#[test]
fn a_post_that_is_hardly_known_is_not_to_be_left() {
    let text = shipped().replace("    tolerance: \"2 mm\"", "    tolerance: \"40 mm\"");
    let said = flat(&said_of(BAY, &text, &[]).out);
    assert!(!said.contains("leave it."), "{said}");
    assert!(
        said.contains("not known well enough to move it or to leave it"),
        "{said}"
    );
    assert!(
        said.contains("Whether the posts are square is not known"),
        "{said}"
    );
}

/// A contradiction of the tapes stops every advice to move or to leave a post.
#[test]
fn no_move_is_told_while_a_reading_does_not_fit() {
    let text = shipped().replace("\"3571 mm\"", "\"3601 mm\"");
    let said = flat(&said_of(BAY, &text, &[]).out);
    assert!(said.contains("the places here are without it"), "{said}");
    assert!(said.contains("don't move it yet"), "{said}");
    assert!(
        !said.contains("move its plate") && !said.contains(": leave it"),
        "{said}"
    );
}

#[test]
fn a_missing_file_of_readings_is_named_as_such() {
    let done = Command::new(env!("CARGO_BIN_EXE_bayrise"))
        .arg("asbuilt")
        .arg(root().join("scenes").join(BAY))
        .arg("no-such-readings.ron")
        .output()
        .unwrap();
    assert_eq!(done.status.code(), Some(2));
    let said = flat(&String::from_utf8(done.stderr).unwrap());
    assert!(said.contains("there is no file of readings"), "{said}");
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
            text.replace("tolerance: \"2 mm\"", "tolerance: \"0.000001 mm\""),
            "less than",
        ),
        (
            text.replacen("over: \"2400 mm\"", "over: \"24000 mm\"", 1),
            "can't be plumbed over",
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
        (
            felt(&format!("feeler: [{}],", leaf("Left", "0.001 mm"))),
            "less than",
        ),
        (
            felt(&format!("feeler: [{}],", leaf("Left", "20 mm"))),
            "more than a length can be",
        ),
        (
            felt(&format!(
                "feeler: [{}{}],",
                leaf("Left", "0.1 mm"),
                leaf("Left", "0.2 mm")
            )),
            "what was felt under this plate is given twice",
        ),
        (
            felt("feeler: [(post: Middle, gap: \"0.1 mm\")],"),
            "`Middle` is not a post",
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
