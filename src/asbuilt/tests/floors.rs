//! Uneven floors: a rigid plate rests on them from above.

use super::*;
use crate::bay::{FallToward, Floor};

pub(super) fn level(measured: &mut Measured, side: Side, mm: [f64; 4]) {
    for (number, mm) in (1..=4).zip(mm) {
        let at = PlateCorner { side, number };
        let height = Length::mm(mm);
        measured.levels.push(CornerHeight { at, height });
    }
}

pub(super) fn plumb(measured: &mut Measured, side: Side, slope: DVec2) {
    for (off, ways) in [
        (slope.x, [Toward::Right, Toward::Left]),
        (slope.y, [Toward::Front, Toward::Rear]),
    ] {
        measured.plumb.push(Plumb {
            side,
            toward: ways[usize::from(off < 0.0)],
            out: Length::metres(off.abs() * 2.4),
            over: Length::metres(2.4),
            tolerance: Length::mm(1.0),
            place: None,
            over_place: None,
        });
    }
}

fn plumb_posts(planned: &Planned) -> Measured {
    let mut measured = taken(planned, &usual(), &mut || 0.0);
    for side in SIDES {
        plumb(&mut measured, side, DVec2::ZERO);
    }
    measured
}

fn wanted(bay: &Bay, measured: &Measured) -> [f64; 4] {
    as_built(bay, measured).unwrap().shims[0].wanted_m.unwrap()
}

fn close(found: [f64; 4], expected: [f64; 4]) {
    let off = [0, 1, 2, 3].map(|i| (found[i] - expected[i]).abs());
    assert!(off.iter().all(|off| *off < 1e-9), "{found:?} {expected:?}");
}

/// A column that is plumb over three corners needs a shim at the fourth alone; a plane fitted through
/// all four would shim two.
#[test]
fn a_low_corner_gets_its_own_shim_and_no_other_corner_any() {
    let bay = test_bay();
    let mut measured = plumb_posts(&Planned::of(&bay));
    level(&mut measured, Side::Left, [-3.0, 0.0, 0.0, 0.0]);
    close(wanted(&bay, &measured), [0.003, 0.0, 0.0, 0.0]);
}

#[test]
fn a_level_plate_on_a_hump_is_filled_up_to_the_hump() {
    let bay = test_bay();
    let mut measured = plumb_posts(&Planned::of(&bay));
    level(&mut measured, Side::Left, [10.0, 0.0, 10.0, 0.0]);
    level(&mut measured, Side::Right, [0.0; 4]);
    let built = as_built(&bay, &measured).unwrap();
    close(built.shims[0].wanted_m.unwrap(), [0.0, 0.01, 0.0, 0.01]);
    // It stands on the two that are up, not on the mean of four.
    assert!((built.standing.right_higher_m.unwrap() + 0.01).abs() < 1e-9);
}

/// Planes on three of four tops that the fourth does not come through, found one by one.
fn rests(places: &[DVec2; 4], tops: &[f64; 4]) -> Vec<DVec2> {
    let mut found = Vec::new();
    for left_out in 0..4 {
        let on: Vec<usize> = (0..4).filter(|i| *i != left_out).collect();
        let (a, b) = (places[on[1]] - places[on[0]], places[on[2]] - places[on[0]]);
        let (up_a, up_b) = (tops[on[1]] - tops[on[0]], tops[on[2]] - tops[on[0]]);
        let det = a.perp_dot(b);
        let slope = DVec2::new(up_a * b.y - up_b * a.y, a.x * up_b - b.x * up_a) / det;
        let there = tops[on[0]] + slope.dot(places[left_out] - places[on[0]]);
        if there >= tops[left_out] - 1e-12 {
            found.push(slope);
        }
    }
    found
}

/// Forty floors, columns square on plates that rest on three corners: with the advised shims every
/// plate lies on all four, and the column is plumb.
#[test]
fn after_the_advised_shims_no_column_leans_more() {
    let bay = test_bay();
    let planned = Planned::of(&bay);
    let places = [1, 2, 3, 4].map(|number| {
        planned.corner_m(PlateCorner {
            side: Side::Left,
            number,
        })
    });
    let mut random = Pcg64Mcg::seed_from_u64(18);
    let mut unit = || (random.next_u64() >> 11) as f64 / (1_u64 << 53) as f64;
    for _ in 0..40 {
        let mm = [0; 4].map(|_| 5.0 * unit() - 2.5);
        let floor = mm.map(|mm| mm * 1e-3);
        for rest in rests(&places, &floor) {
            let mut measured = taken(&planned, &usual(), &mut || 0.0);
            plumb(&mut measured, Side::Left, -rest);
            level(&mut measured, Side::Left, mm);
            let wanted = wanted(&bay, &measured);
            assert!(wanted.iter().all(|height| *height >= 0.0));
            assert!(wanted.iter().any(|height| *height <= 1e-12));
            let tops = [0, 1, 2, 3].map(|i| floor[i] + wanted[i]);
            let after = rests(&places, &tops);
            assert!(!after.is_empty());
            for after in after {
                assert!(after.length() < 1e-9, "{rest} {after}");
            }
        }
    }
}

#[test]
fn plumb_against_levels_gives_no_shims_and_is_told() {
    let bay = test_bay();
    let planned = Planned::of(&bay);
    let mut measured = taken(&planned, &usual(), &mut || 0.0);
    measured.level_tolerance = Length::mm(0.2);
    // The floor falls outward, so the column leans to the left; the plumb has it to the right.
    level(&mut measured, Side::Left, [-2.0, 0.0, 0.0, -2.0]);
    plumb(&mut measured, Side::Left, DVec2::new(6.0 / 2400.0, 0.0));
    let built = as_built(&bay, &measured).unwrap();
    assert_eq!(built.shims[0].wanted_m, None);
    let clash = built.shims[0].clash.unwrap();
    assert!(clash.plumb.x > 0.0 && clash.plate.x < 0.0);
    let found = findings(&bay, &measured, &built);
    assert!(found.contains(&Finding::PlumbAgainstLevels(Side::Left)));
}

/// Shims alike under all corners lift the posts: nearer to the ceiling, and farther from the floor.
#[test]
fn equal_shims_raise_the_lift_and_roll_nothing() {
    let bay = test_bay();
    let mut measured = plumb_posts(&Planned::of(&bay));
    for side in SIDES {
        level(&mut measured, side, [0.0; 4]);
    }
    let bare = as_built(&bay, &measured).unwrap().standing;
    for at in PlateCorner::ALL {
        let height = Length::mm(5.0);
        measured.shims.push(CornerHeight { at, height });
    }
    let raised = as_built(&bay, &measured).unwrap().standing;
    assert!((raised.raised_m - 0.005).abs() < 1e-12);
    assert!(raised.right_higher_m.unwrap().abs() < 1e-12);
    let (was, is) = (&bare.bay.lift, &raised.bay.lift);
    assert!((is.posts_off.up - was.posts_off.up).m().abs() < 1e-12);
    for (is, was) in [
        (is.column.height, was.column.height),
        (is.pad.lowest, was.pad.lowest),
        (is.carriage.bottom, was.carriage.bottom),
        (is.arms[0].underside, was.arms[0].underside),
    ] {
        assert!(((is - was).m() - 0.005).abs() < 1e-12);
    }
    assert_eq!(is.carriage.marked_edge, was.carriage.marked_edge);
}

#[test]
fn one_post_on_shims_raises_by_half_and_rolls_by_half() {
    let bay = test_bay();
    let mut measured = plumb_posts(&Planned::of(&bay));
    for side in SIDES {
        level(&mut measured, side, [0.0; 4]);
    }
    let bare = as_built(&bay, &measured).unwrap().standing;
    for at in &PlateCorner::ALL[..4] {
        let height = Length::mm(4.0);
        measured.shims.push(CornerHeight { at: *at, height });
    }
    let raised = as_built(&bay, &measured).unwrap().standing;
    assert!((raised.raised_m - 0.002).abs() < 1e-12);
    let up = |standing: &Standing| standing.bay.lift.posts_off.up.m();
    assert!(up(&raised) >= up(&bare) + 0.002 - 1e-12);
}

#[test]
fn shims_that_may_be_over_the_limit_are_not_known_to_be_under_it() {
    let mut bay = test_bay();
    bay.lift.shim_limit = Some(Length::mm(12.0));
    let mut measured = plumb_posts(&Planned::of(&bay));
    measured.level_tolerance = Length::mm(10.0);
    level(&mut measured, Side::Left, [0.0, -11.8, -11.8, 0.0]);
    let at = |number| PlateCorner {
        side: Side::Left,
        number,
    };
    let height = Length::mm(11.8);
    measured.shims = [2, 3]
        .map(|number| CornerHeight {
            at: at(number),
            height,
        })
        .to_vec();
    let built = as_built(&bay, &measured).unwrap();
    let maybe = findings(&bay, &measured, &built)
        .into_iter()
        .any(|one| matches!(one, Finding::ShimsMaybeTooHigh(corner, ..) if corner == at(2)));
    assert!(maybe);
}

#[test]
fn a_floor_that_falls_otherwise_than_the_bay_file_says_is_told() {
    let mut bay = test_bay();
    let mut measured = plumb_posts(&Planned::of(&bay));
    for side in SIDES {
        level(&mut measured, side, [0.0, 1.0, -1.0, 0.0]);
    }
    let told = |bay: &Bay| {
        let built = as_built(bay, &measured).unwrap();
        let mut found = findings(bay, &measured, &built).into_iter();
        found.any(|one| matches!(one, Finding::FloorFallsOtherwise(_)))
    };
    bay.garage.floor = Floor::Level;
    assert!(!told(&bay));
    bay.garage.floor = Floor::Fall {
        slope: 0.015,
        toward: FallToward::Left,
    };
    assert!(told(&bay));
}

/// The gap as levelled counts; a coarser level never makes it kinder.
#[test]
fn a_plate_that_rocks_is_not_safe_however_coarse_the_level() {
    let bay = test_bay();
    for within in [0.1, 1.0, 3.0, 10.0] {
        let mut measured = plumb_posts(&Planned::of(&bay));
        measured.level_tolerance = Length::mm(within);
        for (gap, rocks) in [(0.4, false), (0.6, true), (5.0, true)] {
            measured.levels.clear();
            level(&mut measured, Side::Left, [-gap, 0.0, 0.0, 0.0]);
            level(&mut measured, Side::Right, [0.0; 4]);
            let built = as_built(&bay, &measured).unwrap();
            let told = findings(&bay, &measured, &built)
                .into_iter()
                .any(|one| matches!(one, Finding::Rocks(Side::Left, _)));
            assert_eq!(told, rocks, "\u{b1}{within}: {gap}");
            assert_eq!(built.shims[0].rocks_m().is_some(), rocks);
        }
    }
}

#[test]
fn a_plumb_read_once_does_not_overrule_a_plate_past_the_limit() {
    let mut bay = test_bay();
    bay.lift.plumb_limit = Some(Length::mm(15.0));
    let planned = Planned::of(&bay);
    let mut measured = plumb_posts(&planned);
    measured.level_tolerance = Length::mm(1.6);
    let falls = |mm: f64, measured: &mut Measured| {
        measured.levels.clear();
        level(measured, Side::Left, [-mm, 0.0, 0.0, -mm]);
        level(measured, Side::Right, [0.0; 4]);
    };
    let told = |bay: &Bay, measured: &Measured| {
        let built = as_built(bay, measured).unwrap();
        assert_eq!(built.shims[0].clash, None);
        let mut found = findings(bay, measured, &built).into_iter();
        found.any(|one| matches!(one, Finding::PlateOutOfPlumb(Side::Left, ..)))
    };
    let past = 1.1 * 15.0 / bay.lift.column.height.m() * 2.0 * planned.half_m.x;
    falls(past, &mut measured);
    assert!(told(&bay, &measured));
    // Read again across and alike: two readings outweigh the levels.
    let mut twice = measured.clone();
    plumb(&mut twice, Side::Left, DVec2::ZERO);
    assert!(!told(&bay, &twice));
    falls(past * 0.8, &mut measured);
    assert!(!told(&bay, &measured));
}

/// A gap under the thinnest shim is none to fill, and yet the column goes as far on it as the plate can
/// rock: read at one end it may stand at the other, wherever under a load.
#[test]
fn a_column_that_can_rock_on_less_than_a_shim_is_counted_at_both_ends() {
    let mut bay = test_bay();
    let planned = Planned::of(&bay);
    let places = [1, 2, 3, 4].map(|number| {
        planned.corner_m(PlateCorner {
            side: Side::Left,
            number,
        })
    });
    let mut random = Pcg64Mcg::seed_from_u64(29);
    let mut unit = || (random.next_u64() >> 11) as f64 / (1_u64 << 53) as f64;
    let high = bay.lift.column.height.m();
    let mut rocked = 0;
    for _ in 0..60 {
        // One corner up to half a shim lower than the others.
        let low = [0; 4].map(|_| unit());
        let least = (1..4).fold(0, |at, i| if low[i] < low[at] { i } else { at });
        let mm = [0, 1, 2, 3].map(|i| if i == least { -0.45 * unit() } else { 0.0 });
        let ends = rests(&places, &mm.map(|mm| mm * 1e-3));
        for read in &ends {
            let mut measured = plumb_posts(&planned);
            measured.plumb.clear();
            plumb(&mut measured, Side::Left, -*read);
            plumb(&mut measured, Side::Right, DVec2::ZERO);
            level(&mut measured, Side::Left, mm);
            level(&mut measured, Side::Right, [0.0; 4]);
            for stands in &ends {
                let leans = stands.length() * high;
                bay.lift.plumb_limit = Some(Length::metres(leans - 1e-6));
                let built = as_built(&bay, &measured).unwrap();
                assert_eq!(built.shims[0].rocks_m(), None);
                let off = Uncertainty::worst(&built.standing.bay).posts_m;
                let top = stands.abs() * high;
                assert!(off.x >= top.x && off.y >= top.y, "{off} {top}");
                assert!(built.standing.lean_m[0] >= leans - 1e-9);
                if leans > 0.001 {
                    let found = findings(&bay, &measured, &built);
                    let told = found.iter().any(|one| {
                        matches!(
                            one,
                            Finding::OutOfPlumb(Side::Left, ..)
                                | Finding::MaybeOutOfPlumb(Side::Left, ..)
                                | Finding::PlumbAgainstLevels(Side::Left)
                        )
                    });
                    assert!(told, "{read} {stands}: {found:?}");
                    rocked += 1;
                }
            }
        }
    }
    assert!(rocked > 40, "{rocked}");
}
