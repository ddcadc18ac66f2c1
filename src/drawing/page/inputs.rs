//! Every input that counts, value by value, as it is written and with the file that it stands in.
//!
//! What the bay file says is laid over what its presets say, as it is for the study: a value that is
//! overridden counts for nothing and is not shown.

use std::fmt::Write as _;

use super::html::{BACK, escaped, table};
use super::wording::{name, number};
use crate::bayfile::merge::lay_over;
use crate::bayfile::syntax::{Kind, Node, parse};
use crate::report::text::Tone;

type Rows = Vec<Vec<(String, Tone)>>;

/// The texts that went in, each with its name, and the tables of them.
struct Inputs<'a> {
    sources: &'a [(String, String)],
}

/// The tables, one for each part of the bay file. `sources`: the bay file first, then its presets.
pub(super) fn tables(sources: &[(String, String)]) -> String {
    let inputs = Inputs { sources };
    let mut out = String::from(
        "<section id=\"inputs\"><details open><summary><h2>All inputs that count</h2></summary>",
    );
    let bay_file = sources.first().map_or("", |(of, _)| file_name(of));
    // Writing to a string cannot fail.
    let _ = writeln!(
        out,
        "<p>As written, in the bay file ({}) or in a preset. What the bay file says goes before what a \
         preset says, and is shown alone. What neither says is a default; the margins and the \u{b1} that \
         were counted, defaults or not, stand above.</p>",
        escaped(bay_file)
    );
    let root = inputs.read(0);
    let fields = match root.map(|root| root.kind) {
        Some(Kind::Struct { fields, .. }) => fields,
        // A text that was read is a record; were it none, the text itself stands for it.
        _ => {
            for (of, text) in sources {
                let rows = vec![vec![plain(file_name(of)), plain(text), plain("")]];
                table(&mut out, &HEAD.map(str::to_owned), &rows);
            }
            Vec::new()
        }
    };
    // Plain values make one table, before the parts that have one each.
    let mut own = Rows::new();
    let mut parts = String::new();
    for field in fields
        .into_iter()
        .filter(|field| field.name.text != "format")
    {
        let of = name(&field.name.text);
        let node = match field.name.text.as_str() {
            kind @ ("lift" | "vehicle") => inputs.with_presets(kind, field.value, 0, &mut own),
            _ => field.value,
        };
        if inputs.value(&node).is_some() {
            inputs.walk(&node, &of, &mut own);
            continue;
        }
        let mut rows = Rows::new();
        inputs.walk(&node, "", &mut rows);
        let _ = write!(parts, "<h3>{}</h3>", escaped(&capital(&of)));
        table(&mut parts, &HEAD.map(str::to_owned), &rows);
    }
    if !own.is_empty() {
        table(&mut out, &HEAD.map(str::to_owned), &own);
    }
    out.push_str(&parts);
    let _ = writeln!(out, "{BACK}</details></section>");
    out
}

const HEAD: [&str; 3] = ["value", "as written", "stands in"];

/// A file without its folders: those are nobody's business.
fn file_name(name: &str) -> &str {
    name.rsplit(['/', '\\']).next().unwrap_or(name)
}

fn plain(text: &str) -> (String, Tone) {
    (text.to_owned(), Tone::Plain)
}

fn capital(text: &str) -> String {
    let mut letters = text.chars();
    let first = letters
        .next()
        .map(|letter| letter.to_uppercase().to_string());
    first.unwrap_or_default() + letters.as_str()
}

fn below(path: &str, name: &str) -> String {
    if path.is_empty() {
        name.to_owned()
    } else {
        format!("{path} \u{203a} {name}")
    }
}

impl Inputs<'_> {
    /// The tree of a text.
    fn read(&self, source: usize) -> Option<Node> {
        let (_, text) = self.sources.get(source)?;
        parse(
            u16::try_from(source).ok()?,
            text.trim_start_matches('\u{feff}'),
        )
        .root
    }

    /// What was written for a value.
    fn written(&self, node: &Node) -> Option<&str> {
        let (_, text) = self.sources.get(usize::from(node.span.source))?;
        text.trim_start_matches('\u{feff}').get(node.span.range())
    }

    /// A record laid over the preset that it names, and that over its own; which ones, in `rows`.
    fn with_presets(&self, kind: &str, mut node: Node, levels: usize, rows: &mut Rows) -> Node {
        let Kind::Struct { name: None, fields } = &mut node.kind else {
            return node;
        };
        let Some(at) = fields.iter().position(|field| field.name.text == "preset") else {
            return node;
        };
        let Kind::Str(preset) = &fields[at].value.kind else {
            return node;
        };
        let shipped = format!("assets/{kind}s/{preset}.ron");
        let is_it = |(of, _): &(String, String)| *of == shipped || of == preset;
        let base = (self.sources.iter().skip(1))
            .position(is_it)
            .map(|at| at + 1);
        let Some(base) = base
            .filter(|_| levels < MOST_LEVELS)
            .and_then(|at| self.read(at))
        else {
            return node;
        };
        let path = below(&name(kind), "preset");
        rows.push(self.row(&path, preset, node.span.source));
        fields.remove(at);
        lay_over(self.with_presets(kind, base, levels + 1, rows), node)
    }

    fn row(&self, path: &str, text: &str, source: u16) -> Vec<(String, Tone)> {
        let of = if source == 0 { "bay file" } else { "preset" };
        vec![plain(path), plain(text), plain(of)]
    }

    fn walk(&self, node: &Node, path: &str, rows: &mut Rows) {
        let source = node.span.source;
        if let Some(written) = self.value(node) {
            rows.push(self.row(path, &written, source));
            return;
        }
        match &node.kind {
            Kind::Struct { name: kind, fields } => {
                if let Some(kind) = kind {
                    rows.push(self.row(path, &name(&kind.text), source));
                }
                // The form of the file is nothing that was measured.
                for field in fields.iter().filter(|field| field.name.text != "format") {
                    self.walk(&field.value, &below(path, &name(&field.name.text)), rows);
                }
            }
            Kind::Tuple { name: kind, items } => {
                if let Some(kind) = kind {
                    rows.push(self.row(path, &name(&kind.text), source));
                }
                self.numbered(items, path, rows);
            }
            Kind::List(items) => self.numbered(items, path, rows),
            Kind::Map(pairs) => {
                for (key, value) in pairs {
                    let name = self.value(key).unwrap_or_default();
                    self.walk(value, &below(path, &name), rows);
                }
            }
            Kind::Word(_) | Kind::Str(_) | Kind::Char(_) | Kind::Number(_) | Kind::Bool(_) => {}
        }
    }

    fn numbered(&self, items: &[Node], path: &str, rows: &mut Rows) {
        for (index, item) in items.iter().enumerate() {
            self.walk(item, &below(path, &number(index + 1)), rows);
        }
    }

    /// A value that stands on one row: a plain one, or several plain ones in a list or a tuple; a
    /// plain one in a name's brackets has the name before it.
    fn value(&self, node: &Node) -> Option<String> {
        match &node.kind {
            Kind::Str(says) => Some(says.clone()),
            Kind::Word(word) => Some(name(word)),
            Kind::Char(_) | Kind::Number(_) | Kind::Bool(_) => {
                self.written(node).map(str::to_owned)
            }
            Kind::Tuple { name: kind, items } => {
                let all: Option<Vec<String>> = items.iter().map(|item| self.value(item)).collect();
                let all = all?.join(", ");
                Some(match kind.as_ref().map(|kind| kind.text.as_str()) {
                    None if items.is_empty() => "none".into(),
                    None | Some("Some") => all,
                    Some(kind) if items.is_empty() => name(kind),
                    Some(kind) => format!("{}: {all}", name(kind)),
                })
            }
            Kind::List(items) => {
                if items.is_empty() {
                    return Some("none".into());
                }
                let all: Option<Vec<String>> = items.iter().map(|item| self.value(item)).collect();
                all.map(|all| all.join(", "))
            }
            Kind::Struct { .. } | Kind::Map(_) => None,
        }
    }
}

/// As many presets may stand on one another.
const MOST_LEVELS: usize = crate::bayfile::presets::MOST_LEVELS;

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_value_has_a_row_and_its_path() {
        let text = "(title: \"a <b>\", garage: (width: \"12 ft\", ceiling: Flat(height: 10' 1\"), \
                    spots: [(at: 1), (at: 2)], two: (\"1 in\", \"2 in\")))";
        let text = text.replace("10' 1\"", "\"10 ft 1 in\"");
        let all = tables(&[("folder/my.ron".into(), text)]);
        for part in [
            "(my.ron)",
            "a &lt;b&gt;",
            "<h3>Garage</h3>",
            ">width<",
            "ceiling \u{203a} height",
            "10 ft 1 in",
            "spots \u{203a} no. 2 \u{203a} place",
            "1 in, 2 in",
            ">flat<",
        ] {
            assert!(all.contains(part), "{part}: {all}");
        }
        assert!(!all.contains("folder"));
    }

    #[test]
    fn what_is_overridden_is_not_shown() {
        let bay = "(vehicle: (preset: \"mine.ron\", attached: [(name: \"rack\")], cg_height: \
                   Measured(\"28 in\")))";
        let preset = "(preset: \"van-tall-panel\", attached: [], wheel_radius: \"14 in\")";
        let shipped = "(wheel_radius: \"13 in\", length: \"19 ft\")";
        let all = tables(&[
            ("bay.ron".into(), bay.into()),
            ("mine.ron".into(), preset.into()),
            ("assets/vehicles/van-tall-panel.ron".into(), shipped.into()),
        ]);
        for part in [
            "rack",
            "measured: 28 in",
            "14 in",
            "19 ft",
            "vehicle \u{203a} preset",
            "van-tall-panel",
        ] {
            assert!(all.contains(part), "{part}: {all}");
        }
        assert!(!all.contains("13 in") && !all.contains("none"), "{all}");
        assert!(all.contains("height of the centre of gravity"), "{all}");
    }
}
