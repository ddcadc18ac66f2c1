//! How are pieces of a report written as HTML?

use std::fmt::Write as _;

use super::is_heading;
use crate::letters;
use crate::report::text::{Block, Tone};

/// A heading and what belongs to it, as HTML.
pub(super) struct Chapter {
    pub(super) heading: String,
    pub(super) body: String,
}

/// The pieces chapter by chapter; the first has no heading.
pub(super) fn chapters(blocks: &[Block]) -> Vec<Chapter> {
    let first = blocks.iter().position(is_heading).unwrap_or(blocks.len());
    let (verdict, rest) = blocks.split_at(first);
    let mut chapters = vec![Chapter {
        heading: String::new(),
        body: body(verdict),
    }];
    for chapter in rest.chunk_by(|_, next| !is_heading(next)) {
        if let [Block::Heading(heading), rest @ ..] = chapter {
            chapters.push(Chapter {
                heading: escaped(heading),
                body: body(rest),
            });
        }
    }
    chapters
}

/// Text from a file, fit to stand between tags and in a quoted attribute. What would turn the order
/// of letters around is taken out with the control characters; words that run from right to left are set
/// apart, so that a figure behind one stays behind it.
pub(super) fn escaped(text: &str) -> String {
    /// Unicode's first strong isolate, and the end of one.
    const APART: [char; 2] = ['\u{2068}', '\u{2069}'];
    let mut out = String::with_capacity(text.len());
    let letters: Vec<char> = text.chars().collect();
    let mut apart_until = 0;
    for (at, &letter) in letters.iter().enumerate() {
        let begins = at >= apart_until && letters::runs_from_the_right(letter);
        if begins {
            apart_until = at + from_the_right(&letters[at..]);
            out.push(APART[0]);
        }
        match letter {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            '\'' => out.push_str("&#39;"),
            c if letters::acts(c) => out.push(' '),
            c => out.push(c),
        }
        if at + 1 == apart_until {
            out.push(APART[1]);
        }
    }
    out
}

/// How many letters from the first on belong to what runs from right to left, with what stands between.
fn from_the_right(letters: &[char]) -> usize {
    let other = |c: &char| c.is_alphanumeric() && !letters::runs_from_the_right(*c);
    let end = letters.iter().position(other).unwrap_or(letters.len());
    let last = letters[..end]
        .iter()
        .rposition(|c| letters::runs_from_the_right(*c));
    last.map_or(0, |last| last + 1)
}

/// The way back up from the end of a chapter.
pub(super) const BACK: &str =
    "<p class=\"back\"><a href=\"#contents\">Back to the contents</a></p>";

const fn class(tone: Tone) -> &'static str {
    match tone {
        Tone::Plain => "",
        Tone::Strong => " class=\"strong\"",
        Tone::Good => " class=\"good\"",
        Tone::Poor => " class=\"poor\"",
        Tone::Bad => " class=\"bad\"",
        Tone::Quiet => " class=\"quiet\"",
    }
}

/// So many notes to a table stand below it as they are.
const FEW: usize = 4;

fn body(blocks: &[Block]) -> String {
    let mut out = String::new();
    let mut has_table = false;
    // Neighbours of one kind make a list.
    for run in blocks.chunk_by(|a, b| kind(a) == kind(b)) {
        // Many notes to a table are a fold of their own: what they are notes to says it in short.
        let is_fold = has_table && run.len() > FEW;
        has_table |= matches!(run.first(), Some(Block::Table { .. }));
        let (open, close) = match run.first() {
            Some(Block::Item(_)) if is_fold => {
                // Writing to a string cannot fail.
                let _ = write!(
                    out,
                    "<details open><summary>{} notes to it</summary>",
                    run.len()
                );
                ("<ul>", "</ul></details>")
            }
            Some(Block::Item(_)) => ("<ul>", "</ul>"),
            Some(Block::Entry(..)) => ("<dl>", "</dl>"),
            _ => ("", ""),
        };
        out.push_str(open);
        for block in run {
            one(&mut out, block);
        }
        out.push_str(close);
        out.push('\n');
    }
    out
}

const fn kind(block: &Block) -> u8 {
    match block {
        Block::Heading(_) => 0,
        Block::Paragraph(..) => 1,
        Block::Item(_) => 2,
        Block::Entry(..) => 3,
        Block::Table { .. } => 4,
    }
}

fn one(out: &mut String, block: &Block) {
    // Writing to a string cannot fail.
    let _ = match block {
        Block::Heading(text) => write!(out, "<h3>{}</h3>", escaped(text)),
        Block::Paragraph(text, tone) => write!(out, "<p{}>{}</p>", class(*tone), escaped(text)),
        Block::Item(text) => write!(out, "<li>{}</li>", escaped(text)),
        Block::Entry(label, text) => {
            write!(
                out,
                "<div><dt>{}</dt><dd>{}</dd></div>",
                escaped(label),
                escaped(text)
            )
        }
        Block::Table { head, rows } => {
            table(out, head, rows);
            Ok(())
        }
    };
}

/// Tables of so many columns are laid on their side on a phone, where no row may be cut off.
const MANY: usize = 4;

/// Tables of up to so many rows are printed whole, on one page.
const WHOLE: usize = 16;

/// A table in a box of its own, so that the page never gets wider than the screen.
pub(super) fn table(out: &mut String, head: &[String], rows: &[Vec<(String, Tone)>]) {
    let is_wide = head.len() >= MANY;
    let whole = if rows.len() <= WHOLE { " whole" } else { "" };
    let many = if is_wide { " class=\"many\"" } else { "" };
    // Writing to a string cannot fail.
    let _ = write!(out, "<div class=\"table{whole}\"><table{many}>");
    if !head.is_empty() {
        out.push_str("<thead><tr>");
        for text in head {
            let _ = write!(out, "<th scope=\"col\">{}</th>", escaped(text));
        }
        out.push_str("</tr></thead>");
    }
    out.push_str("<tbody>");
    for row in rows {
        out.push_str("<tr>");
        for (column, (text, tone)) in row.iter().enumerate() {
            let label = head.get(column).map_or("", String::as_str);
            let tag = if column == 0 {
                "th scope=\"row\""
            } else {
                "td"
            };
            let end = if column == 0 { "th" } else { "td" };
            // The sign of a tone stands with the text, where the label of its column, shown on a phone,
            // leaves it alone.
            let (open, close) = match class(*tone) {
                "" => (String::new(), ""),
                class => (format!("<span{class}>"), "</span>"),
            };
            let _ = write!(
                out,
                "<{tag} data-label=\"{}\">{open}{}{close}</{end}>",
                escaped(label),
                escaped(text)
            );
        }
        out.push_str("</tr>");
    }
    out.push_str("</tbody></table></div>");
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_text_becomes_markup() {
        let bad = "</script><script>alert(1)</script>\" onload='x' &lt; \u{202e}x\u{7}";
        let good = escaped(bad);
        for letter in ['<', '>', '"', '\'', '\u{202e}', '\u{7}'] {
            assert!(!good.contains(letter), "{good}");
        }
        assert!(good.contains("&amp;lt;"));
        let blocks = [
            Block::Paragraph(bad.into(), Tone::Good),
            Block::Heading(bad.into()),
            Block::Item(bad.into()),
            Block::Entry(bad.into(), bad.into()),
            Block::Table {
                head: vec![bad.into()],
                rows: vec![vec![(bad.into(), Tone::Bad)]],
            },
        ];
        for chapter in chapters(&blocks) {
            let all = chapter.heading + &chapter.body;
            assert!(!all.contains("<script") && !all.contains("' &"), "{all}");
        }
    }

    #[test]
    fn words_from_right_to_left_are_set_apart() {
        let marta = "Marta \u{5d0}\u{5d1} \u{5d2}, 5 ft";
        let apart = "Marta \u{2068}\u{5d0}\u{5d1} \u{5d2}\u{2069}, 5 ft";
        assert_eq!(escaped(marta), apart);
        assert_eq!(escaped("\u{5d0}1\u{5d1}").matches('\u{2069}').count(), 2);
        assert_eq!(escaped("M\u{fc}ller \u{43c}"), "M\u{fc}ller \u{43c}");
    }

    #[test]
    fn many_notes_to_a_table_fold_and_cautions_never_do() {
        let notes = |count: usize| vec![Block::Item("a".into()); count];
        let table = Block::Table {
            head: Vec::new(),
            rows: Vec::new(),
        };
        let folds = |blocks: &[Block]| chapters(blocks)[0].body.contains("<details");
        assert!(!folds(&notes(20)), "without a table nothing folds");
        assert!(!folds(&[vec![table.clone()], notes(FEW)].concat()));
        assert!(folds(&[vec![table], notes(FEW + 1)].concat()));
    }

    #[test]
    fn neighbours_make_one_list() {
        let blocks = [
            Block::Item("a".into()),
            Block::Item("b".into()),
            Block::Entry("c".into(), "d".into()),
        ];
        let all = &chapters(&blocks)[0].body;
        assert_eq!(
            all,
            "<ul><li>a</li><li>b</li></ul>\n<dl><div><dt>c</dt><dd>d</dd></div></dl>\n"
        );
    }
}
