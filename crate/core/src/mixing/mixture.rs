//! Mixtures: parts by volume of paint as supplied; K and S add, each volume by its strength.

use std::sync::LazyLock;

use crate::error::Error;
use crate::mixing::path::position_of;
use crate::mixing::ratio::Ratio;
use crate::numeric::gcd::gcd;
use crate::numeric::minmax::{greater, lesser};
use crate::optics::film::Film;

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
        return Err(Error::Part(*part));
    }
    let total: f32 = parts.iter().map(|(_, part)| part).sum();
    if total <= 0.0 || !total.is_finite() {
        return Err(Error::Missing("a mixture needs at least one part above 0"));
    }
    Ok(Film::sum(parts.iter().map(|(film, part)| (*film, part / total))))
}

/// Whole parts A:B nearest to a share of B, as a brush measures them.
///
/// Up to eight parts of each; beyond 9:1 so many parts to a single one. Only
/// a share of exactly 0 or 1 is a paint alone, 1:0 or 0:1.
#[must_use]
pub fn whole_parts(share: f32) -> Ratio {
    let share = if share.is_finite() { share.clamp(0.0, 1.0) } else { 0.0 };
    if share == 0.0 || share == 1.0 {
        return if share == 0.0 { Ratio::new(1, 0) } else { Ratio::new(0, 1) };
    }
    if share > 0.5 {
        return whole_parts(1.0 - share).turned();
    }
    let to_one = (1.0 / share - 1.0).round();
    if to_one > f32::from(MOST_BRUSH_PARTS) {
        return Ratio::new(to_one.min(MOST_TO_ONE) as u16, 1);
    }
    let off = |ratio: &Ratio| (ratio.share() - share).abs();
    let nearest = SMALL_PARTS.iter().min_by(|a, b| off(a).total_cmp(&off(b)));
    nearest.copied().unwrap_or(Ratio::new(1, 1))
}

/// Parts of A and B that a brush measures out by eye.
pub const BRUSH_PARTS: [Ratio; 15] = [
    Ratio::new(8, 1),
    Ratio::new(6, 1),
    Ratio::new(5, 1),
    Ratio::new(4, 1),
    Ratio::new(3, 1),
    Ratio::new(2, 1),
    Ratio::new(3, 2),
    Ratio::new(1, 1),
    Ratio::new(2, 3),
    Ratio::new(1, 2),
    Ratio::new(1, 3),
    Ratio::new(1, 4),
    Ratio::new(1, 5),
    Ratio::new(1, 6),
    Ratio::new(1, 8),
];

/// The share of the nearest parts that a brush measures out, 8:1 to 1:8, if its position along a path is within `distance` of this share's.
///
/// ```
/// use washpath_core::snap;
/// assert_eq!(snap(0.49, 0.02), Some(0.5));
/// assert_eq!(snap(0.45, 0.001), None);
/// ```
#[must_use]
pub fn snap(share: f32, distance: f32) -> Option<f32> {
    let away = |other: f32| (position_of(other) - position_of(share)).abs();
    BRUSH_PARTS
        .iter()
        .map(|ratio| ratio.share())
        .min_by(|a, b| away(*a).total_cmp(&away(*b)))
        .filter(|nearest| away(*nearest) <= distance)
}

/// The share of the next parts that a brush measures out, 8:1 to 1:8, towards B or towards A; beyond the last the paint alone.
///
/// ```
/// use washpath_core::next_parts;
/// assert_eq!(next_parts(0.5, true), 0.6);
/// assert_eq!(next_parts(0.05, false), 0.0);
/// ```
#[must_use]
pub fn next_parts(share: f32, towards_b: bool) -> f32 {
    // A share that is a stop itself, but for rounding, is not the next one.
    const SAME: f32 = 1e-4;
    let mut stops = BRUSH_PARTS.iter().map(|ratio| ratio.share());
    if towards_b {
        stops.find(|stop| *stop > share + SAME).unwrap_or(1.0)
    } else {
        stops.rfind(|stop| *stop < share - SAME).unwrap_or(0.0)
    }
}

/// Small parts without a common divisor, the first not fewer than the second.
static SMALL_PARTS: LazyLock<Vec<Ratio>> = LazyLock::new(|| {
    let small = (1..=MOST_BRUSH_PARTS).flat_map(|a| (1..=a).map(move |b| Ratio::new(a, b)));
    small.filter(|ratio| gcd(u64::from(ratio.a), u64::from(ratio.b)) == 1).collect()
});

/// Whole parts of three paints nearest to volumes above 0, as a brush measures them.
///
/// One, two or three parts of the least paint: the fewest with which no paint is
/// off by more than a tenth, else those that are off least.
pub(crate) fn whole_parts_of(volumes: &[f32; 3]) -> [u16; 3] {
    let least = volumes.iter().copied().fold(f32::INFINITY, lesser);
    let rounded = |parts: u16| {
        let scaled = volumes.map(|volume| volume / least * f32::from(parts));
        let whole = scaled.map(|parts| parts.round().min(MOST_TO_ONE));
        let off = (0..3).map(|i| (whole[i] / scaled[i] - 1.0).abs()).fold(0.0, greater);
        (off, whole.map(|parts| parts as u16))
    };
    let mut best = rounded(1);
    for parts in 2..=3 {
        let next = rounded(parts);
        if best.0 > NOT_TOLD && next.0 < best.0 {
            best = next;
        }
    }
    best.1
}

/// Relative error of a part that a brush does not tell.
const NOT_TOLD: f32 = 0.1;

/// Most parts of either paint, as long as neither is a trace.
pub(crate) const MOST_BRUSH_PARTS: u16 = 8;

/// Least trace that is still told: one part in a thousand.
const MOST_TO_ONE: f32 = 999.0;

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn parts_are_small_and_nearest() {
        for (share, parts) in [
            (0.5, [1, 1]),
            (1.0 / 9.0, [8, 1]),
            (0.667, [1, 2]),
            (0.02, [49, 1]),
            (0.98, [1, 49]),
            (1e-9, [999, 1]),
            (0.0, [1, 0]),
            (1.0, [0, 1]),
            (f32::NAN, [1, 0]),
        ] {
            assert_eq!(whole_parts(share).parts(), parts, "{share}");
        }
    }

    #[test]
    fn parts_of_parts_are_themselves() {
        for a in 1..=8u16 {
            for b in 1..=8u16 {
                let ratio = Ratio::new(a, b);
                let found = whole_parts(ratio.share());
                assert_eq!(a * found.b, b * found.a, "{ratio} became {found}");
            }
        }
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
