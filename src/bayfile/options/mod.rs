//! Which lifts, vehicles, changes and garages are to be compared, and which bay does each
//! combination make?
//!
//! A file of options names one bay file and lists what may stand in its place. An option lays its
//! own values over the bay, field by field, as a bay file does over a preset; each combination is
//! then read with all the checks of a bay file. So a fault names the file and the line that it
//! stands in, and a broken option spoils only the combinations that it is part of.

mod lay;
mod price;
mod said;
mod text;

use std::collections::HashSet;
use std::sync::Arc;

use super::Read;
use super::context::{Context, told};
use super::decode;
use super::decode::options::{Head, Item};
use super::format::{self, Whose};
use super::presets::{PresetError, PresetSource, Resolver};
use super::syntax::{Kind, Node, value_at};
use crate::diagnostics::{Diagnostic, Source};

pub use price::{Money, Prices, Work};
pub use text::TextError;

/// The most combinations that are compared at once.
pub const MOST_CELLS: usize = 20_000;

/// The lists of a file of options, in the order that a [`Pick`] names them.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum List {
    /// Lifts.
    Lifts,
    /// Vehicles.
    Vehicles,
    /// Changes to the door, the opener, or anything else.
    Changes,
    /// Garages.
    Garages,
}

impl List {
    /// All of them.
    pub const ALL: [Self; 4] = [Self::Lifts, Self::Vehicles, Self::Changes, Self::Garages];

    /// Its field in the file.
    #[must_use]
    pub const fn field(self) -> &'static str {
        match self {
            Self::Lifts => "lifts",
            Self::Vehicles => "vehicles",
            Self::Changes => "changes",
            Self::Garages => "garages",
        }
    }

    /// One of it in a message.
    #[must_use]
    pub const fn one(self) -> &'static str {
        match self {
            Self::Lifts => "the lift option",
            Self::Vehicles => "the vehicle option",
            Self::Changes => "the change",
            Self::Garages => "the garage option",
        }
    }

    /// The part of a bay that a preset's name alone stands for.
    pub(super) const fn part(self) -> Option<&'static str> {
        match self {
            Self::Lifts => Some("lift"),
            Self::Vehicles => Some("vehicle"),
            Self::Changes | Self::Garages => None,
        }
    }
}

/// One option of a list.
#[derive(Debug, Clone)]
pub struct Choice {
    /// What the person calls it; empty where the file has no such list and the bay file's own
    /// stands.
    pub name: String,
    /// What is asked for it.
    pub prices: Prices,
    /// What is wrong in it; with an error it makes no bay.
    pub faults: Vec<Diagnostic>,
    /// What work on the garage it is.
    pub touches: Touches,
    over: Vec<super::syntax::Field>,
    /// The record of the bay file that a garage is taken from.
    bay: Option<Node>,
}

impl Choice {
    /// True where it lays nothing over the bay: everything stays as the bay file has it.
    #[must_use]
    pub fn is_as_it_is(&self) -> bool {
        self.over.is_empty() && self.bay.is_none()
    }

    /// What stands where the file has no list: the bay file as it is.
    fn as_it_is() -> Self {
        Self {
            name: String::new(),
            prices: Prices::default(),
            faults: Vec::new(),
            touches: Touches::default(),
            over: Vec::new(),
            bay: None,
        }
    }
}

/// What work on the garage an option is, by what it says.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Touches {
    /// The overhead door or its opener.
    pub door: bool,
    /// The slab.
    pub slab: bool,
    /// Anything else of the garage.
    pub room: bool,
}

/// Which option of each list, by its index.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Pick {
    /// The garage.
    pub garage: usize,
    /// The change.
    pub change: usize,
    /// The lift.
    pub lift: usize,
    /// The vehicle.
    pub vehicle: usize,
}

/// A file of options that was read.
#[derive(Debug)]
pub struct Options {
    /// The person's title.
    pub title: String,
    /// What stands before an amount of money; may be empty.
    pub currency: String,
    /// Prices that count for every combination.
    pub prices: Prices,
    /// Lifts; at least one.
    pub lifts: Vec<Choice>,
    /// Vehicles; at least one.
    pub vehicles: Vec<Choice>,
    /// Changes; at least one.
    pub changes: Vec<Choice>,
    /// Garages; at least one.
    pub garages: Vec<Choice>,
    /// Warnings: the file was read all the same.
    pub warnings: Vec<Diagnostic>,
    /// The texts read so far: the file itself, the bay file, the garages' bay files.
    pub sources: Vec<Arc<Source>>,
    base: Node,
}

/// Whether a text is meant as a file of options: it names the bay file that the options are for.
#[must_use]
pub fn is_one(text: &[u8]) -> bool {
    let root = Context::default().parse("", text, None);
    root.is_some_and(|root| match root.kind {
        Kind::Struct { fields, .. } => fields.iter().any(|field| field.name.text == "base"),
        _ => false,
    })
}

/// Reads a file of options, the bay file that it names and the garages' bay files.
///
/// `name` is what messages call the file; `files` gives the texts that lie beside it.
///
/// # Errors
/// Every fault that leaves nothing to compare. Faults of one option stand in its [`Choice`].
pub fn read(name: &str, text: &[u8], files: &dyn PresetSource) -> Result<Options, Vec<Diagnostic>> {
    let cx = Context::default();
    let made = cx
        .parse(name, text, None)
        .and_then(|root| format::migrate(&cx, root, Whose::Options))
        .and_then(|root| decode::options::head(&cx, &root))
        .and_then(|head| options(&cx, head, files));
    let (found, sources) = cx.into_found();
    match made {
        Some(made) if !found.iter().any(Diagnostic::is_error) => Ok(Options {
            warnings: found,
            sources,
            ..made
        }),
        _ => Err(told(found)),
    }
}

fn options(cx: &Context, head: Head, files: &dyn PresetSource) -> Option<Options> {
    let base = bay_file(cx, &head.base, files);
    let [lifts, vehicles, changes, garages] = head.lists;
    let garage_nodes = garages.clone().unwrap_or_default();
    let list = |list, nodes| choices(cx, list, nodes, files);
    let (lifts, vehicles, changes, garages) = (
        list(List::Lifts, lifts),
        list(List::Vehicles, vehicles),
        list(List::Changes, changes),
        list(List::Garages, garages),
    );
    let cells = lifts.len() * vehicles.len() * changes.len() * garages.len();
    if cells > MOST_CELLS {
        cx.error(
            head.base.span,
            &format!("{cells} combinations are too many"),
            &format!("expected at most {MOST_CELLS}"),
            "leave out options, or compare them in several files",
        );
        return None;
    }
    if let Some(base) = &base {
        for (choice, node) in garages.iter().zip(&garage_nodes) {
            remark_on_garage(cx, base, choice, node);
        }
    }
    let lists = [&garages, &lifts, &vehicles, &changes];
    said::remarks(cx, head.base.span, &head.prices, lists);
    said::ages_not_taken(cx, base.as_ref(), lists);
    Some(Options {
        title: head.title,
        currency: head.currency,
        prices: head.prices,
        lifts,
        vehicles,
        changes,
        garages,
        warnings: Vec::new(),
        sources: Vec::new(),
        base: base?,
    })
}

/// Names what is not taken from another garage's bay file.
fn remark_on_garage(cx: &Context, base: &Node, choice: &Choice, node: &Node) {
    let Some(other) = &choice.bay else {
        return;
    };
    let not_taken = lay::not_taken(base, other);
    if not_taken.is_empty() {
        return;
    }
    cx.warning(
        node.head(),
        &format!(
            "of the bay file of \"{}\" only the garage is taken, not its {}",
            choice.name,
            not_taken.join(", ")
        ),
        "the bay of `base` stands for the rest",
        "write here what must hold in that garage too, as in `policy: (over_vehicle: \"6 in\")`",
    );
}

/// The record of a bay file, brought to the present format; its fields are not read yet.
fn bay_file(cx: &Context, named: &Node, files: &dyn PresetSource) -> Option<Node> {
    let Kind::Str(name) = &named.kind else {
        return None;
    };
    let name = name.trim();
    let fault = |message: String, label: &str, help: &str| {
        cx.error(named.span, &message, label, help);
        None
    };
    match files.load(name) {
        Ok(bytes) => cx
            .parse(name, &bytes, Some(named.span))
            .and_then(|root| format::migrate(cx, root, Whose::BayFile)),
        Err(PresetError::Missing) => fault(
            format!("there is no bay file `{name}`"),
            "no such file beside this one",
            "put the bay file beside this one and write its name",
        ),
        Err(PresetError::Outside) => fault(
            format!("the bay file `{name}` leads outside the folder"),
            "a link leads out of the folder",
            "copy the file itself beside this one",
        ),
        Err(PresetError::Unreadable(why)) => fault(
            format!("the bay file `{name}` can't be read: {why}"),
            "could not be read",
            "check that it is a file and that it may be read",
        ),
    }
}

/// The options of a list. What is wrong in one is kept with it.
fn choices(
    cx: &Context,
    list: List,
    nodes: Option<Vec<Node>>,
    files: &dyn PresetSource,
) -> Vec<Choice> {
    let nodes = nodes.unwrap_or_default();
    if nodes.is_empty() {
        return vec![Choice::as_it_is()];
    }
    let mut seen = HashSet::new();
    nodes
        .iter()
        .enumerate()
        .map(|(index, node)| {
            // Said of the text itself: a field given twice.
            let mut faults = cx.take_within(node.span);
            let own = Context::after(&cx.sources());
            let item = decode::options::item(&own, node, list);
            let bay = item.as_ref().and_then(|item| item.bay.clone());
            let bay = bay.map(|named| bay_file(&own, &named, files));
            if let Some(item) = &item
                && !seen.insert(item.name.clone())
            {
                own.error(
                    node.head(),
                    &format!("two options are called \"{}\"", item.name),
                    "already the name of one further up in this list",
                    "give each option of a list a name of its own",
                );
            }
            let (found, sources) = own.into_found();
            cx.go_on_after(sources);
            faults.extend(found);
            if item.is_none() || matches!(bay, Some(None)) {
                faults = told(faults);
            }
            let item = item.unwrap_or_else(|| Item {
                name: match value_at(node, "name").map(|name| &name.kind) {
                    Some(Kind::Str(name)) if !name.trim().is_empty() => name.clone(),
                    _ => format!("{} {}", list.one().trim_start_matches("the "), index + 1),
                },
                bay: None,
                prices: Prices::default(),
                over: Vec::new(),
            });
            Choice {
                touches: lay::touches(&item.over),
                name: item.name,
                prices: item.prices,
                faults,
                over: item.over,
                bay: bay.flatten(),
            }
        })
        .collect()
}

impl Options {
    /// The options of a list.
    #[must_use]
    pub fn list(&self, list: List) -> &[Choice] {
        match list {
            List::Lifts => &self.lifts,
            List::Vehicles => &self.vehicles,
            List::Changes => &self.changes,
            List::Garages => &self.garages,
        }
    }

    /// Every combination: garage by garage, change by change, lift by lift, vehicle by vehicle.
    #[must_use]
    pub fn picks(&self) -> Vec<Pick> {
        let mut picks = Vec::new();
        for garage in 0..self.garages.len() {
            for change in 0..self.changes.len() {
                for lift in 0..self.lifts.len() {
                    for vehicle in 0..self.vehicles.len() {
                        picks.push(Pick {
                            garage,
                            change,
                            lift,
                            vehicle,
                        });
                    }
                }
            }
        }
        picks
    }

    /// The options of a combination in the order that they are laid over the bay: what is done
    /// about it comes last.
    #[must_use]
    pub fn chosen(&self, pick: Pick) -> [&Choice; 4] {
        [
            &self.garages[pick.garage],
            &self.lifts[pick.lift],
            &self.vehicles[pick.vehicle],
            &self.changes[pick.change],
        ]
    }

    /// What taking away costs, in the words of the bay file, thing by thing, where all that the
    /// chosen options do to the room is to take away things whose cost it gives. None otherwise.
    #[must_use]
    pub fn taken_away(&self, pick: Pick) -> Option<Vec<String>> {
        let chosen = self.chosen(pick);
        let before = chosen[0].bay.as_ref().unwrap_or(&self.base);
        lay::taken_away(before, chosen.into_iter().flat_map(|choice| &choice.over))
    }

    /// The bay that a combination makes, with every check of a bay file.
    ///
    /// # Errors
    /// Every fault of the options that take part, or of what they make together.
    pub fn bay(&self, pick: Pick, presets: &dyn PresetSource) -> Result<Read, Vec<Diagnostic>> {
        let chosen = self.chosen(pick);
        let faults: Vec<Diagnostic> = chosen
            .iter()
            .flat_map(|choice| choice.faults.iter().cloned())
            .collect();
        if faults.iter().any(Diagnostic::is_error) {
            return Err(faults);
        }
        let cx = Context::after(&self.sources);
        let bay = decode::bay(&cx, self.laid_over(pick), &Resolver::new(presets));
        cx.finish(bay)
    }

    /// The record of the bay file with the options of a combination laid over it.
    fn laid_over(&self, pick: Pick) -> Node {
        let mut root = self.base.clone();
        for choice in self.chosen(pick) {
            if let Some(other) = &choice.bay {
                lay::into_garage(&mut root, other);
            }
            for field in &choice.over {
                lay::over(&mut root, field);
            }
        }
        root
    }
}
