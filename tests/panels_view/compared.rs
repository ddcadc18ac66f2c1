//! The table of a comparison on the desk.

use std::sync::Arc;

use bayrise::bayfile::options;
use bayrise::bayfile::presets::{PresetError, PresetSource};
use bayrise::choose::{Asked, matrix};
use bayrise::clearance::Verdict;
use bayrise::panels::{Action, Compared, Desk, compare_table, overlay};
use bayrise::report::compare::Sort;
use egui_kittest::kittest::Queryable;

use super::{desk, painted, window};

/// The files beside the shipped comparisons.
struct Beside;

impl PresetSource for Beside {
    fn load(&self, path: &str) -> Result<Vec<u8>, PresetError> {
        let folder = format!("{}/scenes/compare", env!("CARGO_MANIFEST_DIR"));
        std::fs::read(format!("{folder}/{path}")).map_err(|_| PresetError::Missing)
    }
}

fn compared(name: &str) -> Desk {
    let text = Beside.load(name).unwrap();
    let options = options::read(name, &text, &Beside).ok().unwrap();
    let matrix = matrix(&options, &Beside, Asked::default(), &|| ());
    let mut desk = desk("tall-pickup");
    desk.compared = Some(Box::new(Compared::new(options, matrix, Arc::new(Beside))));
    desk
}

#[test]
fn every_combination_can_be_opened_as_the_bay_that_was_compared() {
    for name in ["short-or-tall.ron", "cheaper-or-dearer.ron"] {
        let mut desk = compared(name);
        let cells: Vec<_> = desk
            .compared
            .as_ref()
            .unwrap()
            .matrix
            .cells
            .iter()
            .map(|cell| (cell.pick, cell.found().map(|found| found.verdict.clone())))
            .collect();
        assert!(cells.len() > 2);
        for (pick, verdict) in cells {
            desk.apply(Action::LeaveUnsaved);
            desk.apply(Action::OpenCell(pick));
            desk.apply(Action::LeaveUnsaved);
            assert!(desk.document.is_unsaved() && desk.document.path().is_none());
            desk.study_now();
            let shown = Verdict::of(&desk.verdict.as_ref().unwrap().study);
            let verdict = verdict.unwrap();
            assert_eq!(shown.highest_safe_lock, verdict.highest_safe_lock);
            assert_eq!(shown.withheld, verdict.withheld);
            assert_eq!(shown.limit, verdict.limit);
        }
    }
}

#[test]
fn what_is_not_saved_is_asked_for_before_a_combination_is_opened() {
    let mut desk = compared("short-or-tall.ron");
    let pick = desk.compared.as_ref().unwrap().matrix.cells[0].pick;
    desk.apply(Action::Set {
        path: "title".into(),
        value: "\"changed\"".into(),
    });
    let text = desk.document.text().to_owned();
    desk.apply(Action::OpenCell(pick));
    assert_eq!(desk.document.text(), text, "the person is asked first");
    assert_eq!(desk.leaving.as_deref(), Some(&Action::OpenCell(pick)));
}

#[test]
fn the_table_says_the_choice_and_how_each_stands_in_words_and_opens_a_row() {
    let mut harness = window(compared("short-or-tall.ron"), [1900.0, 1000.0]);
    let says = harness.state().desk.compared.as_ref().unwrap().says.clone();
    let texts: Vec<String> = painted(&harness).into_iter().map(|one| one.text).collect();
    assert!(texts.contains(&says), "{texts:#?}");
    let rows = harness.state().desk.compared.as_ref().unwrap().rows();
    for (_, row) in &rows {
        let word = compare_table::state(row.stands).word;
        assert!(texts.iter().any(|text| text == word), "{word}");
    }
    let (pick, row) = rows[0].clone();
    let name = format!("{}, {}", row.lift, row.vehicle);
    // By the keyboard: the first row of that name.
    harness.get_all_by_label(&name).next().unwrap().focus();
    harness.run();
    harness.key_press(egui::Key::Enter);
    harness.run();
    assert!(harness.state().asked.contains(&Action::OpenCell(pick)));
    assert!(!harness.state().desk.compared.as_ref().unwrap().is_open);
}

#[test]
fn rows_are_put_in_order_and_left_out_but_the_choice_stays() {
    let mut desk = compared("short-or-tall.ron");
    let says = desk.compared.as_ref().unwrap().says.clone();
    desk.apply(Action::SortCompared(Sort::Lock));
    let rows = desk.compared.as_ref().unwrap().rows();
    let lock = |index: usize| {
        let cells = &desk.compared.as_ref().unwrap().matrix.cells;
        let cell = cells
            .iter()
            .find(|cell| cell.pick == rows[index].0)
            .unwrap();
        cell.found().unwrap().verdict.highest_safe_lock.unwrap_or(0)
    };
    assert!((1..rows.len()).all(|index| lock(index - 1) >= lock(index)));
    desk.apply(Action::FilterCompared("TALL".into()));
    let compared = desk.compared.as_ref().unwrap();
    assert!(compared.rows().len() < compared.count() && !compared.rows().is_empty());
    assert_eq!(compared.says, says);
}

#[test]
fn an_old_table_says_so_and_opens_no_row() {
    let mut desk = compared("short-or-tall.ron");
    let pick = desk.compared.as_ref().unwrap().matrix.cells[0].pick;
    desk.compared.as_mut().unwrap().is_stale = true;
    let before = desk.document.text().to_owned();
    desk.apply(Action::OpenCell(pick));
    desk.apply(Action::CellBeside(pick));
    assert_eq!(desk.document.text(), before);
    assert!(desk.beside.is_none());
    let mut harness = window(desk, [1900.0, 1000.0]);
    assert!(
        painted(&harness)
            .iter()
            .any(|text| text.text.starts_with("OLD:"))
    );
    let beside: Vec<_> = harness.get_all_by_label("beside").collect();
    assert!(beside.len() > 1);
    beside[0].click();
    harness.run();
    assert_eq!(harness.state().asked, []);
    assert!(harness.state().desk.beside.is_none());
}

#[test]
fn a_combination_beside_the_open_bay_goes_by_its_name() {
    let mut desk = compared("short-or-tall.ron");
    let pick = desk.compared.as_ref().unwrap().matrix.cells[0].pick;
    desk.apply(Action::CellBeside(pick));
    let other = &desk.beside.as_ref().unwrap().desk;
    let name = desk.compared.as_ref().unwrap().name(pick).unwrap();
    assert_eq!(overlay::head_lines(other)[0].words, name);
    assert!(other.verdict.is_some());
}

#[test]
fn a_row_in_full_has_its_bill_and_the_answers_the_other_way_round() {
    let mut harness = window(compared("cheaper-or-dearer.ron"), [1900.0, 1200.0]);
    let rows = harness.state().desk.compared.as_ref().unwrap().rows();
    harness.get_all_by_label("in full").next().unwrap().click();
    harness.run();
    let picked = Action::DetailCompared(Some(rows[0].0));
    assert_eq!(harness.state().asked, std::slice::from_ref(&picked));
    harness.state_mut().desk.apply(picked);
    harness.run();
    let texts =
        |harness: &_| -> Vec<String> { painted(harness).into_iter().map(|one| one.text).collect() };
    let before = texts(&harness);
    let says = |texts: &[String], what: &str| texts.iter().any(|text| text.starts_with(what));
    assert!(
        says(&before, "In full:") && says(&before, "Working it out"),
        "{before:#?}"
    );
    // Every line of the bill, as the text of the command line has it, and no sum that hides a gap.
    let told = harness
        .state()
        .desk
        .compared
        .as_ref()
        .unwrap()
        .detailed()
        .unwrap();
    assert_eq!(told.bill.len(), 8);
    for amount in told.bill.iter().map(|[_, amount]| amount) {
        assert!(before.contains(amount), "{amount}");
    }
    let compared = harness.state_mut().desk.compared.as_mut().unwrap();
    let asked = compared.to_turn().unwrap();
    assert!(compared.to_turn().is_none(), "given out once");
    compared.turned(asked.run());
    harness.run();
    let after = texts(&harness);
    assert!(says(&after, "The least flat ceiling") && !says(&after, "Working it out"));
    // The same answers as the command line's.
    let options = &harness.state().desk.compared.as_ref().unwrap().options;
    let asked = Asked {
        inverse: true,
        ..Asked::default()
    };
    let whole = matrix(options, &Beside, asked, &|| ());
    let table = &harness.state().desk.compared.as_ref().unwrap().matrix;
    let of = |cells: &[bayrise::choose::Cell]| {
        let cell = cells.iter().find(|cell| cell.pick == rows[0].0).unwrap();
        cell.found().unwrap().inverse.clone().unwrap()
    };
    assert_eq!(of(&table.cells), of(&whole.cells));
}

#[test]
fn answers_for_a_bay_that_is_not_in_the_table_any_more_are_dropped() {
    let mut desk = compared("short-or-tall.ron");
    let pick = desk.compared.as_ref().unwrap().matrix.cells[0].pick;
    desk.apply(Action::DetailCompared(Some(pick)));
    let asked = desk.compared.as_mut().unwrap().to_turn().unwrap();
    let mut anew = compared("cheaper-or-dearer.ron").compared.unwrap();
    anew.turned(asked.run());
    assert!(
        anew.matrix
            .cells
            .iter()
            .all(|cell| cell.found().unwrap().inverse.is_none())
    );
    // And of an old table nothing is worked out.
    let compared = desk.compared.as_mut().unwrap();
    compared.detail = Some(compared.matrix.cells[1].pick);
    compared.is_stale = true;
    assert!(compared.to_turn().is_none());
}
