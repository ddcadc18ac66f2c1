//! Things that are asked for one after another: obstacles, holes, lines, people.

use super::build::Text;
use super::{Answers, Refused, Section, label, number, section_label, sections};
use crate::units::{Length, parse_length};

/// The section of the body's outline.
const OUTLINE: &str = "roof";

/// What is not known of a list that nobody called complete.
pub(in crate::worksheet) fn whether_all(section: &str) -> String {
    format!("{}: whether these are all", section_label(section))
}

impl Answers {
    /// The outline of the body: as measured, where all of it was; else as high and as wide as the body
    /// is anywhere, over its whole length. Where such a size is a preset's the outline is not measured
    /// either: it must change with the size.
    pub(super) fn outline(&self, text: &mut Text) -> Result<(), Refused> {
        let section = sections().iter().find(|section| section.id == OUTLINE);
        let count = self.count(OUTLINE);
        let places = section.into_iter().flat_map(|section| {
            let places = 0..count;
            places.map(|place| self.item(section, place))
        });
        let places: Result<Vec<String>, String> = places.collect();
        let sizes = ["vehicle.height", "vehicle.length", "vehicle.body_width"];
        let lacking = sizes.iter().filter(|size| self.plain(size).is_none());
        let lacking: Vec<String> = lacking.map(|size| label(size)).collect();
        match places {
            Ok(_) if count == 0 => {}
            Ok(places) if self.is_closed(OUTLINE) && lacking.is_empty() => {
                return text.set("vehicle.roof", &listed(&places, 8));
            }
            Ok(places) if self.is_closed(OUTLINE) => text.left_out.push(format!(
                "{}, for want of {}; for vehicle.roof: [{}]",
                section_label(OUTLINE),
                lacking.join(", "),
                places.join(", ")
            )),
            _ => text.notes.push(
                "The outline of the body is not complete, and left out: each place needs its three \
                 figures, and \"none\" after the last."
                    .into(),
            ),
        }
        text.notes.push(
            "The body counts as high and as wide as it is anywhere over its whole length: the outline \
             was not measured."
                .into(),
        );
        let length = |path: &str| {
            let ron = text.value(path).unwrap_or_default();
            parse_length(&super::unquoted(&ron)).unwrap_or(Length::ZERO)
        };
        let half = length("vehicle.body_width") * 0.5;
        let half = format!("\"{} mm\"", half.m() * 1000.0);
        let [end, height] = ["vehicle.length", "vehicle.height"].map(|path| text.value(path));
        let (end, height) = (end.unwrap_or_default(), height.unwrap_or_default());
        let ends = [String::from("\"0 in\""), end];
        let ends = ends.map(|at| format!("(station: {at}, height: {height}, half_width: {half})"));
        text.set("vehicle.roof", &listed(&ends, 8))?;
        if !lacking.is_empty() {
            let of = format!("{}: a box of a preset's sizes", section_label(OUTLINE));
            text.mark("vehicle.roof", &of);
        }
        Ok(())
    }

    pub(super) fn lists(&self, text: &mut Text) -> Result<(), Refused> {
        let lists = sections().iter().filter(|section| section.repeat.is_some());
        // The outline of the body goes with its sizes.
        for section in lists.filter(|section| section.id != OUTLINE) {
            self.list(text, section)?;
        }
        Ok(())
    }

    fn list(&self, text: &mut Text, section: &Section) -> Result<(), Refused> {
        let path = match section.id {
            "things" => "garage.obstacles",
            "readings" => "slab.readings",
            "lines" => "slab.lines",
            "fixed" => "vehicle.attached",
            "under" => "vehicle.underbody",
            _ => "policy.people",
        };
        let withhold = |text: &mut Text, what: &str, draft: &str| {
            let into = format!("Measure what has a ? here, and put it into {path}: [..]:");
            text.withhold(
                format!("{what}, so it is not in the file"),
                vec![into, format!("    {draft},")],
            );
        };
        let mut items = Vec::new();
        let mut lacking = Vec::new();
        let mut drafts = Vec::new();
        for item in 0..self.count(section.id) {
            match self.item(section, item) {
                Ok(ron) => items.push(ron),
                Err(lacks) => {
                    let name = self.get(section.id, item, "name").map(super::unquoted);
                    let thing = section.repeat.map_or("", |repeat| repeat.thing);
                    let name = name.unwrap_or_else(|| format!("{thing} no. {}", item + 1));
                    let what = format!("{name}: {lacks} not known");
                    let draft = self.draft(section, item);
                    // A hole that is measured and not placed may be the thin one under a post.
                    let is_measured = self.get(section.id, item, "thickness").is_some();
                    if section.id == "readings" && is_measured {
                        withhold(text, &what, &draft);
                    } else {
                        lacking.push(what);
                        drafts.push(draft);
                    }
                }
            }
        }
        // What is there and is not in the file may be what a vehicle meets, or where an anchor must
        // not go. A hole that was not measured, or a person more, changes no answer for the better.
        if matches!(section.id, "things" | "fixed" | "under" | "lines") {
            for (what, draft) in lacking.iter().zip(&drafts) {
                withhold(text, what, draft);
            }
        } else {
            for (what, draft) in lacking.iter_mut().zip(&drafts) {
                what.push_str(&format!("; for {path}: {draft}"));
            }
        }
        // Below a body of one's own somebody else's parts need not even fit.
        let own_body = ["vehicle.length", "vehicle.body_width", "vehicle.sill"];
        if section.id == "under" && own_body.iter().any(|key| self.plain(key).is_some()) {
            text.set(path, "[]")?;
        }
        let looked = self.closed.get(section.id).copied().unwrap_or(false);
        let all = whether_all(section.id);
        match section.id {
            // The starter's own light is nobody's.
            "things" => {
                text.set(path, &listed(&items, 8))?;
                if !looked {
                    text.mark(path, &all);
                } else if !lacking.is_empty() {
                    text.point_out(path);
                }
            }
            // Nobody looked: what the preset has, which is somebody else's, is no answer.
            "fixed" | "under" if items.is_empty() && !looked => {
                let at = match section.id {
                    "fixed" => "is fixed on the vehicle",
                    _ => "hangs below the vehicle's body",
                };
                text.withhold(
                    all,
                    vec![format!(
                        "Look whether anything {at}; write {path}: [] where nothing is."
                    )],
                );
            }
            // Named, not measured: what the preset has stays.
            "fixed" | "under" if items.is_empty() && !lacking.is_empty() => {}
            "fixed" | "under" => {
                text.set(path, &listed(&items, 8))?;
                if !looked {
                    text.mark(path, &all);
                } else if !lacking.is_empty() {
                    text.point_out(path);
                }
            }
            // That there is no line is known only where somebody looked, and told of each.
            "lines" if items.is_empty() && (!looked || !lacking.is_empty()) => {}
            "lines" => {
                text.set(path, &listed(&items, 8))?;
                if !looked {
                    text.mark(path, &all);
                } else if !lacking.is_empty() {
                    text.point_out(path);
                }
            }
            "readings" if !items.is_empty() => text.set(path, &listed(&items, 8))?,
            "people" if items.is_empty() => text.leave_out(path)?,
            "people" => text.set(path, &listed(&items, 8))?,
            _ => {}
        }
        text.left_out.append(&mut lacking);
        Ok(())
    }

    /// A thing that can't stand in the file yet: what was answered, and a `?` for what was not.
    fn draft(&self, section: &Section, item: usize) -> String {
        let said = |key: &str| self.get(section.id, item, key).unwrap_or("?");
        let point = |end: &str| {
            let [x, y] = ["x", "y"].map(|side| said(&format!("{end}.{side}")));
            format!("{end}: ({x}, {y})")
        };
        if section.id == "lines" {
            return format!(
                "(kind: {}, {}, {})",
                said("kind"),
                point("from"),
                point("to")
            );
        }
        let keys = section.questions.iter().map(|one| one.key);
        let mut fields: Vec<String> = keys
            .filter(|key| !key.starts_with('#'))
            .map(|key| format!("{key}: {}", said(key)))
            .collect();
        if section.id == "things" && said("#removable") == "true" {
            fields.push("removable: ()".into());
        }
        let kind = if section.id == "things" { "Box" } else { "" };
        format!("{kind}({})", fields.join(", "))
    }

    /// One thing as a bay file writes it, or which of its values is not known.
    fn item(&self, section: &Section, item: usize) -> Result<String, String> {
        let value = |key: &str| -> Result<&str, String> {
            let question = section
                .questions
                .iter()
                .find(|question| question.key == key);
            self.get(section.id, item, key).ok_or_else(|| {
                let number = number(section.id, key).unwrap_or_default();
                let what = question.map_or(key, |question| question.what);
                format!("{number} {what} is")
            })
        };
        let fields = |keys: &[&str]| -> Result<String, String> {
            let fields: Result<Vec<String>, String> = keys
                .iter()
                .map(|key| Ok(format!("{key}: {}", value(key)?)))
                .collect();
            Ok(fields?.join(", "))
        };
        Ok(match section.id {
            "things" => {
                let own = [
                    "name", "kind", "x", "y", "bottom", "width", "depth", "height",
                ];
                let removable = match self.get(section.id, item, "#removable") {
                    Some("true") => ", removable: ()",
                    _ => "",
                };
                format!("Box({}{removable})", fields(&own)?)
            }
            "lines" => format!(
                "({}, from: ({}, {}), to: ({}, {}))",
                fields(&["kind"])?,
                value("from.x")?,
                value("from.y")?,
                value("to.x")?,
                value("to.y")?
            ),
            _ => {
                let keys: Vec<&str> = section.questions.iter().map(|one| one.key).collect();
                format!("({})", fields(&keys)?)
            }
        })
    }
}

/// Items as a list, each on its line.
fn listed(items: &[String], indent: usize) -> String {
    if items.is_empty() {
        return "[]".into();
    }
    let (outer, inner) = (" ".repeat(indent), " ".repeat(indent + 4));
    let lines: Vec<String> = items
        .iter()
        .map(|item| format!("{inner}{item},\n"))
        .collect();
    format!("[\n{}{outer}]", lines.concat())
}
