//! How is a comparison set on a page?

use super::says::says;
use super::words::{
    arms, candidate, cost, limited_by, load, lock, named, slab, underbody, vehicle, walking,
};
use super::{Comparison, costs, turned};
use crate::bayfile::options::{List, Pick};
use crate::choose::{Cell as Combination, Outcome};
use crate::report::not_measured::names;
use crate::report::text::page::{Cell, Page, Tone};
use crate::report::text::{Look, day};
use crate::report::words::{count, plain};
use crate::report::{AS_FILED, CAUTIONS};

/// The whole page, ending with a line break.
#[must_use]
pub fn render(comparison: &Comparison<'_>, look: Look) -> String {
    let mut page = Page::new(look);
    let options = comparison.options;
    page.para_toned(&plain(&options.title), Tone::Strong);
    page.para_toned(&counted(comparison), Tone::Quiet);
    day::of(Some(comparison.day), &mut page);
    page.gap();
    page.para(&says(options, comparison.matrix));
    table(comparison, &mut page);
    unmeasured(comparison, &mut page);
    costs::set(comparison, &mut page);
    turned::set(comparison, &mut page);
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
         rating that is used, the lift's, an arm's or a post's. way: the wider way along the vehicle on its \
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

fn unmeasured(comparison: &Comparison<'_>, page: &mut Page) {
    let mut all: Vec<(Vec<String>, Vec<String>)> = Vec::new();
    for cell in comparison.shown {
        let what = cell.found().map(|found| found.verdict.not_measured());
        let what = names(what.unwrap_or_default());
        if what.is_empty() {
            continue;
        }
        let options = comparison.options;
        let name = format!(
            "{}, {}",
            candidate(options, cell.pick),
            vehicle(options, cell.pick)
        );
        match all.iter_mut().find(|(_, known)| *known == what) {
            Some((of, _)) => of.push(name),
            None => all.push((vec![name], what)),
        }
    }
    if all.is_empty() {
        return;
    }
    page.heading("Not measured");
    page.para_toned(AS_FILED, Tone::Bad);
    for (of, what) in all {
        page.para(&format!("{}:", of.join("; ")));
        for name in what {
            page.item(&name);
        }
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
