//! How far a prediction may be off.
//!
//! Three independent errors add as squares, each a median CIEDE2000:
//!
//! ```text
//! e² = MAKERS² + (bump MIXING)² + (w_a t_a)² + (w_b t_b)²
//! ```
//!
//! where t is what the tier of a paint's spectrum does to its mixes
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

/// Median CIEDE2000 to expect of a mix with this share of B by volume.
///
/// Half of all real mixes lie nearer than this, half farther; one in ten lies
/// about twice as far.
#[must_use]
pub fn expected_error(tiers: [Tier; 2], share: f32) -> f32 {
    let position = if share.is_finite() { position_of(share) } else { 0.5 };
    let [a, b] = tiers.map(|tier| tier.expected_error()[0]);
    let mixing = MIXING * 4.0 * position * (1.0 - position);
    let weights = [2.0 * (1.0 - position), 2.0 * position].map(|weight| weight.min(1.0));
    [MAKERS, mixing, weights[0] * a, weights[1] * b].iter().map(|e| e * e).sum::<f32>().sqrt()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_mix_is_less_sure_than_a_paint_and_an_estimate_less_than_a_measurement() {
        let measured = [Tier::Measured; 2];
        let alone = expected_error(measured, 0.0);
        let mixed = expected_error(measured, 0.5);
        assert!(alone < mixed, "{alone} {mixed}");
        assert!(mixed < expected_error([Tier::Measured, Tier::Estimated], 0.5));
        assert_eq!(alone, expected_error([Tier::Measured, Tier::Estimated], 0.0));
        assert!((expected_error(measured, 1.0) - alone).abs() < 1e-4);
    }
}
