//! What is to be measured before buying, in the order of a walk through the garage, and what
//! becomes of the answers?
//!
//! One table of questions serves the printed form (`drawing::worksheet`) and the questions on a
//! terminal ([`Dialogue`]), so that what was written with a pencil is typed in the same order.
//! Answers become a bay file ([`Answers::bay_file`]): what was not answered stays out, or, where a
//! bay file can't do without it, is a placeholder that the file, its title and every list name as
//! not measured.

mod answer;
mod answers;
mod change;
mod contradiction;
mod dialogue;
mod explain;
mod file;
mod groups;
mod question;
mod review;
mod table;
#[cfg(test)]
mod tests;

pub use answer::{Refused, read_answer};
pub use answers::Answers;
pub use change::Decision;
pub use dialogue::{Dialogue, Prompt};
pub use file::Made;
pub use groups::in_ranges;
pub use question::{Form, Kind, Question, Repeat, Section, When};
pub use review::{Part, Review};
pub use table::{label, number, section_label, sections};

/// The version of the form: it goes up when a question comes, goes or changes its number.
pub const FORM_VERSION: u32 = 5;
