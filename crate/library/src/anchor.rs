//! Fits a measured film to the handbook's paint.

use washpath_core::{Lab, colour};

use crate::appearance::{Film, hue, hue_between};
use crate::correction::{Correction, Measured, NUMBERS};
use crate::handbook::Entry;
use crate::squares::minimise;

/// A paint of the shelf as derived.
#[derive(Clone, Debug)]
pub struct Anchored {
    /// Key on the shelf.
    pub key: String,
    /// Card or phantom it stands on, or the relatives it is estimated from.
    pub sample: String,
    /// Whether no spectrum of it was measured.
    pub estimated: bool,
    /// Masstone at load 1 on bright white paper.
    pub masstone: Lab<f64>,
    /// The handbook's masstone.
    pub wanted: Lab<f64>,
    /// CIEDE2000 between the two.
    pub difference: f64,
    /// Hue of the tint half as dark, degrees.
    pub tint_hue: f64,
    /// The handbook's, where it has one.
    pub wanted_tint_hue: Option<f64>,
    /// Strength, scattering, contrast, tilt and bend of K, tilt and bend of S, shift of K; see the crate's page.
    pub correction: [f64; NUMBERS],
    /// Share of the light that the masstone over black still sends back.
    pub contrast_ratio: f64,
    /// Colours at loads 1, 1/2, 1/4, 1/8, 1/16.
    pub washes: [Lab<f64>; 5],
    /// Sum of squares at the optimum.
    pub misfit: f64,
    pub(crate) film: Film,
}

/// Usual mean of a paint's four strongest K; its spread in ln.
const STRENGTH: f64 = 4.0;
const STRENGTH_SPREAD: f64 = 0.6;
/// Half the distance in nm between the edges of neighbouring shades of cadmium on the cards: twelve
/// from 487 to 637 nm.
const HALF_SHADE: f64 = 7.0;
/// Spread in ln of a pale paint's strength about its relatives'.
const PALE_SPREAD: f64 = 1.0;
/// Twice the spread of the handbook's hues over makers in degrees: a tint's depth is not stated.
const TINT: f64 = 5.0;
/// Trust in the rule that turns an opacity rating into a contrast ratio.
const OPACITY: f64 = 0.2;
/// Starts of the search in ln strength.
const STARTS: [f64; 3] = [-2.0, -1.0, 0.2];

/// The paint whose masstone, tint and opacity come nearest to the handbook's.
pub fn anchor(key: &str, sample: &str, film: &Measured, entry: &Entry) -> Anchored {
    let film = &Measured { shift: if entry.solid_solution() { HALF_SHADE } else { film.shift }, ..*film };
    let white = film.ln_k.iter().filter(|ln_k| **ln_k > 0.01_f64.ln()).count() < film.ln_k.len() / 2;
    let residuals = |at: &[f64; NUMBERS]| misfits(Correction::from(*at), film, entry, white);
    let best = STARTS
        .map(|strength| {
            let mut start = [0.0; NUMBERS];
            start[0] = if white { 0.0 } else { strength };
            minimise(start, residuals)
        })
        .into_iter()
        .reduce(|a, b| if b.sum < a.sum { b } else { a })
        .expect("the list of starts is not empty");
    let paint = Correction::from(best.at).apply(film);
    let masstone = paint.lab(1.0);
    Anchored {
        key: key.to_owned(),
        sample: sample.to_owned(),
        estimated: false,
        masstone,
        wanted: entry.masstone,
        difference: colour::ciede2000(masstone, entry.masstone),
        tint_hue: paint.tint().0,
        wanted_tint_hue: entry.tint_hue,
        correction: best.at,
        contrast_ratio: paint.contrast_ratio(),
        washes: [1.0, 0.5, 0.25, 0.125, 0.0625].map(|load| paint.lab(load)),
        misfit: best.sum,
        film: paint,
    }
}

/// Squares that the anchoring minimises.
pub const MISFITS: usize = 5 + NUMBERS;

/// What it minimises the squares of.
pub fn misfits(correction: Correction, film: &Measured, entry: &Entry, white: bool) -> [f64; MISFITS] {
    let paint = correction.apply(film);
    let [l, c, h] = masstone(paint.lab(1.0), entry);
    let strength = match (white, entry.pale()) {
        (true, _) => correction.strength / 0.05,
        (false, true) => correction.strength / PALE_SPREAD,
        (false, false) => (peak(&paint) / STRENGTH).ln() / STRENGTH_SPREAD,
    };
    let [s, g, t1, t2, u1, u2, nm] = correction.sizes(film);
    // Its scattering is the white's, which no relative has.
    let s = if entry.pale() { s / 6.0 } else { s };
    let opacity = if white { 0.0 } else { opacity(&paint, entry) };
    [l, c, h, tint(&paint, entry), opacity, strength, s, g, t1, t2, u1, u2, nm]
}

/// Parts of the masstone's distance, as CIEDE2000 weighs them at the anchor.
fn masstone(found: Lab<f64>, entry: &Entry) -> [f64; 3] {
    let want = entry.masstone;
    let step = if entry.measured { 0.7 } else { 1.5 };
    let chroma = want.a.hypot(want.b);
    let (sin, cos) = want.b.atan2(want.a).sin_cos();
    let (da, db) = (found.a - want.a, found.b - want.b);
    let off = want.l - 50.0;
    let sl = 1.0 + 0.015 * off * off / (20.0 + off * off).sqrt();
    [
        (found.l - want.l) / sl / step,
        (da * cos + db * sin) / (1.0 + 0.045 * chroma) / step,
        (db * cos - da * sin) / (1.0 + 0.015 * chroma) / step,
    ]
}

fn tint(paint: &Film, entry: &Entry) -> f64 {
    let Some(want) = entry.tint_hue else { return 0.0 };
    let (found, chroma) = paint.tint();
    // A grey tint's hue says little.
    hue_between(want, found) / TINT * (chroma / 10.0).min(1.0)
}

/// How far the contrast ratio is outside what the rating allows.
fn opacity(paint: &Film, entry: &Entry) -> f64 {
    let least = (1.0 - 0.3 * entry.transparency).max(0.0);
    let most = 1.4 - 0.3 * entry.transparency;
    let ratio = paint.contrast_ratio();
    ((ratio - least).min(0.0) + (ratio - most).max(0.0)) / OPACITY
}

/// Mean of the four strongest K.
fn peak(paint: &Film) -> f64 {
    let mut k = paint.k;
    k.sort_by(f64::total_cmp);
    k[k.len() - 4..].iter().sum::<f64>() / 4.0
}

impl Anchored {
    /// How much further than the handbook's it turns from masstone to tint, degrees.
    #[must_use]
    pub fn turns_too_far_by(&self) -> Option<f64> {
        let wanted = hue_between(hue(self.wanted), self.wanted_tint_hue?);
        let found = hue_between(hue(self.masstone), self.tint_hue);
        Some((found - wanted) * wanted.signum())
    }

    /// Whether masstone to tint turns the way the handbook's does.
    ///
    /// `None` where it gives no tint, or turns by less than `least` degrees.
    #[must_use]
    pub fn turns_as_wanted(&self, least: f64) -> Option<bool> {
        let wanted = hue_between(hue(self.wanted), self.wanted_tint_hue?);
        let found = hue_between(hue(self.masstone), self.tint_hue);
        (wanted.abs() >= least).then_some(wanted * found > 0.0)
    }
}
