//! Descent to the least sum of squares of few residuals over three unknowns.

/// Where the residuals' sum of squares is least near `start`, and the residuals there.
///
/// Damped least squares (K. Levenberg, Quarterly of Applied Mathematics 2 (1944)
/// 164); slopes are taken by differences once and then kept up by C. G. Broyden's
/// rule (Mathematics of Computation 19 (1965) 577). Unknowns from `used` on stay
/// as they are. Ends after `steps` trials, when a step gains next to nothing, or
/// as soon as `done` says so of the sum.
pub(crate) fn descend<const M: usize>(
    start: [f32; 3],
    used: usize,
    steps: usize,
    mut residuals: impl FnMut([f32; 3]) -> [f32; M],
    done: impl Fn(f32) -> bool,
) -> ([f32; 3], [f32; M]) {
    /// Step for slopes: large against `f32`'s noise in a colour.
    const STEP: f32 = 0.02;
    /// Part of the sum that a step must take off to go on.
    const GAIN: f32 = 0.03;
    let (mut at, mut miss, mut damping) = (start, residuals(start), 1.0);
    let mut sum = sum_of_squares(&miss);
    if done(sum) {
        return (at, miss);
    }
    let mut slopes = [[0.0; M]; 3];
    for (i, slope) in slopes.iter_mut().enumerate().take(used) {
        let mut moved = at;
        moved[i] += STEP;
        let there = residuals(moved);
        *slope = std::array::from_fn(|row| (there[row] - miss[row]) / STEP);
    }
    for _ in 0..steps {
        let step = solve(&slopes, &miss, damping);
        let there = residuals(std::array::from_fn(|i| at[i] - step[i]));
        correct(&mut slopes, &step, &miss, &there);
        let next = sum_of_squares(&there);
        if next >= sum {
            damping *= 8.0;
            continue;
        }
        let gain = 1.0 - next / sum;
        at = std::array::from_fn(|i| at[i] - step[i]);
        (miss, sum, damping) = (there, next, damping * 0.2);
        if gain < GAIN || done(sum) {
            break;
        }
    }
    (at, miss)
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
        let valley = |x: [f32; 3]| [1.0 - x[0], 10.0 * (x[1] - x[0] * x[0])];
        let (at, miss) = descend([-1.2, 1.0, 7.0], 2, 200, valley, |sum| sum < 1e-6);
        assert!(sum_of_squares(&miss) < 1e-4, "{at:?}");
        assert_eq!(at[2], 7.0);
    }
}
