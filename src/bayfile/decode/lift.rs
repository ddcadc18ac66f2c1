//! Which lift does the file describe, and where does it stand?

use super::anchor::{anchor, anchor_fits};
use super::door::side;
use super::fields::{Fields, record};
use super::locks::locks;
use super::readers::{
    Flag, Point, Read, angle, current, custom, list, mass, name, not_negative, number, place,
    power, rec, size, slab_thickness, strength, text, variant, voltage, volume, words,
};
use super::vehicle::named;
use super::{all, checks};
use crate::bay::{
    Arm, BasePlate, Carriage, CgWindow, Column, Hydraulics, Lift, Motor, Pad, Phases, Piece,
    PostsOff, PowerUnit, ShutOffBar, SlabDemand, Tie,
};
use crate::bayfile::context::Context;
use crate::bayfile::merge::lay_over;
use crate::bayfile::syntax::Node;
use crate::units::{Angle, Length};

/// What the operator and coasting add to a stop when the file doesn't say: the model's default.
const OVERSHOOT_MM: f64 = 25.0;
/// How far the carriages may be out of level when the file doesn't say: the model's default.
const SIDE_MISMATCH_MM: f64 = 12.0;

/// Reads the lift.
pub(super) fn lift(f: &Fields<'_>) -> Option<Lift> {
    let travel = f.need("travel", &size());
    let spacing = f.need("spacing", &size());
    let drive_through = f.need("drive_through", &size());
    if drive_through > spacing && spacing.is_some() {
        f.cx.warning(
            f.span(f.newer("drive_through", "spacing")),
            "the width to drive through is more than the spacing of the columns",
            "`drive_through` is taken between the carriages, `spacing` between the columns",
            "check both: the carriages stand between the columns",
        );
    }
    let read = all!(Lift {
        name: f.need("name", &name()),
        post_line: f.need("post_line", &size()),
        across: f.or("across", Length::ZERO, &place()),
        column: f.need("column", &rec("the column", column)),
        spacing,
        drive_through,
        base_plate: f.need("base_plate", &rec("the base plate", base_plate)),
        power_unit: f.maybe("power_unit", &rec("the power unit", power_unit)),
        tie: f.need("tie", &tie()),
        carriage: f.need("carriage", &rec("the carriage", carriage)),
        arms: f.need("arms", &arms()),
        pad: f.need("pad", &rec("the pad", pad)),
        travel,
        locks: f.need("locks", &locks(travel)),
        set_overtravel: f.need("set_overtravel", &not_negative()),
        release_overtravel: f.need("release_overtravel", &not_negative()),
        overshoot: f.or("overshoot", Length::mm(OVERSHOOT_MM), &not_negative()),
        side_mismatch: f.or(
            "side_mismatch",
            Length::mm(SIDE_MISMATCH_MM),
            &not_negative()
        ),
        cg_window: f.maybe(
            "cg_window",
            &rec("the window of the centre of gravity", cg_window)
        ),
        capacity: f.need("capacity", &mass()),
        arm_capacity: f.maybe("arm_capacity", &mass()),
        post_capacity: f.maybe("post_capacity", &mass()),
        motor: f.maybe("motor", &rec("the motor", motor)),
        hydraulics: f.maybe("hydraulics", &rec("the hydraulics", hydraulics)),
        shim_limit: f.maybe("shim_limit", &size()),
        plumb_limit: f.maybe("plumb_limit", &size()),
        posts_off: Some(PostsOff::default()),
        shipping_mass: f.maybe("shipping_mass", &mass()),
        pieces: f.or(
            "pieces",
            Vec::new(),
            &named("pieces", 100, "the piece", piece)
        ),
        price: f.maybe("price", &text()),
        manual: f.or(
            "manual",
            SlabDemand::default(),
            &rec("the manual's demand", demand)
        ),
        advertised: f.or(
            "advertised",
            SlabDemand::default(),
            &rec("the advertised demand", demand)
        ),
    })?;
    let fits = checks::ratings(f, &read) & checks::tie(f, &read);
    (stays_on_column(f, &read) && fits).then_some(read)
}

/// True when the carriage, at the end of its travel, is still on its column; else that is noted.
fn stays_on_column(f: &Fields<'_>, lift: &Lift) -> bool {
    let top = lift.carriage.bottom + lift.carriage.height + lift.travel;
    let edge = lift.base_plate.thickness + lift.carriage.marked_edge + lift.travel;
    let needed = top.max(edge);
    if needed <= lift.column.height {
        return true;
    }
    f.error(
        f.newer("travel", "column.height"),
        &format!(
            "the carriage would climb off its column: at the end of its travel it reaches {}, and \
             the column is {} high",
            checks::both(needed),
            checks::both(lift.column.height)
        ),
        "the travel, the carriage and the column don't go together",
        "check the travel, the carriage's height and marked edge, and the column's height",
    );
    false
}

fn column(f: &Fields<'_>) -> Option<Column> {
    all!(Column {
        height: f.need("height", &size()),
        width: f.need("width", &size()),
        depth: f.need("depth", &size()),
        turned: f.or("turned", Angle::ZERO, &angle(-90.0, 90.0)),
    })
}

fn base_plate(f: &Fields<'_>) -> Option<BasePlate> {
    let plate = all!(BasePlate {
        width: f.need("width", &size()),
        depth: f.need("depth", &size()),
        thickness: f.need("thickness", &size()),
        inward: f.or("inward", Length::ZERO, &place()),
        anchors: f.or("anchors", Vec::new(), &list("anchors", 100, Point::<2>)),
        anchor_diameter: f.maybe("anchor_diameter", &size()),
        anchor_embedment: f.maybe("anchor_embedment", &size()),
        anchor: f.maybe("anchor", &rec("the anchor", anchor)),
        anchor_age_days: f.maybe("anchor_age_days", &number("an age in days", 0.0, 3_650.0)),
    })?;
    let anchors_fit = anchor_fits(f, &plate);
    (super::checks::anchors(f, &plate) && anchors_fit).then_some(plate)
}

fn power_unit(f: &Fields<'_>) -> Option<PowerUnit> {
    all!(PowerUnit {
        side: f.need("side", &side()),
        width: f.need("width", &size()),
        depth: f.need("depth", &size()),
        height: f.need("height", &size()),
        bottom: f.need("bottom", &not_negative()),
    })
}

fn tie() -> impl Read<Out = Tie> {
    custom("OverheadBeam(..)", |cx, node| {
        match variant(cx, node, "a kind of tie", &["OverheadBeam", "FloorPlate"])? {
            "OverheadBeam" => record(cx, node, "the overhead beam", |f| {
                all!(Tie::OverheadBeam {
                    underside: f.need("underside", &size()),
                    height: f.need("height", &size()),
                    width: f.need("width", &size()),
                    bar: f.maybe("bar", &rec("the shut-off bar", bar)),
                })
            }),
            _ => record(cx, node, "the floor plate", |f| {
                all!(Tie::FloorPlate {
                    height: f.need("height", &size()),
                    width: f.need("width", &size()),
                })
            }),
        }
    })
}

fn bar(f: &Fields<'_>) -> Option<ShutOffBar> {
    all!(ShutOffBar {
        drop: f.need("drop", &size()),
        diameter: f.need("diameter", &size()),
        length: f.need("length", &size()),
    })
}

fn carriage(f: &Fields<'_>) -> Option<Carriage> {
    all!(Carriage {
        proud: f.need("proud", &not_negative()),
        depth: f.need("depth", &size()),
        height: f.need("height", &size()),
        bottom: f.need("bottom", &not_negative()),
        marked_edge: f.need("marked_edge", &size()),
    })
}

/// The names of the four corners, in index order, with the name of the pair each belongs to.
const CORNERS: [(&str, &str); 4] = [
    ("front_left", "front"),
    ("front_right", "front"),
    ("rear_left", "rear"),
    ("rear_right", "rear"),
];

/// Reads four values at the corners: `front` and `rear` for left and right alike, and the four
/// names for one each, which go over the pair's value field by field.
pub(super) fn corners<T, R: Read<Out = T>>(f: &Fields<'_>, reader: &R) -> Option<[T; 4]> {
    let mut out: Vec<Option<T>> = Vec::with_capacity(4);
    // A fault in a value that left and right share is told once.
    let mut told: Vec<Node> = Vec::new();
    for (own_name, pair_name) in CORNERS {
        let node = match (f.node(pair_name), f.node(own_name)) {
            (Some(pair), Some(own)) => {
                // Told once, at the left one.
                if pair.span.source < own.span.source && own_name.ends_with("left") {
                    masked(f, pair_name);
                }
                Some(lay_over(pair.clone(), own.clone()))
            }
            (pair, own) => pair.or(own).cloned(),
        };
        let value = match node {
            Some(node) if told.contains(&node) => None,
            Some(node) => {
                let value = reader.read(f.cx, &node);
                if value.is_none() {
                    told.push(node);
                }
                value
            }
            None => {
                let pair_is_split = CORNERS.iter().any(|(o, p)| *p == pair_name && f.has(o));
                f.need(if pair_is_split { own_name } else { pair_name }, reader)
            }
        };
        out.push(value);
    }
    let all: Option<Vec<T>> = out.into_iter().collect();
    all?.try_into().ok()
}

/// An override of a pair over a preset that gives each corner its own would be lost.
fn masked(f: &Fields<'_>, pair: &'static str) {
    f.cx.error(
        f.name_span(pair),
        &format!("`{pair}` has no effect here: the preset gives left and right each its own value"),
        "an override that would be lost",
        &format!("write `{pair}_left` and `{pair}_right`"),
    );
}

fn arms() -> impl Read<Out = [Arm; 4]> {
    rec("the arms", |f: &Fields<'_>| {
        corners(f, &rec("the arm", arm))
    })
}

fn arm(f: &Fields<'_>) -> Option<Arm> {
    let read = all!(Arm {
        pivot_inward: f.need("pivot_inward", &place()),
        pivot_away: f.need("pivot_away", &place()),
        zero: f.or("zero", Angle::ZERO, &angle(-180.0, 180.0)),
        swing_min: f.need("swing_min", &angle(-180.0, 180.0)),
        swing_max: f.need("swing_max", &angle(-180.0, 180.0)),
        shortest: f.need("shortest", &size()),
        longest: f.need("longest", &size()),
        tooth: f.maybe("tooth", &angle(0.1, 45.0)),
        stepless_restraint: f.maybe("stepless_restraint", &Flag),
        section_width: f.need("section_width", &size()),
        section_height: f.need("section_height", &size()),
        underside: f.need("underside", &not_negative()),
    })?;
    let mut good = true;
    if read.shortest > read.longest {
        good = false;
        f.error(
            f.newer("shortest", "longest"),
            "the arm's shortest reach is longer than its longest",
            "`shortest` must not be more than `longest`",
            "measure both from the pivot to the pad's middle: pushed in and drawn out",
        );
    }
    if read.swing_min > read.swing_max {
        good = false;
        f.error(
            f.newer("swing_min", "swing_max"),
            "the arm's least swing is greater than its greatest",
            "`swing_min` must not be more than `swing_max`",
            "swap the two, or check their signs: positive turns away from the post line",
        );
    }
    if read.tooth.is_some() && read.stepless_restraint.is_some() {
        good = false;
        f.error(
            f.newer("stepless_restraint", "tooth"),
            "the arm's restraint is said to have teeth and to be one without",
            "`stepless_restraint` goes with `tooth: None` only",
            "give `tooth` for a restraint with teeth; else `stepless_restraint: true` where one \
             holds the arm at any swing, or `false` where nothing holds it",
        );
    }
    good.then_some(read)
}

fn pad(f: &Fields<'_>) -> Option<Pad> {
    all!(Pad {
        diameter: f.need("diameter", &size()),
        lowest: f.need("lowest", &size()),
        screw_travel: f.need("screw_travel", &not_negative()),
        adapters: f.or("adapters", Vec::new(), &list("adapters", 12, size())),
    })
}

fn cg_window(f: &Fields<'_>) -> Option<CgWindow> {
    all!(CgWindow {
        front: f.need("front", &not_negative()),
        rear: f.need("rear", &not_negative()),
    })
}

fn motor(f: &Fields<'_>) -> Option<Motor> {
    all!(Motor {
        power: f.maybe("power", &power()),
        voltage: f.maybe("voltage", &voltage()),
        current: f.maybe("current", &current()),
        phases: f.maybe(
            "phases",
            &words(
                "a number of phases",
                &[("One", Phases::One), ("Three", Phases::Three)]
            )
        ),
        protected: f.maybe("protected", &Flag),
    })
}

fn hydraulics(f: &Fields<'_>) -> Option<Hydraulics> {
    all!(Hydraulics {
        bore: f.need("bore", &size()),
        stroke: f.need("stroke", &size()),
        tank_min: f.maybe("tank_min", &volume()),
        tank_max: f.maybe("tank_max", &volume()),
    })
    .filter(|read: &Hydraulics| {
        let crossed = match (read.tank_min, read.tank_max) {
            (Some(least), Some(most)) => least.si() > most.si(),
            _ => false,
        };
        if crossed {
            f.error(
                f.newer("tank_max", "tank_min"),
                "`tank_max` is less than `tank_min`",
                "the greatest filling can't be below the least",
                "check `tank_min` and `tank_max`, or swap them",
            );
        }
        !crossed
    })
}

fn piece(f: &Fields<'_>) -> Option<Piece> {
    all!(Piece {
        name: f.need("name", &name()),
        mass: f.need("mass", &mass()),
        length: f.need("length", &size()),
        width: f.need("width", &size()),
        height: f.need("height", &size()),
        column: f.or("column", false, &Flag),
    })
}

fn demand(f: &Fields<'_>) -> Option<SlabDemand> {
    all!(SlabDemand {
        thickness: f.maybe("thickness", &slab_thickness()),
        strength: f.maybe("strength", &strength()),
        edge_distance: f.maybe("edge_distance", &size()),
        embedment: f.maybe("embedment", &size()),
        age_days: f.maybe("age_days", &number("an age in days", 0.0, 3_650.0)),
    })
}

/// One value for all four corners, or a record of corners.
pub(super) fn one_or_corners<T: Copy, R: Read<Out = T>>(
    what: &'static str,
    reader: R,
) -> impl Read<Out = [T; 4]> {
    custom("\"3 in\"", move |cx: &Context, node: &Node| {
        if matches!(node.kind, crate::bayfile::syntax::Kind::Struct { .. }) {
            record(cx, node, what, |f| corners(f, &reader))
        } else {
            reader.read(cx, node).map(|v| [v; 4])
        }
    })
}
