//! A leaf: one printed page as a few plain shapes, true to scale.

use crate::area::Area;
use crate::font::{ASCENT, DESCENT, width};

/// sRGB, 0 to 255.
pub type Rgb = [u8; 3];

/// Ink of words and of what is to be seen first.
pub const INK: Rgb = [0x1c; 3];
/// Ink of what comes second.
pub const QUIET: Rgb = [0x5a; 3];
/// Ink of hairlines.
pub const HAIR: Rgb = [0x9c; 3];

/// A point in millimetres: to the right and down from the leaf's top left corner.
pub type Point = [f32; 2];

/// One page.
#[derive(Clone, Debug, PartialEq)]
pub struct Leaf {
    /// Width in millimetres.
    pub width: f32,
    /// Height in millimetres.
    pub height: f32,
    /// What is drawn, in order.
    pub shapes: Vec<Shape>,
}

/// What a leaf is made of.
#[derive(Clone, Debug, PartialEq)]
pub enum Shape {
    /// A rectangle.
    Rectangle(Area, Paintwork),
    /// A circle by its middle and radius.
    Circle(Point, f32, Paintwork),
    /// A closed outline.
    Outline(Vec<Point>, Paintwork),
    /// An open line.
    Line(Vec<Point>, Stroke),
    /// Words on one line.
    Text(Text),
}

/// How an area is filled and edged.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Paintwork {
    /// Its colour, if it has one.
    pub fill: Option<Rgb>,
    /// Its edge, if it has one.
    pub edge: Option<Stroke>,
}

/// A drawn line.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stroke {
    /// Width in millimetres.
    pub width: f32,
    /// Colour.
    pub ink: Rgb,
    /// Whether it is drawn in dashes of a millimetre.
    pub dashed: bool,
}

impl Stroke {
    /// The thinnest line that prints everywhere.
    pub const HAIRLINE: Self = Self { width: 0.15, ink: HAIR, dashed: false };
    /// A line to be seen first.
    pub const STRONG: Self = Self { width: 0.35, ink: INK, dashed: false };
    /// A line to cut along, or round what is not there.
    pub const DASHED: Self = Self { width: 0.15, ink: HAIR, dashed: true };
}

/// Which part of the words stands at their place.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Anchor {
    /// Their beginning.
    #[default]
    Start,
    /// Their middle.
    Middle,
    /// Their end.
    End,
}

/// Words on one line.
#[derive(Clone, Debug, PartialEq)]
pub struct Text {
    /// A point of the base line.
    pub at: Point,
    /// Size of the letters (their em) in millimetres.
    pub size: f32,
    /// Colour.
    pub ink: Rgb,
    /// Which part stands at the point.
    pub anchor: Anchor,
    /// Whether they read upwards, a quarter turn counter-clockwise.
    pub upwards: bool,
    /// The words.
    pub words: String,
}

impl Text {
    /// How far from the point the words begin, along their line.
    pub(crate) fn start(&self) -> f32 {
        match self.anchor {
            Anchor::Start => 0.0,
            Anchor::Middle => -width(&self.words, self.size) / 2.0,
            Anchor::End => -width(&self.words, self.size),
        }
    }
}

impl Shape {
    /// The area it covers, strokes not counted; words by the metrics of the embedded face.
    #[must_use]
    pub fn bounds(&self) -> Area {
        match self {
            Self::Rectangle(area, _) => *area,
            Self::Circle([x, y], radius, _) => Area::new(x - radius, y - radius, 2.0 * radius, 2.0 * radius),
            Self::Outline(points, _) | Self::Line(points, _) => Area::around(points),
            Self::Text(text) => {
                let [x, y] = text.at;
                let (start, length) = (text.start(), width(&text.words, text.size));
                let (rise, sink) = (ASCENT * text.size, DESCENT * text.size);
                if text.upwards {
                    Area::new(x - rise, y - start - length, rise + sink, length)
                } else {
                    Area::new(x + start, y - rise, length, rise + sink)
                }
            }
        }
    }
}

impl Leaf {
    /// An empty leaf of a width and a height in millimetres.
    #[must_use]
    pub const fn new(width: f32, height: f32) -> Self {
        Self { width, height, shapes: Vec::new() }
    }

    /// All of it.
    #[must_use]
    pub const fn area(&self) -> Area {
        Area::new(0.0, 0.0, self.width, self.height)
    }

    /// Fills an area, or leaves it empty, and edges it.
    pub(crate) fn rectangle(&mut self, area: Area, fill: Option<Rgb>, edge: Option<Stroke>) {
        self.shapes.push(Shape::Rectangle(area, Paintwork { fill, edge }));
    }

    /// The same for a circle.
    pub(crate) fn circle(&mut self, middle: Point, radius: f32, fill: Option<Rgb>, edge: Option<Stroke>) {
        self.shapes.push(Shape::Circle(middle, radius, Paintwork { fill, edge }));
    }

    /// The same for any closed outline.
    pub(crate) fn outline(&mut self, points: Vec<Point>, fill: Option<Rgb>, edge: Option<Stroke>) {
        self.shapes.push(Shape::Outline(points, Paintwork { fill, edge }));
    }

    pub(crate) fn line(&mut self, points: &[Point], stroke: Stroke) {
        self.shapes.push(Shape::Line(points.to_vec(), stroke));
    }

    /// Words; nothing where there are none.
    pub(crate) fn text(&mut self, at: Point, size: f32, ink: Rgb, anchor: Anchor, words: impl Into<String>) {
        self.write(Text { at, size, ink, anchor, upwards: false, words: words.into() });
    }

    /// Words that read upwards.
    pub(crate) fn text_upwards(&mut self, at: Point, size: f32, ink: Rgb, words: impl Into<String>) {
        self.write(Text { at, size, ink, anchor: Anchor::Start, upwards: true, words: words.into() });
    }

    fn write(&mut self, text: Text) {
        if !text.words.is_empty() {
            self.shapes.push(Shape::Text(text));
        }
    }
}
