//! The panels, once a frame: what is shown, what is asked for, and what becomes of it at once.
//!
//! The panels' library may run a frame's pass twice; input is in the first one only. What is asked
//! for is carried out on the desk right after a pass, and a second pass is asked for then. The
//! passes come before the scene is brought up to date, so that panels and scene show the desk as it
//! is now, in the same frame as the input.

use bevy::camera::{Camera, Viewport};
use bevy::ecs::query::{Has, Or, With};
use bevy::ecs::resource::Resource;
use bevy::ecs::system::{Query, Res, ResMut, Single};
use bevy::math::UVec2;
use bevy::window::{PrimaryWindow, Window};
use bevy_egui::{EguiContext, EguiFullOutput, EguiInput, PrimaryEguiContext};
use egui::{Rect, Ui};

use super::ask_path::{Answer, AskPath};
use super::keyboard::Keyboard;
use super::pace::Pace;
use super::pointer;
use super::studies::Studies;
use crate::panels::{Action, Wish, overlay, shell};
use crate::viewer::OpenDesk;
use crate::viewer::scene::{OtherCamera, SceneCamera};

/// What only the window can do, yet to be done.
#[derive(Debug, Default, Resource)]
pub(super) struct Wishes(pub(super) Vec<Wish>);

/// What was asked for outside the panels, to be carried out with what they ask for.
#[derive(Debug, Default, Resource)]
pub(super) struct Asked(pub(super) Vec<Action>);

/// Where the view is in the window.
#[derive(Debug, Default, Resource)]
pub(super) struct View {
    /// In points of the panels; none before the first pass.
    rect: Option<Rect>,
    /// Where the bay beside the open one is; none without one.
    other: Option<Rect>,
    /// Pixels of the screen a point.
    scale: f32,
}

impl View {
    /// Its left, top, right and bottom, for developers and tests.
    pub(super) fn place(&self) -> String {
        self.rect.map_or_else(
            || "-".into(),
            |rect| {
                let Rect { min, max } = rect;
                format!("{:.0},{:.0},{:.0},{:.0}", min.x, min.y, max.x, max.y)
            },
        )
    }
}

/// Shows the panels and carries out what they ask for.
#[expect(clippy::too_many_arguments, reason = "a system names what it reads")]
pub(super) fn run(
    mut panels: Single<
        (&mut EguiContext, &mut EguiInput, &mut EguiFullOutput),
        With<PrimaryEguiContext>,
    >,
    mut keyboard: Keyboard,
    mut desk: ResMut<OpenDesk>,
    mut ask: ResMut<AskPath>,
    mut wishes: ResMut<Wishes>,
    mut outside: ResMut<Asked>,
    mut studies: ResMut<Studies>,
    mut pace: ResMut<Pace>,
    mut view: ResMut<View>,
) {
    let (context, input, shown) = &mut *panels;
    let mut input = input.take();
    keyboard.tell(&mut input.events);
    let has_a_size = input.screen_rect.is_some();
    let context = context.get_mut().clone();
    let output = context.run_ui(input, |ui| {
        // The first frame of all comes before the engine knows the window's size.
        if !has_a_size {
            return;
        }
        let asked = std::mem::take(&mut outside.0);
        if pass(ui, asked, &mut desk, &mut ask, &mut wishes, &mut view) {
            studies.advance(&mut desk.0);
            pace.stir();
            ui.ctx().request_discard("the desk changed");
        }
    });
    pace.panels_ask(&output);
    if !output.textures_delta.set.is_empty() {
        // Letters that were never shown before may reach the screen a frame later.
        pace.stir();
    }
    shown.0 = Some(output);
}

/// One pass; true when anything changed by it.
fn pass(
    ui: &mut Ui,
    mut asked: Vec<Action>,
    desk: &mut ResMut<OpenDesk>,
    ask: &mut AskPath,
    wishes: &mut Wishes,
    view: &mut View,
) -> bool {
    let mut changed = false;
    if let Some(answer) = ask.show(ui.ctx(), desk.0.document.path()) {
        changed = true;
        match answer {
            Answer::Open(path) => asked.push(Action::OpenFile(path)),
            Answer::Beside(path) => asked.push(Action::PutBeside(path)),
            Answer::Readings(path) => asked.push(Action::AsBuilt(path)),
            Answer::Save(path) => wishes.0.push(desk.0.save_to(path)),
            Answer::HandOver(what, path) => wishes.0.push(Wish::HandOver { what, path }),
            Answer::SaveElsewhere => asked.push(Action::SaveAs),
        }
    }
    // Before the panels, so that whatever they put over the view gets the pointer first.
    for (index, rect) in [view.rect, view.other].into_iter().enumerate() {
        if let Some(rect) = rect {
            pointer::actions(ui, index, rect, &mut asked);
        }
    }
    let both = shell::show(ui, &desk.0, &mut asked);
    let (rect, other) = overlay::halves(both, &desk.0);
    let scale = ui.ctx().pixels_per_point();
    if (view.rect, view.other) != (Some(rect), other) || (view.scale - scale).abs() > 1e-6 {
        *view = View {
            rect: Some(rect),
            other,
            scale,
        };
        changed = true;
    }
    let aspect = f64::from(rect.width()) / f64::from(rect.height());
    if (aspect - desk.0.aspect).abs() > 1e-6 && aspect.is_finite() && aspect > 0.0 {
        desk.0.set_aspect(aspect);
    }
    changed |= !asked.is_empty();
    for action in asked {
        wishes.0.extend(desk.0.apply(action));
    }
    changed
}

/// The camera of the open bay, or of the one beside it.
type Either = Or<(With<SceneCamera>, With<OtherCamera>)>;

/// Gives the rest of the window, beside the panels, to the engine's cameras.
pub(super) fn place_view(
    view: Res<View>,
    window: Single<&Window, With<PrimaryWindow>>,
    mut cameras: Query<(&mut Camera, Has<OtherCamera>), Either>,
) {
    let Some(rect) = view.rect else { return };
    let place = |rect| viewport(rect, view.scale, window.physical_size());
    for (mut camera, is_other) in &mut cameras {
        let placed = if is_other {
            view.other.and_then(place)
        } else {
            place(rect)
        };
        let known = camera
            .viewport
            .as_ref()
            .map(|known| (known.physical_position, known.physical_size));
        if known != placed || camera.is_active != placed.is_some() {
            camera.is_active = placed.is_some();
            camera.viewport = placed.map(|(physical_position, physical_size)| Viewport {
                physical_position,
                physical_size,
                ..Default::default()
            });
        }
    }
}

/// A rectangle of points as pixels inside a window: its upper left corner and size; none when
/// nothing of it is left.
fn viewport(rect: Rect, scale: f32, window: UVec2) -> Option<(UVec2, UVec2)> {
    let pixel = |points: f32, most: u32| {
        let pixels = f64::from(points) * f64::from(scale);
        if pixels.is_finite() {
            // Within the window's size, so it is a whole number of that type.
            pixels.round().clamp(0.0, f64::from(most)) as u32
        } else {
            0
        }
    };
    let low = UVec2::new(pixel(rect.min.x, window.x), pixel(rect.min.y, window.y));
    let high = UVec2::new(pixel(rect.max.x, window.x), pixel(rect.max.y, window.y));
    let size = high.saturating_sub(low);
    (size.x > 0 && size.y > 0).then_some((low, size))
}

#[cfg(test)]
mod tests {
    use super::*;
    use egui::Pos2;

    #[test]
    fn the_view_stays_inside_the_window() {
        let rect = |a, b, c, d| Rect::from_min_max(Pos2::new(a, b), Pos2::new(c, d));
        let window = UVec2::new(800, 600);
        assert_eq!(
            viewport(rect(100.0, 50.0, 300.0, 250.0), 2.0, window),
            Some((UVec2::new(200, 100), UVec2::new(400, 400)))
        );
        assert_eq!(
            viewport(rect(-10.0, 0.0, 900.0, 900.0), 1.0, window),
            Some((UVec2::ZERO, window))
        );
        assert_eq!(viewport(rect(100.0, 0.0, 100.2, 50.0), 1.0, window), None);
        assert_eq!(viewport(Rect::NOTHING, 1.0, window), None);
        assert_eq!(viewport(Rect::NAN, 1.0, window), None);
    }
}
