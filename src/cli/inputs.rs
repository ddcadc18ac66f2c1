//! Which files went in, so that nothing is ever written over them?

use std::path::{Path, PathBuf};

/// A file that was read, as the person named it or as it was found, and what it is.
#[derive(Debug, Clone)]
pub(super) struct Input {
    pub(super) path: PathBuf,
    pub(super) what: &'static str,
}

impl Input {
    /// The bay file itself.
    pub(super) fn bay(path: &Path) -> Self {
        Self {
            path: path.into(),
            what: "the bay file",
        }
    }
}

/// Whether two names lead to one file, through whatever folders, links or letter case. What is not
/// there, or is no file, is the same as nothing but its own name.
pub(super) fn is_same(a: &Path, b: &Path) -> bool {
    // Only files are opened: a pipe would wait for ever.
    a == b || (a.is_file() && b.is_file() && same_file::is_same_file(a, b).unwrap_or(false))
}

#[cfg(test)]
mod tests {
    use std::fs;

    use super::*;
    use crate::cli::files::can_be_written;

    #[test]
    fn nothing_that_was_read_is_written_over() {
        let folder = tempfile::tempdir().unwrap();
        let at = |name: &str| folder.path().join(name);
        fs::create_dir(at("below")).unwrap();
        fs::write(at("bay.ron"), "one").unwrap();
        fs::write(at("other.ron"), "two").unwrap();
        let inputs = [Input::bay(&at("bay.ron"))];
        let mut same = vec![at("bay.ron"), at("below/../bay.ron"), at("./bay.ron")];
        #[cfg(unix)]
        {
            std::os::unix::fs::symlink(at("bay.ron"), at("link.html")).unwrap();
            std::os::unix::fs::symlink(folder.path(), at("below/up")).unwrap();
            same.extend([at("link.html"), at("below/up/bay.ron")]);
        }
        fs::hard_link(at("bay.ron"), at("hard.html")).unwrap();
        same.push(at("hard.html"));
        // Where letter case makes no difference, it makes none here.
        if at("BAY.RON").exists() {
            same.push(at("BAY.RON"));
        }
        for path in same {
            let refused = can_be_written(&path, &inputs).unwrap_err().said();
            assert!(refused.contains("it is the bay file"), "{refused}");
        }
        for path in [at("other.ron"), at("new.html")] {
            assert!(can_be_written(&path, &inputs).is_ok());
        }
        // A name that is not saved yet would be saved there.
        assert!(can_be_written(&at("new.ron"), &[Input::bay(&at("new.ron"))]).is_err());
    }
}
