//! What the page wants drawn.

use washpath_core::PaintNumber;
use wasm_bindgen::JsValue;

use crate::from_page::{Fields, FromPage};
use crate::pair::Pair;
use crate::parts::Parts;

/// One state of the wheel; lengths in CSS pixels, wheel points in CAM16-UCS.
#[derive(Clone, Debug)]
pub(crate) struct Scene {
    /// Width and height of the canvas.
    pub size: f64,
    /// Paints of the kit, drawn as dabs.
    pub kit: Vec<PaintNumber>,
    /// Kept mixes, drawn as drops.
    pub puddles: Vec<Drop>,
    /// Records of the path's paints.
    pub seen: Vec<SeenMark>,
    /// Whether the rest of the shelf is shown, as small dots.
    pub show_shelf: bool,
    /// The two ends and how they are laid.
    pub pair: Pair,
    /// Where on the wheel each end was asked for, if it was an empty wheel point.
    pub asked: [Option<[f32; 2]>; 2],
    /// Share of B in the mix, 0 to 1.
    pub share: f32,
    /// Load of the mix, 1 is masstone.
    pub load: f32,
    /// Whether the path is shown at every load.
    pub ribbon: bool,
    /// Paths kept to compare with.
    pub pins: Vec<Pin>,
    /// The paint under the keyboard's cursor; 0 where there is none.
    pub cursor: PaintNumber,
    /// The wheel point under the keyboard's cross, if it is out.
    pub cross: Option<[f32; 2]>,
    /// The colour to match, L*, a*, b*, if there is one.
    pub target: Option<[f32; 3]>,
    /// Inks of the drawing, as CSS colours.
    pub ink: Ink,
}

impl FromPage for Scene {
    fn from_page(value: &JsValue) -> Result<Self, String> {
        let fields = Fields::of(value)?;
        Ok(Self {
            size: fields.get("size")?,
            kit: fields.get("kit")?,
            puddles: fields.get("puddles")?,
            seen: fields.get("seen")?,
            show_shelf: fields.get("showShelf")?,
            pair: fields.get("pair")?,
            asked: fields.get("asked")?,
            share: fields.get("share")?,
            load: fields.get("load")?,
            ribbon: fields.get("ribbon")?,
            pins: fields.get("pins")?,
            cursor: fields.get("cursor")?,
            cross: fields.get("cross")?,
            target: fields.get("target")?,
            ink: fields.get("ink")?,
        })
    }
}

/// A kept mix.
#[derive(Clone, Debug)]
pub(crate) struct Drop {
    /// Its recipe.
    pub parts: Parts,
    /// The load it was kept at.
    pub load: f32,
}

impl FromPage for Drop {
    fn from_page(value: &JsValue) -> Result<Self, String> {
        let fields = Fields::of(value)?;
        Ok(Self { parts: fields.get("parts")?, load: fields.get("load")? })
    }
}

/// A recorded swatch.
#[derive(Clone, Debug)]
pub(crate) struct SeenMark {
    /// What was mixed, and the load it was laid at.
    pub laid: Drop,
    /// L*, a*, b* or 36 reflectances.
    pub seen: Vec<f32>,
}

impl FromPage for SeenMark {
    fn from_page(value: &JsValue) -> Result<Self, String> {
        Ok(Self { laid: Drop::from_page(value)?, seen: Fields::of(value)?.get("seen")? })
    }
}

/// A path kept to compare with.
#[derive(Clone, Debug)]
pub(crate) struct Pin {
    /// Its ends.
    pub pair: Pair,
    /// Its load.
    pub load: f32,
}

impl FromPage for Pin {
    fn from_page(value: &JsValue) -> Result<Self, String> {
        let fields = Fields::of(value)?;
        Ok(Self { pair: fields.get("pair")?, load: fields.get("load")? })
    }
}

/// Neutral colours of everything that is not paint.
#[derive(Clone, Debug)]
pub(crate) struct Ink {
    /// Ground of the wheel.
    pub paper: String,
    /// Hairlines.
    pub line: String,
    /// Quiet lines on the paper.
    pub quiet: String,
    /// The band round a path that shows how far it may be off.
    pub doubt: String,
    /// Names on the surround, outside the wheel.
    pub rim: String,
    /// Text and the path's edge.
    pub strong: String,
}

impl FromPage for Ink {
    fn from_page(value: &JsValue) -> Result<Self, String> {
        let fields = Fields::of(value)?;
        Ok(Self {
            paper: fields.get("paper")?,
            line: fields.get("line")?,
            quiet: fields.get("quiet")?,
            doubt: fields.get("doubt")?,
            rim: fields.get("rim")?,
            strong: fields.get("strong")?,
        })
    }
}

impl Scene {
    /// Whether a paint is drawn as a dab: it is packed, or alone an end of the path.
    pub(crate) fn shows(&self, number: PaintNumber) -> bool {
        self.kit.contains(&number) || self.is_end(number)
    }

    /// Whether a paint alone is an end of the path.
    pub(crate) fn is_end(&self, number: PaintNumber) -> bool {
        self.pair.ends.iter().any(|parts| matches!(parts.0[..], [part] if part.paint == number))
    }
}
