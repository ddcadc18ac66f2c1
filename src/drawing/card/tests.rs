//! Does the card say what the study says, and never anything kinder?

use miniz_oxide::inflate::decompress_to_vec_zlib;

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
        card(&self.entries(), DAY, paper)
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
            && written.contains("NEVER ABOVE A, B 5 ft 4 7/16 in")
            && written.contains("doors of another colour")
    );
}

/// The lines of the tape of these bays.
fn lines(bays: &Bays) -> Vec<super::tape_marks::Mark> {
    let entries = bays.entries();
    marks(&Card {
        entries: &entries,
        on: DAY,
        paper: Paper::Letter,
    })
}

#[test]
fn no_lock_that_is_not_safe_looks_on_the_tape_as_if_it_were() {
    let mut forbidden = 0;
    for (name, bay) in scenes() {
        let bays = Bays::of(vec![("a", bay)]);
        let study = &bays.0[0].2;
        let Some(safe) = study.highest_safe_lock else {
            continue;
        };
        for (index, mark) in lines(&bays)
            .iter()
            .filter(|mark| mark.kind.is_lock())
            .enumerate()
        {
            let found = &study.locks[index];
            let may = index < safe && found.state == crate::clearance::LockState::Clear;
            let kind = if may { Kind::Lock } else { Kind::NotToUse };
            assert_eq!(mark.kind, kind, "{name}: {}", mark.says);
            assert_eq!(!mark.says.contains("NOT TO BE USED"), may, "{name}");
            forbidden += usize::from(!may);
        }
    }
    assert!(forbidden > 20, "{forbidden}");
    // Lock 7 of this one lies below NEVER ABOVE.
    let bays = Bays::of(vec![("a", scene("camper-under-ties"))]);
    let pages = bays.pages(Paper::Letter).unwrap();
    assert!(said(&pages).contains("lock 7: NOT TO BE USED 5 ft 9 1/4 in"));
    // And a lock on which not all pads carry lies below the highest safe one.
    let mut bays = bays;
    bays.0[0].2.locks[0].state = crate::clearance::LockState::NotLifting;
    assert_eq!(usable::of(&bays.0[0].2, 1), usable::Use::NotCarried);
    let first = &lines(&bays)[0];
    assert_eq!(first.says, "lock 1: NOT TO BE USED");
    let page = said(&bays.pages(Paper::Letter).unwrap());
    assert!(page.contains("Lock 1: NOT TO BE USED, not all four pads carry"));
}

#[test]
fn a_lock_of_one_vehicle_is_forbidden_to_the_others_by_name() {
    let bays = three();
    let safe: Vec<Option<usize>> = bays.0.iter().map(|one| one.2.highest_safe_lock).collect();
    let (low, high) = (safe[0].unwrap(), safe[1].unwrap());
    assert!(low < high && safe[2].is_none(), "{safe:?}");
    for mark in lines(&bays) {
        let Some(lock) = mark.says.strip_prefix("lock ") else {
            continue;
        };
        let number = lock.split(':').next().unwrap();
        let number: usize = number.parse().unwrap();
        if number > low && number <= high {
            let says = format!("lock {number}: NOT TO BE USED by A; only B");
            assert_eq!((mark.says, mark.kind), (says, Kind::NotToUse));
        }
    }
}

#[test]
fn the_climb_off_the_lock_is_told_and_stays_below_never_above() {
    let mut seen = 0;
    for (name, bay) in scenes() {
        let study = study_on(&bay, Some(DAY)).unwrap();
        let (Some(lock), Some(marks)) = (study.highest_safe_lock, study.marks) else {
            continue;
        };
        seen += 1;
        let rest = bay.lift.carriage.marked_edge.m() + bay.lift.locks[lock - 1].m();
        let release = edge::release_m(&bay, &marks).unwrap();
        assert!(release >= rest + bay.lift.release_overtravel.m() - 1e-9);
        assert!(release <= rest + bay.lift.release_overtravel.m() + M_PER_INCH / 16.0);
        if let Some(never) = marks.never_above_m {
            assert!(release <= never + 1e-9, "{name}");
        }
        let bays = Bays::of(vec![("a", bay)]);
        let (_, bay, study) = &bays.0[0];
        let written = edge::written(bay, study).unwrap();
        let page = said(&bays.pages(Paper::A3).unwrap()[..1]);
        let words = format!("RELEASE, {}", joined(&written.release.clone().unwrap()));
        assert!(page.contains(&words), "{name}: {words}");
        assert!(page.contains("for the LOWER carriage"));
        assert!(lines(&bays).iter().any(|mark| mark.kind == Kind::Release));
    }
    assert!(seen > 4);
    // Here the latches let go at NEVER ABOVE itself: both read the same.
    let bays = Bays::of(vec![("a", scene("barred-way-up"))]);
    let written = edge::written(&bays.0[0].1, &bays.0[0].2).unwrap();
    assert_eq!(written.release, written.never);
    // A margin that runs short a hundredth of an inch later leaves no graduation between.
    let mut marks = bays.0[0].2.marks.unwrap();
    marks.never_above_m = marks.never_above_m.map(|at_m| at_m - M_PER_INCH / 16.0);
    assert_eq!(edge::release_m(&bays.0[0].1, &marks), None);
    let mut bays = bays;
    bays.0[0].2.marks = Some(marks);
    let page = said(&bays.pages(Paper::Letter).unwrap());
    assert!(page.contains("DO NOT USE LOCK 5"), "{page}");
}

#[test]
fn metric_marks_read_in_sixteenths_that_are_never_kinder() {
    let mut seen = 0;
    for (name, bay) in scenes() {
        let study = study_on(&bay, Some(DAY)).unwrap();
        let (Some(written), Some(marks)) = (edge::written(&bay, &study), study.marks) else {
            continue;
        };
        let read = |text: &str| parse_length(text).unwrap().m();
        let slack = 0.000_05 + 1e-9;
        if let (Some(never), Some(at_m)) = (&written.never, marks.never_above_m) {
            assert!(read(&never[1]) <= at_m + slack, "{name}: {never:?}");
            for low in [Some(&written.stop), written.release.as_ref()] {
                assert!(read(&low.unwrap()[1]) <= read(&never[1]) + 1e-9, "{name}");
            }
        }
        if bay.units == crate::bay::UnitSystem::Metric {
            seen += 1;
            assert!(read(&written.stop[1]) >= marks.stop_m - 1e-9, "{name}");
            assert!(!written.stop[1].contains('.'), "{name}: {:?}", written.stop);
        }
    }
    assert!(seen > 0);
}

#[test]
fn the_bar_s_margin_runs_short_before_it_is_tripped_and_both_are_readings() {
    let bays = Bays::of(vec![("a", scene("camper-under-the-bar"))]);
    let (_, bay, study) = &bays.0[0];
    let bar = study.bar.as_ref().and_then(|bar| bar.trips_at_m).unwrap();
    let next = meets::next(bay, study).unwrap();
    assert!(next.contains("comes too near the shut-off bar"), "{next}");
    let trips = format!("trips the bar with the edge at {}", Edge(bay).met(bar));
    assert!(next.contains(&trips), "{next}");
    // The pickup's roof is told by where it lies, not by a number that nobody can count.
    let bays = Bays::of(vec![("a", scene("tall-pickup"))]);
    let (_, bay, study) = &bays.0[0];
    let (text, forbids) = meets::shut_off_bar(bay, study).unwrap();
    assert!(forbids && !text.contains("piece"), "{text}");
    assert!(text.contains("behind its front bumper"), "{text}");
    assert!(text.contains("edge at 8 ft 2 in (2489 mm)"), "{text}");
}

#[test]
fn pads_of_several_heights_are_a_table_in_both_systems() {
    let mut bay = scene("tall-pickup");
    bay.parking.pad_raise[2] = Length::inches(4.0);
    let study = study_on(&bay, Some(DAY)).unwrap();
    let rows: Vec<Piece> = pads::pieces(&bay, &study)
        .into_iter()
        .filter(|piece| matches!(piece, Piece::Row { .. }))
        .collect();
    assert_eq!(rows.len(), 5, "a head and four pads");
    let Piece::Row { cells, .. } = &rows[3] else {
        panic!("a row");
    };
    assert_eq!(cells[0].0, "rear left");
    assert_eq!(cells[1].0, "4 in (102 mm)");
}

#[test]
fn another_garage_lift_or_slab_is_refused_by_name() {
    let changed = |change: fn(&mut Bay)| {
        let mut other = with_vehicle("tall-pickup", "estate");
        change(&mut other);
        let bays = Bays::of(vec![("a", scene("tall-pickup")), ("b", other)]);
        match bays.pages(Paper::A4) {
            Err(CardError::Differs(difference)) => {
                assert_eq!(difference.files, ["a", "b"]);
                difference.what.join(", ")
            }
            other => panic!("{other:?}"),
        }
    };
    let what = changed(|bay| bay.garage.width = Length::feet(23.0));
    assert!(
        what.contains("garage.width") && what.contains("and"),
        "{what}"
    );
    let what = changed(|bay| bay.lift.carriage.marked_edge = Length::inches(35.0));
    assert_eq!(what, "lift.carriage.marked_edge (36.25 in and 35 in)");
    let what = changed(|bay| {
        bay.lift.locks.pop();
        bay.garage.obstacles.clear();
    });
    assert_eq!(
        what,
        "garage.obstacles (2 and 0 of them), lift.locks (15 and 14 of them)"
    );
    // A slab that is known to be thin under one vehicle is as thin under the next.
    let what = changed(|bay| bay.slab = scene("thin-slab").slab);
    assert!(what.starts_with("slab"), "{what}");
    let what = changed(|bay| bay.units = crate::bay::UnitSystem::Metric);
    assert_eq!(what, "units of the file (Imperial and Metric)");
    let what = changed(|bay| bay.lift.locks[3] = Length::inches(29.0));
    assert!(
        what.starts_with("lift.locks (") && what.ends_with("in and 29 in)"),
        "{what}"
    );
    let what = changed(|bay| bay.lift.name = "Another".into());
    assert!(
        what.starts_with("lift.name (\"") && what.ends_with("\"Another\")"),
        "{what}"
    );

    // A metric file is told of in millimetres.
    let mut wider = scene("coupe-full-rise");
    wider.garage.width = Length::metres(wider.garage.width.m() + 0.001);
    let bays = Bays::of(vec![("a", scene("coupe-full-rise")), ("b", wider)]);
    let Err(CardError::Differs(difference)) = bays.pages(Paper::A4) else {
        panic!("another garage");
    };
    let what = difference.what.join(", ");
    assert!(
        what.starts_with("garage.width (") && what.ends_with(" mm)"),
        "{what}"
    );

    let twice = Bays::of(vec![
        ("a", scene("tall-pickup")),
        ("a", scene("tall-pickup")),
    ]);
    assert!(matches!(twice.pages(Paper::A4), Err(CardError::Twice(..))));
    assert_eq!(card(&[], DAY, Paper::A4), Err(CardError::Count(0)));
}

#[test]
fn the_door_is_never_run_higher_than_the_study_lets_it() {
    use crate::clearance::LockState;
    let mut forbidden = 0;
    for (name, bay) in scenes() {
        let study = study_on(&bay, Some(DAY)).unwrap();
        let Some(safe) = study.highest_safe_lock else {
            continue;
        };
        match door::run(&bay, &study, safe) {
            door::Run::UpTo(first, highest, whole) => {
                assert!(highest <= safe && whole == (highest == safe), "{name}");
                assert!(study.doors.running.highest_clear_lock >= Some(highest));
                for lock in &study.locks[first - 1..highest] {
                    assert!(lock.door_may_run && lock.state != LockState::NotLifting);
                }
            }
            door::Run::Never => forbidden += 1,
            door::Run::NoDoor | door::Run::Held(_) => {}
        }
    }
    // Held: nothing else may be done with it, and the card says that the verdict hangs on it.
    let mut bay = scene("tall-pickup");
    bay.policy.door_held = Some(DoorHeld::Shut);
    let pages = Bays::of(vec![("a", bay)]).pages(Paper::A4).unwrap();
    let said = said(&pages);
    assert!(said.contains("only with the door shut") && said.contains("Keep the door shut"));
    assert!(!said.contains("may be run"), "{said}");

    // A running door in the way of every lock, and of some.
    let mut study = study_on(&scene("tall-pickup"), Some(DAY)).unwrap();
    let bay = scene("tall-pickup");
    study.locks[1].door_may_run = false;
    let (says, forbids) = door::says(&bay, &study, 4);
    assert!(
        forbids && says.contains("DO NOT RUN THE DOOR ABOVE LOCK 1"),
        "{says}"
    );
    study.doors.running.highest_safe_lock = None;
    let (says, forbids) = door::says(&bay, &study, 4);
    assert!(
        forbids && says.starts_with("DO NOT RUN THE DOOR while"),
        "{says}"
    );
    study.doors.may_run_when_down = false;
    assert!(door::says(&bay, &study, 4).0.contains("Not even"));
    let _ = forbidden;
}

/// Lines of an SVG from one point to another with their width, and texts with their place.
type Read = (Vec<([f64; 4], f64)>, Vec<([f64; 2], String)>);

fn read_svg(svg: &str) -> Read {
    let numbers = |text: &str| -> Vec<f64> {
        text.split(|c: char| !(c.is_ascii_digit() || c == '.' || c == '-'))
            .filter_map(|part| part.parse().ok())
            .collect()
    };
    let after = |line: &str, key: &str| -> Option<String> {
        let from = line.find(key)? + key.len();
        Some(line[from..].split('"').next()?.to_owned())
    };
    let (mut lines, mut texts) = (Vec::new(), Vec::new());
    for line in svg.lines() {
        if line.starts_with("<path d=\"M") && !line.contains('Z') {
            let at = numbers(&after(line, "d=\"").unwrap());
            let width = after(line, "stroke-width=\"").unwrap().parse().unwrap();
            lines.push(([at[0], at[1], at[2], at[3]], width));
        }
        let Some(start) = line.find("<text ") else {
            continue;
        };
        let line = &line[start..];
        let transform = after(line, "transform=\"").unwrap();
        if !transform.contains("rotate") {
            let at = numbers(&transform);
            let says = line[line.find('>').unwrap() + 1..]
                .split('<')
                .next()
                .unwrap();
            texts.push(([at[0], at[1]], says.to_owned()));
        }
    }
    (lines, texts)
}

#[test]
fn the_tape_read_back_is_full_size_and_its_lines_are_the_study_s() {
    for (bays, step_m) in [
        (three(), M_PER_INCH),
        (Bays::of(vec![("a", scene("coupe-full-rise"))]), 0.01),
    ] {
        let entries = bays.entries();
        let of = Card {
            entries: &entries,
            on: DAY,
            paper: Paper::Letter,
        };
        let pages = bays.pages(Paper::Letter).unwrap();
        let mut found: Vec<f64> = Vec::new();
        let mut ticks = 0;
        for sheet in pages.iter().filter(|one| one.tag == "TAPE") {
            let svg = crate::drawing::svg::svg(sheet);
            assert!(
                svg.contains("width=\"215.9mm\"") && svg.contains("viewBox=\"0 0 215.9 279.4\"")
            );
            let (lines, texts) = read_svg(&svg);
            // The numbers of the scale, each beside its long tick.
            let mut strips: Vec<(f64, Vec<(f64, f64)>)> = Vec::new();
            for ([x, y], says) in &texts {
                let Ok(height) = parse_length(says) else {
                    continue;
                };
                let tick = lines.iter().find(|([x1, y1, x2, y2], width)| {
                    (width - 0.22).abs() < 1e-9
                        && (y1 - y2).abs() < 1e-9
                        && (x2 - x1 - 8.0).abs() < 1e-3
                        && (x - x1 - 9.0).abs() < 1e-3
                        && (y - y1).abs() < 1.0
                });
                // A length in a label has none.
                let Some(([left, at, ..], _)) = tick else {
                    continue;
                };
                match strips.iter_mut().find(|(x, _)| (x - left).abs() < 1e-3) {
                    Some((_, all)) => all.push((height.m(), *at)),
                    None => strips.push((*left, vec![(height.m(), *at)])),
                }
            }
            for (left, numbers) in &strips {
                let (height, at) = numbers[0];
                for (other, there) in numbers {
                    // Down the page is down the column: a millimetre is a millimetre.
                    let mm = (other - height) * 1000.0;
                    assert!((at - there - mm).abs() < 0.002, "{mm}");
                    ticks += 1;
                }
                let is_step = |pair: &[(f64, f64)]| (pair[1].0 - pair[0].0 - step_m).abs() < 1e-9;
                assert!(numbers.windows(2).all(is_step));
                for ([x, y, _, y2], width) in &lines {
                    if (width - 0.5).abs() < 1e-9 && (x - left).abs() < 1e-3 {
                        assert!((y - y2).abs() < 1e-9);
                        found.push(height + (at - y) / 1000.0);
                    }
                }
            }
        }
        assert!(ticks > 20);
        let mut expected: Vec<f64> = entries
            .iter()
            .filter(|one| is_safe(one))
            .filter_map(|one| one.study.marks)
            .flat_map(|marks| {
                let release = edge::release_m(entries[0].bay, &marks);
                [Some(marks.stop_m), release, marks.never_above_m]
            })
            .flatten()
            .collect();
        expected.sort_by(f64::total_cmp);
        found.sort_by(f64::total_cmp);
        assert_eq!(found.len(), expected.len(), "{found:?} {expected:?}");
        for (found, expected) in found.iter().zip(&expected) {
            assert!((found - expected).abs() < 0.000_02, "{found} {expected}");
        }
        let locks = marks(&of).into_iter().filter(|mark| mark.kind.is_lock());
        let lift = &entries[0].bay.lift;
        for (lock, mark) in lift.locks.iter().zip(locks) {
            assert!((mark.at_m - lock.m() - lift.carriage.marked_edge.m()).abs() < 1e-12);
        }
    }
}

/// The streams of a PDF that can be unpacked, as text.
fn streams(pdf: &[u8]) -> Vec<String> {
    let find = |from: usize, what: &[u8]| {
        let rest = pdf.get(from..)?;
        let at = rest.windows(what.len()).position(|part| part == what)?;
        Some(from + at)
    };
    let (mut all, mut from) = (Vec::new(), 0);
    while let Some(start) = find(from, b"\nstream\n") {
        let start = start + 8;
        let Some(end) = find(start, b"\nendstream") else {
            break;
        };
        if let Ok(bytes) = decompress_to_vec_zlib(&pdf[start..end]) {
            all.push(String::from_utf8_lossy(&bytes).into_owned());
        }
        from = end;
    }
    all
}

#[test]
fn an_inch_of_the_tape_is_72_points_in_the_pdf() {
    let bays = Bays::of(vec![("a", scene("tall-pickup"))]);
    let pages = bays.pages(Paper::Letter).unwrap();
    let pdf = PageFormat::Pdf.written("Bay", &pages).unwrap().remove(0);
    let mut inches = 0;
    for stream in streams(&pdf) {
        // Long ticks: horizontal, 8 mm, pen of 0.22 mm. "x y m", "x y l", "S".
        let mut width = 0.0;
        let mut last: Option<[f64; 2]> = None;
        let mut ticks: Vec<[f64; 2]> = Vec::new();
        for line in stream.lines() {
            let words: Vec<&str> = line.split(' ').collect();
            let number = |index: usize| words[index].parse::<f64>().unwrap();
            match words.as_slice() {
                [_, "w"] => width = number(0),
                [_, _, "m"] => last = Some([number(0), number(1)]),
                [_, _, "l"] => {
                    let long = 8.0 * 72.0 / 25.4;
                    let from = last.unwrap();
                    let is_long = (number(0) - from[0] - long).abs() < 0.01;
                    if is_long && (width - 0.22 * 72.0 / 25.4).abs() < 1e-3 {
                        ticks.push(from);
                    }
                }
                _ => {}
            }
        }
        for pair in ticks.windows(2) {
            if (pair[0][0] - pair[1][0]).abs() < 1e-3 {
                assert!((pair[1][1] - pair[0][1] - 72.0).abs() < 0.005, "{pair:?}");
                inches += 1;
            }
        }
    }
    assert!(inches > 15, "{inches}");
}

#[test]
fn every_format_gives_the_same_bytes_every_time() {
    let bays = three();
    for format in [PageFormat::Pdf, PageFormat::Svg, PageFormat::Png] {
        let write = || {
            let pages = bays.pages(Paper::A4).unwrap();
            let pages = match format {
                // Pixels take a while: two pages will do.
                PageFormat::Png => &pages[..2],
                _ => &pages[..],
            };
            format.written("Bay", pages).unwrap()
        };
        assert_eq!(write(), write());
    }
}

#[test]
fn the_pixels_keep_the_scale_and_the_loud_page_is_red() {
    use crate::drawing::palette::paper::WARN;
    let bays = Bays::of(vec![("a", scene("no-safe-lock"))]);
    let pages = bays.pages(Paper::Letter).unwrap();
    let bytes = crate::drawing::png::png(&pages[0]).unwrap();
    let mut reader = png::Decoder::new(std::io::Cursor::new(bytes))
        .read_info()
        .unwrap();
    let info = reader.info();
    assert_eq!((info.width, info.height), (2550, 3300));
    let dims = info.pixel_dims.unwrap();
    assert_eq!((dims.xppu, dims.yppu), (11_811, 11_811));
    let mut pixels = vec![0; reader.output_buffer_size().unwrap()];
    reader.next_frame(&mut pixels).unwrap();
    let red = [WARN.0, WARN.1, WARN.2];
    let count = pixels.chunks_exact(3).filter(|one| *one == red).count();
    assert!(count > 500_000, "{count}");
}
