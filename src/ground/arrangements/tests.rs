use super::*;
use crate::clearance::study;
use crate::ground::Standing;
use crate::solids::test_bay::test_bay;
use crate::units::{Length, Mass};

#[test]
fn a_panel_needs_its_space_before_it() {
    let mut bay = test_bay();
    let with = |bay: &mut Bay, depth: f64| {
        bay.arrangements = Some(Arrangements {
            panel_space: Some([
                Length::inches(30.0),
                Length::inches(depth),
                Length::inches(78.0),
            ]),
            ..Arrangements::default()
        });
        panel_space(bay).iter().map(|one| one.standing).max()
    };
    assert_eq!(with(&mut bay, 36.0), Some(Standing::Passes));
    assert_eq!(with(&mut bay, 35.9), Some(Standing::Stops));
    bay.arrangements = None;
    assert_eq!(panel_space(&bay)[0].standing, Standing::Unknown);
}

#[test]
fn gear_that_carries_less_stops() {
    let mut bay = test_bay();
    bay.arrangements = Some(Arrangements {
        unloading: Some(Mass::kilograms(500.0)),
        ..Arrangements::default()
    });
    let unloading = |kg| gear(&bay, kg, None)[0].standing;
    assert_eq!(unloading(Some(500.0)), Standing::Passes);
    assert_eq!(unloading(Some(501.0)), Standing::Stops);
    assert_eq!(unloading(Some(f64::NAN)), Standing::Stops);
    assert_eq!(unloading(None), Standing::Unknown);
}

#[test]
fn a_heater_that_is_not_in_the_room_is_not_known() {
    let mut bay = test_bay();
    bay.garage.obstacles.clear();
    let study = study(&bay).unwrap();
    assert_eq!(heaters(&bay, &study)[0].standing, Standing::Unknown);
    bay.arrangements = Some(Arrangements {
        burning: Some(Vec::new()),
        ..Arrangements::default()
    });
    assert_eq!(heaters(&bay, &study)[0].standing, Standing::Passes);
    bay.arrangements = Some(Arrangements {
        burning: Some(vec![crate::bay::Burning {
            name: "stove".into(),
            clearance: Some(Length::mm(100.0)),
        }]),
        ..Arrangements::default()
    });
    assert_eq!(heaters(&bay, &study)[0].standing, Standing::Unknown);
}

#[test]
fn a_pipe_may_be_a_flue_until_it_is_said_to_be_none() {
    use crate::bay::{Obstacle, ObstacleKind, ObstacleShape};
    use crate::units::Angle;
    let mut bay = test_bay();
    bay.garage.obstacles.clear();
    for (name, kind) in [
        ("boiler flue", ObstacleKind::Pipe),
        ("gas water heater", ObstacleKind::Other),
        ("ceiling fan", ObstacleKind::Fan),
    ] {
        bay.garage.obstacles.push(Obstacle {
            name: name.into(),
            kind,
            shape: ObstacleShape::Box {
                x: Length::mm(-3000.0),
                y: Length::mm(7000.0),
                bottom: Length::ZERO,
                width: Length::mm(150.0),
                depth: Length::mm(150.0),
                height: Length::mm(1000.0),
                turned: Angle::ZERO,
            },
            removable: None,
            only_at_times: false,
            row: [0, 0],
        });
    }
    let study = study(&bay).unwrap();
    let mut with = |not_burning: &[&str]| {
        bay.arrangements = Some(Arrangements {
            burning: Some(Vec::new()),
            not_burning: not_burning.iter().map(|&name| name.into()).collect(),
            ..Arrangements::default()
        });
        let found = heaters(&bay, &study);
        (found.len(), found[0].standing)
    };
    assert_eq!(with(&[]), (2, Standing::Unknown));
    assert_eq!(with(&["boiler flue"]), (1, Standing::Unknown));
    assert_eq!(
        with(&["boiler flue", "gas water heater"]),
        (1, Standing::Passes)
    );
}

#[test]
fn a_heater_beside_the_vehicle_is_measured_and_stops() {
    use crate::bay::{Obstacle, ObstacleKind, ObstacleShape};
    use crate::units::Angle;
    let mut bay = test_bay();
    // More near pairs than the study lists must not hide it.
    let half = bay.vehicle.body_width.m() * 0.5;
    bay.garage.obstacles.push(Obstacle {
        name: "stove".into(),
        kind: ObstacleKind::Heater,
        shape: ObstacleShape::Box {
            x: Length::metres(half + 0.2),
            y: bay.lift.post_line + Length::metres(0.6),
            bottom: Length::mm(700.0),
            width: Length::mm(100.0),
            depth: Length::mm(100.0),
            height: Length::mm(300.0),
            turned: Angle::ZERO,
        },
        removable: None,
        only_at_times: false,
        row: [0, 0],
    });
    bay.arrangements = Some(Arrangements {
        burning: Some(vec![crate::bay::Burning {
            name: "stove".into(),
            clearance: Some(Length::mm(305.0)),
        }]),
        ..Arrangements::default()
    });
    let mut study = study(&bay).unwrap();
    study.pairs.clear();
    let found = &heaters(&bay, &study)[0];
    assert_eq!(found.standing, Standing::Stops, "{found:?}");
    let distance = found.found.as_ref().and_then(Quantity::number).unwrap();
    assert!(distance < 0.16, "{distance}");
}

#[test]
fn gear_is_asked_for_the_heaviest_piece_and_for_the_column() {
    use crate::bay::Piece;
    let mut bay = test_bay();
    bay.lift.shipping_mass = Some(Mass::kilograms(150.0));
    bay.lift.pieces.clear();
    // Whatever it comes in is no heavier than the whole.
    assert_eq!(heaviest_kg(&bay), Some(150.0));
    assert_eq!(column_kg(&bay), None);
    let piece = |name: &str, kg| Piece {
        name: name.into(),
        mass: Mass::kilograms(kg),
        length: Length::mm(3000.0),
        width: Length::mm(400.0),
        height: Length::mm(400.0),
        column: name.contains("Left"),
    };
    bay.lift.shipping_mass = None;
    bay.lift.pieces = vec![piece("crate", 320.0), piece("Left column", 290.0)];
    assert_eq!(heaviest_kg(&bay), Some(320.0));
    assert_eq!(column_kg(&bay), Some(290.0));
    // 610 kg of 700 kg: something is missing, and it may be the heaviest.
    bay.lift.shipping_mass = Some(Mass::kilograms(700.0));
    assert_eq!((heaviest_kg(&bay), column_kg(&bay)), (None, None));
    bay.lift.shipping_mass = Some(Mass::kilograms(670.0));
    assert_eq!(column_kg(&bay), Some(290.0));
    // No name makes a piece a column.
    bay.lift.shipping_mass = None;
    bay.lift.pieces[1].column = false;
    assert_eq!(column_kg(&bay), None);
    assert_eq!(gear(&bay, None, None)[1].standing, Standing::Unknown);
}
