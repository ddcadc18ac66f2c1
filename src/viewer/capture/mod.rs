//! How does a picture come to be without a window?
//!
//! A [`Studio`] is the engine with the scene of the window and an image in place of the screen.
//! Every picture is of a desk as it stands, complete: it waits for everything it shows.

mod beside;
mod encode;
mod fence;
mod make;
mod overlay;
mod studio;

pub use beside::beside;
pub use encode::{Animation, png};
pub use make::make;
pub use studio::Studio;

/// A finished picture.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Pixels {
    /// Width, pixels.
    pub width: u32,
    /// Height, pixels.
    pub height: u32,
    /// Red, green, blue, alpha in sRGB; rows from the top.
    pub rgba: Vec<u8>,
}

impl Pixels {
    /// Red, green and blue at a place from the left and the top; none outside.
    #[must_use]
    pub fn at(&self, x: u32, y: u32) -> Option<[u8; 3]> {
        if x >= self.width || y >= self.height {
            return None;
        }
        let first = (y as usize * self.width as usize + x as usize) * 4;
        let pixel = self.rgba.get(first..first + 3)?;
        pixel.try_into().ok()
    }
}
