//! A bound on how well any kit could serve some targets.
//!
//! Whatever serves a colour has a paint p of the kit in it, and costs no less than
//! the best that any sets with p do, partners being free from all candidates. The
//! least sum of those costs over so many paints is a p-median, whose Lagrangian
//! relaxation bounds it from below (G. Cornuejols, M. L. Fisher, G. L. Nemhauser,
//! Management Science 23 (1977) 789).

use crate::choose::pair_costs::Table;
use crate::numeric::minmax::{greater, lesser};
use crate::numeric::sort::in_order;

/// Steps of the bound.
const STEPS: usize = 300;

/// A cost that no kit of `size` paints with the required ones falls below.
pub(crate) fn bound(table: &Table, size: usize, required: &[usize], known: f32) -> f32 {
    let (paints, least) = (table.paints(), least_costs(table));
    let targets = table.weights().len();
    // What a colour costs at least with any paint; the plain relaxation is their sum.
    let mut prices: Vec<f32> = (0..targets)
        .map(|t| (0..paints).map(|p| least[p * targets + t]).fold(f32::INFINITY, lesser))
        .collect();
    let mut best = prices.iter().sum::<f32>();
    let mut pace = 1.0;
    for step in 0..STEPS {
        let value = |p: usize| -> f32 {
            let row = &least[p * targets..(p + 1) * targets];
            row.iter().zip(&prices).map(|(cost, price)| lesser(cost - price, 0.0)).sum()
        };
        let mut values: Vec<(f32, usize)> =
            (0..paints).map(|p| (value(p), p)).filter(|(_, p)| !required.contains(p)).collect();
        values = in_order(values, |(value, _)| *value);
        let chosen: Vec<(f32, usize)> = required
            .iter()
            .map(|p| (value(*p), *p))
            .chain(values.into_iter().take(size - required.len()))
            .collect();
        let found = prices.iter().sum::<f32>() + chosen.iter().map(|(value, _)| value).sum::<f32>();
        if found > best {
            best = found;
        } else if step % 10 == 9 {
            pace *= 0.7;
        }
        let slopes: Vec<f32> = (0..targets)
            .map(|t| 1.0 - chosen.iter().filter(|(_, p)| least[p * targets + t] < prices[t]).count() as f32)
            .collect();
        let length: f32 = slopes.iter().map(|slope| slope * slope).sum();
        if length == 0.0 {
            break;
        }
        let stride = pace * (known - found).max(0.0) / length;
        prices
            .iter_mut()
            .zip(&slopes)
            .for_each(|(price, slope)| *price = greater(*price + stride * slope, 0.0));
    }
    // Sums of many small costs in `f32`.
    (best - 1e-5).max(0.0)
}

/// What each colour costs at least with sets of candidates that hold a paint, paint by paint.
fn least_costs(table: &Table) -> Vec<f32> {
    let (paints, targets) = (table.paints(), table.weights().len());
    let mut least: Vec<f32> = (0..paints).flat_map(|_| table.weights().iter().copied()).collect();
    let mut covered = vec![vec![0u64; targets.div_ceil(64)]; paints];
    for a in 0..paints {
        for b in 0..paints {
            let row = &mut least[a * targets..(a + 1) * targets];
            row.iter_mut().zip(table.costs(a, b)).for_each(|(cost, found)| *cost = lesser(*cost, *found));
        }
    }
    for c in 0..paints {
        for b in 0..c {
            for a in 0..b {
                for paint in [a, b, c] {
                    let cover = table.cover([a, b, c]);
                    covered[paint].iter_mut().zip(cover).for_each(|(bits, found)| *bits |= found);
                }
            }
        }
    }
    for (paint, bits) in covered.iter().enumerate() {
        for t in (0..targets).filter(|t| bits[t / 64] >> (t % 64) & 1 == 1) {
            least[paint * targets + t] = 0.0;
        }
    }
    least
}
