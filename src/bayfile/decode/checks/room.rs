//! Do the ceiling, the room and the door opening go together?

use super::{NOISE_M, both};
use crate::bay::{Ceiling, Garage, Run};
use crate::bayfile::decode::fields::Fields;
use crate::units::Length;

/// The ceiling against the room and the opening; none when they don't go together.
pub(in crate::bayfile::decode) fn ceiling(f: &Fields<'_>, garage: &Garage) -> Option<()> {
    let fault = |message: &str, label: &str, help: &str| {
        f.error("ceiling", message, label, help);
        None
    };
    match &garage.ceiling {
        Ceiling::Gable {
            ridge_along,
            eaves,
            ridge,
            ridge_offset,
        } => {
            if ridge <= eaves {
                return fault(
                    "the gable's ridge is not higher than its eaves",
                    "`ridge` must be more than `eaves`",
                    "swap the two, or write `Flat(height: ..)`",
                );
            }
            let span = match ridge_along {
                Run::DoorToBack => garage.width,
                Run::SideToSide => garage.depth,
            };
            if ridge_offset.abs() * 2.0 >= span {
                return fault(
                    "the ridge lies outside the room",
                    "`ridge_offset` must stay below half the room",
                    "measure it from the room's middle",
                );
            }
        }
        Ceiling::Stepped { steps } => {
            let starts_at_door = steps.first().is_some_and(|s| s.from.m() <= NOISE_M);
            let rises = steps.windows(2).all(|p| p[0].from < p[1].from);
            let within = steps.iter().all(|s| s.from < garage.depth);
            if !(starts_at_door && rises && within) {
                return fault(
                    "the steps don't run from the door to the back",
                    "expected the first step at 0, each further one behind it, all inside the room",
                    "list the steps in order: `(from: \"0 in\", height: ..)` first",
                );
            }
        }
        Ceiling::Flat { .. } | Ceiling::Sloped { .. } => {}
    }
    let over_door = height_over_door(garage);
    if garage.opening.height.m() > over_door.m() + NOISE_M {
        f.error(
            "opening.height",
            &format!(
                "the door opening of {} reaches above the ceiling, which is {} high there",
                both(garage.opening.height),
                both(over_door)
            ),
            "the opening must fit below the ceiling at the door wall",
            "check the opening's height and the ceiling",
        );
        return None;
    }
    Some(())
}

/// The lowest ceiling over the opening, at the door wall.
fn height_over_door(garage: &Garage) -> Length {
    let half = garage.opening.width * 0.5;
    // From the left wall to the opening's two edges.
    let middle = garage.width * 0.5 + garage.opening.offset;
    let edges = [middle - half, middle + half];
    match &garage.ceiling {
        Ceiling::Flat { height } => *height,
        Ceiling::Sloped {
            run: Run::DoorToBack,
            first,
            ..
        } => *first,
        Ceiling::Sloped {
            run: Run::SideToSide,
            first,
            last,
        } => {
            let at = |x: Length| *first + (*last - *first) * (x / garage.width);
            at(edges[0]).min(at(edges[1]))
        }
        Ceiling::Gable {
            ridge_along: Run::SideToSide,
            eaves,
            ..
        } => *eaves,
        Ceiling::Gable {
            ridge_along: Run::DoorToBack,
            eaves,
            ridge,
            ridge_offset,
        } => {
            let crest = garage.width * 0.5 + *ridge_offset;
            let at = |x: Length| {
                let share = if x < crest {
                    x / crest
                } else {
                    (garage.width - x) / (garage.width - crest)
                };
                *eaves + (*ridge - *eaves) * share
            };
            at(edges[0]).min(at(edges[1]))
        }
        Ceiling::Stepped { steps } => steps.first().map_or(Length::ZERO, |s| s.height),
    }
}
