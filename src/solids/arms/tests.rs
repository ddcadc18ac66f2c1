//! Reach by hand and against a fine grid of places.

use proptest::prelude::*;

use super::*;
use crate::bay::{Aim, Facing};
use crate::solids::test_bay::test_bay;
use crate::units::{Angle, Length};

const INCH: f64 = 0.0254;

/// Reach of the front left arm to a place given from its pivot: distance, angle from inward
/// toward the front.
fn reach_at(bay: &Bay, distance_m: f64, degrees: f64) -> ArmReach {
    let (sin, cos) = degrees.to_radians().sin_cos();
    let target = pivot_m(bay, Corner::FrontLeft) + DVec2::new(cos, sin) * distance_m;
    reach_to(bay, Corner::FrontLeft, target)
}

#[test]
fn pivots_stand_inward_of_the_columns_and_away_from_the_post_line() {
    // Columns' middles at +-64 in, pivots 8 in inward and 6 in from the 168 in post line.
    let bay = test_bay();
    let expected = [(-56.0, 174.0), (56.0, 174.0), (-56.0, 162.0), (56.0, 162.0)];
    for (corner, (x, y)) in Corner::ALL.into_iter().zip(expected) {
        let found = pivot_m(&bay, corner) / INCH;
        assert!((found - DVec2::new(x, y)).length() < 1e-9, "{found}");
    }
}

#[test]
fn a_point_in_the_sector_is_reached() {
    // 24 in inward and 32 in forward: 40 in (3-4-5), within 24 to 44 in; atan(4/3) = 53.1301 deg.
    let bay = test_bay();
    let pivot = pivot_m(&bay, Corner::FrontRight);
    let target = pivot + DVec2::new(-24.0, 32.0) * INCH;
    let found = reach_to(&bay, Corner::FrontRight, target);
    assert_eq!((found.short, found.shortfall_m), (None, 0.0));
    assert!((found.reach_m - 40.0 * INCH).abs() < 1e-12);
    assert!((found.swing_rad.to_degrees() - 53.130_102_354).abs() < 1e-8);
    assert!(found.pad_m.distance(target) < 1e-12);
    // Teeth every 3 deg: 51 and 54.
    let [low, high] = found.rests;
    assert!((low.swing_rad.to_degrees() - 51.0).abs() < 1e-9 && low.within_limits);
    assert!((high.swing_rad.to_degrees() - 54.0).abs() < 1e-9 && high.within_limits);
}

#[test]
fn the_zero_direction_turns_the_swing_back() {
    let mut bay = test_bay();
    bay.lift.arms[0].zero = Angle::degrees(10.0);
    let found = reach_at(&bay, 40.0 * INCH, 53.0);
    assert!((found.swing_rad.to_degrees() - 43.0).abs() < 1e-9);
}

#[test]
fn an_arm_too_short_by_30_mm_says_so() {
    let bay = test_bay();
    let found = reach_at(&bay, 44.0 * INCH + 0.030, 40.0);
    assert_eq!(found.short, Some(Short::TooFar));
    assert!((found.shortfall_m - 0.030).abs() < 1e-12);
    assert!((found.reach_m - 44.0 * INCH).abs() < 1e-12);
}

#[test]
fn an_arm_too_long_by_10_mm_says_so() {
    let bay = test_bay();
    let found = reach_at(&bay, 24.0 * INCH - 0.010, 40.0);
    assert_eq!(found.short, Some(Short::TooNear));
    assert!((found.shortfall_m - 0.010).abs() < 1e-12);
    // At the pivot itself every place is one shortest reach away.
    let found = reach_at(&bay, 0.0, 0.0);
    assert_eq!(found.short, Some(Short::TooNear));
    assert!((found.shortfall_m - 24.0 * INCH).abs() < 1e-12);
}

#[test]
fn past_the_swing_limit_the_nearest_place_is_on_the_edge() {
    // The limit is 95 deg. At 115 deg and 40 in: along the edge 40 cos 20, beside it 40 sin 20.
    let bay = test_bay();
    let found = reach_at(&bay, 40.0 * INCH, 115.0);
    let (sin, cos) = 20.0_f64.to_radians().sin_cos();
    assert_eq!(found.short, Some(Short::SwingLimit));
    assert!((found.shortfall_m - 40.0 * INCH * sin).abs() < 1e-12);
    assert!((found.reach_m - 40.0 * INCH * cos).abs() < 1e-12);
    // At 100 in the edge ends first, at 44 in.
    let found = reach_at(&bay, 100.0 * INCH, 115.0);
    let corner = ((100.0 * cos - 44.0).powi(2) + (100.0 * sin).powi(2)).sqrt() * INCH;
    assert!((found.shortfall_m - corner).abs() < 1e-12);
    // Held at 95 deg, its teeth are 93 and 96 deg; the arm does not get to the second.
    let [low, high] = found.rests;
    assert!(low.within_limits && !high.within_limits);
    assert!((high.swing_rad.to_degrees() - 96.0).abs() < 1e-9);
}

#[test]
fn an_arm_on_a_tooth_or_without_teeth_rests_where_it_is() {
    let mut bay = test_bay();
    let on = reach_at(&bay, 40.0 * INCH, 54.0).rests;
    assert!((on[0].swing_rad.to_degrees() - 54.0).abs() < 1e-9);
    assert_eq!(on[0], on[1]);
    bay.lift.arms[0].tooth = None;
    let free = reach_at(&bay, 40.0 * INCH, 53.5).rests;
    assert!((free[0].swing_rad.to_degrees() - 53.5).abs() < 1e-9);
    assert_eq!(free[0], free[1]);
}

#[test]
fn limits_beyond_half_a_turn_are_met() {
    let mut bay = test_bay();
    bay.lift.arms[0].swing_min = Angle::degrees(100.0);
    bay.lift.arms[0].swing_max = Angle::degrees(220.0);
    let found = reach_at(&bay, 40.0 * INCH, -150.0);
    assert_eq!(found.short, None);
    assert!((found.swing_rad.to_degrees() - 210.0).abs() < 1e-9);
}

#[test]
fn every_arm_goes_to_its_own_lift_point_whichever_way_the_vehicle_faces() {
    let mut bay = test_bay();
    bay.parking.aim = Aim::LiftPoints(Length::ZERO);
    for facing in [Facing::NoseIn, Facing::TailIn] {
        bay.parking.facing = facing;
        // Lift points 38 in before and behind the post line and 20 in to each side.
        for (corner, (x, y)) in Corner::ALL.into_iter().zip([
            (-20.0, 206.0),
            (20.0, 206.0),
            (-20.0, 130.0),
            (20.0, 130.0),
        ]) {
            let found = reach(&bay, corner, ParkingError::default()).unwrap();
            let expected = DVec2::new(x, y) * INCH;
            assert!(
                found.lift_point_m.distance(expected) < 1e-9,
                "{facing:?} {corner:?}"
            );
        }
    }
}

#[test]
fn arms_and_pads_have_their_sizes_and_heights() {
    let bay = test_bay();
    // Swing 90 deg, reach 30 in: straight ahead of the pivot at (-56, 174) in. The arm goes from
    // half a width behind the pivot to the pad's middle; pad top 4 + 3 in.
    let [arm, pad] = arm_and_pad(&bay, Corner::FrontLeft, FRAC_PI_2, 30.0 * INCH);
    let (low, high) = arm.bounds();
    assert!(
        (low / INCH - DVec3::new(-58.0, 172.0, 1.5)).length() < 1e-9,
        "{low}"
    );
    assert!(
        (high / INCH - DVec3::new(-54.0, 204.0, 4.5)).length() < 1e-9,
        "{high}"
    );
    let (low, high) = pad.bounds();
    assert!(
        (low / INCH - DVec3::new(-58.5, 201.5, 1.5)).length() < 1e-9,
        "{low}"
    );
    assert!(
        (high / INCH - DVec3::new(-53.5, 206.5, 7.0)).length() < 1e-9,
        "{high}"
    );
    // A pad narrower than its arm: the arm goes on past it.
    let mut bay = bay;
    bay.lift.pad.diameter = Length::inches(3.0);
    let [arm, _] = arm_and_pad(&bay, Corner::RearRight, FRAC_PI_2, 30.0 * INCH);
    assert!((arm.bounds().0.y / INCH - (162.0 - 32.0)).abs() < 1e-9);
}

#[test]
fn parked_arms_stand_out_of_the_lane_as_far_as_they_can() {
    let mut bay = test_bay();
    bay.lift.arms[3].swing_max = Angle::degrees(60.0);
    bay.lift.arms[1].swing_min = Angle::degrees(-85.0);
    bay.lift.arms[1].swing_max = Angle::degrees(30.0);
    let solids = parked(&bay);
    let pad = |corner: Corner| {
        let name = format!("lift/pad {}", corner.name());
        let solid = solids.iter().find(|s| s.name == name).unwrap();
        (
            solid.bay_from_solid.translation / INCH,
            solid.bounds().1.z / INCH,
        )
    };
    let (place, top) = pad(Corner::FrontLeft);
    assert!((place.x + 56.0).abs() < 1e-9 && (place.y - (174.0 + 24.0)).abs() < 1e-9);
    assert!((top - 4.0).abs() < 1e-9, "screwed down: {top}");
    let (place, _) = pad(Corner::RearLeft);
    assert!((place.y - (162.0 - 30.0)).abs() < 1e-9);
    // Held at 60 deg: 30 cos 60 = 15 in inward. Held at -85 deg: back past the post line.
    let (place, _) = pad(Corner::RearRight);
    assert!((place.x - (56.0 - 15.0)).abs() < 1e-9);
    let (place, _) = pad(Corner::FrontRight);
    assert!((place.y - (174.0 - 24.0 * 85.0_f64.to_radians().sin())).abs() < 1e-9);
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(200))]

    /// No place that the pad can take is nearer than the one found.
    #[test]
    fn no_place_is_nearer(
        x in -3.0..3.0_f64,
        y in -3.0..3.0_f64,
        min in -170.0..60.0_f64,
        span in 1.0..250.0_f64,
    ) {
        let mut bay = test_bay();
        let max = (min + span).min(180.0);
        bay.lift.arms[0].swing_min = Angle::degrees(min);
        bay.lift.arms[0].swing_max = Angle::degrees(max);
        let target = pivot_m(&bay, Corner::FrontLeft) + DVec2::new(x, y);
        let found = reach_to(&bay, Corner::FrontLeft, target);
        prop_assert!((found.pad_m.distance(target) - found.shortfall_m).abs() < 1e-9);
        let (shortest, longest) = (24.0 * INCH, 44.0 * INCH);
        prop_assert!(found.reach_m >= shortest - 1e-12 && found.reach_m <= longest + 1e-12);
        prop_assert!(found.swing_rad >= min.to_radians() - 1e-12);
        prop_assert!(found.swing_rad <= max.to_radians() + 1e-12);
        for i in 0..=60 {
            for j in 0..=20 {
                let swing = (min + (max - min) * f64::from(i) / 60.0).to_radians();
                let length = shortest + (longest - shortest) * f64::from(j) / 20.0;
                let place = pad_m(&bay, Corner::FrontLeft, swing, length);
                prop_assert!(place.distance(target) >= found.shortfall_m - 1e-9);
            }
        }
    }

    /// The same place mirrored is reached by the mirrored arm in the same way.
    #[test]
    fn mirrored_arms_do_the_same(x in -1.5..1.5_f64, y in -1.5..1.5_f64) {
        let bay = test_bay();
        let found = |corner: Corner, offset: DVec2| {
            reach_to(&bay, corner, pivot_m(&bay, corner) + offset)
        };
        let left = found(Corner::FrontLeft, DVec2::new(x, y));
        let right = found(Corner::FrontRight, DVec2::new(-x, y));
        prop_assert_eq!(left.short, right.short);
        prop_assert!((left.swing_rad - right.swing_rad).abs() < 1e-9);
        prop_assert!((left.shortfall_m - right.shortfall_m).abs() < 1e-9);
    }
}

#[test]
fn an_arm_heads_the_way_it_points() {
    let bay = test_bay();
    for corner in Corner::ALL {
        for swing in [-0.4, 0.0, 0.7, 1.9] {
            let toward = direction(&bay, corner, swing);
            let heading = heading_rad(&bay, corner, swing);
            assert!(heading.abs() <= PI);
            let (sin, cos) = heading.sin_cos();
            assert!(
                (toward - DVec2::new(cos, sin)).length() < 1e-12,
                "{corner:?}"
            );
        }
    }
}
