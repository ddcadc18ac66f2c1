//! What can be made of the bay to give away?

use std::path::{Path, PathBuf};

/// Something for other hands, written by the same code as the command of that name.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum HandOver {
    /// A picture with its verdict.
    Picture,
    /// Sheets to set out the floor by.
    Layout,
    /// The lock card for the post.
    Card,
    /// A page for the customer.
    Report,
    /// The bay as a 3D model.
    Model,
    /// The sheet for commissioning, and a yearly log.
    Record,
    /// The form to measure by.
    Worksheet,
}

impl HandOver {
    /// All of them, in the order in which they are wanted.
    pub const ALL: [Self; 7] = [
        Self::Worksheet,
        Self::Picture,
        Self::Report,
        Self::Layout,
        Self::Card,
        Self::Record,
        Self::Model,
    ];

    /// What it is, as a menu says it.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Picture => "Picture",
            Self::Layout => "Sheets for the floor",
            Self::Card => "Lock card for the post",
            Self::Report => "Page for the customer",
            Self::Model => "3D model",
            Self::Record => "Commissioning record",
            Self::Worksheet => "Worksheet to measure by",
        }
    }

    /// The command that writes it.
    #[must_use]
    pub const fn command(self) -> &'static str {
        match self {
            Self::Picture => "picture",
            Self::Layout => "layout",
            Self::Card => "card",
            Self::Report => "report",
            Self::Model => "model",
            Self::Record => "record",
            Self::Worksheet => "worksheet",
        }
    }

    /// The endings of its file, the usual one first.
    #[must_use]
    pub const fn endings(self) -> &'static [&'static str] {
        match self {
            Self::Picture => &["png", "gif"],
            Self::Layout => &["pdf", "svg", "dxf"],
            Self::Card => &["pdf", "svg", "png"],
            Self::Report => &["html"],
            Self::Model => &["glb"],
            Self::Record => &["pdf", "svg", "png"],
            Self::Worksheet => &["pdf", "svg", "png"],
        }
    }

    /// Whether it says what was found in the bay: the bay must be without faults for it.
    #[must_use]
    pub const fn is_of_the_bay(self) -> bool {
        !matches!(self, Self::Worksheet)
    }

    const fn after_the_name(self) -> &'static str {
        match self {
            Self::Picture => "",
            Self::Layout => "-floor",
            Self::Card => "-card",
            Self::Report => "-page",
            Self::Model => "-model",
            Self::Record => "-record",
            Self::Worksheet => "-worksheet",
        }
    }

    /// Where it is written unless the person says otherwise: beside the bay file.
    #[must_use]
    pub fn place(self, bay_file: Option<&Path>) -> PathBuf {
        let file = bay_file.unwrap_or_else(|| Path::new("my-bay.ron"));
        let stem = file.file_stem().unwrap_or_default().to_string_lossy();
        let ending = self.endings()[0];
        file.with_file_name(format!("{stem}{}.{ending}", self.after_the_name()))
    }

    /// The path with an ending that it can be written with: the usual one where none was given.
    ///
    /// # Errors
    /// In words, when the ending is another's.
    pub fn with_ending(self, path: PathBuf) -> Result<PathBuf, String> {
        let Some(ending) = path.extension() else {
            return Ok(path.with_extension(self.endings()[0]));
        };
        let ending = ending.to_string_lossy().to_lowercase();
        if self.endings().contains(&ending.as_str()) {
            return Ok(path);
        }
        Err(format!(
            "Not written: {} is no name for it. Give it the ending .{}.",
            path.display(),
            self.endings().join(" or .")
        ))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_two_are_written_to_the_same_place_and_none_over_the_bay() {
        let bay = Path::new("garage/bay.ron");
        let places: Vec<PathBuf> = HandOver::ALL.map(|one| one.place(Some(bay))).to_vec();
        for (index, place) in places.iter().enumerate() {
            assert_ne!(place, bay);
            assert!(!places[..index].contains(place), "{place:?}");
            assert!(place.starts_with("garage"));
        }
    }

    #[test]
    fn an_ending_that_is_not_its_own_is_refused() {
        let card = HandOver::Card;
        assert!(card.with_ending("bay.ron".into()).is_err());
        assert_eq!(card.with_ending("x".into()), Ok("x.pdf".into()));
        assert_eq!(card.with_ending("x.PNG".into()), Ok("x.PNG".into()));
    }
}
