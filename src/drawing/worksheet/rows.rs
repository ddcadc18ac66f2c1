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
pub(super) const HOW: f64 = 2.3;
pub(super) const SMALL: f64 = 2.1;
/// Room for a number, millimetres.
const NUMBER: f64 = 10.0;
/// Room for an answer that has the whole width, for one in words, and for one of two side by side.
const ANSWER: f64 = 62.0;
const IN_WORDS: f64 = 100.0;
const BESIDE: f64 = 38.0;
/// Between two questions side by side.
const GUTTER: f64 = 5.0;
/// The least height of a line that a pencil writes on.
pub(super) const LINE: f64 = 7.2;

/// Something that is not parted over two pages.
pub(super) enum Block {
    /// A section's title and words.
    Heading(String, &'static str),
    /// A section's title again, on a further page.
    Continued(String),
    /// A sketch.
    Sketch(Sketch),
    /// Questions with room for their answers: one over the whole width, or two side by side.
    Asked(Vec<Numbered>),
    /// A question whose answers stand in a table below it.
    Column(String, &'static Question),
    /// The table: headings of its columns, and how many lines.
    Table(Vec<Numbered>, usize),
}

/// A question and its number.
pub(super) type Numbered = (String, &'static Question);

/// The blocks of a section, on a page of this width.
pub(super) fn blocks(section: &'static Section, width: f64) -> Vec<Block> {
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
            for asked in numbered {
                let drawn = sketch(section.id, asked.1.key).map(Block::Sketch);
                match blocks.last_mut() {
                    Some(Block::Asked(before))
                        if drawn.is_none() && beside(before, &asked, width) =>
                    {
                        before.push(asked);
                    }
                    _ => {
                        blocks.extend(drawn);
                        blocks.push(Block::Asked(vec![asked]));
                    }
                }
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

/// Whether a question stands beside the one before it: where that spares room, and nobody has to write
/// words on a short line.
fn beside(before: &[Numbered], asked: &Numbered, width: f64) -> bool {
    let [one] = before else { return false };
    let in_words = |asked: &Numbered| matches!(asked.1.kind, Kind::Words | Kind::Preset(_));
    if in_words(one) || in_words(asked) {
        return false;
    }
    let both = cell_height(one, half(width), BESIDE).max(cell_height(asked, half(width), BESIDE));
    both < cell_height(one, width, ANSWER) + cell_height(asked, width, ANSWER)
}

/// The width of one of two questions side by side.
fn half(width: f64) -> f64 {
    (width - GUTTER) * 0.5
}

/// How high a question is in a cell of this width with so much room for its answer.
fn cell_height(one: &Numbered, width: f64, answer: f64) -> f64 {
    let cell = Cell::of(one.1, width, answer);
    cell.height + 1.0
}

/// How a question lies beside its answer.
struct Cell {
    /// How wide the words are that say where the tape goes.
    how: f64,
    /// How far down these begin, the answer ends, and all of it.
    begin: f64,
    answer: f64,
    height: f64,
}

impl Cell {
    /// Beside the answer, or below it over the whole width where that is lower.
    fn of(question: &Question, width: f64, answer: f64) -> Self {
        let room = width - NUMBER - answer - 3.0;
        let given = ticks(question.kind, answer).map_or(LINE, |rows| rows.height().max(LINE));
        let what = lines(&what(question), WHAT, room);
        let beside = (what + lines(question.how, HOW, room)).max(given);
        let top = what.max(given);
        let below = top + lines(question.how, HOW, width - NUMBER);
        if beside <= below {
            return Self {
                how: room,
                begin: what,
                answer: beside,
                height: beside,
            };
        }
        Self {
            how: width - NUMBER,
            begin: top,
            answer: top,
            height: below,
        }
    }
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

    /// A table with as many more lines as this much room holds, and at most twice its own; none where
    /// it is no table, or there is no room.
    pub(super) fn with_more_lines(&self, room: f64) -> Option<Self> {
        let Self::Table(columns, count) = self else {
            return None;
        };
        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // some lines
        let more = (room.max(0.0) / LINE).floor() as usize;
        let more = more.min(*count);
        (more > 0).then(|| Self::Table(columns.clone(), count + more))
    }

    pub(super) fn height(&self, width: f64) -> f64 {
        match self {
            Self::Heading(_, says) => 3.0 + TITLE * LEADING + lines(says, HOW, width) + 1.0,
            Self::Continued(title) => 1.0 + lines(title, WHAT, width) + 2.0,
            Self::Sketch(sketch) => sketch.size.y + 2.0,
            Self::Asked(asked) => Self::cells(asked, width)
                .map(|(one, _, width, answer)| cell_height(one, width, answer))
                .fold(0.0, f64::max),
            Self::Column(_, question) => lines(&Self::column(question), HOW, width - NUMBER),
            #[allow(clippy::cast_precision_loss)] // some lines
            Self::Table(columns, count) => heads(columns, width) + 1.5 + *count as f64 * LINE + 2.0,
        }
    }

    /// Each of the questions of a line: how far to the right it stands, its width, and the room for its
    /// answer.
    fn cells(asked: &[Numbered], width: f64) -> impl Iterator<Item = (&Numbered, f64, f64, f64)> {
        let side_by_side = asked.len() > 1;
        asked.iter().enumerate().map(move |(index, one)| {
            if !side_by_side {
                let in_words = matches!(one.1.kind, Kind::Words);
                return (one, 0.0, width, if in_words { IN_WORDS } else { ANSWER });
            }
            let right = if index == 0 {
                0.0
            } else {
                half(width) + GUTTER
            };
            (one, right, half(width), BESIDE)
        })
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
                for item in sketch.items() {
                    let place = |point: DVec2| point + corner;
                    pen.sheet.push(item.layer, item.shape.mapped(&place, 1.0));
                }
            }
            Self::Asked(asked) => {
                for (one, right, width, answer) in Self::cells(asked, width) {
                    cell(pen.sheet, at + DVec2::X * right, one, width, answer);
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

/// A question with room for its answer, its upper left corner here.
fn cell(sheet: &mut Sheet, at: DVec2, one: &Numbered, width: f64, answer: f64) {
    let (number, question) = one;
    let room = width - NUMBER - answer - 3.0;
    let cell = Cell::of(question, width, answer);
    let mut pen = Pencil { sheet, at };
    pen.word(0.0, -WHAT * LEADING * 0.75, number, WHAT, INK);
    pen.paragraph(NUMBER, &what(question), WHAT, INK, room);
    pen.at.y = at.y - cell.begin;
    pen.paragraph(NUMBER, question.how, HOW, INK, cell.how);
    let left = at.x + width - answer;
    match ticks(question.kind, answer) {
        Some(rows) => rows.draw(pen.sheet, DVec2::new(left, at.y)),
        None => writing(
            pen.sheet,
            [left, left + answer],
            at.y - cell.answer + 1.0,
            question.kind,
        ),
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
