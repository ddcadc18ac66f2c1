//! The form to measure by, and its questions on a terminal that is none.

use std::fs;
use std::io::Write as _;
use std::path::Path;
use std::process::Stdio;

use crate::program::{Run, bayrise, bayrise_in, command, scene};

/// Runs `new OUT --ask` with these lines as a file of answers.
fn ask(folder: &Path, more: &[&str], lines: &str) -> Run {
    ask_bytes(folder, more, lines.as_bytes())
}

fn ask_bytes(folder: &Path, more: &[&str], lines: &[u8]) -> Run {
    let mut child = command()
        .current_dir(folder)
        .args([&["new", "my bay.ron", "--ask"], more].concat())
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    // A program that needs no more lines closes its end.
    let _ = child.stdin.take().unwrap().write_all(lines);
    let output = child.wait_with_output().unwrap();
    Run {
        code: output.status.code().unwrap(),
        stdout: String::from_utf8(output.stdout).unwrap(),
        stderr: String::from_utf8(output.stderr).unwrap(),
    }
}

/// Enter alone to every question and more, and then the word.
fn all_empty() -> String {
    format!("{}write\n", "\n".repeat(400))
}

#[test]
fn the_form_is_written_on_letter_and_a4_as_pdf_and_svg_the_same_every_time() {
    let folder = tempfile::tempdir().unwrap();
    let read = |name: &str| fs::read(folder.path().join(name)).unwrap();
    for (out, paper) in [("a.pdf", "letter"), ("b.pdf", "a4"), ("c.pdf", "a4")] {
        let run = bayrise_in(folder.path(), &["worksheet", out, "--paper", paper]);
        assert_eq!((run.code, run.stderr.as_str()), (0, ""), "{run:?}");
        assert!(run.stdout.contains("pages"), "{run:?}");
    }
    assert_eq!(read("b.pdf"), read("c.pdf"));
    assert_ne!(read("a.pdf"), read("b.pdf"));
    let run = bayrise_in(folder.path(), &["worksheet", "f.svg"]);
    assert_eq!(run.code, 0, "{run:?}");
    assert!(folder.path().join("f-2.svg").exists());
    for bad in ["f.dxf", "f.txt", "f", "no folder/f.pdf"] {
        bayrise_in(folder.path(), &["worksheet", bad]).is_refused();
    }
    bayrise_in(folder.path(), &["worksheet", "f.pdf", "--paper", "b5"]).is_refused();
}

#[test]
fn enter_alone_to_everything_makes_a_bay_that_says_what_is_not_measured() {
    let folder = tempfile::tempdir().unwrap();
    let run = ask(folder.path(), &[], &all_empty());
    assert_eq!(run.code, 0, "{run:?}");
    assert!(run.stdout.contains("NOT MEASURED"), "{}", run.stdout);
    assert!(
        run.stdout.contains("bayrise check \"my bay.ron\""),
        "{}",
        run.stdout
    );
    let check = bayrise_in(folder.path(), &["check", "my bay.ron"]);
    // Whatever its title says: no lock is called safe, in the sentence that gives the verdict.
    assert_eq!((check.code, check.stderr.as_str()), (1, ""), "{check:?}");
    let verdict = check.stdout.split_once("\n\n").unwrap().1;
    assert!(verdict.contains("no lock is called safe") || verdict.starts_with("No lock is safe"));
    assert!(
        verdict
            .split("To cure it")
            .next()
            .unwrap()
            .contains("NOT MEASURED")
    );
    let json = bayrise_in(folder.path(), &["check", "my bay.ron", "--format", "json"]);
    assert!(
        json.stdout.contains("\"reason\": \"not_measured\""),
        "{}",
        json.stdout
    );
    assert!(
        check
            .stdout
            .lines()
            .next()
            .unwrap()
            .contains("NOT MEASURED")
    );
}

#[test]
fn a_question_mark_is_no_answer_and_how_a_choice_was_understood_is_told() {
    let folder = tempfile::tempdir().unwrap();
    let lines = format!("?\nThe shed\nmet\n\n3 m\n<\n3005 mm\n{}", all_empty());
    let run = ask(folder.path(), &[], &lines);
    assert_eq!(run.code, 0, "{run:?}");
    assert!(run.stderr.contains("headed with") && run.stderr.contains("taken: metric"));
    let text = fs::read_to_string(folder.path().join("my bay.ron")).unwrap();
    assert!(text.contains("title: \"The shed (") && text.contains("width: \"3005 mm\",\n"));
}

/// Refused, with one error at the end that has all of these words, and nothing written.
fn is_ended(folder: &Path, lines: &[u8], words: &[&str]) {
    let run = ask_bytes(folder, &[], lines);
    run.is_refused();
    assert_eq!(fs::read_dir(folder).unwrap().count(), 0);
    assert_eq!(run.stderr.matches("error: ").count(), 1, "{}", run.stderr);
    assert!(!run.stderr.contains("not taken: "), "{}", run.stderr);
    let error = run.stderr.split("error: ").nth(1).unwrap();
    for word in words {
        assert!(error.contains(word), "{word}: {error}");
    }
    assert!(error.contains("othing is written"), "{error}");
}

#[test]
fn the_first_line_of_a_file_that_is_not_taken_ends_it() {
    let folder = tempfile::tempdir().unwrap();
    // Title, units, who; then the opening's width without a unit.
    let lines = format!("The shed\nmetric\n\n10\n3005 mm\n{}", all_empty());
    let at = "line 4 of the answers (10) is not taken for question 2.1, Opening: clear width: ";
    is_ended(
        folder.path(),
        lines.as_bytes(),
        &[at, "needs a unit", "\n  help: "],
    );
    // Of a thing in a list, with its number.
    let lines = format!("{}lamp\nlantern\n{}", "\n".repeat(13), all_empty());
    let run = ask(folder.path(), &[], &lines);
    assert!(
        run.stderr
            .contains("line 15 of the answers (lantern) is not taken for question 5.2, thing in the room 1: Kind"),
        "{run:?}"
    );
    // After the last question.
    let lines = format!("{}writ\nwrite\n", "\n".repeat(400));
    let at = "line 401 of the answers (writ) is not taken for the word write: ";
    is_ended(
        folder.path(),
        lines.as_bytes(),
        &[at, "none of the choices"],
    );
}

#[test]
fn answers_of_a_file_that_do_not_go_together_end_it_and_are_named() {
    let folder = tempfile::tempdir().unwrap();
    let lines = format!("\n\n\n30 ft\n{}24 ft\n{}", "\n".repeat(4), all_empty());
    let run = ask(folder.path(), &[], &lines);
    let at = run.stderr.matches("3.1  Width").count();
    assert_eq!(at, 1, "asked once: {}", run.stderr);
    is_ended(
        folder.path(),
        lines.as_bytes(),
        &[
            "line 12 of the answers (empty), for question 3.18",
            "ends its section, and the answers don't go together: the door opening is wider than its wall",
            "2.1 (Opening: clear width): 30 ft",
            "3.1 (Width, wall to wall): 24 ft",
        ],
    );
}

#[test]
fn a_line_of_a_file_that_is_overlong_or_no_text_ends_it() {
    let folder = tempfile::tempdir().unwrap();
    for filler in [4096, 4095, 8192] {
        let long = format!("{}3 m", "x".repeat(filler));
        let lines = format!("The shed\nmetric\n\n{long}\n3005 mm\n{}", all_empty());
        is_ended(
            folder.path(),
            lines.as_bytes(),
            &["line 4 of the answers (xxx", "is no answer"],
        );
    }
    let lines = [b"The shed\n\xff\xfe\n", all_empty().as_bytes()].concat();
    is_ended(
        folder.path(),
        &lines,
        &[
            "line 2 of the answers",
            "question 1.2, How lengths",
            "UTF-8",
        ],
    );
}

#[test]
fn where_the_answers_end_early_nothing_is_written() {
    let folder = tempfile::tempdir().unwrap();
    for lines in [
        "",
        "The shed\n",
        "The shed\nmetric\n\n3 m",
        &"\n".repeat(20),
    ] {
        let run = ask(folder.path(), &[], lines);
        run.is_refused();
        assert!(
            run.stderr.contains("the answers end before question"),
            "{}",
            run.stderr
        );
        assert_eq!(fs::read_dir(folder.path()).unwrap().count(), 0);
    }
}

#[test]
fn nothing_is_written_before_the_word_and_one_answer_can_be_changed() {
    let folder = tempfile::tempdir().unwrap();
    let answers = format!("The shed\nmetric\n\n3005 mm\n{}", "\n".repeat(400));
    // All is answered, and nobody says what is to become of it.
    for end in ["", "change 2.1\n", "change 2.1\n3006 mm\n", "writ\n"] {
        let run = ask(folder.path(), &[], &format!("{answers}{end}"));
        run.is_refused();
        assert!(run.stderr.contains("WHAT YOU ANSWERED"), "{}", run.stderr);
        assert!(run.stderr.contains("nothing is written"), "{}", run.stderr);
        assert_eq!(fs::read_dir(folder.path()).unwrap().count(), 0);
    }
    let run = ask(folder.path(), &[], &format!("{answers}stop\nwrite\n"));
    assert_eq!((run.code, run.stdout.as_str()), (1, ""), "{run:?}");
    assert!(run.stderr.ends_with("stopped: nothing is written\n"));
    assert_eq!(fs::read_dir(folder.path()).unwrap().count(), 0);
    // Shown again after each change, in the order of the walk, with what is not measured.
    let lines = format!("{answers}change 2.5\nnone\nchange 2.1\n9 ft\nwrite\n");
    let run = ask(folder.path(), &[], &lines);
    assert_eq!(run.code, 0, "{run:?}");
    let shown: Vec<&str> = run.stderr.split("WHAT YOU ANSWERED").skip(1).collect();
    assert_eq!(shown.len(), 3);
    assert!(shown[0].contains("2.1 3005 mm "), "{}", shown[0]);
    assert!(shown[0].contains("NOT KNOWN: 2.2 to 2.5\n"), "{}", shown[0]);
    assert!(shown[1].contains("2.5 none\n"), "{}", shown[1]);
    assert!(shown[2].contains("2.1 9 ft "));
    assert!(shown[2].contains("NOT MEASURED, and no lock is called safe"));
    let text = fs::read_to_string(folder.path().join("my bay.ron")).unwrap();
    assert!(
        text.contains("door: None") && text.contains("width: \"9 ft\","),
        "{text}"
    );
    assert!(!text.contains("3005 mm"));
}

#[test]
fn a_file_that_is_there_is_refused_before_anything_is_asked() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("my bay.ron");
    fs::write(&path, "mine").unwrap();
    let run = ask(folder.path(), &[], &all_empty());
    run.is_refused();
    assert!(run.stderr.contains("it is there already") && !run.stderr.contains("1.1"));
    assert_eq!(fs::read_to_string(&path).unwrap(), "mine");
    assert_eq!(ask(folder.path(), &["--force"], &all_empty()).code, 0);
    assert_ne!(fs::read_to_string(&path).unwrap(), "mine");
    assert_eq!(fs::read_dir(folder.path()).unwrap().count(), 1);
}

#[cfg(unix)]
#[test]
fn stopped_in_the_middle_it_leaves_nothing_behind() {
    let folder = tempfile::tempdir().unwrap();
    let mut child = command()
        .current_dir(folder.path())
        .args(["new", "bay.ron", "--ask"])
        .stdin(Stdio::piped())
        .stdout(Stdio::null())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    child
        .stdin
        .as_mut()
        .unwrap()
        .write_all(b"The shed\nmetric\n")
        .unwrap();
    // It waits for the next line now, or is about to; either way nothing may be left.
    let stop = std::process::Command::new("kill")
        .args(["-INT", &child.id().to_string()])
        .status();
    if !stop.is_ok_and(|status| status.success()) {
        child.kill().unwrap();
    }
    assert!(!child.wait().unwrap().success());
    assert_eq!(fs::read_dir(folder.path()).unwrap().count(), 0);
}

#[test]
fn presets_and_questions_are_not_mixed() {
    for more in [
        &["--lift", "floor-plate-9-6"][..],
        &["--vehicle", "estate"],
        &["--units", "metric"],
    ] {
        bayrise(&[&["new", "x.ron", "--ask"], more].concat()).is_refused();
    }
    bayrise(&["new", "x.ron", "--lift", "floor-plate-9-6"]).is_refused();
}

#[test]
fn a_layout_in_full_size_is_written_and_pages_of_an_earlier_set_are_pointed_out() {
    let folder = tempfile::tempdir().unwrap();
    let bay = scene("anchors-on-paper");
    let on = ["--on", "2026-05-14"];
    let tiled = [&["layout", bay.as_str(), "t.svg", "--full-size"], &on[..]].concat();
    let run = bayrise_in(folder.path(), &tiled);
    assert_eq!((run.code, run.stderr.as_str()), (0, ""), "{run:?}");
    assert!(run.stdout.contains("map of the pages"), "{run:?}");
    let first = fs::read(folder.path().join("t-2.svg")).unwrap();
    assert_eq!(bayrise_in(folder.path(), &tiled).code, 0);
    assert_eq!(fs::read(folder.path().join("t-2.svg")).unwrap(), first);
    let alias = [
        &["layout", bay.as_str(), "u.pdf", "--tiled", "--paper", "a3"],
        &on[..],
    ]
    .concat();
    assert_eq!(bayrise_in(folder.path(), &alias).code, 0);
    let fewer = [&["layout", bay.as_str(), "t.svg"], &on[..]].concat();
    let run = bayrise_in(folder.path(), &fewer);
    assert!(run.stdout.contains("an earlier, longer one: t-"), "{run:?}");
    bayrise_in(
        folder.path(),
        &["layout", bay.as_str(), "t.pdf", "--full-size", "some"],
    )
    .is_refused();
}

#[test]
fn pages_are_written_all_or_none() {
    let folder = tempfile::tempdir().unwrap();
    fs::write(folder.path().join("f.svg"), "mine").unwrap();
    // Its third page can't be written.
    fs::create_dir(folder.path().join("f-3.svg")).unwrap();
    let run = bayrise_in(folder.path(), &["worksheet", "f.svg"]);
    run.is_refused();
    assert!(run.stderr.contains("f-3.svg"), "{run:?}");
    assert_eq!(
        fs::read_to_string(folder.path().join("f.svg")).unwrap(),
        "mine"
    );
    assert_eq!(
        fs::read_dir(folder.path()).unwrap().count(),
        2,
        "no page and no debris"
    );
}
