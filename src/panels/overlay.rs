//! What is written over the picture: dimension lines, the caption, the cautions?

use super::Desk;

/// Paints over the view that fills `rect`.
pub fn paint(_painter: &egui::Painter, _rect: egui::Rect, _desk: &Desk, _caption: bool) {}
