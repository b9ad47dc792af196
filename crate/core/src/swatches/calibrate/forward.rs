//! The forward model: what a mix of corrected paints shows, and how that answers to every number.

use std::f64::consts::PI;

use super::curves::Curves;
use super::evidence::Known;
use super::film::slopes;
use super::ground::surface_of;
use super::row::{Row, Slope};
use crate::optics::film::Film;
use crate::optics::spectrum::{BANDS, Spectrum, from_fn};
use crate::optics::surface::Surface;

/// Cosines of ln K and of ln S.
pub(super) const IN_K: usize = 8;
pub(super) const IN_S: usize = 4;

/// Numbers a paint may be corrected by.
pub(super) const OF_PAINT: usize = 1 + IN_K + IN_S;

/// Paints as they were before any record, on papers and in films of a surface.
pub(super) struct Forward {
    pub(super) paints: Vec<Known>,
    pub(super) surface: Surface<f64>,
    /// k1 of each paint's films, where it is not the surface's.
    pub(super) floors: Vec<f64>,
    before: Vec<Curves>,
}

/// Corrections of all paints, and of each record's ln load.
#[derive(Clone)]
pub(super) struct State {
    pub(super) numbers: Vec<f64>,
    pub(super) loads: Vec<f64>,
}

/// A film that is looked at: what it shows and how that answers to every number.
pub(super) struct Sight {
    pub(super) reflectance: Spectrum<f64>,
    /// Of the reflectance by each number of each paint in it.
    pub(super) slopes: Vec<(usize, Spectrum<f64>)>,
    pub(super) by_load: Spectrum<f64>,
}

impl Forward {
    pub(super) fn new(paints: Vec<Known>, surface: Surface<f64>) -> Self {
        let before = paints.iter().map(|paint| Curves::of(&paint.film)).collect();
        Self { paints, surface, floors: Vec::new(), before }
    }

    /// How many numbers correct all paints.
    pub(super) fn size(&self) -> usize {
        OF_PAINT * self.paints.len()
    }

    /// The film of a paint with its corrections.
    pub(super) fn film(&self, state: &State, paint: usize) -> Film {
        let strength = self.paints[paint].film.strength * state.numbers[OF_PAINT * paint].exp() as f32;
        Film { strength, ..self.curves(state, paint).film() }
    }

    fn curves(&self, state: &State, paint: usize) -> Curves {
        let numbers = &state.numbers[OF_PAINT * paint + 1..OF_PAINT * (paint + 1)];
        let (in_k, in_s) = numbers.split_at(IN_K);
        let before = &self.before[paint];
        let bent = |curve: &Spectrum<f64>, numbers: &[f64]| -> Spectrum<f64> {
            from_fn(|band| {
                let log: f64 = numbers.iter().enumerate().map(|(j, number)| number * cosine(j, band)).sum();
                curve[band] * log.exp()
            })
        };
        Curves { k: bent(&before.k, in_k), s: bent(&before.s, in_s) }
    }

    /// A mix laid on a paper, with its slopes where they are wanted.
    pub(super) fn look(
        &self,
        state: &State,
        parts: &[(usize, f64)],
        load: f64,
        paper: &Spectrum<f64>,
        wanted: bool,
    ) -> Sight {
        let paints: Vec<(usize, f64, Curves)> = parts
            .iter()
            .map(|(paint, volume)| {
                let strength =
                    f64::from(self.paints[*paint].film.strength) * state.numbers[OF_PAINT * paint].exp();
                (*paint, volume * strength, self.curves(state, *paint))
            })
            .collect();
        let total: f64 = paints.iter().map(|(_, weight, _)| weight).sum();
        let mut sight = Sight { reflectance: [0.0; BANDS], slopes: Vec::new(), by_load: [0.0; BANDS] };
        let surface = surface_of(self.surface, &self.floors, parts);
        let Surface { k1, k2 } = surface;
        if wanted {
            let numbers =
                paints.iter().flat_map(|(paint, ..)| (0..OF_PAINT).map(move |i| OF_PAINT * paint + i));
            sight.slopes = numbers.map(|number| (number, [0.0; BANDS])).collect();
        }
        for (band, paper) in paper.iter().enumerate() {
            let sum = |of: fn(&Curves) -> &Spectrum<f64>| -> f64 {
                paints.iter().map(|(_, weight, curves)| weight / total * of(curves)[band]).sum::<f64>() * load
            };
            let (k, s) = (sum(|curves| &curves.k), sum(|curves| &curves.s));
            let [inner, by_k, by_s] = slopes(k, s, self.surface.inner(*paper));
            let through = (1.0 - k1) * (1.0 - k2) / (1.0 - k2 * inner).powi(2);
            let (by_k, by_s) = (through * by_k, through * by_s);
            sight.reflectance[band] = surface.outer(inner);
            sight.by_load[band] = by_k * k + by_s * s;
            if !wanted {
                continue;
            }
            for ((_, weight, curves), own) in paints.iter().zip(sight.slopes.chunks_exact_mut(OF_PAINT)) {
                let part = weight / total;
                let (of_k, of_s) = (load * part * curves.k[band] * by_k, load * part * curves.s[band] * by_s);
                // A stronger paint has more of the say, the others less.
                own[0].1[band] = of_k + of_s - part * (by_k * k + by_s * s);
                for j in 0..IN_K {
                    own[1 + j].1[band] = of_k * cosine(j, band);
                }
                for j in 0..IN_S {
                    own[1 + IN_K + j].1[band] = of_s * cosine(j, band);
                }
            }
        }
        sight
    }
}

impl Sight {
    /// Slopes by number of one residual, from its slopes by band, in units of `scale`.
    pub(super) fn row(&self, by_band: &Spectrum<f64>, scale: f64) -> Row {
        let dot =
            |slopes: &Spectrum<f64>| -> f64 { (0..BANDS).map(|band| by_band[band] * slopes[band]).sum() };
        self.slopes
            .iter()
            .map(|(number, slopes)| Slope { number: *number, value: scale * dot(slopes) })
            .collect()
    }
}

fn cosine(j: usize, band: usize) -> f64 {
    (PI * j as f64 * band as f64 / (BANDS - 1) as f64).cos()
}
