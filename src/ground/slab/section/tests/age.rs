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
