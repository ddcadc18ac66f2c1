//! What does the program say to a file that can't be read, and does it say all of it?
//!
//! Each case breaks the bay of `bad_input/base.ron` in one or several ways. The bay has presets of
//! its own beside it, so that a better figure in a shipped one changes no message here. A case must be refused
//! (or warned of) within a second, with a message for every fault, each with its place and a help;
//! the drawn messages are kept as one snapshot, so that a change of wording is read by someone.

#![allow(clippy::unwrap_used, clippy::panic)] // a failed unwrap here is a failed test

use std::collections::HashMap;
use std::time::{Duration, Instant};

use bayrise::bayfile::presets::{PresetError, PresetSource};
use bayrise::bayfile::{Read, read};
use bayrise::diagnostics::{Diagnostic, Severity, Style, render};

const BASE: &str = include_str!("bad_input/base.ron");

/// One broken file: its name, the replacements that break the base, and the messages expected, in
/// the order of the file. Every message that comes must be among them.
struct Case {
    name: &'static str,
    edits: &'static [(&'static str, &'static str)],
    expect: &'static [&'static str],
}

const fn case(
    name: &'static str,
    edits: &'static [(&'static str, &'static str)],
    expect: &'static [&'static str],
) -> Case {
    Case {
        name,
        edits,
        expect,
    }
}

const LIFT: &str = "preset: \"lift.ron\",";
const VEHICLE: &str = "preset: \"vehicle.ron\",";

const CASES: &[Case] = &[
    // Not measured.
    case(
        "what is not measured is no list of texts",
        &[(
            "    units: Imperial,\n",
            "    units: Imperial, not_measured: [3, \"\"],\n",
        )],
        &["a text in quotes", "this text is empty"],
    ),
    case(
        "a beam that floats over its columns",
        &[(
            LIFT,
            "preset: \"lift.ron\", column: (height: \"10 ft 10 in\"),",
        )],
        &["the overhead beam floats 6 in (152 mm) over its columns"],
    ),
    // Grammar.
    case(
        "bracket not closed",
        &[("        floor: Level,\n", "        floor: Level, x: (\n")],
        &["`(` is not closed"],
    ),
    case(
        "wrong closing bracket",
        &[(
            "5 in\", diameter: \"6 in\"),",
            "5 in\", diameter: \"6 in\"],",
        )],
        &["`]` closes what `(` opened"],
    ),
    case(
        "text not closed",
        &[("width: \"24 ft\"", "width: \"24 ft")],
        &["a text is not closed"],
    ),
    case(
        "text not closed before a bracket, and a fault further down",
        &[
            ("diameter: \"6 in\"),", "diameter: \"6 in),"),
            ("\"12 ft\"", "12ft"),
        ],
        &["a text is not closed", "`12ft` is not a number"],
    ),
    case(
        "value without quotes",
        &[("\"24 ft\"", "24ft")],
        &["`24ft` is not a number"],
    ),
    case(
        "single quotes",
        &[("\"24 ft\"", "'24 ft'")],
        &["single quotes hold one character only"],
    ),
    case(
        "curly quotes",
        &[("\"24 ft\"", "\u{201c}24 ft\u{201d}")],
        &["this sign has no meaning here"],
    ),
    case(
        "comma forgotten",
        &[("width: \"24 ft\",", "width: \"24 ft\"")],
        &["a `,` or `)` is missing"],
    ),
    case(
        "colon forgotten",
        &[("depth: \"28 ft\"", "depth \"28 ft\"")],
        &["the field `depth` has no `:`"],
    ),
    case(
        "value forgotten",
        &[("depth: \"28 ft\"", "depth: ")],
        &["`,` stands where a value was expected"],
    ),
    case(
        "comment not closed",
        &[("    garage: (", "    /* the garage\n    garage: (")],
        &["a comment is not closed"],
    ),
    case(
        "text after the end",
        &[("    power: (voltage", "    ), power: (voltage")],
        &["the file goes on after its value is closed"],
    ),
    case(
        "strange first line",
        &[("(\n    format", "#![feature(garage)]\n(\n    format")],
        &["this `#` line is not understood"],
    ),
    case(
        "three faults of grammar",
        &[
            ("\"24 ft\"", "24ft"),
            ("\"12 ft\"", "'12 ft'"),
            ("yaw: \"0 deg\"", "yaw \"0 deg\""),
        ],
        &["`24ft` is not a number", "single quotes", "has no `:`"],
    ),
    // Format.
    case(
        "no format",
        &[("    format: 1,\n", "")],
        &["the file does not say its format"],
    ),
    case(
        "newer format",
        &[("format: 1", "format: 2")],
        &["format 2 was written by a newer Bayrise"],
    ),
    case(
        "format as text",
        &[("format: 1", "format: \"1\"")],
        &["the format is a plain whole number"],
    ),
    // Fields.
    case(
        "unknown field",
        &[("floor: Level,", "floor: Level, carpet: Red,")],
        &["the garage has no field `carpet`"],
    ),
    case(
        "misspelt field",
        &[("    depth:", "    dept:")],
        &["the garage has no field `dept`"],
    ),
    case(
        "field twice",
        &[("depth: \"28 ft\",", "depth: \"28 ft\", depth: \"30 ft\",")],
        &["`depth` is given twice"],
    ),
    case(
        "missing fields",
        &[
            ("arm_drop: \"12 in\",\n", ""),
            ("head_width: \"10 in\",\n", ""),
        ],
        &["the trolley opener lacks `head_width`, `arm_drop`"],
    ),
    case(
        "missing record",
        &[("    policy: (", "    rules: (")],
        &["the bay file has no field `rules`"],
    ),
    case(
        "no lift at all",
        &[("    lift: (", "    elevator: (")],
        &[
            "the bay file lacks `lift`",
            "the bay file has no field `elevator`",
        ],
    ),
    case(
        "empty record",
        &[(
            "repeat: (along: \"2 in\", across: \"1 in\", yaw: \"0.5 deg\")",
            "repeat: ()",
        )],
        &["the repeatability lacks `along`, `across`, `yaw`"],
    ),
    // Units and kinds.
    case(
        "no unit",
        &[("depth: \"28 ft\"", "depth: 28")],
        &["a length needs a unit"],
    ),
    case(
        "no unit in quotes",
        &[("depth: \"28 ft\"", "depth: \"28\"")],
        &["a length needs a unit"],
    ),
    case(
        "a mass for a length",
        &[("depth: \"28 ft\"", "depth: \"28 lb\"")],
        &["`lb` measures a mass, but a length belongs here"],
    ),
    case(
        "a length for an angle",
        &[("yaw: \"0 deg\"", "yaw: \"2 in\"")],
        &["`in` measures a length, but an angle belongs here"],
    ),
    case(
        "a length for a mass",
        &[(LIFT, "preset: \"lift.ron\", capacity: \"10000 mm\",")],
        &["`mm` measures a length, but a mass belongs here"],
    ),
    case(
        "a length for a pressure",
        &[("\"3500 psi\"", "\"3500 ft\"")],
        &["`ft` measures a length, but a pressure belongs here"],
    ),
    case(
        "unknown unit",
        &[("\"24 ft\"", "\"24 feets\"")],
        &["`feets` is not a unit known here"],
    ),
    case(
        "comma in a number",
        &[("\"24 ft\"", "\"7,315 mm\"")],
        &["a comma may mean thousands or decimals"],
    ),
    case(
        "more than 12 inches beside feet",
        &[("\"9 ft 1 in\"", "\"8 ft 13 in\"")],
        &["inches beside feet must stay below 12"],
    ),
    case(
        "NaN",
        &[("depth: \"28 ft\"", "depth: NaN")],
        &["this is not a length"],
    ),
    case(
        "infinite",
        &[("depth: \"28 ft\"", "depth: \"1e400 m\"")],
        &["this number is too large"],
    ),
    case(
        "a kilometre deep",
        &[("depth: \"28 ft\"", "depth: \"1000 m\"")],
        &["this is more than a length can be here"],
    ),
    case(
        "a list for a length",
        &[("depth: \"28 ft\"", "depth: [\"28 ft\"]")],
        &["a length belongs here, this is a list"],
    ),
    case(
        "a number for a text",
        &[("title: \"Marta's north bay, crew-cab pickup\"", "title: 7")],
        &["a text in quotes belongs here"],
    ),
    case(
        "an unknown word",
        &[("units: Imperial", "units: Imperal")],
        &["`Imperal` is not a system of units"],
    ),
    case(
        "an unknown variant",
        &[("ceiling: Flat(", "ceiling: Dome(")],
        &["`Dome` is not a kind of ceiling"],
    ),
    case(
        "a variant as a text",
        &[("facing: NoseIn", "facing: \"NoseIn\"")],
        &["an end of the vehicle belongs here"],
    ),
    case(
        "a point of two lengths",
        &[(
            "from: (\"-12 ft\", \"20 ft\", \"11 ft 9 in\")",
            "from: (\"-12 ft\", \"20 ft\")",
        )],
        &["a point of 3 lengths belongs here"],
    ),
    case(
        "a flag as a word",
        &[("heated: false", "heated: no")],
        &["`true` or `false` belongs here"],
    ),
    case(
        "an aim without a value",
        &[("aim: CentreOfGravity(\"0 in\")", "aim: CentreOfGravity")],
        &["a word with one value in brackets belongs here"],
    ),
    // Sizes.
    case(
        "negative size",
        &[("depth: \"28 ft\"", "depth: \"-28 ft\"")],
        &["a length must be more than zero here"],
    ),
    case(
        "zero size",
        &[(
            "ceiling: Flat(height: \"12 ft\")",
            "ceiling: Flat(height: \"0 ft\")",
        )],
        &["a length must be more than zero here"],
    ),
    case(
        "negative margin",
        &[("over_vehicle: \"3 in\"", "over_vehicle: \"-3 in\"")],
        &["a length can't be negative here"],
    ),
    case(
        "a margin of three metres",
        &[("over_vehicle: \"3 in\"", "over_vehicle: \"3 m\"")],
        &["this is more than a length can be here"],
    ),
    case(
        "negative track offset",
        &[("track_offset: \"3 1/2 in\"", "track_offset: \"-3 1/2 in\"")],
        &["a length can't be negative here"],
    ),
    case(
        "yaw sideways",
        &[("yaw: \"0 deg\"", "yaw: \"90 deg\"")],
        &["this is more than an angle can be here"],
    ),
    case(
        "no capacity",
        &[(LIFT, "preset: \"lift.ron\", capacity: \"0 lb\",")],
        &["a mass must be more than zero here"],
    ),
    // The room.
    case(
        "door wider than its wall",
        &[("width: \"10 ft\"", "width: \"30 ft\"")],
        &["the door opening is wider than its wall"],
    ),
    case(
        "door offset out of its wall",
        &[("offset: \"0 in\"", "offset: \"8 ft\"")],
        &["the door opening is wider than its wall"],
    ),
    case(
        "door above the ceiling",
        &[("Flat(height: \"12 ft\")", "Flat(height: \"7 ft\")")],
        &["reaches above the ceiling"],
    ),
    case(
        "gable upside down",
        &[(
            "Flat(height: \"12 ft\")",
            "Gable(ridge_along: DoorToBack, eaves: \"14 ft\", ridge: \"12 ft\")",
        )],
        &["the gable's ridge is not higher than its eaves"],
    ),
    case(
        "door in the low part of a gable",
        &[(
            "Flat(height: \"12 ft\")",
            "Gable(ridge_along: DoorToBack, eaves: \"6 ft\", ridge: \"8 ft 6 in\")",
        )],
        &["reaches above the ceiling"],
    ),
    case(
        "steps out of order",
        &[(
            "Flat(height: \"12 ft\")",
            "Stepped(steps: [(from: \"10 ft\", height: \"9 ft\"), (from: \"0 ft\", height: \"12 ft\")])",
        )],
        &["the steps don't run from the door to the back"],
    ),
    case(
        "a floor like a ramp",
        &[("floor: Level", "floor: Fall(slope: 0.5, toward: Door)")],
        &["a fall per length can't be 0.5"],
    ),
    case(
        "a million door panels",
        &[("panel_height: \"24 in\"", "panel_height: \"0.001 mm\"")],
        &["more than 60 panels"],
    ),
    case(
        "a name with a stroke",
        &[("\"sprinkler pipe\"", "\"pipe/left\"")],
        &["a name can't hold a `/`"],
    ),
    case(
        "two things of one name",
        &[("\"sprinkler pipe\"", "\"strip light left\"")],
        &["two things here are called"],
    ),
    case(
        "an empty name",
        &[("\"sprinkler pipe\"", "\"  \"")],
        &["this text is empty"],
    ),
    case(
        "a bell in a name",
        &[("\"sprinkler pipe\"", "\"pipe\\u{7}\"")],
        &["this text holds a control character"],
    ),
    case(
        "a pipe without length",
        &[(
            "to: (\"12 ft\", \"20 ft\", \"11 ft 9 in\")",
            "to: (\"-12 ft\", \"20 ft\", \"11 ft 9 in\")",
        )],
        &["this round bar has no length"],
    ),
    case(
        "a billion obstacles",
        &[(
            "        obstacles: [",
            "        obstacles: [\n            Ties(name: \"tie\", kind: CollarTie, along: SideToSide, first: \"2 ft\", pitch: \"2 ft\", count: 1000000000, underside: \"10 ft\", height: \"6 in\", width: \"2 in\"),",
        )],
        &["1000000000 ties are not possible"],
    ),
    case(
        "a beam that ends before it starts",
        &[(
            "        obstacles: [",
            "        obstacles: [\n            Beam(name: \"beam\", along: SideToSide, at: \"10 ft\", underside: \"10 ft\", height: \"8 in\", width: \"4 in\", from: \"4 ft\", to: \"-4 ft\"),",
        )],
        &["this ends before it starts"],
    ),
    // The lift.
    case(
        "anchor off its plate",
        &[(
            LIFT,
            "preset: \"lift.ron\", base_plate: (anchors: [(\"7 in\", \"8 in\"), (\"8 3/4 in\", \"0 in\")]),",
        )],
        &["anchor 2 lies off its base plate"],
    ),
    case(
        "plate too short for its anchors",
        &[(
            LIFT,
            "preset: \"lift.ron\", base_plate: (depth: \"16 in\"),",
        )],
        &["anchor 1 lies off its base plate"],
    ),
    case(
        "two anchors in one place",
        &[(
            LIFT,
            "preset: \"lift.ron\", base_plate: (anchors: [(\"7 in\", \"8 in\"), (\"7 in\", \"8 in\")]),",
        )],
        &["anchors 1 and 2 lie in one place"],
    ),
    case(
        "arms shorter than their stub",
        &[(
            LIFT,
            "preset: \"lift.ron\", arms: (front: (longest: \"20 in\")),",
        )],
        &["the arm's shortest reach is longer than its longest"],
    ),
    case(
        "swing the wrong way round",
        &[(
            LIFT,
            "preset: \"lift.ron\", arms: (rear_left: (swing_min: \"100 deg\")),",
        )],
        &["the arm's least swing is greater than its greatest"],
    ),
    case(
        "a billion locks",
        &[(
            LIFT,
            "preset: \"lift.ron\", locks: Even(first: \"12 in\", pitch: \"4 in\", count: 1000000000),",
        )],
        &["1000000000 locks are not possible"],
    ),
    case(
        "locks beyond the travel",
        &[(
            LIFT,
            "preset: \"lift.ron\", locks: Even(first: \"12 in\", pitch: \"4 in\", count: 20),",
        )],
        &["lies beyond the carriage's travel"],
    ),
    case(
        "locks out of order",
        &[(
            LIFT,
            "preset: \"lift.ron\", locks: [\"12 in\", \"20 in\", \"16 in\"],",
        )],
        &["this lock is not above the one before it"],
    ),
    case(
        "no locks",
        &[(LIFT, "preset: \"lift.ron\", locks: [],")],
        &["the lift has no lock"],
    ),
    case(
        "part of a variant overridden",
        &[(
            LIFT,
            "preset: \"lift.ron\", tie: OverheadBeam(underside: \"11 ft\"),",
        )],
        &["the overhead beam lacks `height`, `width`"],
    ),
    case(
        "the lift outside the garage",
        &[("post_line: \"14 ft\"", "post_line: \"40 ft\"")],
        &["the lift stands outside the garage"],
    ),
    case(
        "a raise that no adapter gives",
        &[("pad_raise: \"3 in\"", "pad_raise: \"14 in\"")],
        &["the front left pad can't be raised by"],
    ),
    case(
        "a negative raise",
        &[(
            "pad_raise: \"3 in\"",
            "pad_raise: (front: \"3 in\", rear_left: \"-1 in\", rear_right: \"1 in\")",
        )],
        &["a length can't be negative here"],
    ),
    // The vehicle.
    case(
        "vehicle longer than the bay",
        &[
            ("depth: \"28 ft\"", "depth: \"18 ft\""),
            ("\"-12 ft\", \"20 ft\"", "\"-12 ft\", \"16 ft\""),
        ],
        &["the vehicle is 19 ft 4 in"],
    ),
    case(
        "a carriage that climbs off its column",
        &[(LIFT, "preset: \"lift.ron\", travel: \"160 in\",")],
        &["the carriage would climb off its column"],
    ),
    case(
        "lift points behind the body",
        &[(
            VEHICLE,
            "preset: \"vehicle.ron\", lift_points: (rear: (station: \"240 in\")),",
        )],
        &["the rear left lift point lies behind the body's end"],
    ),
    case(
        "lift points beside the body",
        &[(
            VEHICLE,
            "preset: \"vehicle.ron\", lift_points: (rear: (half_spacing: \"50 in\")),",
        )],
        &["the rear left lift point lies outside the body"],
    ),
    case(
        "lift points swapped",
        &[(
            VEHICLE,
            "preset: \"vehicle.ron\", lift_points: (front: (station: \"150 in\"), rear: (station: \"74 in\")),",
        )],
        &["the rear left lift point does not lie behind the front one"],
    ),
    case(
        "taller than its outline",
        &[(VEHICLE, "preset: \"vehicle.ron\", height: \"80 in\",")],
        &["the outline reaches only"],
    ),
    case(
        "lower than its outline",
        &[(VEHICLE, "preset: \"vehicle.ron\", height: \"70 in\",")],
        &["the outline reaches 6 ft 4 in"],
    ),
    case(
        "an outline of half the body",
        &[(
            VEHICLE,
            "preset: \"vehicle.ron\", roof: [(station: \"0 in\", height: \"40 in\", half_width: \"34 in\"), (station: \"100 in\", height: \"76 in\", half_width: \"30 in\")],",
        )],
        &["the outline does not cover the whole body"],
    ),
    case(
        "stations out of order",
        &[(
            VEHICLE,
            "preset: \"vehicle.ron\", roof: [(station: \"0 in\", height: \"40 in\", half_width: \"34 in\"), (station: \"100 in\", height: \"76 in\", half_width: \"30 in\"), (station: \"90 in\", height: \"76 in\", half_width: \"45 in\"), (station: \"232 in\", height: \"50 in\", half_width: \"30 in\")],",
        )],
        &[
            "this station does not lie behind the one before it",
            "this station is wider than the body",
        ],
    ),
    case(
        "wheelbase longer than the body",
        &[(VEHICLE, "preset: \"vehicle.ron\", wheelbase: \"210 in\",")],
        &["the rear axle at 20 ft 8 in"],
    ),
    case(
        "an underbody higher than the sill",
        &[(VEHICLE, "preset: \"vehicle.ron\", sill: \"11 in\",")],
        &["\"gearbox and exhaust\" does not hang lower than the sill"],
    ),
    case(
        "a rack upside down",
        &[(
            "bottom: \"56 in\", top: \"79 in\"",
            "bottom: \"79 in\", top: \"56 in\"",
        )],
        &["`top` must be more than `bottom`"],
    ),
    case(
        "aim without axle loads",
        &[(VEHICLE, "preset: \"vehicle.ron\", axle_loads: None,")],
        &["the vehicle's axle loads are not given"],
    ),
    case(
        "more taken out than is there",
        &[(
            VEHICLE,
            "preset: \"vehicle.ron\", masses: [(name: \"engine\", mass: \"-6000 lb\", station: \"40 in\")],",
        )],
        &["more is taken out than the vehicle weighs"],
    ),
    case(
        "an axle with less than nothing on it",
        &[(
            VEHICLE,
            "preset: \"vehicle.ron\", masses: [(name: \"engine\", mass: \"-4000 lb\", station: \"44 in\")],",
        )],
        &["with these masses nothing would be left on the front axle"],
    ),
    case(
        "masses far off the vehicle",
        &[(
            VEHICLE,
            "preset: \"vehicle.ron\", masses: [(name: \"trailer\", mass: \"60 kg\", station: \"19 m\"), (name: \"sand\", mass: \"60 kg\", station: \"2 m\", across: \"-9 m\")],",
        )],
        &[
            "\"trailer\" lies far off the vehicle",
            "\"sand\" lies far beside the vehicle",
        ],
    ),
    case(
        "an arm that carries more than half of all",
        &[(
            "preset: \"lift.ron\",",
            "preset: \"lift.ron\", arm_capacity: \"9000 kg\",",
        )],
        &["one arm may carry 19842 lb (9000 kg), more than half"],
    ),
    case(
        "a post that carries more than all",
        &[(
            "preset: \"lift.ron\",",
            "preset: \"lift.ron\", post_capacity: \"9000 kg\",",
        )],
        &["one post may carry 19842 lb (9000 kg), more than the lift's capacity"],
    ),
    case(
        "a restraint with teeth and without",
        &[(
            "preset: \"lift.ron\",",
            "preset: \"lift.ron\", arms: (front: (stepless_restraint: true)),",
        )],
        &["the arm's restraint is said to have teeth and to be one without"],
    ),
    case(
        "a conductor of no such size",
        &[("run: \"40 ft\"", "run: \"40 ft\", conductor: Awg11")],
        &["`Awg11` is not a size of copper conductor"],
    ),
    case(
        "a piece of the delivery without its mass",
        &[(
            "preset: \"lift.ron\",",
            "preset: \"lift.ron\", pieces: [(name: \"column\", length: \"12 ft\", width: \"16 in\", height: \"14 in\")],",
        )],
        &["the piece lacks `mass`"],
    ),
    case(
        "a child too small",
        &[("height: \"5 ft 10 in\"", "height: \"5 in\"")],
        &["this is less than a length can be here"],
    ),
    case(
        "people twice",
        &[(
            "    slab: (",
            "    people: [(name: \"Ola\", height: \"6 ft\")],\n    slab: (",
        )],
        &["the people are given twice"],
    ),
    // The slab's days.
    case(
        "a day that is none",
        &[(
            "age_days: 900",
            "poured: \"2026-02-30\", drill_on: \"14 May 2026\"",
        )],
        &[
            "\"2026-02-30\" is no day of the calendar",
            "\"14 May 2026\" is no day of the calendar",
        ],
    ),
    case(
        "a year that has slipped, a day that is a number",
        &[("age_days: 900", "poured: \"0226-05-14\", load_on: 2026")],
        &[
            "the year of \"0226-05-14\" can't be meant",
            "a day in quotes belongs here",
        ],
    ),
    case(
        "an age told twice",
        &[("age_days: 900", "age_days: 900, poured: \"2020-05-14\"")],
        &["the slab's age is given twice"],
    ),
    case(
        "poured after it is drilled, loaded before",
        &[(
            "age_days: 900",
            "poured: \"2026-05-14\", drill_on: \"2026-05-13\", load_on: \"2026-05-12\"",
        )],
        &[
            "the slab is poured on 2026-05-14, but it is drilled on 2026-05-13 already",
            "the slab is poured on 2026-05-14, but it is loaded on 2026-05-12 already",
            "it is drilled on 2026-05-13, but it is loaded on 2026-05-12 already",
        ],
    ),
    case(
        "a pad without a depth, cured by the sun",
        &[(
            "age_days: 900",
            "curing: Sun, new_pad: (length: \"4 ft\", width: \"4 ft\", waste: 2)",
        )],
        &[
            "`Sun` is not a way of curing",
            "the new pad lacks `depth`",
            "a share of waste can't be 2",
        ],
    ),
    // The anchors and the ground.
    case(
        "anchors of no kind, with bare numbers",
        &[(
            LIFT,
            "preset: \"lift.ron\", base_plate: (anchor: (kind: Wege, category: 4, kc: 70, \
             stress_area: \"0.3 in\", torque: 80, pull_out: \"5000 psi\")),",
        )],
        &[
            "`Wege` is not a kind of anchor",
            "a category of an anchor can't be 4",
            "an effectiveness factor can't be 70",
            "`in` measures a length, but an area belongs here",
            "a torque needs a unit",
            "`psi` measures a pressure, but a force belongs here",
        ],
    ),
    case(
        "a category in between",
        &[(
            LIFT,
            "preset: \"lift.ron\", base_plate: (anchor: (category: 1.5)),",
        )],
        &["a category of an anchor is a whole number"],
    ),
    case(
        "steel that yields after it breaks",
        &[(
            LIFT,
            "preset: \"lift.ron\", base_plate: (anchor: (tensile_strength: \"60 ksi\", \
             yield_strength: \"80 ksi\")),",
        )],
        &["the anchor's steel yields above its tensile strength"],
    ),
    case(
        "an anchor deeper than its hole and thicker than itself",
        &[(
            LIFT,
            "preset: \"lift.ron\", base_plate: (anchor: (effective_embedment: \"5 in\", \
             stress_area: \"0.6 sq in\")),",
        )],
        &[
            "the anchor's effective embedment is more than its embedment",
            "the anchor's stress area is more than its whole section",
        ],
    ),
    case(
        "product data for a slab thinner than the anchor is deep",
        &[(
            LIFT,
            "preset: \"lift.ron\", base_plate: (anchor: (min_thickness: \"2 in\")),",
        )],
        &["the anchor is as deep as the thinnest slab that its maker is said to allow"],
    ),
    case(
        "ground without a unit of its own",
        &[("age_days: 900", "age_days: 900, subgrade: \"100 psi\"")],
        &["`psi` measures a pressure, but a subgrade modulus belongs here"],
    ),
    case(
        "inches for millimetres in a slab's reading",
        &[("\"4 1/2 in\"", "\"305 in\"")],
        &["this is more than a length can be here"],
    ),
    case(
        "a claimed slab as thick as a cellar is deep",
        &[(
            "age_days: 900",
            "age_days: 900, claimed_thickness: \"10 ft\"",
        )],
        &["this is more than a length can be here"],
    ),
    case(
        "concrete stronger than any",
        &[("\"3500 psi\"", "\"200 MPa\"")],
        &["this is more than a pressure can be here"],
    ),
    case(
        "concrete weaker than any",
        &[("\"3500 psi\"", "\"350 psi\"")],
        &["this is less than a pressure can be here"],
    ),
    case(
        "a manual that asks too much to be true",
        &[(
            LIFT,
            "preset: \"lift.ron\", manual: (thickness: \"120 in\", strength: \"30000 psi\"),",
        )],
        &[
            "this is more than a length can be here",
            "this is more than a pressure can be here",
        ],
    ),
    case(
        "ground stiffer than rock",
        &[("age_days: 900", "age_days: 900, subgrade: \"1000 MPa/m\"")],
        &["this is more than a subgrade modulus can be here"],
    ),
    // Presets.
    case(
        "unknown preset",
        &[("\"lift.ron\"", "\"tall-colums-11-10\"")],
        &["there is no lift preset `tall-colums-11-10`"],
    ),
    case(
        "preset is no text",
        &[("\"lift.ron\"", "TallColumns")],
        &["a preset is named by a text"],
    ),
    case(
        "preset climbs out",
        &[("\"lift.ron\"", "\"../../etc/lift.ron\"")],
        &["lies outside the bay file's folder"],
    ),
    case(
        "preset from the root",
        &[("\"lift.ron\"", "\"/etc/lift.ron\"")],
        &["lies outside the bay file's folder"],
    ),
    case(
        "preset by a link",
        &[("\"lift.ron\"", "\"link.ron\"")],
        &["leads outside the bay file's folder"],
    ),
    case(
        "preset file missing",
        &[("\"lift.ron\"", "\"my-lift.ron\"")],
        &["there is no preset file `my-lift.ron`"],
    ),
    case(
        "preset not to be read",
        &[("\"lift.ron\"", "\"locked.ron\"")],
        &["can't be read: permission denied"],
    ),
    case(
        "preset stands on itself",
        &[("\"lift.ron\"", "\"snake.ron\"")],
        &["the preset `snake.ron` stands on itself"],
    ),
    case(
        "presets in a ring",
        &[("\"lift.ron\"", "\"ring-a.ron\"")],
        &["the preset `ring-a.ron` stands on itself"],
    ),
    case(
        "too many presets on one another",
        &[("\"lift.ron\"", "\"tower-1.ron\"")],
        &["more than 4 presets stand on one another"],
    ),
    case(
        "preset too large",
        &[("\"lift.ron\"", "\"huge.ron\"")],
        &["huge.ron: the file holds more than 4 MiB"],
    ),
    case(
        "fault inside a preset",
        &[("\"lift.ron\"", "\"faulty.ron\"")],
        &[
            "a length must be more than zero here",
            "`deg` measures an angle",
        ],
    ),
    case(
        "preset lacks a field",
        &[("\"lift.ron\"", "\"thin.ron\"")],
        &["the lift lacks"],
    ),
    case(
        "preset in a newer format",
        &[("\"lift.ron\"", "\"newer.ron\"")],
        &["format 3 was written by a newer Bayrise"],
    ),
    case(
        "override of a pair that the preset splits",
        &[(
            LIFT,
            "preset: \"split.ron\", arms: (front: (longest: \"50 in\")),",
        )],
        &["`front` has no effect here"],
    ),
    case(
        "a preset that is no text",
        &[("\"lift.ron\"", "\"picture.ron\"")],
        &["picture.ron: this is not a text file"],
    ),
    case(
        "a tank whose most is less than its least",
        &[(
            LIFT,
            "preset: \"lift.ron\", hydraulics: (bore: \"2 in\", stroke: \"36 in\", tank_min: \"4 gal\", tank_max: \"3 gal\"),",
        )],
        &["`tank_max` is less than `tank_min`"],
    ),
    case(
        "two pieces of one name",
        &[(
            LIFT,
            "preset: \"lift.ron\", pieces: [(name: \"a\", mass: \"90 kg\", length: \"3 m\", width: \"0.4 m\", height: \"0.4 m\"), (name: \"a\", mass: \"90 kg\", length: \"3 m\", width: \"0.4 m\", height: \"0.4 m\")],",
        )],
        &["two things here are called \"a\""],
    ),
    case(
        "arrangements that are none",
        &[(
            "power: (voltage",
            "arrangements: (permit: Yes, helpers: 2.5, shore: true, burning: [(name: \"a\"), (name: \"a\")]), power: (voltage",
        )],
        &[
            "`Yes` is not one of the answers",
            "2.5 helpers are not possible",
            "two things here are called \"a\"",
            "the part `arrangements` has no field `shore`",
        ],
    ),
    // Several at once.
    case(
        "faults in every part",
        &[
            ("depth: \"28 ft\"", "depth: 28"),
            ("units: Imperial", "units: Metrik"),
            ("floor: Level", "floor: Lvl"),
            ("post_line: \"14 ft\"", "post_line: \"14 lb\""),
            (
                VEHICLE,
                "preset: \"vehicle.ron\", colour: Blue, belt: \"-1 in\",",
            ),
            ("facing: NoseIn", "facing: Sideways"),
            ("over_vehicle: \"3 in\"", "over_vehicel: \"3 in\""),
            ("age_days: 900", "age_days: \"old\""),
            ("breaker: \"30 A\"", "breaker: \"30 V\""),
        ],
        &[
            "`Metrik` is not",
            "a length needs a unit",
            "`Lvl` is not",
            "`lb` measures a mass",
            "the vehicle has no field `colour`",
            "a length must be more than zero",
            "`Sideways` is not",
            "the policy has no field `over_vehicel`",
            "an age in days belongs here",
            "`V` measures a voltage",
        ],
    ),
];

/// Preset files in memory.
struct Files;

impl PresetSource for Files {
    fn load(&self, path: &str) -> Result<Vec<u8>, PresetError> {
        let lift = include_str!("bad_input/lift.ron");
        let text = match path {
            "lift.ron" => lift.into(),
            "vehicle.ron" => include_str!("bad_input/vehicle.ron").into(),
            "link.ron" => return Err(PresetError::Outside),
            "locked.ron" => return Err(PresetError::Unreadable("permission denied".into())),
            "snake.ron" => "(preset: \"snake.ron\")".into(),
            "ring-a.ron" => "(preset: \"ring-b.ron\")".into(),
            "ring-b.ron" => "(preset: \"ring-a.ron\")".into(),
            "picture.ron" => return Ok(b"\x89PNG\r\n\x1a\n\0\0".to_vec()),
            "huge.ron" => return Ok(vec![b' '; 4 * 1024 * 1024 + 1]),
            "faulty.ron" => lift
                .replace("travel: \"72 in\"", "travel: \"0 in\"")
                .replace("screw_travel: \"3 in\"", "screw_travel: \"3 deg\""),
            "thin.ron" => "// A preset with next to nothing in it.\n(name: \"thin lift\")".into(),
            "newer.ron" => "(format: 3, name: \"lift\")".into(),
            "split.ron" => lift
                .replace("        front: (", "        front_left: (pivot_inward: \"9 in\"), front_right: (pivot_inward: \"7 in\"),\n        front: ("),
            tower => match tower.strip_prefix("tower-").and_then(|t| t.strip_suffix(".ron")) {
                Some(n) => {
                    let n: u32 = n.parse().unwrap();
                    format!("(preset: \"tower-{}.ron\")", n + 1)
                }
                None => return Err(PresetError::Missing),
            },
        };
        Ok(text.into_bytes())
    }
}

fn style() -> Style {
    Style {
        width: 100,
        ..Style::default()
    }
}

/// Reads within a second, or the test fails. Of three tries the quickest counts, as the machine may
/// be busy with something else.
fn timed(name: &str, text: &[u8]) -> Result<Read, Vec<Diagnostic>> {
    let mut took = Duration::MAX;
    for _ in 0..3 {
        let start = Instant::now();
        let result = read("bay.ron", text, &Files);
        took = took.min(start.elapsed());
        if took < Duration::from_secs(1) {
            return result;
        }
    }
    panic!("{name} took {took:?}");
}

fn broken(case: &Case) -> String {
    let mut text = BASE.to_string();
    for (from, to) in case.edits {
        assert!(
            text.contains(from),
            "{}: the base holds no {from}",
            case.name
        );
        text = text.replacen(from, to, 1);
    }
    text
}

#[test]
fn the_base_itself_is_good() {
    if let Err(faults) = timed("base", BASE.as_bytes()) {
        panic!("{}", render(&faults, style()));
    }
}

#[test]
fn every_case_is_refused_with_all_its_faults() {
    let mut shown = String::new();
    let mut wrong = String::new();
    let mut names = HashMap::new();
    for case in CASES {
        assert!(names.insert(case.name, ()).is_none(), "{} twice", case.name);
        let faults = match timed(case.name, broken(case).as_bytes()) {
            Ok(_) => {
                wrong.push_str(&format!("{} was read\n", case.name));
                continue;
            }
            Err(faults) => faults,
        };
        let drawn = render(&faults, style());
        shown.push_str(&format!("===== {}\n\n{drawn}\n", case.name));
        for fault in &faults {
            assert!(fault.is_error(), "{}: {fault}", case.name);
            assert!(
                fault.help.as_ref().is_some_and(|h| !h.is_empty()),
                "{}: {fault}",
                case.name
            );
            let expected = case.expect.iter().any(|e| fault.message.contains(e));
            if !expected {
                wrong.push_str(&format!(
                    "{}: not expected: {fault}
",
                    case.name
                ));
            }
            let place = fault.place.as_ref();
            assert!(
                place.is_some_and(|p| !p.label.is_empty()),
                "{}: {fault}",
                case.name
            );
        }
        for expected in case.expect {
            let found = faults
                .iter()
                .filter(|f| f.message.contains(expected))
                .count();
            if found != 1 {
                wrong.push_str(&format!(
                    "{}: {found} times: {expected}\n{drawn}\n",
                    case.name
                ));
            }
        }
    }
    assert!(wrong.is_empty(), "{wrong}");
    assert!(CASES.len() >= 60, "{} cases", CASES.len());
    insta::assert_snapshot!("messages", shown);
}

#[test]
fn files_that_are_no_text() {
    let mut shown = String::new();
    let long_line = format!("({})", "\u{1}".repeat(100_000));
    let truncated = &BASE.as_bytes()[..BASE.len() / 2];
    let cases: [(&str, Vec<u8>); 10] = [
        ("empty file", Vec::new()),
        ("blank file", b"  \n\n// nothing\n".to_vec()),
        ("binary junk", (0..=255).cycle().take(5000).collect()),
        ("an executable", b"\x7fELF\x02\x01\x01\0\0\0\0\0".to_vec()),
        ("more than 4 MiB", vec![b' '; 4 * 1024 * 1024 + 1]),
        ("deep nesting", "(a: ".repeat(100_000).into_bytes()),
        ("a very long line", long_line.into_bytes()),
        ("half a file", truncated.to_vec()),
        ("a list", b"[\"24 ft\", \"28 ft\"]".to_vec()),
        (
            "other text",
            b"Dear Marta, the lift comes on Tuesday.\n".to_vec(),
        ),
    ];
    for (name, bytes) in cases {
        let faults = match timed(name, &bytes) {
            Ok(_) => panic!("{name} was read"),
            Err(faults) => faults,
        };
        assert!(faults.iter().all(|f| f.help.is_some()));
        let drawn = render(&faults, style());
        assert!(
            drawn.len() < 20_000,
            "{name}: the message is too long to read"
        );
        shown.push_str(&format!("===== {name}\n\n{drawn}\n"));
    }
    insta::assert_snapshot!("no_text", shown);
}

#[test]
fn a_file_full_of_values_is_still_read_in_time() {
    // As near to 4 MiB as it gets, in the two shapes that hold most.
    let list = BASE.replacen(
        "obstacles: [",
        &format!("obstacles: [{}", "Box(),".repeat(300_000)),
        1,
    );
    let text = BASE.replacen("Marta's north bay", &"x".repeat(4_000_000), 1);
    let fields: String = (0..60_000).map(|i| format!("f{i}: 1, ")).collect();
    let fields = BASE.replacen("format: 1,", &format!("format: 1, {fields}"), 1);
    for (name, text) in [("list", list), ("text", text), ("fields", fields)] {
        let faults = timed(name, text.as_bytes()).err();
        let faults = faults.unwrap_or_else(|| panic!("{name} was read"));
        let drawn = render(&faults[..1], style());
        assert!(drawn.len() < 10_000);
    }
}

#[test]
fn the_most_obstacles_with_every_field_fit() {
    let one = |i: usize| {
        format!(
            "Box(name: \"b{i}\", kind: Other, x: \"1 ft\", y: \"1 ft\", bottom: \"1 ft\", width: \"1 ft\", \
             depth: \"1 ft\", height: \"1 ft\", turned: \"1 deg\", removable: (cost: \"$1\"), only_at_times: true),"
        )
    };
    let fitting: String = (0..1998).map(one).collect();
    let text =
        |more: &str| BASE.replacen("obstacles: [", &format!("obstacles: [{fitting}{more}"), 1);
    let result = read("bay.ron", text("").as_bytes(), &Files);
    let read_bay = result.unwrap_or_else(|f| panic!("{}", render(&f[..1], style())));
    assert_eq!(read_bay.bay.garage.obstacles.len(), 2000);
    let faults = read("bay.ron", text(&one(1998)).as_bytes(), &Files)
        .err()
        .unwrap();
    assert!(
        faults[0].message.contains("2001 obstacles are too many"),
        "{}",
        faults[0]
    );
}

#[test]
fn more_than_fifty_faults_are_counted() {
    let text = BASE.replacen(
        "obstacles: [",
        &format!("obstacles: [{}", "Box(),".repeat(80)),
        1,
    );
    let faults = timed("many", text.as_bytes()).err().unwrap();
    let drawn = render(&faults, style());
    assert_eq!(faults.len(), 80);
    assert!(drawn.ends_with("and 30 more\n\n80 errors\n"), "{drawn}");
}

#[test]
fn an_older_format_is_migrated_and_said_so() {
    let old = BASE
        .replace("format: 1", "format: 0")
        .replace("over_vehicle", "clearance");
    let result = timed("format 0", old.as_bytes());
    let read = result.unwrap_or_else(|f| panic!("{}", render(&f, style())));
    assert_eq!(
        read.bay.policy.over_vehicle,
        bayrise::units::Length::inches(3.0)
    );
    assert_eq!(read.warnings.len(), 1);
    assert_eq!(read.warnings[0].severity, Severity::Warning);
    insta::assert_snapshot!("older_format", render(&read.warnings, style()));
}

#[test]
fn axle_loads_of_a_toy_are_read_with_a_remark() {
    let toy = "preset: \"vehicle.ron\", axle_loads: (front: \"880 lb\", rear: \"690 lb\"),";
    let text = BASE.replace(VEHICLE, toy);
    assert_ne!(text, BASE);
    let read = read("bay.ron", text.as_bytes(), &Files).unwrap();
    let [one] = read.warnings.as_slice() else {
        panic!("{:?}", read.warnings);
    };
    assert_eq!(one.severity, Severity::Warning);
    assert!(
        one.message
            .contains("the axle loads come to 1570 lb (712 kg): very little for a body"),
        "{one}"
    );
}

#[test]
fn ratings_and_a_beam_that_may_be_but_seldom_are_are_read_with_a_remark() {
    for (own, words) in [
        ("capacity: \"9000 lb\",", "four arms of 2500 lb"),
        (
            "column: (height: \"13 ft 6 in\"),",
            "up through the overhead beam",
        ),
    ] {
        let text = BASE.replacen(LIFT, &format!("{LIFT} {own}"), 1);
        let read = timed(own, text.as_bytes());
        let read = read.unwrap_or_else(|faults| panic!("{}", render(&faults, style())));
        let [warning] = &read.warnings[..] else {
            panic!("{:?}", read.warnings)
        };
        assert!(warning.message.contains(words), "{warning}");
        assert!(warning.place.is_some() && warning.help.is_some());
    }
}

#[test]
fn what_merely_does_not_work_is_no_fault_of_the_file() {
    for (name, from, to) in [
        (
            "columns taller than the ceiling",
            "Flat(height: \"12 ft\")",
            "Flat(height: \"9 ft\")",
        ),
        (
            "too heavy",
            LIFT,
            "preset: \"lift.ron\", capacity: \"2000 lb\", arm_capacity: \"500 lb\",",
        ),
        (
            "arms too short",
            LIFT,
            "preset: \"lift.ron\", arms: (front: (shortest: \"5 in\", longest: \"6 in\")),",
        ),
    ] {
        assert!(BASE.contains(from), "{name}");
        if let Err(faults) = read("bay.ron", BASE.replace(from, to).as_bytes(), &Files) {
            panic!("{name}: {}", render(&faults, style()));
        }
    }
}

#[test]
fn colour_only_when_asked() {
    let faults = timed("colour", b"(format: 9)").err().unwrap();
    let plain = render(&faults, style());
    assert!(!plain.contains('\u{1b}'));
    let coloured = render(
        &faults,
        Style {
            colour: true,
            unicode: true,
            ..style()
        },
    );
    assert!(coloured.contains('\u{1b}'));
}

#[test]
fn mutated_bays_never_stumble() {
    // A fixed stream of pseudo-random numbers (xorshift), so that a failure can be run again.
    let mut state = 0x2545_f491_4f6c_dd1d_u64;
    let mut next = move |below: usize| {
        state ^= state << 13;
        state ^= state >> 7;
        state ^= state << 17;
        usize::try_from(state >> 11).unwrap() % below
    };
    let words: Vec<&str> = BASE.split_inclusive([' ', '\n', ',', '(', ')']).collect();
    for _ in 0..1500 {
        let mut words = words.clone();
        for _ in 0..=next(3) {
            let (at, from) = (next(words.len()), next(words.len()));
            match next(3) {
                0 => drop(words.remove(at)),
                1 => words.insert(at, words[from]),
                _ => words.swap(at, from),
            }
        }
        let text = words.concat();
        if let Err(faults) = timed(&text, text.as_bytes()) {
            assert!(faults.iter().any(Diagnostic::is_error), "{text}");
            for fault in faults {
                if let Some(place) = fault.place {
                    assert!(place.source.text.get(place.span).is_some());
                }
            }
        }
    }
}
