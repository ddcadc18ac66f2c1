//! Is a slab on ground bent too much by a post?

use super::on_ground::{GroundSlab, elastic_psi, rupture_psi};
use super::section::{Under, settled};
use super::ultimate::yielding_lbf;
use crate::bay::Bay;
use crate::ground::anchors::show::{greatest, inches, lbf};
use crate::ground::{Bound, Figure, Quantity};
use crate::units::{M_PER_INCH, PA_PER_PSI, Rounding};

pub(super) const WHAT: &str = "bending of the slab on the ground";

/// Taken where the subgrade modulus is not known, psi/in: the low end of what clays and silts that
/// floors are built on have (50 to 175; from memory). 100 is the usual default (from memory); a
/// softer ground bends the slab more.
pub const TAKEN_PCI: f64 = 50.0;

/// Factor of safety on the modulus of rupture: that for floors under posts (ACI 360R gives 1.4 to
/// 2.0, and 1.7 as common; from memory).
pub const SAFETY: f64 = 1.7;

/// Within so many radii of relative stiffness an edge weakens the slab (from memory: about one and
/// a half, beyond which edge and inside bend alike).
pub const EDGE_REACH: f64 = 1.5;

/// Modulus of rupture over √f'c and factor of safety of the worked example A1.3 of ACI 360R-10.
const EXAMPLE: (f64, f64) = (9.0, 1.4);

fn psi(value: f64) -> Quantity {
    Quantity::Pressure(value * PA_PER_PSI)
}

/// The figures of bending.
pub(super) fn bend(bay: &Bay, under: &Under) -> Vec<Figure> {
    let given = bay.slab.as_ref().and_then(|slab| slab.subgrade);
    let subgrade_pci = given.map_or(TAKEN_PCI, |k| k.si() / (PA_PER_PSI / M_PER_INCH));
    let elastic = elastic_psi(under.fc_psi);
    let slab = GroundSlab {
        thickness_in: under.thickness_in,
        elastic_psi: elastic,
        subgrade_pci,
    };
    let rupture = rupture_psi(under.fc_psi);
    let allowed = rupture / SAFETY;
    let ground = Figure::noted(
        "bend.subgrade",
        "subgrade modulus, k",
        Quantity::Subgrade(subgrade_pci * PA_PER_PSI / M_PER_INCH),
    )
    .rounded(Rounding::Down);
    let stiffness = slab.stiffness_radius_in();
    let (place, down) = pressed_psi(&slab, under);
    let up = pulled_psi(&slab, under);
    let mut bent = Figure::judged("bend", WHAT, psi(down), Bound::AtMost, psi(allowed))
        .source("Westergaard, as in Huang, Pavement Analysis and Design, ch. 4");
    let example = EXAMPLE.0 * under.fc_psi.sqrt() / EXAMPLE.1;
    bent = if down > allowed && down <= example {
        bent.note(format!(
            "{place}; by the measure of ACI 360R-10, example A1.3 (9 √f'c over 1.4), it would hold"
        ))
    } else if given.is_none() {
        bent.note(format!(
            "{place}; on a ground that is assumed, not known: 50 psi/in, a low value"
        ))
    } else {
        bent.note(place)
    };
    let raised = Figure::judged(
        "bend.up",
        "bending by the pull of the anchors",
        psi(up),
        Bound::AtMost,
        psi(allowed),
    )
    .source("Westergaard, each anchor a load at a point, upward");
    let comparison = yielding_lbf(
        subgrade_pci,
        under.press.area_in2(),
        elastic,
        rupture,
        under.thickness_in,
    );
    vec![
        match given {
            Some(_) => ground.source("the file"),
            None => ground
                .source("assumed, a low value, from memory")
                .note("the file gives no `subgrade`; a soil report or a plate test does"),
        },
        Figure::noted("bend.rupture", "modulus of rupture, 7.5 √f'c", psi(rupture))
            .source("ACI 318-19, 19.2.3.1")
            .rounded(Rounding::Down),
        Figure::noted(
            "bend.safety",
            "factor of safety on it",
            Quantity::Number(SAFETY),
        )
        .source("ACI 360R, from memory"),
        Figure::noted(
            "bend.stiffness",
            "radius of relative stiffness",
            inches(stiffness),
        )
        .source("Westergaard, E by ACI 318-19, 19.2.2.1"),
        settled(bent, under.open),
        settled(raised, under.open),
        Figure::noted(
            "bend.yield",
            "load at which a slab on ground yields",
            lbf(comparison),
        )
        .source("Azzi and Laird, Structure, April 2008, after Shentu and others")
        .note("without any factor of safety; for comparison, it decides nothing")
        .rounded(Rounding::Down),
    ]
}

/// How many edges, joints and cracks are near.
fn near_edges(slab: &GroundSlab, under: &Under) -> usize {
    let reach = EDGE_REACH * slab.stiffness_radius_in();
    // No number is near.
    let near = |d: &&f64| **d < reach || d.is_nan();
    under.edges_in.iter().filter(near).count()
}

/// Tension under the plate, psi, and what the place was taken as. An edge, a joint or a crack near
/// is a free edge, two are a corner.
fn pressed_psi(slab: &GroundSlab, under: &Under) -> (&'static str, f64) {
    let (load, radius) = (under.press.load_lbf, under.press.radius_in());
    let inside = slab.interior_psi(load, radius);
    let edge = slab.edge_psi(load, radius);
    let corner = slab.corner_psi(load, radius);
    match near_edges(slab, under) {
        0 => ("far from edges and joints", inside),
        1 => ("as at a free edge", greatest([inside, edge].into_iter())),
        _ => (
            "as in a corner or at an edge, whichever is worse",
            greatest([inside, edge, corner].into_iter()),
        ),
    }
}

/// Tension at the top by the anchors' pull, psi: the worst of the places of the anchors, all loads
/// added. Near an edge so much more as its formula's factor is greater, 0.803 for 0.316, which is
/// no less than the formula itself; near two no less than 3P/h², the most that a corner gets.
fn pulled_psi(slab: &GroundSlab, under: &Under) -> f64 {
    let at = |place: &[f64; 2]| -> f64 {
        under
            .pulls
            .iter()
            .map(|(other, pull)| {
                let distance = (place[0] - other[0]).hypot(place[1] - other[1]);
                slab.interior_beside_psi(*pull, 0.0, distance)
            })
            .sum()
    };
    let inside = greatest(under.pulls.iter().map(|(place, _)| at(place)));
    let total: f64 = under.pulls.iter().map(|(_, pull)| pull).sum();
    let corner = 3.0 * total / (slab.thickness_in * slab.thickness_in);
    match near_edges(slab, under) {
        0 => inside,
        1 => inside * 0.803 / 0.316,
        _ => greatest([inside * 0.803 / 0.316, corner].into_iter()),
    }
}
