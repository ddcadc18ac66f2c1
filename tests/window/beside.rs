//! Two bays side by side.

use std::path::PathBuf;

use crate::program::Program;
use crate::session::{room, text};

#[test]
fn the_second_bay_goes_along_and_is_read_again_when_it_changes() {
    let Some(room) = room() else { return };
    let shipped = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("scenes/coupe-full-rise.ron");
    let other = room.folder.path().join("other.ron");
    std::fs::copy(&shipped, &other).unwrap();
    let mut program = Program::open_beside(&room.screen, &room.file, &other);
    program.wait_for_state(&["current=true", "beside=lock 16 at 0.0000"]);
    // From lock to lock together.
    room.screen.key("Up");
    let state = program.wait_for_state(&["at-lock=1;"]);
    let travel = program.state("travel");
    assert!(
        state.contains(&format!("beside=lock 16 at {travel}")),
        "{state}"
    );
    // Each to its own highest safe lock.
    room.screen.key("s");
    program.wait_for_state(&["at-lock=4;", "beside=lock 16 at 1.8000"]);
    program.wait_for_frames();
    room.screen.picture("two-bays");
    // Another program lowers its ceiling: nothing stands there any more.
    let lower = text(&other).replace("4400 mm", "3000 mm");
    assert_ne!(lower, text(&shipped));
    std::fs::write(&other, &lower).unwrap();
    program.wait_for_state(&["verdict=lock 4;", "beside=no lock at", "notices=1"]);
    // It goes away with its file, and nothing was written.
    room.screen.key("Escape");
    program.wait_for_state(&["notices=0"]);
    room.screen.key("ctrl+shift+b");
    program.wait_for_state(&["beside=-"]);
    room.screen.key("ctrl+q");
    assert_eq!(program.end(), 0);
    assert_eq!(text(&other), lower);
}

#[test]
fn a_table_is_old_as_soon_as_what_it_is_of_changes_and_is_made_anew() {
    let Some(room) = room() else { return };
    let shipped = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("scenes/compare");
    let in_folder = |name: &str| room.folder.path().join(name);
    for name in ["short-or-tall.ron", "south-bay.ron"] {
        std::fs::copy(shipped.join(name), in_folder(name)).unwrap();
    }
    let options = in_folder("short-or-tall.ron");
    let mut program = Program::open_table(&room.screen, &options, "south-bay.ron");
    program.wait_for_state(&["table=there", "current=true"]);
    let base = text(&in_folder("south-bay.ron"));
    let lower = base.replace("10 ft 10 in", "9 ft 9 in");
    assert_ne!(lower, base);
    std::fs::write(in_folder("south-bay.ron"), lower).unwrap();
    program.wait_until("the table is old", |said| {
        said.iter().any(|line| line.contains("table=old"))
    });
    program.wait_for_state(&["table=there"]);
    // One that can't be made anew stays old.
    std::fs::write(&options, "(format: 1, title: ").unwrap();
    program.wait_for_state(&["table=old"]);
    program.wait_for_frames();
    room.screen.picture("old-table");
    room.screen.key("ctrl+q");
    assert_eq!(program.end(), 0);
}
