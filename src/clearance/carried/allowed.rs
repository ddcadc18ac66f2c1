//! How far may a part of the lift and one of the vehicle be off each other? Every ± against the pair.
//!
//! A pad stands under its lift point, and once they carry each point is on its pad or above it: so an arm
//! is as high to a vehicle part as its pad's top, its own upper face, the point and the part were
//! measured, and as the vehicle may be tilted between there and the point by what the other points and
//! pads are off. The height of what rests on the pads itself is no further figure: it is the points'.

use std::cell::OnceCell;
use std::f64::consts::FRAC_1_SQRT_2;

use glam::{DMat3, DVec2, DVec3};

use super::super::movers::MoverError;
use super::super::part_levers::support_levers;
use super::super::uncertainty::{Uncertainty, pad_top_off_m};
use super::pairs::{KINDS, kind};
use super::parked::{About, Part};
use super::piece::{Piece, Roam};
use super::points::{ON_THE_POINT_M, Points};
use crate::bay::{Bay, Corner, Side};
use crate::solids::{Pose, Role, arms, attitude, vehicle};

/// Of a bay.
pub(super) struct Allowed {
    /// Across and along: a vehicle part's place and half its size, the point's place, and the lift part's
    /// own.
    pub(super) plan_m: f64,
    /// How much lower than its height over a lift point a part may be: both were measured.
    pub(super) over_point_m: f64,
    heights: Heights,
    besides: [Beside; 4],
    /// The vehicle in the box's middle on its pads, and how far it roams from there.
    carried: Vec<Pose>,
    roam: Roam,
    /// The place that is lined up, vehicle frame.
    pivot: DVec3,
    /// To each vehicle part, by kind; worked out where it is wanted.
    more_m: Vec<[OnceCell<DVec3>; KINDS]>,
}

impl Allowed {
    /// # Errors
    /// When the vehicle's place is not known.
    pub(super) fn new(
        bay: &Bay,
        parts: usize,
        uncertainty: &Uncertainty,
    ) -> Result<Self, MoverError> {
        let whole = Piece::whole(uncertainty);
        let rest = attitude::at_rest(bay, whole.middle)?;
        let roam = Roam::new(bay, whole, rest);
        let carried = attitude::attitudes_from(bay, rest, [0.0; 4])?;
        let heights = Heights::new(bay, uncertainty, rest);
        Ok(Self {
            plan_m: (1.0 + uncertainty.askew) * 2.5 * uncertainty.vehicle_m
                + 1.5 * uncertainty.lift_m,
            over_point_m: 2.0 * uncertainty.vehicle_m,
            besides: Corner::ALL.map(|corner| Beside::new(bay, &roam, corner, &heights)),
            heights,
            carried: carried
                .into_iter()
                .map(|on| on.bay_from_vehicle_at_zero)
                .collect(),
            pivot: rest.rotation.inverse() * (roam.pivot() - rest.translation),
            roam,
            more_m: vec![Default::default(); parts],
        })
    }

    /// How much farther than `plan_m` a lift part may be off a vehicle part: across and along the bay, and
    /// in height. Of pads nothing in height: they are at their points.
    pub(super) fn more_m(
        &self,
        number: usize,
        part: &Part,
        droop: f64,
        role: Role,
        points: &Points,
    ) -> DVec3 {
        let known = &self.more_m[number][kind(role)];
        *known.get_or_init(|| {
            let in_height = match role {
                Role::Arm(corner) => {
                    let rests = points.rests(number, part, corner);
                    let beside = self.besides[corner.index()];
                    let within = self.within(part, droop);
                    self.heights.of_arm_m(corner, within, beside, rests)
                }
                Role::Carriage(side) => {
                    let within = self.within(part, droop);
                    self.heights.of_carriage_m(side, within)
                }
                _ => 0.0,
            };
            self.heights.sideways_m(part, droop, role).extend(in_height)
        })
    }

    /// The most that one may be off any part; no part reaches farther than `size_m` from where the
    /// vehicle's own frame starts.
    pub(super) fn most_m(&self, role: Role, size_m: f64) -> DVec3 {
        let middle = self.heights.rest.translation.truncate();
        let everywhere = [middle - size_m, middle + size_m];
        let in_height = match role {
            Role::Arm(corner) => {
                let beside = self.besides[corner.index()];
                self.heights.most_of_arm_m(corner, beside)
            }
            Role::Carriage(side) => self.heights.of_carriage_m(side, everywhere),
            _ => 0.0,
        };
        let sideways = self.heights.most_sideways_m(role, size_m);
        sideways.extend(in_height)
    }

    /// Where a part may be in plan, on its tyres and on the pads.
    fn within(&self, part: &Part, droop: f64) -> [DVec2; 2] {
        let each = self.carried.iter().map(|on| part.about(*on, droop));
        let about = each.fold(part.about(self.heights.rest, 0.0), About::and);
        let reach = part.reach_m(self.pivot) + droop;
        let about = about.widened(self.roam.standing(reach));
        [about.low, about.high].map(DVec3::truncate)
    }
}

/// What is added up in height.
struct Heights {
    vehicle_m: f64,
    lift_m: f64,
    /// The ± of each pad's top: its lowest place, and what it is raised by where it is.
    pad_m: [f64; 4],
    /// The lift points' heights, vehicle frame, and how far below its pad's top each arm goes.
    point_m: [f64; 4],
    deep_m: [f64; 4],
    /// The lift points and the pivots in plan, by corner.
    points: [DVec2; 4],
    pivots: [DVec2; 4],
    rest: Pose,
    /// Rise per length, across and along, of a vehicle that rests on its underside, and of any other.
    tilts: [DVec2; 2],
}

impl Heights {
    fn new(bay: &Bay, uncertainty: &Uncertainty, rest: Pose) -> Self {
        let lift_m = uncertainty.lift_m;
        let pad_m = Corner::ALL.map(|corner| uncertainty.pad_top_m.min(pad_top_off_m(bay, corner)));
        let most = pad_m.into_iter().fold(0.0, f64::max);
        // What posts are off in height is counted beside it, as much as it could tilt over the whole span
        // of the points: own pad and arm go with their post.
        let levers = support_levers(bay);
        let tilt = |each_m| {
            let levers = levers.as_ref();
            let tilt = levers.map(|levers| levers.most_tilt(each_m, uncertainty.loose_pad_m));
            // Points on one line hold nothing: then no height off them is known.
            tilt.unwrap_or(DVec2::ONE)
        };
        let points = Corner::ALL.map(|corner| {
            let index = vehicle::lift_point_at(corner, bay.parking.facing);
            vehicle::lift_point_m(&bay.vehicle, index)
        });
        Self {
            vehicle_m: uncertainty.vehicle_m,
            lift_m,
            pad_m,
            points: points.map(|point| rest.point(point).truncate()),
            point_m: points.map(|point| point.z),
            deep_m: Corner::ALL.map(|corner| {
                let top = bay.lift.pad.lowest + bay.parking.pad_raise[corner.index()];
                let arm = &bay.lift.arms[corner.index()];
                (top - arm.underside).m().max(0.0) + 4.0 * lift_m
            }),
            pivots: Corner::ALL.map(|corner| arms::pivot_m(bay, corner)),
            rest,
            tilts: [tilt(most), tilt(uncertainty.vehicle_m + most)],
        }
    }

    /// Of an arm to a vehicle part, which may be from `low` to `high` in plan.
    fn of_arm_m(
        &self,
        corner: Corner,
        [low, high]: [DVec2; 2],
        beside: Beside,
        rests: Rests,
    ) -> f64 {
        let point = self.points[corner.index()];
        let line = self.pivots[corner.index()] - point;
        // No farther along the arm than where that may leave the part, which it does the sooner the
        // less it may be beside its line there.
        let mut share = 1.0;
        for _ in 0..CUTS {
            let around = beside.at(share);
            let within = farthest_within(point, line, low - around, high + around);
            share = f64::min(share, within);
        }
        let along_arm = line.abs() * share + beside.at(share);
        let in_part = (low - point).abs().max((high - point).abs());
        self.height_m(corner, along_arm.min(in_part), rests)
    }

    /// Of an arm to any part.
    fn most_of_arm_m(&self, corner: Corner, beside: Beside) -> f64 {
        let line = self.pivots[corner.index()] - self.points[corner.index()];
        self.height_m(corner, line.abs() + beside.at(1.0), Rests::No)
    }

    /// Of a carriage to a vehicle part: by the better of its side's points.
    fn of_carriage_m(&self, side: Side, [low, high]: [DVec2; 2]) -> f64 {
        let of_side = Corner::ALL
            .into_iter()
            .filter(|corner| corner.side() == side);
        let each = of_side.map(|corner| {
            let point = self.points[corner.index()];
            let far = (low - point).abs().max((high - point).abs());
            self.height_m(corner, far, Rests::No)
        });
        each.fold(f64::INFINITY, f64::min)
    }

    /// Across and along the bay, beyond what a part's place and size are off anyway: what a tilt takes
    /// sideways that lies lower than the points, as far down as the lift part goes; and of the rear
    /// wheels one figure more, since overhang, wheelbase and tyre are measured.
    fn sideways_m(&self, part: &Part, droop: f64, role: Role) -> DVec2 {
        let (low, high) = (part.lowest - droop, part.highest());
        let off = |corner: Corner| {
            let point = self.point_m[corner.index()];
            (point - low).abs().max((point - high).abs())
        };
        let depth = match role {
            Role::Arm(corner) | Role::Pad(corner) => {
                let below = self.point_m[corner.index()] - low;
                below.clamp(0.0, self.deep_m[corner.index()])
            }
            _ => Corner::ALL.map(off).into_iter().fold(0.0, f64::max),
        };
        let wheel = if part.part.wheel == Some(1) {
            self.vehicle_m
        } else {
            0.0
        };
        self.in_bay(self.tilts[1] * depth + DVec2::new(0.0, wheel))
    }

    /// The most of it of any part.
    fn most_sideways_m(&self, role: Role, size_m: f64) -> DVec2 {
        let depth = match role {
            Role::Arm(corner) | Role::Pad(corner) => self.deep_m[corner.index()],
            _ => 2.0 * size_m,
        };
        self.in_bay(self.tilts[1] * depth + DVec2::new(0.0, self.vehicle_m))
    }

    /// Half sizes along the vehicle's axes, along the bay's.
    fn in_bay(&self, half: DVec2) -> DVec2 {
        let axes = DMat3::from_quat(self.rest.rotation);
        axes.x_axis.truncate().abs() * half.x + axes.y_axis.truncate().abs() * half.y
    }

    /// `far` is how far off the point the place is, across and along the bay.
    fn height_m(&self, corner: Corner, far: DVec2, rests: Rests) -> f64 {
        let measured = match rests {
            // It counts as resting there when it is as high as the point to that.
            Rests::OnPads | Rests::OnThisPad => ON_THE_POINT_M,
            Rests::No => 2.0 * self.vehicle_m,
        };
        let tilt = match rests {
            Rests::OnPads => self.tilts[0],
            Rests::OnThisPad | Rests::No => self.tilts[1],
        };
        // Along the vehicle's own axes no more than both of the bay's together.
        let axes = DMat3::from_quat(self.rest.rotation);
        let across = axes.x_axis.truncate().abs().dot(far);
        let along = axes.y_axis.truncate().abs().dot(far);
        // The arm's underside and its height.
        let arm = 2.0 * self.lift_m;
        measured + self.pad_m[corner.index()] + arm + tilt.x * across + tilt.y * along
    }
}

/// Looks at how far along an arm a part may be.
const CUTS: usize = 4;

/// How far an arm may be off the line from its lift point to its pivot, across and along the bay.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Beside {
    /// At the pivot, for where that may be and for the tooth; at the point nothing of it.
    at_pivot_m: DVec2,
    /// From the middle of its end to a corner, and what its pad is turned off the point.
    end_m: f64,
}

impl Beside {
    fn new(bay: &Bay, roam: &Roam, corner: Corner, heights: &Heights) -> Self {
        let arm = &bay.lift.arms[corner.index()];
        let pivot = heights.pivots[corner.index()];
        let off = roam.of_the_lift(pivot.extend(0.0));
        let far = (heights.points[corner.index()] - pivot).length() + off.length();
        let tooth = arm.tooth.map_or(0.0, |tooth| tooth.rad().max(0.0));
        Self {
            at_pivot_m: off,
            end_m: arm.section_width.m() * FRAC_1_SQRT_2 + tooth * far,
        }
    }

    /// At a share of the way from the point to the pivot.
    fn at(self, share: f64) -> DVec2 {
        self.at_pivot_m * share + DVec2::splat(self.end_m)
    }
}

/// Whether a vehicle part rests on pads itself.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Rests {
    /// On all four.
    OnPads,
    /// On that of the arm, and not on all.
    OnThisPad,
    /// Not on that of the arm.
    No,
}

/// How far along a line from a point one may be in a box, of the whole line; all of it where the line
/// misses it.
fn farthest_within(from: DVec2, line: DVec2, low: DVec2, high: DVec2) -> f64 {
    let (mut first, mut last): (f64, f64) = (0.0, 1.0);
    for axis in 0..2 {
        if line[axis].abs() > 1e-9 {
            let ends = [low[axis], high[axis]].map(|end| (end - from[axis]) / line[axis]);
            first = first.max(ends[0].min(ends[1]));
            last = last.min(ends[0].max(ends[1]));
        }
    }
    if first <= last { last } else { 1.0 }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_line_is_in_a_box_until_it_leaves_it() {
        let within = |low: (f64, f64), high: (f64, f64)| {
            farthest_within(DVec2::ZERO, DVec2::new(2.0, 1.0), low.into(), high.into())
        };
        assert!((within((-1.0, -1.0), (1.0, 5.0)) - 0.5).abs() < 1e-12);
        assert!((within((-1.0, -1.0), (9.0, 0.25)) - 0.25).abs() < 1e-12);
        assert!((within((-1.0, -1.0), (9.0, 9.0)) - 1.0).abs() < 1e-12);
        // Beside it.
        assert!((within((0.0, 3.0), (1.0, 5.0)) - 1.0).abs() < 1e-12);
        assert!((within((f64::NAN, -1.0), (1.0, 5.0)) - 0.5).abs() < 1e-12);
    }
}
