//! Where do labels go that would stand on each other?

/// A label's wish: where along the line, and how much it matters (0 the most).
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Wish {
    pub(super) at: f32,
    pub(super) rank: u32,
}

/// For each label its place along a line, `apart` from its neighbours and within `low..=high`;
/// none for those that are left out because there is no room. Wishes come in any order; labels keep
/// the order of their wishes. Those of rank 0 are left out only when even they don't fit.
pub(super) fn place(wishes: &[Wish], apart: f32, low: f32, high: f32) -> Vec<Option<f32>> {
    let mut places = vec![None; wishes.len()];
    if !(apart > 0.0 && high >= low) {
        return places;
    }
    let mut kept: Vec<usize> = (0..wishes.len()).collect();
    kept.sort_by(|a, b| wishes[*a].at.total_cmp(&wishes[*b].at));
    while !kept.is_empty() {
        let found = spread(&kept, wishes, apart, low, high);
        let out = match &found {
            // One that is pushed far from its place says more against another than for itself.
            Some(at) => kept
                .iter()
                .zip(at)
                .enumerate()
                .filter(|(_, (index, at))| {
                    wishes[**index].rank > 0 && (*at - wishes[**index].at).abs() > apart * 0.6
                })
                .max_by_key(|(_, (index, _))| wishes[**index].rank)
                .map(|(position, _)| position),
            None => kept
                .iter()
                .enumerate()
                .max_by_key(|(_, index)| wishes[**index].rank)
                .map(|(position, _)| position),
        };
        match (out, found) {
            // With it goes the least of what crowds it, when that matters less.
            (Some(position), _) => {
                let around = position.saturating_sub(1)..=(position + 1).min(kept.len() - 1);
                let least = around
                    .max_by_key(|at| (wishes[kept[*at]].rank, *at == position))
                    .unwrap_or(position);
                kept.remove(least);
            }
            (None, Some(at)) => {
                for (index, at) in kept.into_iter().zip(at) {
                    places[index] = Some(at);
                }
                break;
            }
            (None, None) => break,
        }
    }
    places
}

/// Places as near to the wishes as the distance allows: neighbours that crowd each other move
/// together about their common middle. None when they don't fit at all.
fn spread(kept: &[usize], wishes: &[Wish], apart: f32, low: f32, high: f32) -> Option<Vec<f32>> {
    #[allow(clippy::cast_precision_loss)] // a few dozen labels
    let count = |n: usize| n as f32;
    if low + apart * count(kept.len().saturating_sub(1)) > high + 1e-3 {
        return None;
    }
    // Groups of neighbours: how many, and the sum of where the first of them would stand.
    let mut groups: Vec<(usize, f32)> = Vec::new();
    for index in kept {
        groups.push((1, wishes[*index].at));
        while let [.., (n, sum), (m, more)] = groups[..] {
            let end = sum / count(n) + apart * count(n);
            if end <= more / count(m) {
                break;
            }
            groups.truncate(groups.len() - 2);
            groups.push((n + m, sum + more - apart * count(n * m)));
        }
    }
    let mut at: Vec<f32> = groups
        .iter()
        .flat_map(|(n, sum)| (0..*n).map(move |i| sum / count(*n) + apart * count(i)))
        .collect();
    let mut floor = low;
    for place in &mut at {
        *place = place.max(floor);
        floor = *place + apart;
    }
    let mut roof = high;
    for place in at.iter_mut().rev() {
        *place = place.min(roof);
        roof = *place - apart;
    }
    Some(at)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn wishes(at: &[(f32, u32)]) -> Vec<Wish> {
        at.iter()
            .map(|(at, rank)| Wish {
                at: *at,
                rank: *rank,
            })
            .collect()
    }

    #[test]
    fn labels_with_room_stay_where_they_wish() {
        let places = place(
            &wishes(&[(10.0, 1), (40.0, 1), (90.0, 1)]),
            15.0,
            0.0,
            100.0,
        );
        assert_eq!(places, [Some(10.0), Some(40.0), Some(90.0)]);
    }

    #[test]
    fn labels_that_matter_make_room_for_each_other() {
        let places = place(
            &wishes(&[(50.0, 0), (52.0, 0), (50.0, 0)]),
            10.0,
            0.0,
            100.0,
        );
        let mut at: Vec<f32> = places.into_iter().flatten().collect();
        at.sort_by(f32::total_cmp);
        assert_eq!(at.len(), 3);
        assert!(
            at.windows(2).all(|pair| pair[1] - pair[0] >= 10.0 - 1e-3),
            "{at:?}"
        );
        assert!((at[1] - 50.67).abs() < 0.1, "{at:?}");
    }

    #[test]
    fn sixty_locks_and_three_marks_thin_out_and_keep_what_matters() {
        let mut all: Vec<(f32, u32)> = (0_u8..60).map(|i| (f32::from(i) * 8.0, 1)).collect();
        all[17].1 = 0;
        all.extend([(140.0, 0), (150.0, 0), (155.0, 0)]);
        let places = place(&wishes(&all), 18.0, 0.0, 480.0);
        for (wish, place) in all.iter().zip(&places) {
            assert!(wish.1 > 0 || place.is_some());
        }
        let mut at: Vec<f32> = places.iter().flatten().copied().collect();
        at.sort_by(f32::total_cmp);
        assert!(at.len() > 15, "{}", at.len());
        assert!(at.windows(2).all(|pair| pair[1] - pair[0] >= 18.0 - 1e-2));
        assert!(at[0] >= 0.0 && at[at.len() - 1] <= 480.0);
    }

    #[test]
    fn no_room_at_all() {
        assert_eq!(place(&wishes(&[(1.0, 0)]), 10.0, 5.0, 0.0), [None]);
        let places = place(&wishes(&[(1.0, 0), (2.0, 3)]), 10.0, 0.0, 5.0);
        assert_eq!(places, [Some(1.0), None]);
    }
}
