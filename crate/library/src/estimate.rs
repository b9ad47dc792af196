//! A paint that nobody measured, from its handbook colours and its relatives.

use washpath_core::{Spectrum, colour, spectrum::from_fn};

use crate::anchor::{Anchored, anchor, misfits};
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
/// Numbers that bend a relative.
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
    let film = Measured::new(mean(|film| &film.ln_k), mean(|film| &film.ln_s));
    let mut paint = anchor(key, &names(&near, total), &film, entry);
    paint.estimated = true;
    Some(paint)
}

/// Kinship times nearness of the masstones.
fn nearness(entry: &Entry, other: &Entry) -> f64 {
    let apart = colour::ciede2000(entry.masstone, other.masstone) / NEAR;
    kinship(&entry.family, &other.family) * (-0.5 * apart * apart).exp()
}

/// Moves a relative's bands and corrects it: S keeps the shape that was measured.
fn bend(film: &Measured, entry: &Entry) -> Measured {
    let film = Measured { shift: SHIFT, ..*film };
    let correction =
        |[d, s, g, t1, t2, nm]: [f64; BENDING]| Correction::from([d, s, g, t1, t2, 0.0, 0.0, nm]);
    let best = minimise([0.0; BENDING], |at| misfits(correction(*at), &film, entry, false));
    Measured::from(&correction(best.at).apply(&film))
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
