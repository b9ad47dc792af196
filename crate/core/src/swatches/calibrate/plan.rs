//! Which swatches are worth painting: those that make the kit's predictions surer by most.

use super::lesson::Lesson;
use super::row::{Row, dot};
use super::variance::seen_variance;
use crate::mixing::ratio::Ratio;
use crate::optics::paper::Paper;

/// What is worth painting.
#[derive(Clone, Debug, PartialEq)]
pub struct Plan {
    /// How far the mixes wanted may be off now, median CIEDE2000.
    pub now: f64,
    /// The swatches that lower it by most, each with those before it painted.
    pub steps: Vec<Step>,
}

/// Whole parts of a paint that is learned about.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct PlannedPart {
    /// Its index.
    pub paint: usize,
    /// Its parts.
    pub parts: u16,
}

/// A swatch to paint.
#[derive(Clone, Debug, PartialEq)]
pub struct Step {
    /// What is mixed.
    pub parts: Vec<PlannedPart>,
    /// Masstones laid.
    pub load: f64,
    /// How far the kit's mixes may be off, median CIEDE2000, once it is recorded with those before it.
    pub after: f64,
}

/// Ratios a painter mixes for a swatch.
const RATIOS: [Ratio; 3] = [Ratio::new(1, 1), Ratio::new(1, 3), Ratio::new(3, 1)];

/// Loads swatches are laid at.
const LOADS: [f64; 2] = [1.0, 0.25];

/// A mix that may be painted and is wanted.
#[derive(Clone, Debug, PartialEq)]
pub struct Wanted {
    /// What is mixed.
    pub parts: Vec<PlannedPart>,
    /// Masstones laid.
    pub load: f64,
}

/// A colour that is seen or asked for, with what its axes answer to.
struct View {
    parts: Vec<PlannedPart>,
    load: f64,
    rows: Vec<Row>,
}

impl Lesson {
    /// How far the mixes of these paints may be off now, median CIEDE2000, and the swatches
    /// that lower it by most, each with those before it painted.
    ///
    /// All paints alone and all pairs at 1:1, 1:3 and 3:1, as masstone and as medium
    /// wash, are both what may be painted and what is wanted. Greedy: each step is
    /// the best one; the variance that is left falls as that of any plan does, to within
    /// (1 - 1/e) of the best (G. L. Nemhauser et al., Math. Programming 14 (1978) 265,
    /// from memory; for gains that diminish).
    #[must_use]
    pub fn plan(&self, paints: &[usize], paper: &Paper, steps: usize) -> Plan {
        self.plan_among(mixes_of(paints), paper, steps)
    }

    /// The same where these mixes, each at a load, are what may be painted and what is wanted.
    #[must_use]
    pub fn plan_among(&self, mixes: Vec<Wanted>, paper: &Paper, steps: usize) -> Plan {
        let views: Vec<View> =
            mixes.into_iter().map(|Wanted { parts, load }| self.view(parts, load, paper)).collect();
        // What each axis of each view answers to, through the covariance.
        let mut spread: Vec<Vec<Vec<f64>>> =
            views.iter().map(|view| view.rows.iter().map(|row| self.spread(row)).collect()).collect();
        let now = self.mean_error(&views, &spread);
        let mut plan = Vec::new();
        for _ in 0..steps.min(views.len()) {
            let gain = |i: usize| total_gain(&views, &spread[i], &views[i].rows);
            let best = (0..views.len())
                .filter(|i| {
                    !plan
                        .iter()
                        .any(|step: &Step| step.parts == views[*i].parts && step.load == views[*i].load)
                })
                .map(|i| (gain(i), i))
                .max_by(|a, b| a.0.total_cmp(&b.0));
            let Some((_, chosen)) = best else { break };
            // Its three axes are seen one after the other: each a step of Kalman's filter.
            for axis in 0..3 {
                let seen = spread[chosen][axis].clone();
                let innovation = dot(&views[chosen].rows[axis], &seen) + seen_variance(false);
                for (view, spread) in views.iter().zip(&mut spread) {
                    for (row, spread) in view.rows.iter().zip(spread) {
                        let shared = dot(row, &seen) / innovation;
                        spread.iter_mut().zip(&seen).for_each(|(value, seen)| *value -= shared * seen);
                    }
                }
            }
            let View { parts, load, .. } = &views[chosen];
            plan.push(Step { parts: parts.clone(), load: *load, after: self.mean_error(&views, &spread) });
        }
        Plan { now, steps: plan }
    }

    /// How far the mixes of these paints may be off now, median CIEDE2000.
    #[must_use]
    pub fn error_among(&self, paints: &[usize], paper: &Paper) -> f64 {
        let errors: Vec<f64> = mixes_of(paints)
            .into_iter()
            .map(|Wanted { parts, load }| {
                let view = self.view(parts, load, paper);
                self.expected_now(view.rows.iter().map(|row| dot(row, &self.spread(row))).sum())
            })
            .collect();
        errors.iter().sum::<f64>() / errors.len().max(1) as f64
    }

    /// Mean over all views of how far each may be off.
    fn mean_error(&self, views: &[View], spread: &[Vec<Vec<f64>>]) -> f64 {
        let variance = |(view, spread): (&View, &Vec<Vec<f64>>)| -> f64 {
            view.rows.iter().zip(spread).map(|(row, spread)| dot(row, spread)).sum()
        };
        let errors = views.iter().zip(spread).map(|both| self.expected_now(variance(both)));
        errors.sum::<f64>() / views.len().max(1) as f64
    }

    fn view(&self, parts: Vec<PlannedPart>, load: f64, paper: &Paper) -> View {
        let volumes: Vec<(usize, f64)> =
            parts.iter().map(|part| (part.paint, f64::from(part.parts))).collect();
        View { rows: self.rows(&volumes, load, &paper.reflectance), parts, load }
    }
}

/// Every paint alone and every two at [`RATIOS`], at all [`LOADS`].
fn mixes_of(paints: &[usize]) -> Vec<Wanted> {
    let mut mixes: Vec<Vec<PlannedPart>> =
        paints.iter().map(|paint| vec![PlannedPart { paint: *paint, parts: 1 }]).collect();
    for (i, a) in paints.iter().enumerate() {
        for b in &paints[i + 1..] {
            mixes.extend(RATIOS.map(|ratio| {
                let part = |paint: &usize, parts| PlannedPart { paint: *paint, parts };
                vec![part(a, ratio.a), part(b, ratio.b)]
            }));
        }
    }
    mixes.into_iter().flat_map(|parts| LOADS.map(|load| Wanted { parts: parts.clone(), load })).collect()
}

/// Sum over all views of the variance that seeing one would take away, axis by axis as if each stood alone.
fn total_gain(views: &[View], seen: &[Vec<f64>], rows: &[Row]) -> f64 {
    let axes = seen.iter().zip(rows);
    axes.map(|(seen, row)| {
        let innovation = dot(row, seen) + seen_variance(false);
        let shared = views.iter().flat_map(|view| &view.rows).map(|row| dot(row, seen).powi(2));
        shared.sum::<f64>() / innovation
    })
    .sum()
}
