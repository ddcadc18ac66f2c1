//! How thick is it under each plate, and which readings say so?

use super::{Known, both, by_manual, joined, place, post, source, word};
use crate::bay::Side;
use crate::ground::slab::drilling::{Drilling, of_slab};
use crate::ground::slab::map::{ENOUGH, MapPlate};
use crate::ground::{Bound, Figure, Quantity, Said, Standing};

/// Readings that are listed one by one: the thinnest and the nearest of more.
const LISTED: usize = 24;

const CURE: &str = "cut the slab out and pour a pad as thick as is asked under each post, or \
                    choose a lift whose manual asks no more than this";

/// How to get more readings, by what is known of drilling.
fn more(known: &Known<'_>) -> &'static str {
    match of_slab(known.slab) {
        Drilling::Yes => {
            "measure at least two holes, 50 mm (2 in) apart or more, within 600 mm (23 1/2 in) of each plate"
        }
        Drilling::Unknown(_) => {
            "measure at least two holes, 50 mm (2 in) apart or more, within 600 mm (23 1/2 in) of \
             each plate, but drill none before tendons, heating, services and voids are ruled out"
        }
        Drilling::No(_) => {
            "drill nothing: have the thickness found without holes, by radar or at an edge, at two \
             places at least within 600 mm (23 1/2 in) of each plate"
        }
    }
}

/// What is asked, and how it stands under each plate.
pub(super) fn figures(known: &Known<'_>) -> Vec<Figure> {
    let mut figures: Vec<Figure> = known.map.plates.iter().map(|p| plate(known, p)).collect();
    figures.extend(elsewhere(known, &figures));
    figures.extend(claimed(known));
    if known.map.outline_is_broken {
        figures.push(Figure::unknown(
            "outline",
            "the slab's outline",
            "give its corners one after another around it; they enclose nothing as they stand",
        ));
    }
    let off = known.map.readings.iter().filter(|r| !r.on_slab).count();
    if off > 0 {
        figures.push(
            Figure::noted(
                "readings.off_slab",
                "readings that lie off the slab",
                Quantity::Count(precise(off)),
            )
            .undecided("check their places, or the slab's outline (the room's where none is given)")
            .note("they count against the slab, never for it"),
        );
    }
    figures
}

#[allow(clippy::cast_precision_loss)] // at most 500
const fn precise(count: usize) -> f64 {
    count as f64
}

fn plate(known: &Known<'_>, plate: &MapPlate) -> Figure {
    let id = format!("thickness.{}", word(plate.side));
    let what = format!("thickness under the {}", post(plate.side));
    let Some(thinnest) = plate.thinnest.map(|index| known.map.readings[index]) else {
        return Figure::unknown(id, what, more(known));
    };
    let found = Quantity::Length(thinnest.thickness_m);
    let enough = plate.readings_used >= ENOUGH;
    let note = place(
        Said::new(match plate.readings_used {
            0 => "from a reading that lies off the slab or beyond a joint or an edge, ".to_owned(),
            1 => "read at one place only within 600 mm, ".to_owned(),
            n => format!("the least, read at {n} places within 600 mm, "),
        }),
        thinnest.at_m,
    );
    let Some(asked) = known.demands.thickness else {
        let figure = Figure::noted(id, what, found).note(note);
        return figure.undecided("take from the lift's manual how thick the slab must be");
    };
    let limit = Quantity::Length(asked.value);
    let figure = Figure::judged(id, what, found.clone(), Bound::AtLeast, limit.clone())
        .source(source(&asked))
        .note(joined(Some(note), both(&asked, Quantity::Length)).unwrap_or_default());
    if figure.standing == Standing::Stops {
        let reason = Said::new(format!("under the {} the slab is only ", post(plate.side)))
            .down(found)
            .and(" thick (");
        let reason = place(reason, thinnest.at_m)
            .and(format!(") where {} asks at least ", source(&asked)))
            .up(limit);
        return figure.cure(CURE).reason(reason);
    }
    if !enough {
        return figure.undecided(more(known));
    }
    by_manual(figure, &asked)
}

/// The thinnest reading of the whole slab, where it is not under a plate: it speaks against a
/// plate that has too few of its own.
fn elsewhere(known: &Known<'_>, plates: &[Figure]) -> Option<Figure> {
    let thinnest = known.map.readings[known.map.thinnest()?];
    let asked = known.demands.thickness?;
    if thinnest.is_near() || thinnest.thickness_m >= asked.value {
        return None;
    }
    let figure = Figure::judged(
        "thickness.elsewhere",
        "thickness at the thinnest place",
        Quantity::Length(thinnest.thickness_m),
        Bound::AtLeast,
        Quantity::Length(asked.value),
    )
    .source(source(&asked));
    let own = |side| known.map.plate(side).readings_used >= ENOUGH;
    if own(Side::Left) && own(Side::Right) {
        let note = place(Said::new("away from the plates, at "), thinnest.at_m);
        return Some(Figure {
            standing: Standing::Noted,
            limit: None,
            ..figure.note(note.and("; under the plates it was measured"))
        });
    }
    let stops = plates.iter().any(|f| f.standing == Standing::Stops);
    let reason = place(
        Said::new(if stops { "elsewhere " } else { "" })
            .and("the slab was found only ")
            .down(Quantity::Length(thinnest.thickness_m))
            .and(" thick (at "),
        thinnest.at_m,
    );
    Some(
        figure
            .reason(
                reason
                    .and(format!(") where {} asks at least ", source(&asked)))
                    .up(Quantity::Length(asked.value))
                    .and(", and not every plate has two readings of its own"),
            )
            .cure(more(known)),
    )
}

/// What it is said to be. Never a pass; a claim that is too thin counts until it is measured.
fn claimed(known: &Known<'_>) -> Option<Figure> {
    let claimed = known.slab.claimed_thickness?.m();
    let measured = known.map.plates.iter().all(|p| p.readings_used >= ENOUGH);
    let thinner = known
        .map
        .thinnest()
        .map(|index| claimed - known.map.readings[index].thickness_m)
        .filter(|short| *short > 0.0);
    let mut note = Said::new("said by someone who did not drill: never counted for the slab");
    if let Some(short) = thinner {
        note = note
            .and("; the thinnest reading is ")
            .up(Quantity::Length(short))
            .and(" less");
    }
    let (id, what) = ("thickness.claimed", "what the slab is said to be");
    let found = Quantity::Length(claimed);
    Some(match known.demands.thickness {
        Some(asked) if !measured && claimed < asked.value => {
            let limit = Quantity::Length(asked.value);
            Figure::judged(id, what, found, Bound::AtLeast, limit)
                .source(source(&asked))
                .note(note)
                .cure(more(known))
        }
        _ => Figure::noted(id, what, found).note(note),
    })
}

/// Every reading with its place and its distance from the nearest plate.
pub(super) fn readings(known: &Known<'_>, figures: &mut Vec<Figure>) {
    let all = &known.map.readings;
    let mut order: Vec<usize> = (0..all.len()).collect();
    if all.len() > LISTED {
        // Those near the plates first, the thinnest of them first.
        order.sort_by(|a, b| {
            let (a, b) = (&all[*a], &all[*b]);
            b.is_near()
                .cmp(&a.is_near())
                .then(a.thickness_m.total_cmp(&b.thickness_m))
        });
        order.truncate(LISTED);
        order.sort_unstable();
    }
    for index in order {
        let reading = &all[index];
        let note = place(Said::default(), reading.at_m);
        let post = post(reading.nearest);
        let note = if reading.off_m > 0.0 {
            note.and(", ")
                .near(Quantity::Length(reading.off_m))
                .and(format!(" from the {post}'s plate"))
        } else {
            note.and(format!(", under the {post}'s plate"))
        };
        let note = if !reading.on_slab {
            note.and("; off the slab")
        } else if !reading.is_near() {
            note.and("; too far to count")
        } else if reading.parted {
            note.and(
                "; beyond a joint or an edge, so perhaps of another pour: it counts against the \
                 slab, never for it",
            )
        } else {
            note
        };
        figures.push(
            Figure::noted(
                format!("reading.{}", index + 1),
                format!("reading {}", index + 1),
                Quantity::Length(reading.thickness_m),
            )
            .rounded(crate::units::Rounding::Down)
            .note(note),
        );
    }
}

/// Where to drill, while there are too few readings, and how many readings are not listed.
pub(super) fn notes(known: &Known<'_>) -> Vec<Said> {
    let mut notes = Vec::new();
    let how = match of_slab(known.slab) {
        Drilling::Yes => "within 600 mm of it, away from the anchor holes.",
        Drilling::Unknown(_) => {
            "within 600 mm of it, away from the anchor holes, once it is known that the slab may be \
             drilled."
        }
        Drilling::No(_) => "within 600 mm of it, without a hole.",
    };
    let lacking = known.map.plates.iter().filter(|p| p.readings_used < ENOUGH);
    for plate in lacking {
        let missing = if plate.readings_used == 0 {
            "at two places at least"
        } else {
            "at one place more at least"
        };
        let said = Said::new(format!(
            "The {}'s plate lies with its middle ",
            post(plate.side)
        ));
        let at = place(said, plate.rect.middle());
        notes.push(at.and(format!(": measure the thickness {missing} {how}")));
    }
    if known.map.readings.len() > LISTED {
        let n = known.map.readings.len();
        notes.push(format!("Of {n} readings {LISTED} are listed; all of them count.").into());
    }
    notes
}
