//! Which of a driver's abilities does the engine use?
//!
//! As few as the scene needs: for what a driver can do, the engine prepares dozens of programs for
//! it before the first picture (sky, occlusion, reflections), whether anything uses them or not.
//! Without a graphics card that takes seconds. With less than a hundred things to draw, the
//! processor may well say what stands where.

use bevy::pbr::PbrPlugin;
use bevy::render::RenderPlugin;
use bevy::render::settings::{RenderCreation, WgpuFeatures, WgpuLimits, WgpuSettings};

use super::probe::Adapter;

/// The engine's drawing on this driver.
#[must_use]
pub fn drawing(adapter: &Adapter) -> RenderPlugin {
    // All of these together: with some of them alone the engine leaves out what is solid.
    let limits = WgpuLimits {
        max_storage_buffers_per_shader_stage: 0,
        max_storage_textures_per_shader_stage: 0,
        max_compute_workgroup_storage_size: 0,
        max_compute_invocations_per_workgroup: 0,
        max_compute_workgroup_size_x: 0,
        max_compute_workgroup_size_y: 0,
        max_compute_workgroup_size_z: 0,
        max_compute_workgroups_per_dimension: 0,
        ..WgpuLimits::default()
    };
    RenderPlugin {
        // A picture that lacks what is still being compiled would stay: nothing causes the next.
        synchronous_pipeline_compilation: true,
        render_creation: RenderCreation::Automatic(Box::new(WgpuSettings {
            backends: Some(adapter.backends),
            constrained_limits: Some(limits),
            disabled_features: Some(WgpuFeatures::TEXTURE_BINDING_ARRAY),
            ..WgpuSettings::default()
        })),
        ..RenderPlugin::default()
    }
}

/// The engine's shading: nothing is drawn twice to find out what hides what.
#[must_use]
pub fn shading() -> PbrPlugin {
    PbrPlugin {
        prepass_enabled: false,
        use_gpu_instance_buffer_builder: false,
        ..PbrPlugin::default()
    }
}
