//! Two bays on one picture, to the same scale: how does one compare with the other?
//!
//! Each half is a picture of its own with its own verdict and cautions. In motion the carriages rise
//! together, and each stops where its own picture would.

use super::make::{FRAME_HUNDREDTHS, HOLD_DOWN_HUNDREDTHS, HOLD_UP_HUNDREDTHS, STEP_M};
use super::make::{legible, posed};
use super::{Animation, Pixels, Studio, encode};
use crate::panels::Action;
use crate::viewer::order::{Made, PictureError, PictureKind, PictureOrder};

/// Pixels between the halves.
const GAP: u32 = 4;
/// Their grey.
const GREY: [u8; 4] = [0x50, 0x54, 0x5a, 0xff];

/// Makes the picture, `orders[0]` on the left; sizes, captions and kind are those of the first.
/// `progress` is told how many of how many frames are done.
///
/// # Errors
/// When a bay can't be studied, or nothing can draw here.
pub fn beside(
    orders: [PictureOrder; 2],
    progress: &mut dyn FnMut(usize, usize),
) -> Result<Made, PictureError> {
    let [width, height] = orders[0].size;
    let (kind, captions) = (orders[0].kind, orders[0].captions);
    let half = width.saturating_sub(GAP) / 2;
    if half < 16 {
        return Err(PictureError::TooSmall);
    }
    let mut studios = Vec::with_capacity(2);
    let mut tops = [0.0; 2];
    let mut notes = Vec::new();
    for (order, top) in orders.iter().zip(&mut tops) {
        let (desk, note) = posed(order)?;
        notes.extend(note.map(|note| format!("{}: {note}", order.file.display())));
        *top = desk.rise.travel_m;
        studios.push(Studio::open(desk, [half, height], captions)?);
    }
    same_scale(&mut studios);
    let size = [half * 2 + GAP, height];
    let bytes = match kind {
        PictureKind::Png => encode::png(&both(&mut studios, size)?)?,
        PictureKind::Gif => raise(&mut studios, tops, size, progress)?,
    };
    Ok(Made {
        bytes,
        note: (!notes.is_empty()).then(|| notes.join(" ")),
    })
}

/// Lets both look at boxes of one size, so that a metre is as long in both.
fn same_scale(studios: &mut [Studio]) {
    let half_m = studios
        .iter_mut()
        .map(|studio| {
            let [low, high] = studio.desk().bounds_m;
            (high - low) * 0.5
        })
        .fold(glam::DVec3::ZERO, glam::DVec3::max);
    for studio in studios {
        let desk = studio.desk();
        let [low, high] = desk.bounds_m;
        // Both stand on their floors.
        let middle = (low + high) * 0.5;
        let floor = low.z;
        desk.bounds_m = [
            (middle - half_m).with_z(floor),
            (middle + half_m).with_z(floor + 2.0 * half_m.z),
        ];
        if let Some(sight) = desk.sight {
            desk.apply(Action::Look(sight));
        }
    }
}

fn both(studios: &mut [Studio], [width, height]: [u32; 2]) -> Result<Pixels, PictureError> {
    let mut rows = vec![Vec::with_capacity(width as usize * 4); height as usize];
    for (index, studio) in studios.iter_mut().enumerate() {
        let picture = legible(studio)?;
        let row = picture.width as usize * 4;
        for (into, from) in rows.iter_mut().zip(picture.rgba.chunks_exact(row)) {
            if index > 0 {
                into.extend(GREY.repeat(GAP as usize));
            }
            into.extend_from_slice(from);
        }
    }
    Ok(Pixels {
        width,
        height,
        rgba: rows.concat(),
    })
}

/// Both from the floor up, side by side, each as far as it goes.
fn raise(
    studios: &mut [Studio],
    tops: [f64; 2],
    size: [u32; 2],
    progress: &mut dyn FnMut(usize, usize),
) -> Result<Vec<u8>, PictureError> {
    let top_m = tops[0].max(tops[1]);
    let steps = (top_m / STEP_M).ceil().clamp(0.0, 10_000.0) as usize;
    let mut animation = Animation::new(size)?;
    for step in 0..=steps {
        let share = if steps == 0 {
            0.0
        } else {
            step as f64 / steps as f64
        };
        for (studio, own) in studios.iter_mut().zip(tops) {
            let desk = studio.desk();
            let travel = (top_m * share).min(own);
            desk.apply(Action::Travel(travel));
            // Nobody stands under what moves.
            desk.rise.playing = step < steps && travel < own;
        }
        let picture = both(studios, size)?;
        let hundredths = if step == steps {
            HOLD_UP_HUNDREDTHS
        } else if step == 0 {
            HOLD_DOWN_HUNDREDTHS
        } else {
            FRAME_HUNDREDTHS
        };
        animation.add(&picture, hundredths)?;
        progress(step + 1, steps + 1);
    }
    Ok(animation.finish()?)
}
