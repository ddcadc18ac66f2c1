//! `bayrise solids`: every solid with its place, for any outside program.

use serde::Serialize;

use super::check::to_json;
use super::load::load;
use super::options::SolidsOptions;
use super::terminal::print;
use super::{Exit, Failure};
use crate::solids::list::{SolidExport, export, solids};

/// The list and what it was made for.
#[derive(Serialize)]
struct SolidsReport<'a> {
    schema_version: u32,
    program: Program<'a>,
    /// Carriage travel, metres.
    travel_m: f64,
    /// How far the door is open, from 0 to 1.
    door: f64,
    solids: Vec<SolidExport>,
}

#[derive(Serialize)]
struct Program<'a> {
    name: &'a str,
    version: &'a str,
    input_fingerprint: &'a str,
}

pub(super) fn run(options: &SolidsOptions) -> Result<Exit, Failure> {
    let loaded = load(&options.file)?;
    let bay = &loaded.bay;
    if options.travel > bay.lift.travel {
        return Err(Failure::new(
            format!(
                "--travel: {:.0} mm is more than the carriage's travel of {:.0} mm",
                options.travel.in_mm(),
                bay.lift.travel.in_mm()
            ),
            "write a travel that this carriage can reach",
        ));
    }
    let solids = solids(bay, options.door, options.travel.m())
        .map_err(|error| Failure::new(format!("{}: {error}", options.file.display()), ""))?;
    let report = SolidsReport {
        schema_version: 1,
        program: Program {
            name: "bayrise",
            version: env!("CARGO_PKG_VERSION"),
            input_fingerprint: &loaded.fingerprint(None),
        },
        travel_m: options.travel.m(),
        door: options.door.fraction(),
        solids: export(&solids),
    };
    print(&to_json(&report)?)?;
    Ok(Exit::Met)
}
