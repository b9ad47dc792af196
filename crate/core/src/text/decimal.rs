//! Decimal numbers as text, read and written.
//!
//! The standard library reads and writes every float to its last digit, with
//! tables and long arithmetic that weigh much in a program that has to be
//! downloaded. The numbers of tables, styles and messages are short ones. One
//! float in a `format!` brings all of it back, and so does `clamp` between bounds
//! that are not constant, whose panic would print them.

use std::fmt;

/// A number as people write it: to at most four decimals, as few as it needs.
///
/// ```
/// use washpath_core::Decimal;
/// assert_eq!(Decimal(-2.5).to_string(), "-2.5");
/// assert_eq!(Decimal(1.0 / 3.0).to_string(), "0.3333");
/// assert_eq!(Decimal(-0.00001).to_string(), "0");
/// assert_eq!(Decimal(1e12).to_string(), "over 1000000000");
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Decimal(pub f32);

/// Beyond it a number is only said to be.
const LARGEST: u64 = 1_000_000_000;

/// Parts of one that four decimals tell.
const PARTS: u64 = 10_000;

impl fmt::Display for Decimal {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.0.is_nan() {
            return f.write_str("NaN");
        }
        let parts = (f64::from(self.0.abs()) * PARTS as f64).round() as u64;
        if self.0 < 0.0 && parts > 0 {
            f.write_str("-")?;
        }
        if parts > LARGEST * PARTS {
            return write!(f, "over {LARGEST}");
        }
        write!(f, "{}", parts / PARTS)?;
        let (mut decimals, mut digits) = (parts % PARTS, 4);
        if decimals == 0 {
            return Ok(());
        }
        while decimals % 10 == 0 {
            (decimals, digits) = (decimals / 10, digits - 1);
        }
        write!(f, ".{decimals:0digits$}")
    }
}

/// The number of a text: digits with at most one point among them, a minus in front or not.
///
/// A quotient of two numbers that `f64` holds exactly is the nearest there is, so
/// that up to fifteen digits are read exactly (W. D. Clinger, "How to read
/// floating point numbers accurately", PLDI 1990); more are read to within rounding.
pub(crate) fn read(text: &str) -> Option<f64> {
    let digits = text.strip_prefix('-').unwrap_or(text);
    let (mut value, mut scale, mut point) = (0.0, 1.0, false);
    for byte in digits.bytes() {
        match byte {
            b'0'..=b'9' => {
                value = 10.0 * value + f64::from(byte - b'0');
                scale *= if point { 10.0 } else { 1.0 };
            }
            b'.' if !point => point = true,
            _ => return None,
        }
    }
    let value: f64 = value / scale;
    let whole = digits.len() > usize::from(point) && value.is_finite();
    whole.then_some(if digits.len() < text.len() { -value } else { value })
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn odd_texts_are_no_numbers() {
        for text in ["", "-", ".", "-.", "1.2.3", "1e5", "+1", "--1", " 1", "NaN", "\u{2212}1", "0x1"] {
            assert_eq!(read(text), None, "{text}");
        }
        assert_eq!(read(&"9".repeat(400)), None);
        assert_eq!((read("5."), read(".5"), read("-0.125")), (Some(5.0), Some(0.5), Some(-0.125)));
    }

    #[test]
    fn numbers_past_all_counting_are_told_as_such() {
        let texts = [f32::NAN, f32::INFINITY, f32::MIN, 1e9, -0.0].map(|value| Decimal(value).to_string());
        assert_eq!(texts, ["NaN", "over 1000000000", "-over 1000000000", "1000000000", "0"]);
    }

    proptest! {
        /// The standard library is the reference.
        #[test]
        fn short_numbers_are_read_as_the_standard_library_reads_them(text in "-?[0-9]{1,8}(\\.[0-9]{0,7})?") {
            prop_assert_eq!(read(&text), text.parse().ok());
        }

        #[test]
        fn long_numbers_are_read_to_within_rounding(text in "[0-9]{1,40}\\.[0-9]{1,40}") {
            let wanted: f64 = text.parse().unwrap();
            prop_assert!((read(&text).unwrap() - wanted).abs() <= 1e-14 * wanted, "{}", text);
        }

        #[test]
        fn what_is_written_is_read(value in -1e5f32..1e5) {
            let text = Decimal(value).to_string();
            prop_assert!((read(&text).unwrap() - f64::from(value)).abs() <= 0.5e-4 + 1e-9, "{}", text);
        }
    }
}
