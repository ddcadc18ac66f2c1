//! A desk with the edit panel on it, and hands to work it.

use std::path::Path;
use std::sync::Arc;

use bayrise::bayfile::presets::EmbeddedOnly;
use bayrise::panels::settings::Section;
use bayrise::panels::{Desk, Document, edit};
use egui::Key;
use egui_kittest::Harness;
use egui_kittest::kittest::Queryable;

/// A harness about a desk.
pub(crate) type Panel = Harness<'static, Desk>;

/// The text of a shipped scene.
pub(crate) fn scene(name: &str) -> String {
    let path = Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("scenes")
        .join(name);
    std::fs::read_to_string(path).unwrap()
}

/// The edit panel over a scene, in a window high enough for all of it.
pub(crate) fn panel(name: &str, section: Section) -> Panel {
    let text = scene(name);
    let presets = Arc::new(EmbeddedOnly);
    let document = Document::new(Some(name.into()), text.clone(), Some(text), presets);
    let mut desk = Desk::new(document);
    desk.settings.section = Some(section);
    let mut panel = Harness::builder()
        .with_size([430.0, 2400.0])
        .with_max_steps(12)
        .build_ui_state(
            |ui, desk: &mut Desk| {
                let section = desk.settings.section.unwrap_or(Section::Garage);
                let mut out = Vec::new();
                edit::show(ui, desk, section, &mut out);
                for action in out {
                    desk.apply(action);
                }
            },
            desk,
        );
    panel.run();
    panel
}

/// Puts the focus into the field with this label and types over what is in it.
pub(crate) fn type_into(panel: &mut Panel, label: &str, text: &str) {
    panel.get_by_label(label).focus();
    panel.run();
    panel.get_by_label(label).type_text(text);
    panel.run();
}

/// Types and presses Enter.
pub(crate) fn enter(panel: &mut Panel, label: &str, text: &str) {
    type_into(panel, label, text);
    panel.key_press(Key::Enter);
    panel.run();
}

/// Clicks what has this label.
pub(crate) fn click(panel: &mut Panel, label: &str) {
    panel.get_by_label(label).click();
    panel.run();
}

/// Opens a list and chooses from it.
pub(crate) fn choose(panel: &mut Panel, list: &str, entry: &str) {
    click(panel, list);
    click(panel, entry);
}

/// True when something on the panel says this.
pub(crate) fn says(panel: &Panel, words: &str) -> bool {
    panel.query_all_by_label_contains(words).next().is_some()
}

/// The document's text.
pub(crate) fn text(panel: &Panel) -> &str {
    panel.state().document.text()
}

/// The highest safe lock of the text as it stands.
pub(crate) fn safe_lock(panel: &mut Panel) -> Option<usize> {
    panel.state_mut().study_now();
    let desk = panel.state();
    assert!(desk.is_current(), "a verdict of this text");
    desk.verdict.as_ref().unwrap().study.highest_safe_lock
}
