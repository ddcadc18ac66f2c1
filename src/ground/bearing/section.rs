//! What is said of the slab under the plates?

use super::bend::bend;
use super::plate::{
    AGAINST_SOIL_IN, PHI_BEARING, PHI_PLAIN, bearing_lbf, punching_outline_in, punching_psi,
    punching_stress_psi,
};
use super::press::Press;
use crate::bay::{Bay, Side};
use crate::ground::anchors::group::nearest;
use crate::ground::anchors::post::{Post, plan_in};
use crate::ground::anchors::show::{
    LINES, greatest, inches, is_beyond, lbf, psi, screened, sq_in, worse_of,
};
use crate::ground::post_base::PostBase;
use crate::ground::slab::{PlateSlab, SlabMap};
use crate::ground::{Bound, Figure, Quantity, Said, Section, Standing, Topic};
use crate::units::Rounding;

const GOVERNS: &str = "the lift's manual, the local code and a licensed engineer govern";

/// On all that a post brings: the vehicle is a live load (ACI 318-19, 5.3.1).
const LOAD_FACTOR: f64 = 1.6;

/// What settles a screening that does not show enough.
pub(super) const ENGINEER: &str = "this screening does not show it; the lift's manual may still accept this slab: follow it, or \
     ask a licensed engineer, who may ask for a pad under the posts";

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

/// One post on its slab, in the codes' units.
pub(super) struct Under {
    /// While it turns to the front, and to the rear.
    pub(super) presses: [Press; 2],
    /// Where its anchors stand in plan, inches.
    pub(super) anchors_in: Vec<[f64; 2]>,
    /// The plate's middle in plan, inches, and the sign of inward.
    pub(super) middle_in: [f64; 2],
    pub(super) inward: f64,
    pub(super) thickness_in: f64,
    pub(super) fc_psi: f64,
    /// Distances of edges, joints, cracks and drains, inches, least first.
    pub(super) edges_in: Vec<f64>,
    /// Why the slab is not as the formulas take it, if it is not.
    pub(super) open: Option<&'static str>,
    /// The columns' own weight is not in the load.
    pub(super) is_light: bool,
}

/// The figures of one post.
fn of_post(bay: &Bay, map: &SlabMap, slab: &PlateSlab, base: &PostBase) -> Vec<Figure> {
    let post = Post::of(bay, map, slab.side, slab, Some(base));
    let Some(forces) = &post.forces else {
        return Vec::new();
    };
    if bay.lift.base_plate.anchors.is_empty() {
        // What the anchors pull presses on the slab too: without their places nothing is known.
        let how = "give the anchor holes as `base_plate.anchors`, from the lift's manual: their \
                   pull presses the plate on the slab";
        let press = ("press", "what a post presses on the slab");
        return [press]
            .into_iter()
            .chain(CHECKED)
            .map(|(id, what)| Figure::unknown(id, what, how))
            .collect();
    }
    let presses = Press::of(base, forces, bay);
    let load = greatest(presses.iter().map(|press| press.load_lbf));
    let mut out = vec![
        Figure::noted("press", "what a post presses on the slab", lbf(load))
            .note("with what the pull of the anchors adds, without a load factor")
            .rounded(Rounding::Up),
        Figure::noted(
            "load_factor",
            "load factor on it",
            Quantity::Number(LOAD_FACTOR),
        )
        .source("ACI 318-19, 5.3.1: a live load"),
    ];
    let (Some(thickness_in), Some(fc_psi)) = (post.thickness_in, post.fc_psi) else {
        let how = match (post.thickness_in, post.fc_psi) {
            (Some(_), None) => {
                "give strength and age of the concrete: from the delivery note, or from a test of \
                 the slab"
            }
            (None, Some(_)) => "read the slab's thickness in two holes near each plate",
            _ => {
                "read the slab's thickness in two holes near each plate, and give strength and age \
                 of the concrete"
            }
        };
        for (id, what) in CHECKED {
            out.push(Figure::unknown(id, what, how));
        }
        return out;
    };
    let places = around(map, slab.side);
    let mut edges_in: Vec<f64> = post
        .lines
        .iter()
        .filter_map(|line| nearest(&places, line).map(|found| found.2))
        .collect();
    edges_in.sort_by(f64::total_cmp);
    let under = Under {
        presses,
        anchors_in: post.at_in,
        middle_in: plan_in(map.plate(slab.side).rect.middle()),
        inward: crate::solids::posts::inward(slab.side),
        thickness_in,
        fc_psi,
        edges_in,
        open: open(bay, slab),
        is_light: bay.lift.shipping_mass.is_none(),
    };
    out.extend(pressed(&under));
    out.extend(punched(&under));
    out.extend(bend(bay, &under));
    out
}

/// Nine places on a plate, in plan.
fn around(map: &SlabMap, side: Side) -> Vec<[f64; 2]> {
    let rect = &map.plate(side).rect;
    let (low, high) = (plan_in(rect.low), plan_in(rect.high));
    let middle = [0.5 * (low[0] + high[0]), 0.5 * (low[1] + high[1])];
    [low[0], middle[0], high[0]]
        .into_iter()
        .flat_map(|x| [low[1], middle[1], high[1]].map(|y| [x, y]))
        .collect()
}

/// Why the slab is not as the formulas take it.
fn open(bay: &Bay, slab: &PlateSlab) -> Option<&'static str> {
    let known = bay.slab.as_ref();
    let hazards = known.map_or([None; 2], |slab| [slab.suspended, slab.void_below]);
    if hazards.contains(&Some(true)) {
        return Some(
            "this floor does not lie on ground, which these methods are for: ask a licensed \
             engineer",
        );
    }
    if hazards.contains(&None) {
        return Some(
            "find out whether the floor lies on ground everywhere, which these methods are for, \
             and say `suspended: false` and `void_below: false`",
        );
    }
    if bay.lift.shipping_mass.is_none() {
        return Some("give the lift's `shipping_mass`: the columns' own weight is not in the load");
    }
    if slab.broken {
        return Some(
            "a joint, a crack, a drain or an edge runs under the plate, which these methods are \
             not for: move the lift, or ask a licensed engineer",
        );
    }
    (!slab.lines_listed).then_some(LINES)
}

/// A screening of this slab: what fails, and what the formulas are not for, is not known.
pub(super) fn settled(figure: Figure, open: Option<&'static str>) -> Figure {
    let figure = screened(figure, ENGINEER);
    match open {
        Some(how) => figure.undecided(how),
        None => figure,
    }
}

const BEARING: &str = "pressure of the plate on the concrete, as a force";
const PUNCH: &str = "punching through the slab";
const CHECKED: [(&str, &str); 3] = [
    ("bearing", BEARING),
    ("punch", PUNCH),
    ("bend", super::bend::WHAT),
];

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
fn pressed(under: &Under) -> Vec<Figure> {
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
fn punched(under: &Under) -> Vec<Figure> {
    const SOURCE: &str = "ACI 318-19, Table 14.5.5.1 and 8.4.4.2.3";
    let counted = under.thickness_in - AGAINST_SOIL_IN;
    if counted <= 0.0 {
        return vec![
            Figure::unknown("punch", PUNCH, ENGINEER)
                .source(SOURCE)
                .note("of a slab so thin nothing is counted: 2 in are taken off against soil"),
        ];
    }
    let edge = |k: usize| under.edges_in.get(k).copied();
    let edges = [edge(0), edge(1)];
    let stresses = |press: &Press| {
        let whole = punching_outline_in(press.whole_in, counted, [None; 2]);
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
