//! The list of pulls, in the order of the work.

use super::{Made, Order};
use crate::drawing::record::stops::{of_its_place, of_parking};
use crate::drawing::sheet::{Frame, Row, Sheet, listing};
use crate::report::{AS_FILED, on_one_line};
use crate::setting_out::STOP_LINES;

/// What every page of a lift says of which something is not measured.
pub(super) const NOT_TO_BE_SET_OUT: &str = "NOT TO BE SET OUT: something of the file is not measured. \
     Every place and reading here is as filed.";

/// What every page says of a lift that can't be used where it stands, wherever a vehicle is parked.
pub(super) fn not_as_it_is(order: &Order<'_>) -> Option<String> {
    let reasons = of_its_place(order.bay, order.study);
    let first = reasons.first()?;
    let more = match reasons.len() {
        1 => String::new(),
        count => format!(" {} more of the kind, see the report.", count - 1),
    };
    Some(format!("NOT TO BE SET OUT AS IT IS: {first}{more}"))
}

/// What the step of the stop lines begins with where the vehicle is not to be parked so.
fn not_parked_so(order: &Order<'_>) -> Option<String> {
    let reasons = of_parking(order.bay, order.study);
    let first = reasons.first()?;
    Some(format!(
        "NOT AS IT IS: the vehicle is to be parked otherwise, see what stops it. {first}"
    ))
}

pub(super) fn notes(made: &Made<'_>) -> Vec<String> {
    let policy = &made.order.bay.policy;
    let show = |length| crate::units::plus_minus(length, made.order.bay.units);
    vec![format!(
        "Pull every tape tight and level, from the same end. A reading that is not accepted is a \
         reason to stop. Accepted readings are whole millimetres and 1/32 in: read the tape in one of \
         the two, to the nearest graduation; where both ends are alike only that reading is \
         accepted, and where only one of the two is given the tape is read in that. The study counted each dimension of the room {} off at most, and each of the lift \
         {}; how far off the marks may be where every reading is only just accepted is said at \
         each step.",
        show(policy.measured_garage),
        show(policy.measured_lift)
    )]
}

pub(super) fn pages(made: &Made<'_>, frame: &Frame) -> Vec<Sheet> {
    let units = made.order.bay.units;
    let what = made.order.study.not_measured();
    let mut rows = Vec::new();
    if !what.is_empty() {
        // A place that nobody measured is not pulled to.
        rows.push(Row::Heading("No pulls: these are not measured".into()));
        rows.push(Row::Says(AS_FILED.into()));
        rows.extend(what.iter().map(|one| Row::Says(on_one_line(one))));
    }
    let steps: &[_] = if what.is_empty() {
        &made.out.steps
    } else {
        &[]
    };
    for (number, step) in steps.iter().enumerate() {
        rows.push(Row::Heading(format!("{}. {}", number + 1, step.title)));
        let sets_stop_lines = step.title == STOP_LINES;
        if let Some(warning) = sets_stop_lines.then(|| not_parked_so(made.order)).flatten() {
            rows.push(Row::Says(warning));
        }
        rows.push(Row::Says(on_one_line(&step.says)));
        for pull in &step.pulls {
            let [least, most] = pull.reading.accepted(units);
            rows.push(Row::Cells([
                pull.number.to_string(),
                format!("{} to {}: {}", pull.ends[0], pull.ends[1], pull.why),
                pull.reading.fine(units),
                least,
                most,
            ]));
        }
    }
    listing(
        frame,
        made.order.paper,
        ["No.", "Pull", "The tape reads", "accepted from", "up to"],
        &rows,
    )
}
