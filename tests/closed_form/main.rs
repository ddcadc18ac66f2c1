//! Does the study give what a person gets with pencil and paper?
//!
//! One plain bay with nothing uncertain, and in each test one thing more. The arithmetic stands
//! beside each value; lengths are metres. The same values show what each part of the study is good
//! for: leave it out and the answer is another one.
#![allow(clippy::unwrap_used, clippy::panic)] // a failed unwrap here is a failed test

mod bay;
mod common_practice;
mod rise;
mod stops;
mod what_counts;
