//! Eigenvalues of a small symmetric matrix, by Jacobi's rotations.
//!
//! Six unknowns need no library, and the eigenvectors are what names the direction in which a post
//! is not held.

/// Eigenvalues with their unit vectors, the smallest first.
pub(super) fn eigen(mut a: Vec<Vec<f64>>) -> Vec<(f64, Vec<f64>)> {
    let n = a.len();
    let mut vectors: Vec<Vec<f64>> = (0..n)
        .map(|i| (0..n).map(|j| f64::from(u8::from(i == j))).collect())
        .collect();
    // Each round halves the number of wrong digits or better; ten are plenty.
    for _ in 0..60 {
        let mut off = 0.0;
        for p in 0..n {
            for q in p + 1..n {
                off += a[p][q] * a[p][q];
                if a[p][q].abs() < f64::MIN_POSITIVE {
                    continue;
                }
                let theta = (a[q][q] - a[p][p]) / (2.0 * a[p][q]);
                let t = theta.signum() / (theta.abs() + theta.hypot(1.0));
                let c = 1.0 / t.hypot(1.0);
                let s = t * c;
                for row in &mut a {
                    let (x, y) = (row[p], row[q]);
                    row[p] = c * x - s * y;
                    row[q] = s * x + c * y;
                }
                let (first, rest) = a.split_at_mut(q);
                for (one, other) in first[p].iter_mut().zip(&mut rest[0]) {
                    let (x, y) = (*one, *other);
                    *one = c * x - s * y;
                    *other = s * x + c * y;
                }
                for row in &mut vectors {
                    let (x, y) = (row[p], row[q]);
                    row[p] = c * x - s * y;
                    row[q] = s * x + c * y;
                }
            }
        }
        if off <= 0.0 {
            break;
        }
    }
    let mut pairs: Vec<(f64, Vec<f64>)> = (0..n)
        .map(|i| (a[i][i], vectors.iter().map(|row| row[i]).collect()))
        .collect();
    pairs.sort_by(|one, other| one.0.total_cmp(&other.0));
    pairs
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_matrix_worked_out_by_hand() {
        // (2 1; 1 2): 1 along (1, -1) and 3 along (1, 1).
        let pairs = eigen(vec![vec![2.0, 1.0], vec![1.0, 2.0]]);
        assert!((pairs[0].0 - 1.0).abs() < 1e-14 && (pairs[1].0 - 3.0).abs() < 1e-14);
        assert!((pairs[0].1[0] + pairs[0].1[1]).abs() < 1e-14);
        assert!((pairs[1].1[0] - pairs[1].1[1]).abs() < 1e-14);
    }
}
