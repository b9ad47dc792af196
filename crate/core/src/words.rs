//! Words a painter types.

/// A text on one line: trimmed, control characters become spaces.
pub(crate) fn one_line(text: &str) -> String {
    let text: String = text.chars().map(|c| if c.is_control() { ' ' } else { c }).collect();
    text.trim().to_owned()
}
