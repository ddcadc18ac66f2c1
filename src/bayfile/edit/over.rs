//! How is a value changed that may stand in a preset?

use super::super::syntax::path::{Step, child, steps, written};
use super::super::syntax::{Kind, Node};
use super::{EditError, Origin, Written};

/// Where a change must be made.
enum Where<'a> {
    /// In the file, at this path of its own text.
    File(String),
    /// In a value of the preset that the file must give whole, with the path in the file, the
    /// value, and the steps from there on.
    Whole(String, &'a Node, Vec<Step<'a>>),
}

impl Written {
    /// The path of the value that the bay file must give whole so that the value at `path` is
    /// changed: the outermost list, tuple or variant on the way that stands in a preset. None when
    /// the value can be given alone.
    #[must_use]
    pub fn whole_value(&self, path: &str) -> Option<String> {
        match self.place(&steps(path)?, false) {
            Where::Whole(at, ..) => Some(at),
            Where::File(_) => None,
        }
    }

    /// The bay file's text with the value at `path` set, as by [`set`](super::set). Where a preset
    /// gives a list, a tuple or a variant on the way, the whole of it is written into the file with
    /// the one value changed.
    ///
    /// A record that is set goes over the preset's record: fields that it leaves out stay the
    /// preset's.
    ///
    /// # Errors
    /// As [`set`](super::set).
    pub fn set(&self, path: &str, value: &str) -> Result<String, EditError> {
        let steps = steps(path).ok_or_else(|| EditError::BadPath(path.into()))?;
        self.change(&self.place(&steps, false), |text, path| {
            super::set(text, path, value)
        })
    }

    /// The bay file's text without a field or a list's item, as by [`remove`](super::remove). A
    /// field that overrides the preset's then is the preset's again. An item of a preset's list, or
    /// a field of a preset's variant, is removed by writing the rest into the file.
    ///
    /// # Errors
    /// As [`remove`](super::remove); besides, a preset's field can't be removed from the file.
    pub fn remove(&self, path: &str) -> Result<String, EditError> {
        let steps = steps(path).ok_or_else(|| EditError::BadPath(path.into()))?;
        let target = self
            .walk(&steps)
            .ok_or_else(|| EditError::NoSuchValue(path.into()))?;
        let place = self.place(&steps, false);
        if let (Where::File(_), Origin::Preset(preset)) = (&place, self.origin(target)) {
            return Err(EditError::InPreset {
                path: path.into(),
                preset,
            });
        }
        self.change(&place, super::remove)
    }

    /// The bay file's text with an item appended to a list, as by [`append`](super::append). Where
    /// the list is a preset's, the whole of it is written into the file with the new item.
    ///
    /// # Errors
    /// As [`append`](super::append).
    pub fn append(&self, list_path: &str, item: &str) -> Result<String, EditError> {
        let steps = steps(list_path).ok_or_else(|| EditError::BadPath(list_path.into()))?;
        self.change(&self.place(&steps, true), |text, path| {
            super::append(text, path, item)
        })
    }

    fn change(
        &self,
        place: &Where<'_>,
        edit: impl FnOnce(&str, &str) -> Result<String, EditError>,
    ) -> Result<String, EditError> {
        match place {
            Where::File(path) => edit(&self.file, path),
            Where::Whole(at, node, rest) => {
                let source = self.source(node).unwrap_or("");
                let whole = edit(source, &written(rest)).map_err(|e| e.within(at))?;
                super::set(&self.file, at, &whole)
            }
        }
    }

    /// Where the value at a path must be changed; `within` when the last value itself is to take
    /// something in.
    fn place<'a>(&'a self, steps: &[Step<'a>], within: bool) -> Where<'a> {
        let mut own: Vec<Step<'a>> = Vec::new();
        let mut node = Some(&self.root);
        for (done, step) in steps.iter().enumerate() {
            let next = node.and_then(|node| child(node, *step));
            own.push(match (next, step) {
                // An older format may call the field something else.
                (Some((Some(name), _)), Step::Field(_)) if name.span.source == 0 => {
                    Step::Field(self.name_in_file(name.span.range()).unwrap_or(&name.text))
                }
                _ => *step,
            });
            node = next.map(|(_, node)| node);
            let is_way = within || done + 1 < steps.len();
            if let Some(node) = node
                && is_way
                && node.span.source > 0
                && !is_laid_over(node)
            {
                return Where::Whole(written(&own), node, steps[done + 1..].to_vec());
            }
        }
        Where::File(written(&own))
    }

    fn name_in_file(&self, range: std::ops::Range<usize>) -> Option<&str> {
        let name = self.sources.first()?.text.get(range)?;
        Some(name.strip_prefix("r#").unwrap_or(name))
    }

    fn walk(&self, steps: &[Step<'_>]) -> Option<&Node> {
        steps
            .iter()
            .try_fold(&self.root, |node, step| Some(child(node, *step)?.1))
    }
}

/// True for what a file's record is laid over field by field.
const fn is_laid_over(node: &Node) -> bool {
    matches!(node.kind, Kind::Struct { name: None, .. })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bayfile::edit::tests::{FilePresets, written_over};

    const PRESET: &str = "(
    format: 1,
    // The column.
    column: (height: \"11 ft\", width: \"1 ft\"),
    tie: OverheadBeam(
        height: \"3 in\", // of steel
        bar: (drop: \"2 in\"),
    ),
    adapters: [\"3 in\", \"6 in\"],
    motor: Some((power: \"2 hp\")),
    power_unit: None,
)";

    fn file(lift: &str) -> String {
        format!("(\n    format: 1,\n    lift: (\n        preset: \"my.ron\",\n{lift}    ),\n)\n")
    }

    fn over(lift: &str) -> Written {
        written_over(&file(lift), &FilePresets(&[("my.ron", PRESET)]))
    }

    #[test]
    fn a_record_of_the_preset_is_overridden_by_field() {
        let written = over("");
        assert_eq!(written.whole_value("lift.column.height"), None);
        assert_eq!(
            written.set("lift.column.height", "\"12 ft\"").unwrap(),
            file("        column: (height: \"12 ft\"),\n")
        );
    }

    #[test]
    fn variants_lists_and_the_like_are_written_whole() {
        let written = over("");
        let whole = |path| written.whole_value(path);
        assert_eq!(whole("lift.tie.bar.drop").as_deref(), Some("lift.tie"));
        assert_eq!(whole("lift.adapters[1]").as_deref(), Some("lift.adapters"));
        assert_eq!(whole("lift.motor.power").as_deref(), Some("lift.motor"));
        assert_eq!(whole("lift.tie"), None);
        let tie = |drop| {
            file(&format!(
                "        tie: OverheadBeam(\n            height: \"3 in\", // of steel\n            bar: (drop: {drop}),\n        ),\n"
            ))
        };
        let once = written.set("lift.tie.bar.drop", "\"4 in\"").unwrap();
        assert_eq!(once, tie("\"4 in\""));
        // The file's own from now on.
        let written = written_over(&once, &FilePresets(&[("my.ron", PRESET)]));
        assert_eq!(written.whole_value("lift.tie.bar.drop"), None);
        assert_eq!(
            written.set("lift.tie.bar.drop", "\"5 in\"").unwrap(),
            tie("\"5 in\"")
        );
        // And the preset's again.
        assert_eq!(written.remove("lift.tie").unwrap(), file(""));
    }

    #[test]
    fn a_list_of_the_preset_takes_and_loses_items() {
        let written = over("");
        let list = |items: &str| file(&format!("        adapters: [{items}],\n"));
        assert_eq!(
            written.append("lift.adapters", "\"9 in\"").unwrap(),
            list("\"3 in\", \"6 in\", \"9 in\"")
        );
        assert_eq!(
            written.remove("lift.adapters[0]").unwrap(),
            list("\"6 in\"")
        );
        assert_eq!(
            written.set("lift.adapters[0]", "\"4 in\"").unwrap(),
            list("\"4 in\", \"6 in\"")
        );
        assert_eq!(
            written.set("lift.motor.power", "\"3 hp\"").unwrap(),
            file("        motor: Some((power: \"3 hp\")),\n")
        );
        assert_eq!(
            written.set("lift.power_unit.side", "Left").unwrap(),
            file("        power_unit: (side: Left),\n")
        );
        let own = over("        adapters: [\n            \"1 in\",\n        ],\n");
        assert_eq!(
            own.append("lift.adapters", "\"2 in\"").unwrap(),
            file("        adapters: [\n            \"1 in\",\n            \"2 in\",\n        ],\n")
        );
    }

    #[test]
    fn what_the_file_does_not_hold_is_not_removed() {
        let written = over("");
        assert_eq!(
            written.remove("lift.column.width"),
            Err(EditError::InPreset {
                path: "lift.column.width".into(),
                preset: "my.ron".into()
            })
        );
        let missing = |path: &str| Err(EditError::NoSuchValue(path.into()));
        assert_eq!(written.remove("lift.tie.no"), missing("lift.tie.no"));
        assert_eq!(
            written.set("lift.adapters[7]", "1"),
            missing("lift.adapters[7]")
        );
        // A record of the file over the preset's can be.
        let own = over("        column: (width: \"2 ft\"),\n");
        assert_eq!(own.remove("lift.column").unwrap(), file(""));
        assert_eq!(
            own.remove("lift.column.width").unwrap(),
            file("        column: (),\n")
        );
    }

    #[test]
    fn an_older_format_keeps_its_names() {
        let text = "(format: 0, policy: (clearance: \"3 in\"))";
        let written = written_over(text, &FilePresets(&[]));
        assert_eq!(written.value("policy.over_vehicle").unwrap().text, "3 in");
        assert_eq!(
            written.set("policy.over_vehicle", "\"4 in\"").unwrap(),
            text.replace("3 in", "4 in")
        );
    }
}
