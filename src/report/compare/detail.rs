//! One combination in full: its bill, and the answers the other way round.

use super::costs::{self, lines};
use super::turned::Turned;
use super::words::{broken, candidate, vehicle};
use crate::bayfile::options::Options;
use crate::choose::{Cell, Outcome};
use crate::report::not_measured;
use crate::report::words::plain;

/// What a person is told of one combination beside its row.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Detail {
    /// Lift, room and vehicle.
    pub name: String,
    /// Why there is no answer; then nothing else is told.
    pub no_answer: Option<String>,
    /// The bill line by line, the sum last; empty where the file gives no price.
    pub bill: Vec<[String; 2]>,
    /// The answers the other way round, once they are worked out.
    pub turned: Option<Turned>,
    /// What of the combination is not measured; none where nothing is listed. Nothing is turned round
    /// then.
    pub not_measured: Option<String>,
}

/// What the words of a bill mean.
pub const BILL_NOTE: &str = costs::NOTE;

impl Detail {
    /// Of a combination.
    #[must_use]
    pub fn of(options: &Options, cell: &Cell) -> Self {
        let mut detail = Self {
            name: format!(
                "{}, {}",
                candidate(options, cell.pick),
                vehicle(options, cell.pick)
            ),
            no_answer: None,
            bill: Vec::new(),
            turned: None,
            not_measured: None,
        };
        match &cell.outcome {
            Outcome::Broken(faults) => detail.no_answer = Some(broken(faults)),
            Outcome::NotStudied(why) => detail.no_answer = Some(plain(why)),
            Outcome::Found(found) => {
                detail.bill = lines(found, &options.currency);
                detail.not_measured = not_measured(found.verdict.not_measured());
                let inverse = found.inverse.as_ref();
                detail.turned = inverse.map(|inverse| Turned::of(found, inverse));
            }
        }
        detail
    }
}
