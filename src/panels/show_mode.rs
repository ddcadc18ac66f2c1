//! What is shown to a room full of people, with nobody at the keys?
//!
//! The view turns slowly; the vehicle rises to the highest safe lock, rests, comes down, rests, and
//! again. Panels are away; the title block carries verdict and cautions.

use egui::{Rect, Ui};
use glam::DVec3;

use super::camera::{Camera, Sight};
use super::rise::PLAY_M_PER_S;
use super::{Action, Desk, overlay};

/// Speed of the turn, radians a second: once around in a minute and a half.
pub const TURN_RAD_PER_S: f64 = std::f64::consts::TAU / 90.0;

/// Room about the bay while it turns.
pub const ROOM: f64 = 1.12;

/// Rest at the lock and on the floor, seconds.
const REST_UP_S: f64 = 6.0;
const REST_DOWN_S: f64 = 3.0;

/// Where show mode stands in its round.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Show {
    /// Time in the round, seconds: rest on the floor, rise, rest at the lock, come down.
    clock_s: f64,
    /// Shape of the view that was framed last, width over height, and the box that was in it.
    framed_for: Option<(f64, [DVec3; 2])>,
    /// Where the eye was before, to go back to: the camera, and the named look it was of.
    pub before: Option<(Camera, Option<Sight>)>,
}

/// What a tick does.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Step {
    /// How far the eye moves to its right, radians.
    pub turn_rad: f64,
    /// Where the carriage goes, metres.
    pub travel_m: f64,
}

impl Show {
    /// Some seconds have gone by; `top_m` is the travel at the highest safe lock, 0 without one.
    pub fn ticked(&mut self, seconds: f64, top_m: f64) -> Step {
        let climb_s = top_m.max(0.0) / PLAY_M_PER_S;
        let round_s = REST_DOWN_S + climb_s + REST_UP_S + climb_s;
        self.clock_s = (self.clock_s + seconds).rem_euclid(round_s);
        let up_s = self.clock_s - REST_DOWN_S;
        let down_s = up_s - climb_s - REST_UP_S;
        let travel_m = if down_s > 0.0 {
            top_m - down_s * PLAY_M_PER_S
        } else {
            up_s * PLAY_M_PER_S
        };
        Step {
            turn_rad: seconds * TURN_RAD_PER_S,
            travel_m: travel_m.clamp(0.0, top_m.max(0.0)),
        }
    }

    /// Whether everything is to be framed anew, because the view has another shape or another bay is
    /// in it.
    pub fn frames_for(&mut self, aspect: f64, bounds_m: [DVec3; 2]) -> bool {
        let anew = self
            .framed_for
            .is_none_or(|(last, bounds)| (last - aspect).abs() > 1e-6 || bounds != bounds_m);
        self.framed_for = Some((aspect, bounds_m));
        anew
    }
}

/// Shows the title block; returns where the view is.
pub fn show(ui: &mut Ui, desk: &Desk, _out: &mut Vec<Action>) -> Rect {
    let whole = ui.available_rect_before_wrap();
    overlay::paint_all(&ui.painter_at(whole), whole, desk, true);
    overlay::views_rect(whole, desk, true)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_round_reaches_the_lock_and_the_floor_and_nothing_beyond() {
        let mut show = Show::default();
        let top_m = 0.9;
        let travels: Vec<f64> = (0..600).map(|_| show.ticked(0.1, top_m).travel_m).collect();
        assert!(travels.iter().all(|travel| (0.0..=top_m).contains(travel)));
        let at = |wanted: f64| {
            travels
                .iter()
                .filter(|t| (*t - wanted).abs() < 1e-9)
                .count()
        };
        assert!(at(top_m) >= 50, "rests at the lock");
        assert!(at(0.0) >= 25, "rests on the floor");
        let steps = travels.windows(2).map(|pair| (pair[1] - pair[0]).abs());
        assert!(steps.fold(0.0, f64::max) < 0.1 * PLAY_M_PER_S + 1e-9);
    }

    #[test]
    fn without_a_safe_lock_nothing_rises() {
        let mut show = Show::default();
        assert!((0..300).all(|_| show.ticked(0.1, 0.0).travel_m <= 0.0));
    }
}
