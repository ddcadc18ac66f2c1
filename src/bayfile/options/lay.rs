//! What does a bay file say once an option is laid over it?

use super::Touches;
use crate::bay::Policy;
use crate::bayfile::merge::lay_over;
use crate::bayfile::presets::PresetKind;
use crate::bayfile::syntax::{Field, Kind, Node, Span, value_at};
use crate::units::{Length, parse_length};

/// What stays of a lift when another is put in its place: where it stands.
const PLACE: [&str; 2] = ["post_line", "across"];

/// What belongs to the garage and not to lift, vehicle or people.
const OF_GARAGE: [&str; 4] = ["garage", "slab", "power", "arrangements"];

/// The list of what is not measured. Which of its words are about the garage only a person could
/// say: a bay put into another garage lacks what both files lack.
const NOT_MEASURED: &str = "not_measured";

fn add_not_measured(fields: &mut Vec<Field>, theirs: &Field) {
    let own = fields.iter_mut().find(|f| f.name.text == NOT_MEASURED);
    match own.map(|own| &mut own.value.kind) {
        Some(Kind::List(items)) => {
            if let Kind::List(more) = &theirs.value.kind {
                items.extend(more.iter().cloned());
            }
        }
        // What is no list is refused as it is read.
        Some(_) => {}
        None => fields.push(theirs.clone()),
    }
}

const fn fields_of(node: &mut Node) -> Option<&mut Vec<Field>> {
    match &mut node.kind {
        Kind::Struct { fields, .. } => Some(fields),
        _ => None,
    }
}

/// Lays one part over the bay's. An option that names a preset puts another lift or vehicle in the
/// place of the bay's: of a lift its place is kept, of a vehicle nothing.
pub(super) fn over(root: &mut Node, field: &Field) {
    let Some(fields) = fields_of(root) else {
        return;
    };
    let Some(at) = fields.iter().position(|f| f.name.text == field.name.text) else {
        fields.push(field.clone());
        return;
    };
    let mut below = fields.remove(at).value;
    // Two ages are one too many, and how the old concrete cured says nothing of the new.
    if (forgets_age(field).is_some() || says_age(field))
        && let Some(kept) = fields_of(&mut below)
    {
        kept.retain(|f| !OF_AGE.contains(&f.name.text.as_str()));
    }
    let replaces = PresetKind::of_field(&field.name.text)
        .filter(|_| value_at(&field.value, "preset").is_some());
    if let (Some(kind), Some(kept)) = (replaces, fields_of(&mut below)) {
        kept.retain(|f| kind == PresetKind::Lift && PLACE.contains(&f.name.text.as_str()));
    }
    let value = lay_over(below, field.value.clone());
    let name = field.name.clone();
    fields.insert(at, Field { name, value });
}

/// What says how old a slab's concrete is.
const OF_AGE: [&str; 3] = ["age_days", "poured", "curing"];

/// What makes other concrete of it.
const OF_CONCRETE: [&str; 4] = ["readings", "claimed_thickness", "strength", "lines"];

/// Whether an option says how old the slab is.
fn says_age(over: &Field) -> bool {
    let says = |name: &&str| value_at(&over.value, name).is_some();
    over.name.text == "slab" && OF_AGE[..2].iter().any(says)
}

/// Where an option describes other concrete than the bay's and does not say how old it is: then the age
/// of the bay's slab is not taken for it.
pub(super) fn forgets_age(over: &Field) -> Option<Span> {
    let Kind::Struct { fields, .. } = &over.value.kind else {
        return None;
    };
    if over.name.text != "slab" {
        return None;
    }
    let says = |names: &[&str]| {
        let named = |f: &&Field| names.contains(&f.name.text.as_str());
        fields.iter().find(named)
    };
    let of_concrete = says(&OF_CONCRETE)?;
    (!says_age(over)).then_some(of_concrete.name.span)
}

/// Puts the bay into another bay file's garage: with its slab, its supply, what is arranged for
/// it, and the place of the lift in it. What that file does not say is not known there. How far the
/// room's measurements may be off is the worse of both files.
pub(super) fn into_garage(root: &mut Node, other: &Node) {
    let place: Vec<Field> = PLACE
        .into_iter()
        .filter_map(|name| match &value_at(other, "lift")?.kind {
            Kind::Struct { fields, .. } => fields.iter().find(|f| f.name.text == name).cloned(),
            _ => None,
        })
        .collect();
    let Some(fields) = fields_of(root) else {
        return;
    };
    fields.retain(|f| !OF_GARAGE.contains(&f.name.text.as_str()));
    if let Kind::Struct { fields: theirs, .. } = &other.kind {
        let of_garage = |f: &&Field| OF_GARAGE.contains(&f.name.text.as_str());
        fields.extend(theirs.iter().filter(of_garage).cloned());
        let theirs = theirs.iter().find(|f| f.name.text == NOT_MEASURED);
        if let Some(theirs) = theirs {
            add_not_measured(fields, theirs);
        }
    }
    trust_no_more(fields, other);
    if let Some(lift) = fields.iter_mut().find(|f| f.name.text == "lift")
        && let Some(fields) = fields_of(&mut lift.value)
    {
        for field in place {
            fields.retain(|f| f.name.text != field.name.text);
            fields.push(field);
        }
    }
}

/// How far room and door may be off as measured, as a file of a bay says it.
const POLICY: &str = "policy";
const MEASURED: &str = "measured_garage";

/// The ± of the room in a bay file; the project's own where it says nothing, none where what it
/// says is no length.
fn measured(fields: &[Field]) -> Option<Length> {
    let policy = fields.iter().find(|f| f.name.text == POLICY);
    let written = policy.and_then(|policy| value_at(&policy.value, MEASURED));
    match written.map(|node| &node.kind) {
        None => Some(Policy::default().measured_garage),
        Some(Kind::Str(text)) => parse_length(text).ok(),
        Some(_) => None,
    }
}

/// The room of another file is trusted no more than that file trusts it.
fn trust_no_more(fields: &mut Vec<Field>, other: &Node) {
    let Kind::Struct { fields: theirs, .. } = &other.kind else {
        return;
    };
    let (Some(own_m), their_m) = (measured(fields), measured(theirs)) else {
        return; // refused as it is read
    };
    if their_m.is_some_and(|their_m| their_m <= own_m) {
        return;
    }
    // Where the other file says nothing, leaving ours out says the same.
    let policy = theirs.iter().find(|f| f.name.text == POLICY);
    let written = policy.and_then(|policy| match &policy.value.kind {
        Kind::Struct { fields, .. } => fields.iter().find(|f| f.name.text == MEASURED),
        _ => None,
    });
    let own = fields.iter().position(|f| f.name.text == POLICY);
    match (own, policy, written) {
        (Some(at), _, _) => {
            if let Some(inner) = fields_of(&mut fields[at].value) {
                inner.retain(|f| f.name.text != MEASURED);
                inner.extend(written.cloned());
            }
        }
        (None, Some(policy), Some(written)) => fields.push(Field {
            name: policy.name.clone(),
            value: Node {
                span: policy.value.span,
                kind: Kind::Struct {
                    name: None,
                    fields: vec![written.clone()],
                },
            },
        }),
        (None, _, _) => {}
    }
}

/// What another garage's bay file says of margins, parking and people that is not what the bay's
/// own says, and is not taken with the garage.
pub(super) fn not_taken(root: &Node, other: &Node) -> Vec<String> {
    let of = |node: &Node, name: &str| value_at(node, name).map(super::text::written);
    let mut names = Vec::new();
    if let Some(Kind::Struct { fields, .. }) = value_at(other, POLICY).map(|policy| &policy.kind) {
        for field in fields.iter().filter(|f| f.name.text != MEASURED) {
            let path = format!("{POLICY}.{}", field.name.text);
            if of(root, &path) != of(other, &path) {
                names.push(path);
            }
        }
    }
    for name in ["parking", "people"] {
        if value_at(other, name).is_some() && of(root, name) != of(other, name) {
            names.push(name.into());
        }
    }
    names
}

/// See [`super::Options::taken_away`].
pub(super) fn taken_away<'a>(
    before: &Node,
    over: impl Iterator<Item = &'a Field>,
) -> Option<Vec<String>> {
    let things = |node: &Node| match &node.kind {
        Kind::List(items) => Some(items.clone()),
        _ => None,
    };
    let before = things(value_at(before, "garage.obstacles")?)?;
    let mut after = None;
    for garage in over.filter(|field| field.name.text == "garage") {
        let Kind::Struct { fields, .. } = &garage.value.kind else {
            return None;
        };
        for field in fields {
            match field.name.text.as_str() {
                "obstacles" => after = Some(things(&field.value)?),
                "door" | "opener" => {}
                _ => return None,
            }
        }
    }
    let stays: Vec<String> = after?.iter().map(super::text::written).collect();
    let (kept, away): (Vec<&Node>, Vec<&Node>) = before
        .iter()
        .partition(|thing| stays.contains(&super::text::written(thing)));
    // What is put there, or moved, is other work.
    if kept.len() != stays.len() || away.is_empty() {
        return None;
    }
    away.into_iter()
        .map(|thing| match &value_at(thing, "removable.cost")?.kind {
            Kind::Str(cost) => Some(cost.clone()),
            _ => None,
        })
        .collect()
}

/// What work on the garage is meant by what is laid over it.
pub(super) fn touches(over: &[Field]) -> Touches {
    let mut touches = Touches::default();
    for field in over {
        match (field.name.text.as_str(), &field.value.kind) {
            ("slab", _) => touches.slab = true,
            ("garage", Kind::Struct { fields, .. }) => {
                for field in fields {
                    let is_door = ["door", "opener"].contains(&field.name.text.as_str());
                    touches.door |= is_door;
                    touches.room |= !is_door;
                }
            }
            _ => {}
        }
    }
    touches
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bayfile::context::Context;

    /// How many things the record lists as not measured.
    fn listed(node: &Node) -> Option<usize> {
        match &value_at(node, NOT_MEASURED)?.kind {
            Kind::List(items) => Some(items.len()),
            _ => None,
        }
    }

    #[test]
    fn a_bay_put_into_a_garage_lacks_what_either_file_lacks() {
        let cx = Context::default();
        let node = |text: &str| cx.parse("bay", text.as_bytes(), None).unwrap();
        let plain = "(lift: (post_line: \"4 m\"), garage: (width: \"7 m\"))";
        let one = "(lift: (post_line: \"4 m\"), not_measured: [\"the beam\"])";
        for (own, theirs, both) in [
            (plain, plain, None),
            (plain, one, Some(1)),
            (one, plain, Some(1)),
            (one, one, Some(2)),
        ] {
            let mut root = node(own);
            into_garage(&mut root, &node(theirs));
            assert_eq!(listed(&root), both, "{own} into {theirs}");
        }
    }
}
