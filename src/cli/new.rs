//! `bayrise new`: a commented bay file to start from.

use super::files::{nearest, write};
use super::options::NewOptions;
use super::terminal::{look, print};
use super::{Exit, Failure};
use crate::bayfile::presets::{Embedded, lifts, vehicles};
use crate::letters;
use crate::starter::starter;

pub(super) fn run(options: &NewOptions) -> Result<Exit, Failure> {
    known("lift", &options.lift, lifts())?;
    known("vehicle", &options.vehicle, vehicles())?;
    // What is written has been read again without a fault.
    let starter =
        starter(&options.lift, &options.vehicle, options.units).map_err(Failure::Faults)?;
    write(&options.out, &starter.unmeasured(), options.replace)?;
    let out = options.out.display().to_string();
    let out = letters::shown(&out);
    print(&said(&out, starter.does_not_work.as_deref()))?;
    Ok(Exit::Met)
}

/// What is said of a file that was written.
fn said(out: &str, does_not_work: Option<&str>) -> String {
    let width = look().width;
    let named = if out.contains(' ') {
        format!("\"{out}\"")
    } else {
        out.into()
    };
    let written = format!(
        "{out} is written. Its room is a placeholder, large enough for this pair: measure what it \
         asks for, put your own figures in, and take the list `not_measured` out: until then it \
         withholds every lock. Then run:"
    );
    let mut text = format!(
        "{}\n\n    bayrise check {named}\n",
        textwrap::fill(&written, width)
    );
    if let Some(why) = does_not_work {
        let warning =
            format!("With the presets' figures this vehicle does not go up on this lift: {why}.");
        text.push_str(&format!("\n{}\n", textwrap::fill(&warning, width)));
    }
    text
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
