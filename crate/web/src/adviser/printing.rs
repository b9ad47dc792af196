//! Sheets to print, and links as QR codes.

use washpath_core::{Kit, Laid, Shelf, Stock};
use washpath_print::{Code, Error, Format, Labels, Leaf, Order, cards, chart, pair, pdf, svg, tin, wheel};
use wasm_bindgen::prelude::*;

use crate::border::{into, out};
use crate::from_page::{Fields, FromPage};
use crate::pair::Pair;
use crate::paper::PaperChoice;
use crate::parts::PanPaints;
use crate::shelf::shelf;

/// What the page wants printed.
struct Wanted {
    /// `chart`, `pair`, `wheel`, `tin` or `cards`.
    what: String,
    title: String,
    date: String,
    /// Number of the format, in the order of [`Format::ALL`].
    format: usize,
    landscape: bool,
    outlines: bool,
    paper: PaperChoice,
    capacity: usize,
    pans: Vec<PanPaints>,
    pair: Pair,
    /// Load of a chart.
    load: f32,
    /// Whether a chart's cells show three ratios.
    strips: bool,
    /// Labels for half pans and for full pans.
    labels: [bool; 2],
    /// Link of the code on a tin's plan.
    link: Option<String>,
}

impl FromPage for Wanted {
    fn from_page(value: &JsValue) -> Result<Self, String> {
        let fields = Fields::of(value)?;
        Ok(Self {
            what: fields.get("what")?,
            title: fields.get("title")?,
            date: fields.get("date")?,
            format: fields.get("format")?,
            landscape: fields.get("landscape")?,
            outlines: fields.get("outlines")?,
            paper: fields.get("paper")?,
            capacity: fields.get("capacity")?,
            pans: fields.get("pans")?,
            pair: fields.get("pair")?,
            load: fields.get("load")?,
            strips: fields.get("strips")?,
            labels: fields.get("labels")?,
            link: fields.get("link")?,
        })
    }
}

impl Wanted {
    fn leaves(&self, shelf: &Shelf) -> Result<Vec<Leaf>, JsError> {
        let order = Order {
            format: Format::ALL.get(self.format).copied().unwrap_or_default(),
            landscape: self.landscape,
            outlines: self.outlines,
            ..Order::new(shelf, &self.title, &self.date, &self.paper.paper()?)
        };
        let pans = self.pans.iter().map(PanPaints::pan).collect::<Result<_, _>>()?;
        let kit = Kit::new("", self.capacity, Stock::default(), pans)?;
        let leaves = match self.what.as_str() {
            "chart" => chart(&order, &kit.paints(), self.load, self.strips),
            "pair" => pair(&order, &self.pair()?),
            "wheel" => wheel(&order, &kit.paints()),
            "tin" => {
                let link = self.link.as_deref().map(Code::of).transpose()?;
                let [half, full] = self.labels;
                tin(&order, &kit, Labels { half, full }, link.as_ref())
            }
            "cards" => cards(&order, &kit.paints()),
            other => return Err(JsError::new(&format!("no sheet \"{other}\""))),
        };
        Ok(leaves?)
    }

    fn pair(&self) -> Result<washpath_print::Pair, Error> {
        let [a, b] = &self.pair.ends;
        Ok(washpath_print::Pair {
            ends: [a.recipe()?, b.recipe()?],
            laid: Laid::ALL.get(self.pair.laid).copied().unwrap_or_default(),
        })
    }
}

/// Sheets as SVG documents, one a page.
///
/// # Errors
///
/// No paint or no such paint, a link too long for a code; in words for the painter.
#[wasm_bindgen]
pub fn print_svg(wanted: JsValue) -> Result<JsValue, JsError> {
    let wanted: Wanted = into(wanted)?;
    out(&wanted.leaves(&shelf())?.iter().map(svg).collect::<Vec<_>>())
}

/// The same sheets as one PDF.
///
/// # Errors
///
/// As [`print_svg`].
#[wasm_bindgen]
pub fn print_pdf(wanted: JsValue) -> Result<Vec<u8>, JsError> {
    let wanted: Wanted = into(wanted)?;
    Ok(pdf(&wanted.leaves(&shelf())?, &wanted.title))
}

/// A link as the SVG of a QR code.
///
/// # Errors
///
/// A link longer than a code holds.
#[wasm_bindgen]
pub fn qr_svg(link: &str) -> Result<String, JsError> {
    Ok(Code::of(link)?.svg())
}
