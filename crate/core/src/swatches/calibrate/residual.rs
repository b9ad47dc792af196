//! What a colour misses, and how that answers to the reflectance.

use super::swatch::daylight;
use crate::colour::Lab;
use crate::optics::observer::Light;
use crate::optics::spectrum::Spectrum;

/// Weight of a CIELAB unit. A spectrum's 36 bands add up to w² = 39.6, that is
/// 13.2 for each of L*, a*, b*; its root over 1.16 gives one Lab the same say.
pub(super) const LAB_WEIGHT: f64 = 3.1;

/// A CIELAB residual and its slopes by the reflectance at every band.
pub(super) struct Residual {
    pub(super) value: f64,
    pub(super) slopes: Spectrum<f64>,
}

/// Sum of the squares of residuals.
pub(super) fn square(residuals: &[Residual]) -> f64 {
    residuals.iter().map(|residual| residual.value * residual.value).sum()
}

/// CIELAB minus what was measured, weighted, with slopes (CIE 15:2018, 8.2.1).
pub(super) fn lab_residuals(reflectance: &Spectrum<f64>, measured: Lab<f64>) -> [Residual; 3] {
    let weights = Light::D65.weights();
    let xyz = weights.tristimulus(reflectance);
    // Slopes of f(X / Xn) by the reflectance at each band.
    let f: [Spectrum<f64>; 3] = std::array::from_fn(|i| {
        let ratio = xyz[i] / weights.white[i];
        let slope = if ratio > 216.0 / 24389.0 { ratio.cbrt().powi(-2) / 3.0 } else { 841.0 / 108.0 };
        weights.xyz[i].map(|weight| slope * weight / weights.white[i])
    });
    let found = daylight(reflectance);
    let chroma_weight = LAB_WEIGHT / (1.0 + 0.045 * measured.a.hypot(measured.b));
    let residual = |weight: f64, off: f64, slope: &dyn Fn(usize) -> f64| Residual {
        value: weight * off,
        slopes: std::array::from_fn(|band| weight * slope(band)),
    };
    [
        residual(LAB_WEIGHT, found.l - measured.l, &|band| 116.0 * f[1][band]),
        residual(chroma_weight, found.a - measured.a, &|band| 500.0 * (f[0][band] - f[1][band])),
        residual(chroma_weight, found.b - measured.b, &|band| 200.0 * (f[1][band] - f[2][band])),
    ]
}
