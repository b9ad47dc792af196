//! What the page calls: the shelf, a view with everything computed in it, kits as text.

use serde::{Deserialize, Serialize};
use washpath_core::colour::{self, WheelPoint, shown};
use washpath_core::{
    Doubt, Film, Kit, Laid, Light, Paint, PaintNumber, Pan, Path, PathPoint, Sheet, Shelf, Stock, THINNEST,
    View, position_of, share, share_at,
};
use wasm_bindgen::prelude::*;
use web_sys::CanvasRenderingContext2d as Context;

use crate::dab::{self, Dab};
use crate::geometry::{Frame, Spot, nearest_along};
use crate::readout::{CrossingReadout, Mix, PaintReadout, Swatch, css};
use crate::scene::Scene;
use crate::wheel::{self, Line};

/// Places a path is drawn through.
const PATH_POINTS: usize = 97;

/// Places a tail from masstone to wash is drawn through.
const TAIL_POINTS: usize = 12;

/// A paint as it stands in a view.
pub(crate) struct Stand {
    pub paint: &'static Paint,
    /// Place at the strongest load.
    pub place: WheelPoint,
    /// Colour there.
    pub css: String,
    /// Colour of its rim.
    pub rim: String,
    /// From masstone to the thinnest wash.
    pub tail: Vec<(WheelPoint, String)>,
}

/// A place on a path, ready to be drawn.
pub(crate) struct Step {
    pub place: WheelPoint,
    pub css: String,
    /// How far it may be off, CIEDE2000.
    pub expected: f32,
}

/// One paper in one light, and every paint in it.
#[wasm_bindgen]
pub struct Studio {
    view: View,
    stands: Vec<Stand>,
}

#[wasm_bindgen]
impl Studio {
    /// A studio for a paper by its number and a light by its number; out of range is the first.
    #[wasm_bindgen(constructor)]
    #[must_use]
    pub fn new(stock: usize, light: usize) -> Self {
        let stock = Stock::ALL.get(stock).copied().unwrap_or_default();
        let light = Light::ALL.get(light).copied().unwrap_or_default();
        let view = View::new(&stock.paper(), light);
        let stands = Shelf::built_in().paints().iter().map(|paint| Stand::new(paint, &view)).collect();
        Self { view, stands }
    }

    /// CSS colour of the bare paper.
    #[must_use]
    pub fn paper(&self) -> String {
        css(shown(self.view.colour(&Film::CLEAR, 0.0)).rgb)
    }

    /// A paint at a load.
    ///
    /// # Errors
    ///
    /// No such paint.
    pub fn swatch(&self, paint: PaintNumber, load: f32) -> Result<JsValue, JsError> {
        out(&Swatch::new(self.view.colour(film(paint)?, load)))
    }

    /// The load at which a paint is most chromatic.
    ///
    /// # Errors
    ///
    /// No such paint.
    pub fn strongest_load(&self, paint: PaintNumber) -> Result<f32, JsError> {
        Ok(self.view.strongest_load(film(paint)?))
    }

    /// The mix of `a` with a share of `b`, at a load.
    ///
    /// # Errors
    ///
    /// No such paint.
    pub fn mix(&self, a: PaintNumber, b: PaintNumber, share: f32, load: f32) -> Result<JsValue, JsError> {
        let lab = Path::new(film(a)?, film(b)?, &self.view, load).colour(share);
        out(&Mix::new(share, lab, doubts(a, b)?))
    }

    /// Where the path from `a` to `b` comes closest to neutral.
    ///
    /// # Errors
    ///
    /// No such paint.
    pub fn crossing(&self, a: PaintNumber, b: PaintNumber, load: f32) -> Result<JsValue, JsError> {
        let crossing = Path::new(film(a)?, film(b)?, &self.view, load).crossing();
        out(&CrossingReadout::new(crossing, doubts(a, b)?))
    }

    /// The sheet of `a` and `b`, row by row: shares across, loads down.
    ///
    /// # Errors
    ///
    /// No such paint.
    pub fn sheet(
        &self,
        a: PaintNumber,
        b: PaintNumber,
        shares: &[f32],
        loads: &[f32],
    ) -> Result<JsValue, JsError> {
        let sheet = Sheet::new(film(a)?, film(b)?, Laid::Mixed, &self.view, shares, loads);
        out(&sheet.cells.iter().map(|lab| Swatch::new(*lab)).collect::<Vec<_>>())
    }

    /// CSS colours along the path from `a` to `b`, even in position.
    ///
    /// # Errors
    ///
    /// No such paint.
    pub fn ramp(&self, a: PaintNumber, b: PaintNumber, load: f32, count: usize) -> Result<JsValue, JsError> {
        let points = Path::new(film(a)?, film(b)?, &self.view, load).points(count.min(512));
        out(&points.iter().map(|point| css(shown(point.lab).rgb)).collect::<Vec<_>>())
    }

    /// Draws the wheel with its paints.
    ///
    /// # Errors
    ///
    /// A scene that is not one; a canvas that fails.
    pub fn draw_wheel(&self, context: &Context, scene: JsValue) -> Result<(), JsError> {
        let scene: Scene = into(scene)?;
        wheel::draw_ground(context, &scene, &self.stands).map_err(canvas_failed)
    }

    /// Draws what lies over the wheel: path, crossing, mix, codes and marks.
    ///
    /// # Errors
    ///
    /// A scene that is not one, an unknown paint, a canvas that fails.
    pub fn draw_path(&self, context: &Context, scene: JsValue) -> Result<(), JsError> {
        let scene: Scene = into(scene)?;
        let Some(path) = self.path(&scene)? else {
            return wheel::draw_top(context, &scene, &self.stands, None).map_err(canvas_failed);
        };
        let doubts = doubts(scene.ends[0], scene.ends[1])?;
        let step = |point| Step::new(point, doubts);
        let steps: Vec<Step> = path.points(PATH_POINTS).into_iter().map(step).collect();
        let mix = step(PathPoint { share: scene.share, lab: path.colour(scene.share) });
        let line = Line { steps: &steps, crossing: &path.crossing(), mix: &mix };
        wheel::draw_top(context, &scene, &self.stands, Some(&line)).map_err(canvas_failed)
    }

    /// Draws a dab of a paint at a load in the middle of a square of `size` pixels.
    ///
    /// # Errors
    ///
    /// No such paint; a canvas that fails.
    pub fn draw_dab(
        &self,
        context: &Context,
        paint: PaintNumber,
        load: f32,
        size: f64,
    ) -> Result<(), JsError> {
        let paint = Shelf::built_in().get(paint)?;
        let colours = [load, load * 2.0].map(|load| css(shown(self.view.colour(&paint.film, load)).rgb));
        let dab = Dab {
            fill: &colours[0],
            rim: &colours[1],
            grain: paint.granulation.unwrap_or(0.0),
            seed: u32::from(paint.number),
        };
        let middle = Spot { x: size / 2.0, y: size / 2.0 };
        dab::draw(context, &dab, middle, size / 2.0 - 1.0).map_err(canvas_failed)
    }

    /// The paint drawn at a place on the canvas, or 0.
    ///
    /// `reach` is how far from its middle a paint still counts as hit.
    ///
    /// # Errors
    ///
    /// A scene that is not one.
    pub fn paint_at(&self, scene: JsValue, x: f64, y: f64, reach: f64) -> Result<PaintNumber, JsError> {
        let scene: Scene = into(scene)?;
        let frame = Frame::new(scene.size);
        let at = Spot { x, y };
        let nearest = self
            .stands
            .iter()
            .filter(|stand| scene.show_shelf || scene.shows(stand.paint.number))
            .map(|stand| {
                // A dab of the kit is larger than a dot of the shelf, and easier to hit.
                let ease = if scene.shows(stand.paint.number) { 0.0 } else { reach * 0.5 };
                (stand.paint.number, frame.spot(stand.place).distance(at) + ease)
            })
            .min_by(|a, b| a.1.total_cmp(&b.1));
        Ok(nearest.filter(|(_, distance)| *distance <= reach).map_or(0, |(number, _)| number))
    }

    /// The place on the path nearest to a place on the canvas.
    ///
    /// Returns the share of B, the distance in pixels, and the distance of the
    /// mix at hand; nothing where no path is drawn.
    ///
    /// # Errors
    ///
    /// A scene that is not one; an unknown paint.
    pub fn share_at(&self, scene: JsValue, x: f64, y: f64) -> Result<Option<Vec<f64>>, JsError> {
        let scene: Scene = into(scene)?;
        let frame = Frame::new(scene.size);
        let Some(path) = self.path(&scene)? else { return Ok(None) };
        let spot = |lab| frame.spot(colour::wheel(lab));
        let line: Vec<Spot> = path.points(PATH_POINTS).iter().map(|point| spot(point.lab)).collect();
        let at = Spot { x, y };
        Ok(nearest_along(&line, at).map(|along| {
            let share = share_at((along / (PATH_POINTS - 1) as f64) as f32);
            let away = |share: f32| spot(path.colour(share)).distance(at);
            vec![f64::from(share), away(share), away(scene.share)]
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

    /// The share some steps of a path further towards B.
    #[must_use]
    pub fn step_share(&self, share: f32, steps: f32) -> f32 {
        share_at((position_of(share) + steps / (PATH_POINTS - 1) as f32).clamp(0.0, 1.0))
    }

    /// Paints of the scene's kit in order round the wheel, from red on.
    ///
    /// # Errors
    ///
    /// A scene that is not one.
    pub fn round_the_wheel(&self, scene: JsValue) -> Result<Vec<PaintNumber>, JsError> {
        let scene: Scene = into(scene)?;
        let mut stands: Vec<&Stand> = self.stands.iter().filter(|s| scene.shows(s.paint.number)).collect();
        stands.sort_by(|a, b| a.place.angle().total_cmp(&b.place.angle()));
        Ok(stands.iter().map(|stand| stand.paint.number).collect())
    }
}

impl Studio {
    /// The path between a scene's ends, if both are chosen.
    fn path(&self, scene: &Scene) -> Result<Option<Path<'_>>, JsError> {
        let [a, b] = scene.ends;
        if a == 0 || b == 0 {
            return Ok(None);
        }
        Ok(Some(Path::new(film(a)?, film(b)?, &self.view, scene.load)))
    }
}

impl Stand {
    fn new(paint: &'static Paint, view: &View) -> Self {
        let strongest = view.strongest_load(&paint.film);
        let seen = |load: f32| {
            let lab = view.colour(&paint.film, load);
            (colour::wheel(lab), css(shown(lab).rgb))
        };
        let tail =
            (0..TAIL_POINTS).map(|i| seen(THINNEST.powf(i as f32 / (TAIL_POINTS - 1) as f32))).collect();
        let (place, css) = seen(strongest);
        Self { paint, place, css, rim: seen(strongest * 2.0).1, tail }
    }
}

impl Step {
    fn new(point: PathPoint, doubts: [Doubt; 2]) -> Self {
        Self {
            place: colour::wheel(point.lab),
            css: css(shown(point.lab).rgb),
            expected: Doubt::between(doubts[0], doubts[1], point.share).error(),
        }
    }
}

/// Every paint of the shelf, without its spectrum.
///
/// # Errors
///
/// None in practice: the border's own.
#[wasm_bindgen]
pub fn paints() -> Result<JsValue, JsError> {
    out(&Shelf::built_in().paints().iter().map(PaintReadout::from).collect::<Vec<_>>())
}

/// A kit as the page holds it; a pan is one paint number or two.
#[derive(Serialize, Deserialize)]
struct KitReadout {
    title: String,
    capacity: usize,
    stock: usize,
    pans: Vec<Vec<PaintNumber>>,
}

/// The kit as text for a link.
///
/// # Errors
///
/// An object that is no kit; a kit beyond its limits.
#[wasm_bindgen]
pub fn encode_kit(kit: JsValue) -> Result<String, JsError> {
    let kit: KitReadout = into(kit)?;
    let pans = kit.pans.iter().map(|paints| pan(paints)).collect::<Result<_, _>>()?;
    let stock = Stock::ALL.get(kit.stock).copied().unwrap_or_default();
    Ok(share::encode(&Kit::new(&kit.title, kit.capacity, stock, pans)?))
}

/// The kit of a link's text.
///
/// # Errors
///
/// A damaged text, an unknown version or paint, in words for the painter.
#[wasm_bindgen]
pub fn decode_kit(text: &str) -> Result<JsValue, JsError> {
    let kit = share::decode(text, Shelf::built_in())?;
    out(&KitReadout {
        title: kit.title().to_owned(),
        capacity: kit.capacity(),
        stock: kit.stock() as usize,
        pans: kit.pans().iter().map(|pan| pan.paints().collect()).collect(),
    })
}

fn pan(paints: &[PaintNumber]) -> Result<Pan, JsError> {
    match *paints {
        [paint] => Ok(Pan::Whole(paint)),
        [left, right] => Ok(Pan::Split(left, right)),
        _ => Err(JsError::new(&format!("a pan holds one paint or two, not {}", paints.len()))),
    }
}

fn film(number: PaintNumber) -> Result<&'static Film, JsError> {
    Ok(&Shelf::built_in().get(number)?.film)
}

fn doubts(a: PaintNumber, b: PaintNumber) -> Result<[Doubt; 2], JsError> {
    let shelf = Shelf::built_in();
    Ok([Doubt::of(shelf.get(a)?.tier), Doubt::of(shelf.get(b)?.tier)])
}

fn out<T: Serialize + ?Sized>(value: &T) -> Result<JsValue, JsError> {
    Ok(serde_wasm_bindgen::to_value(value)?)
}

fn into<T: for<'a> Deserialize<'a>>(value: JsValue) -> Result<T, JsError> {
    Ok(serde_wasm_bindgen::from_value(value)?)
}

#[expect(clippy::needless_pass_by_value, reason = "the shape map_err asks for")]
fn canvas_failed(error: JsValue) -> JsError {
    JsError::new(&format!("the canvas failed: {error:?}"))
}
