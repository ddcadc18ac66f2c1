//! Two bays side by side.

use bayrise::panels::Action;
use bayrise::panels::pair::{Pair, PairAction, Which, pad_height_m};

use super::desk;

#[test]
fn linked_carriages_bring_their_pads_to_the_same_height() {
    let mut pair = Pair::new(desk("short-columns"), desk("coupe-full-rise"));
    let heights = |pair: &Pair| {
        pair.desks
            .each_ref()
            .map(|desk| pad_height_m(desk).unwrap())
    };
    pair.apply(PairAction::Of(Which::Left, Action::ToLock(4)));
    let [left, right] = heights(&pair);
    assert!((left - right).abs() < 1e-9 && left > 0.3, "{left} {right}");
    pair.apply(PairAction::Of(Which::Right, Action::LockUp));
    let [now, right] = heights(&pair);
    assert!((now - right).abs() < 1e-9 && now > left, "{now} {right}");
    // Each to its own highest safe lock.
    pair.apply(PairAction::Of(Which::Left, Action::ToSafeLock));
    for desk in &pair.desks {
        let study = &desk.verdict.as_ref().unwrap().study;
        if let Some(lock) = study.highest_safe_lock {
            let travel = study.locks[lock - 1].travel_m;
            assert!((desk.rise.travel_m - travel).abs() < 1e-9);
        }
    }
    let before = heights(&pair)[1];
    pair.apply(PairAction::Link(false));
    pair.apply(PairAction::Of(Which::Left, Action::ToFloor));
    assert!(
        (heights(&pair)[1] - before).abs() < 1e-12,
        "not linked any more"
    );
}
