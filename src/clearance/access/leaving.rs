//! How far do the front doors open, with the vehicle on its tyres and at waist height?
//!
//! A door is opened by hand until it nearly touches, so no margin is asked of it here; everything
//! that is not known exactly counts against it all the same, and so does the parking box.

use std::f64::consts::FRAC_PI_2;

use glam::DVec3;

use super::{Before, DoorRoom, Swing};
use crate::bay::{Bay, OpeningKind, OpeningPart, Side};
use crate::clearance::body::Body;
use crate::clearance::gap::Solver;
use crate::clearance::movers::{Movers, Moving, floor_doubt_m, parking_pivot};
use crate::clearance::opening::{Hinge, InTheWay, Keep, Opens, PlaceDoubt, THICKNESS_M, opens_to};
use crate::clearance::study::group_list;
use crate::clearance::sweep::Fixed;
use crate::clearance::uncertainty::Uncertainty;
use crate::solids::{ParkingError, Pose, Role, Solid, arms, attitude};

/// The clear gap between the body's side and the inner face of a door's free edge, for a door of
/// this length opened by an angle.
#[must_use]
fn gap_m(length_m: f64, angle_rad: f64) -> f64 {
    // Opened farther than square to the body, nothing of it stands in the way that did not before.
    let angle = angle_rad.min(FRAC_PI_2);
    (length_m * angle.sin() - THICKNESS_M * 0.5 * angle.cos()).max(0.0)
}

/// Where the vehicle stands on a lock.
#[derive(Clone, Copy)]
pub(super) struct OnLock<'a> {
    pub(super) lock: usize,
    pub(super) travel_m: f64,
    /// Every attitude on the pads there.
    pub(super) poses: &'a [Pose],
    /// How far the body may be off.
    pub(super) place: PlaceDoubt,
}

impl OnLock<'_> {
    /// How far any point of a door may be from where it is drawn.
    fn spread(&self, part: &OpeningPart) -> DVec3 {
        let stands_out = part.length.m().max(part.width.m());
        self.place.spread + DVec3::splat(self.place.turn * stands_out)
    }
}

/// The front doors with everything they may swing into, built once.
pub(super) struct Leaving<'a> {
    bay: &'a Bay,
    /// What stays where it is, and its name.
    fixed: Vec<(&'a str, &'a Fixed)>,
    /// The lift's moving parts; its carriages are taken from them.
    movers: &'a Movers,
    /// Arms and pads swung aside.
    arms: Vec<(Solid, Body)>,
    uncertainty: &'a Uncertainty,
    /// The vehicle on its tyres as parked.
    rest: Option<Pose>,
}

impl<'a> Leaving<'a> {
    pub(super) fn new(before: &'a Before<'_>) -> Self {
        let groups = &before.prepared.groups;
        let door = group_list(before.prepared)[before.door_group];
        let fixed = [&groups.common, door]
            .into_iter()
            .flat_map(|set| {
                set.bodies
                    .iter()
                    .map(|fixed| (set.solids[fixed.solid].name.as_str(), fixed))
            })
            .filter(|(_, fixed)| !matches!(fixed.role, Role::Floor | Role::Ceiling))
            .collect();
        let uncertainty = &before.prepared.uncertainty;
        let arms = arms::parked(before.bay)
            .into_iter()
            .map(|solid| {
                let body = Body::exact(&solid).widened(uncertainty.moving_lift_spread());
                (solid, body)
            })
            .collect();
        Self {
            bay: before.bay,
            fixed,
            movers: &before.prepared.movers,
            arms,
            uncertainty,
            rest: attitude::at_rest(before.bay, ParkingError::default()).ok(),
        }
    }

    fn carriages(&self) -> impl Iterator<Item = &Moving> {
        let moving = self.movers.moving.iter();
        moving.filter(|mover| matches!(mover.role, Role::Carriage(_)))
    }

    /// What stands about a door: the carriages climbed, the arms only where they are swung aside.
    fn things(&self, climb_m: f64, arms_aside: bool) -> Vec<InTheWay<'_>> {
        let arms = if arms_aside { &self.arms[..] } else { &[] };
        let lift = |role, body, climb_m| InTheWay {
            body,
            role,
            moved: DVec3::Z * climb_m,
        };
        self.fixed
            .iter()
            .map(|&(_, fixed)| InTheWay::fixed(fixed))
            .chain(
                self.carriages()
                    .map(|mover| lift(mover.role, &mover.body, climb_m)),
            )
            .chain(arms.iter().map(|(solid, body)| lift(solid.role, body, 0.0)))
            .collect()
    }

    fn name(&self, index: usize) -> String {
        let fixed = self.fixed.iter().map(|(name, _)| *name);
        let carriages = self
            .carriages()
            .map(|mover| self.movers.solids[mover.solid].name.as_str());
        let arms = self.arms.iter().map(|(solid, _)| solid.name.as_str());
        fixed
            .chain(carriages)
            .chain(arms)
            .nth(index)
            .unwrap_or_default()
            .to_owned()
    }

    fn swing(
        &self,
        part: &OpeningPart,
        pose: Pose,
        spread: DVec3,
        things: &[InTheWay<'_>],
        solver: &mut Solver,
    ) -> Swing {
        let hinge = Hinge::new(part, self.bay.vehicle.body_width.m());
        let keep = (spread, Keep::NoTouch);
        let Opens { angle, met } = opens_to(self.bay, part, &hinge, pose, keep, things, solver);
        Swing {
            angle_rad: angle,
            // A shorter door leaves a narrower gap.
            gap_m: gap_m(part.length.m() - self.uncertainty.vehicle_m, angle),
            meets: met.map(|met| self.name(met)),
        }
    }

    /// How far any point of a door may be from where it is drawn with the vehicle on its tyres:
    /// what is measured, the parking box, and its yaw at the door's distance from the point that
    /// is lined up.
    fn standing_spread(&self, part: &OpeningPart, rest: Pose) -> DVec3 {
        let parking = self.uncertainty.parking;
        let hinge = rest.point(Hinge::new(part, self.bay.vehicle.body_width.m()).at);
        let pivot = parking_pivot(self.bay);
        let lever = (hinge - pivot).abs() + DVec3::splat(part.length.m());
        // A turn moves a point by no more than the angle times its lever, along either axis; what
        // its sine lacks of the angle is on the sound side, what its cosine adds is in the square.
        let turned = parking.yaw_rad * (1.0 + parking.yaw_rad);
        let floor = floor_doubt_m(self.bay, &rest, self.uncertainty);
        self.uncertainty.standing_vehicle_spread()
            + DVec3::new(
                parking.across_m + turned * lever.y,
                parking.along_m + turned * lever.x,
                0.0,
            )
            + DVec3::splat(2.0 * floor)
    }

    /// Every front door, as parked and at a lock.
    pub(super) fn doors(&self, waist: Option<OnLock<'_>>, solver: &mut Solver) -> Vec<DoorRoom> {
        let Some(rest) = self.rest else {
            return Vec::new();
        };
        let down = self.things(0.0, true);
        let up = waist.map(|on| (on, self.things(on.travel_m, false)));
        let parts = self.bay.vehicle.opening_parts.iter().enumerate();
        parts
            .filter_map(|(index, part)| {
                let side = side(part.kind)?;
                let spread = self.standing_spread(part, rest);
                let at_waist = up.as_ref().and_then(|(on, things)| {
                    let spread = on.spread(part);
                    on.poses
                        .iter()
                        .map(|pose| self.swing(part, *pose, spread, things, solver))
                        .min_by(|a, b| a.angle_rad.total_cmp(&b.angle_rad))
                        .map(|swing| (on.lock, swing))
                });
                Some(DoorRoom {
                    name: part.name.clone(),
                    side,
                    part: index,
                    opens_rad: part.opens.rad(),
                    down: self.swing(part, rest, spread, &down, solver),
                    at_waist,
                })
            })
            .collect()
    }

    /// The least swing of these doors with the vehicle on its tyres, moved along the bay.
    pub(super) fn least(
        &self,
        parts: &[usize],
        along_m: f64,
        solver: &mut Solver,
    ) -> Option<Swing> {
        let rest = self.rest?;
        let things = self.things(0.0, true);
        parts
            .iter()
            .filter_map(|&index| self.bay.vehicle.opening_parts.get(index))
            .map(|part| {
                let spread = self.standing_spread(part, rest);
                let moved = rest.moved(DVec3::Y * along_m);
                self.swing(part, moved, spread, &things, solver)
            })
            .min_by(|a, b| a.gap_m.total_cmp(&b.gap_m))
    }

    /// The same on a lock. Where along the bay it stands changes nothing of how it lies on the
    /// pads.
    pub(super) fn least_raised(
        &self,
        parts: &[usize],
        along_m: f64,
        on: OnLock<'_>,
        solver: &mut Solver,
    ) -> Option<Swing> {
        let things = self.things(on.travel_m, false);
        let mut least: Option<Swing> = None;
        let open = &self.bay.vehicle.opening_parts;
        for part in parts.iter().filter_map(|&index| open.get(index)) {
            for pose in on.poses {
                let moved = pose.moved(DVec3::Y * along_m);
                let spread = on.spread(part);
                let swing = self.swing(part, moved, spread, &things, solver);
                if least.as_ref().is_none_or(|least| swing.gap_m < least.gap_m) {
                    least = Some(swing);
                }
            }
        }
        least
    }
}

/// On which side of the vehicle a front door is.
const fn side(kind: OpeningKind) -> Option<Side> {
    match kind {
        OpeningKind::DoorLeft => Some(Side::Left),
        OpeningKind::DoorRight => Some(Side::Right),
        OpeningKind::Hood | OpeningKind::Hatch | OpeningKind::Tailgate => None,
    }
}

#[cfg(test)]
mod tests {
    use super::gap_m;

    #[test]
    fn the_gap_at_a_doors_free_edge() {
        // 1 m long, 60 mm thick, 30 degrees: 0.5 m less 30 mm times cos 30.
        let found = gap_m(1.0, 30_f64.to_radians());
        assert!(
            (found - (0.5 - 0.03 * 0.75_f64.sqrt())).abs() < 1e-12,
            "{found}"
        );
        // Past square it gets no narrower.
        assert!((gap_m(1.0, 170_f64.to_radians()) - 1.0).abs() < 1e-12);
        // Shut, and ajar by less than its thickness: no gap.
        assert!(gap_m(1.0, 0.0) <= 0.0 && gap_m(1.0, 0.02) <= 0.0);
    }
}
