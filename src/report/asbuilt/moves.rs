//! Which post to move which way, for a person with a mallet.

use super::AsBuiltReport;
use crate::asbuilt::{COVERAGE, Finding, Planned, PostPlace, index};
use crate::bay::{Side, UnitSystem};
use crate::report::words::list;
use crate::units::{Length, Rounding, both, feet_inches, millimetres};

/// Less than half of the finest graduation can't be tapped, metres.
pub(super) const FINEST_M: f64 = 0.0254 / 32.0;

/// A place known no better than to a quarter of an inch is neither right nor wrong. Own choice.
pub(super) const TOO_WIDE_M: f64 = 0.0254 / 4.0;

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

    /// A height of shims: to 1/32 in or a tenth of a millimetre, nearest; what is less than half of the
    /// one, but something, is told so.
    pub(super) fn fine(&self, metres: f64) -> String {
        self.finely(metres, Rounding::Nearest)
    }

    /// A limit of the manual, never more than it is.
    pub(super) fn limit(&self, metres: f64) -> String {
        self.finely(metres, Rounding::Down)
    }

    fn finely(&self, metres: f64, rounding: Rounding) -> String {
        let value = Length::metres(metres.abs());
        let metric = millimetres(value, 1, rounding);
        // Rounded to nothing, what is there would be told as not there.
        let is_something = value.m() >= 0.000_05 && value.m() < 0.5 * 0.0254 / 32.0;
        let imperial = if is_something {
            "less than 1/64 in".to_owned()
        } else {
            feet_inches(value, 32, rounding)
        };
        match self.planned.units {
            UnitSystem::Imperial => format!("{imperial} ({metric})"),
            UnitSystem::Metric => format!("{metric} ({imperial})"),
        }
    }

    /// The thickness of a leaf of a feeler gauge: to a hundredth of a millimetre or a thousandth of an
    /// inch.
    pub(super) fn leaf(&self, metres: f64) -> String {
        let metric = millimetres(Length::metres(metres), 2, Rounding::Nearest);
        let imperial = format!("{:.3} in", metres / 0.0254);
        match self.planned.units {
            UnitSystem::Imperial => format!("{imperial} ({metric})"),
            UnitSystem::Metric => format!("{metric} ({imperial})"),
        }
    }

    /// How far a post is to be moved and turned back, in x, in y and at the corner of its plate; 0
    /// where it may stay. None where it is not known well enough for either.
    pub(super) fn moves(&self, place: &PostPlace) -> Option<[f64; 3]> {
        // Marks that hang on what nobody measured are nowhere to move a post to.
        if self.built.is_open(place.side, self.measured) || !self.planned.not_measured.is_empty() {
            return None;
        }
        let arm = self.built.arm_m;
        let known = [
            (place.off_m.x, place.off_sd_m.x),
            (place.off_m.y, place.off_sd_m.y),
            (place.turn_rad * arm, place.turn_sd_rad * arm),
        ];
        let slips = [place.slip_m.x, place.slip_m.y, place.slip_turn_rad * arm];
        if known.iter().any(|(_, sd)| COVERAGE * sd > TOO_WIDE_M)
            || slips.iter().any(|slip| *slip > TOO_WIDE_M)
            // A slip that no other reading shows has no bound: what is told is moved by it.
            || self.no_bound(place.side).contains(&true)
        {
            return None;
        }
        let tells = |(off, sd): (f64, f64)| {
            let tells = off.abs() > FINEST_M && off.abs() > COVERAGE * sd;
            if tells { off } else { 0.0 }
        };
        let [mut x, y, turn] = known.map(tells);
        // What walls tell of a post by itself may be little, where tapes between the posts tell much: then
        // each goes to where it most likely belongs, and both together to their distance.
        if self.wider().is_some() && place.off_m.x.abs() > FINEST_M {
            x = place.off_m.x;
        }
        Some([x, y, turn])
    }

    /// How much too far apart the posts stand across the bay, or too close (negative), where the readings
    /// tell so.
    pub(super) fn wider(&self) -> Option<f64> {
        let square = &self.built.square;
        let off = square.wider_m.abs();
        (off > FINEST_M && off > COVERAGE * square.wider_sd_m).then_some(square.wider_m)
    }

    /// What to do with a post, in one sentence.
    pub(super) fn move_of(&self, place: &PostPlace) -> String {
        if !self.planned.not_measured.is_empty() {
            return "where it belongs is not known: its marks hang on what was not measured (above)"
                .into();
        }
        let Some([x, y, turn]) = self.moves(place) else {
            return if self.built.is_open(place.side, self.measured) {
                "don't move it yet, and don't leave it either: readings that its place hangs on \
                 contradict each other (above)"
                    .into()
            } else {
                "its place is not known well enough to move it or to leave it: take more readings that \
                 check each other, or finer ones"
                    .into()
            };
        };
        let mut ways = Vec::new();
        if x.abs() > 0.0 {
            let to = if x > 0.0 { "left" } else { "right" };
            ways.push(format!("{} to the {to}", self.length(x)));
        }
        if y.abs() > 0.0 {
            let to = if y > 0.0 {
                "toward the door"
            } else {
                "into the bay"
            };
            ways.push(format!("{} {to}", self.length(y)));
        }
        let mut says = String::new();
        if !ways.is_empty() {
            says = format!("move its plate {}", list(&ways));
        }
        if turn.abs() > 0.0 {
            let half = Planned::of(self.planned).half_m.y;
            let edge = turn / self.built.arm_m * half;
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
                self.fine(edge)
            );
        }
        let first = self.before_leaving(place.side);
        match (says.is_empty(), first) {
            (true, None) => {
                "it stands on its marks as nearly as these readings can tell: leave it".into()
            }
            (true, Some(first)) => format!(
                "its plate stands on its marks as nearly as these readings can tell; before you are \
                 done with it, {first}"
            ),
            (false, None) => says,
            (false, Some(first)) => format!("{says}; then {first}"),
        }
    }

    /// What is to be done about a post's plumb before it is left where it stands; none where nothing
    /// of it is open.
    fn before_leaving(&self, side: Side) -> Option<String> {
        let of = |wanted: fn(Finding, Side) -> bool| {
            let mut findings = self.findings.iter();
            findings.any(|one| wanted(*one, side))
        };
        let unread: Vec<&str> = [(true, "across the bay"), (false, "along the bay")]
            .into_iter()
            .filter(|(across, _)| {
                let unread = Finding::PlumbNotRead(side, *across);
                self.findings.contains(&unread)
            })
            .map(|(_, way)| way)
            .collect();
        if !unread.is_empty() {
            let ways = list(
                &unread
                    .iter()
                    .map(|way| (*way).to_owned())
                    .collect::<Vec<_>>(),
            );
            return Some(format!("plumb its column {ways}"));
        }
        if of(|one, side| {
            matches!(one, Finding::PlumbDiffers(of, _) | Finding::PlumbAgainstLevels(of)
                | Finding::PlateOutOfPlumb(of, ..) | Finding::MaybeOutOfPlumb(of, ..) if of == side)
        }) {
            return Some("clear up whether its column is plumb (above)".into());
        }
        if of(|one, side| matches!(one, Finding::OutOfPlumb(of, ..) if of == side)) {
            return Some("shim its column plumb, and plumb it again (above)".into());
        }
        if of(|one, side| matches!(one, Finding::Rocks(of, _) if of == side)) {
            return Some(
                "fill the gaps that its plate rocks on, and plumb its column again (above)".into(),
            );
        }
        if of(
            |one, side| matches!(one, Finding::MayRock(of, _) | Finding::FeltAgainstLevels(of, ..) if of == side),
        ) {
            return Some("see that its plate does not rock (above)".into());
        }
        None
    }

    /// Of how far off across the bay, into it and turned a slip of the tape can make a post, which has
    /// no bound: where nothing checks a reading that it hangs on.
    pub(super) fn no_bound(&self, side: Side) -> [bool; 3] {
        let hangs_on = self.built.held[index(side)].hangs_on();
        hangs_on.fold([false; 3], |any, (_, moves)| {
            [0, 1, 2].map(|i| any[i] || moves[i])
        })
    }

    /// What each tape should show once the posts are moved as told; none where nothing is to be moved,
    /// or it is not known what.
    pub(super) fn after_moves(&self) -> Option<Vec<f64>> {
        let [left, right] = &self.built.posts;
        let moves = [self.moves(left)?, self.moves(right)?].concat();
        if moves.iter().all(|by| by.abs() <= 0.0) {
            return None;
        }
        let mut unknowns = self.built.unknowns.clone();
        for (unknown, by) in unknowns.iter_mut().zip(&moves) {
            *unknown -= by;
        }
        let planned = Planned::of(self.planned);
        let tapes = self.measured.tape.iter();
        Some(
            tapes
                .map(|taken| planned.row(taken.over, &unknowns).computed)
                .collect(),
        )
    }
}
