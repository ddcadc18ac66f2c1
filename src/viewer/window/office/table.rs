//! Is what was compared still what lies on disk?
//!
//! The file of options, the bay files and the presets that went into the table are watched. When one
//! of them changes the table is old at once, and is made anew.

use std::collections::BTreeSet;
use std::path::PathBuf;

use super::super::files;
use super::super::mail::Post;
use super::super::watch::Watch;
use super::tell;
use crate::panels::{Compared, Desk};

/// The watch over what went into the table.
#[derive(Default)]
pub(super) struct Table {
    watch: Option<Watch>,
    watched: Option<(PathBuf, BTreeSet<PathBuf>)>,
}

/// The files that went into a table, each with what it held: the file of options first.
fn files_of(compared: &Compared) -> Vec<(PathBuf, &str)> {
    let Some(path) = compared.path.as_deref() else {
        return Vec::new();
    };
    let own = compared.options.sources.first();
    let own = own.map(|source| (path.to_path_buf(), source.text.as_str()));
    let others = compared
        .matrix
        .texts
        .iter()
        .map(|source| (path.with_file_name(&source.name), source.text.as_str()));
    own.into_iter()
        .chain(others)
        .filter(|(file, _)| compared.files.contains(file))
        .collect()
}

impl Table {
    /// Watches what the table on the desk is of.
    pub(super) fn keep(&mut self, desk: &Desk, post: &Post) {
        let wanted = desk.compared.as_ref().and_then(|compared| {
            let mut files = files_of(compared).into_iter().map(|(file, _)| file);
            Some((files.next()?, files.collect()))
        });
        if wanted == self.watched {
            return;
        }
        self.watch = wanted
            .as_ref()
            .map(|(file, others)| Watch::start(file, others, post.clone()).0);
        self.watched = wanted;
    }

    /// Looks whether anything changed.
    pub(super) fn look(&self) {
        if let Some(watch) = &self.watch {
            watch.look();
        }
    }

    /// Something was noticed: where the table is not of what lies on disk any more, it is old from
    /// here on. Returns the file of options, to be compared anew.
    pub(super) fn noticed(&self, desk: &mut Desk) -> Option<PathBuf> {
        let compared = desk.compared.as_mut()?;
        let changed = files_of(compared)
            .into_iter()
            .find(|(file, was)| files::read(file).ok().as_deref() != Some(*was))
            .map(|(file, _)| file)?;
        let path = compared.path.clone();
        let is_news = !compared.is_stale;
        compared.is_stale = true;
        // A bay of the old table that lies in no file is not shown as one of now.
        let of_the_table = desk
            .beside
            .as_ref()
            .is_some_and(|beside| beside.desk.document.path().is_none());
        if of_the_table {
            desk.take_beside_away();
        }
        if is_news {
            let name = changed.file_name().unwrap_or_default().to_string_lossy();
            let text = format!("{name} changed on disk: the table is old until it is made anew.");
            tell(desk, false, text);
        }
        path
    }

    /// A table that was made anew is listed as the old one was.
    pub(super) fn renewed(compared: &mut Compared, old: Option<&Compared>) {
        if let Some(old) = old.filter(|old| old.path.is_some() && old.path == compared.path) {
            compared.is_open = old.is_open;
            compared.sort = old.sort;
            compared.filter.clone_from(&old.filter);
            compared.detail = old.detail;
        }
    }
}
