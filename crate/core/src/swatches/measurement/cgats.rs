//! Tables in the keyword text of the graphic trade: CGATS.17, ISO 28178 (from memory).
//!
//! A head of keywords with values, `#` before comments, text in quotation marks
//! (doubled within), the fields between `BEGIN_DATA_FORMAT` and
//! `END_DATA_FORMAT`, and one set of values a line between `BEGIN_DATA` and
//! `END_DATA`. The first table of a file is read.

use std::borrow::Cow;

use crate::error::Error;
use crate::optics::observer::Light;
use crate::text::rows::{Faults, Row, closing, undoubled};
use crate::text::words::cut;

/// Most fields of a set.
const MOST_FIELDS: usize = 1_024;

/// The first table of a file.
pub(super) struct Table<'a> {
    pub(super) fields: Row<'a>,
    pub(super) rows: Vec<Result<Row<'a>, Error>>,
    /// The light that L*, a* and b* are under.
    pub(super) light: Light,
    /// The line that states the observer of 10 degrees.
    pub(super) wide_line: Option<usize>,
}

/// Whether a text is of this kind.
pub(super) fn is_cgats(text: &str) -> bool {
    text.lines().any(|line| line.trim_start().starts_with("BEGIN_DATA"))
}

#[derive(Clone, Copy, PartialEq)]
enum Section {
    Head,
    Format,
    Data,
    Behind,
}

/// Reads the table but not its numbers.
pub(super) fn read<'a>(text: &'a str, faults: &mut Faults) -> Result<Table<'a>, Error> {
    let mut table = Table {
        fields: Row { line: 0, cells: Vec::new() },
        rows: Vec::new(),
        light: Light::D50,
        wide_line: None,
    };
    let (mut section, mut sets) = (Section::Head, None);
    for (index, whole) in text.trim_start_matches('\u{feff}').lines().enumerate() {
        let (line, mut tokens) = (index + 1, tokens(whole));
        let Some(first) = tokens.first().map(|token| token.to_string()) else { continue };
        section = match (section, &*first) {
            (Section::Behind, "BEGIN_DATA") => {
                faults.push(Error::table(line, "a second table: only the first is read"));
                break;
            }
            (Section::Behind, _) | (Section::Data, "END_DATA") => Section::Behind,
            (Section::Data, _) => {
                let wanted = table.fields.cells.len();
                table.rows.push(if tokens.len() == wanted {
                    Ok(Row { line, cells: tokens })
                } else {
                    Err(Error::table(line, format!("{} values, not {wanted}", tokens.len())))
                });
                Section::Data
            }
            (Section::Head, "BEGIN_DATA") => Section::Data,
            (Section::Format, "BEGIN_DATA") => {
                return Err(Error::table(line, "BEGIN_DATA before END_DATA_FORMAT"));
            }
            (Section::Head, "BEGIN_DATA_FORMAT") | (Section::Format, _) => {
                if first == "BEGIN_DATA_FORMAT" {
                    tokens.remove(0);
                    table.fields.line = line;
                }
                let end = tokens.iter().position(|token| token == "END_DATA_FORMAT");
                tokens.truncate(end.unwrap_or(tokens.len()));
                table.fields.cells.append(&mut tokens);
                if table.fields.cells.len() > MOST_FIELDS {
                    return Err(Error::table(line, format!("more than {MOST_FIELDS} fields")));
                }
                if end.is_some() { Section::Head } else { Section::Format }
            }
            (Section::Head, _) => {
                if first == "NUMBER_OF_SETS" {
                    sets = Some((line, tokens.get(1).map_or(String::new(), |token| token.to_string())));
                }
                if tokens.iter().any(|token| token.contains("D65")) {
                    table.light = Light::D65;
                }
                if states_wide(whole) {
                    table.wide_line = Some(line);
                }
                Section::Head
            }
        };
    }
    if table.fields.cells.is_empty() {
        return Err(Error::table(0, "no fields between BEGIN_DATA_FORMAT and END_DATA_FORMAT"));
    }
    if section == Section::Data {
        faults.push(Error::table(0, "no END_DATA: the file may be cut short"));
    }
    if let Some((line, stated)) = sets.filter(|(_, stated)| *stated != table.rows.len().to_string()) {
        let stated = cut(&stated);
        faults.push(Error::table(
            line,
            format!("NUMBER_OF_SETS is {stated}, but the table has {}", table.rows.len()),
        ));
    }
    Ok(table)
}

/// Whether a line of the head says that colours are for the observer of 10 degrees, CIE 1964: `ObserverAngle=10`,
/// `OBSERVER "10 degree"`, `D50/10`.
fn states_wide(line: &str) -> bool {
    let line = line.to_ascii_lowercase();
    let behind = |mark: &str| {
        let rest = &line[line.find(mark)? + mark.len()..];
        let digits = rest.trim_start_matches(|c: char| !c.is_ascii_digit());
        digits.split(|c: char| !c.is_ascii_digit()).next()
    };
    ["observer", "d50/", "d65/"].iter().any(|mark| matches!(behind(mark), Some("10" | "1964")))
}

/// The words and quoted texts of a line, up to a comment.
fn tokens(line: &str) -> Vec<Cow<'_, str>> {
    let mut tokens = Vec::new();
    let mut rest = line.trim_start();
    while !rest.is_empty() && !rest.starts_with('#') {
        let (token, length) = match rest.strip_prefix('"') {
            Some(inner) => quoted(inner),
            None => {
                let length = rest.find(char::is_whitespace).unwrap_or(rest.len());
                (Cow::Borrowed(&rest[..length]), length)
            }
        };
        tokens.push(token);
        rest = rest[length..].trim_start();
    }
    tokens
}

/// A text in quotation marks, and its length with both; left open it ends with the line.
fn quoted(inner: &str) -> (Cow<'_, str>, usize) {
    match closing(inner, '"') {
        Some(index) => (Cow::Owned(undoubled(&inner[..index], '"')), index + 2),
        None => (Cow::Borrowed(inner), inner.len() + 1),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_line_is_cut_into_words_and_texts() {
        assert_eq!(tokens("  A1\t\"two \"\"words\"\"\" 0.5 # note"), ["A1", "two \"words\"", "0.5"]);
        assert_eq!(tokens("# note"), [""; 0]);
        assert_eq!(tokens("\"open # end"), ["open # end"]);
    }
}
