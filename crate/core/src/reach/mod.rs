//! Reach: the set of colours a kit can mix.

pub(crate) mod blend;
pub(crate) mod coverage;
pub(crate) mod darks;
pub(crate) mod horizon;
pub(crate) mod nearest;
pub(crate) mod next;
mod outlines;
pub(crate) mod report;
pub(crate) mod role;
pub(crate) mod substitute;

use crate::colour::Lab;
use crate::error::Error;
use crate::mixing::recipe::Recipe;
use crate::optics::film::Film;
use crate::optics::view::{THINNEST, View};
use crate::paint::number::PaintNumber;
use crate::paint::shelf::Shelf;
use crate::reach::blend::{Blend, blends, sets, sets_of_last};
use crate::text::limits::counted;

/// Loads at which every recipe of a reach is looked at: masstone, then washes each half as heavy.
pub const LOADS: [f32; 6] = [1.0, 0.5, 0.25, 0.125, 0.062_5, THINNEST];

/// The set of colours a kit can mix.
///
/// Every paint alone, every pair at 17 ratios and every triple at 19, each at
/// the [`LOADS`]. Ratios are spaced evenly in the logarithm of masstones, so that
/// a strong paint is looked at in traces, and then rounded to whole parts by
/// volume. Past 24 paints a triple stands at one ratio only.
#[derive(Clone, Debug)]
pub struct Reach {
    numbers: Vec<PaintNumber>,
    films: Vec<Film>,
    view: View,
    blends: Vec<Blend>,
    /// One row of [`LOADS`] a blend.
    labs: Vec<[Lab; LOADS.len()]>,
    /// Where the blends of each set of paints begin; one more at the end.
    starts: Vec<u32>,
}

/// One recipe of a reach at one load.
#[derive(Clone, Copy, Debug)]
pub struct Mix<'a> {
    reach: &'a Reach,
    blend: usize,
    level: usize,
}

impl Reach {
    /// The reach of some paints, each counted once, seen in a view.
    ///
    /// # Errors
    ///
    /// [`Error::UnknownPaint`] for a paint that `shelf` lacks; more paints than
    /// 255.
    ///
    /// ```
    /// use washpath_core::{Light, PaintNumber, Reach, Shelf, Stock, View};
    /// let view = View::new(&Stock::BrightWhite.paper(), Light::D65);
    /// let reach = Reach::new(&[1, 72, 3].map(PaintNumber::new), Shelf::built_in(), &view)?;
    /// let darkest = reach.mixes().min_by(|a, b| a.lab().l.total_cmp(&b.lab().l));
    /// assert!(darkest.is_some_and(|mix| mix.load() == 1.0));
    /// # Ok::<(), washpath_core::Error>(())
    /// ```
    pub fn new(paints: &[PaintNumber], shelf: &Shelf, view: &View) -> Result<Self, Error> {
        let mut numbers: Vec<PaintNumber> = Vec::new();
        for paint in paints {
            if !numbers.contains(paint) {
                numbers.push(*paint);
            }
        }
        counted(numbers.len(), 0..=255, "paints", "a reach spans")?;
        let films = films(&numbers, shelf)?;
        let sets = sets(films.len() as u8, 3);
        Ok(Self::of_sets(numbers, films, view, &sets))
    }

    /// The reach by singles and pairs alone; `paints` name each paint once.
    pub(crate) fn of_pairs(paints: &[PaintNumber], shelf: &Shelf, view: &View) -> Result<Self, Error> {
        let films = films(paints, shelf)?;
        let sets = sets(films.len() as u8, 2);
        Ok(Self::of_sets(paints.to_vec(), films, view, &sets))
    }

    /// The reach by those sets alone, of at most `most` paints, that hold the last of `paints`.
    pub(crate) fn of_last(
        paints: &[PaintNumber],
        shelf: &Shelf,
        view: &View,
        most: usize,
    ) -> Result<Self, Error> {
        let films = films(paints, shelf)?;
        let sets = sets_of_last(films.len() as u8, most);
        Ok(Self::of_sets(paints.to_vec(), films, view, &sets))
    }

    /// The masstones of the last of `paints`, alone and in every pair with another, by their indices in `paints`.
    pub(crate) fn masstones_of_last(
        paints: &[PaintNumber],
        shelf: &Shelf,
        view: &View,
    ) -> Result<Vec<(Blend, Lab)>, Error> {
        let films = films(paints, shelf)?;
        let sets = sets_of_last(films.len() as u8, 2);
        Ok(masstones(&films, &sets, view))
    }

    /// The masstones of every pair, by their indices in `paints`.
    pub(crate) fn masstones_of_pairs(
        paints: &[PaintNumber],
        shelf: &Shelf,
        view: &View,
    ) -> Result<Vec<(Blend, Lab)>, Error> {
        let films = films(paints, shelf)?;
        let mut sets = sets(films.len() as u8, 2);
        sets.retain(|set| set.len() == 2);
        Ok(masstones(&films, &sets, view))
    }

    fn of_sets(numbers: Vec<PaintNumber>, films: Vec<Film>, view: &View, sets: &[Vec<u8>]) -> Self {
        let (blends, starts) = blends(&films, sets);
        let labs = blends.iter().map(|blend| view.washes(&blend.film(&films), LOADS)).collect();
        Self { numbers, films, view: view.clone(), blends, labs, starts }
    }

    /// Number of colours it was looked at in: recipes times loads.
    #[must_use]
    pub fn len(&self) -> usize {
        self.blends.len() * LOADS.len()
    }

    /// Whether there is no paint to mix.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.blends.is_empty()
    }

    /// Its paints, each once.
    #[must_use]
    pub fn paints(&self) -> &[PaintNumber] {
        &self.numbers
    }

    /// Every recipe at every load: singles, pairs, triples.
    pub fn mixes(&self) -> impl Iterator<Item = Mix<'_>> {
        (0..self.blends.len())
            .flat_map(move |blend| (0..LOADS.len()).map(move |level| Mix { reach: self, blend, level }))
    }

    /// All blends, each with its colours at the [`LOADS`].
    pub(crate) fn rows(&self) -> impl Iterator<Item = (Blend, &[Lab; LOADS.len()])> {
        self.blends.iter().copied().zip(&self.labs)
    }

    /// The paints' films, in the order of [`Self::paints`].
    pub(crate) fn films(&self) -> &[Film] {
        &self.films
    }

    /// What it is seen in.
    pub(crate) const fn view(&self) -> &View {
        &self.view
    }

    /// The blends of each set of paints, as ranges: singles, pairs, triples.
    pub(crate) fn sets(&self) -> impl Iterator<Item = std::ops::Range<usize>> {
        self.starts.windows(2).map(|ends| ends[0] as usize..ends[1] as usize)
    }

    fn recipe(&self, blend: usize) -> Recipe {
        self.blends[blend].recipe(&self.numbers)
    }
}

impl Mix<'_> {
    /// Its recipe.
    #[must_use]
    pub fn recipe(&self) -> Recipe {
        self.reach.recipe(self.blend)
    }

    /// How much of it lies on the paper, one of [`LOADS`].
    #[must_use]
    pub const fn load(&self) -> f32 {
        LOADS[self.level]
    }

    /// Its colour.
    #[must_use]
    pub fn lab(&self) -> Lab {
        self.reach.labs[self.blend][self.level]
    }
}

fn films(paints: &[PaintNumber], shelf: &Shelf) -> Result<Vec<Film>, Error> {
    paints.iter().map(|paint| Ok(shelf.get(*paint)?.film.clone())).collect()
}

fn masstones(films: &[Film], sets: &[Vec<u8>], view: &View) -> Vec<(Blend, Lab)> {
    let (blends, _) = blends(films, sets);
    blends.into_iter().map(|blend| (blend, view.colour(&blend.film(films), 1.0))).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::optics::observer::Light;
    use crate::optics::paper::Stock;
    use crate::reach::blend::PAIR_RATIOS;

    fn view() -> View {
        View::new(&Stock::BrightWhite.paper(), Light::D65)
    }

    fn reach(keys: &[&str]) -> Reach {
        let shelf = Shelf::built_in();
        let numbers: Vec<_> = keys.iter().map(|key| shelf.find(key).unwrap().number).collect();
        Reach::new(&numbers, shelf, &view()).unwrap()
    }

    #[test]
    fn counts_every_single_pair_and_triple() {
        let reach = reach(&["pb29", "pbr7-burnt-sienna", "py154"]);
        let sets: Vec<usize> = reach.sets().map(|set| set.len()).collect();
        assert_eq!(sets.len(), 3 + 3 + 1);
        assert!(sets[3..6].iter().all(|ratios| (12..=PAIR_RATIOS).contains(ratios)), "{sets:?}");
        assert!((15..=19).contains(&sets[6]), "{sets:?}");
        assert_eq!(reach.len(), reach.mixes().count());
    }

    #[test]
    fn a_strong_paint_is_looked_at_in_traces() {
        let shelf = Shelf::built_in();
        let [strong, weak] = ["pb15-3", "py154"].map(|key| shelf.find(key).unwrap());
        let reach = Reach::new(&[strong.number, weak.number], shelf, &view()).unwrap();
        let parts_to_one = |mix: Mix<'_>| match mix.recipe().parts() {
            [first, second] if first.paint == strong.number => {
                f32::from(second.parts) / f32::from(first.parts)
            }
            _ => 0.0,
        };
        let most = reach.mixes().map(parts_to_one).fold(0.0, f32::max);
        assert!(most >= 16.0 * strong.film.strength / weak.film.strength, "1:{most}");
    }

    #[test]
    fn no_paints_reach_nothing() {
        let nothing = reach(&[]);
        assert!(nothing.is_empty() && nothing.mixes().next().is_none());
        assert_eq!(nothing.outline(), crate::Outline::default());
        assert_eq!(nothing.nearest_on_wheel(0.0, 0.0, None), None);
        assert!(nothing.darks().iter().all(|dark| dark.mix.is_none()));
        assert!(Reach::new(&[60_000.into()], Shelf::built_in(), &view()).is_err());
    }
}
