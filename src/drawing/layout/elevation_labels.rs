//! What is written about an elevation: widths below, what things are and how near they come.

use glam::{DVec2, DVec3};

use super::Made;
use super::draw::Running;
use super::elevation::around;
use super::elevation_picture::Painted;
use super::plan::Telling;
use super::things::numbered;
use crate::clearance::LockFinding;
use crate::drawing::outline::Look;
use crate::drawing::sheet::{Callout, Mark, View};
use crate::report::{called, on_one_line, short_name};
use crate::solids::{Role, Solid};
use crate::units::{Length, Rounding, both};

pub(super) fn widths(view: &mut View, made: &Made<'_>, look: Look, all: &[Solid]) {
    let bay = made.order.bay;
    let at = |letter: &str| made.out.point(letter).map(|point| point.at_m);
    let (Some(a), Some(b), Some(g)) = (at("A"), at("B"), at("G")) else {
        return;
    };
    let vehicle = around(all, |role| matches!(role, Role::Body | Role::Mirror));
    match look {
        Look::Front => {
            let mut x = Running::from(a.x, bay.units);
            x.put("left wall", a.x, 0.0);
            x.put("right wall", b.x, 0.0);
            x.put("lift's middle", g.x, 0.0);
            for (letter, what) in [("K", "left post's face"), ("L", "right post's face")] {
                if let Some(point) = at(letter) {
                    x.put(what, point.x, 0.0);
                }
            }
            if let Some((low, high)) = vehicle {
                x.put("vehicle, left", low.x, low.z);
                x.put("vehicle, right", high.x, low.z);
            }
            view.bottom = x.done();
        }
        Look::Side | Look::Plan => {
            let mut y = Running::from(0.0, bay.units);
            y.put("door wall", 0.0, 0.0);
            y.put("post line", g.y, 0.0);
            y.put("back wall", bay.garage.depth.m(), 0.0);
            if let Some((low, high)) = vehicle {
                y.put("vehicle, door end", low.y, low.z);
                y.put("vehicle, far end", high.y, low.z);
            }
            if let Some((low, high)) = around(all, |role| role == Role::DoorFitting)
                && high.y > 0.3
            {
                y.put("door's fittings, far end", high.y, low.z);
            }
            view.bottom = y.done();
        }
    }
}

pub(super) fn callouts(
    view: &mut View,
    made: &Made<'_>,
    painted: &Painted<'_>,
    (look, all): (Look, &[Solid]),
    lock: Option<&LockFinding>,
    telling: Telling,
) {
    let (bay, study) = (made.order.bay, made.order.study);
    let units = bay.units;
    let named = |name: &str| all.iter().find(|one| one.name == name);
    let room = |metres: f64| both(Length::metres(metres), units, Rounding::Down);
    let near = lock.and_then(|lock| lock.near.as_ref());
    if let Some(near) = near {
        let says = format!(
            "least room at this lock, at worst: {} from {} to {} ({} asked)",
            room(near.clearance_m),
            called(&near.moving),
            called(&near.fixed),
            both(Length::metres(near.margin_m), units, Rounding::Up)
        );
        let at = named(&near.fixed).or_else(|| named(&near.moving));
        if let Some(at) = at {
            let moving = named(&near.moving).map_or(DVec3::ZERO, middle);
            let (low, high) = at.bounds();
            view.callouts
                .push(Callout::leading(look.flat(moving.clamp(low, high)), says));
        }
    }
    let standing = study.standing.iter();
    if let Some(least) = standing.min_by(|a, b| a.worst_m.total_cmp(&b.worst_m))
        && let Some(part) = named(&least.part)
    {
        view.callouts.push(Callout::leading(
            look.flat(part.support(DVec3::Z)),
            if least.worst_m < 0.0 {
                format!(
                    "the standing lift, at worst: {} goes into {} by {}",
                    called(&least.part),
                    called(&least.other),
                    both(Length::metres(-least.worst_m), units, Rounding::Up)
                )
            } else {
                format!(
                    "least room of the standing lift, at worst: {} from {} to {}",
                    room(least.worst_m),
                    called(&least.part),
                    called(&least.other)
                )
            },
        ));
    }
    for one in all {
        let is_named = match one.role {
            Role::Obstacle(_) => telling == Telling::InWords,
            Role::TieBeam | Role::ShutOffBar | Role::PowerUnit(_) => true,
            Role::Opener => one.name.starts_with("opener/head") || one.name.ends_with("rail"),
            _ => false,
        };
        if is_named {
            let name = on_one_line(&short_name(&one.name));
            let (at_m, says) = match painted.seen_at(view, one) {
                Some(at_m) => (at_m, name),
                None => (look.flat(middle(one)), format!("{name}, hidden here")),
            };
            view.callouts.push(Callout::leading(at_m, says));
        }
    }
    if telling == Telling::ByNumber {
        let numbers = numbered(all).map(|(number, one)| Mark {
            at_m: painted
                .seen_at(view, one)
                .unwrap_or_else(|| look.flat(middle(one))),
            letter: number.to_string(),
            clear_m: 0.0,
            may_be_left: true,
        });
        let numbers: Vec<Mark> = numbers.collect();
        view.marks.extend(numbers);
    }
}

fn middle(one: &Solid) -> DVec3 {
    let (low, high) = one.bounds();
    let flat: DVec2 = ((low + high) * 0.5).truncate();
    flat.extend((low.z + high.z) * 0.5)
}
