//! How is a record, or anything else with a function of its own, read?

use super::{Read, wrong_kind};
use crate::bayfile::context::Context;
use crate::bayfile::decode::fields::{Fields, record};
use crate::bayfile::syntax::{Kind as Written, Node};

/// A record read by a function over its fields.
pub(in crate::bayfile::decode) struct Rec<F> {
    what: &'static str,
    read: F,
}

/// A record read by a function over its fields.
pub(in crate::bayfile::decode) const fn rec<T, F: Fn(&Fields<'_>) -> Option<T>>(
    what: &'static str,
    read: F,
) -> Rec<F> {
    Rec { what, read }
}

impl<T, F: Fn(&Fields<'_>) -> Option<T>> Read for Rec<F> {
    type Out = T;

    fn read(&self, cx: &Context, node: &Node) -> Option<T> {
        if matches!(
            &node.kind,
            Written::Struct { name: Some(_), .. } | Written::Tuple { name: Some(_), .. }
        ) {
            return wrong_kind(
                cx,
                node,
                "a record without a name before it",
                "(name: value, ..)",
            );
        }
        record(cx, node, self.what, &self.read)
    }

    fn example(&self) -> String {
        "(..)".into()
    }
}

/// A value read by a function over the node itself.
pub(in crate::bayfile::decode) struct Custom<F> {
    example: &'static str,
    read: F,
}

/// A value read by a function over the node itself.
pub(in crate::bayfile::decode) const fn custom<T, F: Fn(&Context, &Node) -> Option<T>>(
    example: &'static str,
    read: F,
) -> Custom<F> {
    Custom { example, read }
}

impl<T, F: Fn(&Context, &Node) -> Option<T>> Read for Custom<F> {
    type Out = T;

    fn read(&self, cx: &Context, node: &Node) -> Option<T> {
        (self.read)(cx, node)
    }

    fn example(&self) -> String {
        self.example.into()
    }
}
