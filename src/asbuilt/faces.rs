//! May the faces of the columns be measured to?

use crate::bay::{Bay, Mark, Measured, Over};
use crate::diagnostics::{Diagnostic, Severity};

/// Readings to K or L of turned columns. On the sheets K and L are marks on the post line, which a
/// turned column's face does not lie on: a reading to the one taken for the other would put the post
/// inches off.
pub(super) fn of_turned_columns(bay: &Bay, measured: &Measured) -> Vec<Diagnostic> {
    if bay.lift.column.turned.rad().abs() <= 1e-9 {
        return Vec::new();
    }
    let is_face = |mark: Mark| matches!(mark, Mark::Face(_));
    measured
        .tape
        .iter()
        .filter(|taken| match taken.over {
            Over::Between(one, other) => is_face(one) || is_face(other),
            Over::Wall(_, mark) => is_face(mark),
        })
        .map(|taken| Diagnostic {
            severity: Severity::Error,
            message: "K and L do not tell where a turned column stands".into(),
            place: taken.place.clone(),
            help: Some(
                "on the sheets they are marks on the post line, where no face of a turned column lies: \
                 measure to the corners of the base plates, LP1 to RP4, instead"
                    .into(),
            ),
        })
        .collect()
}
