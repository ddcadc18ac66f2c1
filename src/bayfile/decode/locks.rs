//! At which travels do the locks stand?

use super::fields::record;
use super::readers::{Count, Read, custom, items, size, variant};
use crate::bayfile::context::Context;
use crate::bayfile::syntax::{Kind, Node};
use crate::units::{Length, feet_inches, millimetres};

/// The most locks a lift may have.
const MOST: usize = 200;
/// Noise allowed where the last of evenly spaced locks meets the full travel, in metres.
const NOISE_M: f64 = 1e-9;

/// Reads the locks, lowest first; with the travel known, none may lie beyond it.
pub(super) fn locks(travel: Option<Length>) -> impl Read<Out = Vec<Length>> {
    custom(
        "Even(first: \"12 in\", pitch: \"4 in\", count: 15)",
        move |cx, node| {
            let locks = match &node.kind {
                Kind::List(_) => listed(cx, node)?,
                _ => even(cx, node)?,
            };
            let too_high = |l: &Length, t: Length| l.m() > t.m() + NOISE_M;
            if let (Some(last), Some(travel)) = (locks.last(), travel)
                && too_high(last, travel)
            {
                let shown = |l| {
                    format!(
                        "{} ({})",
                        feet_inches(l, 64, crate::units::Rounding::Nearest),
                        millimetres(l, 1, crate::units::Rounding::Nearest)
                    )
                };
                cx.error(
                    node.head(),
                    &format!(
                        "the highest lock at {} lies beyond the carriage's travel of {}",
                        shown(*last),
                        shown(travel)
                    ),
                    "every lock must lie within `travel`",
                    "check the locks and `travel`: both count from the carriage's lowest place",
                );
                return None;
            }
            Some(locks)
        },
    )
}

fn even(cx: &Context, node: &Node) -> Option<Vec<Length>> {
    variant(cx, node, "a list of locks or `Even(..)`", &["Even"])?;
    record(cx, node, "the even locks", |f| {
        let first = f.need("first", &size());
        let pitch = f.need("pitch", &size());
        let count = f.need(
            "count",
            &Count {
                what: "locks",
                least: 1,
                most: MOST,
            },
        );
        let (first, pitch, count) = (first?, pitch?, count?);
        #[allow(clippy::cast_precision_loss)] // at most 200
        Some((0..count).map(|i| first + pitch * i as f64).collect())
    })
}

fn listed(cx: &Context, node: &Node) -> Option<Vec<Length>> {
    let nodes = items(cx, node, "locks", MOST, "\"12 in\", \"16 in\"")?;
    if nodes.is_empty() {
        cx.error(
            node.head(),
            "the lift has no lock",
            "expected at least one travel",
            "list the carriage's travel at each lock, lowest first",
        );
        return None;
    }
    let read: Vec<Option<Length>> = nodes.iter().map(|n| size().read(cx, n)).collect();
    let mut rising = true;
    for (pair, node) in read.windows(2).zip(&nodes[1..]) {
        if let [Some(below), Some(above)] = pair
            && above <= below
        {
            rising = false;
            cx.error(
                node.span,
                "this lock is not above the one before it",
                "expected a greater travel than the lock before",
                "list the locks lowest first, each once",
            );
        }
    }
    let read: Option<Vec<Length>> = read.into_iter().collect();
    read.filter(|_| rising)
}
