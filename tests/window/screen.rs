//! A display of our own, and hands at its mouse and keyboard.

use std::io::{BufRead as _, BufReader};
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};

/// A virtual display; it goes when this is dropped.
pub(crate) struct Screen {
    server: Child,
    display: String,
}

/// Whether a program can be started here.
fn installed(program: &str, argument: &str) -> bool {
    Command::new(program)
        .arg(argument)
        .stdout(Stdio::null())
        .stderr(Stdio::null())
        .status()
        .is_ok()
}

impl Screen {
    /// Starts a display; none where that is not possible, which is an error where tests must run.
    pub(crate) fn start() -> Option<Self> {
        let missing: Vec<&str> = [("Xvfb", "-help"), ("xdotool", "version")]
            .into_iter()
            .filter(|(program, argument)| !installed(program, argument))
            .map(|(program, _)| program)
            .collect();
        if !missing.is_empty() {
            let missing = missing.join(" and ");
            assert!(std::env::var_os("CI").is_none(), "not installed: {missing}");
            eprintln!("skipped: {missing} not installed, the window is not tried here");
            return None;
        }
        // The server chooses a free number and prints it.
        let mut server = Command::new("Xvfb")
            .args([
                "-displayfd",
                "1",
                "-screen",
                "0",
                "1280x800x24",
                "-nolisten",
                "tcp",
            ])
            .stdin(Stdio::null())
            .stdout(Stdio::piped())
            .stderr(Stdio::null())
            .spawn()
            .unwrap();
        let mut number = String::new();
        BufReader::new(server.stdout.take().unwrap())
            .read_line(&mut number)
            .unwrap();
        let number: u32 = number.trim().parse().expect("a display of our own");
        Some(Self {
            server,
            display: format!(":{number}"),
        })
    }

    /// The display's name.
    pub(crate) fn display(&self) -> &str {
        &self.display
    }

    /// Runs the hands with these words and returns what they say.
    pub(crate) fn hands(&self, words: &[&str]) -> String {
        let output = Command::new("xdotool")
            .env("DISPLAY", &self.display)
            .args(words)
            .output()
            .unwrap();
        String::from_utf8_lossy(&output.stdout).trim().to_owned()
    }

    /// The newest window whose title matches, once it is there and has the keyboard.
    pub(crate) fn focus(&self, title: &str) -> bool {
        let found = self.hands(&["search", "--name", title]);
        let Some(window) = found.lines().last() else {
            return false;
        };
        self.hands(&["windowfocus", window]);
        true
    }

    /// Asks the newest window whose title matches to close, as its close button does: by the
    /// message WM_DELETE_WINDOW of the window protocols.
    pub(crate) fn press_close_button(&self, title: &str) {
        use x11rb::protocol::xproto::{ClientMessageEvent, ConnectionExt as _, EventMask};
        let found = self.hands(&["search", "--name", title]);
        let window: u32 = found.lines().last().unwrap().parse().unwrap();
        let (server, _) = x11rb::connect(Some(&self.display)).unwrap();
        let atom = |name: &[u8]| {
            let cookie = server.intern_atom(false, name).unwrap();
            cookie.reply().unwrap().atom
        };
        let (protocols, delete) = (atom(b"WM_PROTOCOLS"), atom(b"WM_DELETE_WINDOW"));
        let message = ClientMessageEvent::new(32, window, protocols, [delete, 0, 0, 0, 0]);
        let sent = server.send_event(false, window, EventMask::NO_EVENT, message);
        sent.unwrap().check().unwrap();
    }

    /// Presses a key or a chord, as in `ctrl+s`.
    pub(crate) fn key(&self, chord: &str) {
        self.hands(&["key", chord]);
    }

    /// Clicks at a place of the screen.
    pub(crate) fn click(&self, x: i32, y: i32) {
        let (x, y) = (x.to_string(), y.to_string());
        self.hands(&["mousemove", &x, &y]);
        // As long as a hand takes.
        std::thread::sleep(std::time::Duration::from_millis(200));
        self.hands(&["click", "1"]);
    }

    /// Leaves a picture of the screen in the build folder, where that can be taken.
    pub(crate) fn picture(&self, name: &str) {
        let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join("window");
        std::fs::create_dir_all(&folder).unwrap();
        let file: PathBuf = folder.join(format!("{name}.png"));
        let taken = Command::new("import")
            .env("DISPLAY", &self.display)
            .args(["-window", "root"])
            .arg(&file)
            .stdout(Stdio::null())
            .stderr(Stdio::null())
            .status();
        if taken.is_ok_and(|status| status.success()) {
            eprintln!("picture: {}", file.display());
        }
    }
}

impl Drop for Screen {
    fn drop(&mut self) {
        let _ = self.server.kill();
        let _ = self.server.wait();
    }
}
