//! What writes a file to hand on: pictures, sheets, cards, pages, models, forms.

use std::path::PathBuf;

use clap::{Args, ValueEnum};

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
pub(in crate::cli) struct Picture {
    /// The bay file
    pub(in crate::cli) file: PathBuf,

    /// The picture to write; one that is there is replaced
    pub(in crate::cli) out: PathBuf,

    /// Another bay on the right half, to the same scale, with its own verdict
    #[arg(long, value_name = "FILE")]
    pub(in crate::cli) beside: Option<PathBuf>,

    /// Where the carriage stands: a lock counted from 1, floor, top, or safe for the highest safe
    /// lock (where none is safe: the highest clear one, else the floor)
    #[arg(long, value_name = "N|floor|top|safe", default_value = "safe")]
    pub(in crate::cli) lock: String,

    /// Where the eye stands
    #[arg(long, value_enum, default_value_t = From::Corner)]
    pub(in crate::cli) from: From,

    /// Width and height in pixels; 1280x720, and 960x540 for an animation; of two bays 1920x800 and
    /// 1600x640
    #[arg(long, value_name = "WxH")]
    pub(in crate::cli) size: Option<String>,

    /// Where the door is: shut, open, or the share of its way that it is open, from 0 to 1; as it
    /// governs the verdict when not given
    #[arg(long, value_name = "STATE", allow_hyphen_values = true)]
    pub(in crate::cli) door: Option<String>,

    /// The verdict and its cautions below the picture
    #[arg(long, value_enum, default_value_t = Switch::On)]
    pub(in crate::cli) captions: Switch,

    /// The people of the bay file's policy, drawn for comparison
    #[arg(long, value_enum, default_value_t = Switch::Off)]
    pub(in crate::cli) people: Switch,

    /// The day that the age of concrete is counted to, as year-month-day; today when not given
    #[arg(long, value_name = "DATE")]
    pub(in crate::cli) on: Option<String>,
}

// What commands that write pages have in common. No doc comment: it would stand over their own help.
#[derive(Debug, Args)]
pub(in crate::cli) struct Pages {
    /// The paper; Letter for a file in feet and inches and A4 for one in millimetres when not given
    #[arg(long, value_enum)]
    pub(in crate::cli) paper: Option<PaperName>,

    /// The day that the age of concrete is counted to, as year-month-day; today when not given
    #[arg(long, value_name = "DATE")]
    pub(in crate::cli) on: Option<String>,
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
pub(in crate::cli) struct Layout {
    /// The bay file
    pub(in crate::cli) file: PathBuf,

    /// The drawing to write: .pdf, .svg or .dxf; one that is there is replaced
    pub(in crate::cli) out: PathBuf,

    #[command(flatten)]
    pub(in crate::cli) pages: Pages,

    /// The floor plan's scale, such as 1:50 or "1/4 in = 1 ft"; the largest that fits when not given
    #[arg(long, conflicts_with = "full_size")]
    pub(in crate::cli) scale: Option<String>,

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
    pub(in crate::cli) full_size: Option<FloorPart>,
}

/// How much of the floor is drawn in full size.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(in crate::cli) enum FloorPart {
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

Several bay files must be of the same garage, lift, slab and supply: what differs is named. A
vehicle without a safe lock gets a page that says so, and no mark. Print at 100 %: the tape has
check bars along and across the page.

Exits 0 when the card is written, whatever it says; 2 on bad input.")]
pub(in crate::cli) struct Card {
    /// The bay files, one a vehicle
    #[arg(required = true, num_args = 1.., value_name = "BAY")]
    pub(in crate::cli) files: Vec<PathBuf>,

    /// The card to write: .pdf, .svg or .png; one that is there is replaced
    #[arg(required = true)]
    pub(in crate::cli) out: PathBuf,

    #[command(flatten)]
    pub(in crate::cli) pages: Pages,
}

/// Write the commissioning sheet, with the tape reading of every lock, and a yearly log.
#[derive(Debug, Args)]
#[command(after_help = "\
Example:
  bayrise record my-bay.ron record.pdf

Readings expected are those of the bay file; what is read is written in by hand, and so is the torque
of the anchors, which is the manual's alone.

Exits 0 when the sheets are written, whatever the verdict on them; 2 on bad input.")]
pub(in crate::cli) struct Record {
    /// The bay file
    pub(in crate::cli) file: PathBuf,

    /// The sheets to write: .pdf, .svg or .png; one that is there is replaced
    pub(in crate::cli) out: PathBuf,

    #[command(flatten)]
    pub(in crate::cli) pages: Pages,
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
pub(in crate::cli) struct ReportPage {
    /// The bay file
    pub(in crate::cli) file: PathBuf,

    /// The page to write, .html; one that is there is replaced
    pub(in crate::cli) out: PathBuf,

    /// The day that the age of concrete is counted to, as year-month-day; today when not given
    #[arg(long, value_name = "DATE")]
    pub(in crate::cli) on: Option<String>,
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
pub(in crate::cli) struct Model {
    /// The bay file
    pub(in crate::cli) file: PathBuf,

    /// The model to write, .glb; one that is there is replaced
    pub(in crate::cli) out: PathBuf,

    /// The day that the age of concrete is counted to, as year-month-day; today when not given
    #[arg(long, value_name = "DATE")]
    pub(in crate::cli) on: Option<String>,
}

/// A paper.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(in crate::cli) enum PaperName {
    /// 8 1/2 by 11 in
    Letter,
    /// 210 by 297 mm
    A4,
    /// 297 by 420 mm
    A3,
}

/// Where the eye stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(in crate::cli) enum From {
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
pub(in crate::cli) enum Switch {
    /// With it
    On,
    /// Without it
    Off,
}

/// Draw the form to measure by: what to measure before buying, how and where, to fill in by pencil.
#[derive(Debug, Args)]
#[command(after_help = "\
Examples:
  bayrise worksheet measure.pdf                         on Letter
  bayrise worksheet measure.pdf --paper a4
  bayrise worksheet measure.svg                         a file a page: measure.svg, measure-2.svg, ..; .png likewise

`bayrise new --ask` takes the answers in the same order and writes the bay file.")]
pub(in crate::cli) struct Worksheet {
    /// The form to write: .pdf, .svg or .png; one that is there is replaced
    pub(in crate::cli) out: PathBuf,

    /// The paper
    #[arg(long, value_enum, default_value_t = PaperName::Letter)]
    pub(in crate::cli) paper: PaperName,
}
