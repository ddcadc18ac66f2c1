//! Which bay file do the answers make?
//!
//! The starter file is the ground: each answer is put in its place in it. What the file can't do
//! without and nobody measured keeps the starter's placeholder, is marked on its line and listed in
//! `not_measured`, which withholds every lock. So does what is known to be there and was not measured
//! enough to stand in the file. What else the file can do without stays out.

use super::answer::Refused;
use super::answers::{Answers, unquoted};
use super::question::Section;
use super::{label, number, section_label, sections};
use crate::bay::{Bay, UnitSystem};
use crate::bayfile::edit::{Origin, Value, Written, quoted};
use crate::bayfile::presets::EmbeddedOnly;
use crate::bayfile::read;
use crate::diagnostics::Diagnostic;
use crate::starter;
use crate::units::{Length, Rounding};

mod build;
mod head;
mod lists;
mod of_lift;
mod templates;
mod variants;
mod worked_out;

use build::Text;
pub(super) use lists::whether_all;

/// Asked for, but where it was not answered the study says that it is not known and passes nothing.
const SAID_AS_NOT_KNOWN: [&str; 2] = ["lift.manual.", "lift.base_plate.anchor_"];

/// What stands in for a lift and a vehicle that nobody named.
const EXAMPLE_LIFT: &str = "tall-columns-11-10";
const EXAMPLE_VEHICLE: &str = "pickup-half-ton-crew-cab";

/// The bay file that answers make.
#[derive(Debug, Clone)]
pub struct Made {
    /// The file.
    pub text: String,
    /// What holds a placeholder because it was not measured, or is missing though it is there: while
    /// the file lists it no lock is called safe.
    pub not_measured: Vec<String>,
    /// What was asked for, is not in the file, and is told as not known by the study.
    pub not_known: Vec<String>,
    /// Every value that is a preset's and on which no safe lock hangs, as a path of the bay file.
    pub of_presets: Vec<String>,
    /// What else is to be known.
    pub notes: Vec<String>,
}

impl Answers {
    /// The bay file, and what it lacks. With `finish` the place of the vehicle is looked for where
    /// it was not given.
    ///
    /// # Errors
    /// What does not go together, as the reader of bay files says it.
    pub fn bay_file(&self, finish: bool) -> Result<Made, Refused> {
        let lift = self.text("lift.preset");
        let vehicle = self.text("vehicle.preset");
        let ground = starter::placeholder(
            lift.as_deref().unwrap_or(EXAMPLE_LIFT),
            vehicle.as_deref().unwrap_or(EXAMPLE_VEHICLE),
            self.units(),
        );
        let ground = ground.map_err(|faults| refusal(&faults))?;
        let mut text = Text::new(&ground, self.units())?;
        self.choices(&mut text)?;
        self.values(&mut text)?;
        self.lists(&mut text)?;
        self.room_for_all(&mut text)?;
        for key in ["lift.preset", "vehicle.preset"] {
            if self.plain(key).is_none() {
                text.mark(
                    key,
                    &format!("{} (an example stands in its place)", label(key)),
                );
            }
        }
        // Only now is it known whether it is a bay.
        let bay = bay_of(&text.text)?;
        if finish {
            self.find_aim(&mut text, &bay)?;
        }
        self.against_the_open_door(&mut text, &bay);
        Ok(self.finished(text))
    }

    /// Every answer that has a place of its own in the file.
    fn values(&self, text: &mut Text) -> Result<(), Refused> {
        for section in sections().iter().filter(|section| section.repeat.is_none()) {
            for question in section.questions {
                let path = question.key;
                if path.starts_with('#')
                    || matches!(path, "title" | "units")
                    || path.ends_with(".preset")
                {
                    continue;
                }
                // Clear space is known whole or not at all.
                if path.starts_with("arrangements.panel_space") {
                    continue;
                }
                // Without a unit there is nothing of it; which column it hangs on is asked first.
                if path.starts_with("lift.power_unit.") && !self.asks(question) {
                    continue;
                }
                match self.plain(path) {
                    Some(ron) if self.asks(question) => text.set(path, ron)?,
                    None if SAID_AS_NOT_KNOWN.iter().any(|of| path.starts_with(of)) => {
                        text.not_known(path, &label(path), "None")?;
                    }
                    _ if path.starts_with("policy.") => text.leave_out(path)?,
                    _ => text.lacks(path, &label(path)),
                }
            }
        }
        let space = ["width", "depth", "height"].map(|side| {
            (
                side,
                self.plain(&format!("arrangements.panel_space.{side}")),
            )
        });
        if space.iter().all(|(_, ron)| ron.is_some()) {
            for (side, ron) in space {
                text.set(
                    &format!("arrangements.panel_space.{side}"),
                    ron.unwrap_or_default(),
                )?;
            }
        } else if space.iter().any(|(_, ron)| ron.is_some()) {
            text.notes.push(
                "The clear space before the panel is left out: all three of its sizes are needed."
                    .into(),
            );
        }
        self.outline(text)?;
        // Somebody else's doors and hood, and somebody else's load beside the axle loads.
        text.set("vehicle.masses", "[]")?;
        let doors = "doors, hood and hatch, to be measured into vehicle.opening_parts";
        text.not_known("vehicle.opening_parts", doors, "[]")?;
        // Anywhere between ground and roof.
        text.not_known(
            "vehicle.cg_height",
            "how high the centre of gravity lies",
            "None",
        )?;
        self.of_lift(text)?;
        self.locks(text)?;
        if let Some(aim) = self.plain("#aim") {
            text.set("parking.aim", &format!("CentreOfGravity({aim})"))?;
        }
        self.slab_outline(text)
    }
}

/// The bay of a text, or the first thing that does not go together in it.
fn bay_of(text: &str) -> Result<Bay, Refused> {
    match read("the answers", text.as_bytes(), &EmbeddedOnly) {
        Ok(read) => Ok(read.bay),
        Err(faults) => Err(refusal(&faults)),
    }
}

fn refusal(faults: &[Diagnostic]) -> Refused {
    let error = faults.iter().find(|fault| fault.is_error());
    error.map_or_else(
        || Refused::new("the answers don't go together", ""),
        |error| {
            Refused::new(
                error.message.clone(),
                error.help.clone().unwrap_or_default(),
            )
        },
    )
}
