//! When is the window drawn again?
//!
//! Only when something happened: input, mail from a thread, a panel that still moves, or a carriage
//! that plays. Between, the program sleeps.

use std::time::Duration;

use bevy::ecs::message::Messages;
use bevy::ecs::resource::Resource;
use bevy::ecs::system::{Res, ResMut};
use bevy::window::RequestRedraw;
use bevy::winit::{UpdateMode, WinitSettings};

use crate::viewer::OpenDesk;

/// Waits that the window knows. A few fixed ones, since every change of the wait draws once more.
const STEPS: [Duration; 4] = [
    Duration::from_millis(33),
    Duration::from_millis(120),
    Duration::from_millis(500),
    ASLEEP,
];

/// Nothing to do: an hour is as good as for ever, and an alarm clock that is late does no harm.
const ASLEEP: Duration = Duration::from_secs(3600);

/// When to draw again.
#[derive(Debug, Resource)]
pub(super) struct Pace {
    /// Frames to draw whatever happens, so that what takes the engine a frame or two gets there.
    frames: u32,
    /// When the panels want to be drawn again.
    panels: Duration,
}

impl Pace {
    /// At the start, while the engine gets its things together.
    pub(super) fn at_start() -> Self {
        Self {
            frames: 5,
            panels: Duration::ZERO,
        }
    }

    /// Something changed that is not on the screen yet.
    pub(super) fn stir(&mut self) {
        self.frames = self.frames.max(2);
    }

    /// Notes when the panels want to be drawn again.
    pub(super) fn panels_ask(&mut self, output: &egui::FullOutput) {
        self.panels = output
            .viewport_output
            .get(&egui::ViewportId::ROOT)
            .map_or(Duration::MAX, |viewport| viewport.repaint_delay);
    }

    /// How long to wait for the next frame when nothing happens; zero for none.
    fn wait(&self, plays: bool) -> Duration {
        if self.frames > 0 || self.panels.is_zero() {
            return Duration::ZERO;
        }
        if plays {
            return STEPS[0];
        }
        // The longest known wait that is not longer than asked.
        STEPS
            .into_iter()
            .rev()
            .find(|step| *step <= self.panels)
            .unwrap_or(STEPS[0])
    }
}

/// Decides; last of all in a frame.
pub(super) fn decide(
    desk: Res<OpenDesk>,
    mut pace: ResMut<Pace>,
    mut redraws: ResMut<Messages<RequestRedraw>>,
    mut settings: ResMut<WinitSettings>,
) {
    let plays = desk.0.rise.playing || desk.0.settings.show_mode;
    let wait = pace.wait(plays);
    // The panels' library asks for a frame at once even when it means one in half a second.
    redraws.clear();
    if wait.is_zero() {
        pace.frames = pace.frames.saturating_sub(1);
        redraws.write(RequestRedraw);
        return;
    }
    let mode = UpdateMode::reactive_low_power(wait);
    if settings.focused_mode != mode || settings.unfocused_mode != mode {
        settings.focused_mode = mode;
        settings.unfocused_mode = mode;
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn pace(frames: u32, panels: Duration) -> Pace {
        Pace { frames, panels }
    }

    #[test]
    fn it_sleeps_unless_something_moves() {
        let for_ever = pace(0, Duration::MAX);
        assert_eq!(for_ever.wait(false), ASLEEP);
        assert_eq!(for_ever.wait(true), Duration::from_millis(33));
        assert_eq!(pace(1, Duration::MAX).wait(false), Duration::ZERO);
        assert_eq!(pace(0, Duration::ZERO).wait(true), Duration::ZERO);
    }

    #[test]
    fn a_wish_of_the_panels_is_met_a_little_early_and_never_spins() {
        let wait = |ms| pace(0, Duration::from_millis(ms)).wait(false);
        assert_eq!(wait(600), Duration::from_millis(500));
        assert_eq!(wait(499), Duration::from_millis(120));
        assert_eq!(wait(1), Duration::from_millis(33));
    }
}
