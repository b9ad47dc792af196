//! Rows of tables as spreadsheets and meters write them: RFC 4180 and its relatives.
//!
//! Cells stand between commas, semicolons or tabs; a cell in quotation marks may
//! hold separators, line breaks and doubled quotation marks. A row that breaks
//! these rules is a fault of its own line, and the next line is read as if it
//! had not been. Its own, small: the `csv` crate does not go on behind a
//! quotation mark that is never closed, and adds 8 KB after gzip to a program that
//! has to be downloaded.
//!
//! Every byte is looked at a bounded number of times: within a cell that is not
//! closed all runs of quotation marks are even, so no further cell that begins
//! there can stay open.

use std::borrow::Cow;

use crate::error::Error;
use crate::numeric::sort::in_order;
use crate::text::decimal;

/// Longest text of a table in bytes.
pub const LONGEST_TABLE: usize = 2_000_000;

/// Most cells of a row.
const MOST_CELLS: usize = 1_024;

/// Longest cell in quotation marks, in bytes.
const LONGEST_QUOTED: usize = 4_000;

/// Most lines that a row may span.
const MOST_LINES: usize = 50;

/// What may stand between cells, in the order they are tried.
const SEPARATORS: [u8; 3] = [b'\t', b';', b','];

/// Rows among which the header is looked for.
const HEADER_WITHIN: usize = 50;

/// Most faults that are named one by one.
const MOST_FAULTS: usize = 500;

/// One row.
#[derive(Debug)]
pub(crate) struct Row<'a> {
    /// Its first line, counted from 1.
    pub(crate) line: usize,
    pub(crate) cells: Vec<Cow<'a, str>>,
}

impl Row<'_> {
    /// A cell without the spaces around it; empty where the row is too short.
    #[inline(never)]
    pub(crate) fn cell(&self, column: usize) -> &str {
        self.cells.get(column).map_or("", |cell| cell.trim())
    }
}

/// The rows of a text, empty ones left out.
#[derive(Clone)]
pub(crate) struct Rows<'a> {
    text: &'a str,
    separator: u8,
    next: Cursor,
    /// Where the last row began.
    last: Cursor,
}

#[derive(Clone, Copy)]
struct Cursor {
    byte: usize,
    line: usize,
}

impl<'a> Rows<'a> {
    pub(crate) fn new(text: &'a str, separator: u8) -> Self {
        let start = Cursor { byte: if text.starts_with('\u{feff}') { 3 } else { 0 }, line: 1 };
        Self { text, separator, next: start, last: start }
    }

    /// Reads on behind the header, which is known by `read`, in whatever separator it is found.
    ///
    /// # Errors
    ///
    /// A text above [`LONGEST_TABLE`]; no header, in the words of `wanted` unless a row is broken whatever the separator.
    pub(crate) fn behind_header<T>(
        text: &'a str,
        wanted: &str,
        read: impl Fn(&Row<'a>, &Self) -> Option<T>,
    ) -> Result<(Self, T), Error> {
        if text.len() > LONGEST_TABLE {
            return Err(Error::table(0, format!("longer than {LONGEST_TABLE} bytes")));
        }
        let mut broken = Vec::new();
        for separator in SEPARATORS {
            let mut rows = Self::new(text, separator);
            let mut fault = None;
            for _ in 0..HEADER_WITHIN {
                match rows.next() {
                    Some(Ok(row)) => {
                        if let Some(found) = read(&row, &rows) {
                            return Ok((rows, found));
                        }
                    }
                    Some(Err(found)) => fault = fault.or(Some(found)),
                    None => break,
                }
            }
            broken.extend(fault);
        }
        // Between wrong separators good quotation marks look broken.
        Err(broken.pop().filter(|_| broken.len() + 1 == SEPARATORS.len()).unwrap_or_else(|| {
            let reason = format!("{wanted}, within {HEADER_WITHIN} rows and {MOST_CELLS} columns");
            Error::table(0, reason)
        }))
    }

    /// Goes back to the second line of the last row, if it has more than one.
    ///
    /// A quotation mark too many may have swallowed rows that are good.
    pub(crate) fn reread(&mut self) {
        self.next = self.last;
        self.skip_line();
    }

    /// Goes back to the last row, to read it again.
    pub(crate) fn again(&mut self) {
        self.next = self.last;
    }

    /// The number of a cell; behind a semicolon or tab a comma may stand before decimals.
    pub(crate) fn number(&self, cell: &str) -> Option<f64> {
        if self.separator == b',' { number(cell) } else { number(&cell.replacen(',', ".", 1)) }
    }

    fn skip_line(&mut self) {
        let rest = &self.text[self.next.byte..];
        self.next.byte += rest.find(['\n', '\r']).unwrap_or(rest.len());
        self.end_line();
    }

    fn end_line(&mut self) {
        let rest = &self.text[self.next.byte..];
        self.next.byte += match rest.as_bytes() {
            [b'\r', b'\n', ..] => 2,
            [b'\r' | b'\n', ..] => 1,
            _ => return,
        };
        self.next.line += 1;
    }

    fn row(&mut self) -> Result<Vec<Cow<'a, str>>, String> {
        let mut cells = Vec::new();
        loop {
            if cells.len() == MOST_CELLS {
                return Err(format!("more than {MOST_CELLS} columns"));
            }
            cells.push(self.cell()?);
            if self.next.line - self.last.line >= MOST_LINES {
                return Err(format!(
                    "a row of more than {MOST_LINES} lines: is a quotation mark not closed?"
                ));
            }
            match self.text.as_bytes().get(self.next.byte) {
                Some(byte) if *byte == self.separator => self.next.byte += 1,
                Some(b'\r' | b'\n') | None => break,
                Some(_) => return Err("text behind a closing quotation mark".into()),
            }
        }
        self.end_line();
        Ok(cells)
    }

    fn cell(&mut self) -> Result<Cow<'a, str>, String> {
        let rest = &self.text[self.next.byte..];
        let Some(quoted) = rest.strip_prefix('"') else {
            let ends = |byte: u8| byte == self.separator || byte == b'\n' || byte == b'\r';
            let length = rest.bytes().position(ends).unwrap_or(rest.len());
            self.next.byte += length;
            return Ok(Cow::Borrowed(&rest[..length]));
        };
        let length = closing(quoted, '"')
            .filter(|length| *length <= LONGEST_QUOTED)
            .ok_or_else(|| format!("a quotation mark that is not closed within {LONGEST_QUOTED} bytes"))?;
        let inner = &quoted[..length];
        self.next.byte += length + 2;
        self.next.line += line_ends(inner);
        Ok(if inner.contains('"') { Cow::Owned(undoubled(inner, '"')) } else { Cow::Borrowed(inner) })
    }
}

impl<'a> Iterator for Rows<'a> {
    type Item = Result<Row<'a>, Error>;

    fn next(&mut self) -> Option<Self::Item> {
        while self.next.byte < self.text.len() {
            self.last = self.next;
            let line = self.last.line;
            match self.row() {
                Ok(cells) if cells.iter().all(|cell| cell.trim().is_empty()) => {}
                Ok(cells) => return Some(Ok(Row { line, cells })),
                Err(reason) => {
                    self.reread();
                    return Some(Err(Error::table(line, reason)));
                }
            }
        }
        None
    }
}

/// Line ends within a text; a carriage return and a line feed are one.
fn line_ends(text: &str) -> usize {
    let before = std::iter::once(0).chain(text.bytes());
    text.bytes()
        .zip(before)
        .filter(|(byte, before)| *byte == b'\r' || *byte == b'\n' && *before != b'\r')
        .count()
}

/// Where the next mark stands that is not doubled.
pub(crate) fn closing(text: &str, mark: char) -> Option<usize> {
    let mut marks = text.match_indices(mark).map(|(at, _)| at).peekable();
    while let Some(at) = marks.next() {
        if marks.next_if_eq(&(at + 1)).is_none() {
            return Some(at);
        }
    }
    None
}

/// A text whose marks are doubled, with single ones.
pub(crate) fn undoubled(text: &str, mark: char) -> String {
    let mut last = false;
    let kept = text.chars().filter(|c| {
        last = *c == mark && !last;
        *c != mark || last
    });
    kept.collect()
}

/// A number with a sign or none and an exponent or none.
pub(crate) fn number(text: &str) -> Option<f64> {
    /// Far beyond any reading.
    const MOST_EXPONENT: f64 = 30.0;
    let text = text.strip_prefix('+').unwrap_or(text);
    let (digits, exponent) = text.split_once(['e', 'E']).unwrap_or((text, "0"));
    let exponent = decimal::read(exponent.strip_prefix('+').unwrap_or(exponent))?;
    let whole = exponent.abs() <= MOST_EXPONENT && exponent.fract() == 0.0;
    whole.then_some(decimal::read(digits)? * 10f64.powi(exponent as i32))
}

/// A header in small letters and without signs, `L*` and `l` being one.
pub(crate) fn plain(header: &str) -> String {
    header
        .chars()
        .filter(|c| !c.is_ascii() || c.is_ascii_alphanumeric())
        .map(|c| c.to_ascii_lowercase())
        .collect()
}

/// What was left out of a table, line by line.
#[derive(Debug, Default)]
pub(crate) struct Faults {
    named: Vec<Error>,
    more: usize,
}

impl Faults {
    pub(crate) fn push(&mut self, fault: Error) {
        if self.named.len() < MOST_FAULTS {
            self.named.push(fault);
        } else {
            self.more += 1;
        }
    }

    /// All of them by line, those past [`MOST_FAULTS`] only counted.
    pub(crate) fn into_errors(self) -> Vec<Error> {
        let mut named = in_order(self.named, |fault| match fault {
            Error::Table { line, .. } => *line as f32,
            _ => 0.0,
        });
        if self.more > 0 {
            named.push(Error::table(0, format!("{} more faults", self.more)));
        }
        named
    }
}

#[cfg(test)]
#[path = "rows_tests.rs"]
mod tests;
