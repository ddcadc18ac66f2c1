//! Is everything around the lift arranged: permission, the panel, heaters, gear, people, tools?
//!
//! For the page that is read before buying; none of it withholds a lock.

mod burning;

use super::{Bound, Figure, Quantity, Standing};
use crate::bay::{Arrangements, Bay, Leave, Tool};
use crate::clearance::Study;
use crate::units::Length;

pub use burning::burning;

/// Working space before an electric panel: width, depth, height, in inches.
///
/// NEC 110.26(A) and table 110.26(A)(1), condition 1, 0 to 150 V to ground: 30 in, 36 in, 6 ft
/// 6 in; from memory. Dwelling panels that are older or elsewhere may have other rules.
const PANEL_SPACE_IN: [f64; 3] = [30.0, 36.0, 78.0];

/// A helper at each side of a column on its way up, and one at its foot; common practice, no
/// source.
const HELPERS: f64 = 2.0;

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

/// The heaviest piece of the delivery; the whole where no pieces are given.
#[must_use]
pub fn heaviest_kg(bay: &Bay) -> Option<f64> {
    let pieces = bay.lift.pieces.iter().map(|piece| piece.mass.kg());
    pieces
        .reduce(f64::max)
        .or_else(|| bay.lift.shipping_mass.map(|mass| mass.kg()))
}

/// The heaviest piece that its name calls a column or a post; the heaviest of all where none is
/// called so. None where no pieces are given.
#[must_use]
pub fn column_kg(bay: &Bay) -> Option<f64> {
    let heaviest = |is_column: bool| {
        let pieces = bay.lift.pieces.iter();
        pieces
            .filter(|piece| {
                let name = piece.name.to_lowercase();
                !is_column || name.contains("column") || name.contains("post")
            })
            .map(|piece| piece.mass.kg())
            .reduce(f64::max)
    };
    heaviest(true).or_else(|| heaviest(false))
}

/// Whether what comes can be taken off the truck and stood up.
#[must_use]
pub fn gear(bay: &Bay, heaviest_kg: Option<f64>, column_kg: Option<f64>) -> Vec<Figure> {
    let arranged = bay.arrangements.as_ref();
    let against = |id: &'static str,
                   what: &'static str,
                   needs: Option<f64>,
                   can: Option<f64>,
                   how: &'static str| {
        match (needs, can) {
            (Some(needs), Some(can)) => Figure::judged(
                id,
                what,
                Quantity::Mass(needs),
                Bound::AtMost,
                Quantity::Mass(can),
            )
            .cure("get gear that carries it; nobody lifts it by hand"),
            (Some(needs), None) => Figure {
                found: Some(Quantity::Mass(needs)),
                ..Figure::unknown(id, what, how)
            },
            (None, _) => Figure::unknown(id, what, "get the masses of the pieces from the maker"),
        }
        .source("the bay file")
    };
    let mut figures = vec![
        against(
            "unloading",
            "heaviest piece to unload",
            heaviest_kg,
            arranged.and_then(|a| a.unloading).map(|m| m.kg()),
            "arrange a fork truck, a tail lift or a crane for it, and a dry place",
        ),
        against(
            "raising",
            "column to stand up",
            column_kg,
            arranged.and_then(|a| a.raising).map(|m| m.kg()),
            "arrange a hoist, a shop crane or a lift truck that stands it up and holds it",
        ),
    ];
    figures.push(
        match arranged.and_then(|a| a.helpers) {
            #[allow(clippy::cast_precision_loss)] // a few people
            Some(helpers) => Figure::judged(
                "helpers",
                "helpers",
                Quantity::Count(helpers as f64),
                Bound::AtLeast,
                Quantity::Count(HELPERS),
            )
            .cure("find more hands for the day"),
            None => Figure::unknown("helpers", "helpers", "find at least two people for the day"),
        }
        .source("common practice, no source"),
    );
    figures.push(
        match arranged.and_then(|a| a.shored) {
            Some(true) => passing(Figure::noted(
                "shored",
                "columns held until anchored",
                Quantity::Words("yes, as the file says".into()),
            )),
            Some(false) => Figure::noted(
                "shored",
                "columns held until anchored",
                Quantity::Words("no".into()),
            )
            .stopping("a column that stands on its plate alone falls: shore or strap it"),
            None => Figure::unknown(
                "shored",
                "columns held until anchored",
                "decide how each column is shored or strapped until its anchors hold",
            ),
        }
        .source("common practice, no source"),
    );
    figures
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
