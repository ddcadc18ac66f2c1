//! Blocks one below another, over as many pages as it takes.

use glam::DVec2;

use super::rows::Block;
use super::{TITLE, made_by};
use crate::drawing::sheet::{Frame, Paper, Sheet, put_frame};
use crate::report::CAUTIONS;

/// Between blocks, millimetres.
const APART: f64 = 1.0;

/// The pages; `of` is how many they say that they are.
pub(super) fn pages(blocks: &[Block], paper: Paper, of: usize) -> Vec<Sheet> {
    let mut pages = Vec::new();
    let mut rest = blocks;
    while !rest.is_empty() {
        let mut sheet = Sheet {
            name: TITLE.into(),
            tag: "FORM",
            page_mm: paper.page_mm(false),
            scale: 1.0,
            origin_mm: DVec2::ZERO,
            items: Vec::new(),
        };
        let (low, high) = put_frame(
            &mut sheet,
            &frame(paper, [pages.len() + 1, of]),
            "Sketches are not to scale",
        );
        let width = high.x - low.x;
        let mut top = high.y;
        let mut taken = 0;
        while let Some(block) = rest.get(taken) {
            // What leads stays with what it leads to, where a page holds both.
            let led = rest
                .iter()
                .skip(taken)
                .take_while(|one| one.leads())
                .count();
            let group = rest.iter().skip(taken).take(led + 1);
            let together: f64 = group.map(|one| one.height(width) + APART).sum();
            let needed = if together <= high.y - low.y {
                together - APART
            } else {
                block.height(width)
            };
            if top - needed < low.y && taken > 0 {
                break;
            }
            block.draw(&mut sheet, DVec2::new(low.x, top), width);
            top -= block.height(width) + APART;
            taken += 1;
        }
        rest = rest.get(taken..).unwrap_or_default();
        pages.push(sheet);
    }
    pages
}

fn frame(paper: Paper, page: [usize; 2]) -> Frame {
    Frame {
        title: "bay: ______________________________".into(),
        name: TITLE.into(),
        tag: "FORM",
        page,
        warnings: Vec::new(),
        notes: Vec::new(),
        made_by: made_by(paper),
        cautions: CAUTIONS.join(" "),
    }
}
