//! The fit of paints to their swatches.

use super::component::components;
use super::curves::Curves;
use super::ground::Ground;
use super::prior::Prior;
use super::problem::Problem;
use super::swatch::{Seen, Swatch};
use crate::error::Error;
use crate::text::limits;

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

pub(super) fn within<'a>(
    name: &str,
    values: impl IntoIterator<Item = &'a f64>,
    least: f64,
    most: f64,
) -> Result<(), Error> {
    values.into_iter().try_for_each(|value| limits::within(name, *value, [least, most]))
}
