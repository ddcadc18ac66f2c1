//! How far apart are two convex things? The slow way, written for the tests alone.
//!
//! A thing is the convex hull of posed boxes, cylinders and point sets, widened by an axis-aligned
//! box. The distance is that of the origin from the difference of the two: the nearest point of a
//! growing simplex, taken by trying every one of its vertices, edges, faces and its inside, until
//! the support plane through it shows that nothing is nearer. The result is a bracket of that
//! plane (never too large) and that point (never too small).
//!
//! The bracket is itself checked against hand values, and for polytopes against the features:
//! separated by an axis among face normals and edge products, else the least over all pairs of a
//! vertex and a face and of two edges.

use bayrise::solids::{Pose, Shape};
use glam::DVec3;

/// A convex thing.
#[derive(Debug, Clone)]
pub(crate) struct Thing {
    points: Vec<DVec3>,
    rounds: Vec<Round>,
    spread: DVec3,
}

/// A posed cylinder: middle, unit axis, half length, radius.
#[derive(Debug, Clone, Copy)]
struct Round {
    middle: DVec3,
    axis: DVec3,
    half: f64,
    radius: f64,
}

impl Thing {
    pub(crate) fn new(shape: &Shape, poses: &[Pose], spread: DVec3) -> Self {
        let mut thing = Self {
            points: Vec::new(),
            rounds: Vec::new(),
            spread,
        };
        for pose in poses {
            let place = |p: DVec3| pose.rotation * p + pose.translation;
            match shape {
                Shape::Box { half } => {
                    for x in [-half.x, half.x] {
                        for y in [-half.y, half.y] {
                            for z in [-half.z, half.z] {
                                thing.points.push(place(DVec3::new(x, y, z)));
                            }
                        }
                    }
                }
                Shape::Prism { vertices } => {
                    thing.points.extend(vertices.iter().map(|&v| place(v)))
                }
                Shape::Cylinder {
                    radius,
                    half_height,
                } => thing.rounds.push(Round {
                    middle: pose.translation,
                    axis: pose.rotation * DVec3::Z,
                    half: *half_height,
                    radius: *radius,
                }),
            }
        }
        thing
    }

    /// The farthest point along `way`.
    pub(crate) fn farthest(&self, way: DVec3) -> DVec3 {
        let mut best = DVec3::ZERO;
        let mut most = f64::NEG_INFINITY;
        for &point in &self.points {
            let along = point.dot(way);
            if along > most {
                (best, most) = (point, along);
            }
        }
        for round in &self.rounds {
            let end = if round.axis.dot(way) > 0.0 {
                round.half
            } else {
                -round.half
            };
            let flat = way - round.axis * round.axis.dot(way);
            let rim = if flat.length() > 1e-12 {
                flat / flat.length() * round.radius
            } else {
                DVec3::ZERO
            };
            let point = round.middle + round.axis * end + rim;
            let along = point.dot(way);
            if along > most {
                (best, most) = (point, along);
            }
        }
        let sign = |v: f64| if v > 0.0 { 1.0 } else { -1.0 };
        best + self.spread * DVec3::new(sign(way.x), sign(way.y), sign(way.z))
    }

    /// How far the thing reaches along `way`, a unit vector.
    pub(crate) fn reach(&self, way: DVec3) -> f64 {
        self.farthest(way).dot(way)
    }

    pub(crate) fn bounds(&self) -> (DVec3, DVec3) {
        let axes = [DVec3::X, DVec3::Y, DVec3::Z];
        let high = axes.map(|axis| self.reach(axis));
        let low = axes.map(|axis| -self.reach(-axis));
        (DVec3::from_array(low), DVec3::from_array(high))
    }
}

/// Between these lies the true distance; both 0 when the things meet.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Bracket {
    pub(crate) lower: f64,
    pub(crate) upper: f64,
}

/// The distance of `a`, moved by `shift`, from `b`.
pub(crate) fn distance(a: &Thing, shift: DVec3, b: &Thing) -> Bracket {
    let far = |way: DVec3| b.farthest(way) - a.farthest(-way) - shift;
    let mut nearest = far(DVec3::X);
    let mut corners = Simplex::default();
    corners.push(nearest);
    let mut lower = 0.0_f64;
    for _ in 0..500 {
        let length = nearest.length();
        if length < 1e-10 {
            return Bracket {
                lower: 0.0,
                upper: 0.0,
            };
        }
        let next = far(-nearest);
        lower = lower.max(next.dot(nearest) / length);
        if length - lower <= 1e-9 {
            break;
        }
        corners.push(next);
        let (point, kept) = nearest_of_simplex(corners);
        // No nearer: the arithmetic is spent, the bracket says how well it did.
        if point.length() >= length {
            break;
        }
        nearest = point;
        corners = kept;
        if corners.count == 4 {
            return Bracket {
                lower: 0.0,
                upper: 0.0,
            };
        }
    }
    Bracket {
        lower,
        upper: nearest.length(),
    }
}

/// Up to four corners.
#[derive(Debug, Clone, Copy, Default)]
struct Simplex {
    corners: [DVec3; 4],
    count: usize,
}

impl Simplex {
    fn push(&mut self, corner: DVec3) {
        self.corners[self.count] = corner;
        self.count += 1;
    }
}

/// The point of the hull of up to four corners nearest to the origin, and the corners it lies
/// between: the best over every subset.
fn nearest_of_simplex(simplex: Simplex) -> (DVec3, Simplex) {
    let mut best = (DVec3::INFINITY, Simplex::default());
    let mut least = f64::INFINITY;
    for subset in 1_u32..1 << simplex.count {
        let mut chosen = Simplex::default();
        for i in 0..simplex.count {
            if subset >> i & 1 == 1 {
                chosen.push(simplex.corners[i]);
            }
        }
        let Some(point) = nearest_inside(&chosen.corners[..chosen.count]) else {
            continue;
        };
        let length = point.length_squared();
        if length < least {
            least = length;
            best = (point, chosen);
        }
    }
    best
}

/// The foot of the origin on the flat through the corners, when it lies between them.
fn nearest_inside(corners: &[DVec3]) -> Option<DVec3> {
    match *corners {
        [a] => Some(a),
        [a, b] => {
            let ab = b - a;
            let share = -a.dot(ab) / ab.dot(ab);
            (0.0..=1.0).contains(&share).then(|| a + ab * share)
        }
        [a, b, c] => {
            let normal = (b - a).cross(c - a);
            let square = normal.dot(normal);
            if square <= 1e-30 {
                return None;
            }
            let foot = normal * (a.dot(normal) / square);
            let inside = [(a, b), (b, c), (c, a)]
                .iter()
                .all(|&(from, to)| (to - from).cross(foot - from).dot(normal) >= 0.0);
            inside.then_some(foot)
        }
        [a, b, c, d] => {
            let volume = (b - a).dot((c - a).cross(d - a));
            if volume.abs() <= 1e-30 {
                return None;
            }
            // The origin lies inside when it is on the same side of each face as the corner
            // opposite.
            let faces = [(a, b, c, d), (a, b, d, c), (a, c, d, b), (b, c, d, a)];
            let inside = faces.iter().all(|&(p, q, r, opposite)| {
                let normal = (q - p).cross(r - p);
                normal.dot(-p) * normal.dot(opposite - p) >= 0.0
            });
            inside.then_some(DVec3::ZERO)
        }
        _ => None,
    }
}

/// Distances of polytopes by their features.
mod features {
    use glam::DVec3;

    /// A prism: a convex polygon (counter-clockwise) and the way it is drawn out.
    pub(super) struct Prism {
        pub(super) corners: Vec<DVec3>,
        faces: Vec<Vec<usize>>,
        edges: Vec<(usize, usize)>,
    }

    impl Prism {
        pub(super) fn new(base: &[DVec3], out: DVec3) -> Self {
            let n = base.len();
            let mut corners = base.to_vec();
            corners.extend(base.iter().map(|&corner| corner + out));
            let mut faces = vec![(0..n).collect(), (n..2 * n).collect()];
            let mut edges = Vec::new();
            for i in 0..n {
                let j = (i + 1) % n;
                faces.push(vec![i, j, n + j, n + i]);
                edges.extend([(i, j), (n + i, n + j), (i, n + i)]);
            }
            Self {
                corners,
                faces,
                edges,
            }
        }

        fn normals(&self) -> Vec<DVec3> {
            self.faces
                .iter()
                .map(|face| {
                    let [a, b, c] = [0, 1, 2].map(|i| self.corners[face[i]]);
                    (b - a).cross(c - a).normalize()
                })
                .collect()
        }

        fn ways(&self) -> Vec<DVec3> {
            self.edges
                .iter()
                .map(|&(a, b)| self.corners[b] - self.corners[a])
                .collect()
        }
    }

    /// Whether no axis separates the two.
    pub(super) fn overlap(a: &Prism, b: &Prism) -> bool {
        let mut axes = a.normals();
        axes.extend(b.normals());
        for way in a.ways() {
            for other in b.ways() {
                axes.push(way.cross(other).normalize_or_zero());
            }
        }
        let span = |prism: &Prism, axis: DVec3| {
            let along = prism.corners.iter().map(|corner| corner.dot(axis));
            along.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), value| {
                (low.min(value), high.max(value))
            })
        };
        axes.iter().filter(|axis| axis.length() > 0.5).all(|&axis| {
            let (a, b) = (span(a, axis), span(b, axis));
            a.0 <= b.1 && b.0 <= a.1
        })
    }

    /// Least distance over the features of two prisms that do not meet.
    pub(super) fn distance(a: &Prism, b: &Prism) -> f64 {
        let mut least = f64::INFINITY;
        for (one, other) in [(a, b), (b, a)] {
            for &point in &one.corners {
                for face in &other.faces {
                    least = least.min(to_face(point, face, &other.corners));
                }
            }
        }
        for &(p, q) in &a.edges {
            for &(r, s) in &b.edges {
                least = least.min(between_edges(
                    (a.corners[p], a.corners[q]),
                    (b.corners[r], b.corners[s]),
                ));
            }
        }
        least
    }

    /// The distance of a point from a convex face where its foot lies inside; else from an edge
    /// (which the pairs of edges count as well).
    fn to_face(point: DVec3, face: &[usize], corners: &[DVec3]) -> f64 {
        let [a, b, c] = [0, 1, 2].map(|i| corners[face[i]]);
        let normal = (b - a).cross(c - a).normalize();
        let foot = point - normal * normal.dot(point - a);
        let inside = (0..face.len()).all(|i| {
            let (from, to) = (corners[face[i]], corners[face[(i + 1) % face.len()]]);
            (to - from).cross(foot - from).dot(normal) >= 0.0
        });
        if inside {
            point.distance(foot)
        } else {
            f64::INFINITY
        }
    }

    fn between_edges((p, q): (DVec3, DVec3), (r, s): (DVec3, DVec3)) -> f64 {
        let to_segment = |point: DVec3, (from, to): (DVec3, DVec3)| {
            let way = to - from;
            let share = ((point - from).dot(way) / way.dot(way)).clamp(0.0, 1.0);
            point.distance(from + way * share)
        };
        let mut least = to_segment(p, (r, s))
            .min(to_segment(q, (r, s)))
            .min(to_segment(r, (p, q)))
            .min(to_segment(s, (p, q)));
        // Where the common perpendicular meets both inside.
        let (u, v, w) = (q - p, s - r, p - r);
        let (a, b, c) = (u.dot(u), u.dot(v), v.dot(v));
        let determinant = a * c - b * b;
        if determinant > 1e-12 {
            let t = (b * v.dot(w) - c * u.dot(w)) / determinant;
            let k = (a * v.dot(w) - b * u.dot(w)) / determinant;
            if (0.0..=1.0).contains(&t) && (0.0..=1.0).contains(&k) {
                least = least.min((p + u * t).distance(r + v * k));
            }
        }
        least
    }
}

#[cfg(test)]
mod tests {
    use std::f64::consts::{FRAC_PI_2, FRAC_PI_4};

    use super::features::Prism;
    use super::*;
    use crate::rng::Rng;
    use glam::DQuat;

    fn box_at(half: DVec3, rotation: DQuat, at: DVec3) -> Thing {
        Thing::new(
            &Shape::Box { half },
            &[Pose::new(rotation, at)],
            DVec3::ZERO,
        )
    }

    fn bar(radius: f64, half_height: f64, rotation: DQuat, at: DVec3) -> Thing {
        let shape = Shape::Cylinder {
            radius,
            half_height,
        };
        Thing::new(&shape, &[Pose::new(rotation, at)], DVec3::ZERO)
    }

    #[track_caller]
    fn close(a: &Thing, shift: DVec3, b: &Thing, expected: f64) {
        let found = distance(a, shift, b);
        assert!(
            (found.lower - expected).abs() < 1e-8 && (found.upper - expected).abs() < 1e-8,
            "{found:?} is not {expected}"
        );
    }

    #[test]
    fn hand_values() {
        let unit = DVec3::splat(0.5);
        let cube = box_at(unit, DQuat::IDENTITY, DVec3::ZERO);
        // Face to face: 3 - 0.5 - 0.5.
        close(&cube, DVec3::X * -3.0, &cube, 2.0);
        // Corner to corner: gaps of 1, 2 and 2 give 3.
        close(&cube, DVec3::new(2.0, 3.0, 3.0), &cube, 3.0);
        // Turned by 45 degrees, an edge stands sqrt(0.5) out of the middle.
        let turned = box_at(unit, DQuat::from_rotation_z(FRAC_PI_4), DVec3::X * 2.0);
        close(&cube, DVec3::ZERO, &turned, 1.5 - 0.5_f64.sqrt());
        // Two upright cylinders: 1 apart, radii 0.2 and 0.3.
        let upright = bar(0.2, 1.0, DQuat::IDENTITY, DVec3::ZERO);
        let other = bar(0.3, 1.0, DQuat::IDENTITY, DVec3::new(0.6, 0.8, 0.0));
        close(&upright, DVec3::ZERO, &other, 0.5);
        // Crossed at right angles: the axes stand 0.9 apart, the round sides face each other.
        let lying = bar(0.3, 1.0, DQuat::from_rotation_y(FRAC_PI_2), DVec3::Y * 0.9);
        close(&upright, DVec3::ZERO, &lying, 0.4);
        // A cube past the rim of an upright cylinder: 3-4-5 from (0.3 out, 0.4 up).
        let beside = box_at(unit, DQuat::IDENTITY, DVec3::new(1.0, 0.0, 1.9));
        close(&upright, DVec3::ZERO, &beside, 0.5);
        // A cube's lowest corner over a flat cube: the space diagonal's half is sqrt(0.75).
        let on_corner = box_at(
            unit,
            DQuat::from_rotation_arc(DVec3::ONE.normalize(), DVec3::Z),
            DVec3::Z * 2.0,
        );
        close(&cube, DVec3::ZERO, &on_corner, 1.5 - 0.75_f64.sqrt());
    }

    #[test]
    fn spread_and_several_poses_by_hand() {
        // A cube in two places, 4 apart, reaches from -0.5 to 4.5; widened by 0.1 to 4.6.
        let shape = Shape::Box {
            half: DVec3::splat(0.5),
        };
        let poses = [Pose::IDENTITY, Pose::at(DVec3::X * 4.0)];
        let long = Thing::new(&shape, &poses, DVec3::splat(0.1));
        let cube = Thing::new(&shape, &[Pose::IDENTITY], DVec3::ZERO);
        close(&cube, DVec3::X * 6.0, &long, 6.0 - 0.5 - 4.6);
        close(&cube, DVec3::new(2.0, 0.0, 3.0), &long, 3.0 - 0.5 - 0.6);
    }

    #[test]
    fn meeting_things_are_nothing_apart() {
        let cube = box_at(DVec3::splat(0.5), DQuat::IDENTITY, DVec3::ZERO);
        let inside = bar(0.1, 0.1, DQuat::IDENTITY, DVec3::splat(0.3));
        assert_eq!(distance(&cube, DVec3::ZERO, &inside).upper, 0.0);
        assert_eq!(distance(&cube, DVec3::X * 0.99, &cube).upper, 0.0);
    }

    fn random_prism(rng: &mut Rng, at: DVec3) -> (Prism, Thing) {
        let turn = rng.turn(3.0);
        let count = 3 + rng.below(4);
        let start = rng.between(0.0, 6.0);
        let radius = rng.between(0.05, 0.6);
        let base: Vec<DVec3> = (0..count)
            .map(|i| {
                let angle = start + i as f64 * std::f64::consts::TAU / count as f64;
                at + turn * (DVec3::new(angle.cos(), angle.sin(), 0.0) * radius)
            })
            .collect();
        let out = turn * DVec3::Z * rng.between(0.05, 1.5);
        let prism = Prism::new(&base, out);
        let shape = Shape::Prism {
            vertices: prism.corners.clone(),
        };
        let thing = Thing::new(&shape, &[Pose::IDENTITY], DVec3::ZERO);
        (prism, thing)
    }

    #[test]
    fn prisms_agree_with_their_features() {
        let mut rng = Rng::new(11);
        let (mut apart, mut meet) = (0, 0);
        for round in 0..400 {
            let (a, thing_a) = random_prism(&mut rng, DVec3::ZERO);
            let at = rng.point(DVec3::splat(-0.9), DVec3::splat(0.9));
            let (b, thing_b) = random_prism(&mut rng, at);
            let found = distance(&thing_a, DVec3::ZERO, &thing_b);
            if features::overlap(&a, &b) {
                meet += 1;
                assert!(found.upper < 1e-9, "round {round}: {found:?}");
            } else {
                apart += 1;
                let expected = features::distance(&a, &b);
                assert!(
                    (found.upper - expected).abs() < 1e-8 && expected - found.lower < 1e-8,
                    "round {round}: {found:?} is not {expected}"
                );
            }
        }
        assert!(apart > 100 && meet > 50, "{apart} apart, {meet} meet");
    }
}
