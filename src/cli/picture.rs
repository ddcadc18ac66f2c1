//! `bayrise picture`, and `check --picture`: the bay as a file to look at.

use std::path::{Path, PathBuf};

use indicatif::{ProgressBar, ProgressStyle};

use super::files::{can_be_written, replace};
use super::load::{Loaded, load};
use super::terminal::{complain, note, print};
use super::{Exit, Failure};
use crate::ground::Date;
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

/// Draws the picture and writes it; the inner error is for want of a driver. What the person
/// should know about the picture comes back.
pub(super) fn draw(
    options: &PictureOptions,
    loaded: &Loaded,
) -> Result<Result<Option<String>, Fault>, Failure> {
    let bay = &loaded.bay;
    if let Stop::Lock(lock) = options.stop
        && lock > bay.lift.locks.len()
    {
        return Err(Failure::new(
            format!("--lock: this lift has no lock {lock}"),
            format!("its locks are 1 to {}", bay.lift.locks.len()),
        ));
    }
    // Before the work, not after it.
    can_be_written(&options.out)?;
    let text = String::from_utf8(loaded.bytes.clone()).map_err(|_| {
        Failure::new(
            format!("{} is no text", options.file.display()),
            "name a bay file, as in `bayrise picture my-bay.ron bay.png`",
        )
    })?;
    let order = PictureOrder {
        file: options.file.clone(),
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
    };
    let bar = match options.kind {
        PictureKind::Png => ProgressBar::hidden(),
        PictureKind::Gif => ProgressBar::new(0),
    };
    if let Ok(style) = ProgressStyle::with_template("drawing {bar:40} {pos}/{len}, {eta} left") {
        bar.set_style(style);
    }
    let made = viewer::picture(order, &mut |done, all| {
        bar.set_length(all as u64);
        bar.set_position(done as u64);
    });
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
                "give the picture more pixels (1280x720 is enough), or leave the verdict out with \
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

/// Names of files may hold anything; a terminal gets no control characters from them.
fn shown(path: &Path) -> String {
    let name = path.display().to_string();
    name.chars().filter(|c| !c.is_control()).collect()
}
