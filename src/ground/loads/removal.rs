//! What is said of balance before and after parts are taken out?

use super::figures::{
    Limits, comes_out, heavier_post, inside, most_on_a_pad, three_pads, total, window,
};
use super::{State, States};
use crate::bay::{Bay, Facing};
use crate::ground::{Figure, Quantity, Said, Standing};

/// When a state stands, in words.
pub(super) const BEFORE_WHEN: &str = "before parts come out";
/// When a state stands, in words.
pub(super) const BETWEEN_WHEN: &str = "with some of the parts out";

/// Parts that come out on the lift are in while it goes up: what fails then stops.
const BEFORE: &str = "take parts out before the vehicle is raised and weigh it without them, so \
                      that they are not among its `masses`, or mend this as if they stayed in";
const BETWEEN: &str = "take the parts out in an order that keeps the balance and each arm's load, \
                       with tall stands under the ends";

/// The figures of one state: its total, its balance, its pads and posts. Their ids start with
/// `group`, their words with `when`.
pub(super) fn of(group: &str, when: &str, state: &State, limits: &Limits) -> Vec<Figure> {
    let id = |name: &str| format!("{group}.{name}");
    let mut all = vec![total(id("total"), "vehicle on the lift", state, limits)];
    all.extend(window(&id("window"), "centre of gravity", state, limits));
    all.push(inside(
        &id("inside_pads"),
        "centre of gravity",
        state,
        limits,
    ));
    match &state.pads {
        Some(pads) => {
            all.push(most_on_a_pad(id("pad_load"), pads, limits));
            all.push(heavier_post(id("post_load"), pads, limits));
            all.push(three_pads(id("three_pads"), pads, limits));
            if let Some(corner) = pads.lifts {
                let words = Quantity::Words(corner.name().to_owned());
                all.push(
                    Figure::noted(id("lifting_pad"), "pad that carries nothing", words)
                        .stopping("move load toward the middle")
                        .reason(format!("the {} pad would carry nothing", corner.name())),
                );
            }
        }
        None => all.push(Figure::unknown(
            id("pad_load"),
            "pad loads",
            "first bring the weight inside the pads' span",
        )),
    }
    for figure in &mut all {
        let reason = Said::new(format!("{when}, "));
        figure.reason = Some(Said([reason.0, figure.why().0].concat()));
        figure.what = format!("{when}, {}", figure.what).into();
    }
    all
}

/// The figures before the parts came out, and with some of them out.
pub(super) fn figures(before: &State, states: &States, limits: &Limits) -> Vec<Figure> {
    let mut all = of("before", BEFORE_WHEN, before, limits);
    for figure in &mut all {
        if figure.standing == Standing::Stops {
            figure.cure = Some(BEFORE.into());
        }
    }
    all.extend(between(states, limits));
    all
}

/// The worst of the states in between, each of its figures on its own. One that fails is not known
/// while some order of taking the parts out goes past it.
fn between(states: &States, limits: &Limits) -> Vec<Figure> {
    let mut worst: Vec<Figure> = Vec::new();
    let mut holds = Vec::with_capacity(states.between.len());
    for state in &states.between {
        let figures = of("between", BETWEEN_WHEN, state, limits);
        holds.push(figures.iter().all(|one| {
            // On three pads is the maker's word, whatever the order.
            let three = one.id == "between.three_pads" || one.id == "between.post_load";
            one.standing == Standing::Passes || (three && one.standing == Standing::Unknown)
        }));
        keep_worst(&mut worst, figures);
    }
    // It falls with every part: what is asked of it is asked before they come out.
    worst.retain(|one| one.id != "between.total" || one.standing != Standing::Passes);
    for figure in &mut worst {
        if figure.standing == Standing::Stops {
            figure.standing = Standing::Unknown;
            figure.cure = Some(BETWEEN.into());
        }
    }
    if !states.all_between {
        worst.push(Figure::unknown(
            "between.orders",
            "orders of taking the parts out",
            "so many parts come out that not every order was looked at: work out that in which \
             they come out, state by state, as files of their own",
        ));
    } else if !some_order_holds(&holds) {
        let words = Quantity::Words("none holds".into());
        worst.push(
            Figure::noted("between.orders", "orders of taking the parts out", words)
                .stopping("set the vehicle down for some of the parts, or park it otherwise")
                .reason(
                    "in no order can the parts come out without a state that the lift may not carry",
                ),
        );
    }
    worst
}

/// Keeps of figures alike the one that stands worst.
pub(super) fn keep_worst(worst: &mut Vec<Figure>, figures: Vec<Figure>) {
    for figure in figures {
        match worst.iter_mut().find(|one| one.id == figure.id) {
            Some(known) if is_worse(&figure, known) => *known = figure,
            Some(_) => {}
            None => worst.push(figure),
        }
    }
}

/// Which of two figures alike stands worse, or lies farther toward its limit.
fn is_worse(one: &Figure, than: &Figure) -> bool {
    let number = |figure: &Figure| figure.found.as_ref().and_then(Quantity::number);
    if one.standing != than.standing {
        return one.standing > than.standing;
    }
    let (Some(found), Some(known)) = (number(one), number(than)) else {
        return false;
    };
    if one.id.ends_with(".inside_pads") {
        found < known || found.is_nan()
    } else {
        found > known || found.is_nan()
    }
}

/// Whether the parts can come out one by one through states that hold: by the bits of a number,
/// which parts are out.
fn some_order_holds(holds: &[bool]) -> bool {
    let all = holds.len() + 1;
    let mut reached = vec![false; all + 1];
    reached[0] = true;
    for set in 1..=all {
        let fits = set == all || holds[set - 1];
        let bits = (0..usize::BITS)
            .map(|bit| 1 << bit)
            .filter(|bit| set & bit != 0);
        reached[set] = fits && bits.into_iter().any(|bit: usize| reached[set ^ bit]);
    }
    reached[all]
}

/// What taking the parts out does, and what to do before.
pub(super) fn notes(bay: &Bay, before: &State, after: &State) -> Vec<Said> {
    let names: Vec<&str> = bay
        .vehicle
        .masses
        .iter()
        .filter(|part| comes_out(part))
        .map(|part| part.name.as_str())
        .collect();
    let into_bay = after.geometry.cg_m.y - before.geometry.cg_m.y;
    let to_tail = match bay.parking.facing {
        Facing::NoseIn => -into_bay,
        Facing::TailIn => into_bay,
    };
    let (end, other) = if to_tail >= 0.0 {
        ("tail", "nose")
    } else {
        ("nose", "tail")
    };
    vec![
        Said::new(format!("Without {} the weight acts ", names.join(", ")))
            .up(Quantity::Length(to_tail.abs()))
            .and(format!(
                " farther toward the {end}: the {end} gets heavy, the {other} light."
            )),
        format!(
            "Before a heavy part comes out: lower onto the locks, set a tall stand under the \
             {end}, tie the vehicle to the arms, and never pull or pry hard at a vehicle that \
             balances on less."
        )
        .into(),
    ]
}
