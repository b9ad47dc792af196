//! The painter's own paints on their way between the page and the core.

use serde::Serialize;
use washpath_core::calibrate::Seen;
use washpath_core::{Lab, Load, Origin, OwnPaint, Patch, Wash, link};
use wasm_bindgen::prelude::{JsError, JsValue};

use crate::from_page::{Fields, FromPage};
use crate::paper::PaperChoice;
use crate::parts::Parts;

/// An own paint: a mixture of `parts`, or swatches on a `paper`.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub(crate) struct OwnReadout {
    /// Its lasting id; one that is not given follows from all it is.
    id: Option<String>,
    name: String,
    code: String,
    caution: String,
    /// Transparency, staining, granulation, lightfastness.
    ratings: [Option<f32>; 4],
    /// The mixture it is; empty where it is one of swatches.
    parts: Parts,
    paper: PaperChoice,
    /// L*, a*, b* or 36 reflectances; empty in a mixture.
    masstone: Vec<f32>,
    /// The same of a wash; empty where there is none.
    wash: Vec<f32>,
    wash_load: f32,
}

impl FromPage for OwnReadout {
    fn from_page(value: &JsValue) -> Result<Self, String> {
        let fields = Fields::of(value)?;
        Ok(Self {
            id: fields.get("id")?,
            name: fields.get("name")?,
            code: fields.get("code")?,
            caution: fields.get("caution")?,
            ratings: fields.get("ratings")?,
            parts: fields.get("parts")?,
            paper: fields.get("paper")?,
            masstone: fields.get("masstone")?,
            wash: fields.get("wash")?,
            wash_load: fields.get("washLoad")?,
        })
    }
}

impl OwnReadout {
    pub(crate) fn paint(&self) -> Result<OwnPaint, JsError> {
        let origin = if self.parts.is_empty() {
            let wash = match self.wash[..] {
                [] => None,
                _ => {
                    // Masstone is refused in the core's words, so it stands for what is no load.
                    let load = Load::nearest(self.wash_load).unwrap_or(Load::MASSTONE);
                    Some(Wash { load, patch: Patch::new(&seen(&self.wash)?)? })
                }
            };
            let masstone = Patch::new(&seen(&self.masstone)?)?;
            Origin::Swatches { paper: self.paper.kit_paper()?, masstone, wash }
        } else {
            Origin::Mixture(self.parts.recipe()?)
        };
        let ratings = self.ratings.map(|rating| rating.map(|rating| rating.round() as u8));
        let paint = OwnPaint::new(&self.name, origin)?;
        let mut paint = paint.with_code(&self.code)?.with_caution(&self.caution)?.with_ratings(ratings)?;
        paint.clean();
        Ok(match &self.id {
            Some(id) => paint.with_id(id.parse()?),
            None => paint,
        })
    }
}

impl From<&OwnPaint> for OwnReadout {
    fn from(paint: &OwnPaint) -> Self {
        let mut own = Self {
            id: Some(link::id_of(paint).to_string()),
            name: paint.name().to_owned(),
            code: paint.code().to_owned(),
            caution: paint.caution().to_owned(),
            ratings: paint.ratings().map(|rating| rating.map(f32::from)),
            parts: Parts::default(),
            paper: PaperChoice::default(),
            masstone: Vec::new(),
            wash: Vec::new(),
            wash_load: 0.25,
        };
        match paint.origin() {
            Origin::Mixture(recipe) => own.parts = Parts::of(recipe),
            Origin::Swatches { paper, masstone, wash } => {
                own.paper = (*paper).into();
                own.masstone = numbers_of(&masstone.seen());
                if let Some(wash) = wash {
                    own.wash = numbers_of(&wash.patch.seen());
                    own.wash_load = wash.load.value();
                }
            }
        }
        own
    }
}

/// What was seen, from L*, a*, b* or a reflectance a band.
pub(crate) fn seen(numbers: &[f32]) -> Result<Seen, JsError> {
    let wide: Vec<f64> = numbers.iter().map(|value| f64::from(*value)).collect();
    if let [l, a, b] = wide[..] {
        return Ok(Seen::Lab(Lab::new(l, a, b)));
    }
    let count = wide.len();
    let spectrum = wide.try_into().map_err(|_| {
        JsError::new(&format!("a swatch is a colour or 36 reflectances, not {count} numbers"))
    })?;
    Ok(Seen::Spectrum(Box::new(spectrum)))
}

/// The inverse of [`seen`].
pub(crate) fn numbers_of(seen: &Seen) -> Vec<f32> {
    match seen {
        Seen::Lab(lab) => [lab.l, lab.a, lab.b].map(|value| value as f32).to_vec(),
        Seen::Spectrum(reflectance) => reflectance.iter().map(|value| *value as f32).collect(),
    }
}

/// The colour of what was seen.
pub(crate) fn lab_seen(numbers: &[f32]) -> Result<Lab, JsError> {
    let lab = seen(numbers)?.lab();
    Ok(Lab::new(lab.l as f32, lab.a as f32, lab.b as f32))
}
