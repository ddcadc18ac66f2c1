//! Two bays side by side: how do their carriages go together?
//!
//! Linked, both carriages bring their pads to the same height over the floor: that is what a person
//! sees who stands between two lifts, and what is compared is how much room each leaves there. The
//! same number of a lock would mean another height on each. Asked for the highest safe lock, the
//! floor or the top, each goes to its own. Never is one told to go where its travel does not reach.

use egui::{Rect, RichText, Ui, pos2};

use super::{Action, Desk, Wish, rise_bar};
use crate::report::Sayings;

/// Two desks.
#[derive(Debug)]
pub struct Pair {
    /// The left and the right one.
    pub desks: [Desk; 2],
    /// True while the carriages go together.
    pub linked: bool,
}

/// Which of the two.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Which {
    /// The left one.
    Left,
    /// The right one.
    Right,
}

/// Something asked of the pair.
#[derive(Debug, Clone, PartialEq)]
pub enum PairAction {
    /// Something asked of one desk.
    Of(Which, Action),
    /// The carriages go together, or not.
    Link(bool),
}

impl Pair {
    /// Two desks, their carriages linked.
    #[must_use]
    pub const fn new(left: Desk, right: Desk) -> Self {
        Self {
            desks: [left, right],
            linked: true,
        }
    }

    /// Carries out an action; what only the window can do comes back with the desk that asks.
    pub fn apply(&mut self, action: PairAction) -> Vec<(Which, Wish)> {
        match action {
            PairAction::Link(on) => {
                self.linked = on;
                if on {
                    self.follow(Which::Left);
                }
                Vec::new()
            }
            PairAction::Of(which, action) => self.of(which, action),
        }
    }

    fn of(&mut self, which: Which, action: Action) -> Vec<(Which, Wish)> {
        let (one, other) = match which {
            Which::Left => (0, Which::Right),
            Which::Right => (1, Which::Left),
        };
        let before = self.desks[one].rise.travel_m;
        let alike = goes_to_both(&action).then(|| action.clone());
        let wishes = self.desks[one].apply(action).into_iter();
        let mut wishes: Vec<(Which, Wish)> = wishes.map(|wish| (which, wish)).collect();
        if let Some(alike) = alike.filter(|action| self.linked || is_of_the_eye(action)) {
            let also = self.desks[1 - one].apply(alike).into_iter();
            wishes.extend(also.map(|wish| (other, wish)));
        } else if self.linked && (self.desks[one].rise.travel_m - before).abs() > 0.0 {
            self.follow(which);
        }
        wishes
    }

    /// Brings the other carriage to the height of this one's pads.
    fn follow(&mut self, leading: Which) {
        let (one, other) = match leading {
            Which::Left => (0, 1),
            Which::Right => (1, 0),
        };
        if let (Some(height_m), Some(low_m)) =
            (pad_height_m(&self.desks[one]), low_m(&self.desks[other]))
        {
            self.desks[other].apply(Action::Travel(height_m - low_m));
        }
    }
}

/// What both do, each in its own way.
const fn goes_to_both(action: &Action) -> bool {
    is_of_the_eye(action)
        || matches!(
            action,
            Action::ToSafeLock | Action::ToFloor | Action::ToTop | Action::Door(_)
        )
}

/// Both are looked at from the same side.
const fn is_of_the_eye(action: &Action) -> bool {
    matches!(
        action,
        Action::Look(_)
            | Action::Orbit(..)
            | Action::Pan(..)
            | Action::Zoom(_)
            | Action::FrameAll
            | Action::Parallel(_)
            | Action::Theme(_)
            | Action::TextScale(_)
    )
}

/// Height of the lowest pad over the floor at travel 0, metres; none before the first study.
fn low_m(desk: &Desk) -> Option<f64> {
    let bay = &desk.verdict.as_ref()?.bay;
    let raise = bay.parking.pad_raise.iter().map(|raise| raise.m());
    Some(bay.lift.pad.lowest.m() + raise.fold(f64::INFINITY, f64::min))
}

/// Height of the lowest pad over the floor as shown, metres; none before the first study.
#[must_use]
pub fn pad_height_m(desk: &Desk) -> Option<f64> {
    Some(low_m(desk)? + desk.rise.travel_m)
}

/// The verdicts and the carriages of both, side by side; returns where their views are.
pub fn show(ui: &mut Ui, pair: &Pair, out: &mut Vec<PairAction>) -> [Rect; 2] {
    let mut linked = pair.linked;
    let link = ui.checkbox(&mut linked, "Both pads at the same height over the floor");
    if link.changed() {
        out.push(PairAction::Link(linked));
    }
    ui.columns(2, |columns| {
        for (index, which) in [Which::Left, Which::Right].into_iter().enumerate() {
            let mut asked = Vec::new();
            let (ui, desk) = (&mut columns[index], &pair.desks[index]);
            ui.push_id(index, |ui| half(ui, desk, &mut asked));
            out.extend(
                asked
                    .into_iter()
                    .map(|action| PairAction::Of(which, action)),
            );
        }
    });
    let view = ui.available_rect_before_wrap();
    let middle = view.center().x;
    [
        Rect::from_min_max(view.min, pos2(middle, view.max.y)),
        Rect::from_min_max(pos2(middle, view.min.y), view.max),
    ]
}

fn half(ui: &mut Ui, desk: &Desk, out: &mut Vec<Action>) {
    if let Some(verdict) = &desk.verdict {
        let said = Sayings::of(&verdict.bay, &verdict.study);
        ui.label(RichText::new(said.vehicle_on_lift()).strong());
        if desk.is_current() {
            ui.label(said.lead());
        } else {
            ui.label(RichText::new(format!("Being studied again; before: {}", said.lead())).weak());
        }
    } else {
        ui.label("Not studied yet.");
    }
    if let Some(why) = &desk.study_failed {
        ui.label(why);
    }
    rise_bar::show(ui, desk, out);
}
