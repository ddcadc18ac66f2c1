//! Which key does what?

use super::{Action, Desk};

/// What the keys pressed since the last frame ask for. Keys typed into a field are left to it.
pub fn actions(_ui: &egui::Ui, _desk: &Desk, _out: &mut Vec<Action>) {}
