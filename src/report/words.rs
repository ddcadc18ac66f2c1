//! How are solids, corners and pairs called in a sentence?

use glam::DVec3;

use crate::letters;

/// Text from a file, fit for a terminal: control characters (and with them escape sequences) are
/// taken out, marks that turn text are told by their code points.
pub(super) fn plain(text: &str) -> String {
    letters::shown(text)
}

/// A solid's name as a person would say it: `door/panel 4` is "door panel 4", `obstacle/strip
/// light` is "strip light".
pub(super) fn thing(name: &str) -> String {
    let name = plain(name);
    match name.split_once('/') {
        Some(("obstacle" | "shell", rest)) => rest.into(),
        _ => name.replace('/', " "),
    }
}

/// The same, short, for a table: the vehicle's parts without "vehicle".
pub(super) fn short_thing(name: &str) -> String {
    name.strip_prefix("vehicle/")
        .map_or_else(|| thing(name), |rest| plain(rest).replace('/', " "))
}

/// "a", "a and b", "a, b and c"; "a, b, and c and d" where an item holds an "and" of its own.
pub(super) fn list<S: AsRef<str>>(items: &[S]) -> String {
    match items {
        [] => String::new(),
        [one] => one.as_ref().into(),
        [first @ .., last] => {
            let comma = items.iter().any(|item| item.as_ref().contains(" and "));
            let comma = if comma { "," } else { "" };
            let first: Vec<&str> = first.iter().map(AsRef::as_ref).collect();
            format!("{}{comma} and {}", first.join(", "), last.as_ref())
        }
    }
}

/// Where the fixed thing lies from the moving one, by their nearest points: "over", "under" or
/// "beside"; none where they meet in a point.
pub(crate) fn relation(points: Option<(DVec3, DVec3)>) -> Option<&'static str> {
    let (moving, fixed) = points?;
    let way = fixed - moving;
    if way.length() < 1e-6 || !way.is_finite() {
        return None;
    }
    Some(if way.z.abs() < way.truncate().length() {
        "beside"
    } else if way.z > 0.0 {
        "over"
    } else {
        "under"
    })
}

/// First letter in upper case.
pub(super) fn sentence(text: &str) -> String {
    let mut chars = text.chars();
    chars.next().map_or_else(String::new, |first| {
        first.to_uppercase().chain(chars).collect()
    })
}

/// "1 lock", "3 locks".
pub(super) fn count(n: usize, what: &str) -> String {
    format!("{n} {what}{}", if n == 1 { "" } else { "s" })
}

/// What stops no shut-off bar, to follow where the bar is tripped; `moving` and `fixed` as they are called
/// there, `is_surely` as in [`BarFinding::is_surely_before`](crate::clearance::BarFinding).
pub(crate) fn met_before_the_bar(moving: &str, fixed: &str, is_surely: bool) -> String {
    if is_surely {
        format!("; {moving} meets {fixed} first, and the bar would NOT stop that")
    } else {
        format!(
            "; within what was measured {moving} may meet {fixed} before that: do NOT count on the bar to \
             stop it"
        )
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_read_like_words() {
        for (name, expect) in [
            ("door/panel 4", "door panel 4"),
            ("vehicle/roof 3", "vehicle roof 3"),
            ("obstacle/strip light left", "strip light left"),
            ("shell/ceiling", "ceiling"),
            ("obstacle/\u{1b}[31mred", " [31mred"),
        ] {
            assert_eq!(thing(name), expect);
        }
        assert_eq!(short_thing("vehicle/roof 3"), "roof 3");
        assert_eq!(short_thing("lift/pad front left"), "lift pad front left");
    }

    #[test]
    fn lists() {
        assert_eq!(list::<&str>(&[]), "");
        assert_eq!(list(&["a"]), "a");
        assert_eq!(list(&["a", "b", "c"]), "a, b and c");
        assert_eq!(list(&["a", "b", "c and d"]), "a, b, and c and d");
    }

    #[test]
    fn relations() {
        let at = |x, z| Some((DVec3::ZERO, DVec3::new(x, 0.0, z)));
        assert_eq!(relation(at(0.01, 0.07)), Some("over"));
        assert_eq!(relation(at(0.01, -0.07)), Some("under"));
        assert_eq!(relation(at(0.07, 0.01)), Some("beside"));
        assert_eq!(relation(at(0.0, 0.0)), None);
        assert_eq!(relation(at(f64::NAN, 0.0)), None);
        assert_eq!(relation(None), None);
    }
}
