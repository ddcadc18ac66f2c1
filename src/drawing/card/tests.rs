//! Does the card say what the study says, and never anything kinder?

mod marks;
mod shared;
mod written;

use super::tape_marks::{Kind, marks};
use super::*;
use crate::bay::DoorHeld;
use crate::bayfile::{presets::EmbeddedOnly, read};
use crate::clearance::study_on;
use crate::drawing::looked_over::{DAY, check, said, scene, scenes};
use crate::drawing::pages::PageFormat;
use crate::units::{Length, M_PER_INCH, Rounding, length, parse_length};

/// Bays with their studies, from which entries are taken.
struct Bays(Vec<(String, Bay, Study)>);

impl Bays {
    fn of(bays: Vec<(&str, Bay)>) -> Self {
        let studied = |(name, bay): (&str, Bay)| {
            let study = study_on(&bay, Some(DAY)).unwrap();
            (name.to_owned(), bay, study)
        };
        Self(bays.into_iter().map(studied).collect())
    }

    fn entries(&self) -> Vec<Entry<'_>> {
        let entry = |(file, bay, study)| Entry {
            file,
            bay,
            study,
            fingerprint: file,
        };
        self.0.iter().map(|(a, b, c)| entry((a, b, c))).collect()
    }

    fn pages(&self, paper: Paper) -> Result<Vec<Sheet>, CardError> {
        card(&self.entries(), ForDay::settled(DAY), paper)
    }
}

/// The bay of a scene with another vehicle in it.
fn with_vehicle(name: &str, preset: &str) -> Bay {
    let path = format!("{}/scenes/{name}.ron", env!("CARGO_MANIFEST_DIR"));
    let text = std::fs::read_to_string(path).unwrap();
    let start = text.find("    vehicle: (").unwrap();
    let end = start + text[start..].find("\n    ),").unwrap() + 7;
    let text = format!(
        "{}    vehicle: (preset: \"{preset}\"),{}",
        &text[..start],
        &text[end..]
    );
    read(preset, text.as_bytes(), &EmbeddedOnly).unwrap().bay
}

/// The pickup, an estate that goes higher, and a van that has no safe lock.
fn three() -> Bays {
    let bays = Bays::of(vec![
        ("pickup", scene("tall-pickup")),
        ("estate", with_vehicle("tall-pickup", "estate")),
        ("van", with_vehicle("tall-pickup", "van-tall-panel")),
    ]);
    let safe: Vec<bool> = bays.entries().iter().map(is_safe).collect();
    assert_eq!(safe.iter().filter(|safe| !**safe).count(), 1, "{safe:?}");
    bays
}

#[test]
fn nothing_overlaps_on_any_page() {
    for paper in [Paper::Letter, Paper::A4, Paper::A3] {
        for (name, bay) in scenes() {
            let pages = Bays::of(vec![("0123456789abcdef", bay)])
                .pages(paper)
                .unwrap();
            check(&name, &pages);
            for page in &pages {
                assert!(said(std::slice::from_ref(page)).contains("input 0123456789abcdef"));
            }
        }
        check("three", &three().pages(paper).unwrap());
    }
}

#[test]
fn a_page_says_what_its_study_says() {
    for (name, bay) in scenes() {
        let bays = Bays::of(vec![("0123456789abcdef", bay)]);
        let (_, bay, study) = &bays.0[0];
        let pages = bays.pages(Paper::Letter).unwrap();
        let written = said(&pages);
        let Some(lock) = study.highest_safe_lock else {
            continue;
        };
        let marks = study.marks.unwrap();
        let first = said(&pages[..1]);
        assert!(first.contains(&format!(
            "Highest safe lock: {lock} of {}",
            study.locks.len()
        )));
        let own = |at_m: f64| length(Length::metres(at_m), bay.units, Rounding::Nearest);
        let stop = format!("STOP at {} (", own(marks.stop_m));
        assert!(first.contains(&stop), "{name}: {stop}");
        match marks.never_above_m {
            Some(never) => {
                let never = format!("NEVER ABOVE {} (", own(never));
                assert!(first.contains(&never), "{name}: {never}");
            }
            None => assert!(first.contains("No NEVER ABOVE mark"), "{name}"),
        }
        let told = [
            meets::next(bay, study),
            meets::shut_off_bar(bay, study).map(|(text, _)| text),
        ];
        for told in told.into_iter().flatten() {
            // Its first letter stands in upper case.
            assert!(first.contains(&told[1..]), "{name}: {told}");
        }
        // No travel stands beside the readings of the column.
        assert!(!first.contains("of travel"), "{name}");
        for unknown in &study.unknown {
            assert!(first.contains(unknown.words()), "{name}");
        }
        assert!(
            written.contains("No power means no release upward"),
            "{name}"
        );
    }
}

#[test]
fn without_a_safe_lock_there_is_no_mark_and_no_tape() {
    let mut seen = 0;
    for (name, bay) in scenes() {
        let bays = Bays::of(vec![("0123456789abcdef", bay)]);
        let (_, bay, study) = &bays.0[0];
        if study.highest_safe_lock.is_some() {
            continue;
        }
        seen += 1;
        let pages = bays.pages(Paper::A4).unwrap();
        let written = said(&pages);
        assert!(written.contains("DO NOT RAISE") && written.contains("NO LOCK IS SAFE"));
        assert!(pages.iter().all(|page| page.tag != "TAPE"), "{name}");
        for words in ["STOP", "NEVER ABOVE", "Highest safe", "of travel"] {
            assert!(!written.contains(words), "{name}: {words}");
        }
        if let Some(marks) = study.marks {
            for mark in [Some(marks.stop_m), marks.never_above_m]
                .into_iter()
                .flatten()
            {
                let mark = length(Length::metres(mark), bay.units, Rounding::Nearest);
                assert!(!written.contains(&mark), "{name}");
            }
        }
    }
    assert!(seen > 2);
}

#[test]
fn several_vehicles_keep_their_own_marks() {
    let bays = three();
    let pages = bays.pages(Paper::Letter).unwrap();
    assert!(pages[0].name.contains("all vehicles"));
    let overview = said(&pages[..1]);
    let tape: Vec<Sheet> = pages
        .iter()
        .filter(|one| one.tag == "TAPE")
        .cloned()
        .collect();
    let on_tape = said(&tape);
    for (index, entry) in bays.entries().iter().enumerate() {
        assert!(overview.contains(&vehicle::name(entry)));
        assert!(overview.contains(&format!("input {} {}", letter(index), entry.fingerprint)));
        assert!(overview.contains(&parking::with(entry.bay)));
        if is_safe(entry) && !entry.study.unknown.is_empty() {
            let unknown = format!("NOT KNOWN, and no pass: {} ", entry.study.unknown.len());
            assert!(overview.contains(&unknown), "{unknown}");
        }
        let own = format!("STOP {} (", letter(index));
        assert_eq!(on_tape.contains(&own), is_safe(entry), "{own}");
        if !is_safe(entry) {
            assert!(overview.contains("DO NOT RAISE"));
            for sheet in &tape {
                let said = said(std::slice::from_ref(sheet));
                assert!(said.contains("NO LOCK IS SAFE, it has no mark"), "{said}");
            }
        }
    }
}

#[test]
fn vehicles_with_one_mark_share_its_line() {
    let mut other = scene("tall-pickup");
    other.vehicle.name = "The same pickup with doors of another colour".into();
    let bays = Bays::of(vec![("a", scene("tall-pickup")), ("b", other)]);
    let pages = bays.pages(Paper::Letter).unwrap();
    let written = said(&pages[3..]);
    assert!(
        written.contains("STOP A, B, lock 4 5 ft 0 3/4 in"),
        "{written}"
    );
    assert!(
        written.contains("RELEASE A, B, off lock 4 5 ft 1 1/4 in")
            && written.contains("NEVER ABOVE A, B 5 ft 3 15/16 in")
            && written.contains("doors of another colour")
    );
}
