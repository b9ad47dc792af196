//! An uneven film: patches of exponentially distributed thickness.

use std::sync::LazyLock;

use washpath_core::layer;

/// Patches a film is cut into, of equal area.
const PATCHES: usize = 8;

/// Mean thickness of each patch; their mean is 1.
static THICKNESS: LazyLock<[f64; PATCHES]> = LazyLock::new(|| {
    // Between thicknesses a and b: n (e^-a (1 + a) - e^-b (1 + b)).
    let n = PATCHES as f64;
    let edge = |i: usize| -(1.0 - i as f64 / n).ln();
    let below = |a: f64| if a.is_finite() { (-a).exp() * (1.0 + a) } else { 0.0 };
    std::array::from_fn(|i| n * (below(edge(i)) - below(edge(i + 1))))
});

/// Reflectance below the surface of an uneven film of mean load 1.
pub fn reflectance(k: f64, s: f64, ground: f64) -> f64 {
    let sum: f64 = THICKNESS.iter().map(|d| layer::reflectance(k, s, *d, ground)).sum();
    sum / PATCHES as f64
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn mean_thickness_is_one() {
        assert!((THICKNESS.iter().sum::<f64>() / PATCHES as f64 - 1.0).abs() < 1e-12);
    }

    #[test]
    fn a_clear_film_passes_as_the_distribution_says() {
        // Without scattering R = mean of exp(-2 K d) = 1 / (1 + 2 K) for exponential d.
        for k in [0.01, 0.1, 0.5] {
            assert!((reflectance(k, 0.0, 1.0) - 1.0 / (1.0 + 2.0 * k)).abs() < 0.01, "K {k}");
        }
    }
}
