//! Which figures does a weight on the pads come down to, and what is asked of each?

use super::{GRAVITY, Pads, PostLoad, State};
use crate::bay::{Bay, CgWindow, Corner, NamedMass, Side};
use crate::ground::anchors::show::greatest;
use crate::ground::{Bound, Figure, Quantity, Said};
use crate::units::Rounding;

/// A figure's stable name.
type Id = std::borrow::Cow<'static, str>;

/// What is asked of loads and balance.
pub(super) struct Limits {
    /// The lift's rating, kilograms.
    capacity_kg: f64,
    /// What one arm may carry, kilograms.
    pub(super) arm_kg: f64,
    /// Whose word that is.
    arm_source: &'static str,
    /// What one post may carry, kilograms.
    post_kg: f64,
    /// Whose word that is.
    post_source: &'static str,
    window: Option<CgWindow>,
    /// What cures a weight outside the window.
    park: &'static str,
    /// How far inside the pads' span the weight must act, metres.
    inside_m: f64,
}

impl Limits {
    /// Whether no pad carries more than its arm may while all four share, and no two more than
    /// their post may.
    pub(super) fn carry(&self, pads: &Pads) -> bool {
        let arms = pads.pads.iter();
        let posts = pads.posts.iter();
        arms.map(|pad| pad.shared_n)
            .all(|load| load <= self.arm_kg * GRAVITY)
            && posts
                .map(|post| post.shared_n)
                .all(|load| load <= self.post_kg * GRAVITY)
    }
}

pub(super) fn limits(bay: &Bay) -> Limits {
    let lift = &bay.lift;
    let given = lift.arm_capacity.map(|mass| mass.kg());
    let post = lift.post_capacity.map(|mass| mass.kg());
    Limits {
        capacity_kg: lift.capacity.kg(),
        arm_kg: given.unwrap_or(lift.capacity.kg() * 0.25),
        arm_source: if given.is_some() {
            "the lift's arm capacity, as the bay file or its preset has it"
        } else {
            "a quarter of the lift's capacity, for want of an arm capacity from its manual"
        },
        post_kg: post.unwrap_or(lift.capacity.kg() * 0.5),
        post_source: if post.is_some() {
            "the lift's post capacity"
        } else {
            "half of the lift's capacity, which is for both posts, for want of a post capacity from \
             its manual"
        },
        window: lift.cg_window,
        park: if bay.vehicle.masses.iter().any(comes_out) {
            "park the vehicle so that its weight lies within the window both before and after the \
             parts come out, or put weight back"
        } else {
            "park the vehicle so that its weight comes nearer to the post line"
        },
        inside_m: bay.policy.inside_pads.m(),
    }
}

/// Whether a mass is a part that comes out while the vehicle is up.
pub(super) fn comes_out(part: &NamedMass) -> bool {
    part.mass.kg() < 0.0 && !part.stays
}

/// A force as the weight that people know it as.
pub(super) fn weight(force_n: f64) -> Quantity {
    Quantity::Mass(force_n / GRAVITY)
}

/// The figures of the weight as the file gives it.
pub(super) fn of(bay: &Bay, state: &State, limits: &Limits) -> Vec<Figure> {
    let mut all = vec![total("total", "vehicle on the lift", state, limits)];
    all.extend(window("window", "centre of gravity", state, limits));
    if limits.window.is_none() {
        all.push(Figure::unknown(
            "window",
            "where the centre of gravity may lie",
            "take from the lift's manual how far from the post line it may lie, as `cg_window`",
        ));
    }
    let aside = state.across_m.0.abs().max(state.across_m.1.abs());
    all.push(
        Figure::noted(
            "centre.across",
            "centre of gravity beside the middle between the posts, at worst",
            Quantity::Length(aside),
        )
        .rounded(Rounding::Up),
    );
    all.push(inside("inside_pads", "centre of gravity", state, limits));
    pad_figures(bay, state, limits, &mut all);
    all
}

pub(super) fn total(
    id: impl Into<Id>,
    what: &'static str,
    state: &State,
    limits: &Limits,
) -> Figure {
    Figure::judged(
        id,
        what,
        Quantity::Mass(state.mass_kg),
        Bound::AtMost,
        Quantity::Mass(limits.capacity_kg),
    )
    .source("the lift's capacity")
    .cure("unload the vehicle, or choose a lift with a higher capacity")
}

/// The centre of gravity against the window, to both sides; nothing without a window.
pub(super) fn window(id: &str, what: &str, state: &State, limits: &Limits) -> Vec<Figure> {
    let Some(window) = limits.window else {
        return Vec::new();
    };
    let (least, most) = state.along_m;
    let [ahead, back] = ["forward of the post line", "back from the post line"];
    [
        ("front", ahead, back, most, window.front),
        ("rear", back, ahead, -least, window.rear),
    ]
    .into_iter()
    .map(|(end, whither, other, past, limit)| {
        // On the other side all the while it is nothing on this one.
        let found = if past < 0.0 { 0.0 } else { past };
        let (far, limit) = (Quantity::Length(found), Quantity::Length(limit.m()));
        let reason = Said::new(format!("the {what} may lie "))
            .up(far.clone())
            .and(format!(" {whither}, where the lift's window ends at "))
            .down(limit.clone());
        let figure = Figure::judged(
            format!("{id}.{end}"),
            format!("{what} {whither}, at worst"),
            far,
            Bound::AtMost,
            limit,
        )
        .reason(reason)
        .source("the lift's window, as the bay file or its preset has it")
        .cure(limits.park);
        if past < 0.0 {
            let stays = Said::new("it stays ").down(Quantity::Length(-past));
            figure.note(stays.and(format!(" or more {other}")))
        } else {
            figure
        }
    })
    .collect()
}

/// The centre of gravity against the span of the pads.
pub(super) fn inside(id: &str, what: &str, state: &State, limits: &Limits) -> Figure {
    let reason = if state.inside_m < 0.0 {
        Said::new(format!("the {what} may lie "))
            .up(Quantity::Length(-state.inside_m))
            .and(" outside the pads: the vehicle would tip off them")
    } else {
        Said::new(format!("the {what} may lie only "))
            .down(Quantity::Length(state.inside_m))
            .and(" inside the pads' span, where ")
            .up(Quantity::Length(limits.inside_m))
            .and(" is asked")
    };
    Figure::judged(
        id.to_owned(),
        format!("{what} inside the pads' span, at worst"),
        Quantity::Length(state.inside_m),
        Bound::AtLeast,
        Quantity::Length(limits.inside_m),
    )
    .reason(reason)
    .source("the policy")
    .cure("use lift points that reach farther past the centre of gravity, or move load toward the middle")
}

/// What the two pads of a post carry. Half of the rating each is what two posts are rated for;
/// where only standing on three pads goes beyond that, it is the maker's word.
pub(super) fn post(id: impl Into<Id>, name: &str, load: &PostLoad, limits: &Limits) -> Figure {
    let limit = Quantity::Mass(limits.post_kg);
    let over = load.shared_n.is_nan() || load.shared_n > limits.post_kg * GRAVITY;
    let found = weight(if over { load.shared_n } else { load.most_n });
    let figure = Figure::judged(
        id,
        format!("both pads of {name}"),
        found.clone(),
        Bound::AtMost,
        limit.clone(),
    )
    .reason(
        Said::new(format!("the two pads of {name} may carry "))
            .up(found)
            .and(" of the ")
            .down(limit)
            .and(" one post may"),
    )
    .source(limits.post_source)
    .cure(
        "move load toward the vehicle's middle line, or take from the lift's manual what one post \
         may carry, as `post_capacity`",
    );
    if over {
        figure
    } else {
        figure.undecided_unless_it_passes(
            "screw all four pads up to their lift points before the tyres leave the floor, and ask \
             the maker what one post stands",
        )
    }
}

/// The post that carries more.
pub(super) fn heavier_post(id: impl Into<Id>, pads: &Pads, limits: &Limits) -> Figure {
    let [left, right] = pads.posts;
    let heavier = PostLoad {
        shared_n: greatest([left.shared_n, right.shared_n].into_iter()),
        most_n: greatest([left.most_n, right.most_n].into_iter()),
    };
    post(id, "one post", &heavier, limits)
}

/// The most on one pad should the body stand on three: what one arm stands then is the maker's
/// word.
pub(super) fn three_pads(id: impl Into<Id>, pads: &Pads, limits: &Limits) -> Figure {
    let most = greatest(pads.pads.iter().map(|pad| pad.most_n));
    Figure::judged(
        id,
        "most on one pad should only three carry",
        weight(most),
        Bound::AtMost,
        Quantity::Mass(limits.arm_kg),
    )
    .source(limits.arm_source)
    .undecided_unless_it_passes(
        "screw all four pads up to their lift points before the tyres leave the floor, look again \
         just after, and ask the maker what one arm stands",
    )
}

/// The most on one pad while all four share.
pub(super) fn most_on_a_pad(id: impl Into<Id>, pads: &Pads, limits: &Limits) -> Figure {
    let most = greatest(pads.pads.iter().map(|pad| pad.shared_n));
    Figure::judged(
        id,
        "most on one pad",
        weight(most),
        Bound::AtMost,
        Quantity::Mass(limits.arm_kg),
    )
    .source(limits.arm_source)
}

fn pad_figures(bay: &Bay, state: &State, limits: &Limits, all: &mut Vec<Figure>) {
    let Some(pads) = &state.pads else {
        all.push(Figure::unknown(
            "pad_load",
            "pad loads",
            "first bring the weight inside the pads' span",
        ));
        return;
    };
    for corner in Corner::ALL {
        let pad = &pads.pads[corner.index()];
        all.push(
            Figure::judged(
                format!("pad_load.{}", corner.name().replace(' ', "_")),
                format!("{} pad", corner.name()),
                weight(pad.shared_n),
                Bound::AtMost,
                Quantity::Mass(limits.arm_kg),
            )
            .reason(
                Said::new(format!("the {} pad may carry ", corner.name()))
                    .up(weight(pad.shared_n))
                    .and(" of the ")
                    .down(Quantity::Mass(limits.arm_kg))
                    .and(" its arm may"),
            )
            .source(limits.arm_source)
            .cure("unload that end, use lift points farther from it, or choose stronger arms")
            .note(
                Said::new("as parked ")
                    .near(weight(pad.nominal_n))
                    .and("; between ")
                    .down(weight(pad.least_n))
                    .and(" and ")
                    .up(weight(pad.most_n))
                    .and(" should a pad hang loose"),
            )
            .at(pad.at_m.extend(0.0)),
        );
    }
    for (side, load) in [Side::Left, Side::Right].into_iter().zip(&pads.posts) {
        let name = match side {
            Side::Left => "left",
            Side::Right => "right",
        };
        let id = format!("post_load.{name}");
        let figure = post(id, &format!("the {name} post"), load, limits);
        // Over the rating of the whole lift a post's half of it says the same again.
        let told = state.mass_kg > limits.capacity_kg;
        all.push(if told { figure.told() } else { figure });
    }
    all.push(three_pads("three_pads", pads, limits));
    if let Some(corner) = pads.lifts {
        let words = if bay.vehicle.masses.is_empty() {
            "use lift points that surround the centre of gravity more evenly"
        } else {
            "move load toward the middle, or use lift points that surround it more evenly"
        };
        all.push(
            Figure::noted(
                "lifting_pad",
                "pad that carries nothing",
                Quantity::Words(corner.name().to_owned()),
            )
            .stopping(words)
            .reason(format!(
                "the {} pad would carry nothing and the vehicle would rock on three",
                corner.name()
            )),
        );
    }
}
