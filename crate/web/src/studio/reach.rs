//! What a kit can mix, as the page asks for it.

use serde::Serialize;
use washpath_core::{Hue, Lab, LaidRecipe, Light, largest_shift};
use wasm_bindgen::prelude::*;

use crate::border::{into, out};
use crate::pair::Pair;
use crate::parts::Parts;
use crate::shelf::shelf;
use crate::studio::Studio;
use crate::swatch::Swatch;

/// The mix that comes nearest to a wheel point.
#[derive(Serialize)]
struct Nearest {
    parts: Parts,
    /// Distance from the point, in CAM16-UCS.
    off: f32,
}

/// The darkest mix of a hue family.
#[derive(Serialize)]
struct DarkReadout {
    name: &'static str,
    /// Nothing where the kit has none.
    swatch: Option<Swatch>,
    parts: Parts,
}

/// A recipe that matches a mix in daylight and parts from it in another light.
#[derive(Serialize)]
struct ShiftReadout {
    light: &'static str,
    parts: Parts,
    load: f32,
    /// CIEDE2000 in that light.
    there: f32,
}

/// Distance in CIELAB beyond which no two paints come within the CIEDE2000 that is asked for: the
/// formula shortens differences of the most chromatic colours to a fifth at most.
const FAR: f32 = 5.0 * washpath_core::SAME;

#[wasm_bindgen]
impl Studio {
    /// Among all mixes of paints that match a mix of a pair in daylight the one that parts from it most in
    /// another light; nothing where none does.
    ///
    /// # Errors
    ///
    /// An end that is not chosen or not known.
    pub fn shift(
        &mut self,
        pair: JsValue,
        share: f32,
        load: f32,
        paints: &[u16],
    ) -> Result<JsValue, JsError> {
        let pair: Pair = into(pair)?;
        let Some(ready) = pair.ready()? else { return Ok(JsValue::UNDEFINED) };
        let mix = ready.path(&self.daylight, load).reflectance(share);
        let lab = self.daylight.colour_of(&mix);
        let near = |other: Lab| (lab.l - other.l).hypot(lab.a - other.a).hypot(lab.b - other.b) <= FAR;
        let shelf = shelf();
        let mut candidates = Vec::new();
        // In daylight the reach at hand is the one looked for.
        let in_daylight = self.sight.view.light() == Light::D65;
        let last = if in_daylight { &mut self.reach } else { &mut self.daylight_reach };
        for other in last.of(paints, &self.daylight)?.mixes().filter(|mix| near(mix.lab())) {
            let recipe = other.recipe();
            let reflectance = self.daylight.reflectance(&recipe.film(&shelf)?, other.load());
            candidates.push(LaidRecipe { recipe, load: other.load(), reflectance });
        }
        out(&largest_shift(&mix, candidates, &Light::ALL).map(|shift| ShiftReadout {
            light: shift.light.name(),
            parts: Parts::of(&shift.recipe),
            load: shift.load,
            there: shift.there,
        }))
    }

    /// Outline of all that paints can mix, in CAM16-UCS x, y, x, y, ...
    ///
    /// # Errors
    ///
    /// No such paint.
    pub fn outline(&mut self, paints: &[u16]) -> Result<Vec<f32>, JsError> {
        let reach = self.reach.of(paints, &self.sight.view)?;
        Ok(reach.outline().corners().iter().flat_map(|corner| [corner.x, corner.y]).collect())
    }

    /// The recipe of paints that comes nearest to a wheel point at a load; nothing for no paints.
    ///
    /// # Errors
    ///
    /// No such paint.
    pub fn nearest_recipe(&mut self, paints: &[u16], x: f32, y: f32, load: f32) -> Result<JsValue, JsError> {
        let found = self.reach.of(paints, &self.sight.view)?.nearest_on_wheel(x, y, Some(load));
        out(&found.map(|found| Nearest { parts: Parts::of(&found.recipe), off: found.distance }))
    }

    /// The darkest mix of each hue family, and of the greys last.
    ///
    /// # Errors
    ///
    /// No such paint.
    pub fn darks(&mut self, paints: &[u16]) -> Result<JsValue, JsError> {
        let darks = self.reach.of(paints, &self.sight.view)?.darks();
        let readout = darks.into_iter().map(|dark| DarkReadout {
            name: dark.hue.map_or("grey", Hue::name),
            parts: dark.mix.as_ref().map(|mix| Parts::of(&mix.recipe)).unwrap_or_default(),
            swatch: dark.mix.map(|mix| self.sight.swatch(mix.lab)),
        });
        out(&readout.collect::<Vec<_>>())
    }
}
