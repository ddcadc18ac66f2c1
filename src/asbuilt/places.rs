//! Where are the marks on a post that stands anywhere, and what does a tape between two of them
//! show?

use glam::DVec2;

use super::adjust::Row;
use crate::bay::{Bay, FromWall, Mark, Over, PlateCorner, Side};
use crate::ground::slab::plate_rect;
use crate::solids::posts::{column_middle_x_m, inward};

/// Left, then right.
pub const SIDES: [Side; 2] = [Side::Left, Side::Right];

/// 0 for the left post, 1 for the right one.
#[must_use]
pub const fn index(side: Side) -> usize {
    match side {
        Side::Left => 0,
        Side::Right => 1,
    }
}

/// The posts as planned, and the room.
#[derive(Debug, Clone, PartialEq)]
pub struct Planned {
    /// Middles of the plates.
    pub middle_m: [DVec2; 2],
    /// Half sizes of a plate.
    pub half_m: DVec2,
    /// Columns' middles.
    pub column_m: [DVec2; 2],
    face_m: [DVec2; 2],
    walls_m: [f64; 2],
    depth_m: f64,
    /// The ± of the room's own dimensions.
    pub room_m: f64,
}

/// Unknowns of the posts; those of the room come after them: how far its left, right and back wall
/// stand off the bay file, along +x, +x and +y.
pub(super) const OF_POSTS: usize = 6;

/// The walls among the unknowns.
pub const WALLS: [FromWall; 3] = [FromWall::Left, FromWall::Right, FromWall::Back];

impl Planned {
    /// Of a bay.
    #[must_use]
    pub fn of(bay: &Bay) -> Self {
        let line = bay.lift.post_line.m();
        let walls = -bay.garage.opening.offset.m();
        let half = bay.garage.width.m() * 0.5;
        let rects = SIDES.map(|side| plate_rect(bay, side));
        Self {
            middle_m: rects.map(|rect| (rect.low + rect.high) * 0.5),
            half_m: (rects[0].high - rects[0].low) * 0.5,
            column_m: SIDES.map(|side| DVec2::new(column_middle_x_m(bay, side), line)),
            face_m: SIDES.map(|side| {
                let middle = DVec2::new(column_middle_x_m(bay, side), line);
                let inward = inward(side);
                let turned = DVec2::from_angle(inward * bay.lift.column.turned.rad());
                middle + turned * (inward * bay.lift.column.width.m() * 0.5)
            }),
            walls_m: [walls - half, walls + half],
            depth_m: bay.garage.depth.m(),
            room_m: bay.policy.measured_garage.m(),
        }
    }

    /// Half the diagonal of a plate: what an angle is multiplied by to be an unknown in metres.
    #[must_use]
    pub fn arm_m(&self) -> f64 {
        self.half_m.length()
    }

    /// The planned unknowns: for each post its plate's middle and its turn.
    #[must_use]
    pub fn start(&self) -> [f64; 6] {
        let [left, right] = self.middle_m;
        [left.x, left.y, 0.0, right.x, right.y, 0.0]
    }

    /// A corner from the middle of its plate.
    #[must_use]
    pub fn corner_m(&self, corner: PlateCorner) -> DVec2 {
        let outward = match corner.side {
            Side::Left => -1.0,
            Side::Right => 1.0,
        };
        let x = match corner.number {
            1 | 4 => outward,
            _ => -outward,
        };
        let y = if corner.number <= 2 { -1.0 } else { 1.0 };
        self.half_m * DVec2::new(x, y)
    }

    /// A mark for given unknowns, and how each of the two coordinates moves with the mark's own post
    /// (its x, its y, its turn).
    fn place(&self, mark: Mark, unknowns: &[f64]) -> (DVec2, [DVec2; 3]) {
        let fixed = |x: f64, y: f64| (DVec2::new(x, y), [DVec2::ZERO; 3]);
        let (side, from_middle) = match mark {
            Mark::A => return fixed(self.walls_m[0] + of_room(unknowns, 0), 0.0),
            Mark::B => return fixed(self.walls_m[1] + of_room(unknowns, 1), 0.0),
            Mark::C => return fixed(0.0, 0.0),
            Mark::Face(side) => (side, self.face_m[index(side)] - self.middle_m[index(side)]),
            Mark::Corner(corner) => (corner.side, self.corner_m(corner)),
        };
        let own = &unknowns[3 * index(side)..];
        let turned = DVec2::from_angle(own[2] / self.arm_m()).rotate(from_middle);
        (
            DVec2::new(own[0], own[1]) + turned,
            [DVec2::X, DVec2::Y, turned.perp() / self.arm_m()],
        )
    }

    /// Where a mark lies for given unknowns.
    #[must_use]
    pub fn at(&self, mark: Mark, unknowns: &[f64]) -> DVec2 {
        self.place(mark, unknowns).0
    }

    /// What a tape shows for given unknowns, and how that changes with each of them. The room's may be
    /// left out: it then stands as the bay file has it.
    #[must_use]
    pub fn row(&self, over: Over, unknowns: &[f64]) -> Row {
        let mut slopes = vec![0.0; unknowns.len()];
        let mut add = |mark: Mark, moves: [DVec2; 3], along: DVec2| {
            if let Some(side) = mark.post() {
                for (slope, moves) in slopes[3 * index(side)..].iter_mut().zip(moves) {
                    *slope += along.dot(moves);
                }
            }
            let wall = match mark {
                Mark::A => OF_POSTS,
                Mark::B => OF_POSTS + 1,
                _ => return,
            };
            if let Some(slope) = slopes.get_mut(wall) {
                *slope += along.x;
            }
        };
        let computed = match over {
            Over::Between(from, to) => {
                let ((a, a_moves), (b, b_moves)) =
                    (self.place(from, unknowns), self.place(to, unknowns));
                let along = (b - a).normalize_or_zero();
                add(from, a_moves, -along);
                add(to, b_moves, along);
                (b - a).length()
            }
            Over::Wall(wall, mark) => {
                let (at, moves) = self.place(mark, unknowns);
                let room = |wall: usize| of_room(unknowns, wall);
                let (along, off, own) = match wall {
                    FromWall::Door => (DVec2::Y, 0.0, None),
                    FromWall::Left => (DVec2::X, -self.walls_m[0] - room(0), Some((0, -1.0))),
                    FromWall::Right => (DVec2::NEG_X, self.walls_m[1] + room(1), Some((1, 1.0))),
                    FromWall::Back => (DVec2::NEG_Y, self.depth_m + room(2), Some((2, 1.0))),
                };
                add(mark, moves, along);
                if let Some((wall, sign)) = own
                    && let Some(slope) = slopes.get_mut(OF_POSTS + wall)
                {
                    *slope += sign;
                }
                along.dot(at) + off
            }
        };
        Row { computed, slopes }
    }

    /// What was measured, in words.
    #[must_use]
    pub fn says(over: Over) -> String {
        match over {
            Over::Between(from, to) => format!("{} to {}", from.letters(), to.letters()),
            Over::Wall(wall, to) => format!("{} to {}", wall.name(), to.letters()),
        }
    }
}

/// How far a wall stands off, where the unknowns have it.
fn of_room(unknowns: &[f64], wall: usize) -> f64 {
    unknowns.get(OF_POSTS + wall).copied().unwrap_or(0.0)
}
