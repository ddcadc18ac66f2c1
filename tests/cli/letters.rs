//! Does a letter that turns or hides text, or commands a terminal, ever reach one?

use std::fs;

use crate::program::{bayrise_in, tall_pickup};

/// Control characters, marks of direction, separators of lines.
const BAD: [char; 8] = [
    '\u{1b}', '\u{9b}', '\u{7}', '\u{202e}', '\u{2066}', '\u{200f}', '\u{61c}', '\u{2028}',
];

fn acts(letter: char) -> bool {
    BAD.contains(&letter) || (letter.is_control() && letter != '\n')
}

#[test]
fn a_name_with_one_is_refused_with_its_place_and_its_cure() {
    let text = fs::read_to_string(tall_pickup()).unwrap();
    let title = text.lines().find(|line| line.contains("title:")).unwrap();
    for bad in BAD {
        let folder = tempfile::tempdir().unwrap();
        // As it is, and as an escape.
        for written in [bad.to_string(), format!("\\u{{{:x}}}", u32::from(bad))] {
            let with = text.replacen(title, &format!("    title: \"A bay{written} here\","), 1);
            fs::write(folder.path().join("bay.ron"), with).unwrap();
            let run = bayrise_in(folder.path(), &["check", "bay.ron"]);
            run.is_refused();
            assert!(run.stderr.contains("bay.ron:"), "{run:?}");
            assert!(run.stderr.contains("remove"), "{run:?}");
            assert!(!run.stderr.chars().any(acts), "{run:?}");
        }
    }
    let with = text.replacen(title, "    title: \"A bay\u{202e} here\",", 1);
    let folder = tempfile::tempdir().unwrap();
    fs::write(folder.path().join("bay.ron"), with).unwrap();
    let run = bayrise_in(folder.path(), &["check", "bay.ron"]);
    assert!(run.stderr.contains("U+202E"), "{run:?}");
}

#[test]
fn a_line_that_is_shown_and_the_name_of_a_file_do_nothing_either() {
    let text = fs::read_to_string(tall_pickup()).unwrap();
    let folder = tempfile::tempdir().unwrap();
    for bad in BAD {
        // A fault whose line holds it in a comment, in a file whose name holds it.
        let with = text.replacen(
            "format: 1,",
            &format!("format: 1, colour: 3, /* {bad}x */"),
            1,
        );
        let name = format!("b{bad}ay.ron");
        fs::write(folder.path().join(&name), with).unwrap();
        for args in [
            ["check", name.as_str()].as_slice(),
            &["check", &format!("no-{name}")],
            &[
                "report",
                tall_pickup().as_str(),
                &format!("no folder{bad}/a.html"),
            ],
        ] {
            let run = bayrise_in(folder.path(), args);
            run.is_refused();
            assert!(!run.stderr.chars().any(acts), "{run:?}");
        }
        let out = format!("p{bad}age.glb");
        let run = bayrise_in(folder.path(), &["model", &tall_pickup(), &out]);
        assert_eq!(run.code, 0, "{run:?}");
        assert!(!run.stdout.chars().any(acts), "{run:?}");
    }
}
