//! What is said of one shown position: its state and the tightest pairs. Plain data.

use glam::DVec3;

use crate::clearance::findings::{DoorState, LockState};

/// What the study says of the bay at one travel and one door position.
#[derive(Debug, Clone, PartialEq)]
pub struct Here {
    /// The carriage's travel that this is the answer for, metres: as asked, held to the lift's
    /// travel.
    pub travel_m: f64,
    /// The door state that was looked at. A door part of the way counts as running: what is said
    /// then holds wherever on its way the door is.
    pub door: DoorState,
    /// The state.
    pub state: HereState,
    /// The pairs with the least room over their margin first; at most [`MOST_PAIRS`], none with
    /// more than [`NEAR_M`](crate::clearance::sweep::NEAR_M) over its margin. The state may be
    /// owed to more pairs than these.
    pub pairs: Vec<HerePair>,
}

/// Pairs listed at most.
pub const MOST_PAIRS: usize = 24;

/// The state of one position: the first of these that applies, the worst case over every
/// uncertainty.
///
/// A pair that is tight as parked (the study reports it once and leaves it out of the rise) makes
/// a position tight or striking while it is short there, but bars nothing above.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum HereState {
    /// Something touches here, or may.
    Strikes,
    /// The study could not decide here or below.
    NotShown,
    /// Nothing touches, but a margin is short here.
    Tight,
    /// Nothing is short here, but something is on the way from the floor to here.
    Barred,
    /// Every margin holds from the floor to here; the pads do not touch the vehicle yet.
    Parked,
    /// The same; the pads meet the vehicle, but may not all carry yet.
    Meeting,
    /// The same, with the vehicle on all its pads.
    Clear,
}

impl HereState {
    /// The words shown for it: a lock's, where a lock has such a state.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Strikes => LockState::Strikes.words(),
            Self::NotShown => LockState::NotShown.words(),
            Self::Tight => LockState::Tight.words(),
            Self::Barred => LockState::Barred.words(),
            Self::Parked => "parked",
            Self::Meeting => "pads meeting",
            Self::Clear => LockState::Clear.words(),
        }
    }
}

/// The state of one pair at one position, worst case.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum PairState {
    /// They touch, or may.
    Strikes,
    /// Their margin is short, or could not be decided.
    Tight,
    /// Their margin holds as filed, but something of the file is not measured.
    NotShown,
    /// Their margin holds.
    Clear,
}

impl PairState {
    /// The word shown for it: a lock's.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Strikes => LockState::Strikes.words(),
            Self::Tight => LockState::Tight.words(),
            Self::NotShown => LockState::NotShown.words(),
            Self::Clear => LockState::Clear.words(),
        }
    }
}

/// A stretch of the way up, metres, both ends in it, on which some pair is short of its margin or
/// touches, or where that could not be decided.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Stretch {
    /// From this travel.
    pub from_m: f64,
    /// To this one.
    pub to_m: f64,
    /// [`PairState::Tight`] or [`PairState::Strikes`].
    pub state: PairState,
}

/// A moving and a fixed solid at one position.
///
/// Of a door that runs, the parts that move have no place that counts: for each moving solid there
/// is one pair with the door and one with the opener, judged (`worst_m`, `state` and the first
/// travels) on the proved envelope of the whole of their way, and named after and drawn to the
/// part that is nearest where the door is shown. The envelope holds that part wherever it is, so
/// `worst_m` is never more than its distance, but may be much less.
#[derive(Debug, Clone, PartialEq)]
pub struct HerePair {
    /// Name of the moving solid.
    pub moving: String,
    /// Name of the fixed solid.
    pub fixed: String,
    /// Which door state the fixed solid belongs to; none for what is always there.
    pub door: Option<DoorState>,
    /// The margin asked, metres.
    pub margin_m: f64,
    /// The least they may be apart here: worst case, certified, metres; 0 when they may meet.
    pub worst_m: f64,
    /// How far apart the solids are as drawn, metres; 0 when they meet.
    pub nominal_m: f64,
    /// Nearest points (moving, fixed) of the solids as drawn, bay axes, metres; none when they
    /// meet.
    pub points_m: Option<(DVec3, DVec3)>,
    /// The state of this pair here.
    pub state: PairState,
    /// True when the study reports the pair as tight as parked and leaves it out of the rise.
    pub as_parked: bool,
    /// First travel at which the margin is short; none when it never is.
    pub first_breach_m: Option<f64>,
    /// First travel at which they touch; none when they never do.
    pub first_touch_m: Option<f64>,
}

impl HerePair {
    /// Room over the margin, worst case, metres; negative when the margin is short.
    #[must_use]
    pub fn room_m(&self) -> f64 {
        self.worst_m - self.margin_m
    }
}
