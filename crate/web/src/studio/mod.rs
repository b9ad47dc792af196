//! What the page calls: a paper in a light, with every paint placed in it.

mod codes;
mod dab;
mod drawing;
pub mod geometry;
mod hits;
mod kits;
mod labels;
mod marks;
mod mixes;
mod names;
mod partners;
mod pen;
mod picking;
mod reach;
mod reading;
mod readout;
mod relief;
mod scene;
mod shares;
mod stand;
mod strand;
mod wash;
mod wheel;

pub use kits::{decode_kit, encode_kit};

use std::cell::{OnceCell, RefCell};
use std::rc::Rc;

use washpath_core::{Display, Error, Film, Lab, Light, OwnPaper, Shelf, View, colour, in_order, notation};
use wasm_bindgen::prelude::*;

use crate::border::{into, out};
use crate::last_reach::LastReach;
use crate::pair::{Pair, Ready};
use crate::paper::PaperChoice;
use crate::parts::Parts;
use crate::shelf::shelf;
use crate::sight::Sight;
use crate::studio::geometry::RIM;
use crate::studio::relief::Relief;
use crate::studio::scene::{Drop, Scene};
use crate::studio::stand::Stand;
use crate::studio::strand::LastStrand;
use crate::swatch::{lab_of, numbers};

/// One paper in one light, and every paint in it.
#[wasm_bindgen]
pub struct Studio {
    pub(crate) sight: Sight,
    shelf: Rc<Shelf>,
    /// Of each paint of the shelf, once it is looked at: most stay unseen.
    stands: Vec<OnceCell<Stand>>,
    pub(crate) reach: LastReach,
    /// The same paper in daylight, to which other lights are compared.
    pub(crate) daylight: View,
    pub(crate) daylight_reach: LastReach,
    relief: RefCell<Relief>,
    last_strand: RefCell<LastStrand>,
}

#[wasm_bindgen]
impl Studio {
    /// A studio for a paper, a light by its number (out of range is daylight), a display, wide or not, and paint that
    /// has dried or is still wet.
    ///
    /// A paper is `{stock, own}`: the number of a stock, and the L*, a*, b* of
    /// the painter's own paper, which goes first where there is one.
    ///
    /// # Errors
    ///
    /// An own paper that is none.
    #[wasm_bindgen(constructor)]
    pub fn new(paper: JsValue, light: usize, wide: bool, wet: bool) -> Result<Self, JsError> {
        let paper: PaperChoice = into(paper)?;
        let light = Light::ALL.get(light).copied().unwrap_or_default();
        let display = if wide { Display::P3 } else { Display::Srgb };
        let paper = paper.paper()?;
        let sight = Sight { view: View::new(&paper, light).wet(wet), display };
        let shelf = shelf();
        Ok(Self {
            sight,
            stands: shelf.paints().iter().map(|_| OnceCell::new()).collect(),
            shelf,
            reach: LastReach::default(),
            daylight: View::new(&paper, Light::D65),
            daylight_reach: LastReach::default(),
            relief: RefCell::default(),
            last_strand: RefCell::default(),
        })
    }

    /// Name of the canvas colour space that holds what this studio shows.
    #[must_use]
    pub fn colour_space(&self) -> String {
        match self.sight.display {
            Display::Srgb => "srgb".into(),
            Display::P3 => "display-p3".into(),
        }
    }

    /// CSS colour of the bare paper.
    #[must_use]
    pub fn paper(&self) -> String {
        self.sight.css(self.sight.view.colour(&Film::CLEAR, 0.0))
    }

    /// The bare paper as `#rrggbb`.
    #[must_use]
    pub fn paper_hex(&self) -> String {
        notation::hex(self.daylight.colour(&Film::CLEAR, 0.0))
    }

    /// A colour, L*, a*, b* in daylight, as it is shown.
    ///
    /// # Errors
    ///
    /// What is no colour.
    pub fn colour(&self, lab: &[f32]) -> Result<JsValue, JsError> {
        out(&self.sight.swatch(lab_of(lab)?))
    }

    /// A colour's L*, a*, b* turned to the hue and chroma of a point of the wheel; its L* stays.
    ///
    /// # Errors
    ///
    /// What is no colour.
    pub fn lab_at(&self, lightness: f32, x: f32, y: f32) -> Result<Vec<f32>, JsError> {
        Ok(numbers(colour::at_wheel_point(lightness, x, y)))
    }

    /// A recipe at a load.
    ///
    /// # Errors
    ///
    /// No such paint.
    pub fn swatch(&self, parts: JsValue, load: f32) -> Result<JsValue, JsError> {
        out(&self.sight.swatch(self.sight.view.colour(&film(parts)?, load)))
    }

    /// The load at which a recipe is most chromatic.
    ///
    /// # Errors
    ///
    /// No such paint.
    pub fn strongest_load(&self, parts: JsValue) -> Result<f32, JsError> {
        Ok(self.sight.view.strongest_load(&film(parts)?))
    }

    /// Radius of the wheel in CAM16-UCS.
    #[must_use]
    pub fn rim(&self) -> f32 {
        RIM
    }

    /// Paints of the scene's kit in order round the wheel, from red on.
    ///
    /// # Errors
    ///
    /// A scene that is not one.
    pub fn round_the_wheel(&self, scene: JsValue) -> Result<Vec<u16>, JsError> {
        let scene: Scene = into(scene)?;
        let stands = in_order(self.dabs(&scene), |stand: &&Stand| stand.point.angle());
        Ok(stands.iter().map(|stand| stand.paint.number.get()).collect())
    }
}

impl Studio {
    /// The paints a scene draws: dabs, and dots of the shelf where it shows that.
    fn drawn(&self, scene: &Scene) -> Vec<&Stand> {
        self.stands_of(scene, scene.show_shelf)
    }

    /// The paints a scene draws as dabs.
    fn dabs(&self, scene: &Scene) -> Vec<&Stand> {
        self.stands_of(scene, false)
    }

    fn stands_of(&self, scene: &Scene, all: bool) -> Vec<&Stand> {
        let wanted = |number| all || scene.shows(number);
        let paints = self.shelf.paints().iter().zip(&self.stands).filter(|(paint, _)| wanted(paint.number));
        paints.map(|(paint, stand)| stand.get_or_init(|| Stand::new(paint, &self.sight))).collect()
    }

    fn drop_colour(&self, drop: &Drop) -> Result<Lab, Error> {
        Ok(self.sight.view.colour(&drop.parts.recipe()?.film(&shelf())?, drop.load))
    }
}

/// A colour as typed, as L*, a*, b*, if it can be a paper's.
///
/// # Errors
///
/// What is wrong with the text or with such a paper, in words for the painter.
#[wasm_bindgen]
pub fn read_paper(text: &str) -> Result<Vec<f32>, JsError> {
    Ok(numbers(OwnPaper::new(notation::parse(text)?)?.colour()))
}

fn film(parts: JsValue) -> Result<Film, JsError> {
    Ok(into::<Parts>(parts)?.recipe()?.film(&shelf())?)
}

fn ready(pair: JsValue) -> Result<Ready, JsError> {
    let pair: Pair = into(pair)?;
    pair.ready()?.ok_or_else(|| JsError::new("a path needs two ends"))
}
