//! Texts a painter types.

use crate::error::Error;

/// A text on one line: trimmed, control characters become spaces.
#[inline(never)]
pub(crate) fn one_line(text: &str) -> String {
    let text: String = text.chars().map(|c| if c.is_control() { ' ' } else { c }).collect();
    text.trim().to_owned()
}

/// Takes out of a text what nobody sees, and trims it.
///
/// Controls of direction turn the words of a sentence round in which a name
/// stands, and with what has no width two names look alike. Those are the
/// characters of Unicode's category Cf but for number signs, which are seen;
/// separators of lines become spaces. A joiner or non-joiner (U+200D, U+200C)
/// between two signs beyond ASCII stays: scripts and emoji need them there.
#[inline(never)]
pub(crate) fn clean(text: &mut String) {
    let signs: Vec<char> = text.chars().collect();
    let joins = |i: usize| signs.get(i).is_some_and(|c| !c.is_ascii() && !is_unseen(*c));
    text.clear();
    for (i, c) in signs.iter().enumerate() {
        let stays =
            !is_unseen(*c) || matches!(c, '\u{200c}' | '\u{200d}') && i > 0 && joins(i - 1) && joins(i + 1);
        if stays {
            text.push(if matches!(c, '\u{2028}' | '\u{2029}') { ' ' } else { *c });
        }
    }
    *text = text.trim().to_owned();
}

/// Category Cf of Unicode 14.0 without the number signs of Arabic, Syriac and Kaithi.
const fn is_unseen(c: char) -> bool {
    matches!(c, '\u{ad}' | '\u{61c}' | '\u{180e}' | '\u{200b}'..='\u{200f}' | '\u{202a}'..='\u{202e}'
        | '\u{2060}'..='\u{2064}' | '\u{2066}'..='\u{206f}' | '\u{feff}' | '\u{fff9}'..='\u{fffb}'
        | '\u{13430}'..='\u{13438}' | '\u{1bca0}'..='\u{1bca3}' | '\u{1d173}'..='\u{1d17a}'
        | '\u{e0001}' | '\u{e0020}'..='\u{e007f}')
}

/// [`one_line`] without what nobody sees.
#[inline(never)]
pub(crate) fn clean_line(text: &str) -> String {
    let mut line = one_line(text);
    clean(&mut line);
    line
}

/// As much of a text as a message shows, on one line.
#[inline(never)]
pub(crate) fn cut(text: &str) -> String {
    const LONGEST: usize = 40;
    clean_line(text).chars().take(LONGEST).collect()
}

/// [`one_line`], refused where it has more than `most` characters; `what` names it.
pub(crate) fn short_line(text: &str, what: &'static str, most: usize) -> Result<String, Error> {
    let line = one_line(text);
    if line.chars().count() > most {
        return Err(Error::TooLong { what, most });
    }
    Ok(line)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn cleaned(text: &str) -> String {
        let mut text = text.to_owned();
        clean(&mut text);
        text
    }

    #[test]
    fn what_nobody_sees_is_left_out() {
        for (text, seen) in [
            ("\u{202e}der yauQ\u{202c}", "der yauQ"),
            ("Quay\u{200b} red\u{feff}", "Quay red"),
            ("\u{2066}Quay\u{2069}\u{200f}", "Quay"),
            ("soft\u{ad}hyphen", "softhyphen"),
            ("two\u{2028}lines\u{2029}", "two lines"),
            ("Quay\u{200d}red\u{200c}", "Quayred"),
            ("\u{e0041}\u{e0042}tag", "tag"),
            ("\u{200d}é\u{200d}\u{200d}é\u{200d}", "éé"),
            ("\u{200b}", ""),
        ] {
            assert_eq!(cleaned(text), seen, "{text:?}");
            assert_eq!(cleaned(&cleaned(text)), cleaned(text));
        }
    }

    #[test]
    fn what_scripts_and_emoji_need_stays() {
        for text in [
            "Écluse, café à l’aube",
            "עברית 3",
            "نیم\u{200c}روز",
            "क्\u{200d}ष",
            "👩\u{200d}🎨",
            "🏳\u{fe0f}\u{200d}🌈",
            "\u{600}12",
        ] {
            assert_eq!(cleaned(text), text);
        }
    }

    /// Python's `unicodedata` 14.0 lists the category's other members: U+0600 to 0605, 06DD, 070F, 0890, 0891, 08E2,
    /// 110BD and 110CD, which are signs before numbers.
    #[test]
    fn the_category_has_as_many_members_as_unicode_says() {
        let unseen = (0..=0x10_ffff).filter_map(char::from_u32).filter(|c| is_unseen(*c)).count();
        assert_eq!(unseen, 163 - 13);
    }
}
