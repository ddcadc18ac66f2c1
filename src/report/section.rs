//! How are a section's figures and sentences shown in the bay's units?
//!
//! A figure with a limit is rounded against itself: a load up and what may be carried down, room
//! down and what is asked up. Where both would then read alike though one is beyond the other,
//! the standing says which holds; states are decided on unrounded values.

use super::Show;
use super::words::{plain, sentence};
use crate::bay::UnitSystem;
use crate::ground::{Bound, Figure, Part, Quantity, Said};
use crate::units::Rounding;

/// One unit and how many decimals of it are shown.
type Unit = (f64, &'static str, i32);

/// A number in steps of its unit's last decimal, rounded as asked.
fn number(si: f64, (per_unit, unit, decimals): Unit, rounding: Rounding) -> String {
    let steps = 10_f64.powi(decimals);
    let count = si / per_unit * steps;
    let nearest = count.round();
    // A thousandth of a step is noise of the conversion.
    let whole = if (count - nearest).abs() < 1e-3 {
        nearest
    } else {
        match rounding {
            Rounding::Nearest => nearest,
            Rounding::Down => count.floor(),
            Rounding::Up => count.ceil(),
        }
    };
    let value = whole / steps + 0.0;
    if !value.is_finite() {
        return "no number".into();
    }
    #[allow(clippy::cast_sign_loss)] // decimals are written above and never negative
    let text = format!("{value:.*}", decimals as usize);
    if unit.is_empty() {
        text
    } else {
        format!("{text} {unit}")
    }
}

/// A quantity in the bay's units.
pub(super) fn quantity(value: &Quantity, show: Show, rounding: Rounding) -> String {
    let imperial = show.units == UnitSystem::Imperial;
    let pick = |us: Unit, si: Unit| if imperial { us } else { si };
    let (si, unit): (f64, Unit) = match value {
        Quantity::Length(m) => {
            return match rounding {
                Rounding::Nearest => show.place(*m),
                Rounding::Down => show.room(*m),
                Rounding::Up => show.need(*m),
            };
        }
        Quantity::Area(v) => (*v, pick((0.000_645_16, "sq in", 1), (1e-6, "mm2", 0))),
        Quantity::Volume(v) => (*v, volume(*v, imperial)),
        Quantity::Mass(v) => (*v, pick((0.453_592_37, "lb", 0), (1.0, "kg", 0))),
        Quantity::Force(v) => (*v, pick((4.448_221_615_260_5, "lbf", 0), (1e3, "kN", 2))),
        Quantity::Moment(v) => (*v, moment(*v, imperial)),
        Quantity::Pressure(v) => (*v, pick((6_894.757_293_168, "psi", 0), (1e6, "MPa", 2))),
        Quantity::Subgrade(v) => (*v, pick((271_447.137_526, "psi/in", 0), (1e6, "MPa/m", 1))),
        Quantity::Angle(v) => (*v, (std::f64::consts::PI / 180.0, "deg", 1)),
        Quantity::Number(v) => (*v, (1.0, "", 3)),
        Quantity::Count(v) => (*v, (1.0, "", 0)),
        Quantity::Current(v) => (*v, (1.0, "A", 1)),
        Quantity::Voltage(v) => (*v, (1.0, "V", 1)),
        Quantity::Power(v) => (*v, pick((746.0, "hp", 1), (1e3, "kW", 2))),
        Quantity::Days(v) => (*v, (1.0, "days", 0)),
        Quantity::Day(day) => return day.to_string(),
        Quantity::Words(words) => return plain(words),
    };
    let shown = number(si, unit, rounding);
    if shown == "1 days" {
        "1 day".into()
    } else {
        shown
    }
}

/// Moments of posts in kilonewton metres, torques of bolts in newton metres.
fn moment(newton_metres: f64, imperial: bool) -> Unit {
    match (imperial, newton_metres.abs() < 1e3) {
        (true, _) => (1.355_817_948_331_4, "ft lbf", 0),
        (false, true) => (1.0, "N m", 0),
        (false, false) => (1e3, "kN m", 3),
    }
}

/// Oil in gallons or litres, concrete in cubic yards or metres.
fn volume(m3: f64, imperial: bool) -> Unit {
    match (imperial, m3 < 0.1) {
        (true, true) => (0.003_785_411_784, "gal", 1),
        (true, false) => (0.764_554_857_984, "cu yd", 2),
        (false, true) => (1e-3, "L", 1),
        (false, false) => (1.0, "m3", 2),
    }
}

/// A sentence.
pub(super) fn said(said: &Said, show: Show) -> String {
    said.0
        .iter()
        .map(|part| match part {
            Part::Words(words) => plain(words),
            Part::Quantity(value, rounding) => quantity(value, show, *rounding),
        })
        .collect()
}

/// What was found, rounded against itself; empty where it is not known.
pub(super) fn found(figure: &Figure, show: Show) -> String {
    let rounding = match &figure.limit {
        Some((Bound::AtMost, _)) => Rounding::Up,
        Some((Bound::AtLeast, _)) => Rounding::Down,
        None => figure.rounding,
    };
    figure
        .found
        .as_ref()
        .map(|value| quantity(value, show, rounding))
        .unwrap_or_default()
}

/// "at most 2500 lb", "at least 4 in"; empty where nothing is asked.
pub(super) fn asked(figure: &Figure, show: Show) -> String {
    match &figure.limit {
        Some((Bound::AtMost, limit)) => {
            format!("at most {}", quantity(limit, show, Rounding::Down))
        }
        Some((Bound::AtLeast, limit)) => {
            format!("at least {}", quantity(limit, show, Rounding::Up))
        }
        None => String::new(),
    }
}

/// Why a figure stops: starts in lower case, no full stop.
pub(super) fn why(figure: &Figure, show: Show) -> String {
    said(&figure.why(), show)
}

/// What is added to a figure's row: its note, and how to cure a stop or get what is not known.
pub(super) fn remark(figure: &Figure, show: Show) -> String {
    use crate::ground::Standing;
    let note = figure.note.as_ref().map(|note| said(note, show));
    let cure = match figure.standing {
        Standing::Unknown | Standing::Stops => figure.cure.as_deref().map(plain),
        Standing::Noted | Standing::Passes => None,
    };
    let parts: Vec<String> = [note, cure]
        .into_iter()
        .flatten()
        .map(|part| sentence(part.trim_end_matches('.')))
        .collect();
    parts.join(". ")
}

#[cfg(test)]
mod tests {
    use super::*;

    const IMPERIAL: Show = Show {
        units: UnitSystem::Imperial,
    };
    const METRIC: Show = Show {
        units: UnitSystem::Metric,
    };

    #[test]
    fn quantities_in_both_systems() {
        for (value, rounding, us, si) in [
            (
                Quantity::Force(10_000.0),
                Rounding::Up,
                "2249 lbf",
                "10.00 kN",
            ),
            (
                Quantity::Pressure(27_579_029.2),
                Rounding::Down,
                "4000 psi",
                "27.57 MPa",
            ),
            (
                Quantity::Moment(1_355.82),
                Rounding::Nearest,
                "1000 ft lbf",
                "1.356 kN m",
            ),
            (Quantity::Days(1.0), Rounding::Down, "1 day", "1 day"),
            (Quantity::Volume(0.01), Rounding::Down, "2.6 gal", "10.0 L"),
            (
                Quantity::Number(f64::NAN),
                Rounding::Up,
                "no number",
                "no number",
            ),
        ] {
            assert_eq!(quantity(&value, IMPERIAL, rounding), us);
            assert_eq!(quantity(&value, METRIC, rounding), si);
        }
    }

    #[test]
    fn a_figure_is_rounded_against_itself() {
        let load = Figure::judged(
            "load",
            "the load",
            Quantity::Mass(1000.2),
            Bound::AtMost,
            Quantity::Mass(1000.9),
        );
        assert_eq!(found(&load, METRIC), "1001 kg");
        assert_eq!(asked(&load, METRIC), "at most 1000 kg");
        assert_eq!(
            why(&load, METRIC),
            "the load is 1001 kg where at most 1000 kg is asked"
        );
    }
}
