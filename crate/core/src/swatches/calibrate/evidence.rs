//! What is known of paints before they learn, and the records they learn from.

use super::fit::within;
use super::swatch::Seen;
use crate::error::Error;
use crate::optics::film::Film;
use crate::optics::spectrum::Spectrum;

/// A paint as the shelf has it.
#[derive(Clone, Debug)]
pub struct Known {
    /// Its film.
    pub film: Film,
    /// How far it may differ, beside a measured paint of the shelf's 1; 0 where it is not to be corrected.
    pub doubt: f64,
}

/// A record of some of these paints.
#[derive(Clone, Debug)]
pub struct Evidence {
    /// Index of each paint and its volume, above 0.
    pub parts: Vec<(usize, f64)>,
    /// Masstones laid, above 0.
    pub load: f64,
    /// Standard deviation of ln load: 0 where it was measured out, a quarter by eye.
    pub load_doubt: f64,
    /// The paper's reflectance.
    pub paper: Spectrum<f64>,
    /// What it looked like.
    pub seen: Seen,
}

impl Evidence {
    /// Refuses what no painter records; `number` is its own among the records, counted from 1.
    pub(super) fn check(&self, number: usize, paints: usize) -> Result<(), Error> {
        let name = |what: &str| format!("record {number}: {what}");
        if self.parts.is_empty() || self.parts.iter().any(|(paint, _)| *paint >= paints) {
            return Err(Error::Value(name("no paint in it, or one that is not known")));
        }
        within(&name("volume"), self.parts.iter().map(|(_, volume)| volume), 1e-6, 1e6)?;
        within(&name("load"), &[self.load], 1e-3, 1e3)?;
        within(&name("doubt of the load"), &[self.load_doubt], 0.0, 2.0)?;
        within(&name("paper"), &self.paper, 0.0, 1.2)?;
        match &self.seen {
            Seen::Spectrum(r) => within(&name("reflectance"), r.as_ref(), 0.0, 1.2),
            Seen::Lab(c) => within(&name("L*, a* or b*"), &[c.l, c.a, c.b], -200.0, 200.0),
        }
    }

    /// 1 / variance of its ln load; nothing is sought where it is certain.
    pub(super) fn load_hold(&self) -> f64 {
        if self.load_doubt > 0.0 { self.load_doubt.powi(-2) } else { 0.0 }
    }
}
