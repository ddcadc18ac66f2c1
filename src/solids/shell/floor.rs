//! How high is the floor here, and between which levels does it lie over a patch?

use crate::bay::{Bay, FallToward, Floor, FloorLevel};

/// How many of the nearest level points speak for the floor at a place.
const NEAREST: usize = 4;

/// The floor's `z` at a place, metres; 0 at the post line's middle.
///
/// Between measured points it is the mean of the four nearest (the post line's middle counts as
/// a point at level 0), weighted by the inverse square of their distance. This is a value to draw
/// and to tell; decisions use [`floor_level_range_m`], which always holds it.
#[must_use]
pub fn floor_level_m(bay: &Bay, x_m: f64, y_m: f64) -> f64 {
    let (across, line) = (bay.lift.across.m(), bay.lift.post_line.m());
    match &bay.garage.floor {
        Floor::Level => 0.0,
        Floor::Fall { slope, toward } => match toward {
            FallToward::Door => slope * (y_m - line),
            FallToward::Back => -slope * (y_m - line),
            FallToward::Left => slope * (x_m - across),
            FallToward::Right => -slope * (x_m - across),
        },
        Floor::Levels(levels) => {
            let mut near: Vec<(f64, f64)> = level_points(bay, levels)
                .map(|[x, y, level]| ((x - x_m).powi(2) + (y - y_m).powi(2), level))
                .collect();
            near.sort_by(|a, b| a.0.total_cmp(&b.0));
            near.truncate(NEAREST);
            weighted_mean(&near)
        }
    }
}

/// The lowest and the highest level that the floor may have anywhere over the patch from `low` to
/// `high` (x, y), metres.
///
/// A level floor and a fall are bracketed exactly: a plane has its extremes at corners. Between
/// measured points the floor is only known at the points, so the bracket is the lowest and the
/// highest level of every point that may be among the four nearest to some place in the patch.
/// Each measured level may be off by the room's ±; the post line's middle is what they are measured from.
/// Proof that none is missed: let `k` be four, or the number of points if fewer. If point `i` is
/// among the `k` nearest of a place `q` of the patch, then its distance from `q` is at most the
/// `k`-th smallest distance of all points from `q`, which is at most the `k`-th smallest of the
/// points' *greatest* distances from the patch; and its distance from `q` is at least its *least*
/// distance from the patch. Points whose least distance exceeds that `k`-th greatest one are thus
/// rightly left out, and no others are.
#[must_use]
pub fn floor_level_range_m(bay: &Bay, low: [f64; 2], high: [f64; 2]) -> (f64, f64) {
    let extremes = |levels: &mut dyn Iterator<Item = f64>| {
        levels.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), level| {
            (low.min(level), high.max(level))
        })
    };
    match &bay.garage.floor {
        Floor::Level => (0.0, 0.0),
        Floor::Fall { .. } => extremes(
            &mut [
                [low[0], low[1]],
                [high[0], low[1]],
                [low[0], high[1]],
                [high[0], high[1]],
            ]
            .iter()
            .map(|&[x, y]| floor_level_m(bay, x, y)),
        ),
        Floor::Levels(levels) => {
            let points: Vec<[f64; 3]> = level_points(bay, levels).collect();
            let mut farthest: Vec<f64> = points
                .iter()
                .map(|p| {
                    let reach = |i: usize| (p[i] - low[i]).abs().max((p[i] - high[i]).abs());
                    reach(0).hypot(reach(1))
                })
                .collect();
            farthest.sort_by(f64::total_cmp);
            let bound = farthest[farthest.len().min(NEAREST) - 1];
            // A hair is added so that rounding can't leave out a point that just counts.
            let bound = bound * (1.0 + 1e-12);
            extremes(
                &mut points
                    .iter()
                    .filter(|p| {
                        let gap = |i: usize| (low[i] - p[i]).max(p[i] - high[i]).max(0.0);
                        gap(0).hypot(gap(1)) <= bound
                    })
                    .flat_map(|p| {
                        let is_datum = p[..2] == datum_m(bay);
                        let off = if is_datum {
                            0.0
                        } else {
                            bay.policy.measured_garage.m()
                        };
                        [p[2] - off, p[2] + off]
                    }),
            )
        }
    }
}

/// The post line's middle, x and y: its level is 0.
const fn datum_m(bay: &Bay) -> [f64; 2] {
    [bay.lift.across.m(), bay.lift.post_line.m()]
}

/// The measured points and the post line's middle, as x, y, level.
fn level_points<'a>(bay: &Bay, levels: &'a [FloorLevel]) -> impl Iterator<Item = [f64; 3]> + 'a {
    let [x, y] = datum_m(bay);
    std::iter::once([x, y, 0.0]).chain(levels.iter().map(|p| [p.x.m(), p.y.m(), p.level.m()]))
}

/// Mean of (squared distance, level), weighted by the inverse squared distance, held between the
/// levels that go into it.
fn weighted_mean(near: &[(f64, f64)]) -> f64 {
    let (mut sum, mut weights) = (0.0, 0.0);
    let (mut lowest, mut highest) = (f64::INFINITY, f64::NEG_INFINITY);
    for &(distance_squared, level) in near {
        if distance_squared < 1e-18 {
            return level;
        }
        sum += level / distance_squared;
        weights += 1.0 / distance_squared;
        lowest = lowest.min(level);
        highest = highest.max(level);
    }
    (sum / weights).clamp(lowest, highest)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::solids::test_bay::test_bay;
    use crate::units::Length;

    fn with_floor(floor: Floor) -> Bay {
        let mut bay = test_bay();
        bay.garage.floor = floor;
        bay
    }

    #[test]
    fn a_fall_is_a_plane_through_the_post_line() {
        // 2 % toward the door, post line at 14 ft = 4.2672 m. At the door: -0.02 * 4.2672.
        let bay = with_floor(Floor::Fall {
            slope: 0.02,
            toward: FallToward::Door,
        });
        assert!(floor_level_m(&bay, 1.0, 4.2672).abs() < 1e-12);
        assert!((floor_level_m(&bay, 0.0, 0.0) - -0.085_344).abs() < 1e-12);
        let bay = with_floor(Floor::Fall {
            slope: 0.01,
            toward: FallToward::Left,
        });
        assert!((floor_level_m(&bay, -2.0, 0.0) - -0.02).abs() < 1e-12);
        let (low, high) = floor_level_range_m(&bay, [-1.0, 0.0], [3.0, 8.0]);
        assert!((low - -0.01).abs() < 1e-12 && (high - 0.03).abs() < 1e-12);
    }

    #[test]
    fn the_bracket_holds_every_place_in_its_patch() {
        let mut levels = Vec::new();
        for i in 0..5_u32 {
            for j in 0..6_u32 {
                // An arbitrary bumpy floor, the same on every run.
                let level = f64::from((i * 7 + j * 13) % 11) * 0.004 - 0.02;
                levels.push(FloorLevel {
                    x: Length::metres(-3.6 + 1.8 * f64::from(i)),
                    y: Length::metres(1.7 * f64::from(j)),
                    level: Length::metres(level),
                });
            }
        }
        let mut bay = with_floor(Floor::Levels(levels));
        bay.policy.measured_garage = Length::ZERO;
        let mut narrower = 0;
        for patch in 0..60_u32 {
            let low = [
                -3.6 + 0.1 * f64::from(patch % 37),
                0.12 * f64::from(patch % 53),
            ];
            let size = 0.2 + 0.05 * f64::from(patch);
            let high = [low[0] + size, low[1] + size];
            let (bottom, top) = floor_level_range_m(&bay, low, high);
            narrower += i32::from(top - bottom < 0.039);
            for i in 0..=10 {
                for j in 0..=10 {
                    let place = |k: usize, step: i32| low[k] + size * f64::from(step) / 10.0;
                    let level = floor_level_m(&bay, place(0, i), place(1, j));
                    assert!(bottom <= level && level <= top, "{low:?} {high:?}");
                }
            }
        }
        assert!(narrower > 0, "the bracket is not always the whole floor");
    }

    /// A level that was measured may be off; the place that they are measured from is not.
    #[test]
    fn the_bracket_holds_what_the_levels_may_be_off() {
        let mut bay = with_floor(Floor::Levels(vec![FloorLevel {
            x: Length::metres(1.0),
            y: Length::metres(1.0),
            level: Length::mm(-30.0),
        }]));
        bay.policy.measured_garage = Length::mm(6.0);
        let (low, high) = floor_level_range_m(&bay, [0.9, 0.9], [1.1, 1.1]);
        assert!(
            (low - -0.036).abs() < 1e-12 && high.abs() < 1e-12,
            "{low} {high}"
        );
        let level = with_floor(Floor::Level);
        assert_eq!(floor_level_range_m(&level, [0.0; 2], [1.0; 2]), (0.0, 0.0));
    }

    #[test]
    fn a_measured_point_has_its_own_level() {
        let bay = with_floor(Floor::Levels(vec![FloorLevel {
            x: Length::metres(1.0),
            y: Length::metres(1.0),
            level: Length::mm(-30.0),
        }]));
        assert!((floor_level_m(&bay, 1.0, 1.0) - -0.03).abs() < 1e-12);
        assert!(floor_level_m(&bay, 0.0, 4.2672).abs() < 1e-12);
    }
}
