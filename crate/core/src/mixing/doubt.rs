//! How far a prediction may be off.
//!
//! Three independent errors add as squares, each a median CIEDE2000:
//!
//! ```text
//! e² = m² + (bump x)² + (w_a t_a)² + (w_b t_b)²
//! ```
//!
//! where x is what the mixing model misses, a + b g with g how fast the colour turns with the
//! ratio ([`Path::steepness`](crate::Path::steepness)), less where records were learned from; m runs from A's to B's
//! share of [`MAKERS`], all of it but for paints the painter swatched; t is what the tier of a paint's spectrum does to its mixes
//! ([`Tier::expected_error`]). Along the position p of the mix, w_a runs from 1
//! at A to 0 at B, level over the half nearer A, and w_b likewise; the bump is
//! 4 p (1 - p): no mixing error at a paint alone, all of it near equal parts,
//! where it was measured.

use crate::mixing::path::position_of;
use crate::paint::{DoubtLeft, Paint};

/// Spread of makers' paints of one name round their mean.
///
/// From the standard deviations of value range and hue of the 75 shades that at
/// least three makers sell (MacEvoy, handprint.com/HP/WCL/waterfs), at each
/// shade's own colour: median 3.5, 90th percentile 5.6.
const MAKERS: f32 = 3.5;

/// What the film model misses in mixes of paints known from single swatches: a, and b for each
/// CIEDE2000 that the mix would change by if ln(B : A) changed by 1.
///
/// Line of the medians over 520 watercolour mixtures, 1:2 to 2:1 (data of Chen 2019,
/// arXiv:1904.00275). Found without both paints of a mixture, it covers 0.46, 0.52 and 0.49 of
/// the mixtures in the thirds of g from flat to steep (`evaluate report`).
const FLAT: f32 = 1.48;
const STEEP: f32 = 0.41;

/// Median of g over the same mixtures, for mixes of which no path is at hand.
const USUAL: f32 = 4.8;

/// Part of it that is left of paints whose mixes were learned from: the same mixtures,
/// each predicted from other pairs, 1.93, beside 3.2 from singles alone (`evaluate report`).
const LEARNED: f32 = 0.6;

/// What is not known of a film: its paints' spectra, and how much of the mixing model it needs.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Doubt {
    /// Median CIEDE2000 by which makers' paints of one name differ.
    makers: f32,
    /// Median CIEDE2000 that the spectra bring.
    spectrum: f32,
    /// Part of what the mixing model misses that is left.
    model: f32,
    /// 0 for a paint alone to 1 for one part each.
    mixing: f32,
}

impl Doubt {
    /// Of a paint alone.
    #[must_use]
    pub fn of(paint: &Paint) -> Self {
        let Paint { tier, doubt_left: DoubtLeft { alone, mixed }, .. } = paint;
        let makers = if tier.is_own() { 0.0 } else { MAKERS };
        Self {
            makers: alone * makers,
            spectrum: alone * tier.expected_error().median,
            model: (mixed * mixed * (1.0 - LEARNED * LEARNED) + LEARNED * LEARNED).sqrt(),
            mixing: 0.0,
        }
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
            model: (1.0 - position) * a.model + position * b.model,
            spectrum: (of_a * a.spectrum).hypot(of_b * b.spectrum),
            mixing: bump.max(of_a * a.mixing).max(of_b * b.mixing),
        }
    }

    /// Median CIEDE2000 to expect between the prediction and real paint, where the colour turns
    /// with the ratio as usual.
    ///
    /// Half of all real mixes lie nearer than this, half farther; one in ten
    /// lies about twice as far.
    #[must_use]
    pub fn error(self) -> f32 {
        self.error_where(USUAL)
    }

    /// The same where the colour turns by so many CIEDE2000 for 1 of ln(B : A).
    #[must_use]
    pub fn error_where(self, steepness: f32) -> f32 {
        let model = (FLAT + STEEP * steepness) * self.model * self.mixing;
        [self.makers, model, self.spectrum].iter().map(|e| e * e).sum::<f32>().sqrt()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Shelf, Tier};

    #[test]
    fn a_mix_is_less_sure_than_a_paint_and_an_estimate_less_than_a_measurement() {
        let [measured, estimated] = [Tier::Measured, Tier::Estimated].map(|tier| {
            Doubt::of(Shelf::built_in().paints().iter().find(|paint| paint.tier == tier).unwrap())
        });
        let error = |b: Doubt, share: f32| Doubt::between(measured, b, share).error();
        let alone = measured.error();
        assert!(alone < error(measured, 0.5), "{alone}");
        assert!(error(measured, 0.5) < error(estimated, 0.5));
        assert!((error(estimated, 0.0) - alone).abs() < 1e-4);
        assert!((error(measured, 1.0) - alone).abs() < 1e-4);
    }

    #[test]
    fn where_a_mix_turns_fast_it_is_less_sure() {
        let paint = Doubt::of(Shelf::built_in().find("pb29").unwrap());
        let mix = Doubt::between(paint, paint, 0.5);
        assert!(mix.error_where(1.5) < mix.error() && mix.error() < mix.error_where(9.0));
        assert_eq!(paint.error_where(1.0), paint.error_where(9.0), "a paint alone has no ratio");
    }

    #[test]
    fn a_paint_that_was_learned_is_surer() {
        let paint = Shelf::built_in().find("pb29").unwrap();
        let learned = Paint { doubt_left: DoubtLeft { alone: 0.4, mixed: 0.3 }, ..paint.clone() };
        let [shelf, learned] =
            [paint, &learned].map(|paint| Doubt::between(Doubt::of(paint), Doubt::of(paint), 0.5).error());
        assert!(learned < 0.6 * shelf, "{shelf} became {learned}");
        let swatched = Paint { tier: Tier::Swatched, ..paint.clone() };
        assert!(Doubt::of(&swatched).error() < Doubt::of(paint).error(), "it is the painter's own paint");
    }

    #[test]
    fn a_little_more_paint_in_a_mixture_does_not_make_it_sure() {
        let paint = Doubt::of(Shelf::built_in().find("pb29").unwrap());
        let mixture = Doubt::between(paint, paint, 0.5);
        assert_eq!(Doubt::between(mixture, paint, 0.0), mixture);
        assert!(Doubt::between(mixture, paint, 0.01).error() >= paint.error());
    }
}
