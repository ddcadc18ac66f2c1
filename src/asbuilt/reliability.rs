//! Do the readings go together as a whole, and how far could a slip that does not show move a post?
//!
//! The test of the whole: the weighted sum of squared residuals against the chi-square distribution
//! of as many degrees of freedom as there are readings to spare (the "goodness of fit test" of
//! C. D. Ghilani and P. R. Wolf, "Adjustment Computations", from memory). The quantile is worked out
//! here from the incomplete gamma function's series, and tested against printed tables.
//!
//! The reach of a slip: W. Baarda's internal and external reliability ("Statistical concepts in
//! geodesy", Netherlands Geodetic Commission 1967, and the testing procedure of 1968; from memory).
//! With a test at 3.29 a slip of 4.13 standard deviations over the root of the redundancy number is
//! found four times in five; its effect on the unknowns is what the study has to allow for.

use glam::DVec2;

use super::IN_STUDY;
use super::adjust::{Adjusted, Observed, Row};

/// 3.29 and 0.84, the normal deviate of four in five.
const FOUND_FROM: f64 = 4.13;

/// One set of good readings in a hundred fails the test of the whole. Own choice.
pub(super) const FAILS: f64 = 0.01;

/// How likely as great a sum of squares is by chance: the chi-square distribution's upper tail.
pub(super) fn by_chance(sum: f64, spare: usize) -> f64 {
    if spare == 0 || sum <= 0.0 {
        return 1.0;
    }
    let (a, x) = (0.5 * spare as f64, 0.5 * sum);
    // Far out in the tail the series would lose its digits to cancelling: that is no chance.
    if x > a + 40.0 + 10.0 * a.sqrt() {
        return 0.0;
    }
    // P(a, x) = x^a e^-x / Gamma(a + 1) * (1 + x / (a + 1) + x^2 / ((a + 1) (a + 2)) + ...).
    let mut term = 1.0;
    let mut series = 1.0;
    let mut n = a;
    while term > 1e-17 * series {
        n += 1.0;
        term *= x / n;
        series += term;
    }
    let lower = (a * x.ln() - x - ln_gamma_of_next(spare) + f64::ln(series)).exp();
    (1.0 - lower).clamp(0.0, 1.0)
}

/// ln Gamma(n / 2 + 1), by its recurrence from Gamma(1) = 1 or Gamma(1 / 2) = the root of pi.
fn ln_gamma_of_next(n: usize) -> f64 {
    let (mut at, mut sum) = if n.is_multiple_of(2) {
        (1.0, 0.0)
    } else {
        (0.5, 0.5 * std::f64::consts::PI.ln())
    };
    let end = 0.5 * n as f64 + 1.0;
    while at + 0.25 < end {
        sum += f64::ln(at);
        at += 1.0;
    }
    sum
}

/// What the greatest slip that may not show does to the unknowns, for each reading that could have one.
pub(super) fn slips(fit: &Adjusted, rows: &[Row], observed: &[Observed]) -> Vec<Vec<f64>> {
    let each = fit.residuals.iter().zip(rows).zip(observed);
    // Where nothing checks a reading no bound is known: that is told, and nothing called safe.
    each.filter(|((residual, _), _)| residual.standardised.is_some())
        .map(|((residual, row), read)| {
            let slip = FOUND_FROM * read.sigma / residual.checked.sqrt();
            moved(fit, row, read).map(|by| by * slip).collect()
        })
        .collect()
}

/// What each metre of an error in one reading does to the unknowns.
fn moved<'a>(fit: &'a Adjusted, row: &'a Row, read: &Observed) -> impl Iterator<Item = f64> + 'a {
    let weight = 1.0 / (read.sigma * read.sigma);
    fit.covariance.iter().map(move |covariance| {
        let by: f64 = covariance.iter().zip(&row.slopes).map(|(c, s)| c * s).sum();
        by * weight
    })
}

/// What all readings off together, each by its own `sigma`, do to the unknowns: a hook that is bent, or a
/// tape that was read from its wrong edge, is the same in every reading, and the more readings there are
/// the less it looks like chance.
pub(super) fn common(
    fit: &Adjusted,
    rows: &[Row],
    observed: &[Observed],
    sigma: impl Fn(usize) -> f64,
) -> Vec<f64> {
    let mut sum = vec![0.0; fit.unknowns.len()];
    for (at, (row, read)) in rows.iter().zip(observed).enumerate() {
        let sigma = sigma(at);
        for (sum, by) in sum.iter_mut().zip(moved(fit, row, read)) {
            *sum += sigma * by;
        }
    }
    sum
}

/// What a slip of each reading that nothing checks does to the unknowns, for each metre of it: beside
/// its place in the rows.
pub(super) fn unchecked(
    fit: &Adjusted,
    rows: &[Row],
    observed: &[Observed],
) -> Vec<(usize, Vec<f64>)> {
    let each = fit.residuals.iter().zip(rows).zip(observed).enumerate();
    each.filter(|(_, ((residual, _), _))| residual.standardised.is_none())
        .map(|(at, ((_, row), read))| (at, moved(fit, row, read).collect()))
        .collect()
}

/// Less of a slip than this is not carried over to a post: the noise of the fit.
const CARRIED: f64 = 1e-3;

/// How well a post is held: what its place, and any point that turns with it, may be off.
#[derive(Debug, Clone, PartialEq)]
pub struct Held {
    /// Covariance of its x, its y and its turn, metres and radians.
    pub covariance: [[f64; 3]; 3],
    /// What a slip of each reading that may not show does to them.
    pub slips: Vec<[f64; 3]>,
    /// The readings that nothing checks, by their place in the file's list (a wall has none), with what
    /// each metre of a slip of them does to its x, its y and its turn.
    pub unchecked: Vec<(Option<usize>, [f64; 3])>,
}

impl Held {
    /// How far a point this far from the plate's middle (across, along) may be off by three standard
    /// deviations and one slip that does not show: across, along. A turn moves it across by its way
    /// along, and along by its way across.
    #[must_use]
    pub fn within_m(&self, far: DVec2) -> DVec2 {
        let one = |axis: usize, lever: f64| {
            let of = &self.covariance;
            let variance =
                of[axis][axis] + 2.0 * of[axis][2].abs() * lever + of[2][2] * lever * lever;
            let slip = self
                .slips
                .iter()
                .map(|slip| slip[axis].abs() + slip[2].abs() * lever)
                .fold(0.0, f64::max);
            IN_STUDY * variance.max(0.0).sqrt() + slip
        };
        DVec2::new(one(0, far.y.abs()), one(1, far.x.abs()))
    }

    /// The readings that nothing checks and that its x, its y or its turn hangs on, one row each.
    pub fn hangs_on(&self) -> impl Iterator<Item = (Option<usize>, [bool; 3])> {
        let each = self.unchecked.iter();
        each.map(|(at, moves)| (*at, moves.map(|by| by.abs() > CARRIED)))
            .filter(|(_, moves)| moves.contains(&true))
    }

    /// The most that a slip that does not show moves x, y and turn.
    #[must_use]
    pub fn slip(&self) -> [f64; 3] {
        let most = |i: usize| self.slips.iter().map(move |slip| slip[i].abs());
        [0, 1, 2].map(|i| most(i).fold(0.0, f64::max))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Upper tails as printed in tables of the chi-square distribution (any handbook).
    #[test]
    fn tails_are_those_of_printed_tables() {
        for (spare, sum, tail) in [
            (1, 3.841, 0.05),
            (1, 6.635, 0.01),
            (2, 9.210, 0.01),
            (5, 11.070, 0.05),
            (6, 16.812, 0.01),
            (10, 23.209, 0.01),
            (30, 43.773, 0.05),
            (100, 135.807, 0.01),
        ] {
            let found = by_chance(sum, spare);
            assert!((found - tail).abs() < 2e-5, "{spare} {sum}: {found}");
        }
        assert!(by_chance(0.0, 4) >= 1.0 && by_chance(1e6, 4) <= 0.0);
    }

    /// One length measured n times: a redundancy number of 1 - 1/n, and a slip moves the mean by 1/n
    /// of itself.
    #[test]
    fn a_slip_moves_a_mean_by_its_share() {
        let observed = [Observed {
            value: 1.0,
            sigma: 0.001,
        }; 4];
        let rows = |at: &[f64]| {
            vec![
                Row {
                    computed: at[0],
                    slopes: vec![1.0],
                };
                4
            ]
        };
        let fit = super::super::adjust::adjust(&[0.0], &observed, 1.0, rows).unwrap();
        let found = slips(&fit, &rows(&fit.unknowns), &observed);
        let slip = 4.13 * 0.001 / 0.75_f64.sqrt();
        assert_eq!(found.len(), 4);
        for moves in found {
            assert!((moves[0] - slip / 4.0).abs() < 1e-12, "{moves:?}");
        }
    }
}
