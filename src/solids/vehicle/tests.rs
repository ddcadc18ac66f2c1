//! The vehicle's solids against its description: never smaller, and hardly larger.

use super::*;
use crate::bay::HangsWith;
use crate::solids::Shape;
use crate::solids::test_bay::test_bay;
use crate::units::Length;
use glam::DQuat;

const INCH: f64 = 0.0254;

fn named(bay: &Bay, name: &str) -> Solid {
    parts(bay)
        .into_iter()
        .find(|part| part.solid.name == name)
        .unwrap_or_else(|| panic!("no {name}"))
        .solid
}

/// True when the hull of the corners holds the point: no plane through three corners has every
/// corner on one side and the point beyond it.
fn holds(corners: &[DVec3], point: DVec3) -> bool {
    let n = corners.len();
    for (i, j, k) in (0..n).flat_map(|i| (0..n).flat_map(move |j| (0..n).map(move |k| (i, j, k)))) {
        let normal = (corners[j] - corners[i]).cross(corners[k] - corners[i]);
        if normal.length() < 1e-12 {
            continue;
        }
        let normal = normal.normalize();
        let reach = corners
            .iter()
            .map(|c| normal.dot(*c))
            .fold(f64::MIN, f64::max);
        if normal.dot(point) > reach + 1e-9 {
            return false;
        }
    }
    true
}

fn in_body(bay: &Bay, point: DVec3) -> bool {
    parts(bay).iter().any(|part| match &part.solid.shape {
        Shape::Prism { vertices } => holds(vertices, point),
        _ => false,
    })
}

/// Every point of the described outline, and of the full-width sides below the belt, at each inch.
fn check_outline(bay: &Bay) {
    let vehicle = &bay.vehicle;
    for pair in vehicle.roof.windows(2) {
        for step in 0..=8 {
            let share = f64::from(step) / 8.0;
            let mix = |a: Length, b: Length| a.m() + (b - a).m() * share;
            let y = -mix(pair[0].station, pair[1].station);
            let height = mix(pair[0].height, pair[1].height);
            let half = mix(pair[0].half_width, pair[1].half_width);
            let full = vehicle.body_width.m() * 0.5;
            let shoulder = height.min(vehicle.belt.m());
            for side in [-1.0, 1.0] {
                for (x, z) in [(half, height), (full, shoulder), (full, vehicle.sill.m())] {
                    let point = DVec3::new(side * x, y, z);
                    assert!(in_body(bay, point), "{point} in {} m", vehicle.belt.m());
                }
            }
        }
    }
}

#[test]
fn the_prisms_hold_the_outline_whatever_the_belt() {
    let mut bay = test_bay();
    for belt in [19.0, 30.0, 40.0, 47.0, 53.0, 60.0, 75.5, 90.0] {
        bay.vehicle.belt = Length::inches(belt);
        check_outline(&bay);
    }
}

#[test]
fn the_prisms_are_no_larger_than_the_body() {
    let bay = test_bay();
    let (mut low, mut high) = (DVec3::MAX, DVec3::MIN);
    for part in parts(&bay) {
        if matches!(part.solid.shape, Shape::Prism { .. }) {
            let bounds = part.solid.bounds();
            low = low.min(bounds.0);
            high = high.max(bounds.1);
        }
    }
    assert!(
        (low / INCH - DVec3::new(-40.0, -232.0, 19.0)).length() < 1e-9,
        "{low}"
    );
    assert!(
        (high / INCH - DVec3::new(40.0, 0.0, 76.0)).length() < 1e-9,
        "{high}"
    );
    // Over the hood nothing is higher than the outline: 51 in at 58 in, 47 in at 6 in.
    assert!(!in_body(&bay, DVec3::new(0.0, -30.0, 49.3) * INCH));
    assert!(in_body(&bay, DVec3::new(0.0, -30.0, 48.8) * INCH));
}

#[test]
fn a_hood_below_the_belt_is_a_lower_prism_alone() {
    let mut bay = test_bay();
    bay.vehicle.belt = Length::inches(60.0);
    // 0 to 6 and 6 to 58 in lie below the belt; from 58 in (51 in high) to 84 in (75 in high)
    // the outline crosses 60 in at 58 + 26 * 9/24 = 67.75 in.
    let names: Vec<String> = parts(&bay).into_iter().map(|p| p.solid.name).collect();
    for (name, built) in [
        ("vehicle/side 1", true),
        ("vehicle/roof 1", false),
        ("vehicle/roof 2", false),
        ("vehicle/roof 3", false),
        ("vehicle/roof 4", true),
    ] {
        assert_eq!(names.iter().any(|n| n == name), built, "{name}");
    }
    let (low, high) = named(&bay, "vehicle/side 3").bounds();
    assert!((high.y / INCH + 58.0).abs() < 1e-9 && (low.y / INCH + 67.75).abs() < 1e-9);
}

#[test]
fn contradictions_are_built_larger() {
    let mut bay = test_bay();
    bay.vehicle.height = Length::inches(80.0);
    bay.vehicle.length = Length::inches(240.0);
    bay.vehicle.roof[7].half_width = Length::inches(44.0);
    assert!(in_body(&bay, DVec3::new(0.0, -104.0, 80.0) * INCH));
    assert!(in_body(&bay, DVec3::new(44.0, -240.0, 57.0) * INCH));
    // A hood below the sill still has a body over the sill.
    bay.vehicle.roof[0].height = Length::inches(10.0);
    assert!(in_body(&bay, DVec3::new(40.0, 0.0, 19.0) * INCH));
}

#[test]
fn mirrors_low_parts_and_boxes_stand_where_described() {
    let bay = test_bay();
    // 96 in over both; at 72 in the outline is 34 - 6 * 14/26 = 30.769 in to a side.
    let (low, high) = named(&bay, "vehicle/mirror right").bounds();
    let inner = 34.0 - 6.0 * 14.0 / 26.0;
    assert!(
        (low / INCH - DVec3::new(inner, -75.0, 46.0)).length() < 1e-9,
        "{low}"
    );
    assert!(
        (high / INCH - DVec3::new(48.0, -69.0, 56.0)).length() < 1e-9,
        "{high}"
    );
    let (low, high) = named(&bay, "vehicle/underbody rear axle housing").bounds();
    assert!((low / INCH - DVec3::new(-20.0, -190.0, 9.0)).length() < 1e-9);
    assert!((high / INCH - DVec3::new(20.0, -176.0, 19.0)).length() < 1e-9);
    let (low, high) = named(&bay, "vehicle/headache rack").bounds();
    assert!((low / INCH - DVec3::new(-35.0, -145.0, 56.0)).length() < 1e-9);
    assert!((high / INCH - DVec3::new(35.0, -142.0, 79.0)).length() < 1e-9);
}

#[test]
fn lift_points_below_the_sill_get_a_block() {
    let mut bay = test_bay();
    let (low, high) = named(&bay, "vehicle/lift point rear left").bounds();
    assert!(
        (low - DVec3::new(-20.0 * INCH - 0.05, -150.0 * INCH - 0.05, 16.0 * INCH)).length() < 1e-9
    );
    assert!((high.z / INCH - 19.0).abs() < 1e-9);
    bay.vehicle.lift_points[2].height = Length::inches(19.0);
    assert!(
        parts(&bay)
            .iter()
            .all(|p| p.solid.name != lift_point_name(2))
    );
}

#[test]
fn wheels_touch_the_ground_under_their_axles() {
    let bay = test_bay();
    for (name, x, station) in [("front left", -34.0, 38.0), ("rear right", 34.0, 183.0)] {
        let wheel = named(&bay, &format!("vehicle/wheel {name}"));
        let (low, high) = wheel.bounds();
        assert!(
            (low / INCH - DVec3::new(x - 5.5, -station - 16.0, 0.0)).length() < 1e-9,
            "{low}"
        );
        assert!((high / INCH - DVec3::new(x + 5.5, -station + 16.0, 32.0)).length() < 1e-9);
    }
}

#[test]
fn wheels_hang_along_the_vehicles_own_z() {
    let bay = test_bay();
    let tilt = Pose::new(DQuat::from_rotation_x(0.1), DVec3::new(1.0, 2.0, 3.0));
    let still = posed(&bay, tilt, [0.0; 2]);
    let hanging = posed(&bay, tilt, [0.10, 0.15]);
    let mut sunk = Vec::new();
    for (a, b) in still.iter().zip(&hanging) {
        let moved = b.bay_from_solid.translation - a.bay_from_solid.translation;
        // With them what lies under their axles.
        let expected = match a.role {
            Role::Wheel(0) => 0.10,
            Role::Wheel(_) => 0.15,
            _ if a.name == "vehicle/underbody front suspension" => 0.10,
            _ if a.name == "vehicle/underbody rear axle housing" => 0.15,
            _ => 0.0,
        };
        sunk.extend((expected > 0.0).then_some(a.name.as_str()));
        let down = DQuat::from_rotation_x(0.1) * DVec3::NEG_Z;
        assert!((moved - down * expected).length() < 1e-12, "{}", a.name);
    }
    assert_eq!(sunk.len(), 6, "{sunk:?}");
}

#[test]
fn a_low_part_sinks_with_the_axle_over_it_unless_the_file_says_otherwise() {
    let mut vehicle = test_bay().vehicle;
    let axle = vehicle.front_overhang + vehicle.wheelbase;
    let mut part = vehicle.underbody[0].clone();
    part.from = axle - Length::metres(0.2);
    part.to = axle + Length::metres(0.2);
    assert_eq!(vehicle.sinks_with(&part), Some(1));
    part.hangs_with = Some(HangsWith::Body);
    assert_eq!(vehicle.sinks_with(&part), None);
    part.hangs_with = Some(HangsWith::Front);
    assert_eq!(vehicle.sinks_with(&part), Some(0));
    // Too long for anything of an axle, or not under one.
    part.hangs_with = None;
    part.from = axle - Length::metres(1.1);
    assert_eq!(vehicle.sinks_with(&part), None);
    part.from = axle + Length::metres(0.05);
    assert_eq!(vehicle.sinks_with(&part), None);
    vehicle.wheelbase += Length::metres(0.1);
    assert_eq!(vehicle.sinks_with(&part), Some(1));
}

#[test]
fn names_stay_unique_whatever_a_rack_is_called() {
    let mut bay = test_bay();
    let mut rack = bay.vehicle.attached[0].clone();
    for name in ["headache rack", "side 1", "wheel front left", "mirror left"] {
        rack.name = name.into();
        bay.vehicle.attached.push(rack.clone());
    }
    let names: Vec<String> = parts(&bay).into_iter().map(|p| p.solid.name).collect();
    let unique: HashSet<&String> = names.iter().collect();
    assert_eq!(unique.len(), names.len());
    assert!(names.contains(&"vehicle/headache rack (2)".to_owned()));
    assert_eq!(named(&bay, "vehicle/wheel front left").role, Role::Wheel(0));
    assert_eq!(named(&bay, "vehicle/mirror left").role, Role::Mirror);
}

#[test]
fn tail_in_swaps_the_corners_crosswise() {
    use Corner::{FrontLeft, FrontRight, RearLeft, RearRight};
    let pairs = [
        (FrontLeft, 3),
        (FrontRight, 2),
        (RearLeft, 1),
        (RearRight, 0),
    ];
    for (corner, index) in pairs {
        assert_eq!(lift_point_at(corner, Facing::TailIn), index);
        assert_eq!(lift_point_at(corner, Facing::NoseIn), corner.index());
    }
}
