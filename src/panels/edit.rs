//! What does the bay file say, and how is it changed?

use super::settings::Section;
use super::{Action, Desk};

/// One part of the bay file as fields.
pub fn show(_ui: &mut egui::Ui, _desk: &Desk, _section: Section, _out: &mut Vec<Action>) {}
