//! What is open, chosen and shown, and what does each action do to it?

use std::path::{Path, PathBuf};
use std::sync::Arc;

use glam::DVec3;

use super::action::{Action, Wish};
use super::camera::{Camera, Lens, Sight};
use super::document::{Document, Presets};
use super::job::{Done, Job, Verdict};
use super::rise::{PLAY_M_PER_S, Rise};
use super::settings::{Kept, Notice, Settings};
use super::show_mode::Show;
use crate::bay::UnitSystem;
use crate::bayfile::presets::EmbeddedOnly;
use crate::clearance::probe::Here;
use crate::solids::{DoorTravel, Solid};
use crate::starter::starter;

/// The lift and the vehicle of a new bay, to start from.
const NEW_BAY: [&str; 2] = ["tall-columns-11-10", "estate"];

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
        Some(Job { generation, bay })
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

    /// What is to be framed, from the solids that are drawn.
    pub fn set_bounds(&mut self, solids: &[Solid]) {
        let bounds = solids
            .iter()
            .map(Solid::bounds)
            .filter(|(low, high)| low.is_finite() && high.is_finite())
            .reduce(|a, b| (a.0.min(b.0), a.1.max(b.1)));
        if let Some((low, high)) = bounds {
            self.bounds_m = [low, high];
            if let Some(sight) = self.sight {
                self.look(sight);
            }
        }
    }

    /// The size of the view; a named look is framed again.
    pub fn set_aspect(&mut self, aspect: f64) {
        if !aspect.is_finite() || aspect <= 0.0 || (aspect - self.aspect).abs() < 1e-6 {
            return;
        }
        self.aspect = aspect;
        if let Some(sight) = self.sight {
            self.look(sight);
        }
    }

    /// Carries out an action; what only the window can do comes back.
    pub fn apply(&mut self, action: Action) -> Vec<Wish> {
        if self.settings.show_mode && matches!(action, Action::Door(_) | Action::DoorToggle) {
            // There the door stands as the verdict has it.
            return Vec::new();
        }
        match action {
            Action::Set { path, value } => self.edit(|document| document.set(&path, &value)),
            Action::Remove { path } => self.edit(|document| document.remove(&path)),
            Action::Append { list, item } => self.edit(|document| document.append(&list, &item)),
            Action::Together(changes) => self.edit(|document| document.change_all(&changes)),
            Action::Undo => {
                self.leaves_when_saved = false;
                self.document.undo();
            }
            Action::Redo => {
                self.leaves_when_saved = false;
                self.document.redo();
            }
            Action::Travel(travel_m) => self.go(travel_m),
            Action::ToLock(lock) => {
                let locks = self.locks_m();
                if let Some(&travel) = lock.checked_sub(1).and_then(|index| locks.get(index)) {
                    self.go(travel);
                }
            }
            Action::LockUp => {
                let next = self.rise.lock_above(&self.locks_m());
                self.go(next.unwrap_or(self.rise.travel_m));
            }
            Action::LockDown => {
                let next = self.rise.lock_below(&self.locks_m());
                self.go(next);
            }
            Action::ToSafeLock => {
                let safe = self
                    .verdict
                    .as_ref()
                    .and_then(|v| v.study.highest_safe_lock);
                match safe {
                    Some(lock) => return self.apply(Action::ToLock(lock)),
                    None => self.notices.push(Notice {
                        is_error: false,
                        text: "No lock is safe; the carriage stays where it is.".into(),
                    }),
                }
            }
            Action::ToFloor => self.go(0.0),
            Action::ToTop => self.go(self.full_travel_m()),
            Action::PlayPause => {
                if !self.rise.playing && self.rise.travel_m >= self.full_travel_m() {
                    self.go(0.0);
                }
                self.rise.playing = !self.rise.playing;
            }
            Action::Tick(seconds) => {
                if self.settings.show_mode {
                    self.show_tick(seconds);
                } else if self.rise.playing {
                    let to = self.rise.travel_m + seconds.clamp(0.0, 1.0) * PLAY_M_PER_S;
                    self.go(to);
                    self.rise.playing = self.rise.travel_m < self.full_travel_m();
                }
            }
            Action::Door(share) => {
                if share.is_finite() {
                    self.door = share.clamp(0.0, 1.0);
                    self.look_here();
                }
            }
            Action::DoorToggle => {
                self.door = if self.door < 0.5 { 1.0 } else { 0.0 };
                self.look_here();
            }
            Action::Look(sight) => self.look(sight),
            Action::Orbit(right, up) => self.move_camera(|c| c.orbited(right, up)),
            Action::Pan(right, up) => self.move_camera(|c| c.panned(right, up)),
            Action::Zoom(factor) => self.move_camera(|c| c.zoomed(factor)),
            Action::FrameAll => {
                let ([low, high], aspect) = (self.bounds_m, self.aspect);
                self.move_camera(|c| c.framed(low, high, aspect, 1.06));
            }
            Action::Parallel(parallel) => self.move_camera(|c| with_lens(c, parallel)),
            Action::Cut(place) => self.settings.cut_m = place,
            Action::ShowPair(moving, fixed) => self.show_pair(moving, fixed),
            Action::DropPair => self.picked = None,
            Action::People(on) => self.settings.people = on,
            Action::Dimensions(on) => self.settings.dimensions = on,
            Action::ShowMode(on) => {
                self.settings.show_mode = on;
                self.show_turned(on);
                return vec![Wish::FullScreen(on)];
            }
            Action::Help(on) => self.settings.help = on,
            Action::Section(section) => self.settings.section = section,
            Action::Theme(theme) => self.settings.theme = theme,
            Action::TextScale(factor) => {
                let scale = self.settings.text_scale * factor;
                if scale.is_finite() {
                    self.settings.text_scale = scale.clamp(0.7, 2.5);
                }
            }
            Action::DropNotice(index) => {
                if index < self.notices.len() {
                    self.notices.remove(index);
                }
            }
            Action::Tell(text) => self.tell(text),
            Action::New | Action::OpenFile(_) | Action::Quit => {
                self.leaves_when_saved = false;
                if self.document.is_unsaved() {
                    self.leaving = Some(Box::new(action));
                } else {
                    return self.leave(action);
                }
            }
            Action::Open => return vec![Wish::AskOpen],
            Action::Save | Action::SaveAndLeave => {
                self.leaves_when_saved = action == Action::SaveAndLeave;
                return vec![match self.document.path() {
                    Some(path) => Wish::Write {
                        path: path.into(),
                        text: self.document.text().into(),
                    },
                    None => Wish::AskSaveAs,
                }];
            }
            Action::SaveAs => return vec![Wish::AskSaveAs],
            Action::Reload => {
                return self
                    .document
                    .path()
                    .map(|path| Wish::Read(path.into()))
                    .into_iter()
                    .collect();
            }
            Action::TakeAutosave => {
                let Some(kept) = self.autosave.take() else {
                    return Vec::new();
                };
                if kept.is_new_bay {
                    self.document.start_over(kept.text, Arc::new(EmbeddedOnly));
                    self.forget_study();
                } else {
                    self.document.change(kept.text);
                }
                return vec![Wish::TookAutosave];
            }
            Action::PutOffAutosave => {
                self.autosave = None;
                return vec![Wish::PutOffAutosave];
            }
            Action::DropAutosave => {
                self.autosave = None;
                return vec![Wish::ForgetAutosave];
            }
            Action::Stay => {
                self.leaving = None;
                self.leaves_when_saved = false;
            }
            Action::LeaveUnsaved => {
                if let Some(action) = self.leaving.take() {
                    return self.leave(*action);
                }
            }
        }
        Vec::new()
    }

    /// Leaves the document for what comes next.
    fn leave(&mut self, next: Action) -> Vec<Wish> {
        self.leaving = None;
        self.leaves_when_saved = false;
        match next {
            Action::New => {
                self.start_new();
                Vec::new()
            }
            Action::OpenFile(path) => vec![Wish::Read(path)],
            _ => vec![Wish::Close],
        }
    }

    /// The person chose where to save.
    #[must_use]
    pub fn save_to(&self, path: PathBuf) -> Wish {
        Wish::Write {
            path,
            text: self.document.text().into(),
        }
    }

    /// A file was read.
    pub fn opened(&mut self, path: PathBuf, text: String, presets: Presets) {
        self.remember(&path);
        // A study of the last document must never be taken for one of this.
        let after = self.document.generation() + 1;
        self.document =
            Document::new(Some(path), text.clone(), Some(text), presets).counted_from(after);
        self.forget_study();
    }

    /// A file was written.
    pub fn saved(&mut self, path: PathBuf, text: String, presets: Presets) {
        self.remember(&path);
        self.document.mark_saved(path, text, presets);
    }

    /// Starts a bay of two shipped presets, in the units of the bay before it.
    fn start_new(&mut self) {
        let read = self.document.read();
        let units = read.map_or(UnitSystem::Imperial, |read| read.bay.units);
        let [lift, vehicle] = NEW_BAY;
        match starter(lift, vehicle, units) {
            Ok(starter) => {
                self.document
                    .start_over(starter.text, Arc::new(EmbeddedOnly));
                self.forget_study();
            }
            Err(_) => self.notices.push(Notice {
                is_error: true,
                text: "A new bay could not be made from the shipped presets.".into(),
            }),
        }
    }

    /// A study of the last document must never be taken for one of this.
    fn forget_study(&mut self) {
        self.verdict = None;
        self.here = None;
        self.picked = None;
        self.asked = None;
        self.rise = Rise::default();
    }

    fn remember(&mut self, path: &Path) {
        self.recent.retain(|known| known != path);
        self.recent.insert(0, path.into());
        self.recent.truncate(8);
    }

    fn edit(
        &mut self,
        change: impl FnOnce(&mut Document) -> Result<(), crate::bayfile::edit::EditError>,
    ) {
        self.leaves_when_saved = false;
        if let Err(why) = change(&mut self.document) {
            self.notices.push(Notice {
                is_error: true,
                text: format!("The file is as before; it could not be changed so: {why}."),
            });
        }
    }

    /// Show mode begins or ends: the door goes to the state that the verdict is for.
    fn show_turned(&mut self, on: bool) {
        self.show = Show::default();
        self.rise.playing = on;
        if on && self.verdict.is_some() {
            self.door_as_it_governs();
            self.go(0.0);
        }
    }

    fn door_as_it_governs(&mut self) {
        let governs = self.verdict.as_ref().map(|v| v.study.headline_door);
        self.door = if governs == Some(crate::clearance::DoorState::Open) {
            1.0
        } else {
            0.0
        };
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

    /// Show mode turns the view, and raises to the highest safe lock and no higher.
    fn show_tick(&mut self, seconds: f64) {
        if !self.rise.playing {
            return;
        }
        let safe_m = self.is_current().then(|| self.safe_travel_m()).flatten();
        let seconds = seconds.clamp(0.0, 1.0);
        let step = self.show.ticked(seconds, safe_m.unwrap_or(0.0));
        let ([low, high], aspect) = (self.bounds_m, self.aspect);
        let frame = self.show.frames_for(aspect);
        self.move_camera(|camera| {
            let turned = camera.orbited(step.turn_rad, 0.0);
            if frame {
                turned.framed(low, high, aspect, super::show_mode::ROOM)
            } else {
                turned
            }
        });
        // A stale verdict raises nothing: the carriage stays where it is.
        if self.is_current() {
            self.go(step.travel_m);
        }
    }

    /// Travel at the highest safe lock, metres; none when no lock is safe.
    #[must_use]
    pub fn safe_travel_m(&self) -> Option<f64> {
        let lock = self.verdict.as_ref()?.study.highest_safe_lock?;
        self.locks_m().get(lock.checked_sub(1)?).copied()
    }

    fn go(&mut self, travel_m: f64) {
        if travel_m.is_finite() {
            // Before people, a verdict of an older state of the file raises nothing.
            let raises = self.is_current() || !self.settings.show_mode;
            let top_m = if raises { travel_m } else { self.rise.travel_m };
            self.rise.travel_m = travel_m.min(top_m);
            self.hold_travel();
            self.look_here();
        }
    }

    /// Within what the lift can do; before people, within what is safe.
    fn hold_travel(&mut self) {
        let mut top_m = self.full_travel_m();
        if self.settings.show_mode {
            top_m = top_m.min(self.safe_travel_m().unwrap_or(0.0));
        }
        self.rise.travel_m = self.rise.travel_m.clamp(0.0, top_m);
    }

    /// Asks the probe about the shown position.
    fn look_here(&mut self) {
        let (door, travel_m) = (self.door_travel(), self.rise.travel_m);
        self.here = self
            .verdict
            .as_mut()
            .map(|verdict| verdict.probe.at(door, travel_m));
    }

    fn look(&mut self, sight: Sight) {
        let [low, high] = self.bounds_m;
        self.camera = Camera::at(sight, low, high, self.driver_m(), self.aspect);
        self.sight = Some(sight);
    }

    /// Where the eyes of someone at the driver's door are.
    fn driver_m(&self) -> DVec3 {
        let [low, high] = self.bounds_m;
        let middle = (low + high) * 0.5;
        DVec3::new(low.x + 0.5, middle.y - 0.6, 1.6)
    }

    fn move_camera(&mut self, moved: impl FnOnce(Camera) -> Camera) {
        self.camera = moved(self.camera);
        self.sight = None;
    }

    fn show_pair(&mut self, moving: String, fixed: String) {
        let points = self.here.as_ref().and_then(|here| {
            here.pairs
                .iter()
                .find(|pair| pair.moving == moving && pair.fixed == fixed)
                .and_then(|pair| pair.points_m)
        });
        if let Some((a, b)) = points {
            self.move_camera(|camera| {
                let middle = (a + b) * 0.5;
                let back = (camera.eye_m - camera.target_m).normalize_or(DVec3::NEG_Y);
                Camera {
                    eye_m: middle + back * 2.5,
                    target_m: middle,
                    ..camera
                }
            });
        }
        self.picked = Some((moving, fixed));
    }
}

fn with_lens(camera: Camera, parallel: bool) -> Camera {
    let height_m = camera.height_at_target_m();
    match (camera.lens, parallel) {
        (Lens::Perspective { .. }, true) => Camera {
            lens: Lens::Parallel { height_m },
            ..camera
        },
        (Lens::Parallel { .. }, false) => {
            let lens = Lens::Perspective {
                fov_rad: super::camera::FOV_RAD,
            };
            let back = (camera.eye_m - camera.target_m).normalize_or(DVec3::NEG_Y);
            let distance = height_m / (2.0 * (super::camera::FOV_RAD * 0.5).tan());
            Camera {
                eye_m: camera.target_m + back * distance,
                lens,
                ..camera
            }
        }
        _ => camera,
    }
}
