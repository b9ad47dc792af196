//! Nonlinear least squares by Levenberg and Marquardt.
//!
//! D. W. Marquardt, "An algorithm for least-squares estimation of nonlinear
//! parameters", J. SIAM 11 (1963) 431.

use nalgebra::{SMatrix, SVector};
use washpath_core::levenberg::{self, Limits, Squares};

/// A point and its sum of squares.
#[derive(Clone, Copy, Debug)]
pub struct Minimum<const N: usize> {
    pub at: [f64; N],
    pub sum: f64,
}

/// Searches from `start` for the least sum of squares of M residuals.
pub fn minimise<const N: usize, const M: usize>(
    start: [f64; N],
    residuals: impl Fn(&[f64; N]) -> [f64; M],
) -> Minimum<N> {
    let limits = Limits {
        damping: 1e-2,
        least_damping: 0.0,
        rise: 5.0,
        steps: 60,
        failures: 12,
        trials: usize::MAX,
        gain: 1e-7,
    };
    let search = Search::<N, M, _>(residuals);
    let (point, sum) = levenberg::minimise(&search, search.look(start.into()), &limits);
    Minimum { at: point.at.into(), sum }
}

/// What tells the M residuals of N numbers.
struct Search<const N: usize, const M: usize, F>(F);

struct Point<const N: usize, const M: usize> {
    at: SVector<f64, N>,
    residuals: SVector<f64, M>,
}

/// The equations of a step before they are damped.
struct Normal<const N: usize> {
    matrix: SMatrix<f64, N, N>,
    slope: SVector<f64, N>,
}

impl<const N: usize, const M: usize, F: Fn(&[f64; N]) -> [f64; M]> Search<N, M, F> {
    fn look(&self, at: SVector<f64, N>) -> Point<N, M> {
        Point { at, residuals: (self.0)(&at.into()).into() }
    }
}

impl<const N: usize, const M: usize, F: Fn(&[f64; N]) -> [f64; M]> Squares for Search<N, M, F> {
    type Number = f64;
    type Point = Point<N, M>;
    type Slopes = Normal<N>;

    fn sum(&self, point: &Point<N, M>) -> f64 {
        point.residuals.norm_squared()
    }

    fn slopes(&self, point: &Point<N, M>) -> Normal<N> {
        const STEP: f64 = 1e-5;
        let mut jacobian = SMatrix::<f64, M, N>::zeros();
        for i in 0..N {
            let mut moved = point.at;
            moved[i] += STEP;
            jacobian.set_column(i, &((self.look(moved).residuals - point.residuals) / STEP));
        }
        let turned = jacobian.transpose();
        Normal { matrix: turned * jacobian, slope: turned * point.residuals }
    }

    fn step(&self, from: &Point<N, M>, normal: &mut Normal<N>, damping: f64) -> Option<Point<N, M>> {
        let mut damped = normal.matrix;
        for i in 0..N {
            damped[(i, i)] += damping * normal.matrix[(i, i)] + 1e-12;
        }
        let step = damped.cholesky()?.solve(&normal.slope);
        Some(self.look(from.at - step))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn finds_the_bottom_of_rosenbrocks_valley() {
        // H. H. Rosenbrock, Computer Journal 3 (1960) 175: minimum 0 at (1, 1).
        let found = minimise([-1.2, 1.0], |[x, y]| [10.0 * (y - x * x), 1.0 - x]);
        assert!((found.at[0] - 1.0).abs() < 1e-3 && found.sum < 1e-6, "{found:?}");
    }
}
