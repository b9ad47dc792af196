//! How sure strengths are: what other sets of paints say of them.
//!
//! Nobody measured the strength of watercolours side by side. Three opinions are at hand, each in a unit of
//! its own:
//!
//! - `sources.csv`, the shelf's: pigment per masstone by the phantoms, else common practice;
//! - acrylics as supplied, K beside titanium white's S (`acrylics.csv`);
//! - oils, K of a volume of pigment beside zinc white's S (`oils.csv`).
//!
//! The masstones in a unit are K of the unit over K of the paint's masstone, in the mean of logarithms over
//! the eight strongest bands. A set is shifted by what makes it agree with the shelf in the mean.
//!
//! Averaged with the shelf's own, the opinions of acrylics and oils would make phthalocyanines two and a half
//! times as strong, viridian twice. Against other makers' watercolours (`evaluate shelf`) such a shelf is worse,
//! 6.3 in the median and 13.3 at the 90th percentile, 6.6 and 13.9 with the load found without both paints: how
//! other binders are filled says little about watercolours. So no strength comes from them, but they tell how
//! far two makers' strengths lie apart.

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

/// Strongest bands a strength is told by.
const STRONGEST: usize = 8;

/// What a set says of one paint: ln of its strength, less what the shelf says.
struct Opinion {
    key: &'static str,
    differs: f64,
}

/// Standard deviation of one opinion on ln strength, from how far opinions on the same paint lie apart.
///
/// `paints` are those of [`crate::derive()`].
///
/// # Errors
///
/// As [`crate::files`].
pub fn spread_of_strengths(paints: &[Anchored]) -> Result<f64, Error> {
    let opinions = opinions(paints, &sources()?)?;
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

fn opinions(paints: &[Anchored], sources: &[Source]) -> Result<Vec<Opinion>, Error> {
    let of = |key: &'static str, first_band: usize, k: &[f64]| {
        let at = sources.iter().position(|source| source.key == key);
        let at = at.ok_or_else(|| Error::new("sources.csv", format!("no paint {key}")))?;
        let masstone = &paints[at].film.k[first_band..first_band + k.len()];
        let differs = masstones(k, masstone) - sources[at].strength.ln();
        Ok::<Opinion, Error>(Opinion { key, differs })
    };
    let table = Table::read("acrylics.csv", include_str!("../data/acrylics.csv"))?;
    let mut acrylics = Vec::new();
    let rows = table.rows().filter(|row| row.text("quantity") == Ok("K"));
    for (row, (pigment, key)) in rows.zip(ACRYLICS) {
        if row.text("pigment")? != pigment {
            return Err(row.fault(format!("a row of {pigment} is wanted here")));
        }
        let k: washpath_core::Spectrum<f64> = row.spectrum(380)?;
        acrylics.push(of(key, 0, &k)?);
    }
    let mut painted = Vec::new();
    for oil in oils()? {
        let (_, key) = OILS
            .iter()
            .find(|(pigment, _)| *pigment == oil.pigment)
            .ok_or_else(|| Error::new("oils.csv", format!("no paint of the shelf is {}", oil.pigment)))?;
        painted.push(of(key, 2, &oil.k)?);
    }
    Ok([acrylics, painted].into_iter().flat_map(in_one_unit).collect())
}

/// A set whose opinions agree with the shelf in the mean.
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
