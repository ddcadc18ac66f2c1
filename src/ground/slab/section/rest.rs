//! May it be drilled, with which bit, and what does a new pad take?

use super::{Known, by_manual, source};
use crate::bay::SlabLineKind;
use crate::ground::slab::drilling::{Drilling, Hazard, of_slab};
use crate::ground::slab::pad::{BAG_KG, PadWork};
use crate::ground::{Bound, Figure, Quantity, Said, Standing};

const fn id(hazard: Hazard) -> &'static str {
    match hazard {
        Hazard::PostTensioned => "inside.post_tensioned",
        Hazard::Heated => "inside.heated",
        Hazard::Services => "inside.services",
        Hazard::Void => "inside.void",
        Hazard::Suspended => "inside.suspended",
    }
}

/// Why it stops, and what then.
const fn why(hazard: Hazard) -> (&'static str, &'static str) {
    match hazard {
        Hazard::PostTensioned => (
            "the slab is post-tensioned: a drilled tendon lets go with its whole force",
            "do not drill: have an engineer place the posts by a scan and a plan of the tendons, \
             or cut out and pour pads that an engineer designs",
        ),
        Hazard::Heated => (
            "the slab is heated: an anchor hole may go through a pipe or a wire of the heating",
            "do not drill: have the loops found by a plan or by a heat picture and the posts \
             placed clear of them by whoever laid them, or pour pads without loops",
        ),
        Hazard::Services => (
            "services lie in or under the slab: an anchor hole may meet gas, water or electricity",
            "do not drill: have the services found and marked, and moved where the posts stand",
        ),
        Hazard::Void => (
            "there is a void or a room below the slab: it does not lie on the ground",
            "do not set a lift on it: have an engineer design what carries the posts",
        ),
        Hazard::Suspended => (
            "the floor is suspended: it spans between supports and does not lie on the ground",
            "do not set a lift on it: have an engineer design what carries the posts",
        ),
    }
}

/// What in and under the slab forbids drilling.
pub(super) fn drilling(known: &Known<'_>, figures: &mut Vec<Figure>) {
    let said = of_slab(known.slab);
    if said == Drilling::Yes {
        let mut figure = Figure::noted(
            "drilling",
            "what is in and under the slab",
            Quantity::Words("nothing that forbids drilling".into()),
        );
        figure.standing = Standing::Passes;
        figures.push(figure.source("the bay file's word"));
        return;
    }
    for hazard in Hazard::ALL {
        if hazard.of(known.slab) == Some(true) {
            let (reason, cure) = why(hazard);
            figures.push(
                Figure::noted(
                    id(hazard),
                    "what is in and under the slab",
                    Quantity::Words(hazard.words().into()),
                )
                .stopping(cure)
                .reason(reason),
            );
        }
    }
    let not_said: Vec<&str> = Hazard::ALL
        .into_iter()
        .filter(|hazard| hazard.of(known.slab).is_none())
        .map(Hazard::words)
        .collect();
    if !not_said.is_empty() {
        figures.push(
            Figure::unknown(
                "drilling",
                "what is in and under the slab",
                "nothing is drilled before this is known: ask whoever poured it for plans, look \
                 from below and at its edges, have services marked and the slab scanned, and say \
                 `true` or `false` in the file",
            )
            .note(format!("not said: {}", not_said.join("; "))),
        );
    }
}

/// The bit that the anchors take.
pub(super) fn bit(known: &Known<'_>, figures: &mut Vec<Figure>) {
    let Some(diameter) = known.bay.lift.base_plate.anchor_diameter else {
        return;
    };
    let note = match of_slab(known.slab) {
        Drilling::No(_) => return,
        Drilling::Unknown(_) => {
            "wedge and sleeve anchors take a bit of their own diameter; nothing is drilled before \
             it is known what is in and under the slab"
        }
        Drilling::Yes => {
            "wedge and sleeve anchors take a bit of their own diameter; other kinds as their maker \
             says"
        }
    };
    figures.push(
        Figure::noted(
            "bit",
            "drill bit for the anchors",
            Quantity::Length(diameter.m()),
        )
        .source("common practice, no source; the anchors' maker governs")
        .note(note),
    );
}

/// A pad that is to be poured.
pub(super) fn pad(known: &Known<'_>, figures: &mut Vec<Figure>) {
    let Some(pad) = &known.slab.new_pad else {
        return;
    };
    let work = PadWork::of(pad);
    let plan = "a plan that does not hold; until it is poured and measured it changes no verdict";
    let mut against =
        |id, what, found: Option<Quantity>, asked: Option<_>, of: fn(f64) -> Quantity| {
            let Some((asked, found)) = asked.zip(found) else {
                return;
            };
            let asked: crate::ground::slab::Demand = asked;
            let figure = Figure::judged(id, what, found, Bound::AtLeast, of(asked.value))
                .source(source(&asked));
            figures.push(if figure.standing == Standing::Stops {
                figure
                    .undecided("make the pad as deep and order the concrete as strong as is asked")
                    .note(plan)
            } else {
                by_manual(figure, &asked)
            });
        };
    against(
        "pad.depth",
        "depth of the new pad",
        Some(Quantity::Length(pad.depth.m())),
        known.demands.thickness,
        Quantity::Length,
    );
    against(
        "pad.strength",
        "strength ordered for the new pad",
        pad.strength.map(|s| Quantity::Pressure(s.si())),
        known.demands.strength,
        Quantity::Pressure,
    );
    let all = if pad.count == 1 {
        "the new pad".to_owned()
    } else {
        format!("{} new pads", pad.count)
    };
    let waste = work.waste * 100.0;
    let up = crate::units::Rounding::Up;
    figures.extend([
        Figure::noted(
            "pad.volume",
            format!("concrete of {all}"),
            Quantity::Volume(work.volume_m3),
        )
        .rounded(up)
        .note("what the form holds"),
        Figure::noted(
            "pad.mass",
            format!("mass of {all}"),
            Quantity::Mass(work.mass_kg),
        )
        .rounded(up)
        .source("2400 kg/m3, normal-weight concrete, from memory"),
        Figure::noted(
            "pad.order",
            "ready-mix to order",
            Quantity::Volume(work.order_m3),
        )
        .rounded(up)
        .note(format!(
            "{waste:.0} % counted for waste and an uneven ground"
        )),
        Figure::noted("pad.bags", "or bags of dry mix", Quantity::Count(work.bags))
            .rounded(up)
            .source("a bag yields about 0.60 cu ft (17 L), from memory: the bag says it")
            .note(
                Said::new("of ")
                    .near(Quantity::Mass(BAG_KG))
                    .and(format!(" each, {waste:.0} % counted for waste")),
            ),
    ]);
}

/// What else must be minded.
pub(super) fn notes(known: &Known<'_>) -> Vec<Said> {
    let mut notes = Vec::new();
    if !known.slab.readings.is_empty() {
        notes.push(
            "A reading is taken as written: read the tape down to the graduation below.".into(),
        );
    }
    if known.slab.new_pad.is_some() {
        notes.push(
            "Measure the depth of the form at two places near each plate before pouring: they are \
             the readings of the new pad."
                .into(),
        );
    }
    let has_drain = known
        .map
        .lines
        .iter()
        .any(|l| l.kind == SlabLineKind::Drain);
    if has_drain {
        notes.push(
            "A drain counts as an edge; its pipe runs on under the slab and is a buried service."
                .into(),
        );
    }
    notes
}
