//! The page for a customer: one HTML file with the verdict, pictures, the bay to turn, every table
//! and every input.
//!
//! It opens without a network and reads without script. Nothing in it works anything out: words and
//! tables are the report's own pieces, drawings are those of the sheets, and what is said beside the
//! raise comes from the study (`spots`). Texts of files pass through `html::escaped` alone; a
//! content policy lets nothing run or load but the two scripts and the style that are written here.

mod html;
mod inputs;
mod pictures;
mod running;
mod scene;
mod spots;
#[cfg(test)]
mod tests;
mod wording;

use std::fmt::Write as _;

use data_encoding::BASE64;
use sha2::{Digest as _, Sha256};

use super::layout::LayoutError;
use crate::clearance::Probe;
use crate::drawing::palette::{self, Colour, paper, things};
use crate::ground::ForDay;
use crate::report::text::{Block, blocks};
use crate::report::{Report, Sayings, counted_to_in_line, holds_only_from};
use crate::solids::attitude::StanceError;

use html::{BACK, Chapter, chapters, escaped};

/// What a page is made of.
#[derive(Debug, Clone, Copy)]
pub struct PageOrder<'a> {
    /// What was found, and of what.
    pub report: Report<'a>,
    /// The day that it is for.
    pub day: ForDay,
    /// Every text that went in, each with its name: the bay file first, then presets.
    pub sources: &'a [(String, String)],
}

/// Why there is no page.
#[derive(Debug)]
pub enum PageError {
    /// It can't be said how the vehicle stands.
    Stance(StanceError),
    /// What the bay is turned from can't be written.
    Json(serde_json::Error),
}

impl From<StanceError> for PageError {
    fn from(error: StanceError) -> Self {
        Self::Stance(error)
    }
}

impl From<serde_json::Error> for PageError {
    fn from(error: serde_json::Error) -> Self {
        Self::Json(error)
    }
}

impl std::fmt::Display for PageError {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::Stance(error) => error.fmt(f),
            Self::Json(error) => write!(f, "the page can't be written: {error}"),
        }
    }
}

impl std::error::Error for PageError {}

/// The library that draws with WebGL; where it comes from is said in its first line.
const LIBRARY: &str = include_str!("../../../assets/web/twgl.min.js");
const SCRIPT: &str = include_str!("page.js");
const STYLE: &str = include_str!("page.css");

/// The whole file. `probe` is that of the same study.
///
/// # Errors
/// See [`PageError`].
pub fn page(order: &PageOrder<'_>, probe: &mut Probe) -> Result<String, PageError> {
    let report = &order.report;
    let said = Sayings::of(report.bay, report.study);
    let style = lines(&format!(
        "{}{STYLE}{}",
        colours(),
        running::style(order, &said)
    ));
    let (library, script) = (lines(LIBRARY), lines(SCRIPT));
    let data = scene::json(report, &said, probe)?;
    let pictures = pictures::pictures(order)?;
    let drawings = pictures::drawings(order)?;

    let mut out = String::with_capacity(1 << 20);
    let title = escaped(&said.title());
    // Writing to a string cannot fail.
    let _ = write!(
        out,
        "<!doctype html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n\
         <meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; \
         script-src '{}' '{}'; style-src '{}'; base-uri 'none'; form-action 'none'\">\n\
         <meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n\
         <meta name=\"generator\" content=\"bayrise {}\">\n\
         <title>{title}</title>\n<style>{style}</style>\n</head>\n<body>\n",
        hash(&library),
        hash(&script),
        hash(&style),
        env!("CARGO_PKG_VERSION"),
    );
    let _ = writeln!(
        out,
        "<header><h1>{title}</h1><p class=\"of\">{}</p>{}</header>\n<main>",
        escaped(&said.vehicle_on_lift()),
        holds_only_from(order.day).map_or_else(String::new, |words| format!(
            "<p class=\"bad\">{}.</p>",
            escaped(&words)
        ))
    );
    let all = blocks(report);
    let mut chapters = chapters(&all);
    let is_safe = report.study.highest_safe_lock.is_some();
    let verdict = chapters.remove(0);
    let _ = writeln!(
        out,
        "<section id=\"verdict\" class=\"{}\" aria-label=\"Verdict\">{}</section>",
        if is_safe { "safe" } else { "unsafe" },
        verdict.body
    );
    // What is not measured, and the cautions, come before anything that could be looked at instead.
    let is_measured = report.study.not_measured().is_empty();
    for id in ["not-measured", "cautions"] {
        if chapters.is_empty() || (is_measured && id == "not-measured") {
            continue;
        }
        let chapter = chapters.remove(0);
        let _ = writeln!(
            out,
            "<section id=\"{id}\"><h2>{}</h2>{}</section>",
            chapter.heading, chapter.body
        );
    }
    out.push_str(&pictures);
    out.push_str(TURN);
    contents(&mut out, &chapters);
    for (number, chapter) in chapters.iter().enumerate() {
        let _ = writeln!(
            out,
            "<section id=\"part-{}\"><details open><summary><h2>{}</h2></summary>{}{BACK}</details></section>",
            number + 1,
            chapter.heading,
            chapter.body
        );
    }
    // The drawings last: on paper each has a page of its own, and what is before it would end in one that
    // is nearly empty.
    out.push_str(&inputs::tables(order.sources));
    out.push_str(&drawings);
    let _ = write!(
        out,
        "</main>\n<footer><p>Bayrise {}, input {}{}. An outdated page is known by \
         these: make it anew when the bay file has changed.</p></footer>\n",
        env!("CARGO_PKG_VERSION"),
        escaped(report.fingerprint),
        counted_to_in_line(order.day),
    );
    let _ = write!(
        out,
        "<script type=\"application/json\" id=\"bay\">{data}</script>\n\
         <script>{library}</script>\n<script>{script}</script>\n</body>\n</html>\n"
    );
    Ok(out)
}

/// Links to everything below: the page is long.
fn contents(out: &mut String, chapters: &[Chapter]) {
    out.push_str("<section id=\"contents\"><h2>On this page</h2><nav><ul>");
    for (number, chapter) in chapters.iter().enumerate() {
        // Writing to a string cannot fail.
        let _ = write!(
            out,
            "<li><a href=\"#part-{}\">{}</a></li>",
            number + 1,
            chapter.heading
        );
    }
    out.push_str(
        "<li><a href=\"#inputs\">All inputs that count</a></li>\
         <li><a href=\"#drawings\">Drawings to scale</a></li></ul></nav></section>\n",
    );
}

/// Where the bay is turned and raised; shown by the script only where it can draw.
const TURN: &str = "<section id=\"turn\" hidden><h2>The bay, to turn and to raise</h2>\
    <div id=\"stage\"><canvas id=\"canvas\" tabindex=\"0\" role=\"img\" aria-label=\"The bay in three \
    dimensions; arrow keys turn it, plus and minus bring it nearer\"></canvas></div>\
    <div id=\"eyes\" role=\"group\" aria-label=\"From where\"></div>\
    <label for=\"travel\">Raise <output id=\"height\" for=\"travel\"></output></label>\
    <input id=\"travel\" type=\"range\" min=\"0\" step=\"1\" value=\"0\" aria-describedby=\"state\">\
    <div id=\"locks\" role=\"group\" aria-label=\"Locks\"></div>\
    <div id=\"doors\" role=\"group\" aria-label=\"Overhead door\"></div>\
    <p id=\"state\" role=\"status\" aria-live=\"polite\"><span id=\"sign\"></span><b id=\"word\"></b> \
    <span id=\"says\"></span></p>\
    <p class=\"quiet\">Drawn are the solids of the study where the bay file puts them, both carriages \
    level, a door that runs half way. The words are those of the study and count every uncertainty; \
    for a door that runs they hold wherever it is. Between two locks only what is met is said: no lock \
    holds there, so nothing there is called clear. Near walls and the ceiling are left out where they would hide the bay.</p></section>\n";

/// Line ends as a browser counts them.
fn lines(text: &str) -> String {
    text.replace("\r\n", "\n")
}

/// What a content policy knows a script or a style by.
fn hash(text: &str) -> String {
    let digest = Sha256::digest(text.as_bytes());
    format!("sha256-{}", BASE64.encode(&digest))
}

fn css(colour: Colour) -> String {
    format!("#{:02x}{:02x}{:02x}", colour.0, colour.1, colour.2)
}

/// The palette's colours, for the style.
fn colours() -> String {
    let all = [
        ("ink", paper::INK),
        ("fine", paper::FINE),
        ("paper", paper::PAPER),
        ("warn", paper::WARN),
        ("link", paper::SET_OUT),
        ("light", things::BEHIND_LIGHT),
        ("line", things::FLOOR),
        ("clear", palette::CLEAR),
        ("tight", palette::TIGHT),
        ("strikes", palette::STRIKES),
    ];
    let all = all.map(|(name, colour)| format!("--{name}:{};", css(colour)));
    format!(":root{{{}}}\n", all.concat())
}

/// Whether a drawing can be left out: there is no paper that it fits on.
fn fits<T>(made: Result<T, LayoutError>) -> Result<Option<T>, StanceError> {
    match made {
        Ok(made) => Ok(Some(made)),
        Err(LayoutError::TooSmall(_) | LayoutError::Scale { .. }) => Ok(None),
        Err(LayoutError::Stance(error)) => Err(error),
    }
}

/// True for what begins a chapter.
const fn is_heading(block: &Block) -> bool {
    matches!(block, Block::Heading(_))
}
