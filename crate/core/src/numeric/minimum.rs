//! The lowest point of a function of one variable that may have several valleys.

use std::convert::Infallible;

use num_traits::Float;

/// Where `f` is least between `from` and `to`.
///
/// A grid of `samples` points finds every valley; the deepest few are then
/// narrowed by [`golden_section`] until `f32` tells no more. The ends count too.
pub(crate) fn minimise(from: f32, to: f32, samples: usize, mut f: impl FnMut(f32) -> f32) -> f32 {
    let last = samples.max(3) - 1;
    let at = |i: usize| if i == last { to } else { from + (to - from) * i as f32 / last as f32 };
    let heights: Vec<f32> = (0..=last).map(|i| f(at(i))).collect();
    let mut best = if heights[last] < heights[0] { (to, heights[last]) } else { (from, heights[0]) };
    for i in 0..=last {
        let (before, after) = (i.saturating_sub(1), (i + 1).min(last));
        if heights[i] > heights[before] || heights[i] > heights[after] {
            continue;
        }
        // 24 steps narrow the bracket a hundred-thousandfold.
        let Ok(found) = golden_section([at(before), at(after)], 24, |x| Ok::<_, Infallible>(f(x)));
        if found.1 < best.1 {
            best = found;
        }
    }
    best.0
}

/// Where `f` is least between two ends that have one valley between them, and how low it is there.
///
/// By golden section (J. Kiefer, Proc. AMS 4 (1953) 502): each step leaves 0.62 of the bracket.
/// Ends with the first error of `f`.
pub(crate) fn golden_section<F: Float, E>(
    [mut low, mut high]: [F; 2],
    steps: usize,
    mut f: impl FnMut(F) -> Result<F, E>,
) -> Result<(F, F), E> {
    let part = F::from(0.618_034).expect("f32 and f64 hold it");
    let inner = |low: F, high: F| [high - part * (high - low), low + part * (high - low)];
    let mut at = inner(low, high);
    let mut heights = [f(at[0])?, f(at[1])?];
    for _ in 0..steps {
        if heights[0] <= heights[1] {
            high = at[1];
            at = [inner(low, high)[0], at[0]];
            heights = [f(at[0])?, heights[0]];
        } else {
            low = at[0];
            at = [at[1], inner(low, high)[1]];
            heights = [heights[1], f(at[1])?];
        }
    }
    Ok(if heights[0] <= heights[1] { (at[0], heights[0]) } else { (at[1], heights[1]) })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn finds_the_deeper_of_two_valleys() {
        let f = |x: f32| (x * x - 1.0).powi(2) + 0.1 * x;
        assert!((minimise(-2.0, 2.0, 17, f) + 1.0123).abs() < 1e-3);
    }

    #[test]
    fn an_end_may_be_lowest() {
        assert_eq!(minimise(0.0, 1.0, 9, |x| x), 0.0);
        assert_eq!(minimise(0.0, 1.0, 9, |x| -x), 1.0);
    }
}
