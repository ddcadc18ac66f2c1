//! How are paragraphs and tables set on a page of fixed width, or kept as they are for a page that
//! sets them itself?

use anstyle::{AnsiColor, Style};
use textwrap::core::display_width;

/// How the page looks.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Look {
    /// With colour escapes.
    pub colour: bool,
    /// Columns to wrap at.
    pub width: usize,
}

impl Default for Look {
    fn default() -> Self {
        Self {
            colour: false,
            width: 100,
        }
    }
}

/// Weight of a piece of text. It never says anything that the words don't say.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Tone {
    /// As any text.
    Plain,
    /// What comes first.
    Strong,
    /// It holds.
    Good,
    /// Short, or not known.
    Poor,
    /// It stops.
    Bad,
    /// Less to be minded.
    Quiet,
}

/// A piece of a report, for who sets it on a page of their own. Its texts hold what files say:
/// nothing in them is fit for markup as it is.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Block {
    /// A heading: what follows, up to the next, belongs to it.
    Heading(String),
    /// A paragraph.
    Paragraph(String, Tone),
    /// An item of a list.
    Item(String),
    /// A label and what stands for it.
    Entry(String, String),
    /// A table.
    Table {
        /// Over its columns; empty where it has no head.
        head: Vec<String>,
        /// Its rows, each as long as the others.
        rows: Vec<Vec<(String, Tone)>>,
    },
}

impl Tone {
    fn style(self) -> Style {
        let colour = |c: AnsiColor| Style::new().fg_color(Some(c.into()));
        match self {
            Self::Plain => Style::new(),
            Self::Strong => Style::new().bold(),
            Self::Good => colour(AnsiColor::Green),
            Self::Poor => colour(AnsiColor::Yellow),
            Self::Bad => colour(AnsiColor::Red),
            Self::Quiet => Style::new().dimmed(),
        }
    }
}

/// A cell of a table.
pub(in crate::report) struct Cell {
    text: String,
    tone: Tone,
}

impl Cell {
    pub(in crate::report) fn toned(text: impl Into<String>, tone: Tone) -> Self {
        Self {
            text: text.into(),
            tone,
        }
    }
}

impl<S: Into<String>> From<S> for Cell {
    fn from(text: S) -> Self {
        Self::toned(text, Tone::Plain)
    }
}

/// The text so far.
pub(in crate::report) struct Page {
    look: Look,
    out: String,
    /// Where pieces are kept and nothing is set: the pieces.
    kept: Option<Vec<Block>>,
}

/// Columns are parted by so many blanks.
const GUTTER: usize = 2;

/// With less width left than this, the last column of a table goes onto lines of its own.
const LEAST_LAST_COLUMN: usize = 20;

/// How far those lines are set in.
const BELOW_INDENT: usize = 8;

impl Page {
    pub(in crate::report) fn new(look: Look) -> Self {
        let look = Look {
            width: look.width.clamp(40, 100),
            ..look
        };
        Self {
            look,
            out: String::new(),
            kept: None,
        }
    }

    /// A page that sets nothing: its pieces are taken off it as they are.
    pub(in crate::report) fn of_blocks() -> Self {
        Self {
            kept: Some(Vec::new()),
            ..Self::new(Look::default())
        }
    }

    pub(in crate::report) fn finish(self) -> String {
        self.out
    }

    /// The pieces of a page that sets nothing.
    pub(in crate::report) fn into_blocks(self) -> Vec<Block> {
        self.kept.unwrap_or_default()
    }

    /// Keeps a piece, on a page that sets nothing.
    fn keep(&mut self, block: impl FnOnce() -> Block) -> bool {
        let kept = self.kept.as_mut().map(|kept| kept.push(block()));
        kept.is_some()
    }

    /// A blank line.
    pub(in crate::report) fn gap(&mut self) {
        self.out.push('\n');
    }

    /// A heading after a blank line.
    pub(in crate::report) fn heading(&mut self, text: &str) {
        if self.keep(|| Block::Heading(text.into())) {
            return;
        }
        self.out.push('\n');
        self.toned(text, Tone::Strong);
        self.out.push('\n');
    }

    /// A wrapped paragraph.
    pub(in crate::report) fn para(&mut self, text: &str) {
        self.para_toned(text, Tone::Plain);
    }

    /// A wrapped paragraph with a tone.
    pub(in crate::report) fn para_toned(&mut self, text: &str, tone: Tone) {
        if self.keep(|| Block::Paragraph(text.into(), tone)) {
            return;
        }
        self.wrapped(text, "", "", tone);
    }

    /// A wrapped item of a list.
    pub(in crate::report) fn item(&mut self, text: &str) {
        if self.keep(|| Block::Item(text.into())) {
            return;
        }
        self.wrapped(text, "  - ", "    ", Tone::Plain);
    }

    /// A wrapped line under a heading: `label: text`.
    pub(in crate::report) fn entry(&mut self, label: &str, text: &str) {
        if self.keep(|| Block::Entry(label.into(), text.into())) {
            return;
        }
        self.wrapped(&format!("{label}: {text}"), "  ", "      ", Tone::Plain);
    }

    fn wrapped(&mut self, text: &str, first: &str, rest: &str, tone: Tone) {
        let options = textwrap::Options::new(self.look.width)
            .initial_indent(first)
            .subsequent_indent(rest);
        for line in textwrap::wrap(text, options) {
            self.toned(line.trim_end(), tone);
            self.out.push('\n');
        }
    }

    fn toned(&mut self, text: &str, tone: Tone) {
        if self.look.colour && tone != Tone::Plain && !text.is_empty() {
            let style = tone.style();
            self.out
                .push_str(&format!("{}{text}{}", style.render(), style.render_reset()));
        } else {
            self.out.push_str(text);
        }
    }

    /// A table: as wide as its cells, the last column wrapped into what is left, or onto lines of
    /// its own where too little is left.
    pub(in crate::report) fn table<const N: usize>(&mut self, head: [&str; N], rows: &[[Cell; N]]) {
        self.set(head, rows, true);
    }

    fn set<const N: usize>(&mut self, head: [&str; N], rows: &[[Cell; N]], has_head: bool) {
        let table = || Block::Table {
            head: if has_head {
                head.map(Into::into).into()
            } else {
                Vec::new()
            },
            rows: rows.iter().map(kept_row).collect(),
        };
        if self.keep(table) {
            return;
        }
        let mut widths = head.map(display_width);
        for row in rows {
            for (width, cell) in widths.iter_mut().zip(row) {
                *width = (*width).max(display_width(&cell.text));
            }
        }
        let before = widths.iter().take(N - 1).map(|w| w + GUTTER).sum::<usize>() + GUTTER;
        let room = self.look.width.saturating_sub(before);
        let last = if room >= LEAST_LAST_COLUMN.min(widths[N - 1]) {
            Last::Beside {
                indent: before,
                width: room,
            }
        } else {
            Last::Below {
                width: self.look.width.saturating_sub(BELOW_INDENT),
            }
        };
        if has_head {
            let head = head.map(|text| Cell::toned(text, Tone::Quiet));
            self.row(&widths, last, &head);
        }
        for row in rows {
            self.row(&widths, last, row);
        }
    }

    /// A table without a head.
    pub(in crate::report) fn rows<const N: usize>(&mut self, rows: &[[Cell; N]]) {
        self.set([""; N], rows, false);
    }

    fn row<const N: usize>(&mut self, widths: &[usize; N], last: Last, cells: &[Cell; N]) {
        for (cell, width) in cells.iter().zip(widths).take(N - 1) {
            self.out.push_str(&" ".repeat(GUTTER));
            self.toned(&cell.text, cell.tone);
            let pad = width.saturating_sub(display_width(&cell.text));
            self.out.push_str(&" ".repeat(pad));
        }
        let cell = &cells[N - 1];
        let (width, indent) = match last {
            Last::Beside { indent, width } => (width, indent),
            Last::Below { width } => (width, BELOW_INDENT),
        };
        for (i, line) in textwrap::wrap(&cell.text, width).iter().enumerate() {
            if line.is_empty() {
                continue;
            }
            match last {
                Last::Beside { .. } if i == 0 => self.out.push_str(&" ".repeat(GUTTER)),
                _ => {
                    self.end_line();
                    self.out.push_str(&" ".repeat(indent));
                }
            }
            self.toned(line, cell.tone);
        }
        self.end_line();
    }

    /// Ends a line without blanks at its end.
    fn end_line(&mut self) {
        let kept = self.out.trim_end_matches(' ').len();
        self.out.truncate(kept);
        self.out.push('\n');
    }
}

fn kept_row<const N: usize>(row: &[Cell; N]) -> Vec<(String, Tone)> {
    let cells = row.iter();
    let kept = cells.map(|cell| (cell.text.trim().to_owned(), cell.tone));
    kept.collect()
}

/// Where the last column of a table goes.
#[derive(Clone, Copy)]
enum Last {
    /// Beside the others.
    Beside { indent: usize, width: usize },
    /// On lines of its own, below.
    Below { width: usize },
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_last_column_wraps_under_itself() {
        let mut page = Page::new(Look {
            colour: false,
            width: 40,
        });
        page.table(
            ["lock", "between"],
            &[["9".into(), "one long thing and another long thing".into()]],
        );
        assert_eq!(
            page.finish(),
            "  lock  between\n  9     one long thing and another long\n        thing\n"
        );
    }

    #[test]
    fn the_last_column_goes_below_where_there_is_no_room() {
        let mut page = Page::new(Look {
            colour: false,
            width: 40,
        });
        page.table(
            ["a column as wide as the page", "between"],
            &[["x".into(), "this thing and that thing".into()]],
        );
        assert_eq!(
            page.finish(),
            "  a column as wide as the page\n        between\n  x\n        this thing and that thing\n"
        );
    }

    #[test]
    fn no_escapes_without_colour() {
        let build = |colour| {
            let mut page = Page::new(Look { colour, width: 80 });
            page.heading("Locks");
            page.table(["a", "b"], &[[Cell::toned("x", Tone::Bad), "".into()]]);
            page.finish()
        };
        assert!(!build(false).contains('\u{1b}'));
        assert!(build(true).contains('\u{1b}'));
        assert_eq!(build(false), "\nLocks\n  a  b\n  x\n");
    }
}
