//! How far may what stands in the room be off where the file has it? Every measure that its place and size
//! add up, in metres across, along and up.

use glam::{DVec2, DVec3};

use super::door_off::DoorOff;
use super::feet::raised_m;
use super::findings::DoorState;
use super::uncertainty::Uncertainty;
use crate::bay::{Bay, Obstacle, ObstacleShape};
use crate::solids::{Role, Solid};
use crate::units::Length;

/// Of a bay.
pub(super) struct Off<'a> {
    obstacles: &'a [Obstacle],
    uncertainty: &'a Uncertainty,
    door: DoorOff,
    state: DoorState,
    /// How much higher than on a level floor the lift may stand, with all that it carries.
    raised_m: f64,
}

impl<'a> Off<'a> {
    /// With the door in that state.
    pub(super) fn of(bay: &'a Bay, uncertainty: &'a Uncertainty, state: DoorState) -> Self {
        Self {
            state,
            obstacles: &bay.garage.obstacles,
            door: DoorOff::of(bay, uncertainty.garage_m),
            uncertainty,
            raised_m: raised_m(bay),
        }
    }

    /// How far a solid's faces may be off.
    pub(super) fn spread(&self, solid: &Solid) -> DVec3 {
        // What the lift stands higher counts against the room: its own parts go up together.
        let up = match solid.role {
            Role::Ceiling
            | Role::DoorPanel
            | Role::DoorFitting
            | Role::Opener
            | Role::Obstacle(_) => self.raised_m,
            _ => 0.0,
        };
        self.measured(solid) + DVec3::Z * up
    }

    fn measured(&self, solid: &Solid) -> DVec3 {
        let uncertainty = self.uncertainty;
        let garage_m = uncertainty.garage_m;
        match solid.role {
            Role::Floor => DVec3::splat(garage_m),
            // Half the width and the opening's offset.
            Role::Wall | Role::DoorWall => DVec3::splat(1.5 * garage_m),
            // Its height; half the room and the ridge's place.
            Role::Ceiling => DVec3::new(1.5, 1.5, 1.0) * garage_m,
            Role::DoorPanel | Role::DoorFitting | Role::Opener => uncertainty
                .door_spread()
                .max(self.door.of_solid(solid, self.state)),
            Role::Post(_)
            | Role::BasePlate(_)
            | Role::PowerUnit(_)
            | Role::TieBeam
            | Role::FloorPlate
            | Role::ShutOffBar => uncertainty.lift_spread(),
            Role::Obstacle(index) => match self.obstacles.get(index) {
                Some(obstacle) => measures(obstacle) * garage_m,
                None => uncertainty.room_spread(),
            },
            _ => uncertainty.room_spread(),
        }
    }
}

/// How many measures an obstacle's faces add up: its place one, half its size half of one, along its own
/// axes; in a row one for each spacing.
fn measures(obstacle: &Obstacle) -> DVec3 {
    let (half, up) = match obstacle.shape {
        ObstacleShape::Box { turned, bottom, .. } => {
            let (sin, cos) = turned.rad().sin_cos();
            // The top of what does not stand on the floor: its underside and its height.
            let up = if bottom > Length::ZERO { 2.0 } else { 1.5 };
            (0.5 * (sin.abs() + cos.abs()), up)
        }
        ObstacleShape::Cylinder { .. } => (0.5, 1.5),
    };
    #[allow(clippy::cast_precision_loss)] // at most 200
    let row = DVec2::from(obstacle.row.map(|spacings| spacings as f64));
    (row + DVec2::splat(1.0 + half)).extend(up)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::solids::obstacles;
    use crate::solids::test_bay::test_bay;
    use crate::units::Angle;

    /// A row's last tie goes by its spacing as often as there are ties before it.
    #[test]
    fn a_tie_in_a_row_is_off_by_every_spacing_before_it() {
        let mut bay = test_bay();
        bay.garage.obstacles[0].row = [0, 5];
        let uncertainty = Uncertainty {
            garage_m: 0.006,
            ..Uncertainty::NONE
        };
        let off = Off::of(&bay, &uncertainty, DoorState::Shut);
        let spread = off.spread(&obstacles::obstacles(&bay)[0]);
        assert!(
            (spread - DVec3::new(0.009, 0.039, 0.012)).length() < 1e-12,
            "{spread}"
        );
    }

    #[test]
    fn a_turned_box_is_off_by_both_its_sizes() {
        let mut bay = test_bay();
        if let ObstacleShape::Box { turned, .. } = &mut bay.garage.obstacles[0].shape {
            *turned = Angle::degrees(40.0);
        }
        let by = 0.006;
        let uncertainty = Uncertainty {
            garage_m: by,
            ..Uncertainty::NONE
        };
        let spread =
            Off::of(&bay, &uncertainty, DoorState::Shut).spread(&obstacles::obstacles(&bay)[0]);
        let mut off = bay.clone();
        if let ObstacleShape::Box {
            x,
            y,
            bottom,
            width,
            depth,
            height,
            ..
        } = &mut off.garage.obstacles[0].shape
        {
            for measure in [x, y, bottom, width, depth, height] {
                *measure += Length::metres(by);
            }
        }
        let [(_, high), (_, off_high)] =
            [&bay, &off].map(|bay| obstacles::obstacles(bay)[0].bounds());
        assert!((off_high - high).cmple(spread + 1e-12).all(), "{spread}");
    }
}
