//! What every pair and every triple of the candidates does for every target.

use crate::colour::Lab;
use crate::colour::cells::{ALL_CELLS, cell_of, runs};
use crate::colour::ellipsoid::Ellipsoid;
use crate::colour::enclosure::Columns;
use crate::kit::targets::Targets;
use crate::numeric::minmax::lesser;
use crate::optics::film::Film;
use crate::optics::view::View;
use crate::reach::LOADS;

/// CIEDE2000 from which a colour counts as missed altogether.
pub const FAR: f32 = 10.0;

/// Places along a pair's path: both ends and 15 ratios, even in log-odds of masstones from 32:1 to 1:32.
const RATIOS: usize = 17;
const OCTAVES: f32 = 5.0;

/// Every so many of them is a corner of the surfaces that surround colours.
const COARSE: usize = 4;

/// A pair's colours: one row a load.
type Grid = [[Lab; RATIOS]; LOADS.len()];

/// Costs and coverings, by pairs and triples of candidates.
///
/// The cost of a colour is its share of the targets' weight times
/// min(1, (d / [`FAR`])²), where d is CIEDE2000 to the nearest mix.
#[derive(Clone, Debug)]
pub(crate) struct Table {
    paints: usize,
    weights: Vec<f32>,
    /// One row a pair, a paint with itself being that paint alone.
    costs: Vec<f32>,
    /// One row of bits a triple: the colours that it surrounds.
    covers: Vec<u64>,
}

/// Fills a table, pair by pair and triple by triple.
pub(crate) struct Filling {
    films: Vec<Film>,
    view: View,
    ellipsoids: Vec<Ellipsoid>,
    /// By cell, the colours near enough to matter.
    starts: Vec<u32>,
    near: Vec<u16>,
    columns: Columns,
    paper: Lab,
    singles: Vec<[Lab; LOADS.len()]>,
    /// Masstones along every pair's path, and which colours lie below its sheet.
    edges: Vec<[Lab; RATIOS / COARSE + 1]>,
    below: Vec<u64>,
    pub(crate) table: Table,
}

impl Table {
    fn words(&self) -> usize {
        self.weights.len().div_ceil(64)
    }

    /// Number of candidates.
    pub(crate) const fn paints(&self) -> usize {
        self.paints
    }

    /// Share of the weight of each colour; they add up to 1.
    pub(crate) fn weights(&self) -> &[f32] {
        &self.weights
    }

    /// What each colour costs with this pair, in either order.
    pub(crate) fn costs(&self, a: usize, b: usize) -> &[f32] {
        let (count, row) = (self.weights.len(), self.pair(a, b));
        &self.costs[row * count..(row + 1) * count]
    }

    /// Bits of the colours that three paints, in ascending order, surround.
    pub(crate) fn cover(&self, [a, b, c]: [usize; 3]) -> &[u64] {
        let (words, row) = (self.words(), triple(a, b, c));
        &self.covers[row * words..(row + 1) * words]
    }

    fn pair(&self, a: usize, b: usize) -> usize {
        let (a, b) = (a.min(b), a.max(b));
        a * (2 * self.paints - a + 1) / 2 + b - a
    }
}

/// Row of a triple in ascending order, by its index among all such.
const fn triple(a: usize, b: usize, c: usize) -> usize {
    c * c.saturating_sub(1) * c.saturating_sub(2) / 6 + b * b.saturating_sub(1) / 2 + a
}

impl Filling {
    pub(crate) fn new(films: Vec<Film>, targets: &Targets, view: &View) -> Self {
        let (paints, colours) = (films.len(), targets.colours());
        let whole: f32 = targets.weights().iter().sum();
        let ellipsoids: Vec<Ellipsoid> = colours.iter().map(|colour| Ellipsoid::round(*colour)).collect();
        let (starts, near) = near_by_cell(&ellipsoids);
        let pairs = paints * (paints + 1) / 2;
        let words = colours.len().div_ceil(64);
        let table = Table {
            paints,
            weights: targets.weights().iter().map(|weight| weight / whole).collect(),
            costs: vec![0.0; pairs * colours.len()],
            covers: vec![0; triple(0, 0, paints) * words],
        };
        Self {
            singles: films.iter().map(|film| LOADS.map(|load| view.colour(film, load))).collect(),
            paper: view.colour(&Film::CLEAR, 0.0),
            edges: vec![[Lab::default(); RATIOS / COARSE + 1]; pairs],
            below: vec![0; pairs * words],
            columns: Columns::new(colours),
            view: view.clone(),
            films,
            ellipsoids,
            starts,
            near,
            table,
        }
    }

    /// Fills the row of a pair; a paint with itself first, for every paint.
    pub(crate) fn fill_pair(&mut self, a: usize, b: usize) {
        let mut squared = vec![FAR * FAR; self.ellipsoids.len()];
        if a == b {
            let path = [self.singles[a]];
            for row in path {
                row.windows(2).for_each(|pair| self.near_to(mean(pair[0], pair[1]), &mut squared));
                row.iter().for_each(|lab| self.near_to(*lab, &mut squared));
            }
        } else {
            let grid = self.grid(a, b);
            self.near_to_all(&grid, &mut squared);
            let row = self.table.pair(a, b);
            self.edges[row] = std::array::from_fn(|i| grid[0][i * COARSE]);
            let words = self.table.words();
            let mut below = vec![0; words];
            self.cross_sheet(&grid, &mut below);
            self.below[row * words..(row + 1) * words].copy_from_slice(&below);
        }
        let (count, row) = (squared.len(), self.table.pair(a, b));
        for (i, squared) in squared.into_iter().enumerate() {
            self.table.costs[row * count + i] = self.table.weights[i] * squared / (FAR * FAR);
        }
    }

    /// Fills the row of three paints in ascending order, their pairs being filled.
    pub(crate) fn fill_triple(&mut self, paints: [usize; 3]) {
        let [a, b, c] = paints;
        let words = self.table.words();
        let third = 1.0 / 3.0;
        let film = Film::blend(paints.iter().map(|paint| (&self.films[*paint], third)));
        let middle = self.view.colour(&film, 1.0);
        let begin = triple(a, b, c) * words;
        let mut cover = std::mem::take(&mut self.table.covers);
        let bits = &mut cover[begin..begin + words];
        for (p, q) in [(a, b), (b, c), (a, c)] {
            let row = self.table.pair(p, q);
            self.edges[row].windows(2).for_each(|edge| self.columns.cross([middle, edge[0], edge[1]], bits));
            for (bits, below) in bits.iter_mut().zip(&self.below[row * words..(row + 1) * words]) {
                *bits ^= below;
            }
        }
        self.table.covers = cover;
    }

    fn grid(&self, a: usize, b: usize) -> Grid {
        let mut grid = [[Lab::default(); RATIOS]; LOADS.len()];
        for (level, row) in grid.iter_mut().enumerate() {
            (row[0], row[RATIOS - 1]) = (self.singles[a][level], self.singles[b][level]);
        }
        for ratio in 1..RATIOS - 1 {
            let octaves = OCTAVES * (2.0 * (ratio - 1) as f32 / (RATIOS - 3) as f32 - 1.0);
            let share = octaves.exp2() / (1.0 + octaves.exp2());
            let film = Film::blend([(&self.films[a], 1.0 - share), (&self.films[b], share)].into_iter());
            for (row, load) in grid.iter_mut().zip(LOADS) {
                row[ratio] = self.view.colour(&film, load);
            }
        }
        grid
    }

    /// Looks from every colour of a grid, and from halfway between neighbours.
    fn near_to_all(&self, grid: &Grid, squared: &mut [f32]) {
        for (level, row) in grid.iter().enumerate() {
            for (ratio, lab) in row.iter().enumerate() {
                self.near_to(*lab, squared);
                if ratio + 1 < RATIOS {
                    self.near_to(mean(*lab, row[ratio + 1]), squared);
                }
                if level + 1 < LOADS.len() {
                    let thinner = &grid[level + 1];
                    self.near_to(mean(*lab, thinner[ratio]), squared);
                    if ratio + 1 < RATIOS {
                        self.near_to(mean(*lab, thinner[ratio + 1]), squared);
                    }
                }
            }
        }
    }

    fn near_to(&self, lab: Lab, squared: &mut [f32]) {
        let cell = cell_of(lab);
        for index in &self.near[self.starts[cell] as usize..self.starts[cell + 1] as usize] {
            let index = usize::from(*index);
            let found = self.ellipsoids[index].squared(lab);
            squared[index] = lesser(squared[index], found);
        }
    }

    /// Which colours lie below the sheet from the paper to two masstones.
    fn cross_sheet(&self, grid: &Grid, below: &mut [u64]) {
        for ratio in (0..RATIOS - 1).step_by(COARSE) {
            let next = ratio + COARSE;
            for pair in grid.windows(2) {
                self.columns.cross([pair[0][ratio], pair[0][next], pair[1][ratio]], below);
                self.columns.cross([pair[0][next], pair[1][next], pair[1][ratio]], below);
            }
            let thinnest = &grid[LOADS.len() - 1];
            self.columns.cross([thinnest[ratio], thinnest[next], self.paper], below);
        }
    }
}

fn mean(a: Lab, b: Lab) -> Lab {
    (a + b) * 0.5
}

/// By cell, the colours within [`FAR`] of some point in it.
fn near_by_cell(ellipsoids: &[Ellipsoid]) -> (Vec<u32>, Vec<u16>) {
    let touched = || {
        ellipsoids.iter().enumerate().flat_map(|(index, ellipsoid)| {
            runs(ellipsoid, FAR).flatten().map(move |cell| (cell, index as u16))
        })
    };
    let mut starts = vec![0u32; ALL_CELLS + 1];
    touched().for_each(|(cell, _)| starts[cell + 1] += 1);
    (1..starts.len()).for_each(|i| starts[i] += starts[i - 1]);
    let mut next = starts.clone();
    let mut near = vec![0; starts[ALL_CELLS] as usize];
    for (cell, index) in touched() {
        near[next[cell] as usize] = index;
        next[cell] += 1;
    }
    (starts, near)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::colour::delta_e;
    use crate::optics::observer::Light;
    use crate::optics::paper::Stock;
    use crate::paint::shelf::Shelf;
    use crate::reach::coverage::refine;

    fn filled(keys: &[&str], targets: &Targets) -> Filling {
        let view = View::new(&Stock::BrightWhite.paper(), Light::D65);
        let films: Vec<Film> =
            keys.iter().map(|key| Shelf::built_in().find(key).unwrap().film.clone()).collect();
        let mut filling = Filling::new(films, targets, &view);
        let count = keys.len();
        for a in 0..count {
            (a..count).for_each(|b| filling.fill_pair(a, b));
        }
        for c in 2..count {
            for b in 1..c {
                (0..b).for_each(|a| filling.fill_triple([a, b, c]));
            }
        }
        filling
    }

    #[test]
    fn a_pair_costs_what_its_nearest_mix_does() {
        let targets = Targets::gamut();
        let filling = filled(&["py154", "pb15-3"], &targets);
        let costs = filling.table.costs(1, 0);
        let mut errors = Vec::new();
        for (i, colour) in targets.colours().iter().enumerate() {
            let mut nearest = f32::INFINITY;
            for share in 0..=200 {
                let film = Film::between(
                    &filling.films[0],
                    &filling.films[1],
                    crate::share_at(share as f32 / 200.0),
                );
                for step in 0..=50 {
                    let lab = filling.view.colour(&film, (-5.0 * step as f32 / 50.0).exp2());
                    nearest = nearest.min(Ellipsoid::round(*colour).squared(lab));
                }
            }
            let found = (costs[i] / filling.table.weights[i]).sqrt() * FAR;
            errors.push((found - nearest.sqrt().min(FAR)).abs());
        }
        errors.sort_by(f32::total_cmp);
        // In CIEDE2000, what steps of ratio and load leave out.
        let [most, worst] = [errors[errors.len() * 95 / 100], errors[errors.len() - 1]];
        assert!(most < 1.0 && worst < 3.5, "{most} for 95 of 100, {worst} at worst");
    }

    #[test]
    fn what_three_paints_surround_they_mix() {
        let targets = Targets::gamut();
        let filling = filled(&["py154", "pr122", "pb15-3", "pbr7-burnt-sienna"], &targets);
        let (mut surrounded, mut missed) = (0, 0);
        for paints in [[0, 1, 2], [0, 1, 3], [0, 2, 3], [1, 2, 3]] {
            let films = paints.map(|paint| &filling.films[paint]);
            for (i, colour) in targets.colours().iter().enumerate() {
                let bits = filling.table.cover(paints);
                let inside = bits[i / 64] >> (i % 64) & 1 == 1;
                if inside {
                    surrounded += 1;
                    let nearest = nearest_of_lattice(&filling, films, *colour);
                    missed += usize::from(nearest > 2.0);
                }
            }
        }
        assert!(surrounded > 100, "{surrounded}");
        assert!(missed == 0, "{missed} of {surrounded} are not near any mix");
    }

    /// CIEDE2000 of the nearest mix: of a lattice of amounts, then refined.
    fn nearest_of_lattice(filling: &Filling, films: [&Film; 3], colour: Lab) -> f32 {
        let ellipsoid = Ellipsoid::round(colour);
        let mut best = (f32::INFINITY, [1.0; 3], 1.0, Lab::default());
        for i in 0..=24 {
            for j in 0..=24 {
                let [p, q] = [i, j].map(|at| (0.5 * (at as f32 - 12.0)).exp());
                let sum = 1.0 + p + q;
                let film = Film::blend(
                    [(films[0], 1.0 / sum), (films[1], p / sum), (films[2], q / sum)].into_iter(),
                );
                for step in 0..=24 {
                    let load = (-5.0 * step as f32 / 24.0).exp2();
                    let lab = filling.view.colour(&film, load);
                    let squared = ellipsoid.squared(lab);
                    if squared < best.0 {
                        let masstones = [1.0, p, q];
                        best = (squared, [0, 1, 2].map(|i| masstones[i] / films[i].strength), load, lab);
                    }
                }
            }
        }
        delta_e(refine(&films, &best.1, best.2, best.3, &filling.view, &ellipsoid), colour)
    }
}
