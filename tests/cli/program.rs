//! Running the built program.

use std::fs;
use std::path::Path;
use std::process::Command;

/// What a run left behind.
#[derive(Debug)]
pub(crate) struct Run {
    pub(crate) code: i32,
    pub(crate) stdout: String,
    pub(crate) stderr: String,
}

impl Run {
    /// Bad input: exit 2, nothing on standard output, something said.
    #[track_caller]
    pub(crate) fn is_refused(&self) {
        assert_eq!(self.code, 2, "{self:?}");
        assert_eq!(self.stdout, "", "{self:?}");
        assert!(!self.stderr.trim().is_empty(), "{self:?}");
        assert!(!self.stderr.contains("panicked"), "{self:?}");
    }
}

/// The program, ready to be given arguments, in a plain environment.
pub(crate) fn command() -> Command {
    let mut command = Command::new(env!("CARGO_BIN_EXE_bayrise"));
    for name in ["NO_COLOR", "CLICOLOR", "CLICOLOR_FORCE", "FORCE_COLOR"] {
        command.env_remove(name);
    }
    // Nobody is there to close a window.
    for name in ["DISPLAY", "WAYLAND_DISPLAY", "WAYLAND_SOCKET"] {
        command.env_remove(name);
    }
    command
}

/// Runs the program here.
pub(crate) fn bayrise(args: &[&str]) -> Run {
    bayrise_in(Path::new(env!("CARGO_MANIFEST_DIR")), args)
}

/// Runs the program in a folder.
pub(crate) fn bayrise_in(folder: &Path, args: &[&str]) -> Run {
    let output = command().current_dir(folder).args(args).output().unwrap();
    Run {
        code: output.status.code().unwrap(),
        stdout: String::from_utf8(output.stdout).unwrap(),
        stderr: String::from_utf8(output.stderr).unwrap(),
    }
}

/// The path of a shipped scene.
pub(crate) fn scene(name: &str) -> String {
    format!("{}/scenes/{name}.ron", env!("CARGO_MANIFEST_DIR"))
}

/// The first scene.
pub(crate) fn tall_pickup() -> String {
    scene("tall-pickup")
}

/// Every shipped scene.
pub(crate) fn scenes() -> Vec<String> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("scenes");
    let mut scenes: Vec<String> = fs::read_dir(folder)
        .unwrap()
        .map(|entry| entry.unwrap().path().to_str().unwrap().to_owned())
        .filter(|path| path.ends_with(".ron"))
        .collect();
    scenes.sort();
    assert!(scenes.len() >= 8);
    scenes
}
