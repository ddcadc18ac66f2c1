//! Why could a text not be edited?

use std::fmt;

use crate::letters;

/// Why a text could not be edited. The text is then as it was.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum EditError {
    /// The text has a fault of grammar already; with the fault and its line.
    Unreadable(String),
    /// The path is not written as paths are.
    BadPath(String),
    /// The path leads to no value.
    NoSuchValue(String),
    /// A field was to be put into something that is no record.
    NoRecord {
        /// Where it stands.
        path: String,
        /// What it is, in words.
        what: String,
    },
    /// An item was to be put into something that is no list.
    NoList {
        /// Where it stands.
        path: String,
        /// What it is, in words.
        what: String,
    },
    /// The item of a tuple was to be removed: its places are fixed.
    OfTuple(String),
    /// What was to be removed stands in a preset, not in the bay file.
    InPreset {
        /// The value's path.
        path: String,
        /// The preset's name.
        preset: String,
    },
    /// The new text is not exactly one value.
    NotAValue(String),
    /// The edit would not give a good text; with the reason.
    Unsound(String),
}

impl EditError {
    /// The same, from an edit within the value at a path of the whole file.
    pub(super) fn within(self, at: &str) -> Self {
        let joined = |path: String| match path.chars().next() {
            None => at.into(),
            Some('[') => format!("{at}{path}"),
            Some(_) => format!("{at}.{path}"),
        };
        match self {
            Self::BadPath(path) => Self::BadPath(joined(path)),
            Self::NoSuchValue(path) => Self::NoSuchValue(joined(path)),
            Self::OfTuple(path) => Self::OfTuple(joined(path)),
            Self::NoRecord { path, what } => Self::NoRecord {
                path: joined(path),
                what,
            },
            Self::NoList { path, what } => Self::NoList {
                path: joined(path),
                what,
            },
            Self::InPreset { path, preset } => Self::InPreset {
                path: joined(path),
                preset,
            },
            Self::Unreadable(_) | Self::NotAValue(_) | Self::Unsound(_) => self,
        }
    }
}

/// One sentence without a full stop.
impl fmt::Display for EditError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let whole = |path: &str| match path {
            "" => "the file".into(),
            _ => format!("`{path}`"),
        };
        match self {
            Self::Unreadable(why) => {
                write!(f, "the file has a fault that must be mended first: {why}")
            }
            Self::BadPath(path) => write!(f, "`{path}` names no place where a value can stand"),
            Self::NoSuchValue(path) => write!(f, "there is no value at `{path}`"),
            Self::NoRecord { path, what } => {
                write!(f, "{} is {what} and can take no field", whole(path))
            }
            Self::NoList { path, what } => {
                write!(f, "{} is {what} and can take no item", whole(path))
            }
            Self::OfTuple(path) => {
                write!(
                    f,
                    "`{path}` is one of a fixed number of values and can't be removed"
                )
            }
            Self::InPreset { path, preset } => write!(
                f,
                "`{path}` stands in the preset `{preset}` and can't be removed from the bay file"
            ),
            Self::NotAValue(text) => {
                let shown: String = letters::shown(text).chars().take(40).collect();
                write!(f, "`{shown}` is not one value as bay files write them")
            }
            Self::Unsound(why) => write!(f, "the file can't be changed in this way: {why}"),
        }
    }
}

impl std::error::Error for EditError {}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn paths_within_a_value() {
        let missing = |path: &str| EditError::NoSuchValue(path.into());
        assert_eq!(
            missing("[1].a").within("lift.locks"),
            missing("lift.locks[1].a")
        );
        assert_eq!(missing("bar").within("lift.tie"), missing("lift.tie.bar"));
        assert_eq!(missing("").within("lift.tie"), missing("lift.tie"));
    }

    #[test]
    fn every_error_is_a_sentence() {
        let path = || "lift.tie".to_string();
        let what = || "the word `None`".to_string();
        for error in [
            EditError::Unreadable("line 3: `(` is not closed".into()),
            EditError::BadPath(path()),
            EditError::NoSuchValue(path()),
            EditError::NoRecord {
                path: String::new(),
                what: what(),
            },
            EditError::NoList {
                path: path(),
                what: what(),
            },
            EditError::OfTuple(path()),
            EditError::InPreset {
                path: path(),
                preset: "coupe".into(),
            },
            EditError::NotAValue("1,\n2".into()),
            EditError::Unsound("too large".into()),
        ] {
            let text = error.to_string();
            assert!(text.len() > 20 && text.contains(' '), "{text}");
            assert!(!text.ends_with('.') && !text.contains('\n'), "{text}");
        }
    }
}
