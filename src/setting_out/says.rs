//! What is said of how far off marks may be.

use glam::DVec2;

use super::stop_marks::StopMarks;
use crate::bay::{Bay, UnitSystem};
use crate::clearance::uncertainty::Uncertainty;
use crate::units::{Length, Rounding, feet_inches, millimetres};

/// Finer than a tape shows: what is compared must not seem to be more by its rounding.
fn fine(bay: &Bay, metres: f64, rounding: Rounding) -> String {
    let length = Length::metres(metres);
    match bay.units {
        UnitSystem::Imperial => feet_inches(length, 64, rounding),
        UnitSystem::Metric => millimetres(length, 1, rounding),
    }
}

/// Of marks of the lift: how far off, and what the study counted with.
pub(super) fn of_marks(bay: &Bay, what: &str, off: DVec2) -> String {
    let up = |metres: f64| fine(bay, metres, Rounding::Up);
    // Without what the posts are off for not being plumb: that is another matter.
    let counted = 2.0 * Uncertainty::worst(bay).lift_m;
    let at_worst = format!(
        "With every reading at an end of what is accepted, to the nearest graduation, {what} are off by {} across the bay and \
         {} along it at most",
        up(off.x),
        up(off.y)
    );
    let down = fine(bay, counted, Rounding::Down);
    if off.max_element() <= counted + 1e-6 {
        format!("{at_worst}; the study counted with {down}.")
    } else {
        format!(
            "{at_worst}: MORE than the {down} that the study counted with. Read to the middle of \
             what is accepted, measure posts and plates once they stand, and study them as built \
             before anything is raised."
        )
    }
}

/// Of the marks for parking: how far off, and what that leaves the driver.
pub(super) fn of_stop_marks(bay: &Bay, off: &StopMarks) -> String {
    let up = |metres: f64| fine(bay, metres, Rounding::Up);
    let down = |metres: f64| fine(bay, metres, Rounding::Down);
    let left = off.left_for_driver(bay);
    let hundredths = |radians: f64| radians.to_degrees() * 100.0;
    let at_worst = format!(
        "With every reading at an end of what is accepted, to the nearest graduation, M and N are off by \
         {} across the bay at most, they and the ends of their lines by {} along it, and no line is \
         turned by more than {:.2} deg.",
        up(off.across_m),
        up(off.along_m),
        hundredths(off.turned_rad).ceil() / 100.0
    );
    if left.across_m <= 0.0 || left.along_m <= 0.0 || left.yaw_rad <= 0.0 {
        return format!(
            "{at_worst} That is all of what the file lets the parking be off: give it more there, \
             and study it again."
        );
    }
    format!(
        "{at_worst} That comes off what the study lets the parking be off. Left for the driver, \
         either way of the marks: {} across, {} along, {:.2} deg of heading.",
        down(left.across_m),
        down(left.along_m),
        hundredths(left.yaw_rad).floor() / 100.0
    )
}
