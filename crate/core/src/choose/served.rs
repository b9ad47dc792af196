//! What a kit does for every colour that is wanted.

use crate::choose::pair_costs::Table;
use crate::numeric::minmax::lesser;

/// What a kit does for every colour.
#[derive(Clone)]
pub(crate) struct Served {
    costs: Vec<f32>,
    covered: Vec<u64>,
}

impl Served {
    /// By a kit, its paints by their index in the table.
    pub(crate) fn by(table: &Table, kit: &[usize]) -> Self {
        let mut served =
            Self { costs: table.weights().to_vec(), covered: vec![0; table.weights().len().div_ceil(64)] };
        for i in 0..kit.len() {
            served = served.with(table, &kit[..i], kit[i]);
        }
        served
    }

    /// By the kit with another paint.
    pub(crate) fn with(&self, table: &Table, kit: &[usize], paint: usize) -> Self {
        let mut served = self.clone();
        for other in kit.iter().copied().chain(std::iter::once(paint)) {
            for (cost, found) in served.costs.iter_mut().zip(table.costs(paint, other)) {
                *cost = lesser(*cost, *found);
            }
        }
        for (i, a) in kit.iter().enumerate() {
            for b in &kit[..i] {
                for (bits, found) in served.covered.iter_mut().zip(table.cover(ascending([*a, *b, paint]))) {
                    *bits |= found;
                }
            }
        }
        served
    }

    /// Its cost, 0 to 1.
    pub(crate) fn cost(&self) -> f32 {
        let open = |(chunk, bits): (&[f32], &u64)| -> f32 {
            chunk.iter().enumerate().map(|(i, cost)| if bits >> i & 1 == 1 { 0.0 } else { *cost }).sum()
        };
        self.costs.chunks(64).zip(&self.covered).map(open).sum()
    }
}

/// Three numbers, the least first.
fn ascending([a, b, c]: [usize; 3]) -> [usize; 3] {
    let (low, high) = (a.min(b), a.max(b));
    [low.min(c), high.min(c).max(low), high.max(c)]
}
