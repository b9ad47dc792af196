//! A path as it is drawn: its line, the band of doubt, the ribbon over all loads, the ticks of whole parts.

use std::rc::Rc;

use washpath_core::colour::wheel;
use washpath_core::{Crossing, Error, Lab, PathPoint, SHEET_RATIOS, THINNEST, position_of, share_at};
use web_sys::CanvasRenderingContext2d as Context;

use crate::pair::{Pair, Ready};
use crate::sight::Sight;
use crate::studio::dab::POOLED;
use crate::studio::geometry::{Frame, Spot, band};
use crate::studio::pen::{line, polyline};
use crate::studio::scene::Scene;

/// Places a path is drawn through.
pub(crate) const STEPS: usize = 65;

/// Steps that a stroke of the edge spans: it is seen as a rim, and takes fewer.
const EDGE: usize = 2;

/// Ratios and loads the ribbon is woven of.
const RIBBON: (usize, usize) = (33, 12);

/// Share of a colour difference that shows in the wheel's plane: two of three
/// directions, the third is lightness.
const IN_PLANE: f32 = 0.816;

/// A place on a path, ready to be drawn.
pub(crate) struct Step {
    pub spot: Spot,
    pub css: String,
    /// How far it may be off, CIEDE2000.
    expected: f32,
}

/// A path ready to be drawn.
pub(crate) struct Strand {
    pub steps: Vec<Step>,
    /// Colours of the edge, where paint pools: one for so many steps as [`EDGE`] says.
    edges: Vec<String>,
    pub crossing: Crossing,
    pub crossing_spot: Spot,
    /// Quadrilaterals of the ribbon; empty where it is not asked for.
    ribbon: Vec<([Spot; 4], String)>,
    doubts: Vec<f64>,
}

impl Strand {
    pub(crate) fn new(ready: &Ready, sight: &Sight, scene: &Scene) -> Self {
        let frame = Frame::new(scene.size);
        let path = ready.path(&sight.view, scene.load);
        let pooled = ready.path(&sight.view, scene.load * POOLED);
        let step = |point: PathPoint| Step {
            spot: frame.spot(wheel(point.lab)),
            css: sight.css(point.lab),
            expected: ready.expected(&path, point.share),
        };
        let points = path.points(STEPS);
        let edge = |point: &PathPoint| sight.css(pooled.colour(point.share));
        let edges = points.iter().step_by(EDGE).map(edge).collect();
        let steps: Vec<Step> = points.into_iter().map(step).collect();
        let crossing = path.crossing();
        Self {
            doubts: steps.iter().map(|step| frame.length(step.expected * IN_PLANE)).collect(),
            steps,
            edges,
            crossing,
            crossing_spot: frame.spot(wheel(crossing.lab)),
            ribbon: if scene.ribbon { weave(ready, sight, &frame) } else { Vec::new() },
        }
    }

    pub(crate) fn spots(&self) -> Vec<Spot> {
        self.steps.iter().map(|step| step.spot).collect()
    }
}

/// The strand that was drawn last: a drag moves the mix along it and leaves it as it is.
#[derive(Default)]
pub(crate) struct LastStrand(Option<(Strung, Rc<Strand>)>);

/// What a strand follows from, beside the studio: ends, load, size of the canvas, and whether it has a ribbon.
type Strung = (Pair, f32, f64, bool);

impl LastStrand {
    /// Nothing where an end is not chosen.
    pub(crate) fn of(&mut self, scene: &Scene, sight: &Sight) -> Result<Option<Rc<Strand>>, Error> {
        let wanted = (scene.pair.clone(), scene.load, scene.size, scene.ribbon);
        if self.0.as_ref().is_none_or(|(strung, _)| *strung != wanted) {
            self.0 = None;
            if let Some(ready) = wanted.0.ready()? {
                self.0 = Some((wanted, Rc::new(Strand::new(&ready, sight, scene))));
            }
        }
        Ok(self.0.as_ref().map(|(_, strand)| Rc::clone(strand)))
    }
}

/// A pinned path, as places and colours only.
pub(crate) fn pinned(ready: &Ready, sight: &Sight, load: f32, frame: &Frame) -> Vec<(Spot, String)> {
    let seen = |point: PathPoint| (frame.spot(wheel(point.lab)), sight.css(point.lab));
    ready.path(&sight.view, load).points(STEPS).into_iter().map(seen).collect()
}

/// The cloth of ratios and loads, masstone last, so that it lies on top.
fn weave(ready: &Ready, sight: &Sight, frame: &Frame) -> Vec<([Spot; 4], String)> {
    let (across, down) = RIBBON;
    let rows: Vec<Vec<(Spot, Lab)>> = (0..down)
        .map(|row| {
            let load = THINNEST.powf(1.0 - row as f32 / (down - 1) as f32);
            let path = ready.path(&sight.view, load);
            path.points(across).into_iter().map(|point| (frame.spot(wheel(point.lab)), point.lab)).collect()
        })
        .collect();
    let patch = |thin: &[(Spot, Lab)], thick: &[(Spot, Lab)]| {
        let corners = [thin[0].0, thin[1].0, thick[1].0, thick[0].0];
        let middle = |pick: fn(&Lab) -> f32| {
            [thin[0], thin[1], thick[0], thick[1]].iter().map(|c| pick(&c.1)).sum::<f32>() / 4.0
        };
        let lab = Lab::new(middle(|c| c.l), middle(|c| c.a), middle(|c| c.b));
        (corners, sight.css(lab))
    };
    rows.windows(2)
        .flat_map(|pair| (0..across - 1).map(move |i| (pair, i)))
        .map(|(pair, i)| patch(&pair[0][i..i + 2], &pair[1][i..i + 2]))
        .collect()
}

pub(crate) fn draw_ribbon(context: &Context, strand: &Strand) {
    context.set_line_width(1.0);
    for (corners, css) in &strand.ribbon {
        polyline(context, corners);
        context.close_path();
        context.set_fill_style_str(css);
        context.fill();
        // Closes the hairline between neighbours.
        context.set_stroke_style_str(css);
        context.stroke();
    }
}

/// How far the path may be off, as a band along it.
pub(crate) fn draw_band(context: &Context, scene: &Scene, strand: &Strand) {
    polyline(context, &band(&strand.spots(), &strand.doubts));
    context.set_fill_style_str(&scene.ink.doubt);
    context.fill();
}

pub(crate) fn draw_strand(context: &Context, scene: &Scene, strand: &Strand) {
    let spots = strand.spots();
    context.set_line_cap("round");
    context.set_line_join("round");
    context.set_stroke_style_str(&scene.ink.strong);
    context.set_line_width(11.0);
    polyline(context, &spots);
    context.stroke();
    strokes(context, 9.0, EDGE, &spots, &|i| &strand.edges[i / EDGE]);
    strokes(context, 5.5, 1, &spots, &|i| &strand.steps[i].css);
}

/// Short strokes of one width, each over so many steps of a line and in the colour that it starts with.
fn strokes<'a>(
    context: &Context,
    width: f64,
    length: usize,
    line: &[Spot],
    css: &dyn Fn(usize) -> &'a String,
) {
    context.set_line_width(width);
    for from in (0..line.len() - 1).step_by(length) {
        context.set_stroke_style_str(css(from));
        polyline(context, &line[from..=(from + length).min(line.len() - 1)]);
        context.stroke();
    }
}

/// Thinner than the path at hand, with a rim of paper.
pub(crate) fn draw_pin(context: &Context, scene: &Scene, pin: &[(Spot, String)]) {
    let spots: Vec<Spot> = pin.iter().map(|(spot, _)| *spot).collect();
    context.set_line_cap("round");
    context.set_line_join("round");
    for (width, colour) in [(7.0, &scene.ink.paper), (5.0, &scene.ink.quiet)] {
        context.set_stroke_style_str(colour);
        context.set_line_width(width);
        polyline(context, &spots);
        context.stroke();
    }
    strokes(context, 3.5, 1, &spots, &|i| &pin[i].1);
}

/// Short strokes across the path at small whole parts; one part each is longest.
pub(crate) fn draw_ticks(context: &Context, scene: &Scene, strand: &Strand) {
    context.set_line_cap("butt");
    context.set_stroke_style_str(&scene.ink.strong);
    context.set_line_width(1.5);
    // The columns of a sheet, but for the paints alone.
    for ratio in &SHEET_RATIOS[1..SHEET_RATIOS.len() - 1] {
        let along = position_of(ratio.share()) * (STEPS - 1) as f32;
        let i = (along as usize).min(STEPS - 2);
        let (from, to) = (strand.steps[i].spot, strand.steps[i + 1].spot);
        let (dx, dy) = (to.x - from.x, to.y - from.y);
        let length = dx.hypot(dy);
        if length < 1e-3 {
            continue;
        }
        let part = f64::from(along) - i as f64;
        let at = Spot { x: from.x + part * dx, y: from.y + part * dy };
        let half = if ratio.a == ratio.b { 11.0 } else { 8.0 } / length;
        let end = |sign: f64| Spot { x: at.x - sign * dy * half, y: at.y + sign * dx * half };
        // Two strokes: the colour between them stays clear.
        let inner = |sign: f64| {
            let near = 5.5 / length;
            Spot { x: at.x - sign * dy * near, y: at.y + sign * dx * near }
        };
        for sign in [-1.0, 1.0] {
            line(context, inner(sign), end(sign));
        }
    }
}

/// The share at a place along a drawn path, counted in steps.
pub(crate) fn share_along(along: f64) -> f32 {
    share_at((along / (STEPS - 1) as f64) as f32)
}
