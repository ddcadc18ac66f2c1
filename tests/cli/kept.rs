//! Whatever a command writes, it never writes over what it read.

use std::fs;
use std::path::Path;

use crate::program::{Run, bayrise_in, tall_pickup};

/// A bay file under any name, with a preset beside it.
fn bay_at(folder: &Path, name: &str) -> String {
    let text = fs::read_to_string(tall_pickup()).unwrap();
    fs::write(folder.join(name), &text).unwrap();
    text
}

#[track_caller]
fn is_kept(folder: &Path, input: &str, before: &str, run: &Run) {
    run.is_refused();
    assert!(run.stderr.contains("which would be lost"), "{run:?}");
    assert_eq!(
        fs::read_to_string(folder.join(input)).unwrap(),
        before,
        "{run:?}"
    );
}

#[test]
fn no_command_writes_over_its_bay_file() {
    let folder = tempfile::tempdir().unwrap();
    let at = folder.path();
    fs::create_dir(at.join("below")).unwrap();
    for (command, ending) in [
        ("report", "html"),
        ("model", "glb"),
        ("layout", "svg"),
        ("layout", "dxf"),
        ("card", "pdf"),
        ("record", "svg"),
        ("picture", "png"),
    ] {
        let name = format!("own.{ending}");
        let before = bay_at(at, &name);
        let round_about = format!("below/../{name}");
        for out in [&name, &round_about] {
            is_kept(at, &name, &before, &bayrise_in(at, &[command, &name, out]));
        }
        #[cfg(unix)]
        {
            let link = format!("{command}-link.{ending}");
            std::os::unix::fs::symlink(at.join(&name), at.join(&link)).unwrap();
            is_kept(
                at,
                &name,
                &before,
                &bayrise_in(at, &[command, &name, &link]),
            );
            is_kept(
                at,
                &name,
                &before,
                &bayrise_in(at, &[command, &link, &name]),
            );
        }
    }
    let before = bay_at(at, "own.pdf");
    is_kept(
        at,
        "own.pdf",
        &before,
        &bayrise_in(at, &["plan", "own.pdf", "--page", "own.pdf"]),
    );
    let before = bay_at(at, "own.png");
    is_kept(
        at,
        "own.png",
        &before,
        &bayrise_in(at, &["check", "own.png", "--picture", "own.png"]),
    );
    let before = bay_at(at, "own.ron");
    let new = bayrise_in(at, &["new", "own.ron"]);
    new.is_refused();
    assert_eq!(fs::read_to_string(at.join("own.ron")).unwrap(), before);
}

#[test]
fn nor_over_any_other_input() {
    let folder = tempfile::tempdir().unwrap();
    let at = folder.path();
    // The second of several bay files.
    let before = bay_at(at, "second.svg");
    bay_at(at, "first.ron");
    let card = bayrise_in(at, &["card", "first.ron", "second.svg", "second.svg"]);
    is_kept(at, "second.svg", &before, &card);
    let before = bay_at(at, "other.png");
    let pictured = ["picture", "first.ron", "other.png", "--beside", "other.png"];
    is_kept(at, "other.png", &before, &bayrise_in(at, &pictured));
    // The file of a later page.
    let before = bay_at(at, "sheet-2.svg");
    is_kept(
        at,
        "sheet-2.svg",
        &before,
        &bayrise_in(at, &["layout", "sheet-2.svg", "sheet.svg"]),
    );
    assert!(
        !at.join("sheet.svg").exists(),
        "nothing of the set is written"
    );
}

#[cfg(unix)]
#[test]
fn nor_over_a_preset_beside_it() {
    let folder = tempfile::tempdir().unwrap();
    let at = folder.path();
    let preset = Path::new(env!("CARGO_MANIFEST_DIR")).join("assets/lifts/tall-columns-11-10.ron");
    let lift = fs::read_to_string(preset).unwrap();
    fs::write(at.join("my-lift.ron"), &lift).unwrap();
    std::os::unix::fs::symlink(at.join("my-lift.ron"), at.join("lift.html")).unwrap();
    let text = bay_at(at, "bay.ron");
    let own = text.replacen(
        "preset: \"tall-columns-11-10\"",
        "preset: \"my-lift.ron\"",
        1,
    );
    assert_ne!(own, text);
    fs::write(at.join("bay.ron"), own).unwrap();
    let run = bayrise_in(at, &["report", "bay.ron", "lift.html"]);
    is_kept(at, "my-lift.ron", &lift, &run);
    assert!(run.stderr.contains("a preset of the bay file"), "{run:?}");
}
