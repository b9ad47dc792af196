//! A table with a header row, read by column name.

use csv::{ReaderBuilder, StringRecord};

use crate::error::Error;

/// All rows of a table; `#` starts a comment line.
pub struct Table {
    name: &'static str,
    header: StringRecord,
    records: Vec<StringRecord>,
}

impl Table {
    pub fn read(name: &'static str, text: &str) -> Result<Self, Error> {
        let fault = |e: csv::Error| Error::new(name, e.to_string());
        let mut reader = ReaderBuilder::new().comment(Some(b'#')).from_reader(text.as_bytes());
        let header = reader.headers().map_err(fault)?.clone();
        let records = reader.records().collect::<Result<_, _>>().map_err(fault)?;
        Ok(Self { name, header, records })
    }

    pub fn rows(&self) -> impl Iterator<Item = Row<'_>> {
        self.records.iter().map(|record| Row { table: self, record })
    }
}

/// One row of a [`Table`].
#[derive(Clone, Copy)]
pub struct Row<'a> {
    table: &'a Table,
    record: &'a StringRecord,
}

impl<'a> Row<'a> {
    pub fn text(&self, column: &str) -> Result<&'a str, Error> {
        let index = self.table.header.iter().position(|name| name == column);
        index
            .and_then(|index| self.record.get(index))
            .ok_or_else(|| self.fault(format!("no column \"{column}\"")))
    }

    pub fn number(&self, column: &str) -> Result<f64, Error> {
        let text = self.text(column)?;
        text.parse().map_err(|_| self.fault(format!("{column} is \"{text}\", not a number")))
    }

    /// `None` where the cell is empty.
    pub fn maybe(&self, column: &str) -> Result<Option<f64>, Error> {
        if self.text(column)?.is_empty() { Ok(None) } else { self.number(column).map(Some) }
    }

    /// The columns headed by wavelengths, from `first_nm` on by 10 nm.
    pub fn spectrum<const N: usize>(&self, first_nm: usize) -> Result<[f64; N], Error> {
        let mut values = [0.0; N];
        for (band, value) in values.iter_mut().enumerate() {
            *value = self.number(&(first_nm + 10 * band).to_string())?;
        }
        Ok(values)
    }

    pub fn fault(&self, reason: impl Into<String>) -> Error {
        Error::new(self.table.name, reason)
    }
}
