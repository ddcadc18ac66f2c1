//! Which file does the person mean?
//!
//! The desktop's own dialog is asked for in a thread. Where there is none the person types the
//! path into a field of the window, so that a file can always be saved.

use std::ffi::OsString;
use std::future::Future;
use std::path::{Path, PathBuf};
use std::pin::pin;
use std::task::{Context, Poll, Wake, Waker};
use std::time::{Duration, Instant};

use super::mail::{Mail, Post, Purpose};

/// A dialog closed sooner than this was never there.
const NO_PERSON: Duration = Duration::from_millis(400);

/// Whether the desktop may have a dialog: a message bus to ask over, or a program that shows one.
/// `variable` gives a variable of the environment.
pub(super) fn may_have_one(variable: impl Fn(&str) -> Option<OsString>) -> bool {
    if !cfg!(all(unix, not(target_os = "macos"))) {
        return true;
    }
    let bus = variable("XDG_RUNTIME_DIR").map(|folder| PathBuf::from(folder).join("bus"));
    variable("DBUS_SESSION_BUS_ADDRESS").is_some_and(|address| !address.is_empty())
        || bus.is_some_and(|bus| bus.exists())
        || variable("PATH").is_some_and(|path| {
            std::env::split_paths(&path).any(|folder| folder.join("zenity").is_file())
        })
}

/// Asks for a file beside `near`; the answer comes by mail.
pub(super) fn ask(purpose: Purpose, near: Option<&Path>, post: Post) {
    let mut dialog = match purpose {
        Purpose::HandOver(what) => {
            rfd::AsyncFileDialog::new().add_filter(what.name(), what.endings())
        }
        _ => rfd::AsyncFileDialog::new().add_filter("Bay file", &["ron"]),
    };
    dialog = dialog.add_filter("Any file", &["*"]);
    let folder = near
        .and_then(|near| std::path::absolute(near).ok())
        .and_then(|near| near.parent().map(Path::to_path_buf));
    if let Some(folder) = folder {
        dialog = dialog.set_directory(folder);
    }
    if purpose == Purpose::Save {
        let name = near.and_then(Path::file_name);
        dialog = dialog
            .set_file_name(name.map_or_else(|| "my-bay.ron".into(), |name| name.to_string_lossy()));
    }
    if let Purpose::HandOver(what) = purpose {
        let place = what.place(near);
        dialog = dialog.set_file_name(place.file_name().unwrap_or_default().to_string_lossy());
    }
    std::thread::spawn(move || {
        let start = Instant::now();
        let chosen = match purpose {
            Purpose::Open => wait(dialog.set_title("Open a bay file").pick_file()),
            Purpose::Readings => wait(dialog.set_title("A file of tape readings").pick_file()),
            Purpose::Beside => wait(
                dialog
                    .set_title("A bay file to show beside this one")
                    .pick_file(),
            ),
            Purpose::Save => wait(dialog.set_title("Save the bay file as").save_file()),
            Purpose::HandOver(what) => wait(dialog.set_title(what.name()).save_file()),
        };
        post.send(Mail::Chosen {
            purpose,
            at_once: chosen.is_none() && start.elapsed() < NO_PERSON,
            path: chosen.map(|file| file.path().to_path_buf()),
        });
    });
}

/// Waits for a future in this thread.
fn wait<T>(future: impl Future<Output = T>) -> T {
    struct Unpark(std::thread::Thread);
    impl Wake for Unpark {
        fn wake(self: std::sync::Arc<Self>) {
            self.0.unpark();
        }
    }
    let waker = Waker::from(std::sync::Arc::new(Unpark(std::thread::current())));
    let mut future = pin!(future);
    loop {
        match future.as_mut().poll(&mut Context::from_waker(&waker)) {
            Poll::Ready(value) => return value,
            Poll::Pending => std::thread::park(),
        }
    }
}
