//! What does a file of options list, item by item, before it is laid over a bay?

use super::fields::{Fields, record};
use super::readers::{Read, custom, items, name, number, rec, text};
use crate::bayfile::context::Context;
use crate::bayfile::options::{List, Money, Prices, Work};
use crate::bayfile::syntax::{Field, Kind, Name, Node};

/// The parts of a bay that an option may lay its own values over.
const PARTS: [&str; 9] = [
    "garage",
    "lift",
    "vehicle",
    "parking",
    "policy",
    "people",
    "slab",
    "power",
    "arrangements",
];

/// The most options in one list.
const MOST: usize = 200;

/// The file's own fields; the items of its lists are not read yet.
pub(in crate::bayfile) struct Head {
    pub(in crate::bayfile) title: String,
    /// The bay file's name, as written.
    pub(in crate::bayfile) base: Node,
    pub(in crate::bayfile) currency: String,
    pub(in crate::bayfile) prices: Prices,
    /// By [`List::ALL`]; none where the file has no such list.
    pub(in crate::bayfile) lists: [Option<Vec<Node>>; 4],
}

/// One item of a list.
pub(in crate::bayfile) struct Item {
    pub(in crate::bayfile) name: String,
    /// The bay file that a garage is taken from, as written.
    pub(in crate::bayfile) bay: Option<Node>,
    pub(in crate::bayfile) prices: Prices,
    /// What is laid over the bay.
    pub(in crate::bayfile) over: Vec<Field>,
}

/// Reads the file's own fields.
pub(in crate::bayfile) fn head(cx: &Context, root: &Node) -> Option<Head> {
    record(cx, root, "the file of options", |f| {
        let title = f.need("title", &text());
        let base = f.need("base", &file());
        let currency = f.or("currency", String::new(), &currency());
        let prices = prices_of(f);
        let lists = List::ALL.map(|list| {
            let nodes = custom("[..]", move |cx: &Context, node: &Node| {
                items(cx, node, list.field(), MOST, "(name: \"..\", ..)").map(<[Node]>::to_vec)
            });
            f.maybe(list.field(), &nodes)
        });
        let [lifts, vehicles, changes, garages] = lists;
        Some(Head {
            title: title?,
            base: base?,
            currency: currency?,
            prices: prices?,
            lists: [lifts?, vehicles?, changes?, garages?],
        })
    })
}

/// Reads one item: a record, or in the lists of lifts and vehicles a preset's name.
pub(in crate::bayfile) fn item(cx: &Context, node: &Node, list: List) -> Option<Item> {
    if let (Kind::Str(preset), Some(part)) = (&node.kind, list.part()) {
        return Some(Item {
            name: text().read(cx, node)?.trim_end_matches(".ron").into(),
            bay: None,
            prices: Prices::default(),
            over: vec![of_preset(part, preset, node)],
        });
    }
    record(cx, node, list.one(), |f| {
        let name = f.need("name", &name());
        let prices = prices_of(f);
        let bay = match list {
            List::Garages => f.maybe("bay", &file()),
            _ => Some(None),
        };
        let over = PARTS
            .into_iter()
            .filter_map(|part| {
                let value = f.node(part)?.clone();
                let span = f.name_span(part);
                let text = part.into();
                let name = Name { text, span };
                Some(Field { name, value })
            })
            .collect();
        Some(Item {
            name: name?,
            bay: bay?,
            prices: prices?,
            over,
        })
    })
}

/// `lift: (preset: "..")` where only the name was written.
fn of_preset(part: &str, preset: &str, node: &Node) -> Field {
    let named = |text: &str| Name {
        text: text.into(),
        span: node.span,
    };
    let name = Field {
        name: named("preset"),
        value: Node {
            span: node.span,
            kind: Kind::Str(preset.into()),
        },
    };
    Field {
        name: named(part),
        value: Node {
            span: node.span,
            kind: Kind::Struct {
                name: None,
                fields: vec![name],
            },
        },
    }
}

/// The name of a bay file in the same folder, kept with its place.
fn file() -> impl Read<Out = Node> {
    custom("\"my-bay.ron\"", |cx, node| {
        let name = text().read(cx, node)?;
        let is_plain = !name.contains(['/', '\\', ':']);
        if is_plain && name.ends_with(".ron") {
            return Some(node.clone());
        }
        cx.error(
            node.span,
            "this is no bay file in the same folder",
            "expected the name of a bay file beside this file",
            "put the bay file beside this one and write its name only, as in \"my-bay.ron\"",
        );
        None
    })
}

fn currency() -> impl Read<Out = String> {
    custom("\"$\"", |cx, node| {
        let currency = text().read(cx, node)?;
        if currency.chars().count() <= 8 && !currency.contains(|c: char| c.is_ascii_digit()) {
            return Some(currency);
        }
        cx.error(
            node.span,
            "this is no currency",
            "expected a sign or a short word",
            "write what stands before an amount, as in \"$\" or \"EUR\"",
        );
        None
    })
}

fn prices_of(f: &Fields<'_>) -> Option<Prices> {
    f.or("prices", Prices::default(), &rec("the prices", prices))
}

fn prices(f: &Fields<'_>) -> Option<Prices> {
    let read = Work::ALL.map(|work| f.maybe(work.field(), &number("a price", 0.0, 1e8)));
    let mut prices = Prices::default();
    for (work, price) in Work::ALL.into_iter().zip(read) {
        prices.set(work, price?.map(Money::of_number));
    }
    Some(prices)
}
