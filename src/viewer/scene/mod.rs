//! What stands in the room: every solid of the bay last studied, and nothing else but the people.
//! A second bay beside it has a scene of its own, see [`Side`].
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
mod side;

use bevy::prelude::*;

pub use camera::{OtherCamera, SceneCamera};
pub use shown::Shown;
pub use side::{Open, Other, Side};

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
            .init_resource::<materials::Materials>()
            .add_plugins((camera::CameraPlugin, lights::LightsPlugin));
        add_side::<Open>(app);
        add_side::<Other>(app);
    }
}

/// The scene of one bay.
fn add_side<S: Side>(app: &mut App) {
    app.init_resource::<Shown<S>>()
        .init_resource::<entities::Stage<S>>()
        .add_systems(
            Update,
            (
                shown::refresh::<S>.in_set(SceneSet::List),
                (
                    (
                        entities::theme::<S>,
                        entities::place::<S>,
                        entities::see::<S>,
                    )
                        .chain(),
                    people::people::<S>,
                )
                    .in_set(SceneSet::Show),
            )
                .run_if(side::is_there::<S>),
        );
}
