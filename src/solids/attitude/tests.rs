//! Attitudes by hand: translation, pitch, roll, a warped set of pads, a falling floor.

use glam::DVec2;
use proptest::prelude::*;

use super::*;
use crate::bay::{Aim, Bay, Corner, Facing, FallToward, Floor, NamedMass};
use crate::solids::test_bay::test_bay;
use crate::solids::vehicle::{lift_point_at, lift_point_m};
use crate::solids::{ParkingError, Pose};
use crate::units::{Angle, Length, Mass};

const INCH: f64 = 0.0254;
const NO_ERROR: ParkingError = ParkingError {
    across_m: 0.0,
    along_m: 0.0,
    yaw_rad: 0.0,
};

/// Raises the pads of the given corners by `by_m` above their 3 in.
fn raise(bay: &mut Bay, corners: &[Corner], by_m: f64) {
    for corner in corners {
        bay.parking.pad_raise[corner.index()] += Length::metres(by_m);
    }
}

fn stances(bay: &Bay) -> Vec<Attitude> {
    attitudes(bay, NO_ERROR, [0.0; 4]).unwrap()
}

fn lift_point(bay: &Bay, pose: Pose, corner: Corner) -> DVec3 {
    pose.point(lift_point_m(
        &bay.vehicle,
        lift_point_at(corner, bay.parking.facing),
    ))
}

#[track_caller]
fn close(found: f64, expected: f64) {
    assert!((found - expected).abs() < 1e-9, "{found} is not {expected}");
}

#[test]
fn the_centre_of_gravity_follows_the_axle_loads() {
    // 57 % on the front axle: 43 % of 145 in behind it, 38 + 62.35 = 100.35 in.
    let mut bay = test_bay();
    bay.vehicle.axle_loads = Some([Mass::pounds(2_850.0), Mass::pounds(2_150.0)]);
    let balance = centre_of_gravity(&bay.vehicle).unwrap();
    close(balance.plan_m.y / INCH, -100.35);
    close(balance.plan_m.x, 0.0);
    // Engine out, 600 lb at 44 in and 2 in to the left:
    // (5000 * 100.35 - 600 * 44) / 4400 = 475350 / 4400 in; across 600 * 2 / 4400 in to the right.
    bay.vehicle.masses.push(NamedMass {
        name: "engine out".into(),
        mass: Mass::pounds(-600.0),
        station: Length::inches(44.0),
        across: Length::inches(-2.0),
        height: None,
        stays: false,
    });
    let balance = centre_of_gravity(&bay.vehicle).unwrap();
    close(balance.plan_m.y / INCH, -475_350.0 / 4_400.0);
    close(balance.plan_m.x / INCH, 1_200.0 / 4_400.0);
    close(balance.mass_kg, 4_400.0 * 0.453_592_37);
}

#[test]
fn what_is_lined_up_lies_on_the_post_line_both_ways_round() {
    let mut bay = test_bay();
    // 38 + 145 * 2200/5200 = 99.34615 in behind the bumper.
    let cg = (38.0 + 145.0 * 2_200.0 / 5_200.0) * INCH;
    bay.parking.aim = Aim::CentreOfGravity(Length::inches(5.0));
    bay.parking.across = Length::inches(2.0);
    bay.parking.yaw = Angle::degrees(3.0);
    let error = ParkingError {
        across_m: 0.01,
        along_m: -0.02,
        yaw_rad: 0.01,
    };
    for facing in [Facing::NoseIn, Facing::TailIn] {
        bay.parking.facing = facing;
        let pose = at_rest(&bay, error).unwrap();
        let place = pose.point(DVec3::new(0.0, -cg, 0.0));
        let expected = DVec3::new(2.0 * INCH + 0.01, 173.0 * INCH - 0.02, 0.0);
        assert!((place - expected).length() < 1e-9, "{place}");
        // The nose points 3 deg + 0.01 rad counter-clockwise from straight in (or straight out).
        let nose = pose.rotation * DVec3::Y;
        let sign = if facing == Facing::NoseIn { 1.0 } else { -1.0 };
        let yaw = 3.0_f64.to_radians() + 0.01;
        assert!((nose - sign * DVec3::new(-yaw.sin(), yaw.cos(), 0.0)).length() < 1e-9);
    }
}

#[test]
fn equal_pads_only_lift() {
    // Lift points at 16 in, pad tops at 4 + 3 = 7 in: all carry at 9 in; the tyres leave the floor
    // 4 in (front) and 5 in (rear) later.
    let bay = test_bay();
    let touch = contact(&bay, NO_ERROR).unwrap();
    for travel in touch.touch_m {
        close(travel / INCH, 9.0);
    }
    close(touch.first_touch_m, touch.carry_m);
    let found = stances(&bay);
    assert_eq!(found.len(), 1);
    let attitude = found[0];
    assert_eq!((attitude.carries, attitude.loose), ([true; 4], None));
    let rest = at_rest(&bay, NO_ERROR).unwrap();
    let pose = attitude.bay_from_vehicle_at_zero;
    assert!((pose.translation - rest.translation + DVec3::Z * 9.0 * INCH).length() < 1e-12);
    assert!(pose.rotation.angle_between(rest.rotation) < 1e-12);
    close(attitude.lift_off_m[0] / INCH, 13.0);
    close(attitude.lift_off_m[1] / INCH, 14.0);
    close(attitude.lift_off_last_m[0] / INCH, 13.0);
}

#[test]
fn higher_front_pads_pitch_the_nose_up_or_the_tail() {
    // 50 mm over the 76 in between the lift points: sin a = 0.05 / 1.9304.
    let mut bay = test_bay();
    raise(&mut bay, &[Corner::FrontLeft, Corner::FrontRight], 0.05);
    let sin = 0.05 / (76.0 * INCH);
    let cos = (1.0 - sin * sin).sqrt();
    let low_top = 7.0 * INCH;
    // The bumper's foot lies 74 in ahead of the front lift points and 16 in below them.
    let (ahead, below) = (74.0 * INCH, 16.0 * INCH);
    let pose = stances(&bay)[0].bay_from_vehicle_at_zero;
    close(
        pose.point(DVec3::ZERO).z,
        low_top + 0.05 + ahead * sin - below * cos,
    );
    bay.parking.facing = Facing::TailIn;
    let pose = stances(&bay)[0].bay_from_vehicle_at_zero;
    close(
        pose.point(DVec3::ZERO).z,
        low_top - ahead * sin - below * cos,
    );
    // The touch comes 50 mm sooner at the front pads.
    let touch = contact(&bay, NO_ERROR).unwrap();
    close(touch.first_touch_m, 9.0 * INCH - 0.05);
    close(touch.carry_m, 9.0 * INCH);
    close(touch.touch_m[0], 9.0 * INCH - 0.05);
    close(touch.touch_m[3], 9.0 * INCH);
}

#[test]
fn higher_left_pads_roll_to_the_right() {
    // 20 mm over the 40 in between the lift points; the left sill's corner 20 in further out.
    let mut bay = test_bay();
    raise(&mut bay, &[Corner::FrontLeft, Corner::RearLeft], 0.02);
    let sin = 0.02 / (40.0 * INCH);
    let cos = (1.0 - sin * sin).sqrt();
    let pose = stances(&bay)[0].bay_from_vehicle_at_zero;
    let sill = pose.point(DVec3::new(-40.0, -100.0, 19.0) * INCH);
    close(
        sill.z,
        7.0 * INCH + 0.02 + 20.0 * INCH * sin + 3.0 * INCH * cos,
    );
    // The right wheels leave the floor after the left ones.
    let attitude = stances(&bay)[0];
    assert!(attitude.lift_off_last_m[0] > attitude.lift_off_m[0] + 0.02);
    // The same through the extra height of the pads.
    let level = test_bay();
    let extra = attitudes(&level, NO_ERROR, [0.02, 0.0, 0.02, 0.0]).unwrap();
    close(
        extra[0].bay_from_vehicle_at_zero.point(DVec3::ZERO).z,
        pose.point(DVec3::ZERO).z,
    );
}

#[test]
fn a_single_high_pad_leaves_two_stances() {
    // Front left 10 mm high. In the body the front right point is front left + rear right - rear
    // left, so on those three pads it hangs exactly 10 mm over its own; likewise rear left.
    let mut bay = test_bay();
    bay.parking.aim = Aim::LiftPoints(Length::ZERO);
    raise(&mut bay, &[Corner::FrontLeft], 0.010);
    let loads = bay.vehicle.axle_loads.take();
    let found = stances(&bay);
    let loose: Vec<Corner> = found.iter().map(|s| s.loose.unwrap().0).collect();
    assert_eq!(loose, [Corner::FrontRight, Corner::RearLeft]);
    for stance in &found {
        let (corner, gap) = stance.loose.unwrap();
        close(gap, 0.010);
        for c in Corner::ALL {
            assert_eq!(stance.carries[c.index()], c != corner);
        }
    }
    // With the axle loads the centre of gravity lies 12.65 in ahead of the lift points' middle,
    // some 150 mm ahead of the diagonal: the vehicle stands on both front pads and rear right.
    bay.vehicle.axle_loads = loads;
    let found = stances(&bay);
    assert_eq!(found.len(), 1);
    assert_eq!(found[0].loose.unwrap().0, Corner::RearLeft);
    // With the centre of gravity close to the diagonal both stances stay.
    bay.vehicle.axle_loads = Some([Mass::pounds(2_500.0), Mass::pounds(2_550.0)]);
    assert_eq!(stances(&bay).len(), 2);
    // Outside every triangle (behind the rear lift points) none can be ruled out.
    bay.vehicle.axle_loads = Some([Mass::pounds(200.0), Mass::pounds(2_550.0)]);
    assert_eq!(stances(&bay).len(), 2);
}

#[test]
fn the_body_lies_on_a_falling_floor_and_comes_level_on_the_pads() {
    // 1 in 100 down to the door: the rear lift points lie lower and are met sooner.
    let mut bay = test_bay();
    bay.garage.floor = Floor::Fall {
        slope: 0.01,
        toward: FallToward::Door,
    };
    let rest = at_rest(&bay, NO_ERROR).unwrap();
    for index in 0..4 {
        let wheel = crate::solids::vehicle::wheel_middle_m(&bay.vehicle, index);
        let foot = rest.point(wheel - DVec3::Z * wheel.z);
        close(foot.z, 0.01 * (foot.y - bay.lift.post_line.m()));
    }
    let touch = contact(&bay, NO_ERROR).unwrap();
    // 76 in along the body rise by 76 in * sin(atan(0.01)).
    close(
        touch.touch_m[0] - touch.touch_m[2],
        76.0 * INCH * 0.01 / 1.0001_f64.sqrt(),
    );
    let attitude = stances(&bay)[0];
    let up = attitude.bay_from_vehicle_at_zero.rotation * DVec3::Z;
    assert!((up - DVec3::Z).length() < 1e-12);
    // The floor is 1.45 in higher under the front wheels, 145 in further in, and the front axle
    // hangs 1 in less than the rear one. Each tyre leaves the floor at the same place beside its
    // lowest point, so that the difference is exact.
    close(
        (attitude.lift_off_m[0] - attitude.lift_off_m[1]) / INCH,
        0.01 * 145.0 - 1.0,
    );
}

#[test]
fn what_cannot_stand_says_why() {
    let mut bay = test_bay();
    bay.vehicle.axle_loads = None;
    assert_eq!(at_rest(&bay, NO_ERROR), Err(StanceError::NoAxleLoads));
    bay.parking.aim = Aim::LiftPoints(Length::ZERO);
    assert!(at_rest(&bay, NO_ERROR).is_ok());
    let mut uneven = bay.clone();
    raise(&mut uneven, &[Corner::FrontLeft, Corner::FrontRight], 3.0);
    let found = attitudes(&uneven, NO_ERROR, [0.0; 4]);
    assert_eq!(found, Err(StanceError::PadsTooUneven));
    let mut line = bay.clone();
    for point in &mut line.vehicle.lift_points {
        point.half_spacing = Length::ZERO;
    }
    let found = attitudes(&line, NO_ERROR, [0.0; 4]);
    assert_eq!(found, Err(StanceError::LiftPointsInLine));
    let found = attitudes(&bay, NO_ERROR, [f64::NAN, 0.0, 0.0, 0.0]);
    assert_eq!(found, Err(StanceError::NotANumber));
    let lost = ParkingError {
        yaw_rad: f64::NAN,
        ..NO_ERROR
    };
    assert_eq!(at_rest(&bay, lost), Err(StanceError::NotANumber));
}

/// A bay with pads, lift points, facing and parking drawn at random.
fn any_bay() -> impl Strategy<Value = Bay> {
    (
        prop::array::uniform4(0.0..0.15_f64),
        prop::array::uniform4((-0.1..0.1_f64, -0.1..0.1_f64, -0.05..0.05_f64)),
        any::<bool>(),
        any::<bool>(),
        -0.1..0.1_f64,
        -0.02..0.02_f64,
    )
        .prop_map(|(pads, points, tail_in, known, yaw, slope)| {
            let mut bay = test_bay();
            bay.parking.pad_raise = pads.map(Length::metres);
            for (point, (along, across, up)) in bay.vehicle.lift_points.iter_mut().zip(points) {
                point.station += Length::metres(along);
                point.half_spacing += Length::metres(across);
                point.height += Length::metres(up);
            }
            if tail_in {
                bay.parking.facing = Facing::TailIn;
            }
            if !known {
                bay.vehicle.axle_loads = None;
                bay.parking.aim = Aim::LiftPoints(Length::ZERO);
            }
            bay.parking.yaw = Angle::radians(yaw);
            bay.garage.floor = Floor::Fall {
                slope: slope.abs(),
                toward: if slope > 0.0 {
                    FallToward::Door
                } else {
                    FallToward::Right
                },
            };
            bay
        })
}

/// The bay seen in a mirror across `x = 0`.
fn mirrored(bay: &Bay) -> Bay {
    let mut other = bay.clone();
    other.parking.pad_raise = [1, 0, 3, 2].map(|i| bay.parking.pad_raise[i]);
    other.vehicle.lift_points = [1, 0, 3, 2].map(|i| bay.vehicle.lift_points[i]);
    other.parking.yaw = -bay.parking.yaw;
    if let Floor::Fall { toward, .. } = &mut other.garage.floor {
        *toward = match *toward {
            FallToward::Right => FallToward::Left,
            FallToward::Left => FallToward::Right,
            along => along,
        };
    }
    other
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(300))]

    #[test]
    fn carrying_pads_touch_and_loose_ones_hang_below(bay in any_bay()) {
        let found = stances(&bay);
        prop_assert!(!found.is_empty());
        let rest = at_rest(&bay, NO_ERROR).unwrap();
        let plan_middle = |pose: Pose| {
            let sum: DVec3 = Corner::ALL.map(|c| lift_point(&bay, pose, c)).iter().sum();
            DVec2::new(sum.x, sum.y) / 4.0
        };
        for stance in found {
            let pose = stance.bay_from_vehicle_at_zero;
            prop_assert!(plan_middle(pose).distance(plan_middle(rest)) < 1e-9);
            // Tilt taken out, the heading on the pads is the parked one, whatever the floor.
            let nose = levelling(pose.rotation * DVec3::Z) * pose.rotation * DVec3::Y;
            let sign = if bay.parking.facing == Facing::NoseIn { 1.0 } else { -1.0 };
            let (sin, cos) = bay.parking.yaw.rad().sin_cos();
            prop_assert!((nose - sign * DVec3::new(-sin, cos, 0.0)).length() < 1e-9);
            for corner in Corner::ALL {
                let i = corner.index();
                let top = (bay.lift.pad.lowest + bay.parking.pad_raise[i]).m();
                let gap = lift_point(&bay, pose, corner).z - top;
                if stance.carries[i] {
                    prop_assert!(gap.abs() < 1e-9, "{gap}");
                } else {
                    prop_assert!(gap > 0.0 && (gap - stance.loose.unwrap().1).abs() < 1e-9);
                }
            }
            for axle in 0..2 {
                prop_assert!(stance.lift_off_m[axle] <= stance.lift_off_last_m[axle]);
            }
        }
    }

    #[test]
    fn a_mirrored_bay_stands_mirrored(bay in any_bay()) {
        let (here, there) = (stances(&bay), stances(&mirrored(&bay)));
        prop_assert_eq!(here.len(), there.len());
        for stance in here {
            let swapped = [1, 0, 3, 2].map(|i| stance.carries[i]);
            let twin = there.iter().find(|other| other.carries == swapped);
            prop_assert!(twin.is_some());
            let twin = twin.unwrap().bay_from_vehicle_at_zero;
            for point in [DVec3::new(0.7, -0.3, 1.2), DVec3::new(-1.0, -5.0, 0.4)] {
                let a = stance.bay_from_vehicle_at_zero.point(point);
                let b = twin.point(point * DVec3::new(-1.0, 1.0, 1.0));
                prop_assert!((a - b * DVec3::new(-1.0, 1.0, 1.0)).length() < 1e-9, "{} {}", a, b);
            }
        }
    }
}
