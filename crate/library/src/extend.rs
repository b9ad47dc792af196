//! From the cards' bands to all bands.

use washpath_core::spectrum::{BANDS, Spectrum, from_fn};

use crate::cards::{CARD_BANDS, CardSpectrum};

/// Bands below the cards' first.
const BELOW: usize = BANDS - CARD_BANDS;

/// Continues logarithms below 410 nm with half their slope over 410 to 450 nm.
pub fn extend(logs: &CardSpectrum) -> Spectrum<f64> {
    let slope = 0.5 * (logs[0] - logs[4]) / 4.0;
    from_fn(|band| match band.checked_sub(BELOW) {
        Some(band) => logs[band],
        None => logs[0] + slope * (BELOW - band) as f64,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn continues_a_straight_line_half_as_steep() {
        let line: CardSpectrum = std::array::from_fn(|band| -(band as f64));
        let all = extend(&line);
        assert_eq!(&all[..5], &[1.5, 1.0, 0.5, 0.0, -1.0]);
    }
}
