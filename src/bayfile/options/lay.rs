//! What does a bay file say once an option is laid over it?

use super::Touches;
use crate::bayfile::merge::lay_over;
use crate::bayfile::presets::PresetKind;
use crate::bayfile::syntax::{Field, Kind, Node, value_at};

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
    let replaces = PresetKind::of_field(&field.name.text)
        .filter(|_| value_at(&field.value, "preset").is_some());
    if let (Some(kind), Some(kept)) = (replaces, fields_of(&mut below)) {
        kept.retain(|f| kind == PresetKind::Lift && PLACE.contains(&f.name.text.as_str()));
    }
    let value = lay_over(below, field.value.clone());
    let name = field.name.clone();
    fields.insert(at, Field { name, value });
}

/// Puts the bay into another bay file's garage: with its slab, its supply, what is arranged for
/// it, and the place of the lift in it. What that file does not say is not known there.
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
    if let Some(lift) = fields.iter_mut().find(|f| f.name.text == "lift")
        && let Some(fields) = fields_of(&mut lift.value)
    {
        for field in place {
            fields.retain(|f| f.name.text != field.name.text);
            fields.push(field);
        }
    }
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
