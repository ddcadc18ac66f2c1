//! Which presets are there, and what are their main figures?

use schemars::JsonSchema;
use serde::Serialize;

use super::text::{Look, Page};
use crate::bay::{Lift, UnitSystem, Vehicle};
use crate::bayfile::presets::Embedded;
use crate::bayfile::syntax::{self, Kind, value_at};
use crate::units::{Length, Mass, Rounding, both, show_mass};

/// The presets with their main figures; serialised, it is the JSON of `bayrise presets`.
#[derive(Debug, Clone, Default, Serialize, JsonSchema)]
pub struct Catalogue {
    /// Lifts.
    lifts: Vec<LiftEntry>,
    /// Vehicles.
    vehicles: Vec<VehicleEntry>,
}

/// A lift's main figures, as its file gives them.
#[derive(Debug, Clone, Serialize, JsonSchema)]
struct LiftEntry {
    /// The name that bay files use.
    name: String,
    /// What it is.
    title: String,
    /// Height of the columns.
    column_height_m: f64,
    /// Between the columns' nearest faces.
    spacing_m: f64,
    /// Width that a vehicle drives through.
    drive_through_m: f64,
    /// Carriage travel.
    travel_m: f64,
    /// How many locks.
    locks: usize,
    /// Carriage travel at the highest lock.
    highest_lock_m: Option<f64>,
    /// Rated capacity.
    capacity_kg: f64,
}

/// A vehicle's main figures, as its file gives them.
#[derive(Debug, Clone, Serialize, JsonSchema)]
struct VehicleEntry {
    /// The name that bay files use.
    name: String,
    /// What it is.
    title: String,
    /// Overall length.
    length_m: f64,
    /// Width of the body, without mirrors.
    body_width_m: f64,
    /// Height without what is fixed on the roof.
    height_m: f64,
    /// The highest point with everything that is fixed on it.
    height_over_all_m: f64,
    /// Wheelbase.
    wheelbase_m: f64,
    /// Mass at the kerb with the file's cargo; null when not known.
    mass_kg: Option<f64>,
}

impl Catalogue {
    /// Adds a lift.
    pub fn add_lift(&mut self, name: &str, lift: &Lift) {
        self.lifts.push(LiftEntry {
            name: name.into(),
            title: lift.name.clone(),
            column_height_m: tidy(lift.column.height.m()),
            spacing_m: tidy(lift.spacing.m()),
            drive_through_m: tidy(lift.drive_through.m()),
            travel_m: tidy(lift.travel.m()),
            locks: lift.locks.len(),
            highest_lock_m: lift.locks.last().map(|l| tidy(l.m())),
            capacity_kg: tidy(lift.capacity.kg()),
        });
    }

    /// Adds a vehicle.
    pub fn add_vehicle(&mut self, name: &str, vehicle: &Vehicle) {
        let top = vehicle
            .attached
            .iter()
            .map(|part| part.top)
            .fold(vehicle.height, Length::max);
        let cargo: f64 = vehicle.masses.iter().map(|m| m.mass.kg()).sum();
        self.vehicles.push(VehicleEntry {
            name: name.into(),
            title: vehicle.name.clone(),
            length_m: tidy(vehicle.length.m()),
            body_width_m: tidy(vehicle.body_width.m()),
            height_m: tidy(vehicle.height.m()),
            height_over_all_m: tidy(top.m()),
            wheelbase_m: tidy(vehicle.wheelbase.m()),
            mass_kg: vehicle
                .axle_loads
                .map(|[front, rear]| tidy((front + rear).kg() + cargo)),
        });
    }

    /// The list for people, in both systems of units.
    #[must_use]
    pub fn text(&self, look: Look) -> String {
        let mut page = Page::new(look);
        page.para("Typical figures of a class, no maker's: measure what will stand in the bay.");
        page.heading("Lifts (--lift NAME)");
        for lift in &self.lifts {
            page.entry(&lift.name, &lift_line(lift));
        }
        page.heading("Vehicles (--vehicle NAME)");
        for vehicle in &self.vehicles {
            page.entry(&vehicle.name, &vehicle_line(vehicle));
        }
        page.finish()
    }
}

/// What a shipped preset is, in the words that the catalogue lists it by.
#[must_use]
pub fn title(preset: &Embedded) -> String {
    let root = syntax::parse(0, preset.text).root;
    let name = root.as_ref().and_then(|root| value_at(root, "name"));
    match name.map(|name| &name.kind) {
        Some(Kind::Str(title)) => title.clone(),
        _ => preset.name.into(),
    }
}

/// Six decimals: what a file says, without the noise of the conversion to metres.
fn tidy(value: f64) -> f64 {
    (value * 1e6).round() / 1e6
}

fn lift_line(lift: &LiftEntry) -> String {
    format!(
        "{}. Columns {}, between them {}, carriage travel {}, {} locks up to {}, rated {}",
        lift.title,
        needs(lift.column_height_m),
        room(lift.spacing_m),
        room(lift.travel_m),
        lift.locks,
        lift.highest_lock_m.map_or_else(|| "none".into(), room),
        mass(lift.capacity_kg)
    )
}

fn vehicle_line(vehicle: &VehicleEntry) -> String {
    let load = if vehicle.height_over_all_m > vehicle.height_m {
        format!(" ({} with load)", needs(vehicle.height_over_all_m))
    } else {
        String::new()
    };
    format!(
        "{}. Length {}, body width {}, height {}{load}, wheelbase {}, {}",
        vehicle.title,
        needs(vehicle.length_m),
        needs(vehicle.body_width_m),
        needs(vehicle.height_m),
        both(
            Length::metres(vehicle.wheelbase_m),
            UnitSystem::Imperial,
            Rounding::Nearest
        ),
        vehicle
            .mass_kg
            .map_or_else(|| "mass not known".into(), mass)
    )
}

fn room(metres: f64) -> String {
    both(Length::metres(metres), UnitSystem::Imperial, Rounding::Down)
}

fn needs(metres: f64) -> String {
    both(Length::metres(metres), UnitSystem::Imperial, Rounding::Up)
}

fn mass(kilograms: f64) -> String {
    let mass = Mass::kilograms(kilograms);
    format!(
        "{} ({})",
        show_mass(mass, UnitSystem::Imperial),
        show_mass(mass, UnitSystem::Metric)
    )
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::solids::test_bay::test_bay;

    #[test]
    fn figures_in_both_systems() {
        let bay = test_bay();
        let mut catalogue = Catalogue::default();
        catalogue.add_lift("a-lift", &bay.lift);
        catalogue.add_vehicle("a-vehicle", &bay.vehicle);
        let text = catalogue.text(Look::default());
        let text = text.split_whitespace().collect::<Vec<_>>().join(" ");
        // 11 ft 10 in = 142 in = 3606.8 mm, up.
        assert!(text.contains("Columns 11 ft 10 in (3607 mm)"), "{text}");
        assert!(
            text.contains("15 locks up to 5 ft 8 in (1727 mm)"),
            "{text}"
        );
        assert!(text.contains("rated 10000 lb (4536 kg)"), "{text}");
        let json = serde_json::to_value(&catalogue).unwrap();
        assert_eq!(json["lifts"][0]["name"], "a-lift");
        assert_eq!(json["lifts"][0]["column_height_m"], 3.6068);
        assert_eq!(json["lifts"][0]["locks"], 15);
        assert!(json["vehicles"][0]["mass_kg"].as_f64().unwrap() > 1000.0);
    }
}
