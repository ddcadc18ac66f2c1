//! What lies on a page? Lines, polygons, circles and text in millimetres of paper, to a scale.
//!
//! Plain data: a sheet knows nothing of bays, and its writers (SVG, PDF, DXF) know nothing but
//! sheets. The origin is the page's lower left corner, `x` to the right, `y` up. Where text lies is
//! exact, since its widths are those of the font that is written into the file.

mod compose;
mod crossing;
pub mod font;
mod frame;
mod labels;
mod leads;
mod letters;
pub mod lines;
mod listing;
mod paper;
mod prose;
mod spread;
mod view;

use glam::DVec2;

pub use compose::compose;
pub use frame::Frame;
pub(super) use frame::{BAR_SAYS, LEADING, SCALE, put as put_frame};
#[cfg(test)]
pub(super) use labels::LEADER;
pub(super) use letters::marks;
pub use listing::{Row, listing};
pub use paper::{Paper, scale_of, stated};
pub use prose::{Line, prose};
pub use spread::spread;
pub use view::{Callout, Mark, Tick, View};

use super::palette::Colour;

/// One page.
#[derive(Debug, Clone, PartialEq)]
pub struct Sheet {
    /// What it shows.
    pub name: String,
    /// A short word that its layers begin with in a file of layers: `PLAN`.
    pub tag: &'static str,
    /// Width and height of the page.
    pub page_mm: DVec2,
    /// The scale, 1 to this.
    pub scale: f64,
    /// Where on the page the origin of what is drawn lies.
    pub origin_mm: DVec2,
    /// What lies on it, in the order in which it is drawn.
    pub items: Vec<Item>,
}

/// Something on a page.
#[derive(Debug, Clone, PartialEq)]
pub struct Item {
    /// Its layer.
    pub layer: Layer,
    /// What it is.
    pub shape: Shape,
}

/// What an item is. Millimetres of paper.
#[derive(Debug, Clone, PartialEq)]
pub enum Shape {
    /// A line.
    Line {
        /// From where to where.
        ends: [DVec2; 2],
        /// How it is drawn.
        pen: Pen,
    },
    /// A closed outline.
    Polygon {
        /// Its corners, one after another.
        points: Vec<DVec2>,
        /// How its edge is drawn; none: not at all.
        pen: Option<Pen>,
        /// What it is filled with.
        fill: Option<Colour>,
    },
    /// A circle.
    Circle {
        /// Its middle.
        middle: DVec2,
        /// Its radius.
        radius: f64,
        /// How its edge is drawn; none: not at all.
        pen: Option<Pen>,
        /// What it is filled with.
        fill: Option<Colour>,
    },
    /// One line of text.
    Text(Text),
}

/// How a line is drawn.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Pen {
    /// Its width.
    pub width: f64,
    /// Its colour.
    pub colour: Colour,
    /// Dashed or not.
    pub dash: Dash,
}

/// How a line is broken.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Dash {
    /// Not at all.
    Solid,
    /// Dashes.
    Dashed,
    /// Long dash, short dash: middle lines.
    Centre,
}

impl Dash {
    /// Lengths of stroke and gap, one after another; empty for a whole line.
    #[must_use]
    pub const fn pattern_mm(self) -> &'static [f64] {
        match self {
            Self::Solid => &[],
            Self::Dashed => &[2.0, 1.2],
            Self::Centre => &[5.0, 1.0, 1.0, 1.0],
        }
    }
}

impl Pen {
    /// A whole line.
    #[must_use]
    pub const fn solid(width: f64, colour: Colour) -> Self {
        Self {
            width,
            colour,
            dash: Dash::Solid,
        }
    }

    /// A broken line.
    #[must_use]
    pub const fn broken(width: f64, colour: Colour, dash: Dash) -> Self {
        Self {
            width,
            colour,
            dash,
        }
    }
}

/// One line of text.
#[derive(Debug, Clone, PartialEq)]
pub struct Text {
    /// Where its baseline starts.
    pub at: DVec2,
    /// Height of the type, its em.
    pub size: f64,
    /// True when it runs upward, a quarter turn counter-clockwise.
    pub upward: bool,
    /// Its colour.
    pub colour: Colour,
    /// What it says.
    pub says: String,
}

/// How far letters reach above the baseline, in ems.
const ABOVE: f64 = 0.78;
/// How far they reach below it, in ems.
const BELOW: f64 = 0.22;

impl Text {
    /// How long it is.
    #[must_use]
    pub fn width_mm(&self) -> f64 {
        font::width_em(&self.says) * self.size
    }

    /// The box that it takes up: its lower left and upper right corner.
    #[must_use]
    pub fn bounds(&self) -> (DVec2, DVec2) {
        let (width, above, below) = (self.width_mm(), ABOVE * self.size, BELOW * self.size);
        if self.upward {
            (
                self.at + DVec2::new(-above, 0.0),
                self.at + DVec2::new(below, width),
            )
        } else {
            (
                self.at + DVec2::new(0.0, -below),
                self.at + DVec2::new(width, above),
            )
        }
    }
}

/// Which layer an item lies in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[allow(missing_docs)] // each says what it holds
pub enum Layer {
    Walls,
    Overhead,
    Door,
    Posts,
    Plates,
    Lift,
    Vehicle,
    SlabLines,
    Readings,
    Holes,
    Points,
    Parking,
    Dimensions,
    Labels,
    Frame,
    /// What only makes the page easier to read and is no outline of anything: fills.
    Shade,
}

impl Layer {
    /// All of them.
    pub const ALL: [Self; 16] = [
        Self::Walls,
        Self::Overhead,
        Self::Door,
        Self::Posts,
        Self::Plates,
        Self::Lift,
        Self::Vehicle,
        Self::SlabLines,
        Self::Readings,
        Self::Holes,
        Self::Points,
        Self::Parking,
        Self::Dimensions,
        Self::Labels,
        Self::Frame,
        Self::Shade,
    ];

    /// Its name in a file of layers.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Walls => "WALLS",
            Self::Overhead => "OVERHEAD",
            Self::Door => "DOOR",
            Self::Posts => "POSTS",
            Self::Plates => "PLATES",
            Self::Lift => "LIFT",
            Self::Vehicle => "VEHICLE",
            Self::SlabLines => "SLAB_LINES",
            Self::Readings => "READINGS",
            Self::Holes => "HOLES",
            Self::Points => "POINTS",
            Self::Parking => "PARKING",
            Self::Dimensions => "DIMENSIONS",
            Self::Labels => "LABELS",
            Self::Frame => "FRAME",
            Self::Shade => "SHADE",
        }
    }
}

impl Sheet {
    /// Every text with the box that it takes up.
    pub fn texts(&self) -> impl Iterator<Item = &Text> {
        self.items.iter().filter_map(|item| match &item.shape {
            Shape::Text(text) => Some(text),
            _ => None,
        })
    }

    pub(super) fn push(&mut self, layer: Layer, mut shape: Shape) {
        if let Shape::Text(text) = &mut shape
            && let std::borrow::Cow::Owned(lettered) = font::lettered(&text.says)
        {
            text.says = lettered;
        }
        self.items.push(Item { layer, shape });
    }
}
