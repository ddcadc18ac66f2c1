//! Do plates and anchors keep off joints, cracks, edges and drains?

use super::{Known, both, by_manual, joined, post, source, word};
use crate::bay::{Side, SlabLineKind};
use crate::ground::slab::near::{KINDS, Near};
use crate::ground::slab::plane::{NOISE_M, cross};
use crate::ground::{Bound, Figure, Quantity, Said, Standing};
use crate::units::Rounding;

/// The least edge distance of a torque-controlled anchor without product data, in anchor
/// diameters: ACI 318-19, Table 17.9.2(b).
const DIAMETERS: f64 = 8.0;

const OUTLINE: &str = "give the slab's `outline`: it is only taken to end at the walls";

const CURE: &str = "move the lift so that its anchors keep the distance, or pour a pad without \
                    joints under the post";

/// The figures of both posts.
pub(super) fn figures(known: &Known<'_>, figures: &mut Vec<Figure>) {
    for side in [Side::Left, Side::Right] {
        let near = Near::of(known.bay, &known.map, side);
        if near.overhangs {
            figures.push(overhang(side));
        }
        for (kind, (distance, through)) in KINDS
            .into_iter()
            .zip(near.distances_m.into_iter().zip(near.through))
        {
            // Where the plate overhangs, its edge has been told.
            match distance {
                _ if kind == SlabLineKind::Edge && near.overhangs => {}
                Some(_) if through => figures.push(runs_through(side, kind)),
                Some(off) => figures.push(distant(known, side, kind, off)),
                None => {}
            }
        }
    }
    figures.extend(between(known));
    if !known.slab.lines_listed {
        figures.push(Figure::unknown(
            "lines",
            "joints, cracks and drains near the posts",
            "look for them within 600 mm (23 1/2 in) of each plate and list them as `lines`; \
             `lines: []` says that there are none",
        ));
    }
}

/// Edges that lie between the two posts: of a line alone it is not known on which side the slab
/// lies. An odd number of them leaves one post beyond the slab.
fn between(known: &Known<'_>) -> Option<Figure> {
    let way = [Side::Left, Side::Right].map(|side| known.map.plate(side).rect.middle());
    let lines = known.map.lines.iter();
    let crossed = lines
        .filter(|line| line.kind == SlabLineKind::Edge && cross(way, line.ends))
        .count();
    if crossed == 0 {
        return None;
    }
    const HOW: &str = "move the lift so that both posts stand on the slab, or correct the line; a \
                       slab's edges are best given as its `outline`, and a gap between two pours \
                       is a joint";
    let words = Quantity::Words("lies between the posts".into());
    let figure = Figure::noted("edge_between", "an edge of the slab", words);
    Some(if crossed % 2 == 1 {
        figure
            .stopping(HOW)
            .reason("an edge of the slab lies between the posts: one of them stands beyond it")
    } else {
        figure.undecided(HOW)
    })
}

const fn name(kind: SlabLineKind) -> (&'static str, &'static str) {
    match kind {
        SlabLineKind::Joint => ("joint", "a joint"),
        SlabLineKind::Crack => ("crack", "a crack"),
        SlabLineKind::Edge => ("edge", "the slab's edge"),
        SlabLineKind::Drain => ("drain", "a drain"),
    }
}

fn overhang(side: Side) -> Figure {
    let what = format!("the {}'s plate", post(side));
    Figure::noted(
        format!("overhang.{}", word(side)),
        what.clone(),
        Quantity::Words("reaches over the slab's edge".into()),
    )
    .stopping("move the lift, or check the slab's outline")
    .reason(format!("{what} reaches over the slab's edge"))
}

fn runs_through(side: Side, kind: SlabLineKind) -> Figure {
    let what = format!("the {}'s plate", post(side));
    let (id, a_line) = name(kind);
    Figure::noted(
        format!("through.{}.{id}", word(side)),
        what.clone(),
        Quantity::Words(format!("lies on {a_line}")),
    )
    .stopping(CURE)
    .reason(format!("{a_line} runs through {what} or touches it"))
}

fn distant(known: &Known<'_>, side: Side, kind: SlabLineKind, off_m: f64) -> Figure {
    let (id, a_line) = name(kind);
    let id = format!("distance.{}.{id}", word(side));
    let plate = &known.bay.lift.base_plate;
    let from = if plate.anchors.is_empty() {
        "plate"
    } else {
        "anchors"
    };
    let what = format!("{}'s {from} to {a_line}", post(side));
    let found = Quantity::Length(off_m);
    // Line and post are each set out or measured from the room, the pattern from the plate.
    let off = known.bay.lift.posts_off;
    let measured = known.bay.policy.measured_garage.m()
        + known.bay.policy.measured_lift.m()
        + off.across.m().max(off.along.m());
    // Where no outline is given the slab is taken to end at the walls.
    let assumed = kind == SlabLineKind::Edge && known.slab.outline.is_empty();
    let Some(asked) = known.demands.edge else {
        let figure = not_asked(known, (id, what), off_m, off_m - measured);
        return if assumed {
            figure.undecided(OUTLINE)
        } else {
            figure
        };
    };
    let limit = Quantity::Length(asked.value);
    // What was converted to metres and back may be a hair short of what was written.
    let judged = Quantity::Length(off_m + NOISE_M);
    let mut figure = Figure::judged(id, what, judged, Bound::AtLeast, limit.clone());
    figure.found = Some(found.clone());
    let figure = figure.source(source(&asked));
    let walls = (assumed && figure.standing == Standing::Stops).then(|| {
        Said::new("the slab is taken to end at the walls: give its `outline` where it goes farther")
    });
    let note = joined(both(&asked, Quantity::Length), walls);
    if assumed && figure.standing == Standing::Passes {
        return Figure { note, ..figure }.undecided(OUTLINE);
    }
    match figure.standing {
        Standing::Stops => {
            let reason = Said::new(format!("the {}'s {from} stand only ", post(side)))
                .down(found)
                .and(format!(
                    " from {a_line} where {} asks at least ",
                    source(&asked)
                ))
                .up(limit);
            Figure { note, ..figure }.reason(reason).cure(CURE)
        }
        _ if off_m - measured < asked.value => {
            let unsure = Said::new("as written it holds, but places are measured to ")
                .up(Quantity::Length(measured))
                .and(" only");
            Figure {
                note: joined(note, Some(unsure)),
                ..figure
            }
            .undecided("mark the anchor holes on the floor and measure from them")
        }
        _ => by_manual(Figure { note, ..figure }, &asked),
    }
}

/// Where the manual asks nothing, the code's distance for an anchor without product data tells
/// near from far.
fn not_asked(known: &Known<'_>, (id, what): (String, String), off_m: f64, least_m: f64) -> Figure {
    let figure = Figure::noted(id, what, Quantity::Length(off_m)).rounded(Rounding::Down);
    let diameter = known.bay.lift.base_plate.anchor_diameter;
    match diameter.map(|diameter| DIAMETERS * diameter.m()) {
        Some(enough) if least_m >= enough => figure.note(
            Said::new("the manual asks no distance; without data of the anchor the code asks ")
                .up(Quantity::Length(enough))
                .and(" (8 diameters, ACI 318-19, Table 17.9.2(b), torque-controlled)"),
        ),
        _ => figure.undecided(
            "take from the lift's manual or from the anchors' maker how far an anchor must be",
        ),
    }
}
