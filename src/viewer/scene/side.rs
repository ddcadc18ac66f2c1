//! Which of the two bays: the open one, or the one beside it?
//!
//! Each is a scene of its own on a render layer of its own, with its own lights and its own camera,
//! so that neither is seen, lit or shadowed by the other. The systems of the scene run once for each.

use bevy::camera::visibility::RenderLayers;
use bevy::prelude::*;

use super::Shown;
use crate::panels::Desk;

/// One of the two bays.
pub trait Side: Send + Sync + Default + std::fmt::Debug + 'static {
    /// The render layer that it is on.
    const LAYER: usize;

    /// Its desk; none while there is no such bay.
    fn desk(open: &Desk) -> Option<&Desk>;

    /// The same, to change.
    fn desk_mut(open: &mut Desk) -> Option<&mut Desk>;

    /// Its layer.
    #[must_use]
    fn layer() -> RenderLayers {
        RenderLayers::layer(Self::LAYER)
    }
}

/// The open bay.
#[derive(Debug, Default, Clone, Copy)]
pub struct Open;

/// The bay beside it.
#[derive(Debug, Default, Clone, Copy)]
pub struct Other;

impl Side for Open {
    const LAYER: usize = 0;

    fn desk(open: &Desk) -> Option<&Desk> {
        Some(open)
    }

    fn desk_mut(open: &mut Desk) -> Option<&mut Desk> {
        Some(open)
    }
}

impl Side for Other {
    const LAYER: usize = 1;

    fn desk(open: &Desk) -> Option<&Desk> {
        open.beside.as_ref().map(|beside| &beside.desk)
    }

    fn desk_mut(open: &mut Desk) -> Option<&mut Desk> {
        open.beside.as_mut().map(|beside| &mut beside.desk)
    }
}

/// Whether anything of a side is or was on the stage: without a second bay its systems have
/// nothing to do.
pub(super) fn is_there<S: Side>(desk: Res<crate::viewer::OpenDesk>, shown: Res<Shown<S>>) -> bool {
    S::desk(&desk.0).is_some() || shown.bay.is_some()
}
