//! Which solids are shown now?

use std::marker::PhantomData;
use std::sync::Arc;

use bevy::prelude::*;

use super::Side;
use crate::bay::Bay;
use crate::panels::Desk;
use crate::solids::Solid;
use crate::solids::list::solids;
use crate::viewer::OpenDesk;
use crate::viewer::convert::Origin;

/// The solids that are shown of one side: those of the bay last studied, as the desk has them stand.
#[derive(Debug, Default, Resource)]
pub struct Shown<S: Side> {
    /// The bay; none before the first study.
    pub bay: Option<Arc<Bay>>,
    /// Every solid, where it stands.
    pub solids: Vec<Solid>,
    /// Where the engine's origin lies in the bay.
    pub origin: Origin,
    /// Counts up whenever any of it changes.
    pub revision: u64,
    key: Option<Key>,
    side: PhantomData<S>,
}

/// What the list depends on.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Key {
    generation: u64,
    door: f64,
    travel_m: f64,
}

/// Takes over what the desk shows, where that changed.
pub(super) fn refresh<S: Side>(mut open: ResMut<OpenDesk>, mut shown: ResMut<Shown<S>>) {
    let Some((desk, verdict)) =
        S::desk(&open.0).and_then(|desk| Some((desk, desk.verdict.as_ref()?)))
    else {
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
        door: desk.door,
        travel_m: desk.rise.travel_m,
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
    let Ok(solids) = solids(&bay, desk.door_travel(), key.travel_m) else {
        return;
    };
    *shown = Shown {
        origin: Origin::of(&bay),
        bay: Some(bay),
        solids,
        revision: shown.revision + 1,
        key: Some(key),
        side: PhantomData,
    };
    if other_bay && let Some(bay) = &shown.bay {
        let framed = framed(bay, desk, &shown.solids);
        if let Some(desk) = S::desk_mut(&mut open.0) {
            desk.set_bounds(&framed);
        }
        open.0.follow();
    }
}

/// What is to be in the frame: everything, and the vehicle as high as it goes.
fn framed(bay: &Bay, desk: &Desk, shown: &[Solid]) -> Vec<Solid> {
    let up = solids(bay, desk.door_travel(), desk.full_travel_m()).unwrap_or_default();
    let moving = up.into_iter().filter(|s| s.role.moves());
    shown.iter().cloned().chain(moving).collect()
}
