//! Edits where comments, commas and line ends stand awkwardly.

use super::*;
use crate::bayfile::presets::{PresetError, PresetSource};

/// What the tests call their bay file.
pub(super) const NAME: &str = "bay.ron";

/// Preset files by name.
pub(super) struct FilePresets(pub(super) &'static [(&'static str, &'static str)]);

impl PresetSource for FilePresets {
    fn load(&self, path: &str) -> Result<Vec<u8>, PresetError> {
        let found = self.0.iter().find(|(name, _)| *name == path);
        found
            .map(|(_, text)| text.as_bytes().to_vec())
            .ok_or(PresetError::Missing)
    }
}

pub(super) fn written_over(text: &str, presets: &FilePresets) -> Written {
    Written::read(NAME, text.as_bytes(), presets).unwrap()
}

/// Setting, and removing what was set, which must give the old text.
fn there_and_back(text: &str, path: &str, value: &str, edited: &str) {
    assert_eq!(set(text, path, value).as_deref(), Ok(edited));
    assert_eq!(remove(edited, path).as_deref(), Ok(text));
}

#[test]
fn a_value_is_replaced_where_it_stands() {
    let text = "// top\r\n( a: \"1 ft\", /* b */ b: [ (c: 1), (c: 2,), ], d: Flat(h: \"3 in\"), e: Level, f: At(\"x\"), g: Some(1) ) // end\r\n";
    for (path, value, old, new) in [
        ("b[1].c", "7", "c: 2", "c: 7"),
        ("d.h", "\"4 in\"", "3 in", "4 in"),
        (
            "d",
            "Sloped(\n run: X)",
            "Flat(h: \"3 in\")",
            "Sloped(\n run: X)",
        ),
        ("e", "Fall(toward: Door)", "Level", "Fall(toward: Door)"),
        ("f[0]", "2", "\"x\"", "2"),
        ("g", "None", "Some(1)", "None"),
        ("a", "\"1 ft\"", "1 ft", "1 ft"),
    ] {
        assert_eq!(
            set(text, path, value).unwrap(),
            text.replace(old, new),
            "{path}"
        );
    }
}

#[test]
fn new_fields_in_one_line() {
    for (text, edited) in [
        ("()", "(x: 1)"),
        ("( )", "( x: 1 )"),
        ("(/* none */)", "(/* none */ x: 1)"),
        ("(a: 1)", "(a: 1, x: 1)"),
        ("( a: 1 )", "( a: 1, x: 1 )"),
        ("(a: 1,)", "(a: 1, x: 1,)"),
        ("( a: 1, )", "( a: 1, x: 1, )"),
        ("(a: 1 /* one */)", "(a: 1 /* one */, x: 1)"),
        ("(a: 1, /* one */)", "(a: 1, /* one */ x: 1,)"),
        ("(a: [\n1\n])", "(a: [\n1\n], x: 1)"),
        ("Name /* ( */ ()", "Name /* ( */ (x: 1)"),
    ] {
        assert_eq!(set(text, "x", "1").as_deref(), Ok(edited));
        let back = remove(edited, "x").unwrap();
        // An empty bracket is closed up.
        assert_eq!(back, if text == "( )" { "()" } else { text });
    }
}

#[test]
fn new_fields_on_lines_of_their_own() {
    for (text, edited) in [
        ("(\n  a: 1,\n)", "(\n  a: 1,\n  x: 1,\n)"),
        ("(\n  a: 1\n)", "(\n  a: 1,\n  x: 1\n)"),
        ("(\n  a: 1 // one\n)", "(\n  a: 1, // one\n  x: 1\n)"),
        ("(\n  a: 1, // one\n)", "(\n  a: 1, // one\n  x: 1,\n)"),
        (
            "(\n  a: 1 /* one */, // two\n)",
            "(\n  a: 1 /* one */, // two\n  x: 1,\n)",
        ),
        (
            "(\n  a: 1 /* on\ne */ /* two */\n)",
            "(\n  a: 1, /* on\ne */ /* two */\n  x: 1\n)",
        ),
        (
            "(\n  a: 1 // one\n  , // two\n)",
            "(\n  a: 1 // one\n  , // two\n  x: 1,\n)",
        ),
        (
            "(\n  a: 1,\n\n  // off: 2,\n)",
            "(\n  a: 1,\n  x: 1,\n\n  // off: 2,\n)",
        ),
        (
            "(\n\ta: 1,\n\tb: 2, c: 3,\n)",
            "(\n\ta: 1,\n\tb: 2, c: 3,\n\tx: 1,\n)",
        ),
        (
            "(\r\n  a: 1,\r\n  // end\r\n)",
            "(\r\n  a: 1,\r\n  x: 1,\r\n  // end\r\n)",
        ),
        (
            "(\r\n  a: 1 // one\r\n)",
            "(\r\n  a: 1, // one\r\n  x: 1\r\n)",
        ),
        ("\u{feff}(\n  a: 1,\n)", "\u{feff}(\n  a: 1,\n  x: 1,\n)"),
        ("(a: 1,\n b: 2)", "(a: 1,\n b: 2,\n x: 1)"),
        ("( // nothing yet\n)", "( // nothing yet\n    x: 1,\n)"),
        (
            "(\n  // nothing yet\n)",
            "(\n    x: 1,\n  // nothing yet\n)",
        ),
    ] {
        there_and_back(text, "x", "1", edited);
    }
    // Back to `()` is as good.
    assert_eq!(set("(\n)", "x", "1").as_deref(), Ok("(\n    x: 1,\n)"));
    assert_eq!(
        set("(a: 1,\n)", "x", "1").as_deref(),
        Ok("(a: 1,\n    x: 1,\n)")
    );
}

#[test]
fn records_on_the_way_are_made() {
    let text = "(\n    lift: (preset: \"x\"),\n    r: None,\n    u: Flat(),\n)";
    let edited = |old: &str, new: &str| Ok(text.replace(old, new));
    assert_eq!(
        set(text, "lift.a.b.c", "1"),
        edited("\"x\"", "\"x\", a: (b: (c: 1))")
    );
    assert_eq!(
        set(text, "new.a", "1"),
        edited("Flat(),", "Flat(),\n    new: (a: 1),")
    );
    assert_eq!(set(text, "r.a.b", "1"), edited("None", "(a: (b: 1))"));
    assert_eq!(set(text, "u.h", "1"), edited("Flat()", "Flat(h: 1)"));
    // The lines of a value are moved to where it stands.
    assert_eq!(
        set(text, "v", "Box(\n  a: 1,\n)"),
        edited("Flat(),", "Flat(),\n    v: Box(\n      a: 1,\n    ),")
    );
}

#[test]
fn what_can_not_be_set() {
    let text = "(a: Level, b: \"x\", c: [1], d: (1, 2), e: {1: 2})";
    for path in ["a.x", "b.x", "c.x", "d.x", "e.x"] {
        assert!(
            matches!(set(text, path, "1"), Err(EditError::NoRecord { .. })),
            "{path}"
        );
    }
    for path in ["c[1]", "c[0].x[0]", "d[2]", "x[0]"] {
        let refused = set(text, path, "1");
        assert!(
            matches!(
                refused,
                Err(EditError::NoSuchValue(_) | EditError::NoRecord { .. } | EditError::BadPath(_))
            ),
            "{path}: {refused:?}"
        );
    }
    for path in ["a..b", "x y", "1", "new.x[0]", "x: 1, y"] {
        let refused = set(text, path, "1");
        assert_eq!(refused, Err(EditError::BadPath(path.into())));
    }
    for value in [
        "",
        "1, z: 2",
        "1 // note",
        "(",
        "12 ft",
        "#![enable(implicit_some)] 1",
    ] {
        assert_eq!(
            set(text, "x", value),
            Err(EditError::NotAValue(value.into()))
        );
    }
    assert!(matches!(
        set("(a: ", "a", "1"),
        Err(EditError::Unreadable(_))
    ));
    // Too deep for the reader is no good text either.
    let deep = format!("{}1{}", "[".repeat(60), "]".repeat(60));
    assert!(matches!(
        set("(a: (b: (c: (d: (e: 1)))))", "a.b.c.d.e", &deep),
        Err(EditError::Unsound(_))
    ));
}

#[test]
fn removing_takes_what_belongs_to_it() {
    for (text, path, edited) in [
        // With its lines of comment above, up to a blank line, and the one behind it.
        (
            "(\n  a: 1,\n\n  // far\n\n  // near\n  /* nearer */\n  b: 2, // b\n  c: 3,\n)",
            "b",
            "(\n  a: 1,\n\n  // far\n\n  c: 3,\n)",
        ),
        ("(\n  a: 1, // a\n  b: 2,\n)", "b", "(\n  a: 1, // a\n)"),
        (
            "(\n  // about a\n  a: 1, // a\n  // about b\n  b: 2,\n)",
            "a",
            "(\n  // about b\n  b: 2,\n)",
        ),
        (
            "(\r\n  a: 1,\r\n  // b\r\n  b: 2, // b\r\n)",
            "b",
            "(\r\n  a: 1,\r\n)",
        ),
        // The comma before goes with a last one that had none.
        ("(\n  a: 1, // a\n  b: 2 // b\n)", "b", "(\n  a: 1 // a\n)"),
        ("(a: 1, b: 2)", "b", "(a: 1)"),
        ("(a: 1, b: 2)", "a", "(b: 2)"),
        ("( a: 1, b: 2, )", "b", "( a: 1, )"),
        ("( a: 1, b: 2, )", "a", "( b: 2, )"),
        ("(a: 1, b: 2, c: 3)", "b", "(a: 1, c: 3)"),
        // Comments within a line: before the comma it belongs to the value, behind it to the next.
        (
            "(a: 1, b: 2 /* b */, /* c */ c: 3)",
            "b",
            "(a: 1, /* c */ c: 3)",
        ),
        ("(a: 1 /* a */, b: 2 /* b */)", "b", "(a: 1 /* a */)"),
        ("(a: 1, /* x */ b: 2)", "b", "(a: 1 /* x */)"),
        // A comment that several share stays.
        (
            "(\n  a: 1, b: 2, // both\n  c: 3,\n)",
            "b",
            "(\n  a: 1, // both\n  c: 3,\n)",
        ),
        (
            "(\n  a: 1, b: 2, // both\n  c: 3,\n)",
            "a",
            "(\n  b: 2, // both\n  c: 3,\n)",
        ),
        ("(\n  a: 1, b: 2 // both\n)", "b", "(\n  a: 1 // both\n)"),
        (
            "(\n  // both\n  a: 1, b: 2,\n)",
            "b",
            "(\n  // both\n  a: 1,\n)",
        ),
        // Brackets that hug what they hold.
        ("(a: 1,\n b: 2)", "b", "(a: 1)"),
        ("(a: 1,\n b: 2)", "a", "(\n b: 2)"),
        ("(a: 1, // a\n b: 2)", "b", "(a: 1 // a\n )"),
        ("(a: 1,\n // b\n b: 2,\n c: 3)", "b", "(a: 1,\n c: 3)"),
        // Emptied brackets.
        ("(a: 1)", "a", "()"),
        ("( a: 1, )", "a", "()"),
        ("(\n  // a\n  a: 1, // a\n)", "a", "()"),
        ("(\n  // head\n\n  a: 1,\n)", "a", "(\n  // head\n\n)"),
        ("(l: [\n  (x: 1), // x\n])", "l[0]", "(l: [])"),
        ("(l: [ (x: 1), (x: 2) ])", "l[1]", "(l: [ (x: 1) ])"),
        ("(l: [[1, 2], [3]])", "l[0][1]", "(l: [[1], [3]])"),
        ("(u: Flat(h: 1))", "u.h", "(u: Flat())"),
        (
            "(a: 1 // a\n  , // comma\n  b: 2,\n)",
            "b",
            "(a: 1 // a\n  , // comma\n)",
        ),
        ("(\n  /* on\n b */ b: 2,\n  c: 3,\n)", "b", "(\n  c: 3,\n)"),
    ] {
        assert_eq!(
            remove(text, path).as_deref(),
            Ok(edited),
            "{path} of {text}"
        );
    }
    assert_eq!(
        remove("(p: (1, 2))", "p[0]"),
        Err(EditError::OfTuple("p[0]".into()))
    );
    for path in ["x", "a.x", "a[0]", "l[1]", "l[0].x"] {
        assert_eq!(
            remove("(a: 1, l: [1])", path),
            Err(EditError::NoSuchValue(path.into()))
        );
    }
    assert_eq!(remove("(a: 1)", ""), Err(EditError::BadPath(String::new())));
    assert!(matches!(
        remove("(a: 1", "a"),
        Err(EditError::Unreadable(_))
    ));
}

#[test]
fn items_are_appended() {
    let bay = |list: &str| format!("(\n    g: (\n        w: 1,{list}\n    ),\n)");
    let item = "Box(\n    a: 1,\n)";
    for (list, item, edited) in [
        (
            "",
            "(a: 1)",
            "\n        l: [\n            (a: 1),\n        ],",
        ),
        (
            "",
            item,
            "\n        l: [\n            Box(\n                a: 1,\n            ),\n        ],",
        ),
        ("", "\"3 in\"", "\n        l: [\"3 in\"],"),
        (
            " l: [],",
            "(a: 1)",
            " l: [\n            (a: 1),\n        ],",
        ),
        (" l: [ ],", "1", " l: [ 1 ],"),
        (
            " l: [/* no */],",
            "(a: 1)",
            " l: [/* no */\n            (a: 1),\n        ],",
        ),
        (" l: None,", "(a: 1)", " l: [(a: 1)],"),
        (" l: [(a: 0)],", "(a: 1)", " l: [(a: 0), (a: 1)],"),
        (
            " l: [\n          (a: 0), // 0\n          // end\n        ],",
            item,
            " l: [\n          (a: 0), // 0\n          Box(\n              a: 1,\n          ),\n          // end\n        ],",
        ),
        (
            " l: [\n          (a: 0) /* 0 */\n        ],",
            "1",
            " l: [\n          (a: 0), /* 0 */\n          1\n        ],",
        ),
    ] {
        assert_eq!(append(&bay(list), "g.l", item), Ok(bay(edited)));
    }
    let crlf = |text: &str| text.replace('\n', "\r\n");
    assert_eq!(
        append(&crlf(&bay(" l: [],")), "g.l", item),
        Ok(crlf(&bay(
            " l: [\n            Box(\n                a: 1,\n            ),\n        ],"
        )))
    );
    assert_eq!(
        append("(g: (l: []))", "g.l", "(a: 1)").as_deref(),
        Ok("(g: (l: [(a: 1)]))")
    );
    assert_eq!(
        append("(\n  a: 1,\n)", "g.l", "(a: 1)").as_deref(),
        Ok("(\n  a: 1,\n  g: (l: [(a: 1)]),\n)")
    );
    assert_eq!(append("[[1], []]", "[1]", "2").as_deref(), Ok("[[1], [2]]"));
    assert!(matches!(
        append("(l: (1, 2))", "l", "3"),
        Err(EditError::NoList { .. })
    ));
    assert!(matches!(
        append("(l: (1, 2))", "l.x", "3"),
        Err(EditError::NoRecord { .. })
    ));
    assert!(matches!(
        append("(l: [])", "l", "3, 4"),
        Err(EditError::NotAValue(_))
    ));
}
