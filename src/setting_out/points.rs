//! Which points are marked on the floor?

use glam::DVec2;

use super::way::{HOOK_M, meets, standing};
use crate::bay::{Bay, Side};
use crate::ground::slab::{SlabMap, anchors_m, plate_rect};
use crate::solids::ParkingError;
use crate::solids::attitude::at_rest;
use crate::solids::posts::{inner_face_x_m, inward};
use crate::solids::vehicle::wheel_middle_m;

/// A point on the floor.
#[derive(Debug, Clone, PartialEq)]
pub struct FloorPoint {
    /// Its letter, or letters and a number.
    pub letter: String,
    /// What it is.
    pub what: String,
    /// What it belongs to.
    pub kind: PointKind,
    /// Where it lies, bay x and y, metres.
    pub at_m: DVec2,
}

/// What a point belongs to.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum PointKind {
    /// Base line and centre line.
    Line,
    /// The post line.
    Posts,
    /// A corner of a plate.
    Plate(Side),
    /// The middle of a hole.
    Hole(Side),
    /// Where the tyres stand.
    Parking,
}

/// A side of the 3-4-5 triangle's unit, where the file is imperial and where it is metric.
const UNIT_M: [f64; 2] = [0.3048, 0.3];

/// The largest whole multiple of 3-4-5 that fits, metres: along the base line from the centre
/// line, along the centre line, and across. None in a room too small for any.
pub(super) fn triangle(bay: &Bay) -> Option<(f64, [f64; 3])> {
    let across = bay.lift.across.m();
    let [left, right] = walls(bay);
    // Toward the farther side wall.
    let (toward, room) = if right - across >= across - left {
        (1.0, right - across)
    } else {
        (-1.0, across - left)
    };
    let unit = match bay.units {
        crate::bay::UnitSystem::Imperial => UNIT_M[0],
        crate::bay::UnitSystem::Metric => UNIT_M[1],
    };
    let depth = bay.garage.depth.m();
    let times = (room / (3.0 * unit)).min(depth / (4.0 * unit)).floor();
    (times >= 1.0).then(|| (toward, [3.0, 4.0, 5.0].map(|side| side * times * unit)))
}

/// Where H and J lie.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Feet {
    /// From the lift's middle, metres.
    pub(super) half_m: f64,
    /// Whether they are not level with the posts' nearest edges, since something stands there.
    pub(super) moved: bool,
}

/// What H and J are moved by, where the file is imperial and where it is metric, metres.
const FOOT_STEP_M: [f64; 2] = [0.0254, 0.01];
/// The nearest to the middle that they are moved, as a share of half the posts' spacing: nearer, their
/// diagonals would hardly tell what is square.
const NEAREST: f64 = 0.5;

/// H and J, half the posts' spacing from the lift's middle; where a mark can't be made there, on either
/// side, at the next distance toward the middle, or else away from it, at which both can.
pub(super) fn feet(bay: &Bay) -> Feet {
    let things = standing(bay);
    let across = bay.lift.across.m();
    let [left, right] = walls(bay);
    let is_clear = |half_m: f64| {
        [-half_m, half_m].iter().all(|off| {
            let at = DVec2::new(across + off, 0.0);
            let inside = at.x > left + HOOK_M && at.x < right - HOOK_M;
            inside && !things.iter().any(|one| meets(&one.solid, [at; 2], HOOK_M))
        })
    };
    let half_m = bay.lift.spacing.m() * 0.5;
    let as_it_is = Feet {
        half_m,
        moved: false,
    };
    if is_clear(half_m) {
        return as_it_is;
    }
    let step = match bay.units {
        crate::bay::UnitSystem::Imperial => FOOT_STEP_M[0],
        crate::bay::UnitSystem::Metric => FOOT_STEP_M[1],
    };
    let first = (half_m / step).floor();
    let steps = || std::iter::successors(Some(0.0_f64), |count| Some(count + 1.0));
    let inward = steps()
        .map(|count| (first - count) * step)
        .take_while(|half| *half >= NEAREST * half_m);
    let outward = steps()
        .map(|count| (first + 1.0 + count) * step)
        .take_while(|half| across + half < right || across - half > left);
    let found = inward.chain(outward).find(|half| is_clear(*half));
    found.map_or(as_it_is, |half_m| Feet {
        half_m,
        moved: true,
    })
}

/// Whether the columns stand turned, so that no face of theirs lies along the bay.
pub(super) fn is_turned(bay: &Bay) -> bool {
    bay.lift.column.turned.rad() != 0.0
}

/// The inner faces of the side walls, bay x.
pub(super) fn walls(bay: &Bay) -> [f64; 2] {
    let middle = -bay.garage.opening.offset.m();
    let half = bay.garage.width.m() * 0.5;
    [middle - half, middle + half]
}

/// Every point, in the order in which they are marked.
pub(super) fn points(bay: &Bay, holes: bool) -> Vec<FloorPoint> {
    let mut points = Vec::with_capacity(40);
    let mut put = |letter: String, what: &str, kind: PointKind, x: f64, y: f64| {
        points.push(FloorPoint {
            letter,
            what: what.into(),
            kind,
            at_m: DVec2::new(x, y),
        });
    };
    let [left, right] = walls(bay);
    let (across, line) = (bay.lift.across.m(), bay.lift.post_line.m());
    let one = |letter: &str| letter.to_owned();
    let kind = PointKind::Line;
    put(
        one("A"),
        "corner of door wall and left wall",
        kind,
        left,
        0.0,
    );
    put(
        one("B"),
        "corner of door wall and right wall",
        kind,
        right,
        0.0,
    );
    put(one("C"), "middle of the door opening", kind, 0.0, 0.0);
    if across.abs() > 1e-9 {
        put(
            one("D"),
            "middle of the lift on the base line",
            kind,
            across,
            0.0,
        );
    }
    if let Some((toward, [three, four, _])) = triangle(bay) {
        let what = "3-4-5, on the base line";
        put(one("E"), what, kind, across + toward * three, 0.0);
        put(one("F"), "3-4-5, on the centre line", kind, across, four);
    }
    let kind = PointKind::Posts;
    put(one("G"), "middle of the post line", kind, across, line);
    let feet = feet(bay);
    let foot_what = if feet.moved {
        "on the base line, for the diagonals"
    } else {
        "on the base line, level with a post's face"
    };
    let post_what = if is_turned(bay) {
        "on the post line, level with a post's nearest edge"
    } else {
        "inner face of a post on the post line"
    };
    for (side, base, post) in [(Side::Left, "H", "K"), (Side::Right, "J", "L")] {
        let foot = across - inward(side) * feet.half_m;
        put(one(base), foot_what, kind, foot, 0.0);
        let face = inner_face_x_m(bay, side);
        put(one(post), post_what, kind, face, line);
    }
    if let Some(tyres) = tyres(bay) {
        for (at, (letter, word)) in tyres.into_iter().zip([("M", "front"), ("N", "rear")]) {
            let what = format!("middle between the {word} tyres");
            put(one(letter), &what, PointKind::Parking, at.x, at.y);
        }
    }
    for (side, name) in SIDES {
        // Around the plate: rear outer, rear inner, front inner, front outer.
        let rect = plate_rect(bay, side);
        let (outer, inner) = match side {
            Side::Left => (rect.low.x, rect.high.x),
            Side::Right => (rect.high.x, rect.low.x),
        };
        let corners = [
            ("rear outer corner", outer, rect.low.y),
            ("rear inner corner", inner, rect.low.y),
            ("front inner corner", inner, rect.high.y),
            ("front outer corner", outer, rect.high.y),
        ];
        for (number, (what, x, y)) in corners.into_iter().enumerate() {
            let letter = format!("{name}P{}", number + 1);
            put(letter, what, PointKind::Plate(side), x, y);
        }
    }
    if holes {
        let map = SlabMap::of(bay);
        for (side, name) in SIDES {
            for (number, at) in anchors_m(bay, &map, side).into_iter().enumerate() {
                let letter = format!("{name}H{}", number + 1);
                put(letter, "anchor hole", PointKind::Hole(side), at.x, at.y);
            }
        }
    }
    points
}

/// The middle between the tyres of the front and the rear axle, as parked, bay x and y; none where
/// it can't be said how the vehicle stands.
fn tyres(bay: &Bay) -> Option<[DVec2; 2]> {
    Some(axles(bay)?.map(|[one, other]| (one + other) * 0.5))
}

/// The middles of the wheels of the front and the rear axle, the same way.
pub(super) fn axles(bay: &Bay) -> Option<[[DVec2; 2]; 2]> {
    let pose = at_rest(bay, ParkingError::default()).ok()?;
    let wheel = |index| pose.point(wheel_middle_m(&bay.vehicle, index)).truncate();
    Some([[wheel(0), wheel(1)], [wheel(2), wheel(3)]])
}

/// Both sides and the letter that their points begin with.
pub(super) const SIDES: [(Side, &str); 2] = [(Side::Left, "L"), (Side::Right, "R")];
