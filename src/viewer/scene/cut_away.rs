//! Does this part of the room stand between the eye and what is inside?

use glam::DVec3;

use crate::panels::camera::{Camera, Lens};
use crate::solids::{Role, Solid};
use crate::viewer::facets::{Facet, facets};

/// How a solid of the room or the door is seen.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub(super) enum Mode {
    /// As it is.
    #[default]
    Whole,
    /// Only its edges.
    Away,
    /// Looked through.
    Glassy,
}

/// The face of a wall, a ceiling or a door that looks into the room.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Inner {
    /// Into the room, unit length, bay axes.
    normal: DVec3,
    /// A point on it, bay axes.
    point: DVec3,
    /// How the solid is seen when the eye is behind this face.
    behind: Mode,
}

impl Inner {
    /// The inner face of what can stand in the way; none for everything that never does.
    pub(super) fn of(solid: &Solid, middle_m: DVec3) -> Option<Self> {
        let behind = match solid.role {
            Role::Wall | Role::DoorWall | Role::Ceiling => Mode::Away,
            Role::DoorPanel => Mode::Glassy,
            _ => return None,
        };
        let pose = solid.bay_from_solid;
        let face = facets(&solid.shape)
            .into_iter()
            .map(|facet| Facet {
                normal: pose.rotation * facet.normal,
                corners: facet.corners.iter().map(|c| pose.point(*c)).collect(),
                ..facet
            })
            .max_by(|a, b| {
                let rank = |facet: &Facet| looks_inward(solid.role, facet, middle_m);
                rank(a).total_cmp(&rank(b))
            })?;
        Some(Self {
            normal: face.normal,
            point: *face.corners.first()?,
            behind,
        })
    }

    /// How the solid is seen.
    pub(super) fn mode(&self, camera: &Camera) -> Mode {
        let in_the_way = match camera.lens {
            Lens::Perspective { .. } => self.normal.dot(camera.eye_m - self.point) < 0.0,
            // All lines of sight run one way, wherever they start.
            Lens::Parallel { .. } => {
                let [_, _, into] = camera.axes();
                self.normal.dot(into) > 0.02
            }
        };
        if in_the_way { self.behind } else { Mode::Whole }
    }
}

/// The larger, the more surely this is the face that looks into the room.
fn looks_inward(role: Role, facet: &Facet, middle_m: DVec3) -> f64 {
    let place = facet.corners.iter().sum::<DVec3>() / facet.corners.len().max(1) as f64;
    match role {
        Role::Ceiling => -facet.normal.z,
        Role::DoorWall => facet.normal.y,
        // A wall or a door leaf: its largest face, of the two the one toward the middle.
        _ => {
            let toward = facet.normal.dot(middle_m - place);
            area(facet) * toward.signum() + 1e-3 * toward
        }
    }
}

fn area(facet: &Facet) -> f64 {
    let Some(&first) = facet.corners.first() else {
        return 0.0;
    };
    let fan = facet.corners.windows(2).skip(1);
    fan.map(|p| (p[0] - first).cross(p[1] - first).length() * 0.5)
        .sum()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::panels::camera::Sight;
    use crate::solids::DoorTravel;
    use crate::solids::list::solids;
    use crate::solids::test_bay::test_bay;

    fn modes(sight: Sight, door: DoorTravel) -> Vec<(String, Mode)> {
        let bay = test_bay();
        let solids = solids(&bay, door, 0.5).unwrap();
        let (low, high) = solids
            .iter()
            .map(Solid::bounds)
            .reduce(|a, b| (a.0.min(b.0), a.1.max(b.1)))
            .unwrap();
        let middle = (low + high) * 0.5;
        let driver = DVec3::new(low.x + 0.5, middle.y, 1.6);
        let camera = Camera::at(sight, low, high, driver, 1.6);
        solids
            .iter()
            .map(|solid| {
                let inner = Inner::of(solid, middle);
                let mode = inner.map_or(Mode::Whole, |inner| inner.mode(&camera));
                (solid.name.clone(), mode)
            })
            .collect()
    }

    #[track_caller]
    fn check(sight: Sight, door: DoorTravel, away: &[&str]) {
        for (name, mode) in modes(sight, door) {
            let expected = away.iter().any(|part| name.starts_with(part));
            assert_eq!(mode != Mode::Whole, expected, "{sight:?}: {name} {mode:?}");
        }
    }

    #[test]
    fn what_stands_between_is_cut_away_and_nothing_else() {
        let shut = DoorTravel::Shut;
        let door_wall = ["shell/door", "door/panel", "door/top"];
        check(
            Sight::Corner,
            shut,
            &[&door_wall[..], &["shell/ceiling", "shell/wall left"]].concat(),
        );
        check(Sight::Front, shut, &door_wall);
        check(Sight::Side, shut, &["shell/wall left"]);
        check(Sight::Plan, shut, &["shell/ceiling"]);
        check(Sight::Door, shut, &[]);
        let overhead: Vec<String> = modes(Sight::Plan, DoorTravel::Open)
            .into_iter()
            .filter(|(_, mode)| *mode == Mode::Glassy)
            .map(|(name, _)| name)
            .collect();
        assert!(overhead.iter().any(|name| name.starts_with("door/panel")));
    }
}
