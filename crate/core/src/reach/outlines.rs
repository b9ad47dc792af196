//! How far out on the wheel a reach goes.

use wide::f32x4;

use crate::colour::outline::{Outline, Spot};
use crate::colour::{Lab, WheelPoint, wheel};
use crate::reach::{LOADS, Reach};

impl Reach {
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

    fn first_triple(&self) -> usize {
        self.blends.partition_point(|blend| blend.count() < 3)
    }
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
    let polar = polar(rows.as_flattened());
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

/// Colours with their hue angle in degrees, 0 to 360, and their chroma.
fn polar(labs: &[Lab]) -> Vec<(Lab, f32, f32)> {
    const FOUR: usize = 4;
    let mut polar = Vec::with_capacity(labs.len() + FOUR);
    for four in labs.chunks(FOUR) {
        // Past the last colour comes neutral, which is not kept.
        let at = |i: usize| four.get(i).copied().unwrap_or_default();
        let a = f32x4::from([0, 1, 2, 3].map(|i| at(i).a));
        let b = f32x4::from([0, 1, 2, 3].map(|i| at(i).b));
        let turn = b.atan2(a).to_degrees();
        let angles = turn.simd_lt(f32x4::ZERO).select(turn + 360.0, turn).to_array();
        let chromas = (a * a + b * b).sqrt().to_array();
        polar.extend(four.iter().enumerate().map(|(i, lab)| (*lab, angles[i], chromas[i])));
    }
    polar
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
    use crate::colour::hue_angle;
    use crate::optics::film::Film;
    use crate::optics::observer::Light;
    use crate::optics::paper::Stock;
    use crate::optics::view::{THINNEST, View};
    use crate::paint::number::PaintNumber;
    use crate::paint::shelf::Shelf;
    use proptest::prelude::*;

    fn view() -> View {
        View::new(&Stock::BrightWhite.paper(), Light::D65)
    }

    fn some_paints(count: std::ops::Range<usize>) -> impl Strategy<Value = Vec<PaintNumber>> {
        let numbers: Vec<PaintNumber> = Shelf::built_in().paints().iter().map(|paint| paint.number).collect();
        proptest::sample::subsequence(numbers, count)
    }

    #[test]
    fn four_angles_at_once_are_those_of_one_by_one() {
        let labs: Vec<Lab> = (0..23)
            .map(|i| (i as f32 * 16.0).to_radians().sin_cos())
            .map(|(sin, cos)| Lab::new(50.0, 30.0 * cos, 30.0 * sin))
            .collect();
        let found = polar(&labs);
        assert_eq!(found.len(), labs.len());
        for (lab, angle, chroma) in found {
            assert!((angle - hue_angle(lab)).abs() < 1e-3, "{angle}");
            assert!((chroma - 30.0).abs() < 1e-4);
        }
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
