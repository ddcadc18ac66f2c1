//! Is anything left half written where the program is told to end?

#![cfg(unix)]

use std::fs;
use std::path::Path;
use std::process::{Command, Stdio};
use std::time::{Duration, Instant};

use crate::program::{command, scene};

/// How many temporary files there are.
fn unfinished(folder: &Path) -> usize {
    let names = fs::read_dir(folder).unwrap();
    let names = names.map(|entry| entry.unwrap().file_name().to_string_lossy().into_owned());
    names
        .filter(|name| name.starts_with(".bayrise-new-"))
        .count()
}

/// How many pages there are.
fn pages(folder: &Path) -> usize {
    let names = fs::read_dir(folder).unwrap();
    let names = names.map(|entry| entry.unwrap().file_name().to_string_lossy().into_owned());
    names.filter(|name| name.ends_with(".svg")).count()
}

/// What writes many pages: so many that a signal is in time.
fn many() -> [String; 4] {
    [
        "layout".into(),
        scene("anchors-on-paper"),
        "floor.svg".into(),
        "--full-size".into(),
    ]
}

/// Starts a command that writes many pages, sends it a signal as soon as the first lies beside its
/// place, and says whether it was in time, and how many pages are there.
fn ended_by(signal: &str) -> (bool, usize) {
    let folder = tempfile::tempdir().unwrap();
    let at = folder.path();
    let mut child = command()
        .args(many())
        .current_dir(at)
        .stdout(Stdio::null())
        .stderr(Stdio::null())
        .spawn()
        .unwrap();
    let started = Instant::now();
    while unfinished(at) == 0 && child.try_wait().unwrap().is_none() {
        assert!(started.elapsed() < Duration::from_secs(120));
        std::thread::yield_now();
    }
    let sent = Command::new("kill")
        .args([&format!("-{signal}"), &child.id().to_string()])
        .stderr(Stdio::null())
        .status();
    assert!(sent.is_ok());
    let status = child.wait().unwrap();
    assert_eq!(unfinished(at), 0, "{signal}: {status}");
    (!status.success(), pages(at))
}

#[test]
fn a_request_to_end_leaves_no_temporary_file_and_no_part_of_a_set() {
    let whole = tempfile::tempdir().unwrap();
    let run = command().args(many()).current_dir(whole.path()).output();
    assert!(run.unwrap().status.success());
    let all = pages(whole.path());
    assert!(all > 20);
    let mut in_time = 0;
    for round in 0..12 {
        let signal = if round % 2 == 0 { "TERM" } else { "INT" };
        let (was_ended, pages) = ended_by(signal);
        in_time += usize::from(was_ended);
        // All or none.
        assert!(pages == 0 || pages == all, "{signal}: {pages} pages");
    }
    assert!(in_time > 0, "no signal came while files were written");
}
