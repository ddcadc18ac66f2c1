//! What tape readings say of the posts, in a window.

use bayrise::panels::as_built::AsBuilt;
use bayrise::panels::{Action, Wish};
use egui_kittest::kittest::Queryable;

use super::{desk, painted, window};

#[test]
fn the_text_is_shown_until_it_is_closed_and_is_called_old_when_the_bay_changes() {
    let mut desk = desk("coupe-full-rise");
    desk.as_built = Some(AsBuilt {
        readings: "measured.ron".into(),
        text: "As built\nLeft post: move its plate 2 mm to the left.".into(),
        generation: desk.document.generation(),
    });
    let mut harness = window(desk, [1280.0, 800.0]);
    let says = |harness: &egui_kittest::Harness<'_, super::World>, words: &str| {
        painted(harness)
            .iter()
            .any(|text| text.text.contains(words))
    };
    assert!(says(&harness, "move its plate 2 mm"));
    assert!(!says(&harness, "was changed since"));
    harness.state_mut().desk.apply(Action::Set {
        path: "title".into(),
        value: "\"another\"".into(),
    });
    harness.run();
    assert!(says(&harness, "was changed since"));
    harness.state_mut().desk.apply(Action::DropAsBuilt);
    harness.run();
    assert!(!says(&harness, "move its plate 2 mm"));
}

#[test]
fn the_menu_asks_for_the_readings_of_a_bay_without_faults() {
    let mut harness = window(desk("coupe-full-rise"), [1280.0, 800.0]);
    harness.get_by_label("File").click();
    harness.run();
    harness.get_by_label_contains("As built").click();
    harness.run();
    assert_eq!(harness.state().wishes, [Wish::AskAsBuilt]);
    let readings = std::path::PathBuf::from("measured.ron");
    let wish = harness
        .state_mut()
        .desk
        .apply(Action::AsBuilt(readings.clone()));
    assert_eq!(wish, [Wish::AsBuilt(readings)]);
}
