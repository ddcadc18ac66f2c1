//! Moves, tried against the study itself.
