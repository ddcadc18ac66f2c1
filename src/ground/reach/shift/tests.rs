//! Moves, tried against what the study asks and against finer moves all about.

use std::f64::consts::TAU;

use proptest::prelude::*;

use super::*;
use crate::bay::Facing;
use crate::solids::ParkingError;
use crate::solids::test_bay::test_bay;

const INCH: f64 = 0.0254;

/// Arms that reach anywhere.
fn free(bay: &mut Bay) {
    for arm in &mut bay.lift.arms {
        (arm.shortest, arm.longest) = (Length::mm(100.0), Length::metres(4.0));
        (arm.swing_min, arm.swing_max) = (Angle::degrees(-170.0), Angle::degrees(170.0));
        arm.tooth = None;
    }
}

/// The same bay seen in a mirror: left for right.
fn mirrored(bay: &Bay) -> Bay {
    let mut mirror = bay.clone();
    mirror.lift.arms.swap(0, 1);
    mirror.lift.arms.swap(2, 3);
    mirror.lift.across = -bay.lift.across;
    mirror.parking.across = -bay.parking.across;
    mirror.parking.yaw = -bay.parking.yaw;
    mirror.vehicle.lift_points.swap(0, 1);
    mirror.vehicle.lift_points.swap(2, 3);
    mirror
}

#[test]
fn an_arm_30_mm_short_asks_for_30_mm_along_it() {
    let mut bay = test_bay();
    free(&mut bay);
    let arm = arms::reach(&bay, Corner::RearLeft, ParkingError::default()).unwrap();
    bay.lift.arms[Corner::RearLeft.index()].longest = Length::metres(arm.reach_m - 0.030);
    let least = Wanted::new(&bay, Uncertainty::NONE)
        .unwrap()
        .least()
        .unwrap();
    assert!(least.is_proved);
    let pivot = arms::pivot_m(&bay, Corner::RearLeft);
    let toward = (pivot - arm.lift_point_m).normalize() * 0.030;
    assert!(least.by_m.distance(toward) < 1e-9, "{least:?} {toward}");
}

#[test]
fn two_arms_that_pull_apart_meet_at_the_corner_of_their_sectors() {
    // Both front arms are to be 100 mm shorter than asked: they pull to either side, so that the
    // move goes straight back to where both arcs cross.
    let mut bay = test_bay();
    free(&mut bay);
    let asked = arms::reach(&bay, Corner::FrontLeft, ParkingError::default()).unwrap();
    for corner in [Corner::FrontLeft, Corner::FrontRight] {
        bay.lift.arms[corner.index()].longest = Length::metres(asked.reach_m - 0.1);
    }
    let least = Wanted::new(&bay, Uncertainty::NONE)
        .unwrap()
        .least()
        .unwrap();
    let offset = asked.lift_point_m - arms::pivot_m(&bay, Corner::FrontLeft);
    // Across stays; along shrinks until the length is 100 mm less.
    let along = ((asked.reach_m - 0.1).powi(2) - offset.x * offset.x).sqrt() - offset.y;
    assert!(least.is_proved && least.by_m.x.abs() < 1e-9, "{least:?}");
    assert!((least.by_m.y - along).abs() < 1e-9, "{least:?} {along}");
}

#[test]
fn arms_that_can_never_reach_together_have_no_move() {
    let mut bay = test_bay();
    for corner in [Corner::FrontLeft, Corner::FrontRight] {
        bay.lift.arms[corner.index()].shortest = Length::mm(90.0);
        bay.lift.arms[corner.index()].longest = Length::mm(100.0);
    }
    let wanted = Wanted::new(&bay, Uncertainty::worst(&bay)).unwrap();
    assert_eq!(wanted.least(), Err(NoMove::Beyond));
}

#[test]
fn teeth_too_wide_for_the_pad_are_counted() {
    // One tooth every 20 deg and a pad 50 mm across: off its tooth the pad misses its point.
    let mut bay = test_bay();
    free(&mut bay);
    bay.lift.pad.diameter = Length::mm(50.0);
    let corner = Corner::FrontLeft;
    let asked = arms::reach(&bay, corner, ParkingError::default()).unwrap();
    bay.lift.arms[corner.index()].tooth = Some(Angle::degrees(20.0));
    let wanted = Wanted::new(&bay, Uncertainty::NONE).unwrap();
    let pitch = 20.0_f64.to_radians();
    let off = asked.swing_rad - (asked.swing_rad / pitch).round() * pitch;
    assert!(
        asked.reach_m * off.abs().sin() > 0.025,
        "the tooth already does"
    );
    assert!(wanted.within_sectors(DVec2::ZERO) && !wanted.all_reach(DVec2::ZERO));
    let least = wanted.least().unwrap();
    assert!(
        !least.is_proved && wanted.all_reach(least.by_m),
        "{least:?}"
    );
    // No more than to bring the point onto the tooth's own line.
    assert!(least.by_m.length() <= asked.reach_m * off.abs().sin() + 1e-9);
    assert!(least.by_m.length() >= asked.reach_m * off.abs().sin() - 0.025 - 1e-6);
}

#[test]
fn teeth_wider_than_any_arm_can_bridge_are_not_called_out_of_reach() {
    // Half of 40 deg at 0.6 m, the shortest, is 0.2 m; the pad bridges 25 mm, and where the driver
    // stops takes in the middle between two teeth.
    let mut bay = test_bay();
    bay.lift.pad.diameter = Length::mm(50.0);
    for arm in &mut bay.lift.arms {
        arm.tooth = Some(Angle::degrees(40.0));
    }
    bay.parking.repeat_along = Length::mm(400.0);
    for arm in &mut bay.lift.arms {
        (arm.shortest, arm.longest) = (Length::mm(600.0), Length::metres(3.0));
    }
    let wanted = Wanted::new(&bay, Uncertainty::worst(&bay)).unwrap();
    assert_eq!(wanted.least(), Err(NoMove::Teeth));
}

#[test]
fn whole_steps_come_shortest_first_about_the_place() {
    let about = DVec2::new(3.1, -1.9) * INCH;
    let steps = whole_steps(about, INCH, 1);
    assert_eq!(steps.len(), 9);
    assert!(steps.windows(2).all(|w| w[0].length() <= w[1].length()));
    assert!(
        steps
            .iter()
            .any(|step| step.distance(DVec2::new(3.0, -2.0) * INCH) < 1e-12)
    );
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]

    #[test]
    fn the_move_makes_all_four_reach_and_no_shorter_one_does(
        longest in proptest::array::uniform4(34.0..60.0_f64),
        shortest in 20.0..33.0_f64,
        low in -20.0..35.0_f64,
        high in 50.0..95.0_f64,
        across in -8.0..8.0_f64,
        aim in -20.0..20.0_f64,
        yaw in -2.0..2.0_f64,
        tail_in in any::<bool>(),
        exact in any::<bool>(),
    ) {
        let mut bay = test_bay();
        for (arm, longest) in bay.lift.arms.iter_mut().zip(longest) {
            (arm.shortest, arm.longest) = (Length::inches(shortest), Length::inches(longest));
            (arm.swing_min, arm.swing_max) = (Angle::degrees(low), Angle::degrees(high));
        }
        bay.parking.aim = Aim::LiftPoints(Length::inches(aim));
        bay.parking.across = Length::inches(across);
        bay.parking.yaw = Angle::degrees(yaw);
        if tail_in {
            bay.parking.facing = Facing::TailIn;
        }
        let uncertainty = if exact { Uncertainty::NONE } else { Uncertainty::worst(&bay) };
        let wanted = Wanted::new(&bay, uncertainty).unwrap();
        let found = wanted.least().ok();
        // Nothing shorter, on rings and rays; where nothing was found, nothing at all.
        let longest_m = found.map_or(0.8, |least| least.by_m.length());
        for ring in 0..24 {
            let radius = longest_m * f64::from(ring + 1) / 24.0 * (1.0 - 1e-6);
            for ray in 0..60 {
                let (sin, cos) = (TAU * f64::from(ray) / 60.0).sin_cos();
                let shorter = DVec2::new(cos, sin) * radius;
                let does = match found {
                    Some(least) if !least.is_proved => false,
                    _ => wanted.all_reach(shorter),
                };
                prop_assert!(!does || longest_m <= 0.0, "{found:?}: {shorter} does");
            }
        }
        if let Some(least) = found {
            let there = moved(&bay, least.by_m);
            let uncertainty = if exact { Uncertainty::NONE } else { Uncertainty::worst(&there) };
            for corner in Corner::ALL {
                let places = Places::new(&there, corner, &uncertainty).unwrap();
                let doubtful = with_doubtful_arms(&there, &uncertainty);
                let reached = places.reach(&there, &doubtful, &uncertainty, DVec2::ZERO);
                // Built anew at the place, the last bits differ.
                prop_assert!(reached.short_m + reached.teeth_m <= 2e-9, "{reached:?}");
            }
        }
    }

    #[test]
    fn a_mirrored_bay_mirrors_the_move(
        longest in proptest::array::uniform4(34.0..50.0_f64),
        across in -8.0..8.0_f64,
        aim in -20.0..20.0_f64,
        yaw in -2.0..2.0_f64,
    ) {
        let mut bay = test_bay();
        for (arm, longest) in bay.lift.arms.iter_mut().zip(longest) {
            arm.longest = Length::inches(longest);
        }
        bay.parking.aim = Aim::LiftPoints(Length::inches(aim));
        bay.parking.across = Length::inches(across);
        bay.parking.yaw = Angle::degrees(yaw);
        let mirror = mirrored(&bay);
        let least = |bay: &Bay| Wanted::new(bay, Uncertainty::worst(bay)).unwrap().least().ok();
        match (least(&bay), least(&mirror)) {
            (None, None) => {}
            (Some(a), Some(b)) => {
                prop_assert!(a.by_m.length() - b.by_m.length() < 1e-9);
                let back = DVec2::new(-b.by_m.x, b.by_m.y);
                prop_assert!(a.by_m.distance(back) < 1e-6, "{a:?} {b:?}");
            }
            (a, b) => prop_assert!(false, "{a:?} {b:?}"),
        }
    }
}
