use super::*;
use crate::colour::delta_e;
use crate::optics::observer::Light;
use crate::optics::paper::Stock;
use crate::optics::view::View;
use crate::paint::shelf::Shelf;
use proptest::prelude::*;

fn coverage(paints: &[PaintNumber]) -> Coverage {
    let view = View::new(&Stock::BrightWhite.paper(), Light::D65);
    Coverage::new(&Reach::new(paints, Shelf::built_in(), &view).unwrap(), &Targets::gamut()).unwrap()
}

fn some_paints(count: std::ops::Range<usize>) -> impl Strategy<Value = Vec<PaintNumber>> {
    let numbers: Vec<PaintNumber> = Shelf::built_in().paints().iter().map(|paint| paint.number).collect();
    proptest::sample::subsequence(numbers, count).prop_shuffle()
}

#[test]
fn no_paint_reaches_nothing() {
    assert_eq!(coverage(&[]).reached(), Within::default());
    assert_eq!(coverage(&[1.into()]).lost_without(2.into()), Within::default());
}

#[test]
fn what_one_paint_reaches_is_lost_without_it() {
    let coverage = coverage(&[1.into()]);
    assert!(coverage.reached().close > 0.0);
    assert_eq!(coverage.lost_without(1.into()), coverage.reached());
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    #[test]
    fn a_paint_more_never_takes_a_colour_away(paints in some_paints(2..9)) {
        let (last, fewer) = paints.split_last().unwrap();
        let (with, without) = (coverage(&paints), coverage(fewer));
        for (more, less) in with.needs.iter().zip(&without.needs) {
            for limit in 0..2 {
                prop_assert!(less[limit] == UNREACHED || more[limit] != UNREACHED);
            }
        }
        // And what is lost without it is what the others do not reach.
        let [more, less, lost] =
            [with.reached(), without.reached(), with.lost_without(*last)].map(Within::into_array);
        for ((more, less), lost) in more.into_iter().zip(less).zip(lost) {
            prop_assert!((lost - (more - less)).abs() < 1e-5);
        }
    }

    #[test]
    fn the_index_finds_what_comparing_with_all_finds(paints in some_paints(1..5)) {
        let view = View::new(&Stock::BrightWhite.paper(), Light::D65);
        let reach = Reach::new(&paints, Shelf::built_in(), &view).unwrap();
        let found = coverage(&paints);
        for (i, colour) in Targets::gamut().colours().iter().enumerate() {
            let nearest = reach.mixes().map(|mix| delta_e(mix.lab(), *colour)).fold(f32::INFINITY, f32::min);
            let reached = found.reaches(i).unwrap();
            for (reached, limit) in reached.into_array().into_iter().zip(LIMITS.into_array()) {
                // Among mixes that the ellipsoid ranks otherwise than CIEDE2000 does: 0.7 held for 1800 kits.
                prop_assert!(reached || nearest > 0.7 * limit, "{colour:?} is reached within {nearest}");
                // Refining finds no more than the steps of the reach leave out.
                prop_assert!(!reached || nearest < limit + LOOK, "{colour:?} by {nearest}");
            }
        }
    }
}
