//! What is known of the slab and of the electric supply?

use super::all;
use super::checks;
use super::fields::{Fields, record};
use super::readers::{
    Count, Day, Flag, Point, Read, current, custom, list, number, place, rec, size, slab_thickness,
    strength, subgrade, voltage, words,
};
use crate::bay::{
    Conductor, Curing, NewPad, PowerSupply, Slab, SlabLine, SlabLineKind, SlabReading,
};
use crate::bayfile::syntax::Kind;

/// Reads the slab.
pub(super) fn slab(f: &Fields<'_>) -> Option<Slab> {
    let slab = all!(Slab {
        readings: f.or("readings", Vec::new(), &list("readings", 500, reading())),
        claimed_thickness: f.maybe("claimed_thickness", &slab_thickness()),
        strength: f.maybe("strength", &strength()),
        age_days: f.maybe("age_days", &number("an age in days", 0.0, 100_000.0)),
        poured: f.maybe("poured", &Day),
        curing: f.maybe(
            "curing",
            &words(
                "a way of curing",
                &[("Moist", Curing::Moist), ("Steam", Curing::Steam)]
            )
        ),
        drill_on: f.maybe("drill_on", &Day),
        load_on: f.maybe("load_on", &Day),
        outline: f.or("outline", Vec::new(), &list("corners", 200, Point::<2>)),
        lines: f.or(
            "lines",
            Vec::new(),
            &list("lines", 500, rec("the line", line))
        ),
        lines_listed: Some(f.has("lines")),
        post_tensioned: f.maybe("post_tensioned", &Flag),
        heated: f.maybe("heated", &Flag),
        buried_services: f.maybe("buried_services", &Flag),
        void_below: f.maybe("void_below", &Flag),
        subgrade: f.maybe("subgrade", &subgrade()),
        suspended: f.maybe("suspended", &Flag),
        new_pad: f.maybe("new_pad", &rec("the new pad", new_pad)),
    })?;
    checks::slab_days(f, &slab).then_some(slab)
}

fn new_pad(f: &Fields<'_>) -> Option<NewPad> {
    all!(NewPad {
        count: f.or(
            "count",
            1,
            &Count {
                what: "pads",
                least: 1,
                most: 100
            }
        ),
        length: f.need("length", &size()),
        width: f.need("width", &size()),
        depth: f.need("depth", &size()),
        strength: f.maybe("strength", &strength()),
        waste: f.or(
            "waste",
            NewPad::USUAL_WASTE,
            &number("a share of waste", 0.0, 1.0)
        ),
    })
}

/// `(x: .., y: .., thickness: ..)`, or the three in a row.
fn reading() -> impl Read<Out = SlabReading> {
    custom("(\"2 ft\", \"14 ft\", \"4 1/2 in\")", |cx, node| {
        if let Kind::Tuple { items, .. } = &node.kind
            && !items.is_empty()
        {
            let [x, y, _] = Point::<3>.read(cx, node)?;
            let thickness = slab_thickness().read(cx, &items[2])?;
            return Some(SlabReading { x, y, thickness });
        }
        record(cx, node, "the reading", |f| {
            all!(SlabReading {
                x: f.need("x", &place()),
                y: f.need("y", &place()),
                thickness: f.need("thickness", &slab_thickness()),
            })
        })
    })
}

fn line(f: &Fields<'_>) -> Option<SlabLine> {
    all!(SlabLine {
        kind: f.need(
            "kind",
            &words(
                "a kind of line",
                &[
                    ("Joint", SlabLineKind::Joint),
                    ("Crack", SlabLineKind::Crack),
                    ("Edge", SlabLineKind::Edge),
                    ("Drain", SlabLineKind::Drain),
                ]
            )
        ),
        from: f.need("from", &Point::<2>),
        to: f.need("to", &Point::<2>),
    })
}

/// The words for sizes of copper conductors.
const CONDUCTORS: [(&str, Conductor); 5] = [
    ("Awg14", Conductor::Awg14),
    ("Awg12", Conductor::Awg12),
    ("Awg10", Conductor::Awg10),
    ("Awg8", Conductor::Awg8),
    ("Awg6", Conductor::Awg6),
];

/// Reads the electric supply.
pub(super) fn power(f: &Fields<'_>) -> Option<PowerSupply> {
    all!(PowerSupply {
        voltage: f.maybe("voltage", &voltage()),
        breaker: f.maybe("breaker", &current()),
        run: f.maybe("run", &size()),
        conductor: f.maybe(
            "conductor",
            &words("a size of copper conductor", &CONDUCTORS)
        ),
        overload: f.maybe("overload", &current()),
    })
}
