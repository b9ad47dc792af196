use super::*;
use crate::choose::pair_costs::Table;
use crate::choose::rules::Avoid;
use crate::kit::targets::Target;
use crate::optics::observer::Light;
use crate::optics::paper::Stock;
use proptest::prelude::*;

fn view() -> View {
    View::new(&Stock::BrightWhite.paper(), Light::D65)
}

fn numbers() -> Vec<PaintNumber> {
    Shelf::built_in().paints().iter().map(|paint| paint.number).collect()
}

/// Every so many of the gamut's colours, weighted unevenly.
fn targets(step: usize) -> Targets {
    let colours = crate::colour::gamut::gamut().iter().step_by(step).enumerate();
    let weighted: Vec<_> = colours.map(|(i, lab)| Target::new(*lab, 1.0 + (i % 3) as f32)).collect();
    Targets::new(&weighted).unwrap()
}

fn chooser(size: usize, candidates: &[PaintNumber], rules: &Rules) -> Result<Chooser, Error> {
    Chooser::new(size, candidates, &targets(9), rules, Shelf::built_in(), &view())
}

fn finish(mut chooser: Chooser) -> Result<(Choice, Chooser), Error> {
    while !chooser.step(50).finished {}
    let choice = chooser.choice()?.clone();
    Ok((choice, chooser))
}

fn choose(size: usize, candidates: &[PaintNumber], rules: &Rules) -> Result<Choice, Error> {
    finish(chooser(size, candidates, rules)?).map(|(choice, _)| choice)
}

/// The objective as it is written, set by set and colour by colour.
fn plain_cost(table: &Table, kit: &[usize]) -> f32 {
    let serves = |t: usize| {
        let mut cost = table.weights()[t];
        for a in kit {
            for b in kit {
                cost = cost.min(table.costs(*a, *b)[t]);
                for c in kit.iter().filter(|c| a < b && b < c) {
                    if table.cover([*a, *b, *c])[t / 64] >> (t % 64) & 1 == 1 {
                        cost = 0.0;
                    }
                }
            }
        }
        cost
    };
    (0..table.weights().len()).map(serves).sum()
}

fn exhaustive(chooser: &Chooser) -> f32 {
    let mut best = f32::INFINITY;
    let mut picks = Some((0..chooser.asked.size - chooser.asked.required.len()).collect::<Vec<_>>());
    while let Some(some) = picks {
        let kit = chooser.search().with_required(&some);
        if chooser.search().lacks(&kit) == 0 {
            best = best.min(plain_cost(&chooser.filling.table, &kit));
        }
        picks = next_picks(some, chooser.asked.count - chooser.asked.required.len());
    }
    best
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(12))]

    #[test]
    fn trying_all_finds_what_plain_exhaustive_search_finds(
        candidates in proptest::sample::subsequence(numbers(), 5..11), size in 1usize..5, granulating in 0usize..2,
    ) {
        let rules = Rules { granulating, must_have: vec![candidates[1]], ..Rules::default() };
        let Ok(chooser) = chooser(size, &candidates, &rules) else { return Ok(()) };
        match finish(chooser) {
            Ok((choice, chooser)) => {
                prop_assert!(choice.exact && choice.gap() == 0.0);
                prop_assert!((choice.cost - exhaustive(&chooser)).abs() < 1e-5);
                prop_assert!(choice.reasons.iter().any(|reason| reason.required));
            }
            // The required paint may leave no room for one that granulates.
            Err(_) => prop_assert!(size == 1 && granulating == 1),
        }
    }
}

#[test]
fn exchanges_find_what_trying_all_finds() {
    let numbers = numbers();
    for i in 0..60 {
        let mut candidates: Vec<_> =
            (0..14).map(|j| numbers[(7 * i + j * (i + 3)) % numbers.len()]).collect();
        candidates.sort_unstable();
        candidates.dedup();
        let mut searching = chooser(3 + i % 3, &candidates, &Rules::default()).unwrap();
        searching.exact = false;
        let (choice, chooser) = finish(searching).unwrap();
        let least = exhaustive(&chooser);
        assert!(choice.bound <= least + 1e-5, "bound {} above {least}", choice.bound);
        assert!((choice.cost - least).abs() < 1e-5, "{} for {least}, instance {i}", choice.cost);
    }
}

#[test]
fn many_small_steps_are_one_large_one() {
    let candidates = &numbers()[..16];
    let rules = Rules::default();
    let mut small = chooser(4, candidates, &rules).unwrap();
    assert!(small.choice().is_err());
    let mut done = 0.0;
    loop {
        let progress = small.step(1);
        assert!(progress.done >= done, "{} after {done}", progress.done);
        done = progress.done;
        if progress.finished {
            break;
        }
    }
    let mut large = chooser(4, candidates, &rules).unwrap();
    assert!(large.step(usize::MAX).finished);
    assert_eq!(small.choice(), large.choice());
}

#[test]
fn rules_are_kept() {
    let shelf = Shelf::built_in();
    let must = shelf.find("py53").unwrap().number;
    let rules = Rules {
        must_have: vec![must],
        must_not: vec![shelf.find("pb29").unwrap().number],
        avoid: vec![Avoid::Cadmium, Avoid::Cobalt],
        lightfast: Some(6.0),
        granulating: 2,
        transparent: 3,
        triad: true,
    };
    let choice = choose(8, &numbers()[..60], &rules).unwrap();
    let paints: Vec<&Paint> = choice.reasons.iter().map(|reason| shelf.get(reason.paint).unwrap()).collect();
    assert_eq!(paints.len(), 8);
    assert!(paints.iter().any(|paint| paint.number == must));
    for paint in paints.iter().filter(|paint| paint.number != must) {
        assert!(paint.key != "pb29" && paint.lightfastness().unwrap() >= 6.0, "{}", paint.key);
        assert!(!paint.caution.contains("Cadmium") && !paint.caution.contains("Cobalt"), "{}", paint.key);
    }
    assert!(paints.iter().filter(|paint| paint.granulates()).count() >= 2);
    assert!(paints.iter().filter(|paint| paint.is_transparent()).count() >= 3);
    assert!(choice.bound <= choice.cost && choice.gap() < 0.1, "{choice:?}");
}

#[test]
fn a_larger_kit_costs_no_more() {
    let candidates = &numbers()[..14];
    let costs: Vec<f32> =
        (1..7).map(|size| choose(size, candidates, &Rules::default()).unwrap().cost).collect();
    assert!(costs.windows(2).all(|pair| pair[1] <= pair[0] + 1e-6), "{costs:?}");
}

#[test]
fn limits_are_named() {
    let error = |size, candidates: &[PaintNumber], rules: &Rules| {
        chooser(size, candidates, rules).map(|_| ()).unwrap_err().to_string()
    };
    let none = Rules::default();
    let two = [1, 2].map(PaintNumber::new);
    assert_eq!(error(0, &two, &none), "a kit to choose holds at least 1 paint");
    assert_eq!(error(3, &two, &none), "the rules allow 2 paints: the kit holds 3");
    let must = Rules { must_have: two.to_vec(), ..Rules::default() };
    assert_eq!(error(1, &two, &must), "2 paints are a must: the kit holds 1");
    let rough = Rules { granulating: 2, ..Rules::default() };
    assert_eq!(
        error(2, &[3, 4].map(PaintNumber::new), &rough),
        "the rules ask for granulating paints, at least 2: there are not so many"
    );
}
