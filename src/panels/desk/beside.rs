//! A second bay beside the open one: where do its carriage, its door and its eye go?
//!
//! It stands on a desk of its own, so that whatever is said of it is said by its own study. Carriage,
//! door and eye follow those of the open bay; it is not changed here.

use glam::DVec3;

use super::Desk;

/// The bay beside the open one.
#[derive(Debug)]
pub struct Beside {
    /// Its own desk.
    pub desk: Desk,
    /// Where its carriage stands when it is not as high as the other: each at its own highest safe
    /// lock or at its own top. None while the two are linked.
    own_m: Option<f64>,
}

impl Desk {
    /// Puts a bay beside the open one.
    pub fn put_beside(&mut self, mut desk: Self) {
        desk.on = self.on;
        desk.beside = None;
        self.beside = Some(Box::new(Beside { desk, own_m: None }));
        self.follow();
    }

    /// Takes it away again.
    pub fn take_beside_away(&mut self) {
        self.beside = None;
        self.bounds_m = self.own_bounds_m;
        if let Some(sight) = self.sight {
            self.look(sight);
        }
    }

    /// True while the two carriages stand equally high, as far as both lifts go.
    #[must_use]
    pub fn is_linked(&self) -> bool {
        self.beside.as_ref().is_none_or(|it| it.own_m.is_none())
    }

    /// The two carriages go together from here on.
    pub(super) fn link(&mut self) {
        if let Some(beside) = &mut self.beside {
            beside.own_m = None;
        }
    }

    /// Brings the other carriage to its own place.
    pub(super) fn beside_goes(&mut self, travel_m: f64) {
        if let Some(beside) = &mut self.beside {
            beside.own_m = Some(travel_m);
        }
    }

    /// What the other desk says; none without one.
    pub(super) fn of_beside<T>(&self, ask: impl FnOnce(&Self) -> Option<T>) -> Option<T> {
        ask(&self.beside.as_ref()?.desk)
    }

    /// Raises the other carriage where this one can go no higher. True while it can go on.
    pub(super) fn raise_beside_alone(&mut self, step_m: f64) -> bool {
        let Some((from_m, top_m)) =
            self.of_beside(|it| Some((it.rise.travel_m, it.full_travel_m())))
        else {
            return false;
        };
        if from_m >= top_m {
            return false;
        }
        if self.rise.travel_m >= self.full_travel_m() {
            self.beside_goes((from_m + step_m).min(top_m));
        }
        true
    }

    /// Lets the other bay stand as this one does, and both be seen alike.
    pub fn follow(&mut self) {
        let Some(mut beside) = self.beside.take() else {
            return;
        };
        let Beside { desk: it, own_m } = &mut *beside;
        it.study_now();
        it.settings = self.settings.clone();
        it.rise.playing = self.rise.playing;
        let before = (it.rise.travel_m, it.door);
        if self.settings.show_mode {
            it.door_as_it_governs();
        } else {
            it.door = self.door;
        }
        let wanted_m = own_m.unwrap_or(self.rise.travel_m);
        // Before people, a verdict of an older state of the file raises nothing.
        let raises = it.is_current() || !it.settings.show_mode;
        it.rise.travel_m = if raises {
            wanted_m
        } else {
            wanted_m.min(it.rise.travel_m)
        };
        it.hold_travel();
        if before != (it.rise.travel_m, it.door) {
            it.look_here();
        }
        self.frame_alike(it);
        self.beside = Some(beside);
    }

    /// Both look at boxes of one size, so that a metre is as long in both, and both eyes stand in the
    /// same place to their box.
    fn frame_alike(&mut self, it: &mut Self) {
        let half = |[low, high]: [DVec3; 2]| (high - low) * 0.5;
        let half_m = half(self.own_bounds_m).max(half(it.own_bounds_m));
        let framed = self.boxed(half_m);
        if framed != self.bounds_m {
            self.bounds_m = framed;
            if let Some(sight) = self.sight {
                self.look(sight);
            }
        }
        it.bounds_m = it.boxed(half_m);
        it.aspect = self.aspect;
        it.sight = self.sight;
        let middle = |[low, high]: [DVec3; 2]| (low + high) * 0.5;
        let away = middle(it.bounds_m) - middle(self.bounds_m);
        it.camera = self.camera;
        it.camera.eye_m += away;
        it.camera.target_m += away;
    }

    /// A box of this half size about the bay, on the same floor.
    fn boxed(&self, half_m: DVec3) -> [DVec3; 2] {
        let [low, high] = self.own_bounds_m;
        let middle = (low + high) * 0.5;
        [
            (middle - half_m).with_z(low.z),
            (middle + half_m).with_z(low.z + 2.0 * half_m.z),
        ]
    }
}
