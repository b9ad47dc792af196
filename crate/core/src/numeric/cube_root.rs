//! Cube roots of four numbers at once.

use wide::f32x4;

/// Cube roots of positive numbers, to within 2e-7 of each.
///
/// A third of a number's bits is nearly a third of its logarithm: that gives `r`, nearly the inverse cube root, and
/// `y = x r²`, nearly the root. With `h = 1 - y r`, at most 0.103, the root is `y (1 - h)^(-2/3)`, whose series is cut
/// after the sixth power. All of it is products and sums, where the general root of `wide` spends as long as half a
/// film on cases that a tristimulus value cannot be.
pub(crate) fn cube_roots(x: f32x4) -> f32x4 {
    /// The constant that leaves the least `h`; found by trying those around it over three octaves either way.
    const NEAREST: u32 = 0x54a1_f600;
    const SERIES: [f32; 6] =
        [2.0 / 3.0, 5.0 / 9.0, 40.0 / 81.0, 110.0 / 243.0, 308.0 / 729.0, 2618.0 / 6561.0];
    let r = f32x4::from(x.to_array().map(|x| f32::from_bits(NEAREST.wrapping_sub(x.to_bits() / 3))));
    let y = x * r * r;
    let h = f32x4::ONE - y * r;
    let square = h * h;
    let pair = |i: usize| h * SERIES[i + 1] + SERIES[i];
    y + y * h * (pair(0) + square * (pair(2) + square * pair(4)))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn roots_are_the_exact_ones() {
        for step in 0..200_000 {
            let x = 1e-4 * 1.000_1f32.powi(step);
            let found = cube_roots(f32x4::from([x, 1.0, x, 8.0])).to_array();
            for (found, x) in found.into_iter().zip([x, 1.0, x, 8.0]) {
                let exact = f64::from(x).cbrt();
                assert!((f64::from(found) - exact).abs() < 2e-7 * exact, "{found} against {exact}");
            }
        }
    }
}
