//! How is the slab told: which figure passes, stops, or is not known?

mod age;
mod later;
mod lines;
mod rest;
mod thickness;

use glam::DVec2;

use super::HOLDS_ON;
use super::ages::Ages;
use super::demand::{Asker, Demand, Demands};
use super::map::SlabMap;
use super::strength::FULL_AGE_DAYS;
use crate::bay::{Bay, Side, Slab};
use crate::ground::{Date, Figure, Quantity, Said, Section, Standing, Topic};

const GOVERNS: &str =
    "the maker's manual, the anchors' maker, the local code and a licensed engineer govern";

/// What the parts of the section are worked out from.
struct Known<'a> {
    bay: &'a Bay,
    slab: &'a Slab,
    map: SlabMap,
    demands: Demands,
    ages: Ages,
    on: Option<Date>,
}

/// The section on the slab.
pub(in crate::ground) fn section(bay: &Bay, on: Option<Date>) -> Section {
    let nothing = Slab::default();
    let slab = bay.slab.as_ref().unwrap_or(&nothing);
    let demands = Demands::of(&bay.lift);
    let known = Known {
        bay,
        slab,
        map: SlabMap::of_slab(bay, slab),
        demands,
        ages: Ages::of(slab, &demands, &bay.lift.base_plate, on),
        on,
    };
    // What forbids drilling comes before anything that holes would tell.
    let mut figures = Vec::with_capacity(24);
    rest::drilling(&known, &mut figures);
    figures.extend(thickness::figures(&known));
    age::figures(&known, &mut figures);
    figures.extend(later::figure(&known, &figures));
    lines::figures(&known, &mut figures);
    rest::bit(&known, &mut figures);
    rest::pad(&known, &mut figures);
    thickness::readings(&known, &mut figures);
    let mut notes = thickness::notes(&known);
    notes.extend(rest::notes(&known));
    Section {
        topic: Topic::Slab,
        lead: lead(&known, &figures),
        figures,
        notes,
        governs: Some(GOVERNS),
    }
}

fn lead(known: &Known<'_>, figures: &[Figure]) -> Said {
    let count = |standing| figures.iter().filter(|f| f.standing == standing).count();
    let stops = figures.iter().find(|f| f.standing == Standing::Stops);
    if let Some(first) = stops {
        let more = count(Standing::Stops) - 1;
        if first.id == HOLDS_ON && more == 0 {
            let said = later::lead(known, first);
            return if count(Standing::Unknown) > 0 {
                said.and(" Besides, not all is known: see below.")
            } else {
                said
            };
        }
        let said = Said::new("This slab does not do as it is: ").and_said(first.why());
        return match more {
            0 => said.and("."),
            1 => said.and("; one more reason is below."),
            more => said.and(format!("; {more} more reasons are below.")),
        };
    }
    if known.bay.slab.is_none() {
        return "Nothing is known of the slab. Before anything is bought it must be found out how \
                thick and how strong it is where the posts stand, and what is in and under it."
            .into();
    }
    if count(Standing::Unknown) > 0 {
        return "Nothing that is known of the slab stops the lift, but not all is known: see below. \
                Nothing is drilled before that."
            .into();
    }
    if by_curve(known, known.ages.age_days) {
        return "Where the posts stand the slab is as thick and as old as is asked, and by a mean \
                curve (ACI 209R-92), not by a test of this concrete, as strong; the anchors keep off \
                its joints and edges, and nothing in or under it forbids drilling. Half of all \
                concretes lie below a mean: have a cylinder or a core of it crushed before it is \
                drilled, or wait until it is 28 days old."
            .into();
    }
    "Where the posts stand the slab is as thick, as strong and as old as is asked, the anchors \
     keep off its joints and edges, and nothing in or under it forbids drilling."
        .into()
}

/// True where the strength that is asked rests on the curve of strength by age: at less than 28
/// days.
fn by_curve(known: &Known<'_>, age_days: Option<f64>) -> bool {
    known.demands.strength.is_some() && age_days.is_some_and(|age| age < FULL_AGE_DAYS)
}

const fn post(side: Side) -> &'static str {
    match side {
        Side::Left => "left post",
        Side::Right => "right post",
    }
}

/// For ids.
const fn word(side: Side) -> &'static str {
    match side {
        Side::Left => "left",
        Side::Right => "right",
    }
}

/// "5 ft 4 in left of the door's middle and 14 ft into the bay".
fn place(said: Said, at: DVec2) -> Said {
    let side = if at.x < 0.0 { "left" } else { "right" };
    let said = said
        .near(Quantity::Length(at.x.abs()))
        .and(format!(" {side} of the door's middle and "))
        .near(Quantity::Length(at.y.abs()));
    said.and(if at.y < 0.0 {
        " in front of the door wall"
    } else {
        " into the bay"
    })
}

/// Whose word governs, as the source of a figure.
const fn source(demand: &Demand) -> &'static str {
    match demand.by {
        Asker::Manual => "the lift's manual",
        Asker::Advertised => "the lift's advertisement",
    }
}

/// Both sources where two say something; none where one does.
fn both(demand: &Demand, quantity: fn(f64) -> Quantity) -> Option<Said> {
    let (manual, other) = (demand.manual?, demand.advertised?);
    Some(
        Said::new("the manual asks ")
            .up(quantity(manual))
            .and(", the advertisement ")
            .up(quantity(other))
            .and(": the more demanding governs"),
    )
}

/// One sentence after another.
fn joined(first: Option<Said>, second: Option<Said>) -> Option<Said> {
    match (first, second) {
        (Some(mut first), Some(second)) => {
            first = first.and("; ");
            first.0.extend(second.0);
            Some(first)
        }
        (first, second) => first.or(second),
    }
}

/// A figure that passes only by what an advertisement says passes nothing.
fn by_manual(figure: Figure, demand: &Demand) -> Figure {
    if figure.standing == Standing::Passes && demand.manual_is_silent() {
        figure.undecided("ask the lift's maker: only an advertisement says what is asked")
    } else {
        figure
    }
}

#[cfg(test)]
mod tests;
