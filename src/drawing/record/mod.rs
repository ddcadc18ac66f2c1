//! The record of a lift: what is checked and written down when it is first used, and each year?
//!
//! Expected readings are those of the bay file; what was read is left blank. Torque and everything
//! else that the lift maker's manual governs is copied from it by hand, never printed here.

mod rise;
pub(in crate::drawing) mod stops;
#[cfg(test)]
mod tests;
mod yearly;

use crate::bay::{Bay, Tie};
use crate::clearance::Study;
use crate::ground::ForDay;
use crate::report::{CAUTIONS, Sayings, counted_to_in_line, not_measured, on_one_line};
use crate::units::{Rounding, both};

use super::ahead;
use super::flow::{self, Piece, TABLE};
use super::palette::Colour;
use super::palette::paper::{INK, WARN};
use super::sheet::{Frame, Paper, Sheet};

/// What a record is made of.
#[derive(Debug, Clone, Copy)]
pub struct Order<'a> {
    /// The bay.
    pub bay: &'a Bay,
    /// What was found.
    pub study: &'a Study,
    /// Sixteen hex digits that stand for the texts that went in.
    pub fingerprint: &'a str,
    /// The day that ages are counted to.
    pub day: ForDay,
    /// The paper.
    pub paper: Paper,
}

/// A page has more to say than the paper has room for; which.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct TooSmall(pub &'static str);

const COMMISSIONING: &str = "Commissioning record";
const YEARLY: &str = "Yearly log";

/// Type of the pages that are filled in; the smaller ones where they save a page.
const TIMES: [f64; 3] = [0.95, 0.93, 0.91];

/// The commissioning sheet and a page of the yearly log.
///
/// # Errors
/// [`TooSmall`] where a page has no room for what its frame says.
pub fn record(order: &Order<'_>) -> Result<Vec<Sheet>, TooSmall> {
    let count = pages(order, 0)?.len();
    pages(order, count)
}

fn pages(order: &Order<'_>, of: usize) -> Result<Vec<Sheet>, TooSmall> {
    let mut pages = Vec::new();
    let mut put = |name: &'static str, tag, pieces: &[Piece]| {
        let mut frame = frame(order, name, tag);
        frame.page = [pages.len() + 1, of];
        let made = TIMES.into_iter().filter_map(|times| {
            let made = flow::at(&frame, order.paper, pieces, times)?;
            Some((made.len(), made))
        });
        let fewest = made.min_by_key(|(count, _)| *count);
        let (_, made) = fewest.ok_or(TooSmall(name))?;
        pages.extend(made);
        Ok(())
    };
    put(
        COMMISSIONING,
        "RECORD",
        &ahead::on_top(order.day, commissioning(order)),
    )?;
    // A lift that can't be used here has no years to be inspected in.
    if stops::of_the_lift(order.bay, order.study).is_empty() {
        put(YEARLY, "YEARLY", &yearly::pieces())?;
    }
    Ok(pages)
}

fn frame(order: &Order<'_>, name: &str, tag: &'static str) -> Frame {
    let said = Sayings::of(order.bay, order.study);
    let mut warnings: Vec<String> = ahead::warning(order.day).into_iter().collect();
    if order.study.highest_safe_lock.is_none() {
        warnings.push("NO LOCK IS SAFE for the vehicle of this bay file: DO NOT RAISE IT.".into());
    }
    Frame {
        title: said.title(),
        name: name.into(),
        tag,
        page: [1, 1],
        warnings,
        notes: Vec::new(),
        made_by: format!(
            "Bayrise {} \u{b7} input {}{} \u{b7} {} \u{b7} paper {}",
            env!("CARGO_PKG_VERSION"),
            order.fingerprint,
            counted_to_in_line(order.day),
            said.vehicle_on_lift(),
            order.paper.name()
        ),
        cautions: CAUTIONS.join(" "),
    }
}

/// A row of a table.
fn row(cells: &[(&str, f64)], least_mm: f64, colour: Colour) -> Piece {
    let cells = cells.iter().map(|(says, share)| ((*says).into(), *share));
    Piece::Row {
        cells: cells.collect(),
        least_mm,
        size: TABLE,
        colour,
        is_head: false,
    }
}

/// The head of a table.
fn head(cells: &[(&str, f64)]) -> Piece {
    let cells = cells.iter().map(|(says, share)| ((*says).into(), *share));
    Piece::Row {
        cells: cells.collect(),
        least_mm: 0.0,
        size: TABLE,
        colour: INK,
        is_head: true,
    }
}

fn commissioning(order: &Order<'_>) -> Vec<Piece> {
    let mut pieces = Vec::new();
    pieces.push(Piece::says(
        "For the person who sets the lift up and the one who accepts it. Write what was read, not \
         what was hoped. One reading that is not accepted stops the work until it is cured. The \
         lift maker's manual goes before every line of this sheet.",
    ));
    pieces.push(Piece::fields(&[
        ("Serial number", 1.0),
        ("Manual, edition", 1.0),
    ]));
    let stopped = stops::of_the_lift(order.bay, order.study);
    if stopped.is_empty() {
        pieces.push(Piece::fields(&[("Set up by", 1.0), ("Date", 0.6)]));
        anchors(&mut pieces, order);
        standing(&mut pieces, order.bay);
        pieces.push(Piece::NextPage);
        rise::empty(&mut pieces, order);
        pieces.push(Piece::NextPage);
    } else {
        not_at_all(&mut pieces, order, stopped);
    }
    rise::loaded(&mut pieces, order);
    accepted(&mut pieces, order);
    pieces
}

/// In place of parts 1 to 3: there is nothing to be filled in for a lift that can't be used here.
fn not_at_all(pieces: &mut Vec<Piece>, order: &Order<'_>, stopped: Vec<String>) {
    pieces.push(Piece::Gap(2.0));
    pieces.push(Piece::Band(
        "NOT TO BE DRILLED, and no rise, empty or loaded".into(),
        6.0,
        WARN,
    ));
    let what = if stops::some_of_the_load(order) {
        "What stands below stops the lift in its place, some of it as this vehicle loads it"
    } else {
        "What stands below stops the lift in its place, whatever stands on it"
    };
    pieces.push(Piece::warns(format!(
        "{what}. Before that is cured, studied again and printed on a new sheet, parts 1 (anchors), 2 \
         (posts, level, latches) and 3 (full rise, empty) are NOT TO BE DONE, and have no lines here:"
    )));
    pieces.extend(stopped.into_iter().map(|why| Piece::Item(why, WARN)));
    if let Some(why) = stops::of_drilling(order) {
        pieces.push(Piece::Item(why, WARN));
    }
    if let Some(text) = not_measured(order.study.not_measured()) {
        pieces.push(Piece::warns(text));
    }
}

/// The signatures; none while there is nothing to accept.
fn accepted(pieces: &mut Vec<Piece>, order: &Order<'_>) {
    if order.study.highest_safe_lock.is_none() {
        pieces.push(Piece::Heading("6. Accepted".into()));
        pieces.push(Piece::Band(
            "NOT TO BE ACCEPTED, and nothing to sign, before part 4 was done".into(),
            4.6,
            WARN,
        ));
        return;
    }
    pieces.push(Piece::Heading("6. Accepted".into()));
    pieces.push(Piece::says(
        "By someone qualified to accept a lift here, where the local rules ask for one. A permit or \
         an inspection that is asked for is not replaced by this sheet.",
    ));
    for who in ["Set up by", "Inspected by", "Owner"] {
        pieces.push(Piece::fields(&[
            (who, 1.4),
            ("Signature", 1.2),
            ("Date", 0.7),
        ]));
    }
}

fn anchors(pieces: &mut Vec<Piece>, order: &Order<'_>) {
    let bay = order.bay;
    pieces.push(Piece::Heading("1. Anchors".into()));
    pieces.push(Piece::says(
        "Torque is the manual's for these anchors, copied here by hand: no other figure. First when \
         set, again after the first loaded raise (part 5).",
    ));
    pieces.push(Piece::fields(&[
        ("Torque, from the manual", 1.0),
        ("on its page", 0.5),
        ("wrench, calibrated on", 0.9),
    ]));
    if let Some(why) = stops::of_drilling(order) {
        pieces.push(Piece::warns(why));
        pieces.push(Piece::warns(
            "There are no lines for anchors here: settle that, study again, print a new sheet.",
        ));
        return;
    }
    let plate = &bay.lift.base_plate;
    let titles = [
        ("anchor", 0.8),
        ("hole clean, depth", 1.3),
        ("torque when set", 1.3),
        ("by", 0.7),
        ("torque again after the first load", 1.9),
        ("by", 0.7),
    ];
    let names: Vec<String> = if plate.anchors.is_empty() {
        // As many lines as a plate of common size has holes; the manual says how many.
        pieces.push(Piece::warns(
            "The bay file gives no anchor pattern: number them as the manual does, and take another \
             sheet where these lines don't do.",
        ));
        vec![String::new(); 10]
    } else {
        let numbers = 1..=plate.anchors.len();
        ["LH", "RH"]
            .iter()
            .flat_map(|side| numbers.clone().map(move |number| format!("{side}{number}")))
            .collect()
    };
    pieces.push(head(&titles));
    for name in &names {
        let mut cells = titles.map(|(_, share)| ("", share));
        cells[0].0 = name;
        pieces.push(row(&cells, 6.2, INK));
    }
}

fn standing(pieces: &mut Vec<Piece>, bay: &Bay) {
    pieces.push(Piece::Heading("2. Posts, level, latches".into()));
    let shares = [3.6, 1.0, 1.0, 0.7];
    let cells = |cells: [&'static str; 4]| -> Vec<(&'static str, f64)> {
        cells.into_iter().zip(shares).collect()
    };
    pieces.push(head(&cells([
        "what is checked",
        "left post",
        "right post",
        "by",
    ])));
    let mismatch = both(bay.lift.side_mismatch, bay.units, Rounding::Down);
    let tie = match bay.lift.tie {
        Tie::OverheadBeam { .. } => {
            "Overhead beam: bolted as in the manual; shut-off tried by hand"
        }
        Tie::FloorPlate { .. } => "Floor plate: lies flat, cables and hoses run free under it",
    };
    let level = format!(
        "Both carriages level with each other, on the floor and at the top: the study counts with \
         at most {mismatch}, the manual may ask for less"
    );
    // The study has the columns plumb; how far they may be off it is the manual's.
    let limit = bay.lift.plumb_limit.map_or_else(
        || "within the manual's limit".to_owned(),
        |limit| {
            let limit = both(limit, bay.units, Rounding::Down);
            format!("at most {limit} over the column's height")
        },
    );
    let plumb = ["across", "along"].map(|way| {
        format!(
            "Plumb {way} the bay, read twice, the level turned end for end: out by how much, over which \
             height; {limit} (the study counts none: with any, `bayrise asbuilt` first)"
        )
    });
    for what in [
        plumb[0].as_str(),
        plumb[1].as_str(),
        "Shims: height at each corner (the study counts none: with any, make it again)",
        tie,
        level.as_str(),
        "Latches drop in freely and let go, on both sides, at the lowest lock",
        "Arm restraints engage at every tooth, and let go on the floor only",
        "Pads, adapters, cables or chains, hoses: as in the manual, no leak",
        "Disconnect within reach; the raise stops when the button is let go",
    ] {
        pieces.push(row(
            &[
                (what, shares[0]),
                ("", shares[1]),
                ("", shares[2]),
                ("", shares[3]),
            ],
            6.4,
            INK,
        ));
    }
}

fn vehicle(order: &Order<'_>) -> String {
    on_one_line(&order.bay.vehicle.name)
}
