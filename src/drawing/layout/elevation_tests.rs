//! Do the elevations show what limits the rise, its height, and what is said of each thing?

use glam::DVec2;

use super::tests::{DAY, check, order, scenes};
use super::*;
use crate::clearance::study_on;
use crate::drawing::palette::paper::WARN;
use crate::drawing::sheet::{Dash, Item, LEADER, Layer, Shape};
use crate::solids::list::solids;
use crate::solids::{Layer as SolidLayer, Role, Solid};
use crate::units::{Length, Rounding, both};

fn scene(wanted: &str) -> Bay {
    let mut scenes = scenes().into_iter();
    let wanted = format!("/{wanted}.ron");
    scenes.find(|(name, _)| name.ends_with(&wanted)).unwrap().1
}

fn drawn_solids(bay: &Bay, study: &Study) -> Vec<Solid> {
    let lock = study.highest_safe_lock.or(study.highest_clear_lock);
    let travel_m = lock.map_or(0.0, |lock| study.locks[lock - 1].travel_m);
    let door = match study.headline_door {
        DoorState::Open => DoorTravel::Open,
        DoorState::Shut | DoorState::Running => DoorTravel::Shut,
    };
    solids(bay, door, travel_m).unwrap()
}

/// Every elevation of these bays, with its bay, its study, and what its rooms end on.
fn elevations(
    bays: impl IntoIterator<Item = (String, Bay)>,
    mut see: impl FnMut(&str, &Bay, Look, &View, &[Solid], &[String]),
) {
    for (name, bay) in bays {
        let study = study_on(&bay, Some(DAY)).unwrap();
        let order = order(&bay, &study, Paper::A4);
        let made = Made::new(&order);
        let all = drawn_solids(&bay, &study);
        let lock = study.highest_safe_lock.or(study.highest_clear_lock);
        for look in [Look::Side, Look::Front] {
            let (view, ..) = elevation::view(&made, look, Telling::InWords).unwrap();
            let rooms = lock.map_or_else(Vec::new, |lock| {
                elevation_room::rooms(&made, look, &study.locks[lock - 1])
            });
            let ends = rooms.iter().map(|room| room.pair.fixed.clone());
            see(&name, &bay, look, &view, &all, &ends.collect::<Vec<_>>());
        }
    }
}

fn bounds(shape: &Shape) -> (DVec2, DVec2) {
    match shape {
        Shape::Polygon { points, .. } => {
            let low = points.iter().copied().reduce(DVec2::min).unwrap();
            (low, points.iter().copied().reduce(DVec2::max).unwrap())
        }
        Shape::Circle { middle, radius, .. } => (*middle - *radius, *middle + *radius),
        _ => (DVec2::INFINITY, DVec2::NEG_INFINITY),
    }
}

fn is_about(shape: &Shape, look: Look, one: &Solid) -> bool {
    let (low, high) = one.bounds();
    let (l, h) = bounds(shape);
    let close = |a: DVec2, b: DVec2| (a - b).abs().max_element() < 1e-4;
    close(l, look.flat(low)) && close(h, look.flat(high))
}

fn fill(item: &Item) -> Option<crate::drawing::palette::Colour> {
    match item.shape {
        Shape::Polygon { fill, .. } | Shape::Circle { fill, .. } => fill,
        _ => None,
    }
}

#[test]
fn what_a_room_ends_on_is_seen_whatever_stands_before_it() {
    let (mut seen, mut doors) = (0, 0);
    elevations(scenes(), |name, _, look, view, all, ends| {
        let last = view.items.iter().rposition(|item| fill(item).is_some());
        for one in all.iter().filter(|one| ends.contains(&one.name)) {
            if one.layer() == SolidLayer::Shell {
                continue;
            }
            let mut above = view.items[last.unwrap() + 1..].iter();
            let is_there = above.any(|item| is_about(&item.shape, look, one));
            assert!(is_there, "{name}, {look:?}: {}", one.name);
            seen += 1;
            doors += usize::from(matches!(one.role, Role::DoorPanel | Role::Opener));
        }
    });
    assert!(seen > 20 && doors > 4, "{seen}, {doors}");
}

#[test]
fn the_height_of_what_limits_is_among_the_heights() {
    let mut told = 0;
    elevations(scenes(), |name, bay, look, view, all, ends| {
        for one in all.iter().filter(|one| ends.contains(&one.name)) {
            let low = one.bounds().0.z;
            let hangs = matches!(one.role, Role::Obstacle(_) | Role::DoorPanel) && low > 0.35;
            let reads = both(Length::metres(low), bay.units, Rounding::Down);
            let mut ticks = view.left.iter();
            let is_told = ticks.any(|tick| tick.what.ends_with(", lowest") && tick.reads == reads);
            assert!(!hangs || is_told, "{name}, {look:?}: {}", one.name);
            told += usize::from(hangs);
        }
    });
    assert!(told > 5, "{told}");
    for (name, what) in [
        ("camper-under-ties", "collar tie 1, 2, 3, 4, lowest"),
        ("light-in-the-way", "strip light, lowest"),
        ("barred-way-up", "sliding door track, lowest"),
        ("tall-pickup", "door's top bracket, lowest"),
    ] {
        let mut is_told = false;
        elevations([(name.into(), scene(name))], |_, _, _, view, _, _| {
            is_told |= view.left.iter().any(|tick| tick.what == what);
        });
        assert!(is_told, "{name}: {what}");
    }
}

#[test]
fn a_leader_ends_where_its_thing_is_seen_and_only_else_it_is_called_hidden() {
    let (mut seen, mut hidden) = (0, 0);
    let mut bays = scenes();
    // A thing wholly behind the vehicle's body, seen from the door.
    let (_, mut bay) = bays[0].clone();
    let mut behind = bay.garage.obstacles.first().cloned();
    if behind.is_none() {
        behind = scene("short-columns").garage.obstacles.first().cloned();
    }
    let mut behind = behind.unwrap();
    behind.name = "small chest".into();
    let off = Length::metres;
    behind.shape = crate::bay::ObstacleShape::Box {
        x: off(0.0),
        y: off(bay.garage.depth.m() - 0.2),
        bottom: off(1.2),
        width: off(0.1),
        depth: off(0.1),
        height: off(0.1),
        turned: crate::units::Angle::degrees(0.0),
    };
    bay.garage.obstacles.push(behind);
    bays.push(("a small chest".into(), bay));
    elevations(bays, |name, _, look, view, all, _| {
        for one in all {
            let says = crate::report::short_name(&one.name);
            let mut callouts = view.callouts.iter();
            let Some(callout) = callouts.find(|callout| {
                callout.letter.is_none() && callout.says.trim_end_matches(", hidden here") == says
            }) else {
                continue;
            };
            let at = callout.at_m;
            let holds = |item: &&Item| match &item.shape {
                Shape::Polygon { points, .. } => {
                    let next = points.iter().cycle().skip(1);
                    let mut sides = points.iter().zip(next);
                    sides.all(|(&a, &b)| (b - a).perp_dot(at - a) > 0.0)
                }
                Shape::Circle { middle, radius, .. } => at.distance(*middle) < *radius,
                _ => false,
            };
            let mut filled = view.items.iter().filter(|item| fill(item).is_some());
            let top = filled.rfind(holds);
            let own = top.is_some_and(|item| is_about(&item.shape, look, one));
            // What stands before the vehicle is a broken outline, which hides nothing.
            let is_broken = matches!(one.role, Role::PowerUnit(_));
            // Of things of one outline behind each other only the first is seen.
            let (low, high) = one.bounds();
            let twin = all
                .iter()
                .filter(|other| other.name != one.name)
                .any(|other| {
                    let (l, h) = other.bounds();
                    let off = [
                        look.flat(l) - look.flat(low),
                        look.flat(h) - look.flat(high),
                    ];
                    off.into_iter().all(|off| off.abs().max_element() < 1e-4)
                });
            let is_hidden = callout.says.ends_with(", hidden here");
            let is_right = own != is_hidden || is_broken || twin;
            assert!(is_right, "{name}, {look:?}: {says}");
            seen += usize::from(own);
            hidden += usize::from(is_hidden);
        }
    });
    assert!(seen > 30 && hidden > 0, "{seen}, {hidden}");
    for name in ["anchors-on-paper", "coupe-full-rise", "barred-way-up"] {
        elevations([(name.into(), scene(name))], |_, _, look, view, _, _| {
            let mut callouts = view.callouts.iter();
            let hidden = callouts.find(|callout| callout.says.contains("hidden here"));
            assert!(look == Look::Side || hidden.is_none(), "{name}: {hidden:?}");
        });
    }
}

#[test]
fn a_leader_ends_where_most_of_its_thing_is_seen() {
    let bay = scene("short-columns");
    elevations([(String::new(), bay)], |_, _, look, view, all, _| {
        if look == Look::Front {
            return;
        }
        let body = all.iter().filter(|one| one.role == Role::Body);
        let far = body.map(|one| one.bounds().1.y).fold(0.0, f64::max);
        let mut callouts = view.callouts.iter();
        let shelf = callouts.find(|one| one.says == "parts shelf").unwrap();
        assert!(shelf.at_m.x > far, "{shelf:?}");
    });
}

#[test]
fn no_broken_outline_of_the_door_pokes_into_the_ceiling() {
    let mut seen = 0;
    for name in ["tall-pickup", "anchors-on-paper", "door-meets-post"] {
        elevations([(name.into(), scene(name))], |_, _, look, view, all, _| {
            let ceiling = all.iter().filter(|one| one.role == Role::Ceiling);
            let underside = ceiling.map(|one| one.bounds().0.z).fold(0.0, f64::max);
            for item in &view.items {
                if look == Look::Front
                    && item.layer != Layer::Overhead
                    && matches!(item.shape, Shape::Polygon { pen: Some(pen), .. } if pen.dash == Dash::Dashed)
                {
                    assert!(bounds(&item.shape).1.y <= underside + 1e-6, "{item:?}");
                    seen += usize::from(item.layer == Layer::Door);
                }
            }
        });
    }
    assert!(seen >= 3, "the opening is there");
}

#[test]
fn lines_of_rooms_lie_apart_and_their_letters_beside_them() {
    let mut pairs = 0;
    for name in ["door-meets-post", "tall-pickup", "anchors-on-paper"] {
        elevations([(name.into(), scene(name))], |_, _, look, view, _, _| {
            let lines: Vec<[DVec2; 2]> = view
                .items
                .iter()
                .filter_map(|item| match item.shape {
                    Shape::Line { ends: [a, b], pen } if pen.colour == WARN => Some([a, b]),
                    _ => None,
                })
                .collect();
            // Each with a stroke across either end.
            let lines: Vec<[DVec2; 2]> = lines.chunks(3).map(|three| three[0]).collect();
            let points = |[a, b]: [DVec2; 2]| (0..=50).map(move |n| a.lerp(b, f64::from(n) / 50.0));
            for (index, one) in lines.iter().enumerate() {
                for other in &lines[..index] {
                    let all = points(*one).flat_map(|p| points(*other).map(move |q| p.distance(q)));
                    let apart = all.fold(f64::INFINITY, f64::min);
                    assert!(apart > 0.08, "{name}, {look:?}: {apart}");
                    pairs += 1;
                }
            }
        });
        let bay = scene(name);
        let study = study_on(&bay, Some(DAY)).unwrap();
        for sheet in layout(&order(&bay, &study, Paper::A4)).unwrap() {
            if !matches!(sheet.tag, "SIDE" | "FRONT") {
                continue;
            }
            check(name, &sheet);
            let letters = sheet.texts().filter(|text| {
                text.says.len() == 1 && ('a'..='j').any(|letter| text.says.starts_with(letter))
            });
            for letter in letters {
                let (low, high) = letter.bounds();
                for item in &sheet.items {
                    let Shape::Line { ends: [a, b], pen } = item.shape else {
                        continue;
                    };
                    let apart = a.max(b).cmplt(low).any() || a.min(b).cmpgt(high).any();
                    assert!(
                        pen.colour != WARN || apart,
                        "{name}: {} hides a room",
                        letter.says
                    );
                }
            }
        }
    }
    assert!(pairs > 10, "{pairs}");
}

#[test]
fn no_running_dimension_covers_a_stop_line() {
    let mut lines = 0;
    for (name, bay) in scenes() {
        let study = study_on(&bay, Some(DAY)).unwrap();
        for sheet in layout(&order(&bay, &study, Paper::A4)).unwrap() {
            let of = |wanted: &dyn Fn(&Item) -> bool| -> Vec<[DVec2; 2]> {
                let items = sheet.items.iter().filter(|item| wanted(item));
                items
                    .filter_map(|item| match item.shape {
                        Shape::Line { ends, .. } => Some(ends),
                        _ => None,
                    })
                    .collect()
            };
            let has = |item: &Item, dash| matches!(item.shape, Shape::Line { pen, .. } if pen.dash == dash);
            let stops = of(&|item| item.layer == Layer::Parking && has(item, Dash::Centre));
            let leaders =
                of(&|item| matches!(item.shape, Shape::Line { pen, .. } if pen == LEADER));
            for stop in &stops {
                lines += 1;
                for [a, b] in &leaders {
                    let on = (a.y - stop[0].y).abs() < 0.1 && (b.y - stop[1].y).abs() < 0.1;
                    let (from, to) = (stop[0].x.min(stop[1].x), stop[0].x.max(stop[1].x));
                    let over = a.x.max(b.x).min(to) - a.x.min(b.x).max(from);
                    assert!(!on || over < 0.1, "{name}, {}: {over}", sheet.name);
                }
            }
        }
    }
    assert!(lines > 20);
}

#[test]
fn a_list_without_pulls_has_no_heads_of_columns() {
    let (_, mut bay) = scenes().remove(0);
    for open in [false, true] {
        bay.not_measured = if open {
            vec!["width".into()]
        } else {
            Vec::new()
        };
        let study = study_on(&bay, Some(DAY)).unwrap();
        let pages = layout(&order(&bay, &study, Paper::A4)).unwrap();
        let pages = pages.iter().filter(|page| page.tag == "PULLS");
        let mut texts = pages.flat_map(Sheet::texts);
        assert_eq!(texts.any(|text| text.says == "The tape reads"), !open);
    }
}
