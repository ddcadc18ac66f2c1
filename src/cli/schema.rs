//! `bayrise schema`: the JSON Schemas of the reports for programs.

use super::check::to_json;
use super::terminal::print;
use super::{Exit, Failure};
use crate::report::{asbuilt, compare, json};

/// Whose schema is asked for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Of {
    /// What `check` writes.
    Check,
    /// What `compare` writes.
    Compare,
    /// What `asbuilt` writes.
    AsBuilt,
}

pub(super) fn run(of: Of) -> Result<Exit, Failure> {
    let schema = match of {
        Of::Check => json::schema(),
        Of::Compare => compare::schema(),
        Of::AsBuilt => asbuilt::json::schema(),
    };
    print(&to_json(&schema)?)?;
    Ok(Exit::Met)
}
