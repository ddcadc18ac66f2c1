//! Do the vehicle's values go together?

use super::ratings::both as mass_both;
use super::{NOISE_M, both};
use crate::bay::{Corner, NamedMass, Vehicle};
use crate::bayfile::decode::fields::Fields;
use crate::units::{Length, Mass};

/// Notes what can't be and remembers that there was something.
struct Checks<'a> {
    f: &'a Fields<'a>,
    good: bool,
}

impl Checks<'_> {
    /// A value that must go with another one; the newer of the two is shown.
    fn pair(
        &mut self,
        fits: bool,
        path: &str,
        other: &str,
        message: &str,
        label: &str,
        help: &str,
    ) {
        if self.f.newer(path, other) == path {
            self.that(fits, path, message, label, help);
        } else {
            self.that(fits, other, message, "does not go with this", help);
        }
    }

    fn that(&mut self, fits: bool, path: &str, message: &str, label: &str, help: &str) {
        if !fits {
            self.good = false;
            self.f.error(path, message, label, help);
        }
    }
}

/// The vehicle's values against each other; true when they go together.
pub(in crate::bayfile::decode) fn vehicle(f: &Fields<'_>, v: &Vehicle) -> bool {
    let mut checks = Checks { f, good: true };
    wheels(&mut checks, v);
    body(&mut checks, v);
    underbody(&mut checks, v);
    lift_points(&mut checks, v);
    masses(&mut checks, v);
    checks.good
}

/// True when a station lies no farther back than the vehicle's end.
fn within(station: Length, v: &Vehicle) -> bool {
    station.m() <= v.length.m() + NOISE_M
}

/// True when something this far from the middle line lies no farther out than the body.
fn inside(half_width: Length, v: &Vehicle) -> bool {
    half_width.m() * 2.0 <= v.body_width.m() + NOISE_M
}

fn wheels(checks: &mut Checks<'_>, v: &Vehicle) {
    let rear_axle = v.front_overhang + v.wheelbase;
    checks.pair(
        within(rear_axle, v),
        "wheelbase",
        "length",
        &format!(
            "the rear axle at {} lies behind the vehicle's end at {}",
            both(rear_axle),
            both(v.length)
        ),
        "front overhang and wheelbase must fit into the length",
        "check `front_overhang`, `wheelbase` and `length`",
    );
    checks.pair(
        v.tyre_diameter < v.height,
        "tyre.diameter",
        "height",
        "the tyres are as high as the vehicle",
        &format!("expected less than the height of {}", both(v.height)),
        "check the tyre's diameter and the vehicle's `height`",
    );
    for (axle, track) in ["front", "rear"].into_iter().zip(v.track) {
        checks.pair(
            track < v.body_width * 1.5,
            &format!("track.{axle}"),
            "body_width",
            &format!(
                "the {axle} track of {} does not go with a body {} wide",
                both(track),
                both(v.body_width)
            ),
            "expected about the body's width less a tyre's",
            "measure between the tyres' middles",
        );
    }
}

fn body(checks: &mut Checks<'_>, v: &Vehicle) {
    checks.pair(
        v.belt < v.height,
        "belt",
        "height",
        "the belt lies at or above the vehicle's height",
        &format!("expected less than {}", both(v.height)),
        "measure the belt where the sides start to lean in, below the windows",
    );
    checks.pair(
        v.sill < v.belt,
        "sill",
        "belt",
        "the sill lies at or above the belt",
        &format!("expected less than {}", both(v.belt)),
        "measure from the ground to the body's underside at its sides",
    );
    if let Some(mirrors) = &v.mirrors {
        checks.pair(
            mirrors.width_over >= v.body_width,
            "mirrors.width_over",
            "body_width",
            "the width over the mirrors is less than the body's",
            &format!("expected at least {}", both(v.body_width)),
            "measure over both mirrors, or write `mirrors: None` when they are folded",
        );
        checks.pair(
            mirrors.station.m() >= 0.0 && within(mirrors.station, v),
            "mirrors.station",
            "length",
            "the mirrors stand outside the body",
            &format!("expected a station from 0 to {}", both(v.length)),
            "measure from the front bumper",
        );
    }
}

fn underbody(checks: &mut Checks<'_>, v: &Vehicle) {
    for (i, part) in v.underbody.iter().enumerate() {
        checks.pair(
            within(part.to, v),
            &format!("underbody[{i}].to"),
            "length",
            &format!("\"{}\" ends behind the vehicle's end", part.name),
            &format!("expected at most {}", both(v.length)),
            "measure from the front bumper, and check the vehicle's `length`",
        );
        checks.pair(
            inside(part.half_width, v),
            &format!("underbody[{i}].half_width"),
            "body_width",
            &format!("\"{}\" is wider than the body", part.name),
            &format!("expected at most half of {}", both(v.body_width)),
            "measure from the vehicle's middle line, not from side to side",
        );
        checks.pair(
            part.height < v.sill,
            &format!("underbody[{i}].height"),
            "sill",
            &format!("\"{}\" does not hang lower than the sill", part.name),
            &format!("expected less than {}", both(v.sill)),
            "list only what hangs lower than the sill, with its height above the ground",
        );
    }
}

fn lift_points(checks: &mut Checks<'_>, v: &Vehicle) {
    for (i, (point, corner)) in v.lift_points.iter().zip(Corner::ALL).enumerate() {
        // Left and right alike are written once, and told once.
        if !corner.side().eq(&crate::bay::Side::Left) && *point == v.lift_points[i - 1] {
            continue;
        }
        let name = corner.name();
        let path = |field: &str| lift_point_path(checks.f, corner, field);
        let (station, half_spacing, height) =
            (path("station"), path("half_spacing"), path("height"));
        checks.pair(
            within(point.station, v),
            &station,
            "length",
            &format!("the {name} lift point lies behind the body's end"),
            &format!("expected at most {}", both(v.length)),
            "measure its `station` from the front bumper",
        );
        checks.pair(
            inside(point.half_spacing, v),
            &half_spacing,
            "body_width",
            &format!("the {name} lift point lies outside the body"),
            &format!("expected at most half of {}", both(v.body_width)),
            "measure `half_spacing` from the vehicle's middle line, not from side to side",
        );
        checks.pair(
            point.height < v.height,
            &height,
            "height",
            &format!("the {name} lift point lies at or above the vehicle's height"),
            &format!("expected less than {}", both(v.height)),
            "measure its `height` from the ground to the point under the body",
        );
    }
    for (front, rear) in [
        (Corner::FrontLeft, Corner::RearLeft),
        (Corner::FrontRight, Corner::RearRight),
    ] {
        let [ahead, behind] = [front, rear].map(|corner| v.lift_points[corner.index()].station);
        checks.that(
            ahead < behind,
            &lift_point_path(checks.f, rear, "station"),
            &format!(
                "the {} lift point does not lie behind the front one",
                rear.name()
            ),
            &format!("expected more than {}", both(ahead)),
            "stations count from the front bumper: swap `front` and `rear`, or correct them",
        );
        if v.lift_points[0] == v.lift_points[1] && v.lift_points[2] == v.lift_points[3] {
            break;
        }
    }
}

/// The path of a lift point's field: under its own name or its pair's.
fn lift_point_path(f: &Fields<'_>, corner: Corner, field: &str) -> String {
    let own = corner.name().replace(' ', "_");
    let path = format!("lift_points.{own}.{field}");
    if f.gives(&path) {
        return path;
    }
    let pair = if corner.is_front() { "front" } else { "rear" };
    format!("lift_points.{pair}.{field}")
}

/// Past either end of the body (racks, winches, what is towed on it) a mass may lie so far, metres,
/// and so far past its sides: the project's own choice.
const PAST_BODY_M: f64 = 1.5;

/// Between what an empty vehicle commonly weighs over its length times its width, kg/m²: about 120
/// to 340 of light cars to heavy pickups. Common practice, no source; beyond these it is remarked.
const PER_AREA: [f64; 2] = [100.0, 400.0];

fn masses(checks: &mut Checks<'_>, v: &Vehicle) {
    for (index, part) in v.masses.iter().enumerate() {
        let (station, across) = (part.station.m(), part.across.m().abs());
        checks.that(
            (-PAST_BODY_M..=v.length.m() + PAST_BODY_M).contains(&station),
            &format!("masses[{index}].station"),
            &format!("\"{}\" lies far off the vehicle", part.name),
            &format!("expected from 0 to {}", both(v.length)),
            "measure from the front bumper, positive toward the tail",
        );
        checks.that(
            across <= v.body_width.m() * 0.5 + PAST_BODY_M,
            &format!("masses[{index}].across"),
            &format!("\"{}\" lies far beside the vehicle", part.name),
            &format!("expected at most half of {}", both(v.body_width)),
            "measure from the vehicle's middle line",
        );
    }
    let Some([front, rear]) = v.axle_loads else {
        return;
    };
    remark_on_axle_loads(checks, v, front + rear);
    let total = v.masses.iter().fold(front + rear, |sum, m| sum + m.mass);
    checks.that(
        total.kg() > 0.0,
        "masses",
        "more is taken out than the vehicle weighs",
        "the removed parts outweigh the axle loads",
        "check the signs and units of `masses` and `axle_loads`",
    );
    if !checks.good {
        return;
    }
    // On its tyres no axle carries less than nothing.
    let on_rear = |part: &NamedMass| {
        part.mass * ((part.station.m() - v.front_overhang.m()) / v.wheelbase.m())
    };
    let rear_left = v.masses.iter().fold(rear, |sum, m| sum + on_rear(m));
    let front_left = total - rear_left;
    for (name, before, left) in [("front", front, front_left), ("rear", rear, rear_left)] {
        checks.that(
            left.kg() >= 0.0,
            "masses",
            &format!(
                "with these masses nothing would be left on the {name} axle, which carries {}",
                mass_both(before)
            ),
            "more is taken off this axle than it carries",
            "check the signs, units and stations of `masses`, and `axle_loads`",
        );
    }
}

/// Axle loads that a vehicle of that size hardly has are told, not refused.
fn remark_on_axle_loads(checks: &Checks<'_>, v: &Vehicle, kerb: Mass) {
    let per_area = kerb.kg() / (v.length.m() * v.body_width.m());
    let [least, most] = PER_AREA;
    let how = if per_area < least {
        "little"
    } else if per_area > most {
        "much"
    } else {
        return;
    };
    checks.f.cx.warning(
        checks.f.span("axle_loads"),
        &format!(
            "the axle loads come to {}: very {how} for a body {} long and {} wide",
            mass_both(kerb),
            both(v.length),
            both(v.body_width)
        ),
        "check that this is what each axle carries, not each wheel, and its unit",
        "weigh the vehicle axle by axle; pad loads and balance stand on it",
    );
}
