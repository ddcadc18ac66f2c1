//! The page for people.

use super::moves::post;
use super::{AsBuiltReport, readings, shims, square};
use crate::asbuilt::{COVERAGE, Finding, SIDES, index};
use crate::bay::Side;
use crate::report::text::Look;
use crate::report::text::page::{Page, Tone};
use crate::report::text::{day, headline, lead, not_measured};
use crate::report::words::{list, plain, sentence};
use crate::report::{CAUTIONS, Report, Sayings, counted};

impl AsBuiltReport<'_> {
    fn study_report(&self) -> Report<'_> {
        Report {
            bay: &self.built.standing.bay,
            study: self.study,
            warnings: &[],
            needs: &[],
            fingerprint: self.fingerprint,
            day: Some(self.day),
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
    day::write(&report.study_report(), &mut page);
    page.gap();
    let tone = match report.safe_lock() {
        Some(_) => Tone::Good,
        None => Tone::Bad,
    };
    page.para_toned(&report.verdict(), tone);
    if report.findings.is_empty() {
        after_the_headline(report, &mut page);
    }
    for finding in report.findings {
        let (what, cure) = report.says(*finding);
        let kind = if finding.stops() { "Stop" } else { "Not known" };
        page.item(&format!("{kind}: {what}. To cure it: {cure}."));
    }

    not_measured::write(&report.study_report(), &mut page);

    page.heading("Where the posts stand, and what to move");
    for side in SIDES {
        let place = &built.posts[index(side)];
        let says = report.move_of(place);
        page.item(&format!(
            "{}: {says}. Known to \u{b1}{} across, \u{b1}{} into the bay, \u{b1}{:.2}\u{b0}; {}.",
            sentence(post(side)),
            report.at_most(COVERAGE * place.off_sd_m.x),
            report.at_most(COVERAGE * place.off_sd_m.y),
            (COVERAGE * place.turn_sd_rad).to_degrees(),
            slip(report, side)
        ));
    }
    square::write(report, &mut page);
    shims::write(report, &mut page);
    readings::write(report, &mut page);
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

/// The readings that nothing checks and that a post's place hangs on, in words.
pub(super) fn hangs_on(report: &AsBuiltReport<'_>, side: Side) -> Vec<String> {
    let hangs_on = report.built.held[index(side)].hangs_on();
    let says = hangs_on.map(|(at, _)| {
        at.map_or_else(
            || "a wall's place in the bay file".to_owned(),
            |at| report.tape(at),
        )
    });
    says.collect()
}

/// What one slip of the tape could do to a post's place: no bound where nothing checks a reading.
fn slip(report: &AsBuiltReport<'_>, side: Side) -> String {
    let place = &report.built.posts[index(side)];
    let any = report.no_bound(side);
    let readings = hangs_on(report, side);
    let one = |i: usize, bound: String, unbounded: &str| {
        if any[i] { unbounded.to_owned() } else { bound }
    };
    let by = [
        one(
            0,
            format!("{} more", report.at_most(place.slip_m.x)),
            "any amount more",
        ),
        one(1, report.at_most(place.slip_m.y), "any amount"),
        one(
            2,
            format!("{:.2}\u{b0}", place.slip_turn_rad.to_degrees()),
            "any angle",
        ),
    ];
    let why = if readings.is_empty() {
        String::new()
    } else {
        format!(": nothing checks {}", list(&readings))
    };
    format!(
        "one slip of the tape that does not show could make it {} across, {} into the bay, {}{why}",
        by[0], by[1], by[2]
    )
}

/// What `check` says after its headline: what was not looked at, and the marks.
fn after_the_headline(report: &AsBuiltReport<'_>, page: &mut Page) {
    let standing = &report.built.standing.bay;
    let sayings = Sayings::of(standing, report.study);
    for (says, cure) in sayings.reasons() {
        page.item(&format!("{says} {cure}"));
    }
    if let Some(once) = shims::plumbed_once(report) {
        page.para(&once);
    }
    if let Some(never) = sayings.never_above() {
        page.para(&format!("Never above: {never}. {HOW_MEASURED}"));
    }
    if let Some(unknown) = not_checked(report) {
        page.para(&unknown);
    }
}

/// What `check` says that was not looked at, or is not known in full.
pub(super) fn not_checked(report: &AsBuiltReport<'_>) -> Option<String> {
    Sayings::of(&report.built.standing.bay, report.study).not_checked_elsewhere()
}

/// How the marks are measured.
pub(super) const HOW_MEASURED: &str = "Both marks are measured from the top of the base plate, with the \
    shims under it as read, to the carriage's marked edge. Mark both columns, and stop when the lower \
    carriage is at its mark.";

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
    for (says, cure) in Sayings::of(&report.built.standing.bay, report.study).reasons() {
        page.item(&format!("{says} {cure}"));
    }
    if let Some(unknown) = not_checked(report) {
        page.para(&unknown);
    }
    page.para(&bound(report));
    let may_rock = |one: &Finding| matches!(one, Finding::MayRock(..));
    if report.findings.iter().any(may_rock) {
        page.para(
            "How far a column could go on a gap that nobody felt for (above) is not in that: of such a \
             plate only what was levelled counts here.",
        );
    }
}

/// What the study has of the posts, and what counts as a ± beside that.
fn bound(report: &AsBuiltReport<'_>) -> String {
    let lift = &report.built.standing.bay.lift;
    let off = lift.posts_off;
    let within = |across: f64, along: f64| {
        format!(
            "\u{b1}{} across, \u{b1}{} along",
            report.at_most(across),
            report.at_most(along)
        )
    };
    let whole = within(off.across.m(), off.along.m());
    let up = report.at_most(off.up.m());
    let stands = "The posts' mean place, their spacing and the mean height of their feet count as they stand";
    let beside = "one post ahead of the other, turns, one foot higher, what a lean does in height over \
                  the arms, three standard deviations of each, and one slip of the tape that may not \
                  show";
    let Some(leaning) = off.leaning else {
        return format!(
            "{stands}. Beside that every part of the lift is counted {whole}, \u{b1}{up} up: {beside}."
        );
    };
    let high = report.planned.lift.column.height.m();
    let most = |axis: usize| leaning.within[0][axis].max(leaning.within[1][axis]) * high;
    format!(
        "{stands}, and carriages, arms, pads and vehicle go up along the columns as they lean. Beside that \
         every part of the lift is counted {}, \u{b1}{up} up at every height: {beside}. Three standard \
         deviations of the lean and what a plate can rock come to that with the height: at a column's top \
         {}. The columns themselves, whether the arms reach, and what an arm may touch are judged with the \
         whole lean at every height: {whole}.",
        within(leaning.placed[0].m(), leaning.placed[1].m()),
        within(most(0), most(1)),
    )
}
