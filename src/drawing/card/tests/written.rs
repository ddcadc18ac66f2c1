//! What was written, read back: is the tape in full size, and are its lines the study's?

use miniz_oxide::inflate::decompress_to_vec_zlib;

use super::*;

/// Lines of an SVG from one point to another with their width, and texts with their place.
type Read = (Vec<([f64; 4], f64)>, Vec<([f64; 2], String)>);

fn read_svg(svg: &str) -> Read {
    let numbers = |text: &str| -> Vec<f64> {
        text.split(|c: char| !(c.is_ascii_digit() || c == '.' || c == '-'))
            .filter_map(|part| part.parse().ok())
            .collect()
    };
    let after = |line: &str, key: &str| -> Option<String> {
        let from = line.find(key)? + key.len();
        Some(line[from..].split('"').next()?.to_owned())
    };
    let (mut lines, mut texts) = (Vec::new(), Vec::new());
    for line in svg.lines() {
        if line.starts_with("<path d=\"M") && !line.contains('Z') {
            let at = numbers(&after(line, "d=\"").unwrap());
            let width = after(line, "stroke-width=\"").unwrap().parse().unwrap();
            lines.push(([at[0], at[1], at[2], at[3]], width));
        }
        let Some(start) = line.find("<text ") else {
            continue;
        };
        let line = &line[start..];
        let transform = after(line, "transform=\"").unwrap();
        if !transform.contains("rotate") {
            let at = numbers(&transform);
            let says = line[line.find('>').unwrap() + 1..]
                .split('<')
                .next()
                .unwrap();
            texts.push(([at[0], at[1]], says.to_owned()));
        }
    }
    (lines, texts)
}

#[test]
fn the_tape_read_back_is_full_size_and_its_lines_are_the_study_s() {
    for (bays, step_m) in [
        (three(), M_PER_INCH),
        (Bays::of(vec![("a", scene("coupe-full-rise"))]), 0.01),
    ] {
        let entries = bays.entries();
        let of = Card {
            entries: &entries,
            day: ForDay::settled(DAY),
            paper: Paper::Letter,
        };
        let pages = bays.pages(Paper::Letter).unwrap();
        let mut found: Vec<f64> = Vec::new();
        let mut ticks = 0;
        for sheet in pages.iter().filter(|one| one.tag == "TAPE") {
            let svg = crate::drawing::svg::svg(sheet);
            assert!(
                svg.contains("width=\"215.9mm\"") && svg.contains("viewBox=\"0 0 215.9 279.4\"")
            );
            let (lines, texts) = read_svg(&svg);
            // The numbers of the scale, each beside its long tick.
            let mut strips: Vec<(f64, Vec<(f64, f64)>)> = Vec::new();
            for ([x, y], says) in &texts {
                let Ok(height) = parse_length(says) else {
                    continue;
                };
                let tick = lines.iter().find(|([x1, y1, x2, y2], width)| {
                    (width - 0.22).abs() < 1e-9
                        && (y1 - y2).abs() < 1e-9
                        && (x2 - x1 - 8.0).abs() < 1e-3
                        && (x - x1 - 9.0).abs() < 1e-3
                        && (y - y1).abs() < 1.0
                });
                // A length in a label has none.
                let Some(([left, at, ..], _)) = tick else {
                    continue;
                };
                match strips.iter_mut().find(|(x, _)| (x - left).abs() < 1e-3) {
                    Some((_, all)) => all.push((height.m(), *at)),
                    None => strips.push((*left, vec![(height.m(), *at)])),
                }
            }
            for (left, numbers) in &strips {
                let (height, at) = numbers[0];
                for (other, there) in numbers {
                    // Down the page is down the column: a millimetre is a millimetre.
                    let mm = (other - height) * 1000.0;
                    assert!((at - there - mm).abs() < 0.002, "{mm}");
                    ticks += 1;
                }
                let is_step = |pair: &[(f64, f64)]| (pair[1].0 - pair[0].0 - step_m).abs() < 1e-9;
                assert!(numbers.windows(2).all(is_step));
                for ([x, y, _, y2], width) in &lines {
                    if (width - 0.5).abs() < 1e-9 && (x - left).abs() < 1e-3 {
                        assert!((y - y2).abs() < 1e-9);
                        found.push(height + (at - y) / 1000.0);
                    }
                }
            }
        }
        assert!(ticks > 20);
        let mut expected: Vec<f64> = entries
            .iter()
            .filter(|one| is_safe(one))
            .filter_map(|one| one.study.marks)
            .flat_map(|marks| {
                let release = edge::release_m(entries[0].bay, &marks);
                [Some(marks.stop_m), release, marks.never_above_m]
            })
            .flatten()
            .collect();
        expected.sort_by(f64::total_cmp);
        found.sort_by(f64::total_cmp);
        assert_eq!(found.len(), expected.len(), "{found:?} {expected:?}");
        for (found, expected) in found.iter().zip(&expected) {
            assert!((found - expected).abs() < 0.000_02, "{found} {expected}");
        }
        let locks = marks(&of).into_iter().filter(|mark| mark.kind.is_lock());
        let lift = &entries[0].bay.lift;
        for (lock, mark) in lift.locks.iter().zip(locks) {
            assert!((mark.at_m - lock.m() - lift.carriage.marked_edge.m()).abs() < 1e-12);
        }
    }
}

/// The streams of a PDF that can be unpacked, as text.
fn streams(pdf: &[u8]) -> Vec<String> {
    let find = |from: usize, what: &[u8]| {
        let rest = pdf.get(from..)?;
        let at = rest.windows(what.len()).position(|part| part == what)?;
        Some(from + at)
    };
    let (mut all, mut from) = (Vec::new(), 0);
    while let Some(start) = find(from, b"\nstream\n") {
        let start = start + 8;
        let Some(end) = find(start, b"\nendstream") else {
            break;
        };
        if let Ok(bytes) = decompress_to_vec_zlib(&pdf[start..end]) {
            all.push(String::from_utf8_lossy(&bytes).into_owned());
        }
        from = end;
    }
    all
}

#[test]
fn an_inch_of_the_tape_is_72_points_in_the_pdf() {
    let bays = Bays::of(vec![("a", scene("tall-pickup"))]);
    let pages = bays.pages(Paper::Letter).unwrap();
    let pdf = PageFormat::Pdf.written("Bay", &pages).unwrap().remove(0);
    let mut inches = 0;
    for stream in streams(&pdf) {
        // Long ticks: horizontal, 8 mm, pen of 0.22 mm. "x y m", "x y l", "S".
        let mut width = 0.0;
        let mut last: Option<[f64; 2]> = None;
        let mut ticks: Vec<[f64; 2]> = Vec::new();
        for line in stream.lines() {
            let words: Vec<&str> = line.split(' ').collect();
            let number = |index: usize| words[index].parse::<f64>().unwrap();
            match words.as_slice() {
                [_, "w"] => width = number(0),
                [_, _, "m"] => last = Some([number(0), number(1)]),
                [_, _, "l"] => {
                    let long = 8.0 * 72.0 / 25.4;
                    let from = last.unwrap();
                    let is_long = (number(0) - from[0] - long).abs() < 0.01;
                    if is_long && (width - 0.22 * 72.0 / 25.4).abs() < 1e-3 {
                        ticks.push(from);
                    }
                }
                _ => {}
            }
        }
        for pair in ticks.windows(2) {
            if (pair[0][0] - pair[1][0]).abs() < 1e-3 {
                assert!((pair[1][1] - pair[0][1] - 72.0).abs() < 0.005, "{pair:?}");
                inches += 1;
            }
        }
    }
    assert!(inches > 15, "{inches}");
}

#[test]
fn every_format_gives_the_same_bytes_every_time() {
    let bays = three();
    for format in [PageFormat::Pdf, PageFormat::Svg, PageFormat::Png] {
        let write = || {
            let pages = bays.pages(Paper::A4).unwrap();
            let pages = match format {
                // Pixels take a while: two pages will do.
                PageFormat::Png => &pages[..2],
                _ => &pages[..],
            };
            format.written("Bay", pages).unwrap()
        };
        assert_eq!(write(), write());
    }
}

#[test]
fn the_pixels_keep_the_scale_and_the_loud_page_is_red() {
    use crate::drawing::palette::paper::WARN;
    let bays = Bays::of(vec![("a", scene("no-safe-lock"))]);
    let pages = bays.pages(Paper::Letter).unwrap();
    let bytes = crate::drawing::png::png(&pages[0]).unwrap();
    let mut reader = png::Decoder::new(std::io::Cursor::new(bytes))
        .read_info()
        .unwrap();
    let info = reader.info();
    assert_eq!((info.width, info.height), (2550, 3300));
    let dims = info.pixel_dims.unwrap();
    assert_eq!((dims.xppu, dims.yppu), (11_811, 11_811));
    let mut pixels = vec![0; reader.output_buffer_size().unwrap()];
    reader.next_frame(&mut pixels).unwrap();
    let red = [WARN.0, WARN.1, WARN.2];
    let count = pixels.chunks_exact(3).filter(|one| *one == red).count();
    assert!(count > 500_000, "{count}");
}
