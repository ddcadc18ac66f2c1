//! `bayrise schema`: the JSON Schema of the check report.

use super::check::to_json;
use super::terminal::print;
use super::{Exit, Failure};
use crate::report::json::schema;

pub(super) fn run() -> Result<Exit, Failure> {
    print(&to_json(&schema())?)?;
    Ok(Exit::Met)
}
