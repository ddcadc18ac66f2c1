//! When, on a straight climb, two bodies first come nearer than a margin.
//!
//! The distance between two convex bodies, one of them carried along a straight line, is a convex
//! function of the travel. Along any direction `n` the gap between the support planes is a
//! straight line in the travel that never lies above it. So each step below ends where that line
//! meets the margin: everything before is certified clear, and the steps close in on the first
//! breach from the safe side. Nothing is sampled.

use glam::DVec3;

use super::body::Body;
use super::gap::{Gap, Separation, Solver};

/// Room over the margin (metres) below which a pair counts as short. It makes the last step of
/// the search finite, on the safe side.
const CLOSE_M: f64 = 1e-7;

/// Distance over the margin (metres) up to which a pair whose bracket stays too wide is called
/// short rather than undecided: nothing is gained by telling them apart.
const CALLED_SHORT_M: f64 = 0.5e-3;

/// Steps after which the search stops and answers with the travel certified so far.
const MOST_STEPS: usize = 100;

/// The first travel at which a pair is nearer than its margin.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum First {
    /// Nowhere in the window.
    Never,
    /// From this travel on (or up to it, for [`last_below`]); everything before is certified.
    At(f64),
    /// The search could not decide from this travel on.
    Undecided(f64),
}

/// A climb: a unit vector and the window of travel, metres.
#[derive(Debug, Clone, Copy)]
pub struct Climb {
    /// Unit vector along which the moving body is carried.
    pub up: DVec3,
    /// Travel at which the window starts.
    pub from: f64,
    /// Travel at which the window ends.
    pub to: f64,
}

/// The first travel in the window at which the distance is below `margin`.
pub fn first_below(
    solver: &mut Solver,
    moving: &Body,
    fixed: &Body,
    margin: f64,
    climb: Climb,
) -> First {
    let Climb { up, from, to } = climb;
    let mut travel = from;
    let mut toward: Option<DVec3> = None;
    for _ in 0..MOST_STEPS {
        let found = match toward {
            Some(normal) => solver.gap_from(moving, up * travel, fixed, normal),
            None => solver.gap(moving, up * travel, fixed),
        };
        let gap = match found {
            Separation::Meet => return First::At(travel),
            Separation::Apart(gap) => gap,
        };
        toward = Some(gap.normal);
        let room = gap.lower - margin;
        if gap.lower > gap.upper && !gap.is_decided() || room.is_nan() {
            return First::Undecided(travel);
        }
        if room <= CLOSE_M {
            // A wide bracket here means that the pair may or may not be short.
            return if gap.is_decided() || gap.upper <= margin + CALLED_SHORT_M {
                First::At(travel)
            } else {
                First::Undecided(travel)
            };
        }
        let rate = gap.normal.dot(up);
        // With `rate <= 0` the certified line never falls: clear for the rest of the climb. A rate
        // so small that the line does not reach the margin before `to` says the same.
        let next = travel + room / rate;
        if rate <= 0.0 || next > to {
            return First::Never;
        }
        // A NaN anywhere must not pass for clear.
        if !next.is_finite() || next < travel {
            return First::Undecided(travel);
        }
        if next <= travel {
            return First::At(travel);
        }
        travel = next;
    }
    First::At(travel)
}

/// The last travel in the window at which the distance is below `margin`: [`first_below`] run
/// from the top down.
pub fn last_below(
    solver: &mut Solver,
    moving: &Body,
    fixed: &Body,
    margin: f64,
    climb: Climb,
) -> First {
    let down = Climb {
        up: -climb.up,
        from: -climb.to,
        to: -climb.from,
    };
    match first_below(solver, moving, fixed, margin, down) {
        First::Never => First::Never,
        First::At(travel) => First::At(-travel),
        First::Undecided(travel) => First::Undecided(-travel),
    }
}

/// The least gap in the window, and where.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Least {
    /// The bodies meet at this travel.
    Meet(f64),
    /// The least gap, at this travel.
    Gap(Gap, f64),
}

impl Least {
    /// The certified least distance, zero when they meet.
    #[must_use]
    pub fn lower(&self) -> f64 {
        match self {
            Self::Meet(_) => 0.0,
            Self::Gap(gap, _) => gap.lower,
        }
    }
}

/// The least gap in the window. The distance is convex in the travel, so it lies at an end unless
/// the pair closes at the start and opens at the end; then two certified lines from both sides
/// are intersected until they meet.
pub fn least_gap(solver: &mut Solver, moving: &Body, fixed: &Body, climb: Climb) -> Least {
    least_gap_from(solver, moving, fixed, climb, None)
}

/// The same, searched from a guess at the direction from moving to fixed.
pub(super) fn least_gap_from(
    solver: &mut Solver,
    moving: &Body,
    fixed: &Body,
    climb: Climb,
    toward: Option<DVec3>,
) -> Least {
    let Climb { up, from, to } = climb;
    let mut at = |travel: f64| match toward {
        Some(toward) => solver.gap_from(moving, up * travel, fixed, toward),
        None => solver.gap(moving, up * travel, fixed),
    };
    let mut right = match at(to) {
        Separation::Meet => return Least::Meet(to),
        Separation::Apart(gap) => (gap, to),
    };
    if right.0.normal.dot(up) >= 0.0 || to <= from {
        return Least::Gap(right.0, to);
    }
    let mut left = match at(from) {
        Separation::Meet => return Least::Meet(from),
        Separation::Apart(gap) => (gap, from),
    };
    if left.0.normal.dot(up) <= 0.0 {
        return Least::Gap(left.0, from);
    }
    let mut best = if left.0.upper < right.0.upper {
        left
    } else {
        right
    };
    let mut floor = f64::NEG_INFINITY;
    for _ in 0..MOST_STEPS {
        let (left_rate, right_rate) = (left.0.normal.dot(up), right.0.normal.dot(up));
        // left.lower - (s - left.s) left_rate = right.lower - (s - right.s) right_rate
        let travel = ((left.0.lower + left.1 * left_rate) - (right.0.lower + right.1 * right_rate))
            / (left_rate - right_rate);
        if !(travel > left.1 && travel < right.1) {
            break;
        }
        floor = left.0.lower - (travel - left.1) * left_rate;
        if best.0.lower - floor <= CLOSE_M {
            break;
        }
        let gap = match at(travel) {
            Separation::Meet => return Least::Meet(travel),
            Separation::Apart(gap) => gap,
        };
        if gap.upper < best.0.upper {
            best = (gap, travel);
        }
        let rate = gap.normal.dot(up);
        if rate > 0.0 {
            left = (gap, travel);
        } else if rate < 0.0 {
            right = (gap, travel);
        } else {
            return Least::Gap(gap, travel);
        }
    }
    // What is certified over the whole window is where the two lines cross, if that is lower.
    if floor.is_finite() {
        best.0.lower = best.0.lower.min(floor.max(0.0));
    }
    Least::Gap(best.0, best.1)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::solids::{Role, Solid};

    fn cuboid(low: [f64; 3], high: [f64; 3]) -> Body {
        Body::exact(&Solid::aligned_box(
            "box",
            Role::Body,
            DVec3::from_array(low),
            DVec3::from_array(high),
        ))
    }

    fn climb(from: f64, to: f64) -> Climb {
        Climb {
            up: DVec3::Z,
            from,
            to,
        }
    }

    fn at(first: First) -> f64 {
        match first {
            First::At(travel) => travel,
            other => panic!("{other:?}"),
        }
    }

    #[test]
    fn flat_ceiling_is_met_at_its_height_less_the_margin() {
        // Top at 1.5, ceiling at 3.0, margin 0.075: 3.0 - 1.5 - 0.075 = 1.425.
        let body = cuboid([-1.0, -1.0, 1.0], [1.0, 1.0, 1.5]);
        let ceiling = cuboid([-5.0, -5.0, 3.0], [5.0, 5.0, 3.3]);
        let found = at(first_below(
            &mut Solver::new(),
            &body,
            &ceiling,
            0.075,
            climb(0.0, 2.0),
        ));
        assert!((found - 1.425).abs() < 1e-6 && found <= 1.425 + 1e-12);
    }

    #[test]
    fn a_light_beside_the_roof_is_met_at_the_corner_by_pythagoras() {
        // The light's edge is 0.03 m beside the body and the margin 0.05: they come short when
        // the light is sqrt(0.05^2 - 0.03^2) = 0.04 above, so at 2.0 - 1.5 - 0.04 = 0.46.
        let body = cuboid([-1.0, -1.0, 1.0], [1.0, 1.0, 1.5]);
        let light = cuboid([1.03, -1.0, 2.0], [1.2, 1.0, 2.1]);
        let found = at(first_below(
            &mut Solver::new(),
            &body,
            &light,
            0.05,
            climb(0.0, 2.0),
        ));
        assert!(
            (found - 0.46).abs() < 1e-5 && found <= 0.46 + 1e-12,
            "{found}"
        );
        // It is left behind again when the light is 0.04 below the body's underside:
        // 2.1 + 0.04 - 1.0 = 1.14.
        let last = at(last_below(
            &mut Solver::new(),
            &body,
            &light,
            0.05,
            climb(0.0, 2.0),
        ));
        assert!((last - 1.14).abs() < 1e-5 && last >= 1.14 - 1e-12, "{last}");
    }

    #[test]
    fn an_upright_neighbour_is_never_met() {
        let body = cuboid([-1.0, -1.0, 1.0], [1.0, 1.0, 1.5]);
        let post = cuboid([1.06, -0.2, 0.0], [1.3, 0.2, 4.0]);
        let found = first_below(&mut Solver::new(), &body, &post, 0.05, climb(0.0, 2.0));
        assert_eq!(found, First::Never);
        let short = first_below(&mut Solver::new(), &body, &post, 0.07, climb(0.0, 2.0));
        assert_eq!(short, First::At(0.0));
    }

    #[test]
    fn what_passes_below_the_window_is_not_met() {
        let body = cuboid([-1.0, -1.0, 1.0], [1.0, 1.0, 1.5]);
        let light = cuboid([-0.1, -0.1, 2.0], [0.1, 0.1, 2.1]);
        // Past the light from travel 1.1 + margin on.
        let found = first_below(&mut Solver::new(), &body, &light, 0.05, climb(1.2, 2.0));
        assert_eq!(found, First::Never);
    }

    #[test]
    fn least_gap_lies_inside_the_window_where_the_pair_passes() {
        // A bar passes an edge 0.1 m beside it at mid height.
        let body = cuboid([-1.0, -1.0, 1.0], [1.0, 1.0, 1.2]);
        let rail = cuboid([1.1, -1.0, 2.0], [1.2, 1.0, 2.05]);
        let least = least_gap(&mut Solver::new(), &body, &rail, climb(0.0, 2.0));
        assert!((least.lower() - 0.1).abs() < 1e-6, "{least:?}");
        // Before and after, the ends are the least.
        let before = least_gap(&mut Solver::new(), &body, &rail, climb(0.0, 0.4));
        let truth = (0.1_f64.powi(2) + 0.4_f64.powi(2)).sqrt();
        assert!((before.lower() - truth).abs() < 1e-6);
        let after = least_gap(&mut Solver::new(), &body, &rail, climb(1.5, 2.0));
        let truth = (0.1_f64.powi(2) + 0.45_f64.powi(2)).sqrt();
        assert!((after.lower() - truth).abs() < 1e-6, "{after:?}");
    }
}
