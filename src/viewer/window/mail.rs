//! What do threads tell the window?
//!
//! The window sleeps until something happens; whoever tells it something wakes it too.

use std::path::PathBuf;
use std::sync::Mutex;
use std::sync::mpsc::{self, Receiver, Sender};
use std::time::Duration;

use bevy::ecs::resource::Resource;
use bevy::winit::{EventLoopProxy, WinitUserEvent};

use crate::panels::as_built::AsBuilt;
use crate::panels::compared::TurnedBay;
use crate::panels::hand_over::HandOver;
use crate::panels::job::Done;
use crate::panels::{Compared, Desk};

/// News from a thread.
#[derive(Debug)]
pub(super) enum Mail {
    /// A study is finished, and took this long.
    Studied(Box<Done>, Duration),
    /// The file dialog was closed.
    Chosen {
        /// What the file was asked for.
        purpose: Purpose,
        /// The file; none when nothing was chosen or no dialog could be shown.
        path: Option<PathBuf>,
        /// It was closed sooner than a person can: there was none.
        at_once: bool,
    },
    /// The watched file was looked at and holds this text.
    OnDisk(PathBuf, String),
    /// The watched file was looked at and can't be read any more; why.
    Gone(PathBuf, String),
    /// Something happened about a preset that the watched file asks for.
    PresetNoticed,
    /// What tape readings say.
    AsBuilt(AsBuilt),
    /// A bay to put beside the open one, studied.
    Beside(Box<Desk>),
    /// Something to tell the person.
    Trouble(String),
    /// What a file of options lists was studied.
    Compared(Box<Compared>),
    /// The answers the other way round for a combination.
    Turned(Box<TurnedBay>),
    /// Something that went well, to tell the person.
    Told(String),
}

/// What a file is asked for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Purpose {
    /// To open it.
    Open,
    /// To put it beside the open one.
    Beside,
    /// To read the tape readings in it.
    Readings,
    /// To save to it.
    Save,
    /// To write something for other hands to it.
    HandOver(HandOver),
}

/// Sends mail from any thread.
#[derive(Debug, Clone)]
pub(super) struct Post {
    to: Sender<Mail>,
    wake: EventLoopProxy<WinitUserEvent>,
}

impl Post {
    /// Sends it. A window that is gone needs no news.
    pub(super) fn send(&self, mail: Mail) {
        if self.to.send(mail).is_ok() {
            let _ = self.wake.send_event(WinitUserEvent::WakeUp);
        }
    }
}

/// Where mail arrives.
#[derive(Debug, Resource)]
pub(super) struct Letterbox(Mutex<Receiver<Mail>>);

impl Letterbox {
    /// A letterbox and the way to it.
    pub(super) fn new(wake: EventLoopProxy<WinitUserEvent>) -> (Self, Post) {
        let (to, from) = mpsc::channel();
        (Self(Mutex::new(from)), Post { to, wake })
    }

    /// The next letter.
    pub(super) fn take(&self) -> Option<Mail> {
        self.0.lock().ok()?.try_recv().ok()
    }
}
