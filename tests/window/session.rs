//! Sessions at the window, from opening a bay to leaving it.

use std::path::{Path, PathBuf};
use std::process::Command;
use std::sync::{Mutex, MutexGuard, PoisonError};
use std::time::{Duration, Instant};

use tempfile::TempDir;

use crate::program::{Program, command};
use crate::screen::Screen;

/// One window at a time: on a machine that draws by its processor they would wait for each other.
static ONE_AT_A_TIME: Mutex<()> = Mutex::new(());

pub(crate) struct Room {
    pub(crate) screen: Screen,
    pub(crate) folder: TempDir,
    pub(crate) file: PathBuf,
    _turn: MutexGuard<'static, ()>,
}

/// A screen and a copy of the first scene in a folder of its own; none where windows can't be
/// tried.
pub(crate) fn room() -> Option<Room> {
    let turn = ONE_AT_A_TIME.lock().unwrap_or_else(PoisonError::into_inner);
    let screen = Screen::start()?;
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("tall-pickup.ron");
    std::fs::copy(scene(), &file).unwrap();
    Some(Room {
        screen,
        folder,
        file,
        _turn: turn,
    })
}

pub(crate) fn scene() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("scenes/tall-pickup.ron")
}

pub(crate) fn text(file: &Path) -> String {
    std::fs::read_to_string(file).unwrap()
}

/// What lies in a folder beside the settings.
pub(crate) fn names_in(folder: &Path) -> Vec<String> {
    let mut names: Vec<String> = std::fs::read_dir(folder)
        .unwrap()
        .map(|entry| entry.unwrap().file_name().into_string().unwrap())
        .filter(|name| name != "home")
        .collect();
    names.sort();
    names
}

pub(crate) fn wait(what: &str, met: impl Fn() -> bool) {
    let start = Instant::now();
    while !met() {
        assert!(
            start.elapsed() < Duration::from_secs(60),
            "waited in vain: {what}"
        );
        std::thread::sleep(Duration::from_millis(50));
    }
}

/// The highest safe lock that `check` finds.
fn checked(file: &Path) -> Option<u64> {
    let home = tempfile::tempdir().unwrap();
    let output = command(None, home.path())
        .args(["check", "--format", "json"])
        .arg(file)
        .output()
        .unwrap();
    let report: serde_json::Value = serde_json::from_slice(&output.stdout).unwrap();
    report["verdict"]["highest_safe_lock"].as_u64()
}

fn as_shown(lock: Option<u64>) -> String {
    lock.map_or("no lock".into(), |lock| format!("lock {lock}"))
}

#[test]
fn locks_door_and_a_quiet_end() {
    let Some(room) = room() else { return };
    let mut program = Program::open(&room.screen, &room.file);
    let state = program.wait_for_state(&["current=true"]);
    assert_eq!(
        program.state("verdict"),
        as_shown(checked(&room.file)),
        "{state}"
    );
    program.wait_for_frames();
    room.screen.picture("opened");
    for lock in 1..=3 {
        room.screen.key("Up");
        program.wait_for_state(&[&format!("at-lock={lock};")]);
    }
    let door: f64 = program.state("door").parse().unwrap();
    room.screen.key("d");
    program.wait_for_state(&[&format!("door={:.2};", 1.0 - door)]);
    program.wait_for_frames();
    room.screen.picture("third-lock-other-door");
    room.screen.key("ctrl+q");
    assert_eq!(program.end(), 0);
    assert_eq!(text(&room.file), text(&scene()));
    assert_eq!(names_in(room.folder.path()), ["tall-pickup.ron"]);
}

#[test]
fn it_is_there_soon_and_then_sleeps() {
    let Some(room) = room() else { return };
    let program = Program::open(&room.screen, &room.file);
    // The first two only find out how large everything is.
    let (verdict, frame) = (
        program.reached("verdict="),
        program.reached("frame 3 is drawn"),
    );
    eprintln!("verdict after {verdict} s, first picture after {frame} s");
    assert!(verdict < 2.0, "{verdict}");
    assert!(frame < 6.0, "{frame}");
    // Moving the mouse away, so that nothing under it wants to be lit.
    room.screen.hands(&["mousemove", "1279", "799"]);
    std::thread::sleep(Duration::from_secs(4));
    let before = processor_s(program.id());
    std::thread::sleep(Duration::from_secs(10));
    let used = processor_s(program.id()) - before;
    eprintln!("idle: {used:.3} s of processor time in 10 s");
    assert!(used < 0.1, "{used}");
}

/// Processor time that a process has used, seconds.
fn processor_s(id: u32) -> f64 {
    let stat = text(Path::new(&format!("/proc/{id}/stat")));
    let (_, after_name) = stat.rsplit_once(')').unwrap();
    let words: Vec<&str> = after_name.split_whitespace().collect();
    let ticks: f64 = words[11].parse::<f64>().unwrap() + words[12].parse::<f64>().unwrap();
    let a_second = Command::new("getconf")
        .arg("CLK_TCK")
        .output()
        .unwrap()
        .stdout;
    ticks
        / String::from_utf8(a_second)
            .unwrap()
            .trim()
            .parse::<f64>()
            .unwrap()
}

#[test]
fn a_file_changed_outside_is_read_again() {
    let Some(room) = room() else { return };
    let mut program = Program::open(&room.screen, &room.file);
    program.wait_for_state(&["text=0;", "faults=0"]);
    let other = text(&room.file) + "// touched\n";
    // As most programs save: a new file in the old one's place.
    let beside = room.folder.path().join("new");
    std::fs::write(&beside, &other).unwrap();
    std::fs::rename(&beside, &room.file).unwrap();
    program.wait_for_state(&["text=1;", "unsaved=false", "current=true"]);
    std::fs::write(&room.file, "(").unwrap();
    let state = program.wait_for_state(&["text=2;", "current=false"]);
    assert!(!state.contains("faults=0"), "{state}");
    program.wait_for_frames();
    room.screen.picture("file-with-faults");
    room.screen.key("ctrl+q");
    assert_eq!(program.end(), 0);
    assert_eq!(text(&room.file), "(");
}

#[test]
fn it_saves_as_another_file_where_the_desktop_has_no_dialog() {
    let Some(room) = room() else { return };
    let program = Program::open(&room.screen, &room.file);
    let other = room.folder.path().join("other.ron");
    room.screen.key("ctrl+shift+s");
    program.wait_for_frames();
    room.screen.picture("save-as");
    room.screen.key("ctrl+a");
    room.screen
        .hands(&["type", "--delay", "30", other.to_str().unwrap()]);
    room.screen.key("Return");
    wait("the other file", || other.exists());
    assert_eq!(text(&other), text(&scene()));
    wait("the other title", || room.screen.focus("other.ron"));
    room.screen.key("ctrl+q");
    assert_eq!(program.end(), 0);
    assert_eq!(
        names_in(room.folder.path()),
        ["other.ron", "tall-pickup.ron"]
    );
}

/// Opens the panel for what is in the room and adds a light by the mouse.
pub(crate) fn add_a_light(room: &Room, program: &mut Program) {
    room.screen.key("F3");
    program.wait_for_state(&["section=In the room"]);
    program.wait_for_frames();
    // The panel is as wide as it is first made, and ends where the view begins; over the fields stand
    // the tabs.
    let view = program.state("view");
    let edges: Vec<i32> = view.split(',').map(|edge| edge.parse().unwrap()).collect();
    let (left, top) = (edges[0] - PANEL_WIDTH, edges[1]);
    room.screen.click(left + 66, top + TABS_HEIGHT + 17);
    program.wait_for_state(&["menu=true"]);
    program.wait_for_frames();
    room.screen.picture("add-menu");
    room.screen.click(left + 26, top + TABS_HEIGHT + 46);
    program.wait_for_state(&["text=1;", "unsaved=true", "current=true", "faults=0"]);
}

/// Width of the edit panel as it is first made, points.
const PANEL_WIDTH: i32 = 300;
/// Height of the tabs over the fields with the line under them, points.
const TABS_HEIGHT: i32 = 62;

#[test]
fn a_light_is_added_and_saved_and_check_says_the_same() {
    let Some(room) = room() else { return };
    let mut program = Program::open(&room.screen, &room.file);
    add_a_light(&room, &mut program);
    program.wait_for_frames();
    room.screen.picture("light-added");
    let shown = program.state("verdict");
    // The keyboard belongs to the window again, not to a field of the panel.
    room.screen.key("ctrl+s");
    program.wait_for_state(&["unsaved=false", "text=1;"]);
    room.screen.key("ctrl+q");
    assert_eq!(program.end(), 0);
    assert_eq!(as_shown(checked(&room.file)), shown);
    only_adds(&text(&scene()), &text(&room.file));
    assert_eq!(names_in(room.folder.path()), ["tall-pickup.ron"]);
}

/// Every line of the file before is there still, in the same order, comments and all; what came in
/// is in one piece, and names a light.
#[track_caller]
fn only_adds(before: &str, after: &str) {
    let (before, after): (Vec<&str>, Vec<&str>) =
        (before.lines().collect(), after.lines().collect());
    let same = |pair: &(&&str, &&str)| pair.0 == pair.1;
    let head = before.iter().zip(&after).take_while(same).count();
    let tail = before[head..]
        .iter()
        .rev()
        .zip(after[head..].iter().rev())
        .take_while(same)
        .count();
    assert_eq!(head + tail, before.len(), "a line of the file was changed");
    let added = after[head..after.len() - tail].join("\n");
    assert!(added.contains("Light"), "{added}");
}

#[test]
fn what_a_crash_left_unsaved_is_offered_again() {
    let Some(room) = room() else { return };
    let mut program = Program::open(&room.screen, &room.file);
    add_a_light(&room, &mut program);
    let kept = room.folder.path().join(".tall-pickup.ron.bayrise-autosave");
    wait("the autosave", || kept.exists());
    program.kill();
    assert_eq!(
        text(&room.file),
        text(&scene()),
        "the file itself is as it was"
    );

    let mut program = Program::open(&room.screen, &room.file);
    program.wait_for_state(&["offer=true", "unsaved=false"]);
    program.wait_for_frames();
    room.screen.picture("autosave-offered");
    only_adds(&text(&scene()), &text(&kept));
    room.screen.key("ctrl+q");
    assert_eq!(program.end(), 0);
    assert!(kept.exists(), "what was not answered is not dropped");
}

#[test]
fn an_interrupt_leaves_nothing_but_the_autosave() {
    let Some(room) = room() else { return };
    let mut program = Program::open(&room.screen, &room.file);
    interrupt(program.id());
    assert_eq!(program.end(), 130);
    assert_eq!(names_in(room.folder.path()), ["tall-pickup.ron"]);

    program = Program::open(&room.screen, &room.file);
    add_a_light(&room, &mut program);
    interrupt(program.id());
    assert_eq!(program.end(), 130);
    assert_eq!(
        names_in(room.folder.path()),
        [".tall-pickup.ron.bayrise-autosave", "tall-pickup.ron"]
    );
}

fn interrupt(id: u32) {
    let sent = Command::new("kill")
        .args(["-INT", &id.to_string()])
        .status();
    assert!(sent.unwrap().success());
}

#[test]
fn leaving_with_unsaved_changes_asks_first() {
    let Some(room) = room() else { return };
    let mut program = Program::open(&room.screen, &room.file);
    add_a_light(&room, &mut program);
    room.screen.key("ctrl+q");
    program.wait_for_state(&["asks=true"]);
    program.wait_for_frames();
    room.screen.picture("asks-to-leave");
    room.screen.key("Escape");
    program.wait_for_state(&["asks=false", "unsaved=true"]);
    program.kill();
}

#[test]
fn the_close_button_asks_as_the_key_does() {
    let Some(room) = room() else { return };
    let mut program = Program::open(&room.screen, &room.file);
    add_a_light(&room, &mut program);
    room.screen.press_close_button("tall-pickup");
    program.wait_for_state(&["asks=true"]);
    room.screen.key("Escape");
    program.wait_for_state(&["asks=false", "unsaved=true"]);
    room.screen.key("ctrl+z");
    program.wait_for_state(&["unsaved=false"]);
    room.screen.press_close_button("tall-pickup");
    assert_eq!(program.end(), 0);
    assert_eq!(names_in(room.folder.path()), ["tall-pickup.ron"]);
}

#[test]
fn a_device_that_is_lost_is_told_once_and_what_was_typed_is_kept() {
    let Some(room) = room() else { return };
    let frame = [("BAYRISE_LOSE_DEVICE_AT_FRAME", "60")];
    let mut program = Program::open_with(&room.screen, &room.file, &frame);
    add_a_light(&room, &mut program);
    // Frames come only as something changes.
    for _ in 0..100 {
        room.screen.key("Page_Up");
        room.screen.key("Page_Down");
        std::thread::sleep(Duration::from_millis(200));
        if program.has_ended() {
            break;
        }
    }
    let (code, said) = program.end_and_say();
    assert_eq!(code, 3, "{said:#?}");
    let text = said.join("\n");
    assert!(text.contains("device was lost"), "{text}");
    assert!(text.contains("kept in"), "{text}");
    for word in ["panicked", "backtrace", "RUST_", "wgpu"] {
        assert!(!text.contains(word), "{text}");
    }
    assert!(said.len() <= 3, "{text}");
    assert_eq!(
        names_in(room.folder.path()),
        [".tall-pickup.ron.bayrise-autosave", "tall-pickup.ron"]
    );
}
