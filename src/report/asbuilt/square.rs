//! Are the posts square, and if not, which of them is ahead or turned?

use super::AsBuiltReport;
use super::moves::{FINEST_M, TOO_WIDE_M, post};
use crate::asbuilt::{COVERAGE, SIDES};
use crate::report::text::page::Page;
use crate::report::words::list;
use crate::units::plus_minus;

/// True where the posts are as the plan has them in square: neither ahead of the other nor turned, by
/// what the readings can tell. The diagonals alone don't show that: turns may make up for a post ahead.
pub(super) fn is_square(report: &AsBuiltReport<'_>) -> Option<bool> {
    let built = report.built;
    let square = &built.square;
    let turns = built.posts.iter().map(|post| {
        let (turn, sd) = (post.turn_rad * built.arm_m, post.turn_sd_rad * built.arm_m);
        (turn, sd)
    });
    let known: Vec<(f64, f64)> = turns.chain([(square.ahead_m, square.ahead_sd_m)]).collect();
    let open = SIDES
        .iter()
        .any(|&side| built.is_open(side, report.measured));
    if open || known.iter().any(|(_, sd)| COVERAGE * sd > TOO_WIDE_M) {
        return None;
    }
    Some(
        known
            .iter()
            .all(|(off, sd)| off.abs() <= (COVERAGE * sd).max(FINEST_M)),
    )
}

pub(super) fn write(report: &AsBuiltReport<'_>, page: &mut Page) {
    let built = report.built;
    let square = &built.square;
    let [one, other] = square.diagonals_m;
    page.heading("Square");
    let ahead = if square.ahead_m > 0.0 {
        "right"
    } else {
        "left"
    };
    let mut causes = Vec::new();
    if square.ahead_m.abs() > (COVERAGE * square.ahead_sd_m).max(FINEST_M) {
        causes.push(format!(
            "the {ahead} post stands {} ahead of the other (\u{b1}{})",
            report.length(square.ahead_m),
            report.at_most(COVERAGE * square.ahead_sd_m)
        ));
    }
    for place in &built.posts {
        let (turn, sd) = (place.turn_rad, place.turn_sd_rad);
        if (turn * built.arm_m).abs() > (COVERAGE * sd * built.arm_m).max(FINEST_M) {
            let way = if turn > 0.0 {
                "counter-clockwise"
            } else {
                "clockwise"
            };
            causes.push(format!(
                "the {} is turned {:.2}\u{b0} {way} (\u{b1}{:.2}\u{b0})",
                post(place.side),
                turn.abs().to_degrees(),
                (COVERAGE * sd).to_degrees()
            ));
        }
    }
    let verdict = match is_square(report) {
        None => "Whether the posts are square is not known from these readings".to_owned(),
        Some(true) => format!(
            "Square, as nearly as these readings can tell: neither post is ahead of the other or turned \
             (ahead known to \u{b1}{})",
            report.at_most(COVERAGE * square.ahead_sd_m)
        ),
        Some(false) => format!("Out of square: {}", list(&causes)),
    };
    if let Some(wider) = report.wider() {
        let how = if wider > 0.0 {
            "too far apart"
        } else {
            "too close to each other"
        };
        page.para(&format!(
            "The posts stand {} {how} across the bay (\u{b1}{}): the floor sheet's pulls between them are \
             accepted within {} only.",
            report.length(wider),
            report.at_most(COVERAGE * square.wider_sd_m),
            plus_minus(report.planned.policy.measured_lift, report.planned.units)
        ));
    }
    page.para(&format!(
        "{verdict}. Diagonals over the outer corners: LP1 to RP4 {}, LP4 to RP1 {}. Between the inner \
         corners {} at the front and {} at the rear, by the plan {}. Equal diagonals alone do not mean square: turned \
         plates can hide that one post is ahead.",
        report.length(one),
        report.length(other),
        report.length(square.between_m[0]),
        report.length(square.between_m[1]),
        report.length(square.planned_between_m)
    ));
}
