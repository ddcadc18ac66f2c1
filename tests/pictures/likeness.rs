//! How alike do two pictures look to a person?
//!
//! The mean structural similarity of Wang, Bovik, Sheikh and Simoncelli, "Image quality
//! assessment: from error visibility to structural similarity", IEEE Transactions on Image
//! Processing 13 (4), 2004, equation 13, constants and all written from memory of that paper, on
//! the luma of Rec. ITU-R BT.601, over square windows of 8 pixels that overlap by half.

use bayrise::viewer::capture::Pixels;

/// Side of a window, pixels.
const WINDOW: u32 = 8;

/// Windows along the side of a region: a region is as large as a thing that a person would miss.
const REGION: usize = 10;

/// 1 for the same picture, near 0 for pictures that have nothing in common: of the whole, and of
/// the region that differs most, so that a thing that is missing is not lost in the rest.
pub(crate) fn likeness(a: &Pixels, b: &Pixels) -> [f64; 2] {
    assert_eq!((a.width, a.height), (b.width, b.height), "of one size");
    let rows: Vec<Vec<f64>> = (0..=a.height - WINDOW)
        .step_by(WINDOW as usize / 2)
        .map(|y| {
            let across = (0..=a.width - WINDOW).step_by(WINDOW as usize / 2);
            across.map(|x| in_window(a, b, x, y)).collect()
        })
        .collect();
    let windows = rows.iter().flatten().count() as f64;
    let whole = rows.iter().flatten().sum::<f64>() / windows;
    let (high, wide) = (REGION.min(rows.len()), REGION.min(rows[0].len()));
    let mut worst = 1.0_f64;
    for rows in rows.windows(high).step_by(high / 2) {
        for x in (0..=rows[0].len() - wide).step_by(wide / 2) {
            let sum: f64 = rows.iter().flat_map(|row| &row[x..x + wide]).sum();
            worst = worst.min(sum / (high * wide) as f64);
        }
    }
    [whole, worst]
}

fn in_window(a: &Pixels, b: &Pixels, x: u32, y: u32) -> f64 {
    let (c1, c2) = ((0.01_f64 * 255.0).powi(2), (0.03_f64 * 255.0).powi(2));
    let count = f64::from(WINDOW * WINDOW);
    let (mut sa, mut sb, mut saa, mut sbb, mut sab) = (0.0, 0.0, 0.0, 0.0, 0.0);
    for dy in 0..WINDOW {
        for dx in 0..WINDOW {
            let (la, lb) = (luma(a, x + dx, y + dy), luma(b, x + dx, y + dy));
            sa += la;
            sb += lb;
            saa += la * la;
            sbb += lb * lb;
            sab += la * lb;
        }
    }
    let (ma, mb) = (sa / count, sb / count);
    let (va, vb) = (saa / count - ma * ma, sbb / count - mb * mb);
    let cov = sab / count - ma * mb;
    ((2.0 * ma * mb + c1) * (2.0 * cov + c2)) / ((ma * ma + mb * mb + c1) * (va + vb + c2))
}

fn luma(picture: &Pixels, x: u32, y: u32) -> f64 {
    let [r, g, b] = picture.at(x, y).unwrap().map(f64::from);
    0.299 * r + 0.587 * g + 0.114 * b
}

#[test]
fn the_measure_knows_the_same_from_another() {
    let striped = |step: u32, grey: u8| Pixels {
        width: 64,
        height: 32,
        rgba: (0..64 * 32_u32)
            .flat_map(|i| {
                let on = (i % 64 + i / 64 * 3) / step % 2 == 0;
                let v = if on { grey } else { 200 };
                [v, v, v, 255]
            })
            .collect(),
    };
    let a = striped(6, 60);
    assert!(likeness(&a, &a).iter().all(|l| (l - 1.0).abs() < 1e-12));
    assert!(likeness(&a, &striped(6, 64))[0] > 0.97, "a shade off");
    assert!(likeness(&a, &striped(5, 60))[0] < 0.6, "other stripes");
    // A thing in a corner of a large plain picture.
    let plain = |thing: u8| Pixels {
        width: 400,
        height: 300,
        rgba: (0..400 * 300_u32)
            .flat_map(|i| {
                let (x, y) = (i % 400, i / 400);
                let is_thing = (300..330).contains(&x) && (200..260).contains(&y);
                let v = if is_thing && x % 4 < 2 { thing } else { 200 };
                [v, v, v, 255]
            })
            .collect(),
    };
    let [whole, worst] = likeness(&plain(90), &plain(200));
    assert!(whole > 0.95 && worst < 0.6, "{whole} {worst}");
}
