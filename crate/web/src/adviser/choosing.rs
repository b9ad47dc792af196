//! The choice of a kit, step by step, so that a worker may tell how far it is and stop.

use serde::Serialize;
use washpath_core::{Avoid, Chooser, PaintNumber, Progress, Rules, Targets, View};
use wasm_bindgen::prelude::*;

use crate::border::{into, out};
use crate::from_page::{Fields, FromPage};
use crate::parts::paints_of;
use crate::shelf::shelf;

/// A choice under way.
#[wasm_bindgen]
pub struct Choosing(Chooser);

/// Rules as the page asks for them.
struct RulesAsked {
    must_have: Vec<PaintNumber>,
    must_not: Vec<PaintNumber>,
    no_cadmium: bool,
    no_cobalt: bool,
    no_caution: bool,
    /// Blue Wool grade; 0 for any.
    lightfast: f32,
    granulating: usize,
    transparent: usize,
    triad: bool,
}

impl FromPage for RulesAsked {
    fn from_page(value: &JsValue) -> Result<Self, String> {
        let fields = Fields::of(value)?;
        Ok(Self {
            must_have: fields.get("mustHave")?,
            must_not: fields.get("mustNot")?,
            no_cadmium: fields.get("noCadmium")?,
            no_cobalt: fields.get("noCobalt")?,
            no_caution: fields.get("noCaution")?,
            lightfast: fields.get("lightfast")?,
            granulating: fields.get("granulating")?,
            transparent: fields.get("transparent")?,
            triad: fields.get("triad")?,
        })
    }
}

#[derive(Serialize)]
struct ProgressReadout {
    done: f32,
    best: Option<f32>,
    finished: bool,
}

#[derive(Serialize)]
struct ChoiceReadout {
    reasons: Vec<ReasonReadout>,
    cost: f32,
    bound: f32,
    exact: bool,
}

#[derive(Serialize)]
struct ReasonReadout {
    paint: u16,
    /// Rise of the cost without it.
    lost: f32,
    required: bool,
}

impl Choosing {
    pub(crate) fn new(
        size: usize,
        candidates: &[u16],
        targets: &Targets,
        rules: JsValue,
        view: &View,
    ) -> Result<Self, JsError> {
        let asked: RulesAsked = into(rules)?;
        Ok(Self(Chooser::new(size, &paints_of(candidates), targets, &asked.rules(), &shelf(), view)?))
    }
}

#[wasm_bindgen]
impl Choosing {
    /// Works on for about so many tenths of a millisecond; answers `{done, best, finished}`.
    ///
    /// # Errors
    ///
    /// None in practice: the border's own.
    pub fn step(&mut self, units: usize) -> Result<JsValue, JsError> {
        let Progress { done, best, finished, .. } = self.0.step(units);
        out(&ProgressReadout { done, best, finished })
    }

    /// The kit: `{reasons, cost, bound, exact}`.
    ///
    /// # Errors
    ///
    /// Not finished; no kit keeps the rules.
    pub fn choice(&self) -> Result<JsValue, JsError> {
        let choice = self.0.choice()?;
        let reason = |reason: &washpath_core::Reason| ReasonReadout {
            paint: reason.paint.get(),
            lost: reason.lost,
            required: reason.required,
        };
        out(&ChoiceReadout {
            reasons: choice.reasons.iter().map(reason).collect(),
            cost: choice.cost,
            bound: choice.bound,
            exact: choice.exact,
        })
    }
}

impl RulesAsked {
    fn rules(self) -> Rules {
        let avoid = [
            (self.no_cadmium, Avoid::Cadmium),
            (self.no_cobalt, Avoid::Cobalt),
            (self.no_caution, Avoid::Caution),
        ];
        Rules {
            must_have: self.must_have,
            must_not: self.must_not,
            avoid: avoid.into_iter().filter(|(asked, _)| *asked).map(|(_, avoid)| avoid).collect(),
            lightfast: Some(self.lightfast).filter(|grade| *grade > 0.0),
            granulating: self.granulating,
            transparent: self.transparent,
            triad: self.triad,
        }
    }
}
