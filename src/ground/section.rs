//! What is a section, and which are there?

use super::{Figure, Said, Standing};

/// What a section is about, in the order a person meets them.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Topic {
    /// Whether the arms bring their pads under the lift points.
    Reach,
    /// Centre of gravity, pad loads, ratings, balance.
    Loads,
    /// What each post asks of its base plate and anchors.
    PostBase,
    /// Thickness, age, joints, what is in and under the slab.
    Slab,
    /// The anchors by the anchor provisions of the concrete code.
    Anchors,
    /// The slab under a plate: bearing, punching, bending.
    Bearing,
    /// Vehicle doors, walking room, the garage door, people under the vehicle.
    Access,
    /// The motor's circuit.
    Power,
    /// Oil, shipping, standing the columns up.
    Delivery,
}

impl Topic {
    /// All of them, in order.
    pub const ALL: [Self; 9] = [
        Self::Reach,
        Self::Loads,
        Self::PostBase,
        Self::Slab,
        Self::Anchors,
        Self::Bearing,
        Self::Access,
        Self::Power,
        Self::Delivery,
    ];

    /// Its heading.
    #[must_use]
    pub const fn heading(self) -> &'static str {
        match self {
            Self::Reach => "Arms and reach",
            Self::Loads => "Loads and balance",
            Self::PostBase => "Post base",
            Self::Slab => "Slab",
            Self::Anchors => "Anchors",
            Self::Bearing => "Slab under the plates",
            Self::Access => "Doors and people",
            Self::Power => "Power",
            Self::Delivery => "Delivery and oil",
        }
    }

    /// True where its absence leaves the verdict with something not known.
    #[must_use]
    pub const fn decides(self) -> bool {
        match self {
            Self::Reach
            | Self::Loads
            | Self::PostBase
            | Self::Slab
            | Self::Anchors
            | Self::Bearing => true,
            Self::Access | Self::Power | Self::Delivery => false,
        }
    }

    /// False for a topic whose figures never stop: what it can't show is not known.
    #[must_use]
    pub const fn withholds(self) -> bool {
        !matches!(self, Self::Access)
    }

    /// Its name in a list of what is not known.
    #[must_use]
    pub const fn not_known(self) -> &'static str {
        match self {
            Self::Reach => "arms and pads",
            Self::Loads => "loads and balance",
            Self::PostBase => "post base",
            Self::Slab => "slab",
            Self::Anchors => "anchors",
            Self::Bearing => "slab under the plates",
            Self::Access => "doors and people",
            Self::Power => "motor circuit",
            Self::Delivery => "delivery and oil",
        }
    }
}

/// One topic's answer.
#[derive(Debug, Clone, PartialEq)]
pub struct Section {
    /// What it is about.
    pub topic: Topic,
    /// The plain sentence that comes first.
    pub lead: Said,
    /// The figures it stands on.
    pub figures: Vec<Figure>,
    /// What else must be minded.
    pub notes: Vec<Said>,
    /// Who governs, where this is a screening; none where it is plain geometry or arithmetic.
    pub governs: Option<&'static str>,
}

impl Section {
    /// The worst of its figures; noted when it has none.
    #[must_use]
    pub fn standing(&self) -> Standing {
        self.figures
            .iter()
            .map(|figure| figure.standing)
            .max()
            .unwrap_or(Standing::Noted)
    }
}
