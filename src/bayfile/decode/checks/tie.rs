//! Does the overhead beam lie on its columns?

use super::super::fields::Fields;
use super::both;
use crate::bay::{Lift, Tie};
use crate::units::Length;

/// How far beam and column tops may miss each other: shims, a fall of the floor, a bracket. Common
/// practice, no source.
const BETWEEN_MM: f64 = 50.0;

/// True unless an overhead beam floats over its columns; that is noted. Columns that stand up
/// through their beam are told, and no more: the study has the beam lower then than it may hang.
///
/// A beam that floats is most often a preset's, left over columns that somebody measured: the true
/// one hangs lower, and a vehicle would meet it before the study says so.
pub(in crate::bayfile::decode) fn tie(f: &Fields<'_>, lift: &Lift) -> bool {
    let Tie::OverheadBeam {
        underside, height, ..
    } = lift.tie
    else {
        return true;
    };
    let top = lift.column.height;
    let little = Length::mm(BETWEEN_MM);
    if underside > top + little {
        f.error(
            f.newer("tie.underside", "column.height"),
            &format!(
                "the overhead beam floats {} over its columns: its underside is {} over the floor, \
                 and the columns are {} high",
                both(underside - top),
                both(underside),
                both(top)
            ),
            "the beam lies on the columns or between them",
            "take the beam's `underside` over the floor and the column's `height` from the same \
             manual",
        );
        return false;
    }
    if top > underside + height + little {
        f.cx.warning(
            f.span(f.newer("tie.underside", "column.height")),
            &format!(
                "the columns stand {} up through the overhead beam",
                both(top - underside - height)
            ),
            "the columns are higher than the beam's upper side",
            "take the beam's `underside` over the floor and the column's `height` from the same \
             manual; leave it where the columns do go on above their beam",
        );
    }
    true
}
