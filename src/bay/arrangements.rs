//! What has been arranged around the lift: permission, people, gear.

use crate::units::{Length, Mass};

/// What has been arranged before buying; whatever is left out is not known.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Arrangements {
    /// True when every figure of the lift was compared with its manual. A preset's figures are
    /// typical ones.
    pub lift_compared: Option<bool>,
    /// True when the vehicle itself was measured and weighed.
    pub vehicle_measured: Option<bool>,
    /// The building permit.
    pub permit: Option<Leave>,
    /// The landlord, or the owners' association.
    pub landlord: Option<Leave>,
    /// The insurer of building and work.
    pub insurer: Option<Leave>,
    /// The clear space in front of the electric panel: width, depth, height.
    pub panel_space: Option<[Length; 3]>,
    /// What burns or is a flue, near or far; an empty list says that nothing does.
    pub burning: Option<Vec<Burning>>,
    /// Names of pipes, ducts and other things in the room that neither burn nor carry flue gas.
    pub not_burning: Vec<String>,
    /// The heaviest single load that can be taken off the truck and set down in the garage.
    pub unloading: Option<Mass>,
    /// The heaviest column that the gear at hand can stand up and hold.
    pub raising: Option<Mass>,
    /// How many people help.
    pub helpers: Option<usize>,
    /// True when a standing column is shored until its anchors are set.
    pub shored: Option<bool>,
    /// True when the way of a column's top, tipped up, was walked past lights, tracks and opener,
    /// and is free.
    pub stand_up_way: Option<bool>,
    /// Which tools are at hand, by [`Tool::ALL`].
    pub tools: [Option<bool>; 8],
    /// Who inspects the lift once it stands.
    pub inspection: Option<Leave>,
}

/// How it stands with somebody who is asked.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Leave {
    /// Given, agreed or booked.
    Given,
    /// Nobody has to be asked, or nothing has to be arranged.
    NotNeeded,
    /// Refused.
    Refused,
}

/// A heater, a boiler or a flue.
#[derive(Debug, Clone, PartialEq)]
pub struct Burning {
    /// The obstacle's name in the garage, or any name where it is none.
    pub name: String,
    /// The clearance that its own manual asks.
    pub clearance: Option<Length>,
}

/// A tool that setting up a lift takes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Tool {
    /// A rotary hammer drill.
    HammerDrill,
    /// A bit of the anchors' size, long enough.
    AnchorBit,
    /// A pump, brush or vacuum that cleans the holes.
    HoleCleaner,
    /// A torque wrench that reaches the anchors' torque.
    TorqueWrench,
    /// A level or a laser.
    Level,
    /// A tape that reaches over both diagonals.
    Tape,
    /// A chalk line.
    ChalkLine,
    /// Shims that carry.
    Shims,
}

impl Tool {
    /// All of them.
    pub const ALL: [Self; 8] = [
        Self::HammerDrill,
        Self::AnchorBit,
        Self::HoleCleaner,
        Self::TorqueWrench,
        Self::Level,
        Self::Tape,
        Self::ChalkLine,
        Self::Shims,
    ];

    /// The words a person uses.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::HammerDrill => "rotary hammer drill",
            Self::AnchorBit => "bit of the anchors' size",
            Self::HoleCleaner => "brush and pump or vacuum for the holes",
            Self::TorqueWrench => "torque wrench",
            Self::Level => "level or laser",
            Self::Tape => "tape that reaches over the diagonals",
            Self::ChalkLine => "chalk line",
            Self::Shims => "steel shims",
        }
    }
}
