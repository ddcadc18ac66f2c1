//! In which of its fields do two things of one kind differ, and by what?
//!
//! Read from their debug text, which names every field at its depth: no field is forgotten, and a
//! new one needs no line here. Whatever can't be read so is left out: then only the thing is named.

use std::fmt::Debug;

use crate::bay::UnitSystem;
use crate::units::{Length, Mass};

/// ".marked_edge (914 mm and 889 mm)"; empty where it can't be told in a few words.
pub(super) fn where_and_what<T: Debug>(a: &T, b: &T, units: UnitSystem) -> String {
    let (a, b) = (format!("{a:#?}"), format!("{b:#?}"));
    let (a, b): (Vec<&str>, Vec<&str>) = (a.lines().collect(), b.lines().collect());
    let Some(index) = a.iter().zip(&b).position(|(a, b)| a != b) else {
        return String::new();
    };
    let (path, wrapper) = path(&a, index);
    let values = value(a[index], wrapper, units).zip(value(b[index], wrapper, units));
    match values {
        // Lines that are not of one field are of two lists that no more run side by side.
        Some((one, other)) if field(a[index]) == field(b[index]) => {
            format!("{path} ({one} and {other})")
        }
        _ => String::new(),
    }
}

fn depth(line: &str) -> usize {
    line.len() - line.trim_start().len()
}

/// The name of the field that a line starts.
fn field(line: &str) -> Option<&str> {
    let (name, _) = line.trim_start().split_once(": ")?;
    let is_name = |c: char| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '_';
    name.chars().all(is_name).then_some(name)
}

/// The fields on the way to a line, and the type of the number that stands on it.
fn path<'a>(lines: &[&'a str], index: usize) -> (String, Option<&'a str>) {
    let mut names = Vec::new();
    let mut within = depth(lines[index]) + 1;
    let mut wrapper = None;
    for (at, line) in lines[..=index].iter().enumerate().rev() {
        if depth(line) >= within {
            continue;
        }
        within = depth(line);
        names.extend(field(line));
        if wrapper.is_none() && at < index {
            let kind = ["Length(", "Mass("]
                .into_iter()
                .find(|one| line.ends_with(one));
            wrapper = Some(kind.unwrap_or_default());
        }
    }
    let path: String = names.iter().rev().map(|name| format!(".{name}")).collect();
    (path, wrapper)
}

/// A value in a few words.
fn value(line: &str, wrapper: Option<&str>, units: UnitSystem) -> Option<String> {
    let text = line.trim().trim_end_matches(',');
    let text = text.split_once(": ").map_or(text, |(_, value)| value);
    if let Ok(number) = text.parse::<f64>() {
        return match wrapper {
            Some("Length(") => Some(exactly(Length::metres(number), units)),
            Some("Mass(") => Some(match units {
                UnitSystem::Imperial => {
                    format!("{} lb", trimmed(number / Mass::pounds(1.0).kg()))
                }
                UnitSystem::Metric => format!("{} kg", trimmed(number)),
            }),
            _ => Some(text.to_owned()),
        };
    }
    let is_simple = text.len() <= 60 && !text.ends_with(['(', '{', '[', ')', '}', ']']);
    is_simple.then(|| text.to_owned())
}

/// A length in the file's system, as fine as it takes to tell two apart.
pub(super) fn exactly(length: Length, units: UnitSystem) -> String {
    match units {
        UnitSystem::Imperial => {
            format!("{} in", trimmed(length.m() / Length::inches(1.0).m()))
        }
        UnitSystem::Metric => format!("{} mm", trimmed(length.m() * 1000.0)),
    }
}

fn trimmed(number: f64) -> String {
    let text = format!("{number:.3}");
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}
