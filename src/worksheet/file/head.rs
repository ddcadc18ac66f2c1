//! The title and the words at the top of the file: what was measured, and what was not.

use super::build::Text;
use super::{Answers, Made, quoted};
use crate::worksheet::FORM_VERSION;

impl Answers {
    pub(super) fn finished(&self, mut text: Text) -> Made {
        let title = self.text("title").unwrap_or_else(|| "New bay".into());
        let count = text.marks.len();
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
        if !text.marks.is_empty() {
            head.push(String::new());
            head.push(
                "NOT MEASURED: the lines marked so hold placeholders. Until a figure of your own is \
                 in their place, the verdict is about somebody else's garage:"
                    .into(),
            );
            head.extend(
                text.marks
                    .iter()
                    .map(|(path, what)| format!("  {what} ({path})")),
            );
        }
        if !text.typical.is_empty() {
            head.push(String::new());
            head.push("Kept from the presets, typical figures of a class:".into());
            head.extend(
                text.typical
                    .iter()
                    .map(|(path, what)| format!("  {what} ({path})")),
            );
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
        let body = text.marked();
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
            not_measured: text.marks.into_iter().map(|(_, what)| what).collect(),
            typical: text.typical.into_iter().map(|(_, what)| what).collect(),
            notes,
        }
    }
}
