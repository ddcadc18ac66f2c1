//! From findings to the report's own types, each number rounded against the vehicle.

use glam::DVec3;

use super::number::{down, nearest, up};
use super::sections::section;
use super::*;
use crate::bay::{Bay, DoorHeld};
use crate::clearance::{
    ArmFinding, DoorFinding, Limit, LockFinding, PairFinding, StandingFinding, Study, Withheld,
};
use crate::ground::slab::holds_from;
use crate::report::reasons::reason;
use crate::report::{CAUTIONS, Need, NeedFinding, Report, Short, Show};

pub(super) fn check_report(report: &Report<'_>) -> CheckReport {
    let study = report.study;
    let show = Show {
        units: report.bay.units,
    };
    CheckReport {
        schema_version: SCHEMA_VERSION,
        program: Program {
            name: "bayrise".into(),
            version: env!("CARGO_PKG_VERSION").into(),
            input_fingerprint: report.fingerprint.into(),
            ages_counted_to: report.counted_to(),
        },
        bay: Subject {
            title: report.bay.title.clone(),
            lift: report.bay.lift.name.clone(),
            vehicle: report.bay.vehicle.name.clone(),
            units: report.bay.units.into(),
        },
        verdict: verdict(report),
        not_measured: study.not_measured().to_vec(),
        needs: report.needs.iter().map(need).collect(),
        locks: study.locks.iter().map(lock).collect(),
        doors: DoorsReport {
            shut: door(&study.doors.shut),
            open: door(&study.doors.open),
            running: door(&study.doors.running),
        },
        door_may_run_when_down: study.doors.may_run_when_down,
        pairs: study.pairs.iter().map(pair).collect(),
        tight_as_parked: told(study, study.tight_as_parked.iter().map(pair)),
        standing: study.standing.iter().map(standing).collect(),
        door_in_ceiling: study.door_in_ceiling.iter().map(standing).collect(),
        stand_up: StandUpReport {
            needs_m: up(study.stand_up.needs_m),
            ceiling_at_posts_m: down(study.stand_up.ceiling_at_posts_m),
            highest_ceiling_m: down(study.stand_up.highest_ceiling_m),
        },
        carried: told(
            study,
            study.carried.iter().map(|c| ContactReport {
                part: c.part.clone(),
                vehicle: c.vehicle.clone(),
                clearance_m: down(c.clearance_m),
            }),
        ),
        driving_in: told(study, study.driving_in.iter().map(pair)),
        arms: study.arms.iter().map(|one| arm(study, one)).collect(),
        bar: study.bar.as_ref().map(|bar| BarReport {
            trips_at_m: bar.trips_at_m.and_then(down),
            by: bar.by.clone(),
            met_before: bar.met_before.clone().map(Into::into),
        }),
        opening_parts: study
            .opening_parts
            .iter()
            .map(|part| OpeningReport {
                name: part.name.clone(),
                opens_rad: down(part.opens_rad),
                at_locks_rad: part.at_locks_rad.iter().map(|a| down(*a)).collect(),
            })
            .collect(),
        phases: PhasesReport {
            touch_m: study.phases.touch_m.map(nearest),
            carry_m: up(study.phases.carry_m),
            carry_worst_m: up(study.phases.carry_worst_m),
            lift_off_m: study.phases.lift_off_m.map(nearest),
        },
        rating: RatingReport {
            mass_kg: study.rating.mass_kg.and_then(up),
            capacity_kg: down(study.rating.capacity_kg),
        },
        loose_pad: study.loose_pad.map(|(corner, gap)| LoosePadReport {
            corner: corner.into(),
            gap_m: up(gap),
        }),
        sections: study
            .sections
            .iter()
            .map(|one| section(one, show))
            .collect(),
        estimate: study.estimate.as_ref().map(|estimate| EstimateReport {
            samples: estimate.samples,
            seed: estimate.seed,
            locks: estimate
                .locks
                .iter()
                .map(|share| LockShareReport {
                    clear: share.clear,
                    low: down(share.low),
                    high: down(share.high.min(0.999_999)),
                })
                .collect(),
        }),
        policy: policy(report.bay, study),
        uncertainty: uncertainty(study),
        warnings: report
            .warnings
            .iter()
            .map(|w| WarningReport {
                message: w.message.clone(),
                place: w.place.clone(),
                help: w.help.clone(),
            })
            .collect(),
        cautions: CAUTIONS.map(Into::into).into(),
    }
}

fn verdict(report: &Report<'_>) -> Verdict {
    let study = report.study;
    let safe = study.highest_safe_lock;
    let pads = study.locks.iter().find(|l| Some(l.lock) == safe);
    // Marks are for a clear lock; as an answer they are given only for a safe one.
    let marks = study.marks.filter(|m| Some(m.lock) == safe);
    let show = Show {
        units: report.bay.units,
    };
    Verdict {
        highest_safe_lock: safe,
        holds_from: holds_from(&study.sections)
            .filter(|_| study.not_measured().is_empty())
            .map(|day| day.to_string()),
        highest_clear_lock: study.highest_clear_lock,
        nominal_clear_lock: study.nominal_clear_lock,
        highest_releasable_lock: study.highest_releasable_lock,
        withheld: study.withheld.iter().map(|w| withheld(w, show)).collect(),
        unknown: study
            .unknown
            .iter()
            .map(|u| UnknownReport {
                check: (*u).into(),
                says: u.words().into(),
            })
            .collect(),
        pad_height_m: pads.and_then(|l| down(l.pad_height_m)),
        stop_mark_m: marks.and_then(|m| nearest(m.stop_m)),
        never_above_m: marks.and_then(|m| m.never_above_m).and_then(down),
        stop_travel_m: marks.and_then(|m| nearest(m.stop_travel_m)),
        full_rise: study.full_rise,
        door: study.headline_door.into(),
        door_is_held: study.door_is_held,
        limited_by: limit(&study.limit),
    }
}

fn limit(limit: &Limit) -> LimitReport {
    let (pair, travel_m) = match limit {
        Limit::Pair(pair) | Limit::Bar(pair) | Limit::Undecided(pair) => (Some(pair), None),
        Limit::Travel { travel_m } => (None, down(*travel_m)),
        Limit::Withheld => (None, None),
    };
    LimitReport {
        kind: limit.into(),
        moving: pair.map(|p| p.moving.clone()),
        fixed: pair.map(|p| p.fixed.clone()),
        margin_m: pair.and_then(|p| up(p.margin_m)),
        first_breach_m: pair.and_then(|p| p.first_breach_m).and_then(down),
        first_touch_m: pair.and_then(|p| p.first_touch_m).and_then(down),
        points_m: pair.and_then(|p| points(p.points_m)),
        travel_m,
    }
}

/// Both points, or none when any coordinate is no number.
fn points(points: Option<(DVec3, DVec3)>) -> Option<[[f64; 3]; 2]> {
    let (moving, fixed) = points?;
    let point = |p: DVec3| Some([nearest(p.x)?, nearest(p.y)?, nearest(p.z)?]);
    Some([point(moving)?, point(fixed)?])
}

fn withheld(withheld: &Withheld, show: Show) -> WithheldReport {
    let (about, short): (Vec<String>, Option<f64>) = match withheld {
        Withheld::ArmDoesNotReach {
            corner,
            shortfall_m: short,
        }
        | Withheld::PadStartsTooHigh {
            corner,
            excess_m: short,
        }
        | Withheld::LoosePad {
            corner,
            gap_m: short,
        } => (vec![corner.name().into()], Some(*short)),
        Withheld::DoesNotStand {
            part: one,
            meets: other,
            shortfall_m: short,
        }
        | Withheld::CannotDriveIn {
            moving: one,
            fixed: other,
            shortfall_m: short,
        }
        | Withheld::TightAsParked {
            moving: one,
            fixed: other,
            shortfall_m: short,
        } => (vec![one.clone(), other.clone()], Some(*short)),
        Withheld::CannotBeStoodUp { shortfall_m } => (Vec::new(), Some(*shortfall_m)),
        Withheld::CarriedPartsTouch { part, vehicle } => {
            (vec![part.clone(), vehicle.clone()], None)
        }
        Withheld::Ground { topic, figure } => (
            vec![topic.heading().into(), figure.id.clone().into_owned()],
            None,
        ),
        Withheld::NotMeasured { what } => (what.clone(), None),
        Withheld::OverRating { .. } | Withheld::NoMarkFits => (Vec::new(), None),
    };
    let reason = reason(withheld, show);
    WithheldReport {
        reason: withheld.into(),
        says: reason.says,
        cure: reason.cure.into_owned(),
        about,
        short_m: short.and_then(up),
    }
}

fn need(finding: &NeedFinding) -> NeedReport {
    let (lock, underbody_m) = match finding.need {
        Need::Lock(lock) => (Some(lock), None),
        Need::Underbody(height) => (None, up(height.m())),
    };
    let (short_locks, short_m) = match finding.short {
        Some(Short::Locks(n)) => (Some(n), None),
        Some(Short::Height(by)) => (None, up(by.m())),
        Some(Short::NoSafeLock | Short::OnlySoMany(_)) | None => (None, None),
    };
    NeedReport {
        lock,
        underbody_m,
        met: finding.is_met(),
        short_locks,
        short_m,
    }
}

fn lock(lock: &LockFinding) -> LockReport {
    let near = lock.near.as_ref();
    LockReport {
        lock: lock.lock,
        travel_m: nearest(lock.travel_m),
        pad_height_m: down(lock.pad_height_m),
        state: lock.state.into(),
        clearance_m: near.and_then(|n| down(n.clearance_m)),
        between: near.map(|n| [n.moving.clone(), n.fixed.clone()]),
        margin_m: near.and_then(|n| up(n.margin_m)),
        overlap_m: near.and_then(|n| n.overlap_m).and_then(up),
        because: lock.because.clone().map(Into::into),
        underbody_m: down(lock.underbody_m),
        tyre_m: down(lock.tyre_m),
        door_may_run: lock.door_may_run,
    }
}

fn door(door: &DoorFinding) -> DoorReport {
    DoorReport {
        highest_safe_lock: door.highest_safe_lock,
        highest_clear_lock: door.highest_clear_lock,
        states: door.locks.iter().map(|s| (*s).into()).collect(),
        first_short: door.first_short.as_ref().map(pair),
    }
}

fn pair(pair: &PairFinding) -> PairReport {
    PairReport {
        moving: pair.moving.clone(),
        fixed: pair.fixed.clone(),
        door: pair.door.map(Into::into),
        margin_m: up(pair.margin_m),
        clearance_m: down(pair.clearance_m),
        overlap_m: pair.overlap_m.and_then(up),
        first_breach_m: pair.first_breach_m.and_then(down),
        first_touch_m: pair.first_touch_m.and_then(down),
        points_m: points(pair.points_m),
    }
}

fn standing(finding: &StandingFinding) -> StandingReport {
    StandingReport {
        part: finding.part.clone(),
        other: finding.other.clone(),
        room_m: down(finding.room_m),
        overlap_m: finding.overlap_m.and_then(up),
        worst_m: down(finding.worst_m),
    }
}

/// Things that are found fault with; none where that there is none hangs on what was not measured.
fn told<T>(study: &Study, found: impl Iterator<Item = T>) -> Option<Vec<T>> {
    let found: Vec<T> = found.collect();
    (!found.is_empty() || study.not_measured().is_empty()).then_some(found)
}

fn arm(study: &Study, arm: &ArmFinding) -> ArmReport {
    // That it reaches is not known of what was not measured.
    let is_known = |shortfall_m: &f64| *shortfall_m > 0.0 || study.not_measured().is_empty();
    let short = |shortfall_m: f64| Some(shortfall_m).filter(is_known).and_then(up);
    ArmReport {
        corner: arm.corner.into(),
        reach_m: nearest(arm.reach_m),
        swing_rad: nearest(arm.swing_rad),
        shortfall_m: short(arm.shortfall_m),
        worst_shortfall_m: short(arm.worst_shortfall_m),
        why: arm.why.clone(),
    }
}

fn policy(bay: &Bay, study: &Study) -> PolicyReport {
    let policy = &study.policy;
    PolicyReport {
        over_vehicle_m: up(policy.over_vehicle.m()),
        beside_vehicle_m: up(policy.beside_vehicle.m()),
        beside_post_m: up(policy.beside_post.m()),
        lift_parts_m: up(policy.lift_parts.m()),
        under_bar_m: up(policy.under_bar.m()),
        loose_pad_m: up(policy.loose_pad.m()),
        inside_pads_m: up(policy.inside_pads.m()),
        door_held: policy.door_held.map(|held| match held {
            DoorHeld::Shut => DoorStateWord::Shut,
            DoorHeld::Open => DoorStateWord::Open,
        }),
        people: policy
            .people
            .iter()
            .map(|p| PersonReport {
                name: p.name.clone(),
                height_m: up(p.height.m()),
            })
            .collect(),
        set_overtravel_m: up(bay.lift.set_overtravel.m()),
        release_overtravel_m: up(bay.lift.release_overtravel.m()),
        overshoot_m: up(bay.lift.overshoot.m()),
    }
}

fn uncertainty(study: &Study) -> UncertaintyReport {
    let trust = &study.uncertainty;
    UncertaintyReport {
        garage_m: up(trust.garage_m),
        lift_m: up(trust.lift_m),
        vehicle_m: up(trust.vehicle_m),
        loose_pad_m: up(trust.loose_pad_m),
        mismatch_m: up(trust.mismatch_m),
        parking_along_m: up(trust.parking.along_m),
        parking_across_m: up(trust.parking.across_m),
        parking_yaw_rad: up(trust.parking.yaw_rad),
    }
}
