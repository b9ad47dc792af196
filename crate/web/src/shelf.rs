//! The shelf at hand: the built-in paints, the painter's own, and what records taught of both.

use std::cell::RefCell;
use std::rc::Rc;

use washpath_core::{Learned, OwnPaint, PaintNumber, Shelf};
use wasm_bindgen::prelude::*;

use crate::border::{into, out};
use crate::from_page::{Fields, FromPage};
use crate::own::OwnReadout;
use crate::paint::PaintReadout;

thread_local! {
    static AT_HAND: RefCell<AtHand> = RefCell::new(AtHand::default());
}

/// Before and after learning.
#[derive(Clone)]
struct AtHand {
    taught: Rc<Shelf>,
    untaught: Rc<Shelf>,
}

impl Default for AtHand {
    fn default() -> Self {
        let shelf = Rc::new(Shelf::built_in().clone());
        Self { taught: Rc::clone(&shelf), untaught: shelf }
    }
}

/// The shelf that everything is predicted with.
pub(crate) fn shelf() -> Rc<Shelf> {
    AT_HAND.with_borrow(|at_hand| Rc::clone(&at_hand.taught))
}

/// The same before anything was learned.
pub(crate) fn untaught() -> Rc<Shelf> {
    AT_HAND.with_borrow(|at_hand| Rc::clone(&at_hand.untaught))
}

/// What was learned of a paint, as the page keeps it: numbers are plain.
struct LearnedReadout {
    number: PaintNumber,
    strength: f32,
    left: [f32; 2],
    k: Vec<f32>,
    s: Vec<f32>,
}

impl FromPage for LearnedReadout {
    fn from_page(value: &JsValue) -> Result<Self, String> {
        let fields = Fields::of(value)?;
        Ok(Self {
            number: fields.get("number")?,
            strength: fields.get("strength")?,
            left: fields.get("left")?,
            k: fields.get("k")?,
            s: fields.get("s")?,
        })
    }
}

/// Puts own paints, `[[number, paint], ...]`, and what was learned on the shelf; answers every paint on it.
///
/// What was learned of a paint that is not there is left out.
///
/// # Errors
///
/// A paint that is none, in words for the painter; the shelf is then as it was.
#[wasm_bindgen]
pub fn set_shelf(own: JsValue, learned: JsValue) -> Result<JsValue, JsError> {
    let own: Vec<(PaintNumber, OwnReadout)> = into(own)?;
    let own: Vec<(PaintNumber, OwnPaint)> =
        own.iter().map(|(number, paint)| Ok((*number, paint.paint()?))).collect::<Result<_, JsError>>()?;
    let untaught = Rc::new(Shelf::built_in().with(&own, &[])?);
    let learned: Vec<LearnedReadout> = into(learned)?;
    let learned =
        learned.into_iter().filter(|paint| untaught.get(paint.number).is_ok()).map(Learned::try_from);
    let learned: Vec<Learned> = learned.collect::<Result<_, _>>()?;
    let taught =
        if learned.is_empty() { Rc::clone(&untaught) } else { Rc::new(untaught.with(&[], &learned)?) };
    AT_HAND.set(AtHand { taught, untaught });
    paints()
}

impl TryFrom<LearnedReadout> for Learned {
    type Error = JsError;

    fn try_from(paint: LearnedReadout) -> Result<Self, JsError> {
        let wrong = || JsError::new("what was learned of a paint holds numbers no paint has");
        let curve = |values: Vec<f32>| -> Result<washpath_core::Spectrum, JsError> {
            let whole = values.iter().all(|value| value.is_finite() && *value >= 0.0);
            if whole { values.try_into().map_err(|_| wrong()) } else { Err(wrong()) }
        };
        if !(paint.strength.is_finite() && paint.strength > 0.0) {
            return Err(wrong());
        }
        let film = washpath_core::Film { k: curve(paint.k)?, s: curve(paint.s)?, strength: paint.strength };
        Ok(Self { number: paint.number, film, left: paint.left })
    }
}

/// Every paint of the shelf at hand, without its spectrum.
///
/// # Errors
///
/// None in practice: the border's own.
#[wasm_bindgen]
pub fn paints() -> Result<JsValue, JsError> {
    out(&shelf().paints().iter().map(PaintReadout::from).collect::<Vec<_>>())
}

/// How many paints the built-in shelf has.
#[wasm_bindgen]
#[must_use]
pub fn built_in_count() -> usize {
    Shelf::built_in().paints().len()
}
