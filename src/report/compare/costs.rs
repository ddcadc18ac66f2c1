//! What does each combination cost, line by line?

use super::Comparison;
use super::words::{candidate, cost, line};
use crate::bayfile::options::Work;
use crate::choose::Found;
use crate::report::text::page::{Cell, Page, Tone};

/// What the words of a line mean.
pub(super) const NOTE: &str = "missing: needed, and nobody has said what it costs. not known: whether it \
     is needed is not known. -: not needed. A pad is needed where the slab is thinner or weaker than is \
     asked, or a joint or crack lies too near; whether it is needed is not known while something about \
     the anchors, the slab under the plates, its edges or what lies in it stops or is not shown that \
     thicker concrete might cure. + ?: more than this.";

/// A table on the page; nothing where the file gives no price.
pub(super) fn set(comparison: &Comparison<'_>, page: &mut Page) {
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
    page.para_toned(NOTE, Tone::Quiet);
}

/// A combination's bill line by line, what it is for and how it stands, and the sum last; nothing
/// where the file gives no price.
pub(super) fn lines(found: &Found, currency: &str) -> Vec<[String; 2]> {
    if found.bill.is_unasked {
        return Vec::new();
    }
    let of = |work: Work| [work.field().to_owned(), line(&found.bill, work, currency)];
    let all = ["in all".to_owned(), cost(&found.bill, currency)];
    Work::ALL.into_iter().map(of).chain([all]).collect()
}
