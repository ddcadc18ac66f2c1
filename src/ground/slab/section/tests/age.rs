//! Does nothing pass before its age, and nothing by a pad that is only wanted?

use super::*;

#[test]
fn a_new_pad_of_8_in_and_4000_psi_passes_after_its_age() {
    // Common practice, no source.
    let mut bay = good();
    assert_eq!(section(&bay, LATER).standing(), Standing::Passes);
    // 3000 of 4000 psi take 8.28 days by ACI 209R-92: nine.
    for (day, passes) in [(22, false), (23, true), (30, true)] {
        let on = Some(date(2026, 5, day));
        let standing = section(&bay, on).standing();
        assert_eq!(standing == Standing::Passes, passes, "{day}");
        assert_eq!(standing == Standing::Stops, !passes, "{day}");
    }
    // All of its strength asked, or the cure not known: day 28.
    bay.lift.manual.strength = Some(psi(4000.0));
    for (month, day, passes) in [(6, 10, false), (6, 11, true)] {
        let on = Some(date(2026, month, day));
        assert_eq!(section(&bay, on).standing() == Standing::Passes, passes);
    }
    // Without a day nothing has aged.
    assert_eq!(section(&bay, None).standing(), Standing::Unknown);
    let early = Some(date(2026, 5, 1));
    let not_yet = figure(&bay, early, "poured").unwrap();
    assert_eq!(not_yet.standing, Standing::Stops);
}

#[test]
fn age_and_strength_not_known_pass_nothing() {
    let mut bay = good();
    slab(&mut bay).poured = None;
    assert_eq!(stands(&bay, "age"), Standing::Unknown);
    assert_eq!(stands(&bay, "strength"), Standing::Unknown);
    // Too weak at any age stops whatever the age.
    slab(&mut bay).strength = Some(psi(2500.0));
    assert_eq!(stands(&bay, "strength"), Standing::Stops);
    slab(&mut bay).strength = None;
    slab(&mut bay).age_days = Some(9000.0);
    assert_eq!(stands(&bay, "strength"), Standing::Unknown);
    bay.lift.manual.strength = None;
    slab(&mut bay).strength = Some(psi(2500.0));
    assert_eq!(stands(&bay, "strength"), Standing::Unknown);
    // The cure not known before 28 days.
    let mut bay = good();
    slab(&mut bay).curing = None;
    let on = Some(date(2026, 6, 1));
    let strength = figure(&bay, on, "strength").unwrap();
    assert_eq!(strength.standing, Standing::Unknown);
}

#[test]
fn an_age_that_is_asked_stops_whatever_is_known_of_the_strength() {
    for by_anchors in [false, true] {
        let mut bay = good();
        if by_anchors {
            bay.lift.base_plate.anchor_age_days = Some(60.0);
        } else {
            bay.lift.manual.age_days = Some(60.0);
        }
        slab(&mut bay).poured = None;
        slab(&mut bay).strength = None;
        slab(&mut bay).age_days = Some(30.0);
        assert_eq!(stands(&bay, "age"), Standing::Stops);
        // Nor where it is known to be too weak.
        slab(&mut bay).strength = Some(psi(2500.0));
        assert_eq!(stands(&bay, "age"), Standing::Stops);
        slab(&mut bay).age_days = Some(60.0);
        assert_eq!(stands(&bay, "age"), Standing::Passes);
        slab(&mut bay).strength = None;
        assert_eq!(stands(&bay, "strength"), Standing::Unknown);
        // A day that is too early by the age alone stops, a later one is not known.
        slab(&mut bay).age_days = None;
        slab(&mut bay).poured = Some(date(2026, 5, 14));
        slab(&mut bay).drill_on = Some(date(2026, 6, 20));
        assert_eq!(stands(&bay, "drill_day"), Standing::Stops);
        slab(&mut bay).drill_on = Some(date(2026, 7, 20));
        assert_eq!(stands(&bay, "drill_day"), Standing::Unknown);
    }
    // What only an advertisement asks is no pass.
    let mut bay = good();
    bay.lift.advertised.age_days = Some(7.0);
    assert_eq!(stands(&bay, "age"), Standing::Unknown);
}

#[test]
fn a_day_of_loading_ahead_hides_neither_today_nor_the_drilling() {
    let mut bay = good();
    slab(&mut bay).load_on = Some(date(2026, 7, 20));
    let early = Some(date(2026, 5, 20));
    let drill = figure(&bay, early, "drill_day").unwrap();
    assert_eq!(drill.found, Some(Quantity::Day(date(2026, 5, 23))));
    let found = section(&bay, early);
    assert_eq!(found.standing(), Standing::Passes);
    assert!(plain(&found.lead).contains("the day of the first raise, and not today"));
    assert!(found.lead.0.iter().any(|part| matches!(
        part,
        crate::ground::Part::Quantity(Quantity::Day(day), _) if *day == date(2026, 7, 20)
    )));
    let holds_on = crate::ground::slab::HOLDS_ON;
    assert!(figure(&bay, early, holds_on).is_some());
    let late = section(&bay, LATER);
    assert!(!plain(&late.lead).contains("not today"));
    assert_eq!(figure(&bay, LATER, holds_on), None);
    // No slab is so many days less than none old.
    slab(&mut bay).load_on = None;
    let early = Some(date(2026, 4, 1));
    let age = figure(&bay, early, "age").unwrap();
    assert_eq!((age.standing, age.found), (Standing::Unknown, None));
    assert_eq!(
        figure(&bay, early, "poured").unwrap().standing,
        Standing::Stops
    );
}

#[test]
fn days_before_the_concrete_is_ready_stop() {
    let mut bay = good();
    slab(&mut bay).drill_on = Some(date(2026, 5, 20));
    slab(&mut bay).load_on = Some(date(2026, 5, 25));
    assert_eq!(stands(&bay, "drill_day"), Standing::Stops);
    assert_eq!(stands(&bay, "load_day"), Standing::Passes);
    assert_eq!(
        stands(&bay, "age"),
        Standing::Passes,
        "on the day of the first raise"
    );
    slab(&mut bay).load_on = Some(date(2026, 5, 22));
    assert_eq!(stands(&bay, "load_day"), Standing::Stops);
    assert_eq!(stands(&bay, "strength"), Standing::Stops);
    // The days that are not given are told while they lie ahead.
    slab(&mut bay).drill_on = None;
    slab(&mut bay).load_on = None;
    let on = Some(date(2026, 5, 20));
    let first = figure(&bay, on, "load_day").unwrap();
    assert_eq!(first.found, Some(Quantity::Day(date(2026, 5, 23))));
    assert_eq!(figure(&bay, LATER, "load_day"), None);
}

#[test]
fn a_wanted_pad_changes_no_verdict() {
    let mut bay = good();
    slab(&mut bay).readings.clear();
    slab(&mut bay).new_pad = Some(crate::bay::NewPad {
        count: 2,
        length: inch(48.0),
        width: inch(48.0),
        depth: inch(3.0),
        strength: Some(psi(4000.0)),
        waste: crate::bay::NewPad::USUAL_WASTE,
    });
    assert_eq!(stands(&bay, "thickness.left"), Standing::Unknown);
    assert_eq!(stands(&bay, "pad.depth"), Standing::Unknown);
    assert_eq!(stands(&bay, "pad.strength"), Standing::Passes);
    // 2 x 4 x 4 x 1/4 cu ft = 8 cu ft; with a tenth over it 8.8: 14.67 bags of 0.60.
    let bags = figure(&bay, LATER, "pad.bags").unwrap();
    assert_eq!(bags.found, Some(Quantity::Count(15.0)));
}
