//! The page for people.

use super::AsBuiltReport;
use super::moves::post;
use crate::asbuilt::{COVERAGE, Planned, SIDES, State, index};
use crate::bay::PlateCorner;
use crate::report::text::Look;
use crate::report::text::page::{Cell, Page, Tone};
use crate::report::text::{headline, lead};
use crate::report::words::{plain, sentence};
use crate::report::{CAUTIONS, Report, counted};

impl AsBuiltReport<'_> {
    fn study_report(&self) -> Report<'_> {
        Report {
            bay: &self.built.standing.bay,
            study: self.study,
            warnings: &[],
            needs: &[],
            fingerprint: self.fingerprint,
        }
    }

    /// The verdict in one paragraph.
    pub(super) fn verdict(&self) -> String {
        if self.findings.is_empty() {
            return format!(
                "With the posts where they stand: {}",
                headline(&self.study_report())
            );
        }
        let stops = self.findings.iter().filter(|one| one.stops()).count();
        let unknown = self.findings.len() - stops;
        let counts = match (stops, unknown) {
            (0, n) => format!("{} not known", counted_is(n)),
            (n, 0) => format!("{} the posts", counted_stop(n)),
            (n, m) => format!(
                "{} the posts and {} not known",
                counted_stop(n),
                counted_is(m)
            ),
        };
        format!("No lock is called safe with the posts as they stand: {counts}.")
    }
}

fn counted_is(n: usize) -> String {
    let is = if n == 1 { "is" } else { "are" };
    format!("{} {is}", counted(n, "thing"))
}

fn counted_stop(n: usize) -> String {
    let stop = if n == 1 { "stops" } else { "stop" };
    format!("{} {stop}", counted(n, "thing"))
}

/// The whole page, ending with a line break.
#[must_use]
pub fn render(report: &AsBuiltReport<'_>, look: Look) -> String {
    let mut page = Page::new(look);
    let (bay, built) = (report.planned, report.built);
    page.para_toned("As built", Tone::Strong);
    page.para_toned(
        &format!(
            "{} \u{b7} {}",
            plain(&report.measured.title),
            plain(&bay.title)
        ),
        Tone::Quiet,
    );
    page.gap();
    let tone = match report.safe_lock() {
        Some(_) => Tone::Good,
        None => Tone::Bad,
    };
    page.para_toned(&report.verdict(), tone);
    for finding in report.findings {
        let (what, cure) = report.says(*finding);
        let kind = if finding.stops() { "Stop" } else { "Not known" };
        page.item(&format!("{kind}: {what}. To cure it: {cure}."));
    }

    page.heading("Where the posts stand, and what to move");
    for side in SIDES {
        let place = &built.posts[index(side)];
        let (_, says) = report.move_of(place);
        page.item(&format!(
            "{}: {says}. Known to \u{b1}{} across, \u{b1}{} into the bay, \u{b1}{:.2}\u{b0}.",
            sentence(post(side)),
            report.at_most(COVERAGE * place.off_sd_m.x),
            report.at_most(COVERAGE * place.off_sd_m.y),
            (COVERAGE * place.turn_sd_rad).to_degrees()
        ));
    }
    square(report, &mut page);
    shims(report, &mut page);
    readings(report, &mut page);
    rise(report, &mut page);

    page.heading("Caution");
    page.para(&CAUTIONS.join(" "));
    page.gap();
    page.para_toned(
        &format!(
            "Bayrise {}, input {}, readings {}",
            env!("CARGO_PKG_VERSION"),
            report.fingerprint,
            report.readings_fingerprint
        ),
        Tone::Quiet,
    );
    page.finish()
}

fn square(report: &AsBuiltReport<'_>, page: &mut Page) {
    let square = &report.built.square;
    let [one, other] = square.diagonals_m;
    let difference = one - other;
    let within = COVERAGE * square.difference_sd_m;
    page.heading("Square");
    let verdict = if difference.abs() <= within {
        format!(
            "Square, as nearly as these readings can tell (\u{b1}{})",
            report.at_most(within)
        )
    } else {
        let [ahead, _] = match square.ahead_m > 0.0 {
            true => ["right", "left"],
            false => ["left", "right"],
        };
        format!(
            "Out of square by {}: the {ahead} post stands {} ahead of the other",
            report.length(difference),
            report.length(square.ahead_m)
        )
    };
    page.para(&format!(
        "{verdict}. Diagonals over the outer corners: LP1 to RP4 {}, LP4 to RP1 {}. Between the inner \
         corners {} at the front and {} at the rear. Equal diagonals mean square only where both of \
         these are alike too (common practice, no source).",
        report.length(one),
        report.length(other),
        report.length(square.between_m[0]),
        report.length(square.between_m[1])
    ));
}

fn shims(report: &AsBuiltReport<'_>, page: &mut Page) {
    page.heading("Plumb and shims");
    let built = report.built;
    let high = report.planned.lift.column.height.m();
    for side in SIDES {
        let words = |across: bool| {
            let lean = built.leans[index(side)][usize::from(!across)]?;
            let to = match (across, lean.slope > 0.0) {
                (true, true) => "to the right",
                (true, false) => "to the left",
                (false, true) => "to the front",
                (false, false) => "to the rear",
            };
            Some(format!("{} {to}", report.length(lean.slope * high)))
        };
        let said = [true, false].map(|across| {
            words(across).unwrap_or_else(|| {
                let way = if across { "across" } else { "along" };
                format!("not read {way} the bay")
            })
        });
        page.item(&format!(
            "{} over its whole height: {}, {}.",
            sentence(&format!("the {} leans", post(side))),
            said[0],
            said[1]
        ));
    }
    let mut rows: Vec<[Cell; 4]> = Vec::new();
    for post_shims in &built.shims {
        for number in 1..=4_u8 {
            let at = PlateCorner {
                side: post_shims.side,
                number,
            };
            let i = usize::from(number) - 1;
            let wanted = post_shims
                .wanted_m
                .map_or_else(|| "not known".to_owned(), |wanted| report.length(wanted[i]));
            rows.push([
                at.letters().into(),
                at.name().into(),
                report.length(post_shims.now_m[i]).into(),
                wanted.into(),
            ]);
        }
    }
    page.table(["Corner", "", "Shims now", "For a plumb post"], &rows);
    let levelled = built.shims.iter().all(|one| one.levelled);
    page.para(if levelled {
        "The shims also fill up to the floor as it was levelled."
    } else {
        "The floor was not levelled at every corner: each plate is taken to bear on all of its shims as \
         it stands. Feel for gaps before tightening."
    });
    if let Some(higher) = built.standing.right_higher_m {
        let which = if higher > 0.0 { "right" } else { "left" };
        page.para(&format!(
            "By levels and shims the {which} post stands {} higher than the other. Equalise the \
             carriages by the manual after shimming.",
            report.length(higher)
        ));
    }
}

fn readings(report: &AsBuiltReport<'_>, page: &mut Page) {
    page.heading("Readings");
    let built = report.built;
    let quality = match built.unit {
        None => "Not one reading more than the posts need: nothing checks them.".to_owned(),
        Some(unit) => format!(
            "{} more than the posts need. They go together {} ({unit:.2} of it).",
            counted(built.spare, "reading"),
            if unit <= 1.0 {
                "as well as their stated \u{b1} or better"
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
            let off = one.reading_m - one.fitted_m;
            let sign = if off < 0.0 { "-" } else { "+" };
            let off = match report.length(off) {
                zero if zero.starts_with("0 ") => zero,
                some => format!("{sign}{some}"),
            };
            let (state, tone) = match one.state {
                State::Fits => ("fits", Tone::Plain),
                State::Unchecked => ("not checked", Tone::Poor),
                State::Misfit => ("does not fit", Tone::Bad),
                State::Suspect => ("or this one", Tone::Bad),
            };
            [
                Planned::says(taken.over).into(),
                report.length(one.reading_m).into(),
                off.into(),
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
         over 3.3 is no chance.",
    );
}

fn rise(report: &AsBuiltReport<'_>, page: &mut Page) {
    page.heading("The rise with the posts where they stand");
    let of = report.study_report();
    if report.findings.is_empty() {
        // The verdict is at the top.
        page.para(&bound(report));
        return;
    }
    let says = lead(&of);
    let says = says.replace("is the highest safe lock", "would be the highest lock");
    page.para(&format!(
        "By the study alone, and not a verdict while anything above is open: {says}"
    ));
    page.para(&bound(report));
}

fn bound(report: &AsBuiltReport<'_>) -> String {
    let off = report.built.standing.bay.lift.posts_off;
    format!(
        "The posts' mean place and spacing are taken as they stand. One post ahead of the other, turns, \
         leans over the whole height, heights, and three standard deviations of each are counted \
         against every part of the lift at every height: \u{b1}{} across, \u{b1}{} \
         along, \u{b1}{} up; of these the vehicle goes along with \u{b1}{} across and \u{b1}{} along. So \
         the carriages' way along leaning columns is bounded, not followed.",
        report.at_most(off.across.m()),
        report.at_most(off.along.m()),
        report.at_most(off.up.m()),
        report.at_most(off.carried_across.m()),
        report.at_most(off.carried_along.m())
    )
}
