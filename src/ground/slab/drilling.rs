//! May the slab be drilled, as far as is known?

use crate::bay::{Bay, Slab};

/// Something in or under a slab that forbids drilling it without a plan of its own.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Hazard {
    /// Tendons under load.
    PostTensioned,
    /// Pipes or wires of a heated floor.
    Heated,
    /// Water, gas, electricity, drains.
    Services,
    /// A void or a room below.
    Void,
    /// The floor spans between supports.
    Suspended,
}

impl Hazard {
    /// All of them.
    pub const ALL: [Self; 5] = [
        Self::PostTensioned,
        Self::Heated,
        Self::Services,
        Self::Void,
        Self::Suspended,
    ];

    /// Whether a slab has it; none when not said.
    #[must_use]
    pub const fn of(self, slab: &Slab) -> Option<bool> {
        match self {
            Self::PostTensioned => slab.post_tensioned,
            Self::Heated => slab.heated,
            Self::Services => slab.buried_services,
            Self::Void => slab.void_below,
            Self::Suspended => slab.suspended,
        }
    }

    /// What it is, for a list.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::PostTensioned => "tendons of a post-tensioned slab",
            Self::Heated => "in-floor heating",
            Self::Services => "buried services",
            Self::Void => "a void or a room below",
            Self::Suspended => "a suspended floor",
        }
    }
}

/// Whether holes may be drilled. Age and strength are another matter.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Drilling {
    /// Everything that forbids it is said not to be there.
    Yes,
    /// It is forbidden by these.
    No(Vec<Hazard>),
    /// Whether these are there is not said: nothing is drilled yet.
    Unknown(Vec<Hazard>),
}

/// Whether the slab of a bay may be drilled; a bay that says nothing of it leaves all unknown.
#[must_use]
pub fn drilling_allowed(bay: &Bay) -> Drilling {
    bay.slab
        .as_ref()
        .map_or_else(|| Drilling::Unknown(Hazard::ALL.into()), of_slab)
}

pub(super) fn of_slab(slab: &Slab) -> Drilling {
    let those = |wanted: Option<bool>| -> Vec<Hazard> {
        let all = Hazard::ALL.into_iter();
        all.filter(|hazard| hazard.of(slab) == wanted).collect()
    };
    let (there, not_said) = (those(Some(true)), those(None));
    if !there.is_empty() {
        Drilling::No(there)
    } else if not_said.is_empty() {
        Drilling::Yes
    } else {
        Drilling::Unknown(not_said)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::solids::test_bay::test_bay;

    #[test]
    fn nothing_is_drilled_while_anything_is_not_said() {
        let mut bay = test_bay();
        assert_eq!(
            drilling_allowed(&bay),
            Drilling::Unknown(Hazard::ALL.into())
        );
        let solid = Slab {
            post_tensioned: Some(false),
            heated: Some(false),
            buried_services: Some(false),
            void_below: Some(false),
            suspended: Some(false),
            ..Slab::default()
        };
        bay.slab = Some(solid.clone());
        assert_eq!(drilling_allowed(&bay), Drilling::Yes);
        for hazard in Hazard::ALL {
            for (said, expect) in [
                (Some(true), Drilling::No(vec![hazard])),
                (None, Drilling::Unknown(vec![hazard])),
            ] {
                let mut slab = solid.clone();
                *match hazard {
                    Hazard::PostTensioned => &mut slab.post_tensioned,
                    Hazard::Heated => &mut slab.heated,
                    Hazard::Services => &mut slab.buried_services,
                    Hazard::Void => &mut slab.void_below,
                    Hazard::Suspended => &mut slab.suspended,
                } = said;
                bay.slab = Some(slab);
                assert_eq!(drilling_allowed(&bay), expect);
            }
        }
        // One that is there forbids it whatever else is not said.
        bay.slab = Some(Slab {
            heated: Some(true),
            ..Slab::default()
        });
        assert_eq!(drilling_allowed(&bay), Drilling::No(vec![Hazard::Heated]));
    }
}
