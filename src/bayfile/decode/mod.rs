//! What valid bay does a file's record describe?
//!
//! Each file here reads one part. A part reads all of its fields before it gives up, so that every
//! fault is told; a value that was refused never goes on as a default.

mod anchor;
mod arrangements;
mod checks;
mod door;
mod fields;
mod garage;
mod ground;
mod lift;
mod locks;
pub(super) mod measured;
mod obstacles;
pub(super) mod options;
mod parking;
mod policy;
mod readers;
mod roof;
mod vehicle;

use super::context::Context;
use super::presets::{PresetKind, Resolver};
use super::syntax::{Kind, Node};
use crate::bay::{Bay, UnitSystem};

use fields::record;
use readers::{Read, custom, list, rec, text, words};

pub(super) use fields::nearest;

/// Reads all named fields before any is given up, then builds the value. A field without a
/// reading was read before under its own name.
macro_rules! all {
    ($($ty:ident)::+ { $($field:ident $(: $read:expr)?),* $(,)? }) => {{
        $($(let $field = $read;)?)*
        Some($($ty)::+ { $($field: $field?),* })
    }};
}
use all;

/// The most things that a file may name as not measured.
const MOST_NOT_MEASURED: usize = 500;

/// Reads a bay file's record. The same checks run for every part; those between two parts run
/// when both could be read.
pub(super) fn bay(cx: &Context, root: Node, presets: &Resolver<'_>) -> Option<Bay> {
    let root = with_presets(cx, root, presets);
    record(cx, &root, "the bay file", |f| {
        let title = f.need("title", &text());
        let units = f.need(
            "units",
            &words(
                "a system of units",
                &[
                    ("Imperial", UnitSystem::Imperial),
                    ("Metric", UnitSystem::Metric),
                ],
            ),
        );
        let not_measured = f.or(
            "not_measured",
            Vec::new(),
            &list("not_measured", MOST_NOT_MEASURED, text()),
        );
        // Each is told once, however often it is listed.
        let not_measured = not_measured.map(each_once);
        let garage = f.need("garage", &rec("the garage", garage::garage));
        let lift = f.need("lift", &with_preset(rec("the lift", lift::lift)));
        let vehicle = f.need(
            "vehicle",
            &with_preset(rec("the vehicle", vehicle::vehicle)),
        );
        let parking = f.need("parking", &rec("the parking", parking::parking));
        let mut policy = f.or(
            "policy",
            crate::bay::Policy::default(),
            &rec("the policy", policy::policy),
        );
        let people = f.maybe("people", &policy::people());
        if let (Some(Some(people)), Some(policy)) = (people, &mut policy) {
            if policy.people.is_empty() {
                policy.people = people;
            } else {
                cx.error(
                    f.name_span("people"),
                    "the people are given twice",
                    "also given in the policy",
                    "keep one of the two lists",
                );
            }
        }
        let slab = f.maybe("slab", &rec("the slab", ground::slab));
        let power = f.maybe("power", &rec("the power supply", ground::power));
        let arrangements = f.maybe(
            "arrangements",
            &rec("the part `arrangements`", arrangements::arrangements),
        );
        checks::between(
            f,
            garage.as_ref(),
            lift.as_ref(),
            vehicle.as_ref(),
            parking.as_ref(),
        );
        all!(Bay {
            title,
            units,
            not_measured,
            garage,
            lift,
            vehicle,
            parking,
            policy,
            slab,
            power,
            arrangements,
        })
    })
}

/// Every text once, where it first stands.
pub(crate) fn each_once(texts: Vec<String>) -> Vec<String> {
    let mut once: Vec<String> = Vec::with_capacity(texts.len());
    for text in texts {
        if !once.contains(&text) {
            once.push(text);
        }
    }
    once
}

/// A word that no file can hold: stands for a record whose preset could not be had, so that the
/// record is not read and nothing more is said of it.
const UNRESOLVED: &str = "\u{0}unresolved";

fn with_presets(cx: &Context, mut root: Node, presets: &Resolver<'_>) -> Node {
    if let Kind::Struct { fields, .. } = &mut root.kind {
        for field in fields {
            let Some(kind) = PresetKind::of_field(&field.name.text) else {
                continue;
            };
            let span = field.value.span;
            let unresolved = Node {
                span,
                kind: Kind::Word(UNRESOLVED.into()),
            };
            let written = std::mem::replace(&mut field.value, unresolved);
            if let Some(whole) = presets.resolve(cx, kind, written) {
                field.value = whole;
            }
        }
    }
    root
}

fn with_preset<T>(reader: impl Read<Out = T>) -> impl Read<Out = T> {
    custom("(preset: \"..\")", move |cx, node| match &node.kind {
        Kind::Word(w) if w == UNRESOLVED => None,
        _ => reader.read(cx, node),
    })
}
