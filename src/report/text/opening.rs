//! How far do hood, hatch and doors open at each lock?

use super::Report;
use super::page::{Cell, Page};
use crate::report::lengths::opening_angle;
use crate::report::words::{list, thing};

pub(super) fn write(report: &Report<'_>, page: &mut Page) {
    let parts = &report.study.opening_parts;
    if parts.is_empty() {
        return;
    }
    page.heading("Things that open (shut in all of the above)");
    let rows: Vec<[Cell; 3]> = parts
        .iter()
        .map(|part| {
            [
                thing(&part.name).into(),
                opening_angle(part.opens_rad).into(),
                runs(&part.at_locks_rad).into(),
            ]
        })
        .collect();
    page.table(["part", "opens", "at locks"], &rows);
    page.para(
        "At locks: how far each swings with its margin kept, at worst. How far a person can open a front \
         door to get out, by hand until it nearly touches and so without that margin, stands under Doors \
         and people; the two differ.",
    );
}

/// "1-3: 55 deg, 4: 20 deg": neighbours with the same angle in one run.
fn runs(angles: &[f64]) -> String {
    let shown: Vec<String> = angles.iter().map(|a| opening_angle(*a)).collect();
    let mut words = Vec::new();
    let mut start = 0;
    while let Some(angle) = shown.get(start) {
        let length = shown[start..].iter().take_while(|a| *a == angle).count();
        let (first, last) = (start + 1, start + length);
        words.push(if first == last {
            format!("{first}: {angle}")
        } else {
            format!("{first}-{last}: {angle}")
        });
        start += length;
    }
    if words.is_empty() {
        list::<String>(&[])
    } else {
        words.join(", ")
    }
}

#[cfg(test)]
mod tests {
    use super::runs;

    #[test]
    fn neighbours_with_the_same_angle_share_a_run() {
        assert_eq!(runs(&[]), "");
        assert_eq!(runs(&[0.9600, 0.9601, 0.5]), "1-2: 55 deg, 3: 28 deg");
        assert_eq!(runs(&[f64::NAN]), "1: no number");
    }
}
