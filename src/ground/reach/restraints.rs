//! What holds the arms in their places, and how far off their points?

use super::section::{id_of, reaches};
use crate::bay::{Bay, Corner};
use crate::clearance::ArmFinding;
use crate::ground::{Bound, Figure, Quantity, Said, Standing};
use crate::solids::{ParkingError, arms};

/// What holds the arms where they are put: a lift is not to be used without.
pub(super) fn restraints(bay: &Bay) -> Figure {
    const WHAT: &str = "arm restraints";
    const SOURCE: &str = "HSE SIM 03/2010/2 (UK): arm locks on new lifts since 1983, and lifts \
                          without them prohibited";
    let arm = |corner: &Corner| &bay.lift.arms[corner.index()];
    let names = |is: &dyn Fn(&Corner) -> bool| {
        let all: Vec<&str> = Corner::ALL
            .iter()
            .filter(|&corner| is(corner))
            .map(|corner| corner.name())
            .collect();
        all.join(", ")
    };
    let held = |corner: &Corner| match (arm(corner).tooth, arm(corner).stepless_restraint) {
        (Some(_), _) => Some(true),
        (None, said) => said,
    };
    let none = names(&|corner| held(corner) == Some(false));
    if !none.is_empty() {
        return Figure::noted(
            "restraints",
            WHAT,
            Quantity::Words(format!("none on {none}")),
        )
        .source(SOURCE)
        .stopping("fit the maker's arm restraints, or choose a lift that has them")
        .reason(format!("nothing holds these arms in their place: {none}"));
    }
    let unsaid = names(&|corner| held(corner).is_none());
    if !unsaid.is_empty() {
        return Figure::unknown(
            "restraints",
            format!("{WHAT} ({unsaid})"),
            "look what holds each arm once the vehicle is up: give `tooth` for a restraint with \
             teeth, `stepless_restraint: true` for one that holds at any swing, `false` for none",
        )
        .source(SOURCE);
    }
    let words = if Corner::ALL.iter().all(|corner| arm(corner).tooth.is_some()) {
        "teeth on all four"
    } else {
        "on all four"
    };
    Figure {
        standing: Standing::Passes,
        ..Figure::noted("restraints", WHAT, Quantity::Words(words.into()))
    }
    .source(SOURCE)
}

/// Between which teeth each arm comes to rest, where they hold it.
pub(super) fn teeth(bay: &Bay) -> Vec<Said> {
    let of_arm = |corner: Corner| {
        bay.lift.arms[corner.index()].tooth?;
        let asked = arms::reach(bay, corner, ParkingError::default()).ok()?;
        let teeth: Vec<String> = within_limits(&asked)
            .into_iter()
            .map(|swing| format!("{:.1}", swing.to_degrees()))
            .collect();
        Some(match teeth.as_slice() {
            [] => format!("{} none within its swing", corner.name()),
            teeth => format!("{} {} deg", corner.name(), teeth.join(" or ")),
        })
    };
    let teeth: Vec<String> = Corner::ALL.into_iter().filter_map(of_arm).collect();
    if teeth.is_empty() {
        Vec::new()
    } else {
        vec![Said::new(format!(
            "Restraint teeth, counted from swing 0: {}. Where a lift's teeth stand otherwise, others \
             hold its arms: look at each.",
            teeth.join(", ")
        ))]
    }
}

/// The teeth beside a swing that its arm can rest at, radians.
fn within_limits(asked: &arms::ArmReach) -> Vec<f64> {
    let mut found: Vec<f64> = asked
        .rests
        .iter()
        .filter(|rest| rest.within_limits)
        .map(|rest| rest.swing_rad)
        .collect();
    found.dedup_by(|a, b| (*a - *b).abs() < 1e-9);
    found
}

/// How far from its pad's middle the lift point of an arm that reaches may come to bear.
pub(super) fn pad_off(bay: &Bay, arm: &ArmFinding) -> Option<Figure> {
    bay.lift.arms[arm.corner.index()].tooth?;
    let other = arms::reach(bay, arm.corner, ParkingError::default())
        .is_ok_and(|asked| within_limits(&asked).len() > 1);
    reaches(arm).then(|| {
        Figure::judged(
            format!("pad_off.{}", id_of(arm.corner)),
            format!(
                "{}: lift point off the middle of its pad",
                arm.corner.name()
            ),
            Quantity::Length(arm.pad_off_m),
            Bound::AtMost,
            Quantity::Length(bay.lift.pad.diameter.m() * 0.25),
        )
        .undecided_unless_it_passes(if other {
            "look before each raise that the whole pad bears: swing the arm to the other tooth, or \
             park more to the point"
        } else {
            "look before each raise that the whole pad bears, or park more to the point"
        })
        .source("half of the pad's radius: common practice, no source")
    })
}
