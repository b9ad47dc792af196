//! What neutralises and what shades an end, as the page lists it.

use serde::Serialize;
use washpath_core::{NeutralPartner, Paint, Ratio, ShadingPartner, neutral_partners, shading_partners};
use wasm_bindgen::prelude::*;

use crate::border::{into, out};
use crate::parts::{Parts, two_parts};
use crate::shelf::shelf;
use crate::sight::Sight;
use crate::studio::Studio;
use crate::swatch::Swatch;

/// Both lists, the best partners first.
#[derive(Serialize)]
struct Partners {
    neutral: Vec<Neutral>,
    shading: Vec<Shading>,
}

/// A paint that greys the end.
#[derive(Serialize)]
struct Neutral {
    paint: u16,
    /// Whole parts of the end and of the paint.
    #[serde(serialize_with = "two_parts")]
    parts: Ratio,
    /// Share of the paint.
    share: f32,
    swatch: Swatch,
    /// Hue family that the grey leans to.
    lean: &'static str,
    /// `warm` or `cool`.
    warmth: &'static str,
    /// L* of the same parts at masstone.
    dark: f32,
}

/// A paint that shades the end.
#[derive(Serialize)]
struct Shading {
    paint: u16,
    #[serde(serialize_with = "two_parts")]
    parts: Ratio,
    share: f32,
    swatch: Swatch,
    /// By how much L* falls.
    drop: f32,
    /// By how many degrees the hue turns, either way.
    drift: f32,
}

#[wasm_bindgen]
impl Studio {
    /// The paints of the shelf that neutralise or shade a recipe at a load: `{neutral, shading}`.
    ///
    /// # Errors
    ///
    /// No such paint.
    pub fn partners(&self, parts: JsValue, load: f32) -> Result<JsValue, JsError> {
        let parts: Parts = into(parts)?;
        let shelf = shelf();
        let recipe = parts.recipe()?;
        let film = recipe.film(&shelf)?;
        let is_other = |paint: &&Paint| recipe.parts().iter().all(|part| part.paint != paint.number);
        let others = || shelf.paints().iter().filter(is_other);
        let view = &self.sight.view;
        let neutral = neutral_partners(&film, load, view, others());
        let shading = shading_partners(&film, load, view, others());
        out(&Partners {
            neutral: neutral.iter().map(|partner| Neutral::new(partner, &self.sight)).collect(),
            shading: shading.iter().map(|partner| Shading::new(partner, &self.sight)).collect(),
        })
    }
}

impl Neutral {
    fn new(partner: &NeutralPartner<'_>, sight: &Sight) -> Self {
        let crossing = partner.crossing;
        Self {
            paint: partner.paint.number.get(),
            parts: partner.parts,
            share: crossing.share,
            swatch: sight.swatch(crossing.lab),
            lean: crossing.lean.name(),
            warmth: if crossing.lean.is_warm() { "warm" } else { "cool" },
            dark: partner.at_masstone.l,
        }
    }
}

impl Shading {
    fn new(partner: &ShadingPartner<'_>, sight: &Sight) -> Self {
        Self {
            paint: partner.paint.number.get(),
            parts: partner.parts,
            share: partner.share,
            swatch: sight.swatch(partner.lab),
            drop: partner.value_drop,
            drift: partner.hue_drift.abs(),
        }
    }
}
