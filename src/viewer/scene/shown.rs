//! Which solids are shown now?

use std::sync::Arc;

use bevy::prelude::*;

use crate::bay::Bay;
use crate::panels::Desk;
use crate::solids::Solid;
use crate::solids::list::solids;
use crate::viewer::OpenDesk;
use crate::viewer::convert::Origin;

/// The solids that are shown: those of the bay last studied, as the desk has them stand.
#[derive(Debug, Default, Resource)]
pub struct Shown {
    /// The bay; none before the first study.
    pub bay: Option<Arc<Bay>>,
    /// Every solid, where it stands.
    pub solids: Vec<Solid>,
    /// Counts up whenever any of it changes.
    pub revision: u64,
    key: Option<Key>,
}

/// What the list depends on.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Key {
    generation: u64,
    door: f64,
    travel_m: f64,
}

/// Takes over what the desk shows, where that changed.
pub(super) fn refresh(
    mut desk: ResMut<OpenDesk>,
    mut shown: ResMut<Shown>,
    mut origin: ResMut<Origin>,
) {
    let Some(verdict) = &desk.0.verdict else {
        if shown.bay.is_some() {
            *shown = Shown {
                revision: shown.revision + 1,
                ..Shown::default()
            };
        }
        return;
    };
    let key = Key {
        generation: verdict.generation,
        door: desk.0.door,
        travel_m: desk.0.rise.travel_m,
    };
    // Another document may count its changes from the same number on.
    let other_bay = !shown
        .bay
        .as_ref()
        .is_some_and(|bay| Arc::ptr_eq(bay, &verdict.bay));
    if shown.key == Some(key) && !other_bay {
        return;
    }
    let bay = Arc::clone(&verdict.bay);
    // A bay that was studied can be posed; one that can't keeps what was shown.
    let Ok(solids) = solids(&bay, desk.0.door_travel(), key.travel_m) else {
        return;
    };
    *shown = Shown {
        bay: Some(Arc::clone(&bay)),
        solids,
        revision: shown.revision + 1,
        key: Some(key),
    };
    if other_bay {
        origin.set_if_neq(Origin::of(&bay));
        let framed = framed(&bay, &desk.0, &shown.solids);
        desk.0.set_bounds(&framed);
    }
}

/// What is to be in the frame: everything, and the vehicle as high as it goes.
fn framed(bay: &Bay, desk: &Desk, shown: &[Solid]) -> Vec<Solid> {
    let up = solids(bay, desk.door_travel(), desk.full_travel_m()).unwrap_or_default();
    let moving = up.into_iter().filter(|s| s.role.moves());
    shown.iter().cloned().chain(moving).collect()
}
