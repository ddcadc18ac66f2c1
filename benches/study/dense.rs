//! A dense bay made for timing: 24 vehicle parts, 60 obstacles, 20 locks. Deterministic.

use super::{
    Body, DQuat, DVec3, Fixed, LockWindows, Moving, Policy, Pose, Role, Solid, Together, Workspace,
    highest_clear, rule,
};

/// The dense bay, prepared.
pub(crate) struct Dense {
    vehicle: Vec<Solid>,
    obstacles: Vec<Solid>,
    moving: Vec<Moving>,
    fixed: Vec<Fixed>,
    locks: LockWindows,
    policy: Policy,
}

const TRAVEL_M: f64 = 1.9;

/// A small generator of evenly spread numbers (SplitMix64), so that the bay is the same on every
/// machine.
struct Spread(u64);

impl Spread {
    fn between(&mut self, low: f64, high: f64) -> f64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        z ^= z >> 31;
        low + (high - low) * (z >> 11) as f64 / (1u64 << 53) as f64
    }
}

impl Dense {
    /// Builds it.
    pub(crate) fn new() -> Self {
        let mut spread = Spread(7);
        let mut vehicle = Vec::new();
        // Twelve slices of a body, lower prism and upper prism each.
        for slice in 0..12 {
            let y = |k: usize| -2.7 + 0.45 * k as f64;
            let top = |k: usize| 1.2 + 0.6 * (std::f64::consts::PI * k as f64 / 12.0).sin();
            let ring = |k: usize, low: f64, high: f64, half_low: f64, half_high: f64| {
                [
                    DVec3::new(-half_low, y(k), low),
                    DVec3::new(half_low, y(k), low),
                    DVec3::new(-half_high, y(k), high),
                    DVec3::new(half_high, y(k), high),
                ]
            };
            for (part, low, half) in [("side", 0.3, (0.95, 0.95)), ("roof", 1.0, (0.95, 0.7))] {
                let high = |k: usize| if part == "side" { 1.0 } else { top(k) };
                let mut vertices = ring(slice, low, high(slice), half.0, half.1).to_vec();
                vertices.extend(ring(slice + 1, low, high(slice + 1), half.0, half.1));
                vehicle.push(Solid::hull(
                    format!("vehicle/{part} {slice}"),
                    Role::Body,
                    vertices,
                ));
            }
        }
        let mut obstacles = Vec::new();
        for index in 0..60 {
            let place = DVec3::new(
                spread.between(-3.0, 3.0),
                spread.between(-3.5, 3.5),
                spread.between(3.1, 3.6),
            );
            let name = format!("obstacle/thing {index}");
            let role = Role::Obstacle(index);
            let turn = DQuat::from_rotation_z(spread.between(0.0, 3.1))
                * DQuat::from_rotation_x(spread.between(-0.4, 0.4));
            obstacles.push(if index % 3 == 0 {
                let half = turn * DVec3::X * spread.between(0.2, 1.5);
                Solid::bar(name, role, place - half, place + half, 0.05)
            } else {
                let size = DVec3::new(
                    spread.between(0.1, 1.2),
                    spread.between(0.1, 1.2),
                    spread.between(0.05, 0.3),
                );
                Solid::posed_box(name, role, size, Pose::new(turn, place))
            });
        }
        let moving = vehicle
            .iter()
            .enumerate()
            .map(|(solid, part)| Moving {
                body: Body::exact(part),
                solid,
                role: part.role,
                from: 0.1,
                to: TRAVEL_M,
                climbs: true,
                phase: solid,
            })
            .collect();
        let fixed = obstacles
            .iter()
            .enumerate()
            .map(|(solid, thing)| Fixed {
                body: Body::exact(thing),
                solid,
                role: thing.role,
            })
            .collect();
        let locks = LockWindows {
            windows: (0..20)
                .map(|k| 0.3 + 0.08 * f64::from(k))
                .map(|s| [s, s + 0.05])
                .collect(),
        };
        Self {
            vehicle,
            obstacles,
            moving,
            fixed,
            locks,
            policy: Policy::default(),
        }
    }

    /// One study: the sweep and the states of all locks.
    pub(crate) fn study(&self, space: &mut Workspace) -> Option<usize> {
        space.sweep(
            &self.moving,
            &self.fixed,
            &self.locks,
            DVec3::Z,
            &|mover, fixed| rule(mover.role, fixed.role, &self.policy),
        );
        let swept = [&space.swept];
        let together = Together { swept: &swept };
        highest_clear(
            (0..self.locks.windows.len())
                .map(|lock| together.state(&self.locks, lock, 0.1, TRAVEL_M).0),
        )
    }

    /// The same bay with every uncertainty: two roll groups, yaw, spread.
    pub(crate) fn worst_case(mut self) -> Self {
        let spread = DVec3::new(0.06, 0.08, 0.03);
        let mut moving = Vec::new();
        for roll in [-0.008, 0.008] {
            for (mover, solid) in self.moving.iter().zip(&self.vehicle) {
                let poses: Vec<Pose> = [(-0.009, 0.0), (0.009, 0.0), (-0.009, roll), (0.009, roll)]
                    .into_iter()
                    .map(|(yaw, roll)| {
                        let turn = DQuat::from_rotation_z(yaw) * DQuat::from_rotation_y(roll);
                        Pose::new(turn, DVec3::ZERO).after(solid.bay_from_solid)
                    })
                    .collect();
                moving.push(Moving {
                    body: Body::of(&solid.shape, &poses, spread),
                    ..mover.clone()
                });
            }
        }
        self.moving = moving;
        for fixed in &mut self.fixed {
            fixed.body = fixed.body.clone().widened(DVec3::splat(0.009));
        }
        self
    }

    /// The same answer the long way round: the distance of every pair at every lock, and at the
    /// end of its overtravel.
    pub(crate) fn study_unpruned(&self, space: &mut Workspace) -> f64 {
        let mut least = f64::INFINITY;
        for window in &self.locks.windows {
            for travel in *window {
                for mover in &self.moving {
                    for thing in &self.fixed {
                        let gap = space
                            .solver()
                            .gap(&mover.body, DVec3::Z * travel, &thing.body);
                        if let bayrise::clearance::gap::Separation::Apart(gap) = gap {
                            least = least.min(gap.lower);
                        } else {
                            least = 0.0;
                        }
                    }
                }
            }
        }
        least
    }
}

/// Writes the dense bay's solids and locks as JSON to the file named by `BAYRISE_DENSE_JSON`, for
/// timing the same solids with another library.
pub(crate) fn export_when_asked() {
    let Some(path) = std::env::var_os("BAYRISE_DENSE_JSON") else {
        return;
    };
    let bay = Dense::new();
    let export = |solids: &[Solid]| bayrise::solids::list::export(solids);
    let value = serde_json::json!({
        "moving": export(&bay.vehicle),
        "fixed": export(&bay.obstacles),
        "lock_travels_m": bay.locks.windows.iter().map(|w| w[0]).collect::<Vec<_>>(),
    });
    if let Err(error) = std::fs::write(&path, value.to_string()) {
        panic!("{}: {error}", path.to_string_lossy());
    }
}
