//! How far may a figure go when several lengths may each be off?
//!
//! The figures meant here (loads, moments) rise or fall steadily with each length over the few
//! centimetres that it may be off. So the extremes lie at corners of the box of errors. Which
//! corner is told by which way the figure goes with each length alone, and then by turning over one
//! length after another there, as long as that makes it worse.

use std::cell::Cell;

thread_local! {
    /// Room for [`Corners::which`], which is larger than what is written of it.
    static WHICH: Cell<Vec<u16>> = const { Cell::new(Vec::new()) };
}

/// The least and the greatest of each of `K` figures over a box of `N` errors of half sizes
/// `half`. None as soon as the figures can't be worked out somewhere that is looked at.
pub(super) fn extremes<const N: usize, const K: usize>(
    half: &[f64; N],
    figures: impl Fn(&[f64; N]) -> Option<[f64; K]>,
) -> Option<[(f64, f64); K]> {
    let nominal = figures(&[0.0; N])?;
    let may_be_off: Vec<usize> = (0..N).filter(|&i| half[i] != 0.0).collect();
    let mut which = WHICH.take();
    let corners_in_all = 1 << may_be_off.len();
    if which.len() < corners_in_all {
        which.resize(corners_in_all, 0);
    }
    let mut corners = Corners {
        half,
        figures: &figures,
        range: nominal.map(|value| (value, value)),
        which,
        seen: Vec::with_capacity(SEEN),
        may_be_off,
    };
    let found = corners.extremes();
    WHICH.set(corners.which);
    found
}

/// Corners that are looked at, about, so that room is made for them once.
const SEEN: usize = 256;

/// Rounds of turning single errors over; a corner that nothing improves is reached sooner.
const ROUNDS: usize = 4;

/// The corners of a box of errors, each a number: the bit of an error is set where that is above
/// nothing.
struct Corners<'a, F, const N: usize, const K: usize> {
    half: &'a [f64; N],
    figures: &'a F,
    /// Which errors have a bit, in the order of the bits.
    may_be_off: Vec<usize>,
    /// The least and the greatest figures that were met.
    range: [(f64, f64); K],
    /// For each corner that was looked at where it stands in `seen`: the ways from corner to corner meet
    /// again and again. For any other it may hold anything.
    which: Vec<u16>,
    seen: Vec<(usize, [f64; K])>,
}

impl<F: Fn(&[f64; N]) -> Option<[f64; K]>, const N: usize, const K: usize> Corners<'_, F, N, K> {
    fn extremes(&mut self) -> Option<[(f64, f64); K]> {
        // For each figure the corner at which it is greatest; the opposite one has its least.
        let mut greatest = [0_usize; K];
        for bit in 0..self.may_be_off.len() {
            let [below, above] = self.alone(bit)?;
            for k in 0..K {
                greatest[k] |= usize::from(above[k] >= below[k]) << bit;
            }
        }
        let opposite = (1 << self.may_be_off.len()) - 1;
        for (k, corner) in greatest.into_iter().enumerate() {
            self.climb(corner, k, 1.0)?;
            self.climb(corner ^ opposite, k, -1.0)?;
        }
        self.range
            .iter()
            .all(|(least, most)| least.is_finite() && most.is_finite())
            .then_some(self.range)
    }

    fn look(&mut self, errors: &[f64; N]) -> Option<[f64; K]> {
        let values = (self.figures)(errors)?;
        for (range, value) in self.range.iter_mut().zip(values) {
            *range = (range.0.min(value), range.1.max(value));
        }
        Some(values)
    }

    /// The figures where one error alone is below nothing, and where it is above.
    fn alone(&mut self, bit: usize) -> Option<[[f64; K]; 2]> {
        let at = self.may_be_off[bit];
        let mut errors = [0.0; N];
        errors[at] = -self.half[at];
        let below = self.look(&errors)?;
        errors[at] = self.half[at];
        Some([below, self.look(&errors)?])
    }

    /// One of the figures at a corner.
    fn at(&mut self, corner: usize, figure: usize) -> Option<f64> {
        match self.seen.get(usize::from(self.which[corner])) {
            Some((which, values)) if *which == corner => Some(values[figure]),
            _ => self.first_look(corner).map(|values| values[figure]),
        }
    }

    fn first_look(&mut self, corner: usize) -> Option<[f64; K]> {
        let mut errors = [0.0; N];
        for (bit, &at) in self.may_be_off.iter().enumerate() {
            let is_above = corner >> bit & 1 == 1;
            errors[at] = if is_above {
                self.half[at]
            } else {
                -self.half[at]
            };
        }
        let values = self.look(&errors)?;
        // Were there more than can be counted, the rest would be worked out each time.
        if let Ok(at) = u16::try_from(self.seen.len()) {
            self.which[corner] = at;
            self.seen.push((corner, values));
        }
        Some(values)
    }

    /// From a corner to the one with the greatest figure that turning over one error at a time leads
    /// to: which way a figure goes with a length may change with where the others are.
    fn climb(&mut self, mut corner: usize, figure: usize, sign: f64) -> Option<()> {
        let mut best = sign * self.at(corner, figure)?;
        let bits = self.may_be_off.len();
        // How many errors in a row were turned over for nothing: after all of them all is known.
        let mut in_vain = 0;
        for bit in (0..ROUNDS).flat_map(|_| 0..bits) {
            if in_vain == bits {
                break;
            }
            let turned = corner ^ 1 << bit;
            let value = sign * self.at(turned, figure)?;
            in_vain += 1;
            if value > best {
                (best, corner, in_vain) = (value, turned, 1);
            }
        }
        Some(())
    }
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
