//! What is said of a bay whose weight lies badly, or loses parts.

use super::*;

#[test]
fn weight_outside_the_window_stops() {
    let mut bay = test_bay();
    bay.parking.aim = Aim::CentreOfGravity(Length::inches(9.0));
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
    assert_eq!(section.standing(), figure(section, "three_pads").standing);
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
