//! The panels, driven as a person drives them: by pointer and keyboard, without a graphics card.

#![allow(clippy::unwrap_used)] // helpers of tests: a failed unwrap there is a failed test

mod document;
mod edit;
mod helpers;
