//! `bayrise layout`: the sheets for the floor, as drawings to scale.

use std::path::PathBuf;

use super::files::can_be_written;
use super::load::{Loaded, load};
use super::options::Day;
use super::sheets::{not_studied, studied, write};
use super::terminal::print;
use super::{Exit, Failure};
use crate::drawing::layout::{
    LayoutError, Order, Part, floor_plan, full_size, layout, without_copies,
};
use crate::drawing::pages::PageFormat;
use crate::drawing::sheet::{Paper, stated};

/// What `layout` is to do.
#[derive(Debug)]
pub(super) struct LayoutOptions {
    pub(super) file: PathBuf,
    pub(super) out: PathBuf,
    pub(super) format: PageFormat,
    /// None: that of the file's units.
    pub(super) paper: Option<Paper>,
    /// The floor plan's scale, 1 to this; none: the largest that fits.
    pub(super) scale: Option<f64>,
    /// In full size over many pages; none: to scale.
    pub(super) full_size: Option<Part>,
    /// The day that ages are counted to.
    pub(super) day: Day,
}

/// What to ask for instead of a scale that does not fit.
fn would_fit(fits: Option<String>, larger: Option<Paper>) -> String {
    let scale = fits.map(|scale| format!("the largest that fits is {scale}"));
    let paper = larger.map(|paper| format!("{} paper has room for it: `--paper a3`", paper.name()));
    let both: Vec<String> = scale.into_iter().chain(paper).collect();
    if both.is_empty() {
        return "no paper has room for it to any scale: see the pages in full size, `--full-size plan`"
            .into();
    }
    both.join("; ")
}

/// What it can be written as.
pub(super) const FORMATS: [PageFormat; 3] = [PageFormat::Pdf, PageFormat::Svg, PageFormat::Dxf];

pub(super) fn run(options: &LayoutOptions) -> Result<Exit, Failure> {
    print(&written(options, &load(&options.file)?)?)?;
    Ok(Exit::Met)
}

/// Writes it; what is said of it comes back.
pub(super) fn written(options: &LayoutOptions, loaded: &Loaded) -> Result<String, Failure> {
    can_be_written(&options.out, &loaded.inputs)?;
    let study = studied(&options.file, loaded, options.day.on)?;
    let day = options.day.of(&loaded.bay);
    let paper = options.paper.unwrap_or(Paper::usual(loaded.bay.units));
    let order = Order {
        bay: &loaded.bay,
        study: &study,
        fingerprint: &loaded.fingerprint(Some(day)),
        day,
        paper,
        scale: options.scale,
    };
    let is_dxf = options.format == PageFormat::Dxf;
    let pages = match options.full_size {
        // Such a file is in full size as it is: one page has it all.
        Some(_) if is_dxf => floor_plan(&order),
        Some(part) => full_size(&order, part),
        None if is_dxf => without_copies(&order),
        None => layout(&order),
    };
    let pages = pages.map_err(|error| match error {
        LayoutError::Stance(error) => not_studied(&options.file, &error),
        LayoutError::Scale { fits, larger } => {
            let units = loaded.bay.units;
            let asked = options
                .scale
                .map_or_else(String::new, |one| stated(one, units));
            Failure::new(
                format!(
                    "--scale: the floor plan does not fit {} paper to {asked}",
                    paper.name()
                ),
                would_fit(fits.map(|one| stated(one, units)), larger),
            )
        }
        LayoutError::TooSmall(page) => Failure::new(
            format!("--paper {}: no room for all of \"{page}\"", paper.name()),
            "take a larger paper: `--paper a3`",
        ),
    })?;
    write(
        &options.out,
        &loaded.inputs,
        options.format,
        &loaded.bay.title,
        &pages,
    )
}
