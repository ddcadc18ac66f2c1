//! The form: what to measure before buying, to fill in with a pencil.
//!
//! Made from the table of questions alone, in its order; the same on every run.

mod answers;
mod pages;
mod rows;
mod sketch;
mod sketches;
mod sketches_door;
mod sketches_lift;
mod sketches_vehicle;
mod table;
#[cfg(test)]
mod tests;

use super::sheet::{Paper, Sheet};
use crate::worksheet::{FORM_VERSION, sections};

/// What the form is called.
pub const TITLE: &str = "What to measure before you buy";

/// Every page of the form, in order.
#[must_use]
pub fn worksheet(paper: Paper) -> Vec<Sheet> {
    let [low, high] = pages::room(paper);
    let width = high.x - low.x;
    let sections = sections().iter();
    let blocks: Vec<rows::Block> = sections
        .flat_map(|section| rows::blocks(section, width))
        .collect();
    let count = pages::pages(&blocks, paper, 0).len();
    // How many they are is written on each.
    pages::pages(&blocks, paper, count)
}

/// Version and paper, as each page says them.
fn made_by(paper: Paper) -> String {
    format!(
        "Bayrise {} \u{b7} worksheet form {FORM_VERSION}, made without any input \u{b7} paper {} \u{b7} \
         `bayrise new --ask` takes the answers in this order",
        env!("CARGO_PKG_VERSION"),
        paper.name()
    )
}
