//! What is open, chosen and shown?

mod act;
mod beside;
mod carriage;
mod eye;
mod files;
mod over_the_climb;

use std::path::PathBuf;
use std::sync::Arc;

use glam::DVec3;

pub use beside::Beside;

use super::action::Action;
use super::as_built::AsBuilt;
use super::camera::{Camera, Sight};
use super::compared::Compared;
use super::document::Document;
use super::job::{Done, Job, Verdict};
use super::rise::Rise;
use super::settings::{Kept, Notice, Settings};
use super::show_mode::Show;
use crate::clearance::probe::Here;
use crate::ground::Date;
use crate::solids::DoorTravel;

/// Everything that is open, chosen and shown.
#[derive(Debug)]
pub struct Desk {
    /// The open bay file.
    pub document: Document,
    /// What the last finished study says; it may be of an older text, see [`Desk::is_current`].
    pub verdict: Option<Verdict>,
    /// Why the document as it stands could not be studied, in words.
    pub study_failed: Option<String>,
    /// The carriage.
    pub rise: Rise,
    /// How far the door is open: 0 shut, 1 open.
    pub door: f64,
    /// The eye.
    pub camera: Camera,
    /// The named place last looked from, while the view is still that one.
    pub sight: Option<Sight>,
    /// Corners of the box about everything that is framed, metres.
    pub bounds_m: [DVec3; 2],
    /// The same about this bay alone: what is framed is larger while a larger bay stands beside it.
    own_bounds_m: [DVec3; 2],
    /// A second bay to look at beside this one.
    pub beside: Option<Box<Beside>>,
    /// Width of the view over its height.
    pub aspect: f64,
    /// The pair kept lit: names of the moving and the fixed solid.
    pub picked: Option<(String, String)>,
    /// What holds at the shown position; of the last finished study.
    pub here: Option<Here>,
    /// How it is shown.
    pub settings: Settings,
    /// What to tell the person.
    pub notices: Vec<Notice>,
    /// Files opened before, the last first.
    pub recent: Vec<PathBuf>,
    /// What the machine can't do, in a few words; none when nothing was dropped.
    pub badge: Option<String>,
    /// What was kept when the program ended without saving, yet to be answered.
    pub autosave: Option<Kept>,
    /// Where show mode stands in its round.
    pub show: Show,
    /// What was asked for that would lose what is not saved; the person is asked first.
    pub leaving: Option<Box<Action>>,
    /// To that question the answer was to save first.
    pub leaves_when_saved: bool,
    /// What the bay is called where it comes from a table of combinations.
    pub label: Option<String>,
    /// What tape readings say of the posts; none while nobody asked.
    pub as_built: Option<AsBuilt>,
    /// What was compared; none while no file of options is open.
    pub compared: Option<Box<Compared>>,
    /// The day that ages are counted to; none: nothing is known to have aged.
    pub on: Option<Date>,
    /// The generation that a job was given out for.
    asked: Option<u64>,
}

impl Desk {
    /// A desk with a document on it.
    #[must_use]
    pub fn new(document: Document) -> Self {
        let low = DVec3::new(-3.0, -0.5, 0.0);
        let high = DVec3::new(3.0, 8.0, 3.5);
        let aspect = 16.0 / 9.0;
        Self {
            document,
            verdict: None,
            study_failed: None,
            rise: Rise::default(),
            door: 0.0,
            camera: Camera::at(Sight::Corner, low, high, DVec3::ZERO, aspect),
            sight: Some(Sight::Corner),
            bounds_m: [low, high],
            own_bounds_m: [low, high],
            beside: None,
            aspect,
            picked: None,
            here: None,
            settings: Settings::default(),
            notices: Vec::new(),
            recent: Vec::new(),
            badge: None,
            autosave: None,
            show: Show::default(),
            leaving: None,
            leaves_when_saved: false,
            label: None,
            as_built: None,
            compared: None,
            on: None,
            asked: None,
        }
    }

    /// True when the verdict is that of the text as it stands.
    #[must_use]
    pub fn is_current(&self) -> bool {
        self.verdict
            .as_ref()
            .is_some_and(|verdict| verdict.generation == self.document.generation())
    }

    /// True when the document as it stands was not given out to be studied yet.
    #[must_use]
    pub fn wants_study(&self) -> bool {
        self.asked != Some(self.document.generation())
    }

    /// The study that is wanted, once for each state of the document; none when the text has
    /// faults or the study was asked for already.
    pub fn job(&mut self) -> Option<Job> {
        let generation = self.document.generation();
        if self.asked == Some(generation) {
            return None;
        }
        self.asked = Some(generation);
        self.study_failed = None;
        let bay = Arc::new(self.document.read().ok()?.bay.clone());
        Some(Job {
            generation,
            bay,
            on: self.on,
        })
    }

    /// Takes a finished study. One for an older text is thrown away.
    pub fn take(&mut self, done: Done) {
        if done.generation != self.document.generation() {
            return;
        }
        match done.outcome {
            Ok((study, probe)) => {
                let first = self.verdict.is_none();
                self.verdict = Some(Verdict {
                    generation: done.generation,
                    bay: done.bay,
                    decides: done.decides,
                    study,
                    probe,
                });
                // The door as it governs: the first picture shows what the verdict says, and a room
                // full of people never sees another door than that.
                if first || self.settings.show_mode {
                    self.door_as_it_governs();
                }
                self.hold_travel();
                self.look_here();
            }
            Err(why) => self.study_failed = Some(why),
        }
        self.follow();
    }

    /// Studies at once where a study is wanted: for tests and pictures.
    pub fn study_now(&mut self) {
        if let Some(job) = self.job() {
            self.take(job.run());
        }
    }

    /// Where the door is.
    #[must_use]
    pub fn door_travel(&self) -> DoorTravel {
        if self.door <= 0.0 {
            DoorTravel::Shut
        } else if self.door >= 1.0 {
            DoorTravel::Open
        } else {
            DoorTravel::At(self.door)
        }
    }

    /// Travels of the locks of the bay last studied, lowest first, metres.
    #[must_use]
    pub fn locks_m(&self) -> Vec<f64> {
        self.verdict
            .as_ref()
            .map(|verdict| verdict.bay.lift.locks.iter().map(|lock| lock.m()).collect())
            .unwrap_or_default()
    }

    /// Full travel of the carriage of the bay last studied, metres; 0 before the first study.
    #[must_use]
    pub fn full_travel_m(&self) -> f64 {
        self.verdict
            .as_ref()
            .map_or(0.0, |verdict| verdict.bay.lift.travel.m())
    }

    /// Tells the person something, once.
    pub fn tell(&mut self, text: String) {
        let notice = Notice {
            is_error: true,
            text,
        };
        self.notices.retain(|known| *known != notice);
        self.notices.push(notice);
    }
}
