//! Names as a sheet needs them.

use washpath_core::Paint;

/// English words with a capital at their head.
pub(crate) fn capital(words: &str) -> String {
    let mut words = words.to_owned();
    if let Some(first) = words.get_mut(..1) {
        first.make_ascii_uppercase();
    }
    words
}

/// A paint's code; a letter tells it from others of the paints that bear the same code: "PBr7 b".
pub(crate) fn code(paint: &Paint, among: &[&Paint]) -> String {
    let same: Vec<_> =
        among.iter().filter(|other| other.code == paint.code).map(|other| other.number).collect();
    match same.iter().position(|number| *number == paint.number) {
        Some(index) if same.len() > 1 => format!("{} {}", paint.code, letters(index)),
        _ => paint.code.clone(),
    }
}

/// a to z, then aa, ab …
fn letters(index: usize) -> String {
    let last = char::from(b'a' + (index % 26) as u8);
    if index < 26 { last.to_string() } else { letters(index / 26 - 1) + &last.to_string() }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn letters_go_on_after_z() {
        assert_eq!([0, 25, 26, 27, 701, 702].map(letters), ["a", "z", "aa", "ab", "zz", "aaa"]);
    }

    #[test]
    fn nothing_has_no_capital() {
        assert_eq!([capital(""), capital("blue"), capital("élan")], ["", "Blue", "élan"]);
    }
}
