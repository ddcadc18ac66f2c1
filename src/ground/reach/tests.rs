//! The whole of it on bays.

use glam::DVec2;

use super::propose::Against;
use super::shift::moved;
use super::*;
use crate::bay::{Aim, Obstacle, ObstacleKind, ObstacleShape};
use crate::bayfile::{self, presets::EmbeddedOnly};
use crate::clearance::study;
use crate::ground::{Figure, Quantity, Standing, Topic};
use crate::solids::test_bay::test_bay;
use crate::solids::{DoorTravel, Role};
use crate::units::{Angle, Length};

fn scene(name: &str) -> Bay {
    let path = format!("{}/scenes/{name}.ron", env!("CARGO_MANIFEST_DIR"));
    let text = std::fs::read(path).unwrap();
    bayfile::read(name, &text, &EmbeddedOnly).unwrap().bay
}

fn section_of(study: &Study) -> &Section {
    let of_reach = |section: &&Section| section.topic == Topic::Reach;
    study.sections.iter().find(of_reach).unwrap()
}

fn figure<'a>(section: &'a Section, id: &str) -> &'a Figure {
    section
        .figures
        .iter()
        .find(|figure| figure.id == id)
        .unwrap_or_else(|| panic!("no figure {id}"))
}

fn length(section: &Section, id: &str) -> f64 {
    match &figure(section, id).found {
        Some(Quantity::Length(found)) => *found,
        other => panic!("{id}: {other:?}"),
    }
}

#[test]
fn arms_too_short_are_cured_by_the_move_they_name() {
    let bay = scene("arms-too-short");
    let before = study(&bay).unwrap();
    assert_eq!(before.highest_safe_lock, None);
    let section = section_of(&before);
    let left = &before.arms[Corner::FrontLeft.index()];
    // 48 in long, drawn in by what may be off; how much is short, the section and the arm agree.
    assert!(left.worst_shortfall_m > 0.1, "{left:?}");
    assert_eq!(figure(section, "arm.front_left").standing, Standing::Stops);
    assert_eq!(figure(section, "arm.rear_left").standing, Standing::Passes);
    assert_eq!(figure(section, "swing_in").standing, Standing::Unknown);
    // Told once: no second reason for the same arm.
    let twice = |reason: &Withheld| {
        matches!(
            reason,
            Withheld::Ground {
                topic: Topic::Reach,
                ..
            }
        )
    };
    assert!(!before.withheld.iter().any(twice), "{:?}", before.withheld);

    let by_m = DVec2::new(
        length(section, "move.across"),
        length(section, "move.along"),
    );
    assert!(by_m.length() >= length(section, "move.least") - 1e-12);
    let there = moved(&bay, by_m);
    let after = study(&there).unwrap();
    assert!(after.highest_safe_lock.is_some(), "{:?}", after.withheld);
    let section = section_of(&after);
    for figure in &section.figures {
        assert!(
            matches!(figure.standing, Standing::Passes | Standing::Noted),
            "{figure:?}"
        );
    }
    // Half of the way does not do.
    let half = study(&moved(&bay, by_m * 0.5)).unwrap();
    assert!(half.arms.iter().any(|arm| arm.worst_shortfall_m > 0.0));
}

#[test]
fn shipped_scenes_reach_and_swing_in_with_pads_the_lift_has() {
    for name in [
        "tall-pickup",
        "coupe-full-rise",
        "no-safe-lock",
        "tall-columns",
    ] {
        let bay = scene(name);
        let found = study(&bay).unwrap();
        let section = section_of(&found);
        let mut asks_to_look = false;
        for figure in &section.figures {
            // Coarse teeth may leave a point off the middle of its pad: it bears, and is to be looked
            // at.
            let looked_at =
                figure.id.starts_with("pad_off.") && figure.standing == Standing::Unknown;
            asks_to_look |= looked_at;
            assert!(
                looked_at || matches!(figure.standing, Standing::Passes | Standing::Noted),
                "{name}: {figure:?}"
            );
        }
        // Only that leaves something of it not known.
        let not_known = found
            .unknown
            .iter()
            .any(|one| one.words() == Topic::Reach.not_known());
        assert_eq!(not_known, asks_to_look, "{name}");
    }
}

#[test]
fn arms_that_reach_nowhere_say_that_no_move_does() {
    let mut bay = test_bay();
    for arm in &mut bay.lift.arms[..2] {
        (arm.shortest, arm.longest) = (Length::mm(90.0), Length::mm(100.0));
    }
    let found = study(&bay).unwrap();
    let reach = Reach::of(&bay, &found).unwrap();
    assert_eq!(reach.moves, Some(Err(NoMove::Beyond)));
}

#[test]
fn an_arm_through_a_tyre_is_moved_off_it_or_says_that_it_is_not() {
    // The rear lift points lie close before the rear tyres, and the vehicle stands far out, so
    // that the rear arms lie across the way of the tyres.
    let mut bay = test_bay();
    for arm in &mut bay.lift.arms {
        (arm.shortest, arm.longest) = (Length::inches(18.0), Length::inches(80.0));
        arm.swing_min = Angle::degrees(-80.0);
        arm.tooth = None;
    }
    bay.lift.cg_window = None;
    let axle = vehicle::axle_station_m(&bay.vehicle, 1);
    for point in &mut bay.vehicle.lift_points[2..] {
        point.station = Length::metres(axle - 0.35);
    }
    bay.parking.aim = Aim::LiftPoints(Length::inches(40.0));
    let found = study(&bay).unwrap();
    if found.carried.is_empty() {
        panic!("the arms were to meet the tyres: {:?}", found.arms);
    }
    let reach = Reach::of(&bay, &found).unwrap();
    let proposal = reach.moves.unwrap().unwrap().proposal.unwrap();
    let there = study(&moved(&bay, proposal.by_m)).unwrap();
    match &proposal.against {
        None | Some(Against::Balance | Against::Room) => {
            assert!(there.carried.is_empty(), "{:?}", there.carried);
            assert!(there.arms.iter().all(|arm| arm.worst_shortfall_m <= 0.0));
        }
        Some(Against::Touches(..)) => assert!(!there.carried.is_empty()),
        Some(Against::Reach) => panic!("the floor is level"),
    }
}

#[test]
fn pads_on_a_stepped_frame_are_set_level_and_the_body_then_stands_level() {
    let mut bay = test_bay();
    for point in &mut bay.vehicle.lift_points[2..] {
        point.height += Length::inches(4.0);
    }
    let found = study(&bay).unwrap();
    let pads = Reach::of(&bay, &found).unwrap().pads;
    assert!(
        (pads.out_of_level_m - 4.0 * 0.0254).abs() < 1e-9,
        "{pads:?}"
    );
    let Level::Sets(sets) = pads.level else {
        panic!("a 3 in adapter and 1 in of screw make it: {:?}", pads.level);
    };
    for corner in Corner::ALL {
        bay.parking.pad_raise[corner.index()] = Length::metres(sets[corner.index()].raise_m);
    }
    let stands = attitude::attitudes(&bay, ParkingError::default(), [0.0; 4]).unwrap();
    assert_eq!(stands.len(), 1);
    assert_eq!(stands[0].loose, None);
    let up = stands[0].bay_from_vehicle_at_zero.rotation * glam::DVec3::Z;
    assert!((up - glam::DVec3::Z).length() < 1e-9, "{up}");
    let found = study(&bay).unwrap();
    assert!(Reach::of(&bay, &found).unwrap().pads.out_of_level_m <= 0.0);
}

#[test]
fn a_raise_that_nothing_of_the_lift_makes_is_not_known() {
    // Screw to 3 in, adapters of 3 and 5 in: 11 in is the most.
    let mut bay = test_bay();
    bay.parking.pad_raise = [Length::inches(11.5); 4];
    let found = study(&bay).unwrap();
    let section = section_of(&found);
    assert_eq!(figure(section, "pads.set").standing, Standing::Unknown);
    assert!(
        found
            .unknown
            .iter()
            .any(|one| one.words() == Topic::Reach.not_known())
    );
}

#[test]
fn pads_set_unevenly_are_told_to_be_set_and_no_move_is_proposed() {
    let mut bay = scene("arms-too-short");
    bay.parking.aim = Aim::LiftPoints(Length::inches(2.4));
    bay.parking.across = Length::ZERO;
    for point in &mut bay.vehicle.lift_points[2..] {
        point.height = Length::inches(20.0);
    }
    let found = study(&bay).unwrap();
    assert!(!found.carried.is_empty());
    let section = section_of(&found);
    let cure = figure(section, "placed").cure.clone().unwrap();
    assert!(cure.starts_with("set the pads so that"), "{cure}");
    assert!(cure.contains("adapter"), "{cure}");
    assert!(
        !section
            .figures
            .iter()
            .any(|one| one.id.starts_with("move."))
    );
}

#[test]
fn a_move_says_what_the_room_says_of_it() {
    let bay = scene("arms-too-short");
    let found = study(&bay).unwrap();
    let reach = Reach::of(&bay, &found).unwrap();
    let cure = move_figures::cure(&bay, &reach);
    assert!(cure.starts_with("move the vehicle"), "{cure}");
    // What it says of the place holds when the vehicle is put there.
    let by_m = reach.moves.unwrap().unwrap().proposal.unwrap().by_m;
    let there = study(&moved(&bay, by_m)).unwrap();
    let lock = there.highest_clear_lock.unwrap();
    assert!(cure.contains(&format!("lock {lock} ")), "{cure}");
    assert!(there.tight_as_parked.is_empty() && there.driving_in.is_empty());
    assert!(cure.contains("can be driven in and stands clear of the room"));
}

#[test]
fn no_move_is_proposed_into_what_stands_beside_the_vehicle() {
    let mut bay = scene("arms-too-short");
    let proposed = |bay: &Bay| {
        let reach = Reach::of(bay, &study(bay).unwrap()).unwrap();
        (
            move_figures::cure(bay, &reach),
            reach.moves.unwrap().unwrap().proposal.unwrap(),
        )
    };
    let (_, before) = proposed(&bay);
    let (mut left, mut nose) = (f64::INFINITY, f64::NEG_INFINITY);
    for solid in crate::solids::list::solids(&bay, DoorTravel::Open, 0.0).unwrap() {
        if solid.role == Role::Body {
            left = left.min(solid.bounds().0.x);
            nose = nose.max(solid.bounds().1.y);
        }
    }
    // Near enough to be in the way of the move to the left, not of the vehicle as it stands.
    let gap_m = 0.16;
    bay.garage.obstacles.push(Obstacle {
        name: "tool chest".into(),
        kind: ObstacleKind::Other,
        shape: ObstacleShape::Box {
            x: Length::metres(left - gap_m - 0.2),
            y: Length::metres(nose - 0.8),
            bottom: Length::ZERO,
            width: Length::metres(0.4),
            depth: Length::metres(0.4),
            height: Length::metres(0.8),
            turned: Angle::ZERO,
        },
        removable: None,
        only_at_times: false,
        row: [0, 0],
    });
    let here = study(&bay).unwrap();
    assert!(here.tight_as_parked.is_empty() && here.driving_in.is_empty());
    let there = study(&moved(&bay, before.by_m)).unwrap();
    assert!(!there.tight_as_parked.is_empty() || !there.driving_in.is_empty());
    let (cure, after) = proposed(&bay);
    match after.against {
        None => {
            let there = study(&moved(&bay, after.by_m)).unwrap();
            assert!(there.tight_as_parked.is_empty() && there.driving_in.is_empty());
        }
        Some(against) => {
            assert_eq!(against, Against::Room);
            assert!(cure.contains("the room is against it"), "{cure}");
        }
    }
}

#[test]
fn a_point_off_the_middle_of_its_pad_asks_to_be_looked_at() {
    let mut bay = test_bay();
    let standing = |bay: &Bay| {
        let found = study(bay).unwrap();
        let figure = figure(section_of(&found), "pad_off.front_left");
        (figure.standing, found.arms[0].pad_off_m)
    };
    let (_, off) = standing(&bay);
    assert!(off > 0.0);
    bay.lift.pad.diameter = Length::metres(4.1 * off);
    assert_eq!(standing(&bay).0, Standing::Passes);
    bay.lift.pad.diameter = Length::metres(3.9 * off);
    assert_eq!(standing(&bay).0, Standing::Unknown);
}

#[test]
fn arms_that_nothing_holds_stop_and_unsaid_ones_are_not_known() {
    let mut bay = test_bay();
    let standing = |bay: &Bay| {
        let found = study(bay).unwrap();
        let standing = figure(section_of(&found), "restraints").standing;
        (standing, found.highest_safe_lock.is_some())
    };
    assert_eq!(standing(&bay).0, Standing::Passes);
    for arm in &mut bay.lift.arms[2..] {
        arm.tooth = None;
    }
    assert_eq!(standing(&bay).0, Standing::Unknown);
    for arm in &mut bay.lift.arms[2..] {
        arm.stepless_restraint = Some(true);
    }
    assert_eq!(standing(&bay).0, Standing::Passes);
    bay.lift.arms[3].stepless_restraint = Some(false);
    assert_eq!(standing(&bay), (Standing::Stops, false));
    let found = study(&bay).unwrap();
    let told = |reason: &Withheld| matches!(reason, Withheld::Ground { topic: Topic::Reach, figure } if figure.id == "restraints");
    assert!(found.withheld.iter().any(told));
}

#[test]
fn no_tooth_beyond_the_swing_is_offered() {
    let mut bay = test_bay();
    bay.policy.measured_lift = Length::ZERO;
    bay.policy.measured_vehicle = Length::ZERO;
    let notes = |bay: &Bay| format!("{:?}", section_of(&study(bay).unwrap()).notes);
    let asked = crate::solids::arms::reach(&bay, Corner::FrontLeft, ParkingError::default());
    let [low, high] = asked.unwrap().rests.map(|rest| rest.swing_rad.to_degrees());
    assert!(notes(&bay).contains(&format!("front left {low:.1} or {high:.1} deg")));
    assert!(notes(&bay).contains("counted from swing 0"));
    bay.lift.arms[0].swing_max = Angle::degrees(high - 0.1);
    assert!(
        notes(&bay).contains(&format!("front left {low:.1} deg")),
        "{}",
        notes(&bay)
    );
    // Nor is one told to swing to it.
    bay.lift.pad.diameter = Length::inches(2.0);
    let found = study(&bay).unwrap();
    let found = section_of(&found)
        .figures
        .iter()
        .find(|one| one.id == "pad_off.front_left");
    if let Some(cure) = found.and_then(|one| one.cure.as_ref()) {
        assert!(!cure.contains("other tooth"), "{cure}");
    }
}

#[test]
fn an_arm_that_stops_shows_a_figure_beyond_its_limit() {
    let bay = scene("arms-too-short");
    let found = study(&bay).unwrap();
    for figure in &section_of(&found).figures {
        let Some((bound, limit)) = &figure.limit else {
            continue;
        };
        let (found, limit) = (figure.found.as_ref().unwrap().number(), limit.number());
        if figure.standing == Standing::Stops {
            let keeps = match bound {
                crate::ground::Bound::AtMost => found <= limit,
                crate::ground::Bound::AtLeast => found >= limit,
            };
            assert!(!keeps, "{figure:?}");
        }
    }
}

#[test]
fn stacked_adapters_are_not_known() {
    // 8 1/2 in: a 3 in and a 5 in adapter and 1/2 in of screw.
    let mut bay = test_bay();
    bay.parking.pad_raise = [Length::inches(8.5); 4];
    let found = study(&bay).unwrap();
    let set = figure(section_of(&found), "pads.set");
    assert_eq!(set.standing, Standing::Unknown, "{set:?}");
    assert!(set.cure.as_ref().unwrap().contains("stacked"));
}

#[test]
fn pads_raised_so_that_they_touch_are_told_to_be_set_lower() {
    let mut bay = scene("door-meets-post");
    bay.parking.pad_raise = [Length::mm(130.0); 4];
    let found = study(&bay).unwrap();
    assert!(!found.carried.is_empty());
    let reach = Reach::of(&bay, &found).unwrap();
    let sets = reach.reset.0.clone().unwrap();
    let cure = move_figures::cure(&bay, &reach);
    assert!(cure.starts_with("set the pads so that"), "{cure}");
    bay.parking.pad_raise = [0, 1, 2, 3].map(|i| Length::metres(sets[i].raise_m));
    assert!(study(&bay).unwrap().carried.is_empty());
    // Where no setting and no move helps, that is said with how far was looked.
    bay.lift.pad.diameter = Length::mm(600.0);
    let found = study(&bay).unwrap();
    assert!(!found.carried.is_empty());
    let reach = Reach::of(&bay, &found).unwrap();
    let cure = move_figures::cure(&bay, &reach);
    assert!(cure.contains("other settings of the pads"), "{cure}");
    assert!(cure.contains("long, none"), "{cure}");
    assert!(length(section_of(&found), "move.searched_to") > 0.0);
}

#[test]
fn a_proposed_move_is_given_as_the_file_writes_it() {
    let bay = scene("arms-too-short");
    let found = study(&bay).unwrap();
    let reach = Reach::of(&bay, &found).unwrap();
    let by_m = reach.moves.unwrap().unwrap().proposal.unwrap().by_m;
    let note = |id: &str| format!("{:?}", figure(section_of(&found), id).note);
    let between = |text: String, from: &str| {
        let rest = text.split(from).nth(1).unwrap().to_owned();
        rest.split("\\\"").nth(1).unwrap().to_owned()
    };
    let there = moved(&bay, by_m);
    let Aim::LiftPoints(aim) = there.parking.aim else {
        panic!("{:?}", there.parking.aim);
    };
    for (id, from, want) in [
        ("move.along", "aim: LiftPoints(", aim),
        ("move.across", "across: ", there.parking.across),
    ] {
        let read = crate::units::parse_length(&between(note(id), from)).unwrap();
        assert!(
            (read - want).abs() < Length::mm(0.9),
            "{id}: {read:?} {want:?}"
        );
    }
}

#[test]
fn no_move_is_proposed_to_where_the_balance_stops() {
    use crate::ground::loads::balance_holds;
    let mut bay = scene("arms-too-short");
    let proposal = |bay: &Bay| {
        let reach = Reach::of(bay, &study(bay).unwrap()).unwrap();
        reach.moves.unwrap().unwrap().proposal.unwrap()
    };
    let free = proposal(&bay);
    assert_eq!(free.against, None);
    // The same place with a part that comes out there: in and out, the weight acts so far apart that
    // one of both leaves the window wherever the vehicle stands.
    bay.vehicle.masses = vec![crate::bay::NamedMass {
        name: "engine".into(),
        mass: crate::units::Mass::pounds(-2_000.0),
        station: Length::inches(40.0),
        across: Length::ZERO,
        height: None,
        stays: false,
    }];
    let uncertainty = study(&bay).unwrap().uncertainty;
    assert!(!balance_holds(&moved(&bay, free.by_m), &uncertainty));
    // Looked at as given alone, a place in the window would be proposed as free.
    assert!(proposal(&bay).against.is_some());
}
