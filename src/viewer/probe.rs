//! Is there anything on this machine that can draw?
//!
//! Asked before the engine starts, since the engine does not come back when there is nothing.

use std::ops::Deref;

use bevy::render::renderer::RenderInstance;
use bevy::render::settings::Backends;
use bevy::tasks::block_on;

use super::Fault;

/// The graphics library's own instance, by way of the engine that wraps it.
type Instance = <<<RenderInstance as Deref>::Target as Deref>::Target as Deref>::Target;

/// What would draw.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Adapter {
    /// Its own name.
    pub name: String,
    /// True for a driver that draws on the processor, without a graphics card.
    pub is_software: bool,
}

/// The driver that would draw; a graphics card before the processor.
///
/// # Errors
/// When there is none: what to install.
pub fn adapter() -> Result<Adapter, Fault> {
    let instance = Instance::default();
    // The same choice of libraries as the engine makes.
    let backends = Backends::from_env().unwrap_or(Backends::all());
    block_on(instance.enumerate_adapters(backends))
        .into_iter()
        .map(|adapter| {
            let info = adapter.get_info();
            Adapter {
                // The engine does not export the kinds of devices, only their names.
                is_software: format!("{:?}", info.device_type) == "Cpu",
                name: info.name,
            }
        })
        .min_by_key(|adapter| adapter.is_software)
        .ok_or_else(no_driver)
}

fn no_driver() -> Fault {
    Fault {
        what: "there is no graphics driver to draw with: neither Vulkan nor OpenGL".into(),
        help: "install one; where there is no graphics card, one that draws on the processor \
               will do (Debian and Ubuntu: `apt install mesa-vulkan-drivers`)"
            .into(),
    }
}
