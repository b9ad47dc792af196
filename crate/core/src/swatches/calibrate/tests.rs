use super::ground::surface_of;
use super::swatch::daylight;
use super::*;
use crate::colour::{Lab, ciede2000};
use crate::numeric::noise::noise;
use crate::optics::spectrum::{BANDS, Spectrum, from_fn};
use crate::optics::surface::Surface;

/// A smooth made-up paint: one absorption hump on a floor.
fn paint(centre: f64, strength: f64, scattering: f64) -> Curves {
    Curves {
        k: from_fn(|band| 0.02 + strength * (-((band as f64 - centre) / 6.0).powi(2)).exp()),
        s: from_fn(|band| scattering * (1.0 + 0.01 * band as f64)),
    }
}

fn ground() -> Ground {
    Ground { paper: [0.87; BANDS], surface: Surface { k1: 0.01, k2: 0.6 }, gamma: 0.85, floors: Vec::new() }
}

fn paints() -> Vec<Curves> {
    vec![paint(6.0, 3.0, 0.4), paint(18.0, 1.5, 0.8), paint(28.0, 2.0, 0.2)]
}

fn swatch(parts: &[(usize, f64)], seed: &mut u64) -> Swatch {
    let r = ground().reflectance(&paints(), parts).map(|r| r + noise(seed, 0.002));
    Swatch { parts: parts.to_vec(), seen: Seen::Spectrum(Box::new(r)), trust: 1.0 }
}

fn singles() -> Vec<Swatch> {
    let mut seed = 7;
    let quantities = [0.125, 0.25, 0.5, 1.0, 2.0];
    (0..3).flat_map(|p| quantities.map(|q| (p, q))).map(|part| swatch(&[part], &mut seed)).collect()
}

fn unseen_errors(ground: &Ground, fitted: &[Curves]) -> f64 {
    let mixes = [[(0, 0.5), (1, 0.5)], [(0, 0.1), (2, 0.4)], [(1, 1.0), (2, 0.5)]];
    let worst = mixes.iter().map(|parts| {
        let truth = daylight(&self::ground().reflectance(&paints(), parts));
        ciede2000(daylight(&ground.reflectance(fitted, parts)), truth)
    });
    worst.fold(0.0, f64::max)
}

#[test]
fn paints_come_back_from_noisy_swatches_of_themselves() {
    let fitted = fit(&ground(), &vec![Prior::unknown(); 3], &singles()).unwrap();
    assert!(fitted.errors.iter().all(|e| *e < 1.0), "{:?}", fitted.errors);
    let worst = unseen_errors(&fitted.ground, &fitted.paints);
    assert!(worst < 1.5, "{worst}");
}

/// Neither surface, spreading nor the level of S is told: the mean of many guesses is
/// nearer than most of them.
#[test]
fn what_guesses_agree_on_holds_in_mixes() {
    let paper = [0.87; BANDS];
    let found = consensus(&paper, 3, &singles(), 1).unwrap();
    assert!(found.errors.iter().all(|e| *e < 2.0), "{:?}", found.errors);
    let worst = unseen_errors(&found.ground, &found.paints);
    assert!(worst < 2.5, "{worst}");
    assert_eq!(found.paints, consensus(&paper, 3, &singles(), 1).unwrap().paints);
    assert_ne!(found.paints, consensus(&paper, 3, &singles(), 2).unwrap().paints);
}

#[test]
fn guesses_want_spectra_of_every_paint_alone() {
    let fault = |swatches: &[Swatch]| consensus(&[0.87; BANDS], 3, swatches, 1).unwrap_err().to_string();
    assert_eq!(fault(&singles()[..10]), "paint 2 has no swatch");
    let mixed = Swatch { parts: vec![(0, 1.0), (1, 1.0)], ..singles().remove(0) };
    assert!(fault(&[mixed]).starts_with("swatches of one paint each"));
}

/// In a mix the surface is the paints' own by quantity; a paint without one has the paper's.
#[test]
fn a_film_shows_the_surface_of_its_paints() {
    let ground = Ground { floors: vec![0.04], ..ground() };
    let k1 = |parts: &[(usize, f64)]| surface_of(ground.surface, &ground.floors, parts).k1;
    assert_eq!(k1(&[(0, 2.0)]), 0.04);
    assert_eq!(k1(&[(1, 2.0)]), 0.01);
    assert!((k1(&[(0, 1.0), (1, 2.0)]) - 0.02).abs() < 1e-12);
    assert_eq!(k1(&[]), 0.01);
    // Black beneath its surface, a film shows that alone.
    let black = Curves { k: [1e4; BANDS], s: [1e-4; BANDS] };
    assert!((ground.reflectance(&[black], &[(0, 1.0)])[9] - 0.04).abs() < 1e-4);
}

#[test]
fn one_spoilt_swatch_does_not_spoil_the_paint() {
    let mut swatches = singles();
    swatches[2].seen = Seen::Spectrum(Box::new([0.5; BANDS]));
    let fitted = fit(&ground(), &vec![Prior::unknown(); 3], &swatches).unwrap();
    assert!(fitted.errors[2] > 10.0);
    let worst = unseen_errors(&fitted.ground, &fitted.paints);
    assert!(worst < 3.0, "{worst}");
}

#[test]
fn a_known_paint_learns_its_strength_from_colours_of_mixes() {
    // The shelf's second paint is half as strong as the painter's own.
    let mut priors: Vec<Prior> = paints().into_iter().map(Prior::known).collect();
    let half = |curve: &mut Spectrum<f64>| curve.iter_mut().for_each(|value| *value *= 0.5);
    half(&mut priors[1].curves.k);
    half(&mut priors[1].curves.s);
    let before: Vec<Curves> = priors.iter().map(|p| p.curves.clone()).collect();
    let swatches: Vec<Swatch> = [[(0, 0.3), (1, 0.7)], [(1, 0.6), (2, 0.2)], [(1, 0.2), (2, 0.5)]]
        .iter()
        .map(|parts| {
            let lab = daylight(&ground().reflectance(&paints(), parts));
            Swatch { parts: parts.to_vec(), seen: Seen::Lab(lab), trust: 1.0 }
        })
        .collect();
    let fitted = fit(&ground(), &priors, &swatches).unwrap();
    let (before, after) = (unseen_errors(&ground(), &before), unseen_errors(&ground(), &fitted.paints));
    assert!(after < 0.5 * before, "{before} became {after}");
    assert_eq!(fitted.paints.len(), 3);
}

#[test]
fn a_paint_without_swatches_stays_as_expected() {
    let fitted = fit(&ground(), &vec![Prior::unknown(); 4], &singles()).unwrap();
    assert_eq!(fitted.paints[3], Prior::unknown().curves);
}

#[test]
fn what_cannot_be_fitted_is_named() {
    let fault = |change: &dyn Fn(&mut Swatch)| {
        let mut swatches = singles();
        change(&mut swatches[1]);
        fit(&ground(), &vec![Prior::unknown(); 3], &swatches).unwrap_err().to_string()
    };
    assert!(fault(&|s| s.parts.clear()).starts_with("swatch 2: no paint"));
    assert!(fault(&|s| s.parts[0].0 = 9).starts_with("swatch 2: paint 9 of 3"));
    for quantity in [0.0, -1.0, f64::NAN, f64::INFINITY] {
        assert!(fault(&|s| s.parts[0].1 = quantity).starts_with("swatch 2: quantity"));
    }
    assert!(fault(&|s| s.trust = f64::NAN).starts_with("swatch 2: trust"));
    assert!(fault(&|s| s.seen = Seen::Lab(Lab::new(f64::NAN, 0.0, 0.0))).starts_with("swatch 2: L*"));
    assert!(fault(&|s| s.seen = Seen::Spectrum(Box::new([2.0; BANDS]))).starts_with("swatch 2: reflectance"));
}

#[test]
fn the_same_swatches_give_the_same_paints() {
    let run = || fit(&ground(), &vec![Prior::unknown(); 3], &singles()).unwrap().paints;
    assert_eq!(run(), run());
}
