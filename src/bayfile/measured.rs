//! What was measured after setting out?
//!
//! A file of its own: tape readings between the letters of the floor sheet, the plumb of the
//! posts, shims, what a feeler gauge found under the plates, and floor levels. It goes through the same steps as a bay file.

use std::sync::Arc;

use super::context::{Context, told};
use super::decode;
use super::format::{self, Whose};
use crate::bay::Measured;
use crate::diagnostics::{Diagnostic, Source};

/// Readings, and what was noticed on the way.
#[derive(Debug, Clone)]
pub struct MeasuredRead {
    /// The readings.
    pub measured: Measured,
    /// Warnings: the file was read all the same.
    pub warnings: Vec<Diagnostic>,
    /// The text itself.
    pub sources: Vec<Arc<Source>>,
}

/// Reads a file of readings. `name` is what messages call it.
///
/// # Errors
/// Every fault in the file, in the order of the text; at least one error.
pub fn read(name: &str, text: &[u8]) -> Result<MeasuredRead, Vec<Diagnostic>> {
    let cx = Context::default();
    let made = cx
        .parse(name, text, None)
        .and_then(|root| format::migrate(&cx, root, Whose::Measured))
        .and_then(|root| decode::measured::measured(&cx, &root));
    let (found, sources) = cx.into_found();
    match made {
        Some(measured) if !found.iter().any(Diagnostic::is_error) => Ok(MeasuredRead {
            measured,
            warnings: found,
            sources,
        }),
        _ => Err(told(found)),
    }
}
