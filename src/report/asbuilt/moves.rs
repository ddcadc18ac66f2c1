//! Which post to move which way, for a person with a mallet.

use super::AsBuiltReport;
use crate::asbuilt::{COVERAGE, Planned, PostPlace};
use crate::bay::Side;
use crate::report::words::list;
use crate::units::{Length, Rounding, both};

/// Less than half of the finest graduation can't be tapped, metres.
const FINEST_M: f64 = 0.0254 / 32.0;

pub(super) const fn post(side: Side) -> &'static str {
    match side {
        Side::Left => "left post",
        Side::Right => "right post",
    }
}

impl AsBuiltReport<'_> {
    /// A length in both systems, to 1/16 in and 1 mm.
    pub(super) fn length(&self, metres: f64) -> String {
        both(
            Length::metres(metres.abs()),
            self.planned.units,
            Rounding::Nearest,
        )
    }

    /// The same, never less than it is.
    pub(super) fn at_most(&self, metres: f64) -> String {
        both(
            Length::metres(metres.abs()),
            self.planned.units,
            Rounding::Up,
        )
    }

    /// What to do with a post, in one sentence; where it may stay, why.
    pub(super) fn move_of(&self, place: &PostPlace) -> (bool, String) {
        let tells = |off: f64, sd: f64| off.abs() > FINEST_M && off.abs() > COVERAGE * sd;
        let mut ways = Vec::new();
        let (off, sd) = (place.off_m, place.off_sd_m);
        if tells(off.x, sd.x) {
            let to = if off.x > 0.0 { "left" } else { "right" };
            ways.push(format!("{} to the {to}", self.length(off.x)));
        }
        if tells(off.y, sd.y) {
            let to = if off.y > 0.0 {
                "toward the door"
            } else {
                "into the bay"
            };
            ways.push(format!("{} {to}", self.length(off.y)));
        }
        let half = Planned::of(self.planned).half_m.y;
        let (edge, edge_sd) = (place.turn_rad * half, place.turn_sd_rad * half);
        let mut says = String::new();
        if !ways.is_empty() {
            says = format!("move its plate {}", list(&ways));
        }
        if tells(edge, edge_sd) {
            let (way, to, back) = if edge > 0.0 {
                ("clockwise", "right", "left")
            } else {
                ("counter-clockwise", "left", "right")
            };
            if !says.is_empty() {
                says += "; then ";
            }
            says += &format!(
                "turn it {way} seen from above, until its front edge has gone {} to the {to} and its \
                 rear edge as far to the {back}",
                self.length(edge)
            );
        }
        if says.is_empty() {
            let says = "it stands on its marks as nearly as these readings can tell";
            return (false, format!("{says}: leave it"));
        }
        (true, says)
    }
}
