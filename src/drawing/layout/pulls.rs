//! The list of pulls, in the order of the work.

use super::Made;
use crate::drawing::sheet::{Frame, Row, Sheet, listing};
use crate::report::{AS_FILED, on_one_line};

/// What every page of a lift says of which something is not measured.
pub(super) const NOT_TO_BE_SET_OUT: &str = "NOT TO BE SET OUT: something of the file is not measured. \
     Every place and reading here is as filed.";

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
        rows.push(Row::Says(step.says.clone()));
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
