//! How do things look, on a screen, in a picture or on paper?

pub mod climb;
pub mod dxf;
pub mod facets;
pub mod layout;
pub mod model;
pub mod outline;
pub mod page;
pub mod paint;
pub mod palette;
pub mod pdf;
pub mod sheet;
pub mod svg;
