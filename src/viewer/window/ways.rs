//! Through which names is a file reached, and in which folders do they stand?
//!
//! A name may be a link, or lead through one; a folder may not be there yet, or be put in another's
//! place. Whoever wants to know of every change of a file has to watch all of that.

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::{Path, PathBuf};

/// Links that may follow one another: as many as the system follows.
const MOST_LINKS: usize = 40;

/// What is to be watched for some files: names, each under the true name of its folder, as the
/// system tells of them.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub(super) struct Ways(BTreeSet<PathBuf>);

impl Ways {
    /// To files, there or not, that are reached from the folder of the bay file.
    pub(super) fn to<'a>(files: impl IntoIterator<Item = &'a Path>, bay_file: &Path) -> Self {
        let home = bay_file.parent().and_then(|home| home.canonicalize().ok());
        let mut ways = BTreeSet::new();
        for file in files {
            let mut open = vec![file.to_path_buf()];
            let mut links = 0;
            while let Some(at) = open.pop() {
                for step in at.ancestors() {
                    let Some((folder, way)) = in_its_folder(step) else {
                        continue;
                    };
                    // Above the bay's folder nothing is watched: nobody moves that unnoticed.
                    let is_inside = home.as_ref().is_some_and(|home| folder.starts_with(home));
                    if !is_inside && step != at {
                        break;
                    }
                    ways.insert(way);
                    if let Ok(to) = fs::read_link(step)
                        && links < MOST_LINKS
                        && let Ok(rest) = at.strip_prefix(step)
                    {
                        links += 1;
                        let to = folder.join(to);
                        open.push(if rest.as_os_str().is_empty() {
                            to
                        } else {
                            to.join(rest)
                        });
                    }
                }
            }
        }
        Self(ways)
    }

    /// Whether a change of what has this name may concern one of the files.
    pub(super) fn lead_over(&self, changed: &Path) -> bool {
        self.0.contains(changed)
    }

    fn folders(&self) -> impl Iterator<Item = &Path> {
        self.0.iter().filter_map(|way| way.parent())
    }
}

/// The true name of the folder that something stands in, and its name there; none while there is no
/// such folder.
fn in_its_folder(step: &Path) -> Option<(PathBuf, PathBuf)> {
    let name = step.file_name()?;
    let folder = step.parent()?.canonicalize().ok()?;
    let way = folder.join(name);
    Some((folder, way))
}

/// The folders to watch, each with what tells it from another of that name.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Plan(BTreeMap<PathBuf, Identity>);

impl Plan {
    /// For all of these ways.
    pub(super) fn of(ways: [&Ways; 2]) -> Self {
        let folders = ways.into_iter().flat_map(Ways::folders);
        Self(folders.map(|at| (at.to_path_buf(), identity(at))).collect())
    }

    /// The folders.
    pub(super) fn folders(&self) -> impl Iterator<Item = &Path> {
        self.0.keys().map(PathBuf::as_path)
    }
}

#[cfg(unix)]
type Identity = Option<(u64, u64)>;

#[cfg(unix)]
fn identity(folder: &Path) -> Identity {
    use std::os::unix::fs::MetadataExt as _;
    let known = fs::metadata(folder).ok()?;
    Some((known.dev(), known.ino()))
}

#[cfg(not(unix))]
type Identity = Option<std::time::SystemTime>;

#[cfg(not(unix))]
fn identity(folder: &Path) -> Identity {
    fs::metadata(folder).ok()?.created().ok()
}

#[cfg(test)]
#[cfg(unix)]
mod tests {
    use std::os::unix::fs::symlink;

    use super::*;

    fn home() -> (tempfile::TempDir, PathBuf) {
        let folder = tempfile::tempdir().unwrap();
        let home = folder.path().canonicalize().unwrap();
        (folder, home)
    }

    fn plan(ways: &Ways) -> Plan {
        Plan::of([ways, &Ways::default()])
    }

    fn folders(ways: &Ways) -> Vec<PathBuf> {
        plan(ways).folders().map(Path::to_path_buf).collect()
    }

    #[test]
    fn links_and_detours_are_followed() {
        let (_folder, home) = home();
        fs::create_dir(home.join("real")).unwrap();
        fs::write(home.join("real/own.ron"), "()").unwrap();
        symlink("second.ron", home.join("link.ron")).unwrap();
        symlink("real/own.ron", home.join("second.ron")).unwrap();
        symlink("real", home.join("folder")).unwrap();
        let to = |name: &str| Ways::to([home.join(name).as_path()], &home.join("bay.ron"));
        for (name, over) in [
            (
                "link.ron",
                &["link.ron", "second.ron", "real", "real/own.ron"][..],
            ),
            ("folder/own.ron", &["folder", "real", "real/own.ron"]),
            ("real/../real/own.ron", &["real", "real/own.ron"]),
        ] {
            let ways = to(name);
            for way in over {
                assert!(
                    ways.lead_over(&home.join(way)),
                    "{name} over {way}: {ways:?}"
                );
            }
            assert!(!ways.lead_over(&home.join("real/other.ron")));
            assert_eq!(folders(&ways), [home.clone(), home.join("real")], "{name}");
        }
        // A link that leads to itself leads nowhere.
        symlink("round.ron", home.join("round.ron")).unwrap();
        assert!(to("round.ron").lead_over(&home.join("round.ron")));
    }

    #[test]
    fn a_bay_that_is_a_link_is_watched_where_it_lies() {
        let ((_one, home), (_two, away)) = (home(), home());
        fs::write(away.join("bay.ron"), "()").unwrap();
        symlink(away.join("bay.ron"), home.join("bay.ron")).unwrap();
        let file = home.join("bay.ron");
        let ways = Ways::to([file.as_path()], &file);
        assert!(ways.lead_over(&file) && ways.lead_over(&away.join("bay.ron")));
        assert_eq!(folders(&ways).len(), 2);
    }

    #[test]
    fn a_folder_that_comes_or_is_replaced_makes_another_plan() {
        let (_folder, home) = home();
        let ways = || Ways::to([home.join("a/b/own.ron").as_path()], &home.join("bay.ron"));
        let none = ways();
        assert_eq!(folders(&none), std::slice::from_ref(&home));
        assert!(none.lead_over(&home.join("a")), "what is to come");
        fs::create_dir_all(home.join("a/b")).unwrap();
        assert_eq!(
            folders(&ways()),
            [home.clone(), home.join("a"), home.join("a/b")]
        );
        let there = plan(&ways());
        fs::write(home.join("a/b/own.ron"), "()").unwrap();
        assert_eq!(plan(&ways()), there);
        fs::rename(home.join("a"), home.join("old")).unwrap();
        fs::create_dir_all(home.join("a/b")).unwrap();
        assert_ne!(
            plan(&ways()),
            there,
            "the folder that is watched is another one"
        );
    }
}
