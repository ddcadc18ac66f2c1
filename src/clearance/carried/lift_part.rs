//! One lift part against one vehicle part, over a piece of the parking box.

use std::cell::{Cell, OnceCell};

use glam::DVec3;

use super::super::body::Body;
use super::super::climb::{Climb, First, first_below};
use super::super::gap::{self, Separation, Solver};
use super::parked::Part;
use super::partings::{is_parted, reach_m};
use super::scene::{Scene, With};
use crate::solids::{Pose, Shape};

/// A lift part in a scene with its uncertainty to what it is looked at with.
pub(super) struct LiftPart<'a> {
    scene: &'a Scene<'a>,
    index: usize,
    with: With,
    /// How much farther each way it may be than it always may with such.
    more_m: DVec3,
    widened: OnceCell<Body>,
}

impl<'a> LiftPart<'a> {
    pub(super) const fn new(scene: &'a Scene<'a>, index: usize, with: With, more_m: DVec3) -> Self {
        Self {
            scene,
            index,
            with,
            more_m,
            widened: OnceCell::new(),
        }
    }

    fn shift(&self) -> DVec3 {
        DVec3::Z * self.scene.shift_m(self.index, self.with)
    }

    fn exact(&self) -> &'a Body {
        match self.with {
            With::EachOther => self.scene.parked.in_bay(self.index),
            With::Arm | With::Pad | With::BesideOwnPoint => self.scene.parked.body(self.index),
        }
    }

    fn spread(&self) -> DVec3 {
        self.scene.spread[self.with as usize]
    }

    pub(super) fn body(&self) -> &Body {
        let made = || self.exact().moved(self.shift()).widened(self.spread());
        let alike = self.scene.bodies[self.index][self.with as usize].get_or_init(made);
        if self.more_m == DVec3::ZERO {
            return alike;
        }
        let more = || alike.clone().widened(self.more_m);
        self.widened.get_or_init(more)
    }

    /// How far it reaches along a unit vector, metres from the origin.
    pub(super) fn reach_m(&self, direction: DVec3) -> f64 {
        let spread = self.spread() + self.more_m;
        self.exact().reach(direction)
            + self.shift().dot(direction)
            + spread.max(DVec3::ZERO).dot(direction.abs())
    }
}

/// A vehicle part where it stands, and on the pads in each attitude, over a piece of the parking box;
/// its bodies are made where they are wanted.
pub(super) struct Posed<'a> {
    shape: &'a Shape,
    pub(super) standing: Places,
    pub(super) carried: Vec<Places>,
    bodies: OnceCell<(Body, Vec<Body>)>,
}

/// Where a part may be: in the pose, and as far off as the spread.
pub(super) struct Places {
    pose: Pose,
    spread: DVec3,
}

impl Places {
    fn body(&self, shape: &Shape) -> Body {
        Body::of(shape, &[self.pose], self.spread)
    }

    /// How far a shape there reaches along a unit vector, metres from the origin.
    fn reach_m(&self, shape: &Shape, direction: DVec3) -> f64 {
        reach_m(shape, self.pose, direction) + self.spread.dot(direction.abs())
    }
}

impl<'a> Posed<'a> {
    pub(super) fn new(scene: &Scene<'_>, part: &'a Part, droop: f64) -> Self {
        let roam = &scene.parked.roam;
        let from_part = part.part.solid.bay_from_solid;
        let hangs = Pose::at(DVec3::Z * -droop).after(from_part);
        let reach = scene.reach_of_m(part, droop);
        let attitudes = scene.attitudes.iter();
        Self {
            shape: &part.part.solid.shape,
            standing: Places {
                pose: scene.parked.rest.after(from_part),
                spread: roam.standing(reach),
            },
            carried: attitudes
                .map(|attitude| Places {
                    pose: attitude.bay_from_vehicle_at_zero.after(hangs),
                    spread: roam.carried(reach),
                })
                .collect(),
            bodies: OnceCell::new(),
        }
    }

    fn bodies(&self) -> &(Body, Vec<Body>) {
        self.bodies.get_or_init(|| {
            let body = |places: &Places| places.body(self.shape);
            (
                body(&self.standing),
                self.carried.iter().map(body).collect(),
            )
        })
    }
}

/// Whether a lift part meets a vehicle part that stands on its tyres while it climbs from one height
/// over its own to another.
pub(super) fn meets_climbing(
    lift: &LiftPart<'_>,
    [from, to]: [f64; 2],
    posed: &Posed<'_>,
    parting: &Cell<DVec3>,
    solver: &mut Solver,
) -> bool {
    // Along a direction in which both ends of the climb are apart all between is.
    let parted = |direction: DVec3| {
        let room = -posed.standing.reach_m(posed.shape, -direction) - lift.reach_m(direction);
        room - (direction.z * to).max(direction.z * from)
    };
    if is_parted(parting.get(), parted) {
        return false;
    }
    let (body, (standing, _)) = (lift.body(), posed.bodies());
    if !boxes_meet(body, [from, to], standing) {
        return false;
    }
    let toward = standing.low() + standing.high() - body.low() - body.high();
    let flat = DVec3::new(toward.x, toward.y, 0.0).normalize_or_zero();
    if is_parted(flat, parted) {
        parting.set(flat);
        return false;
    }
    let swept = body.moved(DVec3::Z * from).swept(DVec3::Z * (to - from));
    if let Separation::Apart(gap) = solver.gap(&swept, DVec3::ZERO, standing)
        && is_parted(gap.normal, parted)
    {
        parting.set(gap.normal);
        return false;
    }
    let climb = Climb {
        up: DVec3::Z,
        from,
        to,
    };
    first_below(solver, body, standing, 0.0, climb) != First::Never
}

/// Whether a lift part meets a vehicle part on the pads in one of the attitudes.
pub(super) fn meets_carried(
    lift: &LiftPart<'_>,
    posed: &Posed<'_>,
    attitude: usize,
    parting: &Cell<DVec3>,
    solver: &mut Solver,
) -> bool {
    let places = &posed.carried[attitude];
    if is_parted(parting.get(), |direction| {
        -places.reach_m(posed.shape, -direction) - lift.reach_m(direction)
    }) {
        return false;
    }
    meet(lift.body(), &posed.bodies().1[attitude], parting, solver)
}

/// Whether two bodies meet where they are; what parts them is kept.
pub(super) fn meet(one: &Body, other: &Body, parting: &Cell<DVec3>, solver: &mut Solver) -> bool {
    if !boxes_meet(one, [0.0, 0.0], other) {
        return false;
    }
    if let Some(direction) = gap::parting(one, DVec3::ZERO, other) {
        parting.set(direction);
        return false;
    }
    match solver.gap(one, DVec3::ZERO, other) {
        Separation::Meet => true,
        Separation::Apart(gap) => {
            if gap.lower > 0.0 {
                parting.set(gap.normal);
            }
            gap.lower <= 0.0
        }
    }
}

/// Whether the boxes about a climbing and a standing body ever meet.
fn boxes_meet(climbing: &Body, [from, to]: [f64; 2], standing: &Body) -> bool {
    let (low, high) = (
        climbing.low() + DVec3::Z * from,
        climbing.high() + DVec3::Z * to,
    );
    !(high.cmplt(standing.low()).any() || low.cmpgt(standing.high()).any())
}
