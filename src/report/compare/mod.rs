//! What does a person, or a program, read of a comparison?
//!
//! Text, CSV and JSON of a finished matrix. Nothing here works out a clearance, a load or a price;
//! what is chosen is the order of the rows, which of them are shown, and the words.

mod costs;
mod csv;
mod detail;
mod json;
mod price_says;
mod row;
mod says;
mod shown;
mod text;
mod turned;
mod words;

pub use csv::csv;
pub use detail::{BILL_NOTE, Detail};
pub use json::{CompareReport, schema};
pub use row::{Row, Stands};
pub use says::says;
pub use shown::{Filter, FilterError, Sort, notes, shown, unknown_name};
pub use text::render;
pub use turned::Turned;

use crate::bayfile::options::Options;
use crate::choose::{Cell, Matrix};
use crate::ground::ForDay;

/// Everything a presenter of a comparison is given.
#[derive(Debug, Clone, Copy)]
pub struct Comparison<'a> {
    /// What was compared.
    pub options: &'a Options,
    /// What came of it, all of it.
    pub matrix: &'a Matrix,
    /// The cells to show, in their order.
    pub shown: &'a [&'a Cell],
    /// Sixteen hex digits that stand for the texts that went in.
    pub fingerprint: &'a str,
    /// The day that it is for.
    pub day: ForDay,
}
