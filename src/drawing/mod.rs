//! How do things look, on a screen, in a picture or on paper?

pub mod dxf;
pub mod layout;
pub mod outline;
pub mod palette;
pub mod pdf;
pub mod plan_page;
pub mod sheet;
pub mod svg;
pub mod worksheet;
