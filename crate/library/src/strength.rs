//! How strong a paint is: masstones in a volume of it as supplied.
//!
//! Nobody measured the strength of watercolours side by side. `sources.csv` has what pigment the phantoms' masstones
//! hold, else a figure of common practice. Of some pigments oils tell (`oils.csv`): K of a volume of pigment beside
//! zinc white's S. The masstones in it are that K over K of the paint's masstone, in the mean of logarithms over the
//! eight strongest bands.
//!
//! Oils tell of the pigment itself, as the phantoms do, so a figure of common practice and theirs, at equal volume
//! of pigment and ultramarine being 1 in both, are averaged as logarithms. Acrylics as supplied (`acrylics.csv`) tell how
//! a maker fills another binder: averaged in as well, with relatives taking what is said of a paint, they make the shelf
//! worse against other makers' watercolours (`evaluate shelf`: 6.3 in the median, 13.3 at the 90th percentile) and stay
//! out. On one paint the opinions of phantoms or practice, acrylics and oils lie e^0.54 apart, one standard deviation.

use crate::anchor::Anchored;
use crate::error::Error;
use crate::oils::{FIRST_BAND, oils};
use crate::sources::Source;

/// The paint of strength 1.
const UNIT: &str = "pb29";

/// Strongest bands a strength is told by.
const STRONGEST: usize = 8;

/// A paint's strength and who says so.
#[derive(Clone, Debug, PartialEq)]
pub struct Strength {
    /// Masstones in one volume, beside ultramarine's.
    pub value: f64,
    /// "phantoms", "common practice", or "common practice and oils".
    pub source: String,
}

/// Strengths of all paints, which stand in the order of their sources.
pub fn strengths(paints: &[Anchored], sources: &[Source]) -> Result<Vec<Strength>, Error> {
    let oils = oils()?;
    // ln of what oils say, less what `sources.csv` says.
    let differs: Vec<Option<f64>> = paints
        .iter()
        .zip(sources)
        .map(|(paint, source)| {
            let oil = oils.iter().find(|oil| oil.key == paint.key)?;
            Some(masstones(&oil.k, &paint.film.k[FIRST_BAND..]) - source.strength.ln())
        })
        .collect();
    let unit =
        sources.iter().zip(&differs).find_map(|(source, differs)| differs.filter(|_| source.key == UNIT));
    let unit = unit.ok_or_else(|| Error::new("oils.csv", format!("no tint of {UNIT}")))?;
    let strength = |(source, differs): (&Source, &Option<f64>)| {
        let (practice, said) = (source.strength, source.strength_source.clone());
        match differs.filter(|_| source.key != UNIT) {
            Some(differs) => Strength {
                value: practice * (0.5 * (differs - unit)).exp(),
                source: format!("{said} and oils"),
            },
            None => Strength { value: practice, source: said },
        }
    };
    Ok(sources.iter().zip(&differs).map(strength).collect())
}

/// ln of the masstones in a unit of paint that absorbs `k`.
fn masstones(k: &[f64], masstone: &[f64]) -> f64 {
    let mut bands: Vec<usize> = (0..k.len()).collect();
    bands.sort_by(|a, b| masstone[*b].total_cmp(&masstone[*a]));
    let ratio = |band: &usize| (k[*band].max(1e-9) / masstone[*band]).ln();
    bands[..STRONGEST].iter().map(ratio).sum::<f64>() / STRONGEST as f64
}
