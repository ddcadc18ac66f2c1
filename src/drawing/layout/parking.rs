//! How is the vehicle parked: stop lines under its tyres, its centre of gravity?

use glam::{DVec2, DVec3};

use super::Made;
use super::draw::line;
use crate::bay::Bay;
use crate::drawing::outline::Look;
use crate::drawing::palette::paper::INK;
use crate::drawing::sheet::{Callout, Dash, Item, Layer, Pen, Shape, View};
use crate::ground::loads;
use crate::setting_out::{BESIDE_M, place};
use crate::solids::{Role, Solid};

/// A heading of less is in line with the bay, radians: it turns no stop line by a graduation.
const TURNED: f64 = 1e-4;
/// What is no farther off a stop line is drawn on it, metres: a tenth of a millimetre of paper at most.
const ON_LINE_M: f64 = 0.002;

/// The middles of the wheels of an axle in plan, metres.
pub(super) fn axle(all: &[Solid], axle: usize) -> Option<[DVec2; 2]> {
    let mut wheels = all.iter().filter(|one| one.role == Role::Wheel(axle));
    let mut middle = || Some(Look::Plan.flat(wheels.next()?.bay_from_solid.translation));
    Some([middle()?, middle()?])
}

/// The stop line of an axle, its left end first, metres.
pub(super) fn stop_line(bay: &Bay, all: &[Solid], number: usize) -> Option<[DVec2; 2]> {
    let [a, b] = axle(all, number)?;
    let beside = (b - a).normalize_or_zero() * (bay.vehicle.tyre_width.m() * 0.5 + BESIDE_M);
    let (from, to) = (a - beside, b + beside);
    Some(if from.x < to.x {
        [from, to]
    } else {
        [to, from]
    })
}

/// Where the running dimension of a point at this height ends: at the left end of the stop line
/// through it, which it would hide, or else at the point itself. Metres.
pub(super) fn beside_stop_line(bay: &Bay, all: &[Solid], at: DVec2) -> f64 {
    let lines = [0, 1].into_iter();
    let lines = lines.filter_map(|number| stop_line(bay, all, number));
    let level = |[left, right]: &[DVec2; 2]| {
        let on = |end: &DVec2| (end.y - at.y).abs() < ON_LINE_M;
        on(left) && on(right) && (left.x..=right.x).contains(&at.x)
    };
    lines
        .filter(level)
        .map(|[left, _]| left.x)
        .fold(at.x, f64::min)
}

pub(super) fn parking(view: &mut View, made: &Made<'_>, all: &[Solid]) {
    let bay = made.order.bay;
    for (number, word) in [(0, "front"), (1, "rear")] {
        let Some(ends) = stop_line(bay, all, number) else {
            continue;
        };
        let pen = Pen::broken(0.3, INK, Dash::Centre);
        line(&mut view.items, Layer::Parking, ends, pen);
        view.callouts.push(Callout::leading(
            ends[1],
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
    let [left, right] = ends;
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
