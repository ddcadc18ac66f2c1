//! How high is the ceiling's underside here?
//!
//! Every ceiling is straight pieces along one axis and level along the other: one piece for a
//! flat or sloped ceiling, two for a gable, one per step.
//!
//! **Where the floor falls**, a height "above the floor below" can be read in more than one way.
//! The lowest reading is taken: a flat ceiling stands over the lowest floor in the room, a slope's
//! two heights over the lowest floor along their walls, eaves over the lowest floor along both
//! walls, a ridge over the lowest floor along it, a step over the lowest floor under it.

use glam::DVec2;

use super::floor_level_range_m;
use super::walls::room;
use crate::bay::{Bay, Ceiling, Run};
use crate::solids::outline::{along_x, along_y};
use crate::solids::{Role, Solid};

/// How thick the ceiling is built; nothing in the bay lies above it.
const THICKNESS_M: f64 = 0.3;
/// How far the ceiling runs on beyond the walls' inner faces.
const PAST_WALLS_M: f64 = 0.3;

/// `z` of the ceiling's underside at a place, metres; where two pieces meet, the lower one.
#[must_use]
pub fn ceiling_height_m(bay: &Bay, x_m: f64, y_m: f64) -> f64 {
    Profile::of(bay).lowest_at(x_m, y_m)
}

/// `z` of the highest part of the ceiling's underside in the room, metres.
#[must_use]
pub fn highest_ceiling_m(bay: &Bay) -> f64 {
    Profile::of(bay)
        .pieces
        .iter()
        .fold(f64::NEG_INFINITY, |high, piece| {
            high.max(piece.start.y).max(piece.end.y)
        })
}

/// The underside as straight pieces along one axis. Points are (position along the axis, z).
pub(super) struct Profile {
    /// The axis along which the height changes.
    pub(super) along: Run,
    pub(super) pieces: Vec<Piece>,
}

/// One straight piece of the underside.
pub(super) struct Piece {
    label: String,
    pub(super) start: DVec2,
    pub(super) end: DVec2,
}

impl Piece {
    fn new(label: impl Into<String>, start: DVec2, end: DVec2) -> Self {
        Self {
            label: label.into(),
            start,
            end,
        }
    }

    /// The height on this piece's line, which runs on beyond its ends.
    fn height(&self, position: f64) -> f64 {
        let share = (position - self.start.x) / (self.end.x - self.start.x);
        self.start.y + share * (self.end.y - self.start.y)
    }
}

impl Profile {
    pub(super) fn of(bay: &Bay) -> Self {
        let (low, high) = room(bay);
        let (depth, middle) = (high[1], 0.5 * (low[0] + high[0]));
        let lowest_floor = |low, high| floor_level_range_m(bay, low, high).0;
        // The lowest floor along a line across the axis `along`, at `position`.
        let lowest_along = |along: Run, position: f64| match along {
            Run::DoorToBack => lowest_floor([low[0], position], [high[0], position]),
            Run::SideToSide => lowest_floor([position, low[1]], [position, high[1]]),
        };
        let ends = |along: Run| match along {
            Run::DoorToBack => (0.0, depth),
            Run::SideToSide => (low[0], high[0]),
        };
        match &bay.garage.ceiling {
            Ceiling::Flat { height } => {
                let z = lowest_floor(low, high) + height.m();
                Self {
                    along: Run::DoorToBack,
                    pieces: vec![Piece::new("", DVec2::new(0.0, z), DVec2::new(depth, z))],
                }
            }
            Ceiling::Sloped { run, first, last } => {
                let (start, end) = ends(*run);
                let first = lowest_along(*run, start) + first.m();
                let last = lowest_along(*run, end) + last.m();
                Self {
                    along: *run,
                    pieces: vec![Piece::new(
                        "",
                        DVec2::new(start, first),
                        DVec2::new(end, last),
                    )],
                }
            }
            Ceiling::Gable {
                ridge_along,
                eaves,
                ridge,
                ridge_offset,
            } => {
                let (along, labels, room_middle) = match ridge_along {
                    Run::DoorToBack => (Run::SideToSide, [" left", " right"], middle),
                    Run::SideToSide => (Run::DoorToBack, [" door", " back"], 0.5 * depth),
                };
                let (start, end) = ends(along);
                let top = (room_middle + ridge_offset.m()).clamp(start, end);
                let eaves = eaves.m() + lowest_along(along, start).min(lowest_along(along, end));
                let ridge = DVec2::new(top, lowest_along(along, top) + ridge.m());
                let mut pieces = Vec::new();
                if top > start {
                    pieces.push(Piece::new(labels[0], DVec2::new(start, eaves), ridge));
                }
                if top < end {
                    pieces.push(Piece::new(labels[1], ridge, DVec2::new(end, eaves)));
                }
                Self { along, pieces }
            }
            Ceiling::Stepped { steps } => {
                let mut pieces = Vec::new();
                for (i, step) in steps.iter().enumerate() {
                    // The first step starts at the door wall whatever it says.
                    let from = if i == 0 { 0.0 } else { step.from.m() };
                    let to = steps.get(i + 1).map_or(depth, |next| next.from.m());
                    if to <= from {
                        continue;
                    }
                    let z = step.height.m() + lowest_floor([low[0], from], [high[0], to]);
                    pieces.push(Piece::new(
                        format!(" step {}", i + 1),
                        DVec2::new(from, z),
                        DVec2::new(to, z),
                    ));
                }
                Self {
                    along: Run::DoorToBack,
                    pieces,
                }
            }
        }
    }

    /// Lowest underside over a place; the outermost pieces run on beyond the walls.
    fn lowest_at(&self, x_m: f64, y_m: f64) -> f64 {
        self.heights_at(x_m, y_m).fold(f64::INFINITY, f64::min)
    }

    /// Highest underside over a place: as high as a wall must reach.
    pub(super) fn highest_at(&self, x_m: f64, y_m: f64) -> f64 {
        self.heights_at(x_m, y_m).fold(f64::NEG_INFINITY, f64::max)
    }

    fn heights_at(&self, x_m: f64, y_m: f64) -> impl Iterator<Item = f64> + '_ {
        let position = match self.along {
            Run::DoorToBack => y_m,
            Run::SideToSide => x_m,
        };
        let last = self.pieces.len().saturating_sub(1);
        self.pieces
            .iter()
            .enumerate()
            .filter(move |(i, piece)| {
                (*i == 0 || position >= piece.start.x) && (*i == last || position <= piece.end.x)
            })
            .map(move |(_, piece)| piece.height(position))
    }
}

/// The ceiling's solids: everything above the underside, thick enough to stop anything.
pub(super) fn ceiling(bay: &Bay) -> Vec<Solid> {
    let profile = Profile::of(bay);
    let (low, high) = room(bay);
    let across = match profile.along {
        Run::DoorToBack => [low[0] - PAST_WALLS_M, high[0] + PAST_WALLS_M],
        Run::SideToSide => [
            -bay.garage.opening.wall_thickness.m() - PAST_WALLS_M,
            high[1] + PAST_WALLS_M,
        ],
    };
    // Steps share one upper face, so that the upright faces between them are closed.
    let common_top = matches!(bay.garage.ceiling, Ceiling::Stepped { .. })
        .then(|| highest_ceiling_m(bay) + THICKNESS_M);
    let last = profile.pieces.len().saturating_sub(1);
    let past_start = match profile.along {
        Run::DoorToBack => bay.garage.opening.wall_thickness.m() + PAST_WALLS_M,
        Run::SideToSide => PAST_WALLS_M,
    };
    profile
        .pieces
        .iter()
        .enumerate()
        .map(|(i, piece)| {
            let start = piece.start.x - if i == 0 { past_start } else { 0.0 };
            let end = piece.end.x + if i == last { PAST_WALLS_M } else { 0.0 };
            let outline = [start, end]
                .iter()
                .flat_map(|&position| {
                    let underside = piece.height(position);
                    let top = common_top.unwrap_or(underside + THICKNESS_M);
                    [DVec2::new(position, underside), DVec2::new(position, top)]
                })
                .collect();
            let name = format!("shell/ceiling{}", piece.label);
            match profile.along {
                Run::DoorToBack => along_x(name, Role::Ceiling, across, outline),
                Run::SideToSide => along_y(name, Role::Ceiling, across, outline),
            }
        })
        .collect()
}
