//! How is one value read: a length, a text, a choice, a list?

use super::fields::{Fields, nearest, record};
use crate::bayfile::context::Context;
use crate::bayfile::syntax::{Kind as Written, Name, Node};
use crate::units::{
    Angle, Current, Kind, Length, Mass, Power, Pressure, Voltage, Volume, parse, show_quantity,
};

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

/// A quantity with its unit, within bounds given in SI.
pub(super) struct Quantity<T> {
    kind: Kind,
    make: fn(f64) -> T,
    low: f64,
    /// False when `low` itself is refused too.
    low_fits: bool,
    high: f64,
    example: &'static str,
}

impl<T> Quantity<T> {
    const fn above_zero(kind: Kind, make: fn(f64) -> T, high: f64, example: &'static str) -> Self {
        Self {
            kind,
            make,
            low: 0.0,
            low_fits: false,
            high,
            example,
        }
    }

    /// Other bounds, in SI, both of them allowed.
    pub(super) const fn within(mut self, low: f64, high: f64) -> Self {
        self.low = low;
        self.high = high;
        self.low_fits = true;
        self
    }
}

/// The longest length in a bay, in metres.
const LONGEST: f64 = 100.0;

/// A length above zero.
pub(super) const fn size() -> Quantity<Length> {
    Quantity::above_zero(Kind::Length, Length::metres, LONGEST, "\"2 ft 6 in\"")
}

/// A length that is not negative.
pub(super) const fn not_negative() -> Quantity<Length> {
    size().within(0.0, LONGEST)
}

/// A place along an axis: negative lengths are allowed.
pub(super) const fn place() -> Quantity<Length> {
    size().within(-LONGEST, LONGEST)
}

/// An angle between two bounds, in degrees.
pub(super) const fn angle(low: f64, high: f64) -> Quantity<Angle> {
    const RAD: f64 = std::f64::consts::PI / 180.0;
    // A hair more than the bound, as "90 deg" typed and 90 degrees worked out may differ by noise.
    Quantity::above_zero(Kind::Angle, Angle::radians, 0.0, "\"3 deg\"")
        .within(low * RAD - 1e-12, high * RAD + 1e-12)
}

/// A mass above zero.
pub(super) const fn mass() -> Quantity<Mass> {
    Quantity::above_zero(Kind::Mass, Mass::kilograms, 100_000.0, "\"5000 lb\"")
}

/// A mass that may be negative.
pub(super) const fn mass_change() -> Quantity<Mass> {
    mass().within(-100_000.0, 100_000.0)
}

/// A pressure above zero.
pub(super) const fn pressure() -> Quantity<Pressure> {
    Quantity::above_zero(Kind::Pressure, Pressure::pascals, 1e9, "\"3000 psi\"")
}

/// A power above zero.
pub(super) const fn power() -> Quantity<Power> {
    Quantity::above_zero(Kind::Power, Power::watts, 1e6, "\"2 hp\"")
}

/// A voltage above zero.
pub(super) const fn voltage() -> Quantity<Voltage> {
    Quantity::above_zero(Kind::Voltage, Voltage::volts, 1e5, "\"230 V\"")
}

/// A current above zero.
pub(super) const fn current() -> Quantity<Current> {
    Quantity::above_zero(Kind::Current, Current::amperes, 1e5, "\"20 A\"")
}

/// A volume above zero.
pub(super) const fn volume() -> Quantity<Volume> {
    Quantity::above_zero(Kind::Volume, Volume::cubic_metres, 100.0, "\"3 gal\"")
}

impl<T> Read for Quantity<T> {
    type Out = T;

    fn read(&self, cx: &Context, node: &Node) -> Option<T> {
        // A bare number goes the same way as a text without a unit, for the same message.
        let (Written::Str(typed) | Written::Number(typed)) = &node.kind else {
            return wrong_kind(cx, node, self.kind.with_article(), self.example);
        };
        let value = match parse(self.kind, typed) {
            Ok(value) => value,
            Err(fault) => {
                let fit = format!("expected {} in quotes", self.kind.with_article());
                let message = fault.message(self.kind);
                cx.error(node.span, &message, &fit, &fault.help(self.kind));
                return None;
            }
        };
        let low = if self.low_fits {
            value >= self.low
        } else {
            value > self.low
        };
        if low && value <= self.high {
            return Some((self.make)(value));
        }
        let shown = |si: f64| show_quantity(self.kind, si);
        let (message, label) = if low {
            (
                format!("this is more than {} can be here", self.kind.with_article()),
                format!("expected at most {}", shown(self.high)),
            )
        } else if self.low_fits && self.low < 0.0 {
            (
                format!("this is less than {} can be here", self.kind.with_article()),
                format!("expected at least {}", shown(self.low)),
            )
        } else if self.low_fits && self.low > 0.0 {
            (
                format!("this is less than {} can be here", self.kind.with_article()),
                format!("expected at least {}", shown(self.low)),
            )
        } else if self.low_fits {
            (
                format!("{} can't be negative here", self.kind.with_article()),
                "expected zero or more".into(),
            )
        } else {
            (
                format!("{} must be more than zero here", self.kind.with_article()),
                "expected more than zero".into(),
            )
        };
        let help = format!(
            "check the sign, the digits and the unit; for example {}",
            self.example
        );
        cx.error(node.span, &message, &label, &help);
        None
    }

    fn example(&self) -> String {
        self.example.into()
    }
}

/// A text, or a name when `is_name`.
pub(super) struct Text {
    is_name: bool,
}

/// A text: not empty, one line, of reasonable length.
pub(super) const fn text() -> Text {
    Text { is_name: false }
}

/// A name: a text without `/`, as names are joined with it.
pub(super) const fn name() -> Text {
    Text { is_name: true }
}

impl Read for Text {
    type Out = String;

    fn read(&self, cx: &Context, node: &Node) -> Option<String> {
        let Written::Str(text) = &node.kind else {
            return wrong_kind(cx, node, "a text in quotes", &self.example());
        };
        let fault = |message: &str, label: &str, help: &str| {
            cx.error(node.head(), message, label, help);
            None
        };
        if text.trim().is_empty() {
            return fault(
                "this text is empty",
                "expected a few words",
                "write what it is called",
            );
        }
        if text.chars().any(char::is_control) {
            return fault(
                "this text holds a control character",
                "expected plain words on one line",
                "remove line breaks, tabs and other control characters",
            );
        }
        if text.chars().count() > 200 {
            return fault(
                "this text is too long",
                "expected at most 200 characters",
                "shorten it",
            );
        }
        if self.is_name && text.contains('/') {
            return fault(
                "a name can't hold a `/`",
                "names are joined with `/` in reports",
                "write the name without `/`",
            );
        }
        Some(text.trim().into())
    }

    fn example(&self) -> String {
        "\"..\"".into()
    }
}

/// A plain number without a unit, between two bounds.
pub(super) struct Number {
    low: f64,
    high: f64,
    what: &'static str,
}

/// A plain number without a unit, between two bounds.
pub(super) const fn number(what: &'static str, low: f64, high: f64) -> Number {
    Number { low, high, what }
}

impl Read for Number {
    type Out = f64;

    fn read(&self, cx: &Context, node: &Node) -> Option<f64> {
        let Written::Number(typed) = &node.kind else {
            return wrong_kind(cx, node, self.what, &self.example());
        };
        match typed.replace('_', "").parse::<f64>() {
            Ok(value) if (self.low..=self.high).contains(&value) => Some(value),
            _ => {
                cx.error(
                    node.span,
                    &format!("{} can't be {typed}", self.what),
                    &format!("expected a number from {} to {}", self.low, self.high),
                    &format!("write for example {}", self.example()),
                );
                None
            }
        }
    }

    fn example(&self) -> String {
        format!("{}", self.low.max(self.high.min(1.0)))
    }
}

/// A count from 1 up.
pub(super) struct Count {
    pub(super) what: &'static str,
    pub(super) most: usize,
}

impl Read for Count {
    type Out = usize;

    fn read(&self, cx: &Context, node: &Node) -> Option<usize> {
        let Written::Number(typed) = &node.kind else {
            return wrong_kind(cx, node, "a plain whole number", "12");
        };
        match typed.replace('_', "").parse::<usize>() {
            Ok(count) if (1..=self.most).contains(&count) => Some(count),
            _ => {
                cx.error(
                    node.span,
                    &format!("{typed} {} are not possible", self.what),
                    &format!("expected a whole number from 1 to {}", self.most),
                    "count them on the real thing",
                );
                None
            }
        }
    }

    fn example(&self) -> String {
        "12".into()
    }
}

/// `true` or `false`.
pub(super) struct Flag;

impl Read for Flag {
    type Out = bool;

    fn read(&self, cx: &Context, node: &Node) -> Option<bool> {
        match &node.kind {
            Written::Bool(value) => Some(*value),
            _ => wrong_kind(cx, node, "`true` or `false`", "true"),
        }
    }

    fn example(&self) -> String {
        "true".into()
    }
}

/// One of a few words.
pub(super) struct Words<'a, T> {
    what: &'static str,
    table: &'a [(&'static str, T)],
}

/// One of a few words.
pub(super) const fn words<'a, T>(
    what: &'static str,
    table: &'a [(&'static str, T)],
) -> Words<'a, T> {
    Words { what, table }
}

impl<T: Copy> Read for Words<'_, T> {
    type Out = T;

    fn read(&self, cx: &Context, node: &Node) -> Option<T> {
        let Written::Word(word) = &node.kind else {
            return wrong_kind(cx, node, self.what, &self.example());
        };
        let found = self.table.iter().find(|(w, _)| w == word);
        if found.is_none() {
            let known: Vec<&str> = self.table.iter().map(|(w, _)| *w).collect();
            unknown_word(cx, node, self.what, word, &known);
        }
        found.map(|(_, value)| *value)
    }

    fn example(&self) -> String {
        self.table.first().map_or("..", |(w, _)| w).into()
    }
}

fn unknown_word(cx: &Context, node: &Node, what: &str, word: &str, known: &[&str]) {
    let list = known.join(", ");
    let help = match nearest(word, known.iter().copied()) {
        Some(near) => format!("did you mean `{near}`? Known: {list}"),
        None => format!("known: {list}"),
    };
    let word: String = word.chars().take(40).collect();
    cx.error(
        node.head(),
        &format!("`{word}` is not {what}"),
        &format!("expected {what}"),
        &help,
    );
}

/// The name of a variant, `Name`, `Name(..)`; none after a fault.
pub(super) fn variant(
    cx: &Context,
    node: &Node,
    what: &str,
    known: &[&'static str],
) -> Option<&'static str> {
    let name = match &node.kind {
        Written::Word(word) => word,
        Written::Struct {
            name: Some(Name { text, .. }),
            ..
        }
        | Written::Tuple {
            name: Some(Name { text, .. }),
            ..
        } => text,
        _ => {
            return wrong_kind(
                cx,
                node,
                what,
                &format!("{}(..)", known.first().unwrap_or(&"")),
            );
        }
    };
    let found = known.iter().copied().find(|k| k == name);
    if found.is_none() {
        unknown_word(cx, node, what, name, known);
    }
    found
}

/// The one value in `Name(value)`.
pub(super) fn one_item<R: Read>(cx: &Context, node: &Node, reader: &R) -> Option<R::Out> {
    match &node.kind {
        Written::Tuple { items, .. } if items.len() == 1 => reader.read(cx, &items[0]),
        _ => wrong_kind(
            cx,
            node,
            "a word with one value in brackets",
            &format!("{}({})", word_of(node), reader.example()),
        ),
    }
}

fn word_of(node: &Node) -> &str {
    match &node.kind {
        Written::Word(word) => word,
        Written::Struct { name: Some(n), .. } | Written::Tuple { name: Some(n), .. } => &n.text,
        _ => "Name",
    }
}

/// A list of at most so many values.
pub(super) struct List<R> {
    item: R,
    what: &'static str,
    most: usize,
}

/// A list of at most so many values.
pub(super) const fn list<R: Read>(what: &'static str, most: usize, item: R) -> List<R> {
    List { item, what, most }
}

/// The items of a list; none after a fault: no list, or too many items to look at each.
pub(super) fn items<'a>(
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
pub(super) struct Point<const N: usize>;

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

/// A record read by a function over its fields.
pub(super) struct Rec<F> {
    what: &'static str,
    read: F,
}

/// A record read by a function over its fields.
pub(super) const fn rec<T, F: Fn(&Fields<'_>) -> Option<T>>(what: &'static str, read: F) -> Rec<F> {
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
pub(super) struct Custom<F> {
    example: &'static str,
    read: F,
}

/// A value read by a function over the node itself.
pub(super) const fn custom<T, F: Fn(&Context, &Node) -> Option<T>>(
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
