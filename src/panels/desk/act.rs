//! What does each action do?

use std::sync::Arc;

use super::Desk;
use super::eye::with_lens;
use crate::bayfile::presets::EmbeddedOnly;
use crate::panels::action::{Action, Wish};
use crate::panels::rise::PLAY_M_PER_S;
use crate::panels::settings::Notice;

impl Desk {
    /// Carries out an action; what only the window can do comes back.
    pub fn apply(&mut self, action: Action) -> Vec<Wish> {
        let wishes = self.act(action);
        self.follow();
        wishes
    }

    fn act(&mut self, action: Action) -> Vec<Wish> {
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
                match self.rise.lock_above(&self.locks_m()) {
                    Some(next) => self.go(next),
                    None => {
                        // Where this lift has no lock left the other may have.
                        if let Some(next) = self.of_beside(|it| it.rise.lock_above(&it.locks_m())) {
                            self.beside_goes(next);
                        }
                    }
                }
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
                    Some(lock) => {
                        let wishes = self.act(Action::ToLock(lock));
                        // Each to its own; one that has none stays on the floor.
                        let own = self.of_beside(|it| Some(it.safe_travel_m().unwrap_or(0.0)));
                        own.into_iter().for_each(|own_m| self.beside_goes(own_m));
                        return wishes;
                    }
                    None => self.notices.push(Notice {
                        is_error: false,
                        text: "No lock is safe; the carriage stays where it is.".into(),
                    }),
                }
            }
            Action::ToFloor => self.go(0.0),
            Action::ToTop => {
                self.go(self.full_travel_m());
                let own = self.of_beside(|it| Some(it.full_travel_m()));
                own.into_iter().for_each(|own_m| self.beside_goes(own_m));
            }
            Action::PlayPause => {
                let is_up = |desk: &Self| desk.rise.travel_m >= desk.full_travel_m();
                let all_up =
                    is_up(self) && self.of_beside(|it| (!is_up(it)).then_some(())).is_none();
                if !self.rise.playing && all_up {
                    self.go(0.0);
                }
                self.rise.playing = !self.rise.playing;
            }
            Action::Tick(seconds) => {
                if self.settings.show_mode {
                    self.show_tick(seconds);
                } else if self.rise.playing {
                    let step_m = seconds.clamp(0.0, 1.0) * PLAY_M_PER_S;
                    if self.rise.travel_m < self.full_travel_m() {
                        self.go(self.rise.travel_m + step_m);
                        self.follow();
                    }
                    let other_rises = self.raise_beside_alone(step_m);
                    self.rise.playing = other_rises || self.rise.travel_m < self.full_travel_m();
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
            Action::Marks(on) => self.settings.marks = on,
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
            Action::ShowCompared(on) => self.compare(|compared| compared.is_open = on),
            Action::SortCompared(sort) => self.compare(|compared| compared.sort = sort),
            Action::FilterCompared(text) => self.compare(|compared| compared.filter = text),
            Action::DetailCompared(pick) => self.compare(|compared| compared.detail = pick),
            Action::AskAsBuilt => return vec![Wish::AskAsBuilt],
            Action::AsBuilt(path) => return vec![Wish::AsBuilt(path)],
            Action::DropAsBuilt => self.as_built = None,
            Action::AskBeside => return vec![Wish::AskBeside],
            Action::PutBeside(path) => return vec![Wish::ReadBeside(path)],
            Action::CellBeside(pick) => self.cell_beside(pick),
            Action::TakeBesideAway => self.take_beside_away(),
            Action::New | Action::OpenFile(_) | Action::OpenCell(_) | Action::Quit => {
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
            Action::HandOver(what) => return vec![Wish::AskHandOver(what)],
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
}
