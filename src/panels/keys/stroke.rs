//! Which keys are held down together, and how is that written?

use egui::{Key, Modifiers};

/// A key with what is held down beside it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Stroke {
    /// The key.
    pub key: Key,
    /// Ctrl, or the command key where there is one.
    pub ctrl: bool,
    /// Shift.
    pub shift: bool,
    /// Alt.
    pub alt: bool,
}

impl Stroke {
    /// The key alone.
    pub(super) const fn plain(key: Key) -> Self {
        Self {
            key,
            ctrl: false,
            shift: false,
            alt: false,
        }
    }

    /// With Ctrl.
    pub(super) const fn ctrl(key: Key) -> Self {
        Self {
            ctrl: true,
            ..Self::plain(key)
        }
    }

    /// With Shift.
    pub(super) const fn shift(key: Key) -> Self {
        Self {
            shift: true,
            ..Self::plain(key)
        }
    }

    /// With Alt.
    pub(super) const fn alt(key: Key) -> Self {
        Self {
            alt: true,
            ..Self::plain(key)
        }
    }

    /// With Ctrl and Shift.
    pub(super) const fn ctrl_shift(key: Key) -> Self {
        Self {
            ctrl: true,
            shift: true,
            ..Self::plain(key)
        }
    }

    /// Whether a pressed key is this.
    #[must_use]
    pub fn is(&self, key: Key, modifiers: Modifiers) -> bool {
        // Which keyboards need Shift for these differs from country to country.
        let needs_no_look_at_shift = matches!(key, Key::Plus | Key::Minus | Key::Questionmark);
        self.key == key
            && self.ctrl == (modifiers.command || modifiers.ctrl)
            && self.alt == modifiers.alt
            && (self.shift == modifiers.shift || needs_no_look_at_shift)
    }

    /// Whether a button, slider or menu that has the keyboard is worked with it.
    #[must_use]
    pub const fn works_a_widget(&self) -> bool {
        !self.ctrl
            && !self.alt
            && matches!(
                self.key,
                Key::ArrowUp
                    | Key::ArrowDown
                    | Key::ArrowLeft
                    | Key::ArrowRight
                    | Key::Space
                    | Key::Enter
                    | Key::Escape
            )
    }

    /// Whether it leaves the text in a field alone.
    #[must_use]
    pub fn types_nothing(&self) -> bool {
        self.ctrl || self.key.name().starts_with('F') && self.key.name().len() > 1
    }

    /// What is held down beside the key.
    #[must_use]
    pub const fn modifiers(&self) -> Modifiers {
        Modifiers {
            alt: self.alt,
            ctrl: self.ctrl,
            shift: self.shift,
            mac_cmd: false,
            command: self.ctrl,
        }
    }

    /// "Ctrl+Shift+S", "Page Up".
    #[must_use]
    pub fn label(&self) -> String {
        let mut label = String::new();
        for (held, name) in [
            (self.ctrl, "Ctrl+"),
            (self.shift, "Shift+"),
            (self.alt, "Alt+"),
        ] {
            if held {
                label.push_str(name);
            }
        }
        label.push_str(match self.key {
            Key::ArrowUp => "Up",
            Key::ArrowDown => "Down",
            Key::ArrowLeft => "Left",
            Key::ArrowRight => "Right",
            Key::PageUp => "Page Up",
            Key::PageDown => "Page Down",
            Key::Escape => "Esc",
            Key::Questionmark => "?",
            Key::Plus => "+",
            Key::Equals => "=",
            Key::Minus => "-",
            Key::Comma => ",",
            Key::Period => ".",
            key => key.name(),
        });
        label
    }
}
