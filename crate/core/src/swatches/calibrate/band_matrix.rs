//! Symmetric matrices with entries near the diagonal only, and their solution.

/// The lower half of a symmetric matrix whose entries end `width` off the diagonal.
#[derive(Clone, Debug)]
pub(super) struct BandMatrix {
    width: usize,
    /// Row by row, each from `width` columns left of the diagonal to the diagonal.
    rows: Vec<Vec<f64>>,
}

impl BandMatrix {
    pub(super) fn new(size: usize, width: usize) -> Self {
        let width = width.min(size.saturating_sub(1));
        Self { width, rows: vec![vec![0.0; width + 1]; size] }
    }

    /// Adds to the entry at both (i, j) and (j, i).
    pub(super) fn add(&mut self, i: usize, j: usize, value: f64) {
        let (row, column) = (i.max(j), i.min(j));
        self.rows[row][column + self.width - row] += value;
    }

    pub(super) fn diagonal(&self, i: usize) -> f64 {
        self.rows[i][self.width]
    }

    /// The solution of `self x = right` by Cholesky; `None` if not positive definite.
    pub(super) fn solve(self, right: &[f64]) -> Option<Vec<f64>> {
        Some(self.factor()?.solve(right))
    }

    /// Its Cholesky factor; `None` if not positive definite.
    pub(super) fn factor(mut self) -> Option<Factor> {
        let width = self.width;
        for i in 0..self.rows.len() {
            let (above, rest) = self.rows.split_at_mut(i);
            let row = &mut rest[0];
            for j in i.saturating_sub(width)..i {
                // Row i and row j share the columns from i - width to j - 1.
                let (start, end) = (0, j + width - i);
                let other = &above[j][start + i - j..end + i - j];
                row[end] = (row[end] - dot(&row[start..end], other)) / above[j][width];
            }
            let pivot = row[width] - dot(&row[..width], &row[..width]);
            if pivot.is_nan() || pivot <= 0.0 {
                return None;
            }
            row[width] = pivot.sqrt();
        }
        Some(Factor(self))
    }
}

/// A matrix by its root: solved for one right side after the other.
pub(super) struct Factor(BandMatrix);

impl Factor {
    /// Natural logarithm of the matrix's determinant.
    pub(super) fn ln_determinant(&self) -> f64 {
        self.0.rows.iter().map(|row| 2.0 * row[self.0.width].ln()).sum()
    }

    pub(super) fn solve(&self, right: &[f64]) -> Vec<f64> {
        let BandMatrix { width, rows } = &self.0;
        let width = *width;
        let mut x = right.to_vec();
        for i in 0..x.len() {
            let first = i.saturating_sub(width);
            let sum = dot(&rows[i][first + width - i..width], &x[first..i]);
            x[i] = (x[i] - sum) / rows[i][width];
        }
        for i in (0..x.len()).rev() {
            x[i] /= rows[i][width];
            let first = i.saturating_sub(width);
            let done = x[i];
            for (value, entry) in x[first..i].iter_mut().zip(&rows[i][first + width - i..width]) {
                *value -= done * entry;
            }
        }
        x
    }
}

fn dot(a: &[f64], b: &[f64]) -> f64 {
    // Four running sums: one would make every addition wait for the last.
    let (a4, b4) = (a.chunks_exact(4), b.chunks_exact(4));
    let tail: f64 = a4.remainder().iter().zip(b4.remainder()).map(|(a, b)| a * b).sum();
    let mut sums = [0.0; 4];
    for (a, b) in a4.zip(b4) {
        for lane in 0..4 {
            sums[lane] += a[lane] * b[lane];
        }
    }
    tail + (sums[0] + sums[1]) + (sums[2] + sums[3])
}

#[cfg(test)]
mod tests {
    use super::BandMatrix;

    #[test]
    fn solves_what_nalgebra_solves() {
        for (size, width) in [(1, 0), (7, 2), (30, 9), (12, 11), (5, 40)] {
            let mut ours = BandMatrix::new(size, width);
            let mut theirs = nalgebra::DMatrix::zeros(size, size);
            for i in 0..size {
                for j in i.saturating_sub(width)..=i {
                    let value = if i == j { 40.0 } else { ((7 * i + 3 * j) % 11) as f64 / 10.0 - 0.5 };
                    ours.add(i, j, value);
                    theirs[(i, j)] = value;
                    theirs[(j, i)] = value;
                }
            }
            let right: Vec<f64> = (0..size).map(|i| (i as f64).sin()).collect();
            let expected =
                theirs.clone().cholesky().unwrap().solve(&nalgebra::DVector::from_vec(right.clone()));
            for (found, expected) in ours.clone().solve(&right).unwrap().iter().zip(expected.iter()) {
                assert!((found - expected).abs() < 1e-12);
            }
            let wanted = theirs.determinant().ln();
            assert!((ours.clone().factor().unwrap().ln_determinant() - wanted).abs() < 1e-9);
        }
    }

    #[test]
    fn refuses_what_has_no_root() {
        let mut matrix = BandMatrix::new(2, 1);
        matrix.add(0, 0, 1.0);
        matrix.add(1, 0, 2.0);
        matrix.add(1, 1, 1.0);
        assert!(matrix.solve(&[1.0, 1.0]).is_none());
    }
}
