//! What has been arranged before buying?

use super::all;
use super::fields::Fields;
use super::readers::{Count, Flag, list, mass, rec, size, text, words};
use super::vehicle::named;
use crate::bay::{Arrangements, Burning, Leave};
use crate::units::Length;

/// Reads the arrangements.
pub(super) fn arrangements(f: &Fields<'_>) -> Option<Arrangements> {
    let leave = words(
        "one of the answers",
        &[
            ("Given", Leave::Given),
            ("NotNeeded", Leave::NotNeeded),
            ("Refused", Leave::Refused),
        ],
    );
    all!(Arrangements {
        lift_compared: f.maybe("lift_compared", &Flag),
        vehicle_measured: f.maybe("vehicle_measured", &Flag),
        permit: f.maybe("permit", &leave),
        landlord: f.maybe("landlord", &leave),
        insurer: f.maybe("insurer", &leave),
        panel_space: f.maybe("panel_space", &rec("the space", space)),
        burning: f.maybe("burning", &named("heaters", 50, "the heater", burning)),
        not_burning: f.or(
            "not_burning",
            Vec::new(),
            &list(
                "things that don't burn",
                200,
                rec("the thing", |f: &Fields<'_>| f.need("name", &text())),
            ),
        ),
        unloading: f.maybe("unloading", &mass()),
        raising: f.maybe("raising", &mass()),
        helpers: f.maybe(
            "helpers",
            &Count {
                what: "helpers",
                least: 0,
                most: 100,
            }
        ),
        shored: f.maybe("shored", &Flag),
        stand_up_way: f.maybe("stand_up_way", &Flag),
        tools: f.or("tools", [None; 8], &rec("the tools", tools)),
        inspection: f.maybe("inspection", &leave),
    })
}

fn space(f: &Fields<'_>) -> Option<[Length; 3]> {
    let width = f.need("width", &size());
    let depth = f.need("depth", &size());
    let height = f.need("height", &size());
    Some([width?, depth?, height?])
}

fn tools(f: &Fields<'_>) -> Option<[Option<bool>; 8]> {
    let read = [
        "hammer_drill",
        "anchor_bit",
        "hole_cleaner",
        "torque_wrench",
        "level",
        "tape",
        "chalk_line",
        "shims",
    ]
    .map(|name| f.maybe(name, &Flag));
    let mut tools = [None; 8];
    for (tool, read) in tools.iter_mut().zip(read) {
        *tool = read?;
    }
    Some(tools)
}

fn burning(f: &Fields<'_>) -> Option<Burning> {
    all!(Burning {
        name: f.need("name", &text()),
        clearance: f.maybe("clearance", &size()),
    })
}
