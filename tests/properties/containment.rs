//! Is the worst case the worst? Every solid of every true world lies inside the body that stands
//! for it; and with nothing uncertain the body is the solid.

use std::collections::BTreeMap;

use bayrise::bay::Bay;
use bayrise::clearance::body::Body;
use bayrise::clearance::prepare::Prepared;
use bayrise::clearance::uncertainty::Uncertainty;
use bayrise::solids::{Shape, Solid};
use glam::DVec3;

use crate::rng::Rng;
use crate::scenes::scenes;
use crate::true_worlds::World;

/// True worlds per scene.
const WORLDS: usize = 30;
/// Rounding, metres.
const SLACK_M: f64 = 1e-6;

/// The axes and their diagonals, and some more: over all worlds of a scene more than a thousand.
fn directions(rng: &mut Rng, more: usize) -> Vec<DVec3> {
    let mut ways = Vec::new();
    for x in [-1.0, 0.0, 1.0] {
        for y in [-1.0, 0.0, 1.0] {
            for z in [-1.0, 0.0, 1.0] {
                ways.extend(DVec3::new(x, y, z).try_normalize());
            }
        }
    }
    ways.extend((0..more).map(|_| rng.direction()));
    ways
}

/// How far a solid that reaches as far as `reaches` sticks out of a body moved by `shift`, and
/// which way.
fn sticks_out(reaches: &[(DVec3, f64)], body: &Body, shift: DVec3) -> (f64, DVec3) {
    reaches
        .iter()
        .map(|&(way, reach)| (reach - body.reach(way) - shift.dot(way), way))
        .max_by(|a, b| a.0.total_cmp(&b.0))
        .unwrap()
}

/// Long low parts are looked at in lengths: so many that none is longer than this, metres.
const LENGTH_M: f64 = 1.2;

/// A solid in the lengths in which it is looked at.
fn pieces(solid: &Solid) -> Vec<Solid> {
    let Shape::Box { half } = solid.shape else {
        return vec![solid.clone()];
    };
    let count = (2.0 * half.y / LENGTH_M).ceil();
    if count < 2.0 || !solid.name.starts_with("vehicle/underbody") {
        return vec![solid.clone()];
    }
    let along = solid.bay_from_solid.rotation * DVec3::Y * half.y / count;
    (0..count as usize)
        .map(|number| {
            let mut piece = solid.clone();
            let half = DVec3::new(half.x, half.y / count, half.z);
            piece.shape = Shape::Box { half };
            let steps = 2.0 * number as f64 + 1.0 - count;
            piece.bay_from_solid = piece.bay_from_solid.moved(along * steps);
            piece
        })
        .collect()
}

/// The worst of a world at one travel: by solid, how far it sticks out of the best of the bodies
/// that stand for it then.
fn check_world(
    prepared: &Prepared,
    world: &World,
    travel: f64,
    ways: &[DVec3],
    worst: &mut BTreeMap<String, (f64, DVec3, f64)>,
) {
    let parts = world.at(travel).into_iter();
    let pieces = parts.flat_map(|part| {
        let name = part.name;
        pieces(&part.solid)
            .into_iter()
            .map(move |piece| (name.clone(), piece))
    });
    for (name, solid) in pieces {
        let reaches: Vec<(DVec3, f64)> = ways
            .iter()
            .map(|&way| (way, solid.support(way).dot(way)))
            .collect();
        let movers = &prepared.movers;
        let out = movers
            .moving
            .iter()
            .filter(|mover| movers.solids[mover.solid].name == name)
            .filter(|mover| mover.from <= travel && travel <= mover.to)
            .map(|mover| {
                let shift = if mover.climbs {
                    DVec3::Z * travel
                } else {
                    DVec3::ZERO
                };
                sticks_out(&reaches, &mover.body, shift)
            })
            .min_by(|a, b| a.0.total_cmp(&b.0))
            .unwrap_or((f64::INFINITY, DVec3::ZERO));
        let known = worst
            .entry(name)
            .or_insert((f64::NEG_INFINITY, DVec3::ZERO, 0.0));
        if out.0 > known.0 {
            *known = (out.0, out.1, travel);
        }
    }
}

#[test]
fn every_true_world_lies_inside_the_worst_case() {
    let mut failures = Vec::new();
    for (seed, (name, bay)) in scenes().into_iter().enumerate() {
        let uncertainty = Uncertainty::worst(&bay);
        let prepared = Prepared::new(&bay, uncertainty).unwrap();
        let mut rng = Rng::new(seed as u64);
        let mut worst = BTreeMap::new();
        for _ in 0..WORLDS {
            let world = World::new(&bay, uncertainty, &mut rng);
            let ways = directions(&mut rng, 40);
            let top = bay.lift.travel.m();
            let mut travels = vec![0.0, top, rng.between(0.0, top)];
            for at in world.turning_points() {
                travels.extend([at - 1e-4, at + 1e-4, at + rng.between(-0.03, 0.03)]);
            }
            for travel in travels.into_iter().filter(|s| (0.0..=top).contains(s)) {
                check_world(&prepared, &world, travel, &ways, &mut worst);
            }
        }
        let closest = worst
            .values()
            .map(|w| w.0)
            .fold(f64::NEG_INFINITY, f64::max);
        println!("{name}: at best {:.3} mm inside", -closest * 1e3);
        for (solid, (out, way, travel)) in worst {
            if out > SLACK_M {
                failures.push(format!(
                    "{name}: {solid} sticks out by {:.3} mm along {way:.3} at {travel:.4} m",
                    out * 1e3
                ));
            }
        }
    }
    assert!(failures.is_empty(), "\n{}", failures.join("\n"));
}

#[test]
fn with_nothing_uncertain_the_bodies_are_the_solids() {
    let ways = directions(&mut Rng::new(3), 200);
    let same = |solid: &Solid, body: &Body, name: &str| {
        for &way in &ways {
            let (solid_m, body_m) = (solid.support(way).dot(way), body.reach(way));
            assert!(
                (solid_m - body_m).abs() < 1e-9,
                "{name}: {} reaches {solid_m}, its body {body_m} along {way}",
                solid.name
            );
        }
    };
    for (name, bay) in scenes() {
        let prepared = Prepared::new(&bay, Uncertainty::NONE).unwrap();
        let groups = &prepared.groups;
        for group in [&groups.common, &groups.shut, &groups.open, &groups.running] {
            for (solid, body) in group.pairs() {
                same(solid, body, &name);
            }
        }
        let movers = &prepared.movers;
        let attitudes = attitudes(&bay);
        for mover in &movers.moving {
            let climbing = &movers.climbing_solids[mover.solid];
            if mover.climbs && (attitudes == 1 || !climbing.name.starts_with("vehicle/")) {
                // The length that lies where the body does.
                let middle = (mover.body.low() + mover.body.high()) * 0.5;
                let off = |piece: &Solid| {
                    let (low, high) = piece.bounds();
                    ((low + high) * 0.5 - middle).length()
                };
                let lengths = pieces(climbing).into_iter();
                let length = lengths.min_by(|a, b| off(a).total_cmp(&off(b)));
                same(&length.unwrap(), &mover.body, &name);
            } else if !mover.climbs && mover.from <= 0.0 {
                same(&movers.solids[mover.solid], &mover.body, &name);
            }
        }
    }
}

fn attitudes(bay: &Bay) -> usize {
    use bayrise::solids::{ParkingError, attitude};
    attitude::attitudes(bay, ParkingError::default(), [0.0; 4])
        .unwrap()
        .len()
}
