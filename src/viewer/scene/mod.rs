//! What stands in the room: every solid of the bay last studied, and nothing else but the people.
//!
//! [`ScenePlugin`] translates the [`super::OpenDesk`] into entities, once for each solid, and
//! touches only what changed.

mod camera;
mod cut_away;
mod entities;
mod lights;
mod materials;
mod mesh;
mod people;
mod seen;
mod shown;

use bevy::prelude::*;

pub use camera::SceneCamera;
pub use shown::Shown;

/// The order of the scene's systems within `Update`: first the list of solids, then what shows it.
#[derive(SystemSet, Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum SceneSet {
    /// The list of solids.
    List,
    /// Everything that shows it.
    Show,
}

/// The whole scene with its camera and lights. Needs [`super::OpenDesk`] and
/// [`super::Quality`] as resources before it starts.
#[derive(Debug, Default)]
pub struct ScenePlugin;

impl Plugin for ScenePlugin {
    fn build(&self, app: &mut App) {
        app.configure_sets(Update, (SceneSet::List, SceneSet::Show).chain())
            .init_resource::<crate::viewer::convert::Origin>()
            .add_systems(Update, shown::refresh.in_set(SceneSet::List))
            .init_resource::<Shown>()
            .add_plugins((
                camera::CameraPlugin,
                entities::EntitiesPlugin,
                lights::LightsPlugin,
                people::PeoplePlugin,
            ));
    }
}
