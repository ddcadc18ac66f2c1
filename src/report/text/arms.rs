//! Does each arm reach its lift point?

use super::page::{Cell, Page, Tone};
use super::{Report, show};
use crate::clearance::ArmFinding;
use crate::report::Show;
use crate::report::words::plain;

pub(super) fn write(report: &Report<'_>, page: &mut Page) {
    let show = show(report);
    page.heading("Arms");
    let rows: Vec<[Cell; 4]> = report.study.arms.iter().map(|arm| row(arm, show)).collect();
    page.table(["arm", "reach asked", "swing", "reaches"], &rows);
}

fn row(arm: &ArmFinding, show: Show) -> [Cell; 4] {
    let why = arm
        .why
        .as_deref()
        .map_or_else(String::new, |w| format!(": {}", plain(w)));
    let reaches = if arm.shortfall_m > 0.0 {
        Cell::toned(
            format!(
                "no, {} short{why}",
                show.need(arm.shortfall_m.max(arm.worst_shortfall_m))
            ),
            Tone::Bad,
        )
    } else if arm.worst_shortfall_m > 0.0 {
        Cell::toned(
            format!(
                "as parked, but {} short where the driver may stop{why}",
                show.need(arm.worst_shortfall_m)
            ),
            Tone::Bad,
        )
    } else if arm.shortfall_m.is_nan() || arm.worst_shortfall_m.is_nan() {
        Cell::toned("not decided", Tone::Poor)
    } else {
        match &arm.why {
            Some(why) => Cell::toned(format!("no: {}", plain(why)), Tone::Bad),
            None => "yes, over the whole parking box".into(),
        }
    };
    [
        arm.corner.name().into(),
        show.place(arm.reach_m).into(),
        format!("{:.0} deg", arm.swing_rad.to_degrees()).into(),
        reaches,
    ]
}
