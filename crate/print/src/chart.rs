//! The mixing chart: every pair of the kit, predicted beside a place to paint it.

use washpath_core::{Paint, PaintNumber, Path, load_name};

use crate::area::Area;
use crate::error::Error;
use crate::font::{width, wrap};
use crate::leaf::{Anchor, INK, Leaf, QUIET, Stroke};
use crate::order::Order;
use crate::words::capital;

/// Shares of the column's paint in the strips of a cell: 3:1, 1:1, 1:3.
const STRIPS: [(f32, &str); 3] = [(0.25, "3:1"), (0.5, "1:1"), (0.75, "1:3")];

/// Smallest cell that a brush fills, width and height of both halves; with strips it is wider. Common practice, no source.
const LEAST: [f32; 2] = [11.0, 14.5];
const LEAST_STRIPS: [f32; 2] = [20.0, 14.5];
/// Cells of a small kit grow up to this.
const MOST: [f32; 2] = [27.0, 30.0];

/// Cells are no higher than so many times their width.
const SLENDER: f32 = 1.8;

/// Height of the band of column headings, which read upwards.
const HEADINGS: f32 = 25.0;

/// The chart of these paints at a load, with strips of three ratios in a cell or equal parts alone.
///
/// Rows and columns are the paints in their order; a cell stands where row and
/// column meet, each pair once, and each paint alone on the diagonal. What does
/// not fit on a page goes over several.
///
/// # Errors
///
/// No paint; one that is not on the shelf; a load that is none.
pub fn chart(order: &Order<'_>, paints: &[PaintNumber], load: f32, strips: bool) -> Result<Vec<Leaf>, Error> {
    if !(load > 0.0 && load <= 1.0) {
        return Err(Error::Load);
    }
    let paints = order.paints(paints)?;
    let body = order.body();
    let names = if body.width < 150.0 { 17.0 } else { 24.0 };
    let least = if strips { LEAST_STRIPS } else { LEAST };
    let room = body.after(names).below(HEADINGS);
    let columns = chunk(paints.len(), (room.width / least[0]) as usize);
    let rows = chunk(paints.len(), (room.height / least[1]) as usize);
    let wide = (room.width / columns as f32).min(MOST[0]);
    let cell = [wide, (room.height / rows as f32).min(MOST[1]).min(SLENDER * wide)];
    let mut leaves = Vec::new();
    for first_row in (0..paints.len()).step_by(rows) {
        for first_column in (0..paints.len()).step_by(columns) {
            let last_row = (first_row + rows).min(paints.len());
            // Left of the diagonal only.
            let last_column = (first_column + columns).min(last_row);
            if first_column < last_column {
                let block = Block {
                    paints: &paints,
                    // Rows above the first column's own have no cell here.
                    rows: [first_row.max(first_column), last_row],
                    columns: [first_column, last_column],
                    corner: [body.left, room.left, room.top],
                    cell,
                    load,
                    strips,
                };
                leaves.push(block.leaf(order));
            }
        }
    }
    let reading = format!(
        "{}, {}; {}",
        capital(load_name(load)),
        if strips { "strips 3:1, 1:1, 1:3 of row to column" } else { "equal parts" },
        order.halves(),
    );
    Ok(order.bound(leaves, "Mixing chart", &reading))
}

/// How many of `count` go on a page that holds `most`, so that all pages hold about as many.
fn chunk(count: usize, most: usize) -> usize {
    let pages = count.div_ceil(most.max(1));
    count.div_ceil(pages.max(1)).max(1)
}

/// The part of the triangle on one page.
struct Block<'a> {
    paints: &'a [&'a Paint],
    /// First row and the one after the last.
    rows: [usize; 2],
    columns: [usize; 2],
    /// Left edges of the names and of the cells, top edge of the cells.
    corner: [f32; 3],
    cell: [f32; 2],
    load: f32,
    strips: bool,
}

impl Block<'_> {
    fn leaf(&self, order: &Order<'_>) -> Leaf {
        let mut leaf = order.leaf();
        for row in self.rows[0]..self.rows[1] {
            self.row_heading(&mut leaf, row);
            for column in self.columns[0]..self.columns[1].min(row + 1) {
                self.draw_cell(&mut leaf, order, row, column);
            }
        }
        for column in self.columns[0]..self.columns[1] {
            self.column_heading(&mut leaf, column);
        }
        leaf
    }

    fn area(&self, row: usize, column: usize) -> Area {
        let [_, left, top] = self.corner;
        let [width, height] = self.cell;
        let across = (column - self.columns[0]) as f32;
        let down = (row - self.rows[0]) as f32;
        Area::new(left + across * width, top + down * height, width, height)
    }

    fn row_heading(&self, leaf: &mut Leaf, row: usize) {
        let [names, cells, _] = self.corner;
        let paint = self.paints[row];
        let room = cells - names - 2.0;
        let [_, middle] = self.area(row, self.columns[0]).middle();
        let lines = wrap(&paint.name, room, 2.2, 2);
        let top = middle - 1.4 * lines.len() as f32;
        leaf.text([names, top + 0.6], whole(&paint.code, room), INK, Anchor::Start, paint.code.as_str());
        for (i, line) in lines.into_iter().enumerate() {
            leaf.text([names, top + 3.6 + 2.6 * i as f32], 2.2, QUIET, Anchor::Start, line);
        }
    }

    /// A column is named where it begins: on the stairs of the diagonal.
    fn column_heading(&self, leaf: &mut Leaf, column: usize) {
        let first = self.rows[0].max(column);
        let area = self.area(first, column);
        let paint = self.paints[column];
        let room = HEADINGS - 2.0;
        let lines = wrap(&paint.name, room, 2.2, 2);
        let x = area.middle()[0] - 1.2 * (lines.len() as f32 - 1.0);
        let y = area.top - 1.5;
        leaf.text_upwards([x - 0.3, y], whole(&paint.code, room), INK, paint.code.as_str());
        for (i, line) in lines.into_iter().enumerate() {
            leaf.text_upwards([x + 2.8 + 2.5 * i as f32, y], 2.2, QUIET, line);
        }
    }

    fn draw_cell(&self, leaf: &mut Leaf, order: &Order<'_>, row: usize, column: usize) {
        let area = self.area(row, column).inset(0.7);
        let [a, b] = [self.paints[row], self.paints[column]];
        let path = Path::new(&a.film, &b.film, &order.view, self.load);
        let upper = area.row(0, 2);
        let alone = row == column;
        if self.strips && !alone {
            for (i, (share, sign)) in STRIPS.into_iter().enumerate() {
                let strip = upper.column(i, STRIPS.len());
                leaf.rectangle(strip, order.fill(path.colour(share)), None);
                if order.outlines {
                    sign_in(leaf, strip, &[sign]);
                }
            }
            for i in 1..STRIPS.len() {
                let x = area.column(i, STRIPS.len()).left;
                let from = if order.outlines { area.top } else { upper.bottom() };
                leaf.line(&[[x, from], [x, area.bottom()]], Stroke::HAIRLINE);
            }
        } else {
            leaf.rectangle(upper, order.fill(path.colour(0.5)), None);
            if order.outlines {
                let codes = [a.code.as_str(), b.code.as_str()];
                sign_in(leaf, upper, if alone { &codes[..1] } else { &codes });
            }
        }
        leaf.line(&[[area.left, upper.bottom()], [area.right(), upper.bottom()]], Stroke::HAIRLINE);
        let edge = if alone { Stroke::STRONG } else { Stroke::HAIRLINE };
        leaf.rectangle(area, None, Some(edge));
    }
}

/// Size at which a code fits: it is never cut.
fn whole(code: &str, room: f32) -> f32 {
    (room / width(code, 1.0)).min(3.1)
}

/// Codes in the middle of an area, one below the other, as large as there is room.
pub(crate) fn sign_in(leaf: &mut Leaf, area: Area, codes: &[&str]) {
    let widest = codes.iter().map(|code| width(code, 1.0)).fold(0.1, f32::max);
    let size = (area.width - 0.8).min(16.0) / widest;
    let size = size.min(area.height * 0.8 / codes.len() as f32).min(2.6);
    let [x, y] = area.middle();
    for (i, code) in codes.iter().enumerate() {
        let down = (i as f32 - 0.5 * (codes.len() - 1) as f32) * size * 1.1;
        leaf.text([x, y + down + size * 0.33], size, QUIET, Anchor::Middle, *code);
    }
}
