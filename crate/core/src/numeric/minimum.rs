//! The lowest point of a function of one variable that may have several valleys.

/// Where `f` is least between `from` and `to`.
///
/// A grid of `samples` points finds every valley; the deepest few are then
/// narrowed by golden section (J. Kiefer, Proc. AMS 4 (1953) 502) until `f32`
/// tells no more. The ends count as places too.
pub(crate) fn minimise(from: f32, to: f32, samples: usize, mut f: impl FnMut(f32) -> f32) -> f32 {
    let last = samples.max(3) - 1;
    let at = |i: usize| if i == last { to } else { from + (to - from) * i as f32 / last as f32 };
    let heights: Vec<f32> = (0..=last).map(|i| f(at(i))).collect();
    let mut best = if heights[last] < heights[0] { (to, heights[last]) } else { (from, heights[0]) };
    for i in 0..=last {
        let (left, right) = (i.saturating_sub(1), (i + 1).min(last));
        if heights[i] > heights[left] || heights[i] > heights[right] {
            continue;
        }
        let found = golden_section(at(left), at(right), &mut f);
        if found.1 < best.1 {
            best = found;
        }
    }
    best.0
}

fn golden_section(mut low: f32, mut high: f32, f: &mut impl FnMut(f32) -> f32) -> (f32, f32) {
    const SHARE: f32 = 0.618_034;
    let mut inner = [high - SHARE * (high - low), low + SHARE * (high - low)];
    let mut heights = inner.map(&mut *f);
    // 24 steps narrow the bracket a hundred-thousandfold.
    for _ in 0..24 {
        if heights[0] <= heights[1] {
            high = inner[1];
            inner = [high - SHARE * (high - low), inner[0]];
            heights = [f(inner[0]), heights[0]];
        } else {
            low = inner[0];
            inner = [inner[1], low + SHARE * (high - low)];
            heights = [heights[1], f(inner[1])];
        }
    }
    if heights[0] <= heights[1] { (inner[0], heights[0]) } else { (inner[1], heights[1]) }
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
    fn an_end_may_be_the_lowest_place() {
        assert_eq!(minimise(0.0, 1.0, 9, |x| x), 0.0);
        assert_eq!(minimise(0.0, 1.0, 9, |x| -x), 1.0);
    }
}
