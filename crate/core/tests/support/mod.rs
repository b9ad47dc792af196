//! Reads the reference tables in tests/reference.

use std::collections::HashMap;

/// A row of a table: cells by column name.
pub struct Row(HashMap<String, String>);

impl Row {
    /// The text in a column.
    pub fn text(&self, column: &str) -> &str {
        self.0.get(column).unwrap_or_else(|| panic!("no column {column}"))
    }

    /// The number in a column.
    pub fn number(&self, column: &str) -> f64 {
        let text = self.text(column);
        text.parse().unwrap_or_else(|_| panic!("{column} is {text}, not a number"))
    }

    /// The number in a column, if there is one.
    #[allow(dead_code, reason = "each test file compiles its own copy of this module")]
    pub fn number_if_any(&self, column: &str) -> Option<f64> {
        self.text(column).parse().ok()
    }
}

/// All rows of a table.
pub fn table(name: &str) -> Vec<Row> {
    let path = format!("{}/tests/reference/{name}", env!("CARGO_MANIFEST_DIR"));
    let mut reader = csv::ReaderBuilder::new().comment(Some(b'#')).from_path(&path).expect(&path);
    let rows: Vec<Row> = reader.deserialize().map(|row| Row(row.expect(name))).collect();
    assert!(rows.len() > 10, "{name} holds {} rows", rows.len());
    rows
}
