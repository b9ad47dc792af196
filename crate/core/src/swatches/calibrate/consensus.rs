//! Paints from swatches of themselves, whatever is not known averaged over.
//!
//! Swatches of a paint alone do not tell all that its mixes ask: how much of a dark
//! film's light is the surface's, how a drop spreads, how high and how smooth S is.
//! One guess at these is wrong in one way; so all paints are fitted under each of
//! [`DRAWS`] guesses, drawn from what is thinkable (log-uniform where so said):
//!
//! ```text
//! floor k1 of a paint     c times the least reflectance of its masstone, at most 0.045;
//!                         of the paper likewise         c in 0.1 .. 0.9
//! exponent gamma          0.7 .. 1
//! expected ln S           m - p ln(lambda / 555 nm)     m normal, 0.4 wide; p in 0 .. 1
//! hold of the level of S  0.5 .. 4, log; of its bend 2 .. 30, log
//! hold of the bend of K   0.1 .. 1, log
//! ```
//!
//! Each guess predicts the swatches and mixes of every two paints; the cube roots of
//! reflectance are averaged, and one film for each paint is fitted to the averages,
//! with every number in the middle of its range. The ranges are wide on purpose: they are
//! not to be narrowed by what some set of mixtures likes.

use std::f64::consts::TAU;

use super::curves::Curves;
use super::fit::{Calibration, fit};
use super::ground::Ground;
use super::prior::{Hold, Prior};
use super::swatch::{Seen, Swatch};
use crate::error::Error;
use crate::optics::spectrum::{BANDS, Spectrum, from_fn, wavelength};
use crate::optics::surface::Surface;

/// Guesses at what is not known. Of fewer than ten the worst mixes are worse by a tenth.
pub const DRAWS: usize = 40;

/// Ratios at which every two paints are mixed.
const RATIOS: [[f64; 2]; 3] = [[1.0, 1.0], [1.0, 3.0], [3.0, 1.0]];

/// Greatest k1: what Fresnel's formula gives for light that meets a film of index 1.54 upright.
const MOST_K1: f64 = 0.045;

/// One guess at what swatches do not tell.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Guess {
    /// Share of the least reflectance seen that is the surface's.
    surface: f64,
    gamma: f64,
    /// Holds of S: of its level and of its bend.
    level_s: f64,
    bend_s: f64,
    /// Hold of the bend of K.
    bend_k: f64,
    /// Expected ln S at 555 nm, and how it falls with the wavelength.
    mean_s: f64,
    fall_s: f64,
}

impl Guess {
    /// The middle of every range.
    const MIDDLE: Self = Self {
        surface: 0.5,
        gamma: 0.85,
        level_s: 1.414,
        bend_s: 7.746,
        bend_k: 0.316,
        mean_s: 0.0,
        fall_s: 0.5,
    };

    fn draw(random: &mut Random) -> Self {
        Self {
            surface: random.between(0.1, 0.9),
            gamma: random.between(0.7, 1.0),
            level_s: random.log_between(0.5, 4.0),
            bend_s: random.log_between(2.0, 30.0),
            bend_k: random.log_between(0.1, 1.0),
            mean_s: 0.4 * random.normal(),
            fall_s: random.between(0.0, 1.0),
        }
    }

    fn prior(&self) -> Prior {
        let s =
            from_fn(|band| (self.mean_s - self.fall_s * (f64::from(wavelength(band)) / 555.0).ln()).exp());
        Prior {
            curves: Curves { k: [1.0; BANDS], s },
            k: Hold { level: 0.0, slope: 0.0, bend: self.bend_k },
            s: Hold { level: self.level_s, slope: 0.0, bend: self.bend_s },
        }
    }

    /// Paper and paints, whose masstones reflect so much at least.
    fn ground(&self, paper: &Spectrum<f64>, masstones: &[f64]) -> Ground {
        let k1 = |least: f64| (self.surface * least).min(MOST_K1);
        Ground {
            paper: *paper,
            surface: Surface { k1: k1(least(paper)), ..Surface::WASH },
            gamma: self.gamma,
            floors: masstones.iter().map(|least| k1(*least)).collect(),
        }
    }
}

/// The paints that [`DRAWS`] guesses agree on, from spectra of each of them alone.
///
/// Their mixes are what the guesses predict in the mean. `seed` fixes the guesses; the
/// same input always gives the same paints.
///
/// # Errors
///
/// As [`fit()`]; [`Error::Refused`] for a swatch of several paints or one that is not
/// a spectrum, [`Error::Value`] for a paint without a swatch.
pub fn consensus(
    paper: &Spectrum<f64>,
    paints: usize,
    swatches: &[Swatch],
    seed: u64,
) -> Result<Calibration, Error> {
    let least = least_of_masstones(paints, swatches)?;
    let mut wanted = swatches.to_vec();
    wanted.extend(mixes(paints, swatches));
    let mut roots = vec![[0.0; BANDS]; wanted.len()];
    let mut random = Random(seed);
    for _ in 0..DRAWS {
        let guess = Guess::draw(&mut random);
        let fitted = fit(&guess.ground(paper, &least), &vec![guess.prior(); paints], swatches)?;
        for (sum, swatch) in roots.iter_mut().zip(&wanted) {
            let shown = fitted.ground.reflectance(&fitted.paints, &swatch.parts);
            sum.iter_mut().zip(shown).for_each(|(sum, r)| *sum += r.cbrt() / DRAWS as f64);
        }
    }
    for (swatch, roots) in wanted.iter_mut().zip(&roots) {
        swatch.seen = Seen::Spectrum(Box::new(roots.map(|root| root.powi(3))));
    }
    let middle = Guess::MIDDLE;
    let mut found = fit(&middle.ground(paper, &least), &vec![middle.prior(); paints], &wanted)?;
    found.errors = found.ground.errors(&found.paints, swatches);
    Ok(found)
}

/// The least reflectance of each paint's swatch that is nearest to masstone.
///
/// Heavier films have more gum and shine more: what they send back is less than a wash's surface does.
fn least_of_masstones(paints: usize, swatches: &[Swatch]) -> Result<Vec<f64>, Error> {
    let mut nearest = vec![(f64::INFINITY, f64::NAN); paints];
    for swatch in swatches {
        let ([(paint, quantity)], Seen::Spectrum(r)) = (&swatch.parts[..], &swatch.seen) else {
            return Err(Error::Refused("swatches of one paint each are wanted, as spectra"));
        };
        let Some(own) = nearest.get_mut(*paint) else {
            return Err(Error::Value(format!("paint {paint} of {paints} paints")));
        };
        let off = quantity.ln().abs();
        if off < own.0 {
            *own = (off, least(r));
        }
    }
    match nearest.iter().position(|(_, least)| least.is_nan()) {
        Some(paint) => Err(Error::Value(format!("paint {paint} has no swatch"))),
        None => Ok(nearest.into_iter().map(|(_, least)| least).collect()),
    }
}

fn least(reflectance: &Spectrum<f64>) -> f64 {
    reflectance.iter().copied().fold(f64::INFINITY, f64::min)
}

/// Every two paints at [`RATIOS`], as much of both as the lightest, the middle and the heaviest swatch hold.
fn mixes(paints: usize, swatches: &[Swatch]) -> Vec<Swatch> {
    let quantities = swatches.iter().flat_map(|swatch| swatch.parts.iter().map(|(_, quantity)| *quantity));
    let (least, most) =
        quantities.fold((f64::INFINITY, 0.0_f64), |(least, most), q| (least.min(q), most.max(q)));
    let totals = [least, (least * most).sqrt(), most];
    let pairs = (0..paints).flat_map(|a| (a + 1..paints).map(move |b| (a, b)));
    pairs
        .flat_map(|(a, b)| {
            RATIOS.into_iter().flat_map(move |[of_a, of_b]| {
                totals.map(|total| {
                    let part = total / (of_a + of_b);
                    Swatch {
                        parts: vec![(a, of_a * part), (b, of_b * part)],
                        seen: Seen::Spectrum(Box::new([0.0; BANDS])),
                        trust: 1.0,
                    }
                })
            })
        })
        .collect()
}

/// Numbers that look random and are the same every time (G. Steele, D. Lea, C. Flood,
/// OOPSLA 2014, from memory).
struct Random(u64);

impl Random {
    /// From 0 to below 1.
    fn unit(&mut self) -> f64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        ((z ^ (z >> 31)) >> 11) as f64 / (1_u64 << 53) as f64
    }

    fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * self.unit()
    }

    fn log_between(&mut self, low: f64, high: f64) -> f64 {
        self.between(low.ln(), high.ln()).exp()
    }

    /// Of mean 0 and deviation 1 (G. E. P. Box, M. E. Muller, Ann. Math. Stat. 29 (1958) 610).
    fn normal(&mut self) -> f64 {
        let length = (-2.0 * (1.0 - self.unit()).ln()).sqrt();
        length * (TAU * self.unit()).cos()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_are_as_drawn() {
        let mut random = Random(5);
        let many: Vec<f64> = (0..4000).map(|_| random.normal()).collect();
        let mean = many.iter().sum::<f64>() / 4000.0;
        let variance = many.iter().map(|x| (x - mean).powi(2)).sum::<f64>() / 4000.0;
        // Five standard errors of each.
        assert!(mean.abs() < 0.08 && (variance - 1.0).abs() < 0.12, "{mean} {variance}");
        let logs: Vec<f64> = (0..4000).map(|_| random.log_between(2.0, 30.0)).collect();
        assert!(logs.iter().all(|x| (2.0..30.0).contains(x)));
        let below = logs.iter().filter(|x| **x < Guess::MIDDLE.bend_s).count();
        assert!((1850..2150).contains(&below), "{below} of 4000 below the middle");
    }
}
