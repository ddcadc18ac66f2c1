//! The study: the moving solids against the fixed ones on the whole way up.
//!
//! In reading order: [`gap`] and [`climb`] measure one pair; [`body`] and [`uncertainty`] say what
//! is measured; [`pairs`] says which pairs and with which margin; [`movers`] and [`prepare`] build
//! the lists; [`sweep`] runs them; [`locks`] and [`marks`] turn breaches into states and marks;
//! [`study()`] puts the findings together, and a [`Probe`] answers for one shown position.

mod access;
pub(crate) mod arm_bodies;
pub mod body;
mod boxes;
pub(crate) mod carried;
pub mod climb;
mod door_off;
mod driving_in;
pub mod estimate;
mod feet;
pub mod findings;
mod fixed_off;
pub mod gap;
mod heights;
pub mod leaning;
mod lock_table;
pub mod locks;
pub mod marks;
pub mod movers;
mod nearness;
mod opening;
mod pair_table;
pub mod pairs;
mod parked;
pub(crate) mod part_levers;
pub mod prepare;
pub mod probe;
pub mod reach;
mod standing;
mod study;
pub mod sweep;
pub mod uncertainty;
mod unmeasured;
mod verdict;
mod withhold;

pub use access::{Access, DoorRoom, LEAVE_M, ShiftFound, Shut, Swing, Turned, Way, WayKind};
pub use findings::*;
pub use heights::{HeightSearch, Heights, heights};
pub use nearness::nearest_to;
pub use prepare::overtravel_m;
pub use probe::{Here, HerePair, HereState, MOST_PAIRS, PairState, Probe, Stretch};
pub use study::{StudyError, study, study_on};
pub use verdict::{Fixtures, LockHeight, Verdict, verdict_on};
