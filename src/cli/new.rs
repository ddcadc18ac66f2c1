//! `bayrise new`: a commented bay file to start from.

use super::files::{nearest, write};
use super::options::NewOptions;
use super::starter::starter;
use super::terminal::print;
use super::{Exit, Failure};
use crate::bayfile::presets::{Embedded, EmbeddedOnly, lifts, vehicles};
use crate::bayfile::read;

pub(super) fn run(options: &NewOptions) -> Result<Exit, Failure> {
    known("lift", &options.lift, lifts())?;
    known("vehicle", &options.vehicle, vehicles())?;
    let text = starter(&options.lift, &options.vehicle, options.units);
    // What is written must be read again without a fault.
    read("starter file", text.as_bytes(), &EmbeddedOnly).map_err(Failure::Faults)?;
    write(&options.out, &text, options.replace)?;
    let out = options.out.display().to_string();
    let out: String = out.chars().filter(|c| !c.is_control()).collect();
    print(&format!(
        "{out} is written. Measure what it asks for, then run `bayrise check {out}`.\n"
    ))?;
    Ok(Exit::Met)
}

fn known(kind: &str, name: &str, presets: &[Embedded]) -> Result<(), Failure> {
    let names = || presets.iter().map(|preset| preset.name);
    if names().any(|known| known == name) {
        return Ok(());
    }
    let help = match nearest(name, names()) {
        Some(near) => format!("did you mean `{near}`? `bayrise presets` lists them all"),
        None => format!("there are: {}", names().collect::<Vec<_>>().join(", ")),
    };
    Err(Failure::new(
        format!("there is no {kind} preset `{name}`"),
        help,
    ))
}
