//! Does a second, independent measurement agree?

use washpath_core::Spectrum;

use crate::appearance::Film;
use crate::correction::Measured;
use crate::error::Error;
use crate::table::Table;

/// Least correlation that counts as agreement.
const LEAST_R: f64 = 0.95;
/// Range of slopes that does.
const SLOPES: std::ops::RangeInclusive<f64> = 0.5..=2.0;
/// Bands compared: 420 to 700 nm.
const COMPARED: std::ops::Range<usize> = 4..33;
/// Bands weaker than the strongest by more than this in ln are noise.
const DEPTH: f64 = 4.0;

/// Measurements that no paint of the shelf stands on, by paint key.
pub struct Witnesses {
    /// ln K of acrylic paints.
    acrylics: Vec<(String, Spectrum<f64>)>,
    /// Their ln S.
    acrylic_scattering: Vec<(String, Spectrum<f64>)>,
    /// ln K / S of dry powders.
    powders: Vec<(String, Spectrum<f64>)>,
    /// ln K in resin, a witness only for paints that stand on cards.
    phantoms: Vec<(String, Spectrum<f64>)>,
    /// Their ln S, but for a constant.
    phantom_scattering: Vec<(String, Spectrum<f64>)>,
}

/// The paint each acrylic and each phantom is the same pigment as.
const ACRYLICS: [(&str, &str); 16] = [
    ("PB15", "pb15-3"),
    ("PB28", "pb28"),
    ("PB29", "pb29"),
    ("PB36", "pb36"),
    ("PBk9", "pbk9"),
    ("PG36", "pg36"),
    ("PG7", "pg7"),
    ("PO20", "po20"),
    ("PO73", "po73"),
    ("PR108", "pr108"),
    ("PR122", "pr122"),
    ("PR254", "pr254"),
    ("PV19", "pv19-rose"),
    ("PV23", "pv23"),
    ("PY184", "py184"),
    ("PY74", "py74"),
];
const PHANTOMS: [(&str, &str); 6] = [
    ("PB15:3", "pb15-3"),
    ("PG7", "pg7"),
    ("PR122", "pr122"),
    ("PV19", "pv19-violet"),
    ("PV23", "pv23"),
    ("PY74", "py74"),
];

impl Witnesses {
    pub fn read() -> Result<Self, Error> {
        let acrylics = Table::read("acrylics.csv", include_str!("../data/acrylics.csv"))?;
        let phantoms = Table::read("phantoms.csv", include_str!("../data/phantoms.csv"))?;
        let powders = Table::read("powders.csv", include_str!("../data/powders.csv"))?;
        let powders = powders.rows().map(|row| {
            let r: Spectrum<f64> = row.spectrum(380)?;
            Ok((row.text("paint")?.to_owned(), r.map(|r| ((1.0 - r).powi(2) / (2.0 * r)).ln())))
        });
        Ok(Self {
            acrylics: logs(&acrylics, "K", &ACRYLICS)?,
            acrylic_scattering: logs(&acrylics, "S", &ACRYLICS)?,
            powders: powders.collect::<Result<_, _>>()?,
            phantoms: logs(&phantoms, "mua", &PHANTOMS)?,
            phantom_scattering: logs(&phantoms, "mus", &PHANTOMS)?,
        })
    }

    /// The same pigment's films in other sets, at no certain load.
    pub fn films(&self, key: &str, on_card: bool) -> Vec<Measured> {
        let film = |ln_k: &[(String, Spectrum<f64>)], ln_s: &[(String, Spectrum<f64>)]| {
            let pair = ln_k.iter().zip(ln_s).find(|((paint, _), _)| paint == key);
            pair.map(|((_, ln_k), (_, ln_s))| Measured::new(*ln_k, *ln_s))
        };
        let acrylic = film(&self.acrylics, &self.acrylic_scattering);
        let phantom = film(&self.phantoms, &self.phantom_scattering).filter(|_| on_card);
        acrylic.into_iter().chain(phantom.map(Measured::of_phantom)).collect()
    }

    /// Names of the sets that agree with a paint.
    pub fn agreeing(&self, key: &str, on_card: bool, paint: &Film) -> Vec<&'static str> {
        let ln_k = paint.k.map(f64::ln);
        let ratio = std::array::from_fn(|band| (paint.k[band] / paint.s[band]).ln());
        let agrees = |set: &[(String, Spectrum<f64>)], ours: &Spectrum<f64>| {
            set.iter().any(|(paint, theirs)| paint == key && alike(ours, theirs))
        };
        let mut sets = Vec::new();
        if agrees(&self.acrylics, &ln_k) {
            sets.push("acrylics");
        }
        if agrees(&self.powders, &ratio) {
            sets.push("powders");
        }
        if on_card && agrees(&self.phantoms, &ln_k) {
            sets.push("phantoms");
        }
        sets
    }
}

fn logs(
    table: &Table,
    quantity: &str,
    paints: &[(&str, &str)],
) -> Result<Vec<(String, Spectrum<f64>)>, Error> {
    let mut found = Vec::new();
    for row in table.rows() {
        let pigment = row.text("pigment")?;
        let paint = paints.iter().find(|(name, _)| *name == pigment);
        if let Some((_, key)) = paint.filter(|_| row.text("quantity") == Ok(quantity)) {
            let k: Spectrum<f64> = row.spectrum(380)?;
            found.push(((*key).to_owned(), k.map(|k| k.max(1e-9).ln())));
        }
    }
    Ok(found)
}

/// Correlation and slope of theirs against ours, where theirs is not noise.
fn alike(ours: &Spectrum<f64>, theirs: &Spectrum<f64>) -> bool {
    let peak = theirs[COMPARED].iter().fold(f64::MIN, |a, b| a.max(*b));
    let pairs: Vec<(f64, f64)> =
        COMPARED.map(|band| (ours[band], theirs[band])).filter(|(_, y)| *y > peak - DEPTH).collect();
    let n = pairs.len() as f64;
    let (mx, my) = pairs.iter().fold((0.0, 0.0), |(x, y), p| (x + p.0 / n, y + p.1 / n));
    let (mut xx, mut xy, mut yy) = (0.0, 0.0, 0.0);
    for (x, y) in pairs {
        xx += (x - mx) * (x - mx);
        xy += (x - mx) * (y - my);
        yy += (y - my) * (y - my);
    }
    xy / (xx * yy).sqrt() >= LEAST_R && SLOPES.contains(&(xy / xx))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_shape_agrees_with_its_own_multiple_and_not_with_another() {
        let blue: Spectrum<f64> = std::array::from_fn(|band| (band as f64 / 9.0).sin());
        let red: Spectrum<f64> = std::array::from_fn(|band| (band as f64 / 9.0).cos());
        assert!(alike(&blue, &blue.map(|v| 1.2 * v + 3.0)));
        assert!(!alike(&blue, &red));
        assert!(!alike(&blue, &blue.map(|v| 3.0 * v)));
    }
}
