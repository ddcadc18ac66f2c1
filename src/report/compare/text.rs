//! How is a comparison set on a page?

use super::Comparison;
use super::says::says;
use super::words::{
    arms, candidate, cost, limited_by, line, load, lock, named, show, slab, underbody, vehicle,
    walking,
};
use crate::bayfile::options::{List, Pick, Work};
use crate::choose::inverse::{FARTHEST_M, Inverse};
use crate::choose::{Cell as Combination, Found, Outcome};
use crate::report::CAUTIONS;
use crate::report::text::Look;
use crate::report::text::page::{Cell, Page, Tone};
use crate::report::words::{count, plain};

/// The most tables of the answers the other way round, lock by lock.
const LOCK_BY_LOCK: usize = 4;

/// The whole page, ending with a line break.
#[must_use]
pub fn render(comparison: &Comparison<'_>, look: Look) -> String {
    let mut page = Page::new(look);
    let options = comparison.options;
    page.para_toned(&plain(&options.title), Tone::Strong);
    page.para_toned(&counted(comparison), Tone::Quiet);
    page.gap();
    page.para(&says(options, comparison.matrix));
    table(comparison, &mut page);
    costs(comparison, &mut page);
    inverse(comparison, &mut page);
    broken(comparison, &mut page);
    page.heading("Caution");
    for caution in CAUTIONS {
        page.item(caution);
    }
    page.gap();
    page.para_toned(
        &format!(
            "Bayrise {}, input {}",
            env!("CARGO_PKG_VERSION"),
            comparison.fingerprint
        ),
        Tone::Quiet,
    );
    page.finish()
}

fn counted(comparison: &Comparison<'_>) -> String {
    let options = comparison.options;
    let lists = [
        (options.lifts.len(), "lift"),
        (options.vehicles.len(), "vehicle"),
        (options.changes.len(), "change"),
        (options.garages.len(), "garage"),
    ];
    let words: Vec<String> = lists
        .into_iter()
        .filter(|(n, what)| *n > 1 || matches!(*what, "lift" | "vehicle"))
        .map(|(n, what)| count(n, what))
        .collect();
    let all = comparison.matrix.cells.len();
    let shown = comparison.shown.len();
    let mut text = words.join(" x ");
    if shown < all {
        text.push_str(&format!("; {shown} of {all} are shown"));
    }
    text
}

/// The headings of garage and change, each where it changes.
fn heading(comparison: &Comparison<'_>, pick: Pick) -> String {
    let words: Vec<String> = [List::Garages, List::Changes]
        .into_iter()
        .filter_map(|list| named(comparison.options, pick, list))
        .collect();
    if words.is_empty() {
        "Side by side".into()
    } else {
        words.join(", ")
    }
}

const HEAD: [&str; 11] = [
    "lift",
    "vehicle",
    "safe lock",
    "under it",
    "full",
    "arms",
    "load",
    "slab",
    "way",
    "cost",
    "limited by",
];

fn table(comparison: &Comparison<'_>, page: &mut Page) {
    let by_heading = comparison
        .shown
        .chunk_by(|a, b| (a.pick.garage, a.pick.change) == (b.pick.garage, b.pick.change));
    for cells in by_heading {
        page.heading(&heading(comparison, cells[0].pick));
        let rows: Vec<[Cell; 11]> = cells.iter().map(|cell| row(comparison, cell)).collect();
        page.table(HEAD, &rows);
    }
    if comparison.shown.is_empty() {
        page.gap();
        page.para("Nothing is left to show.");
        return;
    }
    page.gap();
    page.para_toned(
        "under it: height under the body on the highest safe lock. load: the largest share of a \
         rating that is used, the lift's or an arm's. way: the wider way along the vehicle on its \
         tyres, worst case.",
        Tone::Quiet,
    );
}

fn row(comparison: &Comparison<'_>, cell: &Combination) -> [Cell; 11] {
    let options = comparison.options;
    let lift = named(options, cell.pick, List::Lifts);
    let vehicle = vehicle(options, cell.pick);
    let found = match &cell.outcome {
        Outcome::Found(found) => found,
        Outcome::Broken(_) | Outcome::NotStudied(_) => {
            let why = match &cell.outcome {
                Outcome::NotStudied(why) => plain(why),
                _ => "its options have faults, see below".into(),
            };
            let blank = || Cell::from("");
            return [
                lift.unwrap_or_default().into(),
                vehicle.into(),
                Cell::toned("no answer", Tone::Bad),
                blank(),
                blank(),
                blank(),
                blank(),
                blank(),
                blank(),
                blank(),
                why.into(),
            ];
        }
    };
    let safe = found.verdict.highest_safe_lock.is_some();
    [
        lift.unwrap_or_else(|| plain(&found.bay.lift.name)).into(),
        vehicle.into(),
        Cell::toned(lock(found), if safe { Tone::Good } else { Tone::Bad }),
        underbody(found).into(),
        if found.verdict.full_rise { "yes" } else { "no" }.into(),
        arms(found).into(),
        load(found).into(),
        slab(&found.slab()).into(),
        walking(found).into(),
        cost(&found.bill, &options.currency).into(),
        limited_by(found).into(),
    ]
}

fn costs(comparison: &Comparison<'_>, page: &mut Page) {
    let options = comparison.options;
    let mut rows: Vec<[String; 9]> = Vec::new();
    for cell in comparison.shown {
        let Some(found) = cell.found().filter(|found| !found.bill.is_unasked) else {
            continue;
        };
        let bill = &found.bill;
        let works = Work::ALL.map(|work| line(bill, work, &options.currency));
        let [lift, freight, pad, anchors, electrics, door, other] = works;
        let row = [
            candidate(options, cell.pick),
            lift,
            freight,
            pad,
            anchors,
            electrics,
            door,
            other,
            cost(bill, &options.currency),
        ];
        if !rows.contains(&row) {
            rows.push(row);
        }
    }
    if rows.is_empty() {
        return;
    }
    page.heading("What it costs");
    let head = [
        "",
        "lift",
        "freight",
        "pad",
        "anchors",
        "electrics",
        "door",
        "other",
        "in all",
    ];
    let rows: Vec<[Cell; 9]> = rows.into_iter().map(|row| row.map(Cell::from)).collect();
    page.table(head, &rows);
    page.gap();
    page.para_toned(
        "missing: needed, and nobody has said what it costs. not known: whether it is needed is not \
         known. -: not needed. A pad is needed where the slab is thinner or weaker than is asked, or a \
         joint or crack lies too near; whether it is needed is not known while something about the \
         anchors, the slab under the plates, its edges or what lies in it stops or is not shown that \
         thicker concrete might cure. + ?: more than this.",
        Tone::Quiet,
    );
}

fn inverse(comparison: &Comparison<'_>, page: &mut Page) {
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
    page.para(
        "The least flat ceiling under which a lock is clear and the columns stand, with everything \
         that hangs in the room where it is; and the tallest vehicle of this shape, roof over the \
         highest lift point. Clearance alone: arms, loads and slab are judged above.",
    );
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
        .filter(|(_, _, inverse)| {
            inverse.whatever_ceiling.withheld || inverse.whatever_roof.withheld
        })
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
        page.para(&format!(
            "Neither makes a lock safe by itself, as the vehicle can't be driven in or is tight as \
             parked all the same: {}.",
            open.join("; ")
        ));
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
        let rows: Vec<[String; 3]> = found
            .verdict
            .locks
            .iter()
            .zip(inverse.ceiling_m.iter().zip(&inverse.roof_m))
            .map(|(lock, (least, tallest))| {
                [
                    lock.lock.to_string(),
                    ceiling(found, inverse, *least),
                    roof(found, inverse, *tallest),
                ]
            })
            .collect();
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
        page.table(["lock", "least flat ceiling", "tallest roof"], &rows);
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

fn broken(comparison: &Comparison<'_>, page: &mut Page) {
    let faults = comparison.matrix.faults();
    if faults.is_empty() {
        return;
    }
    page.heading("Faults in the options");
    for fault in faults {
        let mut text = plain(&fault.to_string());
        if let Some(help) = &fault.help {
            text = format!("{text}; {}", plain(help));
        }
        page.item(&text);
    }
}
