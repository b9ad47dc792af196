//! What the page calls: a paper in a light, with every paint placed in it.

mod codes;
mod dab;
mod facts;
pub mod geometry;
mod kits;
mod marks;
mod partners;
mod pen;
mod picking;
mod reach;
mod reading;
mod readout;
mod scene;
mod strand;
mod wash;
mod wheel;

pub use facts::page_facts;
pub use kits::{decode_kit, encode_kit};

use std::cell::OnceCell;
use std::rc::Rc;

use washpath_core::colour::{self, WheelPoint};
use washpath_core::notation;
use washpath_core::{
    Display, Error, Film, Lab, Laid, Light, OwnPaper, Paint, PaintNumber, Recipe, Shelf, THINNEST, View,
    compare, in_order, next_parts, position_of, share_at, snap,
};
use wasm_bindgen::prelude::*;
use web_sys::CanvasRenderingContext2d as Context;

use crate::border::{canvas_failed, into, out};
use crate::last_reach::LastReach;
use crate::own_paint::lab_seen;
use crate::pair::{Pair, Ready};
use crate::paper::PaperChoice;
use crate::parts::recipe;
use crate::shelf::shelf;
use crate::sight::Sight;
use crate::studio::dab::Dab;
use crate::studio::geometry::{Frame, RIM, Spot, nearest_along};
use crate::studio::readout::{CrossingReadout, Mix, Way};
use crate::studio::scene::{Drop, Scene};
use crate::studio::strand::{STEPS, Strand, pinned, share_along};
use crate::studio::wash::Grain;
use crate::studio::wheel::Over;
use crate::swatch::{lab_of, numbers};

/// Places a tail from masstone to wash is drawn through.
const TAIL_POINTS: usize = 24;

/// How near in pixels a drag must come to whole parts to be held there.
const SNAP: f64 = 4.0;

/// A paint as it stands in a view.
pub(crate) struct Stand {
    pub paint: Paint,
    /// Point of the wheel at the strongest load.
    pub point: WheelPoint,
    /// Colour there.
    pub css: String,
    /// Whether the display holds it.
    pub exact: bool,
    /// What is drawn there.
    pub dab: Dab,
    /// From masstone to the thinnest wash.
    pub tail: Vec<(WheelPoint, String)>,
}

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

    /// L*, a*, b* of the mix of a pair, in daylight.
    ///
    /// # Errors
    ///
    /// An end that is not chosen or not known.
    pub fn lab_of(&self, pair: JsValue, share: f32, load: f32) -> Result<Vec<f32>, JsError> {
        Ok(numbers(ready(pair)?.path(&self.daylight, load).colour(share)))
    }

    /// A colour's L*, a*, b* turned to the hue and chroma of a point of the wheel; its L* stays.
    ///
    /// # Errors
    ///
    /// What is no colour.
    pub fn at_place(&self, lightness: f32, x: f32, y: f32) -> Result<Vec<f32>, JsError> {
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

    /// The mix of a pair with a share of B, at a load.
    ///
    /// # Errors
    ///
    /// An end that is not chosen or not known.
    pub fn mix(&self, pair: JsValue, share: f32, load: f32) -> Result<JsValue, JsError> {
        let ready = ready(pair)?;
        let path = ready.path(&self.sight.view, load);
        out(&Mix::new(&ready, &path, share, self.sight.swatch(path.colour(share)))?)
    }

    /// Where the path of a pair comes closest to neutral.
    ///
    /// # Errors
    ///
    /// An end that is not chosen or not known.
    pub fn crossing(&self, pair: JsValue, load: f32) -> Result<JsValue, JsError> {
        let ready = ready(pair)?;
        let path = ready.path(&self.sight.view, load);
        let crossing = path.crossing();
        out(&CrossingReadout::new(&ready, &path, crossing, self.sight.swatch(crossing.lab))?)
    }

    /// A mix, and the same paint laid A over B and B over A; glazes tell how they differ from the mix.
    ///
    /// # Errors
    ///
    /// An end that is not chosen or not known.
    pub fn ways(&self, pair: JsValue, share: f32, load: f32) -> Result<JsValue, JsError> {
        let ready = ready(pair)?;
        let colours = Laid::ALL.map(|laid| ready.path_laid(laid, &self.sight.view, load).colour(share));
        let way = |laid: Laid, lab| Way::new(laid, self.sight.swatch(lab), compare(lab, colours[0]));
        out(&Laid::ALL.into_iter().zip(colours).map(|(laid, lab)| way(laid, lab)).collect::<Vec<_>>())
    }

    /// A mix as a painted wash: RGBA pixels in this studio's colour space, row by row.
    ///
    /// `scale` is pixels per CSS pixel. The mean of the wash, in linear light, is the mix's colour.
    ///
    /// # Errors
    ///
    /// An end that is not chosen or not known; more than a million pixels.
    pub fn wash(
        &self,
        pair: JsValue,
        share: f32,
        load: f32,
        width: usize,
        height: usize,
        scale: f32,
    ) -> Result<Vec<u8>, JsError> {
        if width.saturating_mul(height) > wash::MOST_PIXELS {
            return Err(JsError::new("a wash of more than a million pixels"));
        }
        let ready = ready(pair)?;
        let grain = Grain::of(&ready, share)?;
        let path = ready.path(&self.sight.view, load);
        let settled = ready.path(&self.sight.view, load * Grain::HEAVIER).colour(grain.share);
        let [middle, settled] = [path.colour(share), settled].map(|lab| self.sight.linear(lab));
        Ok(wash::pixels(middle, settled, grain.strength, (width, height), scale))
    }

    /// The sheet of a pair, row by row: shares across, loads down.
    ///
    /// # Errors
    ///
    /// An end that is not chosen or not known.
    pub fn sheet(&self, pair: JsValue, shares: &[f32], loads: &[f32]) -> Result<JsValue, JsError> {
        let sheet = ready(pair)?.sheet(&self.sight.view, shares, loads);
        out(&sheet.cells.iter().map(|lab| self.sight.swatch(*lab)).collect::<Vec<_>>())
    }

    /// CSS colours along the path of a pair, even in position.
    ///
    /// # Errors
    ///
    /// An end that is not chosen or not known.
    pub fn ramp(&self, pair: JsValue, load: f32, count: usize) -> Result<JsValue, JsError> {
        let points = ready(pair)?.path(&self.sight.view, load).points(count.min(512));
        out(&points.iter().map(|point| self.sight.css(point.lab)).collect::<Vec<_>>())
    }

    /// CSS colours of the mix of a pair at each of these loads.
    ///
    /// # Errors
    ///
    /// An end that is not chosen or not known.
    pub fn fade(&self, pair: JsValue, share: f32, loads: &[f32]) -> Result<JsValue, JsError> {
        let ready = ready(pair)?;
        let css = |load: &f32| self.sight.css(ready.path(&self.sight.view, *load).colour(share));
        out(&loads.iter().map(css).collect::<Vec<_>>())
    }

    /// Draws the wheel with its paints and the outlines of reaches, in CAM16-UCS x, y, x, y, ...
    ///
    /// # Errors
    ///
    /// A scene or outline that is not one; a canvas that fails.
    pub fn draw_wheel(&self, context: &Context, scene: JsValue, outlines: JsValue) -> Result<(), JsError> {
        let scene: Scene = into(scene)?;
        let outlines: Vec<Vec<f32>> = into(outlines)?;
        let frame = Frame::new(scene.size);
        let spots =
            |outline: &Vec<f32>| outline.chunks_exact(2).map(|at| frame.spot_at([at[0], at[1]])).collect();
        let outlines: Vec<Vec<Spot>> = outlines.iter().map(spots).collect();
        wheel::draw_ground(context, &scene, &self.drawn(&scene), &outlines).map_err(canvas_failed)
    }

    /// Draws what lies over the wheel: paths, crossing, mix, codes and marks.
    ///
    /// # Errors
    ///
    /// A scene that is not one, an unknown paint, a canvas that fails.
    pub fn draw_path(&self, context: &Context, scene: JsValue) -> Result<(), JsError> {
        let scene: Scene = into(scene)?;
        let frame = Frame::new(scene.size);
        let strand = scene.pair.ready()?.map(|ready| Strand::new(&ready, &self.sight, &scene));
        let mut pins = Vec::new();
        for pin in &scene.pins {
            if let Some(ready) = pin.pair.ready()? {
                pins.push(pinned(&ready, &self.sight, pin.load, &frame));
            }
        }
        let mut drops = Vec::new();
        for drop in &scene.puddles {
            let (point, css) = self.sight.spot(self.drop_colour(drop)?);
            drops.push((frame.spot(point), css));
        }
        let mut records = Vec::new();
        for mark in &scene.seen {
            let (predicted, _) = self.sight.spot(self.drop_colour(&mark.laid)?);
            let (point, css) = self.sight.spot(lab_seen(&mark.seen)?);
            records.push([(frame.spot(predicted), String::new()), (frame.spot(point), css)]);
        }
        let target = scene.target.map(|[l, a, b]| {
            let (point, css) = self.sight.spot(Lab::new(l, a, b));
            (frame.spot(point), css)
        });
        let over = Over { pins: &pins, drops: &drops, records: &records, target: target.as_ref() };
        wheel::draw_top(context, &scene, &self.dabs(&scene), strand.as_ref(), &over).map_err(canvas_failed)
    }

    /// Draws a dab of a recipe in the middle of a square of `size` pixels: of one load, or bleeding from masstone to wash.
    ///
    /// # Errors
    ///
    /// No such paint; a canvas that fails.
    pub fn draw_dab(
        &self,
        context: &Context,
        parts: JsValue,
        load: Option<f32>,
        size: f64,
    ) -> Result<(), JsError> {
        let recipe = recipe(&into(parts)?)?;
        let shelf = shelf();
        let first = shelf.get(recipe.parts()[0].0)?;
        let grain = first.granulation.unwrap_or(0.0);
        let dab = Dab::new(&recipe.film(&shelf)?, load, &self.sight, grain, first.number.into());
        let middle = Spot { x: size / 2.0, y: size / 2.0 };
        dab::draw(context, &dab, middle, size / 2.0 - 1.0).map_err(canvas_failed)
    }

    /// The paint drawn at a place on the canvas, or 0.
    ///
    /// `within` is how far from its middle a paint still counts as hit.
    ///
    /// # Errors
    ///
    /// A scene that is not one.
    pub fn paint_at(&self, scene: JsValue, x: f64, y: f64, within: f64) -> Result<PaintNumber, JsError> {
        let scene: Scene = into(scene)?;
        let frame = Frame::new(scene.size);
        let at = Spot { x, y };
        let nearest = self
            .drawn(&scene)
            .into_iter()
            .map(|stand| {
                // A dab of the kit is larger than a dot of the shelf, and easier to hit.
                let ease = if scene.shows(stand.paint.number) { 0.0 } else { within * 0.5 };
                (stand.paint.number, frame.spot(stand.point).distance(at) + ease)
            })
            .min_by(|a, b| a.1.total_cmp(&b.1));
        Ok(nearest.filter(|(_, distance)| *distance <= within).map_or(0, |(number, _)| number))
    }

    /// The puddle drawn at a place on the canvas, counted from 0; nothing where there is none.
    ///
    /// # Errors
    ///
    /// A scene that is not one; an unknown paint.
    pub fn puddle_at(&self, scene: JsValue, x: f64, y: f64, within: f64) -> Result<Option<usize>, JsError> {
        let scene: Scene = into(scene)?;
        let frame = Frame::new(scene.size);
        let mut nearest: Option<(usize, f64)> = None;
        for (i, drop) in scene.puddles.iter().enumerate() {
            let away = frame.spot(colour::wheel(self.drop_colour(drop)?)).distance(Spot { x, y });
            if away <= within && nearest.is_none_or(|(_, least)| away < least) {
                nearest = Some((i, away));
            }
        }
        Ok(nearest.map(|(i, _)| i))
    }

    /// Radius of the wheel in CAM16-UCS.
    #[must_use]
    pub fn rim(&self) -> f32 {
        RIM
    }

    /// The point of the wheel's plane at a place on a canvas of `size`: x, y; nothing off the disc.
    #[must_use]
    pub fn place_at(&self, size: f64, x: f64, y: f64) -> Option<Vec<f32>> {
        let frame = Frame::new(size);
        let spot = Spot { x, y };
        frame.holds(spot).then(|| frame.point_at(spot).to_vec())
    }

    /// Where the mix of a pair stands in the wheel's plane: x, y.
    ///
    /// # Errors
    ///
    /// An end that is not chosen or not known.
    pub fn place_of(&self, pair: JsValue, share: f32, load: f32) -> Result<Vec<f32>, JsError> {
        let point = colour::wheel(ready(pair)?.path(&self.sight.view, load).colour(share));
        Ok(vec![point.x, point.y])
    }

    /// The place on the path nearest to a place on the canvas.
    ///
    /// Returns the share of B, held at whole parts where `snapping`, the
    /// distance in pixels, and the distance of the mix at hand; nothing where
    /// no path is drawn.
    ///
    /// # Errors
    ///
    /// A scene that is not one; an unknown paint.
    pub fn share_at(
        &self,
        scene: JsValue,
        x: f64,
        y: f64,
        snapping: bool,
    ) -> Result<Option<Vec<f64>>, JsError> {
        let scene: Scene = into(scene)?;
        let frame = Frame::new(scene.size);
        let Some(ready) = scene.pair.ready()? else { return Ok(None) };
        let path = ready.path(&self.sight.view, scene.load);
        let spot = |lab| frame.spot(colour::wheel(lab));
        let line: Vec<Spot> = path.points(STEPS).iter().map(|point| spot(point.lab)).collect();
        let at = Spot { x, y };
        Ok(nearest_along(&line, at).map(|along| {
            let share = share_along(along);
            let at_share = |share: f32| spot(path.colour(share));
            let held = snap(share, 0.04)
                .filter(|held| snapping && at_share(*held).distance(at_share(share)) <= SNAP);
            vec![
                f64::from(held.unwrap_or(share)),
                at_share(share).distance(at),
                at_share(scene.share).distance(at),
            ]
        }))
    }

    /// The share of B at a position 0 to 1 along any path.
    #[must_use]
    pub fn share_of(&self, position: f32) -> f32 {
        share_at(position)
    }

    /// The position of a share of B along any path, 0 to 1.
    #[must_use]
    pub fn position_of(&self, share: f32) -> f32 {
        position_of(share)
    }

    /// The share of the whole parts nearest to a share, if they are within `reach` of its position.
    #[must_use]
    pub fn snap(&self, share: f32, distance: f32) -> Option<f32> {
        snap(share, distance)
    }

    /// The share of the next whole parts of a brush, towards B or towards A.
    #[must_use]
    pub fn next_parts(&self, share: f32, towards_b: bool) -> f32 {
        next_parts(share, towards_b)
    }

    /// The share some steps of a path further towards B.
    #[must_use]
    pub fn step_share(&self, share: f32, steps: f32) -> f32 {
        share_at((position_of(share) + steps / (STEPS - 1) as f32).clamp(0.0, 1.0))
    }

    /// Paints of the scene's kit in order round the wheel, from red on.
    ///
    /// # Errors
    ///
    /// A scene that is not one.
    pub fn round_the_wheel(&self, scene: JsValue) -> Result<Vec<PaintNumber>, JsError> {
        let scene: Scene = into(scene)?;
        let stands = in_order(self.dabs(&scene), |stand: &&Stand| stand.point.angle());
        Ok(stands.iter().map(|stand| stand.paint.number).collect())
    }
}

impl Studio {
    /// The paints a scene draws: dabs, and dots of the shelf where it shows that.
    fn drawn(&self, scene: &Scene) -> Vec<&Stand> {
        self.stands_of(|number| scene.show_shelf || scene.shows(number))
    }

    /// The paints a scene draws as dabs.
    fn dabs(&self, scene: &Scene) -> Vec<&Stand> {
        self.stands_of(|number| scene.shows(number))
    }

    fn stands_of(&self, wanted: impl Fn(PaintNumber) -> bool) -> Vec<&Stand> {
        let paints = self.shelf.paints().iter().zip(&self.stands).filter(|(paint, _)| wanted(paint.number));
        paints.map(|(paint, stand)| stand.get_or_init(|| Stand::new(paint, &self.sight))).collect()
    }

    fn drop_colour(&self, drop: &Drop) -> Result<Lab, Error> {
        Ok(self.sight.view.colour(&Recipe::new(&drop.parts)?.film(&shelf())?, drop.load))
    }
}

impl Stand {
    fn new(paint: &Paint, sight: &Sight) -> Self {
        let strongest = sight.view.strongest_load(&paint.film);
        let colour = |load: f32| sight.view.colour(&paint.film, load);
        let step = |i: usize| sight.spot(colour(THINNEST.powf(i as f32 / (TAIL_POINTS - 1) as f32)));
        let lab = colour(strongest);
        let shown = sight.shown(lab);
        Self {
            paint: paint.clone(),
            point: colour::wheel(lab),
            css: shown.css(),
            exact: shown.exact,
            dab: Dab::new(&paint.film, None, sight, paint.granulation.unwrap_or(0.0), paint.number.into()),
            tail: (0..TAIL_POINTS).map(step).collect(),
        }
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
    Ok(recipe(&into(parts)?)?.film(&shelf())?)
}

fn ready(pair: JsValue) -> Result<Ready, JsError> {
    let pair: Pair = into(pair)?;
    pair.ready()?.ok_or_else(|| JsError::new("a path needs two ends"))
}
