//! In which order do the arms go in past each other?

use super::swing::Way;
use crate::bay::Corner;

/// A way for each arm, by [`Corner::index`], and their order where it matters.
pub(super) type Plan = ([Way; 4], Option<[Corner; 4]>);

/// A way past vehicle and posts, and which other arms it clears.
pub(super) struct Clear {
    pub(super) way: Way,
    pub(super) of_parked: [bool; 4],
    pub(super) of_placed: [bool; 4],
}

/// Ways and an order in which every arm goes in: those before it are in place, those after it
/// parked.
pub(super) fn plan(open: &[Vec<Clear>]) -> Option<Plan> {
    for order in orders() {
        let way_of = |position: usize| -> Option<Way> {
            let corner = order[position];
            let clears = |clear: &&Clear| {
                order.iter().enumerate().all(|(other, who)| {
                    let index = who.index();
                    match other.cmp(&position) {
                        std::cmp::Ordering::Less => clear.of_placed[index],
                        std::cmp::Ordering::Equal => true,
                        std::cmp::Ordering::Greater => clear.of_parked[index],
                    }
                })
            };
            let found = open.get(corner.index())?.iter().find(clears)?;
            Some(found.way)
        };
        let mut ways = [Way::InThenOut; 4];
        let all = (0..4).all(|position| match way_of(position) {
            Some(way) => {
                ways[order[position].index()] = way;
                true
            }
            None => false,
        });
        if all {
            let any_order = open.iter().zip(ways).all(|(open, way)| {
                open.iter().any(|clear| {
                    clear.way == way
                        && clear.of_parked.iter().all(|&one| one)
                        && clear.of_placed.iter().all(|&one| one)
                })
            });
            return Some((ways, (!any_order).then_some(order)));
        }
    }
    None
}

/// The 24 orders of four arms.
pub(super) fn orders() -> Vec<[Corner; 4]> {
    let mut found = Vec::with_capacity(24);
    for a in Corner::ALL {
        for b in Corner::ALL {
            for c in Corner::ALL {
                for d in Corner::ALL {
                    let order = [a, b, c, d];
                    let all = Corner::ALL.iter().all(|corner| order.contains(corner));
                    if all {
                        found.push(order);
                    }
                }
            }
        }
    }
    found
}
