//! What holds the whole of a sectional door on its whole way, from shut to open?
//!
//! Every panel is a bar whose lower hinge runs along the main track and whose upper hinge follows
//! it one panel height ahead. Both only move forward (see [`super::linkage`]), so while the lower
//! one runs from `a` to `b` the upper one stays between its places for `a` and for `b`, and both
//! pieces of track lie in the triangles of [`Track::triangle`]. The bar's direction only turns
//! from upright to level:
//!
//! - Both hinges on the main track: the bar's direction is a mean of the track's directions between
//!   them, and the track turns one way. So the lower hinge moves off the bar's line to the outer
//!   side or along it, the upper one to the inner side or along it: both turn the bar toward level.
//! - Top edge on a track of its own: while it runs level, the height between the hinges only
//!   shrinks as the lower one climbs, and their distance is fixed. Before that both stand on the
//!   upright run or its first turn, which is the first case for that track.
//!
//! So [`Sweep`] applies to each interval. Panels are all alike: one set of intervals, for the lower
//! hinge from the floor to where the top panel's stands with the door open, holds them all.

use super::linkage::Linkage;
use super::sectional::{BRACKET_M, half_width_m};
use super::sweep::Sweep;
use super::track::Track;
use crate::bay::{Bay, SectionalDoor};
use crate::solids::outline::along_x;
use crate::solids::{Role, Solid};

/// How many intervals the part of the way is cut into where panels turn.
const INTERVALS: u32 = 24;
/// The same for a top edge on a track of its own, which turns on a much shorter way.
const TOP_INTERVALS: u32 = 8;
/// Cuts nearer than this are one cut.
const SAME_PLACE_M: f64 = 1e-9;

/// Solids that hold every panel and the top bracket at every point of travel.
pub(super) fn running(bay: &Bay, door: &SectionalDoor) -> Vec<Solid> {
    let linkage = Linkage::of(bay, door);
    let half_width = half_width_m(bay, door);
    let half_thickness = 0.5 * door.panel_thickness.m();
    let (shut, open) = (linkage.joints(0.0), linkage.joints(1.0));
    let top = linkage.panels - 1;
    let own_top_track = linkage.top_track != linkage.track;
    let mut solids = Vec::new();
    let mut add = |label: &str, way: [f64; 2], pieces: u32, bar: &Bar| {
        for (i, [a, b]) in intervals(&linkage, way, pieces).into_iter().enumerate() {
            solids.push(along_x(
                format!("door/running {label} {}", i + 1),
                Role::DoorPanel,
                [-half_width, half_width],
                bar.sweep(&linkage, a, b).points(),
            ));
        }
    };

    let panel = Bar {
        next: Linkage::next_m,
        upper: &linkage.track,
        from: 0.0,
        faces_m: [-half_thickness, half_thickness],
    };
    let top_panel = Bar {
        next: Linkage::top_m,
        upper: &linkage.top_track,
        ..panel
    };
    let top_way = [shut[top].along_m, open[top].along_m];
    if own_top_track {
        // Once its top edge is on the level run that both tracks share, the top panel moves as
        // every other panel does.
        let shared_from = top_joins_m(&linkage, top_way);
        let below = if top > 0 { open[top - 1].along_m } else { 0.0 };
        if shared_from < below {
            add("panels", [0.0, top_way[1]], INTERVALS, &panel);
            add(
                "top panel",
                [top_way[0], shared_from],
                TOP_INTERVALS,
                &top_panel,
            );
        } else {
            add("panels", [0.0, below], INTERVALS, &panel);
            add("top panel", top_way, INTERVALS, &top_panel);
        }
    } else {
        add("panels", [0.0, top_way[1]], INTERVALS, &panel);
    }
    if door.top_bracket.m() > 0.0 {
        let bracket = Bar {
            from: 1.0 - (BRACKET_M / linkage.panel_height_m).min(1.0),
            faces_m: [half_thickness, half_thickness + door.top_bracket.m()],
            ..top_panel
        };
        add("bracket", top_way, INTERVALS, &bracket);
    }
    solids
}

/// Where on its way the top panel's lower hinge stands when the top edge comes to the level run
/// that both tracks share, or a hair beyond; the end of the way if it never does.
fn top_joins_m(linkage: &Linkage, way: [f64; 2]) -> f64 {
    let level_y_m = linkage.track.point(linkage.track.level_from_m()).x;
    let [mut low, mut high] = way;
    for _ in 0..60 {
        let middle = 0.5 * (low + high);
        if linkage.top_track.point(linkage.top_m(middle)).x < level_y_m {
            low = middle;
        } else {
            high = middle;
        }
    }
    high
}

/// A panel, or the part of one that the bracket stands on, and how its upper hinge follows.
#[derive(Clone, Copy)]
struct Bar<'a> {
    next: fn(&Linkage, f64) -> f64,
    upper: &'a Track,
    from: f64,
    faces_m: [f64; 2],
}

impl Bar<'_> {
    /// Its motion while its lower hinge runs from `a_m` to `b_m` along the main track.
    fn sweep(&self, linkage: &Linkage, a_m: f64, b_m: f64) -> Sweep {
        let ends = [a_m, b_m].map(|along_m| (along_m, (self.next)(linkage, along_m)));
        let along = ends.map(|(lower_m, upper_m)| {
            (self.upper.point(upper_m) - linkage.track.point(lower_m)).normalize()
        });
        Sweep {
            lower: linkage.track.triangle(a_m, b_m),
            upper: self.upper.triangle(ends[0].1, ends[1].1),
            along,
            from: self.from,
            faces_m: self.faces_m,
        }
    }
}

/// Cuts the way of a lower hinge: one piece while its panel stands upright, even pieces while it
/// turns, one piece while it lies level.
fn intervals(linkage: &Linkage, way: [f64; 2], pieces: u32) -> Vec<[f64; 2]> {
    let [start, end] = way;
    // A panel with its top edge on the main track stands upright up to here; one with its top edge
    // on a track of its own starts to turn at once, and starts beyond here.
    let upright_to = (linkage.track.upright_m - linkage.panel_height_m).clamp(start, end);
    let level_from = linkage.track.level_from_m().clamp(upright_to, end);
    let cut = |i: u32| upright_to + (level_from - upright_to) * f64::from(i) / f64::from(pieces);
    if end - start <= 0.0 {
        return Vec::new();
    }
    let mut cuts = vec![start];
    for at in (0..=pieces).map(cut) {
        // A cut that rounding alone parts from another only splits off nothing.
        if at - cuts[cuts.len() - 1] > SAME_PLACE_M && end - at > SAME_PLACE_M {
            cuts.push(at);
        }
    }
    cuts.push(end);
    cuts.windows(2).map(|pair| [pair[0], pair[1]]).collect()
}
