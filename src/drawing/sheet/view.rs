//! What is drawn to scale, and what is written around it?

use glam::DVec2;

use super::{Item, Shape};

/// Something drawn to scale, in metres, with everything that is to be written beside it. Pens and
/// dashes stay in millimetres of paper.
#[derive(Debug, Clone, Default)]
pub struct View {
    /// Outlines, lines and circles, in the order in which they are drawn. Metres.
    pub items: Vec<Item>,
    /// Running dimensions up the left side: from the same zero, each at its own height.
    pub left: Vec<Tick>,
    /// Running dimensions along the bottom.
    pub bottom: Vec<Tick>,
    /// What is said of things, in a column at the right.
    pub callouts: Vec<Callout>,
    /// Letters beside points.
    pub marks: Vec<Mark>,
}

/// A running dimension.
#[derive(Debug, Clone, PartialEq)]
pub struct Tick {
    /// Where along the axis, metres.
    pub at_m: f64,
    /// Where across the axis the thing is that is measured, metres.
    pub across_m: f64,
    /// What is measured.
    pub what: String,
    /// What the tape shows.
    pub reads: String,
}

/// A thing and what is said of it.
#[derive(Debug, Clone, PartialEq)]
pub struct Callout {
    /// Where it is, metres.
    pub at_m: DVec2,
    /// What is said.
    pub says: String,
    /// The letter of a [`Mark`] there; none where a leader goes to it.
    pub letter: Option<String>,
}

impl Callout {
    /// One with a leader.
    #[must_use]
    pub const fn leading(at_m: DVec2, says: String) -> Self {
        Self {
            at_m,
            says,
            letter: None,
        }
    }

    /// All that is written of it.
    #[must_use]
    pub fn text(&self) -> String {
        match &self.letter {
            Some(letter) => format!("{letter}: {}", self.says),
            None => self.says.clone(),
        }
    }
}

/// A point and its letter.
#[derive(Debug, Clone, PartialEq)]
pub struct Mark {
    /// Where it is, metres.
    pub at_m: DVec2,
    /// Its letter.
    pub letter: String,
    /// How far around it a circle of its own is drawn, metres; 0 where it is a dot.
    pub clear_m: f64,
    /// Whether the page may do without it where there is no room: a list has the same point.
    pub may_be_left: bool,
}

impl View {
    /// Lower left and upper right corner of all that is drawn, metres.
    #[must_use]
    pub fn bounds_m(&self) -> (DVec2, DVec2) {
        let mut low = DVec2::INFINITY;
        let mut high = DVec2::NEG_INFINITY;
        let mut take = |a: DVec2, b: DVec2| {
            low = low.min(a);
            high = high.max(b);
        };
        for item in &self.items {
            match &item.shape {
                Shape::Line { ends: [a, b], .. } => take(a.min(*b), a.max(*b)),
                Shape::Polygon { points, .. } => points.iter().for_each(|&p| take(p, p)),
                Shape::Circle { middle, radius, .. } => {
                    take(*middle - *radius, *middle + *radius);
                }
                Shape::Text(text) => take(text.at, text.at),
            }
        }
        if low.x <= high.x && low.y <= high.y {
            (low, high)
        } else {
            (DVec2::ZERO, DVec2::ZERO)
        }
    }
}

impl Shape {
    /// The same somewhere else and in another size.
    #[must_use]
    pub fn mapped(&self, place: &dyn Fn(DVec2) -> DVec2, size: f64) -> Self {
        match self {
            Self::Line { ends, pen } => Self::Line {
                ends: ends.map(place),
                pen: *pen,
            },
            Self::Polygon { points, pen, fill } => Self::Polygon {
                points: points.iter().map(|&point| place(point)).collect(),
                pen: *pen,
                fill: *fill,
            },
            Self::Circle {
                middle,
                radius,
                pen,
                fill,
            } => Self::Circle {
                middle: place(*middle),
                radius: radius * size,
                pen: *pen,
                fill: *fill,
            },
            Self::Text(text) => {
                let mut text = text.clone();
                text.at = place(text.at);
                text.size *= size;
                Self::Text(text)
            }
        }
    }
}
