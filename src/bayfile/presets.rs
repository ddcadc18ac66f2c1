//! Which presets are there, and what does `preset: "name"` stand for?
//!
//! A name without `.ron` is one of the shipped presets, held in the program itself. A name that
//! ends in `.ron` is a file in the bay file's folder or below; the caller reads it, as the core
//! does no IO. A preset may name a preset itself, [`MOST_LEVELS`] deep.

use super::context::Context;
use super::format::{self, Whose};
use super::merge::lay_over;
use super::syntax::{Kind, Node, Span};
use crate::diagnostics::Source;
use crate::letters;

/// How many presets may stand on one another.
pub const MOST_LEVELS: usize = 4;

/// Which sort of preset.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum PresetKind {
    /// A two-post lift.
    Lift,
    /// A vehicle.
    Vehicle,
}

impl PresetKind {
    /// The kind of preset that a field of the bay file's record may name.
    pub(super) fn of_field(name: &str) -> Option<Self> {
        match name {
            "lift" => Some(Self::Lift),
            "vehicle" => Some(Self::Vehicle),
            _ => None,
        }
    }

    const fn word(self) -> &'static str {
        match self {
            Self::Lift => "lift",
            Self::Vehicle => "vehicle",
        }
    }
}

/// A shipped preset.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Embedded {
    /// The name that bay files use: the file's name in `assets/` without `.ron`.
    pub name: &'static str,
    /// The file's text.
    pub text: &'static str,
}

macro_rules! embedded {
    ($folder:literal: $($name:literal),* $(,)?) => {
        &[$(Embedded {
            name: $name,
            text: include_str!(concat!("../../assets/", $folder, "/", $name, ".ron")),
        }),*]
    };
}

// A new preset: put the file into the folder and its name here, in order of the alphabet. A test
// compares these lists with the folders.
const LIFTS: &[Embedded] = embedded!("lifts":
    "floor-plate-9-4-rotated",
    "floor-plate-9-6",
    "overhead-beam-3600-mm",
    "tall-columns-11-10",
    "tall-columns-12-8",
    "tall-columns-12-8-rotated",
    "wide-heavy-13-6",
);
const VEHICLES: &[Embedded] = embedded!("vehicles":
    "camper-roof-load",
    "compact-suv",
    "coupe",
    "estate",
    "large-suv",
    "pickup-half-ton-crew-cab",
    "pickup-heavy-crew-cab",
    "saloon",
    "small-hatch",
    "van-tall-panel",
);

/// The shipped lifts.
#[must_use]
pub const fn lifts() -> &'static [Embedded] {
    LIFTS
}

/// The shipped vehicles.
#[must_use]
pub const fn vehicles() -> &'static [Embedded] {
    VEHICLES
}

/// The shipped presets of one kind.
#[must_use]
pub const fn embedded(kind: PresetKind) -> &'static [Embedded] {
    match kind {
        PresetKind::Lift => LIFTS,
        PresetKind::Vehicle => VEHICLES,
    }
}

/// Why the text of a preset can't be had.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum PresetError {
    /// There is no such file.
    Missing,
    /// The file lies outside the bay file's folder (a link may lead there).
    Outside,
    /// It is there but can't be read; with the reason.
    Unreadable(String),
}

/// Gives the text of preset files beside the bay file.
pub trait PresetSource {
    /// The bytes of the file at `path`, which is relative to the bay file's folder, parted by `/`,
    /// and never climbs out as written. Following links out of the folder is for the
    /// implementation to refuse. It need not give more than
    /// [`FILE_BYTES`](super::syntax::limits::FILE_BYTES) + 1 bytes.
    ///
    /// # Errors
    /// [`PresetError`] says why the text can't be had.
    fn load(&self, path: &str) -> Result<Vec<u8>, PresetError>;
}

/// No files: shipped presets only.
#[derive(Debug, Clone, Copy, Default)]
pub struct EmbeddedOnly;

impl PresetSource for EmbeddedOnly {
    fn load(&self, _path: &str) -> Result<Vec<u8>, PresetError> {
        Err(PresetError::Missing)
    }
}

/// Replaces `preset: ".."` in a record by what it stands for.
pub(super) struct Resolver<'a> {
    files: &'a dyn PresetSource,
}

impl<'a> Resolver<'a> {
    pub(super) const fn new(files: &'a dyn PresetSource) -> Self {
        Self { files }
    }

    /// The record with its preset, if it names one, laid under it; none when the preset can't be
    /// had, which is then noted.
    pub(super) fn resolve(&self, cx: &Context, kind: PresetKind, node: Node) -> Option<Node> {
        self.level(cx, kind, node, &mut Vec::new())
    }

    fn level(
        &self,
        cx: &Context,
        kind: PresetKind,
        mut node: Node,
        above: &mut Vec<String>,
    ) -> Option<Node> {
        let Kind::Struct { name: None, fields } = &mut node.kind else {
            return Some(node);
        };
        let Some(at) = fields.iter().position(|f| f.name.text == "preset") else {
            return Some(node);
        };
        let named = fields.remove(at).value;
        let Kind::Str(name) = &named.kind else {
            cx.error(
                named.span,
                &format!("a preset is named by a text, this is {}", named.what()),
                "expected a name in quotes",
                "write the name as it is listed: `bayrise presets` lists them",
            );
            return None;
        };
        if above.contains(name) {
            let chain = above.join("`, then `");
            cx.error(
                named.span,
                &format!("the preset `{name}` stands on itself"),
                &format!("already used on the way here: `{chain}`"),
                "give the values here instead of naming this preset again",
            );
            return None;
        }
        if above.len() >= MOST_LEVELS {
            cx.error(
                named.span,
                &format!("more than {MOST_LEVELS} presets stand on one another"),
                "one too many",
                "name the lowest preset here, with its overrides in one place",
            );
            return None;
        }
        above.push(name.clone());
        let base = self
            .load(cx, kind, name, named.span)
            .and_then(|base| format::migrate(cx, base, Whose::Preset))
            .and_then(|base| self.level(cx, kind, base, above))?;
        let merged = lay_over(base, node);
        cx.laid_over(merged.span, name);
        Some(merged)
    }

    fn load(&self, cx: &Context, kind: PresetKind, name: &str, span: Span) -> Option<Node> {
        let shown: String = letters::shown(name).chars().take(80).collect();
        let fault = |message: &str, label: &str, help: &str| {
            cx.error(span, message, label, help);
            None
        };
        if !name.ends_with(".ron") {
            let word = kind.word();
            let known = embedded(kind);
            if let Some(found) = known.iter().find(|e| e.name == name) {
                let source = format!("assets/{word}s/{name}.ron");
                return cx.parse(&source, found.text.as_bytes(), Some(span));
            }
            let near = super::decode::nearest(name, known.iter().map(|e| e.name));
            let help = match near {
                Some(near) => format!("did you mean \"{near}\"?"),
                None => {
                    let names: Vec<&str> = known.iter().map(|e| e.name).collect();
                    format!(
                        "shipped: {}; a file of your own is named with its ending, as in \"my-{word}.ron\"",
                        names.join(", ")
                    )
                }
            };
            return fault(
                &format!("there is no {word} preset `{shown}`"),
                "not a shipped preset",
                &help,
            );
        }
        if climbs_out(name) {
            return fault(
                &format!("the preset `{shown}` lies outside the bay file's folder"),
                "expected a name, or a path that stays in the bay file's folder",
                "put the preset's file beside the bay file and write its name only",
            );
        }
        match self.files.load(name) {
            Ok(bytes) => cx.parse(name, &bytes, Some(span)),
            Err(PresetError::Missing) => fault(
                &format!("there is no preset file `{shown}`"),
                "no such file in the bay file's folder",
                "put the file beside the bay file, or name a shipped preset (without `.ron`)",
            ),
            Err(PresetError::Outside) => fault(
                &format!("the preset `{shown}` leads outside the bay file's folder"),
                "a link leads out of the folder",
                "copy the file itself beside the bay file",
            ),
            Err(PresetError::Unreadable(why)) => fault(
                &format!("the preset file `{shown}` can't be read: {why}"),
                "could not be read",
                "check that it is a file and that it may be read",
            ),
        }
    }
}

/// What bay files call the preset that a text was read from.
pub(super) fn called(source: &Source) -> &str {
    let shipped = |kind: PresetKind| {
        let name = source
            .name
            .strip_prefix(&format!("assets/{}s/", kind.word()))?;
        let name = name.strip_suffix(".ron")?;
        let same = |e: &&Embedded| e.name == name && e.text == source.text;
        embedded(kind).iter().find(same)
    };
    shipped(PresetKind::Lift)
        .or_else(|| shipped(PresetKind::Vehicle))
        .map_or(&source.name, |e| e.name)
}

/// True for absolute paths, paths with `..` and paths in another system's spelling.
fn climbs_out(path: &str) -> bool {
    path.starts_with('/')
        || path.contains(['\\', ':'])
        || path.chars().any(letters::acts)
        || path
            .split('/')
            .any(|part| part == ".." || part == "." || part.is_empty())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn paths_that_climb_out() {
        for bad in [
            "/etc/x.ron",
            "../x.ron",
            "a/../../x.ron",
            "c:x.ron",
            "a\\x.ron",
            "a//x.ron",
        ] {
            assert!(climbs_out(bad), "{bad}");
        }
        for good in ["x.ron", "lifts/x.ron", "a..b.ron"] {
            assert!(!climbs_out(good), "{good}");
        }
    }
}
