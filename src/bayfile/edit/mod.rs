//! How is one value of a bay file changed, with everything else kept as the person wrote it?
//!
//! [`set`], [`remove`] and [`append`] change one text and know nothing of presets. A value is
//! named by its path: `lift.column.height`, `garage.obstacles[2].x`, `garage.ceiling.height` (the
//! `Flat` of `Flat(height: ..)` is no step). Comments, blanks, order and line ends stay; what is
//! put in is laid out like its neighbours.
//!
//! [`Written`] reads a bay file together with its presets, tells what each value is written as and
//! where, and makes the same three changes to the file's text **with the presets in mind**.
//!
//! # What must be written whole
//!
//! A file's `lift` and `vehicle` are laid over their presets field by field, through records
//! without a name only. Everything else of a preset (a list, a tuple, a variant with a name such
//! as `OverheadBeam(..)`, `Some(..)`) is replaced whole by what the file gives in its place. So a
//! single field of a preset's `tie: OverheadBeam(..)` can't be overridden alone: the file must give
//! the whole tie. [`Written::set`] and its sisters do so, with the preset's other values copied;
//! [`Written::whole_value`] tells where. With the plain functions this is the caller's to mind.

mod bracket;
mod error;
mod gap;
mod insert;
mod over;
mod places;
mod remove;
mod value;
mod written;

use super::syntax::path::{Step, child, peel, steps, written as path_of};
use super::syntax::{Kind, Node, limits, parse};

use bracket::Bracket;
use insert::{Entry, Layout, insert};

pub use error::EditError;
pub use value::quoted;
pub use written::{Origin, Value, Written};

/// Sets the value at `path` to `value`, which is RON source such as `"\"12 ft\""`.
///
/// A value that is there is replaced where it stands, `Some(..)` and all. A field that is not there
/// is put in after the last field of its record, on its own line where the record has a line for
/// each or some of its fields, else in the record's line. Records that are missing on the way are
/// made, without names: a variant's fields can only be set where the variant stands. A `None` on
/// the way gives way to a record.
///
/// A new field's lines are indented to suit; a replaced value is put in exactly as given. So
/// setting a value to something and back gives the same text, byte for byte.
///
/// # Errors
/// See [`EditError`]; the text is never half changed.
pub fn set(text: &str, path: &str, value: &str) -> Result<String, EditError> {
    behind_mark(text, |text| {
        let value = value::one_value(value)?;
        let steps = steps(path).ok_or_else(|| EditError::BadPath(path.into()))?;
        let root = root_of(text)?;
        let (done, node) = reach(&root, &steps);
        let Some((Step::Field(_), _)) = steps.get(done..).and_then(<[_]>::split_first) else {
            if done < steps.len() {
                return Err(EditError::NoSuchValue(path.into()));
            }
            return checked(spliced(text, node, value), &steps, value);
        };
        let entry =
            Entry::fields(&steps[done..], value).ok_or_else(|| EditError::BadPath(path.into()))?;
        let inner = peel(node);
        if is_none(inner) {
            let record = format!("({})", entry.source());
            return checked(spliced(text, node, &record), &steps, value);
        }
        let bracket = Bracket::of_record(text, inner).ok_or_else(|| EditError::NoRecord {
            path: path_of(&steps[..done]),
            what: inner.what(),
        })?;
        let edited = insert(text, &bracket, &Layout::of(text, &root), &entry, false);
        checked(edited, &steps, value)
    })
}

/// Removes a field or a list's item with its comma, the comments on the lines directly above it
/// (no blank line between) and the comment after it on its line.
///
/// Where several fields share a line, that line's comment stays. A bracket that is then empty is
/// closed up, unless a comment stands in it. A last item that had no comma takes the comma before
/// it along.
///
/// # Errors
/// See [`EditError`]; the text is never half changed. The items of a tuple can't be removed.
pub fn remove(text: &str, path: &str) -> Result<String, EditError> {
    behind_mark(text, |text| {
        let steps = steps(path).ok_or_else(|| EditError::BadPath(path.into()))?;
        let root = root_of(text)?;
        let (last, above) = steps
            .split_last()
            .ok_or_else(|| EditError::BadPath(path.into()))?;
        let missing = || EditError::NoSuchValue(path.into());
        let (done, parent) = reach(&root, above);
        if done < above.len() {
            return Err(missing());
        }
        let parent = peel(parent);
        let (which, count) = match (last, &parent.kind) {
            (Step::Field(name), Kind::Struct { fields, .. }) => {
                let at = fields.iter().position(|f| f.name.text == *name);
                (at.ok_or_else(missing)?, fields.len())
            }
            (Step::Item(index), Kind::List(items)) => (*index, items.len()),
            (Step::Item(index), Kind::Tuple { items, .. }) if *index < items.len() => {
                return Err(EditError::OfTuple(path.into()));
            }
            _ => return Err(missing()),
        };
        let bracket = Bracket::of(text, parent).ok_or_else(missing)?;
        let edited = remove::remove(text, &bracket, which).ok_or_else(missing)?;
        let root = sound(&edited)?;
        let (done, parent) = reach(&root, above);
        let left = match &peel(parent).kind {
            Kind::Struct { fields, .. } => fields.len(),
            Kind::List(items) => items.len(),
            Kind::Tuple { items, .. } if items.is_empty() => 0,
            _ => count,
        };
        if done == above.len() && left + 1 == count {
            Ok(edited)
        } else {
            Err(EditError::Unsound(
                "it would change more than one value".into(),
            ))
        }
    })
}

/// Appends `item`, which is RON source, to the list at `list_path`; makes the list, and records on
/// the way to it, where they are missing or `None`.
///
/// The item gets its own line, indented, where the list's items have lines of their own, and also
/// in an empty or new list, unless the record around it is written in one line or the item is a
/// plain value without brackets.
///
/// # Errors
/// See [`EditError`]; the text is never half changed.
pub fn append(text: &str, list_path: &str, item: &str) -> Result<String, EditError> {
    let bad = || EditError::BadPath(list_path.into());
    let steps = steps(list_path).ok_or_else(bad)?;
    let item = value::one_value(item)?;
    behind_mark(text, |text| {
        let root = root_of(text)?;
        let layout = Layout::of(text, &root);
        let (done, node) = reach(&root, &steps);
        let inner = peel(node);
        let spread = value::has_brackets(item);
        if done < steps.len() || is_none(inner) {
            // In a new record on the way there is one line only.
            let spread = spread && done + 1 == steps.len() && lines_of(text, inner);
            return set(text, list_path, &layout.new_list(item, spread));
        }
        let (Kind::List(items), Some(bracket)) = (&inner.kind, Bracket::of(text, inner)) else {
            return Err(EditError::NoList {
                path: list_path.into(),
                what: inner.what(),
            });
        };
        let above = steps.split_last().map(|(_, above)| reach(&root, above).1);
        let spread = spread && above.is_none_or(|above| lines_of(text, peel(above)));
        let edited = insert(text, &bracket, &layout, &Entry::item(item), spread);
        let mut steps = steps.clone();
        steps.push(Step::Item(items.len()));
        checked(edited, &steps, item)
    })
}

/// Makes an edit to the text behind a byte-order mark, which stays.
fn behind_mark(
    text: &str,
    edit: impl FnOnce(&str) -> Result<String, EditError>,
) -> Result<String, EditError> {
    match text.strip_prefix('\u{feff}') {
        Some(rest) => Ok(format!("\u{feff}{}", edit(rest)?)),
        None => edit(text),
    }
}

/// The tree of the text as it is before an edit.
fn root_of(text: &str) -> Result<Node, EditError> {
    tree(text).map_err(EditError::Unreadable)
}

/// The tree of a text that an edit made.
fn sound(text: &str) -> Result<Node, EditError> {
    if text.len() > limits::FILE_BYTES {
        return Err(EditError::Unsound(
            "it would make the file too large".into(),
        ));
    }
    tree(text).map_err(EditError::Unsound)
}

fn tree(text: &str) -> Result<Node, String> {
    let parsed = parse(0, text);
    match (parsed.faults.first(), parsed.root) {
        (None, Some(root)) => Ok(root),
        (Some(fault), _) => {
            let before = text.get(..fault.span.range().start).unwrap_or("");
            let line = before.matches('\n').count() + 1;
            Err(format!("line {line}: {}", fault.message))
        }
        (None, None) => Err("there is no value in it".into()),
    }
}

/// How many of the steps lead to a value, and the value they lead to.
fn reach<'a>(root: &'a Node, steps: &[Step<'_>]) -> (usize, &'a Node) {
    let mut node = root;
    for (done, step) in steps.iter().enumerate() {
        match child(node, *step) {
            Some((_, next)) => node = next,
            None => return (done, node),
        }
    }
    (steps.len(), node)
}

fn is_none(node: &Node) -> bool {
    matches!(&node.kind, Kind::Word(word) if word == "None")
}

/// True when the bracket's fields or items are spread over lines.
fn lines_of(text: &str, node: &Node) -> bool {
    Bracket::of(text, node).is_some_and(|bracket| bracket.has_lines(text))
}

fn spliced(text: &str, old: &Node, new: &str) -> String {
    let range = old.span.range();
    format!("{}{new}{}", &text[..range.start], &text[range.end..])
}

/// The edited text, when it is good and holds the value at the path.
fn checked(edited: String, steps: &[Step<'_>], value: &str) -> Result<String, EditError> {
    let root = sound(&edited)?;
    let (done, node) = reach(&root, steps);
    if done == steps.len() && tree(value).is_ok_and(|wanted| value::same(node, &wanted)) {
        Ok(edited)
    } else {
        Err(EditError::Unsound(
            "the value would not be where it belongs".into(),
        ))
    }
}

#[cfg(test)]
mod tests;
