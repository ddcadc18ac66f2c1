//! How do things look, on a screen, in a picture or on paper?

pub mod palette;
