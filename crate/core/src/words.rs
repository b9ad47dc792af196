//! Texts a painter types.

/// A text on one line: trimmed, control characters become spaces.
#[inline(never)]
pub(crate) fn one_line(text: &str) -> String {
    let text: String = text.chars().map(|c| if c.is_control() { ' ' } else { c }).collect();
    text.trim().to_owned()
}

/// As much of a text as a message shows.
#[inline(never)]
pub(crate) fn cut(text: &str) -> String {
    const LONGEST: usize = 40;
    text.chars().take(LONGEST).collect()
}
