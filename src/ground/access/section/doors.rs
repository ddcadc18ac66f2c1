//! How far do the front doors open, as parked and at waist height?

use super::way_out::{has_door, sides};
use super::{NEEDED, asked, farther, met, side_word};
use crate::bay::Bay;
use crate::clearance::{DoorRoom, LEAVE_M, ShiftFound, Study};
use crate::ground::{Bound, Figure, Quantity, Said};
use crate::units::Rounding;

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

pub(super) fn doors(bay: &Bay, study: &Study, figures: &mut Vec<Figure>) {
    if study.access.doors.is_empty() {
        figures.push(Figure::unknown(
            "door_gap",
            "gap to get out by",
            "measure the front doors into vehicle.opening_parts: hinge, length, height, angle",
        ));
        return;
    }
    for side in sides(bay).filter(|&side| !has_door(study, side)) {
        let side = side_word(side);
        figures.push(Figure::unknown(
            format!("door_gap_{side}"),
            format!("gap to get out by on the vehicle's {side}"),
            format!(
                "measure its {side} front door into vehicle.opening_parts, or say in \
                 vehicle.driver on which side the driver sits"
            ),
        ));
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
    if let Some(shift) = &study.access.shift {
        figures.extend(shifted(shift));
    }
}

/// The best place there is where none is enough; where one is, the door about waist height there.
fn shifted(shift: &ShiftFound) -> Option<Figure> {
    if !shift.enough {
        return Some(
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
    let (lock, swing) = shift.at_waist.as_ref()?;
    Some(
        Figure::noted(
            "shift_waist",
            format!("the same door parked as told above, gap about waist height, lock {lock}"),
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
