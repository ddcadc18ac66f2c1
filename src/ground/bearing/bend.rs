//! Is a slab on ground bent too much by a post?

use super::on_ground::{GroundSlab, elastic_psi, rupture_psi};
use super::press::Press;
use super::tension::tensions_psi;
use super::ultimate::yielding_lbf;
use super::under::{Under, settled};
use crate::bay::Bay;
use crate::ground::anchors::show::{greatest, inches, psi};
use crate::ground::{Bound, Figure, Quantity, Said};
use crate::units::{M_PER_INCH, PA_PER_PSI, Rounding};

pub(super) const WHAT: &str = "bending of the slab on the ground";

/// Taken where the subgrade modulus is not known, psi/in, the worst of them deciding: from very poor
/// ground, about 5 MPa/m, to rock. Clays and silts that floors are built on have 50 to 175, and 100
/// is the usual default (from memory); none of that is known of this ground. A softer one bends
/// the slab more, save where loads beside each other ease one another.
pub const TAKEN_PCI: [f64; 3] = [18.0, 100.0, 550.0];

/// Factor of safety on the modulus of rupture: that for floors under posts (ACI 360R gives 1.4 to
/// 2.0, and 1.7 as common; from memory).
pub const SAFETY: f64 = 1.7;

/// Modulus of rupture over √f'c and factor of safety of the worked example A1.3 of ACI 360R-10.
const EXAMPLE: (f64, f64) = (9.0, 1.4);

/// The figures of bending.
pub(super) fn bend(bay: &Bay, under: &Under) -> Vec<Figure> {
    let given = bay.slab.as_ref().and_then(|slab| slab.subgrade);
    let given_pci = given.map(|k| k.si() / (PA_PER_PSI / M_PER_INCH));
    let on = |subgrade_pci| GroundSlab {
        thickness_in: under.thickness_in,
        elastic_psi: elastic_psi(under.fc_psi),
        subgrade_pci,
    };
    let subgrade_pci = given_pci.unwrap_or(TAKEN_PCI[0]);
    let slab = on(subgrade_pci);
    let rupture = rupture_psi(under.fc_psi);
    let allowed = rupture / SAFETY;
    let both_ways = under.presses.each_ref();
    let (place, _) = tensions_psi(&slab, under, both_ways[0]);
    let grounds = given_pci.map_or(TAKEN_PCI.to_vec(), |k| vec![k]);
    let tensions: Vec<[f64; 2]> = grounds
        .into_iter()
        .flat_map(|k| both_ways.map(|press| tensions_psi(&on(k), under, press).1))
        .collect();
    let [down, up] = [0, 1].map(|face: usize| greatest(tensions.iter().map(|one| one[face])));
    let [one, other] = both_ways.map(|press: &Press| {
        let area = press.area_in2();
        let yields = yielding_lbf(
            subgrade_pci,
            area,
            slab.elastic_psi,
            rupture,
            under.thickness_in,
        );
        yields / press.load_lbf
    });
    let times = if other < one { other } else { one };

    let ground = Figure::noted(
        "bend.subgrade",
        "subgrade modulus, k",
        Quantity::Subgrade(subgrade_pci * PA_PER_PSI / M_PER_INCH),
    )
    .rounded(Rounding::Down);
    let ground = match given {
        Some(_) => ground.source("the file"),
        None => ground.source("very poor ground, from memory").note(
            "the file gives no `subgrade`; a soil report or a plate test does. What passes \
                 holds on this ground and on stiffer ones",
        ),
    };
    let mut note = Said::new(place);
    if given.is_none() {
        note = note.and("; on very poor ground, for want of a `subgrade`");
    }
    let example = EXAMPLE.0 * under.fc_psi.sqrt() / EXAMPLE.1;
    if down > allowed && down <= example {
        note = note
            .and("; by the measure of ACI 360R-10, example A1.3 (9 √f'c over 1.4: ")
            .down(psi(example))
            .and("), it would hold");
    }
    let bent = Figure::judged("bend", WHAT, psi(down), Bound::AtMost, psi(allowed))
        .source("Westergaard, as in Huang, Pavement Analysis and Design, ch. 4")
        .note(note);
    let raised = Figure::judged(
        "bend.up",
        "bending by the pull of the anchors",
        psi(up),
        Bound::AtMost,
        psi(allowed),
    )
    .source("the same, each anchor a load at a point, upward");
    vec![
        ground,
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
            inches(slab.stiffness_radius_in()),
        )
        .source("Westergaard, E by ACI 318-19, 19.2.2.1"),
        settled(bent, under.open),
        settled(raised, under.open),
        Figure::noted(
            "bend.yield",
            "the slab gives way at so many times the load",
            Quantity::Words(format!("{:.1}", (times * 10.0).floor() / 10.0)),
        )
        .source("Azzi and Laird, Structure, April 2008, after Shentu and others")
        .note("cracked, and without any factor of safety; for comparison, it decides nothing")
        .rounded(Rounding::Down),
    ]
}
