//! Matches: recipes for a colour that was seen.
//!
//! For each set of one to three paints the ratio and load that come nearest are
//! found as continuous numbers, and then rounded to parts and loads that a brush
//! measures.

use crate::colour::difference::EQUALLY_NEAR;
use crate::colour::{Lab, delta_e};
use crate::error::Error;
use crate::matching::optimum::optima;
use crate::matching::rounding::{Rounded, round};
use crate::mixing::part::Part;
use crate::mixing::recipe::Recipe;
use crate::mixing::shift::{LaidRecipe, largest_shift};
use crate::numeric::sort::in_order;
use crate::optics::observer::Light;
use crate::optics::smooth::reflectance_of;
use crate::optics::spectrum::{Spectrum, cast};
use crate::paint::shelf::Shelf;
use crate::reach::Reach;

/// Most recipes that are told for a colour.
pub const MOST_MATCHES: usize = 10;

/// CIEDE2000 by which a recipe may be farther off than the nearest to be told beside it.
pub const FARTHER: f32 = 5.0;

/// Most paints of a simple recipe, which a painter takes before a nearer one of more paints.
const SIMPLE: usize = 2;

/// Simple recipes that are told where so many come near enough, though others come nearer.
const SIMPLE_TOLD: usize = 3;

/// A recipe for a colour.
#[derive(Clone, Debug, PartialEq)]
pub struct Match {
    /// One to three paints, up to eight parts of each or one part of a trace.
    pub recipe: Recipe,
    /// How much of it lies on the paper: 1/32 to 1 by quarter octaves; 1 is masstone.
    pub load: f32,
    /// Its colour.
    pub lab: Lab,
    /// CIEDE2000 to the colour asked for.
    pub error: f32,
    /// Median CIEDE2000 to expect between its colour and real paint, as [`Doubt::error`](crate::Doubt::error).
    pub doubt: f32,
    /// The lamp under which it parts most from the colour it matches in daylight.
    pub parts_in: Option<Parting>,
}

/// How far a recipe parts from the colour it matches in daylight.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Parting {
    /// Under this lamp.
    pub light: Light,
    /// CIEDE2000 there.
    pub error: f32,
}

/// Up to ten recipes of a reach's paints for a colour in its view's light.
///
/// In order of their error by steps of half a CIEDE2000, then of fewer paints,
/// then of fewer parts. One recipe for each set of paints; none with a paint
/// more than another that is told and as near; none farther off than the
/// nearest by more than CIEDE2000 5. Three of them have one or two paints, where
/// so many come that near. Empty for no paints. Of a reach of many paints
/// those sets alone are looked at whose mixes lie nearest, some six hundred;
/// 15 paints have no more.
///
/// Of the colour no more is known than what the eye saw. Whether a recipe
/// matches under a lamp as well is told for the smoothest reflectance of that
/// colour, as that of a plain wall or paper; the view's light must
/// be daylight, D65.
///
/// # Errors
///
/// [`Error::Refused`] for a colour that is not finite, [`Error::UnknownPaint`] for
/// a paint that `shelf` lacks.
///
/// ```
/// use washpath_core::{Lab, Light, PaintNumber, Reach, Shelf, Stock, View, find_matches};
/// let (shelf, view) = (Shelf::built_in(), View::new(&Stock::BrightWhite.paper(), Light::D65));
/// let reach = Reach::new(&[1, 3, 72].map(PaintNumber::new), shelf, &view)?;
/// let matches = find_matches(Lab::new(45.0, 2.0, -20.0), &reach, shelf)?;
/// assert!(matches[0].error < matches[0].doubt, "{:?}", matches[0]);
/// # Ok::<(), washpath_core::Error>(())
/// ```
pub fn find_matches(target: Lab, reach: &Reach, shelf: &Shelf) -> Result<Vec<Match>, Error> {
    if ![target.l, target.a, target.b].iter().all(|value| value.is_finite()) {
        return Err(Error::NotFinite("the colour to match"));
    }
    let curve = (reach.view().light() == Light::D65).then(|| curve(target)).flatten();
    told(target, reach)
        .iter()
        .map(|rounded| Match::new(rounded, target, curve.as_ref(), reach, shelf))
        .collect()
}

/// Lights a painting is looked at in besides daylight.
const LAMPS: [Light; 3] = [Light::A, Light::Led, Light::Fluorescent];

impl Match {
    fn new(
        rounded: &Rounded,
        target: Lab,
        curve: Option<&Spectrum>,
        reach: &Reach,
        shelf: &Shelf,
    ) -> Result<Self, Error> {
        let paints = rounded.set.paints().iter().map(|paint| reach.paints()[usize::from(*paint)]);
        let parts = paints.zip(rounded.parts).map(|(paint, parts)| Part { paint, parts });
        let (recipe, load) = (Recipe::of_whole(parts), rounded.load());
        let reflectance = reach.view().reflectance(&recipe.film(shelf)?, load);
        let lab = reach.view().colour_of(&reflectance);
        let shift = curve.and_then(|curve| {
            largest_shift(curve, [LaidRecipe { recipe: recipe.clone(), load, reflectance }], &LAMPS)
        });
        Ok(Self {
            load,
            lab,
            error: delta_e(lab, target),
            doubt: recipe.doubt(shelf)?.error(),
            parts_in: shift.map(|shift| Parting { light: shift.light, error: shift.there }),
            recipe,
        })
    }
}

/// A smooth reflectance of the colour, where there is one.
fn curve(target: Lab) -> Option<Spectrum> {
    reflectance_of(Lab::new(target.l.into(), target.a.into(), target.b.into())).map(|curve| cast(&curve))
}

/// The recipes to tell, the best first.
fn told(target: Lab, reach: &Reach) -> Vec<Rounded> {
    /// Sets between two looks at whether the rest can still be told.
    const BATCH: usize = 32;
    let (mut told, mut found): (Vec<Rounded>, Vec<Rounded>) = Default::default();
    let optima = optima(target, reach);
    for batch in optima.chunks(BATCH) {
        // No rounding comes nearer than the optimum it is of.
        if batch[0].error > farthest(&told) {
            break;
        }
        found.extend(batch.iter().filter_map(|optimum| round(optimum, target, reach)));
        told = ranked(&found);
    }
    let simple = optima.iter().filter(|optimum| optimum.set.paints().len() <= SIMPLE);
    found.extend(simple.take(BATCH).filter_map(|optimum| round(optimum, target, reach)));
    ranked(&found)
}

/// Error beyond which nothing but simple recipes gets among those that are told.
fn farthest(told: &[Rounded]) -> f32 {
    let errors = told.iter().map(|rounded| rounded.error);
    let others = told.iter().filter(|rounded| !rounded.is_simple()).map(|rounded| rounded.error);
    let last = others.reduce(f32::max).filter(|_| told.len() == MOST_MATCHES);
    last.map_or(f32::INFINITY, |last| last + EQUALLY_NEAR).min(errors.fold(f32::INFINITY, f32::min) + FARTHER)
}

/// The best first, without recipes that have a paint too many.
fn ranked(all: &[Rounded]) -> Vec<Rounded> {
    let least = all.iter().map(|rounded| rounded.error).fold(f32::INFINITY, f32::min);
    let near = all.iter().copied().filter(|rounded| rounded.error <= least + FARTHER).collect();
    let mut told: Vec<Rounded> = Vec::new();
    for rounded in in_order(in_order(near, |rounded| rounded.error), Rounded::rank) {
        if !told.iter().any(|better| rounded.set.holds(&better.set)) {
            told.push(rounded);
        }
    }
    let mut simple = told.iter().filter(|rounded| rounded.is_simple()).count().min(SIMPLE_TOLD);
    let mut free = MOST_MATCHES - simple;
    told.retain(|rounded| {
        let left = if rounded.is_simple() && simple > 0 { &mut simple } else { &mut free };
        let is_told = *left > 0;
        *left -= usize::from(is_told);
        is_told
    });
    told
}

impl Rounded {
    fn is_simple(&self) -> bool {
        self.set.paints().len() <= SIMPLE
    }
}

#[cfg(test)]
#[path = "matches_tests.rs"]
mod tests;
