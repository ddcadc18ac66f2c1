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

/// Captions have their usual size in a picture of this height, pixels.
const USUAL_HEIGHT: f32 = 720.0;

/// Pixels a point in a picture of this size.
pub(super) fn scale([_, height]: [u32; 2]) -> f32 {
    (height as f32 / USUAL_HEIGHT).max(0.1)
}

/// What is written on, and whether captions are.
#[derive(Debug, Clone, Copy, Resource)]
pub(super) struct Captions {
    /// The whole picture, in points.
    pub(super) on: egui::Rect,
    /// With the verdict; without it only dimension lines are.
    pub(super) written: bool,
    /// Whether all of it has room, in letters that can be read.
    pub(super) legible: bool,
}

/// The least letters that count as read: the cautions, pixels.
const LEAST_LETTERS: f32 = 9.0;

impl Captions {
    pub(super) fn new(written: bool, size: [u32; 2]) -> Self {
        let [width, height] = size.map(|side| side as f32 / scale(size));
        Self {
            on: egui::Rect::from_min_size(egui::Pos2::ZERO, egui::vec2(width, height)),
            written,
            legible: true,
        }
    }
}

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
    mut captions: ResMut<Captions>,
    mut contexts: Query<&mut EguiContext, With<Writing>>,
) {
    for mut context in &mut contexts {
        let context = context.get_mut();
        style::apply(context, &desk.0.settings);
        let painter = context.layer_painter(egui::LayerId::background());
        overlay::paint(&painter, captions.on, &desk.0, captions.written);
        captions.legible = !captions.written
            || overlay::caution_letters(&painter, captions.on, &desk.0)
                .is_some_and(|points| points * context.pixels_per_point() >= LEAST_LETTERS);
    }
}
