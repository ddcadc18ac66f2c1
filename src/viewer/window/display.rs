//! Is there a display to open a window on?
//!
//! Asked before the engine is started, since the engine can't be stopped once it finds none.

use std::ffi::OsString;

use crate::viewer::Fault;

/// Why no window can be opened here, as far as that is known without trying; none when it may
/// work. `variable` gives a variable of the environment.
#[cfg(all(unix, not(target_os = "macos")))]
pub(super) fn fault(variable: impl Fn(&str) -> Option<OsString>) -> Option<Fault> {
    let set = |name: &str| variable(name).filter(|value| !value.is_empty());
    // The order in which the engine's window library decides.
    if set("WAYLAND_SOCKET").is_some() {
        return None;
    }
    if let Some(name) = set("WAYLAND_DISPLAY") {
        let path = std::path::PathBuf::from(set("XDG_RUNTIME_DIR").unwrap_or_default()).join(&name);
        return std::os::unix::net::UnixStream::connect(path)
            .err()
            .map(|why| {
                refused(
                    &format!("WAYLAND_DISPLAY={}", name.display()),
                    &why.to_string(),
                )
            });
    }
    let Some(name) = set("DISPLAY") else {
        return Some(Fault {
            what: "there is no display (neither DISPLAY nor WAYLAND_DISPLAY is set)".into(),
            help: "run it on a desktop, or over `ssh -X`; `bayrise check` needs no display".into(),
        });
    };
    let name = name.to_string_lossy();
    x11::connect(&name)
        .err()
        .map(|why| refused(&format!("DISPLAY={name}"), &why.to_string()))
}

/// Other systems always have a display.
#[cfg(not(all(unix, not(target_os = "macos"))))]
pub(super) fn fault(_variable: impl Fn(&str) -> Option<OsString>) -> Option<Fault> {
    None
}

#[cfg(all(unix, not(target_os = "macos")))]
fn refused(which: &str, why: &str) -> Fault {
    Fault {
        what: format!("the display can't be reached ({which}: {why})"),
        help: "start the display, or correct the variable; `bayrise check` needs no display".into(),
    }
}

#[cfg(all(unix, not(target_os = "macos")))]
mod x11 {
    use std::io;
    use std::net::{TcpStream, ToSocketAddrs as _};
    use std::os::unix::net::UnixStream;
    use std::time::Duration;

    /// Connects to a display named as in `host:display.screen`, and lets go of it again.
    pub(super) fn connect(name: &str) -> io::Result<()> {
        let bad = || io::Error::new(io::ErrorKind::InvalidInput, "it names no display");
        let (host, rest) = name.rsplit_once(':').ok_or_else(bad)?;
        let number = rest.split('.').next().unwrap_or_default();
        let number: u16 = number.parse().map_err(|_| bad())?;
        if matches!(host, "" | "unix") {
            return local(number);
        }
        let port = number.checked_add(6000).ok_or_else(bad)?;
        let mut last = bad();
        for address in (host, port).to_socket_addrs()? {
            match TcpStream::connect_timeout(&address, Duration::from_secs(2)) {
                Ok(_) => return Ok(()),
                Err(error) => last = error,
            }
        }
        Err(last)
    }

    fn local(number: u16) -> io::Result<()> {
        let path = format!("/tmp/.X11-unix/X{number}");
        let by_file = UnixStream::connect(&path);
        #[cfg(target_os = "linux")]
        if by_file.is_err() {
            use std::os::linux::net::SocketAddrExt as _;
            let address = std::os::unix::net::SocketAddr::from_abstract_name(path)?;
            if UnixStream::connect_addr(&address).is_ok() {
                return Ok(());
            }
        }
        by_file.map(drop)
    }
}

#[cfg(all(test, unix, not(target_os = "macos")))]
mod tests {
    use super::*;

    fn with(set: &[(&str, &str)]) -> Option<Fault> {
        fault(|name| {
            set.iter()
                .find(|(known, _)| *known == name)
                .map(|(_, value)| OsString::from(value))
        })
    }

    #[test]
    fn no_display_is_said_with_what_to_do() {
        let fault = with(&[]).unwrap();
        assert!(fault.what.contains("no display"), "{fault}");
        assert!(fault.help.contains("bayrise check"), "{}", fault.help);
        assert_eq!(
            with(&[("DISPLAY", "")]),
            Some(fault),
            "empty counts as unset"
        );
    }

    #[test]
    fn a_display_that_is_not_there_is_named() {
        for set in [
            [("DISPLAY", ":63999")],
            [("DISPLAY", "nonsense")],
            [("WAYLAND_DISPLAY", "no-such-socket")],
        ] {
            let fault = with(&set).unwrap();
            assert!(fault.what.contains(set[0].1), "{fault}");
        }
    }

    #[test]
    fn a_display_that_answers_is_no_fault() {
        let folder = tempfile::tempdir().unwrap();
        let _listener =
            std::os::unix::net::UnixListener::bind(folder.path().join("wayland-9")).unwrap();
        let folder = folder.path().to_str().unwrap();
        let set = [
            ("WAYLAND_DISPLAY", "wayland-9"),
            ("XDG_RUNTIME_DIR", folder),
        ];
        assert_eq!(with(&set), None);
    }
}
