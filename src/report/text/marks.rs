//! Where is the column to be marked, and when do pads touch and tyres leave?

use super::page::Page;
use super::{Report, show};
use crate::bay::Corner;
use crate::report::names::the;
use crate::report::words::{list, met_before_the_bar};

pub(super) fn write(report: &Report<'_>, page: &mut Page) {
    marks(report, page);
    phases(report, page);
}

fn marks(report: &Report<'_>, page: &mut Page) {
    let study = report.study;
    let show = show(report);
    let Some(marks) = study.marks else { return };
    page.heading(&format!("Marks on the column for lock {}", marks.lock));
    if study.highest_safe_lock.is_none() {
        page.para("The lock is clear but not called safe: don't set these marks yet.");
    }
    page.entry(
        "Stop",
        &format!(
            "{} (at {} of travel)",
            show.stop_mark(marks.stop_m, marks.never_above_m),
            show.place(marks.stop_travel_m)
        ),
    );
    let never = marks.never_above_m.map_or_else(
        || "nothing is met within the carriage's travel".into(),
        |m| show.ceiling_mark(m),
    );
    page.entry("Never above", &never);
    let to_do = if study.highest_safe_lock.is_some() {
        " Mark both columns, and stop when the lower carriage is at its mark."
    } else {
        ""
    };
    page.para(&format!(
        "Both are measured from the top of the base plate to the carriage's marked edge, with no \
         shims under the plate.{to_do}"
    ));
}

fn phases(report: &Report<'_>, page: &mut Page) {
    let study = report.study;
    let show = show(report);
    let phases = study.phases;
    page.heading("On the way up (carriage travel)");
    let touch = Corner::ALL.map(|c| show.place(phases.touch_m[c.index()]));
    let touch = if touch.iter().all(|one| *one == touch[0]) {
        format!("all four at {}", touch[0])
    } else {
        let each = Corner::ALL.map(|c| format!("{} {}", c.name(), touch[c.index()]));
        list(&each)
    };
    page.entry("Pads meet their lift points", &touch);
    page.entry(
        "All four pads carry",
        &format!(
            "{}, in the worst case {}",
            show.place(phases.carry_m),
            show.need(phases.carry_worst_m)
        ),
    );
    page.entry(
        "Tyres leave the floor",
        &format!(
            "front {}, rear {}",
            show.place(phases.lift_off_m[0]),
            show.place(phases.lift_off_m[1])
        ),
    );
    if let Some(text) = shut_off_bar(report) {
        page.entry("Shut-off bar", &text);
    }
    rating(report, page);
}

/// Where the vehicle trips the shut-off bar, and what it meets before; none without a bar.
pub(in crate::report) fn shut_off_bar(report: &Report<'_>) -> Option<String> {
    let bar = report.study.bar.as_ref()?;
    let show = show(report);
    let by = bar.by.as_deref().map_or_else(|| "the vehicle".into(), the);
    let mut text = bar.trips_at_m.map_or_else(
        || "not met within the carriage's travel".into(),
        |m| format!("{by} trips it at {}", show.room(m)),
    );
    if let Some((moving, fixed)) = &bar.met_before {
        let moving = if bar.trips_at_m.is_some() && bar.by.as_ref() == Some(moving) {
            "it".into()
        } else {
            the(moving)
        };
        let fixed = the(fixed);
        text.push_str(&met_before_the_bar(&moving, &fixed, bar.is_surely_before));
    }
    Some(text)
}

fn rating(report: &Report<'_>, page: &mut Page) {
    let study = report.study;
    let show = show(report);
    let rating = study.rating;
    let mass = rating
        .mass_kg
        .map_or_else(|| "not known".into(), |kg| show.load(kg));
    page.entry(
        "Vehicle's mass and the lift's rating",
        &format!("{mass}, rated {}", show.capacity(rating.capacity_kg)),
    );
    if let Some((corner, gap)) = study.loose_pad {
        page.entry(
            "Loosest pad",
            &format!("{}, {} below its lift point", corner.name(), show.need(gap)),
        );
    }
}
