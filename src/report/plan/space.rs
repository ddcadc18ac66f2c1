//! Does the lift stand here, and does the vehicle get in?

use super::items::of_figure;
use super::{Item, State, Step};
use crate::clearance::{PairFinding, StandingFinding, Withheld};
use crate::ground::arrangements;
use crate::report::names::the;
use crate::report::reasons::reason;
use crate::report::words::sentence;
use crate::report::{Report, Show};

/// The study is the source of what it found.
pub(super) const STUDY: &str = "collision of the solids, worst case";

pub(super) fn items(report: &Report<'_>) -> Vec<Item> {
    let study = report.study;
    let show = Show {
        units: report.bay.units,
    };
    let stopped = |what: &str, is: fn(&Withheld) -> bool, holds: String| {
        let mut stops = study.withheld.iter().filter(|one| is(one));
        let (state, figure, to_do) = match stops.next() {
            None => (State::Go, holds, String::new()),
            Some(first) => {
                let said = reason(first, show);
                let more = match stops.count() {
                    0 => String::new(),
                    n => format!(" (and {n} more like it)"),
                };
                (
                    State::Stop,
                    format!("{}{more}", said.says),
                    said.cure.into_owned(),
                )
            }
        };
        Item {
            step: Step::Space,
            section: None,
            state,
            what: what.into(),
            figure,
            source: STUDY.into(),
            to_do,
        }
    };
    let own = arrangements::own_figures(report.bay);
    let mut items: Vec<Item> = own
        .iter()
        .map(|one| of_figure(Step::Space, one, show))
        .collect();
    items.extend([
        stopped(
            "lift stands in the room",
            |one| matches!(one, Withheld::DoesNotStand { .. }),
            tightest(&study.standing, show),
        ),
        stand_up(report, show),
        stopped(
            "vehicle drives in",
            |one| matches!(one, Withheld::CannotDriveIn { .. }),
            "its margins hold".into(),
        ),
        stopped(
            "vehicle stands as parked",
            |one| matches!(one, Withheld::TightAsParked { .. }),
            held(&study.tight_as_parked),
        ),
    ]);
    items
}

fn tightest(standing: &[StandingFinding], show: Show) -> String {
    standing
        .iter()
        .min_by(|a, b| a.worst_m.total_cmp(&b.worst_m))
        .map_or_else(
            || "nothing comes near".into(),
            |one| {
                format!(
                    "{} left between {} and {}",
                    show.room(one.worst_m),
                    the(&one.part),
                    the(&one.other)
                )
            },
        )
}

fn held(pairs: &[PairFinding]) -> String {
    if pairs.is_empty() {
        "its margins hold".into()
    } else {
        sentence("see the report")
    }
}

/// Tipping a column up: its diagonal is known, what hangs in its way is not.
fn stand_up(report: &Report<'_>, show: Show) -> Item {
    let up = report.study.stand_up;
    let figure = format!(
        "{} needed, ceiling at the posts {}",
        show.need(up.needs_m),
        show.room(up.ceiling_at_posts_m)
    );
    let fits = up.needs_m <= up.highest_ceiling_m;
    let at_posts = up.needs_m <= up.ceiling_at_posts_m;
    let walked = report
        .bay
        .arrangements
        .as_ref()
        .and_then(|a| a.stand_up_way);
    // Under a higher part of the ceiling only, the way from there is the installer's to say.
    let state = match (fits, walked) {
        (true, Some(true)) if at_posts => State::Go,
        (true, Some(true) | None) => State::Unknown,
        _ => State::Stop,
    };
    let to_do = match (fits, walked) {
        (true, Some(true)) if at_posts => String::new(),
        (true, None) if at_posts => {
            "walk the way of its top past lights, door tracks and opener, clear it, and write \
             arrangements.stand_up_way"
                .into()
        }
        (true, Some(true) | None) => {
            "have the installer say how: tipped up under the higher part of the ceiling and \
             carried over upright"
                .into()
        }
        (true, Some(false)) => {
            "clear the way of its top past lights, door tracks and opener".into()
        }
        (false, _) => "ask the installer how it can be stood up, or take lower columns".into(),
    };
    Item {
        step: Step::Space,
        section: None,
        state,
        what: "columns are stood up".into(),
        figure,
        source: "diagonal of the column, sqrt(h^2 + d^2)".into(),
        to_do,
    }
}
