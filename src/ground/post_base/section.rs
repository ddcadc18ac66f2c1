//! What is said of the forces at the post bases?

use super::{HAND_N, PostBase};
use crate::bay::{Bay, Side};
use crate::ground::anchors::show::greatest;
use crate::ground::{Figure, Quantity, Said, Section, Topic};
use crate::units::Rounding;

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
        figures.extend(of(base));
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
        lead: lead(bases, no_anchors),
        figures,
        notes: notes(bay),
        governs: Some(GOVERNS),
    }
}

fn lead(bases: &[PostBase; 2], no_anchors: bool) -> Said {
    let [left, right] = bases;
    let worse = if left.moment_across_nm >= right.moment_across_nm {
        left
    } else {
        right
    };
    let said = Said::new(format!(
        "At worst the {} post turns inward with ",
        name(worse.side)
    ))
    .up(Quantity::Moment(worse.moment_across_nm));
    if no_anchors {
        return said.and("; where its anchors lie is not known.");
    }
    if bases.iter().any(|base| !hardest(base).is_finite()) {
        return said.and(
            "; the anchor holes given can't hold it upright: none lies on the side that must pull.",
        );
    }
    said.and(" and its hardest worked anchor pulls with ")
        .up(Quantity::Force(hardest(worse)))
        .and("; while all four pads share, with ")
        .up(Quantity::Force(hardest_shared(worse)))
        .and(".")
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

fn of(base: &PostBase) -> Vec<Figure> {
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
        noted(
            "anchor",
            "pull of its hardest worked anchor",
            Quantity::Force(hardest),
        )
        .note(Said::new("while all four pads share, ").up(Quantity::Force(shared)))
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
            .and(", is in the load on each base, and not in what holds the anchors down."),
        None => "The columns' own weight is not known and not in the load on the bases.".into(),
    });
    notes
}
