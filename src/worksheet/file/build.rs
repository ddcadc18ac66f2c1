//! The text that answers are put into, and what it lacks.

use super::{EmbeddedOnly, Length, Origin, Refused, Rounding, UnitSystem, Value, Written, quoted};
use crate::bayfile::edit::EditError;
use crate::units;

/// How something comes out of the list of what is not measured.
pub(super) enum Cure {
    /// Its figure goes into this field.
    Field(String),
    /// What to write where, line by line.
    Lines(Vec<String>),
}

pub(super) struct Text {
    pub(super) text: String,
    /// The same, read: values are looked up in it.
    written: Written,
    units: UnitSystem,
    /// Path and name of each placeholder.
    pub(super) marks: Vec<(String, String)>,
    /// What is not known and without harm left out of the file, for the study says so of itself.
    pub(super) not_known: Vec<String>,
    /// Things that were begun and not measured enough.
    pub(super) left_out: Vec<String>,
    /// What withholds every lock and has no line of its own in the file, and what to do about it.
    withheld: Vec<(String, Vec<String>)>,
    /// Path and name of each figure of a preset that withholds.
    kept: Vec<(String, String)>,
    /// Paths of lists that lack something.
    pointed_out: Vec<String>,
    /// Lines for the top of the file.
    pub(super) head: Vec<String>,
    /// What the person is told.
    pub(super) notes: Vec<String>,
}

/// What of a preset may stay where nobody gave it: words and figures that no clearance, load or mark
/// hangs on, so that no lock is called safe for their sake. Whatever else a preset has withholds every
/// lock, be it asked for or not: a field that comes to the bay file is on the safe side by itself.
fn decides_nothing(path: &str) -> bool {
    const MAY_STAY: [&str; 7] = [
        "lift.motor",
        "lift.hydraulics",
        "lift.shipping_mass",
        "lift.pieces",
        "lift.price",
        "vehicle.style",
        "vehicle.driver",
    ];
    let is_name = path.ends_with(".name") || path.ends_with(".format");
    // Where swings are counted from: without its swings it says nothing, and they are asked for.
    let is_zero = path.starts_with("lift.arms.") && path.ends_with(".zero");
    is_name || is_zero || MAY_STAY.iter().any(|may| within(path, may))
}

/// Whether a path is another one or lies in it.
fn within(path: &str, other: &str) -> bool {
    path.strip_prefix(other)
        .is_some_and(|rest| rest.is_empty() || rest.starts_with('.'))
}

const NAME: &str = "the answers";

fn written(text: &str) -> Result<Written, Refused> {
    Written::read(NAME, text.as_bytes(), &EmbeddedOnly)
        .ok_or_else(|| Refused::new("the answers can't be put into a file", ""))
}

impl Text {
    /// From a starter file: its words at the top give way to those of the answers.
    pub(super) fn new(starter: &str, units: UnitSystem) -> Result<Self, Refused> {
        let body = starter.find("\n(\n").map_or(0, |at| at + 1);
        let text = starter[body..].replace("// MEASURE ", "// To measure: ");
        Ok(Self {
            written: written(&text)?,
            text,
            units,
            marks: Vec::new(),
            not_known: Vec::new(),
            left_out: Vec::new(),
            withheld: Vec::new(),
            kept: Vec::new(),
            pointed_out: Vec::new(),
            head: Vec::new(),
            notes: Vec::new(),
        })
    }

    fn take(&mut self, edited: Result<String, EditError>) -> Result<(), Refused> {
        let said = |error: EditError| Refused::new(error.to_string(), "");
        let text = edited.map_err(said)?;
        self.written = written(&text)?;
        self.text = text;
        Ok(())
    }

    pub(super) fn set(&mut self, path: &str, ron: &str) -> Result<(), Refused> {
        self.take(self.written.set(path, ron))
    }

    fn found(&self, path: &str) -> Option<Value> {
        self.written.value(path)
    }

    /// What stands at a path, as it is written.
    pub(super) fn value(&self, path: &str) -> Option<String> {
        let value = self.found(path)?;
        Some(if value.in_quotes {
            quoted(&value.text)
        } else {
            value.text
        })
    }

    /// Takes a value of the file away, where it has one.
    pub(super) fn leave_out(&mut self, path: &str) -> Result<(), Refused> {
        if self
            .found(path)
            .is_none_or(|value| value.origin != Origin::File)
        {
            return Ok(());
        }
        self.take(self.written.remove(path))
    }

    /// A question without an answer: its placeholder is marked, a preset's figure withholds every
    /// lock, and what the file can do without stays out.
    pub(super) fn lacks(&mut self, path: &str, what: &str) {
        match self.found(path).map(|value| value.origin) {
            Some(Origin::File) => self.mark(path, what),
            Some(Origin::Preset(_)) if !decides_nothing(path) => {
                self.kept
                    .push((path.into(), format!("{what}, a preset's figure")));
            }
            Some(Origin::Preset(_)) | None => {}
        }
    }

    /// A question without an answer, of which the study says by itself that it is not known: a
    /// preset's figure is taken out.
    pub(super) fn not_known(
        &mut self,
        path: &str,
        what: &str,
        nothing: &str,
    ) -> Result<(), Refused> {
        if let Some(Origin::Preset(_)) = self.found(path).map(|value| value.origin) {
            self.set(path, nothing)?;
        }
        self.not_known.push(what.into());
        Ok(())
    }

    pub(super) fn mark(&mut self, path: &str, what: &str) {
        if !self.marks.iter().any(|(known, _)| known == path) {
            self.marks.push((path.into(), what.into()));
        }
    }

    /// Something that is there and not in the file: no lock may be called safe for want of it.
    /// `cure` says, line by line, what to write where.
    pub(super) fn withhold(&mut self, what: String, cure: Vec<String>) {
        if !self.withheld.iter().any(|(known, _)| *known == what) {
            self.withheld.push((what, cure));
        }
    }

    /// Marks the line of a list that lacks something.
    pub(super) fn point_out(&mut self, path: &str) {
        self.pointed_out.push(path.into());
    }

    /// Nothing of a preset stands at this path any more.
    pub(super) fn not_kept(&mut self, path: &str) {
        self.kept.retain(|(known, _)| !within(known, path));
    }

    /// Every value of lift and vehicle that is a preset's and was not said to be one so far.
    fn not_asked(&self) -> impl Iterator<Item = String> {
        let kept = ["lift", "vehicle"].iter().flat_map(|part| {
            let paths = self.written.of_preset(part).into_iter();
            paths.map(move |path| format!("{part}.{path}"))
        });
        // Of what hangs below and what is fixed on the vehicle its list says whether it is known.
        let told = ["vehicle.underbody", "vehicle.attached"];
        kept.filter(|path| !path.ends_with(".name"))
            .filter(move |path| !told.iter().any(|list| within(path, list)))
            .filter(|path| !self.kept.iter().any(|(known, _)| within(path, known)))
    }

    /// Whatever else is a preset's withholds every lock too, unless nothing hangs on it.
    pub(super) fn keep_the_rest(&mut self) {
        let rest = self.not_asked().filter(|path| !decides_nothing(path));
        let rest: Vec<(String, String)> = rest
            .map(|path| {
                let what = path.replace(['.', '_'], " ");
                (path, format!("{what}, a preset's figure"))
            })
            .collect();
        self.kept.extend(rest);
    }

    /// Paths of what stays a preset's, and decides nothing.
    pub(super) fn of_presets(&self) -> Vec<String> {
        self.not_asked().collect()
    }

    /// A placeholder, in quotes, as either system would have it.
    pub(super) fn either(&self, imperial: &str, metric: &str) -> String {
        quoted(match self.units {
            UnitSystem::Imperial => imperial,
            UnitSystem::Metric => metric,
        })
    }

    /// A length that was worked out, in quotes.
    pub(super) fn shown(&self, length: Length) -> String {
        quoted(&match self.units {
            UnitSystem::Imperial => units::decimal_inches(length, 0, Rounding::Nearest),
            UnitSystem::Metric => units::millimetres(length, 0, Rounding::Nearest),
        })
    }

    /// What is not measured: what is missing first, for it is the least to be seen; then
    /// placeholders; then a preset's figures, which are at least of the kind.
    /// Each with its path, where it has one, else with what to do about it.
    pub(super) fn not_measured(&self) -> Vec<(String, Cure)> {
        let named = self.marks.iter().chain(&self.kept);
        let named = named.map(|(path, what)| (what.clone(), Cure::Field(path.clone())));
        let missing = self.withheld.iter();
        let missing = missing.map(|(what, cure)| (what.clone(), Cure::Lines(cure.clone())));
        missing.chain(named).collect()
    }

    /// The text with its placeholders marked, each on its line.
    pub(super) fn marked(&self) -> String {
        let mut written = self.written.clone();
        let mut text = self.text.clone();
        let mut held: Vec<(String, String, &str)> = Vec::new();
        let marks = self.marks.iter().map(|(path, _)| path);
        for (number, path) in marks.chain(&self.pointed_out).enumerate() {
            let Some(value) = self.value(path) else {
                continue;
            };
            let stand_in = format!("\"<placeholder {number}>\"");
            let Ok(changed) = written.set(path, &stand_in) else {
                continue;
            };
            let Some(again) = Written::read(NAME, changed.as_bytes(), &EmbeddedOnly) else {
                continue;
            };
            (text, written) = (changed, again);
            let field = path.rsplit('.').next().unwrap_or(path);
            held.push((stand_in, value, field));
        }
        let mut out = String::with_capacity(text.len() + 2048);
        for line in text.lines() {
            let mut line = line.to_owned();
            let mut fields = Vec::new();
            for (stand_in, value, field) in &held {
                if line.contains(stand_in.as_str()) {
                    line = line.replace(stand_in.as_str(), value);
                    fields.push(*field);
                }
            }
            out.push_str(&line);
            if !fields.is_empty() {
                out.push_str(&format!(" // NOT MEASURED: {}", fields.join(", ")));
            }
            out.push('\n');
        }
        out
    }
}
