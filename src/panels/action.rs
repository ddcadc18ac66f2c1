//! What can be asked for, and what does the window have to do for it?

use std::path::PathBuf;

use super::camera::Sight;
use super::hand_over::HandOver;
use super::settings::{Section, Theme};
use crate::bayfile::options::Pick;
use crate::report::compare::Sort;

/// Something a person asked for, by mouse, key or menu. Panels push them; [`super::Desk::apply`]
/// carries them out.
#[derive(Debug, Clone, PartialEq)]
pub enum Action {
    // The document.
    /// Set the value at a path of the bay file to this RON source.
    Set {
        /// The path, as in [`crate::bayfile::edit::set`].
        path: String,
        /// RON source.
        value: String,
    },
    /// Take a field or a list item out of the bay file.
    Remove {
        /// The path.
        path: String,
    },
    /// Add an item to a list of the bay file.
    Append {
        /// The list's path.
        list: String,
        /// RON source of the item.
        item: String,
    },
    /// Several changes of the bay file, as one step to undo; all of them or none.
    Together(Vec<Change>),
    /// Take back the last change.
    Undo,
    /// Make it again.
    Redo,
    /// Start from a file that `bayrise new` would write.
    New,
    /// Choose a file to open.
    Open,
    /// Open this file.
    OpenFile(PathBuf),
    /// Save to the file it came from, or choose one.
    Save,
    /// The same, and then what was asked for before; the answer to the question whether to save.
    SaveAndLeave,
    /// Choose a file and save there.
    SaveAs,
    /// Choose a file and write there what other hands need.
    HandOver(HandOver),
    /// Take the file on disk, losing changes that were not saved; asked for by name.
    Reload,
    /// Take over the autosave that was found after a crash.
    TakeAutosave,
    /// Not now: what was kept is offered again next time.
    PutOffAutosave,
    /// Throw away what was kept.
    DropAutosave,
    /// Open one combination of what was compared as a bay of its own, not saved yet.
    OpenCell(Pick),
    /// Choose a file of tape readings, to be told where the posts stand.
    AskAsBuilt,
    /// Say where the posts stand by the readings of this file.
    AsBuilt(PathBuf),
    /// Close what was said of the readings.
    DropAsBuilt,
    /// Choose a file to put beside the open bay.
    AskBeside,
    /// Put the bay of this file beside the open one.
    PutBeside(PathBuf),
    /// Put one combination of what was compared beside the open bay.
    CellBeside(Pick),
    /// Take the bay beside the open one away.
    TakeBesideAway,
    /// Leave; as for a new or another file, asks first when something is not saved.
    Quit,
    /// Stay with the document after all.
    Stay,
    /// Go on with what was asked for, without saving.
    LeaveUnsaved,

    // The rise.
    /// Bring the carriage to this travel, metres.
    Travel(f64),
    /// Bring the carriage to this lock, counted from 1.
    ToLock(usize),
    /// To the next lock above.
    LockUp,
    /// To the next lock below, or the floor.
    LockDown,
    /// To the highest safe lock.
    ToSafeLock,
    /// Down to the floor.
    ToFloor,
    /// Up to full travel.
    ToTop,
    /// Play or pause the raise.
    PlayPause,
    /// Some seconds of playing have gone by.
    Tick(f64),

    // The door.
    /// Bring the door to this share of its way: 0 shut, 1 open.
    Door(f64),
    /// Shut when open, open when shut.
    DoorToggle,

    // The view.
    /// Look from one of the named places, everything in the frame.
    Look(Sight),
    /// Turn about the middle of the view: to the right and up, radians.
    Orbit(f64, f64),
    /// Move the view across itself: to the right and up, shares of the view's height.
    Pan(f64, f64),
    /// Nearer (under 1) or farther (over 1).
    Zoom(f64),
    /// Everything in the frame, from where it is looked at now.
    FrameAll,
    /// Parallel lines stay parallel, or not.
    Parallel(bool),
    /// Cut the bay open across at this place along its depth, metres from the door wall; none for
    /// whole.
    Cut(Option<f64>),
    /// Look at this pair (moving, fixed) and keep it lit.
    ShowPair(String, String),
    /// Let the lit pair go.
    DropPair,

    // How it looks.
    /// Show or hide the people under the vehicle.
    People(bool),
    /// Show or hide the dimension lines.
    Dimensions(bool),
    /// Show or hide the figures of the sections at their places.
    Marks(bool),
    /// Show mode on or off.
    ShowMode(bool),
    /// The help sheet on or off.
    Help(bool),
    /// Show a part of the bay file in the edit panel; none hides the panel.
    Section(Option<Section>),
    /// Show or hide the table of what was compared.
    ShowCompared(bool),
    /// Put its rows into this order.
    SortCompared(Sort),
    /// List only rows with this in them.
    FilterCompared(String),
    /// Tell a combination in full below the rows; none tells none.
    DetailCompared(Option<Pick>),
    /// Light or dark.
    Theme(Theme),
    /// Text larger (over 1) or smaller (under 1), by this factor.
    TextScale(f64),
    /// Tell the person something that went wrong.
    Tell(String),
    /// Take away a notice, by its index.
    DropNotice(usize),
}

/// A change of the bay file's text; paths as in [`crate::bayfile::edit`].
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Change {
    /// Set the value at a path.
    Set {
        /// The path.
        path: String,
        /// RON source.
        value: String,
    },
    /// Take a field or a list item out.
    Remove {
        /// The path.
        path: String,
    },
    /// Add an item to a list.
    Append {
        /// The list's path.
        list: String,
        /// RON source of the item.
        item: String,
    },
}

/// Something that only the window can do.
#[derive(Debug, Clone, PartialEq)]
pub enum Wish {
    /// Ask for a file to open.
    AskOpen,
    /// Ask for a file of tape readings.
    AskAsBuilt,
    /// Read these tape readings and say where the posts stand.
    AsBuilt(PathBuf),
    /// Ask for a file to put beside the open bay.
    AskBeside,
    /// Read this file; then [`super::Desk::put_beside`] or a notice.
    ReadBeside(PathBuf),
    /// Ask for a file to save to; then [`super::Desk::save_to`].
    AskSaveAs,
    /// Ask for a file to write this to, make it and write it.
    AskHandOver(HandOver),
    /// Make this of the bay as it stands and write it there; then tell where it is.
    HandOver {
        /// What.
        what: HandOver,
        /// The file.
        path: PathBuf,
    },
    /// Read this file; then [`super::Desk::opened`] or a notice.
    Read(PathBuf),
    /// Write this text to this file in one step; then [`super::Desk::saved`] or a notice.
    Write {
        /// The file.
        path: PathBuf,
        /// Its new content.
        text: String,
    },
    /// What was kept is on the desk now; it goes away once that is saved.
    TookAutosave,
    /// What was kept stays for another time.
    PutOffAutosave,
    /// Take away what was kept.
    ForgetAutosave,
    /// Full screen on or off.
    FullScreen(bool),
    /// Leave now.
    Close,
}
