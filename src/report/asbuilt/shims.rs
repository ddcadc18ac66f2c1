//! How do the posts lean, what checks that, and which shims go under which corner?

use super::AsBuiltReport;
use super::moves::post;
use crate::asbuilt::{COVERAGE, Finding, IN_STUDY, PostShims, SIDES, index};
use crate::bay::{PlateCorner, Side};
use crate::report::text::page::{Cell, Page};
use crate::report::words::{list, sentence};

pub(super) fn write(report: &AsBuiltReport<'_>, page: &mut Page) {
    page.heading("Plumb and shims");
    let built = report.built;
    let lift = &report.planned.lift;
    let plumb = lift.plumb_limit.map_or_else(
        || "how far a column may be out of plumb is not given".to_owned(),
        |limit| {
            let limit = report.limit(limit.m());
            format!("a column may be {limit} out of plumb over its height")
        },
    );
    let shims = lift.shim_limit.map_or_else(
        || "how high shims may be is not given".to_owned(),
        |limit| {
            format!(
                "shims under a corner may be {} high",
                report.limit(limit.m())
            )
        },
    );
    page.para(&format!(
        "The manual's limits in the bay file: {plumb}, {shims}."
    ));
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
             as it stands. A corner with no shims listed is taken to \
             have none.",
        );
    }
    for post_shims in &built.shims {
        if let (Some(contact), Some(gap)) = (post_shims.contact, post_shims.rocks_m()) {
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
                report.fine(gap)
            ));
        }
    }
    may_rock(report, page);
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

/// What is left of rocking where a plate was felt under, or the levels tell enough.
fn may_rock(report: &AsBuiltReport<'_>, page: &mut Page) {
    let lift = &report.planned.lift;
    for of in &report.built.shims {
        let open = report.findings.iter().any(|one| match one {
            Finding::Rocks(side, _)
            | Finding::MayRock(side, _)
            | Finding::FeltAgainstLevels(side, ..) => *side == of.side,
            _ => false,
        });
        let Some(rock) = of.rock.filter(|_| !open) else {
            continue;
        };
        let plate = format!("the {}'s plate", post(of.side));
        let found = rock.felt_m.map_or_else(
            || {
                format!(
                    "The levels leave no room for a gap over {} under a corner of {plate}.",
                    report.fine(rock.gap_m)
                )
            },
            |felt| format!("No gap over {} was felt under {plate}.", report.leaf(felt)),
        );
        page.para(&format!(
            "{found} By what it may still rock its column goes {} over its height at most, and that counts.",
            report.at_most(rock.goes.length() * lift.column.height.m())
        ));
    }
}

/// What counts where a plumb was read once and the levels check it, for what it does to the verdict; none
/// where each was read again.
pub(super) fn plumbed_once(report: &AsBuiltReport<'_>) -> Option<String> {
    let built = report.built;
    let of = SIDES.map(|side| {
        let shims = &built.shims[index(side)];
        let once = built.leans[index(side)].map(|lean| lean.is_some_and(|lean| lean.reads < 2));
        let open = shims.levelled() && shims.clash.is_none();
        let [across, along] = once.map(|once| if once && open { IN_STUDY } else { 0.0 });
        (
            side,
            across * shims.contact_sd.x,
            along * shims.contact_sd.y,
        )
    });
    let posts: Vec<String> = of
        .iter()
        .filter(|(_, across, along)| across.max(*along) > 0.0)
        .map(|(side, ..)| format!("the {}", post(*side)))
        .collect();
    if posts.is_empty() {
        return None;
    }
    let high = report.planned.lift.column.height.m();
    let slope = of
        .iter()
        .fold(0.0, |most: f64, one| most.max(one.1).max(one.2));
    Some(format!(
        "The plumb of {} was read once, and all that the floor's levels leave open of it counts in this: up \
         to {} at a column's top. Read it again with the level turned end for end and add that to `plumb`: \
         then each reading checks the other, and its own \u{b1} counts.",
        list(&posts),
        report.at_most(slope * high)
    ))
}

/// How a post leans, and what checks that.
fn leaning(report: &AsBuiltReport<'_>, side: Side) -> String {
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
        (true, true) if of.rock.is_some_and(|rock| rock.levelled_m.is_some()) => {
            " Its levels contradict what was felt under its plate, so that nothing checks a plumb that was \
             read once."
                .to_owned()
        }
        (true, true) if of.rocks_m().is_some() => {
            " Its plate rocks, so that nothing checks a plumb that was read once: fill the gaps, and \
             read it again turned end for end."
                .to_owned()
        }
        (true, false) => {
            " Nothing checks a plumb that was read once: read it again on another face, or \
                          turned end for end."
                .to_owned()
        }
        (true, true) => format!(
            " In a plumb that was read once a slip, or a level out of true, would not show: the rise counts \
             with all that the floor's levels leave open, {} across and {} along at its top. Read again, \
             the level turned end for end, it counts by its own \u{b1}.",
            report.at_most(IN_STUDY * of.contact_sd.x * high),
            report.at_most(IN_STUDY * of.contact_sd.y * high)
        ),
    };
    format!(
        "{} over its whole height: {}, {}.{check}",
        sentence(&format!("the {}", post(side))),
        said[0],
        said[1]
    )
}
