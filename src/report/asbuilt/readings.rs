//! The readings one by one: how each goes with the others, and what it should be after moving.

use super::AsBuiltReport;
use crate::asbuilt::{Planned, State};
use crate::bay::UnitSystem;
use crate::report::counted;
use crate::report::text::page::{Cell, Page, Tone};
use crate::units::{Length, Rounding, feet_inches, millimetres};

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
    let rows: Vec<[Cell; 5]> = built
        .readings
        .iter()
        .zip(&report.measured.tape)
        .map(|(one, taken)| {
            let (state, tone) = match one.state {
                State::Fits if one.again => ("fits (again)", Tone::Plain),
                State::Fits => ("fits", Tone::Plain),
                State::Unchecked => ("not checked", Tone::Poor),
                State::Misfit => ("does not fit", Tone::Bad),
                State::Suspect => ("or this one", Tone::Bad),
                State::Differs => ("differs", Tone::Bad),
            };
            [
                Planned::says(taken.over).into(),
                report.length(one.reading_m).into(),
                report.off_the_fit(one.reading_m - one.fitted_m).into(),
                one.standardised
                    .map_or_else(|| "-".to_owned(), |w| format!("{:.1}", w.abs()))
                    .into(),
                Cell::toned(state, tone),
            ]
        })
        .collect();
    page.table(["Tape", "Read", "Off the fit", "Test", "Says"], &rows);
    page.para(
        "Test: how many of its own standard deviations a reading is off what the others make of it; \
         over 3.3 is no chance. The same tape read again counts once: it does not check itself; \
         \u{201c}differs\u{201d} says that it came out otherwise by more than its \u{b1}. What all tapes are \
         off alike, as by a bent hook, shows in none of them and is counted up to their \u{b1}; a tape that \
         is stretched is in no \u{b1}: hold it against another over the longest pull.",
    );
    after_moving(report, page);
}

/// What the tapes should show then, to read them again and compare.
fn after_moving(report: &AsBuiltReport<'_>, page: &mut Page) {
    let Some(after) = report.after_moves() else {
        return;
    };
    let tapes = report.built.readings.iter().zip(&report.measured.tape);
    let rows: Vec<[Cell; 3]> = tapes
        .zip(after)
        .map(|((one, taken), then)| {
            [
                Planned::says(taken.over).into(),
                report.length(one.reading_m).into(),
                report.length(then).into(),
            ]
        })
        .collect();
    page.para(
        "What the tapes should show once the posts are moved as told above; read them again:",
    );
    page.table(["Tape", "Read", "After moving"], &rows);
}

impl AsBuiltReport<'_> {
    /// How far a reading is off the fit, with its sign; in the file's own units, so that a row has room.
    fn off_the_fit(&self, off_m: f64) -> String {
        let size = Length::metres(off_m.abs());
        let says = match self.planned.units {
            UnitSystem::Imperial => feet_inches(size, 16, Rounding::Nearest),
            UnitSystem::Metric => millimetres(size, 0, Rounding::Nearest),
        };
        match says.split_once(' ') {
            Some(("0", _)) => says,
            _ if off_m < 0.0 => format!("-{says}"),
            _ => format!("+{says}"),
        }
    }
}
