//! Mixtures: parts by volume of paint as supplied; K and S add.

use crate::error::Error;
use crate::film::Film;

/// Mixes any number of films by parts.
///
/// Parts are relative: 1 and 2 are the same as 2 and 4. Films with 0 parts
/// take no part. D. R. Duncan, "The colour of pigment mixtures", Proc. Phys.
/// Soc. 52 (1940) 390: absorption and scattering add by concentration.
///
/// # Errors
///
/// A part that is negative or not finite, or none above 0.
///
/// ```
/// use washpath_core::{Film, mix};
/// let clear = Film::CLEAR;
/// assert_eq!(mix(&[(&clear, 2.0)])?, clear);
/// assert!(mix(&[(&clear, -1.0)]).is_err());
/// # Ok::<(), washpath_core::Error>(())
/// ```
pub fn mix(parts: &[(&Film, f32)]) -> Result<Film, Error> {
    if let Some((_, part)) = parts.iter().find(|(_, part)| !part.is_finite() || *part < 0.0) {
        return Err(Error::Value(format!("{part} parts: a part is a number from 0 up")));
    }
    let total: f32 = parts.iter().map(|(_, part)| part).sum();
    if total <= 0.0 || !total.is_finite() {
        return Err(Error::Value("a mixture needs at least one part above 0".into()));
    }
    let mut film = Film::CLEAR;
    for (paint, part) in parts {
        film.add(paint, part / total);
    }
    Ok(film)
}

/// Whole parts A:B nearest to a share of B, as a brush measures them.
///
/// None of the two is above `most`; 0:1 and 1:0 are the paints alone.
#[must_use]
pub fn whole_parts(share: f32, most: u8) -> [u8; 2] {
    let share = if share.is_finite() { share.clamp(0.0, 1.0) } else { 0.0 };
    let mut best = ([1, 0], share);
    for a in 0..=most {
        for b in 0..=most {
            if a + b == 0 || (a > 1 || b > 1) && !coprime(a, b) {
                continue;
            }
            let miss = (f32::from(b) / f32::from(a + b) - share).abs();
            if miss < best.1 - 1e-6 {
                best = ([a, b], miss);
            }
        }
    }
    best.0
}

const fn coprime(mut a: u8, mut b: u8) -> bool {
    while b != 0 {
        (a, b) = (b, a % b);
    }
    a == 1
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn parts_are_small_and_nearest() {
        assert_eq!(whole_parts(0.5, 8), [1, 1]);
        assert_eq!(whole_parts(1.0 / 9.0, 8), [8, 1]);
        assert_eq!(whole_parts(0.667, 8), [1, 2]);
        assert_eq!(whole_parts(0.0, 8), [1, 0]);
        assert_eq!(whole_parts(1.0, 8), [0, 1]);
        assert_eq!(whole_parts(f32::NAN, 8), [1, 0]);
    }

    #[test]
    fn refuses_what_cannot_be_measured_out() {
        let clear = Film::CLEAR;
        for parts in [f32::NAN, f32::INFINITY, -1.0, 0.0] {
            assert!(mix(&[(&clear, parts)]).is_err(), "{parts}");
        }
        assert!(mix(&[]).is_err());
    }
}
