//! Is the map never above the data?

use proptest::prelude::*;

use super::*;
use crate::bay::{SlabLine, SlabReading};
use crate::solids::test_bay::test_bay;
use crate::units::Length;

const INCH: f64 = 0.0254;

fn reading(x: f64, y: f64, thickness: f64) -> SlabReading {
    SlabReading {
        x: Length::metres(x),
        y: Length::metres(y),
        thickness: Length::metres(thickness),
    }
}

/// Readings in inches: place and thickness.
pub(in crate::ground::slab) fn with_readings(readings: &[(f64, f64, f64)]) -> Bay {
    let mut bay = test_bay();
    bay.slab = Some(Slab {
        readings: readings
            .iter()
            .map(|(x, y, t)| reading(x * INCH, y * INCH, t * INCH))
            .collect(),
        ..Slab::default()
    });
    bay
}

#[test]
fn the_plates_lie_under_the_posts() {
    // As the solids have them: 18 in by 20 in about 63 in, 168 in.
    let map = SlabMap::of(&test_bay());
    let rect = map.plate(Side::Right).rect;
    assert!((rect.low / INCH - DVec2::new(54.0, 158.0)).length() < 1e-9);
    assert!((rect.high / INCH - DVec2::new(72.0, 178.0)).length() < 1e-9);
    for (side, name) in [(Side::Left, "left"), (Side::Right, "right")] {
        let solids = crate::solids::posts::posts(&test_bay());
        let name = format!("lift/base plate {name}");
        let (low, high) = solids.iter().find(|s| s.name == name).unwrap().bounds();
        let rect = map.plate(side).rect;
        assert!((low.truncate() - rect.low).length() < 1e-9);
        assert!((high.truncate() - rect.high).length() < 1e-9);
    }
}

#[test]
fn two_readings_within_600_mm_make_a_thickness() {
    // The right plate ends at x = 72 in, y = 158 to 178 in. 600 mm are 23.622 in.
    let near = (95.6, 168.0);
    let far = (95.7, 168.0);
    for (places, expect) in [
        (vec![(60.0, 168.0, 5.0)], None),
        (vec![(60.0, 168.0, 5.0), (near.0, near.1, 4.0)], Some(4.0)),
        (vec![(60.0, 168.0, 5.0), (far.0, far.1, 4.0)], None),
        (
            vec![(60.0, 168.0, 5.0), (far.0, far.1, 2.0), (66.0, 170.0, 6.0)],
            Some(5.0),
        ),
    ] {
        let map = SlabMap::of(&with_readings(&places));
        let found = map.under_plate_m(Side::Right).map(|m| m / INCH);
        match (found, expect) {
            (Some(found), Some(expect)) => assert!((found - expect).abs() < 1e-9),
            (found, expect) => assert_eq!(found, expect, "{places:?}"),
        }
        assert_eq!(map.under_plate_m(Side::Left), None);
    }
}

#[test]
fn a_reading_off_the_slab_counts_against_it_and_never_for_it() {
    // The room is 288 in wide and 336 in deep; a slab of its own ends at x = 80 in.
    let mut bay = with_readings(&[(60.0, 168.0, 5.0), (85.0, 168.0, 9.0)]);
    let slab = bay.slab.as_mut().unwrap();
    slab.outline = [(-80.0, 0.0), (80.0, 0.0), (80.0, 300.0), (-80.0, 300.0)]
        .map(|(x, y)| [Length::inches(x), Length::inches(y)])
        .into();
    let map = SlabMap::of(&bay);
    assert!(map.readings[0].on_slab && !map.readings[1].on_slab);
    assert_eq!(map.under_plate_m(Side::Right), None);
    let slab = bay.slab.as_mut().unwrap();
    slab.readings
        .push(reading(64.0 * INCH, 160.0 * INCH, 5.0 * INCH));
    slab.readings[1].thickness = Length::inches(2.0);
    let found = SlabMap::of(&bay).under_plate_m(Side::Right).unwrap();
    assert!((found / INCH - 2.0).abs() < 1e-9);
}

#[test]
fn an_outline_that_encloses_nothing_is_not_known() {
    let mut bay = with_readings(&[]);
    bay.slab.as_mut().unwrap().outline = vec![[Length::ZERO; 2]; 3];
    let map = SlabMap::of(&bay);
    assert!(map.outline_is_broken);
    assert_eq!(map.outline.len(), 4, "the room's instead");
    assert!(!SlabMap::of(&with_readings(&[])).outline_is_broken);
}

#[test]
fn a_joint_parts_a_reading_from_its_plate() {
    let mut bay = with_readings(&[(85.0, 168.0, 5.0), (60.0, 168.0, 5.0)]);
    let at = |x: f64, y: f64| [Length::inches(x), Length::inches(y)];
    bay.slab.as_mut().unwrap().lines = vec![SlabLine {
        kind: SlabLineKind::Joint,
        from: at(78.0, 0.0),
        to: at(78.0, 300.0),
    }];
    let map = SlabMap::of(&bay);
    assert!(map.readings[0].parted);
    assert!(!map.readings[1].parted);
    // It is not one of the two, but counts where it is thinner.
    assert_eq!(map.under_plate_m(Side::Right), None);
    assert_eq!(map.thickness_at_m(DVec2::new(75.0, 168.0) * INCH), None);
    let slab = bay.slab.as_mut().unwrap();
    slab.readings
        .push(reading(64.0 * INCH, 160.0 * INCH, 6.0 * INCH));
    slab.readings[0].thickness = Length::inches(2.0);
    for kind in [SlabLineKind::Joint, SlabLineKind::Edge] {
        bay.slab.as_mut().unwrap().lines[0].kind = kind;
        let map = SlabMap::of(&bay);
        let found = map.under_plate_m(Side::Right).unwrap();
        assert!((found / INCH - 2.0).abs() < 1e-9);
        assert_eq!(map.plate(Side::Right).readings_used, 2);
    }
}

#[test]
fn one_hole_is_one_reading_however_often_it_is_written() {
    for (off, expect) in [(0.0, 1), (0.04, 1), (1.9, 1), (2.0, 2)] {
        let map = SlabMap::of(&with_readings(&[
            (60.0, 168.0, 5.0),
            (60.0 + off, 168.0, 5.0),
        ]));
        assert_eq!(map.plate(Side::Right).readings_used, expect, "{off}");
        assert_eq!(map.under_plate_m(Side::Right).is_some(), expect > 1);
        let at = DVec2::new(60.0, 168.0) * INCH;
        assert_eq!(map.thickness_at_m(at).is_some(), expect > 1);
    }
}

#[test]
fn at_exactly_600_mm_a_reading_counts_and_is_told_so() {
    let edge = 72.0 * INCH;
    for (past, near) in [(0.6, true), (0.6 + 1e-12, true), (0.601, false)] {
        let mut bay = with_readings(&[(60.0, 168.0, 5.0)]);
        let slab = bay.slab.as_mut().unwrap();
        slab.readings
            .push(reading(edge + past, 168.0 * INCH, 5.0 * INCH));
        let map = SlabMap::of(&bay);
        assert_eq!(map.readings[1].is_near(), near, "{past}");
        assert_eq!(map.plate(Side::Right).readings_used == 2, near, "{past}");
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(256))]

    #[test]
    fn the_map_is_never_above_a_reading_within_reach(
        readings in prop::collection::vec((-2.5..2.5_f64, 3.0..5.5_f64, 0.04..0.3_f64), 0..14),
        place in (-2.5..2.5_f64, 3.0..5.5_f64),
        share in (0.0..=1.0_f64, 0.0..=1.0_f64),
    ) {
        let mut bay = test_bay();
        bay.slab = Some(Slab {
            readings: readings.iter().map(|(x, y, t)| reading(*x, *y, *t)).collect(),
            ..Slab::default()
        });
        let map = SlabMap::of(&bay);
        let within = |at: DVec2| -> Vec<(f64, f64, f64)> {
            let near = |r: &&(f64, f64, f64)| DVec2::new(r.0, r.1).distance(at) <= 0.6;
            readings.iter().filter(near).copied().collect()
        };
        let at = DVec2::from(place);
        let found = map.thickness_at_m(at);
        let near = within(at);
        // Two within 50 mm are one; three of them may be told as one place or two.
        let apart = |k: usize, l: usize| {
            let [a, b] = [k, l].map(|i| DVec2::new(near[i].0, near[i].1));
            a.distance(b) >= 0.05
        };
        let pairs = || (0..near.len()).flat_map(|k| (0..k).map(move |l| (k, l)));
        prop_assert!(found.is_none() || pairs().any(|(k, l)| apart(k, l)));
        if near.len() >= 2 && pairs().all(|(k, l)| apart(k, l)) {
            prop_assert!(found.is_some());
        }
        let near: Vec<f64> = near.iter().map(|r| r.2).collect();
        for reading in near {
            prop_assert!(found.is_none_or(|found| found <= reading));
        }
        // Under a plate nothing is thicker than at any of its points.
        for plate in &map.plates {
            let size = plate.rect.high - plate.rect.low;
            let point = plate.rect.low + size * DVec2::from(share);
            if let (Some(under), Some(here)) =
                (map.under_plate_m(plate.side), map.thickness_at_m(point))
            {
                prop_assert!(under <= here);
            }
        }
    }
}
