//! How are the pads set?

use super::Piece;
use crate::bay::{Bay, UnitSystem};
use crate::clearance::Study;
use crate::drawing::palette::paper::{INK, WARN};
use crate::ground::{Figure, Part, Quantity, Said, Standing, Topic};
use crate::report::Sayings;
use crate::units::{Length, Rounding, both};

/// The figures of the section on arms that tell how the pads are set, and how level the body
/// stands on them.
fn figures(study: &Study) -> (Vec<&Figure>, Option<&Figure>) {
    let all: Vec<&Figure> = study
        .sections
        .iter()
        .filter(|section| section.topic == Topic::Reach)
        .flat_map(|section| &section.figures)
        .filter(|figure| figure.id.starts_with("pads.") && figure.id != "pads.room")
        .collect();
    let level = all.iter().find(|figure| figure.id == "pads.level").copied();
    let sets = all.into_iter().filter(|figure| figure.id != "pads.level");
    (sets.collect(), level)
}

const fn is_settled(figure: &Figure) -> bool {
    matches!(figure.standing, Standing::Passes | Standing::Noted)
}

fn raised(figure: &Figure, units: UnitSystem) -> String {
    match figure.found {
        Some(Quantity::Length(metres)) => both(Length::metres(metres), units, Rounding::Nearest),
        _ => "NOT KNOWN".into(),
    }
}

/// A sentence with its lengths in both systems.
fn in_both(said: &Said, bay: &Bay, study: &Study) -> String {
    let parts = said.0.iter().map(|part| match part {
        Part::Quantity(Quantity::Length(metres), rounding) => {
            both(Length::metres(*metres), bay.units, *rounding)
        }
        other => Sayings::of(bay, study).of_section(&Said(vec![other.clone()])),
    });
    parts.collect()
}

fn how(figure: &Figure, bay: &Bay, study: &Study) -> String {
    let note = figure.note.as_ref();
    let note = note.map_or_else(String::new, |note| in_both(note, bay, study));
    match (is_settled(figure), note.is_empty()) {
        (true, _) => note,
        (false, true) => "NOT SETTLED, see the report".into(),
        (false, false) => format!("NOT SETTLED, see the report: {note}"),
    }
}

/// One line for all four pads, or a table of them.
pub(super) fn pieces(bay: &Bay, study: &Study) -> Vec<Piece> {
    let label = "Pads and adapters";
    let (sets, level) = figures(study);
    let colour = |settled: bool| if settled { INK } else { WARN };
    let level = level.map_or_else(String::new, |figure| {
        let much = match figure.found {
            Some(Quantity::Length(metres)) if metres <= 0.0 => "the body stands level".into(),
            Some(Quantity::Length(metres)) => format!(
                "the body stands {} out of level",
                both(Length::metres(metres), bay.units, Rounding::Up)
            ),
            _ => "how level the body stands is NOT KNOWN".into(),
        };
        let note = how(figure, bay, study);
        if note.is_empty() {
            much
        } else {
            format!("{much} ({note})")
        }
    });
    match sets.as_slice() {
        [] => vec![Piece::Labelled(
            label.into(),
            "NOT KNOWN: see the report".into(),
            WARN,
        )],
        [one] => {
            let how = how(one, bay, study);
            let how = if how.is_empty() {
                how
            } else {
                format!(": {how}")
            };
            let text = format!(
                "all four raised {}{how}. So {level}.",
                raised(one, bay.units)
            );
            vec![Piece::Labelled(label.into(), text, colour(is_settled(one)))]
        }
        several => {
            let text = format!("each as below, seen from the door. So {level}.");
            let mut pieces = vec![Piece::labelled(label, text)];
            let row = |cells: [String; 3], colour, is_head| Piece::Row {
                cells: cells.into_iter().zip([1.2, 1.4, 4.0]).collect(),
                least_mm: 0.0,
                size: 3.0,
                colour,
                is_head,
            };
            let titles = ["pad", "raised", "with"].map(str::to_owned);
            pieces.push(row(titles, INK, true));
            for figure in several {
                let which = figure.what.trim_end_matches(" pad raised").to_owned();
                let cells = [which, raised(figure, bay.units), how(figure, bay, study)];
                pieces.push(row(cells, colour(is_settled(figure)), false));
            }
            pieces.push(Piece::Gap(1.5));
            pieces
        }
    }
}

/// In a few words for a table, and whether all of it is settled.
pub(super) fn in_short(bay: &Bay, study: &Study) -> (String, bool) {
    let (sets, _) = figures(study);
    let settled = !sets.is_empty() && sets.iter().all(|one| is_settled(one));
    let text = match sets.as_slice() {
        [] => "pads NOT KNOWN".into(),
        [one] => format!("all four pads raised {}", raised(one, bay.units)),
        several => {
            let each: Vec<String> = several
                .iter()
                .map(|one| {
                    let which = one.what.trim_end_matches(" pad raised");
                    format!("{which} {}", raised(one, bay.units))
                })
                .collect();
            format!("pads raised: {}", each.join(", "))
        }
    };
    if settled {
        (text, true)
    } else {
        (format!("{text}, NOT SETTLED"), false)
    }
}
