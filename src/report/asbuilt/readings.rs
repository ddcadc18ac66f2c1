//! The readings one by one: how each goes with the others, and what it should be after moving.

use super::AsBuiltReport;
use crate::asbuilt::{Planned, State};
use crate::report::counted;
use crate::report::text::page::{Cell, Page, Tone};

pub(super) fn write(report: &AsBuiltReport<'_>, page: &mut Page) {
    page.heading("Readings");
    let built = report.built;
    let quality = match built.unit {
        None => "Not one reading more than the posts need: nothing checks them.".to_owned(),
        Some(unit) => format!(
            "{} more than the posts need. They go together {} ({unit:.2} of it).",
            counted(built.spare, "reading"),
            if unit <= 1.0 {
                "as well as their stated \u{b1} or better"
            } else if built.scatters() {
                "so much less well than their stated \u{b1} that it is no chance"
            } else {
                "less well than their stated \u{b1}, and every \u{b1} here is as much wider"
            }
        ),
    };
    page.para(&quality);
    let after = report.after_moves();
    let rows: Vec<[Cell; 6]> = built
        .readings
        .iter()
        .zip(&report.measured.tape)
        .enumerate()
        .map(|(i, (one, taken))| {
            let off = one.reading_m - one.fitted_m;
            let sign = if off < 0.0 { "-" } else { "+" };
            let off = match report.length(off) {
                zero if zero.starts_with("0 ") => zero,
                some => format!("{sign}{some}"),
            };
            let (state, tone) = match one.state {
                State::Fits if one.again => ("fits, read again", Tone::Plain),
                State::Fits => ("fits", Tone::Plain),
                State::Unchecked => ("not checked", Tone::Poor),
                State::Misfit => ("does not fit", Tone::Bad),
                State::Suspect => ("or this one", Tone::Bad),
                State::Differs => ("read again, differs", Tone::Bad),
            };
            let then = after.as_ref().and_then(|after| after.get(i));
            [
                Planned::says(taken.over).into(),
                report.length(one.reading_m).into(),
                off.into(),
                one.standardised
                    .map_or_else(|| "-".to_owned(), |w| format!("{:.1}", w.abs()))
                    .into(),
                then.map_or_else(|| "-".to_owned(), |then| report.length(*then))
                    .into(),
                Cell::toned(state, tone),
            ]
        })
        .collect();
    page.table(
        [
            "Tape",
            "Read",
            "Off the fit",
            "Test",
            "After moving",
            "Says",
        ],
        &rows,
    );
    page.para(
        "Test: how many of its own standard deviations a reading is off what the others make of it; \
         over 3.3 is no chance. After moving: what the tape should show once the posts are moved as told \
         above; read it again and compare. The same tape read again counts once: it does not check \
         itself.",
    );
}
