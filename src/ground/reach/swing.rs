//! Can the arms be swung in under the vehicle as it stands on its tyres?
//!
//! Each arm starts where it is parked for driving in, at its shortest, its pad screwed down and
//! bare. A few ways in are tried, each bounded by what the arm covers on it; what they run into is
//! the vehicle, the columns and plates, walls and what stands about, and the other arms, parked or
//! already in place. A way that is found is a way; where none of these is, another may be.

use std::f64::consts::FRAC_PI_6;

use super::order::{Clear, Plan, plan};
use super::scene::{Room, Sweep, Target, Thing, View};
use crate::bay::Corner;
use crate::clearance::gap::Solver;
use crate::solids::arms;

/// How far past its place an arm is swung, to be drawn out and swung back, radians.
const PAST_RAD: [f64; 4] = [-0.5 * FRAC_PI_6, 0.5 * FRAC_PI_6, -FRAC_PI_6, FRAC_PI_6];

/// A way to bring an arm in.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Way {
    /// Swung in at its shortest, then drawn out.
    InThenOut,
    /// Drawn out where it is parked, then swung in.
    OutThenIn,
    /// Drawn out half of the way, swung in, drawn out the rest.
    HalfOut,
    /// Swung in at its shortest to another swing (radians), drawn out, and swung to its place.
    Past(f64),
}

/// The ways that are tried, in words.
pub const WAYS: &str = "swung in short and drawn out, drawn out and swung in, drawn out half way \
                        first, and swung up to 30 deg past its place and back";

/// What was found.
#[derive(Debug, Clone, PartialEq)]
pub enum SwingIn {
    /// All four go in.
    Found {
        /// The way of each, by [`Corner::index`], with the vehicle as parked.
        ways: [Way; 4],
        /// The order in which they must go; none when any will do.
        order: Option<[Corner; 4]>,
        /// True when the same way does wherever the driver may stop; else a way was found for the
        /// vehicle as parked and for each corner of where it may stop, not always the same.
        is_everywhere: bool,
    },
    /// Of the ways tried none brings this arm in.
    NotFound {
        /// Which arm.
        corner: Corner,
        /// What it meets when it is swung in at its shortest.
        meets: String,
        /// True when all went in with the vehicle as parked, but not where else the driver may
        /// stop.
        as_parked: bool,
    },
}

/// Looks for a way in: at once for wherever the driver may stop, and where that fails for the
/// vehicle as parked and at each corner of where it may stop.
pub(super) fn swing_in(room: &Room<'_>, solver: &mut Solver) -> SwingIn {
    let of_each = |rest, solver: &mut Solver| Ways::new(room, room.in_place(rest)).find(solver);
    if let Some((ways, order)) = Ways::new(room, room.everywhere()).straight(solver) {
        return SwingIn::Found {
            ways,
            order,
            is_everywhere: true,
        };
    }
    let mut as_parked = None;
    for (index, rest) in room.rests.iter().enumerate() {
        match of_each(*rest, solver) {
            Ok(found) if index == 0 => as_parked = Some(found),
            Ok(_) => {}
            Err((corner, meets)) => {
                return SwingIn::NotFound {
                    corner,
                    meets,
                    as_parked: index > 0,
                };
            }
        }
    }
    match as_parked {
        Some((ways, order)) => SwingIn::Found {
            ways,
            order,
            is_everywhere: room.rests.len() == 1,
        },
        // There is always the vehicle as parked.
        None => SwingIn::NotFound {
            corner: Corner::FrontLeft,
            meets: "nothing known".into(),
            as_parked: false,
        },
    }
}

struct Ways<'r, 'b> {
    room: &'r Room<'b>,
    view: View,
    parked: [[Thing; 2]; 4],
    placed: [[Thing; 2]; 4],
}

impl<'r, 'b> Ways<'r, 'b> {
    fn new(room: &'r Room<'b>, view: View) -> Self {
        let parked = Corner::ALL.map(|corner| {
            let arm = &room.bay.lift.arms[corner.index()];
            let (swing, shortest) = (arms::parked_swing(room.bay, corner), arm.shortest.m());
            room.standing(
                corner,
                Sweep {
                    swings: [swing; 2],
                    near: shortest,
                    far: shortest,
                },
            )
        });
        let placed = Corner::ALL.map(|corner| {
            let target = view.targets[corner.index()];
            room.standing(corner, target.in_place())
        });
        Self {
            room,
            view,
            parked,
            placed,
        }
    }

    /// Every arm by the first way, in any order: the usual case, in one look.
    fn straight(&self, solver: &mut Solver) -> Option<Plan> {
        for corner in Corner::ALL {
            let others = Corner::ALL.into_iter().filter(|&other| other != corner);
            let things: Vec<&Thing> = self
                .still(corner)
                .chain(others.flat_map(|other| {
                    let index = other.index();
                    self.parked[index].iter().chain(&self.placed[index])
                }))
                .collect();
            if self.met(corner, Way::InThenOut, &things, solver).is_some() {
                return None;
            }
        }
        Some(([Way::InThenOut; 4], None))
    }

    /// Every way of every arm, in every order.
    fn find(&self, solver: &mut Solver) -> Result<Plan, (Corner, String)> {
        if let Some(plan) = self.straight(solver) {
            return Ok(plan);
        }
        let mut open: Vec<Vec<Clear>> = Vec::with_capacity(4);
        for corner in Corner::ALL {
            let still: Vec<&Thing> = self.still(corner).collect();
            let mut clear = Vec::new();
            let mut first_met = None;
            for way in self.ways(corner) {
                match self.met(corner, way, &still, solver) {
                    None => clear.push(self.clear_of_others(corner, way, solver)),
                    Some(met) => first_met = first_met.or(Some(met)),
                }
            }
            if clear.is_empty() {
                let name = first_met.map_or_else(String::new, |met| still[met].name.to_string());
                return Err((corner, name));
            }
            open.push(clear);
        }
        plan(&open).ok_or_else(|| {
            // Each gets past everything but the other arms: name the first that meets one.
            let meets = |corner: &Corner| {
                open[corner.index()].iter().all(|clear| {
                    let in_way = |other: usize| !clear.of_parked[other] && !clear.of_placed[other];
                    (0..4).any(in_way)
                })
            };
            let corner = Corner::ALL
                .into_iter()
                .find(meets)
                .unwrap_or(Corner::FrontLeft);
            (corner, "another arm".to_owned())
        })
    }

    fn still(&self, corner: Corner) -> impl Iterator<Item = &Thing> {
        let room = self.room.still(corner.side());
        self.view.vehicle.iter().chain(room)
    }

    /// The ways an arm can go, within its limits.
    fn ways(&self, corner: Corner) -> Vec<Way> {
        let arm = &self.room.bay.lift.arms[corner.index()];
        let target = self.view.targets[corner.index()];
        let mut ways = vec![Way::InThenOut, Way::OutThenIn, Way::HalfOut];
        for past in PAST_RAD {
            let from = if past < 0.0 {
                target.least
            } else {
                target.most
            };
            let swing = from + past;
            if (arm.swing_min.rad()..=arm.swing_max.rad()).contains(&swing) {
                ways.push(Way::Past(swing));
            }
        }
        ways
    }

    /// What an arm first meets on its way, by index.
    fn met(
        &self,
        corner: Corner,
        way: Way,
        things: &[&Thing],
        solver: &mut Solver,
    ) -> Option<usize> {
        self.sweeps(corner, way)
            .into_iter()
            .find_map(|sweep| self.room.first_met(corner, sweep, things, solver))
    }

    /// What an arm covers on its way, from where it is parked to its place.
    fn sweeps(&self, corner: Corner, way: Way) -> Vec<Sweep> {
        let bay = self.room.bay;
        let parked = arms::parked_swing(bay, corner);
        let shortest = bay.lift.arms[corner.index()].shortest.m();
        let target = self.view.targets[corner.index()];
        let Target { near, far, .. } = target;
        let between = |swings: [f64; 2], near: f64, far: f64| Sweep { swings, near, far };
        // From a swing to anywhere it may be wanted.
        let home = |from: f64| [target.least.min(from), target.most.max(from)];
        let span = [target.least, target.most];
        match way {
            Way::InThenOut => vec![
                between(home(parked), shortest, shortest),
                between(span, shortest.min(near), far),
            ],
            Way::OutThenIn => vec![
                between([parked; 2], shortest.min(near), far),
                between(home(parked), near, far),
            ],
            Way::HalfOut => {
                let half = 0.5 * (shortest + near);
                vec![
                    between([parked; 2], shortest.min(half), half.max(shortest)),
                    between(home(parked), half, half),
                    between(span, half.min(near), far),
                ]
            }
            Way::Past(swing) => vec![
                between([parked.min(swing), parked.max(swing)], shortest, shortest),
                between([swing; 2], shortest.min(near), far),
                between(home(swing), near, far),
            ],
        }
    }

    fn clear_of_others(&self, corner: Corner, way: Way, solver: &mut Solver) -> Clear {
        let mut clear = Clear {
            way,
            of_parked: [true; 4],
            of_placed: [true; 4],
        };
        for other in Corner::ALL.into_iter().filter(|&other| other != corner) {
            let index = other.index();
            let mut is_clear = |of: &[Thing; 2]| {
                let things: Vec<&Thing> = of.iter().collect();
                self.met(corner, way, &things, solver).is_none()
            };
            clear.of_parked[index] = is_clear(&self.parked[index]);
            clear.of_placed[index] = is_clear(&self.placed[index]);
        }
        clear
    }
}

#[cfg(test)]
mod tests;
