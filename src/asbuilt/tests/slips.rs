//! Slips: those that show, those that can't, and how far what does not show can move a post.

use super::*;

fn read_at(planned: &Planned, over: &[Over], posts: &[f64]) -> Measured {
    let mut measured = taken(planned, over, &mut || 0.0);
    for taken in &mut measured.tape {
        taken.reading = Length::metres(planned.row(taken.over, posts).computed);
    }
    measured
}

/// As many tapes as hold the posts with two to spare: neither distance from the door is checked.
fn few() -> Vec<Over> {
    let (l, r) = (|n| corner(Side::Left, n), |n| corner(Side::Right, n));
    vec![
        Over::Between(l(2), r(2)),
        Over::Between(l(3), r(3)),
        Over::Between(l(1), r(4)),
        Over::Between(l(4), r(1)),
        Over::Wall(FromWall::Door, l(1)),
        Over::Wall(FromWall::Door, r(1)),
        Over::Wall(FromWall::Left, l(1)),
        Over::Wall(FromWall::Right, r(1)),
    ]
}

#[test]
fn the_same_tape_again_checks_nothing_and_makes_nothing_surer() {
    let bay = test_bay();
    let planned = Planned::of(&bay);
    let once = read_at(&planned, &few(), &planned.start());
    let one = as_built(&bay, &once).unwrap();
    let mut again = once.clone();
    // Either way round.
    let turned = match once.tape[2].over {
        Over::Between(from, to) => Taken {
            over: Over::Between(to, from),
            ..once.tape[2].clone()
        },
        Over::Wall(..) => unreachable!(),
    };
    again.tape.push(turned);
    for i in [4, 5] {
        again.tape.push(once.tape[i].clone());
    }
    let two = as_built(&bay, &again).unwrap();
    assert_eq!(one.spare, two.spare);
    for (a, b) in one.posts.iter().zip(&two.posts) {
        assert!((a.off_sd_m - b.off_sd_m).length() < 1e-12);
        assert!((a.slip_m - b.slip_m).length() < 1e-12 && a.slip_m.x > 0.0);
    }
    for i in 0..8 {
        assert!((one.readings[i].checked - two.readings[i].checked).abs() < 1e-9);
        assert_eq!(one.readings[i].state, two.readings[i].state);
    }
    assert!(two.readings[4].again && !two.readings[0].again);
    // Told once, however often it was read.
    let told = |measured: &Measured, built: &AsBuilt| {
        let found = findings(&bay, measured, built).into_iter();
        found
            .filter(|one| matches!(one, Finding::Unchecked(_)))
            .count()
    };
    assert!(told(&once, &one) > 0);
    assert_eq!(told(&once, &one), told(&again, &two));
}

/// Neither distance from the door is checked: how far into the bay a post stands has no bound.
#[test]
fn what_hangs_on_a_reading_that_nothing_checks_has_no_bound() {
    let bay = test_bay();
    let planned = Planned::of(&bay);
    let measured = read_at(&planned, &few(), &planned.start());
    let built = as_built(&bay, &measured).unwrap();
    for held in &built.held {
        assert!(held.hangs_on().any(|(at, moves)| at.is_some() && moves[1]));
    }
    let full = read_at(&planned, &usual(), &planned.start());
    let built = as_built(&bay, &full).unwrap();
    assert!(built.held.iter().all(|held| held.hangs_on().count() == 0));
}

#[test]
fn the_same_tape_read_otherwise_is_told_once() {
    let bay = test_bay();
    let planned = Planned::of(&bay);
    let mut measured = read_at(&planned, &usual(), &planned.start());
    let mut again = measured.tape[0].clone();
    again.reading += Length::mm(4.0);
    measured.tape.push(again);
    let built = as_built(&bay, &measured).unwrap();
    let found = findings(&bay, &measured, &built);
    let differs = found
        .iter()
        .filter(|one| matches!(one, Finding::Differs(_)))
        .count();
    assert_eq!(differs, 1);
    assert!(built.is_open(Side::Left, &measured) && !built.fits());
}

#[test]
fn a_plumb_over_more_than_the_column_is_refused() {
    let bay = test_bay();
    let planned = Planned::of(&bay);
    let mut measured = read_at(&planned, &usual(), &planned.start());
    measured.plumb.push(Plumb {
        side: Side::Left,
        toward: Toward::Right,
        out: Length::mm(30.0),
        over: Length::metres(24.0),
        tolerance: Length::mm(1.0),
        place: None,
        over_place: None,
    });
    let faults = as_built(&bay, &measured).unwrap_err();
    assert_eq!(faults.len(), 1);
    assert!(faults[0].message.contains("can't be plumbed over"));
    assert!(faults[0].help.is_some());
    measured.plumb[0].over = bay.lift.column.height;
    assert!(as_built(&bay, &measured).is_ok());
}

#[test]
fn plumb_read_twice_checks_itself() {
    let bay = test_bay();
    let planned = Planned::of(&bay);
    let mut measured = read_at(&planned, &usual(), &planned.start());
    let read = |toward, mm| Plumb {
        side: Side::Left,
        toward,
        out: Length::mm(mm),
        over: Length::metres(2.4),
        tolerance: Length::mm(1.0),
        place: None,
        over_place: None,
    };
    measured.plumb = vec![read(Toward::Right, 1.5), read(Toward::Right, 2.5)];
    let told = |measured: &Measured| {
        let built = as_built(&bay, measured).unwrap();
        findings(&bay, measured, &built).contains(&Finding::PlumbDiffers(Side::Left, true))
    };
    assert!(!told(&measured));
    let lean = leans(&measured)[0][0].unwrap();
    assert!((lean.slope - 2.0 / 2400.0).abs() < 1e-12);
    assert!((lean.sd - 0.5 / 2400.0).abs() < 1e-12);
    // The other way: a direction that was mixed up.
    measured.plumb[1].toward = Toward::Left;
    assert!(told(&measured));
}

/// The middle of a turned column's inner face, worked out by hand: half the width from the column's
/// middle, along the way that its open side points.
#[test]
fn k_and_l_of_turned_columns_lie_on_their_faces() {
    let mut bay = test_bay();
    bay.lift.column.turned = crate::units::Angle::degrees(-30.0);
    let planned = Planned::of(&bay);
    let (cos, sin) = (30.0_f64.to_radians().cos(), 30.0_f64.to_radians().sin());
    let (wide, deep) = (bay.lift.column.width.m(), bay.lift.column.depth.m());
    let half_spacing = bay.lift.spacing.m() * 0.5;
    let middle = half_spacing + 0.5 * (wide * cos + deep * sin);
    let (x, y) = (0.5 * wide * cos, 0.5 * wide * sin);
    let (across, line) = (bay.lift.across.m(), bay.lift.post_line.m());
    let start = planned.start();
    let k = planned.at(Mark::Face(Side::Left), &start);
    let l = planned.at(Mark::Face(Side::Right), &start);
    assert!((k - DVec2::new(across - middle + x, line - y)).length() < 1e-9);
    assert!((l - DVec2::new(across + middle - x, line - y)).length() < 1e-9);
}

/// The sheets mark K and L on the post line; a turned column's face lies elsewhere.
#[test]
fn readings_to_the_faces_of_turned_columns_are_refused() {
    let mut bay = test_bay();
    let planned = Planned::of(&bay);
    let over = Over::Between(Mark::Face(Side::Left), Mark::Face(Side::Right));
    let reading = planned.row(over, &planned.start()).computed;
    let mut measured = read_at(&planned, &usual(), &planned.start());
    measured.tape.push(crate::bay::Taken {
        over,
        reading: Length::metres(reading),
        tolerance: Length::mm(2.0),
        place: None,
    });
    assert!(as_built(&bay, &measured).is_ok());
    bay.lift.column.turned = crate::units::Angle::degrees(-30.0);
    let refused = as_built(&bay, &measured).err().unwrap();
    assert_eq!(refused.len(), 1);
    assert!(refused[0].help.as_deref().unwrap().contains("base plates"));
}

/// A room that is 30 mm narrower than the bay file has it is told as that, and not as a dozen tapes.
#[test]
fn a_wrong_room_is_told_as_the_room() {
    let bay = test_bay();
    let planned = Planned::of(&bay);
    let mut narrow = bay.clone();
    narrow.garage.width -= Length::mm(60.0);
    let measured = read_at(&Planned::of(&narrow), &usual(), &planned.start());
    let built = as_built(&bay, &measured).unwrap();
    let found = findings(&bay, &measured, &built);
    let walls = found
        .iter()
        .filter(|one| matches!(one, Finding::Wall(_)))
        .count();
    let misfits = found
        .iter()
        .filter(|one| matches!(one, Finding::Misfit(_)))
        .count();
    assert_eq!((walls, misfits), (2, 0), "{found:?}");
    assert!((built.walls[0].off_m - 0.03).abs() < 0.002);
}

/// Two slips of one kind: the tapes to the right wall both read as much too long. The readings alone can't say
/// whether those are wrong or the wall's place in the bay file and the tape from its corner: all are told.
#[test]
fn two_slips_of_one_kind_are_told_with_what_else_would_explain_them() {
    let bay = test_bay();
    let planned = Planned::of(&bay);
    let mut over = usual();
    over.push(Over::Wall(FromWall::Right, corner(Side::Right, 1)));
    let slipped = [15, 16];
    for off_mm in [12.0, 15.0, -15.0] {
        let mut measured = read_at(&planned, &over, &planned.start());
        for at in slipped {
            measured.tape[at].reading += Length::mm(off_mm);
        }
        let built = as_built(&bay, &measured).unwrap();
        assert!(!built.fits());
        for at in slipped {
            let state = built.readings[at].state;
            assert!(state.is_open(), "{off_mm}, {at}: {state:?}");
        }
        // What has nothing to do with that wall is under no suspicion.
        for at in [0, 1, 2, 3, 4, 5, 6, 9, 10, 11, 12] {
            let state = built.readings[at].state;
            assert!(!state.is_open(), "{off_mm}, {at}: {state:?}");
        }
    }
}

/// Readings to one wall alone, in a room that is narrower than the bay file has it: nothing can show
/// that, so it is told.
#[test]
fn a_wall_that_nothing_checks_is_told() {
    let bay = test_bay();
    let planned = Planned::of(&bay);
    let told = |over: &[Over]| {
        let measured = read_at(&planned, over, &planned.start());
        let built = as_built(&bay, &measured).unwrap();
        findings(&bay, &measured, &built).contains(&Finding::WallUnchecked(0))
    };
    let (l, r) = (|n| corner(Side::Left, n), |n| corner(Side::Right, n));
    let mut over = few();
    over.retain(|one| !matches!(one, Over::Wall(FromWall::Right, _)));
    over.extend([2, 4].map(|n| Over::Wall(FromWall::Door, l(n))));
    over.extend([3, 4].map(|n| Over::Wall(FromWall::Left, l(n))));
    assert!(told(&over));
    over.push(Over::Wall(FromWall::Right, r(1)));
    assert!(!told(&over));
}

/// What the room's ± leaves open of a post that is held by its walls alone counts.
#[test]
fn the_rooms_own_tolerance_counts_in_a_place_off_its_walls() {
    let mut bay = test_bay();
    let planned = Planned::of(&bay);
    let (l, r) = (|n| corner(Side::Left, n), |n| corner(Side::Right, n));
    let mut over = vec![
        Over::Wall(FromWall::Left, l(1)),
        Over::Wall(FromWall::Left, l(4)),
        Over::Wall(FromWall::Left, l(2)),
        Over::Between(l(2), r(2)),
        Over::Between(l(3), r(3)),
        Over::Between(l(1), r(4)),
        Over::Between(l(4), r(1)),
    ];
    over.extend([1, 2, 3, 4].map(|n| Over::Wall(FromWall::Door, l(n))));
    over.extend([1, 2, 3, 4].map(|n| Over::Wall(FromWall::Door, r(n))));
    let measured = read_at(&planned, &over, &planned.start());
    bay.policy.measured_garage = Length::mm(6.0);
    let built = as_built(&bay, &measured).unwrap();
    assert!(built.posts[0].off_sd_m.x > 0.003);
    bay.policy.measured_garage = Length::ZERO;
    let sure = as_built(&bay, &measured).unwrap();
    assert!(sure.posts[0].off_sd_m.x < 0.001);
}

/// Readings scattered three times their ± do not go together, though none stands out much.
#[test]
fn readings_that_scatter_more_than_stated_are_told() {
    let bay = test_bay();
    let planned = Planned::of(&bay);
    let mut random = Pcg64Mcg::seed_from_u64(9);
    let told = |scale: f64, random: &mut Pcg64Mcg| {
        let measured = taken(&planned, &usual(), &mut || scale * normal(random));
        let built = as_built(&bay, &measured).unwrap();
        built.scatters() || !built.fits()
    };
    let good = (0..200).filter(|_| told(1.0, &mut random)).count();
    // One in a hundred by the test of the whole, and a few for single readings.
    assert!(good <= 14, "{good}");
    let bad = (0..100).filter(|_| told(2.5, &mut random)).count();
    assert!(bad >= 90, "{bad}");
}

/// A slip of any size in any one reading, where nothing at all is told: the post truly stands inside
/// what the study counts with.
#[test]
fn a_slip_that_does_not_show_stays_inside_what_the_study_counts_with() {
    let bay = test_bay();
    let planned = Planned::of(&bay);
    // Each reading is checked in both: by many, and by hardly any.
    let (l, r) = (|n| corner(Side::Left, n), |n| corner(Side::Right, n));
    let mut thin = few();
    thin.extend([
        Over::Wall(FromWall::Door, l(2)),
        Over::Wall(FromWall::Door, r(2)),
        Over::Wall(FromWall::Left, l(4)),
        Over::Wall(FromWall::Right, r(4)),
    ]);
    let nets = [thin, usual()];
    let mut random = Pcg64Mcg::seed_from_u64(6);
    let (mut quiet, mut outside) = (0_u32, 0_u32);
    for net in &nets {
        for slip in [0.002, 0.003, 0.004, 0.005, 0.006_35, 0.0127] {
            for at in 0..net.len() {
                for sign in [-1.0, 1.0] {
                    for _ in 0..3 {
                        let mut measured = taken(&planned, net, &mut || normal(&mut random));
                        measured.tape[at].reading += Length::metres(sign * slip);
                        let built = as_built(&bay, &measured).unwrap();
                        let found = findings(&bay, &measured, &built);
                        let told = found.iter().any(|one| {
                            !matches!(
                                one,
                                Finding::PlumbNotRead(..)
                                    | Finding::NoPlumbLimit
                                    | Finding::NotLevelled
                                    | Finding::MayRock(..)
                            )
                        });
                        if told {
                            continue;
                        }
                        quiet += 1;
                        for (i, truth) in TRUE_OFF.chunks(3).enumerate() {
                            let (place, held) = (&built.posts[i], &built.held[i]);
                            let turn = place.turn_rad - truth[2] / planned.arm_m();
                            let off = place.off_m - DVec2::new(truth[0], truth[1]);
                            // At the plate's middle, and out where the pads are.
                            for far in [DVec2::ZERO, DVec2::new(0.8, 1.4), DVec2::new(-0.8, 1.4)] {
                                let truly = (off + turn * far.perp()).abs();
                                let within = held.within_m(far);
                                outside += u32::from(truly.x > within.x || truly.y > within.y);
                            }
                        }
                    }
                }
            }
        }
    }
    assert!(quiet > 100, "{quiet}");
    assert_eq!(outside, 0, "of {quiet}");
}

/// A column leans as its plate lies by the levels, and its plumb was read once and reads nothing: a level
/// out of true, or a slip. The study counts no less lean than there is; read twice it counts what was read.
#[test]
fn a_plumb_that_was_read_once_counts_with_what_the_levels_leave_open() {
    let bay = test_bay();
    let planned = Planned::of(&bay);
    let true_slope = DVec2::new(0.003, -0.0015);
    let lean_in_study = |times: usize, read: DVec2| {
        let mut measured = taken(&planned, &usual(), &mut || 0.0);
        for side in SIDES {
            for _ in 0..times {
                floors::plumb(&mut measured, side, read);
            }
            let tops = [1, 2, 3, 4].map(|number| {
                let at = planned.corner_m(PlateCorner { side, number });
                -true_slope.dot(at) * 1000.0
            });
            floors::level(&mut measured, side, tops);
        }
        measured.level_tolerance = Length::mm(1.0);
        let built = as_built(&bay, &measured).unwrap();
        assert!(built.shims.iter().all(|one| one.clash.is_none()));
        built.standing.bay.lift.posts_off.leaning.unwrap()
    };
    for read in [DVec2::ZERO, true_slope] {
        let once = lean_in_study(1, read);
        for i in 0..2 {
            let off = (true_slope - DVec2::from(once.slope[i])).abs();
            let within = DVec2::from(once.within[i]);
            assert!(off.cmple(within + 1e-12).all(), "{read}: {off} of {within}");
        }
    }
    let twice = lean_in_study(2, DVec2::ZERO);
    assert_eq!(twice.slope, [[0.0; 2]; 2]);
    assert!(twice.within[0][0] < 0.5 * lean_in_study(1, DVec2::ZERO).within[0][0]);
}

/// A tape with a hook that is off by its whole ±, the same in every reading: all fit each other, and posts
/// that stand right are told to be off by no more than is told beside it.
#[test]
fn what_all_tapes_are_off_alike_is_in_what_is_told() {
    let bay = test_bay();
    let planned = Planned::of(&bay);
    let mut measured = read_at(&planned, &usual(), &planned.start());
    for taken in &mut measured.tape {
        taken.reading += taken.tolerance;
    }
    let built = as_built(&bay, &measured).unwrap();
    assert!(built.fits());
    for post in &built.posts {
        let within = COVERAGE * post.off_sd_m;
        assert!(post.off_m.abs().cmple(within).all(), "{post:?}");
    }
    let square = built.square;
    assert!(square.wider_m.abs() > 0.001);
    assert!(
        square.wider_m.abs() <= COVERAGE * square.wider_sd_m,
        "{square:?}"
    );
}

/// One corner was marked 50 mm wrong: both tapes hooked to it are told, and not the five others that one by
/// one look worse.
#[test]
fn two_tapes_to_one_wrong_corner_are_told() {
    let bay = test_bay();
    let planned = Planned::of(&bay);
    let (l, r) = (|n| corner(Side::Left, n), |n| corner(Side::Right, n));
    let mut over = usual();
    over.extend([
        Over::Between(l(2), r(3)),
        Over::Between(l(3), r(2)),
        Over::Wall(FromWall::Right, r(1)),
    ]);
    let mut measured = read_at(&planned, &over, &planned.start());
    let slipped = [0, 16];
    for at in slipped {
        measured.tape[at].reading += Length::mm(50.0);
    }
    let built = as_built(&bay, &measured).unwrap();
    for (at, one) in built.readings.iter().enumerate() {
        assert_eq!(one.state.is_open(), slipped.contains(&at), "{at}: {one:?}");
    }
    for post in &built.posts {
        assert!(post.off_m.length() < 1e-6);
    }
}

/// What the levels leave open of a plumb that was read once counts against the manual's limit as well.
#[test]
fn a_plumb_that_was_read_once_is_not_shown_to_be_within_the_limit() {
    let mut bay = test_bay();
    bay.lift.plumb_limit = Some(Length::mm(10.0));
    let planned = Planned::of(&bay);
    for (times, known) in [(1, false), (2, true)] {
        let mut measured = taken(&planned, &usual(), &mut || 0.0);
        for side in SIDES {
            for _ in 0..times {
                floors::plumb(&mut measured, side, DVec2::ZERO);
            }
            floors::level(&mut measured, side, [0.0; 4]);
            measured.feeler.push(crate::bay::Feeler {
                side,
                gap: Length::mm(0.05),
            });
        }
        measured.level_tolerance = Length::mm(1.0);
        let built = as_built(&bay, &measured).unwrap();
        let found = findings(&bay, &measured, &built);
        let maybe = found
            .iter()
            .any(|one| matches!(one, Finding::MaybeOutOfPlumb(..)));
        assert_eq!(maybe, !known, "{times}: {found:?}");
    }
}
