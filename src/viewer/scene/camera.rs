//! How does the engine's camera follow the desk's?

use bevy::camera::{
    ClearColorConfig, OrthographicProjection, PerspectiveProjection, Projection, ScalingMode,
};
use bevy::core_pipeline::tonemapping::{DebandDither, Tonemapping};
use bevy::prelude::*;

use super::{Open, Other, SceneSet, Shown, Side};
use crate::drawing::palette::things;
use crate::panels::camera::{Camera as Eye, Lens};
use crate::panels::settings::Theme;
use crate::viewer::convert::{Origin, colour, vector};
use crate::viewer::{OpenDesk, Quality};

/// The camera that looks at the scene. Where in the window it draws is the window's affair.
#[derive(Debug, Clone, Copy, Component)]
pub struct SceneCamera;

/// The camera that looks at the bay beside the open one. It draws only where the window gives it a
/// place.
#[derive(Debug, Clone, Copy, Component)]
pub struct OtherCamera;

/// The nearest thing that is drawn, metres from the eye.
const NEAR_M: f32 = 0.05;
/// The farthest thing that is drawn with parallel lines, metres from the eye.
const FAR_M: f32 = 500.0;

pub(super) struct CameraPlugin;

impl Plugin for CameraPlugin {
    fn build(&self, app: &mut App) {
        app.add_systems(Startup, spawn).add_systems(
            Update,
            (follow::<Open, SceneCamera>, follow::<Other, OtherCamera>).in_set(SceneSet::Show),
        );
    }
}

fn spawn(mut commands: Commands, quality: Res<Quality>) {
    commands.spawn((
        SceneCamera,
        Camera3d::default(),
        Tonemapping::None,
        DebandDither::Disabled,
        msaa(*quality),
    ));
    commands.spawn((
        OtherCamera,
        Camera3d::default(),
        Camera {
            order: 1,
            is_active: false,
            ..default()
        },
        Other::layer(),
        Tonemapping::None,
        DebandDither::Disabled,
        msaa(*quality),
    ));
}

fn msaa(quality: Quality) -> Msaa {
    if quality.samples >= 4 {
        Msaa::Sample4
    } else {
        Msaa::Off
    }
}

fn follow<S: Side, C: Component>(
    open: Res<OpenDesk>,
    shown: Res<Shown<S>>,
    quality: Res<Quality>,
    mut cameras: Query<(&mut Camera, &mut Transform, &mut Projection, &mut Msaa), With<C>>,
) {
    let Some(desk) = S::desk(&open.0) else { return };
    let eye = &desk.camera;
    let behind = match desk.settings.theme {
        Theme::Light => things::BEHIND_LIGHT,
        Theme::Dark => things::BEHIND_DARK,
    };
    for (mut camera, mut transform, mut projection, mut samples) in &mut cameras {
        transform.set_if_neq(standing(eye, &shown.origin));
        if !shows(&projection, eye.lens) {
            *projection = lens(eye.lens);
        }
        samples.set_if_neq(msaa(*quality));
        let clear = colour(behind);
        if !matches!(camera.clear_color, ClearColorConfig::Custom(known) if known == clear) {
            camera.clear_color = ClearColorConfig::Custom(clear);
        }
    }
}

/// Where the engine's camera stands and looks.
fn standing(eye: &Eye, origin: &Origin) -> Transform {
    let [_, up, into] = eye.axes();
    Transform::from_translation(origin.place(eye.eye_m)).looking_to(vector(into), vector(up))
}

fn lens(lens: Lens) -> Projection {
    match lens {
        Lens::Perspective { fov_rad } => Projection::Perspective(PerspectiveProjection {
            fov: fov_rad as f32,
            near: NEAR_M,
            ..default()
        }),
        Lens::Parallel { height_m } => Projection::Orthographic(OrthographicProjection {
            near: 0.0,
            far: FAR_M,
            scaling_mode: ScalingMode::FixedVertical {
                viewport_height: height_m as f32,
            },
            ..OrthographicProjection::default_3d()
        }),
    }
}

fn shows(projection: &Projection, lens: Lens) -> bool {
    match (projection, lens) {
        (Projection::Perspective(now), Lens::Perspective { fov_rad }) => {
            now.fov.to_bits() == (fov_rad as f32).to_bits()
        }
        (Projection::Orthographic(now), Lens::Parallel { height_m }) => matches!(
            now.scaling_mode,
            ScalingMode::FixedVertical { viewport_height }
                if viewport_height.to_bits() == (height_m as f32).to_bits()
        ),
        _ => false,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::panels::camera::Sight;
    use glam::DVec3;

    /// Where the engine's own camera puts a point, from -1 to 1.
    fn engine(eye: &Eye, point: DVec3, aspect: f32) -> Vec3 {
        let origin = Origin::default();
        let mut projection = lens(eye.lens);
        projection.update(aspect * 100.0, 100.0);
        let world_from_camera = standing(eye, &origin).to_matrix();
        let clip_from_world = projection.get_clip_from_view() * world_from_camera.inverse();
        clip_from_world.project_point3(origin.place(point))
    }

    #[test]
    fn the_engine_and_the_desk_put_every_point_in_the_same_place() {
        let (low, high) = (DVec3::new(-3.5, -0.2, 0.0), DVec3::new(3.5, 8.0, 3.6));
        let mut worst: f64 = 0.0;
        for sight in Sight::ALL {
            for aspect in [0.7, 1.0, 16.0 / 9.0] {
                let eye =
                    Eye::at(sight, low, high, DVec3::new(-2.9, 3.0, 1.6), aspect).orbited(0.2, 0.1);
                for i in 0..50 {
                    let share = |k: i32| f64::from((i * k) % 50) / 50.0;
                    let point = low + (high - low) * DVec3::new(share(1), share(7), share(13));
                    let Some(ours) = eye.project(point, aspect) else {
                        continue;
                    };
                    if ours.abs().max_element() > 1.5 {
                        continue;
                    }
                    let theirs = engine(&eye, point, aspect as f32);
                    let apart = (f64::from(theirs.x) - ours.x)
                        .abs()
                        .max((f64::from(theirs.y) - ours.y).abs());
                    worst = worst.max(apart);
                }
            }
        }
        // A picture of 8192 pixels has pixels of 2.4e-4; a tenth of one.
        assert!(worst < 2.4e-5, "{worst}");
        assert!(worst > 0.0, "something was compared");
    }
}
