//! How does a picture come to be without a window?
//!
//! A [`Studio`] is the engine with the scene of the window and an image in place of the screen.
//! Every picture is of a desk as it stands, complete: it waits for everything it shows.

mod encode;
mod fence;
mod overlay;
mod studio;

use super::{Fault, probe};
use crate::panels::Desk;

pub use encode::{Animation, png};
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

/// Least and greatest side of a picture, pixels.
pub const SIDES: std::ops::RangeInclusive<u32> = 16..=8192;

/// One picture of the desk as it stands.
///
/// # Errors
/// When nothing can draw here, or the engine failed; with what to do about it.
pub fn picture(desk: Desk, size: [u32; 2], captions: bool) -> Result<Pixels, Fault> {
    probe::adapter()?;
    let mut studio = Studio::open(desk, size, captions)?;
    studio.shoot()
}

/// One picture for each travel of the carriage, metres; `each` gets them in order.
///
/// # Errors
/// As [`picture`], and whatever `each` returns.
pub fn raise(
    desk: Desk,
    size: [u32; 2],
    captions: bool,
    travels_m: &[f64],
    each: &mut dyn FnMut(Pixels) -> Result<(), Fault>,
) -> Result<(), Fault> {
    probe::adapter()?;
    let mut studio = Studio::open(desk, size, captions)?;
    for &travel in travels_m {
        studio.desk().apply(crate::panels::Action::Travel(travel));
        each(studio.shoot()?)?;
    }
    Ok(())
}
