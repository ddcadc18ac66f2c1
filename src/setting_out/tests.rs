//! Do the pulls lead where the solids stand?

use super::*;
use crate::bay::{Side, Slab};
use crate::clearance::{Unknown, Withheld, study};
use crate::ground::Topic;
use crate::solids::posts::posts;
use crate::solids::test_bay::test_bay;
use crate::units::Length;

const INCH: f64 = 0.0254;

fn drillable() -> Bay {
    let mut bay = test_bay();
    bay.slab = Some(Slab {
        post_tensioned: Some(false),
        heated: Some(false),
        buried_services: Some(false),
        void_below: Some(false),
        suspended: Some(false),
        ..Slab::default()
    });
    bay
}

fn of(bay: &Bay) -> SettingOut {
    setting_out(bay, &study(bay).unwrap())
}

fn read(out: &SettingOut, from: &str, to: &str) -> f64 {
    let pulls = out.steps.iter().flat_map(|step| &step.pulls);
    let mut found = pulls.filter(|pull| pull.ends == [from, to]);
    found.next().unwrap().reading.expected_m / INCH
}

#[test]
fn diagonals_by_hand() {
    // Post line 168 in, faces 116 in apart: the diagonal is the root of 168^2 + 116^2.
    let out = of(&drillable());
    let diagonal = (168.0_f64 * 168.0 + 116.0 * 116.0).sqrt();
    for (from, to) in [("H", "L"), ("J", "K")] {
        assert!((read(&out, from, to) - diagonal).abs() < 1e-9);
    }
    assert!((read(&out, "K", "L") - 116.0).abs() < 1e-9);
    assert!((read(&out, "H", "K") - 168.0).abs() < 1e-9);
}

#[test]
fn three_four_five_is_square() {
    let mut bay = drillable();
    bay.lift.across = Length::inches(5.0);
    let out = of(&bay);
    let [a, b, c] = [("D", "E"), ("D", "F"), ("E", "F")].map(|(p, q)| read(&out, p, q));
    assert!((a * a + b * b - c * c).abs() < 1e-6);
    assert!((a / 3.0 - c / 5.0).abs() < 1e-9);
}

#[test]
fn plate_corners_are_those_of_the_solids() {
    let mut bay = drillable();
    bay.lift.across = Length::inches(-7.0);
    let out = of(&bay);
    for (side, name) in [(Side::Left, "left"), (Side::Right, "right")] {
        let solids = posts(&bay);
        let wanted = format!("lift/base plate {name}");
        let plate = solids.iter().find(|solid| solid.name == wanted).unwrap();
        let (low, high) = plate.bounds();
        let points = out.points.iter();
        let corners = points.filter(|point| point.kind == PointKind::Plate(side));
        let mut found = 0;
        for corner in corners {
            found += 1;
            let at = corner.at_m;
            assert!((at.x - low.x).abs() < 1e-9 || (at.x - high.x).abs() < 1e-9);
            assert!((at.y - low.y).abs() < 1e-9 || (at.y - high.y).abs() < 1e-9);
        }
        assert_eq!(found, 4);
    }
}

#[test]
fn no_hole_is_shown_while_anything_forbids_it_or_is_not_known() {
    let has_holes = |out: &SettingOut| {
        let hole = |point: &FloorPoint| matches!(point.kind, PointKind::Hole(_));
        let pulled = out.steps.iter().any(|step| step.title == "Anchor holes");
        assert_eq!(out.points.iter().any(hole), pulled);
        pulled
    };
    let bay = drillable();
    assert!(!bay.lift.base_plate.anchors.is_empty());
    let mut found = study(&bay).unwrap();
    found.withheld.clear();
    // Its thickness is not known: nothing is drilled before that.
    assert_eq!(setting_out(&bay, &found).drill, Drill::SlabNotKnown);
    assert!(!has_holes(&setting_out(&bay, &found)));
    found
        .unknown
        .retain(|one| *one != Unknown::Section(Topic::Slab));
    assert!(has_holes(&setting_out(&bay, &found)));
    // What stops the lift here stops the drill; what stops one vehicle does not.
    found.withheld = vec![Withheld::NoMarkFits];
    assert!(has_holes(&setting_out(&bay, &found)));
    found.withheld.push(Withheld::DoesNotStand {
        part: "lift/post left".into(),
        meets: "shell/ceiling".into(),
        shortfall_m: 0.1,
    });
    assert!(!has_holes(&setting_out(&bay, &found)));
    for unknown in [None, Some(true)] {
        let mut bay = drillable();
        let slab = bay.slab.as_mut().unwrap();
        slab.post_tensioned = unknown;
        let out = of(&bay);
        assert!(!has_holes(&out));
        assert!(out.drill.why_not().unwrap().contains("NO DRILLING"));
    }
    let mut bay = drillable();
    bay.slab = None;
    assert!(!has_holes(&of(&bay)));
}

#[test]
fn pulls_are_numbered_through() {
    let out = of(&drillable());
    let numbers: Vec<usize> = out
        .steps
        .iter()
        .flat_map(|step| &step.pulls)
        .map(|pull| pull.number)
        .collect();
    assert!(numbers.len() > 20);
    assert!(numbers.iter().enumerate().all(|(i, &n)| n == i + 1));
}

/// A study of which only what the slab stops is left: this bay stops for more.
fn by_slab(bay: &Bay, on: crate::ground::Date) -> Study {
    let mut found = crate::clearance::study_on(bay, Some(on)).unwrap();
    let of_slab =
        |one: &Withheld| matches!(one, Withheld::Ground { topic, .. } if *topic == Topic::Slab);
    found.withheld.retain(of_slab);
    found
}

#[test]
fn no_hole_is_shown_before_the_concrete_is_old_enough() {
    use crate::bay::Curing;
    use crate::units::{PA_PER_PSI, Pressure};
    let day = |month: i8, day: i8| jiff::civil::date(2026, month, day);
    let psi = |value: f64| Some(Pressure::pascals(value * PA_PER_PSI));
    let mut bay = drillable();
    bay.lift.manual.strength = psi(3000.0);
    let slab = bay.slab.as_mut().unwrap();
    slab.strength = psi(4000.0);
    slab.poured = Some(day(5, 14));
    slab.curing = Some(Curing::Moist);
    // 3000 of 4000 psi take nine days, whatever day is named for the first raise or for drilling.
    for (drill_on, load_on) in [
        (None, None),
        (None, Some(day(7, 20))),
        (Some(day(6, 1)), Some(day(7, 20))),
    ] {
        let slab = bay.slab.as_mut().unwrap();
        slab.drill_on = drill_on;
        slab.load_on = load_on;
        let drill = |on| setting_out(&bay, &by_slab(&bay, on)).drill;
        let early = drill(day(5, 20));
        assert_eq!(
            early,
            Drill::NotBefore(day(5, 23)),
            "{drill_on:?} {load_on:?}"
        );
        assert!(early.why_not().unwrap().contains("BEFORE 2026-05-23"));
        // Old enough to be drilled, though not yet as strong as on the day of the first raise: what
        // is left is the thickness, which is not known here.
        assert_eq!(drill(day(5, 23)), Drill::SlabNotKnown);
    }
    // Never strong enough.
    bay.lift.manual.strength = psi(5000.0);
    let found = by_slab(&bay, day(8, 1));
    let drill = setting_out(&bay, &found).drill;
    assert!(
        matches!(&drill, Drill::Stopped(what) if what.len() == 1),
        "{drill:?}"
    );
    let said = drill.why_not().unwrap();
    assert!(
        said.contains("what stops is") && said.contains("strength"),
        "{said}"
    );
}
