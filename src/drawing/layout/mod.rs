//! Which sheets does the floor crew get: plan, plates, pulls, elevations?
//!
//! The solids and the study are drawn as they are; nothing here works out a clearance. No hole is
//! drawn, dimensioned or pulled unless [`crate::setting_out::Drill`] lets it.

mod draw;
mod elevation;
mod elevation_labels;
mod parking;
mod plan;
mod plates;
mod pulls;
#[cfg(test)]
mod tests;
mod tiles;
mod tiles_map;
#[cfg(test)]
mod tiles_tests;

use crate::bay::Bay;
use crate::clearance::Study;
use crate::ground::Date;
use crate::report::{CAUTIONS, Sayings};
use crate::setting_out::{Drill, SettingOut, not_known_yet, setting_out};
use crate::solids::attitude::StanceError;

use super::outline::Look;
use super::sheet::{Frame, Paper, Sheet, View, compose};

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
    pub on: Date,
    /// The paper.
    pub paper: Paper,
}

/// Why there is no layout.
#[derive(Debug, Clone, PartialEq)]
pub enum LayoutError {
    /// It can't be said how the vehicle stands.
    Stance(StanceError),
    /// This page has more to say than the paper has room for.
    TooSmall(String),
}

struct Made<'a> {
    order: &'a Order<'a>,
    out: SettingOut,
}

/// Every page, in order.
///
/// # Errors
/// See [`LayoutError`].
pub fn layout(order: &Order<'_>) -> Result<Vec<Sheet>, LayoutError> {
    let made = Made::new(order);
    let pages = made.pages(0)?;
    // How many they are is written on each.
    made.pages(pages.len())
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
    let made = Made::new(order);
    let (view, warnings, notes) = elevation::view(&made, look)?;
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
    let mut frames = vec![(
        plan::view(&made)?,
        made.frame("Floor plan", "PLAN", plan::notes(&made)),
    )];
    for (look, name, tag) in elevation::LOOKS {
        let (view, warnings, notes) = elevation::view(&made, look)?;
        let mut frame = made.frame(name, tag, notes);
        frame.warnings.extend(warnings);
        frames.push((view, frame));
    }
    let of = frames.len();
    let pages = frames.into_iter().enumerate();
    let pages = pages.map(|(index, (view, mut frame))| {
        frame.page = [index + 1, of];
        let sheet = compose(&view, &frame, order.paper, order.bay.units);
        sheet.ok_or(LayoutError::TooSmall(frame.name))
    });
    pages.collect()
}

impl<'a> Made<'a> {
    fn new(order: &'a Order<'a>) -> Self {
        Self {
            order,
            out: setting_out(order.bay, order.study),
        }
    }

    fn pages(&self, of: usize) -> Result<Vec<Sheet>, LayoutError> {
        let order = self.order;
        let mut pages = Vec::new();
        let put = |pages: &mut Vec<Sheet>, view: &View, mut frame: Frame| {
            frame.page = [pages.len() + 1, of];
            let sheet = compose(view, &frame, order.paper, order.bay.units);
            pages.push(sheet.ok_or(LayoutError::TooSmall(frame.name))?);
            Ok(())
        };
        put(
            &mut pages,
            &plan::view(self)?,
            self.frame("Floor plan", "PLAN", plan::notes(self)),
        )?;
        for (side, name, tag) in plates::SIDES {
            let notes = plates::notes(self);
            put(
                &mut pages,
                &plates::view(self, side),
                self.frame(name, tag, notes),
            )?;
        }
        let mut frame = self.frame("Setting out, pull by pull", "PULLS", pulls::notes(self));
        frame.page = [pages.len() + 1, of];
        pages.extend(pulls::pages(self, &frame));
        for (look, name, tag) in elevation::LOOKS {
            let (view, warnings, notes) = elevation::view(self, look)?;
            let mut frame = self.frame(name, tag, notes);
            frame.warnings.extend(warnings);
            put(&mut pages, &view, frame)?;
        }
        Ok(pages)
    }

    fn frame(&self, name: &str, tag: &'static str, notes: Vec<String>) -> Frame {
        let order = self.order;
        let said = Sayings::of(order.bay, order.study);
        let mut warnings = Vec::new();
        warnings.extend(self.out.drill.why_not());
        let open = not_known_yet(order.study);
        if self.out.drill == Drill::Shown && !open.is_empty() {
            warnings.push(format!(
                "NOT KNOWN YET, settle before drilling: {}.",
                open.join("; ")
            ));
        }
        if order.study.highest_safe_lock.is_none() {
            warnings.push(format!("NO LOCK IS SAFE. {}", said.lead()));
        }
        Frame {
            title: said.title(),
            name: name.into(),
            tag,
            page: [1, 1],
            warnings,
            notes,
            made_by: format!(
                "Bayrise {} \u{b7} input {} \u{b7} ages counted to {} \u{b7} {} \u{b7} paper {}",
                env!("CARGO_PKG_VERSION"),
                order.fingerprint,
                order.on,
                said.vehicle_on_lift(),
                order.paper.name()
            ),
            cautions: CAUTIONS.join(" "),
        }
    }
}
