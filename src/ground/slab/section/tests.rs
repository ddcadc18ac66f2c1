//! Does the section stop what must be stopped, and pass only what is known?

mod age;
mod lines;

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
        outline: [(-144.0, 0.0), (144.0, 0.0), (144.0, 336.0), (-144.0, 336.0)]
            .map(|(x, y)| [inch(x), inch(y)])
            .into(),
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
fn anchors_of_3_4_in_take_a_bit_of_3_4_in() {
    // Common practice, no source.
    let bit = figure(&good(), LATER, "bit").unwrap();
    assert_eq!(bit.found, Some(Quantity::Length(inch(0.75).m())));
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
