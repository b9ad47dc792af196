//! What the surface of a film does to the light: Saunderson's correction.
//!
//! J. L. Saunderson, "Calculation of the color of pigmented plastics", JOSA 32
//! (1942) 727. Part of the light never enters (k1), part of what comes back is
//! thrown in again (k2):
//!
//! ```text
//! Rm = k1 + (1 - k1) (1 - k2) R / (1 - k2 R)
//! ```
//!
//! A matte wash scatters its surface light in all directions, so the first
//! term is always seen: it is why watercolour darks stop near L* 20.

use num_traits::Float;
use wide::f32x4;

/// The two shares of light a surface sends back, each 0 to below 1.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Surface<F = f32> {
    /// Share of the light that the surface reflects from outside.
    pub k1: F,
    /// Share of the film's diffuse light that the surface reflects inwards.
    pub k2: F,
}

impl<F: Float> Surface<F> {
    /// Reflectance seen from outside of a film with reflectance `inner`.
    pub fn outer(self, inner: F) -> F {
        let one = F::one();
        self.k1 + (one - self.k1) * (one - self.k2) * inner / (one - self.k2 * inner)
    }

    /// The film's reflectance below the surface; the inverse of [`Self::outer`].
    ///
    /// Values darker than the surface itself give 0, lighter than white 1.
    pub fn inner(self, outer: F) -> F {
        let one = F::one();
        // Clamped first: far below k1 the denominator changes sign.
        let light = (outer - self.k1).max(F::zero()).min(one - self.k1);
        light / ((one - self.k1) * (one - self.k2) + self.k2 * light)
    }
}

/// Share of diffuse light that water throws back at its surface to the air: the mean Fresnel reflection of
/// refractive index 4/3 from within (Lekner and Dorf).
const WATER_WITHIN: f32 = 0.475;

/// Share of light that water reflects from outside at the angles of a colour measurement (the same).
const WATER_OUTSIDE: f32 = 0.02;

impl Surface<f32> {
    /// [`Self::outer`] of the ratio `over / under` at four bands, with one division.
    #[inline]
    pub(crate) fn outer_of_ratio(self, over: f32x4, under: f32x4) -> f32x4 {
        over * ((1.0 - self.k1) * (1.0 - self.k2)) / (under - over * self.k2) + self.k1
    }

    /// Reflectance of the same film while it is wet, from that of the dry one, surface included.
    ///
    /// Under a film of water what comes back from paint and paper is thrown in again and taken in once more:
    /// J. Lekner, M. C. Dorf, "Why some things are darker when wet", Applied Optics 27 (1988) 1278. The light that
    /// a dry matte surface scatters towards the eye is gone, as water is smooth.
    pub(crate) fn wetted(self, dry: f32x4) -> f32x4 {
        let paint = (dry - self.k1).fast_max(f32x4::ZERO) / (1.0 - self.k1);
        paint * ((1.0 - WATER_OUTSIDE) * (1.0 - WATER_WITHIN)) / (f32x4::ONE - paint * WATER_WITHIN)
    }
}

impl Surface<f64> {
    /// A dry watercolour wash on paper.
    ///
    /// k2 is Fresnel's value for diffuse light in a film of refractive index
    /// 1.5 (0.60); k1 is low, as matte watercolour darks measured on many
    /// makers' paints reach L* 23 to 25 (MacEvoy, pigment tables).
    pub const WASH: Self = Self { k1: 0.03, k2: 0.6 };

    /// The same in `f32`, for the mixing kernel.
    #[must_use]
    pub const fn to_f32(self) -> Surface<f32> {
        Surface { k1: self.k1 as f32, k2: self.k2 as f32 }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn inner_undoes_outer() {
        for step in 0..=100 {
            let inner = f64::from(step) / 100.0;
            let there_and_back = Surface::WASH.inner(Surface::WASH.outer(inner));
            assert!((there_and_back - inner).abs() < 1e-12);
        }
    }

    /// Fresnel's equations for light without polarisation, from outside at an angle in radians.
    fn fresnel(angle: f64) -> f64 {
        const WATER: f64 = 4.0 / 3.0;
        let (cos, refracted) = (angle.cos(), (angle.sin() / WATER).asin().cos());
        let [s, p] =
            [(cos, refracted), (refracted, cos)].map(|(a, b)| ((a - WATER * b) / (a + WATER * b)).powi(2));
        0.5 * (s + p)
    }

    #[test]
    fn water_reflects_as_fresnel_has_it() {
        const STEPS: usize = 20_000;
        let quarter = std::f64::consts::FRAC_PI_2;
        let mean = |i: usize| {
            let angle = quarter * (i as f64 + 0.5) / STEPS as f64;
            2.0 * angle.sin() * angle.cos() * fresnel(angle) * quarter / STEPS as f64
        };
        let outside: f64 = (0..STEPS).map(mean).sum();
        // By reversal of light, what leaves is what enters, by the square of the index.
        let within = 1.0 - (1.0 - outside) * (3.0f64 / 4.0).powi(2);
        assert!((within - f64::from(WATER_WITHIN)).abs() < 0.001, "{within}");
        assert!((fresnel(0.0) - f64::from(WATER_OUTSIDE)).abs() < 0.001);
    }

    #[test]
    fn wetting_darkens_all_but_white_and_black() {
        let wetted = |dry: f32| Surface { k1: 0.0, k2: 0.6 }.wetted(f32x4::splat(dry)).to_array()[0];
        assert!((wetted(1.0) - 0.98).abs() < 1e-6 && wetted(0.0) == 0.0);
        for step in 1..100 {
            let dry = step as f32 / 100.0;
            assert!(wetted(dry) < dry && wetted(dry) > wetted(dry - 0.01));
        }
    }

    #[test]
    fn what_no_film_can_show_stays_in_range() {
        assert_eq!(Surface::WASH.inner(-1.0), 0.0);
        assert_eq!(Surface::WASH.inner(2.0), 1.0);
    }
}
