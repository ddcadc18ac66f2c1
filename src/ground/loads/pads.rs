//! What does each pad carry, at least and at most?

use glam::DVec2;

use super::geometry::{Geometry, Moved, Stance};
use super::statics;
use crate::bay::Corner;

/// The load of one pad, newtons.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PadLoad {
    /// As parked, four equal springs under a rigid body.
    pub nominal_n: f64,
    /// The same at most, over everything that may be off: what the pad carries while all four
    /// share.
    pub shared_n: f64,
    /// At least: also where the body stands on three pads.
    pub least_n: f64,
    /// At most: also where the body stands on three pads.
    pub most_n: f64,
    /// Where it carries, bay `x` and `y` as parked, metres.
    pub at_m: DVec2,
}

/// What the two pads of one post carry together, newtons.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PostLoad {
    /// At most, over everything that may be off, while all four pads share.
    pub shared_n: f64,
    /// At most: also where the body stands on three pads.
    pub most_n: f64,
}

/// The loads of the four pads.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Pads {
    /// By [`Corner::index`].
    pub pads: [PadLoad; 4],
    /// Left, right.
    pub posts: [PostLoad; 2],
    /// The pad that four springs would have to pull down: it carries nothing.
    pub lifts: Option<Corner>,
    /// Without which pad the body may come to stand on the other three.
    pub may_hang: [bool; 4],
}

/// The loads of a weight on its pads; none where it acts outside their span.
#[must_use]
pub(super) fn pads(geometry: &Geometry) -> Option<Pads> {
    let weight = geometry.weight_n;
    let nominal = statics::share(geometry.pads_m, geometry.cg_m, weight)?;
    // The four pads, and the two of each post.
    let range_of = |stance: Stance| {
        geometry.range(false, stance, |moved: &Moved| {
            let [a, b, c, d] = moved.loads(stance, weight)?;
            Some([a, b, c, d, a + c, b + d])
        })
    };
    let springs = range_of(Stance::Springs)?;
    let mut posts_most = [springs[4].1, springs[5].1];
    let mut most: [f64; 4] =
        std::array::from_fn(|i| springs[i].1.max(nominal.springs[i]).min(weight));
    let mut least: [f64; 4] =
        std::array::from_fn(|i| springs[i].0.min(nominal.springs[i]).max(0.0));
    let mut may_hang = [false; 4];
    for hanging in 0..4 {
        if geometry.never_stands_without(hanging) {
            continue;
        }
        let range = range_of(Stance::Without(hanging));
        // Three that may come to lie in one line: nothing less than the whole weight is certain.
        let range = range.unwrap_or([(0.0, weight); 6]);
        may_hang[hanging] = (0..4).all(|i| i == hanging || range[i].1 >= 0.0);
        if may_hang[hanging] {
            for i in 0..4 {
                most[i] = most[i].max(range[i].1.min(weight));
                least[i] = least[i].min(range[i].0.max(0.0));
            }
            least[hanging] = 0.0;
            for (most, range) in posts_most.iter_mut().zip(&range[4..]) {
                *most = most.max(range.1.min(weight));
            }
        }
    }
    // Where a pad may lift off, the others carry more than four springs would have it.
    let all_share = springs[..4].iter().all(|range| range.0 >= 0.0);
    Some(Pads {
        pads: std::array::from_fn(|i| PadLoad {
            nominal_n: nominal.springs[i],
            shared_n: if all_share { springs[i].1 } else { most[i] },
            least_n: least[i],
            most_n: most[i],
            at_m: geometry.pads_m[i],
        }),
        posts: std::array::from_fn(|i| PostLoad {
            shared_n: if all_share {
                springs[4 + i].1
            } else {
                posts_most[i]
            },
            most_n: posts_most[i],
        }),
        lifts: nominal.lifts.map(|index| Corner::ALL[index]),
        may_hang,
    })
}
