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
/// The median that the organic pigments common to both sets come out at; every coloured
/// paint's own is fitted, so that it matters little to them.
const AREAL_MASS: f64 = 2.5;

/// The same of minerals, whose films hold far more pigment: that of PV15, the only
/// coloured one measured (34 at 2.35 g/cm³), at equal volume. Only the whites depend on it.
const MINERAL_MASS: f64 = 34.0 / 2.35 * 1.5;

/// Densities in g/cm³ of the whites (handbooks, from memory).
const WHITES: [(&str, f64); 2] = [("PW6", 4.2), ("PW4", 5.6)];

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
    let white = WHITES.iter().find(|(name, _)| *name == pigment);
    let film = white.map_or(AREAL_MASS, |(_, density)| MINERAL_MASS * density / 1.5);
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

#[cfg(test)]
mod tests {
    use washpath_core::Shelf;

    use super::*;

    /// Mean of the eight strongest bands.
    fn peak(values: impl IntoIterator<Item = f64>) -> f64 {
        let mut values: Vec<f64> = values.into_iter().collect();
        values.sort_by(f64::total_cmp);
        values[values.len() - 8..].iter().sum::<f64>() / 8.0
    }

    /// The shelf's strengths are 8 / A, and twice that of ultramarine's heavy load.
    #[test]
    fn strengths_follow_from_the_pigment_in_a_masstone() {
        let named = [
            ("PB15:3", "pb15-3", 8.0),
            ("PG7", "pg7", 8.0),
            ("PV23", "pv23", 8.0),
            ("PR122", "pr122", 8.0),
            ("PR170", "pr170", 8.0),
            ("PR202", "pr202", 8.0),
            ("PV19", "pv19-violet", 8.0),
            ("PO73", "po73", 8.0),
            ("PV15", "pv15", 16.0),
        ];
        let phantoms = phantoms().unwrap();
        for (pigment, key, load) in named {
            let phantom = phantoms.iter().find(|phantom| phantom.pigment == pigment).unwrap();
            let paint = Shelf::built_in().find(key).unwrap();
            let mass = AREAL_MASS * peak(paint.film.k.map(f64::from)) / peak(phantom.ln_k.map(f64::exp));
            let strength = f64::from(paint.film.strength);
            assert!((strength * mass / load - 1.0).abs() < 0.12, "{key}: {strength}, A {mass:.2}");
        }
    }
}
