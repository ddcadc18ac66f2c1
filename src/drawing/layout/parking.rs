//! How is the vehicle parked: stop lines under its tyres, its centre of gravity?

use glam::{DVec2, DVec3};

use super::Made;
use super::draw::line;
use crate::drawing::outline::Look;
use crate::drawing::palette::paper::INK;
use crate::drawing::sheet::{Callout, Dash, Item, Layer, Pen, Shape, View};
use crate::ground::loads;
use crate::setting_out::place;
use crate::solids::{Role, Solid};

/// How far a tyre line goes on beside the tyres, metres.
const BESIDE_M: f64 = 0.2;
/// A heading of less is in line with the bay, radians: it turns no stop line by a graduation.
const TURNED: f64 = 1e-4;

/// The middles of the wheels of an axle in plan, metres.
pub(super) fn axle(all: &[Solid], axle: usize) -> Option<[DVec2; 2]> {
    let mut wheels = all.iter().filter(|one| one.role == Role::Wheel(axle));
    let mut middle = || Some(Look::Plan.flat(wheels.next()?.bay_from_solid.translation));
    Some([middle()?, middle()?])
}

pub(super) fn parking(view: &mut View, made: &Made<'_>, all: &[Solid]) {
    let bay = made.order.bay;
    for (number, word) in [(0, "front"), (1, "rear")] {
        let Some([a, b]) = axle(all, number) else {
            continue;
        };
        let beside = (b - a).normalize_or_zero() * (bay.vehicle.tyre_width.m() * 0.5 + BESIDE_M);
        let ends = [a - beside, b + beside];
        let pen = Pen::broken(0.3, INK, Dash::Centre);
        line(&mut view.items, Layer::Parking, ends, pen);
        let right = if ends[0].x > ends[1].x {
            ends[0]
        } else {
            ends[1]
        };
        view.callouts.push(Callout::leading(
            right,
            format!(
                "stop line: {word} tyres stand with their middles on it{}",
                turned(made, ends)
            ),
        ));
    }
    match cg(made) {
        Some(at) => {
            let pen = Pen::solid(0.25, INK);
            for way in [DVec2::X, DVec2::Y] {
                line(
                    &mut view.items,
                    Layer::Parking,
                    [at - way * 0.12, at + way * 0.12],
                    pen,
                );
            }
            view.items.push(Item {
                layer: Layer::Parking,
                shape: Shape::Circle {
                    middle: at,
                    radius: 0.07,
                    pen: Some(pen),
                    fill: None,
                },
            });
            view.callouts
                .push(Callout::leading(at, "centre of gravity, as parked".into()));
        }
        None => {
            let body = all.iter().find(|one| one.role == Role::Body);
            if let Some(body) = body {
                let at_m = Look::Plan.flat(body.bay_from_solid.point(DVec3::ZERO));
                view.callouts.push(Callout::leading(
                    at_m,
                    "centre of gravity not known: no axle loads are given".into(),
                ));
            }
        }
    }
}

pub(super) fn cg(made: &Made<'_>) -> Option<DVec2> {
    let states = loads::states(made.order.bay).ok()?;
    Some(states.as_given.geometry.cg_m)
}

/// For a vehicle that is parked turned: where both ends of a stop line are.
fn turned(made: &Made<'_>, ends: [DVec2; 2]) -> String {
    let bay = made.order.bay;
    let Some(a) = made.out.point("A") else {
        return String::new();
    };
    if bay.parking.yaw.rad().abs() < TURNED {
        return String::new();
    }
    let [left, right] = if ends[0].x < ends[1].x {
        ends
    } else {
        [ends[1], ends[0]]
    };
    let at = |point: DVec2| {
        let from_a = point - a.at_m;
        format!(
            "{} from the left wall, {} from the door wall",
            place(from_a.x, bay.units),
            place(from_a.y, bay.units)
        )
    };
    format!(
        "; the vehicle is parked turned by {:.1} deg: left end {}; right end {}",
        bay.parking.yaw.rad().to_degrees().abs(),
        at(left),
        at(right)
    )
}
