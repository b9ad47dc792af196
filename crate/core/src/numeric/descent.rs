//! Searches for the least sum of squares of few residuals over three unknowns.

use std::marker::PhantomData;

use wide::f32x4;

use crate::numeric::levenberg::{Limits, Squares, minimise};

/// A place that was looked at.
pub(crate) struct Trial<const M: usize, T> {
    /// The unknowns.
    pub(crate) at: [f32; 3],
    /// The residuals there.
    pub(crate) miss: [f32; M],
    /// What else was found there.
    pub(crate) found: T,
}

/// Where the residuals' sum of squares is least near `start`.
///
/// Slopes are taken by differences once and then kept up by C. G. Broyden's rule
/// (Mathematics of Computation 19 (1965) 577). Unknowns from `used` on stay as they
/// are. Ends after `steps` trials, when a step gains next to nothing, or as soon as
/// `done` says so of the sum.
pub(crate) fn descend<const M: usize, T>(
    start: Trial<M, T>,
    used: usize,
    steps: usize,
    look: impl Fn([f32; 3]) -> Trial<M, T>,
    done: impl Fn(f32) -> bool,
) -> Trial<M, T> {
    let limits = Limits {
        damping: 1.0,
        least_damping: 0.0,
        rise: 8.0,
        steps,
        failures: steps,
        trials: steps,
        gain: 0.03,
    };
    minimise(&Descent { used, look, done, found: PhantomData }, start, &limits).0
}

/// A search as the driver wants it.
struct Descent<const M: usize, T, L: Fn([f32; 3]) -> Trial<M, T>, D> {
    used: usize,
    look: L,
    done: D,
    found: PhantomData<T>,
}

impl<const M: usize, T, L, D> Squares for Descent<M, T, L, D>
where
    L: Fn([f32; 3]) -> Trial<M, T>,
    D: Fn(f32) -> bool,
{
    type Number = f32;
    type Point = Trial<M, T>;
    type Slopes = [[f32; M]; 3];

    fn sum(&self, place: &Trial<M, T>) -> f32 {
        sum_of_squares(&place.miss)
    }

    fn slopes(&self, place: &Trial<M, T>) -> [[f32; M]; 3] {
        /// Large against `f32`'s noise in a colour.
        const STEP: f32 = 0.02;
        let mut slopes = [[0.0; M]; 3];
        for (i, slope) in slopes.iter_mut().enumerate().take(self.used) {
            let mut moved = place.at;
            moved[i] += STEP;
            let there = (self.look)(moved).miss;
            *slope = std::array::from_fn(|row| (there[row] - place.miss[row]) / STEP);
        }
        slopes
    }

    fn slopes_after(&self, _: &Trial<M, T>, kept: [[f32; M]; 3]) -> [[f32; M]; 3] {
        kept
    }

    fn step(&self, from: &Trial<M, T>, slopes: &mut [[f32; M]; 3], damping: f32) -> Option<Trial<M, T>> {
        let step = solve(slopes, &from.miss, damping);
        let there = (self.look)(std::array::from_fn(|i| from.at[i] - step[i]));
        correct(slopes, &step, &from.miss, &there.miss);
        Some(there)
    }

    fn enough(&self, sum: f32) -> bool {
        (self.done)(sum)
    }
}

/// The numbers of three natural logarithms, found at once: unknowns often are logarithms.
pub(crate) fn powers([a, b, c]: [f32; 3]) -> [f32; 3] {
    let [a, b, c, _] = f32x4::from([a, b, c, 0.0]).exp().to_array();
    [a, b, c]
}

/// Broyden's correction after a step, which was taken away from the unknowns.
fn correct<const M: usize>(slopes: &mut [[f32; M]; 3], step: &[f32; 3], from: &[f32; M], to: &[f32; M]) {
    let length = sum_of_squares(step);
    if length <= 0.0 {
        return;
    }
    for row in 0..M {
        let expected: f32 = (0..3).map(|i| slopes[i][row] * step[i]).sum();
        let off = (to[row] - from[row] + expected) / length;
        (0..3).for_each(|i| slopes[i][row] -= off * step[i]);
    }
}

pub(crate) fn sum_of_squares<const M: usize>(values: &[f32; M]) -> f32 {
    values.iter().map(|value| value * value).sum()
}

/// The damped normal equations by Cramer's rule; positive definite, so never singular.
fn solve<const M: usize>(slopes: &[[f32; M]; 3], miss: &[f32; M], damping: f32) -> [f32; 3] {
    let dot = |a: &[f32; M], b: &[f32; M]| a.iter().zip(b).map(|(a, b)| a * b).sum::<f32>();
    let row =
        |i: usize| std::array::from_fn(|j| dot(&slopes[i], &slopes[j]) + if i == j { damping } else { 0.0 });
    let matrix: [[f32; 3]; 3] = std::array::from_fn(row);
    let right: [f32; 3] = std::array::from_fn(|i| dot(&slopes[i], miss));
    let whole = determinant(&matrix);
    std::array::from_fn(|column| {
        let mut replaced = matrix;
        (0..3).for_each(|i| replaced[i][column] = right[i]);
        determinant(&replaced) / whole
    })
}

fn determinant(m: &[[f32; 3]; 3]) -> f32 {
    m[0][0] * (m[1][1] * m[2][2] - m[1][2] * m[2][1]) - m[0][1] * (m[1][0] * m[2][2] - m[1][2] * m[2][0])
        + m[0][2] * (m[1][0] * m[2][1] - m[1][1] * m[2][0])
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn finds_the_foot_of_a_curved_valley() {
        // Rosenbrock's valley, with a third unknown that takes no part.
        let valley =
            |x: [f32; 3]| Trial { at: x, miss: [1.0 - x[0], 10.0 * (x[1] - x[0] * x[0])], found: () };
        let Trial { at, miss, .. } = descend(valley([-1.2, 1.0, 7.0]), 2, 200, valley, |sum| sum < 1e-6);
        assert!(sum_of_squares(&miss) < 1e-4, "{at:?}");
        assert_eq!(at[2], 7.0);
    }
}
