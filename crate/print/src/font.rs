//! The letters: one weight of a Latin face, embedded in every PDF.
//!
//! `data/latin.ttf` holds the glyphs of `data/latin.txt` in its order, after
//! glyph 0, the box for what the face lacks. `data/README.md` says where the
//! face comes from.

/// The font file as a PDF embeds it.
pub(crate) const FILE: &[u8] = include_bytes!("../data/latin.ttf");

/// The characters of glyphs 1, 2, 3 …
pub(crate) const CHARACTERS: &str = include_str!("../data/latin.txt");

/// Units of the font to one em.
pub(crate) const EM: f32 = 1000.0;

/// How far letters rise above and sink below the base line, in ems.
pub(crate) const ASCENT: f32 = 0.78;
pub(crate) const DESCENT: f32 = 0.22;

/// Glyph of a character; 0, a box, for one the face lacks.
pub(crate) fn glyph(character: char) -> u16 {
    CHARACTERS.chars().position(|known| known == character).map_or(0, |index| index as u16 + 1)
}

/// Advance of a glyph in units of [`EM`].
pub(crate) fn advance(glyph: u16) -> u16 {
    let metrics = table(*b"hmtx");
    // Four bytes a glyph: its advance and its left bearing.
    let at = 4 * usize::from(glyph);
    metrics.get(at..at + 2).map_or(0, |bytes| u16::from_be_bytes([bytes[0], bytes[1]]))
}

/// Width of words on one line, in the unit of `size`.
pub(crate) fn width(words: &str, size: f32) -> f32 {
    let units: u32 = words.chars().map(|character| u32::from(advance(glyph(character)))).sum();
    units as f32 / EM * size
}

/// Words cut to a width; three dots stand for what is cut off.
pub(crate) fn fit(words: &str, most: f32, size: f32) -> String {
    if width(words, size) <= most {
        return words.to_owned();
    }
    let mut kept: String = words.to_owned();
    while kept.pop().is_some() {
        let cut = format!("{}…", kept.trim_end());
        if width(&cut, size) <= most {
            return cut;
        }
    }
    String::new()
}

/// Words on as many lines as they need, up to `most_lines`; the last one is cut to fit.
pub(crate) fn wrap(words: &str, most: f32, size: f32, most_lines: usize) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    for word in words.split_whitespace() {
        match lines.last_mut() {
            Some(line) if width(&format!("{line} {word}"), size) <= most => {
                line.push(' ');
                line.push_str(word);
            }
            _ => lines.push(word.to_owned()),
        }
    }
    if lines.len() > most_lines {
        let rest = lines.split_off(most_lines.saturating_sub(1)).join(" ");
        lines.push(rest);
    }
    lines.iter().map(|line| fit(line, most, size)).collect()
}

/// A table of the font file; empty where it has none.
fn table(tag: [u8; 4]) -> &'static [u8] {
    // The directory: twelve bytes of head, then for each table its tag, a sum, its place and its length.
    let number =
        |at: usize| FILE.get(at..at + 4).map_or(0, |b| u32::from_be_bytes([b[0], b[1], b[2], b[3]]) as usize);
    let records = FILE.get(12..).unwrap_or_default().chunks_exact(16);
    let record = records.enumerate().find(|(_, record)| record.starts_with(&tag)).map(|(i, _)| 12 + 16 * i);
    record.and_then(|at| FILE.get(number(at + 8)..number(at + 8) + number(at + 12))).unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_character_has_a_glyph_of_its_own() {
        for (index, character) in CHARACTERS.chars().enumerate() {
            assert_eq!(usize::from(glyph(character)), index + 1, "{character} stands once");
            assert!(advance(glyph(character)) > 0, "{character} has a width");
        }
        assert_eq!(glyph('あ'), 0);
        assert!(advance(0) > 0, "the box of what is missing is seen");
    }

    /// Source Sans 3's own metrics: digits are 497 wide; from its file by another reader.
    #[test]
    fn digits_are_of_one_width() {
        for digit in '0'..='9' {
            assert_eq!(advance(glyph(digit)), 497);
        }
    }

    #[test]
    fn words_are_cut_and_wrapped_to_a_width() {
        assert_eq!(fit("Ultramarine", 100.0, 3.0), "Ultramarine");
        let cut = fit("Ultramarine blue", 15.0, 3.0);
        assert!(cut.ends_with('…') && width(&cut, 3.0) <= 15.0, "{cut}");
        assert_eq!(fit("x", 0.0, 3.0), "");
        let lines = wrap("one two three four five", 12.0, 3.0, 2);
        assert_eq!(lines.len(), 2);
        assert!(lines.iter().all(|line| width(line, 3.0) <= 12.0), "{lines:?}");
        assert!(wrap("  ", 12.0, 3.0, 2).is_empty());
    }
}
