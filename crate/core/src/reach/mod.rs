//! Reach: the set of colours a kit can mix.

pub(crate) mod blend;
pub(crate) mod coverage;
pub(crate) mod horizon;
pub(crate) mod nearest;
pub(crate) mod next;
pub(crate) mod report;
pub(crate) mod role;
pub(crate) mod substitute;

use crate::colour::hue::Hue;
use crate::colour::outline::{Outline, Spot};
use crate::colour::{Lab, WheelPoint, chroma, hue_angle, wheel};
use crate::error::Error;
use crate::mixing::recipe::Recipe;
use crate::optics::film::Film;
use crate::optics::view::{THINNEST, View};
use crate::paint::PaintNumber;
use crate::paint::shelf::Shelf;
use crate::reach::blend::{Blend, blends, sets, sets_of_last};
use crate::text::limits::counted;

/// Loads at which every recipe of a reach is looked at: masstone, then washes each half as heavy.
pub const LOADS: [f32; 6] = [1.0, 0.5, 0.25, 0.125, 0.062_5, THINNEST];

/// C* from which a dark counts for a hue, and not as near neutral.
pub const DARK_CHROMA: f32 = 8.0;

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

/// The darkest mix of a hue family.
#[derive(Clone, Debug, PartialEq)]
pub struct Dark {
    /// Its family; `None` near neutral.
    pub hue: Option<Hue>,
    /// The darkest recipe at masstone; `None` where the kit mixes none.
    pub mix: Option<(Recipe, Lab)>,
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
    /// use washpath_core::{Light, Reach, Shelf, Stock, View};
    /// let view = View::new(&Stock::BrightWhite.paper(), Light::D65);
    /// let reach = Reach::new(&[1, 72, 3], Shelf::built_in(), &view)?;
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

    /// How far out on the wheel it reaches.
    ///
    /// Drawn from the paths of all pairs and the washes of all their ratios, as
    /// continuous lines, and from the outermost triples. It holds the points of
    /// all recipes to within half a unit of the wheel; what lies between their
    /// ratios and loads sticks out by less than one and a half.
    #[must_use]
    pub fn outline(&self) -> Outline {
        self.outline_of(&self.pair_outlines())
    }

    /// The same, from the outlines of its pairs.
    pub(crate) fn outline_of(&self, pairs: &[(Vec<usize>, Outline)]) -> Outline {
        let mut outline = Outline::default();
        pairs.iter().for_each(|(_, pair)| outline.hold_all(pair));
        hold_triples(&mut outline, &self.labs[self.first_triple()..]);
        outline
    }

    /// The outlines of every single paint and of every pair, with the paints' indices in the kit.
    pub(crate) fn pair_outlines(&self) -> Vec<(Vec<usize>, Outline)> {
        let rows: Vec<Row> =
            self.labs[..self.first_triple()].iter().map(|row| row.map(|lab| wheel(lab).into())).collect();
        let sets = self.sets().take_while(|set| self.blends[set.start].count() < 3);
        sets.map(|set| {
            let mut outline = Outline::default();
            for row in &rows[set.clone()] {
                row.iter().for_each(|point| outline.hold(*point));
                row.windows(2).for_each(|pair| outline.hold_line(pair[0], pair[1]));
            }
            let paints: Vec<usize> = self.blends[set.start].used().map(|(paint, _)| paint).collect();
            match paints[..] {
                [a, b] => {
                    // The blends of single paints come first, one each.
                    let path: Vec<&Row> = std::iter::once(&rows[a])
                        .chain(&rows[set])
                        .chain(std::iter::once(&rows[b]))
                        .collect();
                    for step in path.windows(2) {
                        step[0].iter().zip(step[1]).for_each(|(from, to)| outline.hold_line(*from, *to));
                    }
                }
                [paint, ..] => {
                    let film = &self.films[paint];
                    outline.hold(self.view.wheel_point(film, self.view.strongest_load(film)).into());
                }
                [] => {}
            }
            (paints, outline)
        })
        .collect()
    }

    /// The darkest mix of each hue family, and last the darkest near neutral, all at masstone.
    ///
    /// A mix counts for a hue from C* 8 on.
    #[must_use]
    pub fn darks(&self) -> Vec<Dark> {
        let hues = Hue::ALL.into_iter().map(Some).chain(std::iter::once(None));
        hues.zip(self.darkest(&self.families(), |_| true))
            .map(|(hue, mix)| Dark { hue, mix: mix.map(|blend| (self.recipe(blend), self.labs[blend][0])) })
            .collect()
    }

    /// For each paint the families whose darkest mix is lighter by `step` of L* without it.
    pub(crate) fn darks_lost(&self, step: f32) -> Vec<Vec<Option<Hue>>> {
        let families = self.families();
        let all = self.darkest(&families, |_| true);
        let uses = |blend: usize, paint: usize| self.blends[blend].used().any(|(used, _)| used == paint);
        let depth = |blend: Option<usize>| blend.map_or(f32::INFINITY, |blend| self.labs[blend][0].l);
        let lost = |paint: usize| {
            if !all.iter().flatten().any(|blend| uses(*blend, paint)) {
                return Vec::new();
            }
            let others = self.darkest(&families, |blend| !uses(blend, paint));
            let hues = Hue::ALL.into_iter().map(Some).chain(std::iter::once(None));
            let lighter = hues.zip(all.iter().zip(others));
            lighter
                .filter(|(_, (with, without))| depth(*without) > depth(**with) + step)
                .map(|(hue, _)| hue)
                .collect()
        };
        (0..self.numbers.len()).map(lost).collect()
    }

    /// Each blend's family among the darks, by its index in [`Hue::ALL`]; one past it near neutral.
    fn families(&self) -> Vec<usize> {
        self.labs.iter().map(|row| dark_family(row[0]).map_or(Hue::ALL.len(), |hue| hue as usize)).collect()
    }

    /// The darkest masstone of each family and near neutral among some blends.
    fn darkest(
        &self,
        families: &[usize],
        counts: impl Fn(usize) -> bool,
    ) -> [Option<usize>; Hue::ALL.len() + 1] {
        let mut darkest: [Option<usize>; Hue::ALL.len() + 1] = [None; Hue::ALL.len() + 1];
        for (blend, family) in families.iter().enumerate() {
            let known = &mut darkest[*family];
            let darker = known.is_none_or(|known| self.labs[blend][0].l < self.labs[known][0].l);
            if darker && counts(blend) {
                *known = Some(blend);
            }
        }
        darkest
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

    fn first_triple(&self) -> usize {
        self.blends.partition_point(|blend| blend.count() < 3)
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

/// The family a masstone counts for among the darks; `None` near neutral.
pub(crate) fn dark_family(lab: Lab) -> Option<Hue> {
    (chroma(lab) > DARK_CHROMA).then(|| Hue::of(lab))
}

fn films(paints: &[PaintNumber], shelf: &Shelf) -> Result<Vec<Film>, Error> {
    paints.iter().map(|paint| Ok(shelf.get(*paint)?.film.clone())).collect()
}

fn masstones(films: &[Film], sets: &[Vec<u8>], view: &View) -> Vec<(Blend, Lab)> {
    let (blends, _) = blends(films, sets);
    blends.into_iter().map(|blend| (blend, view.colour(&blend.film(films), 1.0))).collect()
}

/// Places of one blend at the [`LOADS`].
type Row = [Spot; LOADS.len()];

/// Widens an outline by triples, most of which lie within it.
///
/// Of colours alike in lightness and hue the one of the greatest chroma is placed
/// on the wheel and the others are guessed from it, by proportion; only what may
/// stick out is placed as well. This saves most of the time that all would take.
fn hold_triples(outline: &mut Outline, rows: &[[Lab; LOADS.len()]]) {
    /// Units of the wheel by which a guess may be wrong.
    const GUESS: f32 = 0.3;
    // Degrees by which it may be wrong: near neutral an angle tells little.
    let turn = |chroma: f32| (3.0 + 60.0 / chroma.max(1.0)) as usize;
    let mut cells: Vec<Option<Cell>> = vec![None; Cell::LIGHTNESSES * Cell::ANGLES];
    let polar: Vec<(Lab, f32, f32)> =
        rows.iter().flatten().map(|lab| (*lab, hue_angle(*lab), chroma(*lab))).collect();
    for (lab, angle, chroma) in polar.iter().copied() {
        let cell = &mut cells[Cell::index(lab.l, angle)];
        if cell.as_ref().is_none_or(|known| chroma > known.chroma) {
            *cell = Some(Cell { lab, angle, chroma, spot: WheelPoint::default().into() });
        }
    }
    for cell in cells.iter_mut().flatten() {
        cell.spot = wheel(cell.lab).into();
        outline.hold(cell.spot);
    }
    for (lab, angle, chroma) in polar {
        if let Some(cell) = &cells[Cell::index(lab.l, angle)] {
            let radius = cell.spot.point.radius() * chroma / cell.chroma.max(f32::MIN_POSITIVE);
            if radius + GUESS > outline.least_near(cell.spot.angle + angle - cell.angle, turn(chroma)) {
                outline.hold(wheel(lab).into());
            }
        }
    }
}

/// The outermost of the colours alike in lightness and hue.
#[derive(Clone)]
struct Cell {
    lab: Lab,
    angle: f32,
    chroma: f32,
    spot: Spot,
}

impl Cell {
    /// Sides of a cell: 2.5 of L*, 1.5 degrees of h.
    const LIGHTNESSES: usize = 40;
    const ANGLES: usize = 240;

    fn index(lightness: f32, angle: f32) -> usize {
        let level = (lightness * (Self::LIGHTNESSES as f32 / 100.0)) as usize;
        let turn = (angle * (Self::ANGLES as f32 / 360.0)) as usize;
        level.min(Self::LIGHTNESSES - 1) * Self::ANGLES + turn.min(Self::ANGLES - 1)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::optics::observer::Light;
    use crate::optics::paper::Stock;
    use crate::reach::blend::PAIR_RATIOS;
    use proptest::prelude::*;

    fn view() -> View {
        View::new(&Stock::BrightWhite.paper(), Light::D65)
    }

    fn reach(keys: &[&str]) -> Reach {
        let shelf = Shelf::built_in();
        let numbers: Vec<_> = keys.iter().map(|key| shelf.find(key).unwrap().number).collect();
        Reach::new(&numbers, shelf, &view()).unwrap()
    }

    fn some_paints(count: std::ops::Range<usize>) -> impl Strategy<Value = Vec<PaintNumber>> {
        let numbers: Vec<PaintNumber> = Shelf::built_in().paints().iter().map(|paint| paint.number).collect();
        proptest::sample::subsequence(numbers, count)
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
            [(first, a), (_, b)] if *first == strong.number => f32::from(*b) / f32::from(*a),
            _ => 0.0,
        };
        let most = reach.mixes().map(parts_to_one).fold(0.0, f32::max);
        assert!(most >= 16.0 * strong.film.strength / weak.film.strength, "1:{most}");
    }

    #[test]
    fn no_paints_reach_nothing() {
        let nothing = reach(&[]);
        assert!(nothing.is_empty() && nothing.mixes().next().is_none());
        assert_eq!(nothing.outline(), Outline::default());
        assert_eq!(nothing.nearest_on_wheel(0.0, 0.0, None), None);
        assert!(nothing.darks().iter().all(|dark| dark.mix.is_none()));
        assert!(Reach::new(&[60_000], Shelf::built_in(), &view()).is_err());
    }

    #[test]
    fn darks_are_the_darkest_of_their_families() {
        let reach = reach(&["pb29", "pbr7-burnt-sienna", "py154", "pv19-rose", "pg7"]);
        let darks = reach.darks();
        assert_eq!(darks.len(), Hue::ALL.len() + 1);
        for mix in reach.mixes().filter(|mix| mix.load() == 1.0) {
            let family = dark_family(mix.lab());
            let dark = darks.iter().find(|dark| dark.hue == family).unwrap();
            assert!(dark.mix.as_ref().unwrap().1.l <= mix.lab().l);
        }
        // Green darks need the green: without it the kit mixes none as dark.
        let (recipe, lab) = darks[Hue::Green as usize].mix.clone().unwrap();
        assert_eq!(recipe.film(Shelf::built_in()).map(|film| view().colour(&film, 1.0)), Ok(lab));
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(64))]

        #[test]
        fn the_outline_holds_every_recipe(paints in some_paints(1..9)) {
            let reach = Reach::new(&paints, Shelf::built_in(), &view()).unwrap();
            let outline = reach.outline();
            for mix in reach.mixes() {
                let point = wheel(mix.lab());
                let radius = outline.radius(point.angle());
                prop_assert!(radius + 0.5 >= point.radius(), "{} outside {radius}", point.radius());
            }
        }

        #[test]
        fn the_outline_holds_what_lies_between_its_ratios(paints in some_paints(2..6), share in 0f32..1.0, load in THINNEST..1.0) {
            let shelf = Shelf::built_in();
            let outline = Reach::new(&paints, shelf, &view()).unwrap().outline();
            let [a, b] = [0, 1].map(|i| &shelf.get(paints[i]).unwrap().film);
            let point = view().wheel_point(&Film::between(a, b, share), load);
            let radius = outline.radius(point.angle());
            prop_assert!(radius + 1.5 >= point.radius(), "{} outside {radius}", point.radius());
        }

    }
}
