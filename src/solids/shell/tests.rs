//! The room against heights worked out by hand.

use super::*;
use crate::bay::{Bay, Ceiling, CeilingStep, FallToward, Floor, FloorLevel, Run};
use crate::solids::test_bay::test_bay;
use crate::units::Length;

fn with_ceiling(ceiling: Ceiling) -> Bay {
    let mut bay = test_bay();
    bay.garage.width = Length::metres(8.0);
    bay.garage.depth = Length::metres(10.0);
    bay.garage.ceiling = ceiling;
    bay
}

fn near(value: f64, wanted: f64) {
    assert!((value - wanted).abs() < 1e-12, "{value} is not {wanted}");
}

fn ceilings(bay: &Bay) -> Vec<Solid> {
    let mut solids = shell(bay);
    solids.retain(|solid| solid.role == Role::Ceiling);
    solids
}

fn named<'a>(solids: &'a [Solid], name: &str) -> &'a Solid {
    solids.iter().find(|solid| solid.name == name).unwrap()
}

/// True when the point lies in the solid (or within 1e-9 of it): no support plane of a fan of
/// directions parts them. The fan lies in the planes of `x`, `z` and `y`, `z`, a quarter of a degree
/// apart: over the 8 m of these solids it lets a point through up to 18 mm outside a sloped face.
fn holds(solid: &Solid, point: DVec3) -> bool {
    let inside = |direction: DVec3| direction.dot(solid.support(direction) - point) > -1e-9;
    (0..1440).all(|i| {
        let (sin, cos) = (f64::from(i) * 0.25).to_radians().sin_cos();
        inside(DVec3::new(cos, 0.0, sin)) && inside(DVec3::new(0.0, cos, sin))
    })
}

#[test]
fn a_slope_from_door_to_back() {
    // 4 m at the door, 3 m at the back, 10 m deep: 0.1 m lower per metre.
    let bay = with_ceiling(Ceiling::Sloped {
        run: Run::DoorToBack,
        first: Length::metres(4.0),
        last: Length::metres(3.0),
    });
    near(ceiling_height_m(&bay, 1.0, 0.0), 4.0);
    near(ceiling_height_m(&bay, -3.0, 2.5), 3.75);
    near(ceiling_height_m(&bay, 0.0, 10.0), 3.0);
    near(highest_ceiling_m(&bay), 4.0);
    assert_eq!(ceilings(&bay).len(), 1);
}

#[test]
fn a_slope_from_side_to_side_beside_an_opening_off_centre() {
    let mut bay = with_ceiling(Ceiling::Sloped {
        run: Run::SideToSide,
        first: Length::metres(3.0),
        last: Length::metres(5.0),
    });
    // The opening's middle (x = 0) lies 1 m right of the room's, so the room is x = -5 to 3.
    bay.garage.opening.offset = Length::metres(1.0);
    near(ceiling_height_m(&bay, -5.0, 2.0), 3.0);
    near(ceiling_height_m(&bay, -1.0, 2.0), 4.0);
    near(ceiling_height_m(&bay, 3.0, 9.0), 5.0);
}

#[test]
fn a_gable_with_its_ridge_off_the_middle() {
    // x = -4 to 4, ridge at x = 1: left plane climbs 2 m in 5 m, right plane falls 2 m in 3 m.
    let bay = with_ceiling(Ceiling::Gable {
        ridge_along: Run::DoorToBack,
        eaves: Length::metres(3.0),
        ridge: Length::metres(5.0),
        ridge_offset: Length::metres(1.0),
    });
    near(ceiling_height_m(&bay, -4.0, 1.0), 3.0);
    near(ceiling_height_m(&bay, -1.5, 1.0), 4.0);
    near(ceiling_height_m(&bay, 1.0, 9.0), 5.0);
    near(ceiling_height_m(&bay, 2.5, 9.0), 4.0);
    near(highest_ceiling_m(&bay), 5.0);
    let names: Vec<String> = ceilings(&bay).into_iter().map(|solid| solid.name).collect();
    assert_eq!(names, ["shell/ceiling left", "shell/ceiling right"]);
    // The back wall fills the gable up to its ridge.
    let solids = shell(&bay);
    let (_, high) = named(&solids, "shell/wall back").bounds();
    near(high.z, 5.05);
}

#[test]
fn steps_from_the_door_to_the_back() {
    let bay = with_ceiling(Ceiling::Stepped {
        steps: vec![
            CeilingStep {
                from: Length::ZERO,
                height: Length::metres(4.0),
            },
            CeilingStep {
                from: Length::metres(6.0),
                height: Length::metres(3.0),
            },
        ],
    });
    near(ceiling_height_m(&bay, 0.0, 5.9), 4.0);
    near(ceiling_height_m(&bay, 0.0, 6.0), 3.0);
    near(ceiling_height_m(&bay, 0.0, 9.0), 3.0);
    // The upright face between the steps is closed.
    let solids = ceilings(&bay);
    assert!(holds(&solids[1], DVec3::new(0.0, 6.01, 3.9)));
}

#[test]
fn a_ceiling_over_a_falling_floor_takes_the_lowest_reading() {
    let mut bay = with_ceiling(Ceiling::Flat {
        height: Length::metres(3.5),
    });
    bay.lift.post_line = Length::metres(4.0);
    bay.garage.floor = Floor::Fall {
        slope: 0.01,
        toward: FallToward::Back,
    };
    // The floor at the back lies 6 m beyond the post line, 60 mm down.
    near(ceiling_height_m(&bay, 0.0, 1.0), 3.44);
    bay.garage.ceiling = Ceiling::Sloped {
        run: Run::DoorToBack,
        first: Length::metres(3.0),
        last: Length::metres(4.0),
    };
    near(ceiling_height_m(&bay, 0.0, 0.0), 3.04);
    near(ceiling_height_m(&bay, 0.0, 10.0), 3.94);
}

#[test]
fn ceiling_solids_start_at_the_underside_everywhere() {
    for ceiling in [
        Ceiling::Flat {
            height: Length::metres(3.5),
        },
        Ceiling::Sloped {
            run: Run::SideToSide,
            first: Length::metres(3.0),
            last: Length::metres(4.2),
        },
        Ceiling::Gable {
            ridge_along: Run::SideToSide,
            eaves: Length::metres(2.8),
            ridge: Length::metres(4.4),
            ridge_offset: Length::metres(-0.7),
        },
    ] {
        let bay = with_ceiling(ceiling);
        let solids = ceilings(&bay);
        for i in 0..=20 {
            for j in 0..=20 {
                let (x, y) = (-4.2 + 0.42 * f64::from(i), -0.1 + 0.51 * f64::from(j));
                let z = ceiling_height_m(&bay, x, y);
                let held = |z| {
                    let point = DVec3::new(x, y, z);
                    solids.iter().any(|solid| holds(solid, point))
                };
                assert!(held(z + 1e-6), "something slips through at {x}, {y}");
                assert!(!held(z - 0.02), "the ceiling hangs too low at {x}, {y}");
            }
        }
    }
}

#[test]
fn the_opening_is_free_and_everything_round_it_is_wall() {
    let mut bay = test_bay();
    bay.garage.opening.offset = Length::inches(12.0);
    let solids = shell(&bay);
    let stopped =
        |x: f64, y: f64, z: f64| solids.iter().any(|solid| holds(solid, DVec3::new(x, y, z)));
    // Opening 10 ft by 8 ft (1.524 m either side, 2.4384 m high); wall from y = -6 in to 0.
    assert!(!stopped(1.5, -0.07, 2.4) && !stopped(-1.5, -0.07, 0.05));
    assert!(stopped(1.55, -0.07, 1.0) && stopped(-1.55, -0.07, 1.0));
    assert!(stopped(0.0, -0.07, 2.46) && !stopped(0.0, 0.02, 2.46));
    // The room: 24 ft wide about x = -12 in, so its left wall stands at -3.9624 m.
    assert!(!stopped(-3.93, 2.0, 1.0) && stopped(-4.0, 2.0, 1.0));
    assert!(stopped(3.4, 2.0, 1.0) && stopped(0.0, 8.6, 1.0));
    assert!(stopped(0.0, 2.0, -0.05) && !stopped(0.0, 2.0, 0.05));
}

#[test]
fn walls_left_and_right_of_the_opening_go_when_it_fills_the_wall() {
    let mut bay = test_bay();
    bay.garage.opening.width = bay.garage.width;
    let solids = shell(&bay);
    assert!(!solids.iter().any(|s| s.name.contains("door wall")));
    assert!(solids.iter().any(|s| s.name == "shell/door header"));
}

#[test]
fn a_floor_solid_is_never_below_the_floor() {
    let mut bay = test_bay();
    for floor in [
        Floor::Fall {
            slope: 0.02,
            toward: FallToward::Right,
        },
        Floor::Levels(vec![
            FloorLevel {
                x: Length::metres(-3.0),
                y: Length::metres(1.0),
                level: Length::mm(-25.0),
            },
            FloorLevel {
                x: Length::metres(2.0),
                y: Length::metres(7.0),
                level: Length::mm(18.0),
            },
        ]),
    ] {
        bay.garage.floor = floor;
        let mut solids = shell(&bay);
        solids.retain(|solid| solid.role == Role::Floor);
        for i in 0..=16 {
            for j in 0..=16 {
                let (x, y) = (-3.6 + 0.45 * f64::from(i), 0.5 * f64::from(j));
                let point = DVec3::new(x, y, floor_level_m(&bay, x, y) - 1e-9);
                assert!(solids.iter().any(|solid| holds(solid, point)), "{x}, {y}");
            }
        }
    }
}
