//! Spectra of paints in few bytes.
//!
//! A paint's absorption or scattering ranges over decades and is smooth along
//! the wavelength. So its logarithm is rounded to steps of [`STEP`], and each
//! band is kept as how far it lies off the line through the two before it. What
//! rounding takes from a band goes to the next: an eye, which adds up bands, sees
//! a grey that stands flat between two steps where it stands.
//!
//! ```text
//! n_i = round(ln value_i / STEP + what rounding took from bands before)     i: band, 0 to 35
//! bytes = n_0   n_1 - n_0   n_i - (2 n_i-1 - n_i-2) ...                     as signed varints
//! ```

use crate::optics::spectrum::{BANDS, Spectrum};
use crate::text::varint::{push_signed, take_signed};

/// Step of the natural logarithm: a value is kept to 0.6 %, the mean of several closer.
pub const STEP: f64 = 0.006;

/// Least value that is told from 0.
const LEAST: f64 = 1e-5;

/// Spectra as bytes, one after the other; values are non-negative and finite.
#[must_use]
pub fn pack<'a>(spectra: impl IntoIterator<Item = &'a Spectrum<f64>>) -> Vec<u8> {
    let mut bytes = Vec::new();
    for spectrum in spectra {
        let mut owed = 0.0;
        let logs = spectrum.map(|value| {
            let log = value.max(LEAST).ln() / STEP + owed;
            owed = log - log.round();
            log.round() as i16
        });
        push_bands(&mut bytes, &logs);
    }
    bytes
}

/// The spectra of some bytes, as long as they last.
pub(crate) fn unpack(mut bytes: &[u8]) -> impl Iterator<Item = Spectrum> {
    std::iter::from_fn(move || {
        let logs = take_bands(&mut bytes)?;
        Some(logs.map(|log| (f32::from(log) * STEP as f32).exp()))
    })
}

/// Appends whole numbers of every band, each as how far it lies off the line through the two before it.
pub(crate) fn push_bands(bytes: &mut Vec<u8>, bands: &Spectrum<i16>) {
    for band in 0..BANDS {
        push_signed(bytes, bands[band].wrapping_sub(expected(&bands[..band])));
    }
}

/// Takes them off the front again; nothing where the bytes end within them.
pub(crate) fn take_bands(bytes: &mut &[u8]) -> Option<Spectrum<i16>> {
    let mut bands = [0; BANDS];
    for band in 0..BANDS {
        bands[band] = expected(&bands[..band]).wrapping_add(take_signed(bytes)?);
    }
    Some(bands)
}

/// The next band on the line through the last two.
fn expected(logs: &[i16]) -> i16 {
    match *logs {
        [] => 0,
        [only] => only,
        [.., before, last] => last.wrapping_mul(2).wrapping_sub(before),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::optics::spectrum::{cast, from_fn};

    #[test]
    fn spectra_come_back_to_a_step_and_their_means_closer() {
        let smooth: Spectrum<f64> = from_fn(|band| (0.3 * band as f64).sin().exp());
        let jagged: Spectrum<f64> = from_fn(|band| if band % 2 == 0 { 2e-5 } else { 80.0 });
        let bytes = pack([&smooth, &jagged]);
        let found: Vec<Spectrum<f64>> = unpack(&bytes).map(|spectrum| cast(&spectrum)).collect();
        assert_eq!(found.len(), 2);
        for (found, wanted) in found.iter().zip([smooth, jagged]) {
            let off: Spectrum<f64> = from_fn(|band| (found[band] / wanted[band]).ln() / STEP);
            assert!(off.iter().all(|off| off.abs() <= 1.001), "{off:?}");
            assert!(off.iter().sum::<f64>().abs() <= 0.51, "{off:?}");
        }
    }

    #[test]
    fn nothing_is_one_hundred_thousandth() {
        let bytes = pack([&[0.0; BANDS]]);
        assert!(unpack(&bytes).flatten().all(|value| (value / LEAST as f32 - 1.0).abs() < 0.01));
    }

    #[test]
    fn bytes_of_anything_are_no_panic() {
        let bytes: Vec<u8> = (0..=255).cycle().take(2_000).collect();
        assert!(unpack(&bytes).count() <= 2_000 / BANDS);
        assert_eq!(unpack(&bytes[..BANDS - 1]).count(), 0);
    }
}
