//! The lift points: which vehicle part each is on, and what a pad meets before it comes to its own.

use glam::DVec3;

use super::super::body::Body;
use super::super::gap::{Separation, Solver};
use super::allowed::Rests;
use super::pairs::{Pairs, kind};
use super::parked::Part;
use crate::bay::{Bay, Corner};
use crate::solids::{Pose, Role, Shape, vehicle};

/// A part this near to a lift point holds it, and one that hangs no farther under it is as high.
pub(super) const ON_THE_POINT_M: f64 = 0.001;

/// What is known of the lift points, by corner of the lift.
pub(super) struct Points {
    /// Their heights, vehicle frame, metres.
    height_m: [f64; 4],
    /// For each vehicle part whether each point lies in or on it.
    holds: Vec<[bool; 4]>,
    /// Whether each lies in or on any stretch of the body.
    body_holds: [bool; 4],
    /// For each vehicle part whether each pad meets it under its own point.
    in_the_way: Vec<[bool; 4]>,
}

impl Points {
    pub(super) fn new(bay: &Bay, parts: &[Part], solver: &mut Solver) -> Self {
        let points = Corner::ALL.map(|corner| {
            let index = vehicle::lift_point_at(corner, bay.parking.facing);
            vehicle::lift_point_m(&bay.vehicle, index)
        });
        let radius = bay.lift.pad.diameter.m() * 0.5;
        let holds: Vec<[bool; 4]> = parts
            .iter()
            .map(|part| points.map(|point| holds(part, point, solver)))
            .collect();
        let of_body = parts.iter().zip(&holds);
        let of_body = of_body.filter(|(part, _)| part.part.is_body);
        let body_holds = of_body.fold([false; 4], |known, (_, holds)| {
            std::array::from_fn(|corner| known[corner] || holds[corner])
        });
        Self {
            height_m: points.map(|point| point.z),
            holds,
            body_holds,
            in_the_way: parts
                .iter()
                .map(|part| points.map(|point| is_in_the_way(part, point, radius, solver)))
                .collect(),
        }
    }

    /// Whether a corner's own lift point lies in or on a part. A lift point above the sill is reached
    /// through the body's side as it is drawn, so the pad is let into that part.
    pub(super) fn holds(&self, part: usize, corner: Corner) -> bool {
        self.holds[part][corner.index()]
    }

    /// Whether a part rests on the pad of a corner, and on the others: the point is on it, or on another
    /// stretch of the body, whose underside is one figure.
    pub(super) fn rests(&self, number: usize, part: &Part, corner: Corner) -> Rests {
        let rests_on = |corner: Corner| {
            let off = part.lowest - self.height_m[corner.index()];
            let on_body = part.part.is_body && self.body_holds[corner.index()];
            // One that goes on below the point is let in there; what it rests on is not its underside.
            off.abs() <= ON_THE_POINT_M && (self.holds(number, corner) || on_body)
        };
        match (rests_on(corner), Corner::ALL.into_iter().all(rests_on)) {
            (true, true) => Rests::OnPads,
            (true, false) => Rests::OnThisPad,
            (false, _) => Rests::No,
        }
    }

    /// Whether a part may hang lower than the point that a corner's arm carries, which may be off to it by
    /// so much. The body is drawn solid from the sill up, and pads go in through its side.
    pub(super) fn may_hang_lower(&self, part: &Part, corner: Corner, off_m: f64) -> bool {
        let point = self.height_m[corner.index()] - ON_THE_POINT_M;
        !part.part.is_body && part.lowest < point + off_m
    }

    /// Pads that meet a part before their own lift point: it hangs lower, over the pad as that stands
    /// under its point. Then the pads carry elsewhere and sooner than the study has it.
    pub(super) fn met_before(&self, parts: &[Part]) -> Pairs {
        let mut met = Pairs::none(parts.len());
        for (number, in_the_way) in self.in_the_way.iter().enumerate() {
            for corner in Corner::ALL {
                if in_the_way[corner.index()] {
                    met.put(number, kind(Role::Pad(corner)));
                }
            }
        }
        met
    }
}

fn holds(part: &Part, point: DVec3, solver: &mut Solver) -> bool {
    let near = DVec3::splat(2.0 * ON_THE_POINT_M);
    if part.is_beside(point - near, point + near) {
        return false;
    }
    let half = DVec3::splat(1e-6);
    let point = Body::of(&Shape::Box { half }, &[Pose::at(point)], DVec3::ZERO);
    match solver.gap(&point, DVec3::ZERO, &Body::exact(&part.part.solid)) {
        Separation::Meet => true,
        Separation::Apart(gap) => gap.upper <= ON_THE_POINT_M,
    }
}

/// Whether a part reaches into what is under the point, as wide as a pad. The body is drawn solid from
/// the sill up; the pad goes in through its side.
fn is_in_the_way(part: &Part, point: DVec3, radius: f64, solver: &mut Solver) -> bool {
    let top = point.z - ON_THE_POINT_M;
    let half_height = 0.5 * (top - part.lowest);
    if part.part.is_body || half_height <= 0.0 {
        return false;
    }
    let around = DVec3::new(radius, radius, half_height);
    let middle = DVec3::new(point.x, point.y, top - half_height);
    if part.is_beside(middle - around, middle + around) {
        return false;
    }
    let under = Shape::Cylinder {
        radius,
        half_height,
    };
    let under = Body::of(&under, &[Pose::at(middle)], DVec3::ZERO);
    let gap = solver.gap(&under, DVec3::ZERO, &Body::exact(&part.part.solid));
    match gap {
        Separation::Meet => true,
        Separation::Apart(gap) => gap.lower <= 0.0,
    }
}
