//! The window's frame: its size and its title.

use bevy::ecs::prelude::*;
use bevy::utils::default;
use bevy::window::{Monitor, PrimaryWindow, Window, WindowResizeConstraints};

use crate::panels::Desk;
use crate::viewer::OpenDesk;

/// Size of the window when it opens, points.
const SIZE: (u32, u32) = (1280, 800);

/// The window as it opens.
pub(super) fn window(desk: &Desk) -> Window {
    Window {
        title: title(desk),
        name: Some("bayrise".into()),
        resolution: SIZE.into(),
        resize_constraints: WindowResizeConstraints {
            min_width: 720.0,
            min_height: 480.0,
            ..default()
        },
        ..default()
    }
}

fn title(desk: &Desk) -> String {
    let mark = if desk.document.is_unsaved() { "*" } else { "" };
    format!("{}{mark} - Bayrise", desk.document.name())
}

/// A screen that is smaller than the window gets a smaller one.
pub(super) fn fit_the_screen(
    mut fitted: Local<bool>,
    monitors: Query<&Monitor>,
    mut window: Single<&mut Window, With<PrimaryWindow>>,
) {
    if *fitted || monitors.is_empty() {
        return;
    }
    *fitted = true;
    let least = |side: fn(&Monitor) -> u32| monitors.iter().map(side).min().unwrap_or(u32::MAX);
    let (width, height) = (
        least(|monitor| monitor.physical_width),
        least(|monitor| monitor.physical_height),
    );
    let size = window.physical_size();
    if size.x > width || size.y > height {
        window
            .resolution
            .set_physical_resolution(size.x.min(width), size.y.min(height));
    }
}

/// Keeps the title up to date.
pub(super) fn name_the_window(
    desk: Res<OpenDesk>,
    mut window: Single<&mut Window, With<PrimaryWindow>>,
) {
    let title = title(&desk.0);
    if window.title != title {
        window.title = title;
    }
}
