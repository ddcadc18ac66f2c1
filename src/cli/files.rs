//! How are files read without trusting them, and written without half a file left behind?

use std::collections::HashMap;
use std::fs::{self, File};
use std::io::{Read as _, Write as _};
use std::path::{Path, PathBuf};
use std::sync::{Mutex, PoisonError};

use tempfile::NamedTempFile;

use super::Failure;
use super::inputs::{Input, is_same};
use super::unfinished;
use crate::bayfile::presets::{PresetError, PresetSource};
use crate::bayfile::syntax::limits::FILE_BYTES;

/// Why a file can't be read.
enum Unread {
    Missing,
    Because(String),
}

/// The bytes of a regular file, but never more than one past the limit: enough for the reader to
/// see that it is too large.
fn read_capped(path: &Path) -> Result<Vec<u8>, Unread> {
    let because = |error: std::io::Error| match error.kind() {
        std::io::ErrorKind::NotFound | std::io::ErrorKind::NotADirectory => Unread::Missing,
        _ => Unread::Because(error.to_string()),
    };
    // Asked before opening: opening a pipe with no writer would wait for ever.
    let kind = fs::metadata(path).map_err(because)?;
    if kind.is_dir() {
        return Err(Unread::Because("it is a folder".into()));
    }
    if !kind.is_file() {
        return Err(Unread::Because(
            "it is a device, a pipe or a socket, not a file".into(),
        ));
    }
    let mut bytes = Vec::new();
    File::open(path)
        .and_then(|file| file.take(FILE_BYTES as u64 + 1).read_to_end(&mut bytes))
        .map_err(because)?;
    Ok(bytes)
}

/// The bytes of a bay file.
pub(crate) fn bay_file(path: &Path) -> Result<Vec<u8>, Failure> {
    read_capped(path).map_err(|unread| match unread {
        Unread::Missing => missing(path),
        Unread::Because(why) => Failure::new(
            format!("{} can't be read: {why}", path.display()),
            "name a bay file, as in `bayrise check my-bay.ron`",
        ),
    })
}

/// The bytes of a file of readings.
pub(super) fn readings_file(path: &Path) -> Result<Vec<u8>, Failure> {
    read_capped(path).map_err(|unread| {
        let help = "name the bay file and then a file of readings, as in `bayrise asbuilt my-bay.ron \
                    measured.ron`; `bayrise asbuilt --help` shows one";
        let message = match unread {
            Unread::Missing => format!("there is no file of readings {}", path.display()),
            Unread::Because(why) => format!("{} can't be read: {why}", path.display()),
        };
        Failure::new(message, help)
    })
}

/// A file that is not there; it may be a command with a slip in it.
fn missing(path: &Path) -> Failure {
    let word = path.to_string_lossy();
    let commands = [
        "check",
        "asbuilt",
        "compare",
        "view",
        "picture",
        "layout",
        "report",
        "model",
        "card",
        "record",
        "plan",
        "solids",
        "presets",
        "worksheet",
        "new",
        "schema",
        "help",
    ];
    let help = match nearest(&word, commands.into_iter()) {
        Some(command) => format!("did you mean the command `{command}`?"),
        None => "`bayrise new` writes a file to start from".into(),
    };
    Failure::new(format!("there is no file {}", path.display()), help)
}

/// The known name nearest to a mistyped one; none when none is near.
pub(super) fn nearest<'a>(typed: &str, known: impl Iterator<Item = &'a str>) -> Option<&'a str> {
    known
        .map(|name| (strsim::normalized_damerau_levenshtein(typed, name), name))
        .filter(|(likeness, _)| *likeness >= 0.5)
        .max_by(|(a, _), (b, _)| a.total_cmp(b))
        .map(|(_, name)| name)
}

/// The presets beside a bay file. Nothing outside the file's folder is read, through whatever
/// link.
pub(crate) struct Folder {
    /// None when the folder itself can't be found.
    canonical: Option<PathBuf>,
}

impl Folder {
    /// The folder of a bay file.
    pub(crate) fn of(bay_file: &Path) -> Self {
        let folder = match bay_file.parent() {
            Some(parent) if !parent.as_os_str().is_empty() => parent,
            _ => Path::new("."),
        };
        Self {
            canonical: folder.canonicalize().ok(),
        }
    }
}

impl PresetSource for Folder {
    fn load(&self, path: &str) -> Result<Vec<u8>, PresetError> {
        let folder = self.canonical.as_ref().ok_or(PresetError::Missing)?;
        let file = folder
            .join(path)
            .canonicalize()
            .map_err(|error| match error.kind() {
                std::io::ErrorKind::NotFound | std::io::ErrorKind::NotADirectory => {
                    PresetError::Missing
                }
                _ => PresetError::Unreadable(error.to_string()),
            })?;
        if !file.starts_with(folder) {
            return Err(PresetError::Outside);
        }
        read_capped(&file).map_err(|unread| match unread {
            Unread::Missing => PresetError::Missing,
            Unread::Because(why) => PresetError::Unreadable(why),
        })
    }
}

/// Presets that are read once: who asks again gets what was there the first time, so that everything
/// made in one run is made of the same bytes.
pub(super) struct Once {
    folder: Folder,
    read: Mutex<HashMap<String, Result<Vec<u8>, PresetError>>>,
}

impl Once {
    /// Of the folder of a bay file.
    pub(super) fn of(bay_file: &Path) -> Self {
        Self {
            folder: Folder::of(bay_file),
            read: Mutex::default(),
        }
    }

    /// Every preset file that was read so far.
    pub(super) fn inputs(&self) -> Vec<Input> {
        let read = self.read.lock().unwrap_or_else(PoisonError::into_inner);
        let names = read.iter().filter(|(_, bytes)| bytes.is_ok());
        let places = names.filter_map(|(name, _)| Some(self.folder.canonical.as_ref()?.join(name)));
        places
            .map(|path| Input {
                path,
                what: "a preset of the bay file",
            })
            .collect()
    }
}

impl PresetSource for Once {
    fn load(&self, path: &str) -> Result<Vec<u8>, PresetError> {
        let mut read = self.read.lock().unwrap_or_else(PoisonError::into_inner);
        read.entry(path.into())
            .or_insert_with(|| self.folder.load(path))
            .clone()
    }
}

/// Writes a file in one step over the one that may be there, which keeps its permissions; through
/// a link, the file it leads to is written and the link stays.
#[cfg(any(test, feature = "viewer"))]
pub(crate) fn overwrite(path: &Path, text: &str) -> Result<(), Failure> {
    let target = path.canonicalize();
    let target = target.as_deref().unwrap_or(path);
    let permissions = fs::metadata(target).map(|known| known.permissions()).ok();
    write(target, text, true)?;
    // Written already: a folder that keeps no permissions is no reason to say that it failed.
    if let Some(permissions) = permissions {
        let _ = fs::set_permissions(target, permissions);
    }
    Ok(())
}

const READ_ONLY: &str = "it is read-only";
const READ_ONLY_HELP: &str = "allow writing it first (`chmod u+w` where that exists), or choose \
                              another name";

/// What the system says, without the name of the temporary file that it says it of.
fn plainly(error: &std::io::Error) -> String {
    let said = error.to_string();
    let plain = said.split(" at path ").next().unwrap_or(&said);
    plain.to_owned()
}

/// A file that may not be written is kept as it is, though its folder would let it be replaced.
fn is_kept(path: &Path) -> bool {
    use std::io::ErrorKind::{PermissionDenied, ReadOnlyFilesystem};
    let Ok(known) = fs::metadata(path) else {
        return false;
    };
    // Someone else's, say. Opened alone, nothing of it changes.
    let is_refused = || match File::options().write(true).open(path) {
        Err(error) => matches!(error.kind(), PermissionDenied | ReadOnlyFilesystem),
        Ok(_) => false,
    };
    known.is_file() && (known.permissions().readonly() || is_refused())
}

fn cannot(path: &Path, why: impl std::fmt::Display, help: &str) -> Failure {
    Failure::new(format!("{} can't be written: {why}", path.display()), help)
}

/// The folder that a file lies in.
fn folder_of(path: &Path) -> &Path {
    match path.parent() {
        Some(parent) if !parent.as_os_str().is_empty() => parent,
        _ => Path::new("."),
    }
}

/// Says early what would keep a file from being written after a long work. Of what went in, nothing
/// is ever written over: a person's bay file would be lost.
pub(super) fn can_be_written(path: &Path, inputs: &[Input]) -> Result<(), Failure> {
    if let Some(input) = inputs.iter().find(|input| is_same(path, &input.path)) {
        return Err(cannot(
            path,
            format!("it is {}, which would be lost", input.what),
            "name another file",
        ));
    }
    if path.is_dir() {
        return Err(cannot(path, "it is a folder", "name a file in it"));
    }
    if is_kept(path) {
        return Err(cannot(path, READ_ONLY, READ_ONLY_HELP));
    }
    if !folder_of(path).is_dir() {
        let why = format!("there is no folder {}", folder_of(path).display());
        return Err(cannot(path, why, "make the folder first"));
    }
    Ok(())
}

/// Says early what would keep a new file from being written.
pub(super) fn can_be_made(path: &Path, replace: bool) -> Result<(), Failure> {
    can_be_written(path, &[])?;
    if !replace && path.symlink_metadata().is_ok() {
        return Err(there_already(path));
    }
    Ok(())
}

fn there_already(path: &Path) -> Failure {
    cannot(
        path,
        "it is there already",
        "choose another name, or replace it with --force",
    )
}

/// Writes a file in one step over the one that may be there.
pub(super) fn replace(path: &Path, bytes: &[u8]) -> Result<(), Failure> {
    write_bytes(path, bytes, true)
}

/// Writes a file in one step: it is there whole, or as it was before. Without `replace` an
/// existing file is left alone, even one that appears meanwhile.
pub(super) fn write(path: &Path, text: &str, replace: bool) -> Result<(), Failure> {
    write_bytes(path, text.as_bytes(), replace)
}

/// The bytes in a temporary file beside the one that they are for; it goes away unless it is kept.
fn beside(path: &Path, bytes: &[u8]) -> Result<Beside, Failure> {
    let mut builder = tempfile::Builder::new();
    builder.prefix(".bayrise-new-");
    // A new file's usual permissions, less what the person's mask takes away.
    #[cfg(unix)]
    builder.permissions(std::os::unix::fs::PermissionsExt::from_mode(0o666));
    let held = unfinished::hold();
    let file = builder.tempfile_in(folder_of(path)).map_err(|error| {
        let help = "check that the folder is there and may be written";
        cannot(path, plainly(&error), help)
    })?;
    unfinished::began(file.path());
    drop(held);
    let mut file = Beside {
        path: file.path().to_path_buf(),
        file: Some(file),
    };
    file.written(bytes)
        .map_err(|error| cannot(path, plainly(&error), ""))?;
    Ok(file)
}

/// A temporary file, known to whoever ends the program; it goes away unless it is kept.
struct Beside {
    path: PathBuf,
    /// There until it is kept.
    file: Option<NamedTempFile>,
}

impl Beside {
    fn written(&mut self, bytes: &[u8]) -> std::io::Result<()> {
        let Some(file) = &mut self.file else {
            return Ok(());
        };
        file.write_all(bytes)?;
        file.as_file().sync_all()
    }

    /// Puts it in its place; over what is there only where that is asked.
    fn keep(mut self, path: &Path, replace: bool) -> std::io::Result<()> {
        let Some(file) = self.file.take() else {
            return Ok(());
        };
        let kept = if replace {
            file.persist(path)
        } else {
            file.persist_noclobber(path)
        };
        kept.map(drop).map_err(|error| error.error)
    }
}

impl Drop for Beside {
    fn drop(&mut self) {
        drop(self.file.take());
        unfinished::ended(&self.path);
    }
}

/// What one file of a set was before the set was written.
struct Before<'a> {
    path: &'a Path,
    /// What it held, beside it; none where there was no file.
    held: Option<Beside>,
}

/// Writes several files over those that may be there: all of them, or none, and then those that
/// were there are as they were.
pub(super) fn replace_all(files: &[(PathBuf, Vec<u8>)]) -> Result<(), Failure> {
    if let [(path, bytes)] = files {
        return replace(path, bytes);
    }
    let mut new = Vec::with_capacity(files.len());
    for (path, bytes) in files {
        can_be_written(path, &[])?;
        new.push(beside(path, bytes)?);
    }
    let mut before = Vec::with_capacity(files.len());
    for (path, _) in files {
        let held = match fs::read(path) {
            Ok(bytes) => {
                let copy = beside(path, &bytes)?;
                if let (Ok(known), Some(file)) = (fs::metadata(path), &copy.file) {
                    // A folder that keeps no permissions is no reason to stop.
                    let _ = file.as_file().set_permissions(known.permissions());
                }
                Some(copy)
            }
            Err(error) if error.kind() == std::io::ErrorKind::NotFound => None,
            Err(error) => return Err(cannot(path, plainly(&error), "")),
        };
        before.push(Before { path, held });
    }
    // All of them are put in their places, or none.
    let _held = unfinished::hold();
    for (index, (file, (path, _))) in new.into_iter().zip(files).enumerate() {
        if let Err(error) = file.keep(path, true) {
            put_back(before.into_iter().take(index));
            let why = plainly(&error);
            return Err(cannot(path, why, "nothing of the set is written"));
        }
    }
    Ok(())
}

/// Undoes what was written of a set.
fn put_back<'a>(written: impl Iterator<Item = Before<'a>>) {
    for before in written {
        // Nothing better can be done where even this fails; the error that led here is told.
        match before.held {
            Some(held) => drop(held.keep(before.path, true)),
            None => drop(fs::remove_file(before.path)),
        }
    }
}

fn write_bytes(path: &Path, bytes: &[u8], replace: bool) -> Result<(), Failure> {
    if path.is_dir() {
        return Err(cannot(path, "it is a folder", "name a file in it"));
    }
    if !replace && path.symlink_metadata().is_ok() {
        return Err(there_already(path));
    }
    if is_kept(path) {
        return Err(cannot(path, READ_ONLY, READ_ONLY_HELP));
    }
    let file = beside(path, bytes)?;
    match file.keep(path, replace) {
        Ok(()) => Ok(()),
        Err(error) if error.kind() == std::io::ErrorKind::AlreadyExists => Err(there_already(path)),
        Err(error) => Err(cannot(path, plainly(&error), "")),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn presets_stay_in_the_folder() {
        let outside = tempfile::tempdir().unwrap();
        fs::write(outside.path().join("secret.ron"), "()").unwrap();
        let inside = tempfile::tempdir().unwrap();
        fs::create_dir(inside.path().join("lifts")).unwrap();
        fs::write(inside.path().join("lifts/mine.ron"), "(1)").unwrap();
        let folder = Folder::of(&inside.path().join("bay.ron"));
        assert_eq!(folder.load("lifts/mine.ron"), Ok(b"(1)".to_vec()));
        assert_eq!(folder.load("no.ron"), Err(PresetError::Missing));
        assert!(matches!(
            folder.load("lifts"),
            Err(PresetError::Unreadable(_))
        ));
        #[cfg(unix)]
        {
            let link = inside.path().join("link.ron");
            std::os::unix::fs::symlink(outside.path().join("secret.ron"), link).unwrap();
            assert_eq!(folder.load("link.ron"), Err(PresetError::Outside));
            std::os::unix::fs::symlink(outside.path(), inside.path().join("away")).unwrap();
            assert_eq!(folder.load("away/secret.ron"), Err(PresetError::Outside));
        }
    }

    #[test]
    fn never_more_than_one_byte_past_the_limit() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("large.ron");
        File::create(&path)
            .unwrap()
            .set_len(FILE_BYTES as u64 * 3)
            .unwrap();
        assert_eq!(bay_file(&path).unwrap().len(), FILE_BYTES + 1);
    }

    #[test]
    fn an_existing_file_is_left_alone() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("a.ron");
        assert!(write(&path, "one", false).is_ok());
        assert!(write(&path, "two", false).is_err());
        assert_eq!(fs::read_to_string(&path).unwrap(), "one");
        assert!(write(&path, "two", true).is_ok());
        assert_eq!(fs::read_to_string(&path).unwrap(), "two");
        let left: Vec<_> = fs::read_dir(folder.path()).unwrap().collect();
        assert_eq!(left.len(), 1, "no temporary file is left behind");
    }

    #[test]
    fn a_read_only_file_is_kept() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("a.ron");
        fs::write(&path, "one").unwrap();
        let mut permissions = fs::metadata(&path).unwrap().permissions();
        permissions.set_readonly(true);
        fs::set_permissions(&path, permissions).unwrap();
        let refused = overwrite(&path, "two").unwrap_err().said();
        for words in [
            "a.ron can't be written",
            "read-only",
            "allow writing it",
            "another name",
        ] {
            assert!(refused.contains(words), "{refused}");
        }
        assert!(replace(&path, b"two").is_err());
        assert!(can_be_written(&path, &[]).is_err());
        assert_eq!(fs::read_to_string(&path).unwrap(), "one");
    }

    #[test]
    fn what_fails_is_said_of_the_persons_file() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("not there").join("a.ron");
        for failed in [overwrite(&path, "one"), replace(&path, b"one")] {
            let said = failed.unwrap_err().said();
            assert!(
                said.contains("a.ron") && !said.contains(".bayrise-new-"),
                "{said}"
            );
        }
    }

    #[test]
    fn a_set_that_fails_half_way_leaves_everything_as_it_was() {
        let folder = tempfile::tempdir().unwrap();
        let at = |name: &str| folder.path().join(name);
        fs::write(at("a.svg"), "old a").unwrap();
        // A name that ends like a folder's passes every look at it and can't be given to a file.
        let bad = PathBuf::from(format!("{}/", at("c.svg").display()));
        let set = [
            (at("a.svg"), "new a"),
            (at("b.svg"), "new b"),
            (bad, "new c"),
        ];
        let set = set.map(|(path, text)| (path, text.as_bytes().to_vec()));
        assert!(replace_all(&set).is_err());
        assert_eq!(fs::read_to_string(at("a.svg")).unwrap(), "old a");
        let left = fs::read_dir(folder.path()).unwrap().count();
        assert_eq!(left, 1, "neither pages nor temporary files");
        assert!(replace_all(&set[..2]).is_ok());
        assert_eq!(fs::read_to_string(at("a.svg")).unwrap(), "new a");
        assert_eq!(fs::read_to_string(at("b.svg")).unwrap(), "new b");
        assert_eq!(fs::read_dir(folder.path()).unwrap().count(), 2);
    }

    #[test]
    fn presets_are_read_once() {
        let folder = tempfile::tempdir().unwrap();
        fs::write(folder.path().join("lift.ron"), "(1)").unwrap();
        let once = Once::of(&folder.path().join("bay.ron"));
        assert_eq!(once.load("lift.ron"), Ok(b"(1)".to_vec()));
        fs::write(folder.path().join("lift.ron"), "(2)").unwrap();
        assert_eq!(once.load("lift.ron"), Ok(b"(1)".to_vec()));
    }

    #[cfg(unix)]
    #[test]
    fn a_file_written_over_keeps_its_permissions_and_the_link_to_it() {
        use std::os::unix::fs::PermissionsExt;
        let folder = tempfile::tempdir().unwrap();
        let (file, link) = (folder.path().join("a.ron"), folder.path().join("link.ron"));
        fs::write(&file, "one").unwrap();
        fs::set_permissions(&file, PermissionsExt::from_mode(0o640)).unwrap();
        std::os::unix::fs::symlink(&file, &link).unwrap();
        assert!(overwrite(&link, "two").is_ok());
        assert_eq!(fs::read_to_string(&file).unwrap(), "two");
        assert_eq!(
            fs::metadata(&file).unwrap().permissions().mode() & 0o777,
            0o640
        );
        assert!(fs::symlink_metadata(&link).unwrap().is_symlink());
    }

    #[test]
    fn near_names() {
        let known = ["check", "solids", "presets"];
        assert_eq!(nearest("chekc", known.into_iter()), Some("check"));
        assert_eq!(nearest("bay.ron", known.into_iter()), None);
    }
}
