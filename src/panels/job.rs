//! How is a bay studied without making the person wait?
//!
//! A desk whose document changed gives out a [`Job`] with the document's generation. Whoever runs
//! it, in a task or at once, hands the [`Done`] back; an answer for an older generation is thrown
//! away, and until the right one is there the last verdict is shown greyed.

use std::sync::Arc;

use crate::bay::Bay;
use crate::clearance::Study;
use crate::clearance::probe::Probe;
use crate::ground::{Date, ForDay};

/// A bay to study.
#[derive(Debug, Clone)]
pub struct Job {
    /// Which state of the document.
    pub generation: u64,
    /// The bay.
    pub bay: Arc<Bay>,
    /// The day that ages are counted to.
    pub on: Option<Date>,
}

/// A bay that was studied.
#[derive(Debug)]
pub struct Done {
    /// Which state of the document.
    pub generation: u64,
    /// The bay.
    pub bay: Arc<Bay>,
    /// The day, where the answer is another on a later one.
    pub decides: Option<Date>,
    /// The study and its probe, or why there is none.
    pub outcome: Result<(Study, Probe), String>,
}

impl Job {
    /// Studies the bay.
    #[must_use]
    pub fn run(self) -> Done {
        Done {
            generation: self.generation,
            decides: self
                .on
                .and_then(|on| ForDay::of(&self.bay, on, false).decides()),
            outcome: Probe::with_study_on(&self.bay, self.on).map_err(|error| error.to_string()),
            bay: self.bay,
        }
    }
}

/// What is known of the document as last studied.
#[derive(Debug)]
pub struct Verdict {
    /// Which state of the document it is of.
    pub generation: u64,
    /// The bay as studied.
    pub bay: Arc<Bay>,
    /// The day, where the answer is another on a later one.
    pub decides: Option<Date>,
    /// The study.
    pub study: Study,
    /// For any shown position.
    pub probe: Probe,
}
