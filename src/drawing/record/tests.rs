//! Is the record of the bay's own lift, and of nothing kinder than its study?

use super::rise::{own_breach, reading};
use super::*;
use crate::clearance::study_on;
use crate::drawing::card::{joined, written};
use crate::drawing::looked_over::{DAY, check, said, scene, scenes};
use crate::drawing::pages::PageFormat;

fn made(bay: &Bay, paper: Paper) -> (Study, Vec<Sheet>) {
    let study = study_on(bay, Some(DAY)).unwrap();
    let pages = record(&order(bay, &study, paper)).unwrap();
    (study, pages)
}

fn order<'a>(bay: &'a Bay, study: &'a Study, paper: Paper) -> Order<'a> {
    Order {
        bay,
        study,
        fingerprint: "0123456789abcdef",
        day: ForDay::settled(DAY),
        paper,
    }
}

#[test]
fn nothing_overlaps_on_any_page_and_each_says_what_it_was_made_of() {
    for (name, bay) in scenes() {
        for paper in [Paper::Letter, Paper::A4, Paper::A3] {
            let (_, pages) = made(&bay, paper);
            check(&name, &pages);
            for page in &pages {
                assert!(said(std::slice::from_ref(page)).contains("0123456789abcdef"));
            }
        }
    }
}

#[test]
fn each_lock_has_the_reading_at_which_the_marked_edge_rests() {
    let mut rows = 0;
    for (name, bay) in scenes() {
        let (study, pages) = made(&bay, Paper::A4);
        let order = order(&bay, &study, Paper::A4);
        let said = said(&pages);
        for (index, lock) in bay.lift.locks.iter().enumerate() {
            let at = reading(&order, lock.m());
            let edge = bay.lift.carriage.marked_edge.m();
            assert!((at.expected_m - edge - lock.m()).abs() < 1e-12);
            let releases = study.highest_releasable_lock.is_some_and(|h| index < h);
            let stopped = !stops::of_the_lift(order.bay, order.study).is_empty();
            if releases && own_breach(&order).is_none() && !stopped {
                rows += 1;
                assert!(at.most_off_m(bay.units) <= bay.policy.measured_lift.m() + 2e-9);
                let [least, most] = at.accepted(bay.units);
                for words in [at.both(bay.units), least, most] {
                    assert!(said.contains(&words), "{name}: {words}");
                }
            }
        }
    }
    assert!(rows > 100, "{rows}");
}

#[test]
fn a_part_of_the_lift_that_meets_something_bars_the_empty_rise_too() {
    let mut bay = scene("coupe-full-rise");
    // A shelf right over the left carriage.
    let post = -bay.lift.spacing.m() * 0.5;
    let mm = |metres: f64| crate::units::Length::metres(metres);
    bay.garage.obstacles.push(crate::bay::Obstacle {
        name: "shelf".into(),
        kind: crate::bay::ObstacleKind::Shelf,
        shape: crate::bay::ObstacleShape::Box {
            x: mm(post + bay.lift.across.m() + 0.1),
            y: mm(bay.lift.post_line.m()),
            bottom: mm(2.0),
            width: mm(0.15),
            depth: mm(0.4),
            height: mm(0.05),
            turned: crate::units::Angle::ZERO,
        },
        removable: None,
        only_at_times: false,
        row: [0, 0],
    });
    let (study, pages) = made(&bay, Paper::A4);
    let order = order(&bay, &study, Paper::A4);
    assert!(own_breach(&order).is_some());
    let said = said(&pages);
    assert!(
        said.contains("NOT TO THE TOP") && said.contains("the shelf"),
        "{said}"
    );
    assert!(said.contains("not to be climbed to"));
}

#[test]
fn the_loaded_raise_is_only_for_a_safe_lock_and_its_own_mark() {
    let mut seen = [0, 0];
    for (name, bay) in scenes() {
        let (study, pages) = made(&bay, Paper::Letter);
        let said = said(&pages);
        let is_safe = study.highest_safe_lock.is_some();
        seen[usize::from(is_safe)] += 1;
        assert_eq!(said.contains("NOT TO BE DONE"), !is_safe, "{name}");
        assert_eq!(said.contains("STOP mark for lock"), is_safe, "{name}");
        // Nothing is signed for, or done after, a raise that is not to be done.
        assert_eq!(said.contains("NOT TO BE ACCEPTED"), !is_safe, "{name}");
        for open in ["Inspected by", "Cracks, turned anchors"] {
            assert_eq!(said.contains(open), is_safe, "{name}: {open}");
        }
        if let Some(marks) = written(&bay, &study) {
            let lines = [Some(marks.stop), marks.release, marks.never];
            for line in lines.into_iter().flatten() {
                assert!(said.contains(&joined(&line)), "{name}: {line:?}");
            }
        } else {
            assert!(said.contains("NO LOCK IS SAFE"), "{name}");
        }
    }
    assert!(seen[0] > 2 && seen[1] > 2, "{seen:?}");
}

/// A van so low on the lock that at worst a tyre still bears there: nobody is told that it hangs free.
#[test]
fn tyres_that_may_still_stand_are_not_told_to_hang() {
    let mut told = 0;
    for (name, bay) in scenes() {
        let (mut study, _) = made(&bay, Paper::Letter);
        if study.highest_safe_lock.is_none() {
            continue;
        }
        for (tyre_m, hangs) in [(0.2, true), (-0.03, false)] {
            study.locks.iter_mut().for_each(|lock| lock.tyre_m = tyre_m);
            let pages = record(&order(&bay, &study, Paper::Letter)).unwrap();
            let said = said(&pages);
            assert_eq!(said.contains("hang free"), hangs, "{name}");
            assert_eq!(said.contains("may still bear"), !hangs, "{name}");
            told += 1;
        }
    }
    assert!(told > 4);
}

#[test]
fn a_lift_that_is_stopped_in_its_place_is_not_even_raised_empty() {
    // Of a thin slab, and of posts through the ceiling where nothing is known of the slab.
    for (name, why) in [
        ("thin-slab", "the slab is only 2 in thick"),
        ("tall-columns", "so the lift can't stand here"),
        ("tall-columns", "can't be tipped up"),
    ] {
        let (_, pages) = made(&scene(name), Paper::Letter);
        let written = said(&pages).to_lowercase();
        assert!(written.contains("not to be drilled, and no rise, empty or loaded"));
        assert!(written.contains(why), "{name}: {written}");
        for open in [
            "marked edge at rest",
            "latch l",
            "torque when set",
            "plumb across",
            "signature",
        ] {
            assert!(!written.contains(open), "{name}: {open}");
        }
    }
    // Where only this vehicle has no safe lock, the empty lift may be set up all the same.
    let (_, pages) = made(&scene("arms-too-short"), Paper::Letter);
    let written = said(&pages);
    assert!(written.contains("marked edge at rest") && written.contains("NOT TO BE ACCEPTED"));
    let (_, pages) = made(&scene("anchors-on-paper"), Paper::Letter);
    assert!(!said(&pages).contains("NOT TO BE DRILLED"));
    // Nothing is said of what lies in this slab.
    let (_, pages) = made(&scene("tall-pickup"), Paper::Letter);
    assert!(said(&pages).contains("NOT TO BE DRILLED"));
}

#[test]
fn each_stop_of_the_lift_itself_closes_the_empty_rise() {
    use crate::clearance::Withheld;
    let bay = scene("coupe-full-rise");
    let (mut study, _) = made(&bay, Paper::A4);
    assert!(stops::of_the_lift(&bay, &study).is_empty());
    for (reason, is_of_the_lift) in [
        (Withheld::CannotBeStoodUp { shortfall_m: 0.1 }, true),
        (
            Withheld::TightAsParked {
                moving: "lift/carriage left".into(),
                fixed: "shelf".into(),
                shortfall_m: 0.01,
            },
            true,
        ),
        (
            Withheld::OverRating {
                mass_kg: 5000.0,
                capacity_kg: 4200.0,
            },
            false,
        ),
    ] {
        study.withheld = vec![reason];
        let order = order(&bay, &study, Paper::A4);
        assert_eq!(
            !stops::of_the_lift(order.bay, order.study).is_empty(),
            is_of_the_lift
        );
        let said = said(&record(&order).unwrap());
        assert_eq!(!said.contains("marked edge at rest"), is_of_the_lift);
    }
}

#[test]
fn torque_is_left_to_the_manual() {
    let bay = scene("anchors-on-paper");
    let torque = bay
        .lift
        .base_plate
        .anchor
        .as_ref()
        .and_then(|one| one.torque);
    assert!(torque.is_some(), "the scene gives one");
    let (_, pages) = made(&bay, Paper::A4);
    let said = said(&pages);
    assert!(!said.contains("N m") && !said.contains("ft lbf"), "{said}");
    assert!(said.contains("Torque, from the manual"));
    assert!(said.contains("LH1") && said.contains("RH4"));
}

#[test]
fn the_same_bytes_every_time() {
    let bay = scene("tall-pickup");
    let write = || {
        let (_, pages) = made(&bay, Paper::Letter);
        PageFormat::Pdf.written("Bay", &pages).unwrap()
    };
    assert_eq!(write(), write());
}
