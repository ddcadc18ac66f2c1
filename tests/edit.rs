//! Does an edit of a shipped file change exactly what it says, and nothing beside it?

#![allow(clippy::unwrap_used, clippy::panic)] // a failed unwrap here is a failed test

use std::fs;
use std::path::Path;

use bayrise::bayfile::edit::{self, Written};
use bayrise::bayfile::presets::EmbeddedOnly;
use bayrise::bayfile::syntax::{Field, Kind, Name, Node, Span, parse, value_at};
use proptest::prelude::*;
use proptest::test_runner::{Config, TestCaseError, TestRunner};

/// The shipped files, and each once more in spellings that people's editors make of them.
fn texts() -> Vec<String> {
    let mut texts = Vec::new();
    for folder in ["scenes", "assets/lifts", "assets/vehicles"] {
        let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join(folder);
        let mut names: Vec<_> = fs::read_dir(folder)
            .unwrap()
            .map(|e| e.unwrap().path())
            .collect();
        names.sort();
        let rons = names
            .iter()
            .filter(|n| n.extension().is_some_and(|e| e == "ron"));
        for text in rons.map(|n| fs::read_to_string(n).unwrap()) {
            texts.push(format!("\u{feff}{}", text.replace('\n', "\r\n")));
            texts.push(text.replace("    ", "\t"));
            // Without the comma before a closing bracket, and with comments behind values.
            let bare = text
                .replace(",\n)", "\n)")
                .replace(",\n    )", " // last\n    )");
            texts.push(bare.replace("\", ", "\" /* , ) */, "));
            texts.push(text);
        }
    }
    assert!(texts.len() > 80, "only {} texts", texts.len());
    for text in &texts {
        assert!(!tree(text).1.is_empty());
    }
    texts
}

/// The tree without its places, and every path in it.
fn tree(text: &str) -> (Node, Vec<String>) {
    let parsed = parse(0, text.trim_start_matches('\u{feff}'));
    assert!(parsed.faults.is_empty(), "{:?}\n{text}", parsed.faults);
    let mut root = parsed.root.unwrap();
    let mut paths = Vec::new();
    forget_places(&mut root, String::new(), &mut paths);
    (root, paths)
}

const NOWHERE: Span = Span {
    source: 0,
    start: 0,
    end: 0,
};

fn forget_places(node: &mut Node, path: String, paths: &mut Vec<String>) {
    node.span = NOWHERE;
    if let Kind::Struct {
        name: Some(name), ..
    }
    | Kind::Tuple {
        name: Some(name), ..
    } = &mut node.kind
    {
        name.span = NOWHERE;
    }
    match &mut node.kind {
        Kind::Struct { fields, .. } => {
            for field in fields {
                field.name.span = NOWHERE;
                let dot = if path.is_empty() { "" } else { "." };
                let path = format!("{path}{dot}{}", field.name.text);
                forget_places(&mut field.value, path, paths);
            }
        }
        Kind::Tuple { items, .. } | Kind::List(items) => {
            for (i, item) in items.iter_mut().enumerate() {
                forget_places(item, format!("{path}[{i}]"), paths);
            }
        }
        _ => {}
    }
    if !path.is_empty() {
        paths.push(path);
    }
}

/// The path of what holds the value, and the last step.
fn parted(path: &str) -> (&str, &str) {
    let at = path.rfind(['.', '[']).unwrap_or(0);
    (&path[..at], path[at..].trim_start_matches('.'))
}

/// The value at a path, to be changed: an account of paths apart from the one that is tested.
fn at<'a>(root: &'a mut Node, path: &str) -> &'a mut Node {
    if path.is_empty() {
        return root;
    }
    let (above, step) = parted(path);
    let node = at(root, above);
    match &mut node.kind {
        Kind::Struct { fields, .. } => {
            let field = fields.iter_mut().find(|f| f.name.text == step);
            &mut field.unwrap().value
        }
        Kind::Tuple { items, .. } | Kind::List(items) => &mut items[index(step)],
        _ => panic!("{path} leads nowhere"),
    }
}

fn index(step: &str) -> usize {
    step.trim_matches(['[', ']']).parse().unwrap()
}

fn comments(text: &str) -> usize {
    text.matches("//").count() + text.matches("/*").count()
}

/// True when the second text is the first with parts left out.
fn only_less(text: &str, edited: &str) -> bool {
    let mut rest = text.chars();
    edited.chars().all(|c| rest.any(|r| r == c))
}

fn check(good: bool, what: &str, edited: &str) -> Result<(), TestCaseError> {
    prop_assert!(good, "{what}:\n{edited}");
    Ok(())
}

const VALUES: [&str; 8] = [
    "\"12 ft\"",
    "None",
    "[]",
    "(a: \"1 in\", b: [1, 2])",
    "Flat(\n    height: \"9 ft\", // high\n)",
    "Level",
    "(1, \"/* \\\" */\")",
    "true",
];

#[test]
fn one_edit_changes_one_value() {
    let texts = texts();
    let count = std::cell::Cell::new([0_usize; 4]);
    let counted = |which: usize| {
        let mut all = count.get();
        all[which] += 1;
        count.set(all);
    };
    let mut runner = TestRunner::new(Config {
        cases: 2400,
        failure_persistence: None,
        ..Config::default()
    });
    let choice = (
        any::<prop::sample::Index>(),
        any::<prop::sample::Index>(),
        0..VALUES.len(),
        0..4_usize,
    );
    runner
        .run(&choice, |(text, path, value, what)| {
            let text = text.get(&texts).as_str();
            let (mut wanted, paths) = tree(text);
            let fits = |path: &&String| match at(&mut wanted, path).kind {
                Kind::Struct { .. } => what != 2,
                Kind::List(_) => what != 1,
                _ => what == 0 || what == 3,
            };
            let paths: Vec<&String> = paths.iter().filter(fits).collect();
            if paths.is_empty() {
                return Ok(());
            }
            let (path, value) = (path.get(&paths).as_str(), VALUES[value]);
            let new = tree(value).0;
            let holder = at(&mut wanted, path).clone();
            match (what, holder.kind) {
                (0, _) => {
                    counted(0);
                    let body = text.trim_start_matches('\u{feff}');
                    let root = parse(0, body).root.unwrap();
                    let old = value_at(&root, path).unwrap().span.range();
                    let edited = edit::set(text, path, value).unwrap();
                    let mark = &text[..text.len() - body.len()];
                    let (before, after) = (&body[..old.start], &body[old.end..]);
                    prop_assert_eq!(&edited, &format!("{mark}{before}{value}{after}"));
                    *at(&mut wanted, path) = new;
                    check(tree(&edited).0 == wanted, path, &edited)?;
                    prop_assert_eq!(edit::set(&edited, path, &body[old]).unwrap(), text);
                }
                (1, Kind::Struct { .. }) => {
                    counted(1);
                    let inner = format!("{path}.brand_new");
                    let edited = edit::set(text, &inner, value).unwrap();
                    if let Kind::Struct { fields, .. } = &mut at(&mut wanted, path).kind {
                        let name = Name {
                            text: "brand_new".into(),
                            span: NOWHERE,
                        };
                        fields.push(Field { name, value: new });
                    }
                    check(tree(&edited).0 == wanted, path, &edited)?;
                    check(only_less(&edited, text), "what was there is kept", &edited)?;
                    prop_assert_eq!(edit::remove(&edited, &inner).unwrap(), text);
                }
                (2, Kind::List(items)) => {
                    counted(2);
                    let edited = edit::append(text, path, value).unwrap();
                    if let Kind::List(items) = &mut at(&mut wanted, path).kind {
                        items.push(new);
                    }
                    check(tree(&edited).0 == wanted, path, &edited)?;
                    check(only_less(&edited, text), "what was there is kept", &edited)?;
                    let item = format!("{path}[{}]", items.len());
                    prop_assert_eq!(edit::remove(&edited, &item).unwrap(), text);
                }
                (3, _) => {
                    let (above, step) = parted(path);
                    let inside = comments(text);
                    match &mut at(&mut wanted, above).kind {
                        Kind::Struct { fields, .. } if fields.len() > 1 => {
                            fields.retain(|f| f.name.text != step);
                        }
                        Kind::List(items) => {
                            items.remove(index(step));
                        }
                        _ => return Ok(()),
                    }
                    counted(3);
                    let edited = edit::remove(text, path).unwrap();
                    check(tree(&edited).0 == wanted, path, &edited)?;
                    check(only_less(text, &edited), "nothing is new", &edited)?;
                    check(comments(&edited) <= inside, "no new comment", &edited)?;
                }
                _ => {}
            }
            Ok(())
        })
        .unwrap();
    let count = count.get();
    assert!(
        count.iter().all(|n| *n > 200),
        "too few of one sort: {count:?}"
    );
}

/// Every value of a scene, its presets' among them, set to something else: then that value is the
/// new one, and every other is what it was.
#[test]
fn an_edit_over_presets_changes_one_value() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("scenes");
    let text = fs::read_to_string(folder.join("tall-pickup.ron")).unwrap();
    let read = |text: &str| Written::read("bay.ron", text.as_bytes(), &EmbeddedOnly).unwrap();
    let before = read(&text);
    let presets = [
        "assets/lifts/tall-columns-11-10.ron",
        "assets/vehicles/pickup-half-ton-crew-cab.ron",
    ];
    let mut paths: Vec<String> = tree(&text).1;
    for (preset, field) in presets.iter().zip(["lift", "vehicle"]) {
        let preset =
            fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join(preset)).unwrap();
        paths.extend(tree(&preset).1.iter().map(|path| format!("{field}.{path}")));
    }
    paths.retain(|path| before.value(path).is_some() && !path.ends_with("preset"));
    paths.sort();
    paths.dedup();
    let leaf = |path: &&String| {
        let inner = [format!("{path}."), format!("{path}[")];
        !paths
            .iter()
            .any(|p| inner.iter().any(|i| p.starts_with(i.as_str())))
    };
    let leaves: Vec<&String> = paths.iter().filter(leaf).collect();
    let mut from_presets = 0;
    for path in &leaves {
        let edited = before.set(path, "\"other\"").unwrap();
        let after = read(&edited);
        assert_eq!(after.value(path).unwrap().text, "other", "{path}");
        for other in leaves.iter().filter(|other| other != &path) {
            let text = |written: &Written| written.value(other).map(|v| v.text);
            assert_eq!(
                text(&before),
                text(&after),
                "{other} after {path}:\n{edited}"
            );
        }
        from_presets += usize::from(before.value(path).unwrap().origin != edit::Origin::File);
    }
    assert!(from_presets > 100 && leaves.len() > from_presets + 50);
}
