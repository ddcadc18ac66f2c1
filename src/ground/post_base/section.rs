//! What is said of the forces at the post bases?

use super::{ARMS_SHARE, HAND_N, PostBase};
use crate::bay::{Bay, Side};
use crate::ground::anchors::show::greatest;
use crate::ground::{Bound, Figure, Quantity, Said, Section, Topic};
use crate::units::{PA_PER_PSI, Rounding};

/// The greatest tensile strength that anchor steel is counted with, psi (ACI 318-19, 17.6.1.2).
const FUTA_PSI: f64 = 125_000.0;

const GOVERNS: &str = "the lift maker's manual and, for anything it does not cover, a licensed \
                       engineer govern what the base must hold";

/// The section on the post bases.
#[must_use]
pub fn section(bay: &Bay, bases: Option<&[PostBase; 2]>) -> Section {
    let Some(bases) = bases else {
        return Section {
            topic: Topic::PostBase,
            lead: "Without pad loads it is not known what the posts ask of their bases.".into(),
            figures: vec![Figure::unknown(
                "base",
                "forces at the post bases",
                "first get the pad loads",
            )],
            notes: Vec::new(),
            governs: Some(GOVERNS),
        };
    };
    let mut figures = Vec::new();
    for base in bases {
        figures.extend(of(bay, base));
    }
    if bay.lift.shipping_mass.is_none() {
        figures.push(Figure::unknown(
            "own_weight",
            "the lift's own weight on its bases",
            "give `shipping_mass` from the manual or the seller: columns and arms load and turn \
             the bases too",
        ));
    }
    figures.push(
        Figure::noted("shear", "shear on a post's base", Quantity::Force(HAND_N))
            .rounded(Rounding::Up)
            .note("loads that press down give none; this is someone pulling at the vehicle"),
    );
    let no_anchors = bay.lift.base_plate.anchors.is_empty();
    if no_anchors {
        figures.push(Figure::unknown(
            "anchors",
            "pull of the anchors",
            "give the anchor holes as `base_plate.anchors`, from the lift's manual",
        ));
    }
    Section {
        topic: Topic::PostBase,
        lead: lead(bay, bases, no_anchors),
        figures,
        notes: notes(bay),
        governs: Some(GOVERNS),
    }
}

fn lead(bay: &Bay, bases: &[PostBase; 2], no_anchors: bool) -> Said {
    let turned = |base: &PostBase| base.moment_across_nm.max(base.moment_along_nm);
    let [left, right] = bases;
    let worse = if turned(left) >= turned(right) {
        left
    } else {
        right
    };
    let said = Said::new(format!(
        "At worst the {} post turns inward with ",
        name(worse.side)
    ))
    .up(Quantity::Moment(worse.moment_across_nm))
    .and(" or to front or rear with ")
    .up(Quantity::Moment(worse.moment_along_nm));
    if no_anchors {
        return said.and("; where its anchors lie is not known.");
    }
    if bases.iter().any(|base| !hardest(base).is_finite()) {
        return said.and(
            "; the anchor holes given can't hold it upright: none lies on the side that must pull.",
        );
    }
    let most = |of: fn(&PostBase) -> f64| Quantity::Force(greatest(bases.iter().map(of)));
    let said = said
        .and(", and the hardest worked anchor pulls with ")
        .up(most(hardest));
    if let Some(holds) = most_steel_n(bay)
        && bases.iter().any(|base| hardest(base) > holds)
    {
        return said
            .and(", more than the ")
            .down(Quantity::Force(holds))
            .and(" that any steel of its size holds.");
    }
    said.and("; while all four pads share, with ")
        .up(most(hardest_shared))
        .and(".")
}

/// What no steel anchor of this diameter holds more than: its full section at the greatest strength
/// that the code lets anchors count with. None where the diameter is not known.
fn most_steel_n(bay: &Bay) -> Option<f64> {
    let diameter = bay.lift.base_plate.anchor_diameter?.m();
    Some(std::f64::consts::FRAC_PI_4 * diameter * diameter * FUTA_PSI * PA_PER_PSI)
}

fn hardest(base: &PostBase) -> f64 {
    greatest(base.anchors.iter().map(|anchor| anchor.tension_n))
}

fn hardest_shared(base: &PostBase) -> f64 {
    greatest(base.anchors.iter().map(|anchor| anchor.shared_tension_n))
}

const fn name(side: Side) -> &'static str {
    match side {
        Side::Left => "left",
        Side::Right => "right",
    }
}

fn of(bay: &Bay, base: &PostBase) -> Vec<Figure> {
    let side = name(base.side);
    let noted = |id: &str, what: &str, found: Quantity| {
        Figure::noted(
            format!("{side}.{id}"),
            format!("{side} post, {what}"),
            found,
        )
        .rounded(Rounding::Up)
    };
    let [across, along] = base.shared_moments_nm;
    let mut figures = vec![
        noted("axial", "load on its base", Quantity::Force(base.axial_n)),
        noted(
            "moment_across",
            "moment inward",
            Quantity::Moment(base.moment_across_nm),
        )
        .note(Said::new("while all four pads share, ").up(Quantity::Moment(across))),
        noted(
            "moment_along",
            "moment to front or rear",
            Quantity::Moment(base.moment_along_nm),
        )
        .note(
            Said::new("while all four pads share, ")
                .up(Quantity::Moment(along))
                .and("; the greater one needs a pad that hangs loose"),
        ),
    ];
    if base.anchors.is_empty() {
        return figures;
    }
    let hardest = hardest(base);
    let shared = hardest_shared(base);
    figures.push(if hardest.is_finite() {
        let figure = noted(
            "anchor",
            "pull of its hardest worked anchor",
            Quantity::Force(hardest),
        )
        .note(each(base, shared));
        match most_steel_n(bay) {
            Some(holds) if hardest > holds => Figure {
                limit: Some((Bound::AtMost, Quantity::Force(holds))),
                ..figure
            }
            .source(
                "no steel holds more: the anchor's full section at 125,000 psi (ACI 318-19, \
                 17.6.1.2)",
            )
            .stopping(
                "check `base_plate.anchors` with the lift's manual: all holes, inward, then to \
                 the front",
            ),
            _ => figure,
        }
    } else {
        let what = format!("{side} post, its anchors");
        let words = Quantity::Words("can't hold it upright".into());
        Figure::noted(format!("{side}.anchor"), what, words)
            .stopping(
                "check `base_plate.anchors` with the lift's manual: inward, then to the front",
            )
            .reason(format!(
                "the anchor holes given can't hold the {side} post upright: none lies on the side \
                 that must pull"
            ))
    });
    if hardest.is_finite() {
        figures.push(
            noted(
                "compression",
                "what its plate presses on the slab with",
                Quantity::Force(base.compression_n),
            )
            .note(
                Said::new("while all four pads share, ")
                    .up(Quantity::Force(base.shared_compression_n)),
            ),
        );
    }
    figures
}

/// The pull of each anchor, in the order of the file.
fn each(base: &PostBase, shared_n: f64) -> Said {
    let said = Said::new("while all four pads share, ").up(Quantity::Force(shared_n));
    let mut said = said.and("; each at its worst, in the order of the file: ");
    for (index, anchor) in base.anchors.iter().enumerate() {
        if index > 0 {
            said = said.and(", ");
        }
        said = said.up(Quantity::Force(anchor.tension_n));
    }
    said
}

fn notes(bay: &Bay) -> Vec<Said> {
    let mut notes: Vec<Said> = vec![
        "The base alone holds the post: the tie between the posts is not counted, nor is what the \
         column bends."
            .into(),
        "Anchors pull as those of a rigid plate that turns about a line half way between the \
         column's face and the plate's edge, each in proportion to its distance from it; the load \
         on the plate is taken off once."
            .into(),
    ];
    notes.push(match bay.lift.shipping_mass {
        Some(mass) => Said::new("Half of the shipping mass, ")
            .up(Quantity::Mass(0.5 * mass.kg()))
            .and(", is in the load on each base, and not in what holds the anchors down; ")
            .and(format!(
                "{:.0} % of it hangs half way out on the arms and turns the posts: more than arms \
                 and pads commonly weigh (the program's own choice).",
                ARMS_SHARE * 100.0
            )),
        None => "The own weight of columns and arms is not known and neither in the load on the \
                 bases nor in the moments, which are some per cent greater with it."
            .into(),
    });
    if bay.lift.column.turned.rad() != 0.0 {
        notes.push(
            "The columns are turned. Plates and anchor holes are drawn and measured along the \
             bay's axes, as the file gives them; the pulls are the greater of that and of plates \
             turned with their columns. Give the holes as they lie, and look on the site."
                .into(),
        );
    }
    notes
}
