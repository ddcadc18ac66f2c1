//! Which preset stands under the lift or the vehicle, and what does the file lay over it?

use std::sync::LazyLock;

use egui::{ComboBox, Ui};

use super::editor::Editor;
use super::line;
use crate::bayfile::edit::quoted;
use crate::bayfile::presets::{Embedded, lifts, vehicles};
use crate::bayfile::syntax::{self, Kind, value_at};
use crate::panels::Change;
use crate::report::catalogue;

/// A record that may stand on a preset.
pub(super) struct Based {
    record: &'static str,
    label: &'static str,
    /// Fields that no preset has: they are the bay's.
    of_the_bay: &'static [&'static str],
    presets: &'static LazyLock<Vec<(&'static str, String)>>,
}

/// The lift.
pub(super) const LIFT: Based = Based {
    record: "lift",
    label: "Lift preset",
    of_the_bay: &["preset", "post_line", "across"],
    presets: &LIFTS,
};

/// The vehicle.
pub(super) const VEHICLE: Based = Based {
    record: "vehicle",
    label: "Vehicle preset",
    of_the_bay: &["preset"],
    presets: &VEHICLES,
};

static LIFTS: LazyLock<Vec<(&'static str, String)>> = LazyLock::new(|| titled(lifts()));
static VEHICLES: LazyLock<Vec<(&'static str, String)>> = LazyLock::new(|| titled(vehicles()));

fn titled(presets: &'static [Embedded]) -> Vec<(&'static str, String)> {
    presets
        .iter()
        .map(|preset| (preset.name, catalogue::title(preset)))
        .collect()
}

/// Draws the choice of a preset, and the offer to take out what the file lays over it.
pub(super) fn show(ui: &mut Ui, editor: &mut Editor<'_>, based: &Based, text: &str) {
    let path = format!("{}.preset", based.record);
    let named = editor.written.value(&path).map(|value| value.text);
    let presets: &[(&str, String)] = based.presets;
    let at = presets
        .iter()
        .position(|(name, _)| Some(*name) == named.as_deref());
    let shown = match (at, &named) {
        (Some(at), _) => presets[at].1.clone(),
        (None, Some(name)) => name.clone(),
        (None, None) => "none: all in this file".into(),
    };
    let label = ui.label(based.label);
    let combo = ComboBox::from_id_salt(("bay preset", based.record))
        .width(ui.available_width() - 8.0)
        .selected_text(shown)
        .truncate();
    let response = combo.show_ui(ui, |ui| {
        for (index, (name, title)) in presets.iter().enumerate() {
            if ui.selectable_label(at == Some(index), title).clicked() && at != Some(index) {
                editor.set(&path, quoted(name));
            }
        }
    });
    response.response.labelled_by(label.id).on_hover_text(
        "Typical figures of a class, no maker's. Type over whatever differs in yours.",
    );
    line::faults(ui, editor, &path);
    if named.is_some() {
        overrides(ui, editor, based, text);
    }
    ui.separator();
}

fn overrides(ui: &mut Ui, editor: &mut Editor<'_>, based: &Based, text: &str) {
    let own = own_fields(text, based);
    if own.is_empty() {
        return;
    }
    let names: Vec<String> = own.iter().map(|name| name.replace('_', " ")).collect();
    let said = format!("Yours, over the preset: {}.", names.join(", "));
    ui.add(egui::Label::new(egui::RichText::new(said).weak()).wrap());
    let count = own.len();
    let offer = if count == 1 {
        "Take it out".to_string()
    } else {
        format!("Take all {count} out")
    };
    if ui.button(offer).clicked() {
        let changes = own.iter().map(|name| Change::Remove {
            path: format!("{}.{name}", based.record),
        });
        editor.together(changes.collect());
    }
}

/// The fields that the file itself lays over the preset, in the order of the file.
fn own_fields(text: &str, based: &Based) -> Vec<String> {
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    let Some(root) = syntax::parse(0, text).root else {
        return Vec::new();
    };
    match value_at(&root, based.record).map(|record| &record.kind) {
        Some(Kind::Struct { fields, .. }) => fields
            .iter()
            .map(|field| field.name.text.clone())
            .filter(|name| !based.of_the_bay.contains(&name.as_str()))
            .collect(),
        _ => Vec::new(),
    }
}
