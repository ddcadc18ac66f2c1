//! Which figures tell how the pads are set?

use super::pads::PadSet;
use super::section::id_of;
use super::words;
use super::{Pads, is_told};
use crate::bay::{Bay, Corner};
use crate::clearance::Withheld;
use crate::ground::{Bound, Clearances, Figure, Quantity, Standing};
use crate::units::{self, Rounding};

/// Less than this is level, metres.
pub(super) const LEVEL_M: f64 = 0.0005;

pub(super) fn figures(bay: &Bay, found: &Clearances<'_>, pads: &Pads) -> Vec<Figure> {
    let mut figures = vec![room(found, pads)];
    let raises = bay.parking.pad_raise;
    if raises.iter().all(|raise| *raise == raises[0]) {
        let set = pads.as_set[0].as_ref();
        figures.push(raised(
            bay,
            "pads.set",
            "all four pads raised",
            raises[0].m(),
            set,
        ));
    } else {
        figures.extend(Corner::ALL.map(|corner| {
            let index = corner.index();
            raised(
                bay,
                format!("pads.{}", id_of(corner)),
                format!("{} pad raised", corner.name()),
                raises[index].m(),
                pads.as_set[index].as_ref(),
            )
        }));
    }
    figures.push(level(bay, pads));
    figures
}

/// Room for the pads to go under.
fn room(found: &Clearances<'_>, pads: &Pads) -> Figure {
    let (corner, room_m) = pads.room;
    let figure = Figure::judged(
        "pads.room",
        format!("room for pads to go under ({})", corner.name()),
        Quantity::Length(room_m),
        Bound::AtLeast,
        Quantity::Length(0.0),
    );
    if room_m > 0.0 {
        return figure;
    }
    let figure = figure.stopping("screw the pad down, take off its adapters, or use a lower pad");
    let told = is_told(found, |reason| {
        matches!(reason, Withheld::PadStartsTooHigh { .. })
    });
    if told { figure.told() } else { figure }
}

/// What a pad is raised, and with what.
fn raised(
    bay: &Bay,
    id: impl Into<std::borrow::Cow<'static, str>>,
    what: impl Into<std::borrow::Cow<'static, str>>,
    raise_m: f64,
    set: Option<&PadSet>,
) -> Figure {
    let figure = Figure::noted(id, what, Quantity::Length(raise_m));
    let Some(set) = set else {
        let screw = bay.lift.pad.screw_travel;
        let screw = units::length(screw, bay.units, Rounding::Down);
        return figure.undecided(format!(
            "no adapter of this lift makes that with its {screw} of screw: write in the file what \
             the pads are really raised, or the adapter that does it"
        ));
    };
    let mut note = words::setting(set);
    if set.adapters_m.len() > 1 {
        note = note.and(": stacked adapters");
        return figure.note(note).undecided(
            "look in the lift's manual whether adapters may be stacked, or use one adapter that \
             does it alone",
        );
    }
    Figure {
        standing: Standing::Passes,
        ..figure
    }
    .note(note)
}

/// How the body stands on them.
fn level(bay: &Bay, pads: &Pads) -> Figure {
    let figure = Figure::noted(
        "pads.level",
        "body out of level on the pads",
        Quantity::Length(pads.out_of_level_m),
    )
    .rounded(Rounding::Up);
    let is_set = pads.as_set.iter().all(Option::is_some);
    if pads.out_of_level_m < LEVEL_M && is_set {
        return figure;
    }
    figure.note(
        words::level(&pads.level, bay)
            .and("; carriages level, and of each adapter height one for every pad"),
    )
}
