//! What is kept of one combination?

use super::bill::Bill;
use super::inverse::Inverse;
use crate::bay::{Bay, Side};
use crate::bayfile::options::Pick;
use crate::clearance::{Verdict, WayKind};
use crate::diagnostics::Diagnostic;
use crate::ground::{Bound, Standing, Topic};

/// One combination and what became of it.
#[derive(Debug)]
pub struct Cell {
    /// Which options.
    pub pick: Pick,
    /// What became of it.
    pub outcome: Outcome,
}

impl Cell {
    /// What was found; none where the combination makes no bay that can be studied.
    #[must_use]
    pub fn found(&self) -> Option<&Found> {
        match &self.outcome {
            Outcome::Found(found) => Some(found),
            _ => None,
        }
    }
}

/// What became of a combination.
#[derive(Debug)]
pub enum Outcome {
    /// It was studied.
    Found(Box<Found>),
    /// It makes no valid bay.
    Broken(Vec<Diagnostic>),
    /// The vehicle can't be set on the pads.
    NotStudied(String),
}

/// What was found of a combination.
#[derive(Debug)]
pub struct Found {
    /// The bay.
    pub bay: Bay,
    /// The verdict on it: what `check` says of the same bay.
    pub verdict: Verdict,
    /// What it costs.
    pub bill: Bill,
    /// The answers asked the other way round, where they were asked for.
    pub inverse: Option<Inverse>,
}

/// Whether the arms reach.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Arms {
    /// Every arm reaches its lift point at the worst, and nothing stops them there.
    Reach,
    /// The worst falls short by so much, metres.
    Short(f64),
    /// They reach, but something else about arms and pads stops.
    Stopped,
    /// Not known in full.
    NotKnown,
}

/// How wide one can walk along the vehicle on its tyres.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Walking {
    /// Width, metres, worst case.
    pub width_m: f64,
    /// On which side of the bay.
    pub side: Side,
}

impl Found {
    /// Height under the body on the highest safe lock, metres.
    #[must_use]
    pub fn underbody_m(&self) -> Option<f64> {
        self.of_lock(self.verdict.highest_safe_lock?)
    }

    /// Height under the body on a lock, metres.
    #[must_use]
    pub fn of_lock(&self, lock: usize) -> Option<f64> {
        let found = self.verdict.locks.iter().find(|one| one.lock == lock)?;
        Some(found.underbody_m)
    }

    /// How a section stands; unknown where there is none.
    #[must_use]
    pub fn standing(&self, topic: Topic) -> Standing {
        let section = self.verdict.section(topic);
        section.map_or(Standing::Unknown, crate::ground::Section::standing)
    }

    /// Whether the arms reach.
    #[must_use]
    pub fn arms(&self) -> Arms {
        let worst = self
            .verdict
            .arms
            .iter()
            .map(|arm| arm.worst_shortfall_m)
            .fold(0.0, |worst, short| {
                if short.is_nan() || short > worst {
                    short
                } else {
                    worst
                }
            });
        if worst.is_nan() || worst > 0.0 {
            return Arms::Short(worst);
        }
        match self.standing(Topic::Reach) {
            Standing::Passes => Arms::Reach,
            // Where nothing was asked nothing is shown.
            Standing::Noted | Standing::Unknown => Arms::NotKnown,
            Standing::Stops => Arms::Stopped,
        }
    }

    /// The largest share of a rating that is used: the vehicle of the lift's, the heaviest pad of
    /// its arm's, and where the posts have one of their own the heavier post of it. None where the
    /// loads are not known.
    #[must_use]
    pub fn load_use(&self) -> Option<f64> {
        if !self.verdict.not_measured().is_empty() {
            return None;
        }
        let loads = self.verdict.section(Topic::Loads)?;
        let uses: Vec<f64> = loads
            .figures
            .iter()
            .filter(|figure| {
                let is_rated = figure.limit.is_some();
                figure.id == "total"
                    || figure.id.starts_with("pad_load.")
                    || figure.id.starts_with("post_load.") && is_rated
            })
            .map(|figure| match (&figure.found, &figure.limit) {
                (Some(found), Some((Bound::AtMost, limit))) => {
                    found.number().unwrap_or(f64::NAN) / limit.number().unwrap_or(f64::NAN)
                }
                _ => f64::NAN,
            })
            .collect();
        // One that is no number leaves all of it unknown.
        if uses.len() < 5 || uses.iter().any(|one| !one.is_finite()) {
            return None;
        }
        uses.into_iter().reduce(f64::max)
    }

    /// How the slab stands to what is asked of it.
    #[must_use]
    pub fn slab(&self) -> Standing {
        self.standing(Topic::Slab)
    }

    /// The wider of both ways along the vehicle, past its post on the inner or the outer side.
    #[must_use]
    pub fn walking(&self) -> Option<Walking> {
        if !self.verdict.not_measured().is_empty() {
            return None;
        }
        let width = |kind: WayKind| {
            let ways = &self.verdict.ways;
            ways.iter().find(|way| way.kind == kind).map(|w| w.width_m)
        };
        let along = |side: Side| {
            let inner = width(WayKind::VehicleToPost(side))?;
            let outer = width(WayKind::BehindPost(side)).unwrap_or(0.0);
            let beside = width(WayKind::BesideVehicle(side))?;
            Some(Walking {
                width_m: beside.min(inner.max(outer)),
                side,
            })
        };
        match (along(Side::Left), along(Side::Right)) {
            (Some(left), Some(right)) if right.width_m > left.width_m => Some(right),
            (Some(left), _) => Some(left),
            (None, right) => right,
        }
    }
}
