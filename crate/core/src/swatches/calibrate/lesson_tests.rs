use std::f64::consts::PI;

use super::*;
use crate::colour::ciede2000;
use crate::numeric::noise::noise;
use crate::optics::spectrum::{BANDS, from_fn};
use crate::optics::surface::Surface;
use crate::swatches::calibrate::{Known, Plan};
use crate::{Light, Shelf, Stock, View};

fn wide(lab: crate::Lab) -> crate::colour::Lab<f64> {
    crate::colour::Lab::new(lab.l.into(), lab.a.into(), lab.b.into())
}

const KEYS: [&str; 6] = ["pb29", "pbr7-burnt-sienna", "py154", "pr122", "pb15-3", "pg7"];

fn known() -> Vec<Known> {
    KEYS.iter()
        .map(|key| Known { film: Shelf::built_in().find(key).unwrap().film.clone(), doubt: 1.0 })
        .collect()
}

fn paper() -> Paper {
    Stock::Natural.paper()
}

/// The painter's paints: the shelf's, each stronger or weaker and shifted, as makers' are.
fn painters(seed: &mut u64) -> Vec<Film> {
    known()
        .into_iter()
        .map(|Known { film, .. }| {
            let (strength, level, tilt) = (noise(seed, 0.4).exp(), noise(seed, 0.2), noise(seed, 0.15));
            let t = |band: usize| (level + tilt * (PI * band as f64 / 35.0).cos()).exp() as f32;
            Film {
                strength: film.strength * strength as f32,
                k: from_fn(|band| film.k[band] * t(band)),
                s: from_fn(|band| film.s[band] * (-0.5 * level).exp() as f32),
            }
        })
        .collect()
}

fn colour(films: &[Film], parts: &[(usize, f64)], load: f64) -> crate::colour::Lab<f64> {
    let parts: Vec<(&Film, f32)> = parts.iter().map(|(i, volume)| (&films[*i], *volume as f32)).collect();
    wide(View::new(&paper(), Light::D65).colour(&crate::mix(&parts).unwrap(), load as f32))
}

fn record(films: &[Film], parts: &[(usize, f64)], load: f64, seed: &mut u64, eye: f64) -> Evidence {
    let lab = colour(films, parts, load);
    let mut off = |value: f64| value + noise(seed, eye);
    Evidence {
        parts: parts.to_vec(),
        load,
        load_doubt: 0.25,
        paper: paper().reflectance,
        seen: Seen::Lab(crate::colour::Lab::new(off(lab.l), off(lab.a), off(lab.b))),
    }
}

fn records(films: &[Film], seed: &mut u64) -> Vec<Evidence> {
    let mut found = Vec::new();
    for i in 0..KEYS.len() {
        found.push(record(films, &[(i, 1.0)], 0.25, seed, 1.5));
        found.push(record(films, &[(i, 1.0), ((i + 1) % KEYS.len(), 1.0)], 0.5, seed, 1.5));
        found.push(record(films, &[(i, 1.0), ((i + 2) % KEYS.len(), 2.0)], 0.5, seed, 1.5));
    }
    found
}

/// Median CIEDE2000 over all pairs, at ratios and loads that no record has.
fn unseen(films: &[Film], truth: &[Film]) -> f64 {
    let mut errors = Vec::new();
    for i in 0..KEYS.len() {
        for j in 0..i {
            let parts = [(i, 2.0), (j, 3.0)];
            errors.extend(
                [0.3, 0.8].map(|load| ciede2000(colour(films, &parts, load), colour(truth, &parts, load))),
            );
        }
    }
    errors.sort_by(f64::total_cmp);
    errors[errors.len() / 2]
}

#[test]
fn synthetic_paints_are_recovered_from_noisy_swatches() {
    let mut seed = 5;
    let truth = painters(&mut seed);
    let records = records(&truth, &mut seed);
    let shelf: Vec<Film> = known().into_iter().map(|paint| paint.film).collect();
    let lesson = Learner::new(known(), Surface::WASH).learn(&records).unwrap();
    let (before, after) = (unseen(&shelf, &truth), unseen(&lesson.films, &truth));
    assert!(after < 0.5 * before, "{before} became {after}");
    assert!(median(&lesson.after) < median(&lesson.before));
    // Left out, a record is predicted worse than when it taught, and better than before.
    let without = lesson.left_out(&records);
    let [after, without, before] = [&lesson.after, &without, &lesson.before].map(|errors| median(errors));
    assert!(after <= without && without < before, "{after} {without} {before}");
}

#[test]
fn one_wrong_dip_does_not_spoil_a_paint() {
    let mut seed = 5;
    let truth = painters(&mut seed);
    let good = records(&truth, &mut seed);
    let mut spoilt = good.clone();
    spoilt[4].seen = Seen::Lab(crate::colour::Lab::new(90.0, -60.0, 60.0));
    let [clean, robust] =
        [&good, &spoilt].map(|records| Learner::new(known(), Surface::WASH).learn(records).unwrap());
    assert!(robust.believed[4] < 0.2, "{}", robust.believed[4]);
    let [clean, robust] = [&clean.films, &robust.films].map(|films| unseen(films, &truth));
    assert!(robust < clean + 1.0, "{clean} became {robust}");
}

#[test]
fn a_paint_that_is_not_to_be_corrected_stays() {
    let mut seed = 5;
    let truth = painters(&mut seed);
    let records = records(&truth, &mut seed);
    let mut paints = known();
    paints[1].doubt = 0.0;
    let lesson = Learner::new(paints, Surface::WASH).learn(&records).unwrap();
    let kept = known()[1].film.clone();
    assert!((lesson.films[1].strength / kept.strength - 1.0).abs() < 1e-3);
    assert!((lesson.films[0].strength / known()[0].film.strength - 1.0).abs() > 0.01);
}

#[test]
fn nothing_recorded_teaches_nothing() {
    let lesson = Learner::new(known(), Surface::WASH).learn(&[]).unwrap();
    for (film, known) in lesson.films.iter().zip(known()) {
        assert_eq!(film.strength, known.film.strength);
    }
    let ErrorChange { before, now } = lesson.error(&[(0, 1.0), (1, 1.0)], 0.5, &paper());
    assert!((before - now).abs() < 1e-6);
}

/// `mixing/doubt.rs` has 3.5 for the spread of makers and 1.3 for a measured spectrum, and for
/// mixes 3.5 more: what is expected here before any record has to be of that size.
#[test]
fn what_is_expected_at_first_is_what_makers_differ_by() {
    let lesson = Learner::new(known(), Surface::WASH).learn(&[]).unwrap();
    let error = |parts: &[(usize, f64)], load: f64| lesson.error(parts, load, &paper()).before;
    let mut singles: Vec<f64> =
        (0..6).flat_map(|i| [error(&[(i, 1.0)], 1.0), error(&[(i, 1.0)], 0.25)]).collect();
    let mut mixes = Vec::new();
    for i in 0..6 {
        mixes.extend((0..i).map(|j| error(&[(i, 1.0), (j, 1.0)], 0.5)));
    }
    for errors in [&mut singles, &mut mixes] {
        errors.sort_by(f64::total_cmp);
    }
    let (single, mix) = (median(&singles), median(&mixes));
    assert!((3.0..4.5).contains(&single) && (4.5..7.0).contains(&mix), "{single} {mix}");
}

#[test]
fn the_plan_makes_predictions_surer_step_by_step_and_as_it_says() {
    let mut seed = 5;
    let truth = painters(&mut seed);
    let lesson = Learner::new(known(), Surface::WASH).learn(&[]).unwrap();
    let Plan { now, steps: plan } = lesson.plan(&[0, 1, 2, 3, 4, 5], &paper(), 8);
    let mut last = now;
    for step in &plan {
        assert!(step.after < last, "{} after {last}", step.after);
        last = step.after;
    }
    let painted: Vec<Evidence> = plan
        .iter()
        .map(|step| {
            let parts: Vec<(usize, f64)> =
                step.parts.iter().map(|part| (part.paint, f64::from(part.parts))).collect();
            Evidence { load_doubt: 0.0, ..record(&truth, &parts, step.load, &mut seed, 1.5) }
        })
        .collect();
    let shelf: Vec<Film> = known().into_iter().map(|paint| paint.film).collect();
    let taught = Learner::new(known(), Surface::WASH).learn(&painted).unwrap();
    let then = taught.plan(&[0, 1, 2, 3, 4, 5], &paper(), 0).now;
    assert!((then - last).abs() < 0.15 * last, "planned {last}, found {then}");
    assert!(unseen(&taught.films, &truth) < 0.7 * unseen(&shelf, &truth));
}

#[test]
fn slopes_are_those_of_differences() {
    let learner = Learner::new(known(), Surface::WASH);
    let parts = [(0, 2.0), (3, 1.0)];
    let state = State {
        numbers: (0..learner.forward.size()).map(|i| 0.1 * (i as f64).sin()).collect(),
        loads: vec![],
    };
    let sight = learner.forward.look(&state, &parts, 0.4, &paper().reflectance, true);
    for (number, slopes) in &sight.slopes {
        let at = |off: f64| {
            let mut state = state.clone();
            state.numbers[*number] += off;
            learner.forward.look(&state, &parts, 0.4, &paper().reflectance, false).reflectance
        };
        let (high, low) = (at(1e-5), at(-1e-5));
        for band in 0..BANDS {
            let difference = (high[band] - low[band]) / 2e-5;
            assert!((slopes[band] - difference).abs() < 1e-7, "{number} {band}");
        }
    }
    let by_load = |off: f64| {
        learner.forward.look(&state, &parts, 0.4 * f64::exp(off), &paper().reflectance, false).reflectance
    };
    let (high, low) = (by_load(1e-5), by_load(-1e-5));
    for band in 0..BANDS {
        assert!((sight.by_load[band] - (high[band] - low[band]) / 2e-5).abs() < 1e-7);
    }
}

#[test]
fn what_cannot_be_learned_from_is_named() {
    let mut seed = 1;
    let films: Vec<Film> = known().into_iter().map(|paint| paint.film).collect();
    let refused = |change: &dyn Fn(&mut Evidence), seed: &mut u64| {
        let mut record = record(&films, &[(0, 1.0)], 0.5, seed, 0.0);
        change(&mut record);
        Learner::new(known(), Surface::WASH).learn(&[record]).err().unwrap().to_string()
    };
    assert!(refused(&|r| r.parts.clear(), &mut seed).starts_with("record 1: no paint"));
    assert!(refused(&|r| r.parts[0].0 = 9, &mut seed).starts_with("record 1: no paint"));
    assert!(refused(&|r| r.load = f64::NAN, &mut seed).starts_with("record 1: load"));
    assert!(refused(&|r| r.parts[0].1 = 0.0, &mut seed).starts_with("record 1: volume"));
}

/// A painter whose paints lie far from the shelf's: what is expected agrees with what the records were off by.
#[test]
fn what_is_expected_of_strange_paints_agrees_with_their_records() {
    let mut seed = 11;
    let strange: Vec<Film> = known()
        .into_iter()
        .map(|Known { film, .. }| Film {
            strength: film.strength * noise(&mut seed, 1.0).exp() as f32,
            k: film.k.map(|k| k * noise(&mut 7, 0.4).exp() as f32 * 2.0),
            s: film.s.map(|s| s * 0.6),
        })
        .collect();
    let records = records(&strange, &mut seed);
    let lesson = Learner::new(known(), Surface::WASH).learn(&records).unwrap();
    let [before, without] = [&lesson.before, &lesson.left_out(&records)].map(|errors| median(errors));
    let now = lesson.error_among(&[0, 1, 2, 3, 4, 5], &paper());
    assert!(without < 0.6 * before, "{without} of {before}");
    assert!(now < before && now < 2.0 * without, "expected {now}; off by {before}, {without} when left out");
}
