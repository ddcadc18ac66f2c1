//! One block of the form: a heading, a sketch, a question with room for its answer, a table.

use glam::DVec2;

use super::answers::{ticks, writing};
use super::sketch::Sketch;
use super::sketches::sketch;
use super::table::{heads, table};
use crate::drawing::palette::Colour;
use crate::drawing::palette::paper::INK;
use crate::drawing::sheet::lines::wrapped;
use crate::drawing::sheet::{LEADING, Layer, Pen, Shape, Sheet, Text};
use crate::worksheet::{Kind, Question, Section, When, number};

const TITLE: f64 = 4.0;
const WHAT: f64 = 2.9;
pub(super) const HOW: f64 = 2.4;
pub(super) const SMALL: f64 = 2.1;
/// Room for a number, millimetres.
const NUMBER: f64 = 10.0;
/// Room for an answer.
pub(super) const ANSWER: f64 = 62.0;
/// The least height of a line that a pencil writes on.
pub(super) const LINE: f64 = 8.5;

/// Something that is not parted over two pages.
pub(super) enum Block {
    /// A section's title and words.
    Heading(String, &'static str),
    /// A section's title again, on a further page.
    Continued(String),
    /// A sketch.
    Sketch(Sketch),
    /// A question with room for its answer.
    Asked(String, &'static Question),
    /// A question whose answers stand in a table below it.
    Column(String, &'static Question),
    /// The table: headings of its columns, and how many lines.
    Table(Vec<(String, &'static Question)>, usize),
}

/// The blocks of a section.
pub(super) fn blocks(section: &'static Section) -> Vec<Block> {
    let of_form = |question: &Question| number(section.id, question.key).unwrap_or_default();
    let at = of_form(&section.questions[0]);
    let at = at.split('.').next().unwrap_or_default();
    let mut blocks = vec![Block::Heading(
        format!("{at}. {}", section.title),
        section.says,
    )];
    let numbered = section
        .questions
        .iter()
        .map(|question| (of_form(question), question));
    match section.repeat {
        None => {
            for (number, question) in numbered {
                blocks.extend(sketch(section.id, question.key).map(Block::Sketch));
                blocks.push(Block::Asked(number, question));
            }
        }
        Some(repeat) => {
            for (number, question) in numbered.clone() {
                blocks.extend(sketch(section.id, question.key).map(Block::Sketch));
                blocks.push(Block::Column(number, question));
            }
            blocks.push(Block::Table(numbered.collect(), repeat.lines));
        }
    }
    blocks
}

/// What is asked, with the answers that it is asked after.
fn what(question: &Question) -> String {
    match question.when {
        When::Always => question.what.into(),
        // The words before the colon say it.
        When::If(..) if question.what.contains(':') => question.what.into(),
        When::If(_, words) => format!("{} ({})", question.what, words.join(", ")),
    }
}

impl Block {
    /// True where a section begins.
    pub(super) const fn opens(&self) -> bool {
        matches!(self, Self::Heading(..))
    }

    /// True for a sketch.
    pub(super) const fn is_sketch(&self) -> bool {
        matches!(self, Self::Sketch(_))
    }

    /// True for what stands over something and is nothing without it.
    pub(super) const fn leads(&self) -> bool {
        matches!(self, Self::Heading(..) | Self::Sketch(_) | Self::Column(..))
    }

    pub(super) fn height(&self, width: f64) -> f64 {
        match self {
            Self::Heading(_, says) => 3.0 + TITLE * LEADING + lines(says, HOW, width) + 1.0,
            Self::Continued(title) => 1.0 + lines(title, WHAT, width) + 2.0,
            Self::Sketch(sketch) => sketch.size.y + 2.0,
            Self::Asked(_, question) => {
                let room = width - NUMBER - ANSWER - 3.0;
                let said = lines(&what(question), WHAT, room) + lines(question.how, HOW, room);
                said.max(LINE)
                    .max(ticks(question.kind).map_or(0.0, |rows| rows.height()))
                    + 1.0
            }
            Self::Column(_, question) => lines(&Self::column(question), HOW, width - NUMBER),
            #[allow(clippy::cast_precision_loss)] // some lines
            Self::Table(columns, count) => heads(columns, width) + 1.5 + *count as f64 * LINE + 2.0,
        }
    }

    /// A question of a table as one paragraph.
    fn column(question: &Question) -> String {
        let words = match question.kind {
            Kind::Choice(words) => {
                let words: Vec<&str> = words.iter().map(|(word, _)| *word).collect();
                format!(" One of: {}.", words.join(", "))
            }
            Kind::YesNo => " Yes or no.".into(),
            kind if !kind.units().is_empty() => format!(" In {}.", kind.units()),
            _ => String::new(),
        };
        let end = if question.what.ends_with('?') {
            ""
        } else {
            "."
        };
        format!("{}{end} {}{words}", question.what, question.how)
    }

    /// Draws it with its upper left corner here.
    pub(super) fn draw(&self, sheet: &mut Sheet, at: DVec2, width: f64) {
        let mut pen = Pencil { sheet, at };
        match self {
            Self::Heading(title, says) => {
                pen.rule(width, 0.25);
                pen.down(3.0);
                pen.paragraph(0.0, title, TITLE, INK, width);
                pen.paragraph(0.0, says, HOW, INK, width);
            }
            Self::Continued(title) => {
                pen.down(1.0);
                pen.paragraph(0.0, title, WHAT, INK, width);
            }
            Self::Sketch(sketch) => {
                let corner = DVec2::new(
                    at.x + (width - sketch.size.x) * 0.5,
                    at.y - 1.0 - sketch.size.y,
                );
                for item in &sketch.items {
                    let place = |point: DVec2| point + corner;
                    pen.sheet.push(item.layer, item.shape.mapped(&place, 1.0));
                }
            }
            Self::Asked(number, question) => {
                let room = width - NUMBER - ANSWER - 3.0;
                pen.word(0.0, -WHAT * LEADING * 0.75, number, WHAT, INK);
                pen.paragraph(NUMBER, &what(question), WHAT, INK, room);
                pen.paragraph(NUMBER, question.how, HOW, INK, room);
                let left = at.x + width - ANSWER;
                match ticks(question.kind) {
                    Some(rows) => rows.draw(pen.sheet, DVec2::new(left, at.y)),
                    None => writing(
                        pen.sheet,
                        left,
                        at.y - self.height(width) + 2.0,
                        question.kind,
                    ),
                }
            }
            Self::Column(number, question) => {
                pen.word(0.0, -HOW * LEADING * 0.75, number, HOW, INK);
                pen.paragraph(NUMBER, &Self::column(question), HOW, INK, width - NUMBER);
            }
            Self::Table(columns, count) => table(sheet, at, width, columns, *count),
        }
    }
}

/// The height of a paragraph.
#[allow(clippy::cast_precision_loss)] // some lines
pub(super) fn lines(says: &str, size: f64, width: f64) -> f64 {
    wrapped(says, size, width).len() as f64 * size * LEADING
}

/// Writes from the top down.
pub(super) struct Pencil<'a> {
    pub(super) sheet: &'a mut Sheet,
    pub(super) at: DVec2,
}

impl Pencil<'_> {
    const fn down(&mut self, by: f64) {
        self.at.y -= by;
    }

    pub(super) fn word(&mut self, right: f64, up: f64, says: &str, size: f64, colour: Colour) {
        let at = self.at + DVec2::new(right, up);
        self.sheet.push(
            Layer::Labels,
            Shape::Text(Text {
                at,
                size,
                upward: false,
                colour,
                says: says.into(),
            }),
        );
    }

    pub(super) fn paragraph(
        &mut self,
        right: f64,
        says: &str,
        size: f64,
        colour: Colour,
        width: f64,
    ) {
        for line in wrapped(says, size, width) {
            self.word(right, -size * LEADING * 0.75, &line, size, colour);
            self.down(size * LEADING);
        }
    }

    fn rule(&mut self, width: f64, pen: f64) {
        let ends = [self.at, self.at + DVec2::new(width, 0.0)];
        line(self.sheet, ends, Pen::solid(pen, INK));
    }
}

pub(super) fn line(sheet: &mut Sheet, ends: [DVec2; 2], pen: Pen) {
    sheet.push(Layer::Frame, Shape::Line { ends, pen });
}
