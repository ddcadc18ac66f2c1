//! What does a bay file say, and what is wrong in it?
//!
//! Text goes through four steps, and each step tells every fault it meets before the next one
//! that could still say something true runs:
//!
//! 1. [`syntax`]: text → a tree in which every value keeps its place;
//! 2. `format`: which version of the format the file is in; older ones are migrated;
//! 3. [`presets`]: `lift` and `vehicle` by name, with the file's overrides laid over them, so
//!    that every value still knows the file it came from;
//! 4. `decode`: the tree as written → the valid bay.
//!
//! The way back, from a changed value to the person's own text: [`edit`]. Several bays at once,
//! from one bay file and a file of options laid over it: [`options`].

mod context;
mod decode;
pub mod edit;
mod format;
pub mod measured;
pub(crate) mod merge;
pub mod options;
pub mod presets;
pub mod syntax;

use std::sync::Arc;

use crate::bay::Bay;
use crate::diagnostics::{Diagnostic, Source};

use context::Context;
pub(crate) use decode::each_once;
use presets::{PresetSource, Resolver};

/// A bay that was read, and what was noticed on the way.
#[derive(Debug, Clone)]
pub struct Read {
    /// The valid bay.
    pub bay: Bay,
    /// Warnings: the file was read all the same.
    pub warnings: Vec<Diagnostic>,
    /// Every text that went into the bay: the bay file first, then the presets.
    pub sources: Vec<Arc<Source>>,
}

/// Reads a bay file.
///
/// `name` is what messages call the file; `presets` gives the texts of presets that lie beside it.
///
/// # Errors
/// Every fault in the file and in the presets it names, in the order of the text, warnings among
/// them. There is at least one error.
pub fn read(name: &str, text: &[u8], presets: &dyn PresetSource) -> Result<Read, Vec<Diagnostic>> {
    let cx = Context::default();
    let bay = cx
        .parse(name, text, None)
        .and_then(|root| format::migrate(&cx, root, format::Whose::BayFile))
        .and_then(|root| decode::bay(&cx, root, &Resolver::new(presets)));
    cx.finish(bay)
}
