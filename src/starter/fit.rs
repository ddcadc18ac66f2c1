//! Which placeholder room lets a lift and a vehicle work at all?
//!
//! A common garage, larger where the pair needs it: every figure is at least the common one, and
//! rounded up the way such things are built and told.

use crate::bay::{Bay, UnitSystem};
use crate::solids::attitude;
use crate::units::{self, Length, Rounding};

/// A word of the template and the figure that stands for it.
pub(super) type Figure = (&'static str, String);

/// Lengths as either system would have them, metres.
#[derive(Clone, Copy)]
struct Plain(UnitSystem);

impl Plain {
    fn of(self, inches: f64, millimetres: f64) -> f64 {
        match self.0 {
            UnitSystem::Imperial => Length::inches(inches).m(),
            UnitSystem::Metric => Length::mm(millimetres).m(),
        }
    }

    /// The next whole number of steps.
    fn up(self, metres: f64, inches: f64, millimetres: f64) -> f64 {
        let step = self.of(inches, millimetres);
        // A part in 10^9 is rounding, not another step.
        (metres / step - 1e-9).ceil() * step
    }

    fn show(self, metres: f64) -> String {
        let length = Length::metres(metres);
        match self.0 {
            UnitSystem::Imperial if length.abs() < Length::feet(3.0) => {
                units::decimal_inches(length, 0, Rounding::Nearest)
            }
            UnitSystem::Imperial => units::feet_inches(length, 1, Rounding::Nearest),
            UnitSystem::Metric => units::millimetres(length, 0, Rounding::Nearest),
        }
    }
}

/// The step of an aim in a starter file, metres.
pub(super) fn aim_step_m(units: UnitSystem) -> f64 {
    Plain(units).of(1.0, 25.0)
}

/// What a pair asks of the room, metres; all 0 when nothing is known of it.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Needs {
    /// To drive through: clear height and clear width.
    height_m: f64,
    width_m: f64,
    /// To tip a column up.
    tipping_up_m: f64,
    /// From what is lined up with the posts to the vehicle's nose and tail.
    ahead_m: f64,
    behind_m: f64,
    /// How far into the bay from the posts it is lined up.
    aim_m: f64,
}

impl Needs {
    /// Of the pair in a bay, for an aim so far into the bay.
    pub(super) fn of(bay: &Bay, aim_m: f64) -> Self {
        let over_all = OverAll::of(bay);
        let (policy, parking) = (&bay.policy, &bay.parking);
        // Both sides of a gap may be off: by their place and by half their size.
        let trust = 1.5 * (policy.measured_garage.m() + policy.measured_vehicle.m());
        let astray = policy.beside_vehicle.m()
            + parking.repeat_across.m()
            + parking.repeat_yaw.rad().sin() * (over_all.ahead_m + over_all.behind_m)
            + trust;
        let column = &bay.lift.column;
        Self {
            height_m: over_all.top_m + policy.over_vehicle.m() + trust,
            width_m: over_all.width_m + 2.0 * astray,
            // A column is tipped up over the diagonal of its side.
            tipping_up_m: column.height.m().hypot(column.width.min(column.depth).m()),
            ahead_m: over_all.ahead_m,
            behind_m: over_all.behind_m,
            aim_m,
        }
    }
}

/// The figures of a room that meets the needs.
pub(super) fn figures(needs: &Needs, units: UnitSystem) -> Vec<Figure> {
    let plain = Plain(units);
    // The lower edge of an open door hangs a little below the header, hence the allowance.
    let through = needs.height_m + plain.of(2.0, 50.0);
    let opening_height = plain.of(108.0, 2750.0).max(plain.up(through, 3.0, 50.0));
    let opening_width = plain
        .of(120.0, 3000.0)
        .max(plain.up(needs.width_m, 6.0, 100.0));

    let panels = (opening_height / plain.of(24.0, 610.0)).ceil().max(1.0);
    let panel_height = plain.up(opening_height / panels, 1.0, 10.0);

    // Everything over the door follows from its height.
    let head_bottom = opening_height + plain.of(15.0, 370.0);
    let over_head_unit = head_bottom + plain.of(8.0, 200.0) + plain.of(4.0, 100.0);
    let tipping_up = needs.tipping_up_m + plain.of(2.0, 50.0);
    let ceiling = plain
        .of(156.0, 3960.0)
        .max(plain.up(over_head_unit.max(tipping_up), 6.0, 100.0));

    let behind = needs.behind_m - needs.aim_m + plain.of(24.0, 600.0);
    let post_line = plain.of(180.0, 4600.0).max(plain.up(behind, 6.0, 100.0));
    let ahead = post_line + needs.aim_m + needs.ahead_m + plain.of(36.0, 900.0);
    let depth = plain.of(360.0, 9100.0).max(plain.up(ahead, 12.0, 100.0));

    [
        ("ROOM_DEPTH", depth),
        ("OPENING_WIDTH", opening_width),
        ("OPENING_HEIGHT", opening_height),
        ("CEILING", ceiling),
        ("PANEL_HEIGHT", panel_height),
        ("TRACK_LENGTH", opening_height + plain.of(6.0, 150.0)),
        ("SPRING_HEIGHT", opening_height + plain.of(14.0, 350.0)),
        ("RAIL_BOTTOM", opening_height + plain.of(18.0, 450.0)),
        ("RAIL_LENGTH", opening_height + plain.of(24.0, 600.0)),
        ("HEAD_BOTTOM", head_bottom),
        ("LIGHT_Y", post_line),
        ("LIGHT_BOTTOM", ceiling - plain.of(6.0, 150.0)),
        ("POST_LINE", post_line),
        ("AIM", needs.aim_m),
    ]
    .map(|(word, metres)| (word, plain.show(metres)))
    .into()
}

/// A vehicle with everything that is fixed on it, metres.
struct OverAll {
    top_m: f64,
    /// Over mirrors and load, twice the farther side.
    width_m: f64,
    /// To its ends along its length, from its centre of gravity.
    ahead_m: f64,
    behind_m: f64,
}

impl OverAll {
    fn of(bay: &Bay) -> Self {
        let vehicle = &bay.vehicle;
        let mirrors = vehicle
            .mirrors
            .map_or(vehicle.body_width, |mirrors| mirrors.width_over);
        // Without a known balance the middle of the wheelbase is as good a guess as any: the study
        // of the finished file decides.
        let lined_up = attitude::centre_of_gravity(vehicle).map_or_else(
            |_| vehicle.front_overhang.m() + 0.5 * vehicle.wheelbase.m(),
            |balance| -balance.plan_m.y,
        );
        let mut over_all = Self {
            top_m: vehicle.height.m(),
            width_m: vehicle.body_width.max(mirrors).m(),
            ahead_m: lined_up,
            behind_m: vehicle.length.m() - lined_up,
        };
        for part in &vehicle.attached {
            let side = part.across.abs().m() + 0.5 * part.width.m();
            over_all.top_m = over_all.top_m.max(part.top.m());
            over_all.width_m = over_all.width_m.max(2.0 * side);
            over_all.ahead_m = over_all.ahead_m.max(lined_up - part.from.m());
            over_all.behind_m = over_all.behind_m.max(part.to.m() - lined_up);
        }
        over_all
    }
}
