//! A paint as light meets it: absorption and scattering.

use crate::spectrum::{BANDS, Spectrum};

/// Absorption K and scattering S per unit load, at every band.
///
/// Load 1 is masstone: the paint as heavy as it is painted out. Values are
/// non-negative and finite.
#[derive(Clone, Debug, PartialEq)]
pub struct Film {
    /// Absorption.
    pub k: Spectrum,
    /// Scattering.
    pub s: Spectrum,
}

impl Film {
    /// No paint at all: clear water.
    pub const CLEAR: Self = Self { k: [0.0; BANDS], s: [0.0; BANDS] };

    /// Adds `share` of another film.
    pub(crate) fn add(&mut self, other: &Self, share: f32) {
        for band in 0..BANDS {
            self.k[band] += share * other.k[band];
            self.s[band] += share * other.s[band];
        }
    }

    /// `share` of `b` in a mixture with `a`; 0 is `a` itself, 1 is `b`.
    #[must_use]
    pub fn between(a: &Self, b: &Self, share: f32) -> Self {
        if share <= 0.0 {
            return a.clone();
        }
        if share >= 1.0 {
            return b.clone();
        }
        let mut film = Self::CLEAR;
        film.add(a, 1.0 - share);
        film.add(b, share);
        film
    }
}
