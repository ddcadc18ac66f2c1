//! How is it said where the posts stand?

pub mod json;
mod moves;
mod readings;
mod said;
mod shims;
mod square;
mod text;

pub use text::render;

use crate::asbuilt::{AsBuilt, Finding};
use crate::bay::{Bay, Measured};
use crate::clearance::Study;
use crate::ground::ForDay;

/// Everything that is said of posts as built.
#[derive(Debug, Clone, Copy)]
pub struct AsBuiltReport<'a> {
    /// The bay as planned.
    pub planned: &'a Bay,
    /// What was read.
    pub measured: &'a Measured,
    /// What that makes of the posts.
    pub built: &'a AsBuilt,
    /// What stands against a safe lock beside the study.
    pub findings: &'a [Finding],
    /// The study of the bay with the posts where they stand.
    pub study: &'a Study,
    /// Stands for the bay file and its presets.
    pub fingerprint: &'a str,
    /// Stands for the file of readings.
    pub readings_fingerprint: &'a str,
    /// The day that it is for.
    pub day: ForDay,
}

impl AsBuiltReport<'_> {
    /// The highest safe lock, where nothing stands against it.
    #[must_use]
    pub fn safe_lock(&self) -> Option<usize> {
        self.study
            .highest_safe_lock
            .filter(|_| self.findings.is_empty())
    }
}
