//! How far may a figure go when several lengths may each be off?
//!
//! The figures meant here (loads, moments) rise or fall steadily with each length over the few
//! centimetres that it may be off. So the extremes lie at corners of the box of errors, and which
//! corner is told by which way the figure goes with each length alone.

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
    for corner in corners {
        widen(&mut range, figures(&corner)?);
        widen(&mut range, figures(&corner.map(|error| -error))?);
    }
    range
        .iter()
        .all(|(least, most)| least.is_finite() && most.is_finite())
        .then_some(range)
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
    fn what_is_no_number_has_no_extremes() {
        assert_eq!(extremes(&[0.1], |[a]| Some([a / 0.0 * 0.0])), None);
        assert_eq!(extremes(&[0.1], |[a]| (*a <= 0.0).then_some([*a])), None);
    }
}
