use super::*;
use crate::colour::gamut::gamut;
use crate::mixing::mixture::mix;
use crate::mixing::shift::{PARTED, SAME};
use crate::optics::film::Film;
use crate::optics::paper::Stock;
use crate::optics::view::View;
use crate::paint::number::PaintNumber;
use proptest::prelude::*;
use proptest::strategy::ValueTree;
use proptest::test_runner::TestRunner;

/// CIEDE2000 by which a dense search is nearer at most.
const HAIR: f32 = 1.0;

fn view() -> View {
    View::new(&Stock::BrightWhite.paper(), Light::D65)
}

fn matches(target: Lab, paints: &[PaintNumber]) -> Vec<Match> {
    let shelf = Shelf::built_in();
    find_matches(target, &Reach::new(paints, shelf, &view()).unwrap(), shelf).unwrap()
}

fn some_paints(count: std::ops::Range<usize>) -> impl Strategy<Value = Vec<PaintNumber>> {
    let numbers: Vec<PaintNumber> = Shelf::built_in().paints().iter().map(|paint| paint.number).collect();
    proptest::sample::subsequence(numbers, count)
}

/// Every set of up to three paints in up to eight parts at every quarter octave.
fn dense(target: Lab, paints: &[PaintNumber]) -> f32 {
    let view = view();
    let films: Vec<&Film> = paints.iter().map(|paint| &Shelf::built_in().get(*paint).unwrap().film).collect();
    let mut least = f32::INFINITY;
    for code in 1..9usize.pow(films.len() as u32) {
        let parts: Vec<usize> = (0..films.len()).map(|i| code / 9usize.pow(i as u32) % 9).collect();
        if parts.iter().filter(|parts| **parts > 0).count() > 3 {
            continue;
        }
        let parts: Vec<(&Film, f32)> =
            films.iter().zip(parts).map(|(film, parts)| (*film, parts as f32)).collect();
        let film = mix(&parts).unwrap();
        for stop in -20..=0 {
            let lab = view.colour(&film, (0.25 * stop as f32).exp2());
            least = least.min(delta_e(lab, target));
        }
    }
    least
}

/// Of twelve paints three bring countless recipes that are nearer than those of two.
#[test]
fn recipes_of_two_paints_are_told_beside_nearer_ones_of_three() {
    let paints: Vec<PaintNumber> =
        Shelf::built_in().paints().iter().step_by(12).map(|paint| paint.number).collect();
    let found = matches(Lab::new(45.0, -2.0, 4.0), &paints);
    let simple = found.iter().filter(|told| told.recipe.parts().len() <= SIMPLE).count();
    assert!(found.len() == MOST_MATCHES && simple >= SIMPLE_TOLD, "{simple} of {}", found.len());
}

#[test]
fn no_paints_match_nothing() {
    let grey = Lab::new(50.0, 0.0, 0.0);
    assert_eq!(matches(grey, &[]), []);
    let reach = Reach::new(&[1.into()], Shelf::built_in(), &view()).unwrap();
    let error = find_matches(Lab::new(f32::NAN, 0.0, 0.0), &reach, Shelf::built_in()).unwrap_err();
    assert_eq!(error.to_string(), "the colour to match is not finite");
    assert_eq!(matches(grey, &[1.into()]).len(), 1);
    let paints = [1, 3, 72].map(PaintNumber::new);
    for odd in [f32::MAX, f32::MIN, 1e9, -1e9] {
        let _ = matches(Lab::new(50.0, odd, 0.0), &paints);
        let _ = matches(Lab::new(odd, odd, odd), &paints);
    }
}

/// How much nearer a dense search comes, in order, to colours drawn for a kit.
///
/// Colours that even it misses by more than [`OUT`] are left out.
fn shortfalls(targets: impl Fn(&[PaintNumber], &mut TestRunner) -> Lab) -> Vec<f32> {
    let mut runner = TestRunner::deterministic();
    let mut shortfalls = Vec::new();
    while shortfalls.len() < CASES {
        let paints = some_paints(2..5).new_tree(&mut runner).unwrap().current();
        let target = targets(&paints, &mut runner);
        let dense = dense(target, &paints);
        if dense <= OUT {
            let errors = matches(target, &paints).into_iter().map(|found| found.error);
            shortfalls.push(errors.fold(f32::INFINITY, f32::min) - dense);
        }
    }
    shortfalls.sort_by(f32::total_cmp);
    shortfalls
}

const CASES: usize = 100;
const OUT: f32 = 9.0;

/// Of 2000 colours in reach and out of it 5 are missed by more than a step, all of them by 9 and more.
#[test]
fn a_dense_search_comes_no_nearer_to_colours_of_real_paint() {
    let shortfalls =
        shortfalls(|_, runner| proptest::sample::select(gamut()).new_tree(runner).unwrap().current());
    assert!(shortfalls[CASES * 95 / 100] <= EQUALLY_NEAR, "{shortfalls:?}");
    assert!(shortfalls[CASES - 1] <= HAIR, "{shortfalls:?}");
}

/// Of 2000 mixes 95 in 100 come back within a step, all within 0.96.
#[test]
fn a_dense_search_comes_no_nearer_to_what_the_paints_mix() {
    let shortfalls = shortfalls(|paints, runner| {
        let (parts, stop) = ([1u16..9, 0..9, 0..9], -18i8..=0).new_tree(runner).unwrap().current();
        let parts: Vec<Part> =
            paints.iter().zip(parts).map(|(paint, parts)| Part::new(*paint, parts)).collect();
        let film = Recipe::new(&parts).unwrap().film(Shelf::built_in()).unwrap();
        view().colour(&film, (0.25 * f32::from(stop)).exp2())
    });
    assert!(shortfalls[CASES * 95 / 100] <= EQUALLY_NEAR, "{shortfalls:?}");
    assert!(shortfalls[CASES - 1] <= HAIR, "{shortfalls:?}");
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]

    #[test]
    fn what_is_told_is_so(
        paints in some_paints(1..9),
        target in proptest::sample::select(gamut()),
    ) {
        let shelf = Shelf::built_in();
        let found = matches(target, &paints);
        prop_assert!((1..=MOST_MATCHES).contains(&found.len()));
        let step = |found: &Match| (found.error / EQUALLY_NEAR).floor();
        for pair in found.windows(2) {
            let key = |found: &Match| (step(found), found.recipe.parts().len() as f32);
            prop_assert!(key(&pair[0]) <= key(&pair[1]), "{pair:?}");
        }
        for (i, told) in found.iter().enumerate() {
            let film = told.recipe.film(shelf).unwrap();
            prop_assert_eq!(view().colour(&film, told.load), told.lab);
            prop_assert_eq!(delta_e(told.lab, target), told.error);
            prop_assert_eq!(told.recipe.doubt(shelf).unwrap().error(), told.doubt);
            let stop = (4.0 * told.load.log2()).round();
            prop_assert!((0.25 * stop).exp2() == told.load && (-20.0..=0.0).contains(&stop));
            let counts = || told.recipe.parts().iter().map(|part| part.parts);
            prop_assert!(counts().all(|count| count <= 8) || counts().any(|count| count == 1));
            let paints = |found: &Match| found.recipe.parts().iter().map(|part| part.paint).collect::<Vec<_>>();
            let own = paints(told);
            let better = found[..i].iter().find(|better| paints(better).iter().all(|p| own.contains(p)));
            prop_assert_eq!(better, None, "one paint too many");
        }
    }
}

/// A mix of the three-band kind parts from a plain colour under a lamp; one paint's own wash hardly.
#[test]
fn a_match_that_parts_names_the_lamp() {
    let shelf = Shelf::built_in();
    let paints: Vec<PaintNumber> = shelf.paints().iter().step_by(10).map(|paint| paint.number).collect();
    let found = matches(Lab::new(50.0, 0.0, 0.0), &paints);
    let curve = curve(Lab::new(50.0, 0.0, 0.0)).unwrap();
    assert!(
        found.iter().any(|told| told.parts_in.is_some()) && found.iter().any(|told| told.parts_in.is_none())
    );
    for told in found {
        let reflectance = view().reflectance(&told.recipe.film(shelf).unwrap(), told.load);
        let apart = LAMPS.map(|lamp| delta_e(lamp.colour_of(&reflectance), lamp.colour_of(&curve)));
        let most = apart.into_iter().fold(0.0, f32::max);
        assert_eq!(told.parts_in.is_some(), told.error <= SAME && most > PARTED, "{told:?}");
    }
}
