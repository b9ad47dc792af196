//! How far predictions are off: measured paints tried without their spectra.

use washpath_core::{Tier, colour};

use crate::anchor::{Anchored, anchor};
use crate::appearance::Film;
use crate::check::Witnesses;
use crate::error::Error;
use crate::estimate::{Relative, estimate};
use crate::handbook::{Entry, handbook};
use crate::shelf::entry_of;
use crate::sources::{Source, sources};

/// What every tried paint is mixed with: one of each main kind.
const PARTNERS: [&str; 15] = [
    "pb29",
    "pb15-3",
    "pb28",
    "pg7",
    "pg18",
    "py3",
    "py35-medium",
    "py43",
    "po73",
    "pr254",
    "pv19-rose",
    "pr179",
    "pv23",
    "pbr7-burnt-sienna",
    "pw6",
];
/// Shares of the partner: 4:1, 1:1, 1:4.
const SHARES: [f64; 3] = [0.2, 0.5, 0.8];
/// Loads the mixes are seen at.
const LOADS: [f64; 2] = [1.0, 0.25];

/// One paint by two ways, and how far apart they are.
#[derive(Clone, Debug)]
pub struct Trial {
    /// Key on the shelf.
    pub key: String,
    /// The paint's tier on the shelf.
    pub tier: Tier,
    /// CIEDE2000 of the paint alone at loads 1, 1/2, 1/4, 1/8.
    pub washes: [f64; 4],
    /// Root mean square difference of reflectance at load 1.
    pub reflectance: f64,
    /// CIEDE2000 of mixes 4:1, 1:1 and 1:4 with 14 or 15 measured paints at loads 1 and 1/4.
    pub mixes: Vec<f64>,
    /// The same where the partner, too, is known by the second way only.
    pub both: Vec<f64>,
}

/// Every measured paint that is not white, estimated without any spectrum of its Colour Index name.
///
/// `paints` are those of [`crate::derive()`].
///
/// # Errors
///
/// As [`crate::files`].
pub fn leave_one_out(paints: &[Anchored]) -> Result<Vec<Trial>, Error> {
    let (entries, sources) = (handbook()?, sources()?);
    let known = known(paints, &sources, &entries)?;
    let partners = partners(paints);
    let mut guesses = Vec::new();
    for (paint, entry) in &known {
        let strangers: Vec<Relative<'_>> = known
            .iter()
            .filter(|(_, other)| other.pigment() != entry.pigment())
            .map(|(other, entry)| Relative { entry, film: &other.film })
            .collect();
        guesses.extend(estimate(&paint.key, entry, &strangers).map(|guess| (*paint, guess.film)));
    }
    Ok(guesses
        .iter()
        .map(|(paint, guess)| {
            let mut trial = trial(&paint.key, Tier::Estimated, guess, &paint.film, &partners);
            for (partner, other) in guesses.iter().filter(|(other, _)| other.key != paint.key) {
                if partners.iter().any(|known| known.key == partner.key) {
                    trial.both.extend(mixes([guess, other], [&paint.film, &partner.film]));
                }
            }
            trial
        })
        .collect())
}

/// Every measured paint that a second set holds, made from either set's spectrum.
///
/// The second is anchored to the same handbook colours, as on the shelf.
///
/// # Errors
///
/// As [`crate::files`].
pub fn second_spectra(paints: &[Anchored]) -> Result<Vec<Trial>, Error> {
    let (entries, sources) = (handbook()?, sources()?);
    let witnesses = Witnesses::read()?;
    let partners = partners(paints);
    let mut trials = Vec::new();
    for (paint, entry) in &known(paints, &sources, &entries)? {
        let on_card = paint.sample.starts_with("card");
        let agrees = !witnesses.agreeing(&paint.key, on_card, &paint.film).is_empty();
        let tier = if agrees { Tier::CrossChecked } else { Tier::Measured };
        for film in witnesses.films(&paint.key, on_card) {
            let second = anchor(&paint.key, "", &film, entry);
            trials.push(trial(&paint.key, tier, &second.film, &paint.film, &partners));
        }
    }
    Ok(trials)
}

/// Paints that stand on a spectrum and are not white.
fn known<'a>(
    paints: &'a [Anchored],
    sources: &[Source],
    entries: &'a [Entry],
) -> Result<Vec<(&'a Anchored, &'a Entry)>, Error> {
    let mut known = Vec::new();
    for (paint, source) in paints.iter().zip(sources) {
        let entry = entry_of(entries, source)?;
        if !paint.estimated && !entry.white() {
            known.push((paint, entry));
        }
    }
    Ok(known)
}

fn partners(paints: &[Anchored]) -> Vec<&Anchored> {
    paints.iter().filter(|paint| PARTNERS.contains(&paint.key.as_str())).collect()
}

fn trial(key: &str, tier: Tier, guess: &Film, truth: &Film, partners: &[&Anchored]) -> Trial {
    let others = partners.iter().filter(|partner| partner.key != key).map(|partner| &partner.film);
    let (a, b) = (guess.on_paper(1.0), truth.on_paper(1.0));
    let squares: f64 = a.iter().zip(&b).map(|(a, b)| (a - b) * (a - b)).sum();
    Trial {
        key: key.to_owned(),
        tier,
        washes: [1.0, 0.5, 0.25, 0.125].map(|load| apart(guess, truth, load)),
        reflectance: (squares / a.len() as f64).sqrt(),
        mixes: others.flat_map(|other| mixes([guess, other], [truth, other])).collect(),
        both: Vec::new(),
    }
}

/// How far the mixes of one pair are from those of another, at every share and load.
fn mixes(guess: [&Film; 2], truth: [&Film; 2]) -> impl Iterator<Item = f64> {
    let mixed = |[a, b]: [&Film; 2]| SHARES.map(|share| a.mixed(b, share));
    let pairs = mixed(guess).into_iter().zip(mixed(truth));
    pairs.flat_map(|(a, b)| LOADS.map(|load| apart(&a, &b, load)))
}

fn apart(a: &Film, b: &Film, load: f64) -> f64 {
    colour::ciede2000(a.lab(load), b.lab(load))
}
