//! Statics against published values and what must hold for any pads.

use super::*;

const G_IN_BOOK: f64 = 9.81;

fn near(found: f64, published: f64, within: f64) {
    assert!(
        (found - published).abs() <= within,
        "{found} for {published}"
    );
}

/// Wheels of a vehicle with axles at y = 0 and -l; the track does not matter.
fn wheels(wheelbase: f64) -> [DVec2; 4] {
    [
        (-0.7, 0.0),
        (0.7, 0.0),
        (-0.7, -wheelbase),
        (0.7, -wheelbase),
    ]
    .map(|(x, y)| DVec2::new(x, y))
}

#[test]
fn level_car_of_the_textbook() {
    // R. N. Jazar, Vehicle Dynamics: Theory and Application, ch. 2, a car on level ground:
    // 890 kg, a1 = 0.78 m, l = 2.35 m, g = 9.81: 2916.5 N on each front, 1449 N on each rear
    // wheel.
    let shares = share(wheels(2.35), DVec2::new(0.0, -0.78), 890.0 * G_IN_BOOK).unwrap();
    for front in [0, 1] {
        near(shares.springs[front], 2_916.5, 0.5);
        near(shares.springs[front + 2], 1_449.0, 0.5);
    }
    assert_eq!(shares.lifts, None);
}

#[test]
fn exercises_of_the_textbook() {
    // The same, exercises to ch. 2, per axle; the answers are arithmetic of the stated
    // formula: 1765 kg, a1 = 1.22, a2 = 1.62 m: 9876.7 and 7438.0 N.
    let shares = share(wheels(2.84), DVec2::new(0.0, -1.22), 1_765.0 * G_IN_BOOK).unwrap();
    near(shares.springs[0] + shares.springs[1], 9_876.7, 0.1);
    near(shares.springs[2] + shares.springs[3], 7_438.0, 0.1);
    // 3000 lb, a1/a2 = 0.831: 1638.4 and 1361.6 lb.
    let a1 = 0.831 / 1.831;
    let shares = share(wheels(1.0), DVec2::new(0.0, -a1), 3_000.0).unwrap();
    near(shares.springs[0] + shares.springs[1], 1_638.4, 0.1);
    near(shares.springs[2] + shares.springs[3], 1_361.6, 0.1);
}

#[test]
fn four_springs_with_one_that_would_pull() {
    // Rigid body on four equal springs, R = W/4 + M·x/Σx² + M·y/Σy², worked example of a
    // public engineering forum (eng-tips, thread 400254): W = 100, supports 6 by 4, ex = 2,
    // ey = 1: 54.2, 29.2, 20.8 and -4.2. The last would have to pull.
    let pads = [(3.0, 2.0), (3.0, -2.0), (-3.0, 2.0), (-3.0, -2.0)].map(|(x, y)| DVec2::new(x, y));
    let cg = DVec2::new(2.0, 1.0);
    let free = springs(pads, cg, 100.0).unwrap();
    for (found, published) in free.into_iter().zip([54.2, 29.2, 20.8, -4.2]) {
        near(found, published, 0.05);
    }
    let shares = share(pads, cg, 100.0).unwrap();
    assert_eq!(shares.lifts, Some(3));
    // On the three that are left, by hand: 58.33, 25, 16.67.
    let by_hand = [175.0 / 3.0, 25.0, 50.0 / 3.0, 0.0];
    let alone = three([pads[0], pads[1], pads[2]], cg, 100.0).unwrap();
    for i in 0..4 {
        near(shares.springs[i], by_hand[i], 1e-9);
        if i < 3 {
            near(alone[i], by_hand[i], 1e-9);
        }
    }
}

#[test]
fn the_ends_of_the_twist_are_three_pads() {
    let pads = [(-0.6, 0.9), (0.6, 0.9), (-0.5, -0.8), (0.5, -0.8)].map(|(x, y)| DVec2::new(x, y));
    let cg = DVec2::new(0.05, 0.1);
    let shares = share(pads, cg, 1_000.0).unwrap();
    for end in shares.ends {
        let hanging = (0..4).find(|&i| end[i] <= 1e-9).unwrap();
        let carrying: Vec<usize> = (0..4).filter(|&i| i != hanging).collect();
        let alone = three([0, 1, 2].map(|i| pads[carrying[i]]), cg, 1_000.0).unwrap();
        for (i, load) in carrying.into_iter().zip(alone) {
            near(end[i], load, 1e-6);
        }
    }
}

#[test]
fn outside_the_pads_nothing_carries() {
    let pads = [(-0.5, 0.8), (0.5, 0.8), (-0.5, -0.8), (0.5, -0.8)].map(|(x, y)| DVec2::new(x, y));
    assert_eq!(share(pads, DVec2::new(0.0, 0.81), 1.0), None);
    assert_eq!(share(pads, DVec2::new(f64::NAN, 0.0), 1.0), None);
    assert_eq!(share(pads, DVec2::ZERO, f64::NAN), None);
    let line = [0.0, 1.0, 2.0, 3.0].map(|x| DVec2::new(x, 2.0 * x));
    assert_eq!(share(line, DVec2::new(1.0, 2.0), 1.0), None);
    near(inside_m(pads, DVec2::ZERO), 0.5, 1e-12);
    near(inside_m(pads, DVec2::new(0.0, 0.7)), 0.1, 1e-12);
    near(inside_m(pads, DVec2::new(0.0, 0.9)), -0.1, 1e-12);
    near(inside_m(pads, DVec2::new(0.6, 0.0)), -0.1, 1e-12);
    assert!(inside_m(line, DVec2::ZERO) <= 1e-9);
    assert!(inside_m([DVec2::ZERO; 4], DVec2::ZERO) < 0.0);
}

use proptest::prelude::*;

/// Four pads that surround the origin, and a weight among them.
fn stand() -> impl Strategy<Value = ([DVec2; 4], DVec2)> {
    let pad =
        |x: f64, y: f64| (0.3..1.0, 0.4..1.5).prop_map(move |(a, b)| DVec2::new(x * a, y * b));
    let pads = (
        pad(-1.0, 1.0),
        pad(1.0, 1.0),
        pad(-1.0, -1.0),
        pad(1.0, -1.0),
    );
    (pads, -1.2..1.2, -1.6..1.6).prop_map(|((a, b, c, d), x, y)| ([a, b, c, d], DVec2::new(x, y)))
}

proptest! {
    #[test]
    fn sum_and_balance_hold_and_no_pad_pulls((pads, cg) in stand(), weight in 1.0..1e5) {
        let inside = inside_m(pads, cg);
        let Some(shares) = share(pads, cg, weight) else {
            prop_assert!(inside <= 1e-9, "{inside}");
            return Ok(());
        };
        prop_assert!(inside >= -1e-9, "{inside}");
        for loads in [shares.springs, shares.ends[0], shares.ends[1]] {
            prop_assert!(loads.iter().all(|&load| load >= 0.0));
            let sum: f64 = loads.iter().sum();
            let moment: DVec2 = pads.iter().zip(loads).map(|(&pad, load)| pad * load).sum();
            prop_assert!((sum - weight).abs() < 1e-9 * weight);
            prop_assert!((moment - cg * weight).length() < 1e-9 * weight);
        }
        for i in 0..4 {
            let [a, b] = shares.ends.map(|end| end[i]);
            let load = shares.springs[i];
            prop_assert!(load >= a.min(b) - 1e-9 * weight && load <= a.max(b) + 1e-9 * weight);
        }
    }

    #[test]
    fn what_is_mirrored_has_mirrored_loads((pads, cg) in stand(), weight in 1.0..1e5) {
        let mirror = |place: DVec2| DVec2::new(-place.x, place.y);
        let swapped = [pads[1], pads[0], pads[3], pads[2]].map(mirror);
        let (Some(one), Some(other)) =
            (share(pads, cg, weight), share(swapped, mirror(cg), weight))
        else { return Ok(()) };
        for (i, j) in [(0, 1), (1, 0), (2, 3), (3, 2)] {
            prop_assert!((one.springs[i] - other.springs[j]).abs() < 1e-9 * weight);
        }
        prop_assert_eq!(one.lifts.map(|i| [1, 0, 3, 2][i]), other.lifts);
    }

    #[test]
    fn equal_springs_have_the_least_squares((pads, cg) in stand(), step in -0.1..0.1) {
        // Of all loads that push and balance, those of equal springs store the least work.
        let Some(shares) = share(pads, cg, 1.0) else { return Ok(()) };
        let way: [f64; 4] = std::array::from_fn(|i| shares.ends[1][i] - shares.ends[0][i]);
        let other = std::array::from_fn(|i| shares.springs[i] + step * way[i]);
        if other.iter().all(|&load: &f64| load >= 0.0) {
            let work = |loads: [f64; 4]| loads.iter().map(|load| load * load).sum::<f64>();
            prop_assert!(work(other) >= work(shares.springs) - 1e-12);
        }
    }
}
