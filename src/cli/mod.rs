//! What was asked on the command line, and what is answered?
//!
//! The only place that reads files, writes them and prints. A command works out its whole answer
//! before the first byte of it is printed, so that bad input leaves nothing on standard output.

mod arguments;
mod asbuilt;
mod ask;
mod card;
mod check;
mod compare;
pub(crate) mod files;
#[cfg(any(feature = "viewer", all(test, feature = "panels")))]
pub(crate) mod hand_over;
mod inputs;
mod layout;
mod lines;
mod load;
mod model;
mod new;
mod options;
mod picture;
mod plan;
mod presets;
mod record;
mod report;
mod schema;
mod sheets;
mod solids;
mod terminal;
pub(crate) mod unfinished;
mod view;
mod worksheet;

use std::ffi::OsString;
use std::process::ExitCode;

use clap::Parser as _;

use crate::diagnostics::Diagnostic;
use arguments::Arguments;
use options::Task;

/// How the program ends.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Exit {
    /// 0: a safe lock exists, what was asked is met, or there was nothing to judge.
    Met,
    /// 1: no lock is safe, or what was asked is not met.
    Unmet,
    /// 2: the arguments or a file can't be used; standard output stayed empty.
    BadInput,
    /// 3: a window or a picture was asked and there is no display or no driver for it.
    NoDisplay,
}

impl Exit {
    /// The number that the caller sees.
    #[must_use]
    pub const fn code(self) -> u8 {
        match self {
            Self::Met => 0,
            Self::Unmet => 1,
            Self::BadInput => 2,
            Self::NoDisplay => 3,
        }
    }
}

impl From<Exit> for ExitCode {
    fn from(exit: Exit) -> Self {
        Self::from(exit.code())
    }
}

/// Why a command could not be carried out.
#[derive(Debug)]
pub(crate) enum Failure {
    /// In words; the second text says what to do, and may be empty.
    Said(String, String),
    /// Faults in a bay file or its presets.
    Faults(Vec<Diagnostic>),
}

impl Failure {
    fn new(what: impl Into<String>, help: impl Into<String>) -> Self {
        Self::Said(what.into(), help.into())
    }

    /// What went wrong, without what to do about it.
    #[cfg(feature = "viewer")]
    pub(crate) fn what(&self) -> &str {
        match self {
            Self::Said(what, _) => what,
            Self::Faults(_) => "the file has faults",
        }
    }

    /// What went wrong and what to do about it, in one sentence without its full stop.
    #[cfg(any(test, feature = "viewer"))]
    pub(crate) fn said(&self) -> String {
        match self {
            Self::Said(what, help) if !help.is_empty() => format!("{what}: {help}"),
            Self::Said(what, _) => what.clone(),
            Self::Faults(_) => "the file has faults".into(),
        }
    }
}

/// Carries out one command line, the program's name first.
pub fn run(arguments: impl IntoIterator<Item = OsString>) -> Exit {
    let arguments: Vec<OsString> = arguments.into_iter().collect();
    let outcome = match Arguments::try_parse_from(&arguments) {
        Ok(typed) => Task::resolve(typed).and_then(|task| {
            if task.draws() {
                terminal::hush_drivers(&arguments);
            }
            carry_out(task)
        }),
        Err(stopped) => return answer_of_parser(&stopped),
    };
    outcome.unwrap_or_else(|failure| {
        terminal::complain(&failure);
        Exit::BadInput
    })
}

fn carry_out(task: Task) -> Result<Exit, Failure> {
    match task {
        Task::Check(options) => check::run(&options),
        Task::Picture(options) => picture::run(&options),
        Task::Plan(options) => plan::run(&options),
        Task::AsBuilt(options) => asbuilt::run(&options),
        Task::Layout(options) => layout::run(&options),
        Task::Card(options) => card::run(&options),
        Task::Record(options) => record::run(&options),
        Task::Model(options) => model::run(&options),
        Task::Report(options) => report::run(&options),
        Task::Compare(options) => compare::run(&options),
        Task::View { file, beside } => view::run(&file, beside.as_deref()),
        Task::Window(file) => view::after_verdict(&file),
        Task::Solids(options) => solids::run(&options),
        Task::Schema(of) => schema::run(of),
        Task::Presets(format) => presets::run(format),
        Task::New(options) => new::run(&options),
        Task::Ask(options) => ask::run(&options),
        Task::Worksheet(options) => worksheet::run(&options),
    }
}

/// Help and version go to standard output and are no error; anything else the parser says is.
fn answer_of_parser(stopped: &clap::Error) -> Exit {
    // Where even this can't be printed there is nobody to tell.
    let _ = stopped.print();
    if stopped.use_stderr() {
        Exit::BadInput
    } else {
        Exit::Met
    }
}
