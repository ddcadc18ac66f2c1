//! What is the least room of each pair while a lock is set and left?

use crate::clearance::NearFinding;
use crate::clearance::probe::{HerePair, PairState};

/// Takes over what is worse higher up; the points stay those of the shown position.
pub(super) fn take_worse(pairs: &mut Vec<HerePair>, above: Vec<HerePair>) {
    for other in above {
        match pairs.iter_mut().find(|pair| is_same(pair, &other)) {
            Some(pair) => {
                // What is no number is less than any.
                if other.worst_m.is_nan() || other.worst_m < pair.worst_m {
                    pair.worst_m = other.worst_m;
                }
                pair.state = worse(pair.state, other.state);
            }
            None => pairs.push(other),
        }
    }
    sort(pairs);
}

/// Takes over the least that the study found anywhere on that climb.
pub(super) fn take_least(pairs: &mut [HerePair], near: &NearFinding) {
    let of_the_study = pairs
        .iter_mut()
        .find(|pair| pair.moving == near.moving && pair.fixed == near.fixed);
    let Some(pair) = of_the_study else { return };
    if near.clearance_m.is_nan() || near.clearance_m < pair.worst_m {
        pair.worst_m = near.clearance_m;
        if near.clearance_m.is_nan() || near.clearance_m < near.margin_m {
            pair.state = worse(pair.state, PairState::Tight);
        }
    }
    sort(pairs);
}

fn is_same(a: &HerePair, b: &HerePair) -> bool {
    a.moving == b.moving && a.fixed == b.fixed && a.door == b.door
}

const fn worse(a: PairState, b: PairState) -> PairState {
    match (a, b) {
        (PairState::Strikes, _) | (_, PairState::Strikes) => PairState::Strikes,
        (PairState::Tight, _) | (_, PairState::Tight) => PairState::Tight,
        (PairState::NotShown, _) | (_, PairState::NotShown) => PairState::NotShown,
        (PairState::Clear, PairState::Clear) => PairState::Clear,
    }
}

/// Least room over its margin first.
fn sort(pairs: &mut [HerePair]) {
    pairs.sort_by(|a, b| (a.worst_m - a.margin_m).total_cmp(&(b.worst_m - b.margin_m)));
}
