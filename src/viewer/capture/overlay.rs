//! How do captions and dimension lines get into the picture?

use bevy::ecs::schedule::ScheduleLabel;
use bevy::prelude::*;
use bevy_egui::{EguiContext, EguiGlobalSettings, EguiPlugin, EguiSchedule};

use crate::panels::{overlay, style};
use crate::viewer::OpenDesk;

/// Runs once a frame for the picture's captions.
#[derive(ScheduleLabel, Debug, Clone, PartialEq, Eq, Hash)]
pub(super) struct CaptionPass;

/// Whether captions are written.
#[derive(Debug, Clone, Copy, Resource)]
pub(super) struct Captions(pub(super) bool);

/// Marks the camera whose picture is written on.
#[derive(Debug, Clone, Copy, Component)]
#[require(EguiContext, EguiSchedule::new(CaptionPass))]
pub(super) struct WrittenOn;

pub(super) struct OverlayPlugin;

impl Plugin for OverlayPlugin {
    fn build(&self, app: &mut App) {
        app.add_plugins(EguiPlugin::default())
            .insert_resource(EguiGlobalSettings {
                auto_create_primary_context: false,
                ..default()
            })
            .init_schedule(CaptionPass)
            .add_systems(CaptionPass, write);
    }
}

fn write(
    desk: Res<OpenDesk>,
    captions: Res<Captions>,
    mut contexts: Query<&mut EguiContext, With<WrittenOn>>,
) {
    for mut context in &mut contexts {
        let context = context.get_mut();
        style::apply(context, &desk.0.settings);
        let painter = context.layer_painter(egui::LayerId::background());
        overlay::paint(&painter, context.content_rect(), &desk.0, captions.0);
    }
}
