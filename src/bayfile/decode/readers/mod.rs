//! How is one value read: a length, a text, a choice, a list?

mod choice;
mod list;
mod plain;
mod quantity;
mod record;

pub(super) use choice::{one_item, variant, words};
pub(super) use list::{Point, items, list};
pub(super) use plain::{Count, Day, Flag, name, number, text};
pub(super) use quantity::{
    angle, area, current, force, mass, mass_change, not_negative, place, power, pressure, size,
    slab_thickness, strength, subgrade, torque, voltage, volume,
};
pub(super) use record::{custom, rec};

use crate::bayfile::context::Context;
use crate::bayfile::syntax::Node;

/// Reads one value; none after a fault, which is then noted.
pub(super) trait Read {
    /// What it reads.
    type Out;
    /// Reads the value at `node`.
    fn read(&self, cx: &Context, node: &Node) -> Option<Self::Out>;
    /// A value as one would write it, for messages.
    fn example(&self) -> String;
}

/// Notes that something else was expected.
fn wrong_kind<T>(cx: &Context, node: &Node, wanted: &str, example: &str) -> Option<T> {
    cx.error(
        node.head(),
        &format!("{wanted} belongs here, this is {}", node.what()),
        &format!("expected {wanted}"),
        &format!("write for example {example}"),
    );
    None
}
