//! Who stands and sits under the raised body?

use crate::bay::{Bay, Person};
use crate::clearance::Study;
use crate::ground::access::people::MOVEMENT_M;
use crate::ground::access::{
    sits_under_m, tallest_percentile_sitting, tallest_percentile_standing,
};
use crate::ground::{Figure, Quantity, Said};
use crate::units::Rounding;

/// Who stands and sits under the body on the highest safe lock, or the highest clear one.
pub(super) fn under(bay: &Bay, study: &Study, figures: &mut Vec<Figure>) {
    let Some(lock) = study
        .highest_safe_lock
        .or(study.highest_clear_lock)
        .and_then(|lock| study.locks.get(lock - 1))
    else {
        return;
    };
    let room = lock.underbody_m;
    figures.push(
        Figure::noted(
            "under_body",
            format!("under the lowest part of the body on lock {}", lock.lock),
            Quantity::Length(room),
        )
        .rounded(Rounding::Down)
        .note(who(room)),
    );
    for (index, person) in bay.policy.people.iter().enumerate() {
        let height = person.height.m();
        let over = room - height;
        let id = format!("person_{}", index + 1);
        let figure = if over >= 0.0 {
            let what = format!("room over {} standing", person.name);
            Figure::noted(id, what, Quantity::Length(over)).rounded(Rounding::Down)
        } else {
            let what = format!("{} can't stand upright, short by", person.name);
            Figure::noted(id, what, Quantity::Length(-over)).rounded(Rounding::Up)
        };
        figures.push(figure.note(tall(person).and_said(posture(room, height))));
    }
    let arms = bay
        .lift
        .arms
        .iter()
        .map(|arm| arm.underside.m())
        .fold(f64::INFINITY, f64::min)
        + lock.travel_m
        - study.uncertainty.moving_lift_spread().z;
    if arms < study.access.tallest_m {
        figures.push(
            Figure::noted(
                "under_arms",
                format!("under the arms on lock {}", lock.lock),
                Quantity::Length(arms),
            )
            .rounded(Rounding::Down)
            .note("at head height or lower for the tallest person: mind the arms when walking in"),
        );
    }
}

/// Who of the percentiles stands under a height, and who sits on a low stool.
fn who(room_m: f64) -> String {
    let standing = match tallest_percentile_standing(room_m) {
        Some(one) => format!(
            "with shoes and room to move, {} of 100 {} of ANSUR II stand upright",
            one.of_hundred, one.who
        ),
        None => "not even 5 of 100 women of ANSUR II stand upright".to_owned(),
    };
    match tallest_percentile_sitting(room_m) {
        Some(one) => format!(
            "{standing}; {} of 100 {} sit on a low stool",
            one.of_hundred, one.who
        ),
        None => format!("{standing}, nor sit on a low stool"),
    }
}

/// How tall someone is, and what counts toward it.
#[must_use]
pub fn tall(person: &Person) -> Said {
    let height = Quantity::Length(person.height.m());
    match person.stature {
        Some(one) => Said::new(format!(
            "as tall as {} of 100 {} of ANSUR II at most, with shoes and nothing on the head ",
            one.of_hundred, one.who
        ))
        .up(height)
        .and(": "),
        None => Said::new("with shoes and what is on the head ")
            .up(height)
            .and(" tall: "),
    }
}

/// The policy's heights are with shoes and whatever is on the head.
#[must_use]
pub fn posture(room_m: f64, height_m: f64) -> Said {
    let sits = sits_under_m(height_m);
    if room_m >= height_m + MOVEMENT_M {
        "stands and moves upright".into()
    } else if room_m >= height_m {
        Said::new("stands upright, with less than ")
            .up(Quantity::Length(MOVEMENT_M))
            .and(" to move in (EN 547-1, from memory)")
    } else if room_m >= sits {
        Said::new("does not stand upright; sits on a low stool, which takes ")
            .up(Quantity::Length(sits))
    } else {
        Said::new("neither stands upright nor sits on a low stool, which takes ")
            .up(Quantity::Length(sits))
    }
}
