//! For developers: when was what reached?
//!
//! With the environment variable `BAYRISE_TRACE_START` set, milestones of the start and every
//! change of what is shown go to standard error, each with the seconds since the program started.
//! The tests of the window read them.

use std::io::Write as _;
use std::sync::OnceLock;
use std::time::Instant;

use bevy::ecs::system::{Local, Res, Single};
use bevy::render::renderer::RenderDevice;
use bevy_egui::EguiContext;

use super::pass::View;
use crate::panels::settings::Section;
use crate::panels::{Desk, shown};
use crate::viewer::OpenDesk;

/// Since when; none when nobody asked.
static SINCE: OnceLock<Option<Instant>> = OnceLock::new();

fn since() -> Option<Instant> {
    *SINCE.get_or_init(|| std::env::var_os("BAYRISE_TRACE_START").map(|_| Instant::now()))
}

/// Whether milestones are wanted.
pub(super) fn is_on() -> bool {
    since().is_some()
}

/// Notes that something was reached.
pub fn trace(what: &str) {
    if let Some(since) = since() {
        // Where standard error is gone there is nobody to tell.
        let _ = writeln!(
            std::io::stderr(),
            "trace {:.3} {what}",
            since.elapsed().as_secs_f64()
        );
    }
}

/// What is shown, in one line.
pub(super) fn state(desk: &Desk) -> String {
    let verdict = match &desk.verdict {
        None => "none".into(),
        Some(verdict) => verdict
            .study
            .highest_safe_lock
            .map_or_else(|| "no lock".into(), |lock| format!("lock {lock}")),
    };
    let at = desk
        .rise
        .at_lock(&desk.locks_m())
        .map_or_else(|| "-".into(), |lock| lock.to_string());
    let here = shown::state(desk).map_or("-", |state| state.word);
    format!(
        "state: verdict={verdict}; current={}; at-lock={at}; travel={:.4}; here={here}; door={:.2}; \
         unsaved={}; text={}; notices={}; offer={}; asks={}; faults={}; \
         section={}; beside={}; table={}",
        desk.is_current(),
        desk.rise.travel_m,
        desk.door,
        desk.document.is_unsaved(),
        desk.document.generation(),
        desk.notices.len(),
        desk.autosave.is_some(),
        desk.leaving.is_some(),
        desk.document.read().err().map_or(0, <[_]>::len),
        desk.settings.section.map_or("-", Section::word),
        beside(desk),
        match &desk.compared {
            None => "-",
            Some(compared) if compared.is_stale => "old",
            Some(_) => "there",
        },
    )
}

/// The safe lock of the bay beside and where its carriage stands.
fn beside(desk: &Desk) -> String {
    let Some(beside) = &desk.beside else {
        return "-".into();
    };
    let other = &beside.desk;
    let lock = other.verdict.as_ref().map(|v| v.study.highest_safe_lock);
    let verdict = match lock {
        None => "none".into(),
        Some(None) => "no lock".into(),
        Some(Some(lock)) => format!("lock {lock}"),
    };
    format!("{verdict} at {:.4}", other.rise.travel_m)
}

/// Frames, for developers and tests.
pub(super) fn trace_frames(mut frame: Local<u32>) {
    if is_on() {
        // A frame is drawn when the next one begins.
        match *frame {
            0 => trace("the window is made"),
            frame => trace(&format!("frame {frame} is drawn")),
        }
        *frame += 1;
    }
}

/// For tests: with `BAYRISE_LOSE_DEVICE_AT_FRAME` set to a number, the graphics device goes away at
/// that frame, as it does when a driver fails or a card is unplugged.
pub(super) fn lose_device(
    mut frame: Local<u32>,
    mut at: Local<Option<Option<u32>>>,
    device: Res<RenderDevice>,
) {
    let at = *at.get_or_insert_with(|| {
        let text = std::env::var("BAYRISE_LOSE_DEVICE_AT_FRAME").ok()?;
        text.parse().ok()
    });
    *frame = frame.saturating_add(1);
    if at == Some(*frame) {
        device.wgpu_device().destroy();
    }
}

/// Changes of what is shown, for developers and tests.
pub(super) fn trace_state(
    desk: Res<OpenDesk>,
    view: Res<View>,
    mut panels: Single<&mut EguiContext>,
    mut last: Local<String>,
) {
    if is_on() {
        let state = format!(
            "{}; view={}; menu={}",
            state(&desk.0),
            view.place(),
            egui::Popup::is_any_open(panels.get_mut()),
        );
        if *last != state {
            trace(&state);
            *last = state;
        }
    }
}
