//! Where does the light come from?
//!
//! One light from above throws soft shadows, a weak one from below the other side and light from
//! everywhere keep shadows, ceilings and the vehicle's underside readable.

use bevy::light::{
    CascadeShadowConfig, CascadeShadowConfigBuilder, DirectionalLightShadowMap, GlobalAmbientLight,
};
use bevy::prelude::*;

use super::SceneSet;
use crate::viewer::{OpenDesk, Quality};

/// Key light, lux at the exposure of the scene's camera.
const KEY_LUX: f32 = 1900.0;
/// Fill light, lux.
const FILL_LUX: f32 = 1000.0;
/// Light from everywhere, candela a square metre.
const AMBIENT: f32 = 1080.0;
/// Side of the shadow map, texels.
const SHADOW_MAP: usize = 4096;

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
        from(-0.3, -0.36, 1.0),
        cascades((0.1, 40.0)),
    ));
    commands.spawn((
        DirectionalLight {
            illuminance: FILL_LUX,
            shadow_maps_enabled: false,
            ..default()
        },
        from(0.8, -0.65, -0.25),
    ));
}

/// One cascade between two distances from the eye: the room is small.
fn cascades((from_m, to_m): (f32, f32)) -> CascadeShadowConfig {
    CascadeShadowConfigBuilder {
        num_cascades: 1,
        minimum_distance: from_m,
        maximum_distance: to_m,
        ..default()
    }
    .build()
}

/// Shadows follow quality, and lie where the room lies from the eye, in steps of a metre: the less
/// of the depth they cover, the finer they are.
fn reach(
    desk: Res<OpenDesk>,
    quality: Res<Quality>,
    mut key: Query<(&mut DirectionalLight, &mut CascadeShadowConfig), With<Key>>,
) {
    let [low, high] = desk.0.bounds_m;
    let middle = (low + high) * 0.5;
    let away = (desk.0.camera.eye_m - middle).length();
    let around = (high - low).length() * 0.5;
    let from = (away - around).floor().clamp(0.1, 190.0) as f32;
    let to = (away + around).ceil().clamp(5.0, 200.0) as f32;
    for (mut light, mut cascade) in &mut key {
        if light.shadow_maps_enabled != quality.shadows {
            light.shadow_maps_enabled = quality.shadows;
        }
        let known = (
            cascade.minimum_distance.to_bits(),
            cascade.bounds.last().map(|b| b.to_bits()),
        );
        if known != (from.to_bits(), Some(to.to_bits())) {
            *cascade = cascades((from, to));
        }
    }
}
