//! How far a prediction may be off.
//!
//! Three independent errors add as squares, each a median CIEDE2000:
//!
//! ```text
//! e² = m² + (bump MIXING)² + (w_a t_a)² + (w_b t_b)²
//! ```
//!
//! where m runs from A's to B's share of [`MAKERS`], all of it but for paints the
//! painter swatched; t is what the tier of a paint's spectrum does to its mixes
//! ([`Tier::expected_error`]). Along the position p of the mix, w_a runs from 1
//! at A to 0 at B, level over the half nearer A, and w_b likewise; the bump is
//! 4 p (1 - p): no mixing error at a paint alone, all of it near equal parts,
//! where it was measured.

use crate::paint::Tier;
use crate::path::position_of;

/// Spread of makers' paints of one name round their mean.
///
/// From the standard deviations of value range and hue of the 75 shades that at
/// least three makers sell (MacEvoy, handprint.com/HP/WCL/waterfs), at each
/// shade's own colour: median 3.5, 90th percentile 5.6.
const MAKERS: f32 = 3.5;

/// What the film model misses in mixes of paints known from single swatches.
///
/// Median over 520 watercolour mixtures, 1:2 to 2:1, by `evaluate mixtures`
/// (data of Chen 2019, arXiv:1904.00275).
const MIXING: f32 = 4.45;

/// What is not known of a film: its paints' spectra, and how much of the mixing model it needs.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Doubt {
    /// Median CIEDE2000 by which makers' paints of one name differ.
    makers: f32,
    /// Median CIEDE2000 that the spectra bring.
    spectrum: f32,
    /// 0 for a paint alone to 1 for one part each.
    mixing: f32,
}

impl Doubt {
    /// Of a paint alone.
    #[must_use]
    pub const fn of(tier: Tier) -> Self {
        let makers = if tier.is_own() { 0.0 } else { MAKERS };
        Self { makers, spectrum: tier.expected_error()[0], mixing: 0.0 }
    }

    /// Of a mix with this share of `b` by volume.
    ///
    /// An end that is a mixture itself brings its own need of the model along.
    #[must_use]
    pub fn between(a: Self, b: Self, share: f32) -> Self {
        let position = if share.is_finite() { position_of(share) } else { 0.5 };
        let bump = 4.0 * position * (1.0 - position);
        let [of_a, of_b] = [2.0 * (1.0 - position), 2.0 * position].map(|weight| weight.min(1.0));
        Self {
            makers: (1.0 - position) * a.makers + position * b.makers,
            spectrum: (of_a * a.spectrum).hypot(of_b * b.spectrum),
            mixing: bump.max(of_a * a.mixing).max(of_b * b.mixing),
        }
    }

    /// Median CIEDE2000 to expect between the prediction and real paint.
    ///
    /// Half of all real mixes lie nearer than this, half farther; one in ten
    /// lies about twice as far.
    #[must_use]
    pub fn error(self) -> f32 {
        [self.makers, MIXING * self.mixing, self.spectrum].iter().map(|e| e * e).sum::<f32>().sqrt()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_mix_is_less_sure_than_a_paint_and_an_estimate_less_than_a_measurement() {
        let [measured, estimated] = [Tier::Measured, Tier::Estimated].map(Doubt::of);
        let error = |b: Doubt, share: f32| Doubt::between(measured, b, share).error();
        let alone = measured.error();
        assert!(alone < error(measured, 0.5), "{alone}");
        assert!(error(measured, 0.5) < error(estimated, 0.5));
        assert!((error(estimated, 0.0) - alone).abs() < 1e-4);
        assert!((error(measured, 1.0) - alone).abs() < 1e-4);
    }

    #[test]
    fn a_little_more_paint_in_a_mixture_does_not_make_it_sure() {
        let paint = Doubt::of(Tier::Measured);
        let mixture = Doubt::between(paint, paint, 0.5);
        assert_eq!(Doubt::between(mixture, paint, 0.0), mixture);
        assert!(Doubt::between(mixture, paint, 0.01).error() >= paint.error());
    }
}
