//! `bayrise model`: the bay as a model that other programs open.

use std::path::PathBuf;

use super::files::{can_be_written, replace};
use super::load::load;
use super::terminal::print;
use super::{Exit, Failure};
use crate::clearance::study_on;
use crate::drawing::model::{ModelOrder, glb};
use crate::ground::Date;

/// What `model` is to do.
#[derive(Debug)]
pub(super) struct ModelOptions {
    pub(super) file: PathBuf,
    pub(super) out: PathBuf,
    /// The day that ages are counted to.
    pub(super) on: Date,
}

pub(super) fn run(options: &ModelOptions) -> Result<Exit, Failure> {
    let loaded = load(&options.file)?;
    can_be_written(&options.out)?;
    let failed = |error: String| {
        Failure::new(
            format!("{}: {error}", options.file.display()),
            "without it nothing can be said of the rise: correct it in the bay file",
        )
    };
    let study =
        study_on(&loaded.bay, Some(options.on)).map_err(|error| failed(error.to_string()))?;
    let order = ModelOrder {
        bay: &loaded.bay,
        study: &study,
        fingerprint: &loaded.fingerprint,
    };
    let bytes = glb(&order).map_err(|error| failed(error.to_string()))?;
    replace(&options.out, &bytes)?;
    let what = match study.highest_safe_lock {
        Some(lock) => format!("a model with its raise to lock {lock}, the highest safe lock"),
        None => "a model without a raise: no lock is called safe".into(),
    };
    print(&super::report::wrote(&options.out, &what))?;
    Ok(Exit::Met)
}
