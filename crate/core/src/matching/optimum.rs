//! Optima: the nearest that each set of a reach's paints comes to a colour.
//!
//! Ratio and load are continuous here. Each descent starts at the nearest of the
//! reach's own mixes of the set.

use crate::colour::ellipsoid::Ellipsoid;
use crate::colour::{Lab, delta_e};
use crate::numeric::descent::{Trial, descend, powers};
use crate::numeric::minmax::lesser;
use crate::numeric::sort::in_order;
use crate::optics::film::Film;
use crate::optics::view::THINNEST;
use crate::reach::blend::Blend;
use crate::reach::{LOADS, Reach};

/// Descents that are made, those that start nearest: all of 15 paints.
const MOST_STARTS: usize = 1000;

/// CIEDE2000 from which on the formula itself tells what lies near, and no longer an ellipsoid.
const BEYOND: f32 = 5.0;

/// Trials of a descent.
const STEPS: usize = 8;

/// Descents in a row, each with the slopes where the last one ended.
const DESCENTS: usize = 6;

/// CIEDE2000 that a further descent must gain, and is enough.
const NEAR: f32 = 0.02;

/// One to three paints by their index in a reach.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Set {
    paints: [u8; 3],
    count: usize,
}

/// The nearest that a set of paints comes at any ratio and load.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Optimum {
    pub(crate) set: Set,
    /// Of each paint on the paper; beyond one in all the load is masstone.
    pub(crate) masstones: [f32; 3],
    /// CIEDE2000.
    pub(crate) error: f32,
}

impl Set {
    pub(crate) fn paints(&self) -> &[u8] {
        &self.paints[..self.count]
    }

    pub(crate) fn holds(&self, other: &Self) -> bool {
        other.paints().iter().all(|paint| self.paints().contains(paint))
    }

    pub(crate) fn films<'a>(&self, reach: &'a Reach) -> Vec<&'a Film> {
        self.paints().iter().map(|paint| &reach.films()[usize::from(*paint)]).collect()
    }
}

/// The optima of every set, the nearest first; one that has several valleys stands there several times.
pub(crate) fn optima(target: Lab, reach: &Reach) -> Vec<Optimum> {
    let starts = in_order(starts(target, reach), |start| start.squared);
    let found = starts.iter().take(MOST_STARTS).map(|start| optimum(start, target, reach)).collect();
    in_order(found, |optimum: &Optimum| optimum.error)
}

/// The nearest of a reach's mixes of one set.
struct Start {
    blend: Blend,
    load: f32,
    lab: Lab,
    squared: f32,
}

/// The mixes of every set that lie nearer than those next to them.
fn starts(target: Lab, reach: &Reach) -> Vec<Start> {
    let near = Ellipsoid::round(target);
    let starts = valleys(reach, |lab| near.squared(lab));
    let least = starts.iter().map(|start| delta_e(start.lab, target)).fold(f32::INFINITY, f32::min);
    if least < BEYOND {
        return starts;
    }
    valleys(reach, |lab| delta_e(lab, target).powi(2))
}

fn valleys(reach: &Reach, squared: impl Fn(Lab) -> f32) -> Vec<Start> {
    let rows: Vec<(Blend, &[Lab; LOADS.len()])> = reach.rows().collect();
    let mut starts = Vec::new();
    for set in reach.sets() {
        let rows = &rows[set];
        let heights: Vec<Row> = rows.iter().map(|(_, labs)| labs.map(&squared)).collect();
        let bottoms = if rows[0].0.used().count() < 3 { along_a_path(&heights) } else { by_load(&heights) };
        starts.extend(bottoms.into_iter().map(|(row, level)| {
            let (blend, labs) = rows[row];
            Start { blend, load: LOADS[level], lab: labs[level], squared: heights[row][level] }
        }));
    }
    starts
}

/// A number for each load.
type Row = [f32; LOADS.len()];

/// Where neither the next ratios nor the next loads are lower.
fn along_a_path(heights: &[Row]) -> Vec<(usize, usize)> {
    let lowest = |row: usize, level: usize| {
        let rows = row.saturating_sub(1)..=(row + 1).min(heights.len() - 1);
        rows.flat_map(|row| round(level).map(move |level| heights[row][level])).fold(f32::INFINITY, lesser)
    };
    let all = (0..heights.len()).flat_map(|row| (0..LOADS.len()).map(move |level| (row, level)));
    all.filter(|(row, level)| heights[*row][*level] <= lowest(*row, *level)).collect()
}

/// The lowest ratio at each load, where none at the next loads is lower.
fn by_load(heights: &[Row]) -> Vec<(usize, usize)> {
    let lowest: [(f32, usize); LOADS.len()] = std::array::from_fn(|level| {
        let column = heights.iter().enumerate().map(|(row, heights)| (heights[level], row));
        column.min_by(|a, b| a.0.total_cmp(&b.0)).unwrap_or((f32::INFINITY, 0))
    });
    let is_valley = |level: &usize| round(*level).all(|near| lowest[*level].0 <= lowest[near].0);
    (0..LOADS.len()).filter(is_valley).map(|level| (lowest[level].1, level)).collect()
}

/// A load and those next to it.
fn round(level: usize) -> std::ops::RangeInclusive<usize> {
    level.saturating_sub(1)..=(level + 1).min(LOADS.len() - 1)
}

fn optimum(start: &Start, target: Lab, reach: &Reach) -> Optimum {
    let set = Set { paints: start.blend.paints, count: start.blend.used().count() };
    let films = set.films(reach);
    let strengths: [f32; 3] = std::array::from_fn(|i| {
        films.get(i).map_or(0.0, |film| film.strength * f32::from(start.blend.parts[i]))
    });
    let colour = |masstones: [f32; 3]| {
        let load: f32 = masstones.iter().sum();
        let shares = films.iter().zip(masstones).map(|(film, masstones)| (*film, masstones / load));
        reach.view().colour(&Film::blend(shares), load.clamp(THINNEST, 1.0))
    };
    let at = |masstones: [f32; 3], lab: Lab| Optimum { set, masstones, error: delta_e(lab, target) };
    let first = at_load(strengths, start.load);
    let mut best = at(first, colour(first));
    for _ in 0..DESCENTS {
        // Far away the slopes at one point lead astray: the smaller the misses, the shorter the steps.
        let scale = 1.0 / best.error.max(1.0);
        let look = |logs: [f32; 3]| {
            let lab = colour(powers(logs.map(|log| -log)));
            Trial { at: logs, miss: parts_between(target, lab).map(|part| scale * part), found: lab }
        };
        // Slopes are taken upwards, and a load has room below masstone: hence the negative logarithms.
        let from = at_load(best.masstones, best.masstones.iter().sum::<f32>()).map(|masstone| -masstone.ln());
        let enough = |sum: f32| sum < (scale * NEAR).powi(2);
        let end = descend(look(from), films.len(), STEPS, look, enough);
        let next = at(powers(end.at.map(|log| -log)), end.found);
        let gain = best.error - next.error;
        if gain > 0.0 {
            best = next;
        }
        if gain < NEAR || best.error < NEAR {
            break;
        }
    }
    best
}

/// Masstones in these proportions at a load, or at the nearest at which its slopes are told.
fn at_load(masstones: [f32; 3], load: f32) -> [f32; 3] {
    const ROOM: f32 = 1.05;
    let scale = load.clamp(ROOM * THINNEST, 1.0) / masstones.iter().sum::<f32>();
    masstones.map(|masstone| masstone * scale)
}

/// Lightness, chroma and hue of the difference of a colour from another.
///
/// They add as squares to that of CIEDE2000, by the weights it has half-way.
pub(crate) fn parts_between(origin: Lab, lab: Lab) -> [f32; 3] {
    let ellipsoid = Ellipsoid::round((origin + lab) * 0.5);
    let (from, to) = (ellipsoid.parts(origin), ellipsoid.parts(lab));
    [0, 1, 2].map(|i| to[i] - from[i])
}
