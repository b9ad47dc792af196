//! Tables as they are written: RFC 4180, with formulas guarded.
//!
//! A spreadsheet takes a cell that begins with `=`, `+`, `-` or `@` for a formula.
//! Text that a person typed is therefore written behind a single quotation mark,
//! which is taken away again when it is read (OWASP, "CSV injection", from memory).
//! [`rows`](crate::text::rows) reads tables.

/// Adds a row; cells that hold a separator, a quotation mark or a line break are quoted.
pub(crate) fn push_row(text: &mut String, cells: &[String]) {
    for (i, cell) in cells.iter().enumerate() {
        if i > 0 {
            text.push(',');
        }
        if cell.contains(['"', ',', ';', '\t', '\n', '\r']) {
            text.push('"');
            text.push_str(&cell.replace('"', "\"\""));
            text.push('"');
        } else {
            text.push_str(cell);
        }
    }
    text.push_str("\r\n");
}

/// A text as it may stand in a cell.
pub(crate) fn guarded(text: &str) -> String {
    if is_formula(text) { format!("'{text}") } else { text.to_owned() }
}

/// The text that was [`guarded`].
pub(crate) fn unguarded(cell: &str) -> &str {
    cell.strip_prefix('\'').filter(|text| is_formula(text)).unwrap_or(cell)
}

/// Whether a spreadsheet would take a text for a formula, but for quotation marks in front.
fn is_formula(text: &str) -> bool {
    text.trim_start_matches('\'').starts_with(['=', '+', '-', '@'])
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn what_was_guarded_is_no_formula_and_comes_back(text in "['=+@a-]{0,6}") {
            let cell = guarded(&text);
            prop_assert!(!cell.starts_with(['=', '+', '-', '@']));
            prop_assert_eq!(unguarded(&cell), text);
        }

        /// The `csv` crate is the reference.
        #[test]
        fn what_is_written_a_library_reads(table in proptest::collection::vec(proptest::collection::vec("[a-z\",\n\r;\t ]{0,6}", 3), 1..6)) {
            let mut text = String::new();
            table.iter().for_each(|row| push_row(&mut text, row));
            let mut reader = csv::ReaderBuilder::new().has_headers(false).from_reader(text.as_bytes());
            let found: Vec<Vec<String>> = reader.records().map(|row| row.unwrap().iter().map(str::to_owned).collect()).collect();
            prop_assert_eq!(found, table);
        }
    }
}
