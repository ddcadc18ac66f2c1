//! The adjustment: which unknowns fit weighted readings best, and how well do they hold them?
//!
//! Gauss and Newton: the readings are made linear about the present values, the weighted normal
//! equations give a correction, and so on until nothing moves. All unknowns are lengths in metres
//! (an angle goes in as the way of a point that it turns), so that they can be weighed against each
//! other.

use super::eigen::eigen;

/// A reading and its standard deviation, metres.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Observed {
    /// What was read.
    pub value: f64,
    /// Its standard deviation.
    pub sigma: f64,
}

/// What a reading should be for the present unknowns, and how it changes with each.
#[derive(Debug, Clone, PartialEq)]
pub struct Row {
    /// The value worked out.
    pub computed: f64,
    /// Its slope in each unknown.
    pub slopes: Vec<f64>,
}

/// A reading after the adjustment.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Residual {
    /// Read less worked out, metres.
    pub off_m: f64,
    /// The share of an error in this reading that shows in its own residual, 0 to 1: its redundancy
    /// number. At 0 nothing else checks it.
    pub checked: f64,
    /// The residual over its own standard deviation; none where the reading is not checked.
    pub standardised: Option<f64>,
}

/// The unknowns that fit best.
#[derive(Debug, Clone, PartialEq)]
pub struct Adjusted {
    /// The unknowns.
    pub unknowns: Vec<f64>,
    /// Their covariance for the stated ± of the readings.
    pub covariance: Vec<Vec<f64>>,
    /// Each reading.
    pub residuals: Vec<Residual>,
    /// Readings more than unknowns.
    pub spare: usize,
    /// The sum of the squares of the residuals, each over the reading's standard deviation.
    pub squares: f64,
    /// The standard deviation of unit weight: about 1 where the readings are as good as stated; none
    /// without a spare reading.
    pub unit: Option<f64>,
    /// How many corrections it took.
    pub rounds: usize,
}

/// Why there is no answer.
#[derive(Debug, Clone, PartialEq)]
pub enum NotFixed {
    /// These directions (unit vectors over the unknowns) are not held, or not to `weak_m`.
    Loose(Vec<Vec<f64>>),
    /// The corrections do not come to rest: the readings contradict each other.
    NoRest,
}

/// Below this share of an error that would show, a reading counts as not checked. Own choice.
const CHECKED_FROM: f64 = 0.05;

/// The most rounds; three or four are usual.
const ROUNDS: usize = 50;

/// Fits the unknowns to the readings, from the values at the start.
///
/// # Errors
/// When the readings leave a direction with a standard deviation over `weak_m`, or contradict
/// each other so that no place is found.
pub fn adjust(
    start: &[f64],
    observed: &[Observed],
    weak_m: f64,
    rows: impl Fn(&[f64]) -> Vec<Row>,
) -> Result<Adjusted, NotFixed> {
    let n = start.len();
    let mut unknowns = start.to_vec();
    for round in 1..=ROUNDS {
        let now = rows(&unknowns);
        let inverse = inverse(&normal(&now, observed, n), weak_m)?;
        let mut right = vec![0.0; n];
        for (row, read) in now.iter().zip(observed) {
            let weighted = (read.value - row.computed) / (read.sigma * read.sigma);
            for (sum, slope) in right.iter_mut().zip(&row.slopes) {
                *sum += slope * weighted;
            }
        }
        let step: Vec<f64> = inverse.iter().map(|row| dot(row, &right)).collect();
        for (unknown, step) in unknowns.iter_mut().zip(&step) {
            *unknown += step;
        }
        let size = unknowns.iter().fold(1.0_f64, |most, u| most.max(u.abs()));
        let moved = step.iter().fold(0.0_f64, |most, s| most.max(s.abs()));
        if !moved.is_finite() {
            return Err(NotFixed::NoRest);
        }
        if moved <= 1e-12 * size {
            return finish(unknowns, observed, weak_m, &rows, round);
        }
    }
    Err(NotFixed::NoRest)
}

fn finish(
    unknowns: Vec<f64>,
    observed: &[Observed],
    weak_m: f64,
    rows: &impl Fn(&[f64]) -> Vec<Row>,
    rounds: usize,
) -> Result<Adjusted, NotFixed> {
    let n = unknowns.len();
    let now = rows(&unknowns);
    let covariance = inverse(&normal(&now, observed, n), weak_m)?;
    let spare = observed.len().saturating_sub(n);
    let mut sum = 0.0;
    let residuals = now
        .iter()
        .zip(observed)
        .map(|(row, read)| {
            let off_m = read.value - row.computed;
            let variance = read.sigma * read.sigma;
            sum += off_m * off_m / variance;
            let held: Vec<f64> = covariance.iter().map(|of| dot(of, &row.slopes)).collect();
            let checked = (1.0 - dot(&held, &row.slopes) / variance).clamp(0.0, 1.0);
            Residual {
                off_m,
                checked,
                standardised: (checked >= CHECKED_FROM)
                    .then(|| off_m / (read.sigma * checked.sqrt())),
            }
        })
        .collect();
    Ok(Adjusted {
        unknowns,
        covariance,
        residuals,
        spare,
        squares: sum,
        unit: (spare > 0).then(|| (sum / spare as f64).sqrt()),
        rounds,
    })
}

fn dot(a: &[f64], b: &[f64]) -> f64 {
    a.iter().zip(b).map(|(a, b)| a * b).sum()
}

/// The weighted normal matrix.
fn normal(rows: &[Row], observed: &[Observed], n: usize) -> Vec<Vec<f64>> {
    let mut normal = vec![vec![0.0; n]; n];
    for (row, read) in rows.iter().zip(observed) {
        let weight = 1.0 / (read.sigma * read.sigma);
        for (line, one) in normal.iter_mut().zip(&row.slopes) {
            for (entry, other) in line.iter_mut().zip(&row.slopes) {
                *entry += weight * one * other;
            }
        }
    }
    normal
}

/// Its inverse, from its eigenvectors; a direction that is not held is told instead.
fn inverse(normal: &[Vec<f64>], weak_m: f64) -> Result<Vec<Vec<f64>>, NotFixed> {
    let n = normal.len();
    let pairs = eigen(normal.to_vec());
    let least = 1.0 / (weak_m * weak_m);
    let loose: Vec<Vec<f64>> = pairs
        .iter()
        .filter(|(value, _)| value.is_nan() || *value < least)
        .map(|(_, vector)| vector.clone())
        .collect();
    if !loose.is_empty() {
        return Err(NotFixed::Loose(loose));
    }
    let mut inverse = vec![vec![0.0; n]; n];
    for (value, vector) in &pairs {
        for i in 0..n {
            for j in 0..n {
                inverse[i][j] += vector[i] * vector[j] / value;
            }
        }
    }
    Ok(inverse)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Distances to one unknown point.
    fn distances(from: &[[f64; 2]]) -> impl Fn(&[f64]) -> Vec<Row> {
        let from = from.to_vec();
        move |at: &[f64]| {
            from.iter()
                .map(|point| {
                    let (x, y) = (at[0] - point[0], at[1] - point[1]);
                    let computed = x.hypot(y);
                    Row {
                        computed,
                        slopes: vec![x / computed, y / computed],
                    }
                })
                .collect()
        }
    }

    #[test]
    fn a_published_trilateration() {
        // C. D. Ghilani, P. R. Wolf, Adjustment Computations, chapter 14, "Adjustment of Horizontal
        // Surveys: Trilateration", the example of three distances AU, BU, CU in feet. The stations
        // and distances are the book's; the figures below were worked out apart from this code
        // from the book's equations J = dx/l, dy/l and (J'J) X = J'K.
        let from = [[865.40, 4527.15], [2432.55, 2047.25], [2865.22, 27.15]];
        let observed = [6049.00, 4736.83, 5446.49].map(|value| Observed { value, sigma: 1.0 });
        let rows = distances(&from);
        let found = adjust(&[6531.0, 2100.0], &observed, 1e3, &rows).unwrap();
        let close = |found: f64, expected: f64| {
            assert!((found - expected).abs() < 1e-5, "{found} {expected}");
        };
        close(found.unknowns[0], 6_861.316_787_7);
        close(found.unknowns[1], 3_727.818_565_7);
        for (residual, expected) in found
            .residuals
            .iter()
            .zip([0.037_373, -0.076_793, 0.047_366])
        {
            assert!((residual.off_m - expected).abs() < 1e-5);
        }
        assert!((found.unit.unwrap() - 0.097_659).abs() < 1e-5);
        let normal = normal(&rows(&found.unknowns), &observed, 2);
        close(normal[0][0], 2.394_994_9);
        close(normal[0][1], 0.699_247_1);
        close(normal[1][1], 0.605_005_1);
        let deviation = |i: usize| found.unit.unwrap() * found.covariance[i][i].sqrt();
        assert!((deviation(0) - 0.077_526).abs() < 1e-5);
        assert!((deviation(1) - 0.154_249).abs() < 1e-5);
    }

    #[test]
    fn a_certified_regression() {
        // National Institute of Standards and Technology, Statistical Reference Datasets, linear
        // regression, "Norris" (calibration of ozone monitors): y = B0 + B1 x, with the certified
        // values of B0, B1, their standard deviations and the residual standard deviation.
        #[rustfmt::skip]
        let points = [
            (0.1, 0.2), (338.8, 337.4), (118.1, 118.2), (888.0, 884.6), (9.2, 10.1), (228.1, 226.5),
            (668.5, 666.3), (998.5, 996.3), (449.1, 448.6), (778.9, 777.0), (559.2, 558.2), (0.3, 0.4),
            (0.1, 0.6), (778.1, 775.5), (668.8, 666.9), (339.3, 338.0), (448.9, 447.5), (10.8, 11.6),
            (557.7, 556.0), (228.3, 228.1), (998.0, 995.8), (888.8, 887.6), (119.6, 120.2), (0.3, 0.3),
            (0.6, 0.3), (557.6, 556.8), (339.3, 339.1), (888.0, 887.2), (998.5, 999.0), (778.9, 779.0),
            (10.2, 11.1), (117.6, 118.3), (228.9, 229.2), (668.4, 669.1), (449.2, 448.9), (0.2, 0.5),
        ];
        let observed = points.map(|(y, _)| Observed {
            value: y,
            sigma: 1.0,
        });
        let rows = |at: &[f64]| {
            let row = |(_, x): (f64, f64)| Row {
                computed: at[0] + at[1] * x,
                slopes: vec![1.0, x],
            };
            points.map(row).to_vec()
        };
        let found = adjust(&[0.0, 1.0], &observed, 1e3, rows).unwrap();
        let unit = found.unit.unwrap();
        let deviation = |i: usize| unit * found.covariance[i][i].sqrt();
        for (found, certified) in [
            (found.unknowns[0], -0.262_323_073_774_029),
            (found.unknowns[1], 1.002_116_818_020_45),
            (deviation(0), 0.232_818_234_301_152),
            (deviation(1), 0.429_796_848_199_937e-3),
            (unit, 0.884_796_396_144_373),
        ] {
            let off = (found - certified).abs() / certified.abs();
            assert!(off < 1e-9, "{found} {certified}");
        }
    }

    #[test]
    fn a_weighted_mean() {
        // 10.0 with weight 1 and 10.3 with weight 4 (sigma 1/2): 10.24, its sigma 1 / sqrt(5).
        let observed = [(10.0, 1.0), (10.3, 0.5)].map(|(value, sigma)| Observed { value, sigma });
        let rows = |at: &[f64]| {
            vec![
                Row {
                    computed: at[0],
                    slopes: vec![1.0],
                };
                2
            ]
        };
        let found = adjust(&[0.0], &observed, 1e3, rows).unwrap();
        assert!((found.unknowns[0] - 10.24).abs() < 1e-12);
        assert!((found.covariance[0][0] - 0.2).abs() < 1e-12);
        // Redundancy numbers are 1 - weight / sum of weights: 0.8 and 0.2; they add up to the spare.
        assert!((found.residuals[0].checked - 0.8).abs() < 1e-12);
        assert!((found.residuals[1].checked - 0.2).abs() < 1e-12);
    }

    #[test]
    fn a_point_seen_along_one_line_is_not_fixed_across_it() {
        let from = [[0.0, 0.0], [-5.0, 0.0]];
        let observed = [3.0, 8.0].map(|value| Observed {
            value,
            sigma: 0.001,
        });
        let found = adjust(&[3.0, 0.0], &observed, 0.015, distances(&from));
        let Err(NotFixed::Loose(loose)) = found else {
            panic!("{found:?}");
        };
        assert_eq!(loose.len(), 1);
        assert!(loose[0][1].abs() > 0.999);
    }
}
