//! In which formats do pages go out, and how many files does each make?

use rayon::iter::{IntoParallelRefIterator, ParallelIterator};

use super::dxf::dxf;
use super::pdf::pdf;
use super::png::png;
use super::sheet::Sheet;
use super::svg::svg;

/// How pages are written.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum PageFormat {
    /// One file, for programs that draw.
    Dxf,
    /// One file, for a printer.
    Pdf,
    /// A file a page.
    Svg,
    /// A file a page, in pixels.
    Png,
}

/// What could not be written.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Unwritten;

impl PageFormat {
    /// By the ending of a file's name, without its dot.
    #[must_use]
    pub fn of_ending(ending: &str) -> Option<Self> {
        match ending.to_lowercase().as_str() {
            "dxf" => Some(Self::Dxf),
            "pdf" => Some(Self::Pdf),
            "svg" => Some(Self::Svg),
            "png" => Some(Self::Png),
            _ => None,
        }
    }

    /// The ending of its files, without a dot.
    #[must_use]
    pub const fn ending(self) -> &'static str {
        match self {
            Self::Dxf => "dxf",
            Self::Pdf => "pdf",
            Self::Svg => "svg",
            Self::Png => "png",
        }
    }

    /// Whether each page is a file of its own.
    #[must_use]
    pub const fn is_a_file_a_page(self) -> bool {
        matches!(self, Self::Svg | Self::Png)
    }

    /// The pages as the bytes of files, in order: one file, or one a page.
    ///
    /// # Errors
    /// [`Unwritten`] where the font can't be read, or a page is too large for pixels.
    pub fn written(self, title: &str, pages: &[Sheet]) -> Result<Vec<Vec<u8>>, Unwritten> {
        match self {
            Self::Dxf => Ok(vec![dxf(pages).into_bytes()]),
            Self::Pdf => Ok(vec![pdf(title, pages).ok_or(Unwritten)?]),
            Self::Svg => Ok(pages.iter().map(|page| svg(page).into_bytes()).collect()),
            // Each page is some 25 MB of pixels and a second's work: none waits for another.
            Self::Png => pages
                .par_iter()
                .map(|page| png(page).ok_or(Unwritten))
                .collect(),
        }
    }
}
