//! Short texts of the painter's: names, notes, cautions.

use crate::error::Error;

/// A text on one line: control characters become spaces, the ends are trimmed.
///
/// # Errors
///
/// More than `most` characters; `what` names the text.
pub(crate) fn one_line(text: &str, what: &str, most: usize) -> Result<String, Error> {
    let line: String = text.chars().map(|c| if c.is_control() { ' ' } else { c }).collect();
    let line = line.trim();
    if line.chars().count() > most {
        return Err(Error::Value(format!("{what} is longer than {most} characters")));
    }
    Ok(line.to_owned())
}
