//! Which solids are the things that hang or stand in the room?
//!
//! Heights are above the floor below each thing's middle. Where the floor there is only known to
//! lie between two levels, the solid covers every reading.

use glam::{DQuat, DVec3};

use super::shell::floor_level_range_m;
use super::{Pose, Role, Solid};
use crate::bay::{Bay, ObstacleShape};

/// Everything in `garage.obstacles`, in that order; bay axes, metres.
#[must_use]
pub fn obstacles(bay: &Bay) -> Vec<Solid> {
    bay.garage
        .obstacles
        .iter()
        .enumerate()
        .map(|(index, obstacle)| {
            let name = format!("obstacle/{}", obstacle.name);
            solid(bay, name, Role::Obstacle(index), &obstacle.shape)
        })
        .collect()
}

fn solid(bay: &Bay, name: String, role: Role, shape: &ObstacleShape) -> Solid {
    match *shape {
        ObstacleShape::Box {
            x,
            y,
            bottom,
            width,
            depth,
            height,
            turned,
        } => {
            let middle = [x.m(), y.m()];
            let (low, high) = floor_level_range_m(bay, middle, middle);
            let tall = height.m() + (high - low);
            let size = DVec3::new(width.m(), depth.m(), tall);
            let place = DVec3::new(x.m(), y.m(), low + bottom.m() + 0.5 * tall);
            let rotation = DQuat::from_rotation_z(turned.rad());
            Solid::posed_box(name, role, size, Pose::new(rotation, place))
        }
        ObstacleShape::Cylinder { from, to, diameter } => {
            let [from, to] = [from, to].map(|[x, y, z]| DVec3::new(x.m(), y.m(), z.m()));
            let middle = 0.5 * (from + to);
            let place = [middle.x, middle.y];
            let (low, high) = floor_level_range_m(bay, place, place);
            let lift = DVec3::Z * (0.5 * (low + high));
            // Half the doubt goes on the radius all round, and on the ends: the bar then holds
            // both the lowest and the highest reading.
            let doubt = 0.5 * (high - low);
            let end = (to - from).normalize_or_zero() * doubt;
            let radius = 0.5 * diameter.m() + doubt;
            Solid::bar(name, role, from + lift - end, to + lift + end, radius)
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bay::{FallToward, Floor, FloorLevel, ObstacleShape};
    use crate::solids::test_bay::test_bay;
    use crate::units::{Angle, Length};

    #[test]
    fn a_light_and_a_pipe_stand_where_they_are_said_to() {
        let solids = obstacles(&test_bay());
        assert_eq!(solids[0].name, "obstacle/strip light left");
        assert_eq!(solids[1].role, Role::Obstacle(1));
        // Light: 140 in to 143 in, 12 ft to 16 ft from the door wall.
        let (low, high) = solids[0].bounds();
        assert!((low.z - 140.0 * 0.0254).abs() < 1e-12);
        assert!((high.z - 143.0 * 0.0254).abs() < 1e-12);
        assert!((low.y - 12.0 * 0.3048).abs() < 1e-12 && (high.y - 16.0 * 0.3048).abs() < 1e-12);
        // Pipe: axis at 141 in, 2 in across.
        let (low, high) = solids[1].bounds();
        assert!((low.z - 140.0 * 0.0254).abs() < 1e-9 && (high.z - 142.0 * 0.0254).abs() < 1e-9);
        assert!((low.x - -3.6576).abs() < 1e-9 && (high.x - 3.6576).abs() < 1e-9);
    }

    #[test]
    fn a_quarter_turn_swaps_width_and_depth() {
        let mut bay = test_bay();
        if let ObstacleShape::Box { turned, .. } = &mut bay.garage.obstacles[0].shape {
            *turned = Angle::degrees(90.0);
        }
        let (low, high) = obstacles(&bay)[0].bounds();
        assert!((high.x - low.x - 4.0 * 0.3048).abs() < 1e-9);
        assert!((high.y - low.y - 5.0 * 0.0254).abs() < 1e-9);
    }

    #[test]
    fn heights_are_above_the_floor_below() {
        let mut bay = test_bay();
        let level = |solid: &Solid| solid.bounds().0.z;
        let before = level(&obstacles(&bay)[1]);
        // The pipe runs 20 ft in, 6 ft behind the post line: 1 % of 1.8288 m lower.
        bay.garage.floor = Floor::Fall {
            slope: 0.01,
            toward: FallToward::Back,
        };
        let after = level(&obstacles(&bay)[1]);
        assert!((before - after - 0.018_288).abs() < 1e-9);
        // Known by points only: the solid reaches from the lowest to the highest that the floor may be.
        bay.garage.floor = Floor::Levels(vec![FloorLevel {
            x: Length::ZERO,
            y: Length::metres(6.0),
            level: Length::mm(-40.0),
        }]);
        let (low, high) = obstacles(&bay)[1].bounds();
        let off = bay.policy.measured_garage.m();
        assert!((low.z - (before - 0.04 - off)).abs() < 1e-9);
        assert!((high.z - (before + 0.0508)).abs() < 1e-9);
    }
}
