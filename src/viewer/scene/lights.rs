//! Where does the light come from?
//!
//! One light from above throws soft shadows, a weak one from below the other side and light from
//! everywhere keep shadows, ceilings and the vehicle's underside readable.

use std::marker::PhantomData;

use bevy::light::{
    CascadeShadowConfig, CascadeShadowConfigBuilder, DirectionalLightShadowMap, GlobalAmbientLight,
};
use bevy::prelude::*;

use super::{Open, Other, SceneSet, Side};
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
            .add_systems(Startup, (lights::<Open>, lights::<Other>))
            .add_systems(
                Update,
                (reach::<Open>, reach::<Other>).in_set(SceneSet::Show),
            );
    }
}

#[derive(Component)]
struct Key<S: Side>(PhantomData<S>);

/// A light reaches what shares a layer with it.
fn lights<S: Side>(mut commands: Commands, quality: Res<Quality>) {
    let from =
        |x: f32, y: f32, z: f32| Transform::from_xyz(x, y, z).looking_at(Vec3::ZERO, Vec3::Y);
    commands.spawn((
        Key::<S>(PhantomData),
        S::layer(),
        DirectionalLight {
            illuminance: KEY_LUX,
            shadow_maps_enabled: quality.shadows && S::LAYER == Open::LAYER,
            ..default()
        },
        from(-0.3, -0.36, 1.0),
        cascades((0.1, 40.0)),
    ));
    commands.spawn((
        S::layer(),
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
fn reach<S: Side>(
    open: Res<OpenDesk>,
    quality: Res<Quality>,
    mut key: Query<(&mut DirectionalLight, &mut CascadeShadowConfig), With<Key<S>>>,
) {
    // Lights that nobody is to see make no shadows.
    let shadows = quality.shadows && S::desk(&open.0).is_some();
    let desk = S::desk(&open.0).unwrap_or(&open.0);
    let [low, high] = desk.bounds_m;
    let middle = (low + high) * 0.5;
    let away = (desk.camera.eye_m - middle).length();
    let around = (high - low).length() * 0.5;
    let from = (away - around).floor().clamp(0.1, 190.0) as f32;
    let to = (away + around).ceil().clamp(5.0, 200.0) as f32;
    for (mut light, mut cascade) in &mut key {
        if light.shadow_maps_enabled != shadows {
            light.shadow_maps_enabled = shadows;
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
