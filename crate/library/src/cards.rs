//! Pigment films over the four grounds of a card: `data/cards.csv`.

use crate::error::Error;
use crate::separate::error;
use crate::table::Table;

/// Bands of the cards: 410 to 730 nm by 10 nm.
pub const CARD_BANDS: usize = 33;

/// Grounds under each film.
pub const GROUNDS: usize = 4;

/// Values in the cards' bands.
pub type CardSpectrum = [f64; CARD_BANDS];

/// One painted card.
pub struct Card {
    pub id: String,
    /// Number of the pigment in the set.
    pub pigment: String,
    /// Reflectance over each ground, darkest to white.
    pub readings: [CardSpectrum; GROUNDS],
}

impl Card {
    /// Share of the bands in which the film hides its grounds: over dark and white it reads the
    /// same to within three times a reading's error.
    pub fn hidden(&self) -> f64 {
        let [dark, .., white] = &self.readings;
        let hides = |band: &usize| (white[*band] - dark[*band]).abs() < 3.0 * error(*band, white[*band]);
        (0..CARD_BANDS).filter(hides).count() as f64 / CARD_BANDS as f64
    }
}

/// All cards, in the order of the table.
pub fn cards() -> Result<Vec<Card>, Error> {
    let table = Table::read("cards.csv", include_str!("../data/cards.csv"))?;
    let mut cards: Vec<Card> = Vec::new();
    for row in table.rows() {
        let id = row.text("card")?;
        let index = cards.iter().position(|card| card.id == id).unwrap_or_else(|| {
            cards.push(Card {
                id: id.to_owned(),
                pigment: String::new(),
                readings: [[f64::NAN; CARD_BANDS]; GROUNDS],
            });
            cards.len() - 1
        });
        row.text("pigment")?.clone_into(&mut cards[index].pigment);
        let ground = row.number("ground")? as usize;
        let reading = ground.checked_sub(1).and_then(|ground| cards[index].readings.get_mut(ground));
        *reading.ok_or_else(|| row.fault(format!("card {id} has no ground {ground}")))? =
            row.spectrum(410)?;
    }
    match cards.iter().find(|card| card.readings.iter().flatten().any(|r| r.is_nan())) {
        Some(card) => Err(Error::new("cards.csv", format!("card {} lacks a ground", card.id))),
        None => Ok(cards),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn readings_are_reflectances() {
        for card in cards().unwrap() {
            assert!(card.readings.iter().flatten().all(|r| (0.0..1.1).contains(r)), "{}", card.id);
        }
    }
}
