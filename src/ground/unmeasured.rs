//! What is left of a section while something of the file is not measured?
//!
//! Stops stay, since they would have to be cured anyway. Numbers stay, as those of the file as it
//! is. Nothing passes, and no sentence that was written for a measured bay is said.

use super::{Figure, Quantity, Said, Section, Standing};
use crate::clearance::Withheld;

/// Takes every pass out of the sections where the reasons to withhold say that something is not
/// measured.
pub(super) fn nothing_passes(withheld: &[Withheld], sections: &mut [Section]) {
    let count = withheld.iter().find_map(|one| match one {
        Withheld::NotMeasured { what } => Some(what.len()),
        _ => None,
    });
    let Some(count) = count else { return };
    for section in sections {
        section.figures.iter_mut().for_each(as_filed);
        section.lead = lead(&section.figures, count);
        section.notes.clear();
    }
}

/// A figure of the file as it is: no pass, and nothing in words but why it stops.
fn as_filed(figure: &mut Figure) {
    if figure.standing == Standing::Stops {
        return;
    }
    let is_in_words = matches!(figure.found, Some(Quantity::Words(_)));
    if is_in_words || figure.standing == Standing::Passes {
        figure.standing = Standing::Unknown;
        figure.cure = None;
    }
    if is_in_words {
        figure.found = None;
    }
    figure.note = None;
}

/// The sentence that comes first.
fn lead(figures: &[Figure], count: usize) -> Said {
    let what = match count {
        1 => String::from("one thing in the file is"),
        count => format!("{count} things in the file are"),
    };
    let not_known = format!("Not known while {what} NOT MEASURED; the figures are as filed");
    let stops = figures
        .iter()
        .filter(|figure| figure.standing == Standing::Stops)
        .map(Figure::why)
        .reduce(|said, more| said.and("; ").and_said(more));
    let Some(stops) = stops else {
        return Said::new(not_known + ".");
    };
    Said::new(not_known + ", and of these stop already: ")
        .and_said(stops)
        .and(".")
}
