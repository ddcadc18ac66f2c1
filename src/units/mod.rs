//! Typed quantities: what people type, and what a tape shows.

mod quantity;

pub use quantity::*;
