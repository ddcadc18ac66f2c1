//! Does the section stop what must be stopped, and pass only what is known?

use jiff::civil::date;

use super::*;
use crate::bay::{Curing, SlabLine, SlabLineKind, SlabReading};
use crate::ground::Bound;
use crate::solids::test_bay::test_bay;
use crate::units::{Length, PA_PER_PSI, Pressure};

const fn inch(value: f64) -> Length {
    Length::inches(value)
}

fn psi(value: f64) -> Pressure {
    Pressure::pascals(value * PA_PER_PSI)
}

fn line(kind: SlabLineKind, from: (f64, f64), to: (f64, f64)) -> SlabLine {
    SlabLine {
        kind,
        from: [inch(from.0), inch(from.1)],
        to: [inch(to.0), inch(to.1)],
    }
}

fn readings(inches: &[(f64, f64, f64)]) -> Vec<SlabReading> {
    let reading = |&(x, y, t): &(f64, f64, f64)| SlabReading {
        x: inch(x),
        y: inch(y),
        thickness: inch(t),
    };
    inches.iter().map(reading).collect()
}

/// A good slab of 8 in and 4000 psi, poured on 14 May; 4 in, 3000 psi and 6 in are asked. The
/// plates lie at 54 to 72 in to either side, 158 to 178 in into the bay, anchors up to 7 in inward
/// and outward and 8 in before and behind their middles.
fn good() -> Bay {
    let mut bay = test_bay();
    bay.lift.manual.thickness = Some(inch(4.0));
    bay.lift.manual.strength = Some(psi(3000.0));
    bay.slab = Some(Slab {
        readings: readings(&[
            (-60.0, 168.0, 8.0),
            (-66.0, 180.0, 8.0),
            (60.0, 168.0, 8.0),
            (66.0, 180.0, 8.0),
        ]),
        strength: Some(psi(4000.0)),
        poured: Some(date(2026, 5, 14)),
        curing: Some(Curing::Moist),
        lines_listed: true,
        post_tensioned: Some(false),
        heated: Some(false),
        buried_services: Some(false),
        void_below: Some(false),
        suspended: Some(false),
        ..Slab::default()
    });
    bay
}

const LATER: Option<Date> = Some(date(2026, 8, 1));

fn slab(bay: &mut Bay) -> &mut Slab {
    bay.slab.as_mut().unwrap()
}

fn figure(bay: &Bay, on: Option<Date>, id: &str) -> Option<Figure> {
    section(bay, on).figures.into_iter().find(|f| f.id == id)
}

#[track_caller]
fn stands(bay: &Bay, id: &str) -> Standing {
    figure(bay, LATER, id).unwrap().standing
}

/// The words of a sentence, quantities as "#".
fn plain(said: &Said) -> String {
    use crate::ground::Part;
    said.0
        .iter()
        .map(|part| match part {
            Part::Words(words) => words.as_str(),
            Part::Quantity(..) => "#",
        })
        .collect()
}

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
fn three_thin_readings_fail_a_slab_said_to_be_4_in_thick() {
    // Common practice, no source: 2, 2 3/4 and 3 7/8 in where 4 in are said and asked.
    let places = [(60.0, 168.0), (66.0, 180.0), (70.0, 150.0)];
    let thin: Vec<(f64, f64, f64)> = places
        .iter()
        .zip([2.0, 2.75, 3.875])
        .map(|(p, t)| (p.0, p.1, t))
        .collect();
    let mut bay = good();
    slab(&mut bay).claimed_thickness = Some(inch(4.0));
    slab(&mut bay).readings = readings(&thin);
    let section = section(&bay, LATER);
    assert_eq!(section.standing(), Standing::Stops);
    let right = figure(&bay, LATER, "thickness.right").unwrap();
    assert_eq!(right.standing, Standing::Stops);
    assert!((right.found.unwrap().number().unwrap() - 2.0 * 0.0254).abs() < 1e-12);
    // The worst place is named, in the figure and in the lead.
    let reason = right.reason.unwrap();
    assert!(
        plain(&reason).contains("right of the door's middle"),
        "{reason:?}"
    );
    let x = Quantity::Length(60.0 * 0.0254);
    let names = |said: &Said| {
        said.0.iter().any(|part| {
            matches!(part, crate::ground::Part::Quantity(q, _)
                if (q.number().unwrap_or(f64::NAN) - x.number().unwrap()).abs() < 1e-9)
        })
    };
    assert!(names(&reason) && names(&section.lead));
    // Wherever they lie: away from the plates they speak against plates that have none.
    let far: Vec<(f64, f64, f64)> = thin.iter().map(|r| (0.0, r.1 - 140.0, r.2)).collect();
    slab(&mut bay).readings = readings(&far);
    assert_eq!(stands(&bay, "thickness.elsewhere"), Standing::Stops);
    assert_eq!(stands(&bay, "thickness.right"), Standing::Unknown);
    // A plate with one reading only: too thin is too thin.
    slab(&mut bay).readings = readings(&thin[2..]);
    assert_eq!(stands(&bay, "thickness.right"), Standing::Stops);
}

#[test]
fn a_claim_is_never_a_pass() {
    let mut bay = good();
    slab(&mut bay).claimed_thickness = Some(inch(12.0));
    slab(&mut bay).readings.clear();
    assert_eq!(stands(&bay, "thickness.left"), Standing::Unknown);
    assert_eq!(stands(&bay, "thickness.claimed"), Standing::Noted);
    slab(&mut bay).readings = readings(&[(60.0, 168.0, 8.0)]);
    assert_eq!(
        stands(&bay, "thickness.right"),
        Standing::Unknown,
        "one is too few"
    );
    // But one that is too thin stands until it is measured.
    slab(&mut bay).claimed_thickness = Some(inch(3.0));
    assert_eq!(stands(&bay, "thickness.claimed"), Standing::Stops);
    let mut bay = good();
    slab(&mut bay).claimed_thickness = Some(inch(3.0));
    assert_eq!(stands(&bay, "thickness.claimed"), Standing::Noted);
}

#[test]
fn the_more_demanding_source_governs_and_both_are_shown() {
    // Common practice, no source: 4 in advertised against 7 in in the manual gives 7 in.
    let mut bay = good();
    bay.lift.advertised.thickness = Some(inch(4.0));
    bay.lift.manual.thickness = Some(inch(7.0));
    slab(&mut bay).readings[0].thickness = inch(6.5);
    let left = figure(&bay, LATER, "thickness.left").unwrap();
    assert_eq!(left.standing, Standing::Stops);
    assert_eq!(
        left.limit,
        Some((Bound::AtLeast, Quantity::Length(inch(7.0).m())))
    );
    assert!(plain(left.note.as_ref().unwrap()).contains("the manual asks #, the advertisement #"));
    assert_eq!(stands(&bay, "thickness.right"), Standing::Passes);
    // What only an advertisement says is no pass.
    bay.lift.manual.thickness = None;
    assert_eq!(stands(&bay, "thickness.left"), Standing::Unknown);
    bay.lift.advertised.thickness = None;
    assert_eq!(stands(&bay, "thickness.left"), Standing::Unknown);
}

#[test]
fn what_is_in_the_slab_stops_and_what_is_not_said_is_not_known() {
    let mut bay = good();
    assert_eq!(stands(&bay, "drilling"), Standing::Passes);
    slab(&mut bay).heated = None;
    assert_eq!(stands(&bay, "drilling"), Standing::Unknown);
    slab(&mut bay).post_tensioned = Some(true);
    slab(&mut bay).suspended = Some(true);
    for id in ["inside.post_tensioned", "inside.suspended"] {
        let figure = figure(&bay, LATER, id).unwrap();
        assert_eq!(figure.standing, Standing::Stops);
        assert!(figure.cure.is_some() && figure.reason.is_some());
    }
    assert_eq!(
        figure(&bay, LATER, "bit"),
        None,
        "no bit where nothing is drilled"
    );
}

#[test]
fn a_joint_6_in_from_a_plate_is_accepted_where_the_manual_asks_no_more() {
    // Common practice, no source. The right plate ends at 72 in, its anchors at 70 in.
    let mut bay = good();
    let joint = |x: f64| vec![line(SlabLineKind::Joint, (x, 0.0), (x, 330.0))];
    slab(&mut bay).lines = joint(78.0);
    assert_eq!(stands(&bay, "distance.right.joint"), Standing::Passes);
    // Anchors 6 in off as written: it holds, but not by more than measuring errs.
    slab(&mut bay).lines = joint(76.0);
    assert_eq!(stands(&bay, "distance.right.joint"), Standing::Unknown);
    slab(&mut bay).lines = joint(75.9);
    assert_eq!(stands(&bay, "distance.right.joint"), Standing::Stops);
    slab(&mut bay).lines = joint(78.0);
    bay.lift.manual.edge_distance = Some(inch(9.0));
    assert_eq!(stands(&bay, "distance.right.joint"), Standing::Stops);
    // Asked nothing: eight diameters of 3/4 in tell near from far.
    bay.lift.manual.edge_distance = None;
    assert_eq!(stands(&bay, "distance.right.joint"), Standing::Noted);
    slab(&mut bay).lines = joint(75.0);
    assert_eq!(stands(&bay, "distance.right.joint"), Standing::Unknown);
}

#[test]
fn joint_crack_edge_and_drain_are_each_looked_at() {
    for (kind, id) in [
        (SlabLineKind::Joint, "joint"),
        (SlabLineKind::Crack, "crack"),
        (SlabLineKind::Edge, "edge"),
        (SlabLineKind::Drain, "drain"),
    ] {
        let mut bay = good();
        // The nearest anchor of the left post stands at x = -70 in, y = 176 in.
        slab(&mut bay).lines = vec![line(kind, (-75.0, 181.0), (-75.0, 300.0))];
        let left = figure(&bay, LATER, &format!("distance.left.{id}")).unwrap();
        let off = left.found.unwrap().number().unwrap() / 0.0254;
        assert!((off - 50.0_f64.sqrt()).abs() < 1e-9, "{off}");
        assert_eq!(left.standing, Standing::Passes);
        slab(&mut bay).lines = vec![line(kind, (-60.0, 0.0), (-66.0, 330.0))];
        assert_eq!(stands(&bay, &format!("through.left.{id}")), Standing::Stops);
        assert!(figure(&bay, LATER, &format!("distance.left.{id}")).is_none());
        assert!(figure(&bay, LATER, &format!("through.right.{id}")).is_none());
    }
    let mut bay = good();
    slab(&mut bay).lines_listed = false;
    assert_eq!(stands(&bay, "lines"), Standing::Unknown);
}

#[test]
fn the_slabs_own_edge_counts() {
    let mut bay = good();
    let outline = |right: f64| -> Vec<[Length; 2]> {
        [(-144.0, 0.0), (right, 0.0), (right, 330.0), (-144.0, 330.0)]
            .map(|(x, y)| [inch(x), inch(y)])
            .into()
    };
    slab(&mut bay).outline = outline(90.0);
    assert_eq!(stands(&bay, "distance.right.edge"), Standing::Passes);
    slab(&mut bay).outline = outline(74.0);
    assert_eq!(stands(&bay, "distance.right.edge"), Standing::Stops);
    slab(&mut bay).outline = outline(68.0);
    assert_eq!(stands(&bay, "overhang.right"), Standing::Stops);
    slab(&mut bay).outline.truncate(2);
    assert_eq!(stands(&bay, "outline"), Standing::Unknown);
    // A reading outside the slab is told.
    slab(&mut bay).outline = outline(90.0);
    slab(&mut bay)
        .readings
        .extend(readings(&[(100.0, 20.0, 9.0)]));
    assert_eq!(stands(&bay, "readings.off_slab"), Standing::Unknown);
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
fn anchors_of_3_4_in_take_a_bit_of_3_4_in() {
    // Common practice, no source.
    let bit = figure(&good(), LATER, "bit").unwrap();
    assert_eq!(bit.found, Some(Quantity::Length(inch(0.75).m())));
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
        waste: None,
    });
    assert_eq!(stands(&bay, "thickness.left"), Standing::Unknown);
    assert_eq!(stands(&bay, "pad.depth"), Standing::Unknown);
    assert_eq!(stands(&bay, "pad.strength"), Standing::Passes);
    // 2 x 4 x 4 x 1/4 cu ft = 8 cu ft; with a tenth over it 8.8: 14.67 bags of 0.60.
    let bags = figure(&bay, LATER, "pad.bags").unwrap();
    assert_eq!(bags.found, Some(Quantity::Count(15.0)));
}

#[test]
fn nothing_known_of_the_slab_is_not_known() {
    let section = section(&test_bay(), LATER);
    assert_eq!(section.standing(), Standing::Unknown);
    assert!(plain(&section.lead).contains("Nothing is known of the slab"));
    for figure in &section.figures {
        assert_ne!(figure.standing, Standing::Stops, "{}", figure.id);
        if figure.standing == Standing::Unknown {
            assert!(figure.cure.is_some(), "{}", figure.id);
        }
    }
    // Where to drill is said for both plates.
    assert_eq!(section.notes.len(), 2);
}

#[test]
fn ids_are_unique() {
    let mut bay = good();
    slab(&mut bay).lines = vec![
        line(SlabLineKind::Joint, (0.0, 0.0), (0.0, 300.0)),
        line(SlabLineKind::Joint, (0.0, 20.0), (100.0, 20.0)),
        line(SlabLineKind::Drain, (-60.0, 0.0), (-60.0, 300.0)),
    ];
    slab(&mut bay).heated = Some(true);
    slab(&mut bay).void_below = Some(true);
    slab(&mut bay).suspended = None;
    let figures = section(&bay, LATER).figures;
    let mut ids: Vec<&str> = figures.iter().map(|f| f.id.as_ref()).collect();
    let count = ids.len();
    ids.sort_unstable();
    ids.dedup();
    assert_eq!(ids.len(), count);
}
