//! What does an installer read about arms and pads?

use super::move_figures::{cure, short_cure};
use super::restraints::{pad_off, restraints};
use super::swing::SwingIn;
use super::words;
use super::{Reach, is_placed_told, is_told};
use crate::bay::{Bay, Corner};
use crate::clearance::{ArmFinding, Withheld};
use crate::ground::{Bound, Clearances, Figure, Quantity, Said, Section, Standing, Topic};
use crate::solids::{ParkingError, arms};

pub(super) fn section(bay: &Bay, found: &Clearances<'_>) -> Section {
    let (lead, figures) = match Reach::found(bay, found) {
        Ok(reach) => (lead(bay, found, &reach), figures(bay, found, &reach)),
        Err(error) => {
            let unknown = Figure::unknown(
                "arms",
                "arms and pads",
                format!("where the vehicle stands is not known: {error}"),
            );
            (Said::new("Arms and pads are not known."), vec![unknown])
        }
    };
    Section {
        topic: Topic::Reach,
        lead,
        figures,
        notes: super::restraints::teeth(bay),
        governs: None,
    }
}

fn lead(bay: &Bay, found: &Clearances<'_>, reach: &Reach) -> Said {
    let held = restraints(bay);
    if held.standing == Standing::Stops {
        return Said::new("Stop: ").and_said(held.why()).and(".");
    }
    let short: Vec<&ArmFinding> = found.arms.iter().filter(|arm| !reaches(arm)).collect();
    if let Some(worst) = short
        .iter()
        .copied()
        .max_by(|a, b| a.worst_shortfall_m.total_cmp(&b.worst_shortfall_m))
    {
        let names: Vec<&str> = short.iter().map(|arm| arm.corner.name()).collect();
        let said = match names.as_slice() {
            [first @ .., last] if !first.is_empty() => Said::new(format!(
                "The {} and {last} arms fall up to ",
                first.join(", ")
            )),
            _ => Said::new(format!("The {} arm falls ", worst.corner.name())),
        };
        let said = said
            .up(Quantity::Length(worst.worst_shortfall_m))
            .and(" short. ");
        return said.and(sentence(&cure(bay, reach))).and(".");
    }
    if let Some((part, other)) = touching(found, reach) {
        let said = Said::new(format!("All four arms reach, but {part} touches {other}. "));
        return said.and(sentence(&cure(bay, reach))).and(".");
    }
    let reach_all = "Each arm brings its pad under its lift point wherever the driver may stop, and touches \
         nothing there";
    Said::new(match reach.swing {
        Some(SwingIn::Found { .. }) => format!("{reach_all}; all four can be swung in."),
        _ => format!("{reach_all}; whether all four can be swung in is not known."),
    })
}

fn sentence(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| {
        first.to_uppercase().chain(letters).collect()
    })
}

/// What is no number does not reach.
pub(super) fn reaches(arm: &ArmFinding) -> bool {
    arm.worst_shortfall_m <= 0.0
}

/// What arms and pads in place touch first.
fn touching(found: &Clearances<'_>, reach: &Reach) -> Option<(String, String)> {
    let carried = found.carried.first().map(|touch| {
        let name = |name: &str| words::short_name(name).to_owned();
        (name(&touch.part), name(&touch.vehicle))
    });
    carried.or_else(|| {
        reach.on_post.as_ref().map(|(corner, post)| {
            let arm = format!("arm {}", corner.name());
            (arm, words::short_name(post).to_owned())
        })
    })
}

fn figures(bay: &Bay, found: &Clearances<'_>, reach: &Reach) -> Vec<Figure> {
    let mut figures: Vec<Figure> = found
        .arms
        .iter()
        .map(|arm| arm_figure(bay, found, reach, arm))
        .collect();
    figures.extend(found.arms.iter().filter_map(|arm| pad_off(bay, arm)));
    figures.push(restraints(bay));
    figures.extend(super::move_figures::figures(bay, reach));
    figures.push(placed(bay, found, reach));
    figures.push(swing_figure(reach));
    figures.extend(super::pad_figures::figures(bay, found, &reach.pads));
    figures
}

/// A corner in an id.
pub(super) const fn id_of(corner: Corner) -> &'static str {
    match corner {
        Corner::FrontLeft => "front_left",
        Corner::FrontRight => "front_right",
        Corner::RearLeft => "rear_left",
        Corner::RearRight => "rear_right",
    }
}

fn arm_figure(bay: &Bay, of: &Clearances<'_>, reach: &Reach, found: &ArmFinding) -> Figure {
    let corner = found.corner;
    let arm = &bay.lift.arms[corner.index()];
    let asked = arms::reach(bay, corner, ParkingError::default()).ok();
    let degrees = found.swing_rad.to_degrees();
    let id = format!("arm.{}", id_of(corner));
    if reaches(found) {
        return Figure {
            standing: Standing::Passes,
            ..Figure::judged(
                id,
                format!("{}, swing {degrees:.0} deg: length", corner.name()),
                Quantity::Length(found.reach_m),
                Bound::AtMost,
                Quantity::Length(arm.longest.m()),
            )
        };
    }
    let too_near = asked.is_some_and(|asked| asked.short == Some(arms::Short::TooNear));
    let limit = if too_near {
        arm.shortest.m()
    } else {
        arm.longest.m()
    };
    // The length as parked may keep its limit where the worst place or the swing does not.
    let why = found.why.as_deref().unwrap_or("it does not reach");
    let mut note = Said::new(format!("{why}; as parked swing {degrees:.0} deg, length "))
        .near(Quantity::Length(found.reach_m))
        .and(if too_near { " (from " } else { " (to " })
        .near(Quantity::Length(limit))
        .and(")");
    if let Some(asked) = asked.filter(|asked| asked.shortfall_m > 0.0) {
        let beyond = words::by(asked.lift_point_m - asked.pad_m, bay.units);
        note = note.and(format!("; its point lies {beyond} of where its pad comes"));
    }
    let mut figure = Figure::judged(
        id,
        format!("{}: falls short at worst", corner.name()),
        Quantity::Length(found.worst_shortfall_m),
        Bound::AtMost,
        Quantity::Length(0.0),
    )
    .note(note)
    .stopping(short_cure(bay, reach));
    if let Some(asked) = asked {
        figure = figure.at(asked.lift_point_m.extend(bay.lift.pad.lowest.m()));
    }
    let told = is_told(
        of,
        |reason| matches!(reason, Withheld::ArmDoesNotReach { corner: told, .. } if *told == corner),
    );
    if told { figure.told() } else { figure }
}

/// Arms and pads where they are wanted.
fn placed(bay: &Bay, found: &Clearances<'_>, reach: &Reach) -> Figure {
    let what = "arms and pads in place";
    let words = |text: String| Quantity::Words(text);
    match touching(found, reach) {
        None if found.arms.iter().all(reaches) => Figure {
            standing: Standing::Passes,
            ..Figure::noted("placed", what, words("touch nothing".into()))
        },
        None => Figure::unknown("placed", what, "make all four arms reach first"),
        Some((part, other)) => {
            let figure = Figure::noted("placed", what, words(format!("{part} touches {other}")))
                .stopping(cure(bay, reach));
            if is_placed_told(found) {
                figure.told()
            } else {
                figure
            }
        }
    }
}

fn swing_figure(reach: &Reach) -> Figure {
    let what = "arms swung in";
    match &reach.swing {
        None => Figure::unknown("swing_in", what, "make all four arms reach first"),
        Some(SwingIn::Found {
            ways,
            order,
            is_everywhere,
        }) => Figure {
            standing: Standing::Passes,
            ..Figure::noted("swing_in", what, Quantity::Words("a way was found".into()))
        }
        .note(words::ways(ways, order.as_ref(), *is_everywhere)),
        Some(SwingIn::NotFound {
            corner,
            meets,
            as_parked,
        }) => Figure::unknown(
            "swing_in",
            what,
            "try it with the vehicle in its place before it is raised, or park it elsewhere",
        )
        .note(words::no_way(*corner, meets, *as_parked)),
    }
}
