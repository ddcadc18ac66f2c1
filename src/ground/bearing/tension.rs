//! How much tension does a post bring to the slab, at its underside and at its top?

use super::on_ground::GroundSlab;
use super::point::Bent;
use super::press::Press;
use super::under::Under;
use crate::ground::anchors::show::greatest;

/// Within so many radii of relative stiffness an edge weakens the slab (from memory: about one and
/// a half, beyond which edge and inside bend alike).
pub const EDGE_REACH: f64 = 1.5;

/// How many edges, joints and cracks are near.
fn near_edges(slab: &GroundSlab, under: &Under) -> usize {
    let reach = EDGE_REACH * slab.stiffness_radius_in();
    // No number is near.
    let near = |d: &&f64| **d < reach || d.is_nan();
    under.edges_in.iter().filter(near).count()
}

/// The greatest tension at the underside and at the top, psi, while a post turns one way, and what
/// its place was taken as. An edge, a joint or a crack near is a free edge, two are a corner.
pub(super) fn tensions_psi(
    slab: &GroundSlab,
    under: &Under,
    press: &Press,
) -> (&'static str, [f64; 2]) {
    match near_edges(slab, under) {
        0 => ("far from edges and joints", inside_psi(slab, under, press)),
        1 => ("as at a free edge", edge_psi(slab, under, press)),
        _ => {
            let [down, up] = edge_psi(slab, under, press);
            // A corner bends at its top, by no more than 3P/h².
            let corner = slab.corner_psi(press.load_lbf, press.radius_in());
            let total: f64 = press.pulls_lbf.iter().sum();
            let most = 3.0 * total / (slab.thickness_in * slab.thickness_in);
            (
                "as at an edge or in a corner, whichever is worse",
                [[down, corner], [up, most]].map(|both| greatest(both.into_iter())),
            )
        }
    }
}

/// At an edge nothing is counted for the anchors' pull against the plate's press. For the pull, so
/// much more than inside as the formula for an edge has the greater factor, 0.803 for 0.316:
/// no less than the formula itself.
fn edge_psi(slab: &GroundSlab, under: &Under, press: &Press) -> [f64; 2] {
    let (load, radius) = (press.load_lbf, press.radius_in());
    let down = [slab.interior_psi(load, radius), slab.edge_psi(load, radius)];
    let up = pulled_psi(slab, under, press, |_| Bent::default());
    [greatest(down.into_iter()), up * 0.803 / 0.316]
}

/// Far from edges: the plate's press and the anchors' pull together, as loads on one plate on a
/// bed of springs. Under the press and at each anchor the load there counts by Westergaard's
/// formula, the others as loads at points beside it. What eases counts only from so far away as
/// the slab is thick and the press reaches.
fn inside_psi(slab: &GroundSlab, under: &Under, press: &Press) -> [f64; 2] {
    let l = slab.stiffness_radius_in();
    let h = slab.thickness_in;
    let pressed = [
        under.middle_in[0] + under.inward * press.off_in[0],
        under.middle_in[1] + press.off_in[1],
    ];
    let radius = press.radius_in();
    let clear = if radius > h { radius } else { h };
    let pulls = || {
        let each = press.pulls_lbf.iter().copied();
        each.zip(under.anchors_in.iter().copied())
    };
    let under_plate = pulls().fold(own(slab, press.load_lbf, radius), |sum, (pull, at)| {
        let off = off(pressed, at);
        if far(off) < clear {
            sum
        } else {
            sum.and(Bent::beside(-pull, off, l))
        }
    });
    let eased = |place: [f64; 2]| {
        let from_press = off(place, pressed);
        if far(from_press) < clear {
            Bent::default()
        } else {
            Bent::beside(press.load_lbf, from_press, l)
        }
    };
    let up = pulled_psi(slab, under, press, eased);
    [under_plate.tension_psi(h)[0], up]
}

/// Tension at the top by the anchors' pull at the anchor where it is greatest, psi, with what else
/// bends the slab there.
fn pulled_psi(
    slab: &GroundSlab,
    under: &Under,
    press: &Press,
    beside: impl Fn([f64; 2]) -> Bent,
) -> f64 {
    let (l, h) = (slab.stiffness_radius_in(), slab.thickness_in);
    let least = slab.counted_radius_in(0.0);
    greatest(under.anchors_in.iter().map(|place| {
        let each = press.pulls_lbf.iter().zip(&under.anchors_in);
        let all = each.fold(beside(*place), |sum, (pull, at)| {
            let off = off(*place, *at);
            sum.and(if far(off) < least {
                own(slab, -pull, 0.0)
            } else {
                Bent::beside(-pull, off, l)
            })
        });
        all.tension_psi(h)[1]
    }))
}

/// The moment under a load of its own.
fn own(slab: &GroundSlab, load_lbf: f64, radius_in: f64) -> Bent {
    let h = slab.thickness_in;
    Bent::round(slab.interior_psi(load_lbf, radius_in) * h * h / 6.0)
}

fn off(a: [f64; 2], b: [f64; 2]) -> [f64; 2] {
    [a[0] - b[0], a[1] - b[1]]
}

fn far(off: [f64; 2]) -> f64 {
    off[0].hypot(off[1])
}
