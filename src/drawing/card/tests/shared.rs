//! Which bays may share a card, and up to where is the door run?

use super::*;

#[test]
fn another_garage_lift_or_slab_is_refused_by_name() {
    let changed = |change: fn(&mut Bay)| {
        let mut other = with_vehicle("tall-pickup", "estate");
        change(&mut other);
        let bays = Bays::of(vec![("a", scene("tall-pickup")), ("b", other)]);
        match bays.pages(Paper::A4) {
            Err(CardError::Differs(difference)) => {
                assert_eq!(difference.files, ["a", "b"]);
                difference.what.join(", ")
            }
            other => panic!("{other:?}"),
        }
    };
    let what = changed(|bay| bay.garage.width = Length::feet(23.0));
    assert!(
        what.contains("garage.width") && what.contains("and"),
        "{what}"
    );
    let what = changed(|bay| bay.lift.carriage.marked_edge = Length::inches(35.0));
    assert_eq!(what, "lift.carriage.marked_edge (36.25 in and 35 in)");
    let what = changed(|bay| {
        bay.lift.locks.pop();
        bay.garage.obstacles.clear();
    });
    assert_eq!(
        what,
        "garage.obstacles (2 and 0 of them), lift.locks (15 and 14 of them)"
    );
    // A slab that is known to be thin under one vehicle is as thin under the next.
    let what = changed(|bay| bay.slab = scene("thin-slab").slab);
    assert!(what.starts_with("slab"), "{what}");
    // What nobody measured of the garage is unmeasured for every vehicle in it.
    let what = changed(|bay| bay.not_measured.push("the beam".into()));
    assert!(what.starts_with("not_measured"), "{what}");
    let what = changed(|bay| bay.policy.measured_garage = Length::inches(1.0));
    assert!(what.starts_with("policy.measured_garage ("), "{what}");
    let what = changed(|bay| bay.policy.over_vehicle = Length::inches(1.0));
    assert!(what.starts_with("policy.over_vehicle ("), "{what}");
    let what = changed(|bay| bay.units = crate::bay::UnitSystem::Metric);
    assert_eq!(what, "units of the file (Imperial and Metric)");
    let what = changed(|bay| bay.lift.locks[3] = Length::inches(29.0));
    assert!(
        what.starts_with("lift.locks (") && what.ends_with("in and 29 in)"),
        "{what}"
    );
    let what = changed(|bay| bay.lift.name = "Another".into());
    assert!(
        what.starts_with("lift.name (\"") && what.ends_with("\"Another\")"),
        "{what}"
    );

    // A metric file is told of in millimetres.
    let mut wider = scene("coupe-full-rise");
    wider.garage.width = Length::metres(wider.garage.width.m() + 0.001);
    let bays = Bays::of(vec![("a", scene("coupe-full-rise")), ("b", wider)]);
    let Err(CardError::Differs(difference)) = bays.pages(Paper::A4) else {
        panic!("another garage");
    };
    let what = difference.what.join(", ");
    assert!(
        what.starts_with("garage.width (") && what.ends_with(" mm)"),
        "{what}"
    );

    let twice = Bays::of(vec![
        ("a", scene("tall-pickup")),
        ("a", scene("tall-pickup")),
    ]);
    assert!(matches!(twice.pages(Paper::A4), Err(CardError::Twice(..))));
    assert_eq!(
        card(&[], ForDay::settled(DAY), Paper::A4),
        Err(CardError::Count(0))
    );
}

#[test]
fn the_door_is_never_run_higher_than_the_study_lets_it() {
    use crate::clearance::LockState;
    let mut forbidden = 0;
    for (name, bay) in scenes() {
        let study = study_on(&bay, Some(DAY)).unwrap();
        let Some(safe) = study.highest_safe_lock else {
            continue;
        };
        match door::run(&bay, &study, safe) {
            door::Run::UpTo(first, highest, whole) => {
                assert!(highest <= safe && whole == (highest == safe), "{name}");
                assert!(study.doors.running.highest_clear_lock >= Some(highest));
                for lock in &study.locks[first - 1..highest] {
                    assert!(lock.door_may_run && lock.state != LockState::NotLifting);
                }
            }
            door::Run::Never => forbidden += 1,
            door::Run::NoDoor | door::Run::Held(_) => {}
        }
    }
    // Held: nothing else may be done with it, and the card says that the verdict hangs on it.
    let mut bay = scene("tall-pickup");
    bay.policy.door_held = Some(DoorHeld::Shut);
    let pages = Bays::of(vec![("a", bay)]).pages(Paper::A4).unwrap();
    let said = said(&pages);
    assert!(said.contains("only with the door shut") && said.contains("Keep the door shut"));
    assert!(!said.contains("may be run"), "{said}");

    // A running door in the way of every lock, and of some.
    let mut study = study_on(&scene("tall-pickup"), Some(DAY)).unwrap();
    let bay = scene("tall-pickup");
    study.locks[1].door_may_run = false;
    let (says, forbids) = door::says(&bay, &study, 4);
    assert!(
        forbids && says.contains("DO NOT RUN THE DOOR ABOVE LOCK 1"),
        "{says}"
    );
    study.doors.running.highest_safe_lock = None;
    let (says, forbids) = door::says(&bay, &study, 4);
    assert!(
        forbids && says.starts_with("DO NOT RUN THE DOOR while"),
        "{says}"
    );
    study.doors.may_run_when_down = false;
    assert!(door::says(&bay, &study, 4).0.contains("Not even"));
    let _ = forbidden;
}
