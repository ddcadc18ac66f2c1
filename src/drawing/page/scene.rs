//! The bay to turn: faces, edges, poses and what is said, as JSON in the page.
//!
//! Corners lie where they are at travel 0, in hundredths of a millimetre, in the bay's axes. What
//! climbs belongs to a group: for each of some travels, the turn and the shift that carry it from
//! there to where it then is. Between neighbours one goes straight.

use glam::{DQuat, DVec3};
use serde::Serialize;

use super::spots::{doors, spots, travel};
use super::{PageError, css};
use crate::clearance::Probe;
use crate::drawing::climb::{Climb, Climber, climb};
use crate::drawing::facets::{Facet, around, edges};
use crate::drawing::paint::{Finish, painted};
use crate::report::{Report, Sayings};
use crate::solids::{Layer, Pose, Role};

/// How far corners of a curved solid may stand outside it, metres.
const OFF_M: f64 = 5e-4;

#[derive(Serialize)]
struct Scene {
    /// Lowest and highest corner of the room, metres.
    room: [[f64; 3]; 2],
    /// Middle of the vehicle on the floor, metres.
    vehicle: [f64; 3],
    behind: String,
    edge: String,
    colours: Vec<String>,
    pieces: Vec<Piece>,
    groups: Vec<Vec<[f64; 7]>>,
    travels: Vec<f64>,
    locks: Vec<f64>,
    /// The end of the carriage's travel.
    top: f64,
    safe: Option<usize>,
    /// Which of the doors is shown first.
    door: usize,
    doors: Vec<Told>,
    units: &'static str,
}

/// What moves and is shown alike.
#[derive(Serialize)]
struct Piece {
    /// Its group; none for what stands.
    group: Option<usize>,
    /// Shown with this door alone.
    door: Option<usize>,
    /// Each with the number of its colour, whether it shines, and its corners.
    faces: Vec<(usize, bool, Vec<i64>)>,
    edges: Vec<i64>,
}

#[derive(Serialize)]
struct Told {
    name: &'static str,
    spots: Vec<SpotJson>,
}

#[derive(Serialize)]
struct SpotJson {
    from: f64,
    to: f64,
    lock: Option<usize>,
    word: &'static str,
    colour: String,
    good: bool,
    says: String,
}

/// As the text of a script element that is never run: nothing in it can end that element.
pub(super) fn json(
    report: &Report<'_>,
    said: &Sayings<'_>,
    probe: &mut Probe,
) -> Result<String, PageError> {
    let (bay, study) = (report.bay, report.study);
    let top_m = bay.lift.travel.m();
    let states = doors(bay, study);
    let mut made = Maker::default();
    let mut room = (DVec3::INFINITY, DVec3::NEG_INFINITY);
    let mut vehicle = room;
    let mut travels = Vec::new();
    for (number, (state, _)) in states.iter().enumerate() {
        let way = climb(bay, &study.phases, travel(*state), top_m)?;
        if number == 0 {
            for part in &way.parts {
                let (low, high) = part.solid.bounds();
                room = (room.0.min(low), room.1.max(high));
                if matches!(part.solid.role, Role::Body) {
                    vehicle = (vehicle.0.min(low), vehicle.1.max(high));
                }
            }
        }
        let inside = (room.0 + room.1) * 0.5;
        made.take(&way, inside, number, states.len());
        travels = way.travels_m;
    }
    let told = states.iter().map(|(state, name)| Told {
        name,
        spots: spots(bay, study, said, probe, *state)
            .into_iter()
            .map(|spot| SpotJson {
                from: spot.from_m,
                to: spot.to_m,
                lock: spot.lock,
                word: spot.word,
                colour: css(spot.colour),
                good: spot.is_good,
                says: spot.says,
            })
            .collect(),
    });
    let scene = Scene {
        doors: told.collect(),
        room: [room.0, room.1].map(|corner| corner.to_array().map(short)),
        vehicle: ((vehicle.0 + vehicle.1) * 0.5).to_array().map(short),
        behind: css(crate::drawing::palette::things::BEHIND_LIGHT),
        edge: css(crate::drawing::palette::things::EDGE_LIGHT),
        colours: made.colours,
        pieces: made.pieces,
        groups: made.groups,
        travels,
        locks: study.locks.iter().map(|lock| lock.travel_m).collect(),
        top: top_m,
        safe: study.highest_safe_lock,
        door: states
            .iter()
            .position(|(state, _)| *state == study.headline_door)
            .unwrap_or(0),
        units: match bay.units {
            crate::bay::UnitSystem::Imperial => "in",
            crate::bay::UnitSystem::Metric => "mm",
        },
    };
    Ok(serde_json::to_string(&scene)?.replace('<', "\\u003c"))
}

/// To a ten-millionth: less than can be seen, and short to write.
fn short(value: f64) -> f64 {
    (value * 1e7).round() / 1e7 + 0.0
}

#[derive(Default)]
struct Maker {
    colours: Vec<String>,
    pieces: Vec<Piece>,
    groups: Vec<Vec<[f64; 7]>>,
}

impl Maker {
    /// The solids with one of the doors; what does not hang on the door is taken with the first.
    fn take(&mut self, way: &Climb, inside: DVec3, door: usize, doors: usize) {
        for part in &way.parts {
            let of_door = part.solid.layer() == Layer::Door && doors > 1;
            if door > 0 && !of_door {
                continue;
            }
            let group = (!part.poses.is_empty()).then(|| self.group(part));
            let only = of_door.then_some(door);
            let at = self
                .pieces
                .iter()
                .position(|piece| piece.group == group && piece.door == only);
            let at = at.unwrap_or_else(|| {
                self.pieces.push(Piece {
                    group,
                    door: only,
                    faces: Vec::new(),
                    edges: Vec::new(),
                });
                self.pieces.len() - 1
            });
            self.put(at, part, inside);
        }
    }

    /// The number of the group of what climbs in the same way.
    fn group(&mut self, part: &Climber) -> usize {
        let first = part.solid.bay_from_solid;
        let way: Vec<[f64; 7]> = part
            .poses
            .iter()
            .map(|pose| carried(first, *pose))
            .collect();
        let near = |a: &[f64; 7], b: &[f64; 7]| a.iter().zip(b).all(|(a, b)| (a - b).abs() < 1e-6);
        let known = self.groups.iter().position(|known| {
            known.len() == way.len() && known.iter().zip(&way).all(|(a, b)| near(a, b))
        });
        known.unwrap_or_else(|| {
            self.groups.push(way);
            self.groups.len() - 1
        })
    }

    fn put(&mut self, piece: usize, part: &Climber, inside: DVec3) {
        let pose = part.solid.bay_from_solid;
        let painting = &part.painting;
        let whole = around(&part.solid.shape, OFF_M);
        let is_shell = part.solid.layer() == Layer::Shell;
        // Of walls, floor and ceiling only what looks into the room: from outside one sees in.
        let looks_in = |facet: &Facet| {
            let normal = pose.rotation * facet.normal;
            let at = facet
                .corners
                .first()
                .map_or(inside, |corner| pose.point(*corner));
            !is_shell || normal.dot(inside - at) > 0.0
        };
        let lines = if is_shell { Vec::new() } else { edges(&whole) };
        let faces = whole.into_iter().filter(looks_in).collect();
        for patch in painted(faces, |facet| painting.base(facet), &painting.decals) {
            let colour = self.colour(css(patch.paint.colour));
            let shines = patch.paint.finish == Finish::Glow;
            let corners = patch.facet.corners.iter();
            let corners = corners.flat_map(|corner| whole_units(pose.point(*corner)));
            let corners = corners.collect();
            self.pieces[piece].faces.push((colour, shines, corners));
        }
        for edge in lines {
            let ends = edge.ends.into_iter();
            let ends = ends.flat_map(|end| whole_units(pose.point(end)));
            self.pieces[piece].edges.extend(ends);
        }
    }

    fn colour(&mut self, colour: String) -> usize {
        let known = self.colours.iter().position(|known| *known == colour);
        known.unwrap_or_else(|| {
            self.colours.push(colour);
            self.colours.len() - 1
        })
    }
}

/// What carries a solid from one pose to another: shift, then the turn's x, y, z, w.
fn carried(from: Pose, to: Pose) -> [f64; 7] {
    let mut turn: DQuat = to.rotation * from.rotation.inverse();
    if turn.w < 0.0 {
        turn = -turn;
    }
    let shift = to.translation - turn * from.translation;
    let [x, y, z] = shift.to_array();
    [x, y, z, turn.x, turn.y, turn.z, turn.w].map(short)
}

#[allow(clippy::cast_possible_truncation)] // some metres, in hundredths of a millimetre
fn whole_units(point: DVec3) -> [i64; 3] {
    point.to_array().map(|metres| (metres * 1e5).round() as i64)
}
