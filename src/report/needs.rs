//! Is what the caller asked of the bay met?

use crate::clearance::{LockState, Study};
use crate::units::Length;

/// Something asked of the bay.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Need {
    /// This lock, or a higher one, must be safe.
    Lock(usize),
    /// On some safe lock the body's lowest point must be at least this high.
    Underbody(Length),
}

/// By how much a need is missed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Short {
    /// So many locks.
    Locks(usize),
    /// So much height.
    Height(Length),
    /// No lock is safe at all.
    NoSafeLock,
    /// The lift has only so many locks.
    OnlySoMany(usize),
}

/// A need, and whether it is met.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct NeedFinding {
    /// What was asked.
    pub need: Need,
    /// None when it is met; otherwise by how much it is missed.
    pub short: Option<Short>,
}

impl NeedFinding {
    /// True when the need is met.
    #[must_use]
    pub const fn is_met(&self) -> bool {
        self.short.is_none()
    }
}

/// Compares a need with what the study found.
#[must_use]
pub fn judge(study: &Study, need: Need) -> NeedFinding {
    let Some(highest) = study.highest_safe_lock else {
        return NeedFinding {
            need,
            short: Some(Short::NoSafeLock),
        };
    };
    let short = match need {
        Need::Lock(asked) if asked <= highest => None,
        Need::Lock(asked) if asked > study.locks.len() => {
            Some(Short::OnlySoMany(study.locks.len()))
        }
        Need::Lock(asked) => Some(Short::Locks(asked - highest)),
        Need::Underbody(asked) => {
            let most = study
                .locks
                .iter()
                .filter(|l| l.lock <= highest && l.state == LockState::Clear)
                .map(|l| l.underbody_m)
                .fold(f64::NEG_INFINITY, f64::max);
            // Written so that a height that is no number never meets the need.
            if most >= asked.m() {
                None
            } else if most.is_finite() {
                Some(Short::Height(asked - Length::metres(most)))
            } else {
                Some(Short::NoSafeLock)
            }
        }
    };
    NeedFinding { need, short }
}

#[cfg(test)]
mod tests {
    use super::super::sample;
    use super::*;

    #[test]
    fn locks() {
        let study = sample::study();
        let short = |need| judge(&study, need).short;
        assert_eq!(study.highest_safe_lock, Some(3));
        assert_eq!(short(Need::Lock(3)), None);
        assert_eq!(short(Need::Lock(4)), Some(Short::Locks(1)));
        assert_eq!(short(Need::Lock(9)), Some(Short::OnlySoMany(5)));
    }

    #[test]
    fn underbody() {
        let study = sample::study();
        let at_3 = Length::metres(study.locks[2].underbody_m);
        assert!(judge(&study, Need::Underbody(at_3)).is_met());
        let more = judge(&study, Need::Underbody(at_3 + Length::mm(10.0)));
        let Some(Short::Height(by)) = more.short else {
            panic!("{more:?}")
        };
        assert!((by.in_mm() - 10.0).abs() < 1e-9);
    }

    #[test]
    fn nothing_safe_meets_nothing() {
        let study = sample::withheld();
        assert!(!judge(&study, Need::Lock(1)).is_met());
        assert!(!judge(&study, Need::Underbody(Length::ZERO)).is_met());
    }

    #[test]
    fn a_height_that_is_no_number_is_not_met() {
        let mut study = sample::study();
        for lock in &mut study.locks {
            lock.underbody_m = f64::NAN;
        }
        assert!(!judge(&study, Need::Underbody(Length::ZERO)).is_met());
    }
}
