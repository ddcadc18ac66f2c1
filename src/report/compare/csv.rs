//! How is a comparison written for a spreadsheet?
//!
//! Comma-separated, one row a combination, as RFC 4180 has it. Lengths are in metres, rounded
//! against the vehicle; what is not known, and what has no price, is empty, never 0. What is needed
//! and has no price stands in `price_open`, what is not known to be needed in `price_not_known`. The
//! day that ages are counted to is empty where nothing that is said hangs on it.

use super::words::{broken, named, percent_up, slab};
use super::{Comparison, json};
use crate::bayfile::options::{List, Work};
use crate::choose::bill::Line;
use crate::choose::{Arms, Cell, Outcome};
use crate::report::not_measured::names;

const HEAD: [&str; 32] = [
    "garage",
    "change",
    "lift",
    "vehicle",
    "outcome",
    "highest_safe_lock",
    "highest_clear_lock",
    "locks",
    "underbody_m",
    "full_rise",
    "arms",
    "load_use_percent",
    "slab",
    "walking_m",
    "price_lift",
    "price_freight",
    "price_pad",
    "price_anchors",
    "price_electrics",
    "price_door",
    "price_other",
    "price_known",
    "price_in_all",
    "price_open",
    "full_rise_ceiling_m",
    "full_rise_roof_m",
    "limited_by",
    "price_not_known",
    "not_measured",
    "ages_counted_to",
    "input_fingerprint",
    "program",
];

/// The whole file, ending with a line break.
#[must_use]
pub fn csv(comparison: &Comparison<'_>) -> String {
    let mut out = HEAD.join(",");
    out.push('\n');
    for cell in comparison.shown {
        let row = row(comparison, cell).map(|field| quoted(&field));
        out.push_str(&row.join(","));
        out.push('\n');
    }
    out
}

/// A field, in quotes where it must be. A text that a spreadsheet would take for a formula is led
/// by a quote mark.
fn quoted(field: &str) -> String {
    let is_number = field.parse::<f64>().is_ok();
    let field = if !is_number && field.starts_with(['=', '+', '-', '@']) {
        format!("'{field}")
    } else {
        field.to_owned()
    };
    if field.contains([',', '"', '\n', '\r']) {
        format!("\"{}\"", field.replace('"', "\"\""))
    } else {
        field
    }
}

fn maybe<T: ToString>(value: Option<T>) -> String {
    value.map_or_else(String::new, |value| value.to_string())
}

fn row(comparison: &Comparison<'_>, cell: &Cell) -> [String; 32] {
    let options = comparison.options;
    let name = |list| named(options, cell.pick, list).unwrap_or_default();
    let mut row = std::array::from_fn(|_| String::new());
    row[0] = name(List::Garages);
    row[1] = name(List::Changes);
    row[2] = name(List::Lifts);
    row[3] = name(List::Vehicles);
    // In each row, so that one sorted out of the file still says what it is from.
    row[29] = maybe(comparison.day.counts.then_some(comparison.day.on));
    row[30] = comparison.fingerprint.to_owned();
    row[31] = concat!("bayrise ", env!("CARGO_PKG_VERSION")).to_owned();
    let found = match &cell.outcome {
        Outcome::Found(found) => found,
        Outcome::Broken(faults) => {
            row[4] = "broken".into();
            row[26] = broken(faults);
            return row;
        }
        Outcome::NotStudied(why) => {
            row[4] = "not studied".into();
            row[26].clone_from(why);
            return row;
        }
    };
    let verdict = &found.verdict;
    row[4] = "studied".into();
    row[5] = maybe(verdict.highest_safe_lock);
    row[6] = maybe(verdict.highest_clear_lock);
    row[7] = verdict.locks.len().to_string();
    row[8] = maybe(found.underbody_m().and_then(json::down));
    row[9] = verdict.full_rise.to_string();
    row[10] = match found.arms() {
        Arms::Reach => "reach",
        Arms::Short(_) => "short",
        Arms::Stopped => "stop",
        Arms::NotKnown => "not known",
    }
    .into();
    row[11] = maybe(found.load_use().map(percent_up));
    row[12] = slab(&found.slab()).to_lowercase();
    row[13] = maybe(found.walking().and_then(|way| json::down(way.width_m)));
    let bill = &found.bill;
    if !bill.is_unasked {
        for (place, work) in (14..21).zip(Work::ALL) {
            if let Line::Priced(amount) = bill.of(work) {
                row[place] = amount.number().to_string();
            }
        }
        row[21] = bill.known().number().to_string();
        row[22] = maybe(bill.total().map(|total| total.number()));
        let open = |which: Line| {
            let of = bill.open().filter(|(_, line)| *line == which);
            let names: Vec<&str> = of.map(|(work, _)| work.field()).collect();
            names.join(" ")
        };
        row[23] = open(Line::Missing);
        row[27] = open(Line::NotKnown);
    }
    if let Some(inverse) = &found.inverse {
        row[24] = maybe(inverse.full_rise_ceiling_m().and_then(json::up));
        row[25] = maybe(inverse.full_rise_roof_m().and_then(json::down));
    }
    row[26] = super::words::limited_by(found);
    row[28] = names(verdict.not_measured()).join("; ");
    row
}

#[cfg(test)]
mod tests {
    use super::quoted;

    #[test]
    fn fields_are_quoted_where_they_must_be() {
        assert_eq!(quoted("plain"), "plain");
        assert_eq!(quoted("a, b"), "\"a, b\"");
        assert_eq!(quoted("12\" wide"), "\"12\"\" wide\"");
        assert_eq!(quoted("=1+1"), "'=1+1");
        assert_eq!(quoted("-1.5"), "-1.5");
    }
}
