//! The command line as resolved: every value read, nothing left to refuse later.

use std::path::{Path, PathBuf};

use super::Failure;
use super::arguments::{self, Arguments, Command, CompareFormat, Format, SchemaOf, Switch, Units};
use super::asbuilt::AsBuiltOptions;
use super::card::{self, CardOptions};
use super::compare::{CompareOptions, Written};
use super::layout::{self, LayoutOptions};
use super::model::ModelOptions;
use super::picture::PictureOptions;
use super::plan::PlanOptions;
use super::record::{self, RecordOptions};
use super::report::ReportOptions;
use super::sheets::{format_of, paper};
use super::worksheet::{self, WorksheetOptions};
use crate::bay::{Bay, UnitSystem};
use crate::drawing::layout::Part;
use crate::drawing::pages::PageFormat;
use crate::drawing::sheet::scale_of;
use crate::ground::{Date, ForDay};
use crate::report::Need;
use crate::report::compare::{Filter, FilterError, Sort};
use crate::solids::DoorTravel;
use crate::units::{Kind, Length, parse_length};
use crate::viewer;
use crate::viewer::order::{PictureKind, SIDES, Stop, ViewFrom};

/// What to do.
#[derive(Debug)]
pub(super) enum Task {
    /// Study a bay and print the report.
    Check(CheckOptions),
    /// Open the window.
    View {
        /// The bay file, or a file of options.
        file: PathBuf,
        /// Another bay file to show beside it.
        beside: Option<PathBuf>,
    },
    /// A file without a command: the verdict, then the window.
    Window(PathBuf),
    /// Say what is go, stop or not known before buying.
    Plan(PlanOptions),
    /// Where the posts stand.
    AsBuilt(AsBuiltOptions),
    /// Draw the sheets for the floor.
    Layout(LayoutOptions),
    /// Write the lock card.
    Card(CardOptions),
    /// Write the commissioning sheet and the yearly log.
    Record(RecordOptions),
    /// Write a model for other programs.
    Model(ModelOptions),
    /// Write the page for a customer.
    Report(ReportOptions),
    /// Put many bays side by side.
    Compare(CompareOptions),
    /// Draw a picture.
    Picture(PictureOptions),
    /// Print the solids.
    Solids(SolidsOptions),
    /// Print a report's schema.
    Schema(super::schema::Of),
    /// List the presets.
    Presets(Format),
    /// Write a file to start from.
    New(NewOptions),
    /// Write a file from answers.
    Ask(AskOptions),
    /// Draw the form to measure by.
    Worksheet(WorksheetOptions),
}

/// What `check` is to do.
#[derive(Debug)]
pub(super) struct CheckOptions {
    pub(super) file: PathBuf,
    pub(super) format: Format,
    pub(super) needs: Vec<Need>,
    pub(super) sample: Option<Sample>,
    /// The day that ages are counted to.
    pub(super) day: Day,
    /// Drawn as well.
    pub(super) picture: Option<PictureOptions>,
}

/// What sampled estimate is wanted.
#[derive(Debug, Clone, Copy)]
pub(super) struct Sample {
    pub(super) count: usize,
    pub(super) seed: u64,
}

/// What `solids` is to do.
#[derive(Debug)]
pub(super) struct SolidsOptions {
    pub(super) file: PathBuf,
    pub(super) travel: Length,
    pub(super) door: DoorTravel,
}

/// What `new` is to do.
#[derive(Debug)]
pub(super) struct NewOptions {
    pub(super) out: PathBuf,
    pub(super) lift: String,
    pub(super) vehicle: String,
    pub(super) units: UnitSystem,
    pub(super) replace: bool,
}

/// What `new --ask` is to do.
#[derive(Debug)]
pub(super) struct AskOptions {
    pub(super) out: PathBuf,
    pub(super) replace: bool,
}

impl Task {
    /// True when a picture is part of it, or a window that can be opened.
    pub(super) fn draws(&self) -> bool {
        match self {
            Self::Picture(_) => true,
            Self::View { .. } | Self::Window(_) => viewer::no_window().is_none(),
            Self::Check(check) => check.picture.is_some(),
            _ => false,
        }
    }

    /// Reads what was typed.
    pub(super) fn resolve(typed: Arguments) -> Result<Self, Failure> {
        Ok(match (typed.file, typed.command) {
            (_, Some(Command::Check(check))) => {
                let mut needs = Vec::new();
                if let Some(lock) = check.need_lock {
                    // A lock number too large for this machine is more than any lift has.
                    needs.push(Need::Lock(usize::try_from(lock).unwrap_or(usize::MAX)));
                }
                if let Some(text) = &check.need_underbody {
                    let height = length("--need-underbody", text)?;
                    if height <= Length::ZERO {
                        return Err(Failure::new(
                            format!("--need-underbody: {text:?} is no height"),
                            "write a height above zero, such as \"5 ft 10 in\"",
                        ));
                    }
                    needs.push(Need::Underbody(height));
                }
                let day = day(check.on.as_deref())?;
                let picture = check
                    .picture
                    .map(|out| as_usual(&check.file, out, check.on));
                Self::Check(CheckOptions {
                    file: check.file,
                    format: check.format,
                    needs,
                    sample: check.sample.map(|count| Sample {
                        count: usize::try_from(count).unwrap_or(usize::MAX),
                        seed: check.seed,
                    }),
                    day,
                    picture: picture.transpose()?,
                })
            }
            (_, Some(Command::Asbuilt(built))) => Self::AsBuilt(AsBuiltOptions {
                day: day(built.on.as_deref())?,
                file: built.file,
                readings: built.readings,
                format: built.format,
            }),
            (_, Some(Command::Plan(plan))) => Self::Plan(PlanOptions {
                day: day(plan.on.as_deref())?,
                file: plan.file,
                page: plan.page.map(page).transpose()?,
                format: plan.format,
            }),
            (_, Some(Command::Layout(typed))) => Self::Layout(layout(typed)?),
            (_, Some(Command::Card(typed))) => Self::Card(CardOptions {
                format: format_of(&typed.out, &card::FORMATS)?,
                paper: typed.pages.paper.map(paper),
                day: day(typed.pages.on.as_deref())?,
                files: typed.files,
                out: typed.out,
            }),
            (_, Some(Command::Record(typed))) => Self::Record(RecordOptions {
                format: format_of(&typed.out, &record::FORMATS)?,
                paper: typed.pages.paper.map(paper),
                day: day(typed.pages.on.as_deref())?,
                file: typed.file,
                out: typed.out,
            }),
            (_, Some(Command::Model(typed))) => Self::Model(ModelOptions {
                day: day(typed.on.as_deref())?,
                out: ends(typed.out, "glb", "model")?,
                file: typed.file,
            }),
            (_, Some(Command::Report(typed))) => Self::Report(ReportOptions {
                day: day(typed.on.as_deref())?,
                out: ends(typed.out, "html", "page")?,
                file: typed.file,
            }),
            (_, Some(Command::Compare(typed))) => Self::Compare(compare(typed)?),
            (_, Some(Command::Solids(solids))) => {
                let travel = length("--travel", &solids.travel)?;
                if travel < Length::ZERO {
                    return Err(Failure::new(
                        format!("--travel: {:?} is below the floor", solids.travel),
                        "write how far the carriage has climbed, from \"0 in\" up",
                    ));
                }
                Self::Solids(SolidsOptions {
                    file: solids.file,
                    travel,
                    door: door(&solids.door)?,
                })
            }
            (_, Some(Command::View(view))) => Self::View {
                file: view.file,
                beside: view.beside,
            },
            (_, Some(Command::Picture(typed))) => Self::Picture(picture(typed)?),
            (_, Some(Command::Schema(typed))) => Self::Schema(match typed.of {
                SchemaOf::Check => super::schema::Of::Check,
                SchemaOf::Compare => super::schema::Of::Compare,
                SchemaOf::Asbuilt => super::schema::Of::AsBuilt,
            }),
            (_, Some(Command::Presets(presets))) => Self::Presets(presets.format),
            (_, Some(Command::New(new))) => new_file(new),
            (_, Some(Command::Worksheet(typed))) => Self::Worksheet(WorksheetOptions {
                format: format_of(&typed.out, &worksheet::FORMATS)?,
                paper: paper(typed.paper),
                out: typed.out,
            }),
            (Some(file), None) => Self::Window(file),
            (None, None) => {
                return Err(Failure::new(
                    "no bay file and no command is given",
                    "try `bayrise --help`",
                ));
            }
        })
    }
}

/// A page to print, and how it is written.
fn page(out: PathBuf) -> Result<(PathBuf, PageFormat), Failure> {
    let format = format_of(&out, &[PageFormat::Pdf, PageFormat::Svg])?;
    Ok((out, format))
}

fn new_file(new: arguments::New) -> Task {
    match (new.ask, new.lift, new.vehicle) {
        (false, Some(lift), Some(vehicle)) => Task::New(NewOptions {
            out: new.out,
            lift,
            vehicle,
            units: match new.units {
                Units::Imperial => UnitSystem::Imperial,
                Units::Metric => UnitSystem::Metric,
            },
            replace: new.force,
        }),
        // The parser asks for both presets where nobody is to be asked.
        _ => Task::Ask(AskOptions {
            out: new.out,
            replace: new.force,
        }),
    }
}

/// A file that other programs know by its ending.
fn ends(out: PathBuf, ending: &str, what: &str) -> Result<PathBuf, Failure> {
    let found = out.extension().map(|e| e.to_string_lossy().to_lowercase());
    if found.as_deref() == Some(ending) {
        return Ok(out);
    }
    Err(Failure::new(
        format!("{}: no {what} has this ending", out.display()),
        format!("name a .{ending} file"),
    ))
}

fn layout(typed: arguments::Layout) -> Result<LayoutOptions, Failure> {
    Ok(LayoutOptions {
        format: format_of(&typed.out, &layout::FORMATS)?,
        paper: typed.pages.paper.map(paper),
        scale: typed.scale.as_deref().map(scale).transpose()?,
        full_size: typed.full_size.map(|part| match part {
            arguments::FloorPart::Lift => Part::Lift,
            arguments::FloorPart::Plan => Part::Plan,
        }),
        day: day(typed.pages.on.as_deref())?,
        file: typed.file,
        out: typed.out,
    })
}

fn compare(typed: arguments::Compare) -> Result<CompareOptions, Failure> {
    let filter = |text: &String| {
        text.parse::<Filter>().map_err(|FilterError| {
            Failure::new(
                format!("--filter: {text:?} is no filter"),
                "write safe, full-rise, slab-holds, slab-not-stopped, lift=NAME, vehicle=NAME, change=NAME, \
                 garage=NAME, \"underbody>=5 ft 10 in\" or \"cost<=4000\"",
            )
        })
    };
    Ok(CompareOptions {
        day: day(typed.on.as_deref())?,
        filters: typed.filter.iter().map(filter).collect::<Result<_, _>>()?,
        file: typed.file,
        format: match typed.format {
            CompareFormat::Text => Written::Text,
            CompareFormat::Json => Written::Json,
            CompareFormat::Csv => Written::Csv,
        },
        sort: match typed.sort {
            arguments::SortBy::File => Sort::File,
            arguments::SortBy::Lock => Sort::Lock,
            arguments::SortBy::Underbody => Sort::Underbody,
            arguments::SortBy::Cost => Sort::Cost,
            arguments::SortBy::Load => Sort::Load,
            arguments::SortBy::Way => Sort::Walking,
        },
        inverse: !typed.quick,
    })
}

/// The picture that goes with a check.
fn as_usual(file: &Path, out: PathBuf, on: Option<String>) -> Result<PictureOptions, Failure> {
    picture(arguments::Picture {
        beside: None,
        file: file.into(),
        out,
        lock: "safe".into(),
        from: arguments::From::Corner,
        size: None,
        door: None,
        captions: Switch::On,
        people: Switch::Off,
        on,
    })
}

fn picture(typed: arguments::Picture) -> Result<PictureOptions, Failure> {
    let kind = picture_kind(&typed.out)?;
    Ok(PictureOptions {
        stop: stop(&typed.lock)?,
        from: match typed.from {
            arguments::From::Corner => ViewFrom::Corner,
            arguments::From::Front => ViewFrom::Front,
            arguments::From::Side => ViewFrom::Side,
            arguments::From::Plan => ViewFrom::Plan,
            arguments::From::Door => ViewFrom::Door,
        },
        size: match (&typed.size, kind) {
            (Some(text), _) => picture_size(text)?,
            (None, PictureKind::Png) if typed.beside.is_some() => [1920, 800],
            (None, PictureKind::Gif) if typed.beside.is_some() => [1600, 640],
            (None, PictureKind::Png) => [1280, 720],
            (None, PictureKind::Gif) => [960, 540],
        },
        door: typed.door.as_deref().map(door).transpose()?,
        captions: typed.captions == Switch::On,
        people: typed.people == Switch::On,
        beside: typed.beside,
        kind,
        on: day(typed.on.as_deref())?.on,
        file: typed.file,
        out: typed.out,
    })
}

fn picture_kind(out: &Path) -> Result<PictureKind, Failure> {
    let ending = out.extension().map(|e| e.to_string_lossy().to_lowercase());
    match ending.as_deref() {
        Some("png") => Ok(PictureKind::Png),
        Some("gif") => Ok(PictureKind::Gif),
        _ => Err(Failure::new(
            format!("{}: no kind of picture has this ending", out.display()),
            "name a .png file for a picture, or a .gif file for the raise as an animation",
        )),
    }
}

fn stop(text: &str) -> Result<Stop, Failure> {
    match text {
        "floor" => Ok(Stop::Floor),
        "top" => Ok(Stop::Top),
        "safe" => Ok(Stop::Safe),
        _ => match text.parse::<usize>() {
            Ok(lock) if lock > 0 => Ok(Stop::Lock(lock)),
            _ => Err(Failure::new(
                format!("--lock: {text:?} is no place of the carriage"),
                "write a lock counted from 1, the lowest, or floor, top or safe",
            )),
        },
    }
}

fn picture_size(text: &str) -> Result<[u32; 2], Failure> {
    let sides = text.split_once(['x', 'X', '\u{d7}']).and_then(|(w, h)| {
        let side = |t: &str| t.trim().parse::<u32>().ok().filter(|s| SIDES.contains(s));
        Some([side(w)?, side(h)?])
    });
    sides.ok_or_else(|| {
        Failure::new(
            format!("--size: {text:?} is no size of a picture"),
            format!(
                "write width x height in pixels, each from {} to {}, such as 1280x720",
                SIDES.start(),
                SIDES.end()
            ),
        )
    })
}

/// The day that ages are counted to.
#[derive(Debug, Clone, Copy)]
pub(super) struct Day {
    pub(super) on: Date,
    /// True where it was asked for, and may lie ahead.
    pub(super) asked: bool,
}

impl Day {
    /// Today, as nobody asked for another.
    pub(super) fn today() -> Self {
        Self {
            on: viewer::today(),
            asked: false,
        }
    }

    /// What it has to do with what is said of a bay.
    pub(super) fn of(self, bay: &Bay) -> ForDay {
        ForDay::of(bay, self.on, self.asked)
    }
}

/// The day asked for, or today.
fn day(typed: Option<&str>) -> Result<Day, Failure> {
    let Some(text) = typed else {
        return Ok(Day::today());
    };
    let on = text.parse().map_err(|_| {
        Failure::new(
            format!("--on: {text:?} is no day"),
            "write year-month-day, such as 2026-05-14",
        )
    })?;
    Ok(Day { on, asked: true })
}

fn scale(text: &str) -> Result<f64, Failure> {
    scale_of(text).ok_or_else(|| {
        Failure::new(
            format!("--scale: {text:?} is no scale"),
            "write 1:50, or what a foot is drawn as, such as \"1/4 in = 1 ft\"; no enlargement, and \
             nothing below 1:1000",
        )
    })
}

fn length(option: &str, text: &str) -> Result<Length, Failure> {
    parse_length(text).map_err(|error| {
        Failure::new(
            format!("{option}: {text:?}: {}", error.message(Kind::Length)),
            error.help(Kind::Length),
        )
    })
}

fn door(text: &str) -> Result<DoorTravel, Failure> {
    match text {
        "shut" => return Ok(DoorTravel::Shut),
        "open" => return Ok(DoorTravel::Open),
        _ => {}
    }
    match text.parse::<f64>() {
        Ok(share) if (0.0..=1.0).contains(&share) => Ok(DoorTravel::At(share)),
        _ => Err(Failure::new(
            format!("--door: {text:?} is no state of a door"),
            "write shut, open, or a share from 0 (shut) to 1 (open) such as 0.35",
        )),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use clap::Parser as _;

    fn resolve(line: &[&str]) -> Result<Task, Failure> {
        let typed = Arguments::try_parse_from([&["bayrise"], line].concat()).unwrap();
        Task::resolve(typed)
    }

    #[test]
    fn a_file_alone_stands_for_the_window() {
        assert!(matches!(resolve(&["a.ron"]), Ok(Task::Window(_))));
    }

    #[test]
    fn needs_are_read_as_lengths() {
        let line = [
            "check",
            "a.ron",
            "--need-lock",
            "3",
            "--need-underbody",
            "5 ft",
        ];
        let Ok(Task::Check(options)) = resolve(&line) else {
            panic!("a check")
        };
        assert_eq!(
            options.needs,
            [Need::Lock(3), Need::Underbody(Length::feet(5.0))]
        );
        for bad in ["5", "5 lb", "-5 ft", "0 in", "five feet", ""] {
            assert!(resolve(&["check", "a.ron", "--need-underbody", bad]).is_err());
        }
    }

    #[test]
    fn doors() {
        for (text, expect) in [
            ("shut", Some(DoorTravel::Shut)),
            ("open", Some(DoorTravel::Open)),
            ("0.35", Some(DoorTravel::At(0.35))),
            ("1.5", None),
            ("-0.1", None),
            ("NaN", None),
            ("ajar", None),
        ] {
            assert_eq!(door(text).ok(), expect, "{text}");
        }
    }

    #[test]
    fn pictures() {
        let with = |more: &[&str]| resolve(&[&["picture", "a.ron", "a.png"], more].concat());
        for more in [
            &["--lock", "0"][..],
            &["--lock", "up"],
            &["--lock", "-1"],
            &["--size", "1280"],
            &["--size", "8x8"],
            &["--size", "9000x100"],
            &["--size", "axb"],
            &["--door", "2"],
            &["--from", "below"],
            &["--captions", "maybe"],
        ] {
            let typed = Arguments::try_parse_from(
                [&["bayrise", "picture", "a.ron", "a.png"], more].concat(),
            );
            assert!(typed.is_err() || with(more).is_err(), "{more:?}");
        }
        let Ok(Task::Picture(options)) = with(&["--lock", "7", "--size", "640x360"]) else {
            panic!("a picture")
        };
        assert_eq!((options.stop, options.size), (Stop::Lock(7), [640, 360]));
        for (out, kind) in [
            ("a.PNG", Some(PictureKind::Png)),
            ("a.gif", Some(PictureKind::Gif)),
            ("a.jpg", None),
            ("a", None),
        ] {
            assert_eq!(picture_kind(Path::new(out)).ok(), kind, "{out}");
        }
    }

    #[test]
    fn the_travel_needs_a_unit() {
        assert!(resolve(&["solids", "a.ron", "--travel", "1.2"]).is_err());
        assert!(resolve(&["solids", "a.ron", "--travel", "-1 in"]).is_err());
        assert!(resolve(&["solids", "a.ron", "--travel", "1.2 m"]).is_ok());
    }

    #[test]
    fn the_parser_is_sound() {
        use clap::CommandFactory as _;
        Arguments::command().debug_assert();
    }
}
