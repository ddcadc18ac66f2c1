//! The program with its window open, and what it tells of itself.

use std::io::{BufRead as _, BufReader};
use std::path::Path;
use std::process::{Child, Command, Stdio};
use std::sync::{Arc, Mutex};
use std::time::{Duration, Instant};

use crate::screen::Screen;

/// As long as anything may take on a slow machine without a graphics card.
const PATIENCE: Duration = Duration::from_secs(90);

/// The program, ready to be given arguments, with no display unless one is given.
pub(crate) fn command(display: Option<&str>, home: &Path) -> Command {
    let mut command = Command::new(env!("CARGO_BIN_EXE_bayrise"));
    for name in ["WAYLAND_DISPLAY", "WAYLAND_SOCKET", "DISPLAY"] {
        command.env_remove(name);
    }
    // No settings of the person who runs the tests, and no dialogs of their desktop.
    command.env_remove("DBUS_SESSION_BUS_ADDRESS");
    command.env_remove("XDG_RUNTIME_DIR");
    for name in ["HOME", "XDG_CONFIG_HOME"] {
        command.env(name, home);
    }
    if let Some(display) = display {
        command.env("DISPLAY", display);
    }
    command
}

/// The program with its window open.
pub(crate) struct Program {
    child: Child,
    said: Arc<Mutex<Vec<String>>>,
}

impl Program {
    /// Opens the window on a file and waits until it is drawn and has the keyboard.
    pub(crate) fn open(screen: &Screen, file: &Path) -> Self {
        Self::open_with(screen, file, &[])
    }

    /// The same with another bay beside it.
    pub(crate) fn open_beside(screen: &Screen, file: &Path, other: &Path) -> Self {
        Self::start(screen, file, Some(other), &[])
    }

    /// The same with more of an environment.
    pub(crate) fn open_with(screen: &Screen, file: &Path, extra: &[(&str, &str)]) -> Self {
        Self::start(screen, file, None, extra)
    }

    /// The same on a file of options for a bay file.
    pub(crate) fn open_table(screen: &Screen, options: &Path, base: &str) -> Self {
        Self::start_named(screen, options, None, &[], base)
    }

    fn start(screen: &Screen, file: &Path, other: Option<&Path>, extra: &[(&str, &str)]) -> Self {
        let name = file.file_name().unwrap().to_str().unwrap();
        Self::start_named(screen, file, other, extra, name)
    }

    fn start_named(
        screen: &Screen,
        file: &Path,
        other: Option<&Path>,
        extra: &[(&str, &str)],
        name: &str,
    ) -> Self {
        let home = file.parent().unwrap().join("home");
        std::fs::create_dir_all(&home).unwrap();
        let mut child = command(Some(screen.display()), &home)
            .arg("view")
            .arg(file)
            .args(
                other
                    .iter()
                    .flat_map(|other| [Path::new("--beside"), *other]),
            )
            .env("BAYRISE_TRACE_START", "1")
            .envs(extra.iter().copied())
            .stdin(Stdio::null())
            .stdout(Stdio::null())
            .stderr(Stdio::piped())
            .spawn()
            .unwrap();
        let said = Arc::new(Mutex::new(Vec::new()));
        let lines = BufReader::new(child.stderr.take().unwrap()).lines();
        let into = Arc::clone(&said);
        std::thread::spawn(move || {
            for line in lines.map_while(Result::ok) {
                into.lock().unwrap().push(line);
            }
        });
        let mut program = Self { child, said };
        program.wait_until("the first picture is drawn", |said| {
            said.iter().any(|line| line.contains("frame 3 is drawn"))
        });
        let start = Instant::now();
        while !screen.focus(name) {
            assert!(start.elapsed() < PATIENCE, "no window named {name}");
            std::thread::sleep(Duration::from_millis(50));
        }
        program
    }

    /// What it told so far.
    pub(crate) fn said(&self) -> Vec<String> {
        self.said.lock().unwrap().clone()
    }

    /// Waits until what it told meets a condition.
    pub(crate) fn wait_until(&mut self, what: &str, met: impl Fn(&[String]) -> bool) {
        let start = Instant::now();
        while !met(&self.said()) {
            if let Some(status) = self.child.try_wait().unwrap() {
                panic!("ended with {status} before {what}: {:#?}", self.said());
            }
            assert!(
                start.elapsed() < PATIENCE,
                "waited in vain until {what}: {:#?}",
                self.said()
            );
            std::thread::sleep(Duration::from_millis(20));
        }
    }

    /// Waits until the last state it told holds all of these words.
    pub(crate) fn wait_for_state(&mut self, words: &[&str]) -> String {
        self.wait_until(&format!("the state is {words:?}"), |said| {
            last_state(said).is_some_and(|state| words.iter().all(|word| state.contains(word)))
        });
        last_state(&self.said()).unwrap()
    }

    /// Waits until nothing is drawn any more: what was asked for is on the screen.
    pub(crate) fn wait_for_frames(&self) {
        let drawn = |said: &[String]| said.iter().filter(|line| line.contains("drawn")).count();
        let start = Instant::now();
        let mut before = usize::MAX;
        loop {
            let now = drawn(&self.said());
            if now == before {
                return;
            }
            before = now;
            assert!(start.elapsed() < PATIENCE, "it never comes to rest");
            std::thread::sleep(Duration::from_millis(900));
        }
    }

    /// The value of one word of the last state.
    pub(crate) fn state(&self, name: &str) -> String {
        let state = last_state(&self.said()).unwrap();
        let (_, rest) = state.split_once(&format!("{name}=")).unwrap();
        rest.split(';').next().unwrap().trim().to_owned()
    }

    /// When a milestone was reached, seconds after the start.
    pub(crate) fn reached(&self, milestone: &str) -> f64 {
        let said = self.said();
        let line = said.iter().find(|line| line.contains(milestone)).unwrap();
        line.split_whitespace().nth(1).unwrap().parse().unwrap()
    }

    /// Whether it is gone.
    pub(crate) fn has_ended(&mut self) -> bool {
        self.child.try_wait().unwrap().is_some()
    }

    /// Its number among the processes.
    pub(crate) fn id(&self) -> u32 {
        self.child.id()
    }

    /// Waits for its end and returns how it ended; nothing may be said on the way.
    pub(crate) fn end(self) -> i32 {
        let (code, said) = self.end_and_say();
        assert!(said.is_empty(), "nothing is said unasked: {said:?}");
        code
    }

    /// Waits for its end and returns how it ended and what it said to the person.
    pub(crate) fn end_and_say(mut self) -> (i32, Vec<String>) {
        let start = Instant::now();
        loop {
            if let Some(status) = self.child.try_wait().unwrap() {
                // What was written last may still be on its way.
                std::thread::sleep(Duration::from_millis(100));
                let mut said = self.said();
                said.retain(|line| !line.starts_with("trace"));
                return (status.code().unwrap_or(-1), said);
            }
            assert!(
                start.elapsed() < PATIENCE,
                "it does not end: {:#?}",
                self.said()
            );
            std::thread::sleep(Duration::from_millis(20));
        }
    }

    /// Ends it in disorder.
    pub(crate) fn kill(mut self) {
        self.child.kill().unwrap();
        self.child.wait().unwrap();
    }
}

impl Drop for Program {
    fn drop(&mut self) {
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}

fn last_state(said: &[String]) -> Option<String> {
    said.iter().rfind(|line| line.contains("state:")).cloned()
}
