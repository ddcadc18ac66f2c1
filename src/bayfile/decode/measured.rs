//! Which readings does a file of readings list?

use super::fields::{Fields, record};
use super::readers::{Read, custom, items, rec, size, text, words};
use crate::bay::{
    CornerHeight, Feeler, FromWall, Mark, Measured, Over, PlateCorner, Plumb, Side, Taken, Toward,
};
use crate::bayfile::context::Context;
use crate::bayfile::syntax::Node;
use crate::units::Length;

/// The ± of a tape reading where the file says none: 1/16 in. Common practice, no source.
const TAPE_MM: f64 = 1.5875;

/// The most readings of a kind.
const MOST: usize = 200;

/// The widest ± of a reading, metres: what is known no better places no post.
const WIDEST_M: f64 = 0.05;

/// The narrowest: no tape, line or level is read finer than a tenth of a millimetre. Own choice.
const NARROWEST_M: f64 = 0.000_1;

/// The thinnest leaf of a feeler gauge, metres: what is said to be less was not felt. Common practice,
/// no source.
const THINNEST_LEAF_M: f64 = 0.000_02;

/// A gap so wide takes shims: nobody tries it with a leaf. Own choice.
const WIDEST_GAP_M: f64 = 0.005;

/// The most that a post leans, a shim is high or a floor is off, metres.
const FARTHEST_M: f64 = 0.3;

const CORNERS: [(&str, PlateCorner); 8] = {
    let mut table = [("", PlateCorner::ALL[0]); 8];
    let mut index = 0;
    while index < 8 {
        let corner = PlateCorner::ALL[index];
        table[index] = (corner.letters(), corner);
        index += 1;
    }
    table
};

const MARKS: [(&str, Mark); 13] = {
    let mut table = [("A", Mark::A); 13];
    table[1] = ("B", Mark::B);
    table[2] = ("C", Mark::C);
    table[3] = ("K", Mark::Face(Side::Left));
    table[4] = ("L", Mark::Face(Side::Right));
    let mut index = 0;
    while index < 8 {
        table[index + 5] = (CORNERS[index].0, Mark::Corner(CORNERS[index].1));
        index += 1;
    }
    table
};

const WALLS: [(&str, FromWall); 4] = [
    ("Door", FromWall::Door),
    ("Left", FromWall::Left),
    ("Right", FromWall::Right),
    ("Back", FromWall::Back),
];

const POSTS: [(&str, Side); 2] = [("Left", Side::Left), ("Right", Side::Right)];

const WAYS: [(&str, Toward); 4] = [
    ("Left", Toward::Left),
    ("Right", Toward::Right),
    ("Front", Toward::Front),
    ("Rear", Toward::Rear),
];

/// Reads the file's record.
pub(in crate::bayfile) fn measured(cx: &Context, root: &Node) -> Option<Measured> {
    record(cx, root, "the file of readings", |f| {
        let title = f.need("title", &text());
        let usual = Length::mm(TAPE_MM);
        let tape_usual = f.or("tolerance", usual, &tolerance());
        let plumb_usual = f.or("plumb_tolerance", usual, &tolerance());
        let level_tolerance = f.or("level_tolerance", usual, &tolerance());
        let usual_of = |read: Option<Length>| read.unwrap_or(usual);
        let distances = several(f, "distances", "the distance", |f| {
            distance(f, usual_of(tape_usual))
        });
        let walls = several(f, "walls", "the distance from a wall", |f| {
            wall(f, usual_of(tape_usual))
        });
        let plumb = several(f, "plumb", "the plumb reading", |f| {
            plumb(f, usual_of(plumb_usual))
        });
        let shims = several(f, "shims", "the stack of shims", |f| height(f, small(0.0)));
        let feeler = several(f, "feeler", "what was felt under a plate", feeler);
        let levels = several(f, "levels", "the floor level", |f| {
            height(f, small(-FARTHEST_M))
        });
        let made = Measured {
            title: title?,
            tape: [distances?, walls?].concat(),
            plumb: plumb?,
            shims: shims?,
            feeler: feeler?,
            levels: levels?,
            level_tolerance: level_tolerance?,
        };
        tape_usual?;
        plumb_usual?;
        once(f, &made).then_some(made)
    })
}

/// The items of a list, each a record.
fn several<T>(
    f: &Fields<'_>,
    name: &'static str,
    what: &'static str,
    read: impl Fn(&Fields<'_>) -> Option<T>,
) -> Option<Vec<T>> {
    let reader = custom("[(..)]", |cx: &Context, node: &Node| {
        let nodes = items(cx, node, name, MOST, "(..)")?;
        let item = rec(what, &read);
        let read: Vec<Option<T>> = nodes.iter().map(|node| item.read(cx, node)).collect();
        read.into_iter().collect::<Option<Vec<T>>>()
    });
    f.or(name, Vec::new(), &reader)
}

fn tolerance() -> impl Read<Out = Length> {
    size().within(NARROWEST_M, WIDEST_M).such_as("\"1/16 in\"")
}

/// A height of shims or of the floor, or what a post is out of plumb.
fn small(least_m: f64) -> impl Read<Out = Length> {
    size().within(least_m, FARTHEST_M).such_as("\"3 mm\"")
}

fn mark() -> impl Read<Out = Mark> {
    words("a letter of the floor sheet", &MARKS)
}

fn distance(f: &Fields<'_>, usual: Length) -> Option<Taken> {
    let (from, to) = (f.need("from", &mark()), f.need("to", &mark()));
    let reading = f.need("reading", &size());
    let tolerance = f.or("tolerance", usual, &tolerance());
    let (from, to) = (from?, to?);
    if from.post() == to.post() {
        let (message, help) = if from == to {
            (
                "a tape from a mark to itself shows nothing",
                "name two marks",
            )
        } else {
            (
                "this reading says nothing of where a post stands",
                "pull from one post to the other, or from a post to A, B, C or a wall",
            )
        };
        f.error("to", message, "both marks move together", help);
        return None;
    }
    Some(Taken {
        over: Over::Between(from, to),
        reading: reading?,
        tolerance: tolerance?,
        place: f.cx.place(f.span("reading"), "this reading"),
    })
}

fn wall(f: &Fields<'_>, usual: Length) -> Option<Taken> {
    let from = f.need("from", &words("a wall", &WALLS));
    let to = f.need("to", &mark());
    let reading = f.need("reading", &size());
    let tolerance = f.or("tolerance", usual, &tolerance());
    let to = to?;
    if to.post().is_none() {
        f.error(
            "to",
            "this reading says nothing of where a post stands",
            "a mark of the room",
            "pull from the wall to a corner of a plate, as LP1, or to K or L",
        );
        return None;
    }
    Some(Taken {
        over: Over::Wall(from?, to),
        reading: reading?,
        tolerance: tolerance?,
        place: f.cx.place(f.span("reading"), "this reading"),
    })
}

fn plumb(f: &Fields<'_>, usual: Length) -> Option<Plumb> {
    let side = f.need("post", &words("a post", &POSTS));
    let toward = f.need("toward", &words("a direction seen from the door", &WAYS));
    let out = f.need("out", &small(0.0));
    let over = f.need("over", &size());
    let tolerance = f.or("tolerance", usual, &tolerance());
    let (out, over) = (out?, over?);
    if over.m() < 0.3 || out.m() > 0.1 * over.m() {
        f.error(
            "over",
            "no post is plumbed like this: it would lean by more than one in ten, or was read over \
             less than a foot",
            "the height between the two ends of the reading",
            "read it over as much of the column as the line or level reaches",
        );
        return None;
    }
    Some(Plumb {
        side: side?,
        toward: toward?,
        out,
        over,
        tolerance: tolerance?,
        place: f.cx.place(f.span("out"), "this reading"),
        over_place: f.cx.place(f.span("over"), "more than the column's height"),
    })
}

fn feeler(f: &Fields<'_>) -> Option<Feeler> {
    let side = f.need("post", &words("a post", &POSTS));
    let gap = f.need(
        "gap",
        &size()
            .within(THINNEST_LEAF_M, WIDEST_GAP_M)
            .such_as("\"0.1 mm\""),
    );
    Some(Feeler {
        side: side?,
        gap: gap?,
    })
}

fn height(f: &Fields<'_>, reader: impl Read<Out = Length>) -> Option<CornerHeight> {
    let at = f.need("at", &words("a plate's corner", &CORNERS));
    let height = f.need("height", &reader);
    Some(CornerHeight {
        at: at?,
        height: height?,
    })
}

/// Notes what is missing altogether or given twice; false then.
fn once(f: &Fields<'_>, made: &Measured) -> bool {
    if made.tape.is_empty() {
        f.error(
            "",
            "there is no tape reading in the file",
            "neither `distances` nor `walls`",
            "add `distances: [(from: LP1, to: RP4, reading: \"11 ft 2 in\"), ..]` and \
             `walls: [(from: Door, to: LP1, reading: \"13 ft 2 in\"), ..]`",
        );
        return false;
    }
    let mut fine = true;
    let mut twice = |list: &str, index: usize, field: &str, (what, cure): (&str, &str)| {
        f.error(
            &format!("{list}[{index}].{field}"),
            &format!("{what} is given twice"),
            "already given further up",
            cure,
        );
        fine = false;
    };
    let cures = [
        "measure the whole stack again and keep what lies there",
        "keep one of the two, or write their mean",
    ];
    let lists = [("shims", &made.shims), ("levels", &made.levels)];
    for ((list, heights), cure) in lists.into_iter().zip(cures) {
        for (index, one) in heights.iter().enumerate() {
            if heights[..index].iter().any(|other| other.at == one.at) {
                twice(list, index, "at", ("this corner", cure));
            }
        }
    }
    for (index, one) in made.feeler.iter().enumerate() {
        if made.feeler[..index]
            .iter()
            .any(|known| known.side == one.side)
        {
            let wider = "keep the wider gap of the two, or feel again";
            twice(
                "feeler",
                index,
                "post",
                ("what was felt under this plate", wider),
            );
        }
    }
    fine
}
