//! What is said of a bay whose weight lies badly, or loses parts.

use super::*;

#[test]
fn weight_outside_the_window_stops() {
    let mut bay = test_bay();
    bay.parking.aim = Aim::CentreOfGravity(Length::inches(8.0));
    assert_eq!(stops(&study(&bay).unwrap()), Vec::<&str>::new());
    // 12 in of window less 2 in of parking, the ± and the tilt.
    bay.parking.aim = Aim::CentreOfGravity(Length::inches(10.0));
    let study = study(&bay).unwrap();
    assert_eq!(
        figure(loads_section(&study), "window.front").standing,
        Standing::Stops
    );
    assert_eq!(study.highest_safe_lock, None);
    assert_eq!(stops(&study), ["window.front"]);
    // Without a window it is not known.
    bay.lift.cg_window = None;
    let states = states(&bay);
    let section = section(&bay, &states);
    assert_eq!(figure(&section, "window").standing, Standing::Unknown);
}

#[test]
fn weight_near_or_past_the_pads_stops() {
    let mut bay = test_bay();
    // Front points at 92 in: the weight at 99.3 in is 7.3 in behind them, less all that is off.
    for index in [0, 1] {
        bay.vehicle.lift_points[index].station = Length::inches(92.0);
    }
    let near = section(&bay, &states(&bay));
    assert_eq!(figure(&near, "inside_pads").standing, Standing::Stops);
    for index in [0, 1] {
        bay.vehicle.lift_points[index].station = Length::inches(101.0);
    }
    let past = section(&bay, &states(&bay));
    assert_eq!(figure(&past, "inside_pads").standing, Standing::Stops);
    assert_eq!(figure(&past, "pad_load").standing, Standing::Unknown);
    assert!(pad_loads(&bay).is_none());
    let study = study(&bay).unwrap();
    assert_eq!(study.highest_safe_lock, None);
}

#[test]
fn an_arms_share_is_a_quarter_where_the_manual_is_silent() {
    let mut bay = test_bay();
    bay.lift.arm_capacity = None;
    let given = section(&bay, &states(&bay));
    let pad = figure(&given, "pad_load.rear_left");
    let (_, limit) = pad.limit.as_ref().unwrap();
    assert_eq!(*limit, Quantity::Mass(bay.lift.capacity.kg() * 0.25));
    assert!(pad.source.as_ref().unwrap().contains("a quarter"));
    bay.lift.capacity = Mass::pounds(6_800.0);
    let over = section(&bay, &states(&bay));
    assert_eq!(figure(&over, "total").standing, Standing::Passes);
    assert_eq!(
        figure(&over, "pad_load.front_left").standing,
        Standing::Stops
    );
}

#[test]
fn over_the_rating_is_told_once() {
    let mut bay = test_bay();
    bay.lift.capacity = Mass::pounds(5_000.0);
    bay.lift.arm_capacity = Some(Mass::pounds(2_500.0));
    let study = study(&bay).unwrap();
    assert_eq!(
        figure(loads_section(&study), "total").standing,
        Standing::Stops
    );
    let rating = |one: &&Withheld| matches!(one, Withheld::OverRating { .. });
    assert_eq!(study.withheld.iter().filter(rating).count(), 1);
    assert_eq!(stops(&study), Vec::<&str>::new());
}

#[test]
fn parts_taken_out_are_told_before_after_and_between() {
    let mut bay = exact();
    bay.parking.aim = Aim::LiftPoints(Length::inches(-12.0));
    bay.vehicle.masses = vec![
        part("engine", -700.0, 44.0, 0.0),
        part("rear axle", -500.0, 183.0, 0.0),
    ];
    let study = study(&bay).unwrap();
    let section = loads_section(&study);
    let inches = |id: &str| number(section, id) / 0.0254;
    // Post line at station 100. Before: 99.346; after, 4000 lb: (5200·99.346 - 700·44 -
    // 500·183)/4000 = 98.575; with only the engine out, 4500 lb: 107.956; with only the axle out,
    // 4700 lb: 90.447.
    assert!((inches("before.window.front") - 0.654).abs() < 1e-2);
    assert!((inches("window.front") - 1.425).abs() < 1e-2);
    assert!((inches("between.window.rear") - 7.956).abs() < 1e-2);
    assert!((inches("between.window.front") - 9.553).abs() < 1e-2);
    // Nothing but the load on three pads is open.
    for one in &section.figures {
        let open = one.standing == Standing::Unknown;
        assert!(!open || one.id.ends_with("three_pads"), "{one:#?}");
        assert_ne!(one.standing, Standing::Stops, "{one:#?}");
    }
    // In between it may leave the window: not for the program to know whether it comes to that.
    bay.lift.cg_window = Some(crate::bay::CgWindow {
        front: Length::inches(9.0),
        rear: Length::inches(9.0),
    });
    let narrow = super::section(&bay, &states(&bay));
    assert_eq!(
        figure(&narrow, "between.window.front").standing,
        Standing::Unknown
    );
    assert_eq!(
        figure(&narrow, "between.window.rear").standing,
        Standing::Passes
    );
    assert_eq!(figure(&narrow, "window.front").standing, Standing::Passes);
}

#[test]
fn parts_that_are_still_in_while_it_is_raised_count() {
    // 5200 lb, of which 2000 are to come out on the lift: more than its rating, or than two arms
    // of a light lift stand, until then.
    let mut bay = exact();
    bay.parking.aim = Aim::LiftPoints(Length::inches(-12.0));
    bay.vehicle.masses = vec![part("engine", -2_000.0, 100.0, 0.0)];
    let stands = |bay: &Bay, id: &str| figure(&section(bay, &states(bay)), id).standing;
    assert_eq!(stands(&bay, "before.total"), Standing::Passes);
    assert_eq!(stands(&bay, "before.pad_load"), Standing::Passes);
    bay.lift.capacity = Mass::pounds(5_000.0);
    bay.lift.arm_capacity = Some(Mass::pounds(1_600.0));
    assert_eq!(stands(&bay, "total"), Standing::Passes);
    assert_eq!(stands(&bay, "pad_load.front_left"), Standing::Passes);
    assert_eq!(stands(&bay, "before.total"), Standing::Stops);
    assert_eq!(stands(&bay, "before.pad_load"), Standing::Stops);
    let study = study(&bay).unwrap();
    assert_eq!(study.highest_safe_lock, None);
    assert!(stops(&study).contains(&"before.total"));
}

#[test]
fn loads_in_between_count_for_pads_and_posts() {
    // The engine ahead of the pads and the axle behind them: with one out alone the other end's
    // pads carry more than before and after.
    let mut bay = exact();
    bay.parking.aim = Aim::LiftPoints(Length::inches(-12.0));
    bay.vehicle.masses = vec![
        part("engine", -900.0, 20.0, 0.0),
        part("rear axle", -900.0, 190.0, 0.0),
    ];
    bay.lift.cg_window = Some(crate::bay::CgWindow {
        front: Length::inches(60.0),
        rear: Length::inches(60.0),
    });
    let states = states(&bay).unwrap();
    assert_eq!((states.between.len(), states.all_between), (2, true));
    let most = |state: &State| {
        let pads = state.pads.unwrap().pads;
        pads.iter().map(|pad| pad.shared_n).fold(0.0, f64::max) / GRAVITY
    };
    let ends = most(&states.as_given).max(most(states.before.as_ref().unwrap()));
    let within = states.between.iter().map(most).fold(0.0, f64::max);
    assert!(within > ends, "{within} {ends}");
    let found = section(&bay, &Ok(states.clone()));
    assert!((number(&found, "between.pad_load") - within).abs() < 1e-6);
    // The posts get what the worst of all states brings.
    let loads = PadLoads::of(&states).unwrap();
    assert_eq!(loads.states.len(), 4);
    let turned = |states: &States| {
        let loads = PadLoads::of(states).unwrap();
        let [left, _] = crate::ground::post_base::post_bases(&bay, &loads).unwrap();
        left.moment_along_nm
    };
    let without = States {
        between: Vec::new(),
        ..states.clone()
    };
    assert!(turned(&states) > turned(&without));
    // Between both one order holds: not known. An arm that stands neither: none, and that stops.
    bay.lift.arm_capacity = Some(Mass::kilograms(within - 1.0));
    let found = section(&bay, &super::states(&bay));
    let load = figure(&found, "between.pad_load");
    assert_eq!(load.standing, Standing::Unknown);
    let orders = |bay: &Bay| {
        let found = section(bay, &super::states(bay));
        let found = found.figures.iter().find(|one| one.id == "between.orders");
        found.map(|one| one.standing)
    };
    assert_eq!(orders(&bay), None);
    let least = states
        .between
        .iter()
        .map(most)
        .fold(f64::INFINITY, f64::min);
    bay.lift.arm_capacity = Some(Mass::kilograms(least - 1.0));
    assert_eq!(orders(&bay), Some(Standing::Stops));
    // Of three parts every set is looked at, of many not.
    bay.vehicle.masses.push(part("seat", -60.0, 110.0, 0.0));
    assert_eq!(super::states(&bay).unwrap().between.len(), 6);
    for _ in 0..3 {
        bay.vehicle.masses.push(part("seat", -60.0, 110.0, 0.0));
    }
    assert!(!super::states(&bay).unwrap().all_between);
    assert_eq!(orders(&bay), Some(Standing::Unknown));
}

#[test]
fn load_far_aside_lets_a_pad_lift() {
    let mut bay = exact();
    bay.vehicle.masses = vec![part("sand", 2_000.0, 60.0, 34.0)];
    bay.parking.aim = Aim::CentreOfGravity(Length::ZERO);
    let states = states(&bay).unwrap();
    let pads = states.as_given.pads.unwrap();
    assert_eq!(pads.lifts, Some(Corner::RearLeft), "{pads:?}");
    assert!(pads.pads[Corner::RearLeft.index()].nominal_n.abs() < 1e-6);
    let section = section(&bay, &Ok(states));
    assert_eq!(figure(&section, "lifting_pad").standing, Standing::Stops);
}

#[test]
fn a_tilted_body_carries_its_weight_to_one_side() {
    let mut bay = exact();
    bay.parking.aim = Aim::LiftPoints(Length::ZERO);
    let level = states(&bay).unwrap().as_given;
    // Carriages out of level by 1 in over 40 in between the lift points, and the weight 12 in over
    // them: 12/40 in to either side.
    bay.lift.side_mismatch = Length::inches(1.0);
    let tilted = states(&bay).unwrap().as_given;
    let aside = (tilted.across_m.1 - level.across_m.1) / 0.0254;
    assert!((aside - 0.3).abs() < 0.01, "{aside}");
}

#[test]
fn balance_holds_where_no_figure_of_the_place_stops() {
    use crate::clearance::uncertainty::Uncertainty;
    let agrees = |bay: &Bay| {
        let says = balance_holds(bay, &Uncertainty::worst(bay));
        let section = section(bay, &states(bay));
        let stops = section.figures.iter().any(|one| {
            let weight = one.id == "total" || one.id == "before.total";
            one.standing == Standing::Stops && !weight
        });
        assert_eq!(says, !stops, "{:?}", bay.parking.aim);
        says
    };
    // 12 in of window, less 2 in of parking, the ± and the tilt: what a step of parking alone
    // leaves out.
    let mut bay = test_bay();
    let at = |bay: &mut Bay, inches: f64| {
        bay.parking.aim = Aim::CentreOfGravity(Length::inches(inches));
    };
    at(&mut bay, 8.0);
    assert!(agrees(&bay));
    at(&mut bay, 10.0);
    assert!(!agrees(&bay));
    // With nothing off it lies in it.
    assert!(balance_holds(&bay, &Uncertainty::NONE));
    // A part that comes out counts both in and out: with 250 lb at the bumper still in, the weight
    // lies 5200 * 99.3 / 4950 less 99.3 in, 5.0 in, farther forward than what is aimed.
    bay.vehicle.masses = vec![part("winch", -250.0, 0.0, 0.0)];
    at(&mut bay, 0.0);
    assert!(agrees(&bay));
    at(&mut bay, 8.0);
    let mut out = bay.clone();
    out.vehicle.masses.clear();
    assert!(agrees(&out));
    let before_only = section(&bay, &states(&bay));
    assert_eq!(
        figure(&before_only, "window.front").standing,
        Standing::Passes
    );
    assert_eq!(
        figure(&before_only, "before.window.front").standing,
        Standing::Stops
    );
    assert!(!agrees(&bay));
    // What is not known is told elsewhere.
    bay.vehicle.axle_loads = None;
    assert!(balance_holds(&bay, &Uncertainty::worst(&bay)));
}
