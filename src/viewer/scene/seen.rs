//! How is each solid seen now: whole, looked through or cut away, and lit in which state?

use std::collections::HashMap;

use super::cut_away::Mode;
use crate::clearance::probe::PairState;
use crate::panels::Desk;

/// In which state's colour a solid is lit.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub(super) enum Lit {
    /// Its pair was picked, and its margin holds.
    Picked,
    /// A margin is short.
    Tight,
    /// It touches something.
    Strikes,
}

/// How a solid is seen.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub(super) struct Seen {
    pub(super) mode: Mode,
    pub(super) lit: Option<Lit>,
}

impl Seen {
    /// What is lit is never cut away.
    pub(super) fn new(mode: Mode, lit: Option<Lit>) -> Self {
        let mode = match (mode, lit) {
            (Mode::Away, Some(_)) => Mode::Glassy,
            (mode, _) => mode,
        };
        Self { mode, lit }
    }
}

/// Every solid that is lit, by name: those that are tight or strike at the shown position, and
/// the picked pair.
pub(super) fn lit(desk: &Desk) -> HashMap<&str, Lit> {
    let mut lit: HashMap<&str, Lit> = HashMap::new();
    let mut put = |name, state| {
        let entry = lit.entry(name).or_insert(state);
        *entry = (*entry).max(state);
    };
    if let Some((moving, fixed)) = &desk.picked {
        put(moving.as_str(), Lit::Picked);
        put(fixed.as_str(), Lit::Picked);
    }
    // What does not stand here withholds the verdict, wherever the carriage is.
    let standing = desk.verdict.iter().flat_map(|found| &found.study.standing);
    for stands in standing.filter(|one| one.worst_m <= 0.0 || one.worst_m.is_nan()) {
        put(&stands.part, Lit::Strikes);
        put(&stands.other, Lit::Strikes);
    }
    for pair in desk.here.iter().flat_map(|here| &here.pairs) {
        let state = match pair.state {
            PairState::Clear | PairState::NotShown => continue,
            PairState::Tight => Lit::Tight,
            PairState::Strikes => Lit::Strikes,
        };
        put(&pair.moving, state);
        put(&pair.fixed, state);
    }
    lit
}
