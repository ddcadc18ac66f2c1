//! What studies a bay, or several, and says what it found.

use std::path::PathBuf;

use clap::{Args, ValueEnum};

use super::Format;

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
pub(in crate::cli) struct Check {
    /// The bay file
    pub(in crate::cli) file: PathBuf,

    /// How the report is written
    #[arg(long, value_enum, default_value_t = Format::Text)]
    pub(in crate::cli) format: Format,

    /// Exit 0 only when this lock, or a higher one, is safe; locks are counted from 1, the lowest
    #[arg(long, value_name = "N", value_parser = clap::value_parser!(u32).range(1..))]
    pub(in crate::cli) need_lock: Option<u32>,

    /// Exit 0 only when a safe lock leaves at least this much height under the body: "5 ft 10 in",
    /// "1780 mm"
    #[arg(long, value_name = "LENGTH", allow_hyphen_values = true)]
    pub(in crate::cli) need_underbody: Option<String>,

    /// Also say how often each lock is clear, over N worlds drawn inside the uncertainty; an
    /// estimate beside the worst case, never the verdict
    #[arg(long, value_name = "N", value_parser = clap::value_parser!(u32).range(1..=100_000))]
    pub(in crate::cli) sample: Option<u32>,

    /// Seed of the sampled estimate: the same seed draws the same worlds
    #[arg(long, value_name = "S", default_value_t = 1, requires = "sample")]
    pub(in crate::cli) seed: u64,

    /// The day that the age of concrete is counted to, as year-month-day; today when not given
    #[arg(long, value_name = "DATE")]
    pub(in crate::cli) on: Option<String>,

    /// Also draw the bay into this file, as `bayrise picture` does: .png or .gif
    #[arg(long, value_name = "OUT")]
    pub(in crate::cli) picture: Option<PathBuf>,
}

/// Say what is go, stop or still not known before buying: one page, in the order a person meets it.
#[derive(Debug, Args)]
#[command(after_help = "\
Examples:
  bayrise plan my-bay.ron
  bayrise plan my-bay.ron --page before-you-buy.pdf
  bayrise plan my-bay.ron --format json | jq '.items[] | select(.state == \"stop\")'

Exits 0 when every item is a go, 1 when one stops or is not known, 2 on bad input.")]
pub(in crate::cli) struct Plan {
    /// The bay file
    pub(in crate::cli) file: PathBuf,

    /// How the page is written
    #[arg(long, value_enum, default_value_t = Format::Text)]
    pub(in crate::cli) format: Format,

    /// The day that the age of concrete is counted to, as year-month-day; today when not given
    #[arg(long, value_name = "DATE")]
    pub(in crate::cli) on: Option<String>,

    /// Also write it as one printed page: .pdf or .svg; one that is there is replaced
    #[arg(long, value_name = "OUT")]
    pub(in crate::cli) page: Option<PathBuf>,
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
pub(in crate::cli) struct AsBuilt {
    /// The bay file
    pub(in crate::cli) file: PathBuf,

    /// The file of readings
    pub(in crate::cli) readings: PathBuf,

    /// How the answer is written
    #[arg(long, value_enum, default_value_t = Format::Text)]
    pub(in crate::cli) format: Format,

    /// The day that the age of concrete is counted to, as year-month-day; today when not given
    #[arg(long, value_name = "DATE")]
    pub(in crate::cli) on: Option<String>,
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
pub(in crate::cli) struct Compare {
    /// The file of options
    pub(in crate::cli) file: PathBuf,

    /// How the comparison is written
    #[arg(long, value_enum, default_value_t = CompareFormat::Text)]
    pub(in crate::cli) format: CompareFormat,

    /// In which order
    #[arg(long, value_enum, default_value_t = SortBy::File)]
    pub(in crate::cli) sort: SortBy,

    /// Show only these: safe, full-rise, slab-holds (all of it is shown to hold),
    /// slab-not-stopped, lift=NAME, vehicle=NAME, change=NAME, garage=NAME, "underbody>=LENGTH",
    /// "cost<=AMOUNT" (with no price missing); may be given several times. The choice is made among
    /// all of them
    #[arg(long, value_name = "WHAT")]
    pub(in crate::cli) filter: Vec<String>,

    /// Leave out how high the ceiling would have to be and how tall the vehicle may be
    #[arg(long)]
    pub(in crate::cli) quick: bool,

    /// The day that the age of concrete is counted to, as year-month-day; today when not given
    #[arg(long, value_name = "DATE")]
    pub(in crate::cli) on: Option<String>,
}

/// How a comparison is written.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(in crate::cli) enum CompareFormat {
    /// For people
    Text,
    /// For programs
    Json,
    /// For spreadsheets
    Csv,
}

/// In which order.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(in crate::cli) enum SortBy {
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
