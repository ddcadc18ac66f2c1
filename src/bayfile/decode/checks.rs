//! Do the values of a bay go together?
//!
//! Only what can't be is refused here. What merely does not work (columns taller than the
//! ceiling, a vehicle too heavy, an arm that can't reach) is a finding of the study.

use super::fields::Fields;
use crate::bay::{Aim, Ceiling, Garage, Lift, Parking, Run, Vehicle};
use crate::bayfile::context::Context;
use crate::units::{Length, Rounding, feet_inches, millimetres};

/// Noise allowed between two figures that should be one, in metres.
const NOISE_M: f64 = 1e-9;

/// A length in both systems, to the nearest, for messages.
pub(super) fn both(length: Length) -> String {
    format!(
        "{} ({})",
        feet_inches(length, 16, Rounding::Nearest),
        millimetres(length, 0, Rounding::Nearest)
    )
}

/// True when the second of two values is greater than the first; else that is noted.
pub(super) fn rising(
    f: &Fields<'_>,
    low_name: &str,
    low: Length,
    high_name: &str,
    high: Length,
) -> bool {
    if low < high {
        return true;
    }
    f.error(
        high_name,
        &format!("`{high_name}` must be more than `{low_name}`"),
        &format!("expected more than {}", both(low)),
        &format!("check `{low_name}` and `{high_name}`, or swap them"),
    );
    false
}

/// The ceiling against the room and the opening; none when they don't go together.
pub(super) fn ceiling(f: &Fields<'_>, garage: &Garage) -> Option<()> {
    let fault = |message: &str, label: &str, help: &str| {
        f.error("ceiling", message, label, help);
        None
    };
    match &garage.ceiling {
        Ceiling::Gable {
            ridge_along,
            eaves,
            ridge,
            ridge_offset,
        } => {
            if ridge <= eaves {
                return fault(
                    "the gable's ridge is not higher than its eaves",
                    "`ridge` must be more than `eaves`",
                    "swap the two, or write `Flat(height: ..)`",
                );
            }
            let span = match ridge_along {
                Run::DoorToBack => garage.width,
                Run::SideToSide => garage.depth,
            };
            if ridge_offset.abs() * 2.0 >= span {
                return fault(
                    "the ridge lies outside the room",
                    "`ridge_offset` must stay below half the room",
                    "measure it from the room's middle",
                );
            }
        }
        Ceiling::Stepped { steps } => {
            let starts_at_door = steps.first().is_some_and(|s| s.from.m() <= NOISE_M);
            let rises = steps.windows(2).all(|p| p[0].from < p[1].from);
            let within = steps.iter().all(|s| s.from < garage.depth);
            if !(starts_at_door && rises && within) {
                return fault(
                    "the steps don't run from the door to the back",
                    "expected the first step at 0, each further one behind it, all inside the room",
                    "list the steps in order: `(from: \"0 in\", height: ..)` first",
                );
            }
        }
        Ceiling::Flat { .. } | Ceiling::Sloped { .. } => {}
    }
    let over_door = height_over_door(garage);
    if garage.opening.height.m() > over_door.m() + NOISE_M {
        f.error(
            "opening",
            &format!(
                "the door opening of {} reaches above the ceiling, which is {} high there",
                both(garage.opening.height),
                both(over_door)
            ),
            "the opening must fit below the ceiling at the door wall",
            "check the opening's height and the ceiling",
        );
        return None;
    }
    Some(())
}

/// The lowest ceiling over the opening, at the door wall.
fn height_over_door(garage: &Garage) -> Length {
    let half = garage.opening.width * 0.5;
    // From the left wall to the opening's two edges.
    let middle = garage.width * 0.5 + garage.opening.offset;
    let edges = [middle - half, middle + half];
    match &garage.ceiling {
        Ceiling::Flat { height } => *height,
        Ceiling::Sloped {
            run: Run::DoorToBack,
            first,
            ..
        } => *first,
        Ceiling::Sloped {
            run: Run::SideToSide,
            first,
            last,
        } => {
            let at = |x: Length| *first + (*last - *first) * (x / garage.width);
            at(edges[0]).min(at(edges[1]))
        }
        Ceiling::Gable {
            ridge_along: Run::SideToSide,
            eaves,
            ..
        } => *eaves,
        Ceiling::Gable {
            ridge_along: Run::DoorToBack,
            eaves,
            ridge,
            ridge_offset,
        } => {
            let crest = garage.width * 0.5 + *ridge_offset;
            let at = |x: Length| {
                let share = if x < crest {
                    x / crest
                } else {
                    (garage.width - x) / (garage.width - crest)
                };
                *eaves + (*ridge - *eaves) * share
            };
            at(edges[0]).min(at(edges[1]))
        }
        Ceiling::Stepped { steps } => steps.first().map_or(Length::ZERO, |s| s.height),
    }
}

/// The vehicle's values against each other.
pub(super) fn vehicle(f: &Fields<'_>, v: &Vehicle) -> bool {
    let mut good = true;
    let mut check = |fits: bool, name: &str, message: String, label: &str, help: &str| {
        if !fits {
            good = false;
            f.error(name, &message, label, help);
        }
    };
    check(
        (v.front_overhang + v.wheelbase).m() <= v.length.m() + NOISE_M,
        "wheelbase",
        format!(
            "the rear axle at {} lies behind the vehicle's end at {}",
            both(v.front_overhang + v.wheelbase),
            both(v.length)
        ),
        "front overhang and wheelbase must fit into the length",
        "check `front_overhang`, `wheelbase` and `length`",
    );
    check(
        v.tyre_diameter < v.height,
        "tyre",
        "the tyres are as high as the vehicle".into(),
        "expected less than the vehicle's height",
        "check the tyre's diameter and the vehicle's `height`",
    );
    for (axle, track) in ["front", "rear"].into_iter().zip(v.track) {
        check(
            track < v.body_width * 1.5,
            "track",
            format!(
                "the {axle} track of {} does not go with a body {} wide",
                both(track),
                both(v.body_width)
            ),
            "expected about the body's width less a tyre's",
            "measure between the tyres' middles",
        );
    }
    check(
        v.belt < v.height,
        "belt",
        format!(
            "the belt lies at or above the vehicle's height of {}",
            both(v.height)
        ),
        "expected less than the vehicle's height",
        "measure the belt where the sides start to lean in, below the windows",
    );
    check(
        v.sill < v.belt,
        "sill",
        format!("the sill lies at or above the belt at {}", both(v.belt)),
        "expected less than `belt`",
        "measure from the ground to the body's underside at its sides",
    );
    if let Some(m) = &v.mirrors {
        check(
            m.width_over >= v.body_width,
            "mirrors",
            format!(
                "the width over the mirrors is less than the body's {}",
                both(v.body_width)
            ),
            "`width_over` must be at least `body_width`",
            "measure over both mirrors, or write `mirrors: None` when they are folded",
        );
        check(
            m.station.m() >= 0.0 && m.station <= v.length,
            "mirrors",
            "the mirrors stand outside the body".into(),
            "their `station` must lie within the vehicle's length",
            "measure from the front bumper",
        );
    }
    for part in &v.underbody {
        check(
            part.to.m() <= v.length.m() + NOISE_M,
            "underbody",
            format!(
                "\"{}\" ends behind the vehicle's end at {}",
                part.name,
                both(v.length)
            ),
            "parts of the underbody lie within the vehicle's length",
            "check its `to`, from the front bumper",
        );
        check(
            part.half_width * 2.0 <= v.body_width * (1.0 + NOISE_M),
            "underbody",
            format!(
                "\"{}\" is wider than the body of {}",
                part.name,
                both(v.body_width)
            ),
            "expected a `half_width` of at most half the body's width",
            "measure from the vehicle's middle line",
        );
        check(
            part.height < v.sill,
            "underbody",
            format!(
                "\"{}\" does not hang lower than the sill at {}",
                part.name,
                both(v.sill)
            ),
            "only what hangs lower than the sill is listed",
            "check its `height` above the ground, or remove it",
        );
    }
    for (i, point) in v.lift_points.iter().enumerate() {
        let corner = crate::bay::Corner::ALL[i].name();
        check(
            point.station.m() <= v.length.m() + NOISE_M,
            "lift_points",
            format!(
                "the {corner} lift point at {} lies behind the body's end at {}",
                both(point.station),
                both(v.length)
            ),
            "lift points must lie within the body",
            "measure its `station` from the front bumper",
        );
        check(
            point.half_spacing * 2.0 <= v.body_width * (1.0 + NOISE_M),
            "lift_points",
            format!(
                "the {corner} lift point, {} from the middle, lies outside the body of {}",
                both(point.half_spacing),
                both(v.body_width)
            ),
            "lift points must lie within the body",
            "measure `half_spacing` from the vehicle's middle line, not from side to side",
        );
        check(
            point.height < v.height,
            "lift_points",
            format!(
                "the {corner} lift point lies at or above the vehicle's height of {}",
                both(v.height)
            ),
            "expected a height under the body",
            "measure its `height` from the ground",
        );
    }
    for (side, [front, rear]) in [("left", [0, 2]), ("right", [1, 3])] {
        check(
            v.lift_points[front].station < v.lift_points[rear].station,
            "lift_points",
            format!("the front {side} lift point does not lie ahead of the rear one"),
            "stations count from the front bumper",
            "swap `front` and `rear`, or check their stations",
        );
    }
    if let Some([front, rear]) = v.axle_loads {
        let total = v.masses.iter().fold(front + rear, |t, m| t + m.mass);
        check(
            total.kg() > 0.0,
            "masses",
            "more is taken out than the vehicle weighs".into(),
            "the removed parts outweigh the axle loads",
            "check the signs and units of `masses` and `axle_loads`",
        );
    }
    good
}

/// The parts of a bay against each other; each check runs when its parts could be read.
pub(super) fn between(
    cx: &Context,
    f: &Fields<'_>,
    garage: Option<&Garage>,
    lift: Option<&Lift>,
    vehicle: Option<&Vehicle>,
    parking: Option<&Parking>,
) {
    if let (Some(garage), Some(vehicle)) = (garage, vehicle) {
        if vehicle.length > garage.depth {
            cx.error(
                f.span("vehicle"),
                &format!(
                    "the vehicle is {} long, but the garage is only {} deep",
                    both(vehicle.length),
                    both(garage.depth)
                ),
                "this vehicle is longer than the bay",
                "check the vehicle's `length` and the garage's `depth`",
            );
        }
    }
    if let (Some(garage), Some(lift)) = (garage, lift) {
        let left_wall = -(garage.width * 0.5) - garage.opening.offset;
        let inside = lift.across > left_wall && lift.across < left_wall + garage.width;
        if lift.post_line >= garage.depth || !inside {
            cx.error(
                f.span("lift"),
                "the lift stands outside the garage",
                "`post_line` and `across` must lie within the walls",
                "measure `post_line` from the door wall and `across` from the opening's middle",
            );
        }
    }
    if let (Some(vehicle), Some(parking)) = (vehicle, parking) {
        if matches!(parking.aim, Aim::CentreOfGravity(_)) && vehicle.axle_loads.is_none() {
            cx.error(
                f.span("parking"),
                "the aim is the centre of gravity, but the vehicle's axle loads are not given",
                "`aim: CentreOfGravity(..)` needs `axle_loads` in the vehicle",
                "give the vehicle `axle_loads: (front: .., rear: ..)`, or aim with `LiftPoints(\"0 in\")`",
            );
        }
    }
    if let (Some(lift), Some(parking)) = (lift, parking) {
        pads_reachable(cx, f, lift, parking);
    }
}

/// Every raise must be some adapters of the set stacked, and screw for the rest.
fn pads_reachable(cx: &Context, f: &Fields<'_>, lift: &Lift, parking: &Parking) {
    let sums = stacks(&lift.pad.adapters);
    let reachable = |raise: Length| {
        sums.iter().any(|sum| {
            let screw = raise.m() - sum.m();
            screw >= -NOISE_M && screw <= lift.pad.screw_travel.m() + NOISE_M
        })
    };
    for (corner, raise) in crate::bay::Corner::ALL.iter().zip(parking.pad_raise) {
        if reachable(raise) {
            continue;
        }
        cx.error(
            f.span("parking"),
            &format!(
                "the {} pad can't be raised by {}: the screw gives {} and the adapters {}",
                corner.name(),
                both(raise),
                both(lift.pad.screw_travel),
                if lift.pad.adapters.is_empty() {
                    "nothing".into()
                } else {
                    let all: Vec<String> = lift.pad.adapters.iter().map(|a| both(*a)).collect();
                    all.join(" and ")
                }
            ),
            "its `pad_raise` must be stacked adapters and screw",
            "choose a raise that adapters and screw give together, or list the adapters at hand",
        );
        // The four are mostly alike: one message says it.
        return;
    }
}

/// Every height that some of the adapters stack to. There are at most twelve adapters.
fn stacks(adapters: &[Length]) -> Vec<Length> {
    let mut sums = vec![Length::ZERO];
    for adapter in adapters {
        let taller: Vec<Length> = sums.iter().map(|s| *s + *adapter).collect();
        sums.extend(taller);
    }
    sums
}
