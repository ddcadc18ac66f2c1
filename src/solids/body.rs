//! The vehicle's body as convex prisms along its roof outline, never smaller than described.
//!
//! Between two stations the body is a lower prism of full width, from the sill to the belt, and
//! an upper one that narrows from the full width at the belt to the roof outline. Where the
//! outline lies below the belt (a hood, a bed) there is only the lower one, its top on the
//! outline. Vehicle frame, metres: `x` to the vehicle's right, `y` forward from the front bumper
//! (station `t` is `y = -t`), `z` up from the ground.

use glam::DVec3;

use super::{Role, Solid};
use crate::bay::Vehicle;

/// Least thickness of anything built, metres: a body described flatter is built this thick.
const LEAST_THICKNESS_M: f64 = 1e-3;
/// An outline nearer to the belt than this lies on it, metres.
const ON_BELT_M: f64 = 1e-6;

/// One station of the outline, metres.
#[derive(Debug, Clone, Copy)]
pub(super) struct Station {
    /// From the front bumper.
    pub(super) at: f64,
    /// Height of the outline.
    pub(super) height: f64,
    /// Half the width there.
    pub(super) half_width: f64,
}

/// The outline as built, front to rear: as described, and where the description contradicts
/// itself the larger reading. It covers the whole length, its highest stations reach the overall
/// height, nothing lies below the sill, and there is a station wherever it crosses the belt.
pub(super) fn outline(vehicle: &Vehicle) -> Vec<Station> {
    let sill = vehicle.sill.m();
    let peak = vehicle
        .roof
        .iter()
        .map(|station| station.height.m())
        .fold(f64::NEG_INFINITY, f64::max);
    let mut stations: Vec<Station> = vehicle
        .roof
        .iter()
        .map(|station| {
            let height = station.height.m();
            let height = if height >= peak {
                height.max(vehicle.height.m())
            } else {
                height
            };
            Station {
                at: station.station.m(),
                height: height.max(sill + LEAST_THICKNESS_M),
                half_width: station.half_width.m(),
            }
        })
        .collect();
    if let Some(&first) = stations.first().filter(|first| first.at > 0.0) {
        stations.insert(0, Station { at: 0.0, ..first });
    }
    let length = vehicle.length.m();
    if let Some(&last) = stations.last().filter(|last| last.at < length) {
        stations.push(Station { at: length, ..last });
    }
    split_at(&stations, belt_m(vehicle))
}

/// The belt as built: never below the sill.
pub(super) fn belt_m(vehicle: &Vehicle) -> f64 {
    vehicle.belt.m().max(vehicle.sill.m())
}

/// Adds a station wherever the outline crosses the belt between two stations.
fn split_at(stations: &[Station], belt: f64) -> Vec<Station> {
    let mut split = Vec::with_capacity(stations.len() + 4);
    for pair in stations.windows(2) {
        let [a, b] = [pair[0], pair[1]];
        split.push(a);
        let (from, to) = (a.height - belt, b.height - belt);
        if from.abs() > ON_BELT_M && to.abs() > ON_BELT_M && from.signum() * to.signum() < 0.0 {
            let share = from / (from - to);
            split.push(Station {
                at: a.at + (b.at - a.at) * share,
                height: belt,
                half_width: a.half_width + (b.half_width - a.half_width) * share,
            });
        }
    }
    split.extend(stations.last());
    split
}

/// The prisms of the body: `vehicle/side 1` for the lower one and `vehicle/roof 1` for the upper
/// one between the first two stations as built, and so on to the rear.
pub(super) fn prisms(vehicle: &Vehicle) -> Vec<Solid> {
    let sill = vehicle.sill.m();
    let belt = belt_m(vehicle);
    let full = vehicle.body_width.m() * 0.5;
    let mut solids = Vec::new();
    let stations = outline(vehicle);
    let pairs = stations
        .windows(2)
        .map(|pair| [pair[0], pair[1]])
        .filter(|[a, b]| b.at > a.at);
    for (index, ends) in pairs.enumerate() {
        let number = index + 1;
        let below = |end: &Station| end.height < belt + ON_BELT_M;
        // At or below the belt a station may be described wider than the body.
        let side_half = |end: &Station| {
            if below(end) {
                full.max(end.half_width)
            } else {
                full
            }
        };
        let lower = ends.map(|end| {
            let top = end.height.min(belt).max(sill + LEAST_THICKNESS_M);
            slice(end.at, (sill, side_half(&end)), (top, side_half(&end)))
        });
        solids.push(Solid::hull(
            format!("vehicle/side {number}"),
            Role::Body,
            lower.concat(),
        ));
        if ends.iter().all(below) {
            continue;
        }
        let upper = ends.map(|end| {
            let top = end.height.max(belt);
            slice(end.at, (belt, full), (top, end.half_width))
        });
        solids.push(Solid::hull(
            format!("vehicle/roof {number}"),
            Role::Body,
            upper.concat(),
        ));
    }
    solids
}

/// The four corners of a slice across the vehicle: height and half width at its foot and its top.
/// A slice without height gives two.
fn slice(at: f64, foot: (f64, f64), top: (f64, f64)) -> Vec<DVec3> {
    let edge = |(height, half): (f64, f64)| [-half, half].map(|x| DVec3::new(x, -at, height));
    if top.0 - foot.0 <= 0.0 {
        return edge((foot.0, foot.1.max(top.1))).to_vec();
    }
    [edge(foot), edge(top)].concat()
}

/// Half the width of the outline at a station, metres: the narrower end where it steps.
pub(super) fn roof_half_width_m(vehicle: &Vehicle, at: f64) -> Option<f64> {
    outline(vehicle)
        .windows(2)
        .filter(|pair| pair[0].at <= at && at <= pair[1].at && pair[1].at > pair[0].at)
        .map(|pair| {
            let share = (at - pair[0].at) / (pair[1].at - pair[0].at);
            pair[0].half_width + (pair[1].half_width - pair[0].half_width) * share
        })
        .reduce(f64::min)
}
