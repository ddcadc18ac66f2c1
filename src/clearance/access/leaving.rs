//! How far do the front doors open where the vehicle stands on its tyres?

use glam::DVec3;

use super::{Before, DoorRoom, standing_doubt};
use crate::bay::{Bay, OpeningKind, OpeningPart, Side};
use crate::clearance::body::Body;
use crate::clearance::gap::Solver;
use crate::clearance::opening::{Hinge, InTheWay, Opens, PlaceDoubt, THICKNESS_M, opens_to};
use crate::clearance::sweep::Fixed;
use crate::solids::{ParkingError, Pose, Role, Solid, arms, attitude, posts};

/// The clear gap between the body's side and the inner face of a door's free edge, for a door of
/// this length opened by an angle.
#[must_use]
pub fn gap_m(length_m: f64, angle_rad: f64) -> f64 {
    (length_m * angle_rad.sin() - THICKNESS_M * 0.5 * angle_rad.cos()).max(0.0)
}

/// The front doors with everything they may swing into, built once.
pub(super) struct Leaving<'a> {
    bay: &'a Bay,
    /// What a front door may reach, and its name.
    fixed: Vec<(&'a str, &'a Fixed)>,
    /// The lift's moving parts: carriages down, arms swung aside.
    aside: Vec<(Solid, Body)>,
    doubt: PlaceDoubt,
}

impl<'a> Leaving<'a> {
    pub(super) fn new(before: &'a Before<'_>) -> Self {
        let groups = &before.prepared.groups;
        let door = match before.door_group {
            1 => &groups.shut,
            2 => &groups.open,
            _ => &groups.running,
        };
        let fixed = [&groups.common, door]
            .into_iter()
            .flat_map(|set| {
                set.bodies
                    .iter()
                    .map(|fixed| (set.solids[fixed.solid].name.as_str(), fixed))
            })
            .filter(|(_, fixed)| !matches!(fixed.role, Role::Floor | Role::Ceiling))
            .collect();
        let spread = before.prepared.uncertainty.moving_lift_spread();
        let aside = posts::carriages(before.bay)
            .into_iter()
            .chain(arms::parked(before.bay))
            .map(|solid| {
                let body = Body::exact(&solid).widened(spread);
                (solid, body)
            })
            .collect();
        Self {
            bay: before.bay,
            fixed,
            aside,
            doubt: standing_doubt(before),
        }
    }

    fn things(&self) -> Vec<InTheWay<'_>> {
        self.fixed
            .iter()
            .map(|&(_, fixed)| InTheWay::fixed(fixed))
            .chain(self.aside.iter().map(|(solid, body)| InTheWay {
                body,
                role: solid.role,
                moved: DVec3::ZERO,
            }))
            .collect()
    }

    fn name(&self, index: usize) -> &str {
        self.fixed.get(index).map_or_else(
            || {
                self.aside
                    .get(index - self.fixed.len())
                    .map_or("", |(solid, _)| solid.name.as_str())
            },
            |(name, _)| name,
        )
    }

    /// The vehicle on its tyres as parked; none when that is not known.
    pub(super) fn at_rest(&self) -> Option<Pose> {
        attitude::at_rest(self.bay, ParkingError::default()).ok()
    }

    fn opens(
        &self,
        part: &OpeningPart,
        rest: Pose,
        things: &[InTheWay<'_>],
        solver: &mut Solver,
    ) -> Opens {
        let hinge = Hinge::new(part, self.bay.vehicle.body_width.m());
        let stands_out = part.length.m().max(part.width.m());
        let spread = self.doubt.spread + DVec3::splat(self.doubt.turn * stands_out);
        opens_to(self.bay, part, &hinge, rest, spread, things, solver)
    }

    /// Every front door as parked.
    pub(super) fn doors(&self, solver: &mut Solver) -> Vec<DoorRoom> {
        let Some(rest) = self.at_rest() else {
            return Vec::new();
        };
        let things = self.things();
        let parts = self.bay.vehicle.opening_parts.iter().enumerate();
        parts
            .filter_map(|(index, part)| {
                let side = side(part.kind)?;
                let opens = self.opens(part, rest, &things, solver);
                Some(DoorRoom {
                    name: part.name.clone(),
                    side,
                    part: index,
                    opens_rad: part.opens.rad(),
                    angle_rad: opens.angle,
                    gap_m: gap_m(part.length.m(), opens.angle),
                    meets: opens.met.map(|met| self.name(met).to_owned()),
                })
            })
            .collect()
    }

    /// The least gap and angle of these doors, the vehicle moved along the bay.
    pub(super) fn least(
        &self,
        parts: &[usize],
        along_m: f64,
        solver: &mut Solver,
    ) -> Option<(f64, f64)> {
        let rest = self.at_rest()?.moved(DVec3::Y * along_m);
        let things = self.things();
        parts
            .iter()
            .filter_map(|&index| self.bay.vehicle.opening_parts.get(index))
            .map(|part| {
                let angle = self.opens(part, rest, &things, solver).angle;
                (gap_m(part.length.m(), angle), angle)
            })
            .reduce(|a, b| (a.0.min(b.0), a.1.min(b.1)))
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
        assert!((found - (0.5 - 0.03 * 0.75_f64.sqrt())).abs() < 1e-12, "{found}");
        // Shut, and ajar by less than its thickness: no gap.
        assert_eq!(gap_m(1.0, 0.0), 0.0);
        assert_eq!(gap_m(1.0, 0.02), 0.0);
    }
}
