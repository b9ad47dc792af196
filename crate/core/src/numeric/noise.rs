//! Noise for tests.

/// Uniform, of this standard deviation; one seed always gives the same.
pub(crate) fn noise(seed: &mut u64, deviation: f64) -> f64 {
    *seed = seed.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
    ((*seed >> 11) as f64 / (1u64 << 53) as f64 - 0.5) * 12f64.sqrt() * deviation
}
