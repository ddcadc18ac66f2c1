//! Which value of a bay file does a place in a text belong to?

use std::ops::Range;

use super::Written;
use crate::bayfile::syntax::path::{Step, peel, written};
use crate::bayfile::syntax::{Kind, Node, Span};
use crate::diagnostics::Place;

impl Written {
    /// The path of the innermost value that holds a place, as [`read`](crate::bayfile::read) gives
    /// it with a diagnostic: `garage.ceiling.height`. A field's name belongs to its value.
    ///
    /// A field that is missing has no place of its own: its diagnostic stands at the head of the
    /// record that lacks it, and the path is the record's; the empty path is the whole file's.
    /// Values of a preset have the path that they have in the bay. A place in a preset's text that
    /// holds no value of the bay (a fault of its grammar, its `format`) gives the path of the
    /// field that names the preset: `lift.preset`.
    ///
    /// None for a place in any other text, also in an older text of the same file.
    #[must_use]
    pub fn path_of(&self, place: &Place) -> Option<String> {
        let mut named = None;
        for (number, source) in self.sources.iter().enumerate() {
            if **source != *place.source {
                continue;
            }
            let mut search = Search {
                source: number,
                place: place.span.clone(),
                steps: Vec::new(),
                best: None,
            };
            search.look(&self.root);
            if let Some((_, path)) = search.best {
                return Some(path);
            }
            named = named.or_else(|| match self.named_by.get(number)?.as_str() {
                // Before or behind the file's record.
                "" => Some(String::new()),
                field => Some(format!("{field}.preset")),
            });
        }
        named
    }
}

struct Search<'a> {
    source: usize,
    place: Range<usize>,
    steps: Vec<Step<'a>>,
    /// The shortest range so far that holds the place, with its path.
    best: Option<(usize, String)>,
}

impl<'a> Search<'a> {
    /// Values of one text may lie in a record of another, so every value is looked at.
    fn look(&mut self, node: &'a Node) {
        self.holds(node.span);
        // `Some` is no step, and holds its value's place itself.
        match &peel(node).kind {
            Kind::Struct { fields, .. } => {
                for field in fields {
                    self.steps.push(Step::Field(&field.name.text));
                    self.holds(field.name.span);
                    self.look(&field.value);
                    self.steps.pop();
                }
            }
            Kind::Tuple { items, .. } | Kind::List(items) => {
                for (index, item) in items.iter().enumerate() {
                    self.steps.push(Step::Item(index));
                    self.look(item);
                    self.steps.pop();
                }
            }
            _ => {}
        }
    }

    fn holds(&mut self, span: Span) {
        let range = span.range();
        let holds = usize::from(span.source) == self.source
            && range.start <= self.place.start
            && self.place.end <= range.end;
        if holds
            && self
                .best
                .as_ref()
                .is_none_or(|(len, _)| range.len() <= *len)
        {
            self.best = Some((range.len(), written(&self.steps)));
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bayfile;
    use crate::bayfile::edit::tests::{FilePresets, NAME, written_over};
    use crate::diagnostics::Diagnostic;

    const LIFT: &str = "(name: \"x\", tie: OverheadBeam(height: \"1\"), adapters: [1, 2])";
    const FILE: &str = "// Bay
(
    format: 1,
    titel: \"x\",
    garage: (ceiling: Flat(height: \"9\", slope: 1), floor: Level),
    lift: (preset: \"l.ron\", pad: (lowest: Some(\"3 foot-long\"))),
    vehicle: (preset: \"broken.ron\"),
)";
    const PRESETS: FilePresets = FilePresets(&[("l.ron", LIFT), ("broken.ron", "(\n a: ,)")]);

    fn found(part: &str) -> Vec<Option<String>> {
        let written = written_over(FILE, &PRESETS);
        let faults = bayfile::read(NAME, FILE.as_bytes(), &PRESETS).unwrap_err();
        let shows = |d: &&Diagnostic| d.to_string().contains(part);
        faults
            .iter()
            .filter(shows)
            .map(|d| written.path_of(d.place.as_ref().unwrap()))
            .collect()
    }

    #[test]
    fn faults_lead_to_their_fields() {
        let at = |path: &str| vec![Some(path.to_string())];
        assert_eq!(found("has no field `titel`"), at("titel"));
        assert_eq!(found("has no field `slope`"), at("garage.ceiling.slope"));
        assert_eq!(found("the garage lacks"), at("garage"));
        assert_eq!(found("the overhead beam lacks"), at("lift.tie"));
        assert_eq!(found("the bay file lacks"), at(""));
        // The fault of the preset's grammar, told at the preset's text.
        assert_eq!(found("where a value was expected"), at("vehicle.preset"));
    }

    #[test]
    fn every_place_of_the_file() {
        let written = written_over(FILE, &PRESETS);
        let source = written.sources[0].clone();
        let at = |part: &str| {
            let start = FILE.find(part).unwrap();
            written.path_of(&Place {
                source: source.clone(),
                span: start..start + part.len(),
                label: String::new(),
            })
        };
        for (part, path) in [
            ("// Bay", ""),
            ("1,\n", ""),
            ("format", "format"),
            ("Flat", "garage.ceiling"),
            ("\"9\"", "garage.ceiling.height"),
            ("height: \"9\"", "garage.ceiling"),
            ("Level", "garage.floor"),
            ("preset", "lift.preset"),
            ("\"l.ron\"", "lift.preset"),
            ("foot", "lift.pad.lowest"),
            ("Some", "lift.pad.lowest"),
            ("\"broken.ron\"", "vehicle.preset"),
        ] {
            assert_eq!(at(part).as_deref(), Some(path), "{part}");
        }
    }

    #[test]
    fn another_text_has_no_path() {
        let written = written_over(FILE, &PRESETS);
        let other = written_over(&FILE.replace("titel", "title"), &PRESETS);
        let place = Place {
            source: other.sources[0].clone(),
            span: 10..11,
            label: String::new(),
        };
        assert_eq!(written.path_of(&place), None);
        // The preset's text is the same in both.
        let item = LIFT.find("2]").unwrap();
        let place = Place {
            source: other.sources[1].clone(),
            span: item..item + 1,
            label: String::new(),
        };
        assert_eq!(written.path_of(&place).as_deref(), Some("lift.adapters[1]"));
    }
}
