//! Is nothing lost that a person typed: by undoing, by saving, by a change on disk, by a crash?

use std::path::Path;
use std::sync::Arc;
use std::sync::atomic::Ordering;

use bayrise::bayfile::presets::{EmbeddedOnly, PresetError, PresetSource};
use bayrise::panels::document::{autosave_path, is_worth_offering};
use bayrise::panels::{Action, Change, Desk, Document};

use crate::helpers::scene;

fn document() -> Document {
    let text = scene("tall-pickup.ron");
    let saved = Some(text.clone());
    Document::new(
        Some("tall-pickup.ron".into()),
        text,
        saved,
        Arc::new(EmbeddedOnly),
    )
}

#[test]
fn every_change_can_be_undone_and_made_again() {
    let mut document = document();
    let mut texts = vec![document.text().to_string()];
    for width in 1..=500 {
        document
            .set("garage.width", &format!("\"{} mm\"", 7000 + width))
            .unwrap();
        texts.push(document.text().into());
    }
    let generation = document.generation();
    for text in texts.iter().rev().skip(1) {
        document.undo();
        assert_eq!(document.text(), text);
    }
    assert!(!document.can_undo() && !document.is_unsaved());
    assert!(
        document.generation() > generation,
        "an older study is never taken for a new one"
    );
    for text in &texts[1..] {
        document.redo();
        assert_eq!(document.text(), text);
    }
    assert!(!document.can_redo());
    document.undo();
    document.set("garage.width", "\"7 m\"").unwrap();
    assert!(!document.can_redo(), "another way from here");
    document.set("garage.width", "\"7 m\"").unwrap();
    document.undo();
    assert_eq!(
        document.text(),
        texts[499],
        "setting what is there is no step"
    );
}

#[test]
fn several_changes_are_one_step_all_of_them_or_none() {
    let mut document = document();
    let before = document.text().to_string();
    let set = |path: &str, value: &str| Change::Set {
        path: path.into(),
        value: value.into(),
    };
    let good = [
        set("garage.width", "\"7 m\""),
        set("lift.tie.width", "\"9 in\""),
    ];
    document.change_all(&good).unwrap();
    document.undo();
    assert_eq!(document.text(), before);
    let bad = [set("garage.width", "\"7 m\""), set("garage.width[5]", "1")];
    assert!(document.change_all(&bad).is_err());
    assert_eq!(document.text(), before);
    assert!(!document.can_undo());

    let mut desk = Desk::new(document);
    desk.apply(Action::Together(bad.to_vec()));
    assert_eq!(desk.document.text(), before);
    assert!(
        desk.notices.iter().any(|notice| notice.is_error),
        "and it is said"
    );
}

#[test]
fn a_change_on_disk_is_taken_over_only_where_nothing_is_lost() {
    let mut document = document();
    let before = document.text().to_string();
    let other = before.replace("12 ft", "13 ft");
    assert!(document.changed_on_disk(other.clone()));
    assert_eq!(document.text(), other);
    assert!(!document.is_unsaved());
    document.undo();
    assert_eq!(document.text(), before, "it can be undone");
    assert!(document.is_unsaved());

    assert!(!document.changed_on_disk(before.replace("12 ft", "14 ft")));
    assert_eq!(document.text(), before, "what is not saved stays");
    assert!(document.is_unsaved());
    assert!(document.changed_on_disk(before.clone()), "nothing is lost");
    assert!(!document.is_unsaved(), "the same now");
}

#[test]
fn saving_elsewhere_reads_the_presets_there() {
    let mut document = document();
    document.set("vehicle.preset", "\"mine.ron\"").unwrap();
    assert!(document.read().is_err());
    struct Beside;
    impl bayrise::bayfile::presets::PresetSource for Beside {
        fn load(&self, _path: &str) -> Result<Vec<u8>, bayrise::bayfile::presets::PresetError> {
            Ok(b"(preset: \"pickup-half-ton-crew-cab\", sill: \"18 in\")".to_vec())
        }
    }
    let generation = document.generation();
    let text = document.text().to_string();
    document.mark_saved("there/bay.ron".into(), text.clone(), Arc::new(Beside));
    assert!(document.read().is_ok());
    assert!(document.generation() > generation && !document.is_unsaved());
    let generation = document.generation();
    document.mark_saved("there/bay.ron".into(), text, Arc::new(Beside));
    assert_eq!(document.generation(), generation, "nothing to study again");
}

#[test]
fn an_autosave_lies_beside_its_file_and_is_offered_when_it_says_more() {
    let beside = autosave_path(Path::new("bays/mine.ron"));
    assert_eq!(beside, Path::new("bays/.mine.ron.bayrise-autosave"));
    assert!(is_worth_offering("a", "b") && !is_worth_offering("a", "a"));
    assert!(
        !is_worth_offering(" \n", "a"),
        "a write cut short is nothing"
    );
}

#[test]
fn a_file_that_is_gone_leaves_its_text_unsaved() {
    let mut document = document();
    assert!(!document.is_unsaved());
    document.gone_from_disk();
    assert!(document.is_unsaved());
    let back = document.text().to_string();
    assert!(document.changed_on_disk(back), "it is back as it was");
    assert!(!document.is_unsaved());
    document.gone_from_disk();
    let text = document.text().to_string();
    document.mark_saved("tall-pickup.ron".into(), text, Arc::new(EmbeddedOnly));
    assert!(!document.is_unsaved());
}

#[test]
fn a_file_that_comes_back_is_taken_unless_something_was_changed_here() {
    let other = document().text().replace("12 ft", "13 ft");
    let mut untouched = document();
    untouched.gone_from_disk();
    assert!(untouched.is_unsaved(), "to be saved again, if it is wanted");
    assert!(untouched.changed_on_disk(other.clone()));
    assert_eq!(untouched.text(), other);
    assert!(!untouched.is_unsaved());
    untouched.undo();
    assert_ne!(untouched.text(), other, "it can be undone");

    let mut touched = document();
    touched.set("garage.width", "\"7 m\"").unwrap();
    let mine = touched.text().to_string();
    touched.gone_from_disk();
    assert!(!touched.changed_on_disk(other.clone()));
    assert_eq!(touched.text(), mine);
    assert!(touched.is_unsaved());

    // Changed while it was gone, and changed back: nothing is lost.
    let mut back = document();
    back.gone_from_disk();
    back.set("garage.width", "\"7 m\"").unwrap();
    assert!(!back.changed_on_disk(other.clone()));
    back.gone_from_disk();
    back.undo();
    assert!(back.is_unsaved());

    // A new bay has no file to come back.
    let mut fresh = document();
    fresh.gone_from_disk();
    fresh.start_over(other, Arc::new(EmbeddedOnly));
    assert!(fresh.is_unsaved());
}

/// A preset beside the file that another program changes between any two readings of it.
#[derive(Default)]
struct Restless(std::sync::atomic::AtomicU32);

impl PresetSource for Restless {
    fn load(&self, path: &str) -> Result<Vec<u8>, PresetError> {
        if path != "mine.ron" {
            return Err(PresetError::Missing);
        }
        let sill = 18 + self.0.fetch_add(1, Ordering::SeqCst);
        let text = format!("(preset: \"pickup-half-ton-crew-cab\", sill: \"{sill} in\")");
        Ok(text.into_bytes())
    }
}

#[test]
fn a_preset_that_changes_is_told_from_what_was_read() {
    let mut document = document();
    assert_eq!(document.presets_asked().count(), 0);
    assert!(document.presets_are_as_read(), "there is none");
    document.set("vehicle.preset", "\"mine.ron\"").unwrap();
    assert_eq!(document.presets_asked().collect::<Vec<_>>(), ["mine.ron"]);
    assert!(document.read().is_err());
    assert!(document.presets_are_as_read(), "not there, as before");

    let text = document.text().to_string();
    document.mark_saved("there/bay.ron".into(), text, Arc::new(Restless::default()));
    let sill = &document.read().unwrap().sources[1];
    assert!(sill.text.contains("18 in"));
    let field = document.written().unwrap().value("vehicle.sill").unwrap();
    assert_eq!(field.text, "18 in", "bay and fields of one reading");
    assert!(!document.presets_are_as_read());
    let generation = document.generation();
    document.presets_changed();
    assert!(document.generation() > generation, "a study is wanted");
}
