//! What the head of a column says.

use crate::text::decimal;
use crate::text::rows::plain;

/// Whether reflectance is in percent, where a header says so.
pub(super) fn percent(header: &str) -> Option<bool> {
    let header = header.trim_end_matches([')', ']', ' ']).to_ascii_lowercase();
    if ["%", "percent", "pct"].iter().any(|unit| header.ends_with(unit)) {
        return Some(true);
    }
    header.ends_with("fraction").then_some(false)
}

/// The wavelength in nanometres that a header names.
pub(super) fn wavelength(header: &str) -> Option<f64> {
    const WORDS: [&str; 9] =
        ["", "nm", "r", "rnm", "spec", "spectral", "spectralnm", "reflectance", "reflectancenm"];
    const UNITS: [&str; 3] = ["percent", "pct", "fraction"];
    const LONGEST: usize = 60;
    if header.len() > LONGEST {
        return None;
    }
    let start = header.find(|c: char| c.is_ascii_digit())?;
    let digits = &header[start..];
    let length = digits.find(|c: char| !c.is_ascii_digit() && c != '.' && c != ',').unwrap_or(digits.len());
    let mut words = plain(&header[..start]) + &plain(&digits[length..]);
    for unit in UNITS {
        words = words.strip_suffix(unit).map(str::to_owned).unwrap_or(words);
    }
    // Signs that make a date or a negative number of it.
    let odd = header.contains(['-', '/', ':', '+']);
    let value = decimal::read(&digits[..length].replacen(',', ".", 1))?;
    (WORDS.contains(&&*words) && !odd && (200.0..=2500.0).contains(&value)).then_some(value)
}
