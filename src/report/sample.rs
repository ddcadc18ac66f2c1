//! A finished study made by hand, for the tests of the presenters.

use glam::DVec3;

use crate::bay::{Corner, Policy};
use crate::clearance::uncertainty::Uncertainty;
use crate::clearance::*;
use crate::ground::Topic;
use crate::solids::ParkingError;

fn pair() -> PairFinding {
    PairFinding {
        moving: "vehicle/roof 3".into(),
        fixed: "door/panel 4".into(),
        door: Some(DoorState::Open),
        margin_m: 0.0762,
        clearance_m: 0.0,
        overlap_m: Some(0.0301),
        first_breach_m: Some(0.6604),
        first_touch_m: Some(0.7366),
        points_m: Some((DVec3::new(0.1, 3.0, 2.6), DVec3::new(0.1, 3.0, 2.6762))),
    }
}

fn lock(lock: usize, state: LockState, clearance_m: f64, overlap_m: Option<f64>) -> LockFinding {
    #[allow(clippy::cast_precision_loss)] // a handful of locks
    let travel_m = 0.3048 + 0.1016 * (lock - 1) as f64;
    LockFinding {
        lock,
        travel_m,
        pad_height_m: travel_m + 0.1778,
        state,
        because: (state != LockState::Clear && state != LockState::NotLifting)
            .then(|| ("vehicle/roof 3".into(), "door/panel 4".into())),
        near: (state != LockState::NotLifting).then(|| NearFinding {
            moving: "vehicle/roof 3".into(),
            fixed: "door/panel 4".into(),
            clearance_m,
            margin_m: 0.0762,
            overlap_m,
        }),
        underbody_m: travel_m + 0.05,
        tyre_m: travel_m - 0.1,
        top_m: travel_m + 1.7,
        door_may_run: lock < 3,
    }
}

fn door(state: DoorState, highest: Option<usize>) -> DoorFinding {
    DoorFinding {
        state,
        highest_clear_lock: highest,
        highest_safe_lock: highest,
        locks: vec![
            LockState::NotLifting,
            LockState::Clear,
            LockState::Clear,
            LockState::Tight,
            LockState::Strikes,
        ],
        first_breach_m: (state != DoorState::Shut)
            .then(|| pair().first_breach_m)
            .flatten(),
        undecided_m: None,
        first_short: (state != DoorState::Shut).then(pair),
    }
}

/// Five locks; lock 3 is safe; the roof meets the open door above it.
pub(super) fn study() -> Study {
    Study {
        headline_door: DoorState::Open,
        door_is_held: false,
        locks: vec![
            lock(1, LockState::NotLifting, 0.5, None),
            lock(2, LockState::Clear, 0.2000007, None),
            lock(3, LockState::Clear, 0.0984, None),
            lock(4, LockState::Tight, 0.0254, None),
            lock(5, LockState::Strikes, 0.0, Some(0.0301)),
        ],
        highest_clear_lock: Some(3),
        highest_safe_lock: Some(3),
        nominal_clear_lock: Some(4),
        full_rise: false,
        highest_releasable_lock: Some(5),
        limit: Limit::Pair(pair()),
        withheld: Vec::new(),
        sections: Vec::new(),
        unknown: vec![Unknown::VehicleMass, Unknown::Section(Topic::Slab)],
        marks: Some(Marks {
            lock: 3,
            stop_m: 1.4351,
            never_above_m: Some(1.547_812_5),
            stop_travel_m: 0.5207,
        }),
        doors: Doors {
            shut: door(DoorState::Shut, Some(5)),
            open: door(DoorState::Open, Some(3)),
            running: door(DoorState::Running, None),
            may_run_when_down: true,
        },
        pairs: vec![pair()],
        tight_as_parked: Vec::new(),
        standing: vec![StandingFinding {
            part: "lift/overhead beam".into(),
            other: "shell/ceiling".into(),
            room_m: 0.0254,
            overlap_m: None,
            worst_m: 0.0144,
        }],
        door_in_ceiling: Vec::new(),
        stand_up: StandUp {
            needs_m: 3.62,
            ceiling_at_posts_m: 3.6576,
            highest_ceiling_m: 3.6576,
        },
        carried: Vec::new(),
        driving_in: Vec::new(),
        arms: Corner::ALL.map(|corner| ArmFinding {
            corner,
            reach_m: 0.9,
            swing_rad: 0.5,
            shortfall_m: 0.0,
            worst_shortfall_m: 0.0,
            pad_off_m: 0.0,
            why: None,
        }),
        bar: Some(BarFinding {
            trips_at_m: Some(0.9),
            by: Some("vehicle/roof 3".into()),
            met_before: Some(("vehicle/roof 3".into(), "door/panel 4".into())),
            is_surely_before: true,
        }),
        opening_parts: vec![OpeningFinding {
            name: "hood".into(),
            opens_rad: 0.96,
            at_locks_rad: vec![0.96, 0.96, 0.7, 0.0, 0.0],
        }],
        access: Access::default(),
        phases: PhasesFound {
            touch_m: [0.2286, 0.2286, 0.2413, 0.2413],
            carry_m: 0.2413,
            carry_worst_m: 0.2573,
            lift_off_m: [0.33, 0.36],
        },
        rating: RatingFinding {
            mass_kg: Some(2358.7),
            capacity_kg: 4535.9237,
        },
        loose_pad: None,
        estimate: None,
        policy: Policy::default(),
        uncertainty: Uncertainty {
            garage_m: 0.006,
            lift_m: 0.002,
            vehicle_m: 0.006,
            pad_top_m: 0.004,
            loose_pad_m: 0.003,
            mismatch_m: 0.012,
            posts_m: DVec3::ZERO,
            carried_m: glam::DVec2::ZERO,
            leaning: None,
            parking: ParkingError {
                across_m: 0.0254,
                along_m: 0.0508,
                yaw_rad: 0.0087,
            },
            askew: 0.0087,
        },
    }
}

/// Lock 3 is clear, but an arm does not reach.
pub(super) fn withheld() -> Study {
    let mut study = study();
    study.highest_safe_lock = None;
    study.limit = Limit::Withheld;
    study.withheld = vec![Withheld::ArmDoesNotReach {
        corner: Corner::RearLeft,
        shortfall_m: 0.02,
    }];
    let arm = &mut study.arms[Corner::RearLeft.index()];
    arm.worst_shortfall_m = 0.02;
    arm.why = Some("the lift point lies farther than the arm's longest reach".into());
    for door in [
        &mut study.doors.shut,
        &mut study.doors.open,
        &mut study.doors.running,
    ] {
        door.highest_safe_lock = None;
    }
    study
}

/// Nothing is clear: the door stops the first lock that lifts. With the door shut lock 2 is clear.
pub(super) fn none_clear() -> Study {
    let mut study = study();
    for finding in &mut study.locks[1..] {
        finding.state = LockState::Strikes;
        if let Some(near) = &mut finding.near {
            near.clearance_m = 0.0;
            near.overlap_m = Some(0.0301);
        }
    }
    study.highest_safe_lock = None;
    study.highest_clear_lock = None;
    study.nominal_clear_lock = None;
    study.marks = None;
    study.doors.open = door(DoorState::Open, None);
    study.doors.shut = door(DoorState::Shut, Some(2));
    study
}
