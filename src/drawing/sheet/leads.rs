//! Which way does a leader go from a thing to what is said of it, so that it is read as that
//! thing's?
//!
//! Straight, unless it would then run over the point of another thing or through another leader:
//! then it turns at the drawing's edge.

use glam::DVec2;

use super::View;

/// So near to another's point a leader is taken to be that one's, millimetres.
const NEAR: f64 = 1.6;
/// Of things near each other: of the way from one to the other.
const SHARE: f64 = 0.3;
/// Things no farther off each other than this are not told apart by any way, millimetres.
const BESIDE: f64 = 2.5;
/// What it costs to run over another's point, to cross another leader, and to turn.
const OVER: f64 = 20.0;
const CROSSING: f64 = 3.0;
const TURN: f64 = 1.0;
/// What it costs to turn farther off the straight line, a millimetre.
const BENT: f64 = 0.4;
/// From one place of the turn that is tried to the next, millimetres, and how many each way.
const STEP: f64 = 1.0;
const STEPS: i32 = 16;

/// The leaders of a view.
pub(super) struct Leads {
    /// The points of things, and how far each reaches.
    points: Vec<(DVec2, f64)>,
    /// What is drawn already.
    drawn: Vec<[DVec2; 2]>,
    /// Lower left and upper right corner of the drawing.
    inner: (DVec2, DVec2),
}

impl Leads {
    pub(super) fn about(
        view: &View,
        place: &dyn Fn(DVec2) -> DVec2,
        inner: (DVec2, DVec2),
    ) -> Self {
        let led = view.callouts.iter().filter(|one| one.letter.is_none());
        let led = led.map(|one| (place(one.at_m), 0.0));
        let per_metre = place(DVec2::X).distance(place(DVec2::ZERO));
        let marks = view.marks.iter();
        let marks = marks.map(|mark| (place(mark.at_m), mark.clear_m * per_metre));
        Self {
            points: led.chain(marks).collect(),
            drawn: Vec::new(),
            inner,
        }
    }

    /// From a thing to the end of its label.
    pub(super) fn lead(&mut self, at: DVec2, end: DVec2) -> Vec<DVec2> {
        let edge = self.inner.1.x + 1.0;
        let turned = |y: f64| vec![at, DVec2::new(edge, y), end];
        let (lowest, highest) = (self.inner.0.y - 1.0, self.inner.1.y);
        let straight_y = at.y + (end.y - at.y) * ((edge - at.x) / (end.x - at.x)).clamp(0.0, 1.0);
        let mut ways = Vec::new();
        // Lower down straight ones would run through the dimensions below.
        let is_above = end.y >= lowest;
        if is_above {
            ways.push((0.0, vec![at, end]));
            if self.cost(&ways[0].1) <= 0.0 {
                return self.take(vec![at, end]);
            }
        }
        let base = if is_above { straight_y } else { at.y };
        let steps = (-STEPS..=STEPS).map(|step| base + f64::from(step) * STEP);
        let turns = steps.chain([at.y]);
        let turns = turns.filter(|y| (lowest..=highest).contains(y) || (*y - at.y).abs() < 1e-9);
        ways.extend(turns.map(|y| (TURN + (y - base).abs() * BENT, turned(y))));
        let cheapest = ways
            .into_iter()
            .min_by(|(a, one), (b, other)| (a + self.cost(one)).total_cmp(&(b + self.cost(other))));
        let way = cheapest.map_or_else(|| turned(at.y), |(_, way)| way);
        self.take(way)
    }

    fn take(&mut self, way: Vec<DVec2>) -> Vec<DVec2> {
        let ends = way
            .windows(2)
            .filter_map(|ends| <[DVec2; 2]>::try_from(ends).ok());
        self.drawn.extend(ends);
        way
    }

    /// What a way costs for what it runs over.
    fn cost(&self, way: &[DVec2]) -> f64 {
        let Some(own) = way.first() else {
            return 0.0;
        };
        let mut cost = 0.0;
        for ends in way.windows(2) {
            let &[a, b] = ends else { continue };
            for (point, reach) in &self.points {
                let beside = point.distance(*own) - reach;
                if beside > BESIDE {
                    let near = (NEAR + reach).min(beside * SHARE);
                    cost += OVER * (1.0 - off(*point, [a, b]) / near).max(0.0);
                }
            }
            let crossed = self.drawn.iter().filter(|other| cross([a, b], **other));
            #[allow(clippy::cast_precision_loss)] // some leaders
            let crossed = crossed.count() as f64;
            cost += crossed * CROSSING;
        }
        cost
    }
}

fn off(at: DVec2, [a, b]: [DVec2; 2]) -> f64 {
    let share = (at - a).dot(b - a) / (b - a).length_squared().max(1e-18);
    a.lerp(b, share.clamp(0.0, 1.0)).distance(at)
}

fn cross(one: [DVec2; 2], other: [DVec2; 2]) -> bool {
    let parted = |[a, b]: [DVec2; 2], [c, d]: [DVec2; 2]| {
        (b - a).perp_dot(c - a) * (b - a).perp_dot(d - a) < 0.0
    };
    parted(one, other) && parted(other, one)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn leads(points: &[[f64; 2]]) -> Leads {
        Leads {
            points: points.iter().map(|&at| (DVec2::from(at), 0.0)).collect(),
            drawn: Vec::new(),
            inner: (DVec2::ZERO, DVec2::new(100.0, 60.0)),
        }
    }

    #[test]
    fn a_leader_goes_straight_unless_another_thing_lies_there() {
        let (at, end) = (DVec2::new(20.0, 30.0), DVec2::new(110.0, 30.0));
        assert_eq!(leads(&[[20.0, 30.0]]).lead(at, end), [at, end]);
        let way = leads(&[[20.0, 30.0], [60.0, 30.0]]).lead(at, end);
        let other = DVec2::new(60.0, 30.0);
        let apart = way.windows(2).map(|ends| off(other, [ends[0], ends[1]]));
        assert!(apart.fold(f64::INFINITY, f64::min) > 1.0, "{way:?}");
        assert_eq!((way[0], way[2]), (at, end));
    }

    #[test]
    fn a_leader_to_a_label_below_the_drawing_turns_at_its_edge() {
        let (at, end) = (DVec2::new(20.0, 30.0), DVec2::new(110.0, -20.0));
        let way = leads(&[]).lead(at, end);
        assert!((way[1].x - 101.0).abs() < 1e-9);
        assert!(way[1].y >= -1.0, "{way:?}");
    }

    #[test]
    fn leaders_do_not_cross_where_a_turn_keeps_them_apart() {
        let mut leads = leads(&[]);
        let low = leads.lead(DVec2::new(90.0, 30.0), DVec2::new(110.0, 24.0));
        let (at, end) = (DVec2::new(60.0, 31.0), DVec2::new(110.0, 27.5));
        assert!(cross([at, end], [low[0], low[1]]), "straight they would");
        let high = leads.lead(at, end);
        for one in low.windows(2) {
            for other in high.windows(2) {
                assert!(!cross([one[0], one[1]], [other[0], other[1]]));
            }
        }
    }
}
