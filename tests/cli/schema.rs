//! Does a JSON value keep to a JSON Schema? Only the keywords that our schema uses; any other is
//! itself a fault, so that nothing goes unchecked.

use serde_json::{Map, Value, json};

/// Every place where the value departs from the schema.
pub(crate) fn faults(schema: &Value, value: &Value) -> Vec<String> {
    let mut faults = Vec::new();
    check(schema, schema, value, "$", &mut faults);
    faults
}

fn check(root: &Value, schema: &Value, value: &Value, at: &str, faults: &mut Vec<String>) {
    let Value::Object(rules) = schema else {
        if schema != &json!(true) {
            faults.push(format!("{at}: not allowed here"));
        }
        return;
    };
    for (keyword, rule) in rules {
        match keyword.as_str() {
            "$schema" | "$defs" | "title" | "description" | "format" => {}
            "$ref" => match rule
                .as_str()
                .and_then(|r| root.pointer(r.trim_start_matches('#')))
            {
                Some(target) => check(root, target, value, at, faults),
                None => faults.push(format!("{at}: {rule} leads nowhere")),
            },
            "anyOf" | "oneOf" => {
                let fits = rule
                    .as_array()
                    .is_some_and(|all| all.iter().any(|one| fits(root, one, value)));
                if !fits {
                    faults.push(format!("{at}: {value} fits none of {rule}"));
                }
            }
            "type" => {
                let fits = match rule {
                    Value::Array(types) => types.iter().any(|t| is_of_type(value, t)),
                    one => is_of_type(value, one),
                };
                if !fits {
                    faults.push(format!("{at}: {value} is not of type {rule}"));
                }
            }
            "const" if value == rule => {}
            "enum" if rule.as_array().is_some_and(|all| all.contains(value)) => {}
            "minimum"
                if value
                    .as_f64()
                    .zip(rule.as_f64())
                    .is_none_or(|(v, r)| v >= r) => {}
            "minItems"
                if value
                    .as_array()
                    .zip(rule.as_u64())
                    .is_none_or(|(v, r)| v.len() as u64 >= r) => {}
            "maxItems"
                if value
                    .as_array()
                    .zip(rule.as_u64())
                    .is_none_or(|(v, r)| v.len() as u64 <= r) => {}
            "items" => {
                for (i, item) in value.as_array().into_iter().flatten().enumerate() {
                    check(root, rule, item, &format!("{at}[{i}]"), faults);
                }
            }
            "required" => {
                for name in rule.as_array().into_iter().flatten() {
                    if value.is_object() && name.as_str().is_none_or(|n| value.get(n).is_none()) {
                        faults.push(format!("{at}: {name} is missing"));
                    }
                }
            }
            "properties" => properties(root, rule, value, at, faults),
            other => faults.push(format!("{at}: {value} against {other}: {rule}")),
        }
    }
}

/// Known fields keep to their schemas; a field that the schema does not name is a fault: the
/// report promises to be described in full.
fn properties(root: &Value, rule: &Value, value: &Value, at: &str, faults: &mut Vec<String>) {
    let none = Map::new();
    let known = rule.as_object().unwrap_or(&none);
    for (name, field) in value.as_object().unwrap_or(&none) {
        match known.get(name) {
            Some(schema) => check(root, schema, field, &format!("{at}.{name}"), faults),
            None => faults.push(format!("{at}: {name} is not described")),
        }
    }
}

fn fits(root: &Value, schema: &Value, value: &Value) -> bool {
    let mut faults = Vec::new();
    check(root, schema, value, "", &mut faults);
    faults.is_empty()
}

fn is_of_type(value: &Value, name: &Value) -> bool {
    match name.as_str() {
        Some("null") => value.is_null(),
        Some("boolean") => value.is_boolean(),
        Some("integer") => value.is_u64() || value.is_i64(),
        Some("number") => value.is_number(),
        Some("string") => value.is_string(),
        Some("array") => value.is_array(),
        Some("object") => value.is_object(),
        _ => false,
    }
}

#[test]
fn the_checker_finds_faults() {
    let schema = json!({
        "type": "object",
        "properties": {
            "n": {"type": ["integer", "null"], "minimum": 0},
            "word": {"$ref": "#/$defs/Word"},
            "list": {"type": "array", "items": {"type": "number"}, "maxItems": 2},
        },
        "required": ["n"],
        "$defs": {"Word": {"oneOf": [{"const": "a"}, {"const": "b"}]}},
    });
    for good in [
        json!({"n": 1, "word": "a", "list": [1.5, 2]}),
        json!({"n": null}),
    ] {
        assert_eq!(faults(&schema, &good), Vec::<String>::new());
    }
    for bad in [
        json!({}),
        json!({"n": 1.5}),
        json!({"n": -1}),
        json!({"n": 1, "word": "c"}),
        json!({"n": 1, "list": [true]}),
        json!({"n": 1, "list": [1, 2, 3]}),
        json!({"n": 1, "more": 1}),
        json!([]),
    ] {
        assert!(!faults(&schema, &bad).is_empty(), "{bad}");
    }
}
