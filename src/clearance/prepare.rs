//! From a bay to the lists of bodies the study works on.

use std::sync::{Arc, OnceLock};

use super::body::Body;
use super::findings::DoorState;
use super::fixed_off::Off;
use super::movers::{MoverError, Movers, movers};
use super::sweep::{Fixed, LockWindows};
use super::uncertainty::Uncertainty;
use crate::bay::Bay;
use crate::solids::{DoorTravel, Solid, door, obstacles, opener, posts, shell};

/// Fixed solids and the bodies they stand for, index by index.
#[derive(Debug, Clone)]
pub struct FixedSet {
    /// The solids, nominal.
    pub solids: Vec<Solid>,
    /// Their bodies with the uncertainty added.
    pub bodies: Vec<Fixed>,
}

impl FixedSet {
    fn new(bay: &Bay, solids: Vec<Solid>, uncertainty: &Uncertainty, state: DoorState) -> Self {
        let off = Off::of(bay, uncertainty, state);
        let bodies = solids
            .iter()
            .enumerate()
            .map(|(index, solid)| Fixed {
                body: Body::exact(solid).widened(off.spread(solid)),
                solid: index,
                role: solid.role,
            })
            .collect();
        Self { solids, bodies }
    }
}

/// The fixed solids in their groups.
#[derive(Debug, Clone)]
pub struct Groups {
    /// What is always there: shell, obstacles, posts and tie.
    pub common: FixedSet,
    /// The shut door with its tracks and opener.
    pub shut: FixedSet,
    /// The open door with its tracks and opener.
    pub open: FixedSet,
    /// An outer envelope of the door's and the opener's whole travel.
    pub running: FixedSet,
}

impl Groups {
    /// The bodies of fixed solids under an uncertainty.
    pub(super) fn of(bay: &Bay, solids: GroupSolids, uncertainty: &Uncertainty) -> Self {
        Self {
            common: FixedSet::new(bay, solids.common, uncertainty, DoorState::Shut),
            shut: FixedSet::new(bay, solids.shut, uncertainty, DoorState::Shut),
            open: FixedSet::new(bay, solids.open, uncertainty, DoorState::Open),
            running: FixedSet::new(bay, solids.running, uncertainty, DoorState::Running),
        }
    }
}

/// A bay made ready for the study, under one uncertainty.
#[derive(Debug, Clone)]
pub struct Prepared {
    /// Everything that moves.
    pub movers: Movers,
    /// Everything fixed.
    pub groups: Arc<Groups>,
    /// Where the locks are.
    pub locks: LockWindows,
    /// The uncertainty that was added.
    pub uncertainty: Uncertainty,
}

/// The fixed solids in their groups, before any uncertainty.
#[derive(Debug, Clone)]
pub struct GroupSolids {
    common: Vec<Solid>,
    shut: Vec<Solid>,
    open: Vec<Solid>,
    running: Vec<Solid>,
}

impl GroupSolids {
    /// Builds every fixed solid of the bay.
    #[must_use]
    pub fn new(bay: &Bay) -> Self {
        let mut common = shell::shell(bay);
        common.extend(obstacles::obstacles(bay));
        common.extend(posts::posts(bay));
        let door_at = |travel| {
            let mut solids = door::door(bay, travel);
            solids.extend(opener::opener(bay, travel));
            solids
        };
        let mut running = door::envelope(bay);
        running.extend(opener::envelope(bay));
        Self {
            common,
            shut: door_at(DoorTravel::Shut),
            open: door_at(DoorTravel::Open),
            running,
        }
    }
}

impl Prepared {
    /// Builds every solid and body of the bay.
    ///
    /// # Errors
    /// When the vehicle can't be set on the pads (see [`MoverError`]).
    pub fn new(bay: &Bay, uncertainty: Uncertainty) -> Result<Self, MoverError> {
        Self::from_solids(bay, GroupSolids::new(bay), uncertainty)
    }

    /// The same with the fixed solids built before.
    ///
    /// # Errors
    /// When the vehicle can't be set on the pads (see [`MoverError`]).
    pub fn from_solids(
        bay: &Bay,
        solids: GroupSolids,
        uncertainty: Uncertainty,
    ) -> Result<Self, MoverError> {
        let movers = movers(bay, &uncertainty)?;
        Ok(Self {
            movers,
            groups: Arc::new(Groups::of(bay, solids, &uncertainty)),
            locks: lock_windows(bay),
            uncertainty,
        })
    }
}

/// The bay made ready exactly as written, for whoever asks for it.
#[expect(clippy::large_enum_variant, reason = "one of a study, never in a list")]
pub(super) enum Nominal<'a> {
    /// Made before.
    Made(&'a Prepared),
    /// Made when it is first asked for: few bays of many need it.
    WhenAsked {
        bay: &'a Bay,
        /// The fixed bodies of it.
        groups: &'a (dyn Fn() -> Arc<Groups> + Sync),
        made: OnceLock<Option<Prepared>>,
    },
    /// Not there: what is only shown is left out.
    Never,
}

impl<'a> Nominal<'a> {
    /// To be made when it is first asked for.
    pub(super) const fn when_asked(
        bay: &'a Bay,
        groups: &'a (dyn Fn() -> Arc<Groups> + Sync),
    ) -> Self {
        Self::WhenAsked {
            bay,
            groups,
            made: OnceLock::new(),
        }
    }

    /// The bay; none where it is not there, or the vehicle can't be set on the pads.
    pub(super) fn get(&self) -> Option<&Prepared> {
        match self {
            Self::Made(prepared) => Some(prepared),
            Self::WhenAsked { bay, groups, made } => made
                .get_or_init(|| {
                    Some(Prepared {
                        movers: movers(bay, &Uncertainty::NONE).ok()?,
                        groups: groups(),
                        locks: lock_windows(bay),
                        uncertainty: Uncertainty::NONE,
                    })
                })
                .as_ref(),
            Self::Never => None,
        }
    }
}

/// How far the carriage climbs past a lock to set or release it, with what the operator and
/// coasting add.
#[must_use]
pub fn overtravel_m(bay: &Bay) -> f64 {
    let lift = &bay.lift;
    lift.set_overtravel.max(lift.release_overtravel).m() + lift.overshoot.m()
}

/// `[s_k, s_k + o]` for each lock.
#[must_use]
pub fn lock_windows(bay: &Bay) -> LockWindows {
    let over = overtravel_m(bay);
    LockWindows {
        windows: bay
            .lift
            .locks
            .iter()
            .map(|travel| [travel.m(), travel.m() + over])
            .collect(),
    }
}

impl FixedSet {
    /// Solids beside their bodies.
    pub fn pairs(&self) -> impl Iterator<Item = (&Solid, &Body)> {
        self.bodies
            .iter()
            .map(|fixed| (&self.solids[fixed.solid], &fixed.body))
    }
}
