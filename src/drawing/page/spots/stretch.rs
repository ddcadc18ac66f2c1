//! What is said of a stretch between two locks?

use super::between::{Along, Stands, Way};
use super::{Spot, Teller};
use crate::clearance::LockState;
use crate::drawing::palette;
use crate::report::called;

impl Teller<'_> {
    /// Between two travels with no lock between them.
    pub(super) fn between(&self, way: &Way, from_m: f64, to_m: f64) -> Vec<Spot> {
        let above = way.locks_m.iter().position(|lock| *lock >= to_m);
        let place = match above {
            Some(0) => "Below lock 1".into(),
            Some(index) => format!("Between lock {index} and lock {}", index + 1),
            None => format!("Above lock {}, the highest", way.locks_m.len()),
        };
        let along = way.along(from_m, to_m).into_iter();
        along.map(|along| self.along(way, &place, &along)).collect()
    }

    /// Never in the good colour, and never clear: no lock holds here.
    fn along(&self, way: &Way, place: &str, along: &Along) -> Spot {
        let show = self.said.show();
        let mut says = format!("{place}{}.", self.door_words());
        let stands = match along.stands {
            Stands::OnTyres => format!(
                " The vehicle stands on its tyres; the pads meet it with the carriage up {}.",
                show.place(way.touch_m)
            ),
            Stands::Meeting => format!(
                " The pads come to the vehicle, but may not all carry it below carriage up {}: nobody goes \
                 under.",
                show.need(way.carry_m)
            ),
            Stands::OnPads => " Nobody goes under here: no lock holds, the vehicle hangs on the \
                               hydraulics."
                .into(),
        };
        says += &stands;
        if let Some(lock) = along.past {
            says += &format!(
                " To set the vehicle down on lock {0}, or to let go of it, the carriage climbs past lock \
                 {0} by up to {1}.",
                lock + 1,
                show.need(way.past_m)
            );
        }
        says += &self.met(along);
        if along.is_above_mark {
            says += " This is above the mark never to climb above.";
        }
        if let Some(why) = &self.why {
            says += &format!(" No lock is called safe: {why}.");
        }
        let (word, colour) = match (along.met, along.stands) {
            (Some(state), _) => (state.words(), palette::lock(state)),
            (None, _) if along.is_above_mark => ("above the mark", palette::BARRED),
            (None, Stands::OnTyres) => ("on its tyres", palette::IDLE),
            (None, Stands::Meeting) => ("pads meeting", palette::IDLE),
            (None, Stands::OnPads) => ("no lock here", palette::IDLE),
        };
        Spot {
            from_m: along.from_m,
            to_m: along.to_m,
            lock: None,
            word,
            colour,
            is_good: false,
            says,
        }
    }

    /// What is met on a stretch, in a sentence.
    fn met(&self, along: &Along) -> String {
        let what = match along.met {
            Some(LockState::Strikes) => "Something touches here, or may.",
            Some(LockState::Tight) => "A margin is short here.",
            Some(LockState::NotShown) => {
                "From here up, or from lower down, the study could not decide."
            }
            Some(_) => "A margin is short lower down: the way to here is barred.",
            None => return String::new(),
        };
        let first = self.found().first_short.as_ref();
        let first =
            first.and_then(|pair| Some((pair, pair.first_breach_m.or(pair.first_touch_m)?)));
        match first {
            Some((pair, from_m)) if from_m <= along.to_m => format!(
                " {what} First short on the way up: {} and {}, from carriage up {}.",
                called(&pair.moving),
                called(&pair.fixed),
                self.said.show().room(from_m)
            ),
            _ => format!(" {what}"),
        }
    }
}
