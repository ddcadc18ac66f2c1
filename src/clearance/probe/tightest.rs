//! Which of the pairs near here have the least room, and where are they nearest as drawn?

use glam::DVec3;

use super::here::{HerePair, MOST_PAIRS, PairState};
use super::ways::{Against, Pair};
use super::{Listed, Probe, state_at};
use crate::clearance::body::Body;
use crate::clearance::gap::Separation;
use crate::clearance::study::{group_list, state_of};
use crate::clearance::sweep::NEAR_M;
use crate::solids::raise::Place;

impl Probe {
    /// The listed pairs with the least room, measured.
    pub(super) fn tightest(&mut self, travel_m: f64) -> Vec<HerePair> {
        let mut list = std::mem::take(&mut self.short_list);
        // By the room that the boxes leave: once enough pairs with less room are measured, the
        // rest can't come among them.
        list.sort_unstable_by(|a, b| a.room_m.total_cmp(&b.room_m));
        let mut measured: Vec<Listed> = Vec::with_capacity(MOST_PAIRS + 1);
        for listed in &list {
            let last = measured.get(MOST_PAIRS - 1);
            if last.is_some_and(|last| last.room_m <= listed.room_m) {
                break;
            }
            let listed = self.measured(*listed, travel_m);
            if listed.room_m > NEAR_M && listed.state == PairState::Clear {
                continue;
            }
            let at = measured.partition_point(|known| known.room_m <= listed.room_m);
            measured.insert(at, listed);
            measured.truncate(MOST_PAIRS);
        }
        self.short_list = list;
        let place = self.drawn.place(travel_m);
        measured
            .into_iter()
            .map(|listed| self.finding(listed, travel_m, &place))
            .collect()
    }

    /// The pair with its certified distance here.
    fn measured(&mut self, listed: Listed, travel_m: f64) -> Listed {
        let set = group_list(&self.prepared)[listed.group];
        let pair = &self.ways[listed.group].pairs[listed.pair];
        let ways = &self.ways[listed.group].ways[pair.ways.clone()];
        let mut order = std::mem::take(&mut self.in_order);
        order.clear();
        for (index, way) in ways.iter().enumerate() {
            order.extend(self.box_gap(set, way, travel_m).map(|apart| (apart, index)));
        }
        order.sort_unstable_by(|a, b| a.0.total_cmp(&b.0));
        let mut apart_m = f64::INFINITY;
        for &(boxes_m, index) in &order {
            if boxes_m >= apart_m {
                break;
            }
            let way = &ways[index];
            let mover = &self.prepared.movers.moving[way.moving];
            let shift = if mover.climbs {
                DVec3::Z * travel_m
            } else {
                DVec3::ZERO
            };
            let fixed = &set.bodies[way.fixed].body;
            let gap = match self.solver.gap(&mover.body, shift, fixed) {
                Separation::Meet => 0.0,
                // Both are lower bounds. What is not a number counts as nothing.
                Separation::Apart(gap) => gap.lower.max(boxes_m).max(0.0),
            };
            let certified = match state_at(way, travel_m) {
                PairState::Strikes => 0.0,
                PairState::Tight => gap,
                // The search has certified the margin here, whatever this measurement says.
                PairState::Clear | PairState::NotShown => gap.max(pair.margin_m),
            };
            apart_m = apart_m.min(certified);
        }
        self.in_order = order;
        Listed {
            apart_m,
            room_m: apart_m - pair.margin_m,
            ..listed
        }
    }

    fn finding(&mut self, listed: Listed, travel_m: f64, place: &Place) -> HerePair {
        let Listed { group, pair, .. } = listed;
        let pair = self.ways[group].pairs[pair].clone();
        let mover = self.drawn.body(pair.solid, travel_m, place);
        let (fixed, apart) = match mover {
            Some(mover) => self.nearest_drawn(group, &pair, &mover),
            None => (self.name_of_fixed(group, &pair), Separation::Meet),
        };
        let (nominal_m, points_m) = match apart {
            Separation::Apart(gap) if gap.lower > 0.0 => {
                (gap.lower, Some((gap.on_moving, gap.on_fixed)))
            }
            _ => (0.0, None),
        };
        HerePair {
            moving: self.prepared.movers.solids[pair.solid].name.clone(),
            fixed,
            door: state_of(group),
            margin_m: pair.margin_m,
            worst_m: listed.apart_m,
            nominal_m,
            points_m,
            state: listed.state,
            as_parked: pair.as_parked,
            first_breach_m: pair.first_breach_m,
            first_touch_m: pair.first_touch_m,
        }
    }

    /// The fixed solid of a pair as drawn: its name, and how far the mover as drawn is from it. Of
    /// a running door or opener the nearest part.
    fn nearest_drawn(&mut self, group: usize, pair: &Pair, mover: &Body) -> (String, Separation) {
        let of_opener = match pair.against {
            Against::One(fixed) => {
                let body = &self.nominal[group].bodies[fixed].body;
                let apart = self.solver.gap(mover, DVec3::ZERO, body);
                return (self.name_of_fixed(group, pair), apart);
            }
            Against::RunningDoor => false,
            Against::RunningOpener => true,
        };
        let mut nearest: Option<(&str, Separation)> = None;
        for part in self.door.iter().flat_map(|door| &door.parts) {
            if part.of_opener != of_opener {
                continue;
            }
            let apart = self.solver.gap(mover, DVec3::ZERO, &part.body);
            if nearest.is_none_or(|(_, known)| distance_m(apart) < distance_m(known)) {
                nearest = Some((&part.name, apart));
            }
        }
        match nearest {
            Some((name, apart)) => (name.to_owned(), apart),
            None => (self.name_of_fixed(group, pair), Separation::Meet),
        }
    }

    fn name_of_fixed(&self, group: usize, pair: &Pair) -> String {
        let set = group_list(&self.prepared)[group];
        let fixed = match pair.against {
            Against::One(fixed) => fixed,
            // Any part of the envelope.
            Against::RunningDoor | Against::RunningOpener => {
                self.ways[group].ways[pair.ways.start].fixed
            }
        };
        set.solids[set.bodies[fixed].solid].name.clone()
    }
}

fn distance_m(apart: Separation) -> f64 {
    match apart {
        Separation::Meet => 0.0,
        Separation::Apart(gap) => gap.lower,
    }
}
