//! `bayrise card`: what hangs on the post.

use std::path::PathBuf;

use super::files::can_be_written;
use super::inputs::Input;
use super::load::{Loaded, load};
use super::options::Day;
use super::sheets::{studied, write};
use super::terminal::print;
use super::{Exit, Failure};
use crate::drawing::card::{CardError, Entry, MOST_VEHICLES, card};
use crate::drawing::pages::PageFormat;
use crate::drawing::sheet::Paper;
use crate::report::on_one_line;

/// What `card` is to do.
#[derive(Debug)]
pub(super) struct CardOptions {
    pub(super) files: Vec<PathBuf>,
    pub(super) out: PathBuf,
    pub(super) format: PageFormat,
    /// None: that of the first file's units.
    pub(super) paper: Option<Paper>,
    /// The day that ages are counted to.
    pub(super) day: Day,
}

/// Differences that are told; more than that is another bay altogether.
const MOST_NAMED: usize = 8;

/// What it can be written as.
pub(super) const FORMATS: [PageFormat; 3] = [PageFormat::Pdf, PageFormat::Svg, PageFormat::Png];

pub(super) fn run(options: &CardOptions) -> Result<Exit, Failure> {
    if options.files.len() > MOST_VEHICLES {
        return Err(count(options.files.len()));
    }
    let loaded: Vec<Loaded> = options
        .files
        .iter()
        .map(|file| load(file))
        .collect::<Result<_, _>>()?;
    print(&written(options, &loaded)?)?;
    Ok(Exit::Met)
}

/// Writes it; what is said of it comes back. `loaded` are the bays of the files, in their order.
pub(super) fn written(options: &CardOptions, loaded: &[Loaded]) -> Result<String, Failure> {
    let inputs: Vec<Input> = loaded.iter().flat_map(|one| one.inputs.clone()).collect();
    can_be_written(&options.out, &inputs)?;
    let mut studies = Vec::with_capacity(loaded.len());
    for (file, loaded) in options.files.iter().zip(loaded) {
        studies.push(studied(file, loaded, options.day.on)?);
    }
    let names: Vec<String> = options
        .files
        .iter()
        .map(|file| on_one_line(&file.display().to_string()))
        .collect();
    let of = |one: &Loaded| options.day.of(&one.bay);
    let prints = loaded.iter().map(|one| one.fingerprint(Some(of(one))));
    let prints: Vec<String> = prints.collect();
    let entries: Vec<Entry<'_>> = loaded
        .iter()
        .zip(&studies)
        .zip(&names)
        .zip(&prints)
        .map(|(((loaded, study), file), fingerprint)| Entry {
            file,
            bay: &loaded.bay,
            study,
            fingerprint,
        })
        .collect();
    let first = entries.first().ok_or_else(|| count(0))?;
    let paper = options.paper.unwrap_or(Paper::usual(first.bay.units));
    // They are of one slab.
    let day = options.day.of(first.bay);
    let pages = card(&entries, day, paper).map_err(|error| failed(error, paper))?;
    write(
        &options.out,
        &inputs,
        options.format,
        &first.bay.title,
        &pages,
    )
}

fn count(given: usize) -> Failure {
    Failure::new(
        format!("{given} bay files for one card"),
        format!("a card takes 1 to {MOST_VEHICLES}: one for each vehicle"),
    )
}

fn failed(error: CardError, paper: Paper) -> Failure {
    match error {
        CardError::Count(given) => count(given),
        CardError::Differs(difference) => {
            let [first, other] = difference.files;
            let more = difference.what.len().saturating_sub(MOST_NAMED);
            let mut what = difference.what;
            what.truncate(MOST_NAMED);
            let mut what = what.join(", ");
            if more > 0 {
                what.push_str(&format!(" and {more} more"));
            }
            Failure::new(
                format!("{other} is of another garage or lift than {first}: they differ in {what}",),
                "a card is for one lift in one garage: correct the file, or make a card of its own",
            )
        }
        CardError::Twice(first, other) => Failure::new(
            format!("{other} says the same as {first}"),
            "name each vehicle's file once",
        ),
        CardError::TooSmall(page) => Failure::new(
            format!("--paper {}: no room for all of \"{page}\"", paper.name()),
            "take a larger paper (`--paper a3`), or fewer files",
        ),
    }
}
