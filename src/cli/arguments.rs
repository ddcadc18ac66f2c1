//! The command line as typed.

use std::path::PathBuf;

use clap::{Args, Parser, Subcommand, ValueEnum};

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
pub(super) struct Arguments {
    /// The bay file; with no command, its verdict is printed and the window opened
    pub(super) file: Option<PathBuf>,

    #[command(subcommand)]
    pub(super) command: Option<Command>,
}

#[derive(Debug, Subcommand)]
pub(super) enum Command {
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
pub(super) struct Schema {
    /// Which command's report
    #[arg(long, value_enum, default_value_t = SchemaOf::Check, value_name = "COMMAND")]
    pub(super) of: SchemaOf,
}

/// Whose report.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(super) enum SchemaOf {
    /// One bay
    Check,
    /// Many side by side
    Compare,
    /// Posts where they stand
    Asbuilt,
}

/// Study a bay and print the report.
#[derive(Debug, Args)]
#[command(after_help = "\
Examples:
  bayrise check scenes/tall-pickup.ron
  bayrise check my-bay.ron --need-underbody \"5 ft 10 in\"
  bayrise check my-bay.ron --format json | jq .verdict.highest_safe_lock
  bayrise check my-bay.ron --sample 2000
  bayrise check my-bay.ron --picture bay.png

Exits 0 when a lock is safe (with --need-..: when every need is met), 1 when not, 2 on bad input.")]
pub(super) struct Check {
    /// The bay file
    pub(super) file: PathBuf,

    /// How the report is written
    #[arg(long, value_enum, default_value_t = Format::Text)]
    pub(super) format: Format,

    /// Exit 0 only when this lock, or a higher one, is safe; locks are counted from 1, the lowest
    #[arg(long, value_name = "N", value_parser = clap::value_parser!(u32).range(1..))]
    pub(super) need_lock: Option<u32>,

    /// Exit 0 only when a safe lock leaves at least this much height under the body: "5 ft 10 in",
    /// "1780 mm"
    #[arg(long, value_name = "LENGTH", allow_hyphen_values = true)]
    pub(super) need_underbody: Option<String>,

    /// Also say how often each lock is clear, over N worlds drawn inside the uncertainty; an
    /// estimate beside the worst case, never the verdict
    #[arg(long, value_name = "N", value_parser = clap::value_parser!(u32).range(1..=100_000))]
    pub(super) sample: Option<u32>,

    /// Seed of the sampled estimate: the same seed draws the same worlds
    #[arg(long, value_name = "S", default_value_t = 1, requires = "sample")]
    pub(super) seed: u64,

    /// The day that the age of concrete is counted to, as year-month-day; today when not given
    #[arg(long, value_name = "DATE")]
    pub(super) on: Option<String>,

    /// Also draw the bay into this file, as `bayrise picture` does: .png or .gif
    #[arg(long, value_name = "OUT")]
    pub(super) picture: Option<PathBuf>,
}

/// Say what is go, stop or still not known before buying: one page, in the order a person meets it.
#[derive(Debug, Args)]
#[command(after_help = "\
Examples:
  bayrise plan my-bay.ron
  bayrise plan my-bay.ron --page before-you-buy.pdf
  bayrise plan my-bay.ron --format json | jq '.items[] | select(.state == \"stop\")'

Exits 0 when every item is a go, 1 when one stops or is not known, 2 on bad input.")]
pub(super) struct Plan {
    /// The bay file
    pub(super) file: PathBuf,

    /// How the page is written
    #[arg(long, value_enum, default_value_t = Format::Text)]
    pub(super) format: Format,

    /// The day that the age of concrete is counted to, as year-month-day; today when not given
    #[arg(long, value_name = "DATE")]
    pub(super) on: Option<String>,

    /// Also write it as one printed page: .pdf or .svg; one that is there is replaced
    #[arg(long, value_name = "OUT")]
    pub(super) page: Option<PathBuf>,
}

/// Say where the posts stand by tape readings taken after setting out, what to move, and the rise.
#[derive(Debug, Args)]
#[command(after_help = "\
Examples:
  bayrise asbuilt my-bay.ron measured.ron
  bayrise asbuilt my-bay.ron measured.ron --format json | jq '.posts[].to_do'

A file of readings names the letters of the floor sheet (`bayrise layout`): corners LP1 to LP4 and RP1
to RP4 of the plates, K and L on the columns themselves (middle of the inner face, at its foot), A, B and C on
the door wall:

  (
      format: 1,
      title: \"First setting out\",
      tolerance: \"1/16 in\",
      distances: [
          (from: LP2, to: RP2, reading: \"8 ft 10 in\"),
          (from: LP1, to: RP4, reading: \"12 ft 1 5/8 in\", tolerance: \"1/8 in\"),
      ],
      walls: [(from: Door, to: LP1, reading: \"13 ft 2 in\"), (from: Left, to: LP4, reading: \"6 ft\")],
      plumb: [(post: Left, toward: Right, out: \"1/8 in\", over: \"8 ft\")],
      shims: [(at: LP1, height: \"1/16 in\")],
      feeler: [(post: Left, gap: \"0.004 in\"), (post: Right, gap: \"0.004 in\")],
      levels: [(at: LP1, height: \"-1/8 in\")],
  )

A \u{b1} (`tolerance`, `plumb_tolerance`, `level_tolerance`) is 1/16 in when not given. Floor levels are
heights from any one level line, up positive. A plumb reading says where the top leans to, seen from the
door: Left, Right, Front (into the bay) or Rear (toward the door). Read twice, it checks itself; a tape
between the same marks read again counts once, as the mean, and checks nothing. `feeler` says that with
the anchors snug no leaf thicker than `gap` goes in under any corner of that post's plate or between its
shims; without it a plate may rock by what the levels can't tell.

Exits 0 when a lock is safe with the posts as they stand, 1 when none is or something is not known, 2
on bad input.")]
pub(super) struct AsBuilt {
    /// The bay file
    pub(super) file: PathBuf,

    /// The file of readings
    pub(super) readings: PathBuf,

    /// How the answer is written
    #[arg(long, value_enum, default_value_t = Format::Text)]
    pub(super) format: Format,

    /// The day that the age of concrete is counted to, as year-month-day; today when not given
    #[arg(long, value_name = "DATE")]
    pub(super) on: Option<String>,
}

/// Put lifts, vehicles, changes and garages side by side: how high, what limits, what it costs.
#[derive(Debug, Args)]
#[command(after_help = "\
Examples:
  bayrise compare scenes/compare/short-or-tall.ron
  bayrise compare options.ron --sort cost --filter safe --filter \"underbody>=5 ft 10 in\"
  bayrise compare options.ron --format csv > compared.csv

A file of options names a bay file beside it and lists what may stand in its place:

  (
      format: 1,
      title: \"Which lift\",
      base: \"my-bay.ron\",
      currency: \"$\",
      prices: (freight: 400, anchors: 90),
      lifts: [
          (name: \"short\", lift: (preset: \"floor-plate-9-6\"), prices: (lift: 2900)),
          \"tall-columns-11-10\",
      ],
      vehicles: [\"large-suv\", (name: \"its pads down\", parking: (pad_raise: \"0 in\"))],
      changes: [(name: \"as it is\"), (name: \"no opener\", garage: (opener: None))],
      garages: [(name: \"home\"), (name: \"the barn\", bay: \"barn.ron\")],
  )

An option may lay its own values over any part of the bay: garage, lift, vehicle, parking, policy,
people, slab, power, arrangements. A preset puts another lift or vehicle in the place of the bay's.

Exits 0 when some combination has a safe lock, 1 when none has, 2 when nothing can be compared.")]
pub(super) struct Compare {
    /// The file of options
    pub(super) file: PathBuf,

    /// How the comparison is written
    #[arg(long, value_enum, default_value_t = CompareFormat::Text)]
    pub(super) format: CompareFormat,

    /// In which order
    #[arg(long, value_enum, default_value_t = SortBy::File)]
    pub(super) sort: SortBy,

    /// Show only these: safe, full-rise, slab-holds (all of it is shown to hold),
    /// slab-not-stopped, lift=NAME, vehicle=NAME, change=NAME, garage=NAME, "underbody>=LENGTH",
    /// "cost<=AMOUNT" (with no price missing); may be given several times. The choice is made among
    /// all of them
    #[arg(long, value_name = "WHAT")]
    pub(super) filter: Vec<String>,

    /// Leave out how high the ceiling would have to be and how tall the vehicle may be
    #[arg(long)]
    pub(super) quick: bool,

    /// The day that the age of concrete is counted to, as year-month-day; today when not given
    #[arg(long, value_name = "DATE")]
    pub(super) on: Option<String>,
}

/// How a comparison is written.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(super) enum CompareFormat {
    /// For people
    Text,
    /// For programs
    Json,
    /// For spreadsheets
    Csv,
}

/// In which order.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(super) enum SortBy {
    /// As the file lists them
    File,
    /// The highest safe lock first, by how far the carriage goes up to it
    Lock,
    /// The most height under the body first
    Underbody,
    /// The least known cost first
    Cost,
    /// The least load first
    Load,
    /// The widest way first
    Way,
}

/// Draw the bay without a window: a picture (.png), or the raise as an animation (.gif).
#[derive(Debug, Args)]
#[command(after_help = "\
Examples:
  bayrise picture my-bay.ron bay.png
  bayrise picture my-bay.ron lock-5.png --lock 5 --from side --door open
  bayrise picture my-bay.ron poster.png --size 3840x2160 --people on
  bayrise picture my-bay.ron two.png --beside tall.ron  two bays to the same scale
  bayrise picture my-bay.ron raise.gif                  from the floor to the highest safe lock

Exits 0 when the picture is written, whatever its verdict; 2 on bad input; 3 when there is no driver
to draw with.")]
pub(super) struct Picture {
    /// The bay file
    pub(super) file: PathBuf,

    /// The picture to write; one that is there is replaced
    pub(super) out: PathBuf,

    /// Another bay on the right half, to the same scale, with its own verdict
    #[arg(long, value_name = "FILE")]
    pub(super) beside: Option<PathBuf>,

    /// Where the carriage stands: a lock counted from 1, floor, top, or safe for the highest safe
    /// lock (where none is safe: the highest clear one, else the floor)
    #[arg(long, value_name = "N|floor|top|safe", default_value = "safe")]
    pub(super) lock: String,

    /// Where the eye stands
    #[arg(long, value_enum, default_value_t = From::Corner)]
    pub(super) from: From,

    /// Width and height in pixels; 1280x720, and 960x540 for an animation; of two bays 1920x800 and
    /// 1600x640
    #[arg(long, value_name = "WxH")]
    pub(super) size: Option<String>,

    /// Where the door is: shut, open, or the share of its way that it is open, from 0 to 1; as it
    /// governs the verdict when not given
    #[arg(long, value_name = "STATE", allow_hyphen_values = true)]
    pub(super) door: Option<String>,

    /// The verdict and its cautions below the picture
    #[arg(long, value_enum, default_value_t = Switch::On)]
    pub(super) captions: Switch,

    /// The people of the bay file's policy, drawn for comparison
    #[arg(long, value_enum, default_value_t = Switch::Off)]
    pub(super) people: Switch,

    /// The day that the age of concrete is counted to, as year-month-day; today when not given
    #[arg(long, value_name = "DATE")]
    pub(super) on: Option<String>,
}

// What commands that write pages have in common. No doc comment: it would stand over their own help.
#[derive(Debug, Args)]
pub(super) struct Pages {
    /// The paper; Letter for a file in feet and inches and A4 for one in millimetres when not given
    #[arg(long, value_enum)]
    pub(super) paper: Option<PaperName>,

    /// The day that the age of concrete is counted to, as year-month-day; today when not given
    #[arg(long, value_name = "DATE")]
    pub(super) on: Option<String>,
}

/// Draw the sheets for the floor: plan, plates, tape readings, elevations, to scale, and where fixed
/// things are.
#[derive(Debug, Args)]
#[command(after_help = "\
Examples:
  bayrise layout my-bay.ron floor.pdf                   to print, all pages
  bayrise layout my-bay.ron floor.svg --paper a3        a file a page: floor.svg, floor-2.svg, ..
  bayrise layout my-bay.ron floor.dxf                   in millimetres, on named layers
  bayrise layout my-bay.ron floor.pdf --scale 1:50      the floor plan to this scale
  bayrise layout my-bay.ron tiles.pdf --full-size       base plates 1:1, to lay on the floor

Print at 100 %: each page has a bar to check that by. Holes are shown only where the bay file says
that nothing in or under the slab forbids drilling. A DXF is in full size as it is: it has no pages
that show a plate once more, and with --full-size the floor plan alone.

Exits 0 when the sheets are written, whatever the verdict on them; 2 on bad input.")]
pub(super) struct Layout {
    /// The bay file
    pub(super) file: PathBuf,

    /// The drawing to write: .pdf, .svg or .dxf; one that is there is replaced
    pub(super) out: PathBuf,

    #[command(flatten)]
    pub(super) pages: Pages,

    /// The floor plan's scale, such as 1:50 or "1/4 in = 1 ft"; the largest that fits when not given
    #[arg(long, conflicts_with = "full_size")]
    pub(super) scale: Option<String>,

    /// Draw the floor in full size instead, over as many pages as it takes, with crosses where
    /// pages meet and a map of them: the lift (both base plates), or the whole plan
    #[arg(
        long,
        visible_alias = "tiled",
        value_enum,
        value_name = "PART",
        num_args = 0..=1,
        default_missing_value = "lift"
    )]
    pub(super) full_size: Option<FloorPart>,
}

/// How much of the floor is drawn in full size.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(super) enum FloorPart {
    /// Both base plates and what lies between them
    Lift,
    /// The whole floor plan: hundreds of pages
    Plan,
}

/// Write the lock card to hang on the post, and a tape in full size for the column.
#[derive(Debug, Args)]
#[command(after_help = "\
Examples:
  bayrise card my-bay.ron card.pdf                      one vehicle
  bayrise card pickup.ron estate.ron van.ron card.pdf   several on the same lift
  bayrise card my-bay.ron card.png --paper a4           a file a page: card.png, card-2.png, ..

Several bay files must be of the same garage, lift, slab and supply: what differs is named. A vehicle
without a safe lock gets a page that says so, and no mark. Print at 100 %: the tape has check bars
along and across the page.

Exits 0 when the card is written, whatever it says; 2 on bad input.")]
pub(super) struct Card {
    /// The bay files, one a vehicle
    #[arg(required = true, num_args = 1.., value_name = "BAY")]
    pub(super) files: Vec<PathBuf>,

    /// The card to write: .pdf, .svg or .png; one that is there is replaced
    #[arg(required = true)]
    pub(super) out: PathBuf,

    #[command(flatten)]
    pub(super) pages: Pages,
}

/// Write the commissioning sheet, with the tape reading of every lock, and a yearly log.
#[derive(Debug, Args)]
#[command(after_help = "\
Example:
  bayrise record my-bay.ron record.pdf

Readings expected are those of the bay file; what is read is written in by hand, and so is the torque
of the anchors, which is the manual's alone.

Exits 0 when the sheets are written, whatever the verdict on them; 2 on bad input.")]
pub(super) struct Record {
    /// The bay file
    pub(super) file: PathBuf,

    /// The sheets to write: .pdf, .svg or .png; one that is there is replaced
    pub(super) out: PathBuf,

    #[command(flatten)]
    pub(super) pages: Pages,
}

/// Write one page to hand on: verdict, cautions, pictures, tables, inputs, and the bay to turn.
#[derive(Debug, Args)]
#[command(after_help = "\
Example:
  bayrise report my-bay.ron bay.html

One file that opens in a browser from a mail or on a phone, without a network; it reads without script
and prints on Letter and A4, every page with its fingerprint. The slider raises the vehicle over the whole
travel, with the door open, shut or running; what is said beside it is what the study found there. Only a
lock is ever called clear: between two locks it says what is met, and nothing of the rest.

Exits 0 when the page is written, whatever its verdict; 2 on bad input.")]
pub(super) struct ReportPage {
    /// The bay file
    pub(super) file: PathBuf,

    /// The page to write, .html; one that is there is replaced
    pub(super) out: PathBuf,

    /// The day that the age of concrete is counted to, as year-month-day; today when not given
    #[arg(long, value_name = "DATE")]
    pub(super) on: Option<String>,
}

/// Write the bay as a model (glTF 2.0, .glb) that other programs open.
#[derive(Debug, Args)]
#[command(after_help = "\
Example:
  bayrise model my-bay.ron bay.glb

Metres, y up, seen from the door; below the node `bay` the axes are the bay's: x to the right seen from
the door, y into the bay, z up, the origin on the floor at mid-width of the door opening. Every solid is
a node of its own name. The raise is an animation from the floor to the highest safe lock, a second to
100 mm of travel; where no lock is safe there is none. Verdict, cautions, version and fingerprint stand
in the extras of the asset.

Exits 0 when the model is written, whatever the verdict in it; 2 on bad input.")]
pub(super) struct Model {
    /// The bay file
    pub(super) file: PathBuf,

    /// The model to write, .glb; one that is there is replaced
    pub(super) out: PathBuf,

    /// The day that the age of concrete is counted to, as year-month-day; today when not given
    #[arg(long, value_name = "DATE")]
    pub(super) on: Option<String>,
}

/// A paper.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(super) enum PaperName {
    /// 8 1/2 by 11 in
    Letter,
    /// 210 by 297 mm
    A4,
    /// 297 by 420 mm
    A3,
}

/// Where the eye stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(super) enum From {
    /// Above a corner by the door
    Corner,
    /// Outside the door, square on
    Front,
    /// At the left side, square on
    Side,
    /// Above, square on
    Plan,
    /// At the driver's door
    Door,
}

/// On or off.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(super) enum Switch {
    /// With it
    On,
    /// Without it
    Off,
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
pub(super) struct View {
    /// The bay file
    pub(super) file: PathBuf,

    /// Another bay to the right of it, to the same scale, its carriage going along
    #[arg(long, value_name = "FILE")]
    pub(super) beside: Option<PathBuf>,
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
pub(super) struct Solids {
    /// The bay file
    pub(super) file: PathBuf,

    /// How far the carriage has climbed: "48 in", "1200 mm"
    #[arg(
        long,
        value_name = "LENGTH",
        default_value = "0 in",
        allow_hyphen_values = true
    )]
    pub(super) travel: String,

    /// Where the door is: shut, open, or the share of its way that it is open, from 0 to 1
    #[arg(
        long,
        value_name = "STATE",
        default_value = "shut",
        allow_hyphen_values = true
    )]
    pub(super) door: String,

    /// How the list is written
    #[arg(long, value_enum, default_value_t = SolidsFormat::Json)]
    pub(super) format: SolidsFormat,
}

/// List the lifts and vehicles that a bay can start from, with their main figures.
#[derive(Debug, Args)]
pub(super) struct Presets {
    /// How the list is written
    #[arg(long, value_enum, default_value_t = Format::Text)]
    pub(super) format: Format,
}

/// Draw the form to measure by: what to measure before buying, how and where, to fill in by pencil.
#[derive(Debug, Args)]
#[command(after_help = "\
Examples:
  bayrise worksheet measure.pdf                         on Letter
  bayrise worksheet measure.pdf --paper a4
  bayrise worksheet measure.svg                         a file a page: measure.svg, measure-2.svg, ..; .png likewise

`bayrise new --ask` takes the answers in the same order and writes the bay file.")]
pub(super) struct Worksheet {
    /// The form to write: .pdf, .svg or .png; one that is there is replaced
    pub(super) out: PathBuf,

    /// The paper
    #[arg(long, value_enum, default_value_t = PaperName::Letter)]
    pub(super) paper: PaperName,
}

/// Write a commented bay file to start from, saying what to measure and how.
#[derive(Debug, Args)]
#[command(after_help = "\
Examples:
  bayrise new my-bay.ron --lift tall-columns-11-10 --vehicle pickup-half-ton-crew-cab
  bayrise new my-bay.ron --ask                          asks what `bayrise worksheet` asks
  bayrise new my-bay.ron --ask < answers.txt            a line an answer, empty where not known, then: write

`bayrise presets` lists the names.")]
pub(super) struct New {
    /// The file to write
    pub(super) out: PathBuf,

    /// Ask what the form of `bayrise worksheet` asks, one question after another; Enter alone means
    /// not known, and the file then says so. At the end all answers are shown and can be changed;
    /// nothing is written before `write` is said
    #[arg(long, conflicts_with_all = ["lift", "vehicle", "units"])]
    pub(super) ask: bool,

    /// The lift's preset
    #[arg(long, value_name = "NAME", required_unless_present = "ask")]
    pub(super) lift: Option<String>,

    /// The vehicle's preset
    #[arg(long, value_name = "NAME", required_unless_present = "ask")]
    pub(super) vehicle: Option<String>,

    /// The units of the figures to fill in
    #[arg(long, value_enum, default_value_t = Units::Imperial)]
    pub(super) units: Units,

    /// Replace the file when it is there already
    #[arg(long)]
    pub(super) force: bool,
}

/// How a report or a list is written.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(super) enum Format {
    /// For people
    Text,
    /// For programs
    Json,
}

/// How the list of solids is written.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(super) enum SolidsFormat {
    /// For programs
    Json,
}

/// Units of a new file.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(super) enum Units {
    /// Feet and inches
    Imperial,
    /// Millimetres
    Metric,
}
