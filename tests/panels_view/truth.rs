//! Is anything ever shown as better than the study says?

use bayrise::clearance::LockState;
use bayrise::clearance::probe::{HereState, PairState};
use bayrise::panels::ladder::{self, Thing};
use bayrise::panels::settings::Section;
use bayrise::panels::signs::State;
use bayrise::panels::{Action, Desk, Wish, overlay, shown};
use bayrise::report::GOING_UNDER;
use egui::{Key, Modifiers, Pos2, Rect, vec2};
use egui_kittest::kittest::Queryable;

use super::{SCENES, desk, shapes, texts, window};

#[test]
fn at_a_lock_nothing_is_called_clear_that_the_study_does_not() {
    let mut kinder = 0;
    for scene in SCENES {
        let mut desk = desk(scene);
        for door in [0.0, 0.4, 1.0] {
            desk.apply(Action::Door(door));
            let count = desk.locks_m().len();
            for lock in 1..=count {
                desk.apply(Action::ToLock(lock));
                let verdict = desk.verdict.as_ref().unwrap();
                let here = desk.here.as_ref().unwrap();
                let doors = &verdict.study.doors;
                let found = match here.door {
                    bayrise::clearance::DoorState::Shut => &doors.shut,
                    bayrise::clearance::DoorState::Open => &doors.open,
                    bayrise::clearance::DoorState::Running => &doors.running,
                };
                let judged = found.locks[lock - 1];
                let said = shown::state(&desk).unwrap();
                let is_clear = said == State::from(LockState::Clear);
                assert!(
                    !is_clear || judged == LockState::Clear,
                    "{scene}, door {door}, lock {lock}: {judged:?}"
                );
                let caption = overlay::content(&desk);
                assert_eq!(caption.here, Some(said), "the caption says the same");
                let alone = State::from(here.state);
                kinder += usize::from(alone == State::from(LockState::Clear) && !is_clear);
            }
        }
    }
    assert!(kinder > 0, "the single travel is kinder somewhere");
}

#[test]
fn between_locks_nothing_is_better_than_the_lock_passed_last_or_above_the_mark() {
    let (mut kinder, mut above) = (0, 0);
    for scene in SCENES {
        let mut desk = desk(scene);
        let locks_m = desk.locks_m();
        for (index, lock_m) in locks_m.iter().enumerate() {
            for past_m in [0.005, 0.03, 0.06, 0.09] {
                desk.apply(Action::Travel(lock_m + past_m));
                if desk.rise.at_lock(&locks_m).is_some() {
                    continue;
                }
                let verdict = desk.verdict.as_ref().unwrap();
                let here = desk.here.as_ref().unwrap();
                let passed = locks_m.iter().filter(|m| **m <= desk.rise.travel_m);
                let judged = shown::lock_state(verdict, here.door, passed.count());
                let said = shown::state(&desk).unwrap();
                let is_clear = said == State::from(LockState::Clear);
                let is_short = matches!(
                    judged,
                    LockState::Tight | LockState::Strikes | LockState::Barred | LockState::NotShown
                );
                assert!(!is_clear || !is_short, "{scene}, past lock {}", index + 1);
                kinder += usize::from(is_short && here.state == HereState::Clear);
                let study = &verdict.study;
                if let Some(marks) = study.marks
                    && let Some(never_m) = marks.never_above_m
                    && desk.rise.travel_m > marks.stop_travel_m + never_m - marks.stop_m
                {
                    assert!(!is_clear, "{scene}: above the mark");
                    above += 1;
                }
            }
        }
    }
    assert!(kinder > 0, "the single travel is kinder somewhere");
    assert!(above > 0, "somewhere the carriage is above the mark");
}

#[test]
fn at_a_lock_no_length_is_longer_than_the_report_says() {
    for scene in SCENES {
        let mut desk = desk(scene);
        for lock in 1..=desk.locks_m().len() {
            desk.apply(Action::ToLock(lock));
            let verdict = desk.verdict.as_ref().unwrap();
            let here = desk.here.as_ref().unwrap();
            if here.door != verdict.study.headline_door {
                continue;
            }
            let found = &verdict.study.locks[lock - 1];
            let Some(near) = &found.near else { continue };
            let pair = here
                .pairs
                .iter()
                .find(|pair| pair.moving == near.moving && pair.fixed == near.fixed);
            let Some(pair) = pair else { continue };
            assert!(
                pair.worst_m <= near.clearance_m + 1e-9,
                "{scene}, lock {lock}: {} over {}",
                pair.worst_m,
                near.clearance_m
            );
            if found.state == LockState::Tight && near.clearance_m < near.margin_m {
                assert_ne!(pair.state, PairState::Clear, "{scene}, lock {lock}");
            }
        }
    }
}

#[test]
fn without_a_title_block_the_picture_says_what_is_not_clear() {
    let mut pickup = desk("tall-pickup");
    pickup.apply(Action::ToLock(4));
    assert!(overlay::warning(&pickup).is_empty());
    pickup.apply(Action::ToLock(5));
    assert_eq!(overlay::warning(&pickup), ["Shown here: tight"]);
    let mut columns = desk("tall-columns");
    columns.apply(Action::ToLock(5));
    let words = overlay::warning(&columns).join("\n");
    assert!(words.contains("No lock is safe"), "{words}");
    assert!(words.contains("not safe"), "{words}");
}

#[test]
fn a_lock_that_is_clear_under_a_withheld_verdict_is_not_shown_as_clear() {
    let withheld = desk("tall-columns");
    let rows = ladder::rows(&withheld);
    let mut clear = 0;
    for row in rows {
        if let Thing::Lock(lock) = row.thing {
            assert_ne!(lock.shown, State::from(LockState::Clear));
            clear += usize::from(lock.state == LockState::Clear);
        }
    }
    assert!(clear > 0, "some are clear in themselves");
}

#[test]
fn a_lock_is_flagged_safe_only_with_the_door_that_it_is_safe_with() {
    let mut others = 0;
    for scene in SCENES {
        let mut desk = desk(scene);
        // Held shut, the door may not be in the way that it is when open.
        desk.apply(Action::Set {
            path: "policy.door_held".into(),
            value: "Shut".into(),
        });
        desk.study_now();
        assert!(desk.is_current(), "{scene}: {:?}", desk.notices);
        for door in [0.0, 0.5, 1.0] {
            desk.apply(Action::Door(door));
            for row in ladder::rows(&desk) {
                let Thing::Lock(lock) = row.thing else {
                    continue;
                };
                let words = lock.state_words();
                if words.contains("SAFE") {
                    assert!(
                        !matches!(lock.state, LockState::Strikes | LockState::Barred),
                        "{scene}, door {door}: {words}"
                    );
                }
                others += usize::from(lock.safe_with.is_some());
            }
        }
    }
    assert!(others > 0, "somewhere the other door is in the way");
}

#[test]
fn the_caption_says_when_the_door_shown_is_not_the_verdicts() {
    let mut desk = desk("tall-pickup");
    let governs = desk.verdict.as_ref().unwrap().study.headline_door;
    let words = format!("the verdict is for the door {}", governs.word());
    for door in [0.0, 1.0] {
        desk.apply(Action::Door(door));
        let is_it = desk.here.as_ref().unwrap().door == governs;
        let says = overlay::content(&desk).position.contains(&words);
        assert_eq!(says, !is_it, "door {door}");
    }
}

#[test]
fn before_people_nothing_rises_above_the_safe_lock_and_the_door_stays() {
    for scene in ["tall-pickup", "no-safe-lock", "light-in-the-way"] {
        let mut desk = desk(scene);
        let safe_m = desk.safe_travel_m().unwrap_or(0.0);
        desk.apply(Action::ShowMode(true));
        let door = desk.door;
        let count = desk.locks_m().len();
        for action in [
            Action::ToTop,
            Action::ToLock(count),
            Action::Travel(9.0),
            Action::LockUp,
            Action::Door(0.5),
            Action::DoorToggle,
        ] {
            desk.apply(action.clone());
            assert!(desk.rise.travel_m <= safe_m + 1e-9, "{scene}: {action:?}");
            assert!((desk.door - door).abs() < 1e-9, "{scene}: {action:?}");
        }
        // A lower ceiling while it shows: the new verdict holds at once.
        desk.apply(Action::ToSafeLock);
        desk.apply(Action::Set {
            path: "garage.ceiling".into(),
            value: "Flat(height: \"9 ft 6 in\")".into(),
        });
        let stood_m = desk.rise.travel_m;
        desk.apply(Action::Travel(stood_m * 0.5));
        desk.apply(Action::ToSafeLock);
        assert!(
            desk.rise.travel_m <= stood_m * 0.5 + 1e-9,
            "{scene}: an old verdict raises nothing"
        );
        desk.study_now();
        assert!(desk.is_current());
        assert!(desk.rise.travel_m <= desk.safe_travel_m().unwrap_or(0.0) + 1e-9);
    }
}

#[test]
fn nobody_is_drawn_under_what_does_not_rest_on_a_safe_lock() {
    let mut drawn = 0;
    for scene in SCENES {
        let mut desk = desk(scene);
        let safe = desk.verdict.as_ref().unwrap().study.highest_safe_lock;
        for door in [0.0, 0.4, 1.0] {
            desk.apply(Action::Door(door));
            let locks = desk.locks_m();
            for (index, at) in locks.iter().enumerate() {
                desk.apply(Action::Travel(at + 0.02));
                assert!(!shown::may_stand_under(&desk, 0.5), "between locks");
                desk.apply(Action::Travel(*at));
                let may = shown::may_stand_under(&desk, 1.2);
                assert!(!may || safe.is_some_and(|safe| index < safe), "{scene}");
                assert!(
                    !may || shown::state(&desk) == Some(LockState::Clear.into()),
                    "{scene}"
                );
                assert!(!shown::may_stand_under(&desk, 3.0), "no room for a giant");
                drawn += usize::from(may);
                if may {
                    desk.rise.playing = true;
                    assert!(!shown::may_stand_under(&desk, 1.2), "while it moves");
                    desk.rise.playing = false;
                    let text = format!("{}\n", desk.document.text());
                    desk.document.change(text);
                    assert!(!shown::may_stand_under(&desk, 1.2), "on an old verdict");
                    desk.apply(Action::Undo);
                    desk.study_now();
                }
            }
        }
    }
    assert!(drawn > 0, "somewhere there is room");
}

#[test]
fn whoever_is_shown_under_it_is_told_how_to_go_under() {
    let mut desk = desk("coupe-full-rise");
    desk.apply(Action::Set {
        path: "policy.people".into(),
        value: "[(name: \"Aron\", height: \"1200 mm\")]".into(),
    });
    desk.study_now();
    desk.apply(Action::ToSafeLock);
    desk.apply(Action::Dimensions(false));
    let says = |desk: &Desk, caption: bool| {
        let whole = Rect::from_min_size(Pos2::ZERO, vec2(1280.0, 720.0));
        let mut painted = Vec::new();
        for clipped in shapes([1280.0, 720.0], |ui| {
            overlay::paint(ui.painter(), whole, desk, caption);
        }) {
            texts(&clipped.shape, clipped.clip_rect, &mut painted);
        }
        let told = painted.iter().filter(|text| text.text == GOING_UNDER);
        told.inspect(|text| {
            assert!(text.clip.contains_rect(text.rect), "it is cut");
            assert!(whole.contains_rect(text.rect), "it is cut");
        })
        .count()
    };
    for caption in [true, false] {
        desk.apply(Action::People(false));
        assert_eq!(says(&desk, caption), 0, "nobody is there");
        desk.apply(Action::People(true));
        assert!(shown::may_anyone_be_under(&desk), "there is room here");
        assert_eq!(says(&desk, caption), 1);
        desk.apply(Action::Travel(desk.rise.travel_m - 0.03));
        assert_eq!(says(&desk, caption), 0, "between locks they are outside");
        desk.apply(Action::ToSafeLock);
    }
}

#[test]
fn a_state_has_one_word_wherever_it_is_told() {
    for (lock, here, pair) in [
        (
            LockState::Strikes,
            HereState::Strikes,
            Some(PairState::Strikes),
        ),
        (LockState::Tight, HereState::Tight, Some(PairState::Tight)),
        (LockState::Clear, HereState::Clear, Some(PairState::Clear)),
        (LockState::Barred, HereState::Barred, None),
        (LockState::NotShown, HereState::NotShown, None),
    ] {
        assert_eq!(State::from(lock), State::from(here));
        assert_eq!(lock.words(), here.words());
        if let Some(pair) = pair {
            assert_eq!(State::from(lock), State::from(pair));
            assert_eq!(lock.words(), pair.word());
        }
    }
    assert_eq!(LockState::NotShown.words(), "not decided");
}

#[test]
fn saving_takes_what_is_being_typed_along_or_says_why_not() {
    for (typed, is_good) in [("9 ft 11 in", true), ("12 fot", false)] {
        for key in [Key::S, Key::Q] {
            let mut desk = desk("tall-pickup");
            desk.settings.section = Some(Section::Garage);
            let before = desk.document.text().to_owned();
            let mut harness = window(desk, [1280.0, 1400.0]);
            harness.get_by_label("Ceiling height").focus();
            harness.run();
            harness.get_by_label("Ceiling height").type_text(typed);
            harness.run();
            assert_eq!(harness.state().desk.document.text(), before, "typing");
            harness.key_press_modifiers(Modifiers::COMMAND, key);
            harness.run();
            let state = harness.state();
            let is_in = state.desk.document.text().contains(typed);
            assert_eq!(is_in, is_good, "{typed}");
            let wishes = &state.wishes;
            let written = wishes
                .iter()
                .any(|wish| matches!(wish, Wish::Write { text, .. } if text.contains(typed)));
            assert!(!wishes.contains(&Wish::Close), "never lost: {typed}");
            if is_good && key == Key::S {
                assert!(written, "{wishes:?}");
            } else if is_good {
                assert!(state.desk.leaving.is_some(), "asked before leaving");
            } else {
                assert!(wishes.is_empty(), "{wishes:?}");
                let told = state.desk.notices.iter();
                assert!(told.clone().any(|n| n.text.contains("a field holds")));
            }
        }
    }
}

#[test]
fn readings_and_loads_are_marked_at_their_places() {
    let mut slab = desk("thin-slab");
    let view = Rect::from_min_size(Pos2::ZERO, vec2(1000.0, 700.0));
    let marks = overlay::marks(&slab, view, 14.0);
    let labels: Vec<&str> = marks.iter().map(|mark| mark.label.as_str()).collect();
    for reading in ["2 in", "2 3/4 in", "3 7/8 in"] {
        assert!(labels.contains(&reading), "{reading}: {labels:?}");
    }
    let stops = |mark: &&overlay::Mark| mark.standing == bayrise::ground::Standing::Stops;
    assert!(marks.iter().any(|mark| stops(&mark)), "{marks:?}");
    for (index, mark) in marks.iter().enumerate() {
        assert!(view.contains_rect(mark.label_rect), "{mark:?}");
        for other in &marks[index + 1..] {
            assert!(
                !mark.label_rect.intersects(other.label_rect),
                "{mark:?} {other:?}"
            );
        }
    }
    assert!(!slab.settings.marks);
    slab.apply(Action::Marks(true));
    assert!(slab.settings.marks);
}
