//! Blocks one below another, over as few pages as it takes.

use glam::DVec2;

use super::rows::Block;
use super::{TITLE, made_by};
use crate::drawing::sheet::{Frame, Paper, Sheet, put_frame};
use crate::report::CAUTIONS;

/// Between blocks, millimetres.
const APART: f64 = 1.0;

/// A page costs this; what else is bad about one is weighed against it.
const PAGE: f64 = 100.0;
/// More than so much of a page empty is waste.
const EMPTY: f64 = 1.0 / 3.0;
const WASTE: f64 = 60.0;
/// A sketch is drawn again where its questions go on over the page.
const AGAIN: f64 = 30.0;

/// Where blocks may lie on a page: its lower left and upper right corner.
pub(super) fn room(paper: Paper) -> [DVec2; 2] {
    put_frame(&mut empty(paper), &frame(paper, [99, 99]), SCALE).into()
}

/// The pages; `of` is how many they say that they are.
pub(super) fn pages(blocks: &[Block], paper: Paper, of: usize) -> Vec<Sheet> {
    let [low, high] = room(paper);
    let starts = starts(blocks, high - low);
    let ends = starts.iter().skip(1).copied().chain([blocks.len()]);
    let mut pages = Vec::new();
    for (from, to) in starts.iter().copied().zip(ends) {
        let mut sheet = empty(paper);
        let (low, high) = put_frame(&mut sheet, &frame(paper, [pages.len() + 1, of]), SCALE);
        let width = high.x - low.x;
        let title = continued(blocks, from);
        let own = again(blocks, from).into_iter().chain(&blocks[from..to]);
        let all: Vec<&Block> = title.iter().chain(own).collect();
        let used: f64 = all.iter().map(|block| block.height(width) + APART).sum();
        // What is left over becomes lines of the first table: no form has too many.
        let mut left = high.y - low.y - (used - APART);
        let mut top = high.y;
        for block in all {
            let longer = block.with_more_lines(left);
            let block = longer.as_ref().unwrap_or(block);
            if longer.is_some() {
                left = 0.0;
            }
            block.draw(&mut sheet, DVec2::new(low.x, top), width);
            top -= block.height(width) + APART;
        }
        pages.push(sheet);
    }
    pages
}

/// Where each page begins, so that they are few, little of them is empty, and few sketches are drawn
/// twice.
fn starts(blocks: &[Block], room: DVec2) -> Vec<usize> {
    let heights: Vec<f64> = blocks
        .iter()
        .map(|block| block.height(room.x) + APART)
        .collect();
    let count = blocks.len();
    // The least that all pages from this block on cost, and where the second of them begins.
    let mut best: Vec<(f64, usize)> = vec![(f64::INFINITY, count); count];
    best.push((0.0, count));
    for from in (0..count).rev() {
        let title = continued(blocks, from).map_or(0.0, |title| title.height(room.x) + APART);
        let again = again(blocks, from).map(|sketch| sketch.height(room.x) + APART);
        let mut used = title + again.unwrap_or(0.0) - APART;
        for (to, height) in heights.iter().enumerate().skip(from) {
            used += height;
            if used > room.y && to > from {
                break;
            }
            // What leads stays with what it leads to.
            if blocks[to].leads() && to + 1 < count && to > from {
                continue;
            }
            let empty = 1.0 - used / room.y;
            let wasted = empty > EMPTY && to + 1 < count;
            let cost = PAGE
                + if wasted { WASTE } else { 0.0 }
                + if again.is_some() { AGAIN } else { 0.0 }
                + empty * empty;
            let all = cost + best[to + 1].0;
            if all < best[from].0 {
                best[from] = (all, to + 1);
            }
        }
    }
    let mut starts = Vec::new();
    let mut at = 0;
    while at < count {
        starts.push(at);
        at = best[at].1.max(at + 1);
    }
    starts
}

/// The title of a section that goes on from the page before.
fn continued(blocks: &[Block], from: usize) -> Option<Block> {
    if blocks.get(from)?.opens() {
        return None;
    }
    let title = blocks.iter().take(from).rfind(|block| block.opens());
    let Block::Heading(title, _) = title? else {
        return None;
    };
    Some(Block::Continued(format!("{title}, continued")))
}

/// The sketch of questions that go on from the page before.
fn again(blocks: &[Block], from: usize) -> Option<&Block> {
    let first = blocks.get(from)?;
    if first.opens() || first.is_sketch() {
        return None;
    }
    let mut before = blocks.iter().take(from);
    let last = before.rfind(|block| block.opens() || block.is_sketch());
    last.filter(|block| block.is_sketch())
}

/// What stands in the place of a scale.
const SCALE: &str = "Sketches are not to scale";

fn empty(paper: Paper) -> Sheet {
    Sheet {
        name: TITLE.into(),
        tag: "FORM",
        page_mm: paper.page_mm(false),
        scale: 1.0,
        origin_mm: DVec2::ZERO,
        items: Vec::new(),
    }
}

fn frame(paper: Paper, page: [usize; 2]) -> Frame {
    Frame {
        title: "bay ______________________________".into(),
        name: TITLE.into(),
        tag: "FORM",
        page,
        warnings: Vec::new(),
        notes: Vec::new(),
        made_by: made_by(paper),
        cautions: CAUTIONS.join(" "),
    }
}
