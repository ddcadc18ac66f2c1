//! How do things look, on a screen, in a picture or on paper?

mod ahead;
pub mod card;
pub mod climb;
pub mod dxf;
pub mod facets;
mod flow;
pub mod layout;
#[cfg(test)]
mod looked_over;
pub mod model;
pub mod outline;
pub mod page;
pub mod pages;
pub mod paint;
pub mod palette;
pub mod pdf;
pub mod plan_page;
pub mod png;
pub mod record;
pub mod sheet;
pub mod svg;
pub mod worksheet;
