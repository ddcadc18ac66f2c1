//! What do the sections and the arrangements say?

use super::space::STUDY;
use super::{Item, State, Step};
use crate::ground::{Figure, Section, Standing, Topic, arrangements};
use crate::report::section::{asked, found, remark, said};
use crate::report::words::{plain, sentence};
use crate::report::{Report, Show};

pub(super) fn items(report: &Report<'_>) -> Vec<Item> {
    let (bay, study) = (report.bay, report.study);
    let show = Show { units: bay.units };
    let mut items = Vec::new();
    for topic in Topic::ALL {
        match study.sections.iter().find(|one| one.topic == topic) {
            Some(section) => of_section(section, show, &mut items),
            None if topic.decides() => items.push(Item {
                step: step(topic),
                section: Some(topic),
                state: State::Unknown,
                what: topic.heading().to_lowercase(),
                figure: NO_FIGURE.into(),
                source: STUDY.into(),
                to_do: "not looked at".into(),
            }),
            None => {}
        }
    }
    let heaviest = arrangements::heaviest_kg(bay);
    let column = arrangements::column_kg(bay);
    let mut add = |step: Step, figures: Vec<Figure>| {
        items.extend(figures.iter().map(|one| of_figure(step, one, show)));
    };
    add(Step::Permission, arrangements::permission(bay));
    add(Step::Power, arrangements::panel_space(bay));
    add(Step::Heaters, arrangements::heaters(bay, study));
    for figure in arrangements::gear(bay, heaviest, column) {
        let step = if figure.id == "unloading" {
            Step::Delivery
        } else {
            Step::Helpers
        };
        add(step, vec![figure]);
    }
    add(Step::Tools, arrangements::tools(bay));
    add(Step::Inspection, vec![arrangements::inspection(bay)]);
    items
}

/// Shown for what has no figure yet.
pub(super) const NO_FIGURE: &str = "no figure yet";

const fn step(topic: Topic) -> Step {
    match topic {
        Topic::Access => Step::Space,
        Topic::Reach | Topic::Loads => Step::Rise,
        Topic::PostBase | Topic::Slab | Topic::Anchors | Topic::Bearing => Step::Slab,
        Topic::Power => Step::Power,
        Topic::Delivery => Step::Delivery,
    }
}

/// A section's sentence, then each of its figures that is no go.
fn of_section(section: &Section, show: Show, items: &mut Vec<Item>) {
    let step = step(section.topic);
    items.push(Item {
        step,
        section: Some(section.topic),
        state: section.standing().into(),
        what: section.topic.heading().to_lowercase(),
        figure: said(&section.lead, show),
        source: source(section),
        to_do: String::new(),
    });
    items.extend(
        section
            .figures
            .iter()
            .filter(|one| matches!(one.standing, Standing::Unknown | Standing::Stops))
            .map(|one| of_figure(step, one, show))
            .map(|item| Item {
                section: Some(section.topic),
                source: if item.source.is_empty() {
                    source(section)
                } else {
                    item.source
                },
                ..item
            }),
    );
}

/// Where the figures of a section come from that name no source of their own.
fn source(section: &Section) -> String {
    match (section.governs, section.topic) {
        (Some(who), _) => format!("screening, not a design: {who}"),
        (None, Topic::Access) => format!("{STUDY}; what people need: common practice, no source"),
        (None, _) => STUDY.into(),
    }
}

pub(super) fn of_figure(step: Step, figure: &Figure, show: Show) -> Item {
    let (found, asked) = (found(figure, show), asked(figure, show));
    let figure_words = match (found.is_empty(), asked.is_empty()) {
        (true, true) => NO_FIGURE.into(),
        (true, false) => format!("asked: {asked}"),
        (false, true) => found,
        (false, false) => format!("{found}, {asked}"),
    };
    Item {
        step,
        section: None,
        state: figure.standing.into(),
        what: plain(&figure.what),
        figure: figure_words,
        source: figure.source.as_deref().map(plain).unwrap_or_default(),
        to_do: sentence(&remark(figure, show)),
    }
}
