//! Known posts, the readings that a tape would give of them, and what comes back.

use glam::DVec2;
use rand_pcg::Pcg64Mcg;
use rand_pcg::rand_core::{Rng as _, SeedableRng as _};

use super::*;
use crate::bay::{CornerHeight, FromWall, Plumb, Taken, Toward};
use crate::clearance::uncertainty::Uncertainty;
use crate::solids::test_bay::test_bay;

mod floors;
mod leans;
mod slips;

const TAPE_M: f64 = 0.001_587_5;

fn corner(side: Side, number: u8) -> Mark {
    Mark::Corner(PlateCorner { side, number })
}

/// Spacings, diagonals and walls: what an installer would take.
fn usual() -> Vec<Over> {
    let (l, r) = (|n| corner(Side::Left, n), |n| corner(Side::Right, n));
    vec![
        Over::Between(l(2), r(2)),
        Over::Between(l(3), r(3)),
        Over::Between(l(1), r(4)),
        Over::Between(l(4), r(1)),
        Over::Between(l(1), r(3)),
        Over::Between(Mark::C, l(2)),
        Over::Between(Mark::C, r(2)),
        Over::Between(Mark::A, l(3)),
        Over::Between(Mark::B, r(3)),
        Over::Wall(FromWall::Door, l(1)),
        Over::Wall(FromWall::Door, l(2)),
        Over::Wall(FromWall::Door, r(1)),
        Over::Wall(FromWall::Door, r(2)),
        Over::Wall(FromWall::Left, l(1)),
        Over::Wall(FromWall::Left, l(4)),
        Over::Wall(FromWall::Right, r(4)),
    ]
}

/// Posts that stand a little off: x, y and turn (as metres at the plate's corner) of both.
const TRUE_OFF: [f64; 6] = [0.006, -0.011, 0.003, -0.004, 0.009, -0.002];

fn true_posts(planned: &Planned) -> Vec<f64> {
    let start = planned.start();
    start.iter().zip(TRUE_OFF).map(|(a, b)| a + b).collect()
}

fn taken(planned: &Planned, over: &[Over], noise: &mut dyn FnMut() -> f64) -> Measured {
    let posts = true_posts(planned);
    Measured {
        title: "test".into(),
        tape: over
            .iter()
            .map(|&over| Taken {
                over,
                reading: Length::metres(planned.row(over, &posts).computed + noise()),
                tolerance: Length::metres(TAPE_M),
                place: None,
            })
            .collect(),
        plumb: Vec::new(),
        shims: Vec::new(),
        feeler: Vec::new(),
        levels: Vec::new(),
        level_tolerance: Length::metres(TAPE_M),
    }
}

/// A normal deviate of half the tape's ±: Box and Muller.
fn normal(random: &mut Pcg64Mcg) -> f64 {
    let mut unit = || (random.next_u64() >> 11) as f64 / (1_u64 << 53) as f64;
    let (a, b) = (1.0 - unit(), unit());
    TAPE_M / COVERAGE * (-2.0 * a.ln()).sqrt() * (std::f64::consts::TAU * b).cos()
}

fn offs(built: &AsBuilt, arm: f64) -> [(f64, f64); 6] {
    let [l, r] = built.posts;
    let one = |p: PostPlace| {
        [
            (p.off_m.x, p.off_sd_m.x),
            (p.off_m.y, p.off_sd_m.y),
            (p.turn_rad * arm, p.turn_sd_rad * arm),
        ]
    };
    let ([a, b, c], [d, e, f]) = (one(l), one(r));
    [a, b, c, d, e, f]
}

#[test]
fn exact_readings_give_the_posts_back() {
    let bay = test_bay();
    let planned = Planned::of(&bay);
    let built = as_built(&bay, &taken(&planned, &usual(), &mut || 0.0)).unwrap();
    for ((found, _), known) in offs(&built, planned.arm_m()).into_iter().zip(TRUE_OFF) {
        assert!((found - known).abs() < 1e-9, "{found} {known}");
    }
    assert!(built.fits() && built.unit.unwrap() < 1e-6);
    assert!(built.readings.iter().all(|one| one.state == State::Fits));
}

#[test]
fn slopes_are_those_of_the_readings() {
    let planned = Planned::of(&test_bay());
    let posts = true_posts(&planned);
    for over in usual() {
        let row = planned.row(over, &posts);
        for (i, slope) in row.slopes.iter().enumerate() {
            let at = |step: f64| {
                let mut moved = posts.clone();
                moved[i] += step;
                planned.row(over, &moved).computed
            };
            let found = (at(1e-5) - at(-1e-5)) / 2e-5;
            assert!(
                (found - slope).abs() < 1e-7,
                "{over:?} {i}: {found} {slope}"
            );
        }
    }
}

/// Noise of the stated size: each unknown lies inside its two standard deviations as often as two
/// standard deviations say, 95.45 %. The unit deviation is never taken below 1, so that it may be more
/// often; 3,000 draws scatter by 0.4 %.
#[test]
fn noisy_readings_give_the_posts_back_within_what_is_stated() {
    let bay = test_bay();
    let planned = Planned::of(&bay);
    let mut random = Pcg64Mcg::seed_from_u64(14);
    let (mut inside, mut drawn) = (0_u32, 0_u32);
    for _ in 0..500 {
        let measured = taken(&planned, &usual(), &mut || normal(&mut random));
        let built = as_built(&bay, &measured).unwrap();
        for ((found, sd), known) in offs(&built, planned.arm_m()).into_iter().zip(TRUE_OFF) {
            drawn += 1;
            inside += u32::from((found - known).abs() <= COVERAGE * sd);
        }
    }
    let rate = f64::from(inside) / f64::from(drawn);
    assert!((0.945..0.99).contains(&rate), "{rate}");
}

#[test]
fn one_gross_error_is_pointed_out() {
    let bay = test_bay();
    let planned = Planned::of(&bay);
    let mut random = Pcg64Mcg::seed_from_u64(3);
    for slip in 0..usual().len() {
        let mut measured = taken(&planned, &usual(), &mut || normal(&mut random));
        // A slip of an inch.
        measured.tape[slip].reading += Length::inches(1.0);
        let built = as_built(&bay, &measured).unwrap();
        let state = built.readings[slip].state;
        assert!(
            matches!(state, State::Misfit | State::Suspect | State::Unchecked),
            "{slip} {state:?}"
        );
        assert_eq!(state, State::Misfit, "{slip}");
        let others = (0..usual().len()).filter(|&i| i != slip);
        let misfits = others
            .filter(|&i| built.readings[i].state == State::Misfit)
            .count();
        assert_eq!(misfits, 0, "{slip}");
        let found = findings(&bay, &measured, &built);
        assert!(found.contains(&Finding::Misfit(slip)));
    }
}

#[test]
fn a_reading_that_nothing_checks_is_told() {
    let bay = test_bay();
    let planned = Planned::of(&bay);
    // Six readings for six unknowns.
    let over: Vec<Over> = [0, 1, 9, 10, 12, 13].map(|i| usual()[i]).to_vec();
    let measured = taken(&planned, &over, &mut || 0.0);
    match as_built(&bay, &measured) {
        Ok(built) => {
            assert_eq!((built.spare, built.unit), (0, None));
            assert!(
                built
                    .readings
                    .iter()
                    .all(|one| one.state == State::Unchecked)
            );
        }
        Err(faults) => panic!("{faults:?}"),
    }
}

#[test]
fn what_is_not_fixed_is_named() {
    let bay = test_bay();
    let planned = Planned::of(&bay);
    let says = |over: &[Over]| {
        let measured = taken(&planned, over, &mut || 0.0);
        let faults = as_built(&bay, &measured).unwrap_err();
        assert_eq!(faults.len(), 1);
        (faults[0].message.clone(), faults[0].help.clone().unwrap())
    };
    let all = usual();
    let (what, cure) = says(&[all[0], all[1]]);
    assert!(
        what.contains("the left post's place into the bay"),
        "{what}"
    );
    assert!(what.contains("the right post's angle"), "{what}");
    assert!(cure.contains("add ") && cure.contains("diagonal"), "{cure}");
    // One corner of the right plate from two walls: the post may turn about it.
    let (l, r) = (corner(Side::Left, 1), corner(Side::Right, 1));
    let (what, _) = says(&[
        Over::Wall(FromWall::Left, l),
        Over::Wall(FromWall::Door, l),
        Over::Wall(FromWall::Door, corner(Side::Left, 2)),
        Over::Wall(FromWall::Right, r),
        Over::Wall(FromWall::Door, r),
    ]);
    assert!(what.contains("the right post's angle"), "{what}");
    assert!(!what.contains("left"), "{what}");
}

/// Common practice, no source: equal corner-to-corner diagonals mean square.
#[test]
fn equal_diagonals_mean_square() {
    let planned = Planned::of(&test_bay());
    let diagonals = |ahead: f64| {
        let mut posts = planned.start();
        posts[4] += ahead;
        let over = |from, to| planned.row(Over::Between(from, to), &posts).computed;
        let (l, r) = (|n| corner(Side::Left, n), |n| corner(Side::Right, n));
        (over(l(1), r(4)), over(l(4), r(1)))
    };
    let (one, other) = diagonals(0.0);
    assert!((one - other).abs() < 1e-12);
    // With the right post ahead the diagonal to its front is the longer one.
    let (one, other) = diagonals(0.02);
    assert!(one - other > 0.002);
}

#[test]
fn shims_tip_the_plate_by_the_lean() {
    let bay = test_bay();
    let planned = Planned::of(&bay);
    let mut measured = taken(&planned, &usual(), &mut || 0.0);
    // 1/2 in over 100 in to the right: the inner (right) side of the left plate, 18 in wide, comes up
    // by 18 / 200 in.
    let lean = |toward, out| Plumb {
        side: Side::Left,
        toward,
        out: Length::inches(out),
        over: Length::inches(100.0),
        tolerance: Length::mm(1.0),
        place: None,
        over_place: None,
    };
    measured.plumb = vec![lean(Toward::Right, 0.5), lean(Toward::Front, 0.0)];
    let built = as_built(&bay, &measured).unwrap();
    let [rear_outer, rear_inner, front_inner, front_outer] = built.shims[0].wanted_m.unwrap();
    assert!(rear_outer.abs() < 1e-12 && front_outer.abs() < 1e-12);
    for inner in [rear_inner, front_inner] {
        assert!((inner - 0.09 * 0.0254).abs() < 1e-9, "{inner}");
    }
    // The other post's plumb was not read, and no limit is known.
    let found = findings(&bay, &measured, &built);
    assert!(found.contains(&Finding::PlumbNotRead(Side::Right, true)));
    assert!(found.contains(&Finding::NoPlumbLimit));
    assert!(found.contains(&Finding::NoShimLimit));
    // Lean over the whole height of 142 in is 0.71 in: more than 1/2 in stops.
    let mut strict = bay;
    strict.lift.plumb_limit = Some(Length::inches(0.5));
    let found = findings(&strict, &measured, &built);
    assert!(found.iter().any(|one| one.stops()));
}

#[test]
fn shims_fill_up_to_a_floor_that_was_levelled() {
    let bay = test_bay();
    let planned = Planned::of(&bay);
    let mut measured = taken(&planned, &usual(), &mut || 0.0);
    measured.plumb = [Toward::Right, Toward::Front]
        .map(|toward| Plumb {
            side: Side::Left,
            toward,
            out: Length::ZERO,
            over: Length::inches(100.0),
            tolerance: Length::mm(1.0),
            place: None,
            over_place: None,
        })
        .to_vec();
    // One corner of the floor is 4 mm low; the plate stands plumb on a shim of 4 mm there.
    let at = |number| PlateCorner {
        side: Side::Left,
        number,
    };
    let height = |number, mm| CornerHeight {
        at: at(number),
        height: Length::mm(mm),
    };
    measured.levels = vec![
        height(1, -4.0),
        height(2, 0.0),
        height(3, 0.0),
        height(4, 0.0),
    ];
    measured.shims = vec![height(1, 4.0)];
    let wanted = as_built(&bay, &measured).unwrap().shims[0]
        .wanted_m
        .unwrap();
    assert!((wanted[0] - 0.004).abs() < 1e-9, "{wanted:?}");
    assert!(wanted[1..].iter().all(|height| height.abs() < 1e-9));
}

/// Whatever the posts do, every place of the true lift lies inside what the study counts with.
#[test]
fn the_study_of_standing_posts_is_never_kinder() {
    let bay = test_bay();
    let planned = Planned::of(&bay);
    let mut measured = taken(&planned, &usual(), &mut || 0.0);
    measured.plumb = [(Side::Left, Toward::Right), (Side::Right, Toward::Rear)]
        .map(|(side, toward)| Plumb {
            side,
            toward,
            out: Length::mm(9.0),
            over: Length::metres(2.5),
            tolerance: Length::mm(1.0),
            place: None,
            over_place: None,
        })
        .to_vec();
    let built = as_built(&bay, &measured).unwrap();
    let world = &built.standing.bay;
    let off = Uncertainty::worst(world).posts_m;
    let posts = true_posts(&planned);
    let slopes = [
        DVec2::new(9.0 / 2500.0, 0.0),
        DVec2::new(0.0, -9.0 / 2500.0),
    ];
    for side in SIDES {
        let i = index(side);
        let turn = DVec2::from_angle(posts[3 * i + 2] / planned.arm_m());
        let middle = DVec2::new(posts[3 * i], posts[3 * i + 1]);
        let at = Planned::of(world).column_m[i];
        for high in [0.0, 1.0, world.lift.column.height.m()] {
            for out in [DVec2::ZERO, DVec2::new(0.5, 0.3), DVec2::new(-0.2, -1.0)] {
                let truly = middle
                    + turn.rotate(planned.column_m[i] - planned.middle_m[i] + out)
                    + slopes[i] * high;
                let apart = (truly - (at + out)).abs();
                assert!(apart.x <= off.x && apart.y <= off.y, "{apart} {off}");
                let up = (slopes[i].dot(out)).abs();
                assert!(up <= off.z);
            }
        }
    }
    // The ± of the lift's own figures stay beside it.
    let before = Uncertainty::worst(&bay);
    let after = Uncertainty::worst(world);
    assert!((after.lift_spread() - before.lift_spread() - off).length() < 1e-12);
    assert!(after.parking.yaw_rad > before.parking.yaw_rad);
}

#[test]
fn a_reading_that_can_not_be_is_refused() {
    let bay = test_bay();
    let planned = Planned::of(&bay);
    let mut measured = taken(&planned, &usual(), &mut || 0.0);
    measured.tape[2].reading += Length::metres(3.0);
    let faults = as_built(&bay, &measured).unwrap_err();
    assert_eq!(faults.len(), 1);
    assert!(faults[0].message.starts_with("LP1 to RP4 can't be"));
}
