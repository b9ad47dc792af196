//! Optima: the nearest that each set of a reach's paints comes to a colour.
//!
//! Ratio and load are continuous here. Each descent starts at the nearest of the
//! reach's own mixes of the set.

use std::ops::Range;

use crate::blend::Blend;
use crate::colour::{Lab, narrow_ciede2000};
use crate::descent::{descend, sum_of_squares};
use crate::ellipsoid::Ellipsoid;
use crate::film::Film;
use crate::order::in_order;
use crate::reach::{LOADS, Reach};
use crate::view::THINNEST;

/// Sets of paints that are looked at, those whose mixes lie nearest: all of 15 paints.
const MOST_SETS: usize = 600;

/// CIEDE2000 from which on the formula itself tells what lies near, and no longer an ellipsoid.
const BEYOND: f32 = 5.0;

/// Trials of a descent.
const STEPS: usize = 8;

/// Descents in a row, each by the measure and the slopes where the last one ended.
const DESCENTS: usize = 4;

/// CIEDE2000 that a further descent must gain, and is enough.
const NEAR: f32 = 0.05;

/// One to three paints by their place in a reach.
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

/// The optimum of every set, the nearest first.
pub(crate) fn optima(target: Lab, reach: &Reach) -> Vec<Optimum> {
    let starts = in_order(starts(target, reach), |start| start.squared);
    let found = starts.iter().take(MOST_SETS).map(|start| optimum(start, target, reach)).collect();
    in_order(found, |optimum: &Optimum| optimum.error)
}

/// The nearest of a reach's mixes of one set.
struct Start {
    blend: Blend,
    load: f32,
    lab: Lab,
    squared: f32,
}

/// The nearest mix of every set.
fn starts(target: Lab, reach: &Reach) -> Vec<Start> {
    let near = Metric::between(target, target);
    let starts = nearest(reach, |lab| near.squared(lab));
    let least = starts.iter().map(|start| narrow_ciede2000(start.lab, target)).fold(f32::INFINITY, f32::min);
    if least < BEYOND {
        return starts;
    }
    nearest(reach, |lab| narrow_ciede2000(lab, target).powi(2))
}

fn nearest(reach: &Reach, squared: impl Fn(Lab) -> f32) -> Vec<Start> {
    let rows: Vec<(Blend, &[Lab; LOADS.len()])> = reach.rows().collect();
    let of_set = |set: Range<usize>| {
        let mixes = rows[set].iter().flat_map(|(blend, labs)| {
            labs.iter().zip(LOADS).map(|(lab, load)| Start {
                blend: *blend,
                load,
                lab: *lab,
                squared: squared(*lab),
            })
        });
        mixes.min_by(|a, b| a.squared.total_cmp(&b.squared))
    };
    reach.sets().filter_map(of_set).collect()
}

fn optimum(start: &Start, target: Lab, reach: &Reach) -> Optimum {
    let set = Set { paints: start.blend.paints, count: start.blend.used().count() };
    let films = set.films(reach);
    let strengths: [f32; 3] = std::array::from_fn(|i| {
        films.get(i).map_or(0.0, |film| film.strength * f32::from(start.blend.parts[i]))
    });
    let whole: f32 = strengths.iter().sum();
    let mut best = Optimum {
        set,
        masstones: strengths.map(|strength| start.load * strength / whole),
        error: narrow_ciede2000(start.lab, target),
    };
    let mut lab = start.lab;
    let colour = |masstones: [f32; 3]| {
        let load: f32 = masstones[..films.len()].iter().sum();
        let shares = films.iter().zip(masstones).map(|(film, masstones)| (*film, masstones / load));
        reach.view().colour(&Film::blend(shares), load.clamp(THINNEST, 1.0))
    };
    for _ in 0..DESCENTS {
        let metric = Metric::between(target, lab);
        let miss = |logs: [f32; 3]| metric.parts(colour(logs.map(f32::exp)));
        let (logs, _) =
            descend(best.masstones.map(f32::ln), films.len(), STEPS, miss, |sum| sum < NEAR * NEAR);
        let masstones = logs.map(f32::exp);
        let there = colour(masstones);
        let error = narrow_ciede2000(there, target);
        let gain = best.error - error;
        if gain > 0.0 {
            (best, lab) = (Optimum { set, masstones, error }, there);
        }
        if gain < NEAR || best.error < NEAR {
            break;
        }
    }
    best
}

/// CIEDE2000 from a colour, by the weights it has half-way to another.
pub(crate) struct Metric {
    ellipsoid: Ellipsoid,
    origin: [f32; 3],
}

impl Metric {
    pub(crate) fn between(origin: Lab, other: Lab) -> Self {
        let ellipsoid = Ellipsoid::round((origin + other) * 0.5);
        Self { origin: ellipsoid.parts(origin), ellipsoid }
    }

    /// Three parts of the difference from it, which add as squares: lightness, chroma, hue.
    pub(crate) fn parts(&self, lab: Lab) -> [f32; 3] {
        let parts = self.ellipsoid.parts(lab);
        [0, 1, 2].map(|i| parts[i] - self.origin[i])
    }

    fn squared(&self, lab: Lab) -> f32 {
        sum_of_squares(&self.parts(lab))
    }
}
