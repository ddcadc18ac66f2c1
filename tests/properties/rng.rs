//! Where the random numbers come from: SplitMix64, seeded by hand, the same on every machine.
//!
//! Constants from Steele, Lea and Flood, "Fast splittable pseudorandom number generators"
//! (OOPSLA 2014), from memory; nothing but the repeatability of the tests depends on them.

use glam::{DQuat, DVec3};

/// A seeded stream of numbers.
#[derive(Debug, Clone)]
pub(crate) struct Rng(u64);

impl Rng {
    pub(crate) fn new(seed: u64) -> Self {
        Self(seed)
    }

    pub(crate) fn bits(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ (z >> 31)
    }

    /// Evenly in `[low, high)`.
    pub(crate) fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * ((self.bits() >> 11) as f64 / (1_u64 << 53) as f64)
    }

    /// Anywhere within ± `half`, the ends more often than not: extremes find more.
    pub(crate) fn within(&mut self, half: f64) -> f64 {
        match self.below(3) {
            0 => self.between(-half, half),
            1 => half,
            _ => -half,
        }
    }

    /// 0 to `count - 1`.
    pub(crate) fn below(&mut self, count: usize) -> usize {
        (self.bits() % count as u64) as usize
    }

    /// True once in `every` times.
    pub(crate) fn once_in(&mut self, every: usize) -> bool {
        self.below(every) == 0
    }

    pub(crate) fn point(&mut self, low: DVec3, high: DVec3) -> DVec3 {
        DVec3::new(
            self.between(low.x, high.x),
            self.between(low.y, high.y),
            self.between(low.z, high.z),
        )
    }

    /// A unit vector, evenly over the sphere.
    pub(crate) fn direction(&mut self) -> DVec3 {
        loop {
            let point = self.point(DVec3::NEG_ONE, DVec3::ONE);
            let length = point.length();
            if length > 0.1 && length < 1.0 {
                return point / length;
            }
        }
    }

    /// A turn about any axis by up to `most` radians.
    pub(crate) fn turn(&mut self, most: f64) -> DQuat {
        let axis = self.direction();
        DQuat::from_axis_angle(axis, self.between(-most, most))
    }
}
