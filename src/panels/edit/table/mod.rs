//! Which fields does a bay file have, what are they called in the trade, and how is each measured?
//!
//! One table for each part of the file. A row names its value by a path from the row above it; the
//! panel, its faults and its tests all walk the same tables, so that a field can't be shown without
//! being found, nor found without being shown.

mod arrangements;
mod door;
mod garage;
mod ground;
mod lift;
mod lift_parts;
mod obstacles;
mod parking;
mod policy;
mod vehicle;
mod vehicle_parts;

use super::now::Now;
use crate::panels::settings::Section;
use crate::units::Kind;

pub(super) use obstacles::{CYLINDER, LIST as OBSTACLES, title};

/// One value of the bay file, or some that belong together.
#[derive(Debug, Clone, Copy)]
pub(super) struct Row {
    /// The path from the row above: a field's name, `[0]` for the one value of `Name(value)`, or
    /// nothing where the rows below belong to the same record.
    pub(super) name: &'static str,
    /// What it is called.
    pub(super) label: &'static str,
    /// How it is measured, or where it is found.
    pub(super) hint: &'static str,
    /// What is there.
    pub(super) what: What,
}

/// What a row holds.
#[derive(Debug, Clone, Copy)]
pub(super) enum What {
    /// One value.
    Field(Entry, Fallback),
    /// Rows under a heading, shown from the start or not.
    Group(&'static [Row], bool),
    /// A record that may be left out.
    Maybe(&'static [Row], Fresh),
    /// One of several forms, each with rows of its own.
    Variant(&'static [Form], Fallback),
    /// A list of records, each called by these words.
    List(&'static str, &'static [Row], Fresh),
    /// A record for the front pair and one for the rear pair, or one for each corner.
    Corners(&'static [Row]),
}

/// What is typed into a field.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Entry {
    /// A quantity with its unit.
    Quantity(Kind),
    /// A list of quantities, parted by commas.
    Quantities(Kind),
    /// A list of texts, parted by semicolons.
    Texts,
    /// A number without a unit.
    Number,
    /// A whole number from 1.
    Count,
    /// A few words.
    Text,
    /// A few words without `/`, as names are joined with it.
    Name,
    /// Yes or no.
    Flag,
    /// One of these words of the file, each with what it is called.
    Words(&'static [(&'static str, &'static str)]),
}

/// What holds where a value is left out.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Fallback {
    /// It must be there.
    Needed,
    /// It is not known, and that is all right.
    Open,
    /// Zero.
    Zero,
    /// This, as a bay file would say it.
    Said(&'static str),
}

/// Makes the RON source of a whole new value out of what is there now.
pub(super) type Fresh = fn(&Now<'_>) -> String;

/// One of several forms of a value.
#[derive(Debug, Clone, Copy)]
pub(super) struct Form {
    /// What it is called.
    pub(super) label: &'static str,
    /// True when the value has this form now.
    pub(super) is: fn(&Now<'_>) -> bool,
    /// The fields of this form.
    pub(super) rows: &'static [Row],
    /// A whole value of this form that keeps what carries over.
    pub(super) fresh: Fresh,
}

impl Row {
    const fn new(name: &'static str, label: &'static str, what: What) -> Self {
        Self {
            name,
            label,
            hint: "",
            what,
        }
    }

    /// Says how it is measured.
    const fn hint(mut self, hint: &'static str) -> Self {
        self.hint = hint;
        self
    }

    const fn falling_back(mut self, to: Fallback) -> Self {
        self.what = match self.what {
            What::Field(entry, _) => What::Field(entry, to),
            What::Variant(forms, _) => What::Variant(forms, to),
            what => what,
        };
        self
    }

    /// It may be left out: then it is not known.
    const fn open(self) -> Self {
        self.falling_back(Fallback::Open)
    }

    /// It may be left out: then it is zero.
    const fn or_zero(self) -> Self {
        self.falling_back(Fallback::Zero)
    }

    /// It may be left out: then it is this.
    const fn or(self, said: &'static str) -> Self {
        self.falling_back(Fallback::Said(said))
    }
}

const fn field(name: &'static str, label: &'static str, entry: Entry) -> Row {
    Row::new(name, label, What::Field(entry, Fallback::Needed))
}

const fn length(name: &'static str, label: &'static str) -> Row {
    field(name, label, Entry::Quantity(Kind::Length))
}

const fn angle(name: &'static str, label: &'static str) -> Row {
    field(name, label, Entry::Quantity(Kind::Angle))
}

const fn words(
    name: &'static str,
    label: &'static str,
    table: &'static [(&'static str, &'static str)],
) -> Row {
    field(name, label, Entry::Words(table))
}

/// Rows of a record under a heading that is open from the start.
const fn group(name: &'static str, label: &'static str, rows: &'static [Row]) -> Row {
    Row::new(name, label, What::Group(rows, true))
}

/// Rows that few will need, under a heading that is shut from the start.
const fn more(name: &'static str, label: &'static str, rows: &'static [Row]) -> Row {
    Row::new(name, label, What::Group(rows, false))
}

const fn variant(name: &'static str, label: &'static str, forms: &'static [Form]) -> Row {
    Row::new(name, label, What::Variant(forms, Fallback::Needed))
}

const fn list(
    name: &'static str,
    label: &'static str,
    one: &'static str,
    rows: &'static [Row],
    fresh: Fresh,
) -> Row {
    Row::new(name, label, What::List(one, rows, fresh))
}

/// A part of the bay file and where it stands.
pub(super) struct Root {
    /// The record's path; nothing for the file itself.
    pub(super) path: &'static str,
    /// Its rows.
    pub(super) rows: &'static [Row],
}

const fn root(path: &'static str, rows: &'static [Row]) -> Root {
    Root { path, rows }
}

/// What a section shows, in order. `has` says whether the file has a field: it may list the people
/// beside the policy, and what is not measured only while something is not.
pub(super) fn roots(section: Section, has: impl Fn(&str) -> bool) -> Vec<Root> {
    let people_apart = has("people");
    match section {
        Section::Garage if has("not_measured") => vec![
            root("", garage::FILE),
            root("", garage::NOT_MEASURED),
            root("garage", garage::GARAGE),
        ],
        Section::Garage => vec![root("", garage::FILE), root("garage", garage::GARAGE)],
        Section::Obstacles => vec![root("garage", OBSTACLES)],
        Section::Ground => vec![root("", ground::GROUND)],
        Section::Lift => vec![root("lift", lift::LIFT)],
        Section::Vehicle => vec![root("vehicle", vehicle::VEHICLE)],
        Section::Parking => vec![root("parking", parking::PARKING)],
        Section::Policy => vec![
            root("policy", policy::POLICY),
            root(if people_apart { "" } else { "policy" }, policy::PEOPLE),
        ],
    }
}

/// The section that shows a path; none for parts of the file that have no panel.
pub(super) fn section_of(path: &str) -> Option<Section> {
    let first = path.split(['.', '[']).next().unwrap_or(path);
    Some(match first {
        "garage" if path.starts_with("garage.obstacles") => Section::Obstacles,
        "garage" | "title" | "units" | "not_measured" => Section::Garage,
        "slab" | "power" => Section::Ground,
        "lift" => Section::Lift,
        "vehicle" => Section::Vehicle,
        "parking" => Section::Parking,
        "policy" | "people" => Section::Policy,
        _ => return None,
    })
}
