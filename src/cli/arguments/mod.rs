//! The command line as typed.

mod outputs;
mod studies;

use std::path::PathBuf;

use clap::{Args, Parser, Subcommand, ValueEnum};

pub(super) use outputs::*;
pub(super) use studies::*;

const EXAMPLES: &str = "\
Examples:
  bayrise my-bay.ron                          the verdict at once, then the window
  bayrise check my-bay.ron --need-lock 9      for scripts: exits 1 when lock 9 is not safe
  bayrise check my-bay.ron --format json      everything, for programs
  bayrise plan my-bay.ron                     go, stop or not known yet, before buying
  bayrise compare options.ron                 lifts and vehicles side by side, with their whole cost
  bayrise picture my-bay.ron bay.png          a picture with its verdict
  bayrise layout my-bay.ron floor.pdf         sheets to set out the floor by
  bayrise worksheet measure.pdf               a form to measure by
  bayrise new my-bay.ron --ask                asks what the form asks, writes the bay file
  bayrise card my-bay.ron card.pdf            the lock card and the tape for the column
  bayrise record my-bay.ron record.pdf        the commissioning sheet and a yearly log
  bayrise report my-bay.ron bay.html          one page to hand on, with the bay to turn and raise
  bayrise model my-bay.ron bay.glb            a model that other programs open
  bayrise asbuilt my-bay.ron measured.ron     where the posts stand, what to move, and the rise then
  bayrise new my-bay.ron --lift floor-plate-9-6 --vehicle estate
  bayrise presets                             the lifts and vehicles to start from

Exit status:
  0  a lock is safe, or what was asked is met
  1  no lock is safe, or what was asked is not met
  2  the arguments or a file can't be used (nothing is then printed on standard output)
  3  a window or a picture was asked for and there is no display or driver

A raised vehicle kills. Bayrise screens a plan and certifies nothing: the lift maker's manual, \
local codes and qualified people govern.";

/// Will this two-post lift raise this vehicle in this garage, how high, and what stops it?
///
/// A bay file (RON) describes the garage, the lift, the vehicle and how it is parked. Bayrise
/// answers with the highest lock that can be used safely, what limits the rise, and where to mark
/// the column.
#[derive(Debug, Parser)]
#[command(
    name = "bayrise",
    version,
    after_help = EXAMPLES,
    args_conflicts_with_subcommands = true,
    arg_required_else_help = true,
    max_term_width = 100
)]
pub(in crate::cli) struct Arguments {
    /// The bay file; with no command, its verdict is printed and the window opened
    pub(in crate::cli) file: Option<PathBuf>,

    #[command(subcommand)]
    pub(in crate::cli) command: Option<Command>,
}

#[derive(Debug, Subcommand)]
pub(in crate::cli) enum Command {
    Check(Check),
    Plan(Plan),
    Compare(Compare),
    View(View),
    Picture(Picture),
    Layout(Layout),
    Card(Card),
    Record(Record),
    Report(ReportPage),
    Model(Model),
    Asbuilt(AsBuilt),
    Solids(Solids),
    Presets(Presets),
    Worksheet(Worksheet),
    New(New),
    Schema(Schema),
}

/// Print the JSON Schema of the report that `--format json` writes.
#[derive(Debug, Args)]
pub(in crate::cli) struct Schema {
    /// Which command's report
    #[arg(long, value_enum, default_value_t = SchemaOf::Check, value_name = "COMMAND")]
    pub(in crate::cli) of: SchemaOf,
}

/// Whose report.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(in crate::cli) enum SchemaOf {
    /// One bay
    Check,
    /// Many side by side
    Compare,
    /// Posts where they stand
    Asbuilt,
}

/// Open the bay in a window: turn it, raise it step by step, change it, save it.
#[derive(Debug, Args)]
#[command(after_help = "\
Examples:
  bayrise view my-bay.ron
  bayrise view my-bay.ron --beside tall.ron  two bays to the same scale, their carriages linked
  bayrise view options.ron                   the table of what options.ron lists

F1 or ? in the window lists its keys. Exits 2 when the file can't be read, 3 when there is no display
or no driver for it.")]
pub(in crate::cli) struct View {
    /// The bay file
    pub(in crate::cli) file: PathBuf,

    /// Another bay to the right of it, to the same scale, its carriage going along
    #[arg(long, value_name = "FILE")]
    pub(in crate::cli) beside: Option<PathBuf>,
}

/// Print every solid of the bay with its place, for any outside program.
#[derive(Debug, Args)]
#[command(after_help = "\
Examples:
  bayrise solids my-bay.ron --format json
  bayrise solids my-bay.ron --travel \"48 in\" --door open
  bayrise solids my-bay.ron --travel \"1200 mm\" --door 0.35

Metres and unit quaternions. Axes: x to the right seen from the door, y into the bay, z up; the
origin lies on the floor, mid-width of the door opening, at the inner face of the door wall.")]
pub(in crate::cli) struct Solids {
    /// The bay file
    pub(in crate::cli) file: PathBuf,

    /// How far the carriage has climbed: "48 in", "1200 mm"
    #[arg(
        long,
        value_name = "LENGTH",
        default_value = "0 in",
        allow_hyphen_values = true
    )]
    pub(in crate::cli) travel: String,

    /// Where the door is: shut, open, or the share of its way that it is open, from 0 to 1
    #[arg(
        long,
        value_name = "STATE",
        default_value = "shut",
        allow_hyphen_values = true
    )]
    pub(in crate::cli) door: String,

    /// How the list is written
    #[arg(long, value_enum, default_value_t = SolidsFormat::Json)]
    pub(in crate::cli) format: SolidsFormat,
}

/// List the lifts and vehicles that a bay can start from, with their main figures.
#[derive(Debug, Args)]
pub(in crate::cli) struct Presets {
    /// How the list is written
    #[arg(long, value_enum, default_value_t = Format::Text)]
    pub(in crate::cli) format: Format,
}

/// Write a commented bay file to start from, saying what to measure and how.
#[derive(Debug, Args)]
#[command(after_help = "\
Examples:
  bayrise new my-bay.ron --lift tall-columns-11-10 --vehicle pickup-half-ton-crew-cab
  bayrise new my-bay.ron --ask                          asks what `bayrise worksheet` asks
  bayrise new my-bay.ron --ask < answers.txt            a line an answer, empty where not known, then: write

`bayrise presets` lists the names.")]
pub(in crate::cli) struct New {
    /// The file to write
    pub(in crate::cli) out: PathBuf,

    /// Ask what the form of `bayrise worksheet` asks, one question after another; Enter alone means
    /// not known, and the file then says so. At the end all answers are shown and can be changed;
    /// nothing is written before `write` is said. Where the answers come from a file, the first line
    /// that is not taken ends it, and nothing is written
    #[arg(long, conflicts_with_all = ["lift", "vehicle", "units"])]
    pub(in crate::cli) ask: bool,

    /// The lift's preset
    #[arg(long, value_name = "NAME", required_unless_present = "ask")]
    pub(in crate::cli) lift: Option<String>,

    /// The vehicle's preset
    #[arg(long, value_name = "NAME", required_unless_present = "ask")]
    pub(in crate::cli) vehicle: Option<String>,

    /// The units of the figures to fill in
    #[arg(long, value_enum, default_value_t = Units::Imperial)]
    pub(in crate::cli) units: Units,

    /// Replace the file when it is there already
    #[arg(long)]
    pub(in crate::cli) force: bool,
}

/// How a report or a list is written.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(in crate::cli) enum Format {
    /// For people
    Text,
    /// For programs
    Json,
}

/// How the list of solids is written.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(in crate::cli) enum SolidsFormat {
    /// For programs
    Json,
}

/// Units of a new file.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(in crate::cli) enum Units {
    /// Feet and inches
    Imperial,
    /// Millimetres
    Metric,
}
