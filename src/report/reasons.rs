//! Why is no lock called safe, in plain words, and what would cure it?

use std::borrow::Cow;

use super::names::{Called, alike, together};
use super::words::list;
use super::{Show, section};
use crate::bay::Corner;
use crate::clearance::Withheld;

/// A reason in words.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Reason {
    /// What is wrong; starts in lower case, no full stop.
    pub(super) says: String,
    /// What would cure it; likewise.
    pub(super) cure: Cow<'static, str>,
}

/// The words for one reason to withhold.
pub(super) fn reason(withheld: &Withheld, show: Show) -> Reason {
    words(&[withheld], show)
}

/// The words for all of them, those that are one matter (the same on the other side, another piece
/// of the same thing) taken together.
pub(super) fn reasons(withheld: &[Withheld], show: Show) -> Vec<Reason> {
    let mut matters: Vec<Vec<&Withheld>> = Vec::new();
    for one in withheld {
        match matters
            .iter_mut()
            .find(|matter| is_one_matter(matter[0], one))
        {
            Some(matter) => matter.push(one),
            None => matters.push(vec![one]),
        }
    }
    matters.iter().map(|matter| words(matter, show)).collect()
}

fn is_one_matter(a: &Withheld, b: &Withheld) -> bool {
    use Withheld as W;
    match (a, b) {
        (W::ArmDoesNotReach { corner: a, .. }, W::ArmDoesNotReach { corner: b, .. })
        | (W::PadStartsTooHigh { corner: a, .. }, W::PadStartsTooHigh { corner: b, .. }) => {
            a.is_front() == b.is_front()
        }
        (W::DoesNotStand { meets: a, .. }, W::DoesNotStand { meets: b, .. }) => alike(a, b),
        (
            W::CannotDriveIn {
                moving: a,
                fixed: b,
                ..
            },
            W::CannotDriveIn {
                moving: c,
                fixed: d,
                ..
            },
        )
        | (
            W::TightAsParked {
                moving: a,
                fixed: b,
                ..
            },
            W::TightAsParked {
                moving: c,
                fixed: d,
                ..
            },
        ) => alike(a, c) && alike(b, d),
        (
            W::CarriedPartsTouch {
                part: a,
                vehicle: b,
            },
            W::CarriedPartsTouch {
                part: c,
                vehicle: d,
            },
        ) => alike(a, c) && alike(b, d),
        _ => false,
    }
}

/// The words for reasons that are one matter; the worst figure stands for all.
fn words(matter: &[&Withheld], show: Show) -> Reason {
    let Some(first) = matter.first() else {
        return Reason {
            says: String::new(),
            cure: "".into(),
        };
    };
    let worst = Worst::of(matter, show);
    let many = matter.len() > 1;
    let (says, cure) = match first {
        Withheld::Ground { figure, .. } => {
            return Reason {
                says: section::why(figure, show),
                cure: figure
                    .cure
                    .clone()
                    .unwrap_or("see the figures of its section".into()),
            };
        }
        Withheld::NotMeasured { what } => (
            not_measured(what),
            if what.len() == 1 {
                "measure it, write what was measured into the file, and take it out of its list \
                 not_measured"
            } else {
                "measure them, write what was measured into the file, and take each out of its list \
                 not_measured"
            },
        ),
        Withheld::ArmDoesNotReach { corner, .. } => (
            if many {
                let end = end_of(*corner);
                format!("the {end} arms fall {worst} short of their lift points")
            } else {
                let name = corner.name();
                format!("the {name} arm falls {worst} short of its lift point")
            },
            "aim the vehicle farther in or out (Arms and reach says how far), park more repeatably, \
             or use arms that reach",
        ),
        Withheld::PadStartsTooHigh { corner, .. } => (
            if many {
                let end = end_of(*corner);
                format!(
                    "the {end} pads start {worst} above their lift points, so the arms can't go \
                     under"
                )
            } else {
                let name = corner.name();
                format!(
                    "the {name} pad starts {worst} above its lift point, so the arm can't go under"
                )
            },
            "screw the pad down, take off its adapters, or use a lower pad",
        ),
        Withheld::OverRating {
            mass_kg,
            capacity_kg,
        } => (
            format!(
                "the vehicle weighs {} and the lift is rated for {}",
                show.load(*mass_kg),
                show.capacity(*capacity_kg)
            ),
            "take load off the vehicle, or use a lift that is rated for it",
        ),
        Withheld::DoesNotStand { .. } => {
            let (mut parts, mut others): (Vec<Vec<&str>>, Vec<&str>) = (Vec::new(), Vec::new());
            for one in matter {
                if let Withheld::DoesNotStand { part, meets, .. } = one {
                    match parts.iter_mut().find(|known| alike(known[0], part)) {
                        Some(known) => known.push(part),
                        None => parts.push(vec![part]),
                    }
                    others.push(meets);
                }
            }
            let called: Vec<Called> = parts.iter().map(|names| together(names)).collect();
            let lacks = match &called[..] {
                [one] => one.verb("lacks", "lack"),
                _ => "lack",
            };
            let called: Vec<String> = called.into_iter().map(|one| one.text).collect();
            (
                format!(
                    "{} {lacks} {worst} of clearing {}, so the lift can't stand here",
                    list(&called),
                    together(&others).text
                ),
                "move the lift, move what is in its way, or take lower columns",
            )
        }
        Withheld::CannotBeStoodUp { .. } => (
            format!("a column can't be tipped up under this ceiling: {worst} short"),
            "ask the installer how it can be stood up, or take lower columns",
        ),
        Withheld::CannotDriveIn { .. } => {
            let (moving, fixed) = both_sides(matter);
            let comes = moving.verb("comes", "come");
            (
                format!(
                    "driving in, {} {comes} too near {}: {worst} short of the margin",
                    moving.text, fixed.text
                ),
                "fold or take off what stands out, park more repeatably, or make room",
            )
        }
        Withheld::LoosePad { corner, .. } => (
            format!(
                "the {} pad hangs {worst} below its lift point while the other three carry",
                corner.name()
            ),
            "set screws and adapters until all four pads touch together",
        ),
        Withheld::TightAsParked { .. } => {
            let (moving, fixed) = both_sides(matter);
            let stands = moving.verb("stands", "stand");
            (
                format!(
                    "as parked, {} already {stands} too near {}: {worst} short of the margin",
                    moving.text, fixed.text
                ),
                "move the parking place or the lift, or move what is in the way",
            )
        }
        Withheld::CarriedPartsTouch { .. } => {
            let (part, vehicle) = both_sides(matter);
            let touches = part.verb("touches", "touch");
            (
                format!("{} {touches} {} on the way up", part.text, vehicle.text),
                "aim the vehicle or set the arm otherwise, or raise the pads on their screws",
            )
        }
        Withheld::NoMarkFits => (
            "no graduation of the tape lies between the lock's latch and the breach above it"
                .into(),
            "make room above, or use the lock below",
        ),
    };
    Reason {
        says,
        cure: cure.into(),
    }
}

/// How many things are named before the others are only counted: the file has the whole list.
const NAMED: usize = 3;

/// "7 things of the file are NOT MEASURED: .."
fn not_measured(what: &[String]) -> String {
    let many = what.len() > NAMED + 1;
    let mut named: Vec<&str> = what.iter().map(String::as_str).collect();
    let more = format!("{} more", what.len() - NAMED.min(what.len()));
    if many {
        named.truncate(NAMED);
        named.push(&more);
    }
    let how_many = match what.len() {
        1 => String::from("one thing in the file is"),
        count => format!("{count} things in the file are"),
    };
    format!("{how_many} NOT MEASURED ({})", named.join("; "))
}

const fn end_of(corner: Corner) -> &'static str {
    if corner.is_front() { "front" } else { "rear" }
}

/// The two sides of pairs that are one matter.
fn both_sides(matter: &[&Withheld]) -> (Called, Called) {
    let (one, other): (Vec<&str>, Vec<&str>) = matter
        .iter()
        .filter_map(|withheld| match withheld {
            Withheld::CannotDriveIn { moving, fixed, .. }
            | Withheld::TightAsParked { moving, fixed, .. } => Some((&**moving, &**fixed)),
            Withheld::CarriedPartsTouch { part, vehicle } => Some((&**part, &**vehicle)),
            _ => None,
        })
        .unzip();
    (together(&one), together(&other))
}

/// The largest figure of a matter, shown; "up to" where they differ.
struct Worst(String);

impl Worst {
    fn of(matter: &[&Withheld], show: Show) -> Self {
        let shown: Vec<(f64, String)> = matter
            .iter()
            .filter_map(|withheld| figure(withheld))
            .map(|metres| (metres, show.need(metres)))
            .collect();
        // What is no number is worse than any.
        let worst = shown
            .iter()
            .reduce(|a, b| if a.0.is_nan() || a.0 > b.0 { a } else { b });
        Self(match worst {
            None => String::new(),
            Some((_, text)) if shown.iter().all(|(_, other)| other == text) => text.clone(),
            Some((_, text)) => format!("up to {text}"),
        })
    }
}

impl std::fmt::Display for Worst {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(&self.0)
    }
}

/// What a reason is short by, metres.
const fn figure(withheld: &Withheld) -> Option<f64> {
    match withheld {
        Withheld::ArmDoesNotReach {
            shortfall_m: by, ..
        }
        | Withheld::PadStartsTooHigh { excess_m: by, .. }
        | Withheld::DoesNotStand {
            shortfall_m: by, ..
        }
        | Withheld::CannotBeStoodUp { shortfall_m: by }
        | Withheld::CannotDriveIn {
            shortfall_m: by, ..
        }
        | Withheld::LoosePad { gap_m: by, .. }
        | Withheld::TightAsParked {
            shortfall_m: by, ..
        } => Some(*by),
        Withheld::OverRating { .. }
        | Withheld::CarriedPartsTouch { .. }
        | Withheld::NotMeasured { .. }
        | Withheld::NoMarkFits
        | Withheld::Ground { .. } => None,
    }
}

#[cfg(test)]
mod tests;
