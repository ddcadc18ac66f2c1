//! Loads of a bay: published values, symmetry and balance.
