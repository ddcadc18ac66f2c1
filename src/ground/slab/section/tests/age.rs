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
fn a_day_of_loading_ahead_is_never_now() {
    let mut bay = good();
    slab(&mut bay).load_on = Some(date(2026, 7, 20));
    // Too young, old enough but of less strength than it will have, and the last day before.
    for (month, day) in [(5, 20), (5, 25), (6, 10)] {
        let early = Some(date(2026, month, day));
        let found = section(&bay, early);
        assert_eq!(found.standing(), Standing::Stops, "{month} {day}");
        assert!(plain(&found.lead).starts_with("Not yet: its age and strength are counted as of"));
        for one in &found.figures {
            let is_it = one.id == HOLDS_ON;
            assert_eq!(one.standing == Standing::Stops, is_it, "{}", one.id);
        }
        let stop = figure(&bay, early, HOLDS_ON).unwrap();
        assert_eq!(stop.found, Some(Quantity::Day(date(2026, 7, 20))));
        assert!(stop.cure.unwrap().contains("2026-07-20"));
        // All in the first sentence: the day from which it holds, and that of drilling.
        let lead = &found.lead;
        let days: Vec<Date> = lead.0.iter().filter_map(day_in).collect();
        assert!(days.contains(&date(2026, 7, 20)));
        assert_eq!(days.contains(&date(2026, 5, 23)), day == 20, "{days:?}");
        assert!(!plain(lead).contains(". "), "{}", plain(lead));
    }
    let from = |day: i8| {
        let on = Some(date(2026, 5, day));
        crate::ground::slab::drill_from(&[section(&bay, on)])
    };
    assert_eq!(from(20), Some(date(2026, 5, 23)));
    assert_eq!(from(25), None);
    // Of 28 days it has all that is counted, and on the day itself too.
    for on in [date(2026, 6, 11), date(2026, 7, 20), date(2026, 8, 1)] {
        let late = section(&bay, Some(on));
        assert_eq!(late.standing(), Standing::Passes, "{on}");
        assert!(!plain(&late.lead).contains("Not yet"));
        assert_eq!(figure(&bay, Some(on), HOLDS_ON), None);
    }
    // A day wanted for drilling hides the first one as little.
    slab(&mut bay).drill_on = Some(date(2026, 6, 1));
    let on = Some(date(2026, 5, 20));
    let from = crate::ground::slab::drill_from(&[section(&bay, on)]);
    assert_eq!(from, Some(date(2026, 5, 23)));
    slab(&mut bay).drill_on = None;
    // A written age stands for itself; where it is told how to look ahead, it is told to change that.
    slab(&mut bay).poured = None;
    slab(&mut bay).age_days = Some(3.0);
    let stop = figure(&bay, Some(date(2026, 5, 20)), HOLDS_ON).unwrap();
    assert_eq!(stop.standing, Standing::Stops);
    assert!(stop.cure.unwrap().contains("`poured`"));
    slab(&mut bay).age_days = Some(14_600.0);
    assert_eq!(stands(&bay, "age"), Standing::Passes);
    assert_eq!(figure(&bay, Some(date(2026, 5, 20)), HOLDS_ON), None);
    slab(&mut bay).age_days = None;
    slab(&mut bay).poured = Some(date(2026, 5, 14));
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

fn day_in(part: &crate::ground::Part) -> Option<Date> {
    match part {
        crate::ground::Part::Quantity(Quantity::Day(day), _) => Some(*day),
        _ => None,
    }
}

#[test]
fn a_strength_by_the_curve_is_told_as_such() {
    let bay = good();
    let lead = |day| plain(&section(&bay, Some(day)).lead);
    let young = lead(date(2026, 5, 23));
    let first = young.split(". ").next().unwrap();
    assert!(first.contains("by a mean curve"), "{young}");
    assert!(young.contains("28 days old"), "{young}");
    assert!(!lead(date(2026, 6, 11)).contains("curve"));
}

#[test]
fn adhesive_anchors_wait_three_weeks() {
    // ACI 318-19, 17.2.2, from memory.
    let mut bay = good();
    bay.lift.base_plate.anchor = Some(crate::bay::Anchor {
        kind: Some(crate::bay::AnchorKind::Adhesive),
        ..crate::bay::Anchor::default()
    });
    for (month, day, expect) in [(5, 27, Standing::Stops), (6, 4, Standing::Passes)] {
        let age = figure(&bay, Some(date(2026, month, day)), "age").unwrap();
        assert_eq!(age.standing, expect);
        assert!(age.source.unwrap().contains("17.2.2"));
    }
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
    for id in ["drill_from", "load_from"] {
        let first = figure(&bay, on, id).unwrap();
        assert_eq!(first.found, Some(Quantity::Day(date(2026, 5, 23))));
        assert_eq!(figure(&bay, LATER, id), None);
    }
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
