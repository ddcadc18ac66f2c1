//! The page before buying, to print: the lines of `bayrise plan` on one sheet.

use super::palette::Colour;
use super::palette::paper::{FINE, INK, WARN};
use super::sheet::{Frame, Line, Paper, Sheet, prose};
use crate::report::plan::{Plan, State, blocks, summary};
use crate::report::{self, AS_FILED, CAUTIONS, Report, Sayings};

/// So many of what is not known of one section are named: the more the better.
const MOST_NAMED: [usize; 4] = [usize::MAX, 8, 4, 2];

/// The page; none where it doesn't fit on the paper in a type that can be read.
///
/// `on` is the day that ages are counted to.
#[must_use]
pub fn plan_page(report: &Report<'_>, plan: &Plan, paper: Paper) -> Option<Sheet> {
    let said = Sayings::of(report.bay, report.study);
    let ahead = report.day.and_then(report::holds_only_from);
    let ahead = ahead.map(|words| format!("{}.", words.to_uppercase()));
    let frame = Frame {
        title: said.title(),
        name: "Before you buy".into(),
        tag: "BEFORE",
        page: [1, 1],
        warnings: ahead
            .into_iter()
            .chain((!plan.is_go()).then(|| summary(plan)))
            .collect(),
        notes: if plan.is_go() {
            vec![summary(plan)]
        } else {
            Vec::new()
        },
        made_by: format!(
            "Bayrise {} \u{b7} input {}{} \u{b7} {} \u{b7} sources of the \
             sections' figures: bayrise check",
            env!("CARGO_PKG_VERSION"),
            report.fingerprint,
            report
                .day
                .map_or_else(String::new, report::counted_to_in_line),
            said.vehicle_on_lift(),
        ),
        cautions: CAUTIONS.join(" "),
    };
    // With the sources where they fit; else they are those of the report.
    [true, false].into_iter().find_map(|with_sources| {
        MOST_NAMED.into_iter().find_map(|most| {
            let mut all = not_measured(plan);
            all.extend(lines(plan, most, with_sources));
            prose(&frame, paper, &all)
        })
    })
}

/// What of the file is not measured, all of it.
fn not_measured(plan: &Plan) -> Vec<Line> {
    let says = report::not_measured(&plan.not_measured);
    let says = says.map(|says| Line::Marked {
        mark: (State::Unknown.word().into(), WARN),
        says: format!("{says} {AS_FILED}"),
    });
    says.into_iter().collect()
}

fn lines(plan: &Plan, most_named: usize, with_sources: bool) -> Vec<Line> {
    let mut lines = Vec::new();
    for block in blocks(plan, most_named) {
        lines.extend(block.heading.map(|heading| Line::Heading(heading.into())));
        lines.extend(block.lines.into_iter().map(|(state, says)| Line::Marked {
            mark: (state.word().into(), colour(state)),
            says,
        }));
        if with_sources && !block.sources.is_empty() {
            lines.push(Line::Marked {
                mark: ("from".into(), FINE),
                says: block.sources.join("; "),
            });
        }
    }
    lines
}

const fn colour(state: State) -> Colour {
    match state {
        State::Stop => WARN,
        State::Unknown | State::Go => INK,
        State::Noted => FINE,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bayfile::{self, presets::EmbeddedOnly};
    use crate::clearance::study;
    use crate::ground::{Date, ForDay};

    /// Every shipped scene, in the order of their names.
    fn scenes() -> Vec<(String, crate::bay::Bay)> {
        let folder = format!("{}/scenes", env!("CARGO_MANIFEST_DIR"));
        let mut found: Vec<_> = std::fs::read_dir(folder)
            .unwrap()
            .map(|entry| entry.unwrap().path())
            .filter(|path| path.extension().is_some_and(|ending| ending == "ron"))
            .map(|path| {
                let name = path.file_stem().unwrap().to_string_lossy().into_owned();
                let bytes = std::fs::read(&path).unwrap();
                let bay = bayfile::read(&name, &bytes, &EmbeddedOnly).unwrap().bay;
                (name, bay)
            })
            .collect();
        found.sort_by(|a, b| a.0.cmp(&b.0));
        assert!(found.len() >= 10);
        found
    }

    #[test]
    fn each_scene_fits_on_its_page_and_says_every_item() {
        for (name, bay) in scenes() {
            let study = study(&bay).unwrap();
            let report = Report {
                bay: &bay,
                study: &study,
                warnings: &[],
                needs: &[],
                fingerprint: "0123456789abcdef",
                day: Some(ForDay::settled(Date::constant(2026, 11, 28))),
            };
            let plan = Plan::new(&report);
            for paper in [Paper::Letter, Paper::A4] {
                let page = plan_page(&report, &plan, paper);
                let page = page.unwrap_or_else(|| panic!("{name}: no room on {}", paper.name()));
                let all: String = page.texts().map(|text| format!("{} ", text.says)).collect();
                for item in &plan.items {
                    // An unknown of a section may be counted instead of named.
                    if item.state != State::Unknown {
                        let word = item.what.split_whitespace().next().unwrap();
                        assert!(all.contains(word), "{name}: {}", item.what);
                    }
                }
                let stops = plan.count(State::Stop);
                let shown = page.texts().filter(|text| text.says == "STOP").count();
                assert_eq!(shown, stops, "{name}");
                // What the sections stand on is named too.
                let named = plan
                    .items
                    .iter()
                    .filter(|item| item.source.contains("ACI 318"));
                if named.count() > 0 {
                    assert!(all.contains("ACI 318"), "{name}: no sources");
                }
                // Nothing leaves the page, and no two lines lie on each other.
                let boxes: Vec<_> = page.texts().map(|text| text.bounds()).collect();
                for (index, (low, high)) in boxes.iter().enumerate() {
                    assert!(low.x > 0.0 && low.y > 0.0, "{name}");
                    assert!(high.x < page.page_mm.x && high.y < page.page_mm.y, "{name}");
                    for (other_low, other_high) in &boxes[index + 1..] {
                        let apart = high.x <= other_low.x
                            || other_high.x <= low.x
                            || high.y <= other_low.y + 1e-9
                            || other_high.y <= low.y + 1e-9;
                        assert!(apart, "{name}: two texts overlap");
                    }
                }
            }
        }
    }
}
