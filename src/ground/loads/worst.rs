//! How far may a figure go when several lengths may each be off?
//!
//! The figures meant here (loads, moments) rise or fall steadily with each length over the few
//! centimetres that it may be off. So the extremes lie at corners of the box of errors. Which
//! corner is told by which way the figure goes with each length alone, and then by turning over one
//! length after another there, as long as that makes it worse.

/// The least and the greatest of each of `K` figures over a box of `N` errors of half sizes
/// `half`. None as soon as the figures can't be worked out somewhere that is looked at.
pub(super) fn extremes<const N: usize, const K: usize>(
    half: &[f64; N],
    figures: impl Fn(&[f64; N]) -> Option<[f64; K]>,
) -> Option<[(f64, f64); K]> {
    let nominal = figures(&[0.0; N])?;
    let mut range = nominal.map(|value| (value, value));
    let widen = |range: &mut [(f64, f64); K], values: [f64; K]| {
        for (range, value) in range.iter_mut().zip(values) {
            *range = (range.0.min(value), range.1.max(value));
        }
    };
    // For each figure the corner at which it is greatest; the opposite one has its least.
    let mut corners = [[0.0; N]; K];
    for i in (0..N).filter(|&i| half[i] != 0.0) {
        let mut error = [0.0; N];
        error[i] = half[i];
        let above = figures(&error)?;
        error[i] = -half[i];
        let below = figures(&error)?;
        for k in 0..K {
            corners[k][i] = if above[k] >= below[k] {
                half[i]
            } else {
                -half[i]
            };
        }
        widen(&mut range, above);
        widen(&mut range, below);
    }
    // The ways from corner to corner meet again and again.
    let mut seen = Seen::new(half);
    for (k, corner) in corners.into_iter().enumerate() {
        for (start, sign) in [(corner, 1.0), (corner.map(|error| -error), -1.0)] {
            climb(start, half, &mut |errors| {
                let values = seen.at(errors, &figures, |values| widen(&mut range, values))?;
                Some(sign * values[k])
            })?;
        }
    }
    range
        .iter()
        .all(|(least, most)| least.is_finite() && most.is_finite())
        .then_some(range)
}

/// The figures at corners of the box that were looked at.
struct Seen<const N: usize, const K: usize> {
    /// The number of each error that may be off among those.
    bits: [Option<u32>; N],
    /// By the bits of the errors that are above nothing: which of `values`, counted from 1.
    which: Vec<u16>,
    values: Vec<[f64; K]>,
}

impl<const N: usize, const K: usize> Seen<N, K> {
    fn new(half: &[f64; N]) -> Self {
        let mut count = 0;
        let bits = half.map(|half| {
            (half != 0.0).then(|| {
                count += 1;
                count - 1
            })
        });
        Self {
            bits,
            which: vec![0; 1 << count],
            values: Vec::new(),
        }
    }

    /// The figures at a corner; `first` is told of those that were not looked at before.
    fn at(
        &mut self,
        corner: &[f64; N],
        figures: impl Fn(&[f64; N]) -> Option<[f64; K]>,
        first: impl FnOnce([f64; K]),
    ) -> Option<[f64; K]> {
        let above = corner.iter().zip(self.bits);
        let index = above.fold(0_usize, |index, (error, bit)| match bit {
            Some(bit) if *error > 0.0 => index | 1 << bit,
            _ => index,
        });
        let known = usize::from(self.which[index]);
        if let Some(values) = known.checked_sub(1).and_then(|at| self.values.get(at)) {
            return Some(*values);
        }
        let values = figures(corner)?;
        first(values);
        self.values.push(values);
        // Once there are more than can be counted, the rest is worked out anew.
        self.which[index] = u16::try_from(self.values.len()).unwrap_or(0);
        Some(values)
    }
}

/// Rounds of turning single errors over; a corner that nothing improves is reached sooner.
const ROUNDS: usize = 4;

/// From a corner to the one with the greatest figure that turning over one error at a time leads
/// to: which way a figure goes with a length may change with where the others are.
fn climb<const N: usize>(
    mut corner: [f64; N],
    half: &[f64; N],
    figure: &mut dyn FnMut(&[f64; N]) -> Option<f64>,
) -> Option<()> {
    let mut best = figure(&corner)?;
    for _ in 0..ROUNDS {
        let before = best;
        for i in (0..N).filter(|&i| half[i] != 0.0) {
            corner[i] = -corner[i];
            let value = figure(&corner)?;
            if value > best {
                best = value;
            } else {
                corner[i] = -corner[i];
            }
        }
        if best <= before {
            break;
        }
    }
    Some(())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_plane_has_its_extremes_at_two_corners() {
        let range = extremes(&[0.1, 0.2, 0.0], |[a, b, c]| {
            Some([1.0 + a - 2.0 * b + c, -a])
        });
        let [(low, high), (least, most)] = range.unwrap();
        assert!((low - 0.5).abs() < 1e-12 && (high - 1.5).abs() < 1e-12);
        assert!((least + 0.1).abs() < 1e-12 && (most - 0.1).abs() < 1e-12);
    }

    #[test]
    fn a_corner_that_only_two_errors_together_show_is_found() {
        // Alone b makes it less; with a at its end it makes it more.
        let range = extremes(&[1.0, 1.0], |[a, b]| {
            Some([3.0 * a - 0.5 * b + 2.0 * a * b])
        });
        assert_eq!(range, Some([(-5.5, 4.5)]));
    }

    #[test]
    fn what_is_no_number_has_no_extremes() {
        assert_eq!(extremes(&[0.1], |[a]| Some([a / 0.0 * 0.0])), None);
        assert_eq!(extremes(&[0.1], |[a]| (*a <= 0.0).then_some([*a])), None);
    }
}
