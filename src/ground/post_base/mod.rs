//! What does each post ask of its base plate and anchors?
//!
//! Pads reach inward and to front and rear of their post, so that a post gets the load of its two
//! pads and turns under it. Everything that may be off counts against the post: the parking box,
//! the places of pads and weight, and the body standing on any three pads. The tie between the
//! posts is not counted, and the column's own bending is not followed.

mod plate;
mod section;
#[cfg(test)]
mod tests;

pub use plate::{presses_at_m, pulls};
pub use section::section;

use glam::DVec2;

use super::anchors::show::greatest;
use super::loads::{GRAVITY, Geometry, Moved, PadLoads, Pads, Stance};
use crate::bay::{Bay, Corner, Side};
use crate::solids::arms;
use crate::solids::posts::{column_middle_x_m, inward};

/// What someone working on the vehicle may pull with, sideways at the height of the pads, on one
/// post alone, newtons: the weight of a light person. The project's own choice, since loads that
/// only press down give no shear.
pub const HAND_N: f64 = 500.0;

/// Of the shipping mass so much at most is arms, pads and what of the carriages stands proud: they
/// hang inward of their posts. The project's own choice, a little over the quarter that packing
/// lists give for arms and pads.
pub const ARMS_SHARE: f64 = 0.3;

/// What one post asks of its base at its worst. N, N m.
#[derive(Debug, Clone, PartialEq)]
pub struct PostBase {
    /// Which post.
    pub side: Side,
    /// Down, at most: its pads, and half of the shipping mass where that is given; a share of that
    /// hangs on the arms and turns the post too.
    pub axial_n: f64,
    /// Down, at least, while the vehicle is up: its pads alone.
    pub least_axial_n: f64,
    /// Sideways, either way.
    pub shear_n: f64,
    /// About the plate's middle and the y axis: the pads pull the post inward.
    pub moment_across_nm: f64,
    /// About the x axis, the greater of both ways.
    pub moment_along_nm: f64,
    /// About the x axis: least (tips to the rear, negative) and most (tips to the front).
    pub moment_along_range_nm: (f64, f64),
    /// The greatest moments while all four pads share as equal springs: across, along.
    pub shared_moments_nm: [f64; 2],
    /// By `base_plate.anchors`; each at its own worst.
    pub anchors: Vec<AnchorForce>,
    /// Pulls that act together, by `base_plate.anchors`, newtons: while the post turns inward and
    /// to the front, and inward and to the rear.
    pub pulls_together_n: [Vec<f64>; 2],
    /// What the plate presses on the slab with at most: the load and the anchors that pull at one
    /// time.
    pub compression_n: f64,
    /// The same while all four pads share as equal springs.
    pub shared_compression_n: f64,
}

/// What one anchor gets.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct AnchorForce {
    /// From the plate's middle: inward, front, metres.
    pub at_m: [f64; 2],
    /// Pull, newtons; infinite where the pattern can't hold the moment.
    pub tension_n: f64,
    /// Pull while all four pads share as equal springs, newtons.
    pub shared_tension_n: f64,
    /// Shear, newtons.
    pub shear_n: f64,
}

/// The range of a post's load, its moment across and its moment along.
#[derive(Debug, Clone, Copy)]
struct Range {
    load: (f64, f64),
    across: (f64, f64),
    along: (f64, f64),
}

impl Range {
    fn or(self, other: Self) -> Self {
        let widest = |a: (f64, f64), b: (f64, f64)| (a.0.min(b.0), a.1.max(b.1));
        Self {
            load: widest(self.load, other.load),
            across: widest(self.across, other.across),
            along: widest(self.along, other.along),
        }
    }
}

/// What both posts ask of their bases, left and right; none where the loads can't be worked out
/// over everything that may be off.
#[must_use]
pub fn post_bases(bay: &Bay, loads: &PadLoads) -> Option<[PostBase; 2]> {
    let mut worst: Option<[Range; 2]> = None;
    let mut shared: Option<[Range; 2]> = None;
    let join = |all: &mut Option<[Range; 2]>, more: [Range; 2]| {
        *all = Some(all.map_or(more, |old| [old[0].or(more[0]), old[1].or(more[1])]));
    };
    for (geometry, pads) in &loads.states {
        let springs = ranges(bay, geometry, Stance::Springs)?;
        join(&mut shared, springs);
        for stance in stances(pads) {
            let range = match stance {
                Stance::Springs => springs,
                three => ranges(bay, geometry, three)?,
            };
            join(&mut worst, range);
        }
    }
    let (worst, shared) = (worst?, shared?);
    let (geometry, _) = loads.states.first()?;
    let arms = [Side::Left, Side::Right].map(|side| arms_turn_nm(bay, side, geometry));
    Some([
        base(bay, Side::Left, worst[0], shared[0], arms[0]),
        base(bay, Side::Right, worst[1], shared[1], arms[1]),
    ])
}

/// How a post's own arms turn it about its plate's middle: inward, to the front (negative to the
/// rear). Each arm's weight acts half way between its pivot and its pad. Nothing where no shipping
/// mass is given.
fn arms_turn_nm(bay: &Bay, side: Side, geometry: &Geometry) -> [f64; 2] {
    let Some(mass) = bay.lift.shipping_mass else {
        return [0.0; 2];
    };
    let one_n = 0.25 * ARMS_SHARE * mass.kg() * GRAVITY;
    let middle = middle_m(bay, side);
    let own = Corner::ALL
        .into_iter()
        .filter(|corner| corner.side() == side);
    own.fold([0.0; 2], |[across, along], corner| {
        let arm = 0.5 * (geometry.pads_m[corner.index()] + arms::pivot_m(bay, corner));
        let lever = arm - middle;
        [
            across + one_n * lever.x * inward(side),
            along + one_n * lever.y,
        ]
    })
}

/// The ways in which the pads may carry.
fn stances(pads: &Pads) -> impl Iterator<Item = Stance> {
    let springs = pads.lifts.is_none().then_some(Stance::Springs);
    let three = (0..4).filter(|&i| pads.may_hang[i]).map(Stance::Without);
    springs.into_iter().chain(three)
}

fn ranges(bay: &Bay, geometry: &Geometry, stance: Stance) -> Option<[Range; 2]> {
    let middles = [Side::Left, Side::Right].map(|side| middle_m(bay, side));
    let figures = |moved: &Moved| -> Option<[f64; 6]> {
        let loads = moved.loads(stance, geometry.weight_n)?;
        let mut sums = [0.0; 6];
        for corner in Corner::ALL {
            let side = corner.side();
            let at = 3 * usize::from(side == Side::Right);
            let load = loads[corner.index()];
            let lever = moved.pads_m[corner.index()] - middles[at / 3];
            sums[at] += load;
            sums[at + 1] += load * lever.x * inward(side);
            sums[at + 2] += load * lever.y;
        }
        Some(sums)
    };
    let range = geometry.range(true, stance, figures)?;
    Some([0, 3].map(|at| Range {
        load: range[at],
        across: range[at + 1],
        along: range[at + 2],
    }))
}

/// The middle of a base plate, bay `x` and `y`.
fn middle_m(bay: &Bay, side: Side) -> DVec2 {
    let x = column_middle_x_m(bay, side) + inward(side) * bay.lift.base_plate.inward.m();
    DVec2::new(x, bay.lift.post_line.m())
}

fn base(bay: &Bay, side: Side, worst: Range, shared: Range, arms_nm: [f64; 2]) -> PostBase {
    let lift = &bay.lift;
    // A lever is the sum of two measures of the lift: where the post stands, and the plate on it.
    // A post that leans or stands off its place moves its load as far.
    let off = bay.lift.posts_off;
    let off_m = off.across.m().max(off.along.m());
    let lever_off = (2.0 * bay.policy.measured_lift.m() + off_m) * worst.load.1.max(0.0);
    let raise = bay.parking.pad_raise.iter().map(|raise| raise.m());
    let height = lift.pad.lowest.m() + raise.fold(0.0, f64::max) + lift.travel.m();
    let more = lever_off + HAND_N * height;
    let more = |range: Range| Range {
        load: (range.load.0.max(0.0), range.load.1.max(0.0)),
        // It is no more than that: what helps is not counted.
        across: (
            range.across.0 - more + arms_nm[0].min(0.0),
            range.across.1 + more + arms_nm[0].max(0.0),
        ),
        along: (
            range.along.0 - more + arms_nm[1].min(0.0),
            range.along.1 + more + arms_nm[1].max(0.0),
        ),
    };
    let (worst, shared) = (more(worst), more(shared));
    let together = anchor_pulls(bay, &worst);
    let shared_together = anchor_pulls(bay, &shared);
    let anchors = &lift.base_plate.anchors;
    let own = lift
        .shipping_mass
        .map_or(0.0, |mass| 0.5 * mass.kg() * GRAVITY);
    let axial_n = worst.load.1 + own;
    PostBase {
        side,
        axial_n,
        least_axial_n: worst.load.0,
        shear_n: HAND_N,
        moment_across_nm: worst.across.1,
        moment_along_nm: worst.along.1.max(-worst.along.0),
        moment_along_range_nm: worst.along,
        shared_moments_nm: [shared.across.1, shared.along.1.max(-shared.along.0)],
        compression_n: axial_n + most_together(&together),
        shared_compression_n: shared.load.1 + own + most_together(&shared_together),
        anchors: anchors
            .iter()
            .zip(at_worst(&together).zip(at_worst(&shared_together)))
            .map(|(at, (tension_n, shared_tension_n))| AnchorForce {
                at_m: at.map(|place| place.m()),
                tension_n,
                shared_tension_n,
                shear_n: HAND_N / anchors.len() as f64,
            })
            .collect(),
        pulls_together_n: together,
    }
}

/// The pull of each anchor at its own worst.
fn at_worst(together: &[Vec<f64>; 2]) -> impl Iterator<Item = f64> + '_ {
    let [front, rear] = together;
    let both = front.iter().zip(rear);
    both.map(|(front, rear)| greatest([*front, *rear].into_iter()))
}

/// What all anchors pull with at one time, at most.
fn most_together(together: &[Vec<f64>; 2]) -> f64 {
    let [front, rear] = together.each_ref().map(|pulls| pulls.iter().sum::<f64>());
    greatest([front, rear].into_iter())
}

/// The pull of each anchor: from turning inward, the load on the plate taken off, and from turning
/// to the front (first) or to the rear, with no load taken off a second time.
///
/// The file gives plate and holes along the bay's axes. Under a turned column they may have been
/// turned with it all the same, so that there each anchor has the greater pull of both.
fn anchor_pulls(bay: &Bay, range: &Range) -> [Vec<f64>; 2] {
    let column = &bay.lift.column;
    let (sin, cos) = column.turned.rad().sin_cos();
    let (sin, cos) = (sin.abs(), cos.abs());
    let along_axes = pulls_of(
        bay,
        [
            0.5 * (column.width.m() * cos + column.depth.m() * sin),
            0.5 * (column.width.m() * sin + column.depth.m() * cos),
        ],
        range.load.0,
        [range.across.1, range.along.1, -range.along.0],
    );
    if sin <= 0.0 {
        return along_axes;
    }
    // In the frame of a plate that is turned each moment has a share of the other.
    let across = range.across.1.max(0.0);
    let along = range.along.1.max(-range.along.0).max(0.0);
    let turned = pulls_of(
        bay,
        [0.5 * column.width.m(), 0.5 * column.depth.m()],
        range.load.0,
        [
            across * cos + along * sin,
            range.along.1.max(0.0) * cos + across * sin,
            (-range.along.0).max(0.0) * cos + across * sin,
        ],
    );
    let [front, rear] = along_axes;
    let [turned_front, turned_rear] = turned;
    let greater = |one: Vec<f64>, other: Vec<f64>| {
        let both = one.into_iter().zip(other);
        both.map(|(one, other)| greatest([one, other].into_iter()))
            .collect()
    };
    [greater(front, turned_front), greater(rear, turned_rear)]
}

/// The same in the plate's own frame: half of the column's size there, the load at least, and the
/// moments inward, to the front and to the rear.
fn pulls_of(
    bay: &Bay,
    [half_x, half_y]: [f64; 2],
    load_n: f64,
    [inward_nm, front_nm, rear_nm]: [f64; 3],
) -> [Vec<f64>; 2] {
    let plate = &bay.lift.base_plate;
    let inner = presses_at_m(half_x - plate.inward.m(), plate.width.m() * 0.5);
    let end = presses_at_m(half_y, plate.depth.m() * 0.5);
    let pulls = |distance: &dyn Fn(f64, f64) -> f64, moment_nm: f64| {
        let at = plate.anchors.iter();
        let distances: Vec<f64> = at.map(|at| distance(at[0].m(), at[1].m())).collect();
        pulls(&distances, moment_nm)
    };
    let inward = pulls(&|x, _| inner - x, inward_nm - load_n * inner);
    let front = pulls(&|_, y| end - y, front_nm);
    let rear = pulls(&|_, y| end + y, rear_nm);
    [front, rear].map(|ends| {
        let both = inward.iter().zip(ends);
        both.map(|(inward, end)| inward + end).collect()
    })
}
