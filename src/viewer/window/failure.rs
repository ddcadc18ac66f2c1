//! What is said when the window can't be made, or can't go on?
//!
//! The engine ends in a panic where a display or driver turns out not to work. Whatever can be
//! known before is asked before; for the rest a hook turns the panic into one message for people
//! and ends the program with the status for "no display or no driver".

use std::io::Write as _;
use std::panic;
use std::path::PathBuf;

use super::autosave::Rescue;
use crate::viewer::Fault;

/// Status of a program that was asked for a window and could not show one.
const EXIT: i32 = 3;

/// What to install for a driver.
const DRIVER: &str = "install a Vulkan driver (on Debian and Ubuntu: mesa-vulkan-drivers, which \
                      also draws without a graphics card); `bayrise check` needs none";

/// What to do where a device was lost.
const LOST: &str = "start the window again; if it happens often, update the driver";

/// No panic is shown from here on: each ends the program with a message of ours, after what was
/// not saved has been put beside the file.
pub(super) fn watch_for_panics(rescue: Rescue) {
    panic::set_hook(Box::new(move |info| {
        let said = info
            .payload()
            .downcast_ref::<&str>()
            .map(|text| (*text).to_owned())
            .or_else(|| info.payload().downcast_ref::<String>().cloned())
            .unwrap_or_default();
        let kept = rescue.write();
        let fault = from_panic(&said);
        end(&fault, kept);
    }));
}

/// Says why, and ends the program. `kept` is where unsaved changes went.
pub(super) fn end(fault: &Fault, kept: Option<PathBuf>) -> ! {
    let mut out = std::io::stderr().lock();
    // Where standard error is gone there is nobody to tell.
    let _ = writeln!(out, "error: {}\n  help: {}", fault.what, fault.help);
    if let Some(kept) = kept {
        let _ = writeln!(
            out,
            "  what was not saved is kept in {}; it is offered when the file is opened again",
            kept.display()
        );
    }
    std::process::exit(EXIT)
}

/// What a panic of the engine means to a person.
fn from_panic(said: &str) -> Fault {
    let line = said.lines().next().unwrap_or_default().trim();
    let has = |words: &[&str]| words.iter().any(|word| said.contains(word));
    let (what, help) = if has(&["event loop", "EventLoop"]) {
        (
            "the display can't be used".to_owned(),
            "check that the display is yours to use and that its libraries are installed (on \
             Debian and Ubuntu: libx11-xcb1 libxcursor1 libxi6 libxrandr2 libxkbcommon-x11-0); \
             `bayrise check` needs no display",
        )
    } else if has(&["Unable to find a GPU", "request_adapter", "RequestDevice"]) {
        ("there is no working graphics driver".to_owned(), DRIVER)
    } else if has(&[
        "device is lost",
        "device lost",
        "DeviceLost",
        "Device is lost",
    ]) {
        return lost();
    } else if has(&["Validation Error", "wgpu error", "Error in "]) {
        // What the engine was at when its device went away.
        return Fault {
            what: "the graphics driver stopped drawing (the device was lost, or refused to go on)"
                .into(),
            help: format!("{LOST}; when it does not help, report this: {line}"),
        };
    } else if has(&["surface", "Surface"]) {
        (
            "the graphics driver can't draw into a window".to_owned(),
            DRIVER,
        )
    } else if has(&["create window", "window"]) {
        (
            "the window can't be made".to_owned(),
            "check that the display works for other programs; `bayrise check` needs no display",
        )
    } else {
        (
            "the window had to stop".to_owned(),
            "start it again; when it stops again, report this message with the bay file",
        )
    };
    Fault {
        what: if line.is_empty() {
            what
        } else {
            format!("{what}: {line}")
        },
        help: help.into(),
    }
}

/// The driver gave the graphics card up.
pub(super) fn lost() -> Fault {
    Fault {
        what: "the graphics driver stopped drawing (the device was lost)".into(),
        help: LOST.into(),
    }
}

/// Drawing failed in another way.
pub(super) fn render(why: &str) -> Fault {
    Fault {
        what: format!(
            "drawing failed: {}",
            why.lines().next().unwrap_or_default().trim()
        ),
        help: DRIVER.into(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_panic_of_the_engine_is_told_as_what_it_means() {
        for (said, expect) in [
            (
                "Failed to build event loop: Os(OsError { .. })",
                "the display can't be used",
            ),
            (
                "Unable to find a GPU! Make sure you have installed required drivers!",
                "no working graphics driver",
            ),
            (
                "Failed to create wgpu surface: CreateSurfaceError",
                "can't draw into a window",
            ),
            ("Parent device is lost", "device was lost"),
            (
                "Error in Buffer::get_mapped_range: Validation Error",
                "device was lost",
            ),
            ("Failed to create window", "window can't be made"),
            (
                "index out of bounds\nsecond line",
                "had to stop: index out of bounds",
            ),
            ("", "had to stop"),
        ] {
            let fault = from_panic(said);
            assert!(fault.what.contains(expect), "{said}: {fault}");
            assert!(!fault.what.contains('\n'), "{fault}");
            assert!(!fault.help.is_empty());
        }
    }
}
