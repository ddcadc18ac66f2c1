//! What may an arm run into while it is swung: vehicle, posts, what stands about, other arms?

use std::borrow::Cow;

use glam::{DVec2, DVec3};

use super::tool::Tool;
use crate::bay::{Bay, Corner, PostsOff, Side};
use crate::clearance::StudyError;
use crate::clearance::arm_bodies::outer_teeth;
use crate::clearance::body::Body;
use crate::clearance::gap::Solver;
use crate::clearance::movers::chord_bulge_m;
use crate::clearance::uncertainty::Uncertainty;
use crate::solids::vehicle::{self, VehiclePart};
use crate::solids::{ParkingError, Pose, Role, Solid, arms, attitude, obstacles, posts, shell};

/// Something an arm may run into.
pub(super) struct Thing {
    pub(super) name: Cow<'static, str>,
    pub(super) body: Body,
}

/// Where one arm is wanted: swings (those of the teeth about them) and lengths.
#[derive(Debug, Clone, Copy)]
pub(super) struct Target {
    pub(super) least: f64,
    pub(super) most: f64,
    pub(super) near: f64,
    pub(super) far: f64,
}

impl Target {
    /// The arm in place, at any swing and length it may be wanted at.
    pub(super) const fn in_place(self) -> Sweep {
        Sweep {
            swings: [self.least, self.most],
            near: self.near,
            far: self.far,
        }
    }
}

/// A part of an arm's way: turned between two swings at any of the lengths between two.
#[derive(Debug, Clone, Copy)]
pub(super) struct Sweep {
    pub(super) swings: [f64; 2],
    pub(super) near: f64,
    pub(super) far: f64,
}

/// What is the same wherever the vehicle stands.
pub(super) struct Room<'a> {
    pub(super) bay: &'a Bay,
    /// Every arm may be this far off to whatever it may run into.
    spread: DVec3,
    /// Columns and plates low enough to be met.
    pub(super) posts: Vec<Thing>,
    /// On which side each of them stands.
    post_sides: Vec<Option<Side>>,
    /// Walls and what stands about, likewise.
    pub(super) about: Vec<Thing>,
    /// Each side's carriage, which only the other side's arms may meet.
    carriages: Vec<(Side, Thing)>,
    parts: Vec<VehiclePart>,
    /// The vehicle as parked, and at the corners of the parking box.
    pub(super) rests: Vec<Pose>,
    /// Places and a spread that cover all of these.
    hull: (Vec<Pose>, DVec3),
    uncertainty: Uncertainty,
}

/// The vehicle at one place, or at any of several, with the arms where they are wanted for it.
pub(super) struct View {
    pub(super) vehicle: Vec<Thing>,
    pub(super) targets: [Target; 4],
}

impl<'a> Room<'a> {
    pub(super) fn new(bay: &'a Bay, uncertainty: &Uncertainty) -> Result<Self, StudyError> {
        // To the vehicle: a part's place and half its size, the arm's, and how the two are lined up; in
        // height the part's, and the arm's underside and height or the pad's. To the lift's own parts as
        // on the way up.
        let (vehicle_m, lift_m) = (uncertainty.vehicle_m, uncertainty.lift_m);
        let in_height = f64::max(1.5 * (vehicle_m + lift_m), vehicle_m + 2.0 * lift_m);
        let plan = uncertainty.vehicle_spread().truncate() + DVec2::splat(1.5 * lift_m);
        let to_vehicle =
            plan.extend(in_height) + uncertainty.lined_up_spread() * DVec3::new(1.0, 1.0, 0.0);
        let to_posts = uncertainty.moving_lift_spread() + uncertainty.lift_spread();
        let spread = (to_vehicle + uncertainty.posts_to_carried()).max(to_posts);
        let highest = bay
            .lift
            .arms
            .iter()
            .map(|arm| arm.underside.m() + arm.section_height.m())
            .fold(bay.lift.pad.lowest.m(), f64::max)
            + spread.z;
        let is_low = |solid: &Solid| solid.bounds().0.z <= highest;
        let thing = |solid: Solid, spread: DVec3| Thing {
            body: Body::exact(&solid).widened(spread),
            name: solid.name.into(),
        };
        let low_posts: Vec<Solid> = posts::posts(bay).into_iter().filter(is_low).collect();
        let post_sides = low_posts
            .iter()
            .map(|solid| match solid.role {
                Role::Post(side) | Role::BasePlate(side) | Role::PowerUnit(side) => Some(side),
                _ => None,
            })
            .collect();
        let posts = low_posts
            .into_iter()
            .map(|solid| thing(solid, DVec3::ZERO))
            .collect();
        let about = obstacles::obstacles(bay)
            .into_iter()
            .chain(shell::walls(bay))
            .filter(is_low)
            .map(|solid| thing(solid, uncertainty.room_spread()))
            .collect();
        let carriages = posts::carriages(bay)
            .into_iter()
            .filter_map(|solid| match solid.role {
                Role::Carriage(side) => Some((side, thing(solid, DVec3::ZERO))),
                _ => None,
            })
            .collect();
        let mut rests = vec![attitude::at_rest(bay, ParkingError::default())?];
        let corners = uncertainty.parking_corners();
        if corners.len() > 1 {
            for error in corners {
                rests.push(attitude::at_rest(bay, error)?);
            }
        }
        let (errors, spread_m) = uncertainty.parking_hull(&bay.garage.floor);
        let places = if spread_m == DVec3::ZERO {
            rests.clone()
        } else {
            let turned = errors
                .into_iter()
                .map(|error| attitude::at_rest(bay, error));
            turned.collect::<Result<_, _>>()?
        };
        let hull = (places, spread_m);
        let parts = vehicle::parts(bay)
            .into_iter()
            .filter(|part| {
                // What is added to these goes across and along only.
                hull.0.iter().any(|place: &Pose| {
                    let pose = place.after(part.solid.bay_from_solid);
                    part.solid.shape.support(pose, DVec3::NEG_Z).z <= highest
                })
            })
            .collect();
        Ok(Self {
            bay,
            spread,
            posts,
            post_sides,
            about,
            carriages,
            parts,
            rests,
            hull,
            uncertainty: *uncertainty,
        })
    }

    /// Everything that stands still whatever the arms do and wherever the vehicle stands, to an arm
    /// of this side.
    pub(super) fn still(&self, side: Side) -> impl Iterator<Item = &Thing> {
        let others = self.carriages.iter().filter(move |(of, _)| *of != side);
        self.posts
            .iter()
            .chain(&self.about)
            .chain(others.map(|(_, thing)| thing))
    }

    /// The vehicle wherever the driver may stop.
    pub(super) fn everywhere(&self) -> View {
        // Between two headings a part goes round an arc; the hull takes its chord.
        let reach = self.bay.vehicle.length.m() + self.bay.vehicle.body_width.m();
        let bulge = chord_bulge_m(reach, 2.0 * self.uncertainty.parking.yaw_rad);
        let (places, spread) = &self.hull;
        View {
            vehicle: self.vehicle(places, *spread + DVec3::new(bulge, bulge, 0.0)),
            targets: Corner::ALL.map(|corner| self.target(corner, &self.rests)),
        }
    }

    /// The vehicle in one place.
    pub(super) fn in_place(&self, rest: Pose) -> View {
        let rests = [rest];
        View {
            vehicle: self.vehicle(&rests, DVec3::ZERO),
            targets: Corner::ALL.map(|corner| self.target(corner, &rests)),
        }
    }

    fn vehicle(&self, places: &[Pose], spread: DVec3) -> Vec<Thing> {
        self.parts
            .iter()
            .map(|part| {
                let places = places.iter();
                let poses: Vec<Pose> = places
                    .map(|place| place.after(part.solid.bay_from_solid))
                    .collect();
                // One figure more than others: overhang, wheelbase and tyre are measured.
                let more = self.uncertainty.wheel_spread(part.wheel);
                Thing {
                    name: part.solid.name.clone().into(),
                    body: Body::of(&part.solid.shape, &poses, spread + more),
                }
            })
            .collect()
    }

    /// Where an arm is wanted for any of these places of the vehicle.
    pub(super) fn target(&self, corner: Corner, rests: &[Pose]) -> Target {
        let index = vehicle::lift_point_at(corner, self.bay.parking.facing);
        let point = vehicle::lift_point_m(&self.bay.vehicle, index);
        let mut target = Target {
            least: f64::INFINITY,
            most: f64::NEG_INFINITY,
            near: f64::INFINITY,
            far: f64::NEG_INFINITY,
        };
        for rest in rests {
            let place: DVec2 = rest.point(point).truncate();
            let reach = arms::reach_to(self.bay, corner, place);
            target.least = target.least.min(reach.swing_rad);
            target.most = target.most.max(reach.swing_rad);
            target.near = target.near.min(reach.reach_m);
            target.far = target.far.max(reach.reach_m);
        }
        let arm = &self.bay.lift.arms[corner.index()];
        (target.least, target.most) = outer_teeth(arm, target.least, target.most);
        target
    }

    /// The first of the things that an arm meets on a part of its way, by index.
    pub(super) fn first_met(
        &self,
        corner: Corner,
        sweep: Sweep,
        things: &[&Thing],
        solver: &mut Solver,
    ) -> Option<usize> {
        let tool = Tool::new(self.bay, corner, sweep, self.spread);
        let [from, to] = sweep.swings;
        let (from, to) = (from.min(to), from.max(to));
        let near = tool.near(things);
        if near.is_empty() {
            return None;
        }
        tool.first_met(from, to, things, &near, solver)
    }

    /// An arm where it is parked for driving in, or where it is wanted: what other arms may meet.
    pub(super) fn standing(&self, corner: Corner, sweep: Sweep) -> [Thing; 2] {
        let tool = Tool::new(self.bay, corner, sweep, self.spread);
        let [from, to] = sweep.swings;
        let name = |part: &str| format!("lift/{part} {}", corner.name()).into();
        let [beam, pad] = tool.bodies(from.min(to), from.max(to));
        [
            Thing {
                name: name("arm"),
                body: beam,
            },
            Thing {
                name: name("pad"),
                body: pad,
            },
        ]
    }
}

/// The first arm that touches a column or a plate where it is wanted, and which.
pub(super) fn on_posts(room: &Room<'_>, solver: &mut Solver) -> Option<(Corner, String)> {
    // Posts that are known to be off are off together with their own arms: that is studied by itself,
    // without it (see `PostsOff`).
    let is_off = room.bay.lift.posts_off != PostsOff::default();
    let mut met_from = |rests: &[Pose]| {
        Corner::ALL.into_iter().find_map(|corner| {
            let own = Some(corner.side());
            let others = room.posts.iter().zip(&room.post_sides);
            let posts: Vec<&Thing> = others
                .filter(|(_, side)| !is_off || **side != own)
                .map(|(post, _)| post)
                .collect();
            let sweep = room.target(corner, rests).in_place();
            let met = room.first_met(corner, sweep, &posts, solver)?;
            Some((corner, posts[met].name.to_string()))
        })
    };
    met_from(&room.rests)?;
    // Not for any of its places with any heading, but for one of them?
    room.rests
        .iter()
        .find_map(|rest| met_from(std::slice::from_ref(rest)))
}
