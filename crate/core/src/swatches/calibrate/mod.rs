//! Calibration: paints fitted to swatches of themselves and of their mixes.
//!
//! A swatch is paint of known parts on known paper, measured as a spectrum or
//! as CIELAB. Built-in paints, a painter's new paint and a painter's correction
//! of a paint on the shelf are all fitted here; they differ in what is known
//! before ([`Prior`]).
//!
//! # Model
//!
//! A swatch holds a quantity q_i of each paint; 1 is masstone. A heavier drop
//! spreads wider, so its film grows by less than its quantity:
//!
//! ```text
//! x_i = q_i Q^(gamma - 1)        Q = sum q_i
//! K = sum x_i K_i                S = sum x_i S_i
//! R = surface(film(K, S, paper))
//! ```
//!
//! with the film of [`crate::optics::layer`] and the surface of [`crate::Surface`].
//! gamma belongs to paper and brush, not to a paint; a surface may be a paint's own
//! ([`Ground::floors`]). What swatches do not tell of them [`consensus`] averages over.
//!
//! # What is minimised
//!
//! Over u = (ln K, ln S) of all paints and bands, with u0 what is expected:
//!
//! ```text
//! sum  rho(w (R^(1/3) - M^(1/3)) / 0.01)             spectral swatches M
//! sum  rho(3.1 dL) + rho(3.1 da / SC) + rho(3.1 db / SC)   CIELAB swatches, SC = 1 + 0.045 C*
//! sum  (level (u - u0))² + (slope D1 (u - u0))² + (bend D2 (u - u0))²
//! ```
//!
//! The cube root is the eye's: 0.01 of it is 1.16 L* (CIE 15:2018). w² is a
//! band's share in X, Y and Z, plus a tenth of the mean. rho is Cauchy's, 9
//! ln(1 + r²/9): a square for small r, ever flatter beyond, so that one spoilt
//! swatch does not spoil a paint (P. W. Holland, R. E. Welsch, Commun. Stat. A6
//! (1977) 813, from memory). D1 and D2 are differences along the bands. Solved
//! by Levenberg and Marquardt (D. W. Marquardt, J. SIAM 11 (1963) 431) with
//! exact slopes; the same input always gives the same paints.
//!
//! # Limits
//!
//! Where a film hides its paper only K / S is seen. The level of S, the paint's
//! strength in a mix, then comes from what is expected (S about 1 at masstone)
//! until mixes are learned from.

mod band_matrix;
mod consensus;
mod film;
mod lesson;
mod plan;
mod problem;

pub use consensus::{DRAWS, consensus};
pub use lesson::{ErrorChange, Evidence, Known, Learner, Lesson};
pub use plan::{Plan, PlannedPart, Step, Wanted};

use crate::colour::{Lab, ciede2000, lab};
use crate::error::Error;
use crate::optics::film::Film;
use crate::optics::observer::Light;
use crate::optics::spectrum::{BANDS, Spectrum, cast};
use crate::optics::surface::Surface;
use crate::text::limits;

use problem::{Problem, components};

/// What a swatch was measured as.
#[derive(Clone, Debug, PartialEq)]
pub enum Seen {
    /// Reflectance, 0 to 1, surface included.
    Spectrum(Box<Spectrum<f64>>),
    /// CIELAB in D65.
    Lab(Lab<f64>),
}

impl Seen {
    /// CIELAB in D65.
    #[must_use]
    pub fn lab(&self) -> Lab<f64> {
        match self {
            Self::Spectrum(reflectance) => daylight(reflectance),
            Self::Lab(lab) => *lab,
        }
    }
}

/// A painted and measured patch.
#[derive(Clone, Debug, PartialEq)]
pub struct Swatch {
    /// Index of each paint and its quantity; 1 is masstone, above 0.
    pub parts: Vec<(usize, f64)>,
    /// The measurement.
    pub seen: Seen,
    /// How far it is trusted: errors are multiplied by it; 1 as measured, 0 not at all.
    pub trust: f64,
}

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

/// Absorption and scattering per unit of load, `f64` for fitting.
#[derive(Clone, Debug, PartialEq)]
pub struct Curves {
    /// Absorption K, above 0.
    pub k: Spectrum<f64>,
    /// Scattering S, above 0.
    pub s: Spectrum<f64>,
}

impl Curves {
    /// Of a paint of the shelf; zeros become [`LEAST`].
    #[must_use]
    pub fn of(film: &Film) -> Self {
        let floor = |value: f64| value.max(LEAST);
        Self { k: cast(&film.k).map(floor), s: cast(&film.s).map(floor) }
    }

    /// The same for the mixing kernel.
    #[must_use]
    pub fn film(&self) -> Film {
        Film { k: cast(&self.k), s: cast(&self.s), strength: 1.0 }
    }
}

/// Least K and S that fitting tells from nothing: a masstone it dims by one in ten thousand.
pub const LEAST: f64 = 1e-4;

/// How strongly a fit is held: each number is 1 / the standard deviation in ln K or ln S.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Hold {
    /// Of a value from what is expected.
    pub level: f64,
    /// Of a step between neighbouring bands.
    pub slope: f64,
    /// Of a change of step.
    pub bend: f64,
}

/// What is known of a paint before its swatches.
#[derive(Clone, Debug, PartialEq)]
pub struct Prior {
    /// The expected curves.
    pub curves: Curves,
    /// How strongly K is held to them.
    pub k: Hold,
    /// How strongly S is held to them.
    pub s: Hold,
}

impl Prior {
    /// Nothing but that curves are smooth, S the smoother, and S about 1 at masstone.
    ///
    /// The widths are wide enough to fit swatches of several quantities to
    /// about 1 CIEDE2000; where S is not seen, 1 at masstone decides.
    #[must_use]
    pub const fn unknown() -> Self {
        Self {
            curves: Curves { k: [1.0; BANDS], s: [1.0; BANDS] },
            k: Hold { level: 0.0, slope: 0.0, bend: 0.3 },
            s: Hold { level: 0.5, slope: 0.0, bend: 3.0 },
        }
    }

    /// A paint that is known and may be corrected, smoothly: a third in level,
    /// a fifth from band to band.
    #[must_use]
    pub const fn known(curves: Curves) -> Self {
        const HOLD: Hold = Hold { level: 3.0, slope: 5.0, bend: 0.0 };
        Self { curves, k: HOLD, s: HOLD }
    }
}

/// Fitted paints and how well they explain the swatches.
#[derive(Clone, Debug)]
pub struct Calibration {
    /// Paper, surface and spreading.
    pub ground: Ground,
    /// The paints, in the order of the priors.
    pub paints: Vec<Curves>,
    /// CIEDE2000 of each swatch in D65, in the order given.
    pub errors: Vec<f64>,
    /// The minimised sum, to compare fits of the same swatches.
    pub cost: f64,
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
        std::array::from_fn(|band| {
            let sum = |curve: fn(&Curves) -> &Spectrum<f64>| -> f64 {
                loads.iter().filter_map(|(i, x)| paints.get(*i).map(|p| x * curve(p)[band])).sum()
            };
            let (k, s) = (sum(|p| &p.k), sum(|p| &p.s));
            surface.outer(crate::optics::layer::reflectance(k, s, 1.0, inner[band]))
        })
    }

    /// CIEDE2000 of each swatch in D65.
    fn errors(&self, paints: &[Curves], swatches: &[Swatch]) -> Vec<f64> {
        let error = |swatch: &Swatch| {
            ciede2000(daylight(&self.reflectance(paints, &swatch.parts)), swatch.seen.lab())
        };
        swatches.iter().map(error).collect()
    }

    /// Load of each paint in a film of these parts.
    fn loads(&self, parts: &[(usize, f64)]) -> Vec<(usize, f64)> {
        let present = || parts.iter().filter(|(_, quantity)| *quantity > 0.0);
        let total: f64 = present().map(|(_, quantity)| quantity).sum();
        let spread = total.powf(self.gamma - 1.0);
        present().map(|(paint, quantity)| (*paint, quantity * spread)).collect()
    }

    fn inner_paper(&self) -> Spectrum<f64> {
        self.paper.map(|r| self.surface.inner(r))
    }
}

/// Fits every paint that has a prior to the swatches.
///
/// A paint without a swatch keeps what was expected of it. Paints that never
/// meet in a swatch do not influence each other.
///
/// # Errors
///
/// [`Error::Value`] where a swatch is empty, names a paint without a prior,
/// or holds a number that is not finite or out of its range.
pub fn fit(ground: &Ground, priors: &[Prior], swatches: &[Swatch]) -> Result<Calibration, Error> {
    check(ground, priors, swatches)?;
    let mut paints: Vec<Curves> = priors.iter().map(|prior| prior.curves.clone()).collect();
    let mut cost = 0.0;
    for component in components(priors.len(), swatches) {
        let problem = Problem::new(ground, priors, swatches, &component);
        let (fitted, part) = problem.solve();
        cost += part;
        for (paint, curves) in component.paints.iter().zip(fitted) {
            paints[*paint] = curves;
        }
    }
    let errors = ground.errors(&paints, swatches);
    Ok(Calibration { ground: ground.clone(), paints, errors, cost })
}

/// The surface of a film of these parts: k1 is the mean of the paints' own, where they have one.
fn surface_of(surface: Surface<f64>, floors: &[f64], parts: &[(usize, f64)]) -> Surface<f64> {
    let floor = |paint: usize| floors.get(paint).copied().unwrap_or(surface.k1);
    let present = || parts.iter().filter(|(_, quantity)| *quantity > 0.0);
    let total: f64 = present().map(|(_, quantity)| quantity).sum();
    let sum: f64 = present().map(|(paint, quantity)| quantity * floor(*paint)).sum();
    Surface { k1: if total > 0.0 { sum / total } else { surface.k1 }, ..surface }
}

fn daylight(reflectance: &Spectrum<f64>) -> Lab<f64> {
    let weights = Light::D65.weights();
    lab(weights.tristimulus(reflectance), weights.white)
}

fn check(ground: &Ground, priors: &[Prior], swatches: &[Swatch]) -> Result<(), Error> {
    within("paper reflectance", &ground.paper, 0.0, 1.2)?;
    within("surface k1 and k2", &[ground.surface.k1, ground.surface.k2], 0.0, 0.99)?;
    within("gamma", &[ground.gamma], 0.0, 2.0)?;
    within("a paint's k1", &ground.floors, 0.0, 0.99)?;
    for prior in priors {
        within("expected K and S", prior.curves.k.iter().chain(&prior.curves.s), f64::MIN_POSITIVE, 1e6)?;
    }
    for (number, swatch) in swatches.iter().enumerate() {
        let name = |what: &str| format!("swatch {}: {what}", number + 1);
        if swatch.parts.is_empty() {
            return Err(Error::Value(name("no paint in it")));
        }
        if let Some((paint, _)) = swatch.parts.iter().find(|(paint, _)| *paint >= priors.len()) {
            return Err(Error::Value(name(&format!("paint {paint} of {} paints", priors.len()))));
        }
        within(&name("quantity"), swatch.parts.iter().map(|(_, q)| q), f64::MIN_POSITIVE, 1e3)?;
        within(&name("trust"), &[swatch.trust], 0.0, 1e3)?;
        match &swatch.seen {
            Seen::Spectrum(r) => within(&name("reflectance"), r.as_ref(), 0.0, 1.2)?,
            Seen::Lab(c) => within(&name("L*, a* or b*"), &[c.l, c.a, c.b], -200.0, 200.0)?,
        }
    }
    Ok(())
}

fn within<'a>(
    name: &str,
    values: impl IntoIterator<Item = &'a f64>,
    least: f64,
    most: f64,
) -> Result<(), Error> {
    values.into_iter().try_for_each(|value| limits::within(name, *value, [least, most]))
}

#[cfg(test)]
mod tests;
