//! The bay seen square on, and the drawings to scale, as SVG in the page.

use std::fmt::Write as _;

use glam::DVec2;

use super::html::{BACK, escaped};
use super::{PageOrder, fits};
use crate::drawing::layout::{Order, drawings as sheets, seen};
use crate::drawing::outline::Look;
use crate::drawing::sheet::{Item, Paper, Sheet, View};
use crate::drawing::svg::svg;
use crate::solids::attitude::StanceError;

/// The width that a picture is drawn at, millimetres: its pens are chosen for paper.
const WIDE_MM: f64 = 160.0;
/// Room around a picture, millimetres.
const AROUND_MM: f64 = 2.0;

const fn order<'a>(page: &PageOrder<'a>, paper: Paper) -> Order<'a> {
    Order {
        bay: page.report.bay,
        study: page.report.study,
        fingerprint: page.report.fingerprint,
        day: page.day,
        paper,
        scale: None,
    }
}

/// From the side and from the door, each with what it shows.
pub(super) fn pictures(page: &PageOrder<'_>) -> Result<String, StanceError> {
    let mut out = String::from("<section id=\"pictures\"><h2>The bay, seen square on</h2>");
    for (number, (look, name)) in [
        (Look::Side, "From the right wall"),
        (Look::Front, "From the door"),
    ]
    .into_iter()
    .enumerate()
    {
        let order = order(page, Paper::usual(page.report.bay.units));
        let Some(shown) = fits(seen(&order, look))? else {
            continue;
        };
        let sheet = plain(&shown.view, name);
        let _ = write!(out, "<figure>{}<figcaption>", inline(&sheet, number));
        for warning in &shown.warnings {
            let _ = write!(out, "<strong class=\"bad\">{}</strong> ", escaped(warning));
        }
        let first = shown.notes.first().map_or("", String::as_str);
        // What follows is about the numbers of a drawing to scale.
        let first = first.split(" Heights from").next().unwrap_or(first);
        let _ = writeln!(out, "{}</figcaption></figure>", escaped(first));
    }
    out.push_str("</section>\n");
    Ok(out)
}

/// A picture without what is written around it.
fn plain(view: &View, name: &str) -> Sheet {
    let (low, high) = view.bounds_m();
    let size = (high - low).max(DVec2::splat(1e-3));
    let per_metre = WIDE_MM / size.x;
    let place = |point: DVec2| (point - low) * per_metre + AROUND_MM;
    Sheet {
        name: name.into(),
        tag: "SEEN",
        page_mm: size * per_metre + 2.0 * AROUND_MM,
        scale: 1000.0 / per_metre,
        origin_mm: place(DVec2::ZERO),
        items: view
            .items
            .iter()
            .map(|item| Item {
                layer: item.layer,
                shape: item.shape.mapped(&place, per_metre),
            })
            .collect(),
    }
}

/// The floor plan and the elevations, as they are printed.
pub(super) fn drawings(page: &PageOrder<'_>) -> Result<String, StanceError> {
    let mut out = String::from(
        "<section id=\"drawings\"><h2>Drawings to scale</h2><p>For looking at; printed with this page they \
         are NOT to scale. To print them to scale, and for each pull of the tape: <code>bayrise \
         layout</code>.</p>\n",
    );
    let usual = Paper::usual(page.report.bay.units);
    let mut made = fits(sheets(&order(page, usual)))?;
    if made.is_none() {
        made = fits(sheets(&order(page, Paper::A3)))?;
    }
    match made {
        Some(sheets) => {
            for (number, sheet) in sheets.iter().enumerate() {
                let _ = writeln!(
                    out,
                    "<figure class=\"sheet{3}\" id=\"sheet-{0}\"><p class=\"size\"><a class=\"larger\" \
                     href=\"#sheet-{0}\">Larger: {1}</a><span class=\"whole\">Scroll sideways to see all of \
                     it. <a href=\"#drawings\">Fit to the width again</a></span></p><div \
                     class=\"scroll\">{2}</div></figure>",
                    number + 1,
                    escaped(&sheet.name),
                    inline(sheet, number + 2),
                    if sheet.page_mm.y > sheet.page_mm.x {
                        " tall"
                    } else {
                        ""
                    }
                );
            }
        }
        None => out.push_str("<p class=\"poor\">There is more to say about this bay than a sheet of A3 has room for.</p>\n"),
    }
    out.push_str(BACK);
    out.push_str("</section>\n");
    Ok(out)
}

/// A sheet within the page: its letters keep apart from those of other sheets by their names. In
/// texts a quotation mark is never written as it is, so that nothing else is renamed.
fn inline(sheet: &Sheet, number: usize) -> String {
    svg(sheet)
        .replace("id=\"g", &format!("id=\"s{number}g"))
        .replace("href=\"#g", &format!("href=\"#s{number}g"))
}
