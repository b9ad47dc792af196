//! Tints of one pigment in zinc white, painted in oil over black and white: `data/oils.csv`.

use washpath_core::Surface;

use crate::error::Error;
use crate::table::Table;

/// Bands of this set: 400 to 700 nm by 10.
pub const OIL_BANDS: usize = 31;

/// The set's spectrometer sees the gloss: its black card reads 0.05, of which Fresnel's formula gives
/// 0.04 to a film of index 1.5.
const GLOSSY: Surface<f64> = Surface { k1: 0.04, k2: 0.6 };

/// The white of the tints.
const WHITE: &str = "PW4";

/// First band of the shelf's spectra that this set has.
pub const FIRST_BAND: usize = 2;

/// The shelf's paint of each pigment, and the pigment's density in g/cm³ (handbooks, from memory).
const PAINTS: [(&str, &str, f64); 7] = [
    ("PBk9", "pbk9", 2.5),
    ("PG18", "pg18", 3.3),
    ("PB29", "pb29", 2.35),
    ("PB28", "pb28", 4.2),
    ("PB27", "pb27", 1.8),
    ("PR106", "pr106", 8.1),
    ("NR4", "nr4", 1.8),
];

/// Absorption of a pigment per volume, beside what the white's volume scatters.
pub struct Oil {
    /// Key of the shelf's paint of that pigment.
    pub key: &'static str,
    pub k: [f64; OIL_BANDS],
}

/// All pigments of the set.
///
/// In a pale tint all scattering is the white's, so that K/S of the tint, less the white's own, times white
/// to pigment by mass, is K of the pigment for S of the white.
pub fn oils() -> Result<Vec<Oil>, Error> {
    let table = Table::read("oils.csv", include_str!("../data/oils.csv"))?;
    let rows: Vec<_> = table.rows().collect();
    let mut tints = Vec::new();
    for four in rows.chunks(4) {
        let pigment = four[0].text("pigment")?;
        let mut read = Vec::new();
        for (row, what) in four.iter().zip(["black ground", "black film", "white ground", "white film"]) {
            let found = format!("{} {}", row.text("ground")?, row.text("what")?);
            if (row.text("pigment")?, &found[..]) != (pigment, what) {
                return Err(row.fault(format!("{pigment} needs a row {what}")));
            }
            read.push(row.spectrum::<OIL_BANDS>(400)?.map(|r| GLOSSY.inner(r)));
        }
        let [black, on_black, white, on_white] = &read[..] else {
            return Err(four[0].fault(format!("{pigment} has fewer than four rows")));
        };
        let ratio = std::array::from_fn(|band| {
            absorbed_to_scattered([black[band], on_black[band]], [white[band], on_white[band]])
        });
        tints.push((pigment, four[0].number("share")?, ratio));
    }
    let bare: [f64; OIL_BANDS] =
        tints.iter().find(|(name, ..)| *name == WHITE).map_or([0.0; OIL_BANDS], |(.., ratio)| *ratio);
    let tints = tints.iter().filter(|(name, ..)| *name != WHITE);
    tints.map(|(pigment, share, ratio)| oil(pigment, *share, &bare, ratio)).collect()
}

fn oil(pigment: &str, share: f64, bare: &[f64; OIL_BANDS], ratio: &[f64; OIL_BANDS]) -> Result<Oil, Error> {
    let paint = PAINTS.iter().find(|(name, ..)| *name == pigment);
    let (_, key, density) =
        paint.ok_or_else(|| Error::new("oils.csv", format!("no paint of the shelf is {pigment}")))?;
    let k = std::array::from_fn(|band| (ratio[band] - bare[band]) * (1.0 - share) / share * density);
    Ok(Oil { key, k })
}

/// K / S of one film, from each ground's reflectance and the film's over it.
///
/// [`layer::film_from_two_grounds`](washpath_core::layer::film_from_two_grounds) without the thickness, which
/// a film that hides its grounds does not tell. 0 where noise makes it less.
fn absorbed_to_scattered([ground, over]: [f64; 2], [ground_2, over_2]: [f64; 2]) -> f64 {
    let (gap, gap_2) = (over - ground, over_2 - ground_2);
    let a = ((1.0 + over * ground) * gap_2 - (1.0 + over_2 * ground_2) * gap)
        / ((over + ground) * gap_2 - (over_2 + ground_2) * gap);
    (a - 1.0).max(0.0)
}

#[cfg(test)]
mod tests {
    use washpath_core::layer::reflectance;

    use super::*;

    #[test]
    fn two_grounds_tell_absorption_from_scattering() {
        for (k, s) in [(0.3, 1.2), (2.0, 0.4), (40.0, 20.0)] {
            let film = |ground: f64| [ground, reflectance(k, s, 1.0, ground)];
            let ratio = absorbed_to_scattered(film(0.02), film(0.85));
            assert!((ratio / (k / s) - 1.0).abs() < 1e-6, "{ratio} for {k} and {s}");
        }
    }

    #[test]
    fn strong_pigments_colour_more_white() {
        let oils = oils().unwrap();
        let peak = |name: &str| {
            let oil = oils.iter().find(|oil| oil.key == name).unwrap();
            oil.k.iter().copied().fold(0.0, f64::max)
        };
        assert_eq!(oils.len(), PAINTS.len());
        // Common practice, no source: a touch of Prussian blue outweighs ultramarine many times.
        assert!(peak("pb27") > 10.0 * peak("pb29") && peak("pb29") > 0.0);
    }
}
