//! Does our reader of RON text read what the `ron` crate reads, and never stumble?

#![allow(clippy::unwrap_used, clippy::panic)] // a failed unwrap here is a failed test

use bayrise::bayfile::syntax::{Kind, Node, Parsed, limits, parse};
use proptest::prelude::*;
use proptest::test_runner::{Config, TestRunner};

const SCENE: &str = include_str!("../scenes/tall-pickup.ron");
const LIFT: &str = include_str!("../assets/lifts/tall-columns-11-10.ron");
const VEHICLE: &str = include_str!("../assets/vehicles/pickup-half-ton-crew-cab.ron");

/// True when both trees say the same. `ron` drops names before brackets, keeps `()` as a unit and
/// numbers as numbers.
fn same(node: &Node, value: &ron::Value) -> bool {
    let list = |items: &[Node], values: &[ron::Value]| {
        items.len() == values.len() && items.iter().zip(values).all(|(n, v)| same(n, v))
    };
    match (&node.kind, value) {
        (Kind::Word(w), ron::Value::Option(None)) => w == "None",
        (Kind::Word(w), ron::Value::Unit) => w != "None",
        (Kind::Tuple { items, name: None }, ron::Value::Unit) => items.is_empty(),
        (
            Kind::Tuple {
                items,
                name: Some(n),
            },
            ron::Value::Option(Some(value)),
        ) => n.text == "Some" && items.len() == 1 && same(&items[0], value),
        (Kind::Tuple { items, .. } | Kind::List(items), ron::Value::Seq(values)) => {
            list(items, values)
        }
        (Kind::Struct { fields, .. }, ron::Value::Map(map)) => {
            // Of two fields of one name `ron` keeps the last.
            let mut last: Vec<(&str, &Node)> = Vec::new();
            for field in fields {
                last.retain(|(name, _)| *name != field.name.text);
                last.push((&field.name.text, &field.value));
            }
            last.len() == map.len()
                && last.iter().all(|(name, node)| {
                    map.iter()
                        .any(|(k, v)| *k == ron::Value::String((*name).into()) && same(node, v))
                })
        }
        (Kind::Map(entries), ron::Value::Map(map)) => map
            .iter()
            .all(|(k, v)| entries.iter().any(|(a, b)| same(a, k) && same(b, v))),
        (Kind::Str(a), ron::Value::String(b)) => a == b,
        (Kind::Char(a), ron::Value::Char(b)) => a == b,
        (Kind::Bool(a), ron::Value::Bool(b)) => a == b,
        (Kind::Number(text), ron::Value::Number(n)) => same_number(text, n.into_f64()),
        _ => false,
    }
}

fn same_number(text: &str, value: f64) -> bool {
    let plain = text.replace('_', "");
    let (sign, digits) = match plain.strip_prefix('-') {
        Some(rest) => (-1.0, rest),
        None => (1.0, plain.strip_prefix('+').unwrap_or(&plain)),
    };
    let radix = |prefix, radix| {
        let digits = digits.strip_prefix(prefix)?;
        u64::from_str_radix(digits, radix).ok().map(|n| n as f64)
    };
    let ours = radix("0x", 16)
        .or_else(|| radix("0o", 8))
        .or_else(|| radix("0b", 2))
        .or_else(|| {
            digits
                .trim_end_matches("f32")
                .trim_end_matches("f64")
                .parse()
                .ok()
        });
    let Some(ours) = ours.map(|n: f64| n * sign) else {
        return false;
    };
    (ours.is_nan() && value.is_nan())
        || ours.total_cmp(&value).is_eq()
        || (ours - value).abs() <= ours.abs() * 1e-15
}

fn accepts(parsed: &Parsed) -> bool {
    parsed.faults.is_empty() && parsed.root.is_some()
}

/// Both must accept or both refuse; what we refuse by choice is left out. Gives true when both
/// accept.
fn agree(text: &str) -> bool {
    let ours = parse(0, text);
    let theirs = ron::from_str::<ron::Value>(text);
    for fault in &ours.faults {
        let range = fault.span.range();
        assert!(
            text.get(range).is_some(),
            "a place outside the text: {fault:?}\n{text}"
        );
        assert!(!fault.help.is_empty() && !fault.label.is_empty());
    }
    if ours.faults.iter().any(|f| f.refused_by_choice) {
        return false;
    }
    assert!(
        ours.root.is_some() || !ours.faults.is_empty(),
        "nothing read and nothing said: {text}"
    );
    assert_eq!(
        accepts(&ours),
        theirs.is_ok(),
        "ours: {:?}\nron: {theirs:?}\n{text}",
        ours.faults
    );
    if let (true, Some(root), Ok(value)) = (accepts(&ours), &ours.root, &theirs) {
        assert!(same(root, value), "ours: {root:?}\nron: {value:?}\n{text}");
        return true;
    }
    false
}

#[test]
fn shipped_files_are_read_as_ron_reads_them() {
    for text in [SCENE, LIFT, VEHICLE] {
        assert!(agree(text));
    }
}

#[test]
fn every_form_of_ron() {
    let accepted = [
        "()",
        "( )",
        "(a: 1)",
        "(a: 1,)",
        "Foo(a: 1)",
        "Foo (a: 1)",
        "Foo",
        "Foo()",
        "Foo(1, 2)",
        "(1)",
        "(1,)",
        "[]",
        "[1, 2,]",
        "{}",
        "{\"a\": 1, 2: [3],}",
        "None",
        "Some(1)",
        "Some(1,)",
        "Some (Some (None))",
        "true",
        "[false]",
        "'a'",
        "'\\n'",
        "'''",
        "'\\''",
        "'\\u{e9}'",
        "\"\\u{2033} \\x41 \\\\ \\\" \\n\"",
        "\"\\xc3\\xa9\"",
        "\"a\\\n   b\"",
        "\"line\nbreak\"",
        "r\"raw \\ text\"",
        "r#\"with \" quote\"#",
        "r##\"a\"#b\"##",
        "(r#type: 1)",
        "r#type",
        "// c\n1 // d",
        "/* a /* b */ c */ 1",
        "1 /* d */",
        "#![enable(implicit_some)] 1",
        "#![enable(implicit_some, unwrap_newtypes)]\n#![enable(unwrap_variant_newtypes,)] (a: 2)",
        "#![type = \"x\"] 1",
        "# ! [ enable ( implicit_some ) ] 1",
        "-1",
        "+1",
        "1.5",
        ".5",
        "5.",
        "1e3",
        "-1.5E-3",
        "0xFF",
        "0b101",
        "0o17",
        "1_000",
        "1_0.5_0",
        "inf",
        "-inf",
        "NaN",
        "99999999999999999999",
        "1e400",
        "(a: inf)",
        "\u{2028}1\u{85}",
        "(é: 1, _b: 2)",
        "(a: 1, a: 2)",
    ];
    for text in accepted {
        assert!(agree(text), "refused: {text}");
    }
    let refused = [
        "",
        " ",
        "(",
        ")",
        "(a: 1",
        "(a: 1))",
        "(a 1)",
        "(a:)",
        "(: 1)",
        "(a: 1 b: 2)",
        "(1 2)",
        "[1 2]",
        "[1,,2]",
        "(,)",
        "[,]",
        "(1, a: 2)",
        "(a: 1, 2)",
        "{1}",
        "{1: }",
        "{1: 2 3: 4}",
        "(a: [1)]",
        "\"open",
        "'ab'",
        "''",
        "'a",
        "\"\\q\"",
        "\"\\u{110000}\"",
        "\"\\xff\"",
        "r#\"open\"",
        "/* open",
        "/ 1",
        "1 2",
        "1.2.3",
        "12ft",
        "--1",
        "-",
        "+",
        ".",
        "0x",
        "0b2",
        "#![enable(nothing)] 1",
        "#![disable(x)] 1",
        "#[x] 1",
        "Some",
        "Some()",
        "Some(1, 2)",
        "None(1)",
        "true()",
        "(a: 1;)",
        "\u{201c}a\u{201d}",
        "(a-b: 1)",
        "@",
    ];
    for text in refused {
        assert!(!agree(text), "accepted: {text}");
    }
}

#[test]
fn what_is_refused_by_choice_says_so() {
    for text in ["b\"bytes\"", "1..2", "3u8", "br#\"x\"#", "b'a'", "1.5f32"] {
        let parsed = parse(0, text);
        assert!(
            parsed.faults.iter().any(|f| f.refused_by_choice),
            "{text}: {parsed:?}"
        );
        assert!(
            ron::from_str::<ron::Value>(text).is_ok(),
            "{text} is good RON"
        );
    }
    let deep = format!(
        "{}1{}",
        "(".repeat(limits::DEPTH + 1),
        ")".repeat(limits::DEPTH + 1)
    );
    assert!(parse(0, &deep).faults[0].refused_by_choice);
    let fits = format!(
        "{}1{}",
        "[".repeat(limits::DEPTH),
        "]".repeat(limits::DEPTH)
    );
    assert!(accepts(&parse(0, &fits)));
    let many = format!("[{}]", "1,".repeat(limits::TOKENS));
    assert!(parse(0, &many).faults[0].refused_by_choice);
}

#[test]
fn no_nesting_however_deep_overflows() {
    for open in [
        "(", "[", "{", "A(", "(a:", "Some(", "{1:", "/*", "[(", "\"", "r#",
    ] {
        let deep = open.repeat(500_000);
        assert!(!parse(0, &deep).faults.is_empty(), "{open}");
    }
}

#[test]
fn several_faults_are_told_at_once() {
    let parsed = parse(0, "(\n a: 12ft,\n b 3,\n c: [1, ),\n d: 'abc',\n e: 5\n");
    let lines: Vec<usize> = parsed
        .faults
        .iter()
        .map(|f| {
            "(\n a: 12ft,\n b 3,\n c: [1, ),\n d: 'abc',\n e: 5\n"[..f.span.range().start]
                .matches('\n')
                .count()
                + 1
        })
        .collect();
    for line in [2, 3, 4, 5] {
        assert!(lines.contains(&line), "line {line}: {:?}", parsed.faults);
    }
}

/// A text with a few small changes: pieces cut out, doubled, swapped or put in.
fn mutate(text: &str, changes: &[(usize, usize, u8)]) -> String {
    const PIECES: [&str; 24] = [
        "(", ")", "[", "]", "{", "}", ",", ":", "\"", "'", "//", "/*", "*/", "\\", "#", "r#\"",
        "Some(", "None", "-", ".", "1e9", "\u{2033}", "\n", "a: ",
    ];
    let mut out = text.to_string();
    for &(at, len, what) in changes {
        let floor = |i: usize| {
            (0..=i.min(out.len()))
                .rev()
                .find(|i| out.is_char_boundary(*i))
                .unwrap_or(0)
        };
        let start = floor(at % (out.len() + 1));
        let end = floor(start + len % 12).max(start);
        let piece = match what % 3 {
            0 => String::new(),
            1 => PIECES[usize::from(what / 3) % PIECES.len()].into(),
            _ => out[start..end].repeat(2),
        };
        // Insertions keep what stands there.
        let end = if what % 3 == 1 { start } else { end };
        out.replace_range(start..end, &piece);
    }
    out
}

#[test]
fn mutated_files_are_judged_as_ron_judges_them() {
    // Many mutations break the file at once; small texts keep more of them readable.
    let small = "( a: \"10' 2-1/2\\\"\", /* c */ b: [ (x: 1.5,), Foo(2, 'c'), None ], d: Flat(h: Some(r#\"3 in\"#)), ) // end";
    let mut runner = TestRunner::new(Config {
        cases: 6000,
        failure_persistence: None,
        ..Config::default()
    });
    let both = std::cell::Cell::new(0);
    let changes = prop::collection::vec((any::<usize>(), any::<usize>(), any::<u8>()), 1..4);
    runner
        .run(&(0..12_usize, changes), |(which, changes)| {
            let text = [LIFT, VEHICLE].get(which).copied().unwrap_or(small);
            if agree(&mutate(text, &changes)) {
                both.set(both.get() + 1);
            }
            Ok(())
        })
        .unwrap();
    assert!(
        both.get() > 300,
        "only {} of the mutations stayed readable",
        both.get()
    );
}

#[test]
fn random_bytes_are_refused_without_a_stumble() {
    // A fixed stream of pseudo-random numbers (xorshift), so that a failure can be run again.
    let mut state = 0x9e37_79b9_7f4a_7c15_u64;
    let mut next = move || {
        state ^= state << 13;
        state ^= state >> 7;
        state ^= state << 17;
        state
    };
    for _ in 0..4000 {
        let mut bytes = SCENE.as_bytes().to_vec();
        for _ in 0..=next() % 8 {
            let at = usize::try_from(next()).unwrap_or(0) % bytes.len();
            bytes[at] = u8::try_from(next() % 256).unwrap();
        }
        agree(&String::from_utf8_lossy(&bytes));
        let noise: Vec<u8> = (0..next() % 60).map(|_| (next() % 128) as u8).collect();
        agree(&String::from_utf8_lossy(&noise));
    }
}

fn value() -> impl Strategy<Value = String> {
    let leaf = prop_oneof![
        any::<i32>().prop_map(|n| n.to_string()),
        any::<f64>()
            .prop_filter("finite", |f| f.is_finite())
            .prop_map(|n| format!("{n:?}")),
        any::<String>().prop_map(|s| format!("{s:?}").replace("\\u{0}", "\\0")),
        any::<char>().prop_map(|c| format!("{c:?}")),
        any::<bool>().prop_map(|b| b.to_string()),
        Just("None".to_string()),
        "[A-Z][a-z_0-9]{0,6}".prop_map(|w| w),
        "[^\"]{0,8}".prop_map(|s| format!("r#\"{s}\"#")),
    ];
    leaf.prop_recursive(5, 40, 5, |inner| {
        let items = prop::collection::vec(inner.clone(), 0..5);
        let fields = prop::collection::vec(("[a-z_]{1,8}", inner.clone()), 1..5);
        prop_oneof![
            items.clone().prop_map(|v| format!("[{}]", v.join(", "))),
            items.prop_map(|v| format!("({})", v.join(" , /* c */ "))),
            (fields.clone(), "[A-Z][a-z]{0,3}|").prop_map(|(f, name)| {
                let f: Vec<String> = f.iter().map(|(n, v)| format!("{n}: {v}")).collect();
                format!("{name}({},)", f.join(",\n"))
            }),
            fields.prop_map(|f| {
                let f: Vec<String> = f.iter().map(|(n, v)| format!("{n:?}: {v}")).collect();
                format!("{{{}}}", f.join(", "))
            }),
            inner.prop_map(|v| format!("Some({v}) // c\n")),
        ]
    })
}

#[test]
fn generated_values_are_read_as_ron_reads_them() {
    let mut runner = TestRunner::new(Config {
        cases: 1500,
        failure_persistence: None,
        ..Config::default()
    });
    let both = std::cell::Cell::new(0);
    runner
        .run(&value(), |text| {
            if agree(&text) {
                both.set(both.get() + 1);
            }
            Ok(())
        })
        .unwrap();
    assert!(
        both.get() > 1000,
        "only {} values were readable",
        both.get()
    );
}

proptest! {
    #![proptest_config(Config { cases: 1500, ..Config::default() })]

    #[test]
    fn any_text_is_judged_as_ron_judges_it(text in "[a-zA-Z0-9()\\[\\]{},:.\"'/*#!\\\\ \n_+-]{0,30}") {
        agree(&text);
    }
}
