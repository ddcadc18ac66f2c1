//! The table of keys.

use egui::Key;

use super::binding::{Binding, Group, anywhere, key};
use super::stroke::Stroke;
use crate::panels::camera::{Lens, Sight};
use crate::panels::settings::{Section, Theme};
use crate::panels::{Action, Desk};

use Group as G;
use Stroke as S;

/// A small step of the carriage, metres.
const NUDGE_M: f64 = 0.005;
/// A small step of the door, share of its way.
const DOOR_STEP: f64 = 0.1;
/// A small turn of the view, radians.
const TURN_RAD: f64 = 0.0873;
/// A small move of the view, share of its height.
const PAN: f64 = 0.06;
/// A step nearer.
const NEARER: f64 = 0.87;
/// A step of the cut, metres.
const CUT_STEP_M: f64 = 0.15;
/// A step of the text's size.
const LARGER: f64 = 1.15;

/// Every key.
pub const TABLE: &[Binding] = &[
    key(
        G::Rise,
        &[S::plain(Key::ArrowUp), S::plain(Key::PageUp)],
        "one lock up",
        |_| Some(Action::LockUp),
    ),
    key(
        G::Rise,
        &[S::plain(Key::ArrowDown), S::plain(Key::PageDown)],
        "one lock down",
        |_| Some(Action::LockDown),
    ),
    key(
        G::Rise,
        &[S::plain(Key::ArrowRight)],
        "a little up",
        |desk| Some(Action::Travel(desk.rise.travel_m + NUDGE_M)),
    ),
    key(
        G::Rise,
        &[S::plain(Key::ArrowLeft)],
        "a little down",
        |desk| Some(Action::Travel(desk.rise.travel_m - NUDGE_M)),
    ),
    key(G::Rise, &[S::plain(Key::Home)], "to the floor", |_| {
        Some(Action::ToFloor)
    }),
    key(G::Rise, &[S::plain(Key::End)], "to full travel", |_| {
        Some(Action::ToTop)
    }),
    key(
        G::Rise,
        &[S::plain(Key::S)],
        "to the highest safe lock",
        |_| Some(Action::ToSafeLock),
    ),
    key(
        G::Rise,
        &[S::plain(Key::Space)],
        "play or pause the raise",
        |_| Some(Action::PlayPause),
    ),
    key(
        G::Door,
        &[S::plain(Key::D)],
        "open or shut the door",
        |_| Some(Action::DoorToggle),
    ),
    key(
        G::Door,
        &[S::shift(Key::D)],
        "open the door a little",
        |desk| Some(Action::Door(desk.door + DOOR_STEP)),
    ),
    key(
        G::Door,
        &[S::alt(Key::D)],
        "shut the door a little",
        |desk| Some(Action::Door(desk.door - DOOR_STEP)),
    ),
    key(
        G::View,
        &[S::plain(Key::Num1)],
        "look from the corner",
        |_| Some(Action::Look(Sight::Corner)),
    ),
    key(
        G::View,
        &[S::plain(Key::Num2)],
        "look from the front",
        |_| Some(Action::Look(Sight::Front)),
    ),
    key(
        G::View,
        &[S::plain(Key::Num3)],
        "look from the side",
        |_| Some(Action::Look(Sight::Side)),
    ),
    key(G::View, &[S::plain(Key::Num4)], "look from above", |_| {
        Some(Action::Look(Sight::Plan))
    }),
    key(
        G::View,
        &[S::plain(Key::Num5)],
        "look from the driver's door",
        |_| Some(Action::Look(Sight::Door)),
    ),
    key(
        G::View,
        &[S::ctrl(Key::ArrowLeft), S::alt(Key::ArrowLeft)],
        "turn to the left",
        |_| Some(Action::Orbit(-TURN_RAD, 0.0)),
    ),
    key(
        G::View,
        &[S::ctrl(Key::ArrowRight), S::alt(Key::ArrowRight)],
        "turn to the right",
        |_| Some(Action::Orbit(TURN_RAD, 0.0)),
    ),
    key(
        G::View,
        &[S::ctrl(Key::ArrowUp), S::alt(Key::ArrowUp)],
        "turn up",
        |_| Some(Action::Orbit(0.0, TURN_RAD)),
    ),
    key(
        G::View,
        &[S::ctrl(Key::ArrowDown), S::alt(Key::ArrowDown)],
        "turn down",
        |_| Some(Action::Orbit(0.0, -TURN_RAD)),
    ),
    key(
        G::View,
        &[S::shift(Key::ArrowLeft)],
        "move to the left",
        |_| Some(Action::Pan(-PAN, 0.0)),
    ),
    key(
        G::View,
        &[S::shift(Key::ArrowRight)],
        "move to the right",
        |_| Some(Action::Pan(PAN, 0.0)),
    ),
    key(G::View, &[S::shift(Key::ArrowUp)], "move up", |_| {
        Some(Action::Pan(0.0, PAN))
    }),
    key(G::View, &[S::shift(Key::ArrowDown)], "move down", |_| {
        Some(Action::Pan(0.0, -PAN))
    }),
    key(
        G::View,
        &[S::plain(Key::Plus), S::plain(Key::Equals)],
        "nearer",
        |_| Some(Action::Zoom(NEARER)),
    ),
    key(G::View, &[S::plain(Key::Minus)], "farther", |_| {
        Some(Action::Zoom(1.0 / NEARER))
    }),
    key(
        G::View,
        &[S::plain(Key::F)],
        "everything in the frame",
        |_| Some(Action::FrameAll),
    ),
    key(
        G::View,
        &[S::plain(Key::P)],
        "parallel lines stay parallel, or not",
        |desk| {
            Some(Action::Parallel(matches!(
                desk.camera.lens,
                Lens::Perspective { .. }
            )))
        },
    ),
    key(
        G::View,
        &[S::plain(Key::C)],
        "cut the bay open, or close it",
        |desk| {
            Some(Action::Cut(match desk.settings.cut_m {
                Some(_) => None,
                None => Some(middle_m(desk)),
            }))
        },
    ),
    key(
        G::View,
        &[S::plain(Key::Comma)],
        "move the cut toward the door",
        |desk| {
            desk.settings
                .cut_m
                .map(|cut| Action::Cut(Some(cut - CUT_STEP_M)))
        },
    ),
    key(
        G::View,
        &[S::plain(Key::Period)],
        "move the cut into the bay",
        |desk| {
            desk.settings
                .cut_m
                .map(|cut| Action::Cut(Some(cut + CUT_STEP_M)))
        },
    ),
    key(
        G::View,
        &[S::plain(Key::L)],
        "look at the next tight pair",
        next_pair,
    ),
    key(
        G::Show,
        &[S::plain(Key::I)],
        "dimension lines on or off",
        |desk| Some(Action::Dimensions(!desk.settings.dimensions)),
    ),
    key(
        G::Show,
        &[S::plain(Key::G)],
        "readings, loads and centre of gravity at their places",
        |desk| Some(Action::Marks(!desk.settings.marks)),
    ),
    key(G::Show, &[S::plain(Key::M)], "people on or off", |desk| {
        Some(Action::People(!desk.settings.people))
    }),
    anywhere(
        G::Show,
        &[S::plain(Key::F1), S::plain(Key::Questionmark)],
        "the help sheet",
        |desk| Some(Action::Help(!desk.settings.help)),
    ),
    anywhere(G::Show, &[S::plain(Key::F2)], "edit the garage", |desk| {
        section(desk, Section::Garage)
    }),
    anywhere(
        G::Show,
        &[S::plain(Key::F3)],
        "edit what is in the room",
        |desk| section(desk, Section::Obstacles),
    ),
    anywhere(G::Show, &[S::plain(Key::F4)], "edit the lift", |desk| {
        section(desk, Section::Lift)
    }),
    anywhere(G::Show, &[S::plain(Key::F5)], "edit the vehicle", |desk| {
        section(desk, Section::Vehicle)
    }),
    anywhere(G::Show, &[S::plain(Key::F6)], "edit the parking", |desk| {
        section(desk, Section::Parking)
    }),
    anywhere(G::Show, &[S::plain(Key::F7)], "edit the margins", |desk| {
        section(desk, Section::Policy)
    }),
    anywhere(
        G::Show,
        &[S::plain(Key::F8)],
        "edit slab and power",
        |desk| section(desk, Section::Ground),
    ),
    anywhere(
        G::Show,
        &[S::plain(Key::F11)],
        "show mode: full screen, panels away",
        |desk| Some(Action::ShowMode(!desk.settings.show_mode)),
    ),
    key(G::Show, &[S::plain(Key::T)], "light or dark", |desk| {
        Some(Action::Theme(match desk.settings.theme {
            Theme::Light => Theme::Dark,
            Theme::Dark => Theme::Light,
        }))
    }),
    anywhere(
        G::Show,
        &[S::ctrl(Key::Plus), S::ctrl(Key::Equals)],
        "larger text",
        |_| Some(Action::TextScale(LARGER)),
    ),
    anywhere(G::Show, &[S::ctrl(Key::Minus)], "smaller text", |_| {
        Some(Action::TextScale(1.0 / LARGER))
    }),
    key(
        G::Show,
        &[S::plain(Key::Escape)],
        "leave, close or drop what is on top",
        leave,
    ),
    anywhere(G::File, &[S::ctrl(Key::N)], "new", |_| Some(Action::New)),
    anywhere(G::File, &[S::ctrl(Key::O)], "open", |_| Some(Action::Open)),
    anywhere(G::File, &[S::ctrl(Key::S)], "save", |_| Some(Action::Save)),
    anywhere(G::File, &[S::ctrl_shift(Key::S)], "save as", |_| {
        Some(Action::SaveAs)
    }),
    anywhere(G::File, &[S::ctrl(Key::B)], "a bay beside this one", |_| {
        Some(Action::AskBeside)
    }),
    key(
        G::File,
        &[S::ctrl_shift(Key::B)],
        "take the bay beside away",
        |desk| desk.beside.as_ref().map(|_| Action::TakeBesideAway),
    ),
    anywhere(G::File, &[S::ctrl(Key::R)], "take the file on disk", |_| {
        Some(Action::Reload)
    }),
    anywhere(G::File, &[S::ctrl(Key::Q)], "quit", |_| Some(Action::Quit)),
    key(G::File, &[S::ctrl(Key::Z)], "undo", |_| Some(Action::Undo)),
    key(
        G::File,
        &[S::ctrl(Key::Y), S::ctrl_shift(Key::Z)],
        "redo",
        |_| Some(Action::Redo),
    ),
];

/// Half way along the bay, metres from the door wall.
pub(in crate::panels) fn middle_m(desk: &Desk) -> f64 {
    let [low, high] = desk.bounds_m;
    (low.y + high.y) * 0.5
}

/// Shows a section, or hides it when it is shown already.
#[allow(clippy::unnecessary_wraps)] // as the table wants it
fn section(desk: &Desk, section: Section) -> Option<Action> {
    let shown = desk.settings.section == Some(section);
    Some(Action::Section((!shown).then_some(section)))
}

/// The pair after the lit one, the tightest first.
fn next_pair(desk: &Desk) -> Option<Action> {
    let pairs = &desk.here.as_ref()?.pairs;
    let lit = desk.picked.as_ref().and_then(|(moving, fixed)| {
        pairs
            .iter()
            .position(|pair| pair.moving == *moving && pair.fixed == *fixed)
    });
    let next = lit.map_or(0, |index| index + 1) % pairs.len().max(1);
    let pair = pairs.get(next)?;
    Some(Action::ShowPair(pair.moving.clone(), pair.fixed.clone()))
}

/// What Esc leaves: the topmost of what is open.
fn leave(desk: &Desk) -> Option<Action> {
    if desk.settings.help {
        Some(Action::Help(false))
    } else if desk.leaving.is_some() {
        Some(Action::Stay)
    } else if desk.settings.show_mode {
        Some(Action::ShowMode(false))
    } else if desk.picked.is_some() {
        Some(Action::DropPair)
    } else if !desk.notices.is_empty() {
        Some(Action::DropNotice(desk.notices.len() - 1))
    } else {
        None
    }
}
