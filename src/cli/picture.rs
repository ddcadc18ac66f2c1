//! `bayrise picture`, and `check --picture`: the bay as a file to look at.

use std::path::{Path, PathBuf};

use indicatif::{ProgressBar, ProgressStyle};

use super::files::{can_be_written, replace};
use super::load::{Loaded, load};
use super::terminal::{complain, note, print};
use super::{Exit, Failure};
use crate::ground::Date;
use crate::letters;
use crate::solids::DoorTravel;
use crate::viewer::order::{PictureError, PictureKind, PictureOrder, Stop, ViewFrom};
use crate::viewer::{self, Fault};

/// What is to be drawn, and where it is to be written.
#[derive(Debug, Clone)]
pub(super) struct PictureOptions {
    pub(super) file: PathBuf,
    pub(super) out: PathBuf,
    pub(super) stop: Stop,
    pub(super) from: ViewFrom,
    pub(super) size: [u32; 2],
    pub(super) door: Option<DoorTravel>,
    pub(super) captions: bool,
    pub(super) people: bool,
    pub(super) kind: PictureKind,
    /// Another bay on the right half, to the same scale.
    pub(super) beside: Option<PathBuf>,
    /// The day that ages are counted to.
    pub(super) on: Date,
}

/// The picture alone.
pub(super) fn run(options: &PictureOptions) -> Result<Exit, Failure> {
    let loaded = load(&options.file)?;
    Ok(match draw(options, &loaded)? {
        Ok(said) => {
            print(&format!("{}\n", written(options)))?;
            said.iter().for_each(|text| note(text));
            Exit::Met
        }
        Err(fault) => without(fault),
    })
}

/// A picture that can't be drawn here ends the program so.
pub(super) fn without(fault: Fault) -> Exit {
    complain(&Failure::new(fault.what, fault.help));
    Exit::NoDisplay
}

/// What is wanted of one bay.
fn order(options: &PictureOptions, file: &Path, loaded: &Loaded) -> Result<PictureOrder, Failure> {
    let locks = loaded.bay.lift.locks.len();
    if let Stop::Lock(lock) = options.stop
        && lock > locks
    {
        return Err(Failure::new(
            format!("--lock: the lift of {} has no lock {lock}", file.display()),
            format!("its locks are 1 to {locks}"),
        ));
    }
    let text = String::from_utf8(loaded.bytes.clone()).map_err(|_| {
        Failure::new(
            format!("{} is no text", file.display()),
            "name a bay file, as in `bayrise picture my-bay.ron bay.png`",
        )
    })?;
    Ok(PictureOrder {
        file: file.into(),
        on: options.on,
        text,
        presets: loaded.presets.clone(),
        stop: options.stop,
        from: options.from,
        size: options.size,
        door: options.door,
        captions: options.captions,
        people: options.people,
        kind: options.kind,
    })
}

/// Draws the picture and writes it; the inner error is for want of a driver. What the person
/// should know about the picture comes back.
pub(super) fn draw(
    options: &PictureOptions,
    loaded: &Loaded,
) -> Result<Result<Option<String>, Fault>, Failure> {
    // Before the work, not after it.
    can_be_written(&options.out, &loaded.inputs)?;
    let order = order(options, &options.file, loaded)?;
    let other = match &options.beside {
        Some(file) => {
            let beside = load(file)?;
            can_be_written(&options.out, &beside.inputs)?;
            Some(self::order(options, file, &beside)?)
        }
        None => None,
    };
    let bar = match options.kind {
        PictureKind::Png => ProgressBar::hidden(),
        PictureKind::Gif => ProgressBar::new(0),
    };
    if let Ok(style) = ProgressStyle::with_template("drawing {bar:40} {pos}/{len}, {eta} left") {
        bar.set_style(style);
    }
    let mut progress = |done: usize, all: usize| {
        bar.set_length(all as u64);
        bar.set_position(done as u64);
    };
    let made = match other {
        Some(other) => viewer::beside([order, other], &mut progress),
        None => viewer::picture(order, &mut progress),
    };
    bar.finish_and_clear();
    match made {
        Ok(made) => {
            replace(&options.out, &made.bytes)?;
            Ok(Ok(made.note))
        }
        Err(PictureError::Fault(fault)) => Ok(Err(fault)),
        Err(PictureError::TooSmall) => {
            let [width, height] = options.size;
            Err(Failure::new(
                format!("--size {width}x{height}: verdict and cautions can't be read at this size"),
                "give the picture more pixels (1280x720 is enough for a bay), or leave the verdict out with \
                 `--captions off`",
            ))
        }
        Err(PictureError::NoRaise) => Err(Failure::new(
            format!(
                "{}: no lock is safe, so there is no raise to show",
                options.file.display()
            ),
            "`bayrise check` says why; `--lock N` or `--lock top` shows the rise up to there, with \
             what it meets",
        )),
        Err(PictureError::NotStudied(why)) => Err(Failure::new(
            format!("{}: {why}", options.file.display()),
            "without it nothing can be said of the rise: correct it in the bay file",
        )),
    }
}

/// What is said of a picture that was written.
pub(super) fn written(options: &PictureOptions) -> String {
    let [width, height] = options.size;
    let what = match options.kind {
        PictureKind::Png => "a picture",
        PictureKind::Gif => "the raise as an animation",
    };
    format!("{}: {what}, {width} x {height} pixels", shown(&options.out))
}

/// Names of files may hold anything; a terminal gets nothing from them that it would act on.
fn shown(path: &Path) -> String {
    letters::shown(&path.display().to_string())
}
