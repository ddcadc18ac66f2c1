//! What does the vehicle meet next, and what does the shut-off bar do about it?

use super::edge::Edge;
use crate::bay::{Bay, Tie};
use crate::clearance::{Limit, PairFinding, Study};
use crate::report::{called, met_before_the_bar, relation};
use crate::solids::vehicle;
use crate::units::{Length, Rounding, both};

/// A thing by its name; of the outline's pieces where they lie, since nobody can count them.
pub(super) fn named(bay: &Bay, name: &str) -> String {
    let text = called(name);
    let Some((whole, _)) = text.split_once(" (piece ") else {
        return text;
    };
    let parts = vehicle::parts(bay);
    let Some(part) = parts.iter().find(|part| part.solid.name == name) else {
        return text;
    };
    let (low, high) = part.solid.bounds();
    let back = |y: f64, rounding| both(Length::metres(-y), bay.units, rounding);
    format!(
        "{whole}, {} to {} behind its front bumper,",
        back(high.y, Rounding::Down),
        back(low.y, Rounding::Up)
    )
}

/// What limits the rise, by the readings on the column; none where nothing is told of it.
pub(super) fn next(bay: &Bay, study: &Study) -> Option<String> {
    let edge = Edge(bay);
    match &study.limit {
        Limit::Pair(pair) => Some(pair_says(bay, pair)),
        Limit::Travel { travel_m } => Some(format!(
            "Nothing in the bay: the carriage's travel ends with the marked edge at {}",
            edge.place(*travel_m)
        )),
        Limit::Bar(pair) => Some(bar_says(bay, study, pair)),
        Limit::Undecided(pair) => {
            let from = pair.first_breach_m.or(pair.first_touch_m);
            let from = from.map_or_else(String::new, |m| {
                format!(" with the marked edge above {}", edge.met(m))
            });
            Some(format!(
                "Between {} and {} the study could not decide{from}: it counts as met",
                named(bay, &pair.moving),
                named(bay, &pair.fixed)
            ))
        }
        Limit::Withheld => None,
    }
}

fn pair_says(bay: &Bay, pair: &PairFinding) -> String {
    let edge = Edge(bay);
    let (moving, fixed) = (named(bay, &pair.moving), named(bay, &pair.fixed));
    let side = relation(pair.points_m).map_or_else(String::new, |side| format!(" {side} it"));
    let margin = both(Length::metres(pair.margin_m), bay.units, Rounding::Up);
    match (pair.first_breach_m, pair.first_touch_m) {
        (Some(short), touch) if pair.margin_m > 0.0 => {
            let touch = touch.map_or_else(String::new, |m| {
                format!(", and they touch with it at {}", edge.met(m))
            });
            format!(
                "{moving} comes too near {fixed}{side}: the room of {margin} runs short with the \
                 marked edge at {}{touch}",
                edge.met(short)
            )
        }
        (_, Some(touch)) | (Some(touch), None) => format!(
            "{moving} touches {fixed}{side} with the marked edge at {}",
            edge.met(touch)
        ),
        (None, None) => format!("{moving} comes too near {fixed}{side}"),
    }
}

/// Where the room under the bar runs short, which is before the bar is tripped.
fn bar_says(bay: &Bay, study: &Study, pair: &PairFinding) -> String {
    let edge = Edge(bay);
    let moving = named(bay, &pair.moving);
    let under = match &bay.lift.tie {
        Tie::OverheadBeam { .. } if pair.margin_m > 0.0 => {
            both(Length::metres(pair.margin_m), bay.units, Rounding::Up)
        }
        _ => String::new(),
    };
    let trips = study
        .bar
        .as_ref()
        .and_then(|bar| bar.trips_at_m)
        .map_or_else(String::new, |m| {
            format!(" It trips the bar with the edge at {}.", edge.met(m))
        });
    match pair.first_breach_m.or(pair.first_touch_m) {
        Some(m) if !under.is_empty() => format!(
            "{moving} comes too near the shut-off bar: the room of {under} under it runs short \
             with the marked edge at {}.{trips}",
            edge.met(m)
        ),
        Some(m) => format!(
            "{moving} meets the shut-off bar with the marked edge at {}.{trips}",
            edge.met(m)
        ),
        None => format!("{moving} meets the shut-off bar.{trips}"),
    }
}

/// Where the bar is tripped, what is met before, and whether something is, which the bar would not
/// stop; none without a bar.
pub(super) fn shut_off_bar(bay: &Bay, study: &Study) -> Option<(String, bool)> {
    let bar = study.bar.as_ref()?;
    let by = bar
        .by
        .as_deref()
        .map_or_else(|| "the vehicle".into(), |name| named(bay, name));
    let mut text = bar.trips_at_m.map_or_else(
        || "not tripped within the carriage's travel".into(),
        |m| {
            format!(
                "{by} trips it with the marked edge at {}, at the earliest",
                Edge(bay).met(m)
            )
        },
    );
    if let Some((moving, fixed)) = &bar.met_before {
        let (moving, fixed) = (named(bay, moving), named(bay, fixed));
        text.push_str(&met_before_the_bar(&moving, &fixed, bar.is_surely_before));
    }
    Some((text, bar.met_before.is_some()))
}
