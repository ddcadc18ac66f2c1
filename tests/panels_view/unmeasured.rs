//! Does the window show anything as clear of a bay of which something is not measured?

use std::sync::Arc;

use bayrise::bayfile::presets::EmbeddedOnly;
use bayrise::clearance::{HereState, LockState};
use bayrise::panels::signs::State;
use bayrise::panels::{Action, Desk, Document, ladder, overlay, shown};

use crate::SCENES;

/// A studied desk with a scene on it that names something as not measured.
fn desk(scene: &str) -> Desk {
    let path = format!("{}/scenes/{scene}.ron", env!("CARGO_MANIFEST_DIR"));
    let text = std::fs::read_to_string(path).unwrap();
    let text = text.replacen("format: 1,", "format: 1, not_measured: [\"qualm\"],", 1);
    let mut desk = Desk::new(Document::new(
        Some(format!("{scene}.ron").into()),
        text.clone(),
        Some(text),
        Arc::new(EmbeddedOnly),
    ));
    desk.study_now();
    assert!(desk.is_current(), "{scene}");
    desk
}

#[test]
fn nothing_is_shown_clear_and_no_mark_is_on_the_ladder() {
    let clear: [State; 2] = [LockState::Clear.into(), HereState::Clear.into()];
    for scene in SCENES {
        let mut desk = desk(scene);
        let locks = desk.locks_m().len();
        for door in [0.0, 0.5, 1.0] {
            desk.apply(Action::Door(door));
            for lock in 1..=locks {
                desk.apply(Action::ToLock(lock));
                let state = shown::state(&desk).unwrap();
                assert!(
                    !clear.contains(&state),
                    "{scene}, lock {lock}: {}",
                    state.word
                );
                let pairs = &desk.here.as_ref().unwrap().pairs;
                for pair in pairs {
                    let state = State::from(pair.state);
                    assert!(
                        !clear.contains(&state),
                        "{scene}, lock {lock}: {}",
                        pair.moving
                    );
                }
                assert!(!shown::may_stand_under(&desk, 0.5), "{scene}");
                let words = overlay::corner_words(&desk);
                let told = words.iter().any(|one| one.contains("NOT MEASURED"));
                assert!(pairs.is_empty() || told, "{scene}: {words:?}");
            }
            for row in ladder::rows(&desk) {
                match row.thing {
                    ladder::Thing::Lock(lock) => {
                        assert!(!clear.contains(&lock.shown), "{scene}");
                        assert!(!lock.is_safe && lock.safe_with.is_none(), "{scene}");
                    }
                    ladder::Thing::Mark(_, short) => assert_eq!(short, "bar trips", "{scene}"),
                }
            }
        }
    }
}
