//! Does a leader run through a text?

use glam::DVec2;

/// Whether a line has a point inside a box, its lower left and upper right corner; one that only
/// touches its edge has none.
pub(super) fn crosses([from, to]: [DVec2; 2], (low, high): (DVec2, DVec2)) -> bool {
    let way = to - from;
    let (mut first, mut last) = (0.0_f64, 1.0_f64);
    for axis in 0..2 {
        if way[axis].abs() < 1e-12 {
            if from[axis] <= low[axis] || from[axis] >= high[axis] {
                return false;
            }
            continue;
        }
        let a = (low[axis] - from[axis]) / way[axis];
        let b = (high[axis] - from[axis]) / way[axis];
        first = first.max(a.min(b));
        last = last.min(a.max(b));
    }
    first < last - 1e-9
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_what_runs_through_a_box_crosses_it() {
        let area = (DVec2::ZERO, DVec2::new(4.0, 2.0));
        let line = |a: [f64; 2], b: [f64; 2]| crosses([DVec2::from(a), DVec2::from(b)], area);
        assert!(line([-1.0, 1.0], [5.0, 1.0]) && line([1.0, 1.0], [1.5, 1.0]));
        assert!(line([-1.0, -1.0], [2.0, 1.0]) && line([2.0, 5.0], [2.0, 1.9]));
        assert!(!line([-1.0, 2.0], [5.0, 2.0]) && !line([2.0, 5.0], [2.0, 2.0]));
        assert!(!line([-1.0, 0.5], [1.0, -2.0]) && !line([5.0, 1.0], [9.0, 1.0]));
    }
}
