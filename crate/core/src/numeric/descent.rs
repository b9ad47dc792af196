//! Descent to the least sum of squares of few residuals over three unknowns.

use wide::f32x4;

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
/// Damped least squares (K. Levenberg, Quarterly of Applied Mathematics 2 (1944)
/// 164); slopes are taken by differences once and then kept up by C. G. Broyden's
/// rule (Mathematics of Computation 19 (1965) 577). Unknowns from `used` on stay
/// as they are. Ends after `steps` trials, when a step gains next to nothing, or
/// as soon as `done` says so of the sum.
pub(crate) fn descend<const M: usize, T>(
    start: Trial<M, T>,
    used: usize,
    steps: usize,
    mut look: impl FnMut([f32; 3]) -> Trial<M, T>,
    done: impl Fn(f32) -> bool,
) -> Trial<M, T> {
    /// Step for slopes: large against `f32`'s noise in a colour.
    const STEP: f32 = 0.02;
    /// Part of the sum that a step must take off to go on.
    const GAIN: f32 = 0.03;
    let (mut best, mut damping) = (start, 1.0);
    let mut sum = sum_of_squares(&best.miss);
    if done(sum) {
        return best;
    }
    let mut slopes = [[0.0; M]; 3];
    for (i, slope) in slopes.iter_mut().enumerate().take(used) {
        let mut moved = best.at;
        moved[i] += STEP;
        let there = look(moved).miss;
        *slope = std::array::from_fn(|row| (there[row] - best.miss[row]) / STEP);
    }
    for _ in 0..steps {
        let step = solve(&slopes, &best.miss, damping);
        let there = look(std::array::from_fn(|i| best.at[i] - step[i]));
        correct(&mut slopes, &step, &best.miss, &there.miss);
        let next = sum_of_squares(&there.miss);
        if next >= sum {
            damping *= 8.0;
            continue;
        }
        let gain = 1.0 - next / sum;
        (best, sum, damping) = (there, next, damping * 0.2);
        if gain < GAIN || done(sum) {
            break;
        }
    }
    best
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
