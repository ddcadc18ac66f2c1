//! Where on the outline is the cabin: hood, windscreen, roof, rear window?

use crate::bay::{BodyStyle, OpeningKind, Vehicle};

/// An outline that climbs at least so steeply (rise over run) is a windscreen.
const SCREEN_CLIMBS: f64 = 0.3;
/// The windscreen goes on while the outline climbs at least so steeply.
const SCREEN_GOES_ON: f64 = 0.3;
/// The first share of the length is the nose, however steep it is.
const NOSE: f64 = 0.045;

/// A point of the outline, metres.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Point {
    /// Station.
    pub(super) at: f64,
    /// Height.
    pub(super) z: f64,
    /// Half the width there.
    pub(super) half: f64,
}

/// The cabin's places on the outline.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Cabin {
    /// Where the windscreen starts.
    pub(super) cowl: Point,
    /// Where it ends.
    pub(super) front_top: Point,
    /// Where the rear window starts at the roof.
    pub(super) rear_top: Point,
    /// Where it ends.
    pub(super) rear_base: Point,
    /// The outline from cowl to rear base.
    pub(super) outline: Vec<Point>,
    /// Lower edge of the side windows.
    pub(super) glass_low: f64,
    /// The front door: stations of its front and rear edge.
    pub(super) door: (f64, f64),
    /// The rear door, where there is one.
    pub(super) rear_door: Option<(f64, f64)>,
}

impl Cabin {
    pub(super) fn of(vehicle: &Vehicle) -> Self {
        let outline: Vec<Point> = vehicle
            .roof
            .iter()
            .map(|s| Point {
                at: s.station.m(),
                z: s.height.m(),
                half: s.half_width.m(),
            })
            .collect();
        let length = vehicle.length.m();
        let whole = Point {
            at: 0.0,
            z: vehicle.height.m(),
            half: vehicle.body_width.m() * 0.5,
        };
        let slopes: Vec<f64> = outline
            .windows(2)
            .map(|p| (p[1].z - p[0].z) / (p[1].at - p[0].at).max(1e-6))
            .collect();
        let first = slopes
            .iter()
            .zip(&outline)
            .position(|(slope, from)| *slope > SCREEN_CLIMBS && from.at > NOSE * length)
            .unwrap_or(0);
        let screen = slopes[first..]
            .iter()
            .take_while(|slope| **slope > SCREEN_GOES_ON)
            .count();
        let top = first + screen;
        // How steeply the rear must fall to be a window.
        let falls = match vehicle.style {
            BodyStyle::Pickup => -0.35,
            _ => -0.15,
        };
        let last = outline.len().saturating_sub(1);
        let rear = (top..slopes.len())
            .find(|&i| slopes[i] < falls)
            .unwrap_or(last);
        let fallen = slopes
            .get(rear..)
            .unwrap_or_default()
            .iter()
            .take_while(|slope| **slope < falls)
            .count();
        let point = |index: usize| outline.get(index).copied().unwrap_or(whole);
        let (cowl, rear_base) = (point(first), point(rear + fallen));
        let glass_low = (cowl.z + 0.015).max(vehicle.belt.m() + 0.02);
        let door = door(vehicle, cowl.at, rear_base.at);
        Self {
            cowl,
            front_top: point(top),
            rear_top: point(rear),
            rear_base,
            outline: outline
                .get(first..=(rear + fallen).min(last))
                .unwrap_or_default()
                .to_vec(),
            glass_low,
            door,
            rear_door: rear_door(vehicle, door, point(rear), rear_base),
        }
    }
}

/// The front door as described; else the front half of the cabin.
fn door(vehicle: &Vehicle, cowl: f64, rear: f64) -> (f64, f64) {
    vehicle
        .opening_parts
        .iter()
        .find(|part| matches!(part.kind, OpeningKind::DoorLeft | OpeningKind::DoorRight))
        .map_or((cowl + 0.15, 0.5 * (cowl + rear)), |part| {
            let hinge = part.hinge.m();
            (hinge, hinge + part.length.m())
        })
}

/// A rear door behind the front one, where the style has one and there is room for it.
fn rear_door(
    vehicle: &Vehicle,
    front: (f64, f64),
    rear_top: Point,
    rear_base: Point,
) -> Option<(f64, f64)> {
    let has_one = matches!(
        vehicle.style,
        BodyStyle::Saloon
            | BodyStyle::Estate
            | BodyStyle::Suv
            | BodyStyle::Pickup
            | BodyStyle::Hatch
    );
    let room_to = match vehicle.style {
        BodyStyle::Pickup => rear_base.at - 0.06,
        _ => 0.5 * (rear_top.at + rear_base.at),
    };
    let end = (front.1 + 0.95 * (front.1 - front.0)).min(room_to);
    (has_one && end - front.1 > 0.5).then_some((front.1, end))
}
