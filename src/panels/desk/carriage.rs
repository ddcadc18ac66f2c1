//! Where do carriage and door go, and what holds there?

use super::{Desk, over_the_climb};
use crate::clearance::DoorState;
use crate::panels::show_mode::{ROOM, Show};

impl Desk {
    /// Show mode begins or ends: the door goes to the state that the verdict is for, and the eye,
    /// afterwards, back to where it was.
    pub(super) fn show_turned(&mut self, on: bool) {
        let before = self.show.before.take();
        self.show = Show::default();
        if on {
            self.show.before = before.or(Some((self.camera, self.sight)));
        } else if let Some((camera, sight)) = before {
            self.camera = camera;
            self.sight = sight;
            // A named look is of the bay and the view as they are now.
            if let Some(sight) = sight {
                self.look(sight);
            }
        }
        self.rise.playing = on;
        if on && self.verdict.is_some() {
            self.door_as_it_governs();
            self.go(0.0);
        }
    }

    pub(super) fn door_as_it_governs(&mut self) {
        let governs = self.verdict.as_ref().map(|v| v.study.headline_door);
        self.door = if governs == Some(DoorState::Open) {
            1.0
        } else {
            0.0
        };
    }

    /// Show mode turns the view, and raises to the highest safe lock and no higher.
    pub(super) fn show_tick(&mut self, seconds: f64) {
        if !self.rise.playing {
            return;
        }
        let safe_m = self.is_current().then(|| self.safe_travel_m()).flatten();
        let seconds = seconds.clamp(0.0, 1.0);
        let step = self.show.ticked(seconds, safe_m.unwrap_or(0.0));
        let ([low, high], aspect) = (self.bounds_m, self.aspect);
        let frame = self.show.frames_for(aspect, self.bounds_m);
        self.move_camera(|camera| {
            let turned = camera.orbited(step.turn_rad, 0.0);
            if frame {
                turned.framed_all_round(low, high, aspect, ROOM)
            } else {
                turned
            }
        });
        // A stale verdict raises nothing: the carriage stays where it is.
        if self.is_current() {
            self.go(step.travel_m);
        }
    }

    /// Travel at the highest safe lock, metres; none when no lock is safe.
    #[must_use]
    pub fn safe_travel_m(&self) -> Option<f64> {
        let lock = self.verdict.as_ref()?.study.highest_safe_lock?;
        self.locks_m().get(lock.checked_sub(1)?).copied()
    }

    pub(super) fn go(&mut self, travel_m: f64) {
        if travel_m.is_finite() {
            self.link();
            // Before people, a verdict of an older state of the file raises nothing.
            let raises = self.is_current() || !self.settings.show_mode;
            let top_m = if raises { travel_m } else { self.rise.travel_m };
            self.rise.travel_m = travel_m.min(top_m);
            self.hold_travel();
            self.look_here();
        }
    }

    /// Within what the lift can do; before people, within what is safe.
    pub(super) fn hold_travel(&mut self) {
        let mut top_m = self.full_travel_m();
        if self.settings.show_mode {
            top_m = top_m.min(self.safe_travel_m().unwrap_or(0.0));
        }
        self.rise.travel_m = self.rise.travel_m.clamp(0.0, top_m);
    }

    /// Asks the probe about the shown position; at a lock, about the climb to set and to leave it as
    /// well, so that no length there is kinder than the lock's state.
    pub(super) fn look_here(&mut self) {
        let (door, travel_m) = (self.door_travel(), self.rise.travel_m);
        let lock = self.rise.at_lock(&self.locks_m());
        self.here = self.verdict.as_mut().map(|verdict| {
            let mut here = verdict.probe.at(door, travel_m);
            if let Some(lock) = lock {
                let lift = &verdict.bay.lift;
                let climb_m =
                    lift.set_overtravel.m().max(lift.release_overtravel.m()) + lift.overshoot.m();
                let top_m = (travel_m + climb_m).min(lift.travel.m());
                let above = verdict.probe.at(door, top_m);
                over_the_climb::take_worse(&mut here.pairs, above.pairs);
                let found = verdict.study.locks.iter().find(|one| one.lock == lock);
                if let Some(near) = found.and_then(|one| one.near.as_ref())
                    && here.door == verdict.study.headline_door
                {
                    over_the_climb::take_least(&mut here.pairs, near);
                }
            }
            here
        });
    }
}
