//! Typed quantities: what people type, and what a tape shows.

mod kind;
mod parse;
mod quantity;
mod show;
mod spelling;

pub use kind::Kind;
pub use parse::{UnitError, parse, parse_angle, parse_length, parse_mass};
pub use quantity::*;
pub use show::{
    Rounding, both, decimal_inches, feet_inches, length, millimetres, plus_minus, show_angle,
    show_mass, show_quantity,
};
