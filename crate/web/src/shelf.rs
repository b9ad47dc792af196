//! The shelf at hand: the built-in paints, the painter's own, and what records taught of both.

use std::cell::RefCell;
use std::rc::Rc;

use serde::Serialize;
use washpath_core::{DoubtLeft, Film, Learned, Shelf, Spectrum};
use wasm_bindgen::prelude::*;

use crate::border::{into, out};
use crate::from_page::{Fields, FromPage};
use crate::own_paint::OwnReadout;
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
    number: u16,
    film: FilmReadout,
    left: [f32; 2],
}

impl FromPage for LearnedReadout {
    fn from_page(value: &JsValue) -> Result<Self, String> {
        let fields = Fields::of(value)?;
        let film = FilmReadout::from_page(value)?;
        Ok(Self { number: fields.get("number")?, film, left: fields.get("left")? })
    }
}

/// A film as the page keeps it.
#[derive(Serialize)]
pub(crate) struct FilmReadout {
    k: Vec<f32>,
    s: Vec<f32>,
    strength: f32,
}

impl FromPage for FilmReadout {
    fn from_page(value: &JsValue) -> Result<Self, String> {
        let fields = Fields::of(value)?;
        Ok(Self { k: fields.get("k")?, s: fields.get("s")?, strength: fields.get("strength")? })
    }
}

impl From<Film> for FilmReadout {
    fn from(film: Film) -> Self {
        Self { k: film.k.to_vec(), s: film.s.to_vec(), strength: film.strength }
    }
}

impl TryFrom<FilmReadout> for Film {
    type Error = JsError;

    fn try_from(film: FilmReadout) -> Result<Self, JsError> {
        let wrong = || JsError::new("the film of a paint holds numbers no paint has");
        let curve = |values: Vec<f32>| -> Result<Spectrum, JsError> {
            let whole = values.iter().all(|value| value.is_finite() && *value >= 0.0);
            if whole { values.try_into().map_err(|_| wrong()) } else { Err(wrong()) }
        };
        if !(film.strength.is_finite() && film.strength > 0.0) {
            return Err(wrong());
        }
        Ok(Self { k: curve(film.k)?, s: curve(film.s)?, strength: film.strength })
    }
}

/// Puts own paints, `[[number, paint, film], ...]`, and what was learned on the shelf; answers every paint on it.
///
/// `film` is what `films_of_swatches` answers of the paint; a mixture needs none.
/// What was learned of a paint that is not there is left out.
///
/// # Errors
///
/// A paint that is none, in words for the painter; the shelf is then as it was.
#[wasm_bindgen]
pub fn set_shelf(own: JsValue, learned: JsValue) -> Result<JsValue, JsError> {
    let own: Vec<(u16, OwnReadout, Option<FilmReadout>)> = into(own)?;
    let paint = |(number, paint, film): (u16, OwnReadout, Option<FilmReadout>)| {
        let film = film.map(Film::try_from).transpose()?;
        Ok(paint.paint()?.paint(number.into(), film.as_ref(), Shelf::built_in())?)
    };
    let own = own.into_iter().map(paint).collect::<Result<_, JsError>>()?;
    let untaught = Rc::new(Shelf::built_in().with(own, &[])?);
    let learned: Vec<LearnedReadout> = into(learned)?;
    let learned =
        learned.into_iter().filter(|paint| untaught.get(paint.number.into()).is_ok()).map(Learned::try_from);
    let learned: Vec<Learned> = learned.collect::<Result<_, _>>()?;
    let taught =
        if learned.is_empty() { Rc::clone(&untaught) } else { Rc::new(untaught.with(Vec::new(), &learned)?) };
    AT_HAND.set(AtHand { taught, untaught });
    paints()
}

impl TryFrom<LearnedReadout> for Learned {
    type Error = JsError;

    fn try_from(paint: LearnedReadout) -> Result<Self, JsError> {
        let [alone, mixed] = paint.left;
        Ok(Self {
            number: paint.number.into(),
            film: paint.film.try_into()?,
            doubt_left: DoubtLeft { alone, mixed },
        })
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
