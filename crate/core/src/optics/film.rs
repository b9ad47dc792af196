//! A paint as light meets it: absorption and scattering.

use crate::optics::spectrum::{BANDS, Spectrum, from_fn};

/// Absorption K and scattering S per unit load, at every band, and strength.
///
/// Load 1 is masstone: the paint as heavy as it is painted out. Values are
/// non-negative and finite.
#[derive(Clone, Debug, PartialEq)]
pub struct Film {
    /// Absorption.
    pub k: Spectrum,
    /// Scattering.
    pub s: Spectrum,
    /// Masstones that a volume of the paint as supplied makes, beside an
    /// average paint's one. Parts of a mixture count by it, loads do not.
    pub strength: f32,
}

/// How much of each of two paints lies in one masstone of their mixture; together 1.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Masstones {
    pub(crate) of_a: f32,
    pub(crate) of_b: f32,
}

impl Film {
    /// No paint at all: clear water.
    pub const CLEAR: Self = Self { k: [0.0; BANDS], s: [0.0; BANDS], strength: 1.0 };

    /// Sum of films by volume shares that add up to 1.
    ///
    /// K and S of a volume are those of a masstone times the strength; the sum
    /// is then let down to a masstone again.
    pub(crate) fn sum<'a>(parts: impl Iterator<Item = (&'a Self, f32)> + Clone) -> Self {
        let strength: f32 = parts.clone().map(|(film, share)| share * film.strength).sum();
        let mut sum = Self { strength, ..Self::CLEAR };
        for (film, share) in parts {
            let weight = share * film.strength / strength;
            sum.add(film, weight);
        }
        sum
    }

    /// Sum of films by shares of a masstone that add up to 1; its strength is of no account.
    pub(crate) fn blend<'a>(parts: impl Iterator<Item = (&'a Self, f32)>) -> Self {
        let mut sum = Self::CLEAR;
        for (film, share) in parts {
            sum.add(film, share);
        }
        sum
    }

    fn add(&mut self, film: &Self, share: f32) {
        for band in 0..BANDS {
            self.k[band] += share * film.k[band];
            self.s[band] += share * film.s[band];
        }
    }

    /// Masstones of `a` and of `b` in one masstone of their mixture.
    ///
    /// A stronger paint has more of the say than its share of the volume.
    #[must_use]
    pub(crate) fn masstones(a: &Self, b: &Self, share: f32) -> Masstones {
        let share = if share.is_finite() { share.clamp(0.0, 1.0) } else { 0.0 };
        let (of_a, of_b) = ((1.0 - share) * a.strength, share * b.strength);
        Masstones { of_a: of_a / (of_a + of_b), of_b: of_b / (of_a + of_b) }
    }

    /// `share` of `b` by volume in a mixture with `a`; 0 is `a` itself, 1 is `b`.
    #[must_use]
    pub fn between(a: &Self, b: &Self, share: f32) -> Self {
        if share <= 0.0 {
            return a.clone();
        }
        if share >= 1.0 {
            return b.clone();
        }
        let Masstones { of_a, of_b } = Self::masstones(a, b, share);
        Self {
            k: from_fn(|band| of_a * a.k[band] + of_b * b.k[band]),
            s: from_fn(|band| of_a * a.s[band] + of_b * b.s[band]),
            strength: (1.0 - share) * a.strength + share * b.strength,
        }
    }
}
