//! How do things look, on a screen, in a picture or on paper?

pub mod layout;
pub mod outline;
pub mod palette;
pub mod sheet;
pub mod svg;
