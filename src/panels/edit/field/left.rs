//! Which fields hold a text that the file does not take, seen or not?
//!
//! Such a text lives in the window alone. It is looked after while its heading is shut or another
//! section is shown, so that it is not lost without a word when the program is left.

use std::collections::BTreeMap;

use egui::{Context, Id};

use super::super::editor::Editor;
use super::super::table::section_of;
use crate::panels::Desk;

/// What stood in the file when the field was drawn last: where that has changed since, by undoing
/// say, the text is about something that is no more.
#[derive(Debug, Clone, PartialEq, Eq)]
struct Left {
    label: &'static str,
    was: Option<String>,
    generation: u64,
}

/// By path.
type All = BTreeMap<String, Left>;

fn id() -> Id {
    Id::new("bay fields left")
}

/// Notes that the field at a path holds such a text, by its label, or that it holds none.
pub(super) fn note(
    context: &Context,
    editor: &Editor<'_>,
    path: &str,
    label: Option<&'static str>,
) {
    context.data_mut(|data| {
        let all = data.get_temp_mut_or_default::<All>(id());
        match label {
            Some(label) => {
                let was = editor.written.value(path).map(|value| value.text);
                let generation = editor.generation;
                let left = Left {
                    label,
                    was,
                    generation,
                };
                all.insert(path.into(), left);
            }
            None => {
                all.remove(path);
            }
        }
    });
}

/// A field that holds such a text: what it is called, and the tab that it is in.
pub(in crate::panels) fn left_in(context: &Context, desk: &Desk) -> Option<String> {
    let all = context.data(|data| data.get_temp::<All>(id()))?;
    let (path, left) = all.iter().find(|(path, left)| {
        let written = desk.document.written();
        let now = written.and_then(|written| written.value(path));
        match &left.was {
            Some(was) => now.is_some_and(|now| now.text == *was),
            // Nothing stands there that could tell whether there is such a field still.
            None => left.generation == desk.document.generation(),
        }
    })?;
    let tab = section_of(path).map(|section| format!(" in \u{201c}{}\u{201d}", section.word()));
    let tab = tab.unwrap_or_default();
    Some(format!("\u{201c}{}\u{201d}{tab}", left.label))
}
