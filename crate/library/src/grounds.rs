//! The four grounds under all cards, found together with the films.

use nalgebra::{DMatrix, DVector};
use washpath_core::Surface;

use crate::cards::{CARD_BANDS, Card, CardSpectrum, GROUNDS};
use crate::separate::{Logs, Setup, bend_penalty, error, guess, separate};

/// First guess of the measured grounds: what the clearest films show at 710 nm.
const SHOWN: [f64; GROUNDS] = [0.145, 0.25, 0.475, 0.91];

/// Turns taken between films and grounds; later ones move no ground by 0.002.
const TURNS: usize = 6;

/// Films and their common setup, fitted to all cards.
pub fn fit(cards: &[Card]) -> (Setup, Vec<Logs>) {
    let surfaces = surfaces(cards);
    let grounds = SHOWN.map(|r| std::array::from_fn(|band| surfaces[band].inner(r)));
    let mut setup = Setup { surfaces, grounds };
    let mut films: Vec<Logs> = cards.iter().map(|card| guess(card, &setup)).collect();
    for turn in 0..=TURNS {
        let steps = if turn == 0 || turn == TURNS { 12 } else { 4 };
        for (card, film) in cards.iter().zip(&mut films) {
            *film = separate(card, &setup, *film, steps);
        }
        if turn < TURNS {
            refit(cards, &films, &mut setup);
        }
    }
    (setup, films)
}

/// No card is darker than its surface: k1 is a little below the darkest reading.
fn surfaces(cards: &[Card]) -> [Surface<f64>; CARD_BANDS] {
    std::array::from_fn(|band| {
        let readings = cards.iter().flat_map(|card| card.readings.iter().map(|r| r[band]));
        Surface { k1: 0.9 * readings.fold(1.0, f64::min), k2: 0.6 }
    })
}

/// Gauss-Newton steps on the logits of the grounds, films held.
fn refit(cards: &[Card], films: &[Logs], setup: &mut Setup) {
    for _ in 0..4 {
        for ground in 0..GROUNDS {
            let z = setup.grounds[ground].map(logit);
            let step = ground_step(cards, films, setup, ground, &z);
            setup.grounds[ground] = std::array::from_fn(|band| logistic(z[band] + step[band]));
        }
    }
}

fn ground_step(
    cards: &[Card],
    films: &[Logs],
    setup: &Setup,
    ground: usize,
    z: &CardSpectrum,
) -> DVector<f64> {
    const STEP: f64 = 1e-4;
    /// Smoothness of the grounds' logits: bends of about 0.006 a band.
    const BEND: f64 = 0.0063;
    let smooth = bend_penalty() / (BEND * BEND);
    let mut slope = -(&smooth * DVector::from_column_slice(z));
    let mut normal: DMatrix<f64> = smooth;
    for band in 0..CARD_BANDS {
        for (card, film) in cards.iter().zip(films) {
            let reading = card.readings[ground][band];
            let model = |z: f64| setup.reading(band, film.ln_k[band], film.ln_s[band], logistic(z));
            let here = model(z[band]);
            let off = (reading - here) / error(band, reading);
            let by_z = (model(z[band] + STEP) - here) / STEP / error(band, reading);
            // Huber's weights: a badly painted card must not move the ground.
            let weight = (3.0 / off.abs()).min(1.0);
            normal[(band, band)] += weight * by_z * by_z;
            slope[band] += weight * by_z * off;
        }
        if ground == GROUNDS - 1 && band + 4 >= CARD_BANDS {
            let anchor = logit(setup.surfaces[band].inner(SHOWN[ground]));
            normal[(band, band)] += ANCHOR;
            slope[band] += ANCHOR * (anchor - z[band]);
        }
    }
    normal.lu().solve(&slope).unwrap_or_else(|| DVector::zeros(CARD_BANDS))
}

/// Weight of the white ground's anchor on its logit, past 690 nm.
const ANCHOR: f64 = 125_000.0;

fn logit(r: f64) -> f64 {
    let r = r.clamp(1e-4, 1.0 - 1e-4);
    (r / (1.0 - r)).ln()
}

fn logistic(z: f64) -> f64 {
    1.0 / (1.0 + (-z).exp())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::cards::cards;

    #[test]
    fn grounds_are_neutral_steps_from_dark_to_white_and_explain_the_cards() {
        let cards = cards().unwrap();
        let (setup, films) = fit(&cards);
        for band in 0..CARD_BANDS {
            let at = |ground: usize| setup.grounds[ground][band];
            assert!((0.1..0.3).contains(&at(0)), "dark {} in band {band}", at(0));
            assert!(at(0) + 0.1 < at(1) && at(1) + 0.1 < at(2) && at(2) + 0.1 < at(3));
            assert!((0.92..0.99).contains(&at(3)), "white {} in band {band}", at(3));
        }
        let mut rms: Vec<f64> =
            cards.iter().zip(&films).map(|(card, film)| misfit(&setup, card, film)).collect();
        rms.sort_by(f64::total_cmp);
        let median = rms[rms.len() / 2];
        assert!(median < 0.006, "median misfit {median} in reflectance past 450 nm");
    }

    fn misfit(setup: &Setup, card: &Card, film: &Logs) -> f64 {
        let mut sum = 0.0;
        for ground in 0..GROUNDS {
            for band in 4..CARD_BANDS {
                let model =
                    setup.reading(band, film.ln_k[band], film.ln_s[band], setup.grounds[ground][band]);
                sum += (model - card.readings[ground][band]).powi(2);
            }
        }
        (sum / (GROUNDS * (CARD_BANDS - 4)) as f64).sqrt()
    }
}
