//! What is said where no window can be opened.

use std::path::Path;

use crate::program::command;
use crate::screen::Screen;

struct Refusal {
    code: Option<i32>,
    stdout: String,
    stderr: String,
}

fn view(display: Option<&str>, extra: &[(&str, &str)], arguments: &[&str]) -> Refusal {
    let home = tempfile::tempdir().unwrap();
    let output = command(display, home.path())
        .envs(extra.iter().copied())
        .args(arguments)
        .output()
        .unwrap();
    Refusal {
        code: output.status.code(),
        stdout: String::from_utf8(output.stdout).unwrap(),
        stderr: String::from_utf8(output.stderr).unwrap(),
    }
}

fn scene(name: &str) -> String {
    format!("{}/scenes/{name}.ron", env!("CARGO_MANIFEST_DIR"))
}

#[track_caller]
fn is_for_people(refusal: &Refusal) {
    for word in ["panicked", "backtrace", "RUST_"] {
        assert!(!refusal.stderr.contains(word), "{}", refusal.stderr);
    }
    assert!(refusal.stderr.lines().count() <= 3, "{}", refusal.stderr);
}

#[test]
fn without_a_display_the_reason_is_said_and_the_program_ends_with_3() {
    for display in [None, Some(":63999")] {
        let refusal = view(display, &[], &["view", &scene("tall-pickup")]);
        assert_eq!(refusal.code, Some(3), "{}", refusal.stderr);
        assert_eq!(refusal.stdout, "");
        assert!(refusal.stderr.contains("display"), "{}", refusal.stderr);
        assert!(
            refusal.stderr.contains("bayrise check"),
            "{}",
            refusal.stderr
        );
        is_for_people(&refusal);
    }
}

#[test]
fn a_file_alone_has_its_verdict_all_the_same() {
    for (name, code) in [("tall-pickup", 0), ("no-safe-lock", 1)] {
        let alone = view(None, &[], &[&scene(name)]);
        let check = view(None, &[], &["check", &scene(name)]);
        assert_eq!(alone.code, Some(code));
        assert_eq!(alone.stdout, check.stdout);
        assert!(
            alone.stderr.contains("no window is opened"),
            "{}",
            alone.stderr
        );
        assert_eq!(alone.stderr.lines().count(), 1, "{}", alone.stderr);
    }
}

#[test]
fn without_a_driver_the_reason_is_said_and_the_program_ends_with_3() {
    let Some(screen) = Screen::start() else {
        return;
    };
    let nothing = [
        ("VK_DRIVER_FILES", "/dev/null"),
        ("VK_ICD_FILENAMES", "/dev/null"),
        ("WGPU_BACKEND", "vulkan"),
    ];
    let refusal = view(
        Some(screen.display()),
        &nothing,
        &["view", &scene("tall-pickup")],
    );
    assert_eq!(refusal.code, Some(3), "{}", refusal.stderr);
    assert!(refusal.stderr.contains("driver"), "{}", refusal.stderr);
    is_for_people(&refusal);
}

#[test]
fn a_broken_file_is_told_and_no_window_opened() {
    let folder = tempfile::tempdir().unwrap();
    let broken = folder.path().join("broken.ron");
    let text = std::fs::read_to_string(scene("tall-pickup")).unwrap();
    std::fs::write(
        &broken,
        text.replacen("\" in\"", "\" inchess\"", 1)
            .replacen('(', "((", 1),
    )
    .unwrap();
    let refusal = view(None, &[], &["view", broken.to_str().unwrap()]);
    assert_eq!(refusal.code, Some(2), "{}", refusal.stderr);
    assert!(refusal.stderr.contains("broken.ron"), "{}", refusal.stderr);
    let missing = view(
        None,
        &[],
        &["view", Path::new("no such.ron").to_str().unwrap()],
    );
    assert_eq!(missing.code, Some(2), "{}", missing.stderr);
}
