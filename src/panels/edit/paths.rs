//! How is a value's path made, and which paths does a section show?

use super::now::Now;
use super::table::{Row, What};
use crate::bayfile::edit::Written;

/// The corners in index order, each with the pair it belongs to.
pub(super) const CORNERS: [(&str, &str, &str); 4] = [
    ("front_left", "front", "Front left"),
    ("front_right", "front", "Front right"),
    ("rear_left", "rear", "Rear left"),
    ("rear_right", "rear", "Rear right"),
];

/// The pairs of corners.
pub(super) const PAIRS: [(&str, &str); 2] = [("front", "Front"), ("rear", "Rear")];

/// The path of a row's value, from the path of the row above.
pub(super) fn join(above: &str, name: &str) -> String {
    if name.is_empty() {
        above.into()
    } else if above.is_empty() || name.starts_with('[') {
        format!("{above}{name}")
    } else {
        format!("{above}.{name}")
    }
}

/// True when a path is `above` or leads on from it.
pub(super) fn is_at_or_under(path: &str, above: &str) -> bool {
    path.strip_prefix(above)
        .is_some_and(|rest| rest.is_empty() || above.is_empty() || rest.starts_with(['.', '[']))
}

/// The paths on the way to a path, the shortest first, itself left out.
pub(super) fn ways(path: &str) -> impl Iterator<Item = &str> {
    path.char_indices()
        .filter(|(at, c)| *at > 0 && matches!(c, '.' | '['))
        .map(|(at, _)| &path[..at])
}

/// The same path with the corner's pair in place of the corner, which the corner's value goes
/// over.
pub(super) fn of_pair(path: &str) -> Option<String> {
    CORNERS.iter().find_map(|(corner, pair, _)| {
        let at = path.find(&format!(".{corner}"))? + 1;
        Some(format!(
            "{}{pair}{}",
            &path[..at],
            &path[at + corner.len()..]
        ))
    })
}

/// Every path that these rows show, groups without a path of their own left out.
pub(super) fn shown(written: &Written, above: &str, rows: &[Row], out: &mut Vec<String>) {
    for row in rows {
        let path = join(above, row.name);
        if !row.name.is_empty() {
            out.push(path.clone());
        }
        match row.what {
            What::Field(..) => {
                if row.name.is_empty() {
                    out.push(path);
                }
            }
            What::Group(rows, _) | What::Maybe(rows, _) => shown(written, &path, rows, out),
            What::Variant(forms, _) => {
                let now = Now::at(written, &path);
                if let Some(form) = forms.iter().find(|form| (form.is)(&now)) {
                    shown(written, &path, form.rows, out);
                }
            }
            What::List(_, rows, _) => {
                for item in 0..written.len(&path) {
                    let item = format!("{path}[{item}]");
                    out.push(item.clone());
                    shown(written, &item, rows, out);
                }
            }
            What::Corners(rows) => {
                let names = CORNERS.iter().map(|(name, ..)| *name);
                for name in names.chain(PAIRS.iter().map(|(name, _)| *name)) {
                    let corner = join(&path, name);
                    out.push(corner.clone());
                    shown(written, &corner, rows, out);
                }
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn paths_are_joined_and_compared_step_by_step() {
        assert_eq!(join("", "title"), "title");
        assert_eq!(join("parking.aim", "[0]"), "parking.aim[0]");
        assert_eq!(join("garage", "width"), "garage.width");
        assert_eq!(join("parking.pad_raise", ""), "parking.pad_raise");
        assert!(is_at_or_under("lift.pad.lowest", "lift.pad"));
        assert!(is_at_or_under("lift.pad[1]", "lift.pad"));
        assert!(is_at_or_under("lift.pad", "lift.pad"));
        assert!(!is_at_or_under("lift.pads", "lift.pad"));
        assert_eq!(ways("a.b[0].c").collect::<Vec<_>>(), ["a", "a.b", "a.b[0]"]);
        assert_eq!(
            of_pair("lift.arms.rear_left.longest").as_deref(),
            Some("lift.arms.rear.longest")
        );
        assert_eq!(of_pair("lift.arms.rear.longest"), None);
    }
}
