//! What is the state at one shown travel, and which pairs are tightest there?

use glam::DVec3;

use super::findings::{DoorState, Study};
use super::study::{StudyError, study};
use crate::bay::Bay;
use crate::solids::DoorTravel;

/// What one bay's solids say at any shown position; made once per bay, asked often.
#[derive(Debug)]
pub struct Probe {}

/// What holds at one travel with the door in one place.
#[derive(Debug, Clone, PartialEq)]
pub struct Here {
    /// The travel asked for.
    pub travel_m: f64,
    /// The door state that was counted; anywhere between shut and open is running.
    pub door: DoorState,
    /// The state of the position.
    pub state: HereState,
    /// The tightest pairs, the one with the least worst-case room over its margin first.
    pub pairs: Vec<HerePair>,
}

/// The state of a position on the way up.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum HereState {
    /// The pads have not met the vehicle.
    Parked,
    /// Pads have met it; not all four carry in the worst case.
    Meeting,
    /// Every margin holds up to here.
    Clear,
    /// A margin is short here.
    Tight,
    /// Something touches here.
    Strikes,
    /// Something comes short below here.
    Barred,
    /// The study could not decide here or below.
    NotShown,
}

impl HereState {
    /// The words shown for it.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Parked => "on its tyres",
            Self::Meeting => "pads meeting",
            Self::Clear => "clear",
            Self::Tight => "tight",
            Self::Strikes => "strikes",
            Self::Barred => "barred below",
            Self::NotShown => "not shown",
        }
    }
}

/// The state of one pair at a position.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum PairState {
    /// Its margin holds.
    Clear,
    /// Its margin is short.
    Tight,
    /// The two may touch.
    Strikes,
}

/// Two solids near each other at a position.
#[derive(Debug, Clone, PartialEq)]
pub struct HerePair {
    /// Name of the moving solid.
    pub moving: String,
    /// Name of the fixed solid.
    pub fixed: String,
    /// Which door state the fixed solid belongs to; none for what is always there.
    pub door: Option<DoorState>,
    /// The margin asked.
    pub margin_m: f64,
    /// Worst-case distance here, certified; 0 when they may meet.
    pub worst_m: f64,
    /// Distance of the solids as drawn; 0 when they meet.
    pub nominal_m: f64,
    /// Nearest points (moving, fixed) of the solids as drawn; none when they meet.
    pub points_m: Option<(DVec3, DVec3)>,
    /// The state of the pair here.
    pub state: PairState,
    /// First travel at which the margin is short, where it is known.
    pub first_breach_m: Option<f64>,
    /// First travel at which they touch, where it is known.
    pub first_touch_m: Option<f64>,
}

impl Probe {
    /// The study of the bay and the probe that goes with it.
    ///
    /// # Errors
    /// As [`study`].
    pub fn with_study(bay: &Bay) -> Result<(Study, Self), StudyError> {
        Ok((study(bay)?, Self {}))
    }

    /// What holds at a travel with the door in one place.
    pub fn at(&mut self, door: DoorTravel, travel_m: f64) -> Here {
        let fraction = door.fraction();
        Here {
            travel_m,
            door: if fraction <= 0.0 {
                DoorState::Shut
            } else if fraction >= 1.0 {
                DoorState::Open
            } else {
                DoorState::Running
            },
            state: HereState::NotShown,
            pairs: Vec::new(),
        }
    }
}
