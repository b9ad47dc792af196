//! What every sheet is made to: its page, its words, its inks; and its head and foot.

use washpath_core::shown;
use washpath_core::{Lab, Light, Paint, PaintNumber, Paper, Shelf, View};

use crate::area::Area;
use crate::error::Error;
use crate::font::{fit, wrap};
use crate::leaf::{Anchor, INK, Leaf, QUIET, Rgb, Stroke};

/// A page that printers hold.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Format {
    /// ISO 216: 210 by 297 mm.
    #[default]
    A4,
    /// ISO 216: 148 by 210 mm.
    A5,
    /// ANSI/ASME Y14.1 A: 8.5 by 11 inches.
    Letter,
}

impl Format {
    /// Every format.
    pub const ALL: [Self; 3] = [Self::A4, Self::A5, Self::Letter];

    /// Width and height upright, in millimetres.
    #[must_use]
    pub const fn size(self) -> [f32; 2] {
        match self {
            Self::A4 => [210.0, 297.0],
            Self::A5 => [148.0, 210.0],
            Self::Letter => [215.9, 279.4],
        }
    }
}

/// What every sheet is made to.
#[derive(Clone, Debug)]
pub struct Order<'a> {
    /// The paints there are.
    pub shelf: &'a Shelf,
    /// Heads every page.
    pub title: &'a str,
    /// The day, in words; the caller knows it.
    pub date: &'a str,
    /// What washes lie on; colours are those of daylight.
    pub view: View,
    /// The page.
    pub format: Format,
    /// Whether the page lies on its long side.
    pub landscape: bool,
    /// Whether ink is saved: outlines and codes in place of colours.
    pub outlines: bool,
}

/// Printers leave a few millimetres of their page bare: 4 to 6 is common practice, no source.
const MARGIN: f32 = 11.0;
const HEAD: f32 = 15.5;
const FOOT: f32 = 11.5;
/// Length of the rule in the foot, mm.
pub const RULE: f32 = 50.0;

impl<'a> Order<'a> {
    /// An upright A4 in full colour.
    #[must_use]
    pub fn new(shelf: &'a Shelf, title: &'a str, date: &'a str, paper: &Paper) -> Self {
        Self {
            shelf,
            title,
            date,
            view: View::new(paper, Light::D65),
            format: Format::A4,
            landscape: false,
            outlines: false,
        }
    }

    /// Width and height of the page in millimetres.
    #[must_use]
    pub const fn size(&self) -> [f32; 2] {
        let [width, height] = self.format.size();
        if self.landscape { [height, width] } else { [width, height] }
    }

    pub(crate) const fn leaf(&self) -> Leaf {
        let [width, height] = self.size();
        Leaf::new(width, height)
    }

    /// What head and foot leave.
    pub(crate) const fn body(&self) -> Area {
        let [width, height] = self.size();
        Area::new(MARGIN, MARGIN + HEAD, width - 2.0 * MARGIN, height - 2.0 * MARGIN - HEAD - FOOT)
    }

    /// The colour of a predicted area; none where ink is saved.
    pub(crate) fn fill(&self, lab: Lab) -> Option<Rgb> {
        (!self.outlines).then(|| shown(lab).rgb)
    }

    /// How to read a cell of two halves.
    pub(crate) const fn halves(&self) -> &'static str {
        if self.outlines { "codes above, to paint below" } else { "predicted above, to paint below" }
    }

    /// Paints by their numbers, at least one.
    pub(crate) fn paints(&self, numbers: &[PaintNumber]) -> Result<Vec<&'a Paint>, Error> {
        if numbers.is_empty() {
            return Err(Error::Nothing);
        }
        Ok(numbers.iter().map(|number| self.shelf.get(*number)).collect::<Result<_, _>>()?)
    }

    /// Gives every leaf its head and foot: the title, what it is, how to read it.
    pub(crate) fn bound(&self, mut leaves: Vec<Leaf>, kind: &str, reading: &str) -> Vec<Leaf> {
        let count = leaves.len();
        for (i, leaf) in leaves.iter_mut().enumerate() {
            self.head(leaf, kind, reading);
            self.foot(leaf, (count > 1).then(|| format!("{} of {count}", i + 1)));
        }
        leaves
    }

    fn head(&self, leaf: &mut Leaf, kind: &str, reading: &str) {
        let (left, right) = (MARGIN, leaf.width - MARGIN);
        let date = fit(self.date, 40.0, 2.8);
        let title = if self.title.trim().is_empty() { kind } else { self.title };
        leaf.text([left, MARGIN + 4.4], 5.4, INK, Anchor::Start, fit(title, right - left - 44.0, 5.4));
        leaf.text([right, MARGIN + 4.4], 2.8, QUIET, Anchor::End, date);
        let under = format!("{kind}. {reading}");
        leaf.text([left, MARGIN + 9.2], 2.8, QUIET, Anchor::Start, fit(&under, right - left, 2.8));
        leaf.line(&[[left, MARGIN + 11.4], [right, MARGIN + 11.4]], Stroke::HAIRLINE);
    }

    fn foot(&self, leaf: &mut Leaf, number: Option<String>) {
        let (left, right, base) = (MARGIN, leaf.width - MARGIN, leaf.height - MARGIN);
        let rule = base - 4.4;
        leaf.line(&[[left, rule], [left + RULE, rule]], Stroke { width: 0.25, ..Stroke::STRONG });
        for centimetre in 0..=5u8 {
            let x = left + 10.0 * f32::from(centimetre);
            let rise = if centimetre % 5 == 0 { 2.4 } else { 1.4 };
            leaf.line(&[[x, rule], [x, rule - rise]], Stroke { width: 0.25, ..Stroke::STRONG });
        }
        leaf.text([left, base - 0.9], 2.3, QUIET, Anchor::Start, "50 mm; if not, print at 100 %");
        let note = if self.outlines {
            "Outlines: paint each field with what its code says."
        } else {
            "Colours as this printer shows them; the half you paint is the truth."
        };
        let lines = wrap(note, right - left - RULE - 8.0, 2.3, 2);
        for (i, line) in lines.iter().enumerate() {
            let y = base - 4.4 - 3.0 * (lines.len() - 1 - i) as f32;
            leaf.text([right, y], 2.3, QUIET, Anchor::End, line.as_str());
        }
        leaf.text([right, base - 0.9], 2.3, QUIET, Anchor::End, number.unwrap_or_default());
    }
}
