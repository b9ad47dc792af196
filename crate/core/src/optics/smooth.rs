//! Smooth reflectance curves for colours of which no spectrum is known.
//!
//! ```text
//! R(t) = surface(1/2 + x / (2 sqrt(1 + x²)))      x = c0 + c1 t + c2 t²
//! ```
//!
//! with t from -1 at 380 nm to 1 at 730 nm: a sigmoid of a quadratic
//! polynomial, as W. Jakob and J. Hanika, "A low-dimensional function space for
//! efficient spectral upsampling", Computer Graphics Forum 38 (2019) 147. Three
//! numbers for the three of a colour: the curve stays between 0 and 1 and is as
//! smooth as those of real papers and paints. Found by Gauss and Newton's
//! method, damped as Marquardt does (J. SIAM 11 (1963) 431), in CIELAB.
//!
//! Of the many curves with one colour in daylight this is one. Real paint may
//! differ from it in another light, and in mixes.

use crate::colour::{Lab, lab};
use crate::numeric::levenberg::{Limits, Squares, minimise};
use crate::optics::observer::Light;
use crate::optics::spectrum::{BANDS, Spectrum, from_fn};
use crate::optics::surface::Surface;

/// Distance in CIELAB at which a curve has the colour.
const REACHED: f64 = 1e-4;

/// Most steps; 10 are enough for every colour of sRGB.
const TRIALS: usize = 29;

/// A smooth reflectance, 0 to 1, that has this colour in D65.
///
/// `None` where no such curve has it: L* at or near 0 and 100, colours more
/// vivid than smooth reflectances are, numbers that are not finite.
#[must_use]
pub fn reflectance_of(colour: Lab<f64>) -> Option<Spectrum<f64>> {
    reflectance_below(colour, Surface { k1: 0.0, k2: 0.0 })
}

/// The same of a film or paper that is seen through `surface`, so never darker than it.
#[must_use]
pub fn reflectance_below(colour: Lab<f64>, surface: Surface<f64>) -> Option<Spectrum<f64>> {
    let search = Search { colour, surface };
    let limits = Limits {
        damping: 1e-3,
        least_damping: 0.0,
        rise: 5.0,
        steps: TRIALS,
        failures: TRIALS,
        trials: TRIALS,
        gain: 0.0,
    };
    let (found, squares) = minimise(&search, search.look([0.0; 3]), &limits);
    search.enough(squares).then(|| reflectance(&found.curve, surface))
}

/// The search for the curve that has a colour.
struct Search {
    colour: Lab<f64>,
    surface: Surface<f64>,
}

/// A curve, and what its colour misses in L*, a* and b*.
struct Trial {
    curve: [f64; 3],
    misses: [f64; 3],
}

impl Search {
    fn look(&self, curve: [f64; 3]) -> Trial {
        let weights = Light::D65.weights();
        let found = lab(weights.tristimulus(&reflectance(&curve, self.surface)), weights.white);
        let Lab { l, a, b, .. } = self.colour;
        Trial { curve, misses: [found.l - l, found.a - a, found.b - b] }
    }
}

impl Squares for Search {
    type Number = f64;
    type Point = Trial;
    /// What each number of the curve does to L*, a* and b*.
    type Slopes = [[f64; 3]; 3];

    fn sum(&self, trial: &Trial) -> f64 {
        squares(trial.misses)
    }

    fn slopes(&self, trial: &Trial) -> [[f64; 3]; 3] {
        const STEP: f64 = 1e-6;
        [0, 1, 2].map(|i| {
            let mut moved = trial.curve;
            moved[i] += STEP;
            let moved = self.look(moved).misses;
            [0, 1, 2].map(|j| (moved[j] - trial.misses[j]) / STEP)
        })
    }

    fn step(&self, from: &Trial, slopes: &mut [[f64; 3]; 3], damping: f64) -> Option<Trial> {
        let downhill = slopes.map(|slope| -dot(slope, from.misses));
        let step = solve(normal(slopes, damping), downhill)?;
        Some(self.look([0, 1, 2].map(|i| from.curve[i] + step[i])))
    }

    fn enough(&self, squares: f64) -> bool {
        squares.sqrt() < REACHED
    }
}

fn reflectance(curve: &[f64; 3], surface: Surface<f64>) -> Spectrum<f64> {
    from_fn(|band| {
        let t = 2.0 * band as f64 / (BANDS - 1) as f64 - 1.0;
        let x = curve[0] + t * (curve[1] + t * curve[2]);
        surface.outer(0.5 + 0.5 * x / x.hypot(1.0))
    })
}

/// Products of the slopes, the diagonal raised.
fn normal(slopes: &[[f64; 3]; 3], damping: f64) -> [[f64; 3]; 3] {
    [0, 1, 2].map(|i| [0, 1, 2].map(|j| dot(slopes[i], slopes[j]) * if i == j { 1.0 + damping } else { 1.0 }))
}

/// Three equations by Cramer's rule; `None` where they do not tell one answer.
fn solve(rows: [[f64; 3]; 3], right: [f64; 3]) -> Option<[f64; 3]> {
    let volume = |[x, y, z]: [[f64; 3]; 3]| dot(x, cross(y, z));
    let whole = volume(rows);
    let answer = [0, 1, 2].map(|i| {
        // The matrix is its own transpose: rows stand for columns.
        let mut rows = rows;
        rows[i] = right;
        volume(rows) / whole
    });
    answer.iter().all(|value| value.is_finite()).then_some(answer)
}

fn dot(a: [f64; 3], b: [f64; 3]) -> f64 {
    a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
}

fn cross(a: [f64; 3], b: [f64; 3]) -> [f64; 3] {
    [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]]
}

fn squares(values: [f64; 3]) -> f64 {
    dot(values, values)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::colour::ciede2000;
    use palette::convert::IntoColorUnclamped;
    use palette::{LinSrgb, white_point::D65};

    fn seen(reflectance: &Spectrum<f64>) -> Lab<f64> {
        let weights = Light::D65.weights();
        lab(weights.tristimulus(reflectance), weights.white)
    }

    fn in_srgb(colour: Lab<f64>) -> bool {
        let xyz: palette::Xyz<D65, f64> = colour.into_color_unclamped();
        let rgb: LinSrgb<f64> = xyz.into_color_unclamped();
        [rgb.red, rgb.green, rgb.blue].iter().all(|value| (0.0..=1.0).contains(value))
    }

    /// Colours of sRGB, every 5 in L* and every 8 in a* and b*.
    fn grid() -> Vec<Lab<f64>> {
        let steps = (1..20).flat_map(|l| (-12..=12).flat_map(move |a| (-14..=12).map(move |b| (l, a, b))));
        steps
            .map(|(l, a, b)| Lab::new(5.0 * f64::from(l), 8.0 * f64::from(a), 8.0 * f64::from(b)))
            .filter(|colour| in_srgb(*colour))
            .collect()
    }

    #[test]
    fn an_ochre_reflects_more_orange_than_violet() {
        let ochre = reflectance_of(Lab::new(66.0, 16.0, 55.0)).expect("a paint has it");
        assert!(ochre[5] < ochre[25]);
        assert_eq!(reflectance_of(Lab::new(20.0, 0.0, 120.0)), None);
    }

    #[test]
    fn every_colour_of_srgb_has_a_curve() {
        let grid = grid();
        assert!(grid.len() > 1000, "{}", grid.len());
        for colour in grid {
            let curve = reflectance_of(colour).unwrap_or_else(|| panic!("{colour:?} has none"));
            assert!(ciede2000(seen(&curve), colour) < 0.1, "{colour:?}");
            assert!(curve.iter().all(|value| (0.0..=1.0).contains(value)), "{colour:?}");
        }
    }

    #[test]
    fn whites_and_greys_are_nearly_even() {
        for (l, a, b) in [(97.0, 0.0, 2.0), (99.0, 0.0, 0.0), (50.0, 0.3, -0.2), (20.0, 0.0, 0.0)] {
            let colour = Lab::new(l, a, b);
            let curve = reflectance_of(colour).unwrap();
            assert!(ciede2000(seen(&curve), colour) < 0.1);
            let [least, most] = [f64::min, f64::max].map(|pick| curve.into_iter().reduce(pick).unwrap());
            assert!(most - least < 0.12, "{colour:?}: {least} to {most}");
        }
    }

    #[test]
    fn below_a_surface_nothing_is_darker_than_it() {
        let colour = Lab::new(45.0, 45.0, 25.0);
        let curve = reflectance_below(colour, Surface::WASH).unwrap();
        assert!(curve.iter().all(|value| *value >= Surface::WASH.k1));
        assert!(ciede2000(seen(&curve), colour) < 0.1);
        assert_eq!(reflectance_below(Lab::new(15.0, 0.0, 0.0), Surface::WASH), None);
    }

    #[test]
    fn what_is_no_colour_has_no_curve() {
        for odd in [f64::NAN, f64::INFINITY, -1e300, 1e300] {
            assert_eq!(reflectance_of(Lab::new(50.0, odd, 0.0)), None);
            assert_eq!(reflectance_of(Lab::new(odd, 0.0, 0.0)), None);
        }
        assert_eq!(reflectance_of(Lab::new(101.0, 0.0, 0.0)), None);
    }
}
