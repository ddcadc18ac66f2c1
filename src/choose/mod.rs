//! Which lift, for which vehicles, in which garage, and what does it really cost?
//!
//! Many studies at once: [`matrix()`] studies every combination of a file of options, [`Cell`] keeps
//! of each what decides, [`bill`] what it costs as far as anyone has said, [`choice`](mod@choice)
//! which one to take, and [`inverse`] asks the other way round: how high the ceiling would have to
//! be, how tall the vehicle may be. Every answer is that of the one study there is; nothing here
//! works out a clearance of its own.

pub mod bill;
mod cell;
pub mod choice;
pub mod inverse;
mod matrix;
pub mod vary;

pub use cell::{Arms, Cell, Found, Outcome, Walking};
pub use matrix::{Asked, Made, Matrix, bays, matrix, studies};
