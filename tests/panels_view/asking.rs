//! Leaving, autosaves and notices.

use bayrise::panels::settings::{Kept, Notice};
use bayrise::panels::{Action, Wish};
use egui_kittest::kittest::Queryable;

use super::{desk, find, painted, window};

#[test]
fn leaving_without_saving_is_asked_about() {
    let mut desk = desk("tall-pickup");
    let text = format!("{}\n// changed\n", desk.document.text());
    desk.document.change(text);
    desk.study_now();
    let mut harness = window(desk, [1280.0, 720.0]);
    assert!(find(&painted(&harness), "not saved").is_some());
    harness.state_mut().desk.apply(Action::Quit);
    harness.run();
    harness.get_by_label("stay").click();
    harness.run();
    assert!(harness.state().desk.leaving.is_none());
    assert!(harness.query_by_label("stay").is_none());

    harness.state_mut().desk.apply(Action::Quit);
    harness.run();
    harness.get_by_label("save and leave").click();
    harness.run();
    let Some(Wish::Write { path, text }) = harness.state().wishes.last().cloned() else {
        panic!("{:?}", harness.state().wishes);
    };
    assert!(
        !harness.state().wishes.contains(&Wish::Close),
        "not before it is written"
    );
    let presets = std::sync::Arc::new(bayrise::bayfile::presets::EmbeddedOnly);
    harness.state_mut().desk.saved(path, text, presets);
    harness.step();
    harness.step();
    assert!(harness.state().wishes.contains(&Wish::Close));
}

#[test]
fn another_file_is_not_opened_over_what_is_not_saved() {
    let mut desk = desk("tall-pickup");
    let text = format!("{}\n// changed\n", desk.document.text());
    desk.document.change(text.clone());
    let other = std::path::PathBuf::from("other.ron");
    for next in [Action::OpenFile(other.clone()), Action::New] {
        assert!(desk.apply(next).is_empty());
        assert_eq!(desk.document.text(), text);
        assert!(desk.apply(Action::Stay).is_empty() && desk.leaving.is_none());
    }
    desk.apply(Action::OpenFile(other.clone()));
    assert_eq!(desk.apply(Action::LeaveUnsaved), [Wish::Read(other)]);
}

#[test]
fn who_undoes_everything_instead_of_saving_is_not_sent_away() {
    let mut desk = desk("tall-pickup");
    let text = format!("{}\n// changed\n", desk.document.text());
    desk.document.change(text);
    desk.study_now();
    let mut harness = window(desk, [1280.0, 720.0]);
    harness.state_mut().desk.apply(Action::Quit);
    harness.run();
    harness.get_by_label("stay");
    harness.state_mut().desk.apply(Action::Undo);
    harness.run();
    let state = harness.state();
    assert!(!state.desk.document.is_unsaved() && state.desk.leaving.is_none());
    assert!(!state.wishes.contains(&Wish::Close));
}

fn kept(desk: &bayrise::panels::Desk) -> Kept {
    Kept {
        text: format!("{}\n// kept\n", desk.document.text()),
        is_new_bay: false,
    }
}

#[test]
fn what_was_kept_stays_until_it_is_thrown_away() {
    for (answer, wish) in [
        ("keep it for next time", Wish::PutOffAutosave),
        ("throw it away", Wish::ForgetAutosave),
    ] {
        let mut desk = desk("tall-pickup");
        let text = desk.document.text().to_owned();
        desk.autosave = Some(kept(&desk));
        // Nobody is to miss the question before people either.
        desk.settings.show_mode = true;
        let mut harness = window(desk, [1280.0, 720.0]);
        harness.get_by_label(answer).click();
        harness.run();
        assert_eq!(harness.state().wishes, [wish]);
        assert_eq!(harness.state().desk.document.text(), text);
        assert_eq!(harness.state().desk.autosave, None);
    }
}

#[test]
fn a_new_bay_that_was_kept_takes_nothing_of_the_open_file() {
    let mut desk = desk("tall-pickup");
    let text = desk.document.text().to_owned();
    desk.autosave = Some(Kept {
        text: text.replace("Marta", "Nobody"),
        is_new_bay: true,
    });
    assert_eq!(desk.apply(Action::TakeAutosave), [Wish::TookAutosave]);
    assert_eq!(desk.document.path(), None);
    assert!(desk.document.is_unsaved() && desk.verdict.is_none());
}

#[test]
fn an_autosave_is_offered_and_a_notice_goes_away() {
    let mut desk = desk("tall-pickup");
    desk.autosave = Some(kept(&desk));
    desk.notices.push(Notice {
        is_error: true,
        text: "The file could not be written.".into(),
    });
    let mut harness = window(desk, [1280.0, 720.0]);
    harness.get_by_label("The file could not be written.");
    harness.get_by_label("close").click();
    harness.run();
    assert!(harness.state().desk.notices.is_empty());
    harness.get_by_label("take it over").click();
    harness.run();
    let desk = &harness.state().desk;
    assert!(desk.document.text().ends_with("// kept\n"));
    assert_eq!(desk.autosave, None);
}

#[test]
fn a_badge_says_what_the_machine_does_not_draw() {
    let mut desk = desk("tall-pickup");
    desk.badge = Some("drawn by the processor: no shadows".into());
    let harness = window(desk, [1280.0, 720.0]);
    harness.get_by_label("drawn by the processor: no shadows");
}
