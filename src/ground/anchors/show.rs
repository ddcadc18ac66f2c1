//! How are the code's numbers put into figures?

use super::given::M2_PER_SQ_IN;
use crate::ground::{Bound, Figure, Quantity, Standing};
use crate::units::{M_PER_INCH, N_PER_POUND_FORCE, PA_PER_PSI};

/// What settles a screening that does not show enough.
pub(super) const REPORT: &str = "this screening does not show it; the manual may still allow it: get the anchor's test report \
     for this slab, or ask a licensed engineer";

/// How to know that no joint or crack is near.
pub(in crate::ground) const LINES: &str = "where joints and cracks run and where the slab ends is not said in full: look over the slab, list \
     joints and cracks under `lines`, an empty list where there are none, and give its corners as \
     `outline`";

pub(in crate::ground) fn lbf(value: f64) -> Quantity {
    Quantity::Force(value * N_PER_POUND_FORCE)
}

pub(in crate::ground) fn inches(value: f64) -> Quantity {
    Quantity::Length(value * M_PER_INCH)
}

pub(in crate::ground) fn psi(value: f64) -> Quantity {
    Quantity::Pressure(value * PA_PER_PSI)
}

pub(in crate::ground) fn sq_in(value: f64) -> Quantity {
    Quantity::Area(value * M2_PER_SQ_IN)
}

/// The greatest of some values, at least zero; one that is no number stays no number.
pub(in crate::ground) fn greatest(values: impl Iterator<Item = f64>) -> f64 {
    values.fold(0.0, |most: f64, one| {
        if most.is_nan() || one <= most {
            most
        } else {
            one
        }
    })
}

/// A screening that fails is not settled.
pub(in crate::ground) fn screened(figure: Figure, how: &'static str) -> Figure {
    if figure.standing == Standing::Stops {
        figure.undecided(how)
    } else {
        figure
    }
}

/// How much of what is asked a figure uses; more than anything where one of both is missing.
fn share(figure: &Figure) -> f64 {
    let found = figure.found.as_ref().and_then(Quantity::number);
    match (found, &figure.limit) {
        (Some(found), Some((bound, limit))) => match (bound, limit.number()) {
            (Bound::AtMost, Some(limit)) => found / limit,
            (Bound::AtLeast, Some(limit)) => limit / found,
            _ => f64::INFINITY,
        },
        _ => f64::INFINITY,
    }
}

/// True where what was found is known to be beyond what is asked.
pub(in crate::ground) fn is_beyond(figure: &Figure) -> bool {
    let found = figure.found.as_ref().and_then(Quantity::number);
    let asked = figure.limit.as_ref().and_then(|(_, limit)| limit.number());
    let use_of = share(figure);
    found.is_some() && asked.is_some() && (use_of > 1.0 || use_of.is_nan())
}

/// The share of a figure by its name; none where it is not there.
pub(in crate::ground) fn share_of(figures: &[Figure], id: &str) -> Option<f64> {
    figures.iter().find(|one| one.id == id).map(share)
}

/// Of the figures of both posts those that stand worse, by name; what is only noted comes from the
/// post that `governs` by the share of this figure.
pub(in crate::ground) fn worse_of(
    left: Vec<Figure>,
    right: Vec<Figure>,
    governs: &str,
) -> Vec<Figure> {
    let by = |figures: &[Figure]| share_of(figures, governs).unwrap_or(f64::NEG_INFINITY);
    let right_governs = by(&right) > by(&left);
    let (first, mut second, names) = if right_governs {
        (right, left, ["right", "left"])
    } else {
        (left, right, ["left", "right"])
    };
    let mut out = Vec::with_capacity(first.len());
    for figure in first {
        let other = second
            .iter()
            .position(|one| one.id == figure.id)
            .map(|k| second.remove(k));
        out.push(match other {
            Some(other) if figure == other || figure.standing == Standing::Noted => figure,
            Some(other) => {
                let worse = (other.standing, share(&other)) > (figure.standing, share(&figure));
                if worse {
                    at_post(other, names[1])
                } else {
                    at_post(figure, names[0])
                }
            }
            None => at_post(figure, names[0]),
        });
    }
    // What only the other post has; what is merely noted there is left out.
    out.extend(
        second
            .into_iter()
            .filter(|one| one.standing != Standing::Noted)
            .map(|one| at_post(one, names[1])),
    );
    out
}

fn at_post(mut figure: Figure, name: &str) -> Figure {
    figure.what = format!("{}, {name} post", figure.what).into();
    figure
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_number_is_the_greatest() {
        assert!(greatest([1.0, f64::NAN, 2.0].into_iter()).is_nan());
        assert!((greatest([1.0, 3.0, 2.0].into_iter()) - 3.0).abs() < 1e-12);
        assert!(greatest(std::iter::empty()).abs() < 1e-12);
    }

    fn load(id: &'static str, found: f64) -> Figure {
        Figure::judged(id, "the load", lbf(found), Bound::AtMost, lbf(100.0))
    }

    #[test]
    fn the_worse_of_both_posts_is_told() {
        let left = vec![
            Figure::noted("factor", "a factor", Quantity::Number(1.0)),
            load("cone", 50.0),
            load("steel", 90.0),
        ];
        let right = vec![
            Figure::noted("factor", "a factor", Quantity::Number(2.0)),
            load("cone", 80.0),
            load("steel", 10.0),
            Figure::unknown("edge", "the edge", "look"),
        ];
        let told = worse_of(left, right, "cone");
        let said: Vec<(&str, &str)> = told
            .iter()
            .map(|one| (one.id.as_ref(), one.what.as_ref()))
            .collect();
        assert_eq!(
            said,
            [
                ("factor", "a factor"),
                ("cone", "the load, right post"),
                ("steel", "the load, left post"),
                ("edge", "the edge, right post"),
            ]
        );
        assert_eq!(told[0].found, Some(Quantity::Number(2.0)));
        // What is not known is worse than what holds, and a stop worse than both.
        let told = worse_of(
            vec![load("cone", 99.0)],
            vec![Figure::unknown("cone", "the load", "weigh it")],
            "cone",
        );
        assert_eq!(told[0].standing, Standing::Unknown);
        let told = worse_of(vec![load("cone", 101.0)], vec![load("cone", 1.0)], "cone");
        assert_eq!(told[0].standing, Standing::Stops);
    }
}
