//! What does a record say once overrides are laid over it?

use super::syntax::{Kind, Node};

/// Lays `over` on `base`, field by field: records go into each other, everything else (lists,
/// values, variants such as `OverheadBeam(..)`) is replaced whole. Every value keeps its place, so
/// that a fault names the file that it stands in.
pub(crate) fn lay_over(base: Node, over: Node) -> Node {
    let span = over.span;
    match (base.kind, over.kind) {
        (
            Kind::Struct {
                name: None,
                mut fields,
            },
            Kind::Struct {
                name: None,
                fields: overrides,
            },
        ) => {
            for field in overrides {
                match fields.iter().position(|f| f.name.text == field.name.text) {
                    Some(at) => {
                        let below = fields.remove(at);
                        let value = lay_over(below.value, field.value);
                        let name = field.name;
                        fields.insert(at, super::syntax::Field { name, value });
                    }
                    None => fields.push(field),
                }
            }
            Node {
                span,
                kind: Kind::Struct { name: None, fields },
            }
        }
        // `()` overrides nothing.
        (kind @ Kind::Struct { name: None, .. }, Kind::Tuple { name: None, items })
            if items.is_empty() =>
        {
            Node { span, kind }
        }
        (_, kind) => Node { span, kind },
    }
}
