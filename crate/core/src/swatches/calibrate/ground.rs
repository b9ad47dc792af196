//! Grounds: what swatches lie on, and how they lie there.

use super::curves::Curves;
use super::swatch::{Swatch, daylight};
use crate::colour::ciede2000;
use crate::optics::layer;
use crate::optics::spectrum::{Spectrum, from_fn};
use crate::optics::surface::Surface;

/// What the paint lies on and how it lies there; the same for all swatches.
#[derive(Clone, Debug, PartialEq)]
pub struct Ground {
    /// Reflectance of the bare paper, 0 to 1, surface included.
    pub paper: Spectrum<f64>,
    /// Surface of paper and films.
    pub surface: Surface<f64>,
    /// Exponent gamma: a film grows as quantity to this power; 1 if it cannot spread, 0 if it only spreads.
    pub gamma: f64,
    /// k1 of each paint's own films, in place of the surface's; in mixes the mean by quantity.
    /// Paints beyond the last have the surface's.
    pub floors: Vec<f64>,
}

impl Ground {
    /// Reflectance of a swatch of these parts, surface included.
    ///
    /// Parts at or below 0 and unknown indices count as none; no paint at all
    /// shows the paper.
    #[must_use]
    pub fn reflectance(&self, paints: &[Curves], parts: &[(usize, f64)]) -> Spectrum<f64> {
        let loads = self.loads(parts);
        let (inner, surface) = (self.inner_paper(), surface_of(self.surface, &self.floors, parts));
        from_fn(|band| {
            let sum = |curve: fn(&Curves) -> &Spectrum<f64>| -> f64 {
                loads.iter().filter_map(|(i, x)| paints.get(*i).map(|p| x * curve(p)[band])).sum()
            };
            let (k, s) = (sum(|p| &p.k), sum(|p| &p.s));
            surface.outer(layer::reflectance(k, s, 1.0, inner[band]))
        })
    }

    /// CIEDE2000 of each swatch in D65.
    pub(super) fn errors(&self, paints: &[Curves], swatches: &[Swatch]) -> Vec<f64> {
        let error = |swatch: &Swatch| {
            ciede2000(daylight(&self.reflectance(paints, &swatch.parts)), swatch.seen.lab())
        };
        swatches.iter().map(error).collect()
    }

    /// Load of each paint in a film of these parts.
    pub(super) fn loads(&self, parts: &[(usize, f64)]) -> Vec<(usize, f64)> {
        let present = || parts.iter().filter(|(_, quantity)| *quantity > 0.0);
        let total: f64 = present().map(|(_, quantity)| quantity).sum();
        let spread = total.powf(self.gamma - 1.0);
        present().map(|(paint, quantity)| (*paint, quantity * spread)).collect()
    }

    pub(super) fn inner_paper(&self) -> Spectrum<f64> {
        self.paper.map(|r| self.surface.inner(r))
    }
}

/// The surface of a film of these parts: k1 is the mean of the paints' own, where they have one.
pub(super) fn surface_of(surface: Surface<f64>, floors: &[f64], parts: &[(usize, f64)]) -> Surface<f64> {
    let floor = |paint: usize| floors.get(paint).copied().unwrap_or(surface.k1);
    let present = || parts.iter().filter(|(_, quantity)| *quantity > 0.0);
    let total: f64 = present().map(|(_, quantity)| quantity).sum();
    let sum: f64 = present().map(|(paint, quantity)| quantity * floor(*paint)).sum();
    Surface { k1: if total > 0.0 { sum / total } else { surface.k1 }, ..surface }
}
