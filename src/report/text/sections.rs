//! What do loads, slab, anchors, doors and power say?

use super::page::{Cell, Page, Tone};
use super::{Report, show};
use crate::ground::{Figure, Section, Standing};
use crate::report::Show;
use crate::report::section::{asked, found, remark, said};
use crate::report::words::{plain, sentence};

pub(super) fn write(report: &Report<'_>, page: &mut Page) {
    let show = show(report);
    for section in &report.study.sections {
        one(section, show, page);
    }
}

fn one(section: &Section, show: Show, page: &mut Page) {
    page.heading(section.topic.heading());
    let tone = tone(section.standing());
    page.para_toned(&said(&section.lead, show), tone);
    if let Some(who) = section.governs {
        page.para_toned(&format!("Screening, not a design: {who}."), Tone::Quiet);
    }
    let rows: Vec<[Cell; 4]> = section
        .figures
        .iter()
        .map(|figure| row(figure, show))
        .collect();
    if !rows.is_empty() {
        page.table(["", "found", "asked", "stands, and by which source"], &rows);
    }
    for figure in &section.figures {
        let remark = remark(figure, show);
        if !remark.is_empty() {
            page.item(&format!("{}: {remark}.", sentence(&plain(&figure.what))));
        }
    }
    for note in &section.notes {
        page.item(&said(note, show));
    }
}

fn row(figure: &Figure, show: Show) -> [Cell; 4] {
    let words = figure.standing.words();
    let last = match &figure.source {
        Some(source) if words.is_empty() => plain(source),
        Some(source) => format!("{words} ({})", plain(source)),
        None => words.into(),
    };
    [
        plain(&figure.what).into(),
        found(figure, show).into(),
        asked(figure, show).into(),
        Cell::toned(last, tone(figure.standing)),
    ]
}

const fn tone(standing: Standing) -> Tone {
    match standing {
        Standing::Noted => Tone::Plain,
        Standing::Passes => Tone::Good,
        Standing::Unknown => Tone::Poor,
        Standing::Stops => Tone::Bad,
    }
}
