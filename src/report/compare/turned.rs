//! Which ceiling, and which vehicle, would each lock need? The answers the other way round in words.

use super::Comparison;
use super::words::{candidate, show, vehicle};
use crate::choose::inverse::{FARTHEST_M, Inverse, TOLERANCE_M};
use crate::choose::{Cell as Combination, Found};
use crate::report::text::page::{Cell, Page, Tone};

/// The most tables lock by lock on a page.
const LOCK_BY_LOCK: usize = 4;

/// What is answered.
const INTRO: &str = "The least flat ceiling under which a lock is clear and the columns stand, with \
     everything that hangs in the room where it is; and the tallest vehicle of this shape, roof over the \
     highest lift point.";

/// What it leaves open.
const NEITHER: &str = "Neither makes a lock safe by itself, as the vehicle can't be driven in or is \
     tight as parked all the same";

const HEAD: [&str; 3] = ["lock", "least flat ceiling", "tallest roof"];

/// Tables on the page; nothing where it was not asked for.
pub(super) fn set(comparison: &Comparison<'_>, page: &mut Page) {
    let options = comparison.options;
    let asked: Vec<(&Combination, &Found, &Inverse)> = comparison
        .shown
        .iter()
        .filter_map(|cell| {
            let found = cell.found()?;
            Some((*cell, found, found.inverse.as_ref()?))
        })
        .collect();
    if asked.is_empty() {
        return;
    }
    page.heading("The other way round");
    page.para(&format!(
        "{INTRO} Clearance alone: arms, loads and slab are judged above."
    ));
    let rows: Vec<[Cell; 5]> = asked
        .iter()
        .map(|(cell, found, inverse)| {
            let next = found.verdict.highest_clear_lock.unwrap_or(0) + 1;
            let is_there = next <= found.verdict.highest_releasable_lock.unwrap_or(0);
            let of_next = if is_there {
                format!(
                    "lock {next}: {} / {}",
                    ceiling(
                        found,
                        inverse,
                        inverse.ceiling_m.get(next - 1).copied().flatten()
                    ),
                    roof(
                        found,
                        inverse,
                        inverse.roof_m.get(next - 1).copied().flatten()
                    )
                )
            } else {
                "-".into()
            };
            [
                candidate(options, cell.pick).into(),
                vehicle(options, cell.pick).into(),
                ceiling(found, inverse, inverse.full_rise_ceiling_m()).into(),
                roof(found, inverse, inverse.full_rise_roof_m()).into(),
                of_next.into(),
            ]
        })
        .collect();
    page.table(
        [
            "",
            "vehicle",
            "full rise, ceiling",
            "full rise, roof",
            "next lock, ceiling / roof",
        ],
        &rows,
    );
    let open: Vec<String> = asked
        .iter()
        .filter(|(_, _, inverse)| is_withheld_anyway(inverse))
        .map(|(cell, ..)| {
            format!(
                "{}, {}",
                candidate(options, cell.pick),
                vehicle(options, cell.pick)
            )
        })
        .collect();
    if !open.is_empty() {
        page.gap();
        page.para(&format!("{NEITHER}: {}.", open.join("; ")));
    }
    lock_by_lock(comparison, &asked, page);
}

/// Lock by lock, those that are the same in one table; nothing where there would be too many.
fn lock_by_lock(
    comparison: &Comparison<'_>,
    asked: &[(&Combination, &Found, &Inverse)],
    page: &mut Page,
) {
    let mut tables: Vec<(Vec<String>, Vec<[String; 3]>)> = Vec::new();
    for (cell, found, inverse) in asked {
        let options = comparison.options;
        let name = format!(
            "{}, {}",
            candidate(options, cell.pick),
            vehicle(options, cell.pick)
        );
        let rows = of_each_lock(found, inverse);
        match tables.iter_mut().find(|(_, known)| *known == rows) {
            Some((names, _)) => names.push(name),
            None => tables.push((vec![name], rows)),
        }
    }
    if tables.len() > LOCK_BY_LOCK {
        page.gap();
        page.para_toned(
            "Lock by lock they stand in the JSON, or here with fewer rows (--filter).",
            Tone::Quiet,
        );
        return;
    }
    for (names, rows) in tables {
        page.heading("Lock by lock");
        page.para(&names.join("; "));
        let rows: Vec<[Cell; 3]> = rows.into_iter().map(|row| row.map(Cell::from)).collect();
        page.table(HEAD, &rows);
    }
}

/// Each lock, the least flat ceiling for it and the tallest roof.
fn of_each_lock(found: &Found, inverse: &Inverse) -> Vec<[String; 3]> {
    let answers = inverse.ceiling_m.iter().zip(&inverse.roof_m);
    let locks = found.verdict.locks.iter();
    locks
        .zip(answers)
        .map(|(lock, (least, tallest))| {
            [
                lock.lock.to_string(),
                ceiling(found, inverse, *least),
                roof(found, inverse, *tallest),
            ]
        })
        .collect()
}

/// Whether something in the room withholds every lock, whatever the ceiling, or whatever the roof.
const fn is_withheld_anyway(inverse: &Inverse) -> bool {
    inverse.whatever_ceiling.withheld || inverse.whatever_roof.withheld
}

/// The answers for one combination in words.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Turned {
    /// What is answered, and what that leaves open.
    pub says: Vec<String>,
    /// The headings of the rows.
    pub head: [&'static str; 3],
    /// First full rise, then each lock: its name, the least flat ceiling, the tallest roof.
    pub rows: Vec<[String; 3]>,
}

impl Turned {
    pub(super) fn of(found: &Found, inverse: &Inverse) -> Self {
        let mut says = vec![format!(
            "{INTRO} Each lies within {} mm of where it stops being so, on the side that holds. \
             Clearance alone: arms, loads and slab stand in the row.",
            TOLERANCE_M * 1e3
        )];
        if is_withheld_anyway(inverse) {
            says.push(format!("{NEITHER}."));
        }
        let mut rows = vec![[
            "full rise".to_owned(),
            ceiling(found, inverse, inverse.full_rise_ceiling_m()),
            roof(found, inverse, inverse.full_rise_roof_m()),
        ]];
        rows.extend(of_each_lock(found, inverse));
        Self {
            says,
            head: HEAD,
            rows,
        }
    }
}

fn ceiling(found: &Found, inverse: &Inverse, least_m: Option<f64>) -> String {
    match least_m {
        None if inverse.whatever_ceiling.does_not_stand => "no ceiling makes it stand".into(),
        None => "no ceiling does it".into(),
        Some(m) => show(found).need(m),
    }
}

fn roof(found: &Found, inverse: &Inverse, tallest_m: Option<f64>) -> String {
    match tallest_m {
        None if inverse.whatever_roof.does_not_stand => "no roof makes it stand".into(),
        None => "no roof does it".into(),
        Some(m) if m >= FARTHEST_M => "any".into(),
        Some(m) => show(found).room(m),
    }
}
