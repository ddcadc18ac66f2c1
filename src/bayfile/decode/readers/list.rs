//! How is a list or a point read?

use super::{Read, place, wrong_kind};
use crate::bayfile::context::Context;
use crate::bayfile::syntax::{Kind as Written, Node};
use crate::units::Length;

/// A list of at most so many values.
pub(in crate::bayfile::decode) struct List<R> {
    item: R,
    what: &'static str,
    most: usize,
}

/// A list of at most so many values.
pub(in crate::bayfile::decode) const fn list<R: Read>(
    what: &'static str,
    most: usize,
    item: R,
) -> List<R> {
    List { item, what, most }
}

/// The items of a list; none after a fault: no list, or too many items to look at each.
pub(in crate::bayfile::decode) fn items<'a>(
    cx: &Context,
    node: &'a Node,
    what: &str,
    most: usize,
    example: &str,
) -> Option<&'a [Node]> {
    let Written::List(items) = &node.kind else {
        return wrong_kind(cx, node, "a list", &format!("[{example}]"));
    };
    if items.len() > most {
        cx.error(
            node.head(),
            &format!("{} {what} are too many", items.len()),
            &format!("expected at most {most}"),
            "leave out those that can't matter",
        );
        return None;
    }
    Some(items)
}

impl<R: Read> Read for List<R> {
    type Out = Vec<R::Out>;

    fn read(&self, cx: &Context, node: &Node) -> Option<Self::Out> {
        let items = items(cx, node, self.what, self.most, &self.item.example())?;
        let read: Vec<Option<R::Out>> = items.iter().map(|n| self.item.read(cx, n)).collect();
        read.into_iter().collect()
    }

    fn example(&self) -> String {
        format!("[{}]", self.item.example())
    }
}

/// A tuple of `N` places: `("1 ft", "2 ft")`.
pub(in crate::bayfile::decode) struct Point<const N: usize>;

impl<const N: usize> Read for Point<N> {
    type Out = [Length; N];

    fn read(&self, cx: &Context, node: &Node) -> Option<Self::Out> {
        let Written::Tuple { name: None, items } = &node.kind else {
            return wrong_kind(cx, node, "a point", &self.example());
        };
        if items.len() != N {
            return wrong_kind(
                cx,
                node,
                &format!("a point of {N} lengths"),
                &self.example(),
            );
        }
        let read: Vec<Option<Length>> = items.iter().map(|n| place().read(cx, n)).collect();
        let read: Option<Vec<Length>> = read.into_iter().collect();
        read?.try_into().ok()
    }

    fn example(&self) -> String {
        format!("({})", vec!["\"2 ft\""; N].join(", "))
    }
}
