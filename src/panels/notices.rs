//! What must the person be told or asked?
//!
//! A strip under the menu: nothing stops, and nothing hides the view.

use egui::{Panel, RichText, ScrollArea, Ui};

use super::style::{self, egui_colour};
use super::{Action, Desk};

/// The share of the window's height that notices may take; more of them are scrolled.
const SHARE: f32 = 0.16;

/// The strip, while there is something to tell or to ask.
pub fn show(ui: &mut Ui, desk: &Desk, out: &mut Vec<Action>) {
    // Nothing is left to ask once everything is saved; who undid everything instead is not sent away.
    if desk.leaving.is_some() && !desk.document.is_unsaved() {
        out.push(if desk.leaves_when_saved {
            Action::LeaveUnsaved
        } else {
            Action::Stay
        });
    }
    let is_silent = desk.leaving.is_none() && desk.autosave.is_none() && desk.notices.is_empty();
    if is_silent {
        return;
    }
    let frame = style::panel_frame(&desk.settings);
    Panel::top("notices").frame(frame).show(ui, |ui| {
        if let Some(next) = &desk.leaving {
            let [save, lose] = match **next {
                Action::Quit => ["save and leave", "leave without saving"],
                _ => ["save and go on", "go on without saving"],
            };
            ask(
                ui,
                &format!("{} is not saved.", desk.document.name()),
                [
                    (save, Action::SaveAndLeave),
                    (lose, Action::LeaveUnsaved),
                    ("stay", Action::Stay),
                ],
                out,
            );
        }
        if let Some(kept) = &desk.autosave {
            let question = if kept.is_new_bay {
                "Bayrise ended before a new bay was saved anywhere. The bay was kept."
            } else {
                "Bayrise ended without saving last time. What was changed then was kept."
            };
            ask(
                ui,
                question,
                [
                    ("take it over", Action::TakeAutosave),
                    ("keep it for next time", Action::PutOffAutosave),
                    ("throw it away", Action::DropAutosave),
                ],
                out,
            );
        }
        // Questions are never scrolled away; what is only told leaves room for the verdict.
        let most = (ui.ctx().content_rect().height() * SHARE).max(ui.spacing().interact_size.y);
        let list = ScrollArea::vertical()
            .auto_shrink([false, true])
            .min_scrolled_height(most)
            .max_height(most);
        list.show(ui, |ui| {
            for (index, notice) in desk.notices.iter().enumerate() {
                ui.horizontal_wrapped(|ui| {
                    if notice.is_error {
                        let screen = style::screen(&desk.settings);
                        ui.label(
                            RichText::new("Error:")
                                .color(egui_colour(screen.error))
                                .strong(),
                        );
                    }
                    ui.label(&notice.text);
                    if ui.button("close").clicked() {
                        out.push(Action::DropNotice(index));
                    }
                });
            }
        });
    });
}

fn ask<const N: usize>(
    ui: &mut Ui,
    question: &str,
    answers: [(&str, Action); N],
    out: &mut Vec<Action>,
) {
    ui.horizontal_wrapped(|ui| {
        ui.strong(question);
        for (words, action) in answers {
            if ui.button(words).clicked() {
                out.push(action);
            }
        }
    });
}
