//! Surrounding: whether a closed surface of triangles has a colour inside.
//!
//! A ray from the colour towards white meets the surface an odd number of times
//! if it is inside. All that three paints mix, at every ratio and load, is a
//! tetrahedron of amounts (paper and the three masstones are its corners) put
//! into CIELAB by a continuous map. Where the image of its four faces is met an
//! odd number of times the map's degree is odd, so some mix of the three is
//! exactly that colour, however the image is bent. Where the image folds over
//! itself a colour may be missed; none is claimed wrongly but for the flatness of
//! the triangles. A face counts by itself: the parity of the whole is the
//! exclusive or of its faces'.

use crate::colour::Lab;
use crate::numeric::sort::in_order;

/// Side of a column, and columns along a* and along b*; colours beyond belong to the outermost.
const SIDE: f32 = 12.0;
const COLUMNS: usize = 22;

fn along(value: f32) -> usize {
    // Below 0 the conversion gives 0.
    ((value * (1.0 / SIDE) + 0.5 * COLUMNS as f32) as usize).min(COLUMNS - 1)
}

/// Colours in columns of equal a* and b*, each from dark to light.
#[derive(Clone, Debug)]
pub(crate) struct Columns {
    starts: Vec<u32>,
    colours: Vec<(Lab, u32)>,
}

impl Columns {
    pub(crate) fn new(colours: &[Lab]) -> Self {
        let column = |lab: Lab| along(lab.a) * COLUMNS + along(lab.b);
        let colours: Vec<(Lab, u32)> = colours.iter().enumerate().map(|(i, lab)| (*lab, i as u32)).collect();
        let colours = in_order(in_order(colours, |(lab, _)| lab.l), |(lab, _)| column(*lab) as f32);
        let starts = (0..=COLUMNS * COLUMNS)
            .map(|at| colours.partition_point(|(lab, _)| column(*lab) < at) as u32)
            .collect();
        Self { starts, colours }
    }

    /// Turns over the bit of each colour whose ray towards white meets a triangle.
    pub(crate) fn cross(&self, corners: [Lab; 3], bits: &mut [u64]) {
        let range = |value: fn(&Lab) -> f32| {
            let [a, b, c] = [0, 1, 2].map(|i| value(&corners[i]));
            (a.min(b).min(c), a.max(b).max(c))
        };
        let (top, wide, deep) = (range(|lab| lab.l).1, range(|lab| lab.a), range(|lab| lab.b));
        let triangle = Triangle::new(&corners);
        let (first, last) = (along(deep.0), along(deep.1));
        for row in along(wide.0)..=along(wide.1) {
            let row = row * COLUMNS;
            for column in row + first..=row + last {
                let run = self.starts[column] as usize..self.starts[column + 1] as usize;
                for (lab, index) in self.colours[run].iter().take_while(|(lab, _)| lab.l < top) {
                    bits[*index as usize / 64] ^= u64::from(triangle.is_above(*lab)) << (index % 64);
                }
            }
        }
    }
}

/// A triangle made ready to be compared with many colours, without branches.
struct Triangle {
    edges: [Edge; 3],
    corner: Lab,
    /// Rise of its plane along a* and b*.
    rise: [f32; 2],
}

/// An edge from its end of lower b* to the other, whichever way it ran: neighbours that share it agree.
#[derive(Clone, Copy)]
struct Edge {
    low: Lab,
    high: f32,
    /// a* along b*.
    slope: f32,
}

impl Triangle {
    fn new([p, q, r]: &[Lab; 3]) -> Self {
        let edge = |p: &Lab, q: &Lab| {
            let (low, high) = if p.b <= q.b { (*p, *q) } else { (*q, *p) };
            Edge { low, high: high.b, slope: (high.a - low.a) / (high.b - low.b) }
        };
        let (qa, qb, ra, rb) = (q.a - p.a, q.b - p.b, r.a - p.a, r.b - p.b);
        let (ql, rl, area) = (q.l - p.l, r.l - p.l, qa * rb - qb * ra);
        let rise = [(ql * rb - rl * qb) / area, (rl * qa - ql * ra) / area];
        Self { edges: [edge(p, q), edge(q, r), edge(r, p)], corner: *p, rise }
    }

    /// Whether a ray from a colour towards white meets it.
    fn is_above(&self, lab: Lab) -> bool {
        let mut inside = false;
        for edge in &self.edges {
            let beside = (edge.low.b <= lab.b) & (lab.b < edge.high);
            inside ^= beside & (edge.low.a + (lab.b - edge.low.b) * edge.slope > lab.a);
        }
        let [of_a, of_b] = self.rise;
        let height = self.corner.l + of_a * (lab.a - self.corner.a) + of_b * (lab.b - self.corner.b);
        inside & (height > lab.l)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn point(l: f32, a: f32, b: f32) -> Lab {
        Lab::new(l, a, b)
    }

    proptest! {
        #[test]
        fn a_tetrahedron_surrounds_its_weighted_means_and_nothing_else(
            corners in proptest::array::uniform4((10f32..90.0, -80f32..80.0, -80f32..80.0)),
            weights in proptest::array::uniform4(-0.5f32..1.0),
        ) {
            let corners = corners.map(|(l, a, b)| point(l, a, b));
            let sum: f32 = weights.iter().sum();
            prop_assume!(sum > 0.3);
            let shares = weights.map(|weight| weight / sum);
            prop_assume!(shares.iter().all(|share| share.abs() > 0.02));
            let volume = (0..4).map(|i| corners[i].l).fold(0.0, f32::max) - (0..4).map(|i| corners[i].l).fold(100.0, f32::min);
            prop_assume!(volume > 5.0);
            let mut mean = point(0.0, 0.0, 0.0);
            for (share, corner) in shares.iter().zip(&corners) {
                mean += *corner * *share;
            }
            let columns = Columns::new(&[mean]);
            let mut bits = [0];
            for left_out in 0..4 {
                let face: Vec<Lab> = (0..4).filter(|i| *i != left_out).map(|i| corners[i]).collect();
                columns.cross([face[0], face[1], face[2]], &mut bits);
            }
            prop_assert_eq!(bits[0] == 1, shares.iter().all(|share| *share > 0.0));
        }
    }
}
