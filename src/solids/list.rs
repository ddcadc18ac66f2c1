//! Every solid of a bay at one door state and one carriage travel, each where it then is.

use glam::DVec3;

use super::attitude::StanceError;
use super::{
    DoorTravel, ParkingError, Solid, arms, door, obstacles, opener, posts, raise, shell, vehicle,
};
use crate::bay::{Bay, Corner};

pub use super::export::{SolidExport, export};

/// Every solid of the bay, posed for a door state and a carriage travel in metres, the vehicle
/// parked where it is wanted. The order is fixed: room, door, lift, vehicle.
///
/// Where the body can stand on the pads in more than one way, the first is shown; the study
/// checks them all. Between the first touch of a pad and the last, the body is shown part of the
/// way from one attitude to the other.
///
/// # Errors
/// When it cannot be said how the vehicle stands, see [`StanceError`].
pub fn solids(bay: &Bay, door: DoorTravel, travel_m: f64) -> Result<Vec<Solid>, StanceError> {
    let mut solids = shell::shell(bay);
    solids.extend(obstacles::obstacles(bay));
    solids.extend(door::door(bay, door));
    solids.extend(opener::opener(bay, door));
    solids.extend(posts::posts(bay));

    let mut moving = posts::carriages(bay);
    for corner in Corner::ALL {
        let reach = arms::reach(bay, corner, ParkingError::default())?;
        moving.extend(arms::arm_and_pad(
            bay,
            corner,
            reach.swing_rad,
            reach.reach_m,
        ));
    }
    let climb = DVec3::Z * travel_m;
    solids.extend(moving.into_iter().map(|mut solid| {
        solid.bay_from_solid = solid.bay_from_solid.moved(climb);
        solid
    }));

    let (pose, droop_m) = raise::vehicle_at(bay, travel_m)?;
    solids.extend(vehicle::posed(bay, pose, droop_m));
    Ok(solids)
}

#[cfg(test)]
mod tests {
    use std::collections::HashSet;

    use super::*;
    use crate::bay::Facing;
    use crate::solids::Role;
    use crate::solids::test_bay::test_bay;
    use crate::units::Length;

    const INCH: f64 = 0.0254;

    fn at(bay: &Bay, inches: f64) -> Vec<Solid> {
        solids(bay, DoorTravel::Shut, inches * INCH).unwrap()
    }

    /// Lowest and highest height of a solid, inches.
    fn heights(solids: &[Solid], name: &str) -> (f64, f64) {
        let solid = solids.iter().find(|s| s.name == name).unwrap();
        let (low, high) = solid.bounds();
        (low.z / INCH, high.z / INCH)
    }

    #[track_caller]
    fn close(found: f64, expected: f64) {
        assert!((found - expected).abs() < 1e-9, "{found} is not {expected}");
    }

    #[test]
    fn names_are_unique_and_the_order_is_fixed() {
        let bay = test_bay();
        for door in [DoorTravel::Shut, DoorTravel::Open, DoorTravel::At(0.35)] {
            let list = solids(&bay, door, 0.5).unwrap();
            let names: Vec<&str> = list.iter().map(|s| s.name.as_str()).collect();
            let unique: HashSet<&str> = names.iter().copied().collect();
            assert_eq!(unique.len(), names.len());
            assert_eq!(list, solids(&bay, door, 0.5).unwrap());
            let higher = solids(&bay, door, 1.0).unwrap();
            assert!(names.iter().eq(higher.iter().map(|s| &s.name)));
        }
    }

    #[test]
    fn the_vehicle_waits_then_rises_then_hangs() {
        let bay = test_bay();
        // The pads (top at 7 in) meet the lift points (16 in) at 9 in of travel; the front tyres
        // leave the floor at 13 in and the rear ones at 14 in.
        for (travel, pad, point, front, rear) in [
            (0.0, 7.0, 16.0, 0.0, 0.0),
            (8.0, 15.0, 16.0, 0.0, 0.0),
            (9.0, 16.0, 16.0, 0.0, 0.0),
            (11.0, 18.0, 18.0, 0.0, 0.0),
            (13.5, 20.5, 20.5, 0.5, 0.0),
            (40.0, 47.0, 47.0, 27.0, 26.0),
        ] {
            let list = at(&bay, travel);
            close(heights(&list, "lift/pad front left").1, pad);
            close(heights(&list, "vehicle/lift point front left").0, point);
            close(heights(&list, "vehicle/wheel front right").0, front);
            close(heights(&list, "vehicle/wheel rear left").0, rear);
            close(heights(&list, "lift/carriage left").0, 3.0 + travel);
            close(heights(&list, "lift/post left").0, 0.0);
        }
    }

    #[test]
    fn pads_stand_under_their_lift_points_both_ways_round() {
        let mut bay = test_bay();
        for facing in [Facing::NoseIn, Facing::TailIn] {
            bay.parking.facing = facing;
            let list = at(&bay, 20.0);
            for corner in Corner::ALL {
                let pad = list.iter().find(|s| s.role == Role::Pad(corner)).unwrap();
                let name = vehicle::lift_point_name(vehicle::lift_point_at(corner, facing));
                let point = list.iter().find(|s| s.name == name).unwrap();
                let apart = pad.bay_from_solid.translation - point.bay_from_solid.translation;
                let reach = arms::reach(&bay, corner, ParkingError::default()).unwrap();
                close(apart.truncate().length(), reach.shortfall_m);
            }
        }
    }

    #[test]
    fn between_first_and_last_touch_the_body_turns_without_a_jump() {
        let mut bay = test_bay();
        for corner in [Corner::FrontLeft, Corner::FrontRight] {
            bay.parking.pad_raise[corner.index()] = Length::inches(5.0);
        }
        // Front pads touch at 7 in, rear pads at 9 in.
        let nose = |travel: f64| heights(&at(&bay, travel), "vehicle/side 1").1;
        for edge in [7.0, 9.0] {
            assert!((nose(edge + 1e-7) - nose(edge - 1e-7)).abs() < 1e-5);
        }
        assert!(nose(6.0) < nose(8.0) && nose(8.0) < nose(9.0));
    }

    #[test]
    fn the_export_names_kinds_and_sizes() {
        let list = at(&test_bay(), 12.0);
        let value = serde_json::to_value(export(&list)).unwrap();
        let find = |name: &str| {
            let all = value.as_array().unwrap();
            all.iter().find(|s| s["name"] == name).unwrap().clone()
        };
        let post = find("lift/post left");
        assert_eq!(
            (&post["kind"], &post["motion"]),
            (&"box".into(), &"fixed".into())
        );
        assert_eq!(post["layer"], "post");
        close(post["size_m"][2].as_f64().unwrap(), 142.0 * INCH);
        close(post["position_m"][2].as_f64().unwrap(), 71.0 * INCH);
        close(post["quaternion"]["w"].as_f64().unwrap(), 1.0);
        let pad = find("lift/pad rear right");
        assert_eq!(
            (&pad["kind"], &pad["motion"]),
            (&"cylinder".into(), &"moving".into())
        );
        assert_eq!(pad["layer"], "moving_lift");
        close(pad["radius_m"].as_f64().unwrap(), 2.5 * INCH);
        close(pad["height_m"].as_f64().unwrap(), 5.5 * INCH);
        let side = find("vehicle/side 1");
        assert_eq!(side["kind"], "prism");
        assert_eq!(side["vertices_m"].as_array().unwrap().len(), 8);
        assert_eq!(value.as_array().unwrap().len(), list.len());
        let schema = serde_json::to_value(schemars::schema_for!(Vec<SolidExport>)).unwrap();
        assert!(schema.to_string().contains("quaternion"));
    }
}
