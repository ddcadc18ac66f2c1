//! How do things look, on a screen, in a picture or on paper?

pub mod card;
pub mod dxf;
mod flow;
pub mod layout;
#[cfg(test)]
mod looked_over;
pub mod outline;
pub mod pages;
pub mod palette;
pub mod pdf;
pub mod plan_page;
pub mod png;
pub mod record;
pub mod sheet;
pub mod svg;
pub mod worksheet;
