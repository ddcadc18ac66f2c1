//! Which shape stands for which state?
//!
//! Every state has a shape of its own, so that colour never tells alone. Shapes are outlined in
//! ink, so that they show on any ground.

use egui::{Color32, Painter, Pos2, Rect, Response, Sense, Shape, Stroke, Ui, pos2, vec2};

use super::style::egui_colour;
use crate::clearance::LockState;
use crate::clearance::probe::{HereState, PairState};
use crate::drawing::palette::screen::Screen;
use crate::drawing::palette::{self, Colour};

/// A shape.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Sign {
    /// A full disc: every margin holds.
    Disc,
    /// A disc half full: a margin is short.
    Half,
    /// A cross: something touches.
    Cross,
    /// A disc with a bar across: barred below.
    Bar,
    /// A square with a dot: not decided.
    Query,
    /// A hollow ring: the pads do not carry.
    Ring,
    /// A dash: the latches can't let go.
    Dash,
    /// A ring that stands on a line: on its tyres.
    Tyre,
    /// A ring struck through: clear, but no lock is called safe.
    Struck,
    /// A wedge that points down: above the mark never to climb above.
    Wedge,
}

/// A state as it is shown: shape, colour and word.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct State {
    /// Its shape.
    pub sign: Sign,
    /// What fills the shape.
    pub colour: Colour,
    /// Its word.
    pub word: &'static str,
}

impl From<LockState> for State {
    fn from(state: LockState) -> Self {
        let sign = match state {
            LockState::Clear => Sign::Disc,
            LockState::Tight => Sign::Half,
            LockState::Strikes => Sign::Cross,
            LockState::Barred => Sign::Bar,
            LockState::NotShown => Sign::Query,
            LockState::NotLifting => Sign::Ring,
            LockState::NoRelease => Sign::Dash,
        };
        Self {
            sign,
            colour: palette::lock(state),
            word: state.words(),
        }
    }
}

impl From<HereState> for State {
    fn from(state: HereState) -> Self {
        let (sign, colour) = match state {
            HereState::Parked => (Sign::Tyre, palette::IDLE),
            HereState::Meeting => (Sign::Ring, palette::IDLE),
            HereState::Clear => (Sign::Disc, palette::CLEAR),
            HereState::Tight => (Sign::Half, palette::TIGHT),
            HereState::Strikes => (Sign::Cross, palette::STRIKES),
            HereState::Barred => (Sign::Bar, palette::BARRED),
            HereState::NotShown => (Sign::Query, palette::UNDECIDED),
        };
        Self {
            sign,
            colour,
            word: state.words(),
        }
    }
}

impl From<PairState> for State {
    fn from(state: PairState) -> Self {
        match state {
            PairState::Clear => LockState::Clear.into(),
            PairState::NotShown => LockState::NotShown.into(),
            PairState::Tight => LockState::Tight.into(),
            PairState::Strikes => LockState::Strikes.into(),
        }
    }
}

/// The sign that no lock is safe.
pub const NO_SAFE_LOCK: State = State {
    sign: Sign::Cross,
    colour: palette::STRIKES,
    word: "no safe lock",
};

/// Every margin holds, but something withholds the verdict.
pub const WITHHELD: State = State {
    sign: Sign::Struck,
    colour: palette::BARRED,
    word: "not safe",
};

/// Every margin holds, but the carriage stands above the mark never to climb above.
pub const ABOVE_MARK: State = State {
    sign: Sign::Wedge,
    colour: palette::BARRED,
    word: "above the mark",
};

impl State {
    /// Its colour, or the stale one for what is not known to be so any more.
    #[must_use]
    pub const fn fill(self, screen: &Screen, is_stale: bool) -> Color32 {
        egui_colour(if is_stale { screen.stale } else { self.colour })
    }
}

/// Paints a shape.
pub fn paint(painter: &Painter, at: Pos2, radius: f32, sign: Sign, fill: Color32, ink: Color32) {
    let r = radius;
    let line = Stroke::new((r * 0.2).max(1.0), ink);
    let heavy = Stroke::new((r * 0.55).max(2.0), fill);
    let ring = |inside: Color32| {
        painter.circle(at, r, inside, line);
    };
    match sign {
        Sign::Disc => ring(fill),
        Sign::Half => {
            painter.circle_stroke(at, r, line);
            painter.add(half_disc(at, r, fill));
            painter.circle_stroke(at, r, line);
        }
        Sign::Cross => {
            let d = r * 0.85;
            let under = Stroke::new(heavy.width + 2.0 * line.width, ink);
            for stroke in [under, heavy] {
                painter.line_segment([at + vec2(-d, -d), at + vec2(d, d)], stroke);
                painter.line_segment([at + vec2(-d, d), at + vec2(d, -d)], stroke);
            }
        }
        Sign::Bar => {
            ring(fill);
            let bar = Rect::from_center_size(at, vec2(r * 1.3, r * 0.5));
            painter.rect_filled(bar, 0.0, Color32::WHITE);
        }
        Sign::Query => {
            let square = Rect::from_center_size(at, vec2(r, r) * 1.7);
            painter.rect_stroke(square, 0.0, line, egui::StrokeKind::Inside);
            painter.circle_filled(at, r * 0.35, ink);
        }
        Sign::Ring => {
            painter.circle_stroke(at, r * 0.9, Stroke::new(line.width * 1.2, ink));
        }
        Sign::Dash => {
            let bar = Rect::from_center_size(at, vec2(r * 1.8, r * 0.5));
            painter.rect(bar, 0.0, fill, line, egui::StrokeKind::Inside);
        }
        Sign::Struck => {
            ring(fill);
            let d = r * 1.1;
            let under = Stroke::new(line.width * 3.0, Color32::WHITE);
            for stroke in [under, Stroke::new(line.width * 1.4, ink)] {
                painter.line_segment([at + vec2(-d, d), at + vec2(d, -d)], stroke);
            }
        }
        Sign::Wedge => {
            let wedge = vec![
                at + vec2(-r, -r * 0.8),
                at + vec2(r, -r * 0.8),
                at + vec2(0.0, r),
            ];
            painter.add(Shape::convex_polygon(wedge, fill, line));
        }
        Sign::Tyre => {
            painter.circle(at - vec2(0.0, r * 0.25), r * 0.7, fill, line);
            painter.line_segment([at + vec2(-r, r * 0.7), at + vec2(r, r * 0.7)], line);
        }
    }
}

fn half_disc(at: Pos2, radius: f32, fill: Color32) -> Shape {
    let arc = (0..=16).map(|i| {
        #[allow(clippy::cast_precision_loss)] // up to 16
        let angle = std::f32::consts::FRAC_PI_2 + std::f32::consts::PI * i as f32 / 16.0;
        pos2(at.x + radius * angle.cos(), at.y + radius * angle.sin())
    });
    Shape::convex_polygon(arc.collect(), fill, Stroke::NONE)
}

/// Shows a shape in the flow of a panel, as high as its text.
pub fn show(ui: &mut Ui, state: State, height: f32, screen: &Screen, is_stale: bool) -> Response {
    let (rect, response) = ui.allocate_exact_size(vec2(height, height), Sense::empty());
    let ink = egui_colour(if is_stale { screen.stale } else { screen.ink });
    let fill = state.fill(screen, is_stale);
    paint(
        ui.painter(),
        rect.center(),
        height * 0.36,
        state.sign,
        fill,
        ink,
    );
    response
}

#[cfg(test)]
mod tests {
    use std::collections::HashSet;

    use super::*;

    #[test]
    fn every_state_has_a_shape_of_its_own() {
        let locks = [
            LockState::NotLifting,
            LockState::NoRelease,
            LockState::NotShown,
            LockState::Strikes,
            LockState::Barred,
            LockState::Tight,
            LockState::Clear,
        ];
        let signs: HashSet<Sign> = locks.map(|state| State::from(state).sign).into();
        assert_eq!(signs.len(), locks.len());
        let here = [
            HereState::Parked,
            HereState::Meeting,
            HereState::Clear,
            HereState::Tight,
            HereState::Strikes,
            HereState::Barred,
            HereState::NotShown,
        ];
        let signs: HashSet<Sign> = here.map(|state| State::from(state).sign).into();
        assert_eq!(signs.len(), here.len());
    }
}
