//! Which lift, for which vehicles: the table of a comparison.

use egui::{Button, Context, Grid, RichText, ScrollArea, TextEdit, Ui, Window};

use super::signs::{self, NO_SAFE_LOCK, State, WITHHELD};
use super::{Action, Desk, compare_detail, style};
use crate::bayfile::options::Pick;
use crate::clearance::LockState;
use crate::report::compare::{Row, Sort, Stands};

/// The most rows that are listed at once; the rest is found by the filter.
const MOST_ROWS: usize = 500;

/// The headings, and the order that pressing one puts the rows into.
const HEAD: [(&str, Option<Sort>); 13] = [
    ("room", Some(Sort::File)),
    ("lift, vehicle", Some(Sort::File)),
    ("", None),
    ("", None),
    ("", None),
    ("safe lock", Some(Sort::Lock)),
    ("under it", Some(Sort::Underbody)),
    ("arms", None),
    ("load", Some(Sort::Load)),
    ("slab", None),
    ("way", Some(Sort::Walking)),
    ("cost", Some(Sort::Cost)),
    ("limited by", None),
];

/// How a combination stands, as a sign; never by colour alone.
#[must_use]
pub fn state(stands: Stands) -> State {
    match stands {
        Stands::Safe => State {
            word: "safe",
            ..State::from(LockState::Clear)
        },
        Stands::Withheld => WITHHELD,
        Stands::NoLock => NO_SAFE_LOCK,
        Stands::NoAnswer => State {
            word: "no answer",
            ..State::from(LockState::NotShown)
        },
    }
}

/// The table in a window of its own over the view, while it is open.
pub fn show(context: &Context, desk: &Desk, out: &mut Vec<Action>) {
    let Some(compared) = desk.compared.as_ref().filter(|compared| compared.is_open) else {
        return;
    };
    let mut is_open = true;
    let room = context.content_rect().size();
    Window::new(format!("Compared: {}", compared.options.title))
        .id(egui::Id::new("compared"))
        .open(&mut is_open)
        .collapsible(false)
        .default_size([room.x * 0.9, room.y * 0.7])
        .max_size([room.x * 0.98, room.y * 0.9])
        .show(context, |ui| table(ui, desk, out));
    if !is_open {
        out.push(Action::ShowCompared(false));
    }
}

/// The choice in words, the filter, and the rows.
pub fn table(ui: &mut Ui, desk: &Desk, out: &mut Vec<Action>) {
    let Some(compared) = &desk.compared else {
        return;
    };
    if compared.is_stale {
        let screen = style::screen(&desk.settings);
        ui.colored_label(
            style::egui_colour(screen.error),
            "OLD: a file that went into this table changed on disk. What stands here is of what it said \
             before; no row can be opened until it is made anew.",
        );
        let stale = Some(style::egui_colour(screen.stale));
        ui.visuals_mut().override_text_color = stale;
    }
    // The table lies over what is told elsewhere.
    if let Some(notice) = desk.notices.iter().rfind(|notice| notice.is_error) {
        ui.label(RichText::new(&notice.text).strong());
    }
    ui.label(RichText::new(&compared.says).strong());
    let rows = compared.rows();
    ui.horizontal_wrapped(|ui| {
        let label = ui.label("Only rows with");
        let mut filter = compared.filter.clone();
        let field = TextEdit::singleline(&mut filter).desired_width(160.0);
        if ui.add(field).labelled_by(label.id).changed() {
            out.push(Action::FilterCompared(filter));
        }
        let (listed, all) = (rows.len(), compared.count());
        if listed < all {
            ui.label(format!(
                "{listed} of {all} are listed; the sentence above counts all."
            ));
        }
    });
    if rows.len() > MOST_ROWS {
        ui.label(format!(
            "The first {MOST_ROWS} are shown: filter to see the others."
        ));
    }
    if let Some(detail) = compared.detailed() {
        compare_detail::show(ui, compared, (&detail, rows.len()), out);
    }
    ui.separator();
    ScrollArea::both()
        .auto_shrink([false, true])
        .show(ui, |ui| {
            Grid::new("rows").striped(true).show(ui, |ui| {
                for (word, sort) in HEAD {
                    head(ui, word, sort, compared.sort, out);
                }
                ui.end_row();
                for (pick, row) in rows.iter().take(MOST_ROWS) {
                    line(ui, desk, *pick, row, out);
                    ui.end_row();
                }
            });
        });
}

fn head(ui: &mut Ui, word: &str, sort: Option<Sort>, now: Sort, out: &mut Vec<Action>) {
    let Some(sort) = sort else {
        ui.label(RichText::new(word).weak());
        return;
    };
    // "room" stands for the order of the file alone, so that one heading is marked.
    let is_now = sort == now && word != "room";
    let text = if is_now {
        format!("{word} *")
    } else {
        word.to_owned()
    };
    let button = ui.add(Button::new(text).selected(is_now));
    if button.on_hover_text(order(sort)).clicked() {
        out.push(Action::SortCompared(sort));
    }
}

const fn order(sort: Sort) -> &'static str {
    match sort {
        Sort::File => "As the file lists them",
        Sort::Lock => "The highest safe lock first",
        Sort::Underbody => "The most height under the body first",
        Sort::Cost => "The cheapest first; what lacks a price comes last",
        Sort::Load => "The least use of a rating first",
        Sort::Walking => "The widest way first",
    }
}

fn line(ui: &mut Ui, desk: &Desk, pick: Pick, row: &Row, out: &mut Vec<Action>) {
    let screen = style::screen(&desk.settings);
    ui.label(&row.room);
    let can_open = desk
        .compared
        .as_ref()
        .is_some_and(|compared| !compared.is_stale);
    let name = Button::new(format!("{}, {}", row.lift, row.vehicle));
    let open = ui.add_enabled(can_open, name);
    if open.on_hover_text("Open this bay").clicked() {
        out.push(Action::OpenCell(pick));
    }
    let beside = ui
        .add_enabled(can_open, Button::new("beside"))
        .on_hover_text("Show this bay beside the open one");
    if beside.clicked() {
        out.push(Action::CellBeside(pick));
    }
    let is_told = desk
        .compared
        .as_ref()
        .is_some_and(|compared| compared.detail == Some(pick));
    let in_full = ui
        .add(Button::new("in full").selected(is_told))
        .on_hover_text("What it costs line by line, and which ceiling and vehicle each lock needs");
    if in_full.clicked() {
        out.push(Action::DetailCompared((!is_told).then_some(pick)));
    }
    let state = state(row.stands);
    let height = ui.text_style_height(&egui::TextStyle::Body);
    ui.horizontal(|ui| {
        signs::show(ui, state, height, screen, !can_open);
        ui.label(state.word);
    });
    for words in [
        &row.lock,
        &row.underbody,
        &row.arms,
        &row.load,
        &row.slab,
        &row.walking,
        &row.cost,
    ] {
        ui.label(words);
    }
    ui.add(egui::Label::new(&row.limited_by).extend());
}
