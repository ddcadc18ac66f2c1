//! The study: the moving solids against the fixed ones on the whole way up.

pub mod body;
pub mod climb;
pub mod findings;
pub mod gap;
pub mod pairs;
pub mod uncertainty;

pub use findings::*;
