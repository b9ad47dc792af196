//! Leaves as PDF 1.7 (ISO 32000-1): all pages in one file, words selectable, the face embedded.
//!
//! A page's content is written in millimetres: its first matrix makes points
//! of them. Characters the face lacks are drawn as a box and read back as U+FFFD.
//!
//! Written by hand and not by a library: there are a few kinds of objects, none
//! of them compressed, and a library would bring 47 KB more into the download,
//! half of that being floats to their last digit (see [`Decimal`]).

use std::fmt::Write;

use washpath_core::Decimal;

use crate::area::Area;
use crate::font::{ASCENT, CHARACTERS, DESCENT, EM, FILE, advance, glyph};
use crate::leaf::{Leaf, Paintwork, Point, Rgb, Shape, Stroke, Text};

/// Points of a millimetre.
const POINTS: f32 = 72.0 / 25.4;

/// A circle's quarter as a Bézier curve: 4/3 (√2 - 1), the usual approximation, off by 0.03 % of the radius.
const QUARTER: f32 = 0.552_284_8;

/// Objects that stand once, in the order they are written; those of the pages follow.
const TREE: usize = 2;
const INFO: usize = 3;
const FONT: usize = 4;
const FIRST_PAGE: usize = 9;

/// Leaves as one PDF.
///
/// ```
/// use washpath_print::{Leaf, pdf};
/// assert!(pdf(&[Leaf::new(210.0, 297.0)], "Harbour").starts_with(b"%PDF-1.7"));
/// ```
#[must_use]
pub fn pdf(leaves: &[Leaf], title: &str) -> Vec<u8> {
    // Four bytes above 127 tell that what follows is no plain text.
    let mut file = File { bytes: b"%PDF-1.7\n%\xe2\xe3\xcf\xd3\n".to_vec(), offsets: Vec::new() };
    let mut kids = String::new();
    for i in 0..leaves.len() {
        put(&mut kids, format_args!("{} 0 R ", FIRST_PAGE + 2 * i));
    }
    file.object(&format!("<</Type /Catalog /Pages {TREE} 0 R>>"));
    file.object(&format!("<</Type /Pages /Kids [{kids}] /Count {}>>", leaves.len()));
    file.object(&format!("<</Title {} /Creator (Washpath)>>", unicode(title)));
    font(&mut file);
    for leaf in leaves {
        let [width, height] = [leaf.width, leaf.height].map(|side| Decimal(side * POINTS));
        let contents = file.offsets.len() + 2;
        file.object(&format!(
            "<</Type /Page /Parent {TREE} 0 R /MediaBox [0 0 {width} {height}] \
             /Resources <</Font <</F {FONT} 0 R>>>> /Contents {contents} 0 R>>"
        ));
        file.stream("", content(leaf).as_bytes());
    }
    file.finish()
}

/// A file that grows by objects, numbered from 1.
struct File {
    bytes: Vec<u8>,
    /// Where each object begins.
    offsets: Vec<usize>,
}

impl File {
    fn object(&mut self, body: &str) {
        self.open();
        self.bytes.extend(body.as_bytes());
        self.bytes.extend(b"\nendobj\n");
    }

    /// A stream; its dictionary has these entries and its length.
    fn stream(&mut self, entries: &str, content: &[u8]) {
        self.open();
        self.bytes.extend(format!("<<{entries} /Length {}>>\nstream\n", content.len()).as_bytes());
        self.bytes.extend(content);
        self.bytes.extend(b"\nendstream\nendobj\n");
    }

    fn open(&mut self) {
        self.offsets.push(self.bytes.len());
        self.bytes.extend(format!("{} 0 obj\n", self.offsets.len()).as_bytes());
    }

    /// The table of where objects begin, twenty bytes a row, and the trailer.
    fn finish(mut self) -> Vec<u8> {
        let (start, size) = (self.bytes.len(), self.offsets.len() + 1);
        let mut end = format!("xref\n0 {size}\n0000000000 65535 f \n");
        for offset in &self.offsets {
            put(&mut end, format_args!("{offset:010} 00000 n \n"));
        }
        put(&mut end, format_args!("trailer\n<</Size {size} /Root 1 0 R /Info {INFO} 0 R>>\n"));
        put(&mut end, format_args!("startxref\n{start}\n%%EOF\n"));
        self.bytes.extend(end.as_bytes());
        self.bytes
    }
}

/// Writing to a string cannot fail.
fn put(out: &mut String, text: std::fmt::Arguments<'_>) {
    let _ = out.write_fmt(text);
}

/// A text string in UTF-16, as hexadecimal digits: nothing in it can end it.
fn unicode(words: &str) -> String {
    let mut hex = String::from("<FEFF");
    for unit in words.encode_utf16() {
        put(&mut hex, format_args!("{unit:04X}"));
    }
    hex + ">"
}

/// The face, five objects: two bytes of text are the number of a glyph.
fn font(file: &mut File) {
    const FACE: &str = "/Washpath-Latin";
    let [cid, descriptor, data, map] = [FONT + 1, FONT + 2, FONT + 3, FONT + 4];
    file.object(&format!(
        "<</Type /Font /Subtype /Type0 /BaseFont {FACE} /Encoding /Identity-H \
         /DescendantFonts [{cid} 0 R] /ToUnicode {map} 0 R>>"
    ));
    let mut widths = String::new();
    for glyph in 0..=CHARACTERS.chars().count() {
        put(&mut widths, format_args!("{} ", advance(glyph as u16)));
    }
    file.object(&format!(
        "<</Type /Font /Subtype /CIDFontType2 /BaseFont {FACE} \
         /CIDSystemInfo <</Registry (Adobe) /Ordering (Identity) /Supplement 0>> \
         /FontDescriptor {descriptor} 0 R /CIDToGIDMap /Identity /W [0 [{widths}]]>>"
    ));
    let [ascent, descent] = [ASCENT * EM, -DESCENT * EM].map(Decimal);
    // Flag 4: symbolic, so no encoding but the glyphs' own numbers.
    file.object(&format!(
        "<</Type /FontDescriptor /FontName {FACE} /Flags 4 /FontBBox [-177 -250 883 880] /ItalicAngle 0 \
         /Ascent {ascent} /Descent {descent} /CapHeight 660 /StemV 84 /FontFile2 {data} 0 R>>"
    ));
    file.stream(&format!("/Length1 {}", FILE.len()), FILE);
    file.stream("", to_unicode().as_bytes());
}

/// The characters of the glyphs, a hundred at most to a block (ISO 32000-1, 9.10.3).
fn to_unicode() -> String {
    let mut map = String::from(
        "/CIDInit /ProcSet findresource begin\n12 dict begin\nbegincmap\n\
         /CIDSystemInfo <</Registry (Adobe) /Ordering (UCS) /Supplement 0>> def\n\
         /CMapName /Washpath-Unicode def\n/CMapType 2 def\n\
         1 begincodespacerange\n<0000> <FFFF>\nendcodespacerange\n",
    );
    let characters: Vec<char> =
        std::iter::once(char::REPLACEMENT_CHARACTER).chain(CHARACTERS.chars()).collect();
    for (block, characters) in characters.chunks(100).enumerate() {
        put(&mut map, format_args!("{} beginbfchar\n", characters.len()));
        for (i, character) in characters.iter().enumerate() {
            put(&mut map, format_args!("<{:04X}> <{:04X}>\n", 100 * block + i, u32::from(*character)));
        }
        map.push_str("endbfchar\n");
    }
    map + "endcmap\nCMapName currentdict /CMap defineresource pop\nend\nend\n"
}

fn content(leaf: &Leaf) -> String {
    let mut content = String::new();
    numbers(&mut content, &[POINTS, 0.0, 0.0, POINTS, 0.0, leaf.height * POINTS], "cm");
    for shape in &leaf.shapes {
        draw(&mut content, shape);
    }
    content
}

/// Operands and their operator.
fn numbers(content: &mut String, operands: &[f32], operator: &str) {
    for operand in operands {
        put(content, format_args!("{} ", Decimal(*operand)));
    }
    content.push_str(operator);
    content.push('\n');
}

/// Down on a leaf is below zero on a page.
fn draw(content: &mut String, shape: &Shape) {
    match shape {
        Shape::Rectangle(Area { left, top, width, height }, paint) => {
            inks(content, paint);
            numbers(content, &[*left, -top - height, *width, *height], "re");
            paintwork(content, paint);
        }
        Shape::Circle(middle, radius, paint) => {
            inks(content, paint);
            circle(content, *middle, *radius);
            paintwork(content, paint);
        }
        Shape::Outline(points, paint) => {
            inks(content, paint);
            run(content, points);
            content.push_str("h\n");
            paintwork(content, paint);
        }
        Shape::Line(points, stroke) => {
            let paint = Paintwork { fill: None, edge: Some(*stroke) };
            inks(content, &paint);
            run(content, points);
            paintwork(content, &paint);
        }
        Shape::Text(text) => words(content, text),
    }
}

/// Inks are set before a path begins.
fn inks(content: &mut String, paint: &Paintwork) {
    if let Some(fill) = paint.fill {
        numbers(content, &parts(fill), "rg");
    }
    if let Some(Stroke { width, ink, dashed }) = paint.edge {
        numbers(content, &parts(ink), "RG");
        numbers(content, &[width], "w");
        content.push_str(if dashed { "[1 1] 0 d\n" } else { "[] 0 d\n" });
    }
}

fn paintwork(content: &mut String, paint: &Paintwork) {
    content.push_str(match (paint.fill, paint.edge) {
        (Some(_), Some(_)) => "B\n",
        (Some(_), None) => "f\n",
        (None, Some(_)) => "S\n",
        (None, None) => "n\n",
    });
}

fn run(content: &mut String, points: &[Point]) {
    for (i, [x, y]) in points.iter().enumerate() {
        numbers(content, &[*x, -y], if i == 0 { "m" } else { "l" });
    }
}

fn circle(content: &mut String, [x, y]: Point, radius: f32) {
    let (y, bend) = (-y, QUARTER * radius);
    numbers(content, &[x + radius, y], "m");
    // Each quarter: the two handles and the end.
    for quarter in [
        [radius, bend, bend, radius, 0.0, radius],
        [-bend, radius, -radius, bend, -radius, 0.0],
        [-radius, -bend, -bend, -radius, 0.0, -radius],
        [bend, -radius, radius, -bend, radius, 0.0],
    ] {
        let [a, b, c, d, e, f] = quarter;
        numbers(content, &[x + a, y + b, x + c, y + d, x + e, y + f], "c");
    }
    content.push_str("h\n");
}

fn words(content: &mut String, text: &Text) {
    let [x, y] = [text.at[0], -text.at[1]];
    numbers(content, &parts(text.ink), "rg");
    put(content, format_args!("BT\n/F {} Tf\n", Decimal(text.size)));
    let matrix = if text.upwards {
        [0.0, 1.0, -1.0, 0.0, x, y + text.start()]
    } else {
        [1.0, 0.0, 0.0, 1.0, x + text.start(), y]
    };
    numbers(content, &matrix, "Tm");
    content.push('<');
    for character in text.words.chars() {
        put(content, format_args!("{:04X}", glyph(character)));
    }
    content.push_str("> Tj\nET\n");
}

fn parts(ink: Rgb) -> [f32; 3] {
    ink.map(|part| f32::from(part) / 255.0)
}
