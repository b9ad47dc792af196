//! Tables with a header row, read by column name; faults name line and column.

use std::path::Path;

use anyhow::{Context as _, Result, anyhow, bail};
use washpath_core::spectrum::{BANDS, wavelength};

/// A table in memory.
pub(super) struct Table {
    header: Vec<String>,
    rows: Vec<(u64, csv::StringRecord)>,
}

/// One row of a table.
#[derive(Clone, Copy)]
pub(super) struct Row<'a> {
    table: &'a Table,
    record: &'a csv::StringRecord,
    /// Line in the file, from 1.
    pub(super) line: u64,
}

impl Table {
    /// Reads a file of cells set apart by `delimiter`.
    pub(super) fn read(path: &Path, delimiter: u8) -> Result<Self> {
        let text = std::fs::read(path).with_context(|| format!("cannot read {}", path.display()))?;
        Self::parse(&text, delimiter).with_context(|| path.display().to_string())
    }

    pub(super) fn parse(text: &[u8], delimiter: u8) -> Result<Self> {
        let mut reader = csv::ReaderBuilder::new()
            .delimiter(delimiter)
            .comment(Some(b'#'))
            .flexible(true)
            .quoting(delimiter == b',')
            .from_reader(text.strip_prefix(b"\xef\xbb\xbf").unwrap_or(text));
        let header: Vec<String> = reader.headers()?.iter().map(|name| name.trim().to_owned()).collect();
        if header.iter().all(String::is_empty) {
            bail!("the file is empty; a header row is wanted first");
        }
        let mut rows = Vec::new();
        for record in reader.records() {
            let record = record?;
            let line = record.position().map_or(0, csv::Position::line);
            if record.len() != header.len() {
                bail!("line {line}: {} cells under a header of {}", record.len(), header.len());
            }
            rows.push((line, record));
        }
        Ok(Self { header, rows })
    }

    pub(super) fn has(&self, column: &str) -> bool {
        self.header.iter().any(|name| name == column)
    }

    pub(super) fn rows(&self) -> impl Iterator<Item = Row<'_>> {
        self.rows.iter().map(|(line, record)| Row { table: self, record, line: *line })
    }
}

impl<'a> Row<'a> {
    pub(super) fn text(self, column: &str) -> Result<&'a str> {
        let index = self.table.header.iter().position(|name| name == column);
        let index = index.ok_or_else(|| anyhow!("line 1: no column \"{column}\""))?;
        Ok(self.record.get(index).unwrap_or("").trim())
    }

    /// A finite number within bounds.
    pub(super) fn number(self, column: &str, least: f64, most: f64) -> Result<f64> {
        let text = self.text(column)?;
        let value: f64 = text
            .parse()
            .map_err(|_| anyhow!("line {}: column \"{column}\" is \"{text}\", not a number", self.line))?;
        if !(least..=most).contains(&value) {
            bail!("line {}: column \"{column}\" is {text}, not within {least} and {most}", self.line);
        }
        Ok(value)
    }

    pub(super) fn index(self, column: &str) -> Result<u32> {
        let text = self.text(column)?;
        text.parse()
            .map_err(|_| anyhow!("line {}: column \"{column}\" is \"{text}\", not a whole number", self.line))
    }

    /// The 36 bands from 380 to 730 nm; columns of other wavelengths are left alone.
    ///
    /// Meters read a few percent above white and below black; more is a fault.
    pub(super) fn spectrum(self, most: f64) -> Result<[f64; BANDS]> {
        let mut spectrum = [0.0; BANDS];
        for (band, value) in spectrum.iter_mut().enumerate() {
            *value = self.number(&wavelength(band).to_string(), -0.05, most)?.max(0.0);
        }
        Ok(spectrum)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn faults_name_line_and_column() {
        let fault = |text: &str| {
            let read = || -> Result<f64> {
                let table = Table::parse(text.as_bytes(), b',')?;
                let row = table.rows().next().context("no row")?;
                row.number("b", 0.0, 1.0)
            };
            read().unwrap_err().to_string()
        };
        assert_eq!(fault("a,b\n1,x\n"), "line 2: column \"b\" is \"x\", not a number");
        assert_eq!(fault("a,b\n1,NaN\n"), "line 2: column \"b\" is NaN, not within 0 and 1");
        assert_eq!(fault("a,b\n1,7\n"), "line 2: column \"b\" is 7, not within 0 and 1");
        assert_eq!(fault("a,c\n1,0\n"), "line 1: no column \"b\"");
        assert_eq!(fault("a,b\n1\n"), "line 2: 1 cells under a header of 2");
        assert!(fault("").contains("empty"));
    }
}
