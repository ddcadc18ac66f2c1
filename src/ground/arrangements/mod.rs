//! Is everything around the lift arranged: permission, the panel, heaters, gear, people, tools?
//!
//! For the page that is read before buying; none of it withholds a lock.

mod burning;
mod gear;

use super::{Bound, Figure, Quantity, Standing};
use crate::bay::{Arrangements, Bay, Leave, Tool};
use crate::clearance::Study;
use crate::units::Length;

pub use burning::burning;
pub use gear::{column_kg, gear, heaviest_kg};

/// Working space before an electric panel: width, depth, height, in inches.
///
/// NEC 110.26(A) and table 110.26(A)(1), condition 1, 0 to 150 V to ground: 30 in, 36 in, 6 ft
/// 6 in; from memory. Dwelling panels that are older or elsewhere may have other rules.
const PANEL_SPACE_IN: [f64; 3] = [30.0, 36.0, 78.0];

/// Whether the figures are those of this lift and this vehicle. Asked of every file: where a figure
/// came from, a preset or a seller's page, is not told by the figure.
#[must_use]
pub fn own_figures(bay: &Bay) -> Vec<Figure> {
    let said = |flag: fn(&Arrangements) -> Option<bool>| bay.arrangements.as_ref().and_then(flag);
    vec![
        yes(
            "lift_compared",
            "lift's figures compared with its manual",
            said(|a| a.lift_compared),
            "compare every figure of the lift with the manual of the one you mean to buy (a preset \
             has typical ones), and write arrangements.lift_compared",
        ),
        yes(
            "vehicle_measured",
            "vehicle measured and weighed",
            said(|a| a.vehicle_measured),
            "measure the vehicle and weigh it axle by axle (a preset has typical figures), and \
             write arrangements.vehicle_measured",
        ),
    ]
}

/// A plain yes; a no is as little known as nothing.
fn yes(id: &'static str, what: &'static str, said: Option<bool>, how: &'static str) -> Figure {
    match said {
        Some(true) => passing(Figure::noted(
            id,
            what,
            Quantity::Words("yes, as the file says".into()),
        )),
        Some(false) => Figure::noted(id, what, Quantity::Words("no".into())).undecided(how),
        None => Figure::unknown(id, what, how),
    }
    .source("the bay file")
}

/// Permit, landlord, insurer.
#[must_use]
pub fn permission(bay: &Bay) -> Vec<Figure> {
    let of = |leave: fn(&Arrangements) -> Option<Leave>| bay.arrangements.as_ref().and_then(leave);
    vec![
        leave(
            "permit",
            "building permit",
            of(|a| a.permit),
            "ask the building department whether a lift, its slab and its circuit need one",
        ),
        leave(
            "landlord",
            "landlord or owners' association",
            of(|a| a.landlord),
            "ask, in writing, whether the slab may be drilled and a lift set up",
        ),
        leave(
            "insurer",
            "insurer",
            of(|a| a.insurer),
            "ask, in writing, whether building and work stay insured with a lift",
        ),
    ]
}

/// Who inspects the lift.
#[must_use]
pub fn inspection(bay: &Bay) -> Figure {
    leave(
        "inspection",
        "inspection once it stands, and yearly",
        bay.arrangements.as_ref().and_then(|a| a.inspection),
        "find a qualified lift inspector; where people work under it for pay, ask which inspection \
         the law wants",
    )
    .source("ANSI/ALI ALOIM:2020 as summarised: by a qualified inspector, at least yearly")
}

fn leave(id: &'static str, what: &'static str, leave: Option<Leave>, how: &'static str) -> Figure {
    let said = |words: &str| Figure::noted(id, what, Quantity::Words(words.into()));
    match leave {
        None => Figure::unknown(id, what, how),
        Some(Leave::Given) => passing(said("given")),
        Some(Leave::NotNeeded) => passing(said("not needed, as the file says")),
        Some(Leave::Refused) => said("refused").stopping("without it don't buy"),
    }
    .source("the bay file")
}

const fn passing(mut figure: Figure) -> Figure {
    figure.standing = Standing::Passes;
    figure
}

/// The clear space before the electric panel.
#[must_use]
pub fn panel_space(bay: &Bay) -> Vec<Figure> {
    let space = bay.arrangements.as_ref().and_then(|a| a.panel_space);
    let Some(space) = space else {
        return vec![
            Figure::unknown(
                "panel_space",
                "clear space before the electric panel",
                "measure it with lift and vehicle in their places: it stays free",
            )
            .source("NEC 110.26(A), from memory; the local code governs"),
        ];
    };
    ["width", "depth", "height"]
        .into_iter()
        .zip(space)
        .zip(PANEL_SPACE_IN.map(Length::inches))
        .map(|((side, found), asked)| {
            Figure::judged(
                format!("panel_space.{side}"),
                format!("{side} of the clear space before the electric panel"),
                Quantity::Length(found.m()),
                Bound::AtLeast,
                Quantity::Length(asked.m()),
            )
            .cure("move the lift or the panel; ask the electrician")
            .source("NEC 110.26(A), from memory; the local code governs")
        })
        .collect()
}

/// The tools.
#[must_use]
pub fn tools(bay: &Bay) -> Vec<Figure> {
    let at_hand = bay.arrangements.as_ref().map_or([None; 8], |a| a.tools);
    Tool::ALL
        .into_iter()
        .zip(at_hand)
        .map(|(tool, at_hand)| {
            let id = format!("tool.{tool:?}");
            match at_hand {
                Some(true) => passing(Figure::noted(
                    id,
                    tool.words(),
                    Quantity::Words("at hand".into()),
                )),
                Some(false) => Figure::noted(id, tool.words(), Quantity::Words("missing".into()))
                    .stopping("borrow, rent or buy it before the day"),
                None => Figure::unknown(id, tool.words(), "see whether it is at hand"),
            }
            .source("common practice, no source")
        })
        .collect()
}

/// What burns near the lift; see [`burning`].
#[must_use]
pub fn heaters(bay: &Bay, study: &Study) -> Vec<Figure> {
    burning(bay, study)
}

#[cfg(test)]
mod tests;
