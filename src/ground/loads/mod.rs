//! What does each pad carry, does the vehicle balance, and what when parts come out?
//!
//! The vehicle is a rigid body on four pads. [`statics`] shares a weight over them, [`Geometry`]
//! holds where everything lies and how far it may be off, `pads` works out the loads
//! with every ± against each pad, and `states` does so before and after parts are
//! taken out.

pub mod estimate;
mod figures;
mod geometry;
mod holds;
mod lead;
mod pads;
mod place;
mod removal;
mod section;
mod states;
pub mod statics;
#[cfg(test)]
mod tests;
mod unload;
mod worst;

use glam::DVec2;

pub use geometry::{Geometry, Moved, Stance};
pub(crate) use holds::balance_holds;
pub use pads::{PadLoad, Pads, PostLoad};
pub use place::GRAVITY;
pub use section::section;
pub use states::{State, States, states};

use crate::bay::Bay;

/// What the posts get from the raised vehicle. Forces in newtons, lengths in metres.
#[derive(Debug, Clone)]
pub struct PadLoads {
    /// By [`Corner::index`](crate::bay::Corner::index).
    pub pads: [PadLoad; 4],
    /// Mass of the vehicle, with cargo and without the parts taken out.
    pub mass_kg: f64,
    /// Where its weight acts, bay `x` and `y` as parked.
    pub cg_m: DVec2,
    /// The states that stand behind them: as given; where parts are taken out, before that and with
    /// some of them out; and with cargo taken off. Each with its pads.
    pub states: Vec<(Geometry, Pads)>,
}

impl PadLoads {
    /// From the states of a bay; none where the weight acts outside the pads' span in one that
    /// counts.
    #[must_use]
    pub fn of(states: &States) -> Option<Self> {
        let given = &states.as_given;
        let mut behind = vec![(given.geometry.clone(), given.pads?)];
        for state in states.before.iter().chain(&states.between) {
            behind.push((state.geometry.clone(), state.pads?));
        }
        // Cargo at which the vehicle would tip off when it is taken off stays on: said elsewhere.
        for state in &states.unloaded {
            if let Some(pads) = state.pads {
                behind.push((state.geometry.clone(), pads));
            }
        }
        Some(Self {
            pads: given.pads?.pads,
            mass_kg: given.mass_kg,
            cg_m: given.geometry.cg_m,
            states: behind,
        })
    }
}

/// The loads of a bay; none without axle loads, or where the weight acts outside the pads' span.
#[must_use]
pub fn pad_loads(bay: &Bay) -> Option<PadLoads> {
    PadLoads::of(&states(bay).ok()?)
}
