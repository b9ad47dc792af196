//! Colours as a person types them.
//!
//! ```text
//! #a1b2c3   a1b2c3   #abc          sRGB in hexadecimal digits
//! rgb(161, 178, 195)               sRGB, 0 to 255
//! lab(50 20 -30)   L*50 a*20 b*-30   CIELAB, D65
//! lch(50 40 270)                   the same by chroma and hue angle
//! ```
//!
//! Case, brackets, commas and spaces do not matter; a point stands before
//! decimals.

use std::ops::RangeInclusive;

use crate::colour::display::shown;
use crate::colour::{Lab, lab_of_rgb};
use crate::error::Error;
use crate::text::decimal::{self, Decimal};
use crate::text::limits::within;

/// What may be typed, for a hint beside the field.
pub const EXAMPLES: &str = "#a1b2c3, rgb(161, 178, 195), lab(50 20 -30) or lch(50 40 270)";

/// Longest text that is looked at, in bytes.
const LONGEST: usize = 80;

const LIGHTNESS: RangeInclusive<f32> = 0.0..=100.0;
/// Every colour of a surface or a display lies well within.
const OPPONENT: RangeInclusive<f32> = -150.0..=150.0;
const CHROMA: RangeInclusive<f32> = 0.0..=150.0;
const ANGLE: RangeInclusive<f32> = -360.0..=360.0;
const BYTE: RangeInclusive<f32> = 0.0..=255.0;

/// Reads a colour; CIELAB is taken to be in D65.
///
/// # Errors
///
/// [`Error::Value`] that says what is wrong and what may be typed.
///
/// ```
/// use washpath_core::{Lab, notation};
/// assert_eq!(notation::parse("L*50 a*20 b*-30")?, Lab::new(50.0, 20.0, -30.0));
/// assert_eq!(notation::hex(notation::parse("#ABC")?), "#aabbcc");
/// assert!(notation::parse("lab(500 0 0)").is_err());
/// # Ok::<(), washpath_core::Error>(())
/// ```
pub fn parse(text: &str) -> Result<Lab, Error> {
    let text = text.trim();
    if text.is_empty() {
        return Err(fault("no colour is given"));
    }
    if text.len() > LONGEST {
        return Err(fault("a text too long for a colour"));
    }
    let digits = text.strip_prefix('#');
    let bare = [3, 6].contains(&text.len()) && text.bytes().all(|byte| byte.is_ascii_hexdigit());
    match digits.or(bare.then_some(text)) {
        Some(digits) => hexadecimal(digits),
        None => named(&text.to_ascii_lowercase()),
    }
}

/// The colour as sRGB, `#rrggbb`; what sRGB does not hold loses chroma.
#[must_use]
pub fn hex(lab: Lab) -> String {
    shown(lab).hex()
}

fn hexadecimal(digits: &str) -> Result<Lab, Error> {
    let values: Option<Vec<u8>> =
        digits.chars().map(|digit| digit.to_digit(16).map(|value| value as u8)).collect();
    match values.as_deref() {
        Some(&[r, g, b]) => Ok(lab_of_rgb([r, g, b].map(|digit| 17 * digit))),
        Some(&[r, s, g, h, b, c]) => {
            Ok(lab_of_rgb([[r, s], [g, h], [b, c]].map(|[high, low]| 16 * high + low)))
        }
        Some(_) => Err(fault(&format!("{} digits after #, where 3 or 6 are needed", digits.chars().count()))),
        None => Err(fault("only the digits 0 to 9 and a to f may follow #")),
    }
}

/// A space's name, in one piece or a letter before each number, and three numbers.
fn named(text: &str) -> Result<Lab, Error> {
    let (name, numbers) = tokens(text)?;
    let Ok([x, y, z]) = <[f32; 3]>::try_from(&numbers[..]) else {
        return Err(fault(&match numbers.len() {
            0 => format!("\"{text}\" is not a colour that can be read here"),
            count => format!("a colour has 3 numbers, and this has {count}"),
        }));
    };
    match name.as_str() {
        "lab" | "cielab" => {
            let [l, a, b] =
                [ranged("L*", x, LIGHTNESS)?, ranged("a*", y, OPPONENT)?, ranged("b*", z, OPPONENT)?];
            Ok(Lab::new(l, a, b))
        }
        "lch" | "cielch" => {
            let [l, c, h] = [ranged("L*", x, LIGHTNESS)?, ranged("C*", y, CHROMA)?, ranged("h", z, ANGLE)?];
            let (sin, cos) = h.to_radians().sin_cos();
            Ok(Lab::new(l, c * cos, c * sin))
        }
        "rgb" | "srgb" => {
            let byte = |name, value| match ranged(name, value, BYTE)? {
                whole if whole.fract() == 0.0 => Ok(whole as u8),
                broken => Err(fault(&format!("{name} is {}, not a whole number", Decimal(broken)))),
            };
            Ok(lab_of_rgb([byte("red", x)?, byte("green", y)?, byte("blue", z)?]))
        }
        "" => Err(fault("three numbers need a name before them")),
        _ => Err(fault(&format!("\"{name}\" is not a colour space that is known here"))),
    }
}

/// All letters put together, and the numbers.
fn tokens(text: &str) -> Result<(String, Vec<f32>), Error> {
    let (mut name, mut numbers) = (String::new(), Vec::new());
    let mut rest = text;
    while let Some(first) = rest.chars().next() {
        let length = match first {
            'a'..='z' => {
                name.push(first);
                1
            }
            ' ' | '\t' | '\u{a0}' | ',' | ';' | ':' | '=' | '*' | '(' | ')' | '°' => first.len_utf8(),
            _ => {
                let (number, length) = number(rest)?;
                numbers.push(number);
                length
            }
        };
        rest = &rest[length..];
    }
    Ok((name, numbers))
}

/// The number a text begins with, and its length in bytes.
fn number(text: &str) -> Result<(f32, usize), Error> {
    let sign = text.chars().next().filter(|c| ['-', '+', '\u{2212}'].contains(c));
    let start = sign.map_or(0, char::len_utf8);
    let digits = &text[start..];
    let length = digits.find(|c: char| !c.is_ascii_digit() && c != '.').unwrap_or(digits.len());
    let value = decimal::read(&digits[..length]).ok_or_else(|| {
        let shown: String = text[..start + length].chars().chain(digits[length..].chars().take(1)).collect();
        fault(&format!("\"{}\" is not a number", shown.trim_end()))
    })?;
    let minus = matches!(sign, Some('-' | '\u{2212}'));
    Ok(((if minus { -value } else { value }) as f32, start + length))
}

fn ranged(name: &str, value: f32, range: RangeInclusive<f32>) -> Result<f32, Error> {
    let (least, most) = range.into_inner();
    within(name, value.into(), [least.into(), most.into()]).map_err(|refused| fault(&refused.to_string()))?;
    Ok(value)
}

fn fault(found: &str) -> Error {
    Error::Unreadable(format!("{found}: type {EXAMPLES}"))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::colour::{chroma, hue_angle};
    use proptest::prelude::*;

    #[test]
    fn every_notation_is_read() {
        let slate = lab_of_rgb([0xa1, 0xb2, 0xc3]);
        for text in ["#a1b2c3", "A1B2C3", "rgb(161, 178, 195)", "R161 G178 B195", "rgb 161 178 195"] {
            assert_eq!(parse(text), Ok(slate), "{text}");
        }
        assert_eq!(parse(" #abc "), parse("#aabbcc"));
        let lab = Lab::new(50.0, 20.0, -30.5);
        for text in [
            "lab(50 20 -30.5)",
            "Lab 50, 20, -30.5",
            "L*50 a*20 b*-30.5",
            "L*=50; a*=20; b*=\u{2212}30.5",
            "CIELAB 50 +20 -30.5",
        ] {
            assert_eq!(parse(text), Ok(lab), "{text}");
        }
        for text in ["lch(50 40 270)", "L* 50 C* 40 h 270°", "lch 50 40 -90"] {
            let lab = parse(text).unwrap();
            assert!((chroma(lab) - 40.0).abs() < 1e-4 && (hue_angle(lab) - 270.0).abs() < 1e-3, "{text}");
        }
    }

    #[test]
    fn faults_are_named() {
        for (text, found) in [
            ("", "no colour is given"),
            ("#12345", "5 digits after #, where 3 or 6 are needed"),
            ("#12345g", "only the digits 0 to 9 and a to f may follow #"),
            ("lab(101 0 0)", "L* is 101, not between 0 and 100"),
            ("lab(50 1e9 0)", "a colour has 3 numbers, and this has 4"),
            ("lch(50 -1 0)", "C* is -1, not between 0 and 150"),
            ("rgb(10, 20, 256)", "blue is 256, not between 0 and 255"),
            ("rgb(10, 20.5, 25)", "green is 20.5, not a whole number"),
            ("lab 50 20", "a colour has 3 numbers, and this has 2"),
            ("teal?", "\"?\" is not a number"),
            ("teal", "\"teal\" is not a colour that can be read here"),
            ("50 20 -30", "three numbers need a name before them"),
            ("hsl(10 20 30)", "\"hsl\" is not a colour space that is known here"),
            ("lab(50% 20 -30)", "\"%\" is not a number"),
            ("lab(1.2.3 20 -30)", "\"1.2.3\" is not a number"),
            ("lab(NaN 0 0)", "a colour has 3 numbers, and this has 2"),
        ] {
            assert_eq!(parse(text).unwrap_err().to_string(), format!("{found}: type {EXAMPLES}"), "{text}");
        }
        assert!(parse(&format!("lab({} 0 0)", "9".repeat(70))).is_err());
        assert!(parse(&"9".repeat(5000)).is_err());
    }

    proptest! {
        #[test]
        fn no_text_is_a_panic(text in "\\PC{0,90}") {
            let _ = parse(&text);
        }

        #[test]
        fn no_text_made_of_our_signs_is_a_panic(text in "[#a-cLlhrg0-9.,*() \u{2212}+-]{0,40}") {
            if let Ok(lab) = parse(&text) {
                prop_assert!(lab.l.is_finite() && lab.a.is_finite() && lab.b.is_finite());
            }
        }

        #[test]
        fn hexadecimal_comes_back(rgb in any::<[u8; 3]>()) {
            let [r, g, b] = rgb;
            let text = format!("#{r:02x}{g:02x}{b:02x}");
            prop_assert_eq!(hex(parse(&text).unwrap()), text);
        }
    }
}
