//! Which vehicle does the file describe?

use super::all;
use super::checks;
use super::door::side;
use super::fields::Fields;
use super::lift::corners;
use super::obstacles::unique_names;
use super::readers::{
    Flag, Read, angle, custom, items, list, mass, mass_change, name, not_negative, number,
    one_item, place, rec, size, variant, words,
};
use super::roof;
use crate::bay::{
    AttachedPart, BodyStyle, CgHeight, HangsWith, LiftPoint, LowPart, Mirrors, NamedMass,
    OpeningKind, OpeningPart, Vehicle,
};
use crate::bayfile::syntax::Kind;
use crate::units::{Angle, Length, Mass};

/// The words for body styles.
pub(super) const STYLES: [(&str, BodyStyle); 8] = [
    ("Hatch", BodyStyle::Hatch),
    ("Saloon", BodyStyle::Saloon),
    ("Coupe", BodyStyle::Coupe),
    ("Estate", BodyStyle::Estate),
    ("Suv", BodyStyle::Suv),
    ("Pickup", BodyStyle::Pickup),
    ("Van", BodyStyle::Van),
    ("Camper", BodyStyle::Camper),
];

/// Reads the vehicle.
pub(super) fn vehicle(f: &Fields<'_>) -> Option<Vehicle> {
    let style = f.need("style", &words("a body style", &STYLES));
    let length = f.need("length", &size());
    let body_width = f.need("body_width", &size());
    let height = f.need("height", &size());
    let belt = f.need("belt", &size());
    let track = f.need("track", &front_rear("the track", size()));
    let tyre = f.need(
        "tyre",
        &rec("the tyre", |f: &Fields<'_>| {
            let diameter = f.need("diameter", &size());
            let width = f.need("width", &size());
            Some((diameter?, width?))
        }),
    );
    let body = (|| {
        Some(roof::Body {
            style: style?,
            length: length?,
            width: body_width?,
            height: height?,
            belt: belt?,
        })
    })();
    let read = all!(Vehicle {
        name: f.need("name", &name()),
        style,
        length,
        body_width,
        height,
        mirrors: f.maybe("mirrors", &rec("the mirrors", mirrors)),
        wheelbase: f.need("wheelbase", &size()),
        front_overhang: f.need("front_overhang", &not_negative()),
        track,
        tyre_diameter: tyre.map(|t| t.0),
        tyre_width: tyre.map(|t| t.1),
        roof: f.need("roof", &roof::roof(body)),
        belt,
        sill: f.need("sill", &size()),
        underbody: f.or(
            "underbody",
            Vec::new(),
            &named("parts of the underbody", 500, "the low part", low_part)
        ),
        attached: f.or(
            "attached",
            Vec::new(),
            &named("attached parts", 500, "the attached part", attached)
        ),
        opening_parts: f.or(
            "opening_parts",
            Vec::new(),
            &named("opening parts", 500, "the opening part", opening_part)
        ),
        driver: f.maybe("driver", &side()),
        droop: f.need("droop", &front_rear("the droop", not_negative())),
        lift_points: f.need(
            "lift_points",
            &rec("the lift points", |f: &Fields<'_>| {
                corners(f, &rec("the lift point", lift_point))
            })
        ),
        axle_loads: f.maybe("axle_loads", &front_rear("the axle loads", mass())),
        masses: f.or(
            "masses",
            Vec::new(),
            &named("masses", 500, "the mass", named_mass)
        ),
        cg_height: f.maybe("cg_height", &cg_height(style, track, height)),
    })?;
    checks::vehicle(f, &read).then_some(read)
}

/// A record of a value at the front and one at the rear.
fn front_rear<T, R: Read<Out = T>>(what: &'static str, reader: R) -> impl Read<Out = [T; 2]> {
    rec(what, move |f: &Fields<'_>| {
        let front = f.need("front", &reader);
        let rear = f.need("rear", &reader);
        Some([front?, rear?])
    })
}

/// Something with a name.
pub(super) trait Named {
    fn name(&self) -> &str;
}

macro_rules! named {
    ($($ty:ty),*) => { $(impl Named for $ty { fn name(&self) -> &str { &self.name } })* };
}
named!(
    LowPart,
    AttachedPart,
    OpeningPart,
    NamedMass,
    crate::bay::Piece,
    crate::bay::Burning
);

/// A list of records with names, no two alike.
pub(super) fn named<T: Named>(
    what: &'static str,
    most: usize,
    one: &'static str,
    read: fn(&Fields<'_>) -> Option<T>,
) -> impl Read<Out = Vec<T>> {
    custom("[]", move |cx, node| {
        let nodes = items(cx, node, what, most, "(name: \"..\", ..)")?;
        let values: Vec<Option<T>> = nodes.iter().map(|n| rec(one, read).read(cx, n)).collect();
        let names: Vec<_> = nodes
            .iter()
            .zip(&values)
            .map(|(n, v)| (n, v.as_ref().map(Named::name)))
            .collect();
        let unique = unique_names(cx, &names);
        let values: Option<Vec<T>> = values.into_iter().collect();
        values.filter(|_| unique)
    })
}

fn mirrors(f: &Fields<'_>) -> Option<Mirrors> {
    let read = all!(Mirrors {
        width_over: f.need("width_over", &size()),
        station: f.need("station", &place()),
        bottom: f.need("bottom", &size()),
        top: f.need("top", &size()),
        depth: f.need("depth", &size()),
    })?;
    checks::rising(f, "bottom", read.bottom, "top", read.top).then_some(read)
}

/// The words for what a low part hangs with.
const HANGS_WITH: [(&str, HangsWith); 3] = [
    ("Body", HangsWith::Body),
    ("Front", HangsWith::Front),
    ("Rear", HangsWith::Rear),
];

fn low_part(f: &Fields<'_>) -> Option<LowPart> {
    let read = all!(LowPart {
        name: f.need("name", &name()),
        from: f.need("from", &not_negative()),
        to: f.need("to", &size()),
        half_width: f.need("half_width", &size()),
        height: f.need("height", &size()),
        hangs_with: f.maybe("hangs_with", &words("what it hangs with", &HANGS_WITH)),
    })?;
    checks::rising(f, "from", read.from, "to", read.to).then_some(read)
}

fn attached(f: &Fields<'_>) -> Option<AttachedPart> {
    let read = all!(AttachedPart {
        name: f.need("name", &name()),
        from: f.need("from", &place()),
        to: f.need("to", &place()),
        across: f.or("across", Length::ZERO, &place()),
        width: f.need("width", &size()),
        bottom: f.need("bottom", &not_negative()),
        top: f.need("top", &size()),
    })?;
    let along = checks::rising(f, "from", read.from, "to", read.to);
    let up = checks::rising(f, "bottom", read.bottom, "top", read.top);
    (along && up).then_some(read)
}

fn opening_part(f: &Fields<'_>) -> Option<OpeningPart> {
    all!(OpeningPart {
        name: f.need("name", &name()),
        kind: f.need(
            "kind",
            &words(
                "a part that opens",
                &[
                    ("Hood", OpeningKind::Hood),
                    ("Hatch", OpeningKind::Hatch),
                    ("Tailgate", OpeningKind::Tailgate),
                    ("DoorLeft", OpeningKind::DoorLeft),
                    ("DoorRight", OpeningKind::DoorRight),
                ]
            )
        ),
        hinge: f.need("hinge", &place()),
        hinge_height: f.need("hinge_height", &size()),
        length: f.need("length", &size()),
        width: f.need("width", &size()),
        shut: f.or("shut", Angle::ZERO, &angle(-180.0, 180.0)),
        opens: f.need("opens", &angle(0.0, 270.0)),
    })
}

fn lift_point(f: &Fields<'_>) -> Option<LiftPoint> {
    all!(LiftPoint {
        station: f.need("station", &not_negative()),
        half_spacing: f.need("half_spacing", &size()),
        height: f.need("height", &size()),
    })
}

fn named_mass(f: &Fields<'_>) -> Option<NamedMass> {
    let read = all!(NamedMass {
        name: f.need("name", &name()),
        mass: f.need("mass", &mass_change()),
        station: f.need("station", &place()),
        across: f.or("across", Length::ZERO, &place()),
        height: f.maybe("height", &not_negative()),
        stays: f.or("stays", false, &Flag),
    })?;
    if read.mass == Mass::ZERO {
        f.error(
            "mass",
            "this mass is nothing",
            "expected more than zero, or less for a part taken out",
            "weigh it, or remove the line",
        );
        return None;
    }
    Some(read)
}

/// Static stability factor T/(2·h) of a class: middle values of the classes, from memory of the
/// figures published with rollover ratings. Only for an estimate, and marked as one.
const fn stability_factor(style: BodyStyle) -> f64 {
    match style {
        BodyStyle::Coupe => 1.45,
        BodyStyle::Saloon | BodyStyle::Estate => 1.40,
        BodyStyle::Hatch => 1.35,
        BodyStyle::Suv | BodyStyle::Pickup => 1.20,
        BodyStyle::Van => 1.10,
        BodyStyle::Camper => 1.00,
    }
}

/// `Given(h)`, `Estimated(h)`, `FromTrack` (by class), `FromTrack(ratio)` or
/// `ShareOfHeight(share)`.
fn cg_height(
    style: Option<BodyStyle>,
    track: Option<[Length; 2]>,
    height: Option<Length>,
) -> impl Read<Out = CgHeight> {
    custom("Estimated(\"28 in\")", move |cx, node| {
        let known = ["Given", "Estimated", "FromTrack", "ShareOfHeight"];
        let variant = variant(cx, node, "a way to know the height", &known)?;
        let estimate = |height| CgHeight {
            height,
            estimated: true,
        };
        match variant {
            "Given" => one_item(cx, node, &size()).map(|height| CgHeight {
                height,
                estimated: false,
            }),
            "Estimated" => one_item(cx, node, &size()).map(estimate),
            "ShareOfHeight" => {
                let share = one_item(cx, node, &number("a share of the height", 0.1, 0.9))?;
                Some(estimate(height? * share))
            }
            _ => {
                let factor = match node.kind {
                    Kind::Word(_) => stability_factor(style?),
                    _ => one_item(cx, node, &number("a stability factor", 0.5, 3.0))?,
                };
                let [front, rear] = track?;
                Some(estimate((front + rear) * 0.5 / (2.0 * factor)))
            }
        }
    })
}

/// A list of roof stations is read by the roof itself.
pub(super) fn stations() -> impl Read<Out = Vec<crate::bay::RoofStation>> {
    list("stations", 200, rec("the station", roof::station))
}
