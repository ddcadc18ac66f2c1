//! Which outline does the roof have: listed, or derived from the body style?

use super::all;
use super::checks::both;
use super::fields::Fields;
use super::readers::{Read, custom, not_negative, one_item, size, variant, words};
use super::vehicle::{STYLES, stations};
use crate::bay::{BodyStyle, RoofStation};
use crate::bayfile::context::Context;
use crate::bayfile::syntax::{Kind, Node};
use crate::units::Length;

/// Sizes of the body that an outline must agree with.
#[derive(Debug, Clone, Copy)]
pub(super) struct Body {
    pub(super) style: BodyStyle,
    pub(super) length: Length,
    pub(super) width: Length,
    pub(super) height: Length,
    pub(super) belt: Length,
}

/// What two figures of one vehicle may differ by, in metres: rounding between inches and
/// millimetres, no more.
const NOISE_M: f64 = 5e-5;

/// One station as written.
pub(super) fn station(f: &Fields<'_>) -> Option<RoofStation> {
    all!(RoofStation {
        station: f.need("station", &not_negative()),
        height: f.need("height", &size()),
        half_width: f.need("half_width", &size()),
    })
}

/// Reads the outline. Without the body's sizes (they were refused) only the stations themselves
/// are looked at.
pub(super) fn roof(body: Option<Body>) -> impl Read<Out = Vec<RoofStation>> {
    custom("Derived", move |cx, node| {
        if let Kind::List(nodes) = &node.kind {
            let stations = stations().read(cx, node)?;
            return agrees(cx, node, nodes, &stations, body?).then_some(stations);
        }
        variant(cx, node, "a list of stations or `Derived`", &["Derived"])?;
        let style = match node.kind {
            Kind::Word(_) => None,
            _ => Some(one_item(cx, node, &words("a body style", &STYLES))?),
        };
        let body = body?;
        Some(derived(style.unwrap_or(body.style), body))
    })
}

fn agrees(cx: &Context, node: &Node, nodes: &[Node], stations: &[RoofStation], body: Body) -> bool {
    let mut good = true;
    let mut fault = |node: &Node, message: &str, label: &str, help: &str| {
        good = false;
        cx.error(node.head(), message, label, help);
    };
    if stations.len() < 2 {
        fault(
            node,
            "an outline needs at least two stations",
            "expected stations from the front bumper to the rear",
            "list the stations, or write `Derived`",
        );
        return false;
    }
    for (pair, node) in stations.windows(2).zip(&nodes[1..]) {
        if pair[1].station <= pair[0].station {
            fault(
                node,
                "this station does not lie behind the one before it",
                "stations run from the front bumper to the rear",
                "put the stations in order, each once; a step needs two stations a little apart",
            );
        }
    }
    for (station, node) in stations.iter().zip(nodes) {
        if station.station.m() > body.length.m() + NOISE_M {
            fault(
                node,
                &format!(
                    "this station lies behind the body's end at {}",
                    both(body.length)
                ),
                "expected a station within the vehicle's length",
                "check the station and the vehicle's `length`",
            );
        }
        if station.half_width.m() * 2.0 > body.width.m() + NOISE_M {
            fault(
                node,
                &format!(
                    "this station is wider than the body, which is {}",
                    both(body.width)
                ),
                "expected at most half the body's width",
                "check `half_width` and the vehicle's `body_width`; mirrors and racks have their own fields",
            );
        }
    }
    let (first, last) = (&stations[0], &stations[stations.len() - 1]);
    if first.station.m() > NOISE_M || last.station.m() < body.length.m() - NOISE_M {
        fault(
            node,
            &format!(
                "the outline does not cover the whole body of {}",
                both(body.length)
            ),
            "expected the first station at 0 and the last at the vehicle's length",
            "add the missing ends: what has no outline would not be checked",
        );
    }
    let top = stations.iter().fold(Length::ZERO, |t, s| t.max(s.height));
    if (top - body.height).abs().m() > NOISE_M {
        let (message, help) = if top < body.height {
            (
                format!(
                    "the outline reaches only {}, but the vehicle is {} high",
                    both(top),
                    both(body.height)
                ),
                "raise the highest station to the vehicle's `height`, or correct `height`",
            )
        } else {
            (
                format!(
                    "the outline reaches {}, but the vehicle is only {} high",
                    both(top),
                    both(body.height)
                ),
                "correct `height`, or the highest station; racks and boxes belong into `attached`",
            )
        };
        fault(
            node,
            &message,
            "the highest station must agree with `height`",
            help,
        );
    }
    good
}

/// An outline as shares: of the length, of the way from belt to top, of half the body width.
/// From the proportions such bodies commonly have; drawn full where bodies of the class differ, as
/// what is missing here would not be checked.
type Shares = &'static [(f64, f64, f64)];

const fn shares(style: BodyStyle) -> Shares {
    match style {
        BodyStyle::Hatch => &[
            (0.0, 0.0, 0.94),
            (0.25, 0.25, 0.92),
            (0.42, 0.96, 0.78),
            (0.55, 1.0, 0.78),
            (0.85, 0.95, 0.76),
            (1.0, 0.45, 0.90),
        ],
        BodyStyle::Saloon => &[
            (0.0, 0.0, 0.92),
            (0.28, 0.22, 0.92),
            (0.43, 0.95, 0.74),
            (0.52, 1.0, 0.74),
            (0.70, 0.92, 0.72),
            (0.85, 0.40, 0.88),
            (1.0, 0.32, 0.90),
        ],
        BodyStyle::Coupe => &[
            (0.0, 0.0, 0.90),
            (0.34, 0.25, 0.92),
            (0.50, 0.97, 0.70),
            (0.56, 1.0, 0.70),
            (0.72, 0.85, 0.68),
            (0.90, 0.40, 0.88),
            (1.0, 0.32, 0.90),
        ],
        BodyStyle::Estate => &[
            (0.0, 0.0, 0.92),
            (0.27, 0.22, 0.92),
            (0.42, 0.95, 0.76),
            (0.52, 1.0, 0.76),
            (0.92, 0.95, 0.74),
            (1.0, 0.50, 0.88),
        ],
        BodyStyle::Suv => &[
            (0.0, 0.05, 0.94),
            (0.26, 0.28, 0.94),
            (0.38, 0.96, 0.80),
            (0.50, 1.0, 0.80),
            (0.92, 0.97, 0.78),
            (1.0, 0.55, 0.90),
        ],
        BodyStyle::Pickup => &[
            (0.0, 0.05, 0.94),
            (0.25, 0.32, 0.94),
            (0.36, 0.97, 0.78),
            (0.45, 1.0, 0.78),
            (0.60, 0.97, 0.76),
            (0.66, 0.50, 0.92),
            (1.0, 0.50, 0.94),
        ],
        BodyStyle::Van | BodyStyle::Camper => &[
            (0.0, 0.10, 0.92),
            (0.16, 0.45, 0.92),
            (0.26, 0.95, 0.88),
            (0.35, 1.0, 0.88),
            (1.0, 1.0, 0.88),
        ],
    }
}

fn derived(style: BodyStyle, body: Body) -> Vec<RoofStation> {
    let rise = body.height - body.belt;
    let outline = shares(style).iter().map(|(along, up, wide)| RoofStation {
        station: body.length * *along,
        height: body.belt + rise * *up,
        half_width: body.width * (0.5 * wide),
    });
    outline.collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_derived_outline_keeps_the_rules_of_a_listed_one() {
        for (_, style) in STYLES {
            let body = Body {
                style,
                length: Length::metres(4.7),
                width: Length::metres(1.9),
                height: Length::metres(1.8),
                belt: Length::metres(1.0),
            };
            let outline = derived(style, body);
            let top = outline.iter().fold(Length::ZERO, |t, s| t.max(s.height));
            assert!(
                (top.m() - 1.8).abs() < 1e-12,
                "{style:?} reaches the height"
            );
            assert!(
                outline[0].station.m().abs() < 1e-12,
                "{style:?} starts at the bumper"
            );
            assert!(
                (outline[outline.len() - 1].station.m() - 4.7).abs() < 1e-12,
                "{style:?}"
            );
            for pair in outline.windows(2) {
                assert!(pair[0].station < pair[1].station, "{style:?} in order");
            }
            assert!(
                outline.iter().all(|s| s.half_width.m() <= 0.95),
                "{style:?} within the body"
            );
        }
    }
}
