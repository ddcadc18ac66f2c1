//! Two bays side by side: one carriage, one eye, two verdicts.
#![allow(clippy::float_cmp)] // travels that are copied or clamped, not worked out

use bayrise::panels::{Action, Desk, overlay, shown};
use bayrise::solids::list::solids;
use egui::{Rect, pos2};

use crate::{desk, painted, window};

/// The tall columns with the short ones beside them.
fn pair() -> Desk {
    both("tall-columns", "short-columns")
}

fn both(left: &str, right: &str) -> Desk {
    let mut open = desk(left);
    open.put_beside(desk(right));
    open
}

fn other(desk: &Desk) -> &Desk {
    &desk.beside.as_ref().unwrap().desk
}

fn travels(desk: &Desk) -> [f64; 2] {
    [desk.rise.travel_m, other(desk).rise.travel_m]
}

#[test]
fn the_carriages_go_together_as_far_as_each_lift_goes() {
    let mut desk = pair();
    let tops = [desk.full_travel_m(), other(&desk).full_travel_m()];
    let mut actions: Vec<Action> = [0.4, 1.0, tops[0].min(tops[1]), tops[0].max(tops[1]), 0.2]
        .map(Action::Travel)
        .into();
    actions.extend([Action::LockUp, Action::LockDown, Action::ToFloor]);
    for action in actions {
        desk.apply(action);
        let [open, beside] = travels(&desk);
        assert!(desk.is_linked());
        assert!(
            (open.min(tops[1]) - beside).abs() < 1e-12,
            "{open} {beside}"
        );
    }
}

#[test]
fn each_goes_to_its_own_highest_safe_lock() {
    let mut desk = both("coupe-full-rise", "tall-pickup");
    let own = [desk.safe_travel_m(), other(&desk).safe_travel_m()].map(Option::unwrap);
    assert!((own[0] - own[1]).abs() > 0.01, "two lifts, two locks");
    desk.apply(Action::ToSafeLock);
    assert_eq!(travels(&desk), own);
    assert!(!desk.is_linked());
    desk.apply(Action::Travel(0.5));
    assert_eq!(travels(&desk), [0.5, 0.5]);

    // One that has no safe lock goes nowhere.
    let mut desk = both("coupe-full-rise", "no-safe-lock");
    assert_eq!(other(&desk).safe_travel_m(), None);
    desk.apply(Action::Travel(0.7));
    desk.apply(Action::ToSafeLock);
    assert!(travels(&desk)[0] > 0.0);
    assert_eq!(travels(&desk)[1], 0.0);
}

#[test]
fn what_goes_higher_goes_on_alone() {
    for (left, right) in [
        ("tall-columns", "short-columns"),
        ("short-columns", "tall-columns"),
    ] {
        let mut desk = both(left, right);
        let tops = [desk.full_travel_m(), other(&desk).full_travel_m()];
        desk.apply(Action::PlayPause);
        let mut ticks = 0;
        while desk.rise.playing {
            desk.apply(Action::Tick(0.25));
            ticks += 1;
            assert!(ticks < 1000, "{left}: the raise ends");
        }
        assert_eq!(travels(&desk), tops, "{left}");
        // From the top it begins anew.
        desk.apply(Action::PlayPause);
        assert!(desk.rise.playing);
        desk.apply(Action::Tick(0.25));
        assert!(travels(&desk).into_iter().all(|travel| travel < 0.1));
    }
    // Lock by lock too.
    let mut desk = both("short-columns", "tall-columns");
    for _ in 0..60 {
        desk.apply(Action::LockUp);
    }
    let top = |desk: &Desk| desk.locks_m().last().copied().unwrap();
    assert_eq!(travels(&desk), [top(&desk), top(other(&desk))]);
}

#[test]
fn what_is_said_of_each_is_what_its_own_study_says() {
    let mut desk = both("coupe-full-rise", "tall-pickup");
    let mut alone = [crate::desk("coupe-full-rise"), crate::desk("tall-pickup")];
    let tops = alone.each_ref().map(Desk::full_travel_m);
    for share in [0.0, 0.3, 0.62, 0.9, 1.0] {
        for door in [0.0, 1.0] {
            let travel_m = share * tops[0].max(tops[1]);
            let actions = [Action::Door(door), Action::Travel(travel_m)];
            for action in actions {
                desk.apply(action.clone());
                for one in &mut alone {
                    one.apply(action.clone());
                }
            }
            let open = desk.rise.travel_m;
            alone[1].apply(Action::Travel(open));
            for (together, alone) in [(&desk, &alone[0]), (other(&desk), &alone[1])] {
                assert_eq!(overlay::head_lines(together), overlay::head_lines(alone));
                assert_eq!(shown::state(together), shown::state(alone));
                assert_eq!(together.here, alone.here);
            }
        }
    }
}

#[test]
fn a_metre_is_as_long_in_both_and_both_are_looked_at_alike() {
    let mut desk = both("coupe-full-rise", "camper-under-ties");
    for bay in ["open", "other"] {
        let of = if bay == "open" {
            &mut desk
        } else {
            &mut desk.beside.as_mut().unwrap().desk
        };
        let listed = solids(&of.verdict.as_ref().unwrap().bay, of.door_travel(), 0.0).unwrap();
        of.set_bounds(&listed);
    }
    desk.follow();
    let size = |desk: &Desk| desk.bounds_m[1] - desk.bounds_m[0];
    assert!((size(&desk) - size(other(&desk))).length() < 1e-9);
    for action in [
        Action::Orbit(0.4, 0.1),
        Action::Zoom(0.8),
        Action::Pan(0.1, 0.05),
        Action::Look(bayrise::panels::camera::Sight::Side),
        Action::Look(bayrise::panels::camera::Sight::Plan),
        Action::FrameAll,
    ] {
        desk.apply(action.clone());
        let low = [desk.bounds_m[0], other(&desk).bounds_m[0]];
        for step in [
            glam::DVec3::X,
            glam::DVec3::Y,
            glam::DVec3::Z,
            glam::DVec3::splat(1.3),
        ] {
            let [a, b] = [(&desk, low[0]), (other(&desk), low[1])]
                .map(|(desk, low)| desk.camera.project(low + step, 0.8).unwrap());
            assert!((a - b).length() < 1e-9, "{action:?}: {a} {b}");
        }
    }
    let together = desk.bounds_m;
    desk.apply(Action::TakeBesideAway);
    assert!(desk.beside.is_none());
    assert!(size(&desk).length() <= (together[1] - together[0]).length());
}

#[test]
fn before_people_neither_goes_above_its_own_safe_lock() {
    let mut desk = both("coupe-full-rise", "tall-pickup");
    let own = [desk.safe_travel_m(), other(&desk).safe_travel_m()].map(Option::unwrap);
    desk.apply(Action::ToTop);
    desk.apply(Action::ShowMode(true));
    for _ in 0..400 {
        desk.apply(Action::Tick(0.25));
        let now = travels(&desk);
        for (now, own) in now.into_iter().zip(own) {
            assert!(now <= own + 1e-12, "{now} {own}");
        }
    }
}

#[test]
fn a_change_of_the_open_bay_changes_nothing_beside_it() {
    let mut desk = both("coupe-full-rise", "coupe-full-rise");
    let before = overlay::head_lines(other(&desk));
    desk.apply(Action::Set {
        path: "garage.ceiling".into(),
        value: "Flat(height: \"3000 mm\")".into(),
    });
    desk.study_now();
    assert!(desk.is_current(), "{:?}", desk.notices);
    assert_eq!(overlay::head_lines(other(&desk)), before);
    assert_ne!(overlay::head_lines(&desk), before);
}

#[test]
fn the_view_is_shared_in_halves_and_each_carries_its_verdict() {
    let harness = window(both("tall-columns", "no-safe-lock"), [1600.0, 900.0]);
    let world = harness.state();
    let (left, right) = overlay::halves(world.view, &world.desk);
    let right = right.unwrap();
    assert!((left.width() - right.width()).abs() < 1e-3);
    assert!(left.right() <= right.left() && right.right() <= world.view.right() + 0.01);
    for (half, desk) in [(left, &world.desk), (right, other(&world.desk))] {
        for line in overlay::head_lines(desk) {
            let seen = painted(&harness).into_iter().any(|text| {
                text.text == line.words
                    && half.contains_rect(text.rect)
                    && text.clip.intersects(text.rect)
            });
            assert!(seen, "{:?} in {half:?}", line.words);
        }
    }
    // Without a second bay all of the view is the first one's.
    let whole = Rect::from_min_max(pos2(3.0, 4.0), pos2(103.0, 50.0));
    assert_eq!(overlay::halves(whole, &desk("tall-columns")), (whole, None));
}
