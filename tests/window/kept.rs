//! What other programs do to the files, and what is kept when this one goes down.

use std::path::PathBuf;

use crate::program::Program;
use crate::session::{add_a_light, names_in, room, scene, text, wait};

const KEPT: &str = ".tall-pickup.ron.bayrise-autosave";

#[test]
fn a_preset_beside_the_file_that_changes_is_studied_again() {
    let Some(room) = room() else { return };
    let shipped = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("assets/vehicles");
    let (name, mine) = (
        "pickup-half-ton-crew-cab",
        room.folder.path().join("vehicles/mine.ron"),
    );
    std::fs::create_dir(mine.parent().unwrap()).unwrap();
    let preset = text(&shipped.join(format!("{name}.ron")));
    std::fs::write(&mine, &preset).unwrap();
    let bay = text(&scene()).replace(name, "vehicles/mine.ron");
    std::fs::write(&room.file, &bay).unwrap();
    let mut program = Program::open(&room.screen, &room.file);
    program.wait_for_state(&["text=0;", "current=true", "faults=0"]);
    let before = program.state("verdict");

    // Someone measured the vehicle again: it is a head taller, so that less of it fits.
    let taller = preset.replace("\"76 in\"", "\"88 in\"");
    assert_ne!(taller, preset);
    std::fs::write(&mine, taller).unwrap();
    program.wait_for_state(&["text=1;", "unsaved=false", "notices=1"]);
    let state = program.wait_for_state(&["text=1;"]);
    assert!(
        !state.contains(&format!("verdict={before}; current=true")),
        "the old verdict is not of this vehicle: {state}"
    );

    std::fs::write(&mine, "(").unwrap();
    let state = program.wait_for_state(&["text=2;", "current=false"]);
    assert!(!state.contains("faults=0"), "{state}");
    // A preset that could not be read is looked after all the same.
    std::fs::write(&mine, &preset).unwrap();
    program.wait_for_state(&["text=3;", "current=true", "faults=0"]);
    assert_eq!(program.state("verdict"), before);
    room.screen.key("ctrl+q");
    assert_eq!(program.end(), 0);
}

#[test]
fn a_file_that_is_deleted_is_told_of_and_can_be_saved_again() {
    let Some(room) = room() else { return };
    let mut program = Program::open(&room.screen, &room.file);
    program.wait_for_state(&["current=true", "unsaved=false"]);
    std::fs::remove_file(&room.file).unwrap();
    program.wait_for_state(&["unsaved=true", "notices=1"]);
    let kept = room.folder.path().join(KEPT);
    wait("the autosave", || kept.exists());
    room.screen.key("ctrl+s");
    program.wait_for_state(&["unsaved=false"]);
    assert_eq!(text(&room.file), text(&scene()));
    room.screen.key("ctrl+q");
    assert_eq!(program.end(), 0);
    assert_eq!(names_in(room.folder.path()), ["tall-pickup.ron"]);
}

#[test]
fn two_windows_on_one_file_keep_their_own() {
    let Some(room) = room() else { return };
    let mut one = Program::open(&room.screen, &room.file);
    add_a_light(&room, &mut one);
    let first = room.folder.path().join(KEPT);
    wait("the first autosave", || first.exists());
    // The second stands over the first and has the keyboard.
    let mut two = Program::open(&room.screen, &room.file);
    let state = two.wait_for_state(&["current=true"]);
    assert!(state.contains("offer=false"), "a living window's: {state}");
    add_a_light(&room, &mut two);
    let second = room.folder.path().join(format!("{KEPT}-2"));
    wait("the second autosave", || second.exists());
    assert!(first.exists());
    one.kill();
    two.kill();
    let mut three = Program::open(&room.screen, &room.file);
    three.wait_for_state(&["offer=true", "unsaved=false"]);
    three.kill();
    assert!(first.exists() && second.exists());
}

#[test]
fn a_new_bay_that_was_never_saved_is_kept_and_offered() {
    let Some(room) = room() else { return };
    let mut program = Program::open(&room.screen, &room.file);
    program.wait_for_state(&["current=true"]);
    room.screen.key("ctrl+n");
    program.wait_for_state(&["text=1;", "unsaved=true", "current=true"]);
    let home = room.folder.path().join("home");
    let kept = home.join(".local/state/bayrise/.new-bay.ron.bayrise-autosave");
    wait("the new bay", || kept.exists());
    program.kill();
    let mut program = Program::open(&room.screen, &room.file);
    program.wait_for_state(&["offer=true", "unsaved=false", "current=true"]);
    program.wait_for_frames();
    room.screen.picture("new-bay-offered");
    room.screen.key("ctrl+q");
    assert_eq!(program.end(), 0);
    assert!(kept.exists(), "what was not answered is not dropped");
    assert_eq!(text(&room.file), text(&scene()));
}
