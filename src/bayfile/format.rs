//! Which version of the format is a file in, and what must change to make it the present one?

use super::context::Context;
use super::syntax::{Field, Kind, Node, Span};

/// The present version.
pub(super) const PRESENT: u32 = 1;

/// Whose version is looked at.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Whose {
    /// A bay file must say it.
    BayFile,
    /// A preset may.
    Preset,
    /// A file of options to compare must say it.
    Options,
    /// A file of readings must say it.
    Measured,
}

/// Takes the `format` field off a file's record and brings the rest to the present version; none
/// when that is not possible, which is then noted.
pub(super) fn migrate(cx: &Context, mut root: Node, whose: Whose) -> Option<Node> {
    let span = root.head();
    let (what, example) = match whose {
        Whose::BayFile => ("a bay file", "( format: 1, title: \"..\", .. )"),
        Whose::Preset => ("a preset", "( format: 1, name: \"..\", .. )"),
        Whose::Options => (
            "a file of options",
            "( format: 1, title: \"..\", base: \"my-bay.ron\", .. )",
        ),
        Whose::Measured => (
            "a file of readings",
            "( format: 1, title: \"..\", distances: [..], walls: [..], .. )",
        ),
    };
    let Kind::Struct { name: None, fields } = &mut root.kind else {
        cx.error(
            span,
            &format!(
                "{what} is one record in round brackets, this is {}",
                root.what()
            ),
            "expected `( format: 1, .. )`",
            &format!("write `{example}`"),
        );
        return None;
    };
    if let Some((other, cure)) = mistaken(fields, whose) {
        cx.error(
            span,
            &format!("this is {other}, not {what}"),
            &format!("expected {what}: `{example}`"),
            cure,
        );
        return None;
    }
    let Some(at) = fields.iter().position(|f| f.name.text == "format") else {
        if whose != Whose::Preset {
            cx.error(
                span,
                "the file does not say its format",
                "expected `format: 1` in this record",
                "write `format: 1,` as the first field",
            );
        }
        return Some(root);
    };
    let field = fields.remove(at);
    match version(&field.value) {
        Some(PRESENT) => {}
        Some(0) if matches!(whose, Whose::BayFile | Whose::Preset) => {
            from_0(cx, &mut root, field.value.span)
        }
        Some(newer) => {
            cx.error(
                field.value.span,
                &format!("format {newer} was written by a newer Bayrise"),
                "this Bayrise reads format 1 and older",
                &format!("update Bayrise, or write {what} of format 1"),
            );
            return None;
        }
        None => {
            cx.error(
                field.value.span,
                &format!(
                    "the format is a plain whole number, this is {}",
                    field.value.what()
                ),
                "expected `1`",
                "write `format: 1`",
            );
            return None;
        }
    }
    Some(root)
}

/// Which other kind of file it is, by fields that only that has, and what reads such a file.
fn mistaken(fields: &[Field], whose: Whose) -> Option<(&'static str, &'static str)> {
    let has = |all: &[&str]| {
        all.iter()
            .all(|name| fields.iter().any(|field| field.name.text == *name))
    };
    let bay = || has(&["garage", "lift", "vehicle"]);
    let options = || has(&["base"]) && (has(&["lifts"]) || has(&["vehicles"]) || has(&["garages"]));
    let readings = || has(&["distances", "walls"]) || has(&["distances", "plumb"]);
    let is_bay = ("a bay file", "give this file to `bayrise check`");
    let is_options = ("a file of options", "give this file to `bayrise compare`");
    let is_readings = (
        "a file of readings",
        "give this file to `bayrise asbuilt`, after the bay file",
    );
    match whose {
        Whose::BayFile if options() => Some(is_options),
        Whose::BayFile if readings() => Some(is_readings),
        Whose::Options if bay() => Some(is_bay),
        Whose::Options if readings() => Some(is_readings),
        Whose::Measured if bay() => Some(is_bay),
        Whose::Measured if options() => Some(is_options),
        _ => None,
    }
}

fn version(node: &Node) -> Option<u32> {
    match &node.kind {
        Kind::Number(text) => text.parse().ok(),
        _ => None,
    }
}

/// Format 0 called the policy's `over_vehicle` `clearance`.
fn from_0(cx: &Context, root: &mut Node, span: Span) {
    let Kind::Struct { fields, .. } = &mut root.kind else {
        return;
    };
    let policy = fields.iter_mut().find(|f| f.name.text == "policy");
    if let Some(Kind::Struct { fields, .. }) = policy.map(|f| &mut f.value.kind) {
        let has_new = fields.iter().any(|f| f.name.text == "over_vehicle");
        if let Some(old) = fields.iter_mut().find(|f| f.name.text == "clearance")
            && !has_new
        {
            old.name.text = "over_vehicle".into();
        }
    }
    cx.warning(
        span,
        "format 0 was read as format 1",
        "an older format",
        "write `format: 1`; in the policy, `clearance` is now `over_vehicle`",
    );
}
