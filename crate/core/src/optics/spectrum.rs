//! The wavelength bands every spectrum of this crate is sampled at.

use num_traits::Float;

/// Number of bands.
pub const BANDS: usize = 36;

/// Wavelength of the first band in nanometres.
pub const FIRST_NM: u16 = 380;

/// Distance between bands in nanometres.
pub const STEP_NM: u16 = 10;

/// One value a band, 380 to 730 nm by 10 nm.
///
/// What the values mean (reflectance 0 to 1, absorption per unit load, ...)
/// is said where a spectrum is used.
pub type Spectrum<F = f32> = [F; BANDS];

/// Wavelength of a band in nanometres; `band` counts from 0.
#[must_use]
pub const fn wavelength(band: usize) -> u16 {
    FIRST_NM + STEP_NM * band as u16
}

/// Builds a spectrum from a function of the band's index.
pub fn from_fn<F>(value: impl FnMut(usize) -> F) -> Spectrum<F> {
    std::array::from_fn(value)
}

/// The same spectrum in the other float width.
#[must_use]
pub fn cast<A: Float, B: Float>(spectrum: &Spectrum<A>) -> Spectrum<B> {
    // Float to float never fails: values too large become infinite.
    spectrum.map(|value| B::from(value).unwrap_or_else(B::nan))
}
