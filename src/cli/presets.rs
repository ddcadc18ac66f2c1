//! `bayrise presets`: the lifts and vehicles that a bay can start from.

use super::arguments::Format;
use super::check::to_json;
use super::terminal::{look, print};
use super::{Exit, Failure};
use crate::bay::{Bay, UnitSystem};
use crate::bayfile::presets::{lifts, vehicles};
use crate::report::catalogue::Catalogue;
use crate::starter::pair;

pub(super) fn run(format: Format) -> Result<Exit, Failure> {
    let (Some(any_lift), Some(any_vehicle)) = (lifts().first(), vehicles().first()) else {
        return Err(Failure::new("no presets are shipped in this build", ""));
    };
    let mut catalogue = Catalogue::default();
    for lift in lifts() {
        catalogue.add_lift(lift.name, &bay(lift.name, any_vehicle.name)?.lift);
    }
    for vehicle in vehicles() {
        catalogue.add_vehicle(vehicle.name, &bay(any_lift.name, vehicle.name)?.vehicle);
    }
    print(&match format {
        Format::Text => catalogue.text(look()),
        Format::Json => to_json(&catalogue)?,
    })?;
    Ok(Exit::Met)
}

/// A preset read the way every bay file reads it: from a bay that names it.
fn bay(lift: &str, vehicle: &str) -> Result<Bay, Failure> {
    pair(lift, vehicle, UnitSystem::Imperial).map_err(Failure::Faults)
}
