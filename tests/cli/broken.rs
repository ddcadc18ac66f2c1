//! Files that can't be used, readers that go away, and colour where it is asked for.

use std::fs;
use std::process::Stdio;

use crate::program::{bayrise, bayrise_in, command, scene, tall_pickup};

#[test]
fn what_is_no_bay_file_is_refused_with_a_word() {
    let folder = tempfile::tempdir().unwrap();
    let file = |name: &str, bytes: &[u8]| fs::write(folder.path().join(name), bytes).unwrap();
    file("empty.ron", b"");
    file("binary.ron", &[0, 159, 146, 150, 0, 1]);
    file("broken.ron", b"(format: 1, title: ");
    file("large.ron", &vec![b' '; 4 * 1024 * 1024 + 1]);
    fs::create_dir(folder.path().join("folder.ron")).unwrap();
    for (name, expect) in [
        ("empty.ron", "empty"),
        ("binary.ron", "not a text file"),
        ("broken.ron", "broken.ron:1:"),
        ("large.ron", "4 MiB"),
        ("folder.ron", "folder"),
        ("missing.ron", "there is no file"),
        ("/dev/null", "not a file"),
    ] {
        for command in ["check", "solids"] {
            let run = bayrise_in(folder.path(), &[command, name]);
            run.is_refused();
            assert!(run.stderr.contains(expect), "{name}: {}", run.stderr);
        }
        bayrise_in(folder.path(), &[name]).is_refused();
    }
}

#[test]
fn bad_arguments_are_refused() {
    for args in [
        &["check"][..],
        &["check", "--no-such-option"],
        &["check", "a.ron", "--format", "yaml"],
        &["new", "a.ron"],
        &[],
    ] {
        bayrise(args).is_refused();
    }
    let slip = bayrise(&["chekc"]);
    slip.is_refused();
    assert!(slip.stderr.contains("`check`"), "{}", slip.stderr);
}

#[test]
fn a_preset_beside_the_bay_is_read_and_one_outside_is_not() {
    let outside = tempfile::tempdir().unwrap();
    let folder = tempfile::tempdir().unwrap();
    let root = env!("CARGO_MANIFEST_DIR");
    let lift = fs::read_to_string(format!("{root}/assets/lifts/tall-columns-11-10.ron")).unwrap();
    fs::write(folder.path().join("mine.ron"), &lift).unwrap();
    fs::write(outside.path().join("theirs.ron"), &lift).unwrap();
    let text = fs::read_to_string(tall_pickup()).unwrap();
    let with = |preset: &str| {
        let text = text.replace("\"tall-columns-11-10\"", &format!("{preset:?}"));
        fs::write(folder.path().join("bay.ron"), text).unwrap();
        bayrise_in(folder.path(), &["check", "bay.ron"])
    };
    assert!(matches!(with("mine.ron").code, 0 | 1));
    with("none.ron").is_refused();
    with("../theirs.ron").is_refused();
    #[cfg(unix)]
    {
        let theirs = outside.path().join("theirs.ron");
        std::os::unix::fs::symlink(theirs, folder.path().join("link.ron")).unwrap();
        let run = with("link.ron");
        run.is_refused();
        assert!(run.stderr.contains("outside"), "{}", run.stderr);
    }
}

#[cfg(unix)]
#[test]
fn names_that_are_no_text_are_no_trouble() {
    use std::ffi::OsStr;
    use std::os::unix::ffi::OsStrExt as _;

    let folder = tempfile::tempdir().unwrap();
    let name = OsStr::from_bytes(b"bay \xff\x1b[31m.ron");
    let check = |name: &OsStr| {
        command()
            .current_dir(folder.path())
            .arg("check")
            .arg(name)
            .output()
            .unwrap()
    };
    let missing = check(name);
    assert_eq!(missing.status.code(), Some(2));
    assert!(!missing.stderr.contains(&0x1b));
    fs::copy(scene("coupe-full-rise"), folder.path().join(name)).unwrap();
    let found = check(name);
    assert_eq!(found.status.code(), Some(0));
    assert!(!found.stdout.contains(&0x1b));
}

#[cfg(unix)]
#[test]
fn a_reader_that_went_away_is_no_error() {
    for (args, code) in [
        (vec!["check".into(), scene("coupe-full-rise")], 0),
        (vec![scene("coupe-full-rise")], 0),
        (vec!["presets".into()], 0),
        (vec!["schema".into()], 0),
        (vec!["--help".into()], 0),
        // The verdict is still the verdict: a script must not read "safe" out of a closed pipe.
        (vec!["check".into(), scene("no-safe-lock")], 1),
    ] {
        // The reading end of this pipe is closed before the program starts.
        let (reader, writer) = std::io::pipe().unwrap();
        drop(reader);
        let child = command()
            .args(&args)
            .stdout(Stdio::from(writer))
            .stderr(Stdio::piped())
            .spawn()
            .unwrap();
        let output = child.wait_with_output().unwrap();
        let said = String::from_utf8_lossy(&output.stderr);
        assert_eq!(output.status.code(), Some(code), "{args:?}: {said}");
        assert!(!said.contains("panicked"), "{args:?}: {said}");
        assert!(!said.contains("error"), "{args:?}: {said}");
    }
}

#[cfg(target_os = "linux")]
#[test]
fn an_answer_that_cannot_be_written_is_said() {
    let full = fs::File::options().write(true).open("/dev/full").unwrap();
    let output = command()
        .args(["check", &scene("coupe-full-rise")])
        .stdout(full)
        .stderr(Stdio::piped())
        .output()
        .unwrap();
    assert_eq!(output.status.code(), Some(2));
    assert!(String::from_utf8_lossy(&output.stderr).contains("can't be written"));
}

#[test]
fn colour_when_forced_and_never_with_no_color() {
    let run = |name: &str| {
        let output = command()
            .env("CLICOLOR_FORCE", "1")
            .env(name, "1")
            .args(["check", &tall_pickup()])
            .output()
            .unwrap();
        output.stdout.contains(&0x1b)
    };
    assert!(run("BAYRISE_UNUSED"), "colour was asked for");
    assert!(!run("NO_COLOR"), "NO_COLOR outranks it");
}

#[test]
fn a_file_of_another_kind_is_told_by_its_kind_once() {
    let scenes = format!("{}/scenes", env!("CARGO_MANIFEST_DIR"));
    let bay = format!("{scenes}/tall-pickup.ron");
    let options = format!("{scenes}/compare/short-or-tall.ron");
    let readings = format!("{scenes}/asbuilt/sail-loft-measured.ron");
    for (args, says) in [
        (
            vec!["compare", &bay],
            "this is a bay file, not a file of options",
        ),
        (
            vec!["compare", &readings],
            "this is a file of readings, not a file of options",
        ),
        (
            vec!["check", &options],
            "this is a file of options, not a bay file",
        ),
        (
            vec!["check", &readings],
            "this is a file of readings, not a bay file",
        ),
        (
            vec!["asbuilt", &bay, &bay],
            "this is a bay file, not a file of readings",
        ),
    ] {
        let run = bayrise(&args);
        assert_eq!(run.code, 2, "{args:?}: {run:?}");
        assert_eq!(
            run.stderr.matches(says).count(),
            1,
            "{args:?}: {}",
            run.stderr
        );
        assert_eq!(
            run.stderr.matches("error").count(),
            1,
            "{args:?}: {}",
            run.stderr
        );
    }
}
