//! Which keys were pressed, and what was held down beside each?
//!
//! Several keys may come in within one slow frame. Each is told with what was held when it was
//! pressed: a quick Ctrl+S is no S.

use bevy::ecs::message::MessageReader;
use bevy::ecs::system::{Local, ResMut, SystemParam};
use bevy::input::keyboard::{Key, KeyboardFocusLost, KeyboardInput};
use bevy_egui::EguiClipboard;
use bevy_egui::helpers::{bevy_to_egui_key, bevy_to_egui_physical_key};
use egui::{Event, Modifiers};

/// The keyboard since the last frame.
#[derive(SystemParam)]
pub(super) struct Keyboard<'w, 's> {
    keys: MessageReader<'w, 's, KeyboardInput>,
    lost: MessageReader<'w, 's, KeyboardFocusLost>,
    held: Local<'s, Modifiers>,
    clipboard: ResMut<'w, EguiClipboard>,
}

impl Keyboard<'_, '_> {
    /// Adds what was pressed and released to the events of a frame.
    pub(super) fn tell(&mut self, events: &mut Vec<Event>) {
        // Told every frame by the library, whether or not they changed: each would cause the next
        // frame for ever.
        events.retain(|event| !matches!(event, Event::ModifiersChanged(_)));
        for key in self.keys.read() {
            let clipboard = &mut self.clipboard;
            translate(key, &mut self.held, &mut || clipboard.get_text(), events);
        }
        if self.lost.read().last().is_some() && *self.held != Modifiers::NONE {
            // Their release goes to another window.
            *self.held = Modifiers::NONE;
            events.push(Event::ModifiersChanged(Modifiers::NONE));
        }
    }
}

/// What a key means to the panels. `held` is brought up to date.
fn translate(
    input: &KeyboardInput,
    held: &mut Modifiers,
    clipboard: &mut dyn FnMut() -> Option<String>,
    out: &mut Vec<Event>,
) {
    let pressed = input.state.is_pressed();
    let before = *held;
    match input.logical_key {
        Key::Shift => held.shift = pressed,
        Key::Alt => held.alt = pressed,
        Key::Control => {
            held.ctrl = pressed;
            if !cfg!(target_os = "macos") {
                held.command = pressed;
            }
        }
        Key::Super | Key::Meta if cfg!(target_os = "macos") => {
            held.mac_cmd = pressed;
            held.command = pressed;
        }
        _ => {}
    }
    if *held != before {
        out.push(Event::ModifiersChanged(*held));
    }
    // Ctrl and Alt together write the third character of a key on many keyboards.
    let writes = !held.command || (!cfg!(target_os = "macos") && held.alt);
    if pressed && writes {
        let text = match &input.logical_key {
            Key::Character(text) if !text.chars().any(char::is_control) => text.as_str(),
            Key::Space => " ",
            _ => "",
        };
        if !text.is_empty() {
            out.push(Event::Text(text.into()));
        }
    }
    // A layout without Latin letters is taken by the place of the key.
    let physical_key = bevy_to_egui_physical_key(&input.key_code);
    let Some(key) = bevy_to_egui_key(&input.logical_key).or(physical_key) else {
        return;
    };
    out.push(Event::Key {
        key,
        physical_key,
        pressed,
        repeat: input.repeat,
        modifiers: *held,
    });
    if pressed && held.command {
        out.extend(match key {
            egui::Key::C => Some(Event::Copy),
            egui::Key::X => Some(Event::Cut),
            egui::Key::V => clipboard().map(Event::Paste),
            _ => None,
        });
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use bevy::ecs::entity::Entity;
    use bevy::input::ButtonState;
    use bevy::input::keyboard::KeyCode;

    fn events(keys: &[(KeyCode, Key, bool)]) -> Vec<Event> {
        let (mut held, mut out) = (Modifiers::NONE, Vec::new());
        for (key_code, logical_key, pressed) in keys {
            let input = KeyboardInput {
                key_code: *key_code,
                logical_key: logical_key.clone(),
                state: if *pressed {
                    ButtonState::Pressed
                } else {
                    ButtonState::Released
                },
                text: None,
                repeat: false,
                window: Entity::PLACEHOLDER,
            };
            translate(&input, &mut held, &mut || Some("kept".into()), &mut out);
        }
        out
    }

    fn pressed(events: &[Event]) -> Vec<(egui::Key, bool)> {
        let key = |event: &Event| match event {
            Event::Key {
                key,
                pressed: true,
                modifiers,
                ..
            } => Some((*key, modifiers.command)),
            _ => None,
        };
        events.iter().filter_map(key).collect()
    }

    const S: KeyCode = KeyCode::KeyS;

    fn letter(text: &str) -> Key {
        Key::Character(text.into())
    }

    #[test]
    fn what_is_held_goes_with_the_key_even_when_it_is_let_go_in_the_same_frame() {
        let out = events(&[
            (KeyCode::ControlLeft, Key::Control, true),
            (S, letter("s"), true),
            (S, letter("s"), false),
            (KeyCode::ControlLeft, Key::Control, false),
            (S, letter("s"), true),
        ]);
        let keys = pressed(&out);
        let of_s: Vec<bool> = keys
            .iter()
            .filter(|k| k.0 == egui::Key::S)
            .map(|k| k.1)
            .collect();
        assert_eq!(of_s, [true, false], "{out:?}");
        let texts = out.iter().filter(|e| matches!(e, Event::Text(_))).count();
        assert_eq!(texts, 1, "Ctrl+S writes nothing: {out:?}");
    }

    #[test]
    fn the_clipboard_is_pasted_once() {
        let out = events(&[
            (KeyCode::ControlLeft, Key::Control, true),
            (KeyCode::KeyV, letter("v"), true),
            (KeyCode::KeyV, letter("v"), false),
        ]);
        let pasted = out
            .iter()
            .filter(|e| matches!(e, Event::Paste(text) if text == "kept"));
        assert_eq!(pasted.count(), 1, "{out:?}");
    }

    #[test]
    fn other_alphabets_are_taken_by_the_place_of_the_key() {
        let out = events(&[(S, letter("\u{44b}"), true)]);
        assert_eq!(pressed(&out), [(egui::Key::S, false)]);
        assert!(out.contains(&Event::Text("\u{44b}".into())));
    }
}
