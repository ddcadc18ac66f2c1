//! The command line as resolved: every value read, nothing left to refuse later.

use std::path::PathBuf;

use super::Failure;
use super::arguments::{Arguments, Command, Format, Units};
use crate::bay::UnitSystem;
use crate::report::Need;
use crate::solids::DoorTravel;
use crate::units::{Kind, Length, parse_length};

/// What to do.
#[derive(Debug)]
pub(super) enum Task {
    /// Study a bay and print the report.
    Check(CheckOptions),
    /// Open the window.
    View(PathBuf),
    /// A file without a command: the verdict, then the window.
    Window(PathBuf),
    /// Print the solids.
    Solids(SolidsOptions),
    /// Print the report's schema.
    Schema,
    /// List the presets.
    Presets(Format),
    /// Write a file to start from.
    New(NewOptions),
}

/// What `check` is to do.
#[derive(Debug)]
pub(super) struct CheckOptions {
    pub(super) file: PathBuf,
    pub(super) format: Format,
    pub(super) needs: Vec<Need>,
    pub(super) sample: Option<Sample>,
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

impl Task {
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
                Self::Check(CheckOptions {
                    file: check.file,
                    format: check.format,
                    needs,
                    sample: check.sample.map(|count| Sample {
                        count: usize::try_from(count).unwrap_or(usize::MAX),
                        seed: check.seed,
                    }),
                })
            }
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
            (_, Some(Command::View(view))) => Self::View(view.file),
            (_, Some(Command::Schema)) => Self::Schema,
            (_, Some(Command::Presets(presets))) => Self::Presets(presets.format),
            (_, Some(Command::New(new))) => Self::New(NewOptions {
                out: new.out,
                lift: new.lift,
                vehicle: new.vehicle,
                units: match new.units {
                    Units::Imperial => UnitSystem::Imperial,
                    Units::Metric => UnitSystem::Metric,
                },
                replace: new.force,
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
