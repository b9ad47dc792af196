//! A film of paint on a substrate: Kubelka and Munk's finite layer.
//!
//! P. Kubelka, F. Munk, "Ein Beitrag zur Optik der Farbanstriche", Zeitschrift
//! für technische Physik 12 (1931) 593; P. Kubelka, "New contributions to the
//! optics of intensely light-scattering materials, part I", JOSA 38 (1948) 448.
//!
//! The textbook form divides by the scattering S and by b, and both may be
//! zero. Multiplied out it has neither division:
//!
//! ```text
//! B = sqrt(K (K + 2 S))        t = tanh(B X) / B        W = S (1 - Rg)
//!
//!     Rg + t (W - K Rg)              sech(B X)
//! R = -----------------      T = ---------------
//!       1 + t (W + K)             1 + t (K + S)
//! ```
//!
//! with the exact limits R = Rg at X = 0, R = Rg exp(-2 K X) at S = 0,
//! t = X at K = 0, and t = 1 / B as X grows.
//!
//! K and S are per unit of load, X is the load, Rg the substrate's reflectance.
//! All are non-negative, Rg at most 1; then R is within 0 and 1. Reflectances
//! here are those inside the film, below its surface (see [`crate::Surface`]).

use num_traits::Float;
use wide::f32x4;

use crate::optics::spectrum::{BANDS, Spectrum};

/// Reflectance of a film of load `x` on a substrate of reflectance `ground`.
///
/// Negative or NaN `k`, `s`, `x` count as 0; `x` may be infinite.
///
/// ```
/// use washpath_core::layer::reflectance;
/// assert_eq!(reflectance(2.0, 1.0, 0.0, 0.8), 0.8);
/// let beer_lambert: f64 = reflectance(0.7, 0.0, 1.0, 1.0);
/// assert!((beer_lambert - (-1.4f64).exp()).abs() < 1e-15);
/// ```
pub fn reflectance<F: Float>(k: F, s: F, x: F, ground: F) -> F {
    let (k, s, x) = (non_negative(k), non_negative(s), non_negative(x));
    let ground = non_negative(ground).min(F::one());
    let Some(t) = thickness(k, s, x) else {
        // A film that scatters without absorbing, endlessly thick, is white.
        return if s > F::zero() { F::one() } else { ground };
    };
    let w = s * (F::one() - ground);
    let r = (ground + t * (w - k * ground)) / (F::one() + t * (w + k));
    r.max(F::zero()).min(F::one())
}

/// Share of light that passes a film of load `x` without a substrate.
pub fn transmittance<F: Float>(k: F, s: F, x: F) -> F {
    let (k, s, x) = (non_negative(k), non_negative(s), non_negative(x));
    let Some(t) = thickness(k, s, x) else {
        return if s > F::zero() { F::zero() } else { F::one() };
    };
    let decay = (k.sqrt() * (k + s + s).sqrt() * x).cosh().recip();
    decay / (F::one() + t * (k + s))
}

/// Reflectance of an endlessly thick film; 1 where it does not absorb.
///
/// 0 where it neither absorbs nor scatters.
pub fn reflectivity<F: Float>(k: F, s: F) -> F {
    let (k, s) = (non_negative(k), non_negative(s));
    if s == F::zero() {
        return F::zero();
    }
    s / (k + s + k.sqrt() * (k + s + s).sqrt())
}

/// Absorption and scattering, times load, of a film measured over two grounds.
///
/// Each pair is a ground's reflectance and the film's over it, all inside the
/// film. Kubelka's R (a - Rg + b coth) = 1 - Rg (a - b coth) is linear in a and
/// in b coth(b S X), so two grounds give both.
///
/// `None` where no film explains the pairs: equal grounds, a film that hides
/// them so well that nothing tells its thickness, or impossible values.
pub fn film_from_two_grounds<F: Float>(
    [ground_1, over_1]: [F; 2],
    [ground_2, over_2]: [F; 2],
) -> Option<(F, F)> {
    let (sum_1, sum_2) = (over_1 + ground_1, over_2 + ground_2);
    let (gap_1, gap_2) = (over_1 - ground_1, over_2 - ground_2);
    let (one_1, one_2) = (F::one() + over_1 * ground_1, F::one() + over_2 * ground_2);
    let determinant = sum_1 * gap_2 - sum_2 * gap_1;
    let a = (one_1 * gap_2 - one_2 * gap_1) / determinant;
    let b_coth = (sum_1 * one_2 - sum_2 * one_1) / determinant;
    let b = (a * a - F::one()).sqrt();
    let s = ((b_coth + b) / (b_coth - b)).ln() / (b + b);
    let k = s * (a - F::one());
    (k.is_finite() && s.is_finite() && k >= F::zero() && s >= F::zero()).then_some((k, s))
}

/// Puts a film with transmittance and own reflectance over a substrate.
///
/// `own` is the film's reflectance over black seen from its lit side, `back`
/// the same from the substrate's side. Kubelka 1954, JOSA 44, 330.
pub fn over<F: Float>(front: F, back: F, transmittance: F, ground: F) -> F {
    front + transmittance * transmittance * ground / (F::one() - back * ground)
}

/// `tanh(B X) / B`, or `None` where it is endless.
fn thickness<F: Float>(k: F, s: F, x: F) -> Option<F> {
    let b = k.sqrt() * (k + s + s).sqrt();
    let z = b * x;
    // Below this the series' next term, z^4 / 7.5, is under f64's last digit.
    let small = F::from(1e-4).unwrap_or_else(F::zero);
    let three = F::from(3.0).unwrap_or_else(F::one);
    let t = if b == F::zero() || z < small { x * (F::one() - z * z / three) } else { z.tanh() / b };
    t.is_finite().then_some(t)
}

fn non_negative<F: Float>(value: F) -> F {
    // NaN fails the comparison too.
    if value > F::zero() { value } else { F::zero() }
}

/// Largest load the kernel takes; far past any paint's masstone.
pub const MAX_LOAD: f32 = 1e3;

/// The film's reflectance at every band, in `f32`: the mixing kernel.
///
/// The same sums as [`reflectance`] without branches, four bands at a time:
/// tanh(z)/z is a ratio of polynomials in z², and no exponential is taken. Inputs must be finite and non-negative, `x` at most
/// [`MAX_LOAD`]. Absolute error against `f64` below 1e-6.
#[must_use]
pub fn reflectances(k: &Spectrum, s: &Spectrum, x: f32, ground: &Spectrum) -> Spectrum {
    let mut out = [0.0; BANDS];
    four_by_four(laid(k, s, x), ground, |four, over, under| put(&mut out, four, over / under));
    out
}

/// K and S of a film of load `x`, four bands at a time: the first of them is `4 * four`.
#[inline]
pub(crate) fn laid(k: &Spectrum, s: &Spectrum, x: f32) -> impl Fn(usize) -> [f32x4; 2] {
    move |four| [at(k, four) * x, at(s, four) * x]
}

/// Hands over the kernel's reflectance of every four bands as a ratio.
///
/// What comes on top, as a surface, can then share the one division there is, and what comes after, as an
/// observer, can add up without a spectrum between.
#[inline]
pub(crate) fn four_by_four(
    film: impl Fn(usize) -> [f32x4; 2],
    ground: &Spectrum,
    mut see: impl FnMut(usize, f32x4, f32x4),
) {
    for four in 0..BANDS / 4 {
        let ([k, s], ground) = (film(four), at(ground, four));
        let ([p, q], w) = (tanh_ratio(k * (k + s * 2.0)), s * (f32x4::ONE - ground));
        see(four, ground * q + p * (w - k * ground), q + p * (w + k));
    }
}

/// Four bands of a spectrum.
#[inline]
pub(crate) fn at(spectrum: &Spectrum, four: usize) -> f32x4 {
    spectrum.as_chunks::<4>().0[four].into()
}

/// Puts four bands into a spectrum.
#[inline]
pub(crate) fn put(spectrum: &mut Spectrum, four: usize, values: f32x4) {
    spectrum.as_chunks_mut::<4>().0[four] = values.to_array();
}

/// tanh(z) / z from u = z² as a ratio, relative error below 3e-7 for any u >= 0.
///
/// Minimax fit of our own on 0 <= u <= 81; beyond, tanh is 1 to `f32`'s last
/// digit and only the division by z is left.
#[inline]
fn tanh_ratio(u: f32x4) -> [f32x4; 2] {
    const P: [f32; 5] = [0.999_999_98, 0.133_810_3, 3.495_592_9e-3, 2.060_911_6e-5, 1.335_476_9e-8];
    const Q: [f32; 5] = [1.0, 0.467_143_45, 2.587_7e-2, 3.285_642_7e-4, 7.776_602_7e-7];
    const END: f32 = 9.0;
    let v = u.fast_min(f32x4::splat(END * END));
    let [p, q] = [P, Q].map(|c| (((v * c[4] + c[3]) * v + c[2]) * v + c[1]) * v + c[0]);
    [p, q * (u * (1.0 / (END * END))).fast_max(f32x4::ONE).sqrt()]
}
