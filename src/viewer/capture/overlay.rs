//! How do captions and dimension lines get into the picture?

use bevy::camera::CameraOutputMode;
use bevy::camera::visibility::RenderLayers;
use bevy::ecs::schedule::ScheduleLabel;
use bevy::prelude::*;
use bevy::render::render_resource::BlendState;
use bevy_egui::{EguiContext, EguiGlobalSettings, EguiPlugin, EguiSchedule};

use crate::panels::{overlay, style};
use crate::viewer::OpenDesk;

/// Runs once a frame for the picture's captions.
#[derive(ScheduleLabel, Debug, Clone, PartialEq, Eq, Hash)]
pub(super) struct CaptionPass;

/// Whether captions are written.
#[derive(Debug, Clone, Copy, Resource)]
pub(super) struct Captions(pub(super) bool);

/// The camera that draws nothing but what is written.
#[derive(Debug, Clone, Copy, Component)]
#[require(EguiContext, EguiSchedule::new(CaptionPass))]
struct Writing;

pub(super) struct OverlayPlugin;

impl Plugin for OverlayPlugin {
    fn build(&self, app: &mut App) {
        app.add_plugins(EguiPlugin::default())
            .insert_resource(EguiGlobalSettings {
                auto_create_primary_context: false,
                ..default()
            })
            .init_schedule(CaptionPass)
            .add_systems(Startup, spawn)
            .add_systems(CaptionPass, write);
    }
}

/// Over the scene's camera, on all of the picture.
fn spawn(mut commands: Commands) {
    commands.spawn((
        Writing,
        Camera2d,
        Msaa::Off,
        RenderLayers::none(),
        Camera {
            order: 10,
            output_mode: CameraOutputMode::Write {
                blend_state: Some(BlendState::ALPHA_BLENDING),
                clear_color: ClearColorConfig::None,
            },
            clear_color: ClearColorConfig::Custom(Color::NONE),
            ..default()
        },
    ));
}

fn write(
    desk: Res<OpenDesk>,
    captions: Res<Captions>,
    mut contexts: Query<&mut EguiContext, With<Writing>>,
) {
    for mut context in &mut contexts {
        let context = context.get_mut();
        style::apply(context, &desk.0.settings);
        let painter = context.layer_painter(egui::LayerId::background());
        overlay::paint(&painter, context.content_rect(), &desk.0, captions.0);
    }
}
