//! What picture is wanted, in plain data: the same with and without an engine.

use std::path::PathBuf;
use std::sync::Arc;

use super::Fault;
use crate::bayfile::presets::PresetSource;
use crate::ground::Date;
use crate::solids::DoorTravel;

/// A picture that is wanted.
pub struct PictureOrder {
    /// Where the bay file lies.
    pub file: PathBuf,
    /// The day that ages are counted to.
    pub on: Date,
    /// Its text; without a fault.
    pub text: String,
    /// The presets beside it.
    pub presets: Arc<dyn PresetSource + Send + Sync>,
    /// Where the carriage stands.
    pub stop: Stop,
    /// Where the eye stands.
    pub from: ViewFrom,
    /// Width and height, pixels.
    pub size: [u32; 2],
    /// Where the door is; none for the state that governs the verdict.
    pub door: Option<DoorTravel>,
    /// With the verdict written below.
    pub captions: bool,
    /// With the people of the policy.
    pub people: bool,
    /// One picture, or the raise from the floor up to the stop.
    pub kind: PictureKind,
}

impl std::fmt::Debug for PictureOrder {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.debug_struct("PictureOrder")
            .field("file", &self.file)
            .field("stop", &self.stop)
            .field("from", &self.from)
            .field("size", &self.size)
            .field("kind", &self.kind)
            .finish_non_exhaustive()
    }
}

/// Where the carriage stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Stop {
    /// At a lock, counted from 1; one that the lift has.
    Lock(usize),
    /// Down.
    Floor,
    /// At full travel.
    Top,
    /// At the highest safe lock; where none is safe at the highest clear one, else down.
    Safe,
}

/// Where the eye stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ViewFrom {
    /// Above a corner by the door.
    Corner,
    /// Outside the door, square on.
    Front,
    /// At the left side, square on.
    Side,
    /// Above, square on.
    Plan,
    /// At the driver's door.
    Door,
}

/// What the file holds.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum PictureKind {
    /// A still picture.
    Png,
    /// The raise, in motion.
    Gif,
}

/// Least and greatest side of a picture, pixels.
pub const SIDES: std::ops::RangeInclusive<u32> = 16..=8192;

/// A picture that was made.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Made {
    /// The file's bytes.
    pub bytes: Vec<u8>,
    /// What the person should know about it.
    pub note: Option<String>,
}

/// Why there is no picture.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum PictureError {
    /// The bay can't be studied; in words.
    NotStudied(String),
    /// The verdict has no room in a picture of this size.
    TooSmall,
    /// No lock is safe, so that there is no raise to show.
    NoRaise,
    /// Nothing can draw here.
    Fault(Fault),
}

impl From<Fault> for PictureError {
    fn from(fault: Fault) -> Self {
        Self::Fault(fault)
    }
}
