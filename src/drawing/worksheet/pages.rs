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
        // What goes on from the page before says what it belongs to.
        let before = blocks.len() - rest.len();
        if rest.first().is_some_and(|block| !block.opens())
            && let Some(Block::Heading(title, _)) =
                blocks.iter().take(before).rfind(|block| block.opens())
        {
            let again = Block::Continued(format!("{title}, continued"));
            again.draw(&mut sheet, DVec2::new(low.x, top), width);
            top -= again.height(width) + APART;
        }
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
            // What leads a section off was looked at with it.
            let is_led = taken > 0 && rest.get(taken - 1).is_some_and(Block::opens);
            let parts_badly = (block.opens() || block.is_sketch() && !is_led)
                && is_parted_badly(
                    rest.get(taken..).unwrap_or_default(),
                    width,
                    top - low.y,
                    high.y - low.y,
                );
            if (top - needed < low.y || parts_badly) && taken > 0 {
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

/// The least share of a section on either side of a break; less is cut off from its sketch and
/// words.
const SHARE: f64 = 0.4;

/// Whether a section that would find room on a page of its own is broken so that little of it comes
/// before the break or after it, or a sketch that would is parted from any of its questions. A
/// section's first sketch has its heading with it.
fn is_parted_badly(from: &[Block], width: f64, left: f64, page: f64) -> bool {
    let height = |goes_on: &dyn Fn(&Block) -> bool, first: usize| {
        let own = from
            .iter()
            .enumerate()
            .take_while(|(at, block)| *at < first || goes_on(block));
        own.map(|(_, block)| block.height(width) + APART)
            .sum::<f64>()
            - APART
    };
    let sketch = from.iter().take(2).position(Block::is_sketch);
    let drawn = sketch.is_some_and(|at| {
        let whole = height(&|block| !block.opens() && !block.is_sketch(), at + 1);
        whole <= page && whole > left
    });
    let whole = height(&|block| !block.opens(), 1);
    let over = whole - left;
    let section = from.first().is_some_and(Block::opens)
        && whole <= page
        && over > 0.0
        && (left < whole * SHARE || over < whole * SHARE);
    drawn || section
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
