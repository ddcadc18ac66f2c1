//! Do the examples at the end of the file hold only what was not answered?

use super::*;

/// The examples: everything after the words that lead them in.
fn examples(made: &Made) -> &str {
    let at = made.text.find("// What follows is not known");
    at.map_or("", |at| &made.text[at..])
}

/// The file with its whole records taken up as its words say: the signs before them taken away.
fn taken_up(made: &Made) -> String {
    let mut inside = false;
    let lines = made.text.lines().map(|line| {
        let said = line.strip_prefix("    // ");
        let begins = said.is_some_and(|said| said.ends_with(": (") && !said.starts_with(' '));
        inside |= begins;
        let line = match said {
            Some(said) if inside => format!("    {said}\n"),
            _ => format!("{line}\n"),
        };
        inside &= said != Some("),");
        line
    });
    lines.collect()
}

#[test]
fn with_nothing_answered_all_of_them_are_there_and_make_a_bay() {
    let made = made_of(&[]);
    for record in ["slab: (", "power: (", "arrangements: ("] {
        assert!(
            examples(&made).contains(&format!("    // {record}\n")),
            "{record}"
        );
    }
    let read = read("asked", taken_up(&made).as_bytes(), &EmbeddedOnly);
    let bay = read.unwrap_or_else(|faults| panic!("{faults:#?}")).bay;
    assert!(bay.slab.is_some() && bay.power.is_some());
}

#[test]
fn what_was_answered_is_no_example_any_more() {
    let mut says = measured();
    for (section, key, line) in [
        ("supply", "power.voltage", "240 V"),
        ("supply", "power.breaker", "30 A"),
        ("supply", "power.run", "40 ft"),
        ("supply", "power.conductor", "AWG 10"),
        ("slab", "slab.poured", "1998-06-01"),
        ("slab", "slab.heated", "no"),
    ] {
        says.push((of(section, key), line.into()));
    }
    let made = made_of(&says);
    let left = examples(&made);
    assert!(
        !left.contains("power") && !left.contains("voltage"),
        "{left}"
    );
    // Its lines were answered with none, its day and its heating are known; the rest is not.
    assert!(!left.contains("// slab: ("), "{left}");
    assert!(
        left.contains("What slab above lacks: to be written into it"),
        "{left}"
    );
    for field in ["poured", "heated", "lines"] {
        assert!(!left.contains(&format!(" {field}: ")), "{field}: {left}");
    }
    for field in [
        "readings",
        "strength",
        "outline",
        "post_tensioned",
        "suspended",
    ] {
        assert!(
            left.contains(&format!("    //     {field}: ")),
            "{field}: {left}"
        );
    }
    assert!(
        left.contains("From a core, or from the delivery note"),
        "{left}"
    );
    // What is left as a record can be taken up; what is left of the slab goes into the slab.
    let whole = taken_up(&made);
    assert!(
        read("asked", whole.as_bytes(), &EmbeddedOnly).is_ok(),
        "{whole}"
    );
    let fields: String = left
        .lines()
        .skip_while(|line| !line.contains("What slab above lacks"))
        .skip(1)
        .map_while(|line| line.strip_prefix("    //     "))
        .map(|line| format!("{line}\n"))
        .collect();
    let filled = made
        .text
        .replacen("    slab: (", &format!("    slab: (\n{fields}"), 1);
    let filled = read("asked", filled.as_bytes(), &EmbeddedOnly);
    let slab = filled
        .unwrap_or_else(|faults| panic!("{faults:#?}\n{fields}"))
        .bay
        .slab;
    assert_eq!(slab.unwrap().outline.len(), 4);
}

#[test]
fn with_all_of_it_answered_nothing_asked_is_an_example() {
    let made = made_of(&full());
    let left = examples(&made);
    for word in [
        "slab",
        "power",
        "permit",
        "landlord",
        "insurer",
        "panel_space",
    ] {
        assert!(!left.contains(&format!(" {word}: ")), "{word}: {left}");
    }
    assert!(read("asked", made.text.as_bytes(), &EmbeddedOnly).is_ok());
}
