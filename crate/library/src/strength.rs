//! How strong a paint is: masstones in a volume of it as supplied.
//!
//! Nobody measured the strength of watercolours side by side. `sources.csv` has what pigment the phantoms' masstones
//! hold, else a figure of common practice. Two further sets tell of some pigments:
//!
//! - oils, K of a volume of pigment beside zinc white's S (`oils.csv`);
//! - acrylics as supplied, K beside titanium white's S (`acrylics.csv`).
//!
//! The masstones in a unit are K of the unit over K of the paint's masstone, in the mean of logarithms over
//! the eight strongest bands.
//!
//! Oils tell of the pigment itself, as the phantoms do, so a figure of common practice and theirs, at equal volume
//! of pigment and ultramarine being 1 in both, are averaged as logarithms. Acrylics tell how a maker fills another
//! binder; averaging them in, and giving relatives what is said of a paint, makes the shelf worse against other
//! makers' watercolours (`evaluate shelf`: 6.3 in the median and 13.3 at the 90th percentile). They stay out.
//!
//! All opinions together tell how far two makers' strengths lie apart.

use washpath_core::BANDS;

use crate::anchor::Anchored;
use crate::error::Error;
use crate::oils::oils;
use crate::sources::{Source, sources};
use crate::table::Table;

/// The shelf's paint of each row of acrylics, in the table's order.
const ACRYLICS: [(&str, &str); 19] = [
    ("PBk9", "pbk9"),
    ("PY74", "py74"),
    ("PY83", "py83"),
    ("PO20", "po20"),
    ("PO73", "po73"),
    ("PR108", "pr108"),
    ("PR254", "pr254"),
    ("PV19", "pv19-rose"),
    ("PR122", "pr122"),
    ("PV23", "pv23"),
    ("PB29", "pb29"),
    ("PB28", "pb28"),
    ("PB36", "pb36"),
    ("PB15", "pb15-1"),
    ("PB15", "pb15-3"),
    ("PG7", "pg7"),
    ("PG36", "pg36"),
    ("PY184", "py184"),
    ("PW6", "pw6"),
];

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

/// What a set says of one paint: ln of its strength, less what `sources.csv` says.
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

/// Standard deviation of one opinion on ln strength, from how far opinions on the same paint lie apart.
///
/// `paints` are those of [`crate::derive()`].
///
/// # Errors
///
/// As [`crate::files`].
pub fn spread_of_strengths(paints: &[Anchored]) -> Result<f64, Error> {
    let sources = sources()?;
    let sets = [of_acrylics(paints, &sources)?, of_oils(paints, &sources)?];
    let opinions: Vec<Opinion> = sets.into_iter().flat_map(in_one_unit).collect();
    let (mut squares, mut free) = (0.0, 0);
    for (index, opinion) in opinions.iter().enumerate() {
        if opinions[..index].iter().any(|other| other.key == opinion.key) {
            continue;
        }
        let others = opinions.iter().filter(|other| other.key == opinion.key).map(|other| other.differs);
        let all: Vec<f64> = others.chain([0.0]).collect();
        squares += all.iter().map(|one| (one - mean(&all)).powi(2)).sum::<f64>();
        free += all.len() - 1;
    }
    Ok((squares / f64::from(free as u32)).sqrt())
}

fn of_acrylics(paints: &[Anchored], sources: &[Source]) -> Result<Vec<Opinion>, Error> {
    let table = Table::read("acrylics.csv", include_str!("../data/acrylics.csv"))?;
    let rows = table.rows().filter(|row| row.text("quantity") == Ok("K"));
    rows.zip(ACRYLICS)
        .map(|(row, (pigment, key))| {
            if row.text("pigment")? != pigment {
                return Err(row.fault(format!("a row of {pigment} is wanted here")));
            }
            opinion(paints, sources, key, &row.spectrum::<BANDS>(380)?, 0)
        })
        .collect()
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

/// A set whose opinions agree with `sources.csv` in the mean.
fn in_one_unit(mut set: Vec<Opinion>) -> Vec<Opinion> {
    let shift = mean(&set.iter().map(|opinion| opinion.differs).collect::<Vec<_>>());
    set.iter_mut().for_each(|opinion| opinion.differs -= shift);
    set
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
