//! What does a new bay file say, and what must be measured for it?
//!
//! Whether the room that is filled in lets the pair work at all is found by studying it.

mod fit;

use crate::bay::{Aim, Bay, UnitSystem};
use crate::bayfile::presets::EmbeddedOnly;
use crate::bayfile::read;
use crate::clearance::reach::with_doubtful_arms;
use crate::clearance::study;
use crate::clearance::uncertainty::Uncertainty;
use crate::diagnostics::Diagnostic;
use crate::report::why_not_safe;
use crate::solids::arms::aim_offsets;
use crate::units::Length;

use fit::Needs;

/// The figures that are the same for every pair: the word in the template, in feet and inches, in millimetres.
const FIGURES: &[(&str, &str, &str)] = &[
    ("ROOM_WIDTH", "24 ft", "7300 mm"),
    ("WALL", "6 in", "150 mm"),
    ("PANEL", "2 in", "50 mm"),
    ("TRACK_RADIUS", "15 in", "380 mm"),
    ("TRACK_OFFSET", "3 1/2 in", "90 mm"),
    ("TRACK_SECTION", "3 in", "75 mm"),
    ("SPRING_OUT", "5 in", "125 mm"),
    ("SPRING_DIAMETER", "6 in", "150 mm"),
    ("BRACKET", "3 in", "75 mm"),
    ("RAIL_SECTION", "2 in", "50 mm"),
    ("HEAD_WIDTH", "10 in", "250 mm"),
    ("HEAD_DEPTH", "14 in", "350 mm"),
    ("HEAD_HEIGHT", "8 in", "200 mm"),
    ("ARM_DROP", "6 in", "150 mm"),
    ("CORD_DROP", "6 in", "150 mm"),
    ("LIGHT_X", "-9 ft", "-2700 mm"),
    ("LIGHT_WIDTH", "6 in", "150 mm"),
    ("LIGHT_DEPTH", "4 ft", "1200 mm"),
    ("LIGHT_HEIGHT", "4 in", "100 mm"),
    ("REPEAT_ALONG", "2 in", "50 mm"),
    ("REPEAT_ACROSS", "1 in", "25 mm"),
    ("OVER", "3 in", "75 mm"),
    ("BESIDE", "2 in", "50 mm"),
    ("ROOM_TRUST", "1/4 in", "6 mm"),
    ("LIFT_TRUST", "1/8 in", "3 mm"),
    ("PERSON", "5 ft 10 in", "1780 mm"),
    ("ZERO", "0 in", "0 mm"),
    // So far that an arm stays clear of a sill as high as the points, with everything off.
    ("RAISE", "1 in", "25 mm"),
    ("READING_X", "-5 ft", "-1500 mm"),
    ("READING_Y", "15 ft", "4600 mm"),
    ("READING", "4 in", "100 mm"),
    ("STRENGTH", "3000 psi", "20 MPa"),
    ("SLAB_LEFT", "-12 ft", "-3650 mm"),
    ("SLAB_RIGHT", "12 ft", "3650 mm"),
    ("RUN", "45 ft", "14 m"),
    ("PANEL_WIDTH", "30 in", "760 mm"),
    ("PANEL_DEPTH", "36 in", "920 mm"),
    ("PANEL_HIGH", "78 in", "1990 mm"),
    ("UNLOADING", "1100 lb", "500 kg"),
    ("RAISING", "1100 lb", "500 kg"),
];

const TEMPLATE: &str = include_str!("starter.ron");

/// A new bay file and what is to be said of it.
#[derive(Debug, Clone)]
pub struct Starter {
    /// The file.
    pub text: String,
    /// Why no lock is safe in it, in one sentence; none when one is.
    pub does_not_work: Option<String>,
}

impl Starter {
    /// The file as it is handed out: nothing in it is measured, so that it withholds every lock until
    /// the person has taken that out.
    #[must_use]
    pub fn unmeasured(&self) -> String {
        self.text.replacen(
            BEFORE_UNITS,
            &format!("{NOTHING_MEASURED}{BEFORE_UNITS}"),
            1,
        )
    }
}

/// What the list of things not measured stands before.
const BEFORE_UNITS: &str = "    // How lengths are shown:";

const NOTHING_MEASURED: &str =
    "    // While anything stands in this list no lock is called safe. Put here what is still to be
    // measured; with all of it measured take the line out.
    // The presets' figures are nobody's: compare the lift's with its manual, measure the vehicle.
    not_measured: [\"everything marked MEASURE below\", \"the lift, a preset\", \"the vehicle, a preset\"],
";

/// A bay of a common garage with two shipped presets: what the presets hold, whether or not they
/// fit in.
///
/// # Errors
/// The faults in it; shipped presets have none.
pub fn pair(lift: &str, vehicle: &str, units: UnitSystem) -> Result<Bay, Vec<Diagnostic>> {
    bay(&fill(lift, vehicle, units, &Needs::default()))
}

/// A new bay file for two shipped presets, with a room in which they work where that can be.
///
/// Of the aims from which all four arms reach, the one nearest to 0 that leaves a safe lock is
/// taken; without one, the nearest that reaches; without that, 0.
///
/// # Errors
/// The faults in it; shipped presets have none.
pub fn starter(lift: &str, vehicle: &str, units: UnitSystem) -> Result<Starter, Vec<Diagnostic>> {
    let pair = pair(lift, vehicle, units)?;
    let attempt = |aim: f64| -> Result<Starter, Vec<Diagnostic>> {
        let text = fill(lift, vehicle, units, &Needs::of(&pair, aim));
        let bay = bay(&text)?;
        let does_not_work = match study(&bay) {
            Ok(study) => why_not_safe(&bay, &study),
            Err(error) => Some(error.to_string()),
        };
        Ok(Starter {
            text,
            does_not_work,
        })
    };
    let uncertainty = Uncertainty::worst(&pair);
    let errors = uncertainty.parking_corners();
    let doubtful = with_doubtful_arms(&pair, &uncertainty);
    let Ok(aims) = aim_offsets(&doubtful, &errors, fit::aim_step_m(units)) else {
        // What is wrong with the vehicle's place is what the study says too.
        return attempt(0.0);
    };
    let Some(&nearest) = aims.first() else {
        let mut starter = attempt(0.0)?;
        if let Some(why) = &mut starter.does_not_work {
            why.push_str(NO_AIM);
        }
        return Ok(starter);
    };
    for aim in aims {
        let starter = attempt(aim)?;
        if starter.does_not_work.is_none() {
            return Ok(starter);
        }
    }
    attempt(nearest)
}

/// The starter file of two shipped presets without a look at what works: a ground to put measured
/// values into.
///
/// # Errors
/// The faults in it; shipped presets have none.
pub fn placeholder(
    lift: &str,
    vehicle: &str,
    units: UnitSystem,
) -> Result<String, Vec<Diagnostic>> {
    let pair = pair(lift, vehicle, units)?;
    Ok(fill(lift, vehicle, units, &Needs::of(&pair, 0.0)))
}

/// Of the aims from which all four arms reach, the one nearest to the bay's post line that leaves a
/// safe lock; without one, the nearest that reaches; none where none does.
#[must_use]
pub fn nearest_aim(bay: &Bay) -> Option<Length> {
    let uncertainty = Uncertainty::worst(bay);
    let errors = uncertainty.parking_corners();
    let doubtful = with_doubtful_arms(bay, &uncertainty);
    let aims = aim_offsets(&doubtful, &errors, fit::aim_step_m(bay.units)).ok()?;
    let at = |aim: f64| Length::metres(aim);
    let leaves_a_lock = |aim: &&f64| {
        let mut aimed = bay.clone();
        aimed.parking.aim = Aim::CentreOfGravity(at(**aim));
        study(&aimed).is_ok_and(|study| study.highest_safe_lock.is_some())
    };
    let best = aims.iter().find(leaves_a_lock).or(aims.first());
    best.copied().map(at)
}

const NO_AIM: &str = "; wherever the vehicle is aimed with its centre of gravity where the lift \
                      wants it, not all four arms reach";

fn bay(text: &str) -> Result<Bay, Vec<Diagnostic>> {
    read("starter file", text.as_bytes(), &EmbeddedOnly).map(|read| read.bay)
}

/// The template with its words filled in.
fn fill(lift: &str, vehicle: &str, units: UnitSystem, needs: &Needs) -> String {
    let system = match units {
        UnitSystem::Imperial => "Imperial",
        UnitSystem::Metric => "Metric",
    };
    let mut text = TEMPLATE
        .replace("{UNITS}", system)
        .replace("{LIFT}", lift)
        .replace("{VEHICLE}", vehicle);
    for (word, imperial, metric) in FIGURES {
        let figure = match units {
            UnitSystem::Imperial => imperial,
            UnitSystem::Metric => metric,
        };
        text = text.replace(&format!("{{{word}}}"), figure);
    }
    for (word, figure) in fit::figures(needs, units) {
        text = text.replace(&format!("{{{word}}}"), &figure);
    }
    text
}

#[cfg(test)]
mod tests;
