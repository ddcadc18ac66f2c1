//! What does the mouse over the view ask for?
//!
//! Left drag turns, right or middle drag (or left with Shift) moves, the wheel brings nearer and
//! farther, a double click brings everything into the frame.

use std::f64::consts::PI;

use egui::{PointerButton, Rect, Sense, Ui};

use crate::panels::Action;

/// Share by which one notch of the wheel brings the view nearer.
const NOTCH: f64 = 0.88;

/// Points of a smooth scroll that count as one notch.
const POINTS_A_NOTCH: f64 = 50.0;

/// What the mouse over the view in `rect`, the `index`th, asks for.
pub(super) fn actions(ui: &Ui, index: usize, rect: Rect, out: &mut Vec<Action>) {
    let response = ui.interact(
        rect,
        ui.id().with("view").with(index),
        Sense::click_and_drag(),
    );
    let height = f64::from(rect.height().max(1.0));
    if response.double_clicked_by(PointerButton::Primary) {
        out.push(Action::FrameAll);
        return;
    }
    let delta = response.drag_delta();
    if delta != egui::Vec2::ZERO {
        let (x, y) = (f64::from(delta.x) / height, f64::from(delta.y) / height);
        let shift = ui.input(|input| input.modifiers.shift);
        let turns = response.dragged_by(PointerButton::Primary) && !shift;
        // What is under the pointer goes along with it: the eye goes the other way.
        out.push(if turns {
            Action::Orbit(-x * PI, y * PI)
        } else {
            Action::Pan(-x, y)
        });
    }
    if response.contains_pointer() {
        let notches = ui.input(|input| input.events.iter().map(notches).sum::<f64>());
        let pinch = f64::from(ui.input(egui::InputState::zoom_delta));
        let factor = NOTCH.powf(notches);
        let factor = if notches == 0.0 && pinch > 0.0 {
            1.0 / pinch
        } else {
            factor
        };
        if (factor - 1.0).abs() > 1e-6 {
            out.push(Action::Zoom(factor));
        }
    }
}

/// How far an event turns the wheel.
fn notches(event: &egui::Event) -> f64 {
    let egui::Event::MouseWheel { unit, delta, .. } = event else {
        return 0.0;
    };
    let y = f64::from(delta.y);
    match unit {
        egui::MouseWheelUnit::Point => y / POINTS_A_NOTCH,
        egui::MouseWheelUnit::Line => y,
        egui::MouseWheelUnit::Page => y * 5.0,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use egui::{Event, Modifiers, MouseWheelUnit, Pos2, RawInput, TouchPhase, Vec2};

    const RECT: Rect = Rect {
        min: Pos2::new(100.0, 0.0),
        max: Pos2::new(500.0, 400.0),
    };

    /// The actions that each list of events, one list a frame, leads to.
    fn run(frames: Vec<Vec<Event>>) -> Vec<Action> {
        let context = egui::Context::default();
        let mut out = Vec::new();
        for (frame, mut events) in frames.into_iter().enumerate() {
            if let Some(held) = events.iter().find_map(modifiers) {
                events.insert(0, Event::ModifiersChanged(held));
            }
            let input = RawInput {
                screen_rect: Some(Rect::from_min_size(Pos2::ZERO, Vec2::new(600.0, 400.0))),
                time: Some(frame as f64 * 0.1),
                events,
                ..Default::default()
            };
            let _ = context.run_ui(input, |ui| actions(ui, 0, RECT, &mut out));
        }
        out
    }

    fn modifiers(event: &Event) -> Option<Modifiers> {
        match event {
            Event::PointerButton { modifiers, .. } => Some(*modifiers),
            _ => None,
        }
    }

    fn button(at: Pos2, button: PointerButton, pressed: bool, modifiers: Modifiers) -> Event {
        Event::PointerButton {
            pos: at,
            button,
            pressed,
            modifiers,
        }
    }

    fn drag(which: PointerButton, modifiers: Modifiers, from: Pos2) -> Vec<Action> {
        run(vec![
            vec![],
            vec![Event::PointerMoved(from)],
            vec![button(from, which, true, modifiers)],
            vec![Event::PointerMoved(from + Vec2::new(40.0, 20.0))],
            vec![Event::PointerMoved(from + Vec2::new(80.0, 40.0))],
        ])
    }

    const INSIDE: Pos2 = Pos2::new(300.0, 200.0);

    #[test]
    fn left_drag_turns_and_the_others_move() {
        let turned = drag(PointerButton::Primary, Modifiers::NONE, INSIDE);
        let right: f64 = turned
            .iter()
            .map(|action| match action {
                Action::Orbit(right, up) => {
                    assert!(*right < 0.0 && *up > 0.0);
                    *right
                }
                other => panic!("{other:?}"),
            })
            .sum();
        assert!((right + 0.2 * PI).abs() < 1e-5, "{right}");
        for (which, modifiers) in [
            (PointerButton::Secondary, Modifiers::NONE),
            (PointerButton::Middle, Modifiers::NONE),
        ] {
            let moved = drag(which, modifiers, INSIDE);
            assert!(!moved.is_empty());
            assert!(
                moved
                    .iter()
                    .all(|a| matches!(a, Action::Pan(x, y) if *x < 0.0 && *y > 0.0))
            );
        }
    }

    #[test]
    fn what_happens_beside_the_view_is_not_its_business() {
        let beside = Pos2::new(50.0, 50.0);
        assert_eq!(drag(PointerButton::Primary, Modifiers::NONE, beside), []);
        assert_eq!(wheel(beside), []);
    }

    fn wheel(at: Pos2) -> Vec<Action> {
        run(vec![
            vec![],
            vec![Event::PointerMoved(at)],
            vec![Event::MouseWheel {
                unit: MouseWheelUnit::Line,
                delta: Vec2::new(0.0, 2.0),
                phase: TouchPhase::Move,
                modifiers: Modifiers::NONE,
            }],
            vec![],
        ])
    }

    #[test]
    fn the_wheel_brings_nearer_once_for_each_notch() {
        assert_eq!(wheel(INSIDE), [Action::Zoom(NOTCH.powf(2.0))]);
    }

    #[test]
    fn a_double_click_frames_everything() {
        let click = |pressed| button(INSIDE, PointerButton::Primary, pressed, Modifiers::NONE);
        let out = run(vec![
            vec![],
            vec![Event::PointerMoved(INSIDE)],
            vec![click(true)],
            vec![click(false)],
            vec![click(true)],
            vec![click(false)],
        ]);
        assert_eq!(out, [Action::FrameAll]);
    }
}
