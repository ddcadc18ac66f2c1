//! Where does the carriage stand, and where does it go next?

/// Speed of the played raise, metres of carriage travel a second. A little under the usual speed
/// of a lift, so that the eye can follow.
pub const PLAY_M_PER_S: f64 = 0.12;

/// The carriage.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Rise {
    /// Its travel, metres.
    pub travel_m: f64,
    /// It climbs by itself.
    pub playing: bool,
}

/// Slack (metres) in telling whether the carriage stands at a lock.
pub const AT_LOCK_M: f64 = 5e-4;

impl Rise {
    /// The lock (counted from 1) that the carriage stands at, if any.
    #[must_use]
    pub fn at_lock(&self, locks_m: &[f64]) -> Option<usize> {
        locks_m
            .iter()
            .position(|lock| (lock - self.travel_m).abs() < AT_LOCK_M)
            .map(|index| index + 1)
    }

    /// Travel of the next lock above; none above the highest.
    #[must_use]
    pub fn lock_above(&self, locks_m: &[f64]) -> Option<f64> {
        locks_m
            .iter()
            .copied()
            .find(|lock| *lock > self.travel_m + AT_LOCK_M)
    }

    /// Travel of the next lock below; the floor below the lowest.
    #[must_use]
    pub fn lock_below(&self, locks_m: &[f64]) -> f64 {
        locks_m
            .iter()
            .copied()
            .rev()
            .find(|lock| *lock < self.travel_m - AT_LOCK_M)
            .unwrap_or(0.0)
    }
}

#[cfg(test)]
#[allow(clippy::float_cmp)] // travels picked from a list
mod tests {
    use super::*;

    #[test]
    fn locks_above_and_below() {
        let locks = [0.5, 0.6, 0.7];
        let at = |travel_m| Rise {
            travel_m,
            playing: false,
        };
        assert_eq!(at(0.0).lock_above(&locks), Some(0.5));
        assert_eq!(at(0.6).lock_above(&locks), Some(0.7));
        assert_eq!(at(0.7).lock_above(&locks), None);
        assert_eq!(at(0.6).lock_below(&locks), 0.5);
        assert_eq!(at(0.5).lock_below(&locks), 0.0);
        assert_eq!(at(0.65).lock_below(&locks), 0.6);
        assert_eq!(at(0.6).at_lock(&locks), Some(2));
        assert_eq!(at(0.65).at_lock(&locks), None);
    }
}
