//! Which solids are a sectional door: its panels at a point of travel, tracks, springs, bracket?

use glam::{DQuat, DVec2, DVec3};

use super::linkage::Linkage;
use super::track::Track;
use super::{across, footing_m};
use crate::bay::{Bay, SectionalDoor, SpringShaft, TrackLayout};
use crate::solids::outline::along_x;
use crate::solids::shell::floor_level_range_m;
use crate::solids::{Pose, Role, Solid};

/// How far down the top panel its bracket and strut reach: 12 in. Common practice, no source.
pub(super) const BRACKET_M: f64 = 0.3048;
/// How many pieces the tracks' curve is built of.
const CURVE_PIECES: u32 = 6;

/// Half the width of the panels: to the middle of the tracks, which takes in hinges and rollers.
pub(super) fn half_width_m(bay: &Bay, door: &SectionalDoor) -> f64 {
    0.5 * bay.garage.opening.width.m() + door.track_offset.m()
}

/// Panels from the floor up, and the top bracket.
pub(super) fn panels(bay: &Bay, door: &SectionalDoor, fraction: f64) -> Vec<Solid> {
    let joints = Linkage::of(bay, door).joints(fraction);
    let width = 2.0 * half_width_m(bay, door);
    let thickness = door.panel_thickness.m();
    let mut solids = Vec::new();
    for (i, pair) in joints.windows(2).enumerate() {
        let (low, high) = (pair[0].at, pair[1].at);
        let name = format!("door/panel {}", i + 1);
        solids.push(panel(name, width, thickness, low, high));
    }
    let proud = door.top_bracket.m();
    if let [.., low, high] = &joints[..]
        && proud > 0.0
    {
        let length = low.at.distance(high.at);
        let tall = BRACKET_M.min(length);
        let out = 0.5 * (thickness + proud);
        let pose = panel_pose(low.at, high.at, out, 1.0 - 0.5 * tall / length);
        let size = DVec3::new(width, proud, tall);
        solids.push(Solid::posed_box(
            "door/top bracket",
            Role::DoorPanel,
            size,
            pose,
        ));
    }
    solids
}

/// A flat panel between its lower and its upper edge, `(y, z)`.
pub(super) fn panel(
    name: impl Into<String>,
    width_m: f64,
    thickness_m: f64,
    low: DVec2,
    high: DVec2,
) -> Solid {
    let size = DVec3::new(width_m, thickness_m, low.distance(high));
    let pose = panel_pose(low, high, 0.0, 0.5);
    Solid::posed_box(name, Role::DoorPanel, size, pose)
}

/// The face of a panel that looks into the bay when shut and down when open: a quarter turn from
/// the panel's direction.
pub(super) fn bay_side(along: DVec2) -> DVec2 {
    DVec2::new(along.y, -along.x)
}

/// The pose of a box whose own `z` runs from `low` to `high` and whose own `y` is the panel's bay
/// side: its middle `share` of the way up and `out_m` toward the bay side.
fn panel_pose(low: DVec2, high: DVec2, out_m: f64, share: f64) -> Pose {
    let along = (high - low).normalize_or(DVec2::Y);
    let middle = low.lerp(high, share) + bay_side(along) * out_m;
    let rotation = DQuat::from_rotation_x(-along.x.atan2(along.y));
    Pose::new(rotation, DVec3::new(0.0, middle.x, middle.y))
}

/// Tracks on both sides, and the spring shaft: where they are whatever the door does.
pub(super) fn fittings(bay: &Bay, door: &SectionalDoor) -> Vec<Solid> {
    let linkage = Linkage::of(bay, door);
    let middle = half_width_m(bay, door);
    let half = 0.5 * door.track_section.m();
    let mut solids = Vec::new();
    for (side, x) in [("left", -middle), ("right", middle)] {
        let between = [x - half, x + half];
        let pieces = track_pieces(door, &linkage, half);
        solids.extend(pieces.into_iter().map(|(label, outline)| {
            let name = format!("door/track {side} {label}");
            along_x(name, Role::DoorFitting, between, outline)
        }));
    }
    solids.extend(door.spring.map(|spring| spring_shaft(bay, middle, spring)));
    solids
}

/// The pieces of one track, each with its label and its outline in `(y, z)`.
fn track_pieces(door: &SectionalDoor, linkage: &Linkage, half: f64) -> Vec<(String, Vec<DVec2>)> {
    let track = &linkage.track;
    let (foot, radius) = (track.foot, track.radius_m);
    let rectangle = |low: DVec2, high: DVec2| {
        vec![
            low,
            high,
            DVec2::new(low.x, high.y),
            DVec2::new(high.x, low.y),
        ]
    };
    let sides = DVec2::new(half, 0.0);
    if door.layout == TrackLayout::VerticalLift {
        // As tall as the open door stands.
        let door_m = linkage.panel_height_m * linkage.panels as f64;
        let top = foot + DVec2::new(0.0, linkage.open_m + door_m);
        return vec![("upright".into(), rectangle(foot - sides, top + sides))];
    }
    let corner = foot + DVec2::new(0.0, track.upright_m);
    let mut pieces = vec![("upright".into(), rectangle(foot - sides, corner + sides))];
    pieces.extend(curve_pieces(track, half));
    let level = foot + DVec2::new(radius, track.upright_m + radius);
    let end = level + DVec2::new(door.track_length.m(), 0.0);
    let faces = DVec2::new(0.0, half);
    // A track without a radius turns a sharp corner; its level run then starts at the back of it.
    let start = if radius < half { level - sides } else { level };
    pieces.push(("level".into(), rectangle(start - faces, end + faces)));
    if linkage.top_track != *track {
        let start = DVec2::new(foot.x - half, level.y);
        pieces.push(("upper".into(), rectangle(start - faces, level + faces)));
    }
    pieces
}

/// The curve, cut into equal pieces, each the hull of its inner corners, its outer corners and the
/// meeting point of the outer face's tangents. The inner face's chord lies nearer to the middle
/// of the circle than the face, and the outer tangents farther out, so nothing real is left out.
fn curve_pieces(track: &Track, half: f64) -> Vec<(String, Vec<DVec2>)> {
    let middle = track.foot + DVec2::new(track.radius_m, track.upright_m);
    let (inner, outer) = ((track.radius_m - half).max(0.0), track.radius_m + half);
    let step = std::f64::consts::FRAC_PI_2 / f64::from(CURVE_PIECES);
    let at = |radius: f64, turned: f64| middle + radius * DVec2::new(-turned.cos(), turned.sin());
    (0..CURVE_PIECES)
        .map(|i| {
            let (a, b) = (step * f64::from(i), step * f64::from(i + 1));
            let between = at(outer / (0.5 * step).cos(), 0.5 * (a + b));
            let outline = vec![
                at(inner, a),
                at(inner, b),
                at(outer, a),
                at(outer, b),
                between,
            ];
            (format!("curve {}", i + 1), outline)
        })
        .collect()
}

fn spring_shaft(bay: &Bay, half_length_m: f64, spring: SpringShaft) -> Solid {
    let radius = 0.5 * spring.diameter.m();
    let out = spring.out.m();
    let floor = floor_level_range_m(
        bay,
        [-half_length_m, out - radius],
        [half_length_m, out + radius],
    );
    let z = floor.0.min(footing_m(bay)) + spring.height.m();
    Solid::bar(
        "door/spring shaft",
        Role::DoorFitting,
        across(-half_length_m, DVec2::new(out, z)),
        across(half_length_m, DVec2::new(out, z)),
        radius,
    )
}
