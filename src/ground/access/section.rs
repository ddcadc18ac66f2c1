//! What is said of doors and people?

mod doors;
mod garage_door;
mod under;
mod way_out;
mod ways;

pub use under::{posture, tall};

use crate::bay::{Aim, Bay, Side};
use crate::clearance::{DoorRoom, LEAVE_M, ShiftFound, Study, Swing, WayKind};
use crate::ground::{Quantity, Said, Section, Topic};
use crate::solids::attitude::centre_of_gravity;

const NEEDED: &str = "common practice, no source";
/// Exit access in workplaces, 29 CFR 1910.36(g)(2): 28 in. Homes are not under it.
const EXIT_M: f64 = 28.0 * 0.0254;

/// The section on doors and people.
pub(in crate::ground) fn section(bay: &Bay, study: &Study) -> Section {
    let mut figures = Vec::with_capacity(20);
    doors::doors(bay, study, &mut figures);
    ways::ways(bay, study, &mut figures);
    garage_door::garage_door(bay, study, &mut figures);
    under::under(bay, study, &mut figures);
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
        if let Some(side) = way_out::without_a_door(bay, study) {
            return Said::new(format!(
                "Whether the driver can get out is not known: no front door is given on the \
                 vehicle's {}.",
                side_word(side)
            ));
        }
        if let Some(way) = way_out::too_narrow(bay, study) {
            return Said::new("With the vehicle down the ")
                .and(door.name.clone())
                .and(" leaves a gap of ")
                .down(gap)
                .and(", but whether the driver gets away from there is not known: ")
                .and(match ways::way_name(way).1 {
                    name if name.starts_with("way") => format!("the {name}"),
                    name => name.into_owned(),
                })
                .and(" leaves only ")
                .down(Quantity::Length(way.width_m))
                .and(" where about ")
                .up(Quantity::Length(LEAVE_M))
                .and(" is needed.");
        }
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
        _ => said.and(
            " No place farther in or out where the arms reach, the balance holds and the room \
             allows it opens it far enough.",
        ),
    }
}

/// Where to park so that the driver gets out, and what that costs.
fn and_shift(said: Said, bay: &Bay, shift: &ShiftFound) -> Said {
    let balance = match (centre_of_gravity(&bay.vehicle), bay.lift.cg_window) {
        (Ok(_), Some(_)) => " and the balance holds, in the lift's window and on the pads",
        (Ok(_), None) => " and the balance holds on the pads",
        (Err(_), _) => "; whether the balance holds is not known",
    };
    let said = said
        .and(" Parked ")
        .near(Quantity::Length(shift.along_m.abs()))
        .and(farther(shift.along_m))
        .and(" it opens ")
        .down(Quantity::Angle(shift.swing.angle_rad))
        .and(", a gap of ")
        .down(Quantity::Length(shift.swing.gap_m))
        .and(format!(": every arm still reaches{balance}"));
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
