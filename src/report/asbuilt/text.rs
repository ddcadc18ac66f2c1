//! The page for people.

use super::AsBuiltReport;
use super::moves::{FINEST_M, TOO_WIDE_M, post};
use crate::asbuilt::{COVERAGE, Planned, PostShims, SIDES, State, index};
use crate::bay::PlateCorner;
use crate::report::Sayings;
use crate::report::text::Look;
use crate::report::text::page::{Cell, Page, Tone};
use crate::report::text::{headline, lead};
use crate::report::words::{list, plain, sentence};
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
    if report.findings.is_empty() {
        after_the_headline(report, &mut page);
    }
    for finding in report.findings {
        let (what, cure) = report.says(*finding);
        let kind = if finding.stops() { "Stop" } else { "Not known" };
        page.item(&format!("{kind}: {what}. To cure it: {cure}."));
    }

    page.heading("Where the posts stand, and what to move");
    for side in SIDES {
        let place = &built.posts[index(side)];
        let says = report.move_of(place);
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

fn square(report: &AsBuiltReport<'_>, page: &mut Page) {
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
    page.para(&format!(
        "{verdict}. Diagonals over the outer corners: LP1 to RP4 {}, LP4 to RP1 {}. Between the inner \
         corners {} at the front and {} at the rear. Equal diagonals alone do not mean square: turned \
         plates can hide that one post is ahead.",
        report.length(one),
        report.length(other),
        report.length(square.between_m[0]),
        report.length(square.between_m[1])
    ));
}

fn shims(report: &AsBuiltReport<'_>, page: &mut Page) {
    page.heading("Plumb and shims");
    let built = report.built;
    for side in SIDES {
        page.item(&leaning(report, side));
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
                .map_or_else(|| "not known".to_owned(), |wanted| report.fine(wanted[i]));
            let now = if post_shims.listed[i] {
                report.fine(post_shims.now_m[i])
            } else {
                "none listed".to_owned()
            };
            rows.push([
                at.letters().into(),
                at.name().into(),
                now.into(),
                wanted.into(),
            ]);
        }
    }
    page.table(["Corner", "", "Shims now", "For a plumb post"], &rows);
    if built.shims.iter().all(PostShims::levelled) {
        page.para(
            "The shims also fill up to the floor as it was levelled. A corner with no shims listed is \
             taken to have none.",
        );
    } else {
        page.para(
            "The floor was not levelled at every corner: each plate is taken to bear on all of its shims \
             as it stands. Feel for gaps before tightening. A corner with no shims listed is taken to \
             have none.",
        );
    }
    for post_shims in &built.shims {
        if let Some(contact) = post_shims.contact.filter(|one| one.rock_m > ROCKS_M) {
            let [one, other] = if contact.carries == 1 { [1, 3] } else { [2, 4] };
            let corner = |number| PlateCorner {
                side: post_shims.side,
                number,
            };
            page.para(&format!(
                "By levels and shims the plate of the {} stands on {} and {}, and can rock on them by a \
                 gap of {} at the other two corners until they are filled.",
                post(post_shims.side),
                corner(one).letters(),
                corner(other).letters(),
                report.fine(contact.rock_m)
            ));
        }
    }
    if let Some(higher) = built.standing.right_higher_m {
        let which = if higher > 0.0 { "right" } else { "left" };
        let text = if higher.abs() < 0.000_05 {
            "By levels and shims both posts stand equally high.".to_owned()
        } else {
            format!(
                "By levels and shims the {which} post stands {} higher than the other. Equalise the \
                 carriages by the manual after shimming.",
                report.fine(higher)
            )
        };
        page.para(&text);
    }
}

/// A gap under a corner that is worth telling: the thinnest shim. Common practice, no source.
const ROCKS_M: f64 = 0.000_5;

/// How a post leans, and what checks that.
fn leaning(report: &AsBuiltReport<'_>, side: crate::bay::Side) -> String {
    let built = report.built;
    let high = report.planned.lift.column.height.m();
    let leans = built.leans[index(side)];
    let of = &built.shims[index(side)];
    let said = [true, false].map(|across| {
        let way = if across { "across" } else { "along" };
        let Some(lean) = leans[usize::from(!across)] else {
            return format!("not read {way} the bay");
        };
        let off = lean.slope * high;
        let within = format!("\u{b1}{}", report.fine(COVERAGE * lean.sd * high));
        if off.abs() < 0.000_05 {
            return format!("plumb {way} the bay ({within})");
        }
        let to = match (across, off > 0.0) {
            (true, true) => "right",
            (true, false) => "left",
            (false, true) => "front",
            (false, false) => "rear",
        };
        format!("{} to the {to} ({within})", report.fine(off))
    });
    let once = leans.iter().flatten().any(|lean| lean.reads < 2);
    let check = match (once, of.levelled() && of.clash.is_none()) {
        (false, _) => String::new(),
        (true, false) => {
            " Nothing checks a plumb that was read once: read it again on another face, or \
                          turned end for end."
                .to_owned()
        }
        (true, true) => format!(
            " A plumb that was read once is checked by the levels alone, to \u{b1}{} across and \u{b1}{} \
             along.",
            report.fine(COVERAGE * of.contact_sd.x * high),
            report.fine(COVERAGE * of.contact_sd.y * high)
        ),
    };
    format!(
        "{} over its whole height: {}, {}.{check}",
        sentence(&format!("the {}", post(side))),
        said[0],
        said[1]
    )
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
            } else if built.scatters() {
                "so much less well than their stated \u{b1} that it is no chance"
            } else {
                "less well than their stated \u{b1}, and every \u{b1} here is as much wider"
            }
        ),
    };
    page.para(&quality);
    let after = report.after_moves();
    let rows: Vec<[Cell; 6]> = built
        .readings
        .iter()
        .zip(&report.measured.tape)
        .enumerate()
        .map(|(i, (one, taken))| {
            let off = one.reading_m - one.fitted_m;
            let sign = if off < 0.0 { "-" } else { "+" };
            let off = match report.length(off) {
                zero if zero.starts_with("0 ") => zero,
                some => format!("{sign}{some}"),
            };
            let (state, tone) = match one.state {
                State::Fits if one.again => ("fits, read again", Tone::Plain),
                State::Fits => ("fits", Tone::Plain),
                State::Unchecked => ("not checked", Tone::Poor),
                State::Misfit => ("does not fit", Tone::Bad),
                State::Suspect => ("or this one", Tone::Bad),
                State::Differs => ("read again, differs", Tone::Bad),
            };
            let then = after.as_ref().and_then(|after| after.get(i));
            [
                Planned::says(taken.over).into(),
                report.length(one.reading_m).into(),
                off.into(),
                one.standardised
                    .map_or_else(|| "-".to_owned(), |w| format!("{:.1}", w.abs()))
                    .into(),
                then.map_or_else(|| "-".to_owned(), |then| report.length(*then))
                    .into(),
                Cell::toned(state, tone),
            ]
        })
        .collect();
    page.table(
        [
            "Tape",
            "Read",
            "Off the fit",
            "Test",
            "After moving",
            "Says",
        ],
        &rows,
    );
    page.para(
        "Test: how many of its own standard deviations a reading is off what the others make of it; \
         over 3.3 is no chance. After moving: what the tape should show once the posts are moved as told \
         above; read it again and compare. The same tape read again counts once: it does not check \
         itself.",
    );
}

/// What `check` says after its headline: what was not looked at, and the marks.
fn after_the_headline(report: &AsBuiltReport<'_>, page: &mut Page) {
    let standing = &report.built.standing.bay;
    let sayings = Sayings::of(standing, report.study);
    for (says, cure) in sayings.reasons() {
        page.item(&format!("{says} {cure}"));
    }
    if let Some(never) = sayings.never_above() {
        page.para(&format!("Never above: {never}. {HOW_MEASURED}"));
    }
    if let Some(unknown) = sayings.not_checked() {
        page.para(&unknown);
    }
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
    if let Some(unknown) = Sayings::of(&report.built.standing.bay, report.study).not_checked() {
        page.para(&unknown);
    }
    page.para(&bound(report));
}

fn bound(report: &AsBuiltReport<'_>) -> String {
    let off = report.built.standing.bay.lift.posts_off;
    format!(
        "The posts' mean place, their spacing and the mean height of their feet are taken as they stand. \
         One post ahead of the other, turns, leans over the whole height, one foot higher, three standard \
         deviations of each, and what one slip of the tape that may not show can move are counted \
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
