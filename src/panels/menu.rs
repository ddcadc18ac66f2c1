//! What is in the menu bar?

use egui::{Align, Button, Layout, MenuBar, RichText, Sense, Slider, TextStyle, Ui, vec2};

use super::camera::Sight;
use super::hand_over::HandOver;
use super::settings::Theme;
use super::view_bar;
use super::{Action, Desk, keys, style};

/// The menus, the document's name and the badge.
pub fn show(ui: &mut Ui, desk: &Desk, out: &mut Vec<Action>) {
    MenuBar::new().ui(ui, |ui| {
        ui.menu_button("File", |ui| file(ui, desk, out));
        ui.menu_button("Edit", |ui| {
            item(
                ui,
                "Undo",
                "undo",
                desk.document.can_undo(),
                Action::Undo,
                out,
            );
            item(
                ui,
                "Redo",
                "redo",
                desk.document.can_redo(),
                Action::Redo,
                out,
            );
        });
        ui.menu_button("View", |ui| view(ui, desk, out));
        if let Some(compared) = &desk.compared {
            let is_open = compared.is_open;
            let button = Button::selectable(is_open, "Compared");
            if ui.add(button).on_hover_text("The table").clicked() {
                out.push(Action::ShowCompared(!is_open));
            }
        }
        ui.menu_button("Help", |ui| {
            item(ui, "Keys", "the help sheet", true, Action::Help(true), out);
        });
        ui.separator();
        ui.strong(desk.document.name());
        if desk.document.is_unsaved() {
            unsaved(ui, desk);
        }
        if let Some(badge) = &desk.badge {
            ui.with_layout(Layout::right_to_left(Align::Center), |ui| {
                ui.label(RichText::new(badge).small())
                    .on_hover_text("What this machine can't do was left out.");
            });
        }
    });
}

/// A disc and the words: what is on the screen is not on the disk.
fn unsaved(ui: &mut Ui, desk: &Desk) {
    let size = ui.text_style_height(&TextStyle::Body);
    let (rect, _) = ui.allocate_exact_size(vec2(size * 0.6, size), Sense::empty());
    let ink = style::egui_colour(style::screen(&desk.settings).error);
    ui.painter().circle_filled(rect.center(), size * 0.26, ink);
    ui.label("not saved");
}

/// An entry with its key from the table of keys.
fn item(
    ui: &mut Ui,
    text: &str,
    does: &str,
    is_possible: bool,
    action: Action,
    out: &mut Vec<Action>,
) {
    let button = Button::new(text).shortcut_text(keys::of(does));
    if ui.add_enabled(is_possible, button).clicked() {
        out.push(action);
        ui.close();
    }
}

fn file(ui: &mut Ui, desk: &Desk, out: &mut Vec<Action>) {
    item(ui, "New", "new", true, Action::New, out);
    item(ui, "Open\u{2026}", "open", true, Action::Open, out);
    ui.add_enabled_ui(!desk.recent.is_empty(), |ui| {
        ui.menu_button("Recent", |ui| {
            for path in &desk.recent {
                if ui.button(path.display().to_string()).clicked() {
                    out.push(Action::OpenFile(path.clone()));
                    ui.close();
                }
            }
        });
    });
    ui.separator();
    item(ui, "Save", "save", true, Action::Save, out);
    item(ui, "Save as\u{2026}", "save as", true, Action::SaveAs, out);
    let has_file = desk.document.path().is_some();
    item(
        ui,
        "Take the file on disk",
        "take the file on disk",
        has_file,
        Action::Reload,
        out,
    );
    ui.separator();
    ui.menu_button("Hand over", |ui| hand_over(ui, desk, out));
    let button = Button::new("As built\u{2026}");
    let answer = ui
        .add_enabled(desk.document.read().is_ok(), button)
        .on_hover_text("Where the posts stand by tape readings, and the verdict with them there")
        .on_disabled_hover_text("The bay file has faults: mend them first.");
    if answer.clicked() {
        out.push(Action::AskAsBuilt);
        ui.close();
    }
    ui.separator();
    item(ui, "Quit", "quit", true, Action::Quit, out);
}

/// What can be made of the bay as it stands in the window, saved or not.
fn hand_over(ui: &mut Ui, desk: &Desk, out: &mut Vec<Action>) {
    let has_bay = desk.document.read().is_ok();
    for one in HandOver::ALL {
        let button = Button::new(format!("{}\u{2026}", one.name()));
        let answer = ui
            .add_enabled(has_bay || !one.is_of_the_bay(), button)
            .on_disabled_hover_text("The bay file has faults: mend them first.");
        if answer.clicked() {
            out.push(Action::HandOver(one));
            ui.close();
        }
    }
}

fn view(ui: &mut Ui, desk: &Desk, out: &mut Vec<Action>) {
    for sight in Sight::ALL {
        let is_shown = desk.sight == Some(sight);
        let button = Button::selectable(is_shown, format!("From the {}", view_bar::name(sight)))
            .shortcut_text(keys::of(view_bar::does(sight)));
        if ui.add(button).clicked() {
            out.push(Action::Look(sight));
        }
    }
    item(
        ui,
        "Everything in the frame",
        "everything in the frame",
        true,
        Action::FrameAll,
        out,
    );
    ui.separator();
    view_bar::parallel(ui, desk, out);
    view_bar::people(ui, desk, out);
    view_bar::dimensions(ui, desk, out);
    view_bar::cut(ui, desk, out);
    ui.separator();
    item(
        ui,
        "A bay beside this one\u{2026}",
        "a bay beside this one",
        true,
        Action::AskBeside,
        out,
    );
    item(
        ui,
        "Take the bay beside away",
        "take the bay beside away",
        desk.beside.is_some(),
        Action::TakeBesideAway,
        out,
    );
    ui.separator();
    let mut is_dark = desk.settings.theme == Theme::Dark;
    if ui.checkbox(&mut is_dark, "Light on dark").changed() {
        let theme = if is_dark { Theme::Dark } else { Theme::Light };
        out.push(Action::Theme(theme));
    }
    let mut scale = desk.settings.text_scale;
    let slider = Slider::new(&mut scale, 0.7..=2.5)
        .text("text size")
        .fixed_decimals(2);
    if ui.add(slider).changed() {
        out.push(Action::TextScale(scale / desk.settings.text_scale));
    }
    ui.separator();
    let does = "show mode: full screen, panels away";
    item(ui, "Show mode", does, true, Action::ShowMode(true), out);
}
