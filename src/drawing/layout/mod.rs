//! Which sheets does the floor crew get: plan, plates, pulls, elevations?
//!
//! The solids and the study are drawn as they are; nothing here works out a clearance. No hole is
//! drawn, dimensioned or pulled unless [`crate::setting_out::Drill`] lets it.

#[cfg(test)]
mod crowded_tests;
mod detail;
mod draw;
mod elevation;
mod elevation_heights;
mod elevation_labels;
mod elevation_picture;
mod elevation_room;
#[cfg(test)]
mod elevation_tests;
mod parking;
mod plan;
mod plates;
mod pulls;
#[cfg(test)]
mod tests;
mod things;
mod tiles;
mod tiles_map;
#[cfg(test)]
mod tiles_tests;
#[cfg(test)]
mod words_tests;

use std::cell::OnceCell;

use crate::bay::Bay;
use crate::clearance::prepare::overtravel_m;
use crate::clearance::{DoorState, HerePair, LockFinding, Probe, Study};
use crate::ground::ForDay;
use crate::report::{CAUTIONS, Sayings, counted_to_in_line};
use crate::setting_out::{Drill, SettingOut, not_known_yet, setting_out};
use crate::solids::DoorTravel;
use crate::solids::attitude::StanceError;

use super::ahead;
use super::outline::Look;
use super::sheet::{Frame, Paper, Sheet, View, compose};
use plan::Telling;

pub use tiles::{Grid, OVERLAP_MM, Part, full_size};

/// What a layout is made of.
#[derive(Debug, Clone, Copy)]
pub struct Order<'a> {
    /// The bay.
    pub bay: &'a Bay,
    /// What was found.
    pub study: &'a Study,
    /// Sixteen hex digits that stand for the texts that went in.
    pub fingerprint: &'a str,
    /// The day that ages are counted to.
    pub day: ForDay,
    /// The paper.
    pub paper: Paper,
    /// The floor plan's scale, 1 to this; none: the largest that fits.
    pub scale: Option<f64>,
}

/// Why there is no layout.
#[derive(Debug, Clone, PartialEq)]
pub enum LayoutError {
    /// It can't be said how the vehicle stands.
    Stance(StanceError),
    /// This page has more to say than the paper has room for.
    TooSmall(String),
    /// The floor plan does not fit to the scale that was asked for.
    Scale {
        /// The largest scale to which it fits this paper, 1 to this, where there is one.
        fits: Option<f64>,
        /// A larger paper that it fits to the scale that was asked for.
        larger: Option<Paper>,
    },
}

struct Made<'a> {
    order: &'a Order<'a>,
    out: SettingOut,
    /// What is near the raised vehicle on the lock that is drawn: asked for once.
    near: OnceCell<Vec<HerePair>>,
}

/// Every page, in order.
///
/// # Errors
/// See [`LayoutError`].
pub fn layout(order: &Order<'_>) -> Result<Vec<Sheet>, LayoutError> {
    let made = Made::new(order);
    counted(|of| made.pages(of, true))
}

/// As many pages as most sets have.
const USUAL: usize = 9;

/// Pages on each of which it is written how many they are: made once where they are as many as usual,
/// else again.
fn counted(
    pages: impl Fn(usize) -> Result<Vec<Sheet>, LayoutError>,
) -> Result<Vec<Sheet>, LayoutError> {
    let usual = pages(USUAL)?;
    match usual.len() {
        USUAL => Ok(usual),
        count => pages(count),
    }
}

/// The pages of a file for programs that draw: without the plates and the part of the plan that
/// show once more, elsewhere, what the plan shows in its place. A machine that sets out by the file
/// would find two of each hole.
///
/// # Errors
/// See [`LayoutError`].
pub fn without_copies(order: &Order<'_>) -> Result<Vec<Sheet>, LayoutError> {
    let made = Made::new(order);
    counted(|of| made.pages(of, false))
}

/// The floor plan alone.
///
/// # Errors
/// See [`LayoutError`].
pub fn floor_plan(order: &Order<'_>) -> Result<Vec<Sheet>, LayoutError> {
    let made = Made::new(order);
    let set = |of| -> Result<Vec<Sheet>, LayoutError> {
        let (plan, telling) = made.plan([1, of])?;
        let mut pages = vec![plan];
        made.list_numbers(&mut pages, telling, of)?;
        Ok(pages)
    };
    set(set(1)?.len())
}

/// An elevation: what is drawn, what must not be overlooked, and what is said of it.
#[derive(Debug, Clone)]
pub struct Seen {
    /// What is drawn and written about it, metres.
    pub view: View,
    /// What must not be overlooked.
    pub warnings: Vec<String>,
    /// What is shown, and what else is to be known.
    pub notes: Vec<String>,
}

/// The bay from the side or from the door, for who sets it on a page of their own.
///
/// # Errors
/// See [`LayoutError`].
pub fn seen(order: &Order<'_>, look: Look) -> Result<Seen, LayoutError> {
    let mut made = Made::new(order);
    // Who sets it on a page of their own has said what is near.
    made.near = OnceCell::from(Vec::new());
    let (view, warnings, notes) = elevation::view(&made, look, Telling::InWords)?;
    Ok(Seen {
        view,
        warnings,
        notes,
    })
}

/// The sheets that show the bay: floor plan and elevations, without those for the floor crew.
///
/// # Errors
/// See [`LayoutError`].
pub fn drawings(order: &Order<'_>) -> Result<Vec<Sheet>, LayoutError> {
    let made = Made::new(order);
    let pages = made.drawings(0)?;
    made.drawings(pages.len())
}

impl<'a> Made<'a> {
    fn new(order: &'a Order<'a>) -> Self {
        Self {
            order,
            out: setting_out(order.bay, order.study),
            near: OnceCell::new(),
        }
    }

    /// The floor plan: in words, or by numbers where it is then so much larger that more can be read
    /// off it, or where there is no room for words.
    fn plan(&self, page: [usize; 2]) -> Result<(Sheet, Telling), LayoutError> {
        let order = self.order;
        let to = |telling, paper, scale| -> Result<Option<Sheet>, LayoutError> {
            let mut frame = self.frame("Floor plan", "PLAN", plan::notes(self, telling));
            frame.page = page;
            let view = plan::view(self, telling)?;
            Ok(compose(&view, &frame, paper, order.bay.units, scale))
        };
        let best = |paper, scale| -> Result<Option<(Sheet, Telling)>, LayoutError> {
            let words = to(Telling::InWords, paper, scale)?;
            if let Some(sheet) = words.as_ref()
                && (scale.is_some() || sheet.scale <= detail::COARSE)
            {
                return Ok(words.map(|sheet| (sheet, Telling::InWords)));
            }
            let numbers = to(Telling::ByNumber, paper, scale)?;
            Ok(match (words, numbers) {
                (Some(words), Some(numbers)) if numbers.scale * detail::LARGER > words.scale => {
                    Some((words, Telling::InWords))
                }
                (words, numbers) => numbers
                    .map(|sheet| (sheet, Telling::ByNumber))
                    .or_else(|| words.map(|sheet| (sheet, Telling::InWords))),
            })
        };
        if let Some(found) = best(order.paper, order.scale)? {
            return Ok(found);
        }
        if order.scale.is_none() {
            return Err(LayoutError::TooSmall("Floor plan".into()));
        }
        let larger = order.paper != Paper::A3 && best(Paper::A3, order.scale)?.is_some();
        Err(LayoutError::Scale {
            fits: best(order.paper, None)?.map(|(sheet, _)| sheet.scale),
            larger: larger.then_some(Paper::A3),
        })
    }

    /// The list of fixed things, where the plan tells of them by number.
    fn list_numbers(
        &self,
        pages: &mut Vec<Sheet>,
        telling: Telling,
        of: usize,
    ) -> Result<(), LayoutError> {
        if telling == Telling::ByNumber {
            let list = things::pages(self, pages.first(), [pages.len() + 1, of])?;
            pages.extend(list);
        }
        Ok(())
    }

    /// An elevation: in words, or by numbers where there is no room for words.
    fn elevation(
        &self,
        (look, name, tag): (Look, &str, &'static str),
        page: [usize; 2],
    ) -> Result<(Sheet, Telling), LayoutError> {
        let order = self.order;
        // Where a page has no room for the heights of what rooms end on, it does without them.
        let ways = [true, false].into_iter().flat_map(|has_ends| {
            [Telling::InWords, Telling::ByNumber].map(|telling| (telling, has_ends))
        });
        for (telling, has_ends) in ways {
            let (view, warnings, notes) = elevation::view_with(self, look, telling, has_ends)?;
            let mut frame = self.frame(name, tag, notes);
            frame.warnings.extend(warnings);
            frame.page = page;
            if let Some(sheet) = compose(&view, &frame, order.paper, order.bay.units, None) {
                return Ok((sheet, telling));
            }
        }
        Err(LayoutError::TooSmall(name.into()))
    }

    fn drawings(&self, of: usize) -> Result<Vec<Sheet>, LayoutError> {
        let (plan, mut telling) = self.plan([1, of])?;
        let mut pages = vec![plan];
        for one in elevation::LOOKS {
            let (page, told) = self.elevation(one, [pages.len() + 1, of])?;
            pages.push(page);
            if told == Telling::ByNumber {
                telling = told;
            }
        }
        self.list_numbers(&mut pages, telling, of)?;
        Ok(pages)
    }

    /// A page for each plate, both to one scale.
    fn plates(&self, [first, of]: [usize; 2]) -> Result<Vec<Sheet>, LayoutError> {
        let order = self.order;
        let to = |scale: Option<f64>| -> Result<Vec<Sheet>, LayoutError> {
            let each = plates::SIDES.into_iter().enumerate();
            each.map(|(number, (side, name, tag))| {
                let mut frame = self.frame(name, tag, plates::notes(self));
                frame.page = [first + number, of];
                let view = plates::view(self, side);
                let sheet = compose(&view, &frame, order.paper, order.bay.units, scale);
                sheet.ok_or(LayoutError::TooSmall(frame.name))
            })
            .collect()
        };
        let pages = to(None)?;
        let coarsest = pages.iter().map(|page| page.scale).fold(0.0, f64::max);
        if pages.iter().all(|page| page.scale >= coarsest) {
            return Ok(pages);
        }
        // Where the other has no room for what is written about it at that scale, each keeps its own.
        Ok(to(Some(coarsest)).unwrap_or(pages))
    }

    fn pages(&self, of: usize, with_copies: bool) -> Result<Vec<Sheet>, LayoutError> {
        let order = self.order;
        let (plan, telling) = self.plan([1, of])?;
        let mut pages = vec![plan];
        let put = |pages: &mut Vec<Sheet>, view: &View, mut frame: Frame| {
            frame.page = [pages.len() + 1, of];
            let sheet = compose(view, &frame, order.paper, order.bay.units, None);
            pages.push(sheet.ok_or(LayoutError::TooSmall(frame.name))?);
            Ok(())
        };
        let is_coarse = pages
            .first()
            .is_some_and(|plan| plan.scale > detail::COARSE);
        if with_copies && is_coarse {
            let before = pages.len();
            let frame = self.frame("Floor plan, about the posts", detail::TAG, detail::notes());
            put(&mut pages, &detail::view(self, telling)?, frame)?;
            // Hardly larger, it would tell nothing more.
            if let [.., plan, part] = &pages[..]
                && part.scale * detail::LARGER > plan.scale
            {
                pages.truncate(before);
            }
        }
        if with_copies {
            pages.extend(self.plates([pages.len() + 1, of])?);
        }
        let mut frame = self.frame("Setting out, pull by pull", "PULLS", pulls::notes(self));
        frame.page = [pages.len() + 1, of];
        pages.extend(pulls::pages(self, &frame));
        for one in elevation::LOOKS {
            let (page, _) = self.elevation(one, [pages.len() + 1, of])?;
            pages.push(page);
        }
        let list = things::pages(self, pages.first(), [pages.len() + 1, of])?;
        pages.extend(list);
        Ok(pages)
    }

    /// What is near on this lock, in the state of the door that governs, with the least room first.
    fn near(&self, lock: &LockFinding) -> &[HerePair] {
        self.near.get_or_init(|| {
            let order = self.order;
            // A bay that was studied can be studied again.
            let Ok((_, mut probe)) = Probe::with_study_on(order.bay, Some(order.day.on)) else {
                return Vec::new();
            };
            let door = match order.study.headline_door {
                DoorState::Open => DoorTravel::Open,
                DoorState::Shut | DoorState::Running => DoorTravel::Shut,
            };
            // Drawn as it hangs on the lock; told with what it is raised past the lock to get there.
            let mut pairs = probe.at(door, lock.travel_m).pairs;
            let above = lock.travel_m + overtravel_m(order.bay);
            let above = probe.at(door, above).pairs;
            pairs.retain_mut(|pair| {
                let same = above
                    .iter()
                    .find(|other| other.moving == pair.moving && other.fixed == pair.fixed);
                if let Some(other) = same {
                    pair.worst_m = pair.worst_m.min(other.worst_m);
                }
                same.is_some()
            });
            pairs.sort_by(|a, b| a.worst_m.total_cmp(&b.worst_m));
            pairs
        })
    }

    fn frame(&self, name: &str, tag: &'static str, notes: Vec<String>) -> Frame {
        let order = self.order;
        let said = Sayings::of(order.bay, order.study);
        let mut warnings: Vec<String> = ahead::warning(order.day).into_iter().collect();
        if !order.study.not_measured().is_empty() {
            warnings.push(pulls::NOT_TO_BE_SET_OUT.into());
        }
        warnings.extend(pulls::not_as_it_is(order));
        warnings.extend(self.out.drill.why_not());
        let open = not_known_yet(order.study);
        if self.out.drill == Drill::Shown && !open.is_empty() {
            warnings.push(format!(
                "NOT KNOWN YET, settle before drilling: {}.",
                open.join("; ")
            ));
        }
        if order.study.highest_safe_lock.is_none() {
            warnings.push(format!("NO LOCK IS SAFE. {}", said.lead_on_a_sheet()));
        }
        Frame {
            title: said.title(),
            name: name.into(),
            tag,
            page: [1, 1],
            warnings,
            notes,
            made_by: format!(
                "Bayrise {} \u{b7} input {}{} \u{b7} {} \u{b7} paper {}",
                env!("CARGO_PKG_VERSION"),
                order.fingerprint,
                counted_to_in_line(order.day),
                said.vehicle_on_lift(),
                order.paper.name()
            ),
            cautions: CAUTIONS.join(" "),
        }
    }
}
