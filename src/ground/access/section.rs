//! What is said of doors and people?

use std::borrow::Cow;

use super::{sits_under_m, stands_under_m, tallest_percentile_standing};
use crate::bay::{Aim, Bay, DoorHeld, Side};
use crate::clearance::{
    DoorRoom, DoorState, LEAVE_M, LockState, ShiftFound, Study, Swing, Way, WayKind,
};
use crate::ground::{Bound, Figure, Quantity, Said, Section, Topic};
use crate::units::Rounding;

const NEEDED: &str = "common practice, no source";
/// Exit access in workplaces, 29 CFR 1910.36(g)(2): 28 in. Homes are not under it.
const EXIT_M: f64 = 28.0 * 0.0254;

/// The section on doors and people.
pub(in crate::ground) fn section(bay: &Bay, study: &Study) -> Section {
    let mut figures = Vec::with_capacity(20);
    doors(bay, study, &mut figures);
    ways(bay, study, &mut figures);
    garage_door(bay, study, &mut figures);
    under(bay, study, &mut figures);
    Section {
        topic: Topic::Access,
        lead: lead(bay, study),
        figures,
        notes: notes(bay, study),
        governs: None,
    }
}

const fn side_word(side: Side) -> &'static str {
    match side {
        Side::Left => "left",
        Side::Right => "right",
    }
}

/// True for a door that the driver may be behind.
fn asked(bay: &Bay, door: &DoorRoom) -> bool {
    bay.vehicle.driver.is_none_or(|driver| driver == door.side)
}

/// The door with the least gap among those the driver may be behind.
fn tightest<'a>(bay: &Bay, study: &'a Study) -> Option<&'a DoorRoom> {
    study
        .access
        .doors
        .iter()
        .filter(|door| asked(bay, door))
        .min_by(|a, b| a.down.gap_m.total_cmp(&b.down.gap_m))
}

fn lead(bay: &Bay, study: &Study) -> Said {
    let Some(door) = tightest(bay, study) else {
        return Said::new("Whether the driver can get out is not known.");
    };
    let gap = Quantity::Length(door.down.gap_m);
    if door.down.gap_m >= LEAVE_M {
        return Said::new("The driver can get out: with the vehicle down the ")
            .and(door.name.clone())
            .and(" leaves a gap of ")
            .down(gap)
            .and(".");
    }
    let said = Said::new("With the vehicle down the ")
        .and(door.name.clone())
        .and(" opens only ")
        .down(Quantity::Angle(door.down.angle_rad))
        .and(met(&door.down))
        .and(": a gap of ")
        .down(gap)
        .and(", and getting out takes about ")
        .up(Quantity::Length(LEAVE_M))
        .and(".");
    match &study.access.shift {
        Some(shift) if shift.enough => and_shift(said, bay, shift),
        _ => said.and(" No place farther in or out that the arms reach opens it far enough."),
    }
}

/// Where to park so that the driver gets out, and what that costs.
fn and_shift(said: Said, bay: &Bay, shift: &ShiftFound) -> Said {
    let window = if bay.lift.cg_window.is_some() {
        " and the balance point stays in the manual's window"
    } else {
        ""
    };
    let said = said
        .and(" Parked ")
        .near(Quantity::Length(shift.along_m.abs()))
        .and(farther(shift.along_m))
        .and(" it opens ")
        .down(Quantity::Angle(shift.swing.angle_rad))
        .and(", a gap of ")
        .down(Quantity::Length(shift.swing.gap_m))
        .and(format!(": every arm still reaches{window}"));
    match shift.highest_clear_lock {
        Some(lock) if shift.without_loss => said.and(format!(
            ", and lock {lock} is clear, no lower than as parked now."
        )),
        Some(lock) => said.and(format!(", but the highest clear lock is only {lock}.")),
        None if shift.without_loss => said.and("; no lock is clear there either."),
        None => said.and(", but then no lock is clear."),
    }
}

const fn farther(along_m: f64) -> &'static str {
    if along_m > 0.0 {
        " farther into the bay"
    } else {
        " nearer to the door wall"
    }
}

fn met(swing: &Swing) -> String {
    swing
        .meets
        .as_deref()
        .map(|name| format!(", where it meets the {}", thing(name)))
        .unwrap_or_default()
}

/// A solid's name in a sentence.
fn thing(name: &str) -> String {
    match name.split_once('/') {
        Some(("lift" | "shell", rest)) => match rest.rsplit_once(' ') {
            Some((noun, side @ ("left" | "right"))) => format!("{side} {noun}"),
            _ => rest.into(),
        },
        Some(("obstacle", rest)) => rest.into(),
        _ => name.replace('/', " "),
    }
}

/// What the driver can do where the door does not open enough.
fn way_out(study: &Study) -> String {
    match &study.access.shift {
        Some(shift) if shift.enough => format!(
            "park{} as told above, and check again with it",
            farther(shift.along_m)
        ),
        _ => "have the driver try it, leave by another door, or look for a lift with more width \
              between its columns or with turned ones"
            .into(),
    }
}

fn doors(bay: &Bay, study: &Study, figures: &mut Vec<Figure>) {
    if study.access.doors.is_empty() {
        figures.push(Figure::unknown(
            "door_gap",
            "gap to get out by",
            "measure the front doors into vehicle.opening_parts: hinge, length, height, angle",
        ));
        return;
    }
    for (index, door) in study.access.doors.iter().enumerate() {
        let id = format!("door_{}_down", index + 1);
        let what = format!("{}, gap with the vehicle down", door.name);
        let found = Quantity::Length(door.down.gap_m);
        let figure = if asked(bay, door) {
            let limit = Quantity::Length(LEAVE_M);
            Figure::judged(id, what, found, Bound::AtLeast, limit)
                .undecided_unless_it_passes(way_out(study))
                .source(NEEDED)
        } else {
            Figure::noted(id, what, found).rounded(Rounding::Down)
        };
        figures.push(
            figure.note(
                Said::new("opens ")
                    .down(Quantity::Angle(door.down.angle_rad))
                    .and(" of ")
                    .near(Quantity::Angle(door.opens_rad))
                    .and(met(&door.down)),
            ),
        );
        figures.extend(at_waist(index, door));
    }
    if let Some(shift) = study.access.shift.as_ref().filter(|shift| !shift.enough) {
        figures.push(
            Figure::noted(
                "best_shift",
                "most gap at any parking place that every arm reaches",
                Quantity::Length(shift.swing.gap_m),
            )
            .rounded(Rounding::Down)
            .note(
                Said::new("parked ")
                    .near(Quantity::Length(shift.along_m.abs()))
                    .and(farther(shift.along_m))
                    .and(", looked for in steps; not enough to get out"),
            ),
        );
    }
}

fn at_waist(index: usize, door: &DoorRoom) -> Option<Figure> {
    let (lock, swing) = door.at_waist.as_ref()?;
    Some(
        Figure::noted(
            format!("door_{}_waist", index + 1),
            format!("{}, gap about waist height, lock {lock}", door.name),
            Quantity::Length(swing.gap_m),
        )
        .rounded(Rounding::Down)
        .note(
            Said::new("opens ")
                .down(Quantity::Angle(swing.angle_rad))
                .and(met(swing)),
        ),
    )
}

fn way_name(way: &Way) -> (Cow<'static, str>, Cow<'static, str>) {
    match way.kind {
        WayKind::BesideVehicle(side) => (
            format!("way_{}", side_word(side)).into(),
            format!("way on the {} of the vehicle", side_word(side)).into(),
        ),
        WayKind::VehicleToPost(side) => (
            format!("way_to_post_{}", side_word(side)).into(),
            format!("between the vehicle and the {} post", side_word(side)).into(),
        ),
        WayKind::BehindPost(side) => (
            format!("way_behind_post_{}", side_word(side)).into(),
            format!("outside the {} post", side_word(side)).into(),
        ),
        WayKind::BetweenPosts => (
            "way_between_posts".into(),
            "between the carriages, vehicle raised".into(),
        ),
        WayKind::Back => ("way_back".into(), "way at the back of the bay".into()),
        WayKind::Door => ("way_door".into(), "way at the door, shut".into()),
    }
}

/// True for a way that the driver takes from the door he gets out by.
fn is_needed(bay: &Bay, way: &Way) -> bool {
    match way.kind {
        WayKind::BesideVehicle(side) => bay.vehicle.driver.is_none_or(|driver| driver == side),
        _ => false,
    }
}

/// The wider of the ways past the vehicle's two ends, where there are both: people leave by one.
fn past_an_end(study: &Study) -> Option<f64> {
    let width = |kind: WayKind| {
        let mut ways = study.access.ways.iter();
        ways.find(|way| way.kind == kind).map(|way| way.width_m)
    };
    Some(width(WayKind::Back)?.max(width(WayKind::Door)?))
}

fn ways(bay: &Bay, study: &Study, figures: &mut Vec<Figure>) {
    let boxed_in = past_an_end(study).is_some_and(|wider| wider < LEAVE_M);

    for way in &study.access.ways {
        let (id, what) = way_name(way);
        let at_an_end = matches!(way.kind, WayKind::Back | WayKind::Door);
        let figure = if is_needed(bay, way) || (at_an_end && boxed_in) {
            Figure::judged(
                id,
                what,
                Quantity::Length(way.width_m),
                Bound::AtLeast,
                Quantity::Length(LEAVE_M),
            )
            .undecided_unless_it_passes(
                "walk it with the vehicle in its place: move what stands there, park elsewhere, or \
                 see how people get out",
            )
            .source(NEEDED)
        } else {
            Figure::noted(id, what, Quantity::Length(way.width_m)).rounded(Rounding::Down)
        };
        let between = format!("{} and {}", thing(&way.between.0), thing(&way.between.1));
        figures.push(if way.width_m <= 0.0 {
            figure.note(format!("no way through: {between}"))
        } else if way.width_m < LEAVE_M {
            figure.note(format!("too narrow for most people: {between}"))
        } else if way.width_m < EXIT_M {
            figure.note(format!("narrow: {between}"))
        } else {
            figure
        });
    }
}

/// Whether the garage door runs shut on a lock: it stands shut with its margins, is nowhere tight
/// beside the vehicle as parked, and may be run.
fn shuts_on(study: &Study, lock: usize) -> bool {
    let shut = study.doors.shut.locks.get(lock - 1) == Some(&LockState::Clear);
    let tight = study
        .tight_as_parked
        .iter()
        .any(|pair| pair.door == Some(DoorState::Shut));
    let runs = study
        .locks
        .iter()
        .any(|found| found.lock == lock && found.door_may_run);
    shut && !tight && runs
}

fn garage_door(bay: &Bay, study: &Study, figures: &mut Vec<Figure>) {
    let words = |words: &str| Quantity::Words(words.into());
    if let Some(shut) = &study.access.shut {
        let what = "garage door with the vehicle down";
        figures.push(match &shut.meets {
            None => Figure::noted("door_shuts_down", what, words("shuts")),
            Some((moving, fixed)) => Figure::noted(
                "door_shuts_down",
                what,
                words(if shut.while_running {
                    "does not run shut with its margins"
                } else {
                    "does not shut with its margins"
                }),
            )
            .undecided(
                "park elsewhere, or settle whether the door stays open whenever the vehicle is \
                 there",
            )
            .note(format!("{} and {}", thing(moving), thing(fixed))),
        });
        if let Some(lock) = study.highest_clear_lock {
            let shuts = shuts_on(study, lock);
            let held_open = bay.policy.door_held == Some(DoorHeld::Open);
            let figure = Figure::noted(
                "door_shuts_lock",
                format!("garage door on lock {lock}"),
                words(if shuts { "shuts" } else { "stays open" }),
            );
            figures.push(if held_open && !shuts {
                figure.note("the policy holds it open while the vehicle is up")
            } else if shuts {
                figure
            } else {
                figure.note("it is not shown to run shut with its margins there")
            });
        }
    }
    if bay.garage.door != crate::bay::Door::None {
        turned(study, figures);
    }
}

fn turned(study: &Study, figures: &mut Vec<Figure>) {
    let what = "garage door with the vehicle turned round, down";
    let again = "set parking.facing the other way round and check again";
    let Some(turned) = &study.access.turned else {
        figures.push(Figure::unknown("door_shuts_turned", what, again));
        return;
    };
    let room = Said::new("by boxes about its parts: ")
        .down(Quantity::Length(turned.to_door_m))
        .and(" to the shut door or its wall and ")
        .down(Quantity::Length(turned.to_back_m))
        .and(" to the back; arms and raise turned round are not looked at here");
    if let Some((moving, fixed)) = &turned.meets {
        figures.push(
            Figure::noted(
                "door_shuts_turned",
                what,
                Quantity::Words("not shown to fit turned round".into()),
            )
            .note(
                Said::new(format!(
                    "{} comes too near {}; ",
                    thing(moving),
                    thing(fixed)
                ))
                .and_said(room),
            )
            .cure(again),
        );
        return;
    }
    figures.push(if turned.shuts {
        Figure::noted("door_shuts_turned", what, Quantity::Words("shuts".into())).note(room)
    } else {
        Figure {
            found: Some(Quantity::Words("not shown to shut".into())),
            ..Figure::noted("door_shuts_turned", what, Quantity::Words(String::new()))
        }
        .note(room)
        .cure(again)
    });
}

/// Who stands and sits under the body on the highest safe lock, or the highest clear one.
fn under(bay: &Bay, study: &Study, figures: &mut Vec<Figure>) {
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
        .note(match tallest_percentile_standing(room) {
            Some(one) => format!(
                "with shoes and room to move, {} of 100 {} of ANSUR II stand upright",
                one.of_hundred, one.who
            ),
            None => "not even 5 of 100 women of ANSUR II stand upright".to_owned(),
        }),
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
        figures.push(figure.note(posture(room, height)));
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

/// The policy's heights are with shoes and whatever is on the head.
#[must_use]
pub fn posture(room_m: f64, height_m: f64) -> Said {
    let movement = stands_under_m(0.0) * 5.0 / 9.0;
    let sits = sits_under_m(height_m);
    if room_m >= height_m + movement {
        "stands and moves upright".into()
    } else if room_m >= height_m {
        Said::new("stands upright, with less than ")
            .up(Quantity::Length(movement))
            .and(" to move in (EN 547-1, from memory)")
    } else if room_m >= sits {
        Said::new("does not stand upright; sits on a low stool, which takes ")
            .up(Quantity::Length(sits))
    } else {
        Said::new("neither stands upright nor sits on a low stool, which takes ")
            .up(Quantity::Length(sits))
    }
}

fn notes(bay: &Bay, study: &Study) -> Vec<Said> {
    let mut notes = vec![
        "Doors are opened until they nearly touch, arms swung aside; ways are measured in plan, \
         vehicle down. Both at worst, anywhere in the parking box. Raised, the vehicle leaves them \
         free for whoever is shorter than what is under the body."
            .into(),
        "Statures are those of ANSUR II, public data, unweighted: service members, no sample of \
         everybody; shoes 40 mm and movement 50 mm by EN 547-1, from memory."
            .into(),
    ];
    if let Some(shift) = study.access.shift.as_ref().filter(|shift| shift.enough) {
        let (word, offset) = match bay.parking.aim {
            Aim::CentreOfGravity(offset) => ("CentreOfGravity", offset),
            Aim::LiftPoints(offset) => ("LiftPoints", offset),
        };
        notes.push(
            Said::new(format!("To park there, write parking.aim as {word} of "))
                .near(Quantity::Length(offset.m() + shift.along_m))
                .and("."),
        );
    }
    let narrow = study
        .access
        .ways
        .iter()
        .filter(|way| way.width_m < EXIT_M && !matches!(way.kind, WayKind::VehicleToPost(_)))
        .count();
    if narrow > 0 {
        notes.push(
            Said::new("For comparison: workplaces keep ")
                .near(Quantity::Length(EXIT_M))
                .and(format!(
                    " of exit access (29 CFR 1910.36(g)(2)); homes are not under it. {} of the \
                     ways above {} narrower.",
                    narrow,
                    if narrow == 1 { "is" } else { "are" }
                )),
        );
    }
    notes
}

#[cfg(test)]
mod tests;
