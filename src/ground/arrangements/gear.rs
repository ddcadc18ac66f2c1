//! Can what comes be taken off the truck and stood up, and who helps?

use super::passing;
use crate::bay::Bay;
use crate::ground::{Bound, Figure, Quantity};

/// A helper at each side of a column on its way up, besides whoever works the hoist; common
/// practice, no source.
const HELPERS: f64 = 2.0;

/// Pieces may fall short of the shipping mass by as much: pallets and crates.
const PACKING: f64 = 0.1;

/// Whether the pieces that are given are all that come; none where the shipping mass is not given
/// either, and nothing says so.
fn pieces_are_all(bay: &Bay) -> bool {
    let sum: f64 = bay.lift.pieces.iter().map(|piece| piece.mass.kg()).sum();
    bay.lift
        .shipping_mass
        .is_none_or(|whole| sum >= (1.0 - PACKING) * whole.kg())
}

/// The heaviest piece of the delivery; the whole where no pieces are given. None where the pieces
/// fall short of the shipping mass: what is missing may be heavier.
#[must_use]
pub fn heaviest_kg(bay: &Bay) -> Option<f64> {
    if bay.lift.pieces.is_empty() {
        return bay.lift.shipping_mass.map(|mass| mass.kg());
    }
    let pieces = bay.lift.pieces.iter().map(|piece| piece.mass.kg());
    pieces.reduce(f64::max).filter(|_| pieces_are_all(bay))
}

/// The heaviest of the pieces that are columns. None where no piece is said to be one, or pieces
/// are missing.
#[must_use]
pub fn column_kg(bay: &Bay) -> Option<f64> {
    let columns = bay.lift.pieces.iter().filter(|piece| piece.column);
    columns
        .map(|piece| piece.mass.kg())
        .reduce(f64::max)
        .filter(|_| pieces_are_all(bay))
}

/// Whether what comes can be taken off the truck and stood up.
#[must_use]
pub fn gear(bay: &Bay, heaviest_kg: Option<f64>, column_kg: Option<f64>) -> Vec<Figure> {
    let arranged = bay.arrangements.as_ref();
    let no_mass = if bay.lift.pieces.is_empty() {
        "get the masses of the pieces from the maker into lift.pieces"
    } else if pieces_are_all(bay) {
        "mark the pieces that are columns in lift.pieces with column: true"
    } else {
        "the pieces fall short of the shipping mass: add those that are missing to lift.pieces"
    };
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
            (None, _) => Figure::unknown(id, what, no_mass),
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
