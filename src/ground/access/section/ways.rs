//! How wide are the ways, and which of them does the driver need?

use std::borrow::Cow;

use super::way_out::needed;
use super::{EXIT_M, NEEDED, side_word, thing};
use crate::bay::Bay;
use crate::clearance::{LEAVE_M, Study, Way, WayKind};
use crate::ground::{Bound, Figure, Quantity};
use crate::units::Rounding;

pub(super) fn way_name(way: &Way) -> (Cow<'static, str>, Cow<'static, str>) {
    match way.kind {
        WayKind::BesideVehicle(side) => (
            format!("way_{}", side_word(side)).into(),
            format!("way on the {} of the vehicle", side_word(side)).into(),
        ),
        WayKind::VehicleToPost(side) => (
            format!("way_to_post_{}", side_word(side)).into(),
            format!("between the vehicle and the {} post", side_word(side)).into(),
        ),
        WayKind::BehindPost(side) => (
            format!("way_behind_post_{}", side_word(side)).into(),
            format!("outside the {} post", side_word(side)).into(),
        ),
        WayKind::BetweenPosts => (
            "way_between_posts".into(),
            "between the carriages, vehicle raised".into(),
        ),
        WayKind::Back => ("way_back".into(), "way at the back of the bay".into()),
        WayKind::Door => ("way_door".into(), "way at the door, shut".into()),
    }
}

pub(super) fn ways(bay: &Bay, study: &Study, figures: &mut Vec<Figure>) {
    let needed = needed(bay, study);
    for way in &study.access.ways {
        let (id, what) = way_name(way);
        let figure = if needed.contains(&way.kind) {
            Figure::judged(
                id,
                what,
                Quantity::Length(way.width_m),
                Bound::AtLeast,
                Quantity::Length(LEAVE_M),
            )
            .undecided_unless_it_passes(
                "walk it with the vehicle in its place: move what stands there, park elsewhere, or \
                 see how people get out",
            )
            .source(NEEDED)
        } else {
            Figure::noted(id, what, Quantity::Length(way.width_m)).rounded(Rounding::Down)
        };
        let between = format!("{} and {}", thing(&way.between.0), thing(&way.between.1));
        figures.push(if way.width_m <= 0.0 {
            figure.note(format!("no way through: {between}"))
        } else if way.width_m < LEAVE_M {
            figure.note(format!("too narrow for most people: {between}"))
        } else if way.width_m < EXIT_M {
            figure.note(format!("narrow: {between}"))
        } else {
            figure
        });
    }
}
