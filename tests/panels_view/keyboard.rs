//! Keys, the help sheet, and fields that keep what is typed into them.

use std::collections::HashSet;

use bayrise::panels::camera::{Lens, Sight};
use bayrise::panels::keys::TABLE;
use bayrise::panels::settings::{Section, Theme};
use bayrise::panels::{Action, Wish};
use egui::accesskit::Role;
use egui::{Key, Modifiers};
use egui_kittest::Harness;
use egui_kittest::kittest::{NodeT, Queryable};

use super::{World, desk, find, painted, window};

#[test]
fn every_key_of_the_table_asks_for_something() {
    let before = desk("tall-pickup").settings;
    let mut both = desk("tall-pickup");
    both.put_beside(desk("no-safe-lock"));
    let mut harness = window(both, [1280.0, 720.0]);
    let mut silent = Vec::new();
    for binding in TABLE {
        for stroke in binding.strokes {
            let world = harness.state_mut();
            world.desk.settings = before.clone();
            world.desk.settings.cut_m = Some(3.0);
            world.desk.picked = None;
            world.asked.clear();
            harness.key_press_modifiers(stroke.modifiers(), stroke.key);
            harness.step();
            if harness.state().asked.is_empty() {
                silent.push(stroke.label());
            }
        }
    }
    assert_eq!(silent, ["Esc"], "there is nothing to leave");
}

#[test]
fn looks_lens_cut_theme_and_text() {
    let mut harness = window(desk("tall-pickup"), [1280.0, 720.0]);
    harness.key_press(Key::Num4);
    harness.run();
    assert_eq!(harness.state().desk.sight, Some(Sight::Plan));
    harness.key_press(Key::Num1);
    harness.run();
    harness.key_press(Key::P);
    harness.run();
    assert!(matches!(
        harness.state().desk.camera.lens,
        Lens::Parallel { .. }
    ));
    harness.key_press(Key::C);
    harness.run();
    assert!(harness.state().desk.settings.cut_m.is_some());
    harness.key_press(Key::T);
    harness.run();
    assert_eq!(harness.state().desk.settings.theme, Theme::Dark);
    harness.key_press_modifiers(Modifiers::COMMAND, Key::Plus);
    harness.run();
    assert!(harness.state().desk.settings.text_scale > 1.1);
    assert!(
        (harness.ctx.zoom_factor() - 1.0).abs() < 1e-6,
        "points stay points"
    );
    harness.key_press(Key::F2);
    harness.run();
    assert_eq!(harness.state().desk.settings.section, Some(Section::Garage));
}

#[test]
fn the_help_sheet_lists_every_key() {
    let mut harness = window(desk("tall-pickup"), [1280.0, 900.0]);
    harness.key_press(Key::F1);
    harness.run();
    for binding in TABLE {
        for stroke in binding.strokes {
            let label = stroke.label();
            let listed = harness
                .get_all_by_role(Role::Label)
                .filter_map(|node| node.value())
                .any(|text| text.split("  or  ").any(|one| one == label));
            assert!(listed, "{label}");
        }
        harness.get_all_by_label(binding.does).next().unwrap();
    }
    harness.get_by_label_contains("On the ladder: drag the arrow");
    harness.key_press(Key::Escape);
    harness.run();
    assert!(!harness.state().desk.settings.help);
    harness.key_press_modifiers(Modifiers::SHIFT, Key::Questionmark);
    harness.run();
    assert!(harness.state().desk.settings.help);
}

#[test]
fn what_is_typed_into_a_field_stays_there() {
    let mut desk = desk("tall-pickup");
    desk.apply(Action::Section(Some(Section::Garage)));
    let before = desk.door;
    let mut harness = window(desk, [1280.0, 720.0]);
    let field = harness.get_all_by_role(Role::TextInput).next().unwrap();
    field.focus();
    harness.run();
    for key in [Key::D, Key::Home, Key::Num4, Key::Space] {
        harness.key_press(key);
        harness.run();
    }
    let world = harness.state();
    assert!((world.desk.door - before).abs() < 1e-12);
    assert!(!world.desk.rise.playing);
    assert_eq!(world.desk.sight, Some(Sight::Corner));
    // What types nothing is obeyed all the same.
    harness.key_press_modifiers(Modifiers::COMMAND, Key::S);
    harness.run();
    assert!(harness.state().asked.contains(&Action::Save));
}

/// A window with a bad ceiling height typed into its field, not yet left.
fn bad_height() -> Harness<'static, World> {
    let mut desk = desk("tall-pickup");
    desk.apply(Action::Section(Some(Section::Garage)));
    let mut harness = window(desk, [1280.0, 720.0]);
    harness.get_by_label("Ceiling height").focus();
    harness.run();
    harness.get_by_label("Ceiling height").type_text("12 fot");
    harness.run();
    harness
}

#[test]
fn after_enter_on_a_bad_value_the_field_is_typed_on_into() {
    let mut harness = bad_height();
    let text = harness.state().desk.document.text().to_owned();
    let door = harness.state().desk.door;
    for _ in 0..2 {
        harness.key_press(Key::Enter);
        harness.run();
        assert!(harness.get_by_label("Ceiling height").is_focused());
    }
    // None of these is a key of the window now.
    for key in [Key::D, Key::Home, Key::Num4] {
        harness.key_press(key);
        harness.run();
    }
    assert!((harness.state().desk.door - door).abs() < 1e-12);
    assert_eq!(harness.state().desk.sight, Some(Sight::Corner));
    for _ in 0..6 {
        harness.key_press(Key::Delete);
        harness.run();
    }
    harness.get_by_label("Ceiling height").type_text("11 ft");
    harness.run();
    assert_eq!(
        harness.get_by_label("Ceiling height").value().as_deref(),
        Some("11 ft")
    );
    assert_eq!(harness.state().desk.document.text(), text);
    harness.key_press(Key::Enter);
    harness.run();
    let changed = text.replacen("\"12 ft\"", "\"11 ft\"", 1);
    assert_eq!(harness.state().desk.document.text(), changed);
    assert!(!harness.get_by_label("Ceiling height").is_focused());
}

#[test]
fn a_bad_text_left_in_a_field_holds_what_would_lose_it() {
    for hides in [false, true] {
        let mut harness = bad_height();
        harness.key_press(Key::Tab);
        harness.run();
        if hides {
            // Neither the keyboard nor the eye is on it any more.
            let field =
                |harness: &Harness<'_, World>| harness.query_by_label("Ceiling height").is_some();
            harness.state_mut().desk.apply(Action::Section(None));
            harness.run();
            assert!(!field(&harness));
        }
        let file = std::path::PathBuf::from("other.ron");
        let losing = [Action::Quit, Action::New, Action::OpenFile(file)];
        for (count, key) in [Key::Q, Key::N].into_iter().enumerate() {
            harness.state_mut().asked.clear();
            harness.state_mut().desk.notices.clear();
            harness.key_press_modifiers(Modifiers::COMMAND, key);
            harness.run();
            let world = harness.state();
            assert!(!world.asked.contains(&losing[count]), "{key:?}");
            assert!(world.wishes.is_empty(), "{key:?}");
            let told = &world.desk.notices[0].text;
            assert!(
                told.contains("Ceiling height") && told.contains("Garage"),
                "{told}"
            );
        }
        if hides {
            let garage = Action::Section(Some(Section::Garage));
            harness.state_mut().desk.apply(garage);
            harness.run();
        }
        // Dropped by Escape in it, though there is a notice to close too, it holds nothing back.
        assert!(!harness.state().desk.notices.is_empty());
        harness.get_by_label("Ceiling height").focus();
        harness.run();
        harness.key_press(Key::Escape);
        harness.run();
        harness.key_press_modifiers(Modifiers::COMMAND, Key::Q);
        harness.run();
        assert!(harness.state().asked.contains(&Action::Quit));
        assert_eq!(harness.state().wishes, [Wish::Close]);
    }
}

#[test]
fn a_button_with_the_keyboard_keeps_the_space_bar() {
    let mut harness = window(desk("tall-pickup"), [1280.0, 720.0]);
    harness.get_by_label("top").focus();
    harness.run();
    harness.key_press(Key::Space);
    harness.run();
    let desk = &harness.state().desk;
    assert!(!desk.rise.playing);
    assert!((desk.rise.travel_m - desk.full_travel_m()).abs() < 1e-12);
}

#[test]
fn the_tab_key_goes_through_menu_sections_and_bars() {
    let mut harness = window(desk("tall-pickup"), [1280.0, 720.0]);
    let mut seen = HashSet::new();
    for _ in 0..60 {
        harness.key_press(Key::Tab);
        harness.run();
        let focused = harness
            .root()
            .get_all_by(|node| node.is_focused())
            .filter_map(|node| node.accesskit_node().label())
            .next();
        seen.extend(focused);
    }
    for wanted in [
        "File",
        "View",
        "play",
        "safe",
        "Garage",
        "frame all",
        "dimensions",
    ] {
        assert!(seen.contains(wanted), "{wanted}: {seen:?}");
    }
}

#[test]
fn show_mode_puts_panels_away_and_shows_the_caption() {
    let mut harness = window(desk("tall-pickup"), [1280.0, 720.0]);
    harness.get_by_label("File");
    harness.key_press(Key::F11);
    harness.run();
    assert!(harness.query_by_label("File").is_none());
    assert!(harness.query_by_label_contains("lock 7, pads at").is_none());
    let painted = painted(&harness);
    for words in [
        "is the highest safe lock",
        "A raised vehicle kills",
        "govern",
    ] {
        assert!(find(&painted, words).is_some(), "{words}");
    }
    harness.key_press(Key::Escape);
    harness.run();
    harness.get_by_label("File");
}
