//! Which marks has the tape, and what do they forbid?

use super::*;

/// The lines of the tape of these bays.
fn lines(bays: &Bays) -> Vec<super::tape_marks::Mark> {
    let entries = bays.entries();
    marks(&Card {
        entries: &entries,
        day: ForDay::settled(DAY),
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
    // Where the latches let go at NEVER ABOVE itself both read the same.
    let mut bays = Bays::of(vec![("a", scene("barred-way-up"))]);
    let lock = bays.0[0].2.highest_safe_lock.unwrap();
    let mut marks = bays.0[0].2.marks.unwrap();
    marks.never_above_m = edge::release_m(&bays.0[0].1, &marks);
    bays.0[0].2.marks = Some(marks);
    let written = edge::written(&bays.0[0].1, &bays.0[0].2).unwrap();
    assert_eq!(written.release, written.never);
    // A margin that runs short a sixteenth lower leaves no graduation between.
    marks.never_above_m = marks.never_above_m.map(|at_m| at_m - M_PER_INCH / 16.0);
    assert_eq!(edge::release_m(&bays.0[0].1, &marks), None);
    bays.0[0].2.marks = Some(marks);
    let page = said(&bays.pages(Paper::Letter).unwrap());
    assert!(page.contains(&format!("DO NOT USE LOCK {lock}")), "{page}");
}

#[test]
fn metric_marks_read_in_parts_of_an_inch_that_are_never_kinder() {
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
    assert!(text.contains("edge at 8 ft 1 11/16 in (2482 mm)"), "{text}");
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
