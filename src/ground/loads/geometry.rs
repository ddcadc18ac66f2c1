//! Where do pads and weight lie, and how far may each be off?

use glam::DVec2;

use super::statics;
use super::worst::extremes;
use crate::solids::ParkingError;

/// How many lengths may each be off: two for each pad, two for the weight, three of parking.
const ERRORS: usize = 13;

/// Twice an area below which it is rounding, square metres.
const ROUNDING_M2: f64 = 1e-9;

/// Which of them is the yaw of parking.
const YAW: usize = ERRORS - 1;

/// The pads under their lift points and the weight on them, in plan as parked, bay `x` and `y`,
/// with how far each may be off. Metres, newtons.
#[derive(Debug, Clone, PartialEq)]
pub struct Geometry {
    /// Where each pad carries, by [`Corner::index`](crate::bay::Corner::index).
    pub pads_m: [DVec2; 4],
    /// How far off that each may be, either way, across and along.
    pub pad_off_m: [DVec2; 4],
    /// Where the weight acts.
    pub cg_m: DVec2,
    /// How far off that it may be, either way.
    pub cg_off_m: DVec2,
    /// The weight.
    pub weight_n: f64,
    /// The place about which the vehicle yaws when it is parked.
    pub pivot_m: DVec2,
    /// Half sizes of the parking box, with what is not known of the places that are lined up.
    pub parking: ParkingError,
}

/// Four pads that share, or the three that are left without one.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Stance {
    /// Four equal springs that can pull as well: what three pads carry is another stance.
    Springs,
    /// All pads but this one.
    Without(usize),
}

/// Everything moved by one set of errors.
#[derive(Debug, Clone, Copy)]
pub struct Moved {
    /// The pads, each off by its own error.
    pub pads_m: [DVec2; 4],
    /// Where the weight acts.
    pub cg_m: DVec2,
}

impl Moved {
    /// The loads of a stance, newtons.
    #[must_use]
    pub fn loads(&self, stance: Stance, weight_n: f64) -> Option<[f64; 4]> {
        match stance {
            Stance::Springs => statics::springs(self.pads_m, self.cg_m, weight_n),
            Stance::Without(hanging) => {
                let at = |i: usize| if i < hanging { i } else { i + 1 };
                let three = [0, 1, 2].map(|i| self.pads_m[at(i)]);
                let carried = statics::three(three, self.cg_m, weight_n)?;
                let mut loads = [0.0; 4];
                for (i, load) in carried.into_iter().enumerate() {
                    loads[at(i)] = load;
                }
                Some(loads)
            }
        }
    }
}

impl Geometry {
    /// Everything as one set of errors has it; the last of them is the yaw, whose sine and cosine
    /// are given.
    fn moved(&self, errors: &[f64; ERRORS], (sin, cos): (f64, f64)) -> Moved {
        let [.., across, along, _] = *errors;
        let park = |place: DVec2| {
            let from = place - self.pivot_m;
            let turned = DVec2::new(cos * from.x - sin * from.y, sin * from.x + cos * from.y);
            self.pivot_m + turned + DVec2::new(across, along)
        };
        Moved {
            pads_m: std::array::from_fn(|i| {
                park(self.pads_m[i] + DVec2::new(errors[2 * i], errors[2 * i + 1]))
            }),
            cg_m: park(self.cg_m + DVec2::new(errors[8], errors[9])),
        }
    }

    /// Everything as errors have it that are given as shares of what each may be off, -1 to 1.
    #[cfg(test)]
    pub(crate) fn moved_by(&self, shares: [f64; ERRORS]) -> Moved {
        let half = self.half_sizes(true, Stance::Springs);
        let errors: [f64; ERRORS] = std::array::from_fn(|i| shares[i] * half[i]);
        self.moved(&errors, errors[YAW].sin_cos())
    }

    /// How far each length may be off, either way; nothing for that of a pad that carries nothing.
    fn half_sizes(&self, parked: bool, stance: Stance) -> [f64; ERRORS] {
        let mut half = [0.0; ERRORS];
        for (i, off) in self.pad_off_m.into_iter().enumerate() {
            if stance != Stance::Without(i) {
                (half[2 * i], half[2 * i + 1]) = (off.x, off.y);
            }
        }
        (half[8], half[9]) = (self.cg_off_m.x, self.cg_off_m.y);
        if parked {
            half[10] = self.parking.across_m;
            half[11] = self.parking.along_m;
            half[12] = self.parking.yaw_rad;
        }
        half
    }

    /// The least and the greatest of each of `K` figures over everything that may be off; over
    /// parking only where `parked` (where the pads carry on the vehicle does not hang on it). Of a
    /// pad that the stance goes without, the figures may ask nothing.
    pub fn range<const K: usize>(
        &self,
        parked: bool,
        stance: Stance,
        figures: impl Fn(&Moved) -> Option<[f64; K]>,
    ) -> Option<[(f64, f64); K]> {
        let half = self.half_sizes(parked, stance);
        // No other yaw is looked at than none and these two.
        let (sin, cos) = half[YAW].sin_cos();
        extremes(&half, |errors| {
            let yaw = errors[YAW];
            let turned = if yaw > 0.0 {
                (sin, cos)
            } else if yaw < 0.0 {
                (-sin, cos)
            } else {
                yaw.sin_cos()
            };
            figures(&self.moved(errors, turned))
        })
    }

    /// True only where one of the other three pads would have to pull, whatever is off: the weight
    /// acts beyond the line of the other two everywhere. By intervals, so that no world is missed;
    /// where parking is off all goes together.
    pub(super) fn never_stands_without(&self, hanging: usize) -> bool {
        let three: [usize; 3] = std::array::from_fn(|i| if i < hanging { i } else { i + 1 });
        let turn = |a: (DVec2, DVec2), b: (DVec2, DVec2)| {
            // The product of two ways, each known to within its second: middle and half width.
            let ((a, a_off), (b, b_off)) = (a, b);
            let off = |one: f64, one_off: f64, other: f64, other_off: f64| {
                one.abs() * other_off + other.abs() * one_off + one_off * other_off
            };
            let width = off(a.x, a_off.x, b.y, b_off.y) + off(a.y, a_off.y, b.x, b_off.x);
            (a.perp_dot(b), width)
        };
        let way = |from: (DVec2, DVec2), to: (DVec2, DVec2)| (to.0 - from.0, to.1 + from.1);
        let pad = |i: usize| (self.pads_m[three[i]], self.pad_off_m[three[i]]);
        let cg = (self.cg_m, self.cg_off_m);
        let (area, area_off) = turn(way(pad(0), pad(1)), way(pad(0), pad(2)));
        // Three that may come to lie in one line are looked at.
        if area.is_nan() || area.abs() <= area_off {
            return false;
        }
        (0..3).any(|i| {
            let (share, off) = turn(way(cg, pad((i + 1) % 3)), way(cg, pad((i + 2) % 3)));
            share * area.signum() + off < -ROUNDING_M2
        })
    }

    /// How far the weight acts inside the pads' span at worst, metres; negative outside.
    ///
    /// No edge comes nearer to the weight than by what both may be off.
    #[must_use]
    pub fn inside_m(&self) -> f64 {
        let pads = self.pad_off_m.map(DVec2::length).into_iter();
        let off = self.cg_off_m.length() + pads.fold(0.0, f64::max);
        statics::inside_m(self.pads_m, self.cg_m) - off
    }

    /// Where the weight acts over the parking box: the least and the greatest bay `x` and `y`.
    #[must_use]
    pub fn weight_range(&self) -> Option<[(f64, f64); 2]> {
        let of_the_weight = Self {
            pad_off_m: [DVec2::ZERO; 4],
            ..self.clone()
        };
        of_the_weight.range(true, Stance::Springs, |moved| Some(moved.cg_m.to_array()))
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    proptest! {
        /// In no world drawn from what may be off do the three carry all the weight.
        #[test]
        fn what_never_stands_without_a_pad_does_not_in_any_world(
            places in proptest::array::uniform4((-0.1..0.1_f64, -0.3..0.3_f64)),
            off in 0.0..0.08_f64,
            cg in (-0.3..0.3_f64, -0.6..0.6_f64),
            worlds in proptest::collection::vec(proptest::array::uniform13(-1.0..=1.0_f64), 40),
        ) {
            let corners = [(-0.5, 0.8), (0.5, 0.8), (-0.5, -0.8), (0.5, -0.8)];
            let geometry = Geometry {
                pads_m: std::array::from_fn(|i| {
                    DVec2::from(corners[i]) + DVec2::from(places[i])
                }),
                pad_off_m: [DVec2::splat(off); 4],
                cg_m: DVec2::from(cg),
                cg_off_m: DVec2::new(off, 2.0 * off),
                weight_n: 1e4,
                pivot_m: DVec2::ZERO,
                parking: ParkingError { across_m: 0.05, along_m: 0.05, yaw_rad: 0.02 },
            };
            for hanging in (0..4).filter(|&pad| geometry.never_stands_without(pad)) {
                for world in worlds.iter().chain([&[0.0; ERRORS]]) {
                    let moved = geometry.moved_by(*world);
                    let loads = moved.loads(Stance::Without(hanging), geometry.weight_n);
                    let pulls = loads.is_some_and(|loads| loads.iter().any(|load| *load < 0.0));
                    prop_assert!(pulls, "without {hanging}: {loads:?}");
                }
            }
        }
    }

    #[test]
    fn a_weight_well_off_the_diagonal_never_stands_on_the_far_three() {
        let geometry = |x: f64| Geometry {
            pads_m: [(-0.5, 0.8), (0.5, 0.8), (-0.5, -0.8), (0.5, -0.8)].map(DVec2::from),
            pad_off_m: [DVec2::splat(0.01); 4],
            cg_m: DVec2::new(x, 0.1),
            cg_off_m: DVec2::splat(0.01),
            weight_n: 1e4,
            pivot_m: DVec2::ZERO,
            parking: ParkingError::default(),
        };
        // Without the front left one it would have to act right of the line from front right to rear
        // left, which passes x = 0.0625 at y = 0.1.
        assert!(geometry(-0.2).never_stands_without(0));
        assert!(!geometry(0.2).never_stands_without(0));
        assert!(
            !geometry(0.06).never_stands_without(0),
            "within what is off"
        );
    }
}
