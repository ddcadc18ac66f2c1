//! What of the examples at the end of the file is still to be filled in?
//!
//! The starter file ends with records written as comments, to be taken up one by one. What was
//! answered stands in the file already: written once more it would be there twice.

/// How the examples begin.
const BEGIN: &str = "    // What follows is not known";
/// What stands before each line of an example, and before each line within its record.
const LINE: &str = "    // ";
const WITHIN: &str = "    //     ";

/// The file without the examples of what it has; `has` tells it of a path.
pub(super) fn without_answered(file: &str, has: impl Fn(&str) -> bool) -> String {
    let Some(at) = file.find(BEGIN) else {
        return file.into();
    };
    let (before, examples) = file.split_at(at);
    let mut words = String::new();
    let mut records = String::new();
    let mut record: Option<(&str, Vec<&str>)> = None;
    let mut after = String::new();
    for line in examples.lines() {
        let said = line.strip_prefix(LINE);
        if let Some((name, lines)) = &mut record {
            if said == Some("),") {
                let left = left_of(name, lines, &has);
                if !left.is_empty() {
                    records += &format!("    //\n{left}");
                }
                record = None;
            } else {
                lines.push(line);
            }
        } else if let Some(name) = said.and_then(|said| said.strip_suffix(": (")) {
            record = Some((name, Vec::new()));
        } else if said.is_some() {
            words += &format!("{line}\n");
        } else if line != "    //" {
            after += &format!("{line}\n");
        }
    }
    if records.is_empty() {
        return format!("{}\n{after}", before.trim_end());
    }
    format!("{before}{words}{records}{after}")
}

/// What of a record is left, as comments: all of it where the file has none, else the fields that
/// it lacks, to be put into the one it has.
fn left_of(name: &str, lines: &[&str], has: &impl Fn(&str) -> bool) -> String {
    let listed = |lines: &[&str]| -> String {
        let lines = lines.iter().map(|line| format!("{line}\n"));
        lines.collect()
    };
    if !has(name) {
        return format!("{LINE}{name}: (\n{}{LINE}),\n", listed(lines));
    }
    let mut left = String::new();
    // Words stand before the fields that they are of.
    let mut words: Vec<&str> = Vec::new();
    let mut are_new = false;
    let mut is_left = false;
    for line in lines {
        let within = line.strip_prefix(WITHIN).unwrap_or_default();
        if within.starts_with("//") {
            if !are_new {
                words.clear();
            }
            are_new = true;
            words.push(line);
            continue;
        }
        are_new = false;
        if within.starts_with(|letter: char| letter.is_ascii_alphabetic()) {
            let field = within.split(':').next().unwrap_or_default();
            is_left = !has(&format!("{name}.{field}"));
            if is_left {
                left += &listed(&words);
                words.clear();
            }
        }
        if is_left {
            left += &format!("{line}\n");
        }
    }
    if left.is_empty() {
        return left;
    }
    format!("{LINE}What {name} above lacks: to be written into it, not as a second one.\n{left}")
}
