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
use crate::oils::oils;
use crate::sources::Source;

/// The shelf's paint of each pigment of the oils.
const OILS: [(&str, &str); 7] = [
    ("PBk9", "pbk9"),
    ("PG18", "pg18"),
    ("PB29", "pb29"),
    ("PB28", "pb28"),
    ("PB27", "pb27"),
    ("PR106", "pr106"),
    ("NR4", "nr4"),
];

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

/// What oils say of one paint: ln of its strength, less what `sources.csv` says.
struct Opinion {
    key: &'static str,
    differs: f64,
}

/// Strengths of all paints, in their order.
pub fn strengths(paints: &[Anchored], sources: &[Source]) -> Result<Vec<Strength>, Error> {
    let oils = of_oils(paints, sources)?;
    let of = |key: &str| oils.iter().find(|opinion| opinion.key == key).map(|opinion| opinion.differs);
    let unit = of(UNIT).ok_or_else(|| Error::new("oils.csv", format!("no tint of {UNIT}")))?;
    let strength = |source: &Source| {
        let (practice, said) = (source.strength, source.strength_source.clone());
        match of(&source.key).filter(|_| source.key != UNIT) {
            Some(differs) => Strength {
                value: practice * (0.5 * (differs - unit)).exp(),
                source: format!("{said} and oils"),
            },
            None => Strength { value: practice, source: said },
        }
    };
    Ok(sources.iter().map(strength).collect())
}

fn of_oils(paints: &[Anchored], sources: &[Source]) -> Result<Vec<Opinion>, Error> {
    oils()?
        .iter()
        .map(|oil| {
            let (_, key) = OILS
                .iter()
                .find(|(pigment, _)| *pigment == oil.pigment)
                .ok_or_else(|| Error::new("oils.csv", format!("no paint of the shelf is {}", oil.pigment)))?;
            opinion(paints, sources, key, &oil.k, 2)
        })
        .collect()
}

/// What K of a unit from the `first` band on says of a paint.
fn opinion(
    paints: &[Anchored],
    sources: &[Source],
    key: &'static str,
    k: &[f64],
    first: usize,
) -> Result<Opinion, Error> {
    let known = paints.iter().zip(sources).find(|(paint, _)| paint.key == key);
    let (paint, source) = known.ok_or_else(|| Error::new("sources.csv", format!("no paint {key}")))?;
    let masstone = &paint.film.k[first..first + k.len()];
    Ok(Opinion { key, differs: masstones(k, masstone) - source.strength.ln() })
}

/// ln of the masstones in a unit of paint that absorbs `k`.
fn masstones(k: &[f64], masstone: &[f64]) -> f64 {
    let mut bands: Vec<usize> = (0..k.len()).collect();
    bands.sort_by(|a, b| masstone[*b].total_cmp(&masstone[*a]));
    let strongest: Vec<f64> =
        bands[..STRONGEST].iter().map(|band| (k[*band].max(1e-9) / masstone[*band]).ln()).collect();
    mean(&strongest)
}

/// 0 of nothing.
fn mean(values: &[f64]) -> f64 {
    values.iter().sum::<f64>() / values.len().max(1) as f64
}
