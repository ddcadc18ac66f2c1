//! The title and the words at the top of the file: what was measured, and what was not.

use super::build::{Cure, Text};
use super::templates::without_answered;
use super::{Answers, Made, quoted};
use crate::bayfile::each_once;
use crate::worksheet::FORM_VERSION;

impl Answers {
    pub(super) fn finished(&self, mut text: Text) -> Made {
        text.keep_the_rest();
        let title = self.text("title").unwrap_or_else(|| "New bay".into());
        let listed = text.not_measured();
        // Front and rear arms share a question: it stands in the list with the path of each.
        let not_measured = each_once(listed.iter().map(|(what, _)| what.clone()).collect());
        let count = not_measured.len();
        let title = match count {
            0 => title,
            1 => format!("{title} (1 value NOT MEASURED)"),
            _ => format!("{title} ({count} values NOT MEASURED)"),
        };
        // The starter file has a title.
        let _ = text.set("title", &quoted(&title));
        let mut head = vec![format!(
            "Answers to the questions of worksheet form {}.",
            FORM_VERSION
        )];
        for (key, before) in [("#measured", "Measured: "), ("#note", "To remember: ")] {
            if let Some(said) = self.text(key) {
                head.push(format!("{before}{said}"));
            }
        }
        head.append(&mut text.head);
        if count > 0 {
            head.push(String::new());
            head.push(
                "NOT MEASURED: what stands in the list not_measured below. Its lines hold \
                 placeholders and are marked, or a preset's typical figure stands in its place, or it \
                 is missing from the file. Until it is measured the verdict would be about somebody \
                 else's garage, so no lock is called safe."
                    .into(),
            );
        }
        if !text.not_known.is_empty() {
            head.push(String::new());
            head.push(
                "Not known and not in this file; what hangs on it is told as not known:".into(),
            );
            head.extend(text.not_known.iter().map(|what| format!("  {what}")));
        }
        let of_presets = text.of_presets();
        if !of_presets.is_empty() {
            head.push(String::new());
            head.push(format!(
                "From the presets, and nothing of clearance, load or marks hangs on it: {}.",
                of_presets.join(", ")
            ));
        }
        if !text.left_out.is_empty() {
            head.push(String::new());
            head.push("NOT IN THIS FILE, not measured enough:".into());
            head.extend(text.left_out.iter().map(|what| format!("  {what}")));
        }
        let mut notes = text
            .left_out
            .iter()
            .map(|what| format!("Left out: {what}."))
            .collect::<Vec<_>>();
        notes.append(&mut text.notes);
        let body = with_list(&text.marked(), &listed);
        let body = without_answered(&body, |path| text.value(path).is_some());
        let mut out = String::new();
        for line in head {
            for part in textwrap::wrap(&line, textwrap::Options::new(96).subsequent_indent("  ")) {
                out.push_str(format!("// {part}").trim_end());
                out.push('\n');
            }
        }
        out.push_str(&body);
        Made {
            text: out,
            not_measured,
            not_known: text.not_known,
            of_presets,
            notes,
        }
    }
}

/// The file with the list of what is not measured, after its title and units.
fn with_list(body: &str, not_measured: &[(String, Cure)]) -> String {
    if not_measured.is_empty() {
        return body.into();
    }
    let mut items = String::new();
    for (what, cure) in not_measured {
        let what = quoted(what);
        match cure {
            Cure::Field(path) => items.push_str(&format!("        {what}, // {path}\n")),
            Cure::Lines(lines) => {
                for line in lines {
                    items.push_str(&format!("        // {line}\n"));
                }
                items.push_str(&format!("        {what},\n"));
            }
        }
    }
    let list = format!(
        "\n    // While anything stands in this list no lock is called safe. Measure it, write the figure\n    \
         // into its field, and take it out of the list.\n    not_measured: [\n{items}    ],\n\n    garage: ("
    );
    // The starter file has a garage; were it not so the bay file would not have been one.
    body.replacen("\n\n    garage: (", &list, 1)
}
