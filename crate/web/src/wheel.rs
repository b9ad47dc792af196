//! Draws the hue wheel, its paints, the path and its crossing.

use std::f64::consts::TAU;

use washpath_core::colour::wheel;
use washpath_core::{Crossing, CrossingKind, whole_parts};
use wasm_bindgen::JsValue;
use web_sys::CanvasRenderingContext2d as Context;

use crate::dab::{self, Dab};
use crate::geometry::{Frame, Label, RIM, Spot, band, place_aside, place_label};
use crate::scene::Scene;
use crate::studio::{Stand, Step};

type Drawn = Result<(), JsValue>;

/// Below this size of the canvas, in CSS pixels, letters are smaller.
const SMALL: f64 = 460.0;

const FAMILY: &str = "\"Source Sans 3\", system-ui, sans-serif";

/// Hue names round the rim, at the CAM16 hue angles of Munsell's 5R, 5YR, 5Y,
/// 5G and 5P at value 5, chroma 8; blue halfway between 5B and 5PB
/// (tests/reference/d_munsell_hue_angles_V5C8.csv).
const HUE_NAMES: [(f64, &str); 6] =
    [(20.8, "red"), (54.9, "orange"), (94.2, "yellow"), (166.4, "green"), (242.0, "blue"), (316.0, "violet")];

/// The disc, its rings and names, the shelf's dots, the tails of the paints.
pub(crate) fn draw_ground(context: &Context, scene: &Scene, stands: &[Stand]) -> Drawn {
    let frame = Frame::new(scene.size);
    context.clear_rect(0.0, 0.0, scene.size, scene.size);
    disc(context, scene, &frame)?;
    names(context, scene, &frame)?;
    if scene.show_shelf {
        for stand in stands.iter().filter(|stand| !scene.shows(stand.paint.number)) {
            dot(context, stand, frame.spot(stand.place), scene)?;
        }
    }
    for stand in stands.iter().filter(|stand| scene.shows(stand.paint.number)) {
        tail(context, stand, &frame);
    }
    Ok(())
}

/// The dabs and what lies over them: the path if there is one, codes, marks.
pub(crate) fn draw_top(context: &Context, scene: &Scene, stands: &[Stand], line: Option<&Line<'_>>) -> Drawn {
    let frame = Frame::new(scene.size);
    let codes = place_codes(context, scene, &frame, stands)?;
    let spots: Vec<Spot> =
        line.iter().flat_map(|line| line.steps).map(|step| frame.spot(step.place)).collect();
    if let Some(line) = line {
        // Under the dabs: nothing may tint them.
        draw_band(context, scene, &frame, &spots, line.steps);
    }
    for stand in stands.iter().filter(|stand| scene.shows(stand.paint.number)) {
        dab::draw(context, &stand.dab(), frame.spot(stand.place), frame.dab())?;
    }
    if let Some(line) = line {
        draw_line(context, scene, &spots, line.steps);
    }
    draw_codes(context, scene, &codes)?;
    draw_marks(context, scene, &frame, stands)?;
    let Some(line) = line else { return Ok(()) };
    let ends = [line.steps.first(), line.steps.last()];
    let mix = frame.spot(line.mix.place);
    let mut keep_off = spots;
    keep_off.push(mix);
    keep_off.extend(codes.iter().map(|(_, label)| label.middle()));
    crossing_mark(context, scene, &frame, line.crossing, &keep_off)?;
    for (step, letter) in ends.into_iter().flatten().zip(["A", "B"]) {
        tag(context, scene, frame.spot(step.place), letter)?;
    }
    handle(context, scene, mix, &line.mix.css)
}

/// Share of a colour difference that shows in the wheel's plane: two of three
/// directions, the third is lightness.
const IN_PLANE: f32 = 0.816;

/// A path ready to be drawn.
pub(crate) struct Line<'a> {
    pub steps: &'a [Step],
    pub crossing: &'a Crossing,
    pub mix: &'a Step,
}

/// How far the path may be off, as a band along it.
fn draw_band(context: &Context, scene: &Scene, frame: &Frame, spots: &[Spot], steps: &[Step]) {
    let doubts: Vec<f64> = steps.iter().map(|step| frame.length(step.expected * IN_PLANE)).collect();
    polyline(context, &band(spots, &doubts));
    context.set_fill_style_str(&scene.ink.doubt);
    context.fill();
}

fn draw_line(context: &Context, scene: &Scene, spots: &[Spot], steps: &[Step]) {
    context.set_line_cap("round");
    context.set_line_join("round");
    context.set_stroke_style_str(&scene.ink.strong);
    context.set_line_width(9.5);
    polyline(context, spots);
    context.stroke();
    context.set_line_width(7.0);
    for (pair, step) in spots.windows(2).zip(steps) {
        context.set_stroke_style_str(&step.css);
        polyline(context, pair);
        context.stroke();
    }
}

/// Rings round the ends' dabs and the keyboard's ring.
fn draw_marks(context: &Context, scene: &Scene, frame: &Frame, stands: &[Stand]) -> Drawn {
    let find = |number: u16| stands.iter().find(|stand| stand.paint.number == number);
    context.set_stroke_style_str(&scene.ink.strong);
    context.set_line_width(2.0);
    for stand in scene.ends.iter().filter_map(|end| find(*end)) {
        circle(context, frame.spot(stand.place), frame.dab() + 1.5)?;
        context.stroke();
    }
    if let Some(stand) = find(scene.cursor) {
        circle(context, frame.spot(stand.place), frame.dab() + 5.0)?;
        context.stroke();
    }
    Ok(())
}

fn disc(context: &Context, scene: &Scene, frame: &Frame) -> Drawn {
    let centre = Spot { x: frame.centre, y: frame.centre };
    context.set_fill_style_str(&scene.ink.paper);
    circle(context, centre, frame.radius + 1.0)?;
    context.fill();
    context.set_stroke_style_str(&scene.ink.line);
    context.set_line_width(1.0);
    for ring in [10.0, 20.0, 30.0, f64::from(RIM)] {
        circle(context, centre, frame.radius * ring / f64::from(RIM))?;
        context.stroke();
    }
    for step in 0..12 {
        context.begin_path();
        let (from, to) = (
            frame.polar(f64::from(step) * 30.0, frame.radius * 0.06),
            frame.polar(f64::from(step) * 30.0, frame.radius),
        );
        context.move_to(from.x, from.y);
        context.line_to(to.x, to.y);
        context.stroke();
    }
    Ok(())
}

fn names(context: &Context, scene: &Scene, frame: &Frame) -> Drawn {
    context.set_fill_style_str(&scene.ink.rim);
    context.set_text_align("center");
    context.set_text_baseline("middle");
    context.set_font(&format!("400 {}px {FAMILY}", if scene.size < SMALL { 12 } else { 14 }));
    for (angle, name) in HUE_NAMES {
        let spot = name_spot(scene, frame, angle);
        context.save();
        context.translate(spot.x, spot.y)?;
        // Names follow the rim and are never upside down.
        let turn = 90.0 - angle + if angle > 180.0 { 180.0 } else { 0.0 };
        context.rotate(turn.to_radians())?;
        context.fill_text(name, 0.0, 0.0)?;
        context.restore();
    }
    Ok(())
}

fn name_spot(scene: &Scene, frame: &Frame, angle: f64) -> Spot {
    frame.polar(angle, frame.radius + (scene.size / 2.0 - frame.radius) * 0.5)
}

fn dot(context: &Context, stand: &Stand, at: Spot, scene: &Scene) -> Drawn {
    circle(context, at, 4.5)?;
    context.set_fill_style_str(&stand.css);
    context.fill();
    context.set_stroke_style_str(&scene.ink.quiet);
    context.set_line_width(0.75);
    context.stroke();
    Ok(())
}

fn tail(context: &Context, stand: &Stand, frame: &Frame) {
    context.set_line_cap("round");
    context.set_line_width(2.0);
    for pair in stand.tail.windows(2) {
        context.set_stroke_style_str(&pair[0].1);
        polyline(context, &[frame.spot(pair[0].0), frame.spot(pair[1].0)]);
        context.stroke();
    }
}

type Code<'a> = (&'a str, Label);

/// Free places for the codes of the paints that are drawn as dabs.
fn place_codes<'a>(
    context: &Context,
    scene: &Scene,
    frame: &Frame,
    stands: &'a [Stand],
) -> Result<Vec<Code<'a>>, JsValue> {
    let shown: Vec<&Stand> = stands.iter().filter(|stand| scene.shows(stand.paint.number)).collect();
    let height = set_code_font(context, scene) + 2.0;
    let mut taken: Vec<Label> =
        shown.iter().map(|stand| Label::around(frame.spot(stand.place), frame.dab())).collect();
    taken.extend(HUE_NAMES.map(|(angle, _)| Label::around(name_spot(scene, frame, angle), 18.0)));
    let mut codes = Vec::new();
    for stand in shown {
        let code = stand.paint.code.as_str();
        let text = (context.measure_text(code)?.width() + 4.0, height);
        if let Some(label) = place_label(frame, frame.spot(stand.place), text, &taken) {
            taken.push(label);
            codes.push((code, label));
        }
    }
    Ok(codes)
}

/// Letters with a rim of paper, so that they read over a path too.
fn draw_codes(context: &Context, scene: &Scene, codes: &[Code<'_>]) -> Drawn {
    set_code_font(context, scene);
    context.set_text_align("left");
    context.set_text_baseline("middle");
    context.set_line_width(3.0);
    context.set_line_join("round");
    context.set_stroke_style_str(&scene.ink.paper);
    context.set_fill_style_str(&scene.ink.strong);
    for (code, label) in codes {
        let (x, y) = (label.left + 2.0, label.middle().y);
        context.stroke_text(code, x, y)?;
        context.fill_text(code, x, y)?;
    }
    Ok(())
}

/// Sets the letters of codes and answers their size.
fn set_code_font(context: &Context, scene: &Scene) -> f64 {
    let size = if scene.size < SMALL { 11.0 } else { 13.0 };
    context.set_font(&format!("600 {size}px {FAMILY}"));
    size
}

/// The ring where the path is greyest, named; the name keeps off `keep_off`.
fn crossing_mark(
    context: &Context,
    scene: &Scene,
    frame: &Frame,
    crossing: &Crossing,
    keep_off: &[Spot],
) -> Drawn {
    let name = match crossing.kind {
        CrossingKind::Pure => "pure grey",
        CrossingKind::Near => "near grey",
        CrossingKind::Dull => "dullest",
        CrossingKind::None => return Ok(()),
    };
    let at = frame.spot(wheel(crossing.lab));
    for (radius, width, colour) in [(8.0, 4.5, &scene.ink.paper), (8.0, 2.0, &scene.ink.strong)] {
        circle(context, at, radius)?;
        context.set_line_width(width);
        context.set_stroke_style_str(colour);
        context.stroke();
    }
    let [a, b] = whole_parts(crossing.share);
    let text = format!("{name} {a}:{b}");
    context.set_font(&format!("600 14px {FAMILY}"));
    context.set_text_align("center");
    context.set_text_baseline("middle");
    let size = (context.measure_text(&text)?.width() + 16.0, 24.0);
    let label = place_aside(frame, at, size, keep_off);
    context.begin_path();
    context.round_rect_with_f64(label.left, label.top, label.width, label.height, 12.0)?;
    context.set_fill_style_str(&scene.ink.strong);
    context.fill();
    context.set_fill_style_str(&scene.ink.paper);
    let middle = label.middle();
    context.fill_text(&text, middle.x, middle.y + 0.5)
}

fn handle(context: &Context, scene: &Scene, at: Spot, css: &str) -> Drawn {
    for (radius, colour) in [(15.0, scene.ink.strong.as_str()), (13.5, scene.ink.paper.as_str()), (10.5, css)]
    {
        circle(context, at, radius)?;
        context.set_fill_style_str(colour);
        context.fill();
    }
    Ok(())
}

/// An end's letter in a small disc.
fn tag(context: &Context, scene: &Scene, at: Spot, letter: &str) -> Drawn {
    circle(context, at, 10.0)?;
    context.set_fill_style_str(&scene.ink.strong);
    context.fill();
    context.set_fill_style_str(&scene.ink.paper);
    context.set_font(&format!("600 13px {FAMILY}"));
    context.set_text_align("center");
    context.set_text_baseline("middle");
    context.fill_text(letter, at.x, at.y + 0.5)
}

fn circle(context: &Context, at: Spot, radius: f64) -> Drawn {
    context.begin_path();
    context.arc(at.x, at.y, radius.max(0.1), 0.0, TAU)
}

fn polyline(context: &Context, spots: &[Spot]) {
    context.begin_path();
    for spot in spots {
        context.line_to(spot.x, spot.y);
    }
}

impl Stand {
    fn dab(&self) -> Dab<'_> {
        Dab {
            fill: &self.css,
            rim: &self.rim,
            grain: self.paint.granulation.unwrap_or(0.0),
            seed: u32::from(self.paint.number),
        }
    }
}

impl Scene {
    /// Whether a paint is drawn as a dab: it is packed, or an end of the path.
    pub(crate) fn shows(&self, number: u16) -> bool {
        self.kit.contains(&number) || self.ends.contains(&number)
    }
}
