//! Where do labels along a line go so that none lies on another?

/// Moves boxes along a line apart, each as near to its wanted middle as the others let it.
///
/// `wanted` are pairs of middle and size, by rising middle; the middles come back. None where they
/// don't fit between `low` and `high`.
#[must_use]
pub fn spread(wanted: &[(f64, f64)], low: f64, high: f64) -> Option<Vec<f64>> {
    let total: f64 = wanted.iter().map(|(_, size)| size).sum();
    if total > high - low + 1e-9 {
        return None;
    }
    // Neighbours that would overlap join into a block, which lies about the mean of their wishes.
    struct Block {
        first: usize,
        start: f64,
        size: f64,
        wishes: f64,
    }
    let held = |start: f64, size: f64| start.min(high - size).max(low);
    let mut blocks: Vec<Block> = Vec::new();
    for (index, &(middle, size)) in wanted.iter().enumerate() {
        blocks.push(Block {
            first: index,
            start: held(middle - size * 0.5, size),
            size,
            wishes: middle - size * 0.5,
        });
        while let [.., before, last] = &blocks[..]
            && before.start + before.size > last.start
        {
            let (a, b) = (before.first, last.first);
            let (before_count, last_count) = (count(b - a), count(index + 1 - b));
            // The wish of a block is where its start would lie for the mean of its members.
            let wishes = (before.wishes * before_count + (last.wishes - before.size) * last_count)
                / (before_count + last_count);
            let size = before.size + last.size;
            blocks.truncate(blocks.len() - 2);
            blocks.push(Block {
                first: a,
                start: held(wishes, size),
                size,
                wishes,
            });
        }
    }
    let mut middles = Vec::with_capacity(wanted.len());
    for (number, block) in blocks.iter().enumerate() {
        let end = blocks
            .get(number + 1)
            .map_or(wanted.len(), |next| next.first);
        let mut at = block.start;
        for (_, size) in &wanted[block.first..end] {
            middles.push(at + size * 0.5);
            at += size;
        }
    }
    Some(middles)
}

#[allow(clippy::cast_precision_loss)] // a page holds some hundred labels
fn count(n: usize) -> f64 {
    n as f64
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn nobody_moves_without_need() {
        assert_eq!(
            spread(&[(10.0, 4.0), (20.0, 4.0)], 0.0, 30.0),
            Some(vec![10.0, 20.0])
        );
    }

    #[test]
    fn nobody_overlaps_or_leaves() {
        let mut rng = rand_pcg::Pcg32::new(7, 7);
        let mut draw = || {
            use rand_pcg::rand_core::Rng as _;
            f64::from(rng.next_u32()) / f64::from(u32::MAX)
        };
        for _ in 0..500 {
            let mut wanted: Vec<(f64, f64)> = (0..12)
                .map(|_| (draw() * 120.0 - 10.0, 2.0 + 6.0 * draw()))
                .collect();
            wanted.sort_by(|a, b| a.0.total_cmp(&b.0));
            let total: f64 = wanted.iter().map(|(_, size)| size).sum();
            let placed = spread(&wanted, 0.0, 100.0);
            assert_eq!(placed.is_some(), total <= 100.0);
            let Some(placed) = placed else { continue };
            let mut end = 0.0;
            for (middle, (_, size)) in placed.iter().zip(&wanted) {
                assert!(middle - size * 0.5 >= end - 1e-9);
                end = middle + size * 0.5;
            }
            assert!(end <= 100.0 + 1e-9);
        }
    }
}
