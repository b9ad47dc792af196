//! Cells of CIELAB, to look colours up by where they are.

use std::ops::RangeInclusive;

use crate::colour::Lab;
use crate::colour::ellipsoid::Ellipsoid;
use crate::numeric::minmax::greater;

/// Side of a cell.
const SIDE: f32 = 4.0;

/// Cells along L*, a* and b*; colours beyond belong to the outermost.
pub(crate) const CELLS: [usize; 3] = [26, 64, 64];

/// Where the first cell begins.
const ORIGIN: [f32; 3] = [0.0, -128.0, -128.0];

/// Number of all cells.
pub(crate) const ALL_CELLS: usize = CELLS[0] * CELLS[1] * CELLS[2];

/// The cell of a colour; neighbours in b* stand side by side.
pub(crate) fn cell_of(lab: Lab) -> usize {
    (cell_along(0, lab.l) * CELLS[1] + cell_along(1, lab.a)) * CELLS[2] + cell_along(2, lab.b)
}

/// The cell of a value along an axis.
pub(crate) fn cell_along(axis: usize, value: f32) -> usize {
    // Below 0 the conversion gives 0.
    (((value - ORIGIN[axis]) / SIDE) as usize).min(CELLS[axis] - 1)
}

/// The runs of neighbouring cells that an ellipsoid of a radius touches.
pub(crate) fn runs(ellipsoid: &Ellipsoid, radius: f32) -> impl Iterator<Item = RangeInclusive<usize>> {
    let half = ellipsoid.half_box(radius);
    let Lab { l, a, b, .. } = ellipsoid.centre();
    let ellipsoid = *ellipsoid;
    around(0, l, half[0])
        .flat_map(move |l_cell| around(1, a, half[1]).map(move |a_cell| (l_cell, a_cell)))
        .filter_map(move |(l_cell, a_cell)| {
            let [low, high] = ellipsoid.span(radius, borders(0, l_cell, l), borders(1, a_cell, a))?;
            let row = (l_cell * CELLS[1] + a_cell) * CELLS[2];
            Some(row + cell_along(2, b + low)..=row + cell_along(2, b + high))
        })
}

/// The cells along an axis that lie within a distance of a value.
fn around(axis: usize, middle: f32, half: f32) -> RangeInclusive<usize> {
    cell_along(axis, middle - half)..=cell_along(axis, middle + half)
}

/// Where a cell begins and ends along an axis, from a value on; the outermost never end.
fn borders(axis: usize, cell: usize, from: f32) -> [f32; 2] {
    let begin = if cell == 0 { f32::MIN } else { ORIGIN[axis] + cell as f32 * SIDE - from };
    let end = if cell + 1 == CELLS[axis] { f32::MAX } else { greater(begin, ORIGIN[axis] - from) + SIDE };
    [begin, end]
}
