//! Where do labels go that would stand on each other?

/// A label's wish: where along the line, and how much it matters (0 the most).
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Wish {
    pub(super) at: f32,
    pub(super) rank: u32,
}

/// For each label its place along a line, `apart` from its neighbours and within `low..=high`;
/// none for those that are left out because there is no room. Wishes come in any order; labels keep
/// the order of their wishes.
///
/// Those of rank 0 make room for each other, and are left out only when even they don't fit. The
/// others take what room is left, the lower ranks first, near where they wish to be or not at all.
pub(super) fn place(wishes: &[Wish], apart: f32, low: f32, high: f32) -> Vec<Option<f32>> {
    let mut places = vec![None; wishes.len()];
    if !(apart > 0.0 && high >= low) {
        return places;
    }
    let mut first: Vec<usize> = (0..wishes.len()).filter(|i| wishes[*i].rank == 0).collect();
    first.sort_by(|a, b| wishes[*a].at.total_cmp(&wishes[*b].at));
    let found = loop {
        match spread(&first, wishes, apart, low, high) {
            Some(found) => break found,
            None => first.pop(),
        };
    };
    for (index, at) in first.into_iter().zip(found) {
        places[index] = Some(at);
    }
    let mut rest: Vec<usize> = (0..wishes.len()).filter(|i| wishes[*i].rank > 0).collect();
    rest.sort_by_key(|index| wishes[*index].rank);
    for index in rest {
        places[index] = free(wishes[index], wishes, &places, apart, low..=high);
    }
    places
}

/// The free place nearest to a wish; none when it is too far from it.
fn free(
    wish: Wish,
    wishes: &[Wish],
    places: &[Option<f32>],
    apart: f32,
    range: std::ops::RangeInclusive<f32>,
) -> Option<f32> {
    let away = apart * if wish.rank == 1 { 1.0 } else { 0.6 };
    let taken: Vec<(f32, f32)> = wishes
        .iter()
        .zip(places)
        .filter_map(|(wish, place)| place.map(|place| (wish.at, place)))
        .collect();
    let is_free = |at: f32| {
        range.contains(&at)
            && taken.iter().all(|(other, place)| {
                let keeps_order = (other - wish.at) * (place - at) >= 0.0;
                keeps_order && (place - at).abs() >= apart - 1e-3
            })
    };
    taken
        .iter()
        .flat_map(|(_, place)| [place - apart, place + apart])
        .chain([wish.at])
        .filter(|at| (at - wish.at).abs() <= away && is_free(*at))
        .min_by(|a, b| (a - wish.at).abs().total_cmp(&(b - wish.at).abs()))
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
