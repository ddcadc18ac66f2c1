//! What is said of the slab under the plates?

use super::bend::bend;
use super::pressed::{BEARING, LOAD_FACTOR, PUNCH, pressed, punched};
use super::under::{Missing, Under};
use crate::bay::Bay;
use crate::ground::anchors::show::{is_beyond, lbf, worse_of};
use crate::ground::post_base::PostBase;
use crate::ground::slab::{PlateSlab, SlabMap};
use crate::ground::{Figure, Quantity, Said, Section, Standing, Topic};
use crate::units::Rounding;

const GOVERNS: &str = "the lift's manual, the local code and a licensed engineer govern";

/// The slab under both posts. `bases` is what the posts ask of it, none when that could not be
/// worked out.
pub(in crate::ground) fn section(
    bay: &Bay,
    map: &SlabMap,
    slabs: &[PlateSlab; 2],
    bases: Option<&[PostBase; 2]>,
) -> Section {
    let figures = match bases {
        None => vec![Figure::unknown(
            "press",
            "what the posts press on the slab",
            "it needs the loads on the pads, which are not known in full",
        )],
        Some([left, right]) => worse_of(
            of_post(bay, map, &slabs[0], left),
            of_post(bay, map, &slabs[1], right),
            "bend",
        ),
    };
    Section {
        topic: Topic::Bearing,
        lead: lead(
            &figures,
            bay.slab.as_ref().is_some_and(|s| s.subgrade.is_some()),
        ),
        figures,
        notes: vec![Said::new(
            "Reinforcement is not counted: in a slab on ground it holds cracks together and \
             carries little. The ground is taken to lie against the slab everywhere.",
        )],
        governs: Some(GOVERNS),
    }
}

const CHECKED: [(&str, &str); 3] = [
    ("bearing", BEARING),
    ("punch", PUNCH),
    ("bend", super::bend::WHAT),
];

/// The figures of one post.
fn of_post(bay: &Bay, map: &SlabMap, slab: &PlateSlab, base: &PostBase) -> Vec<Figure> {
    let under = match Under::of(bay, map, slab, base) {
        Ok(under) => under,
        Err(Missing { press, how }) => {
            let press = press.map_or_else(
                || {
                    let what = "what a post presses on the slab";
                    vec![Figure::unknown("press", what, how)]
                },
                pressing,
            );
            let checks = CHECKED.map(|(id, what)| Figure::unknown(id, what, how));
            return press.into_iter().chain(checks).collect();
        }
    };
    let mut out = pressing(under.load_lbf());
    out.extend(pressed(&under));
    out.extend(punched(&under));
    out.extend(bend(bay, &under));
    out
}

/// What a post presses, and what that is counted with.
fn pressing(load_lbf: f64) -> Vec<Figure> {
    vec![
        Figure::noted("press", "what a post presses on the slab", lbf(load_lbf))
            .note("with what the pull of the anchors adds, without a load factor")
            .rounded(Rounding::Up),
        Figure::noted(
            "load_factor",
            "load factor on it",
            Quantity::Number(LOAD_FACTOR),
        )
        .source("ACI 318-19, 5.3.1: a live load"),
    ]
}

/// Whether the slab under a plate is shown to stay uncracked: bent, by the press and by the anchors'
/// pull, no more than the screening allows, which is well below its modulus of rupture.
pub(in crate::ground) fn stays_uncracked(
    bay: &Bay,
    map: &SlabMap,
    slab: &PlateSlab,
    base: &PostBase,
) -> bool {
    let Ok(under) = Under::of(bay, map, slab, base) else {
        return false;
    };
    let figures = bend(bay, &under);
    ["bend", "bend.up"].into_iter().all(|id| {
        let mut those = figures.iter().filter(|one| one.id == id);
        those
            .next()
            .is_some_and(|one| one.standing == Standing::Passes)
    })
}

/// The plain sentence.
fn lead(figures: &[Figure], ground_is_known: bool) -> Said {
    let open: Vec<&Figure> = figures
        .iter()
        .filter(|one| one.standing == Standing::Unknown)
        .collect();
    if open.is_empty() {
        return Said::new(if ground_is_known {
            "By the screening the slab carries the plates: in bearing, in punching and in bending \
             on the ground."
        } else {
            "By the screening the slab carries the plates: in bearing, in punching and in bending, \
             whatever ground it lies on, be it a very poor one."
        });
    }
    let beyond: Vec<&&Figure> = open.iter().filter(|one| is_beyond(one)).collect();
    if !beyond.is_empty() {
        let what: Vec<&str> = beyond.iter().map(|one| one.what.as_ref()).collect();
        let said = Said::new(format!(
            "The screening does not show that the slab carries the plates ({}).",
            what.join("; ")
        ));
        return said.and(
            " That is not settled either way: the lift's manual governs, and where it accepts this \
             slab its word stands.",
        );
    }
    if figures.iter().any(|one| one.standing == Standing::Passes) {
        let what: Vec<&str> = open.iter().map(|one| one.what.as_ref()).collect();
        return Said::new(format!(
            "Nothing speaks against the slab under the plates so far, but not all is known: {}.",
            what.join("; ")
        ));
    }
    Said::new(format!(
        "Whether the slab carries the plates could not be screened: {}.",
        open[0].cure.as_deref().unwrap_or("not all is known")
    ))
}
