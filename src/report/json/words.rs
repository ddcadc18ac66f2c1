//! The fixed words of the JSON report.

use schemars::JsonSchema;
use serde::Serialize;

use crate::bay::{Corner, UnitSystem};
use crate::clearance::{DoorState, Limit, LockState, Unknown, Withheld};
use crate::ground::{Bound, Standing, Topic};

macro_rules! words {
    ($(#[$doc:meta])* $name:ident { $($(#[$variant_doc:meta])* $variant:ident),* $(,)? }) => {
        $(#[$doc])*
        #[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, JsonSchema)]
        #[serde(rename_all = "snake_case")]
        pub enum $name {
            $($(#[$variant_doc])* $variant),*
        }
    };
}

words!(
    /// A system of units.
    UnitsWord {
        /// Feet, inches and sixteenths.
        Imperial,
        /// Whole millimetres.
        Metric,
    }
);

words!(
    /// A state of the overhead door.
    DoorStateWord {
        /// Shut.
        Shut,
        /// Open.
        Open,
        /// Anywhere on its way.
        Running,
    }
);

words!(
    /// The state of a lock: the first of these that applies.
    LockStateWord {
        /// The pads do not yet carry the vehicle.
        NotLifting,
        /// The carriage runs out of travel before the latches can let go.
        NoRelease,
        /// The study could not decide.
        NotShown,
        /// Something touches here.
        Strikes,
        /// A margin is short, or something touches, below this lock.
        Barred,
        /// Nothing touches, but a margin is short here.
        Tight,
        /// Every margin holds all the way up to here.
        Clear,
    }
);

words!(
    /// A sort of limit.
    LimitKind {
        /// Two solids come too near each other.
        Pair,
        /// The carriage's travel: full rise is reached.
        Travel,
        /// The shut-off bar.
        Bar,
        /// A lock is clear, but something withholds it.
        Withheld,
        /// The study could not decide about a pair.
        Undecided,
    }
);

words!(
    /// A corner of the lift: "front" points into the bay, "left" as seen from the door.
    CornerWord {
        /// Front left.
        FrontLeft,
        /// Front right.
        FrontRight,
        /// Rear left.
        RearLeft,
        /// Rear right.
        RearRight,
    }
);

words!(
    /// A reason why no lock is called safe.
    WithheldKind {
        /// An arm does not reach its lift point.
        ArmDoesNotReach,
        /// A pad starts above its lift point.
        PadStartsTooHigh,
        /// The vehicle weighs more than the lift is rated for.
        OverRating,
        /// A fixed part of the lift does not fit where it stands.
        DoesNotStand,
        /// A column can't be tipped up under the ceiling.
        CannotBeStoodUp,
        /// The vehicle can't be driven in with its margins.
        CannotDriveIn,
        /// The file names things in it as not measured.
        NotMeasured,
        /// A pad hangs loose.
        LoosePad,
        /// A margin is short as parked and stays so.
        TightAsParked,
        /// The lift's moving parts touch the vehicle where they should not.
        CarriedPartsTouch,
        /// No graduation of the tape lies between latch and breach.
        NoMarkFits,
        /// A figure of a section stops: arms, loads, posts, slab, anchors, doors, power.
        Ground,
    }
);

words!(
    /// A check that this version does not make, or that lacks its data.
    UnknownCheck {
        /// The vehicle's mass.
        VehicleMass,
        /// The columns tipped up past lights, door tracks and opener.
        StandUpPath,
        /// The columns tipped up under a higher part of the ceiling and moved.
        StandUpElsewhere,
        /// A figure of the section on arms and reach.
        Reach,
        /// A figure of the section on loads and balance.
        Loads,
        /// A figure of the section on the post base.
        PostBase,
        /// A figure of the section on the slab.
        Slab,
        /// A figure of the section on anchors.
        Anchors,
        /// A figure of the section on the slab under the plates.
        Bearing,
        /// A figure of the section on doors and people.
        Access,
        /// A figure of the section on the motor circuit.
        Power,
        /// A figure of the section on delivery and oil.
        Delivery,
    }
);

words!(
    /// What a section is about.
    TopicWord {
        /// Arms and reach.
        Reach,
        /// Loads and balance.
        Loads,
        /// Post base.
        PostBase,
        /// Slab.
        Slab,
        /// Anchors.
        Anchors,
        /// The slab under the plates.
        Bearing,
        /// Doors and people.
        Access,
        /// The motor circuit.
        Power,
        /// Delivery and oil.
        Delivery,
    }
);

words!(
    /// How a figure stands.
    StandingWord {
        /// For information; nothing is asked of it.
        Noted,
        /// What is asked of it holds.
        Passes,
        /// Not known: no pass.
        Unknown,
        /// It does not hold: no lock is called safe.
        Stops,
    }
);

words!(
    /// Which side of its limit a figure must lie on.
    BoundWord {
        /// At most the limit.
        AtMost,
        /// At least the limit.
        AtLeast,
    }
);

macro_rules! same_words {
    ($from:ident => $to:ident: $($variant:ident),*) => {
        impl From<$from> for $to {
            fn from(value: $from) -> Self {
                match value { $($from::$variant => Self::$variant),* }
            }
        }
    };
}

same_words!(UnitSystem => UnitsWord: Imperial, Metric);
same_words!(DoorState => DoorStateWord: Shut, Open, Running);
same_words!(LockState => LockStateWord:
    NotLifting, NoRelease, NotShown, Strikes, Barred, Tight, Clear);
same_words!(Corner => CornerWord: FrontLeft, FrontRight, RearLeft, RearRight);
same_words!(Topic => TopicWord:
    Reach, Loads, PostBase, Slab, Anchors, Bearing, Access, Power, Delivery);
same_words!(Standing => StandingWord: Noted, Passes, Unknown, Stops);
same_words!(Bound => BoundWord: AtMost, AtLeast);
same_words!(Topic => UnknownCheck:
    Reach, Loads, PostBase, Slab, Anchors, Bearing, Access, Power, Delivery);

impl From<Unknown> for UnknownCheck {
    fn from(unknown: Unknown) -> Self {
        match unknown {
            Unknown::VehicleMass => Self::VehicleMass,
            Unknown::StandUpPath => Self::StandUpPath,
            Unknown::StandUpElsewhere => Self::StandUpElsewhere,
            Unknown::Section(topic) => topic.into(),
        }
    }
}

impl From<&Limit> for LimitKind {
    fn from(limit: &Limit) -> Self {
        match limit {
            Limit::Pair(_) => Self::Pair,
            Limit::Travel { .. } => Self::Travel,
            Limit::Bar(_) => Self::Bar,
            Limit::Withheld => Self::Withheld,
            Limit::Undecided(_) => Self::Undecided,
        }
    }
}

impl From<&Withheld> for WithheldKind {
    fn from(withheld: &Withheld) -> Self {
        match withheld {
            Withheld::ArmDoesNotReach { .. } => Self::ArmDoesNotReach,
            Withheld::PadStartsTooHigh { .. } => Self::PadStartsTooHigh,
            Withheld::OverRating { .. } => Self::OverRating,
            Withheld::DoesNotStand { .. } => Self::DoesNotStand,
            Withheld::CannotBeStoodUp { .. } => Self::CannotBeStoodUp,
            Withheld::CannotDriveIn { .. } => Self::CannotDriveIn,
            Withheld::NotMeasured { .. } => Self::NotMeasured,
            Withheld::LoosePad { .. } => Self::LoosePad,
            Withheld::TightAsParked { .. } => Self::TightAsParked,
            Withheld::CarriedPartsTouch { .. } => Self::CarriedPartsTouch,
            Withheld::NoMarkFits => Self::NoMarkFits,
            Withheld::Ground { .. } => Self::Ground,
        }
    }
}
