//! Where does the light come from?
//!
//! One light from above over the eye's left shoulder throws soft shadows, a weak one from the
//! other side and light from everywhere keep the shadows readable.

use bevy::light::{
    CascadeShadowConfig, CascadeShadowConfigBuilder, DirectionalLightShadowMap, GlobalAmbientLight,
};
use bevy::prelude::*;

use super::SceneSet;
use crate::viewer::{OpenDesk, Quality};

/// Key light, lux at the exposure of the scene's camera.
const KEY_LUX: f32 = 2100.0;
/// Fill light, lux.
const FILL_LUX: f32 = 900.0;
/// Light from everywhere, candela a square metre.
const AMBIENT: f32 = 620.0;
/// Side of the shadow map, texels.
const SHADOW_MAP: usize = 2048;

pub(super) struct LightsPlugin;

impl Plugin for LightsPlugin {
    fn build(&self, app: &mut App) {
        app.insert_resource(DirectionalLightShadowMap { size: SHADOW_MAP })
            .insert_resource(GlobalAmbientLight {
                brightness: AMBIENT,
                ..default()
            })
            .add_systems(Startup, lights)
            .add_systems(Update, reach.in_set(SceneSet::Show));
    }
}

#[derive(Component)]
struct Key;

fn lights(mut commands: Commands, quality: Res<Quality>) {
    let from =
        |x: f32, y: f32, z: f32| Transform::from_xyz(x, y, z).looking_at(Vec3::ZERO, Vec3::Y);
    commands.spawn((
        Key,
        DirectionalLight {
            illuminance: KEY_LUX,
            shadow_maps_enabled: quality.shadows,
            ..default()
        },
        from(-0.45, -0.5, 1.0),
        cascades(40.0),
    ));
    commands.spawn((
        DirectionalLight {
            illuminance: FILL_LUX,
            shadow_maps_enabled: false,
            ..default()
        },
        from(0.8, -0.7, 0.45),
    ));
}

/// One cascade that reaches so far from the eye: the room is small.
fn cascades(reach_m: f32) -> CascadeShadowConfig {
    CascadeShadowConfigBuilder {
        num_cascades: 1,
        minimum_distance: 0.1,
        maximum_distance: reach_m,
        ..default()
    }
    .build()
}

/// Shadows follow quality, and reach as far as the room lies from the eye, in steps of a metre.
fn reach(
    desk: Res<OpenDesk>,
    quality: Res<Quality>,
    mut key: Query<(&mut DirectionalLight, &mut CascadeShadowConfig), With<Key>>,
) {
    let [low, high] = desk.0.bounds_m;
    let middle = (low + high) * 0.5;
    let reach = (desk.0.camera.eye_m - middle).length() + (high - low).length() * 0.5;
    let reach = (reach.clamp(5.0, 200.0).ceil()) as f32;
    for (mut light, mut cascade) in &mut key {
        if light.shadow_maps_enabled != quality.shadows {
            light.shadow_maps_enabled = quality.shadows;
        }
        if cascade.bounds.last() != Some(&reach) {
            *cascade = cascades(reach);
        }
    }
}
