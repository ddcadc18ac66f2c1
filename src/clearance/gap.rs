//! How far apart two bodies are, with a bound that can be trusted.
//!
//! This is the only caller of the geometry library's queries. The library's distance comes from
//! two witness points, so it can only be too large, never too small. Decisions are taken on the
//! *certified* gap instead: for any direction, the distance between the two bodies' support
//! planes is a lower bound on their true distance. The two bounds bracket the truth; where they
//! differ by more than [`UNDECIDED_M`] after refining, the pair is not shown.

use glam::DVec3;
use parry3d_f64::math::Pose as ParryPose;
use parry3d_f64::query::epa::EPA;
use parry3d_f64::query::gjk::{self, CsoPoint, GJKResult, VoronoiSimplex};

use super::body::Body;

/// Width of the bracket (metres) above which a gap counts as not shown.
pub const UNDECIDED_M: f64 = 0.05e-3;

/// Rounding allowed between the two bounds before they contradict each other, metres.
const CONTRADICTION_M: f64 = 1e-9;

/// Bodies whose witness points are no farther apart than this touch, metres: rounding of the
/// coordinates of a bay.
const TOUCH_M: f64 = 1e-9;

/// Rounds of refining spent on a bracket that is too wide.
const REFINING_ROUNDS: usize = 400;

/// The gap between two bodies that do not meet. Metres, bay axes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Gap {
    /// Certified: the true distance is never smaller.
    pub lower: f64,
    /// Between the two witness points: the true distance is never larger.
    pub upper: f64,
    /// Unit vector from the moving to the fixed body along which `lower` was certified.
    pub normal: DVec3,
    /// Witness point on the moving body.
    pub on_moving: DVec3,
    /// Witness point on the fixed body.
    pub on_fixed: DVec3,
}

impl Gap {
    /// True when the bracket is narrow enough to decide on, and is one: a certified bound above
    /// the distance of two points of the bodies would mean that one of the two is wrong.
    #[must_use]
    pub fn is_decided(&self) -> bool {
        let width = self.upper - self.lower;
        (-CONTRADICTION_M..=UNDECIDED_M).contains(&width)
    }
}

/// Two bodies, apart or not.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Separation {
    /// They do not meet.
    Apart(Gap),
    /// They touch or overlap (or could not be told apart from touching).
    Meet,
}

/// The scratch space of the distance query; make one and use it for many pairs.
pub struct Solver {
    simplex: VoronoiSimplex,
}

impl Default for Solver {
    fn default() -> Self {
        Self::new()
    }
}

impl Solver {
    /// Scratch space for any number of queries.
    #[must_use]
    pub fn new() -> Self {
        Self {
            simplex: VoronoiSimplex::new(),
        }
    }

    /// The gap between `moving`, shifted by `shift`, and `fixed`.
    pub fn gap(&mut self, moving: &Body, shift: DVec3, fixed: &Body) -> Separation {
        self.gap_from(moving, shift, fixed, first_guess(moving, shift, fixed))
    }

    /// The same, searched from a guess at the direction from moving to fixed. The guess changes
    /// how long the search takes, not what it finds.
    pub fn gap_from(
        &mut self,
        moving: &Body,
        shift: DVec3,
        fixed: &Body,
        start: DVec3,
    ) -> Separation {
        // What is no number is nowhere known to be apart; the library would stop at it.
        let boxes = moving.low() + moving.high() + fixed.low() + fixed.high();
        if !(boxes + shift).is_finite() {
            return Separation::Meet;
        }
        // The library works in the first shape's frame: the fixed body stands at -shift there.
        let fixed_in_moving = ParryPose::from_translation(-shift);
        self.simplex.reset(CsoPoint::from_shapes(
            &fixed_in_moving,
            moving,
            fixed,
            start,
        ));
        let found = gjk::closest_points(
            &fixed_in_moving,
            moving,
            fixed,
            f64::MAX,
            true,
            &mut self.simplex,
        );
        let GJKResult::ClosestPoints(on_moving, on_fixed, direction) = found else {
            return Separation::Meet;
        };
        let between = on_fixed - on_moving;
        let upper = between.length();
        // The direction between points this near is noise, and so is any bound along it.
        if !upper.is_finite() || upper <= TOUCH_M {
            return Separation::Meet;
        }
        let first = between / upper;
        let mut normal = first;
        let mut lower = certified(moving, shift, fixed, first);
        let other = direction.normalize_or_zero();
        if other != DVec3::ZERO && lower < upper - 1e-9 {
            let bound = certified(moving, shift, fixed, other);
            if bound > lower {
                lower = bound;
                normal = other;
            }
        }
        let mut gap = Gap {
            lower,
            upper,
            normal,
            on_moving: on_moving + shift,
            on_fixed: on_fixed + shift,
        };
        if !gap.is_decided() {
            refine(&mut gap, moving, shift, fixed);
        }
        if gap.lower.is_finite() && gap.lower > 0.0 || !gap.is_decided() {
            Separation::Apart(gap)
        } else {
            Separation::Meet
        }
    }

    /// How deep two meeting bodies overlap, metres: the shortest move that parts them. Zero when
    /// they only touch; none when it could not be worked out. Allocates, so it is kept out of
    /// inner loops.
    pub fn depth(&mut self, moving: &Body, shift: DVec3, fixed: &Body) -> Option<f64> {
        let boxes = moving.low() + moving.high() + fixed.low() + fixed.high();
        if !(boxes + shift).is_finite() {
            return None;
        }
        let fixed_in_moving = ParryPose::from_translation(-shift);
        self.simplex.reset(CsoPoint::from_shapes(
            &fixed_in_moving,
            moving,
            fixed,
            DVec3::Z,
        ));
        match gjk::closest_points(
            &fixed_in_moving,
            moving,
            fixed,
            f64::MAX,
            true,
            &mut self.simplex,
        ) {
            GJKResult::Intersection => {
                let found =
                    EPA::new().closest_points(&fixed_in_moving, moving, fixed, &self.simplex);
                let guess = found.map(|(on_moving, on_fixed, _)| on_moving - on_fixed);
                least_overlap(moving, shift, fixed, guess)
            }
            _ => Some(0.0),
        }
    }
}

/// Steps downhill in search of the shortest move, at most.
const DOWNHILL_STEPS: usize = 40;

/// The finest of them, radians.
const FINEST_STEP: f64 = 1e-3;

/// The shortest move that parts two bodies, of those tried: along each axis and along a guess, and
/// from there downhill. Each length is that of a move which does part them, so that it is never
/// shorter than the shortest one. (The library's own answer hangs on rounding: for two long bodies
/// it was found 18 mm apart for positions that differed by nothing.)
fn least_overlap(moving: &Body, shift: DVec3, fixed: &Body, guess: Option<DVec3>) -> Option<f64> {
    let overlap = |normal: DVec3| -certified(moving, shift, fixed, normal);
    let axes = DVec3::AXES.into_iter().flat_map(|axis| [axis, -axis]);
    let guess = guess
        .map(DVec3::normalize_or_zero)
        .filter(|way| *way != DVec3::ZERO);
    let tried = axes.chain(guess).chain(guess.map(|way| -way));
    let (mut normal, mut least) = tried
        .map(|normal| (normal, overlap(normal)))
        .filter(|(_, length)| length.is_finite())
        .min_by(|a, b| a.1.total_cmp(&b.1))?;
    let mut step = 0.1;
    for _ in 0..DOWNHILL_STEPS {
        let slope = moving.support(normal) + shift - fixed.support(-normal);
        let across = (slope - normal * slope.dot(normal)).normalize_or_zero();
        let next = (normal - across * step).normalize_or_zero();
        let length = overlap(next);
        if next != DVec3::ZERO && length < least {
            (normal, least) = (next, length);
        } else {
            step *= 0.5;
            if step < FINEST_STEP {
                break;
            }
        }
    }
    Some(least.max(0.0))
}

/// A direction to start from: from middle to middle.
#[inline]
fn first_guess(moving: &Body, shift: DVec3, fixed: &Body) -> DVec3 {
    let toward = fixed.low() + fixed.high() - moving.low() - moving.high() - shift * 2.0;
    if toward.length_squared() > 1e-12 {
        toward
    } else {
        DVec3::Z
    }
}

/// The distance between the support planes along the unit vector `normal` (from moving to fixed):
/// a lower bound on the true distance; negative when the planes overlap.
#[inline]
pub(super) fn certified(moving: &Body, shift: DVec3, fixed: &Body, normal: DVec3) -> f64 {
    -fixed.reach(-normal) - moving.reach(normal) - shift.dot(normal)
}

/// Looks that a pair is given before its distance is worked out.
const PLAIN_LOOKS: usize = 6;

/// Room between support planes above which two bodies are plainly apart, metres: far more than what
/// could be taken for touching.
pub(super) const PLAINLY_M: f64 = 1e-6;

/// Whether two bodies are apart, where a few directions show it: much quicker than their distance.
/// False where these don't tell.
pub(crate) fn plainly_apart(moving: &Body, shift: DVec3, fixed: &Body) -> bool {
    parting(moving, shift, fixed).is_some()
}

/// The same, with the unit vector from moving to fixed along which they are.
pub(super) fn parting(moving: &Body, shift: DVec3, fixed: &Body) -> Option<DVec3> {
    let mut normal = first_guess(moving, shift, fixed).normalize_or_zero();
    for _ in 0..PLAIN_LOOKS {
        if normal == DVec3::ZERO || !normal.is_finite() {
            return None;
        }
        let between = fixed.support(-normal) - moving.support(normal) - shift;
        if between.dot(normal) > PLAINLY_M {
            return Some(normal);
        }
        // Mirrored at the plane square to the way between the two farthest points: a direction
        // that parts the bodies lies on that side.
        let way = between.normalize_or_zero();
        normal = (normal - way * (2.0 * way.dot(normal))).normalize_or_zero();
    }
    None
}

/// Narrows the bracket by stepping the witness difference toward support points (Gilbert's
/// method): slow but free of the degenerate cases of a simplex.
fn refine(gap: &mut Gap, moving: &Body, shift: DVec3, fixed: &Body) {
    let mut on_moving = gap.on_moving;
    let mut on_fixed = gap.on_fixed;
    for _ in 0..REFINING_ROUNDS {
        let between = on_fixed - on_moving;
        let length = between.length();
        if length <= 1e-12 {
            return;
        }
        let normal = between / length;
        let lower = certified(moving, shift, fixed, normal);
        if lower > gap.lower {
            gap.lower = lower;
            gap.normal = normal;
        }
        if length < gap.upper {
            gap.upper = length;
            gap.on_moving = on_moving;
            gap.on_fixed = on_fixed;
        }
        if gap.is_decided() {
            return;
        }
        let next_moving = moving.support(normal) + shift;
        let next_fixed = fixed.support(-normal);
        let step = (next_fixed - next_moving) - between;
        let denominator = step.length_squared();
        if denominator <= 0.0 {
            return;
        }
        let share = (-between.dot(step) / denominator).clamp(0.0, 1.0);
        on_moving = on_moving.lerp(next_moving, share);
        on_fixed = on_fixed.lerp(next_fixed, share);
    }
}

#[cfg(test)]
mod tests {
    use glam::DQuat;

    use super::*;
    use crate::solids::{Pose, Role, Solid};

    fn cuboid(half: [f64; 3], at: [f64; 3]) -> Body {
        let (half, at) = (DVec3::from_array(half), DVec3::from_array(at));
        Body::exact(&Solid::aligned_box("box", Role::Body, at - half, at + half))
    }

    fn apart(separation: Separation) -> Gap {
        match separation {
            Separation::Apart(gap) => gap,
            Separation::Meet => panic!("they meet"),
        }
    }

    #[test]
    fn cuboids_offset_sideways_once_came_out_too_far_apart() {
        // An earlier version of the geometry library answered 1.879 m for two cuboids whose faces
        // are 1.600 m apart and whose plans overlap: the faces' distance is the answer.
        let lower = cuboid([1.0, 1.0, 0.5], [0.0, 0.0, 0.5]);
        let upper = cuboid([1.0, 1.0, 0.2], [0.9, 0.4, 2.8]);
        let gap = apart(Solver::new().gap(&lower, DVec3::ZERO, &upper));
        assert!((gap.lower - 1.6).abs() < 1e-9 && (gap.upper - 1.6).abs() < 1e-9);
        assert!((gap.normal - DVec3::Z).length() < 1e-9);
    }

    #[test]
    fn edge_to_edge_by_pythagoras() {
        // Corner edges 0.3 m apart across and 0.4 m upward: 0.5 m.
        let a = cuboid([0.5, 2.0, 0.5], [0.0, 0.0, 0.0]);
        let b = cuboid([0.5, 0.1, 0.5], [1.3, 0.0, 1.4]);
        let gap = apart(Solver::new().gap(&a, DVec3::ZERO, &b));
        assert!((gap.lower - 0.5).abs() < 1e-9 && gap.lower <= gap.upper);
    }

    #[test]
    fn cylinder_over_a_tilted_box() {
        // A bar of radius 0.05 along y, its axis 1 m above the origin; a box turned 45 degrees
        // about y whose upper edge lies at 0.5 * sqrt(2): 1 - 0.05 - 0.70711 = 0.24289.
        let bar = Body::exact(&Solid::bar(
            "bar",
            Role::Body,
            DVec3::new(0.0, -1.0, 1.0),
            DVec3::new(0.0, 1.0, 1.0),
            0.05,
        ));
        let turned = Pose::new(
            DQuat::from_rotation_y(std::f64::consts::FRAC_PI_4),
            DVec3::ZERO,
        );
        let tilted = Body::exact(&Solid::posed_box("box", Role::Body, DVec3::ONE, turned));
        let gap = apart(Solver::new().gap(&tilted, DVec3::ZERO, &bar));
        let expected = 1.0 - 0.05 - 0.5 * 2f64.sqrt();
        assert!((gap.lower - expected).abs() < 1e-6, "{}", gap.lower);
        assert!(gap.lower <= expected + 1e-12 && gap.upper >= expected - 1e-12);
    }

    #[test]
    fn a_shift_moves_the_moving_body_and_its_witness() {
        let a = cuboid([0.5, 0.5, 0.5], [0.0, 0.0, 0.0]);
        let b = cuboid([0.5, 0.5, 0.5], [0.0, 0.0, 3.0]);
        let gap = apart(Solver::new().gap(&a, DVec3::Z * 1.5, &b));
        assert!((gap.lower - 0.5).abs() < 1e-9);
        assert!((gap.on_moving.z - 2.0).abs() < 1e-9 && (gap.on_fixed.z - 2.5).abs() < 1e-9);
    }

    #[test]
    fn overlap_is_told_with_its_depth() {
        let a = cuboid([0.5, 0.5, 0.5], [0.0, 0.0, 0.0]);
        let b = cuboid([0.5, 0.5, 0.5], [0.1, 0.2, 0.9]);
        let mut solver = Solver::new();
        assert_eq!(solver.gap(&a, DVec3::ZERO, &b), Separation::Meet);
        let depth = solver.depth(&a, DVec3::ZERO, &b);
        assert!(depth.is_some_and(|depth| (depth - 0.1).abs() < 1e-6));
    }

    #[test]
    fn refining_closes_a_bracket_from_a_poor_start() {
        let a = cuboid([0.5, 0.5, 0.5], [0.0, 0.0, 0.0]);
        let b = cuboid([0.5, 0.5, 0.5], [1.2, 1.1, 1.4]);
        let truth = (0.2_f64.powi(2) + 0.1_f64.powi(2) + 0.4_f64.powi(2)).sqrt();
        let on_moving = DVec3::new(-0.5, 0.5, -0.5);
        let on_fixed = DVec3::new(1.7, 0.6, 1.9);
        let between = on_fixed - on_moving;
        let mut gap = Gap {
            lower: f64::NEG_INFINITY,
            upper: between.length(),
            normal: between.normalize(),
            on_moving,
            on_fixed,
        };
        refine(&mut gap, &a, DVec3::ZERO, &b);
        assert!(gap.is_decided(), "{} {}", gap.lower, gap.upper);
        assert!(gap.lower <= truth + 1e-12 && gap.upper >= truth - 1e-12);
    }

    #[test]
    fn what_stands_on_a_face_but_for_rounding_touches_it() {
        let floor = cuboid([3.0, 3.0, 0.1], [0.0, 0.0, -0.1]);
        for above in [0.0, 1e-12, 8e-12, 5e-10] {
            let foot = cuboid([0.1, 0.1, 0.1], [0.8, 2.4, 0.1 + above]);
            let found = Solver::new().gap(&foot, DVec3::ZERO, &floor);
            assert_eq!(found, Separation::Meet, "{above}");
        }
        let foot = cuboid([0.1, 0.1, 0.1], [0.8, 2.4, 0.1 + 1e-6]);
        let gap = apart(Solver::new().gap(&foot, DVec3::ZERO, &floor));
        assert!(gap.is_decided() && gap.lower > 0.9e-6, "{gap:?}");
    }

    #[test]
    fn a_body_that_is_not_a_number_never_counts_as_apart() {
        let a = cuboid([0.5, 0.5, 0.5], [0.0, 0.0, 0.0]);
        for place in [f64::NAN, f64::INFINITY] {
            let broken = cuboid([0.5, 0.5, 0.5], [0.0, place, 9.0]);
            let mut solver = Solver::new();
            assert_eq!(solver.gap(&a, DVec3::ZERO, &broken), Separation::Meet);
            assert_eq!(solver.gap(&broken, DVec3::ZERO, &a), Separation::Meet);
            assert_eq!(solver.depth(&a, DVec3::ZERO, &broken), None);
            assert!(!plainly_apart(&a, DVec3::ZERO, &broken));
        }
        // One corner of many.
        let vertices = vec![
            DVec3::X,
            DVec3::Y,
            DVec3::Z,
            DVec3::new(9.0, 9.0, f64::INFINITY),
        ];
        let roof = Solid::hull("roof", Role::Body, vertices);
        let poses = [Pose::IDENTITY, Pose::at(DVec3::Z * 9.0)];
        let roof = Body::of(&roof.shape, &poses, DVec3::ZERO);
        let above = cuboid([0.5, 0.5, 0.5], [0.0, 0.0, 99.0]);
        let found = Solver::new().gap(&roof, DVec3::ZERO, &above);
        assert_eq!(found, Separation::Meet);
    }

    proptest::proptest! {
        /// Two turned boxes by the separating axes: the shortest move goes square to a face of one
        /// of them or to an edge of each (S. Gottschalk, M. Lin, D. Manocha, OBBTree, SIGGRAPH 1996,
        /// from memory).
        #[test]
        fn how_deep_turned_boxes_overlap(
            half in proptest::array::uniform6(0.05..2.0_f64),
            turn in (-3.0..3.0_f64, -1.5..1.5_f64, -3.0..3.0_f64),
            at in proptest::array::uniform3(-0.6..0.6_f64),
        ) {
            let turn = DQuat::from_euler(glam::EulerRot::ZYX, turn.0, turn.1, turn.2);
            let a_half = DVec3::new(half[0], half[1], half[2]);
            let b_half = DVec3::new(half[3], half[4], half[5]);
            let pose = Pose::new(turn, DVec3::from_array(at));
            let a = Body::exact(&Solid::posed_box("a", Role::Body, a_half * 2.0, Pose::IDENTITY));
            let b = Body::exact(&Solid::posed_box("b", Role::Body, b_half * 2.0, pose));
            let own = DVec3::AXES;
            let other = own.map(|axis| turn * axis);
            let mut exact = f64::INFINITY;
            let crosses = own.into_iter().flat_map(|one| other.map(|two| one.cross(two)));
            for axis in own.into_iter().chain(other).chain(crosses) {
                let Some(axis) = axis.try_normalize() else { continue };
                let reach = |half: DVec3, axes: [DVec3; 3]| {
                    half.x * axes[0].dot(axis).abs()
                        + half.y * axes[1].dot(axis).abs()
                        + half.z * axes[2].dot(axis).abs()
                };
                let room = pose.translation.dot(axis).abs() - reach(a_half, own) - reach(b_half, other);
                exact = exact.min(-room);
            }
            proptest::prop_assume!(exact > 1e-3);
            let found = Solver::new().depth(&a, DVec3::ZERO, &b);
            let found = found.ok_or_else(|| proptest::test_runner::TestCaseError::fail("no depth"))?;
            proptest::prop_assert!(found >= exact - 1e-9, "{found} for {exact}");
            proptest::prop_assert!(found <= exact * 1.05 + 1e-3, "{found} for {exact}");
        }
    }
}
