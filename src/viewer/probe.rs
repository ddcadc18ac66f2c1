//! Is there anything on this machine that can draw?
//!
//! Asked before the engine starts, since the engine does not come back when there is nothing.

use bevy::tasks::block_on;
use wgpu::{Backends, DeviceType, Instance, InstanceDescriptor};

use super::Fault;

/// What would draw.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Adapter {
    /// Its own name.
    pub name: String,
    /// True for a driver that draws on the processor, without a graphics card.
    pub is_software: bool,
    /// The libraries that the engine is to ask.
    pub backends: Backends,
}

/// The driver that would draw; a graphics card before the processor, and OpenGL only where there
/// is nothing better.
///
/// # Errors
/// When there is none: what to install.
pub fn adapter() -> Result<Adapter, Fault> {
    let wanted = Backends::from_env();
    let tries = match wanted {
        Some(wanted) => vec![wanted],
        // OpenGL's libraries complain on the terminal where there is no screen.
        None => vec![Backends::PRIMARY, Backends::all()],
    };
    tries.into_iter().find_map(best_of).ok_or_else(no_driver)
}

fn best_of(backends: Backends) -> Option<Adapter> {
    let instance = Instance::new(InstanceDescriptor {
        backends,
        ..InstanceDescriptor::new_without_display_handle()
    });
    block_on(instance.enumerate_adapters(backends))
        .into_iter()
        .map(|adapter| {
            let info = adapter.get_info();
            Adapter {
                is_software: info.device_type == DeviceType::Cpu,
                name: info.name,
                backends,
            }
        })
        .min_by_key(|adapter| adapter.is_software)
}

fn no_driver() -> Fault {
    Fault {
        what: "there is no graphics driver to draw with: neither Vulkan nor OpenGL".into(),
        help: "install one; where there is no graphics card, one that draws on the processor \
               will do (Debian and Ubuntu: `apt install mesa-vulkan-drivers`)"
            .into(),
    }
}
