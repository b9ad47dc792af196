//! Pigments measured one by one in clear resin: `data/phantoms.csv`.

use washpath_core::Spectrum;

use crate::error::Error;
use crate::table::{Row, Table};

/// Bulk optics of one pigment.
pub struct Phantom {
    pub pigment: String,
    /// ln of K for a film of [`AREAL_MASS`].
    pub ln_k: Spectrum<f64>,
    /// ln of S for the same film.
    pub ln_s: Spectrum<f64>,
}

/// Pigment in a film of load 1 in mm mg/g, for organic pigments of 1.5 g/cm³.
///
/// Only the whites depend on it: every other paint's strength is fitted. It is
/// the median that the organic pigments common to both sets come out at.
const AREAL_MASS: f64 = 2.5;

/// Densities in g/cm³ of what is not organic (handbooks, from memory).
const DENSITIES: [(&str, f64); 2] = [("PW6", 4.2), ("PW4", 5.6)];

/// Absorption nothing measures is at least this share of the strongest band's.
const LEAST: f64 = 3e-4;

/// All phantoms.
pub fn phantoms() -> Result<Vec<Phantom>, Error> {
    let table = Table::read("phantoms.csv", include_str!("../data/phantoms.csv"))?;
    let rows: Vec<Row<'_>> = table.rows().collect();
    rows.chunks(2)
        .map(|pair| match pair {
            [mua, mus] => phantom(*mua, *mus),
            _ => Err(Error::new("phantoms.csv", "a pigment lacks its second row")),
        })
        .collect()
}

fn phantom(mua: Row<'_>, mus: Row<'_>) -> Result<Phantom, Error> {
    let pigment = mua.text("pigment")?;
    if (mua.text("quantity")?, mus.text("quantity")?, mus.text("pigment")?) != ("mua", "mus", pigment) {
        return Err(mua.fault(format!("{pigment} needs a row mua, then a row mus")));
    }
    let density = DENSITIES.iter().find(|(name, _)| *name == pigment).map_or(1.5, |(_, density)| *density);
    let film = AREAL_MASS * density / 1.5;
    // Diffusion theory against two fluxes: K = 2 mua, S = 3/4 mus'.
    let k: Spectrum<f64> = mua.spectrum(380)?.map(|mua| 2.0 * mua * film);
    let s: Spectrum<f64> = mus.spectrum(380)?.map(|mus| 0.75 * mus * film);
    let peak = k.iter().fold(0.0, |a: f64, b| a.max(*b));
    Ok(Phantom {
        pigment: pigment.to_owned(),
        ln_k: k.map(|k| k.max(LEAST * peak).ln()),
        ln_s: s.map(f64::ln),
    })
}
