//! What is wrong in a file, where, and what should be written instead?

use std::fmt;
use std::sync::Arc;

use miette::{
    GraphicalReportHandler, GraphicalTheme, LabeledSpan, NamedSource, SourceCode, ThemeCharacters,
    ThemeStyles,
};

use crate::letters;

/// How bad it is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Severity {
    /// The file is read all the same.
    Warning,
    /// The file is refused.
    Error,
}

/// A text that places refer to.
#[derive(Debug, PartialEq, Eq, Hash)]
pub struct Source {
    /// The name to show: a path as the person gave it, or a preset's.
    pub name: String,
    /// The whole text.
    pub text: String,
}

/// A place in a source.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Place {
    /// The source.
    pub source: Arc<Source>,
    /// The bytes; within the text.
    pub span: std::ops::Range<usize>,
    /// What was expected there, or why the place is shown.
    pub label: String,
}

impl Place {
    /// Line and column of the first character, both from 1; columns count characters.
    #[must_use]
    pub fn line_column(&self) -> (usize, usize) {
        let before = self.source.text.get(..self.span.start).unwrap_or("");
        let line_start = before.rfind('\n').map_or(0, |i| i + 1);
        (
            before.matches('\n').count() + 1,
            before[line_start..].chars().count() + 1,
        )
    }

    /// True when the line of the place and its neighbours are of a length that a person can read.
    fn lines_are_short(&self) -> bool {
        let text = &self.source.text;
        let before = text.get(..self.span.start).unwrap_or("");
        let start = before.rmatch_indices('\n').nth(1).map_or(0, |(i, _)| i + 1);
        let after = text.get(self.span.end..).unwrap_or("");
        let end = after.match_indices('\n').nth(1);
        let end = end.map_or(text.len(), |(i, _)| self.span.end + i);
        text.get(start..end)
            .is_some_and(|shown| shown.lines().all(|line| line.len() <= LONGEST_LINE))
    }
}

/// One fault or warning.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Diagnostic {
    /// How bad it is.
    pub severity: Severity,
    /// What is wrong, in one line.
    pub message: String,
    /// Where; none when the whole file is meant.
    pub place: Option<Place>,
    /// What to write instead.
    pub help: Option<String>,
}

impl Diagnostic {
    /// True for an error.
    #[must_use]
    pub fn is_error(&self) -> bool {
        self.severity == Severity::Error
    }
}

/// `file:line:column: message`, for logs and one-line output.
impl fmt::Display for Diagnostic {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if let Some(place) = &self.place {
            let (line, column) = place.line_column();
            write!(f, "{}:{line}:{column}: ", place.source.name)?;
        }
        f.write_str(&self.message)
    }
}

/// The most diagnostics that are shown in full.
pub const MOST_SHOWN: usize = 50;

/// The longest line that is drawn, in bytes.
const LONGEST_LINE: usize = 400;

/// How diagnostics are drawn.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Style {
    /// With colour escapes.
    pub colour: bool,
    /// With line-drawing characters instead of plain ones.
    pub unicode: bool,
    /// Columns to wrap at.
    pub width: usize,
}

impl Default for Style {
    fn default() -> Self {
        Self {
            colour: false,
            unicode: false,
            width: 100,
        }
    }
}

/// Draws diagnostics for a person, each with its line and the offending text underlined; after
/// [`MOST_SHOWN`] the rest is counted.
#[must_use]
pub fn render(diagnostics: &[Diagnostic], style: Style) -> String {
    let handler = GraphicalReportHandler::new_themed(GraphicalTheme {
        characters: if style.unicode {
            ThemeCharacters::unicode()
        } else {
            ThemeCharacters::ascii()
        },
        styles: if style.colour {
            ThemeStyles::ansi()
        } else {
            ThemeStyles::none()
        },
    })
    .with_width(style.width.max(40))
    .with_links(false)
    .without_syntax_highlighting();
    let mut out = String::new();
    for diagnostic in diagnostics.iter().take(MOST_SHOWN) {
        let shown = Shown::new(diagnostic);
        if handler.render_report(&mut out, &shown).is_err() {
            // The drawing failed, the words must not: the place as plain text.
            out.push_str(&letters::in_place(&diagnostic.to_string()));
        }
        out.push('\n');
    }
    let hidden = diagnostics.len().saturating_sub(MOST_SHOWN);
    if hidden > 0 {
        out.push_str(&format!("and {hidden} more\n\n"));
    }
    let errors = diagnostics.iter().filter(|d| d.is_error()).count();
    let warnings = diagnostics.len() - errors;
    let mut counted = Vec::new();
    if errors > 0 {
        counted.push(count(errors, "error"));
    }
    if warnings > 0 {
        counted.push(count(warnings, "warning"));
    }
    if !counted.is_empty() {
        out.push_str(&counted.join(", "));
        out.push('\n');
    }
    out
}

fn count(n: usize, what: &str) -> String {
    format!("{n} {what}{}", if n == 1 { "" } else { "s" })
}

/// A diagnostic in the drawing library's terms.
#[derive(Debug)]
struct Shown<'a> {
    diagnostic: &'a Diagnostic,
    source: Option<NamedSource<String>>,
}

impl<'a> Shown<'a> {
    fn new(diagnostic: &'a Diagnostic) -> Self {
        let place = diagnostic.place.as_ref().filter(|p| p.lines_are_short());
        // A line of a file may hold anything; what a terminal would act on is shown in its place.
        let source = place.map(|p| {
            let name = letters::shown(&p.source.name);
            NamedSource::new(name, letters::in_place(&p.source.text))
        });
        Self { diagnostic, source }
    }
}

impl fmt::Display for Shown<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.source.is_none() {
            // No line is drawn, so the place is said in words.
            return f.write_str(&letters::in_place(&self.diagnostic.to_string()));
        }
        f.write_str(&letters::in_place(&self.diagnostic.message))
    }
}

impl std::error::Error for Shown<'_> {}

impl miette::Diagnostic for Shown<'_> {
    fn severity(&self) -> Option<miette::Severity> {
        Some(match self.diagnostic.severity {
            Severity::Error => miette::Severity::Error,
            Severity::Warning => miette::Severity::Warning,
        })
    }

    fn help<'b>(&'b self) -> Option<Box<dyn fmt::Display + 'b>> {
        let help = self.diagnostic.help.as_ref()?;
        Some(Box::new(letters::in_place(help)))
    }

    fn source_code(&self) -> Option<&dyn SourceCode> {
        self.source.as_ref().map(|s| s as &dyn SourceCode)
    }

    fn labels(&self) -> Option<Box<dyn Iterator<Item = LabeledSpan> + '_>> {
        self.source.as_ref()?;
        let place = self.diagnostic.place.as_ref()?;
        let label = LabeledSpan::new(
            Some(letters::in_place(&place.label)),
            place.span.start,
            place.span.len(),
        );
        Some(Box::new(std::iter::once(label)))
    }
}
