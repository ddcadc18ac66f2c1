//! Columns that lean: what goes up on them, posed exactly as a rigid body tipped about its foot, lies in
//! what the study counts with, and meets nothing before the study says so.

use glam::{DQuat, DVec3};

use super::*;
use crate::bay::{Corner, Feeler, Obstacle, ObstacleKind, ObstacleShape};
use crate::clearance::body::Body;
use crate::clearance::gap::{Separation, Solver};
use crate::clearance::movers::{Movers, movers};
use crate::clearance::pairs::{Rule, rule, widest_margin_m};
use crate::clearance::prepare::Prepared;
use crate::clearance::sweep::{Fixed, Workspace};
use crate::solids::posts::column_middle_x_m;
use crate::solids::{ParkingError, Pose, Role, Solid, attitude, vehicle};
use crate::units::Angle;

/// Posts that lean so, left then right, read with ±1 mm over 2.4 m and once more, on flat plates.
fn leaning(planned: &Planned, slopes: [DVec2; 2]) -> Measured {
    let mut measured = taken(planned, &usual(), &mut || 0.0);
    for (side, slope) in SIDES.into_iter().zip(slopes) {
        for _ in 0..2 {
            floors::plumb(&mut measured, side, slope);
        }
        floors::level(&mut measured, side, [0.0; 4]);
        measured.feeler.push(Feeler {
            side,
            gap: Length::mm(0.1),
        });
    }
    measured
}

/// One way that the posts may truly stand and lean, for what was read of them.
struct Truth {
    /// Where each column's foot is in the bay for the study, and where it truly is.
    feet: [[DVec2; 2]; 2],
    turns: [f64; 2],
    leans: [DVec2; 2],
    /// The vehicle goes as the left column leans by this share, across and along.
    share: DVec2,
    /// The travel at which the vehicle is set on the pads.
    touch_m: f64,
}

impl Truth {
    fn drawn(
        planned: &Planned,
        built: &AsBuilt,
        found: &Movers,
        unit: &mut dyn FnMut() -> f64,
    ) -> Self {
        let world = &built.standing.bay;
        let within = world.lift.posts_off.leaning.unwrap().within;
        let mut either = |most: f64| {
            let drawn = 2.0 * unit() - 1.0;
            // The ends more often than a place between.
            most * (3.0 * drawn).clamp(-1.0, 1.0)
        };
        let leans = SIDES.map(|side| {
            let i = index(side);
            let read = built.leans[i].map(|lean| lean.unwrap().slope);
            DVec2::new(
                read[0] + either(within[i][0]),
                read[1] + either(within[i][1]),
            )
        });
        let feet = SIDES.map(|side| {
            let i = index(side);
            let post = &built.posts[i];
            let from_plate = planned.column_m[i] - planned.middle_m[i];
            let turned = DVec2::from_angle(post.turn_rad).rotate(from_plate) - from_plate;
            let known = built.held[i].within_m(DVec2::ZERO);
            let off = DVec2::new(either(known.x), either(known.y));
            let truly = planned.column_m[i] + post.off_m + turned + off;
            let studied = DVec2::new(column_middle_x_m(world, side), world.lift.post_line.m());
            [studied, truly]
        });
        let phases = &found.phases;
        Self {
            feet,
            turns: built.posts.map(|post| post.turn_rad),
            leans,
            share: DVec2::new(unit(), unit()),
            touch_m: phases.first_touch_m + unit() * (phases.carry_m - phases.first_touch_m),
        }
    }

    /// A part of the lift as it truly is, from where plumb columns in their places have it.
    fn lift(&self, side: Side, solid: &Solid) -> Solid {
        let i = index(side);
        let [studied, truly] = self.feet[i].map(|foot| foot.extend(0.0));
        let lean = self.leans[i];
        let axis = DVec3::new(-lean.y, lean.x, 0.0);
        let tip = if axis.length() > 0.0 {
            DQuat::from_axis_angle(axis.normalize(), lean.length().atan())
        } else {
            DQuat::IDENTITY
        };
        let turn = DQuat::from_rotation_z(self.turns[i]);
        let pose = Pose::at(truly)
            .after(Pose::new(tip * turn, DVec3::ZERO))
            .after(Pose::at(-studied));
        Solid {
            bay_from_solid: pose.after(solid.bay_from_solid),
            ..solid.clone()
        }
    }

    /// How far the vehicle went sideways.
    fn carried(&self, travel_m: f64) -> DVec3 {
        let [left, right] = self.leans;
        let goes = left * self.share + right * (DVec2::ONE - self.share);
        (goes * (travel_m - self.touch_m).max(0.0)).extend(0.0)
    }

    /// How much higher each pad is for the lean of its column.
    fn pads_up_m(&self, world: &Bay) -> [f64; 4] {
        let rest = attitude::at_rest(world, ParkingError::default()).unwrap();
        Corner::ALL.map(|corner| {
            let at = vehicle::lift_point_at(corner, world.parking.facing);
            let pad = rest.point(vehicle::lift_point_m(&world.vehicle, at));
            let i = index(corner.side());
            -self.leans[i].dot(pad.truncate() - self.feet[i][0])
        })
    }
}

fn side_of(role: Role) -> Option<Side> {
    match role {
        Role::Carriage(side) => Some(side),
        Role::Arm(corner) | Role::Pad(corner) => Some(corner.side()),
        _ => None,
    }
}

/// Everything that moves, exactly, with the vehicle up on its pads.
fn exact_at(truth: &Truth, world: &Bay, found: &Movers, travel_m: f64) -> Vec<(usize, Solid)> {
    exact_on(truth, world, found, (travel_m, truth.pads_up_m(world)))
}

/// The same with each pad so much higher.
fn exact_on(
    truth: &Truth,
    world: &Bay,
    found: &Movers,
    (travel_m, pads_up_m): (f64, [f64; 4]),
) -> Vec<(usize, Solid)> {
    let mut solids = Vec::new();
    for (at, solid) in found.solids.iter().enumerate() {
        if let Some(side) = side_of(solid.role) {
            let mut up = solid.clone();
            up.bay_from_solid = up.bay_from_solid.moved(DVec3::Z * travel_m);
            solids.push((at, truth.lift(side, &up)));
            if matches!(solid.role, Role::Pad(_)) {
                // Or held by the vehicle, wherever that went.
                let moved = up.bay_from_solid.moved(truth.carried(travel_m));
                let held = Solid {
                    bay_from_solid: moved,
                    ..up
                };
                solids.push((at, held));
            }
        }
    }
    let attitudes = attitude::attitudes(world, ParkingError::default(), pads_up_m).unwrap();
    let first = found.solids.iter().position(|s| side_of(s.role).is_none());
    for stands in &attitudes {
        for (i, part) in vehicle::parts(world).iter().enumerate() {
            let droop = part.wheel.map_or(0.0, |axle| world.vehicle.droop[axle].m());
            let pose = stands
                .bay_from_vehicle_at_zero
                .after(part.solid.bay_from_solid.moved(DVec3::Z * -droop));
            let up = truth.carried(travel_m) + DVec3::Z * travel_m;
            let solid = Solid {
                bay_from_solid: pose.moved(up),
                ..part.solid.clone()
            };
            let at = first.unwrap() + i;
            assert_eq!(found.solids[at].name, solid.name);
            solids.push((at, solid));
        }
    }
    solids
}

/// A uniform deviate.
fn unit_of(random: &mut Pcg64Mcg) -> f64 {
    (random.next_u64() >> 11) as f64 / (1_u64 << 53) as f64
}

fn drawn_slopes(unit: &mut dyn FnMut() -> f64) -> [DVec2; 2] {
    [0; 2].map(|_| DVec2::new(0.012 * unit() - 0.006, 0.012 * unit() - 0.006))
}

/// With nothing unknown but what posts are off, so that no other ± can make up for a lack: every
/// solid lies in the bodies for its travel, in sixty directions, of posts that stand on their marks and
/// of posts that do not. Then the vehicle alone, without what a lean does to the heights of the pads:
/// the ± of those is wide at its ends.
#[test]
fn what_goes_up_leaning_columns_lies_in_the_bodies_for_its_travel() {
    let mut bay = test_bay();
    bay.lift.side_mismatch = Length::ZERO;
    let planned = Planned::of(&bay);
    let mut random = Pcg64Mcg::seed_from_u64(41);
    let mut unit = || unit_of(&mut random);
    let mut tightest: Vec<(Role, f64)> = Vec::new();
    for round in 0..40 {
        let slopes = drawn_slopes(&mut unit);
        let mut measured = leaning(&planned, slopes);
        measured.level_tolerance = Length::mm(0.1);
        if round % 4 > 0 {
            let marks = planned.start();
            for taken in &mut measured.tape {
                taken.reading = Length::metres(planned.row(taken.over, &marks).computed);
                taken.tolerance = Length::mm(0.1);
            }
        }
        let built = as_built(&bay, &measured).unwrap();
        let world = &built.standing.bay;
        let worst = Uncertainty::worst(world);
        let is_level = round % 2 > 0;
        let up = if is_level { 0.0 } else { worst.posts_m.z };
        let only_posts = Uncertainty {
            posts_m: worst.posts_m.truncate().extend(up),
            carried_m: worst.carried_m,
            leaning: worst.leaning,
            ..Uncertainty::NONE
        };
        let found = movers(world, &only_posts).unwrap();
        for _ in 0..6 {
            let truth = Truth::drawn(&planned, &built, &found, &mut unit);
            let from = found.phases.lift_off_last_m;
            let from = from[0].max(from[1]).max(found.phases.carry_m) + 0.02;
            let mut travel_m = from + (world.lift.travel.m() - from) * unit();
            if unit() < 0.7 {
                // Where a stretch ends its body reaches least beyond.
                let ends = found.moving.iter().filter(|one| one.climbs);
                let ends: Vec<f64> = ends.map(|one| one.to).filter(|to| *to > from).collect();
                travel_m = ends[(unit() * ends.len() as f64) as usize] - 1e-9;
            }
            let pads_up_m = if is_level {
                [0.0; 4]
            } else {
                truth.pads_up_m(world)
            };
            for (at, solid) in exact_on(&truth, world, &found, (travel_m, pads_up_m)) {
                if is_level && side_of(solid.role).is_some() {
                    continue;
                }
                let exact = Body::exact(&solid);
                let here: Vec<_> = found
                    .moving
                    .iter()
                    .filter(|one| one.solid == at && one.climbs)
                    .filter(|one| one.from <= travel_m && travel_m <= one.to)
                    .collect();
                assert!(!here.is_empty(), "{} at {travel_m}", solid.name);
                let axes = [DVec3::X, DVec3::NEG_X, DVec3::Y, DVec3::NEG_Y];
                for i in 0..60 {
                    let any = DVec3::new(unit() - 0.5, unit() - 0.5, unit() - 0.5).normalize();
                    let way = axes.get(i).copied().unwrap_or(any);
                    let truly = exact.reach(way);
                    let counted = here
                        .iter()
                        .map(|one| one.body.reach(way) + travel_m * way.z)
                        .fold(f64::NEG_INFINITY, f64::max);
                    assert!(
                        truly <= counted + 1e-9,
                        "{} at {travel_m}: {truly} over {counted}, {way}",
                        solid.name
                    );
                    let near = counted - truly;
                    match tightest.iter_mut().find(|one| one.0 == solid.role) {
                        Some(known) => known.1 = known.1.min(near),
                        None => tightest.push((solid.role, near)),
                    }
                }
            }
        }
    }
    // The bodies are hardly larger than they have to be. Those of arms and pads also hold them where the
    // vehicle drags a pad.
    for (role, near) in tightest {
        let most = match role {
            Role::Arm(_) | Role::Pad(_) => 0.010,
            _ => 0.002,
        };
        assert!(near < most, "{role:?}: {near}");
    }
}

/// Until it leaves the floor a tyre stands, and is taken along sideways with the body over it.
#[test]
fn a_tyre_that_still_stands_is_taken_along() {
    let bay = test_bay();
    let planned = Planned::of(&bay);
    let mut random = Pcg64Mcg::seed_from_u64(47);
    let mut unit = || unit_of(&mut random);
    for _ in 0..10 {
        let slopes = drawn_slopes(&mut unit);
        let built = as_built(&bay, &leaning(&planned, slopes)).unwrap();
        let world = &built.standing.bay;
        let worst = Uncertainty::worst(world);
        let only_leans = Uncertainty {
            posts_m: worst.posts_m.truncate().extend(0.0),
            carried_m: worst.carried_m,
            leaning: worst.leaning,
            ..Uncertainty::NONE
        };
        let found = movers(world, &only_leans).unwrap();
        let truth = Truth {
            touch_m: found.phases.first_touch_m,
            ..Truth::drawn(&planned, &built, &found, &mut unit)
        };
        let wheels = found.solids.iter().enumerate();
        for (at, wheel) in wheels.filter(|(_, solid)| matches!(solid.role, Role::Wheel(_))) {
            let stands = found
                .moving
                .iter()
                .rfind(|one| one.solid == at && !one.climbs)
                .unwrap();
            assert!(stands.to > found.phases.carry_m + 0.05);
            let truly = Solid {
                bay_from_solid: wheel.bay_from_solid.moved(truth.carried(stands.to)),
                ..wheel.clone()
            };
            let exact = Body::exact(&truly);
            for way in [DVec3::X, DVec3::NEG_X, DVec3::Y, DVec3::NEG_Y] {
                let (truly, counted) = (exact.reach(way), stands.body.reach(way));
                assert!(truly <= counted + 1e-9, "{}: {truly} {counted}", wheel.name);
            }
        }
    }
}

#[test]
fn stretches_of_one_phase_leave_no_gap_and_plumb_columns_have_one() {
    let bay = test_bay();
    let planned = Planned::of(&bay);
    let slopes = [DVec2::new(0.002, -0.003), DVec2::new(-0.001, 0.004)];
    let built = as_built(&bay, &leaning(&planned, slopes)).unwrap();
    let world = &built.standing.bay;
    let leaning = movers(world, &Uncertainty::worst(world)).unwrap();
    let plumb = movers(&bay, &Uncertainty::worst(&bay)).unwrap();
    let phases = |of: &Movers| {
        let last = of.moving.iter().map(|one| one.phase).max().unwrap();
        (0..=last)
            .map(|phase| {
                let of = of.moving.iter().filter(|one| one.phase == phase);
                of.cloned().collect::<Vec<_>>()
            })
            .filter(|of| !of.is_empty())
            .collect::<Vec<_>>()
    };
    for stretches in phases(&leaning) {
        assert!(stretches.len() == 1 || stretches[0].climbs);
        for (one, next) in stretches.iter().zip(&stretches[1..]) {
            assert_eq!(one.to.to_bits(), next.from.to_bits());
            assert_eq!((one.solid, one.climbs), (next.solid, next.climbs));
        }
    }
    assert!(phases(&leaning).iter().any(|of| of.len() > 4));
    assert!(phases(&plumb).iter().all(|of| of.len() == 1));
}

/// A shelf over the front right of the vehicle, its near edge there across the bay.
fn shelf(bay: &mut Bay, edge_m: f64, bottom_m: f64) {
    bay.garage.obstacles.push(Obstacle {
        name: "shelf".into(),
        kind: ObstacleKind::Shelf,
        shape: ObstacleShape::Box {
            x: Length::metres(edge_m + 0.1),
            y: bay.lift.post_line,
            bottom: Length::metres(bottom_m),
            width: Length::metres(0.2),
            depth: Length::metres(1.5),
            height: Length::metres(0.3),
            turned: Angle::ZERO,
        },
        removable: None,
        only_at_times: false,
        row: [0, 0],
    });
}

/// What is asked of anything and the shelf.
fn of_shelf(bay: &Bay) -> impl Fn(Role, Role) -> Option<Rule> + '_ {
    |moving, fixed| rule(moving, fixed, &bay.policy).filter(|_| matches!(fixed, Role::Obstacle(_)))
}

/// The travel at which something first comes too near to the shelf by the study.
fn by_study(world: &Bay, is_it: impl Fn(Role) -> bool) -> f64 {
    let prepared = Prepared::new(world, Uncertainty::worst(world)).unwrap();
    let asked = of_shelf(world);
    let mut space = Workspace::new();
    space.sweep_first(
        &prepared.movers.moving,
        &prepared.groups.common.bodies,
        &prepared.locks,
        DVec3::Z,
        widest_margin_m(&world.policy),
        &|mover, thing: &Fixed| asked(mover.role, thing.role).filter(|_| is_it(mover.role)),
    );
    let first = |found: Option<crate::clearance::sweep::Breach>| {
        found.map_or(f64::INFINITY, |breach| breach.travel_m)
    };
    first(space.swept.first).min(first(space.swept.undecided))
}

/// The same for solids exactly as they are, looked at every few millimetres.
fn by_climbing(truth: &Truth, world: &Bay, found: &Movers, from_m: f64) -> f64 {
    let prepared = Prepared::new(world, Uncertainty::NONE).unwrap();
    let shelves: Vec<_> = prepared
        .groups
        .common
        .bodies
        .iter()
        .filter(|one| matches!(one.role, Role::Obstacle(_)))
        .collect();
    let asked = of_shelf(world);
    let mut solver = Solver::new();
    let mut travel_m = from_m;
    while travel_m <= world.lift.travel.m() {
        for (_, solid) in exact_at(truth, world, found, travel_m) {
            let exact = Body::exact(&solid);
            for shelf in &shelves {
                let Some(rule) = asked(solid.role, shelf.role) else {
                    continue;
                };
                let short = match solver.gap(&exact, DVec3::ZERO, &shelf.body) {
                    Separation::Meet => true,
                    Separation::Apart(gap) => gap.upper < rule.margin_m,
                };
                if short {
                    return travel_m;
                }
            }
        }
        travel_m += 0.02;
    }
    f64::INFINITY
}

/// The outermost of the vehicle by the study, and its highest.
fn outermost(world: &Bay) -> (f64, f64) {
    let found = movers(world, &Uncertainty::worst(world)).unwrap();
    let body = found.moving.iter().filter(|one| one.role == Role::Body);
    body.fold((f64::NEG_INFINITY, f64::NEG_INFINITY), |far, one| {
        (far.0.max(one.body.high().x), far.1.max(one.body.high().z))
    })
}

#[test]
fn nothing_is_met_before_the_study_says_so() {
    let bay = test_bay();
    let planned = Planned::of(&bay);
    let mut random = Pcg64Mcg::seed_from_u64(43);
    let mut unit = || unit_of(&mut random);
    let mut met = 0;
    for _ in 0..6 {
        let slopes = drawn_slopes(&mut unit);
        let measured = leaning(&planned, slopes);
        let (far, high) = outermost(&bay);
        let mut with = bay.clone();
        shelf(&mut with, far - 0.05 + 0.1 * unit(), high + 0.4 * unit());
        let built = as_built(&with, &measured).unwrap();
        let world = &built.standing.bay;
        let found = movers(world, &Uncertainty::worst(world)).unwrap();
        let said = by_study(world, |_| true);
        let from = found.phases.lift_off_last_m;
        let from = from[0].max(from[1]).max(found.phases.carry_m);
        for _ in 0..2 {
            let truth = Truth::drawn(&planned, &built, &found, &mut unit);
            let truly = by_climbing(&truth, world, &found, from);
            assert!(
                said <= truly + 1e-9,
                "the study says {said}, and it is {truly}"
            );
            met += usize::from(truly.is_finite());
        }
    }
    assert!(met >= 4, "{met}");
}

/// Both columns lean toward the shelf, not at all, and away from it; and what the study said when the
/// lean over the whole height counted at every height. The shelf stands about where a vehicle on plumb
/// columns just passes it.
#[test]
fn a_lean_toward_a_thing_is_met_sooner_and_one_away_from_it_later() {
    let bay = test_bay();
    let planned = Planned::of(&bay);
    let measured = leaning(&planned, [DVec2::new(0.005, 0.0); 2]);
    let world = as_built(&bay, &measured).unwrap().standing.bay;
    let (far, high) = outermost(&world);
    // What a lean does in height is a bound of its size: the same for all of these.
    let met = |edge: f64, lean: Option<f64>| {
        let mut with = world.clone();
        shelf(&mut with, edge, high + 0.1);
        let leaning = &mut with.lift.posts_off.leaning;
        match lean {
            Some(lean) => leaning.as_mut().unwrap().slope = [[lean, 0.0]; 2],
            None => *leaning = None,
        }
        by_study(&with, |role| role == Role::Body)
    };
    let (mut near, mut past) = (far - 0.4, far + 0.4);
    assert!(met(near, Some(0.0)).is_finite() && met(past, Some(0.0)).is_infinite());
    for _ in 0..12 {
        let between = 0.5 * (near + past);
        if met(between, Some(0.0)).is_finite() {
            near = between;
        } else {
            past = between;
        }
    }
    let (mut sooner, mut later, mut kinder) = (0, 0, 0);
    for step in -6..=6 {
        let edge = near + 0.002 * f64::from(step);
        let [toward, plumb, away] = [0.005, 0.0, -0.005].map(|lean| met(edge, Some(lean)));
        let bounded = met(edge, None);
        assert!(
            bounded <= toward + 1e-9 && toward <= plumb + 1e-9 && plumb <= away + 1e-9,
            "{edge}: {bounded} {toward} {plumb} {away}"
        );
        sooner += usize::from(toward < plumb - 1e-3);
        later += usize::from(plumb < away - 1e-3);
        kinder += usize::from(bounded < toward - 1e-3);
    }
    assert!(
        sooner > 0 && later > 0 && kinder > 0,
        "{sooner} {later} {kinder}"
    );
}
