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
