//! How are four pads set with what the lift has, so that the body stands level?

use crate::bay::Corner;

/// Rounding of the arithmetic, metres.
const ROUNDING_M: f64 = 1e-9;
/// Adapters looked at, per pad; every stack of them is tried.
const MOST_ADAPTERS: usize = 8;

/// What each pad may be raised with, metres.
#[derive(Debug, Clone, PartialEq)]
pub struct Kit {
    screw_m: f64,
    /// Every stack with its adapters, those of fewest pieces first and of these the tallest first.
    stacks: Vec<(f64, Vec<f64>)>,
}

/// How one pad is set.
#[derive(Debug, Clone, PartialEq)]
pub struct PadSet {
    /// What it is raised above its lowest height, metres.
    pub raise_m: f64,
    /// The adapters on it, metres.
    pub adapters_m: Vec<f64>,
    /// How far its screw is turned out, metres.
    pub screw_m: f64,
}

/// The pads of a level body, by [`Corner::index`], or what is in the way of it.
#[derive(Debug, Clone, PartialEq)]
pub enum Level {
    /// How each pad is set.
    Sets(Box<[PadSet; 4]>),
    /// No stack and screw makes this pad's height: what it must be raised.
    Lacks {
        /// Which.
        corner: Corner,
        /// By how much it must be raised.
        raise_m: f64,
    },
    /// Set so, this pad would not go under its lift point any more.
    NoRoom {
        /// Which.
        corner: Corner,
        /// By how much it would stand too high.
        excess_m: f64,
    },
}

impl Kit {
    /// A screw's travel and the adapters there are for each pad.
    #[must_use]
    pub fn new(screw_m: f64, adapters_m: &[f64]) -> Self {
        let adapters = &adapters_m[..adapters_m.len().min(MOST_ADAPTERS)];
        let mut stacks: Vec<(f64, Vec<f64>)> = (0..1_usize << adapters.len())
            .map(|chosen| {
                let stack: Vec<f64> = adapters
                    .iter()
                    .enumerate()
                    .filter(|(bit, _)| chosen >> bit & 1 == 1)
                    .map(|(_, &height)| height)
                    .collect();
                (stack.iter().sum(), stack)
            })
            .collect();
        stacks.sort_by(|a, b| {
            let pieces = a.1.len().cmp(&b.1.len());
            pieces.then(b.0.total_cmp(&a.0))
        });
        Self { screw_m, stacks }
    }

    /// How a pad is raised by so much, with as few adapters as will do; none when it can't be.
    #[must_use]
    pub fn set(&self, raise_m: f64) -> Option<PadSet> {
        self.stacks.iter().find_map(|(height, stack)| {
            let screw = raise_m - height;
            (-ROUNDING_M..=self.screw_m + ROUNDING_M)
                .contains(&screw)
                .then(|| PadSet {
                    raise_m,
                    adapters_m: stack.clone(),
                    screw_m: screw.max(0.0),
                })
        })
    }

    /// The lowest setting of four pads on which a body stands level whose lift points are at these
    /// heights above its own ground, no pad raised by more than `most_m`.
    ///
    /// Level means that each pad is as much higher than another as its lift point is. What all four
    /// have in common is free: it starts at nothing, and grows to the next height at which some pad
    /// takes another stack.
    #[must_use]
    pub fn level(&self, points_m: [f64; 4], most_m: [f64; 4]) -> Level {
        let least = points_m.into_iter().fold(f64::INFINITY, f64::min);
        let above = points_m.map(|point| point - least);
        let mut commons = vec![0.0];
        for (height, _) in &self.stacks {
            commons.extend(
                above
                    .map(|above| height - above)
                    .into_iter()
                    .filter(|&c| c > 0.0),
            );
        }
        commons.sort_by(f64::total_cmp);
        let sets = commons.into_iter().find_map(|common| {
            let [a, b, c, d] = above.map(|above| self.set(above + common));
            Some([a?, b?, c?, d?])
        });
        let Some(sets) = sets else {
            let lacks = |corner: &Corner| self.set(above[corner.index()]).is_none();
            let corner = Corner::ALL
                .into_iter()
                .find(lacks)
                .unwrap_or(Corner::FrontLeft);
            return Level::Lacks {
                corner,
                raise_m: above[corner.index()],
            };
        };
        for corner in Corner::ALL {
            let excess_m = sets[corner.index()].raise_m - most_m[corner.index()];
            if excess_m.is_nan() || excess_m > 0.0 {
                return Level::NoRoom { corner, excess_m };
            }
        }
        Level::Sets(Box::new(sets))
    }
}

/// How far the pads are from setting the body level: the highest over its lift point against the
/// lowest, metres.
#[must_use]
pub fn out_of_level_m(raises_m: [f64; 4], points_m: [f64; 4]) -> f64 {
    let over: [f64; 4] = std::array::from_fn(|i| raises_m[i] - points_m[i]);
    let (low, high) = over
        .into_iter()
        .fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), one| {
            (low.min(one), high.max(one))
        });
    let found = high - low;
    if found <= ROUNDING_M { 0.0 } else { found }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    const ANY: [f64; 4] = [9.0; 4];

    #[test]
    fn equal_points_need_nothing() {
        let kit = Kit::new(0.075, &[0.08, 0.13]);
        let Level::Sets(sets) = kit.level([0.2; 4], ANY) else {
            panic!("nothing is needed");
        };
        for set in sets.iter() {
            assert!(set.adapters_m.is_empty() && set.screw_m <= 0.0);
        }
    }

    #[test]
    fn a_high_frame_at_the_rear_takes_an_adapter_there() {
        // 100 mm higher at the rear: an 80 mm adapter and 20 mm of screw.
        let kit = Kit::new(0.060, &[0.08, 0.13]);
        let Level::Sets(sets) = kit.level([0.2, 0.2, 0.3, 0.3], ANY) else {
            panic!("80 mm and 20 mm make it");
        };
        assert!(sets[0].adapters_m.is_empty() && sets[0].screw_m <= 0.0);
        assert_eq!(sets[2].adapters_m, [0.08]);
        assert!((sets[2].screw_m - 0.02).abs() < 1e-12);
    }

    #[test]
    fn a_gap_between_stacks_is_bridged_by_raising_all_four() {
        // Screw 0 to 20 mm, an adapter of 50 mm: 30 mm alone can't be made. With 20 mm in common
        // the higher ones stand at 50 mm.
        let kit = Kit::new(0.020, &[0.05]);
        let Level::Sets(sets) = kit.level([0.2, 0.2, 0.23, 0.23], ANY) else {
            panic!("20 mm in common make it");
        };
        assert!((sets[0].raise_m - 0.02).abs() < 1e-12 && sets[0].adapters_m.is_empty());
        assert_eq!(sets[3].adapters_m, [0.05]);
    }

    #[test]
    fn what_is_missing_or_has_no_room_is_said() {
        let kit = Kit::new(0.020, &[]);
        let found = kit.level([0.2, 0.2, 0.2, 0.3], ANY);
        let Level::Lacks { corner, raise_m } = found else {
            panic!("{found:?}");
        };
        assert_eq!(corner, Corner::RearRight);
        assert!((raise_m - 0.1).abs() < 1e-12);
        let kit = Kit::new(0.2, &[]);
        let found = kit.level([0.2, 0.2, 0.2, 0.3], [0.09; 4]);
        let Level::NoRoom { corner, excess_m } = found else {
            panic!("{found:?}");
        };
        assert_eq!(corner, Corner::RearRight);
        assert!((excess_m - 0.01).abs() < 1e-12);
        // A height that is no number is no set.
        assert!(!matches!(
            kit.level([0.2, f64::NAN, 0.2, 0.2], ANY),
            Level::Sets(_)
        ));
    }

    proptest! {
        #[test]
        fn a_set_is_level_and_made_of_what_there_is(
            points in proptest::array::uniform4(0.1..0.5_f64),
            screw in 0.0..0.1_f64,
            adapters in proptest::collection::vec(0.02..0.25_f64, 0..4),
        ) {
            let kit = Kit::new(screw, &adapters);
            match kit.level(points, ANY) {
                Level::Sets(sets) => {
                    let raises = sets.clone().map(|set| set.raise_m);
                    prop_assert!(out_of_level_m(raises, points) < 1e-8);
                    for set in sets.iter() {
                        let stack: f64 = set.adapters_m.iter().sum();
                        prop_assert!((stack + set.screw_m - set.raise_m).abs() < 2e-9);
                        prop_assert!(set.screw_m >= 0.0 && set.screw_m <= screw + 1e-8);
                        prop_assert!(set.adapters_m.iter().all(|one| adapters.contains(one)));
                    }
                }
                Level::Lacks { corner, raise_m } => {
                    prop_assert!(kit.set(raise_m).is_none(), "{corner:?}");
                }
                Level::NoRoom { .. } => prop_assert!(false, "there is room"),
            }
        }
    }
}
