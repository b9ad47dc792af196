//! The wheel to paint: rings, hue names, and the kit's paints in their places.

use washpath_core::colour::{RIM, wheel as wheel_point};
use washpath_core::hue::HUE_NAMES;
use washpath_core::{Lab, Paint, PaintNumber};

use crate::area::Area;
use crate::error::Error;
use crate::font::{fit, width};
use crate::leaf::{Anchor, INK, Leaf, Point, QUIET, Stroke};
use crate::order::Order;
use crate::words::code;

/// Rings of CAM16-UCS chroma M'.
const RINGS: [f32; 4] = [10.0, 20.0, 30.0, RIM];
/// Room for the hue names round the disc.
const NAMES: f32 = 9.5;
/// Size of the codes beside the circles.
const CODE: f32 = 2.6;
/// Height and least width of an entry in the key.
const ENTRY: [f32; 2] = [4.6, 50.0];

/// The wheel with these paints where they are strongest.
///
/// A circle's left half is predicted, its right half is to paint. Circles that
/// would lie on one another move apart; a line leads each back to its place.
///
/// # Errors
///
/// No paint; one that is not on the shelf.
pub fn wheel(order: &Order<'_>, paints: &[PaintNumber]) -> Result<Vec<Leaf>, Error> {
    let paints = order.paints(paints)?;
    let body = order.body();
    let (stage, key) = split(body, paints.len());
    let disc = Disc::within(stage);
    let mut leaf = order.leaf();
    disc.draw(&mut leaf);
    let spots: Vec<Spot<'_>> =
        paints.iter().map(|paint| Spot::new(order, &disc, paint, code(paint, &paints))).collect();
    draw_spots(&mut leaf, order, &disc, &spots);
    let left_out = list(&mut leaf, key, &spots);
    let mut leaves = vec![leaf];
    for rest in left_out.chunks(entries(body).max(1)) {
        let mut more = order.leaf();
        list(&mut more, body, rest);
        leaves.push(more);
    }
    let reading = if order.outlines {
        "Hue runs round, chroma outwards; paint the circles"
    } else {
        "Hue runs round, chroma outwards; predicted on the left of a circle, to paint on its right"
    };
    Ok(order.bound(leaves, "Hue wheel", reading))
}

/// The disc's area and the key's: the key below an upright page's wheel, beside it on others.
fn split(body: Area, count: usize) -> (Area, Area) {
    const GAP: f32 = 4.0;
    if body.width > body.height {
        let stage = body.first(body.height.min(body.width - ENTRY[1] - GAP));
        return (stage, body.after(stage.width + GAP));
    }
    let columns = ((body.width / ENTRY[1]) as usize).max(1);
    // A little more, so that rounding does not cost the last row.
    let wanted = count.div_ceil(columns) as f32 * ENTRY[0] + GAP + 0.1;
    let side = body.width.min(body.height - wanted.min(body.height * 0.3));
    (body.above(side), body.below(side + GAP))
}

/// The disc of the wheel on the leaf.
struct Disc {
    middle: Point,
    radius: f32,
}

impl Disc {
    fn within(area: Area) -> Self {
        Self { middle: area.middle(), radius: area.width.min(area.height) / 2.0 - NAMES }
    }

    fn polar(&self, degrees: f32, radius: f32) -> Point {
        let (sin, cos) = degrees.to_radians().sin_cos();
        [self.middle[0] + radius * cos, self.middle[1] - radius * sin]
    }

    /// Where a colour stands; what lies beyond the rim is held at it.
    fn spot(&self, lab: Lab) -> Point {
        let point = wheel_point(lab);
        let scale = self.radius / point.radius().max(RIM);
        [self.middle[0] + point.x * scale, self.middle[1] - point.y * scale]
    }

    /// The nearest point of the disc from which a circle still lies within.
    fn held(&self, [x, y]: Point, circle: f32) -> Point {
        let [dx, dy] = [x - self.middle[0], y - self.middle[1]];
        let most = self.radius - circle;
        let scale = if dx.hypot(dy) > most { most / dx.hypot(dy) } else { 1.0 };
        [self.middle[0] + dx * scale, self.middle[1] + dy * scale]
    }

    fn draw(&self, leaf: &mut Leaf) {
        for spoke in 0..12u8 {
            let degrees = 30.0 * f32::from(spoke);
            let ends = [self.polar(degrees, self.radius * 0.06), self.polar(degrees, self.radius)];
            leaf.line(&ends, Stroke::HAIRLINE);
        }
        for ring in RINGS {
            let outer = ring == RIM;
            let edge = if outer { Stroke { width: 0.3, ..Stroke::HAIRLINE } } else { Stroke::HAIRLINE };
            leaf.circle(self.middle, self.radius * ring / RIM, None, Some(edge));
            if !outer {
                let [x, y] = self.polar(0.0, self.radius * ring / RIM);
                leaf.text([x - 0.6, y - 0.7], 2.2, QUIET, Anchor::End, format!("{}", ring as u8));
            }
        }
        leaf.circle(self.middle, 0.5, Some(INK), None);
        for (degrees, name) in HUE_NAMES {
            // Names stand off the rim by as much as they are wide there.
            let (sin, cos) = (degrees as f32).to_radians().sin_cos();
            let off = 1.8 + 0.5 * width(name, 3.6) * cos.abs() + 1.3 * sin.abs();
            let [x, y] = self.polar(degrees as f32, self.radius + off);
            leaf.text([x, y + 1.2], 3.6, INK, Anchor::Middle, name);
        }
    }
}

/// A paint on the wheel.
struct Spot<'a> {
    paint: &'a Paint,
    /// Its code, told from others of the same.
    code: String,
    point: Point,
    colour: Lab,
}

impl<'a> Spot<'a> {
    fn new(order: &Order<'_>, disc: &Disc, paint: &'a Paint, code: String) -> Self {
        let colour = order.view.colour(&paint.film, order.view.strongest_load(&paint.film));
        Self { paint, code, point: disc.spot(colour), colour }
    }
}

fn draw_spots(leaf: &mut Leaf, order: &Order<'_>, disc: &Disc, spots: &[Spot<'_>]) {
    // Many paints share the disc: smaller circles, down to what a brush still fills.
    let crowd = (20.0 / spots.len() as f32).sqrt().min(1.0);
    let circle = (disc.radius * 0.055 * crowd).clamp(2.4, 4.4);
    let middles = spread(disc, spots, circle);
    let labels = labels(disc, spots, &middles, circle);
    // Letters clear the lines of the disc, never a circle.
    for (area, ..) in &labels {
        leaf.rectangle(*area, Some([255; 3]), None);
    }
    for (spot, middle) in spots.iter().zip(&middles) {
        if distance(spot.point, *middle) > 0.5 {
            leaf.line(&[spot.point, *middle], Stroke { width: 0.2, ..Stroke::STRONG });
            leaf.circle(spot.point, 0.45, Some(INK), None);
        }
    }
    for (spot, middle) in spots.iter().zip(&middles) {
        leaf.circle(*middle, circle, Some([255; 3]), None);
        if let Some(fill) = order.fill(spot.colour) {
            leaf.outline(half(*middle, circle), Some(fill), None);
        }
        leaf.circle(*middle, circle, None, Some(Stroke { width: 0.25, ..Stroke::STRONG }));
    }
    for (area, anchor, words) in labels {
        let x = match anchor {
            Anchor::Start => area.left,
            Anchor::Middle => area.middle()[0],
            Anchor::End => area.right(),
        };
        leaf.text([x, area.bottom() - 0.6], CODE, INK, anchor, words);
    }
}

/// What each circle is called, and where.
fn labels<'a>(
    disc: &Disc,
    spots: &'a [Spot<'_>],
    middles: &[Point],
    circle: f32,
) -> Vec<(Area, Anchor, &'a str)> {
    let mut taken: Vec<Area> = middles.iter().map(|middle| around(*middle, circle)).collect();
    let mut labels = Vec::new();
    for (spot, middle) in spots.iter().zip(middles) {
        let (area, anchor) = label(disc, *middle, circle, &spot.code, &taken);
        taken.push(area);
        labels.push((area, anchor, spot.code.as_str()));
    }
    labels
}

/// Middles of circles that do not lie on one another, as near to their places as some rounds of pushing bring them.
fn spread(disc: &Disc, spots: &[Spot<'_>], circle: f32) -> Vec<Point> {
    const ROUNDS: usize = 400;
    let apart = 2.0 * circle + 0.8;
    let mut middles: Vec<Point> = spots.iter().map(|spot| disc.held(spot.point, circle)).collect();
    for _ in 0..ROUNDS {
        let mut pushed = false;
        for i in 0..middles.len() {
            for j in 0..i {
                let [dx, dy] = [middles[i][0] - middles[j][0], middles[i][1] - middles[j][1]];
                let found = dx.hypot(dy);
                if found >= apart - 0.01 {
                    continue;
                }
                pushed = true;
                // Two paints at one place part along the angle of their order.
                let (sin, cos) = (i as f32).sin_cos();
                let [ux, uy] = if found > 0.01 { [dx / found, dy / found] } else { [cos, sin] };
                let push = 0.5 * (apart - found);
                middles[i] = disc.held([middles[i][0] + ux * push, middles[i][1] + uy * push], circle);
                middles[j] = disc.held([middles[j][0] - ux * push, middles[j][1] - uy * push], circle);
            }
        }
        if !pushed {
            break;
        }
    }
    middles
}

/// Where a code stands beside its circle: right, left, below, above, or where it covers least.
fn label(disc: &Disc, [x, y]: Point, circle: f32, code: &str, taken: &[Area]) -> (Area, Anchor) {
    let (wide, high) = (width(code, CODE) + 0.4, CODE + 0.4);
    let (near, slant) = (circle + 0.8, circle * 0.75 + 0.5);
    let places = [
        (Area::new(x + near, y - high / 2.0, wide, high), Anchor::Start),
        (Area::new(x - near - wide, y - high / 2.0, wide, high), Anchor::End),
        (Area::new(x - wide / 2.0, y + near, wide, high), Anchor::Middle),
        (Area::new(x - wide / 2.0, y - near - high, wide, high), Anchor::Middle),
        (Area::new(x + slant, y + slant, wide, high), Anchor::Start),
        (Area::new(x + slant, y - slant - high, wide, high), Anchor::Start),
        (Area::new(x - slant - wide, y + slant, wide, high), Anchor::End),
        (Area::new(x - slant - wide, y - slant - high, wide, high), Anchor::End),
    ];
    let stage = Area::new(disc.middle[0], disc.middle[1], 0.0, 0.0).inset(-disc.radius);
    let cost = |area: &Area| {
        let covered = taken.iter().filter(|other| area.meets(other)).count();
        covered + if stage.holds(area) { 0 } else { 100 }
    };
    let best = places.iter().enumerate().min_by_key(|(i, (area, _))| (cost(area), *i));
    best.map_or(places[0], |(_, place)| *place)
}

fn around([x, y]: Point, circle: f32) -> Area {
    Area::new(x, y, 0.0, 0.0).inset(-circle)
}

fn distance(a: Point, b: Point) -> f32 {
    (a[0] - b[0]).hypot(a[1] - b[1])
}

/// The left half of a circle.
fn half([x, y]: Point, radius: f32) -> Vec<Point> {
    (0..=24u8)
        .map(|step| {
            let (sin, cos) = (90.0 + 7.5 * f32::from(step)).to_radians().sin_cos();
            [x + radius * cos, y - radius * sin]
        })
        .collect()
}

/// Entries that an area's key holds.
fn entries(area: Area) -> usize {
    ((area.width / ENTRY[1]) as usize).max(1) * (area.height / ENTRY[0]) as usize
}

/// Codes and names, column by column; answers those that had no room.
fn list<'a, 'b>(leaf: &mut Leaf, area: Area, spots: &'b [Spot<'a>]) -> &'b [Spot<'a>] {
    let columns = ((area.width / ENTRY[1]) as usize).max(1);
    let (here, rest) = spots.split_at(entries(area).min(spots.len()));
    let rows = here.len().div_ceil(columns).max(1);
    for (i, Spot { paint, code, .. }) in here.iter().enumerate() {
        let column = area.column(i / rows, columns);
        let y = column.top + ENTRY[0] * (i % rows) as f32 + 3.4;
        leaf.text([column.left, y], 2.9, INK, Anchor::Start, fit(code, 14.0, 2.9));
        let name = fit(&paint.name, column.width - 16.5, 2.9);
        leaf.text([column.left + 14.5, y], 2.9, QUIET, Anchor::Start, name);
    }
    rest
}
