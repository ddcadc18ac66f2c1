//! Do the heads of sheets say in plain words what stops, and where more of it is told?

use super::tests::{DAY, order, scenes};
use super::*;
use crate::bay::{Obstacle, ObstacleKind, ObstacleShape};
use crate::clearance::study_on;
use crate::solids::Role;
use crate::solids::list::solids;
use crate::units::{Angle, Length};

fn said(bay: &Bay) -> String {
    let study = study_on(bay, Some(DAY)).unwrap();
    let pages = layout(&order(bay, &study, Paper::A4)).unwrap();
    let texts = pages.iter().flat_map(Sheet::texts);
    let texts: Vec<&str> = texts.map(|text| text.says.as_str()).collect();
    texts.join(" ")
}

/// A bay in which nothing forbids drilling, with a light that hangs into the overhead beam.
fn with_a_light_in_the_beam() -> Bay {
    let mut scenes = scenes().into_iter();
    let found = scenes.find(|(name, bay)| {
        let study = study_on(bay, Some(DAY)).unwrap();
        let beam = solids(bay, DoorTravel::Shut, 0.0).unwrap();
        let beam = beam.iter().any(|one| one.role == Role::TieBeam);
        name.contains("anchors-on-paper") && beam && Drill::of(bay, &study) == Drill::Shown
    });
    let mut bay = found.unwrap().1;
    let all = solids(&bay, DoorTravel::Shut, 0.0).unwrap();
    let beam = all.iter().find(|one| one.role == Role::TieBeam).unwrap();
    let (low, high) = beam.bounds();
    let middle = (low + high) * 0.5;
    let off = Length::metres;
    bay.garage.obstacles.push(Obstacle {
        name: "light, front".into(),
        kind: ObstacleKind::Light,
        shape: ObstacleShape::Box {
            x: off(middle.x),
            y: off(middle.y),
            bottom: off(middle.z),
            width: off(0.3),
            depth: off(0.3),
            height: off(0.1),
            turned: Angle::degrees(0.0),
        },
        removable: None,
        only_at_times: false,
        row: [0, 0],
    });
    bay
}

#[test]
fn what_stops_is_called_as_the_report_calls_it() {
    let said = said(&with_a_light_in_the_beam());
    let wanted = "that the overhead beam meets the light, front";
    assert!(said.contains(wanted), "{said}");
    assert!(!said.contains("obstacle light"), "{said}");
}

#[test]
fn a_sheet_that_lists_no_more_reasons_says_where_they_are() {
    let mut bay = with_a_light_in_the_beam();
    bay.not_measured = vec!["everything".into()];
    let said = said(&bay);
    assert!(said.contains("more reason"), "{said}");
    assert!(said.contains(", see `bayrise check`)"), "{said}");
    assert!(!said.contains(", below)"), "{said}");
}
