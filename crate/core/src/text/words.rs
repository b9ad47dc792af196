//! Texts a painter types.

use crate::error::Error;

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

/// [`one_line`], refused where it has more than `most` characters; `what` names it.
pub(crate) fn short_line(text: &str, what: &str, most: usize) -> Result<String, Error> {
    let line = one_line(text);
    if line.chars().count() > most {
        return Err(Error::Value(format!("{what} is longer than {most} characters")));
    }
    Ok(line)
}
