//! Does the concrete bear the plate's press, and does the plate punch through?

use super::plate::{
    AGAINST_SOIL_IN, PHI_BEARING, PHI_PLAIN, bearing_lbf, punching_outline_in, punching_psi,
    punching_stress_psi,
};
use super::press::Press;
use super::under::{ENGINEER, Under, settled};
use crate::ground::anchors::show::{inches, lbf, psi, sq_in};
use crate::ground::{Bound, Figure, Quantity};
use crate::units::Rounding;

/// On all that a post brings: the vehicle is a live load (ACI 318-19, 5.3.1).
pub(super) const LOAD_FACTOR: f64 = 1.6;

pub(super) const BEARING: &str = "pressure of the plate on the concrete, as a force";
pub(super) const PUNCH: &str = "punching through the slab";
/// Of both ways to turn the one that uses more of a strength, with the strength.
fn worse(under: &Under, strength: impl Fn(&Press) -> f64) -> (&Press, f64) {
    let [front, rear] = &under.presses;
    let strengths = [strength(front), strength(rear)];
    let use_of = |press: &Press, strength: f64| press.load_lbf / strength;
    // No number is the worse.
    let rear_is_worse = use_of(rear, strengths[1])
        .total_cmp(&use_of(front, strengths[0]))
        .is_gt();
    if rear_is_worse {
        (rear, strengths[1])
    } else {
        (front, strengths[0])
    }
}

/// The plate on the concrete.
pub(super) fn pressed(under: &Under) -> Vec<Figure> {
    const SOURCE: &str = "ACI 318-19, 22.8.3.2";
    let bears = |press: &Press| bearing_lbf(under.fc_psi, press.area_in2(), press.area_in2());
    let (press, nominal) = worse(under, bears);
    let own_weight = under.open.filter(|_| under.is_light);
    let figure = Figure::judged(
        "bearing",
        BEARING,
        lbf(LOAD_FACTOR * press.load_lbf),
        Bound::AtMost,
        lbf(PHI_BEARING * nominal),
    );
    vec![
        Figure::noted(
            "press.area",
            "part of the plate that presses",
            sq_in(press.area_in2()),
        )
        .source("halfway from column to plate's edge: ACI 318-19, Table 13.2.7.1")
        .note("as much of it as the moment leaves pressing")
        .rounded(Rounding::Down),
        Figure::noted("bearing.strength", "bearing strength, Bn", lbf(nominal))
            .source(SOURCE)
            .note("nothing is counted for the concrete around, A2 = A1")
            .rounded(Rounding::Down),
        Figure::noted("bearing.phi", "φ of bearing", Quantity::Number(PHI_BEARING))
            .source("ACI 318-19, Table 21.2.1, from memory"),
        settled(figure.source(SOURCE), own_weight),
    ]
}

/// The plate through the slab, as plain concrete: load and moments around the whole plate, or,
/// where an edge cuts that outline short, what presses around the part that presses.
pub(super) fn punched(under: &Under) -> Vec<Figure> {
    const SOURCE: &str = "ACI 318-19, Table 14.5.5.1 and 8.4.4.2.3";
    let counted = under.thickness_in - AGAINST_SOIL_IN;
    if counted <= 0.0 {
        return vec![
            Figure::unknown("punch", PUNCH, ENGINEER)
                .source(SOURCE)
                .note("of a slab so thin nothing is counted: 2 in are taken off against soil"),
        ];
    }
    let edges = under.edges_in.as_slice();
    let stresses = |press: &Press| {
        let whole = punching_outline_in(press.whole_in, counted, &[]);
        // No number is shorter.
        let cut = punching_outline_in(press.whole_in, counted, edges);
        if (whole - cut).abs() < 1e-9 {
            let moments = press.moments_lbf_in.map(|moment| LOAD_FACTOR * moment);
            let load = LOAD_FACTOR * press.down_lbf;
            let stress = punching_stress_psi(load, moments, press.whole_in, counted);
            [stress, punching_psi(under.fc_psi, press.whole_in)]
        } else {
            let outline = punching_outline_in(press.loaded_in, counted, edges);
            let stress = LOAD_FACTOR * press.load_lbf / (outline * counted);
            [stress, punching_psi(under.fc_psi, press.loaded_in)]
        }
    };
    let [front, rear] = under.presses.each_ref().map(stresses);
    let use_of = |one: [f64; 2]| one[0] / one[1];
    let worse = if use_of(rear).total_cmp(&use_of(front)).is_gt() {
        rear
    } else {
        front
    };
    let [stress, nominal] = worse;
    let figure = Figure::judged(
        "punch",
        PUNCH,
        psi(stress),
        Bound::AtMost,
        psi(PHI_PLAIN * nominal),
    );
    vec![
        Figure::noted(
            "punch.thickness",
            "thickness counted for punching",
            inches(counted),
        )
        .source("2 in off against soil: ACI 318-19, 14.5.1.7, from memory")
        .rounded(Rounding::Down),
        Figure::noted("punch.strength", "shear stress it holds, vn", psi(nominal))
            .source("ACI 318-19, Table 14.5.5.1")
            .rounded(Rounding::Down),
        Figure::noted(
            "punch.phi",
            "φ of plain concrete",
            Quantity::Number(PHI_PLAIN),
        )
        .source("ACI 318-19, Table 21.2.1"),
        settled(figure.source(SOURCE), under.open),
    ]
}
