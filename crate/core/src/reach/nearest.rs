//! The recipe nearest to a point of the wheel.

use std::ops::Range;

use crate::colour::{Lab, WheelPoint, wheel};
use crate::mixing::recipe::Recipe;
use crate::numeric::descent::{self, descend, powers};
use crate::numeric::sort::in_order;
use crate::optics::film::Film;
use crate::reach::blend::{Blend, MOST_BLEND_PARTS};
use crate::reach::{LOADS, Reach};

/// A recipe found for a point of the wheel.
#[derive(Clone, Debug, PartialEq)]
pub struct Found {
    /// In whole parts.
    pub recipe: Recipe,
    /// How much of it lies on the paper; 1 is masstone.
    pub load: f32,
    /// Its colour.
    pub lab: Lab,
    /// How far it lies from the point asked for, in units of the wheel.
    pub distance: f32,
}

impl Reach {
    /// The recipe that stands nearest to a point in the plane of the wheel.
    ///
    /// At one load if given, as told, else at whichever of the [`LOADS`] serves.
    /// Ratios are refined between those of the reach and rounded to whole parts;
    /// among recipes that are equally near, to half a unit, the one of the fewest
    /// paints and then of the fewest parts is taken. `None` for no paints, or a
    /// point that is not finite.
    #[must_use]
    pub fn nearest_on_wheel(&self, x: f32, y: f32, load: Option<f32>) -> Option<Found> {
        if !x.is_finite() || !y.is_finite() {
            return None;
        }
        let search = WheelSearch { reach: self, x, y };
        let mut starts = search.starts(load);
        starts = in_order(starts, |start| start.distance);
        let trials: Vec<Trial> = starts.iter().take(REFINED).flat_map(|start| search.refine(start)).collect();
        let least = trials.iter().map(|trial| trial.distance).fold(f32::INFINITY, f32::min);
        let plainest = trials
            .into_iter()
            .filter(|trial| trial.distance <= least + NO_NEARER)
            .min_by_key(|trial| (trial.blend.count(), trial.blend.total(), trial.distance.to_bits()))?;
        let film = plainest.blend.film(self.films());
        Some(Found {
            recipe: plainest.blend.recipe(self.paints()),
            load: plainest.load,
            lab: self.view().colour(&film, plainest.load),
            distance: plainest.distance,
        })
    }
}

/// Sets of paints, each at a load, whose ratios are refined for a point.
const REFINED: usize = 16;

/// Trials of a descent.
const STEPS: usize = 12;

/// Units of the wheel that make no difference to the eye.
const NO_NEARER: f32 = 0.5;

/// Looks for the recipe nearest to a point in the plane of the wheel.
struct WheelSearch<'a> {
    reach: &'a Reach,
    x: f32,
    y: f32,
}

/// A recipe on trial.
#[derive(Clone, Copy)]
struct Trial {
    blend: Blend,
    load: f32,
    distance: f32,
}

impl WheelSearch<'_> {
    /// The nearest blend of every set of paints at each load.
    fn starts(&self, load: Option<f32>) -> Vec<Trial> {
        let reach = self.reach;
        let rows: Vec<(Blend, &[Lab; LOADS.len()])> = reach.rows().collect();
        let nearest = |set: Range<usize>, load: f32, lab: &dyn Fn(usize) -> Lab| {
            set.map(|at| Trial { blend: rows[at].0, load, distance: self.distance(wheel(lab(at))) })
                .min_by(|a, b| a.distance.total_cmp(&b.distance))
        };
        let mut starts = Vec::new();
        for set in reach.sets() {
            match load {
                Some(load) => starts.extend(nearest(set, load, &|at| self.colour(rows[at].0, load))),
                None => starts.extend(
                    LOADS
                        .iter()
                        .enumerate()
                        .filter_map(|(level, load)| nearest(set.clone(), *load, &|at| rows[at].1[level])),
                ),
            }
        }
        starts
    }

    /// Whole-part recipes of the start's paints round the ratio that is nearest of all.
    fn refine(&self, start: &Trial) -> Vec<Trial> {
        let used: Vec<(usize, u8)> = start.blend.used().collect();
        let paints: Vec<u8> = used.iter().map(|(paint, _)| *paint as u8).collect();
        let mut logs = [0.0f32; 3];
        for (log, (_, parts)) in logs.iter_mut().zip(&used) {
            *log = f32::from(*parts).ln();
        }
        let look = |at: [f32; 3]| {
            let miss = self.miss(&paints, &at, start.load);
            descent::Trial { at, miss, found: () }
        };
        let nearest = descend(look(logs), paints.len(), STEPS, look, |sum| sum < 1e-4);
        let volumes: Vec<f32> = nearest.at[..paints.len()].iter().map(|log| log.exp()).collect();
        let mut trials = vec![*start];
        for parts in roundings(&volumes) {
            let blend = Blend::new(&paints, &parts);
            let distance = self.distance(wheel(self.colour(blend, start.load)));
            trials.push(Trial { blend, load: start.load, distance });
        }
        trials
    }

    fn miss(&self, paints: &[u8], logs: &[f32; 3], load: f32) -> [f32; 2] {
        let volumes = powers(*logs);
        let total: f32 = volumes[..paints.len()].iter().sum();
        let films = self.reach.films();
        let shares =
            paints.iter().zip(volumes).map(|(paint, volume)| (&films[usize::from(*paint)], volume / total));
        let point = wheel(self.reach.view().colour(&Film::sum(shares), load));
        [point.x - self.x, point.y - self.y]
    }

    fn colour(&self, blend: Blend, load: f32) -> Lab {
        self.reach.view().colour(&blend.film(self.reach.films()), load)
    }

    fn distance(&self, point: WheelPoint) -> f32 {
        (point.x - self.x).hypot(point.y - self.y)
    }
}

/// Whole parts near some volumes: totals of 2 to 24, and 1 to 3 parts of the least paint.
fn roundings(volumes: &[f32]) -> Vec<Vec<u16>> {
    let total: f32 = volumes.iter().sum();
    let least = volumes.iter().copied().fold(f32::INFINITY, f32::min);
    let scales = (2..=24).map(|sum| sum as f32 / total).chain((1..=3).map(|parts| parts as f32 / least));
    let mut roundings: Vec<Vec<u16>> = scales
        .map(|scale| {
            let part = |volume: &f32| (volume * scale).round().clamp(1.0, f32::from(MOST_BLEND_PARTS)) as u16;
            volumes.iter().map(part).collect()
        })
        .collect();
    // Few, and most of them differ: no sort is needed to find the same.
    for i in (0..roundings.len()).rev() {
        if roundings[..i].contains(&roundings[i]) {
            roundings.swap_remove(i);
        }
    }
    roundings
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::optics::observer::Light;
    use crate::optics::paper::Stock;
    use crate::optics::view::View;
    use crate::paint::number::PaintNumber;
    use crate::paint::shelf::Shelf;
    use proptest::prelude::*;

    fn view() -> View {
        View::new(&Stock::BrightWhite.paper(), Light::D65)
    }

    fn some_paints(count: Range<usize>) -> impl Strategy<Value = Vec<PaintNumber>> {
        let numbers: Vec<PaintNumber> = Shelf::built_in().paints().iter().map(|paint| paint.number).collect();
        proptest::sample::subsequence(numbers, count)
    }

    #[test]
    fn one_load_is_kept_as_given() {
        let reach = Reach::new(&[1, 72, 102].map(PaintNumber::new), Shelf::built_in(), &view()).unwrap();
        let found = reach.nearest_on_wheel(-10.0, 12.0, Some(0.3)).unwrap();
        assert_eq!(found.load, 0.3);
        assert_eq!(reach.nearest_on_wheel(f32::NAN, 0.0, None), None);
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(64))]

        #[test]
        fn a_point_that_was_mixed_is_found_again(paints in some_paints(3..8), share in 0.1f32..0.9, load in 0.1f32..1.0) {
            let shelf = Shelf::built_in();
            let reach = Reach::new(&paints, shelf, &view()).unwrap();
            let [a, b] = [0, 1].map(|i| &shelf.get(paints[i]).unwrap().film);
            let point = view().wheel_point(&Film::between(a, b, share), load);
            let found = reach.nearest_on_wheel(point.x, point.y, Some(load)).unwrap();
            prop_assert!(found.distance < 1.5, "{} by {:?}", found.distance, found.recipe);
            let again = view().wheel_point(&found.recipe.film(shelf).unwrap(), load);
            prop_assert!(((again.x - point.x).hypot(again.y - point.y) - found.distance).abs() < 0.02);
        }

        #[test]
        fn no_recipe_of_the_reach_is_nearer_than_what_is_found(paints in some_paints(2..6), x in -40f32..40.0, y in -40f32..40.0) {
            let reach = Reach::new(&paints, Shelf::built_in(), &view()).unwrap();
            let found = reach.nearest_on_wheel(x, y, None).unwrap();
            for mix in reach.mixes() {
                let point = wheel(mix.lab());
                prop_assert!(found.distance <= (point.x - x).hypot(point.y - y) + NO_NEARER + 0.01);
            }
        }
    }
}
