//! A paint that nobody measured, from its handbook colours and its relatives.

use washpath_core::{BANDS, Spectrum, colour, spectrum::from_fn};

use crate::anchor::{Anchored, MISFITS, anchor, misfits};
use crate::appearance::Film;
use crate::correction::{Correction, Measured};
use crate::handbook::Entry;
use crate::kinship::kinship;
use crate::squares::minimise;

/// A measured paint as a model for another.
#[derive(Clone, Copy)]
pub struct Relative<'a> {
    pub entry: &'a Entry,
    pub film: &'a Film,
}

/// Relatives an estimate stands on.
const RELATIVES: usize = 12;
/// Masstones so many CIEDE2000 apart count e^-1/2 as much.
const NEAR: f64 = 15.0;
/// Usual distance in nm between relatives' absorption bands.
const SHIFT: f64 = 15.0;
/// Numbers that bend a relative: S keeps the shape that was measured, and the bands may move.
const BENDING: usize = 6;
/// Weight from which a relative is named.
const NAMED: f64 = 0.08;

/// The mean of the relatives, each bent until it shows the handbook's colours.
///
/// `None` without relatives. The crate's page has the formulas.
pub fn estimate(key: &str, entry: &Entry, relatives: &[Relative<'_>]) -> Option<Anchored> {
    let mut near: Vec<(f64, &Relative<'_>)> =
        relatives.iter().map(|relative| (nearness(entry, relative.entry), relative)).collect();
    near.sort_by(|a, b| b.0.total_cmp(&a.0));
    near.truncate(RELATIVES);
    let bent: Vec<Measured> =
        near.iter().map(|(_, relative)| bend(&Measured::from(relative.film), entry)).collect();
    let total: f64 = near.iter().map(|(weight, _)| weight).sum();
    if total <= 0.0 {
        return None;
    }
    let mean = |log: fn(&Measured) -> &Spectrum<f64>| {
        from_fn(|band| {
            bent.iter().zip(&near).map(|(film, (weight, _))| weight / total * log(film)[band]).sum()
        })
    };
    let film = Measured { ln_k: mean(|film| &film.ln_k), ln_s: mean(|film| &film.ln_s), hidden: 0.0 };
    let mut paint = anchor(key, &names(&near, total), &film, entry);
    paint.estimated = true;
    Some(paint)
}

/// Kinship times nearness of the masstones.
fn nearness(entry: &Entry, other: &Entry) -> f64 {
    let apart = colour::ciede2000(entry.masstone, other.masstone) / NEAR;
    kinship(&entry.family, &other.family) * (-0.5 * apart * apart).exp()
}

/// Moves a relative's bands and corrects it.
fn bend(film: &Measured, entry: &Entry) -> Measured {
    let best = minimise([0.0; BENDING], |at: &[f64; BENDING]| {
        let (correction, nm) = parts(at);
        let found = misfits(correction, &moved(film, nm), entry, false);
        let mut all = [nm / SHIFT; MISFITS + 1];
        all[..MISFITS].copy_from_slice(&found);
        all
    });
    let (correction, nm) = parts(&best.at);
    Measured::from(&correction.apply(&moved(film, nm)))
}

/// The shift is searched in units of its usual size.
fn parts(at: &[f64; BENDING]) -> (Correction, f64) {
    let [d, s, g, t1, t2, shift] = *at;
    (Correction::from([d, s, g, t1, t2, 0.0, 0.0]), shift * SHIFT)
}

/// The film with its absorption moved by so many nm to the red.
fn moved(film: &Measured, nm: f64) -> Measured {
    let last = (BANDS - 1) as f64;
    let ln_k = from_fn(|band| {
        let at = (band as f64 - nm / 10.0).clamp(0.0, last);
        let low = (at.floor() as usize).min(BANDS - 2);
        let part = at - low as f64;
        (1.0 - part) * film.ln_k[low] + part * film.ln_k[low + 1]
    });
    Measured { ln_k, ..*film }
}

/// Colour Index names of the heaviest relatives, heaviest first as they come.
fn names(near: &[(f64, &Relative<'_>)], total: f64) -> String {
    let mut names: Vec<&str> = Vec::new();
    for (index, (weight, relative)) in near.iter().enumerate() {
        let name = relative.entry.code.as_str();
        if (index == 0 || *weight > NAMED * total) && !names.contains(&name) {
            names.push(name);
        }
    }
    names.truncate(4);
    names.join(", ")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn bands_move_to_the_red_by_whole_and_part_bands() {
        let film = Measured { ln_k: from_fn(|band| band as f64), ln_s: [0.0; BANDS], hidden: 0.0 };
        let moved = moved(&film, 15.0);
        assert_eq!(moved.ln_k[0], 0.0);
        assert!((moved.ln_k[10] - 8.5).abs() < 1e-12 && (moved.ln_k[35] - 33.5).abs() < 1e-12);
    }
}
