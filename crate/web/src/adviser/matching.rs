//! Recipes for a colour, colours of a picture, and what of some targets is reached.

use serde::Serialize;
use washpath_core::{Lab, Match, Picture, Reach, Shortfall, cluster, find_matches, study};
use wasm_bindgen::prelude::*;

use crate::adviser::{Adviser, read_targets};
use crate::border::out;
use crate::parts::Parts;
use crate::shelf::shelf;
use crate::swatch::{Swatch, lab_of};

/// Recipes for a colour, and what keeps the first from being exact.
#[derive(Serialize)]
struct Answer {
    matches: Vec<MatchReadout>,
    shortfall: Option<&'static str>,
    /// A lamp under which the first recipe parts from the colour.
    light: Option<&'static str>,
}

#[derive(Serialize)]
struct MatchReadout {
    parts: Parts,
    load: f32,
    swatch: Swatch,
    /// CIEDE2000 to the colour.
    error: f32,
    /// Median CIEDE2000 between prediction and real paint.
    doubt: f32,
}

#[derive(Serialize)]
struct Colour {
    lab: [f32; 3],
    weight: f32,
}

#[derive(Serialize)]
struct StudyReadout {
    #[serde(with = "serde_bytes")]
    colours: Vec<u8>,
    #[serde(with = "serde_bytes")]
    greys: Vec<u8>,
}

#[wasm_bindgen]
impl Adviser {
    /// Up to ten recipes of paints for a colour, L*, a*, b*: `{matches, shortfall, light}`.
    ///
    /// # Errors
    ///
    /// No such paint; a colour that is none.
    pub fn matches(&mut self, paints: &[u16], target: &[f32]) -> Result<JsValue, JsError> {
        let target = lab_of(target)?;
        let reach = self.reach.of(paints, &self.sight.view)?;
        let found = find_matches(target, reach, &shelf())?;
        let first = found.first();
        out(&Answer {
            shortfall: first.and_then(|best| Shortfall::between(target, best)).map(Shortfall::words),
            light: first.and_then(|best| best.parts_in).map(|parting| parting.light.name()),
            matches: found.iter().map(|found| self.readout_of(found)).collect(),
        })
    }

    /// For each target the recipe that comes nearest.
    ///
    /// # Errors
    ///
    /// No paint or no such paint; targets that are none.
    pub fn nearest(&mut self, paints: &[u16], targets: JsValue) -> Result<JsValue, JsError> {
        let targets = read_targets(targets)?;
        let reach = self.reach.of(paints, &self.sight.view)?;
        let best = |lab: &Lab| -> Result<Match, JsError> {
            let found = find_matches(*lab, reach, &shelf())?;
            found.into_iter().next().ok_or_else(|| JsError::new("no paint to mix"))
        };
        let found = targets.colours().iter().map(best).collect::<Result<Vec<_>, _>>()?;
        out(&found.iter().map(|found| self.readout_of(found)).collect::<Vec<_>>())
    }

    /// A picture repainted with the mixes of paints, and in greys: `{colours, greys}`, RGBA bytes each.
    ///
    /// # Errors
    ///
    /// No paint or no such paint; bytes that are no picture.
    pub fn study(
        &mut self,
        paints: &[u16],
        rgba: &[u8],
        width: usize,
        values: usize,
    ) -> Result<JsValue, JsError> {
        let reach: &Reach = self.reach.of(paints, &self.sight.view)?;
        let study = study(Picture::new(rgba, width)?, reach, values)?;
        out(&StudyReadout { colours: study.colours, greys: study.greys })
    }

    fn readout_of(&self, found: &Match) -> MatchReadout {
        MatchReadout {
            parts: Parts::of(&found.recipe),
            load: found.load,
            swatch: self.sight.swatch(found.lab),
            error: found.error,
            doubt: found.doubt,
        }
    }
}

/// Up to so many colours of a picture, with weights: `[{lab, weight}, ...]`.
///
/// # Errors
///
/// Bytes that are no picture; all transparent; a number that is not 8 to 24.
#[wasm_bindgen]
pub fn colours_of(rgba: &[u8], width: usize, count: usize) -> Result<JsValue, JsError> {
    let found = cluster(Picture::new(rgba, width)?, count)?;
    let colour = |(lab, weight): &(Lab, f32)| Colour { lab: [lab.l, lab.a, lab.b], weight: *weight };
    out(&found.iter().map(colour).collect::<Vec<_>>())
}
