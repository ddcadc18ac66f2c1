//! Which lift parts with which vehicle parts, and with each other: sets of pairs, by kind.

use super::parked::are_strangers;
use crate::bay::{Corner, Side};
use crate::solids::Role;

/// Every kind of lift part that is looked at, in the order in which they are made.
const ROLES: [Role; KINDS - 1] = [
    Role::Carriage(Side::Left),
    Role::Carriage(Side::Right),
    Role::Arm(Corner::ALL[0]),
    Role::Pad(Corner::ALL[0]),
    Role::Arm(Corner::ALL[1]),
    Role::Pad(Corner::ALL[1]),
    Role::Arm(Corner::ALL[2]),
    Role::Pad(Corner::ALL[2]),
    Role::Arm(Corner::ALL[3]),
    Role::Pad(Corner::ALL[3]),
];

/// How many kinds there are, with one for what is none of them.
pub(super) const KINDS: usize = 11;

/// Which kind a lift part is, by number.
pub(super) fn kind(role: Role) -> usize {
    let known = ROLES.iter().position(|known| *known == role);
    known.unwrap_or(ROLES.len())
}

/// A set of pairs.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Pairs {
    /// For each vehicle part the kinds of lift part, by the bits of their numbers.
    vehicle: Vec<u16>,
    /// For each kind of lift part the other kinds, of which the number is higher.
    each_other: [u16; KINDS],
}

impl Pairs {
    /// No pair, of so many vehicle parts.
    pub(super) fn none(parts: usize) -> Self {
        Self {
            vehicle: vec![0; parts],
            each_other: [0; KINDS],
        }
    }

    /// Every vehicle part with every kind, and all kinds that are strangers with each other.
    pub(super) fn all(parts: usize) -> Self {
        let strangers = |one: usize, other: usize| match (ROLES.get(one), ROLES.get(other)) {
            (Some(one), Some(other)) => are_strangers(*one, *other),
            _ => false,
        };
        Self {
            vehicle: vec![(1 << KINDS) - 1; parts],
            each_other: std::array::from_fn(|one| {
                (one + 1..KINDS)
                    .filter(|&other| strangers(one, other))
                    .fold(0, |bits, other| bits | 1 << other)
            }),
        }
    }

    /// Whether nothing is in it.
    pub(super) fn is_empty(&self) -> bool {
        self.vehicle
            .iter()
            .chain(&self.each_other)
            .all(|&bits| bits == 0)
    }

    /// Whether a vehicle part is in it with any lift part.
    pub(super) fn has_part(&self, part: usize) -> bool {
        self.vehicle[part] != 0
    }

    /// Whether a vehicle part is in it with a kind of lift part.
    pub(super) fn has(&self, part: usize, kind: usize) -> bool {
        self.vehicle[part] >> kind & 1 == 1
    }

    /// Whether two kinds of lift part are in it, the lower number first.
    pub(super) fn has_each_other(&self, one: usize, other: usize) -> bool {
        self.each_other[one] >> other & 1 == 1
    }

    /// Puts a vehicle part with a kind of lift part in.
    pub(super) fn put(&mut self, part: usize, kind: usize) {
        self.vehicle[part] |= 1 << kind;
    }

    /// Puts two kinds of lift part in, the lower number first.
    pub(super) fn put_each_other(&mut self, one: usize, other: usize) {
        self.each_other[one] |= 1 << other;
    }

    /// Puts in what is in another.
    pub(super) fn add(&mut self, other: &Self) {
        self.each(other, |own, other| own | other);
    }

    /// What is in this and not in another.
    pub(super) fn without(&self, other: &Self) -> Self {
        let mut rest = self.clone();
        rest.each(other, |own, other| own & !other);
        rest
    }

    fn each(&mut self, other: &Self, both: impl Fn(u16, u16) -> u16) {
        let own = self.vehicle.iter_mut().chain(&mut self.each_other);
        for (own, other) in own.zip(other.vehicle.iter().chain(&other.each_other)) {
            *own = both(*own, *other);
        }
    }

    /// Every vehicle part in it with a kind of lift part, and every two kinds.
    pub(super) fn told(&self) -> [Vec<(usize, usize)>; 2] {
        let kinds = |of: u16| (0..KINDS).filter(move |kind| of >> kind & 1 == 1);
        let each = |bits: &[u16]| {
            let numbered = bits.iter().copied().enumerate();
            numbered
                .flat_map(|(number, of)| kinds(of).map(move |kind| (number, kind)))
                .collect()
        };
        [each(&self.vehicle), each(&self.each_other)]
    }
}
