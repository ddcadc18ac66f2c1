//! What does a field show, and what may be done to its value?

use super::faults::Faults;
use super::now::Now;
use super::paths;
use super::table::{Entry, Fallback};
use crate::bay::UnitSystem;
use crate::bayfile::edit::{Origin, Value, Written};
use crate::panels::{Action, Change};
use crate::report::Show;
use crate::units::{self, Kind};

/// Where the shown value comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Mark {
    /// The bay file itself.
    Own,
    /// The preset.
    Preset,
    /// The pair that the corner belongs to.
    Pair,
    /// Left out, and this holds then.
    Default,
    /// Left out, and nothing is known.
    Missing,
}

impl Mark {
    /// The word beside the field.
    pub(super) const fn word(self) -> &'static str {
        match self {
            Self::Own | Self::Missing => "",
            Self::Preset => "preset",
            Self::Pair => "pair",
            Self::Default => "default",
        }
    }

    /// What the word means.
    pub(super) const fn meaning(self) -> &'static str {
        match self {
            Self::Own | Self::Missing => "",
            Self::Preset => "From the preset. Type over it to put your own value into the file.",
            Self::Pair => "As its pair. Type over it to give this corner its own value.",
            Self::Default => "Left out of the file; this holds then.",
        }
    }
}

/// What a field shows.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Seen {
    /// The text, as it would be typed.
    pub(super) text: String,
    /// Where it comes from.
    pub(super) mark: Mark,
}

/// What is at hand while the rows of a section are drawn.
pub(super) struct Editor<'a> {
    pub(super) written: &'a Written,
    pub(super) faults: &'a Faults,
    /// Of the document.
    pub(super) generation: u64,
    /// The panel's inside: names and controls stand in columns of it, however deep the row.
    pub(super) frame: egui::Rect,
    pub(super) out: &'a mut Vec<Action>,
}

impl Editor<'_> {
    /// The file looked at from a path.
    pub(super) const fn now<'n>(&'n self, path: &'n str) -> Now<'n> {
        Now::at(self.written, path)
    }

    /// The value at a path; none also where the file says `None`.
    pub(super) fn value(&self, path: &str) -> Option<Value> {
        self.written
            .value(path)
            .filter(|value| value.in_quotes || value.text != "None")
    }

    /// What the field at a path shows.
    pub(super) fn seen(&self, path: &str, entry: Entry, fallback: Fallback) -> Seen {
        if let Some(value) = self.written.value(path) {
            let mark = match value.origin {
                Origin::File => Mark::Own,
                Origin::Preset(_) => Mark::Preset,
            };
            let said_none = fallback == Fallback::Open && !value.in_quotes && value.text == "None";
            let text = if said_none {
                String::new()
            } else {
                self.text(path, entry, value)
            };
            return Seen { text, mark };
        }
        if let Some(value) = paths::of_pair(path).and_then(|pair| self.value(&pair)) {
            return Seen {
                text: value.text,
                mark: Mark::Pair,
            };
        }
        let default = match fallback {
            Fallback::Needed | Fallback::Open => None,
            Fallback::Said(text) => Some(self.default_text(path, entry, text)),
            Fallback::Zero => Some(match entry {
                Entry::Quantity(Kind::Angle) => "0 deg".into(),
                _ if self.now(path).is_metric() => "0 mm".into(),
                _ => "0 in".into(),
            }),
        };
        Seen {
            mark: if default.is_some() {
                Mark::Default
            } else {
                Mark::Missing
            },
            text: default.unwrap_or_default(),
        }
    }

    /// A default as the report says it in the file's units: up to the next graduation.
    fn default_text(&self, path: &str, entry: Entry, text: &str) -> String {
        let length = match entry {
            Entry::Quantity(Kind::Length) => units::parse_length(text).ok(),
            _ => None,
        };
        let units = if self.now(path).is_metric() {
            UnitSystem::Metric
        } else {
            UnitSystem::Imperial
        };
        length.map_or_else(|| text.into(), |length| Show { units }.need(length.m()))
    }

    fn text(&self, path: &str, entry: Entry, value: Value) -> String {
        let between = match entry {
            Entry::Quantities(_) => ", ",
            Entry::Texts => "; ",
            _ => return value.text,
        };
        if !value.text.starts_with('[') {
            return value.text;
        }
        let items = (0..self.written.len(path)).filter_map(|item| {
            let item = self.written.value(&format!("{path}[{item}]"))?;
            Some(item.text)
        });
        items.collect::<Vec<_>>().join(between)
    }

    /// True when the value stands in the file and something holds again without it.
    pub(super) fn can_take_out(&self, path: &str, fallback: Fallback) -> bool {
        let is_own = self
            .written
            .value(path)
            .is_some_and(|value| value.origin == Origin::File);
        if !is_own {
            return false;
        }
        if !self.has_preset(path) {
            return fallback != Fallback::Needed;
        }
        // Where the lift stands is nothing that a preset knows. And a variant or a list goes over
        // the preset's whole: a field of it can't be taken out alone.
        path != "lift.post_line" && !paths::ways(path).any(|above| self.is_whole(above))
    }

    /// True when the path lies in a record that is laid over a preset.
    pub(super) fn has_preset(&self, path: &str) -> bool {
        let record = path.split('.').next().unwrap_or(path);
        matches!(record, "lift" | "vehicle")
            && self.written.value(&format!("{record}.preset")).is_some()
    }

    /// True for a value that goes over a preset's as a whole.
    fn is_whole(&self, path: &str) -> bool {
        self.written.variant(path).is_some()
            || self.written.len(path) > 0
            || self.written.value(&format!("{path}[0]")).is_some()
    }

    /// Asks for a value to be set.
    pub(super) fn set(&mut self, path: &str, value: impl Into<String>) {
        self.out.push(Action::Set {
            path: path.into(),
            value: value.into(),
        });
    }

    /// Asks for a value to be taken out of the file.
    pub(super) fn take_out(&mut self, path: &str) {
        self.out.push(Action::Remove { path: path.into() });
    }

    /// Asks that a value that may be left out be so, whatever a preset says of it.
    pub(super) fn leave_out(&mut self, path: &str) {
        match self.written.value(path) {
            Some(_) if self.has_preset(path) => self.set(path, "None"),
            Some(_) => self.take_out(path),
            None => {}
        }
    }

    /// Asks for several changes as one step.
    pub(super) fn together(&mut self, changes: Vec<Change>) {
        if !changes.is_empty() {
            self.out.push(Action::Together(changes));
        }
    }
}
