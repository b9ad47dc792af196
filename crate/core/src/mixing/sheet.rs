//! Sheets: a path at every load, as a painter paints a mixing chart.

use crate::colour::Lab;
use crate::mixing::path::{Laid, Path};
use crate::mixing::ratio::Ratio;
use crate::optics::film::Film;
use crate::optics::view::View;

/// Parts of A and B of each column of a sheet, as painters lay out a mixing chart: common practice, no source.
pub const SHEET_RATIOS: [Ratio; 9] = [
    Ratio::new(1, 0),
    Ratio::new(8, 1),
    Ratio::new(4, 1),
    Ratio::new(2, 1),
    Ratio::new(1, 1),
    Ratio::new(1, 2),
    Ratio::new(1, 4),
    Ratio::new(1, 8),
    Ratio::new(0, 1),
];

/// Ratios across, loads down.
#[derive(Clone, Debug, PartialEq)]
pub struct Sheet {
    /// Share of B of each column, 0 to 1.
    pub shares: Vec<f32>,
    /// Load of each row.
    pub loads: Vec<f32>,
    /// Colours, row by row.
    pub cells: Vec<Lab>,
}

impl Sheet {
    /// All mixes, or glazes, of `a` and `b` at these shares of B and these loads.
    #[must_use]
    pub fn new(a: &Film, b: &Film, laid: Laid, view: &View, shares: &[f32], loads: &[f32]) -> Self {
        let row = |load: &f32| {
            let path = Path::new(a, b, view, *load).laid(laid);
            shares.iter().map(move |share| path.colour(*share))
        };
        let cells = loads.iter().flat_map(row).collect();
        Self { shares: shares.to_vec(), loads: loads.to_vec(), cells }
    }

    /// The colour at a row and a column; `None` outside the sheet.
    #[must_use]
    pub fn cell(&self, row: usize, column: usize) -> Option<Lab> {
        (column < self.shares.len()).then(|| self.cells.get(row * self.shares.len() + column).copied())?
    }
}
