//! Nonlinear least squares by Levenberg and Marquardt.
//!
//! D. W. Marquardt, "An algorithm for least-squares estimation of nonlinear
//! parameters", J. SIAM 11 (1963) 431.

use nalgebra::{SMatrix, SVector};

/// Steps before a search gives up improving.
const STEPS: usize = 60;

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
    const STEP: f64 = 1e-5;
    let value = |at: &SVector<f64, N>| SVector::<f64, M>::from(residuals(&(*at).into()));
    let mut at = SVector::<f64, N>::from(start);
    let mut r = value(&at);
    let mut damping = 1e-2;
    for _ in 0..STEPS {
        let mut jacobian = SMatrix::<f64, M, N>::zeros();
        for i in 0..N {
            let mut moved = at;
            moved[i] += STEP;
            jacobian.set_column(i, &((value(&moved) - r) / STEP));
        }
        let normal = jacobian.transpose() * jacobian;
        let slope = jacobian.transpose() * r;
        let before = r.norm_squared();
        for _ in 0..12 {
            let mut damped = normal;
            for i in 0..N {
                damped[(i, i)] += damping * normal[(i, i)] + 1e-12;
            }
            let step = damped.cholesky().map(|factor| factor.solve(&slope));
            let next = step.map(|step| at - step).filter(|next| value(next).norm_squared() < before);
            if let Some(next) = next {
                (at, r) = (next, value(&next));
                damping /= 5.0;
                break;
            }
            damping *= 5.0;
        }
        if before - r.norm_squared() < 1e-7 * before.max(1e-3) {
            break;
        }
    }
    Minimum { at: at.into(), sum: r.norm_squared() }
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
