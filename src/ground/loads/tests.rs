//! Loads of a bay: published values, and what is said of a bay whose weight lies badly.

mod balance;
mod cargo;
mod lead;

use super::*;
use crate::bay::{Aim, Corner, NamedMass};
use crate::clearance::{Study, Unknown, Withheld, study};
use crate::ground::{Figure, Quantity, Section, Standing, Topic};
use crate::solids::attitude::centre_of_gravity;
use crate::solids::test_bay::test_bay;
use crate::units::{Length, Mass};

fn loads_section(study: &Study) -> &Section {
    let found = study.sections.iter().find(|s| s.topic == Topic::Loads);
    found.unwrap()
}

fn figure<'a>(section: &'a Section, id: &str) -> &'a Figure {
    let found = section.figures.iter().find(|figure| figure.id == id);
    found.unwrap_or_else(|| panic!("{id} in {section:#?}"))
}

fn number(section: &Section, id: &str) -> f64 {
    figure(section, id)
        .found
        .as_ref()
        .unwrap()
        .number()
        .unwrap()
}

/// The test bay with nothing uncertain and no restraint teeth.
fn exact() -> Bay {
    let mut bay = test_bay();
    bay.lift.side_mismatch = Length::ZERO;
    bay.parking.repeat_along = Length::ZERO;
    bay.parking.repeat_across = Length::ZERO;
    bay.parking.repeat_yaw = crate::units::Angle::ZERO;
    bay.policy.measured_lift = Length::ZERO;
    bay.policy.measured_vehicle = Length::ZERO;
    for arm in &mut bay.lift.arms {
        arm.tooth = None;
    }
    if let Some(height) = &mut bay.vehicle.cg_height {
        height.estimated = false;
    }
    bay
}

fn part(name: &str, pounds: f64, station: f64, across: f64) -> NamedMass {
    NamedMass {
        name: name.into(),
        mass: Mass::pounds(pounds),
        station: Length::inches(station),
        across: Length::inches(across),
        height: None,
        stays: false,
    }
}

#[test]
fn the_centre_of_gravity_of_the_textbook() {
    // R. N. Jazar, Vehicle Dynamics: Theory and Application, ch. 2, example 40 (wheel loads to
    // place of the mass centre): 2000 N on each front and 1800 N on each rear wheel, l = 2.34 m:
    // a1 = 1.1084 m, a2 = 1.2316 m.
    let mut bay = test_bay();
    bay.vehicle.wheelbase = Length::metres(2.34);
    bay.vehicle.axle_loads = Some([4_000.0, 3_600.0].map(|n| Mass::kilograms(n / 9.81)));
    let station = -centre_of_gravity(&bay.vehicle).unwrap().plan_m.y;
    let a1 = station - bay.vehicle.front_overhang.m();
    assert!((a1 - 1.1084).abs() < 5e-5, "{a1}");
    assert!((2.34 - a1 - 1.2316).abs() < 5e-5);
}

#[test]
fn pad_loads_by_hand() {
    // 3000 and 2200 lb on axles at 38 and 183 in: the weight acts at 38 + 145·2200/5200 = 99.346
    // in; pads at 74 and 150 in: the front pair carries 5200·(150 - 99.346)/76 = 3465.8 lb.
    let loads = pad_loads(&exact()).unwrap();
    let pounds = |n: f64| n / GRAVITY / 0.453_592_37;
    for corner in Corner::ALL {
        let pad = &loads.pads[corner.index()];
        let by_hand = if corner.is_front() {
            3_465.79
        } else {
            1_734.21
        } * 0.5;
        assert!((pounds(pad.nominal_n) - by_hand).abs() < 0.01, "{pad:?}");
        // With nothing uncertain four springs have one answer, and so have three pads on either
        // side: with a rear pad bare, the front pad of its side carries half of all, and the other
        // front pad what half of the rear leaves of it.
        assert!((pounds(pad.shared_n) - by_hand).abs() < 0.01, "{pad:?}");
        let (least, most) = if corner.is_front() {
            (3_465.79 - 2_600.0, 2_600.0)
        } else {
            (0.0, 1_734.21)
        };
        assert!((pounds(pad.least_n) - least).abs() < 0.01, "{pad:?}");
        assert!((pounds(pad.most_n) - most).abs() < 0.01, "{pad:?}");
    }
    assert!((loads.mass_kg - 5_200.0 * 0.453_592_37).abs() < 1e-6);
}

#[test]
fn both_aims_are_honoured() {
    let mut bay = exact();
    let along = |bay: &Bay| pad_loads(bay).unwrap().cg_m.y - bay.lift.post_line.m();
    bay.parking.aim = Aim::CentreOfGravity(Length::inches(3.0));
    assert!((along(&bay) - 3.0 * 0.0254).abs() < 1e-9);
    // The middle of the lift points is at 112 in, the weight 12.654 in ahead of it.
    bay.parking.aim = Aim::LiftPoints(Length::inches(-1.0));
    assert!((along(&bay) / 0.0254 - 11.654).abs() < 1e-3);
    let centred = pad_loads(&bay).unwrap();
    bay.parking.facing = crate::bay::Facing::TailIn;
    let turned = pad_loads(&bay).unwrap();
    // Tail-in the heavy end is at the lift's rear.
    let load = |loads: &PadLoads, corner: Corner| loads.pads[corner.index()].nominal_n;
    let (front, rear) = (Corner::FrontLeft, Corner::RearRight);
    assert!((load(&centred, front) - load(&turned, rear)).abs() < 1e-6);
}

/// What loads withhold the lift for. The test bay has reasons of its own.
fn stops(study: &Study) -> Vec<&str> {
    let mut ids = Vec::new();
    for one in &study.withheld {
        if let Withheld::Ground {
            topic: Topic::Loads,
            figure,
        } = one
        {
            ids.push(&*figure.id);
        }
    }
    ids
}

#[test]
fn a_sound_bay_stops_at_nothing() {
    let study = study(&test_bay()).unwrap();
    let section = loads_section(&study);
    assert!(section.standing() < Standing::Stops, "{section:#?}");
    for id in [
        "window.front",
        "window.rear",
        "inside_pads",
        "pad_load.front_left",
    ] {
        assert_eq!(figure(section, id).standing, Standing::Passes, "{id}");
    }
    // 5200 lb on two opposite pads are more than two arms' shares: not known, never a pass.
    assert_eq!(figure(section, "three_pads").standing, Standing::Unknown);
    assert!(study.unknown.contains(&Unknown::Section(Topic::Loads)));
    assert_eq!(stops(&study), Vec::<&str>::new());
}

#[test]
fn without_axle_loads_nothing_is_known() {
    let mut bay = test_bay();
    bay.vehicle.axle_loads = None;
    bay.parking.aim = Aim::LiftPoints(Length::ZERO);
    let study = study(&bay).unwrap();
    let section = loads_section(&study);
    assert_eq!(section.standing(), Standing::Unknown);
    assert!(
        section
            .figures
            .iter()
            .all(|f| f.standing == Standing::Unknown)
    );
    assert!(study.unknown.contains(&Unknown::Section(Topic::Loads)));
    assert!(study.unknown.contains(&Unknown::Section(Topic::PostBase)));
    assert!(pad_loads(&bay).is_none());
}
