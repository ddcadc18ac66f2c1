//! What the window hands over: what the command of that name writes, of the text as it stands there.

use std::ffi::OsString;
use std::path::Path;

use clap::Parser as _;

use super::Failure;
use super::arguments::{Arguments, Format};
use super::load::of_bytes;
use super::options::{Day, Task};
use super::{asbuilt, card, layout, model, picture, record, report, worksheet};
use crate::diagnostics::{Style, render};
use crate::ground::Date;
use crate::panels::hand_over::HandOver;
use crate::report::on_one_line;
use crate::report::text::Look;

/// Makes it and writes it to `out`, as the command line would without options; what is said of it
/// comes back. `file` is where the text came from, or would be saved.
///
/// # Errors
/// In words for people, ending without a full stop; nothing is then written.
pub(crate) fn make_and_write(
    what: HandOver,
    file: &Path,
    text: Vec<u8>,
    out: &Path,
    on: Option<Date>,
) -> Result<String, String> {
    let said = |failure: Failure| failure.said().trim_end_matches('.').to_owned();
    let mut words: Vec<OsString> = vec!["bayrise".into(), what.command().into()];
    if what.is_of_the_bay() {
        words.push(file.into());
    }
    words.push(out.into());
    // Today is nobody's wish.
    let on = on.filter(|on| *on != Day::today().on);
    if let Some(on) = on.filter(|_| what.is_of_the_bay()) {
        words.extend(["--on".into(), on.to_string().into()]);
    }
    let typed = Arguments::try_parse_from(words).map_err(|error| error.to_string())?;
    let task = Task::resolve(typed).map_err(said)?;
    if let Task::Worksheet(options) = &task {
        return worksheet::written(options)
            .map(|text| lines(&text))
            .map_err(said);
    }
    let loaded = of_bytes(file, text).map_err(said)?;
    let written = match &task {
        Task::Layout(options) => layout::written(options, &loaded),
        Task::Card(options) => card::written(options, std::slice::from_ref(&loaded)),
        Task::Report(options) => report::written(options, &loaded),
        Task::Model(options) => model::written(options, &loaded),
        Task::Record(options) => record::written(options, &loaded),
        Task::Picture(options) => match picture::draw(options, &loaded).map_err(said)? {
            Ok(note) => {
                let place = on_one_line(&out.display().to_string());
                Ok(note.map_or(place.clone(), |note| format!("{place}: {note}")))
            }
            Err(fault) => return Err(format!("{}: {}", fault.what, fault.help)),
        },
        _ => return Err("the program does not know how".into()),
    };
    written.map(|text| lines(&text)).map_err(said)
}

/// What the command `asbuilt` says of the readings in a file, as text.
///
/// # Errors
/// In words for people, ending without a full stop.
pub(crate) fn as_built(
    file: &Path,
    text: Vec<u8>,
    readings: &Path,
    on: Option<Date>,
) -> Result<String, String> {
    // A window has room for the first fault.
    let said = |failure: Failure| match &failure {
        Failure::Faults(faults) if !faults.is_empty() => faults[0].to_string(),
        _ => failure.said().trim_end_matches('.').to_owned(),
    };
    let loaded = of_bytes(file, text).map_err(said)?;
    let options = asbuilt::AsBuiltOptions {
        file: file.into(),
        readings: readings.into(),
        format: Format::Text,
        day: on.map_or_else(Day::today, |on| Day { on, asked: false }),
    };
    let built = asbuilt::said(&options, &loaded, Look::default()).map_err(said)?;
    let mut text = built.text;
    if !built.warnings.is_empty() {
        text.push('\n');
        text.push_str(&render(&built.warnings, Style::default()));
    }
    Ok(text)
}

/// Several lines as one, without the full stop at its end.
fn lines(text: &str) -> String {
    let lines: Vec<&str> = text.lines().collect();
    lines.join("; ").trim_end_matches('.').to_owned()
}

#[cfg(test)]
mod tests {
    use std::path::PathBuf;

    use super::*;

    const SCENE: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/scenes/coupe-full-rise.ron");

    #[test]
    fn what_is_said_of_readings_has_the_verdict_and_tells_what_is_wrong() {
        let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/scenes/asbuilt");
        let bay = Path::new(folder).join("sail-loft.ron");
        let text = || std::fs::read(&bay).unwrap();
        let readings = Path::new(folder).join("sail-loft-measured.ron");
        let said = as_built(&bay, text(), &readings, None).unwrap();
        assert!(said.contains("With the posts where they stand"), "{said}");
        // The bay file itself holds no readings.
        let why = as_built(&bay, text(), &bay, None).unwrap_err();
        assert!(why.contains("sail-loft.ron"), "{why}");
    }

    #[test]
    fn each_is_what_its_command_writes() {
        let folder = tempfile::tempdir().unwrap();
        let on = Some(Date::constant(2026, 11, 28));
        let text = std::fs::read(SCENE).unwrap();
        for what in HandOver::ALL {
            if what == HandOver::Picture {
                // Needs an engine: tests/window makes one.
                continue;
            }
            let out: PathBuf = folder.path().join(what.command());
            let out = what.with_ending(out).unwrap();
            let said = make_and_write(what, Path::new(SCENE), text.clone(), &out, on).unwrap();
            assert!(said.starts_with(&out.display().to_string()), "{said}");
            assert!(std::fs::metadata(&out).unwrap().len() > 1000, "{said}");
        }
    }

    #[test]
    fn a_text_with_faults_writes_nothing() {
        let folder = tempfile::tempdir().unwrap();
        let out = folder.path().join("card.pdf");
        let file = Path::new(SCENE);
        let why = make_and_write(HandOver::Card, file, b"(".to_vec(), &out, None);
        assert!(why.is_err() && !out.exists(), "{why:?}");
    }

    #[test]
    fn what_is_not_saved_yet_is_what_is_written() {
        let folder = tempfile::tempdir().unwrap();
        let text = String::from_utf8(std::fs::read(SCENE).unwrap()).unwrap();
        let changed = text.replace("Aron's sail loft", "A name not saved");
        assert_ne!(text, changed);
        let out = folder.path().join("page.html");
        make_and_write(
            HandOver::Report,
            Path::new(SCENE),
            changed.into_bytes(),
            &out,
            None,
        )
        .unwrap();
        assert!(
            std::fs::read_to_string(out)
                .unwrap()
                .contains("A name not saved")
        );
    }
}
