//! Do the ceiling, the room and the door opening go together?

use super::{NOISE_M, both};
use crate::bay::{Ceiling, Door, Garage, ObstacleShape, Run};
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

/// So little of its last panel a sectional door hardly needs: one panel less would nearly cover the
/// opening, and the door reaches nearly a panel less into the bay.
const HARDLY_NEEDED: f64 = 0.1;

/// Warns of a sectional door whose number of panels hangs on a little of the panels' height.
pub(in crate::bayfile::decode) fn panels(f: &Fields<'_>, garage: &Garage) {
    let Door::Sectional(door) = &garage.door else {
        return;
    };
    let ratio = garage.opening.height / door.panel_height;
    let needed = ratio - (ratio - 1e-9).floor();
    if needed > 2e-9 && needed < HARDLY_NEEDED {
        let count = ratio.ceil();
        f.cx.warning(
            f.span("door.panel_height"),
            &format!(
                "at this height the door has {count:.0} panels; if each were a little higher, {:.0} \
                 would do",
                count - 1.0
            ),
            "hinge to hinge",
            "count the door's panels: their number times this height is the door's height",
        );
    }
}

/// Warns of things that lie wholly outside the room, in plan or above every ceiling: they can't
/// matter there, so a digit has probably slipped.
pub(in crate::bayfile::decode) fn outside(f: &Fields<'_>, garage: &Garage) {
    let middle = -garage.opening.offset.m();
    let half = garage.width.m() * 0.5;
    let low = [middle - half, 0.0];
    let high = [middle + half, garage.depth.m()];
    let top = highest(&garage.ceiling);
    for thing in &garage.obstacles {
        let (from, to) = extent(&thing.shape);
        let beside = (0..2).any(|axis| to[axis] < low[axis] || from[axis] > high[axis]);
        if beside || from[2] > top {
            f.cx.warning(
                f.span("obstacles"),
                &format!("\"{}\" lies wholly outside the room", thing.name),
                "among these",
                "check its place: where it is written it can't be met",
            );
        }
    }
}

fn highest(ceiling: &Ceiling) -> f64 {
    match ceiling {
        Ceiling::Flat { height } => height.m(),
        Ceiling::Sloped { first, last, .. } => first.max(*last).m(),
        Ceiling::Gable { eaves, ridge, .. } => eaves.max(*ridge).m(),
        Ceiling::Stepped { steps } => steps.iter().map(|step| step.height.m()).fold(0.0, f64::max),
    }
}

/// Lowest and highest corner of a box about an obstacle, heights above the floor below it.
fn extent(shape: &ObstacleShape) -> ([f64; 3], [f64; 3]) {
    match shape {
        ObstacleShape::Box {
            x,
            y,
            bottom,
            width,
            depth,
            height,
            ..
        } => {
            // However it is turned.
            let half = width.m().hypot(depth.m()) * 0.5;
            (
                [x.m() - half, y.m() - half, bottom.m()],
                [x.m() + half, y.m() + half, bottom.m() + height.m()],
            )
        }
        ObstacleShape::Cylinder { from, to, diameter } => {
            let radius = diameter.m() * 0.5;
            (
                std::array::from_fn(|i| from[i].min(to[i]).m() - radius),
                std::array::from_fn(|i| from[i].max(to[i]).m() + radius),
            )
        }
    }
}
