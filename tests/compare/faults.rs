//! A broken option names its file and line and spoils no other cell.

use bayrise::bayfile::options;
use bayrise::choose::Outcome;

use super::{Files, quick, read, said};

const OPTIONS: &str = r#"(
    format: 1,
    title: "one of them is broken",
    base: "south-bay.ron",
    lifts: [
        (name: "good", lift: (preset: "floor-plate-9-6")),
        (name: "broken", lift: (preset: "floor-plate-9-6", spacing: "9 ft 8 inn")),
        (name: "another", lift: (preset: "tall-columns-12-8")),
    ],
    vehicles: ["large-suv", "saloon"],
    changes: [(name: "pads down", parking: (pad_raise: "0 in"))],
)"#;

#[test]
fn a_broken_option_names_its_line_and_spoils_no_other_cell() {
    let files = Files::shipped();
    let options = read(OPTIONS, &files);
    let matrix = quick(&options, &files);
    let whole = read(&OPTIONS.replace("8 inn", "8 in"), &files);
    let whole = quick(&whole, &files);
    for (cell, good) in matrix.cells.iter().zip(&whole.cells) {
        match &cell.outcome {
            Outcome::Broken(_) => assert_eq!(cell.pick.lift, 1),
            Outcome::Found(found) => {
                assert_ne!(cell.pick.lift, 1);
                let good = good.found().unwrap();
                assert_eq!(found.bay, good.bay);
                assert_eq!(
                    format!("{:?}", found.verdict),
                    format!("{:?}", good.verdict)
                );
            }
            Outcome::NotStudied(why) => panic!("{why}"),
        }
    }
    let faults = matrix.faults();
    assert_eq!(faults.len(), 1, "told once, not once a vehicle");
    let place = faults[0].place.as_ref().unwrap();
    assert_eq!(place.source.name, "options.ron");
    assert_eq!(place.line_column().0, 7);
    assert_eq!(&place.source.text[place.span.clone()], "\"9 ft 8 inn\"");
}

#[test]
fn a_fault_in_a_preset_beside_the_file_names_that_file() {
    let files = Files::shipped().with(
        "mine.ron",
        "(\n    preset: \"saloon\",\n    height: \"no height\",\n)",
    );
    let text = OPTIONS
        .replace("\"saloon\"", "\"mine.ron\"")
        .replace("8 inn", "8 in");
    let matrix = quick(&read(&text, &files), &files);
    let faults = matrix.faults();
    assert_eq!(faults.len(), 1);
    let place = faults[0].place.as_ref().unwrap();
    assert_eq!(
        (place.source.name.as_str(), place.line_column().0),
        ("mine.ron", 3)
    );
    let broken = |cell: &&bayrise::choose::Cell| cell.found().is_none();
    assert_eq!(matrix.cells.iter().filter(broken).count(), 3);
}

/// Faults of one option, with the words that must be said of each.
const ONE_OPTION: [(&str, &str); 7] = [
    ("(nam: \"x\", lift: ())", "did you mean `name`?"),
    (
        "(name: \"x\", lift: (preset: \"flor-plate-9-6\"))",
        "did you mean \"floor-plate-9-6\"?",
    ),
    ("(name: \"x\", name: \"y\")", "`name` is given twice"),
    (
        "(name: \"x\", prices: (lift: \"a lot\"))",
        "a price belongs here",
    ),
    ("(name: \"x\", prices: (lift: -5))", "a price can't be -5"),
    ("(name: \"good\")", "two options are called"),
    ("17", "this is a bare number"),
];

#[test]
fn what_is_wrong_in_one_option_is_told_of_it_alone() {
    let files = Files::shipped();
    for (option, words) in ONE_OPTION {
        let text = OPTIONS.replace(
            "(name: \"broken\", lift: (preset: \"floor-plate-9-6\", spacing: \"9 ft 8 inn\"))",
            option,
        );
        let matrix = quick(&read(&text, &files), &files);
        let faults: Vec<_> = matrix.faults().into_iter().cloned().collect();
        let all = said(&faults);
        let flat = all.split_whitespace().collect::<Vec<_>>().join(" ");
        assert!(flat.contains(words), "{option}: {all}");
        let line = faults[0].place.as_ref().unwrap().line_column().0;
        assert_eq!(line, 7, "{option}");
        for cell in &matrix.cells {
            assert_eq!(cell.found().is_none(), cell.pick.lift == 1, "{option}");
        }
    }
}

#[test]
fn what_leaves_nothing_to_compare_is_refused() {
    let files = Files::shipped();
    for (from, to, words) in [
        ("format: 1", "format: 7", "written by a newer"),
        ("base: \"south-bay.ron\",", "", "lacks `base`"),
        (
            "south-bay.ron",
            "../south-bay.ron",
            "no bay file in the same folder",
        ),
        ("south-bay.ron", "no-such-bay.ron", "there is no bay file"),
        (
            "title: \"one of them is broken\",",
            "title: \"\",",
            "this text is empty",
        ),
        ("lifts: [", "lifs: [", "did you mean `lifts`?"),
        (
            "vehicles: [\"large-suv\", \"saloon\"]",
            "vehicles: 3",
            "a list belongs here",
        ),
        ("lifts: [", "lifts: [(", "expected"),
    ] {
        assert!(OPTIONS.contains(from), "{from}");
        let text = OPTIONS.replace(from, to);
        let faults = options::read("options.ron", text.as_bytes(), &files).unwrap_err();
        let all = said(&faults);
        let flat = all.split_whitespace().collect::<Vec<_>>().join(" ");
        assert!(flat.contains(words), "{to}: {all}");
    }
}
