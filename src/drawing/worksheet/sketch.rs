//! A small drawing that shows where the tape goes: each length with the number of its question.

use glam::DVec2;

use crate::drawing::palette::Colour;
use crate::drawing::palette::paper::{FINE, INK, PAPER, SET_OUT};
use crate::drawing::sheet::{Dash, Item, Layer, Pen, Shape, Text};
use crate::worksheet::number;

/// The number of a question beside its length.
const LABEL: f64 = 2.7;
/// A word in a sketch.
const WORD: f64 = 2.2;
/// The stroke at the end of a length.
const STROKE: f64 = 1.2;

/// How large a sketch is shown, of its own millimetres.
const SHOWN: f64 = 0.84;

pub(super) struct Sketch {
    /// The section whose questions its numbers are of.
    section: &'static str,
    pub(super) size: DVec2,
    drawn: Vec<Item>,
    /// The numbers, each on its white: over whatever is drawn before or after them.
    numbers: Vec<Item>,
    /// Keys of the questions that are marked in it.
    pub(super) marks: Vec<&'static str>,
}

pub(super) fn at(x: f64, y: f64) -> DVec2 {
    DVec2::new(x, y)
}

impl Sketch {
    pub(super) const fn new(section: &'static str, width: f64, height: f64) -> Self {
        Self {
            section,
            size: DVec2::new(width * SHOWN, height * SHOWN),
            drawn: Vec::new(),
            numbers: Vec::new(),
            marks: Vec::new(),
        }
    }

    /// Everything in it, in the order in which it is drawn.
    pub(super) fn items(&self) -> impl Iterator<Item = &Item> {
        self.drawn.iter().chain(&self.numbers)
    }

    /// In the size in which it is shown; letters keep theirs.
    fn push(&mut self, layer: Layer, shape: Shape) {
        let shape = match shape {
            Shape::Circle {
                middle,
                radius,
                pen,
                fill,
            } => Shape::Circle {
                middle: middle * SHOWN,
                radius: radius * SHOWN,
                pen,
                fill,
            },
            Shape::Text(_) => shape,
            other => other.mapped(&|point: DVec2| point * SHOWN, 1.0),
        };
        self.drawn.push(Item { layer, shape });
    }

    pub(super) fn line(&mut self, a: DVec2, b: DVec2) {
        let pen = Pen::solid(0.3, INK);
        self.push(Layer::Walls, Shape::Line { ends: [a, b], pen });
    }

    pub(super) fn dashed(&mut self, a: DVec2, b: DVec2) {
        let pen = Pen::broken(0.2, FINE, Dash::Dashed);
        self.push(Layer::Walls, Shape::Line { ends: [a, b], pen });
    }

    pub(super) fn shape(&mut self, points: &[(f64, f64)], fill: Colour) {
        let points = points.iter().map(|&(x, y)| at(x, y)).collect();
        self.push(
            Layer::Walls,
            Shape::Polygon {
                points,
                pen: Some(Pen::solid(0.25, INK)),
                fill: Some(fill),
            },
        );
    }

    pub(super) fn rect(&mut self, low: (f64, f64), high: (f64, f64), fill: Colour) {
        self.shape(&[low, (high.0, low.1), high, (low.0, high.1)], fill);
    }

    pub(super) fn circle(&mut self, middle: DVec2, radius: f64, fill: Option<Colour>) {
        self.push(
            Layer::Walls,
            Shape::Circle {
                middle,
                radius,
                pen: Some(Pen::solid(0.25, INK)),
                fill,
            },
        );
    }

    /// A word, its baseline starting here.
    pub(super) fn word(&mut self, from: DVec2, says: &str) {
        self.text(from, says, WORD, FINE);
    }

    fn text(&mut self, from: DVec2, says: &str, size: f64, colour: Colour) {
        self.push(
            Layer::Labels,
            Shape::Text(Text {
                at: from * SHOWN,
                size,
                upward: false,
                colour,
                says: says.into(),
            }),
        );
    }

    /// A length between two points, with the number of its question in the middle of it.
    pub(super) fn dim(&mut self, key: &'static str, a: DVec2, b: DVec2) {
        self.dim_at(key, a, b, 0.5);
    }

    /// The same with the number elsewhere along it.
    pub(super) fn dim_at(&mut self, key: &'static str, a: DVec2, b: DVec2, share: f64) {
        let pen = Pen::solid(0.15, SET_OUT);
        let across = (b - a).normalize_or_zero().perp() * STROKE;
        for ends in [[a, b], [a - across, a + across], [b - across, b + across]] {
            self.push(Layer::Dimensions, Shape::Line { ends, pen });
        }
        self.label(key, a.lerp(b, share));
    }

    /// A thing, and the number of its question elsewhere.
    pub(super) fn spot(&mut self, key: &'static str, thing: DVec2, label: DVec2) {
        let pen = Pen::solid(0.15, SET_OUT);
        self.push(
            Layer::Dimensions,
            Shape::Line {
                ends: [thing, label],
                pen,
            },
        );
        self.circle(thing, 0.4, Some(SET_OUT));
        self.label(key, label);
    }

    /// The number of a question with its middle here, on white.
    fn label(&mut self, key: &'static str, middle: DVec2) {
        self.marks.push(key);
        // A key that is not asked would show here, and in the tests.
        let says = number(self.section, key).unwrap_or_else(|| "?".into());
        let mut text = Text {
            at: DVec2::ZERO,
            size: LABEL,
            upward: false,
            colour: SET_OUT,
            says,
        };
        let (low, high) = text.bounds();
        text.at = middle * SHOWN - (low + high) * 0.5;
        let (low, high) = text.bounds();
        let around = [low, at(high.x, low.y), high, at(low.x, high.y)];
        self.numbers.push(Item {
            layer: Layer::Shade,
            shape: Shape::Polygon {
                points: around.into(),
                pen: None,
                fill: Some(PAPER),
            },
        });
        self.numbers.push(Item {
            layer: Layer::Labels,
            shape: Shape::Text(text),
        });
    }
}
