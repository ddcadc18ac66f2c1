//! Does the window around the 3D view show and do what it says, without an engine and without a
//! graphics card?

#![allow(clippy::unwrap_used, clippy::panic, missing_docs, unreachable_pub)] // a helper of tests

mod as_built;
mod asking;
mod beside;
mod carriage;
mod compared;
mod keyboard;
mod lines;
mod showing;
mod standing;
mod title_block;
mod truth;
mod unmeasured;

use std::sync::Arc;

use bayrise::bayfile::presets::EmbeddedOnly;
use bayrise::panels::{Action, Desk, Document, Wish, shell};
use egui::epaint::ClippedShape;
use egui::{Rect, Shape};
use egui_kittest::Harness;

/// Every shipped scene.
pub const SCENES: [&str; 13] = [
    "anchors-on-paper",
    "arms-too-short",
    "barred-way-up",
    "camper-under-the-bar",
    "camper-under-ties",
    "coupe-full-rise",
    "engine-out",
    "light-in-the-way",
    "no-safe-lock",
    "short-columns",
    "tall-columns",
    "tall-pickup",
    "thin-slab",
];

/// A studied desk with a shipped scene on it.
pub fn desk(scene: &str) -> Desk {
    let path = format!("{}/scenes/{scene}.ron", env!("CARGO_MANIFEST_DIR"));
    let text = std::fs::read_to_string(path).unwrap();
    let mut desk = Desk::new(Document::new(
        Some(format!("{scene}.ron").into()),
        text.clone(),
        Some(text),
        Arc::new(EmbeddedOnly),
    ));
    desk.study_now();
    assert!(desk.is_current(), "{scene}");
    desk
}

/// What the window would hold.
pub struct World {
    pub desk: Desk,
    /// Where the view was last.
    pub view: Rect,
    /// What was asked of the window.
    pub wishes: Vec<Wish>,
    /// What was asked by the panels.
    pub asked: Vec<Action>,
}

/// A window of a size, in points, over a desk.
pub fn window(desk: Desk, size: [f32; 2]) -> Harness<'static, World> {
    let world = World {
        desk,
        view: Rect::NOTHING,
        wishes: Vec::new(),
        asked: Vec::new(),
    };
    let mut harness = Harness::builder()
        .with_size(size)
        .with_max_steps(12)
        .build_ui_state(
            |ui, world: &mut World| {
                let mut out = Vec::new();
                world.view = shell::show(ui, &world.desk, &mut out);
                let aspect = world.view.width() / world.view.height();
                world.desk.set_aspect(f64::from(aspect));
                for action in out {
                    world.asked.push(action.clone());
                    world.wishes.extend(world.desk.apply(action));
                    ui.ctx().request_repaint();
                }
            },
            world,
        );
    harness.run();
    harness
}

/// A text as painted: what, where, and what of it can be seen.
pub struct Painted {
    pub text: String,
    pub rect: Rect,
    pub clip: Rect,
}

/// Every text painted in the last frame.
pub fn painted(harness: &Harness<'_, World>) -> Vec<Painted> {
    let mut out = Vec::new();
    for clipped in &harness.output().shapes {
        texts(&clipped.shape, clipped.clip_rect, &mut out);
    }
    out
}

pub fn texts(shape: &Shape, clip: Rect, out: &mut Vec<Painted>) {
    match shape {
        Shape::Vec(shapes) => shapes.iter().for_each(|shape| texts(shape, clip, out)),
        Shape::Text(text) => out.push(Painted {
            text: text.galley.job.text.clone(),
            rect: Rect::from_min_size(text.pos, text.galley.size()),
            clip,
        }),
        _ => {}
    }
}

/// What a function paints onto a screen of a size, in points.
pub fn shapes(size: [f32; 2], mut paints: impl FnMut(&egui::Ui)) -> Vec<ClippedShape> {
    let input = egui::RawInput {
        screen_rect: Some(Rect::from_min_size(egui::Pos2::ZERO, size.into())),
        ..egui::RawInput::default()
    };
    let mut output = egui::Context::default().run_ui(input, |ui| paints(ui));
    output.textures_delta.clear();
    output.shapes
}

/// The painted text that contains these words.
pub fn find<'a>(painted: &'a [Painted], words: &str) -> Option<&'a Painted> {
    painted.iter().find(|one| one.text.contains(words))
}
