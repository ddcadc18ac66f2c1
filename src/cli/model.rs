//! `bayrise model`: the bay as a model that other programs open.

use std::path::PathBuf;

use super::files::{can_be_written, replace};
use super::load::{Loaded, load};
use super::options::Day;
use super::sheets::{not_studied, studied, wrote};
use super::terminal::print;
use super::{Exit, Failure};
use crate::drawing::model::{ModelOrder, glb};

/// What `model` is to do.
#[derive(Debug)]
pub(super) struct ModelOptions {
    pub(super) file: PathBuf,
    pub(super) out: PathBuf,
    /// The day that ages are counted to.
    pub(super) day: Day,
}

pub(super) fn run(options: &ModelOptions) -> Result<Exit, Failure> {
    print(&written(options, &load(&options.file)?)?)?;
    Ok(Exit::Met)
}

/// Writes it; what is said of it comes back.
pub(super) fn written(options: &ModelOptions, loaded: &Loaded) -> Result<String, Failure> {
    can_be_written(&options.out, &loaded.inputs)?;
    let study = studied(&options.file, loaded, options.day.on)?;
    let day = options.day.of(&loaded.bay);
    let order = ModelOrder {
        bay: &loaded.bay,
        study: &study,
        fingerprint: &loaded.fingerprint(Some(day)),
        day,
    };
    let bytes = glb(&order).map_err(|error| not_studied(&options.file, &error))?;
    replace(&options.out, &bytes)?;
    let what = match study.highest_safe_lock {
        Some(lock) => format!("a model with its raise to lock {lock}, the highest safe lock"),
        None => "a model without a raise: no lock is called safe".into(),
    };
    Ok(wrote(&options.out, &what))
}
