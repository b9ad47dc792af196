//! Tables with one sample a row.

use super::bands::Bands;
use super::header::{percent, wavelength};
use super::reading::{MOST_SAMPLES, Reading, colours, named, no_number, spectra, too_many};
use super::sample::Measurement;
use crate::error::Error;
use crate::optics::observer::Light;
use crate::text::rows::{Faults, Row, plain};

/// Which columns of a table with one sample a row say what.
///
/// What is read from is dynamic: a copy of this code for each source would weigh on the download.
pub(super) struct Columns {
    name: Option<usize>,
    pub(super) values: Values,
    line: usize,
}

pub(super) enum Values {
    Bands { columns: Vec<(usize, f64)>, percent: Option<bool> },
    Lab { columns: [usize; 3], light: Light },
}

impl Columns {
    /// Of a header, if it has what a sample needs.
    pub(super) fn of(header: &Row<'_>, light: Light) -> Option<Self> {
        let plain: Vec<String> = header.cells.iter().map(|cell| plain(cell)).collect();
        let name = ["samplename", "name", "sample", "sampleid", "id"]
            .iter()
            .find_map(|wanted| plain.iter().position(|cell| cell == wanted));
        let columns: Vec<(usize, f64)> = header
            .cells
            .iter()
            .enumerate()
            .filter_map(|(column, cell)| Some((column, wavelength(cell)?)))
            .collect();
        let values = if columns.len() > 1 {
            let percent = columns.iter().find_map(|(column, _)| percent(header.cell(*column)));
            Values::Bands { columns, percent }
        } else {
            lab_columns(&plain, light)?
        };
        Some(Self { name, values, line: header.line })
    }

    pub(super) fn read<'a>(
        &self,
        rows: &mut dyn Iterator<Item = Result<Row<'a>, Error>>,
        number: &dyn Fn(&str) -> Option<f64>,
        faults: &mut Faults,
    ) -> Result<(Vec<Measurement>, Light), Error> {
        match &self.values {
            Values::Bands { columns, percent } => {
                let bands = Bands::new(columns.iter().map(|(_, nm)| *nm).collect())
                    .map_err(|(_, reason)| Error::table(self.line, reason))?;
                let indices: Vec<usize> = columns.iter().map(|(column, _)| *column).collect();
                let readings = self.readings(rows, &indices, &|i| bands.label(i), number, faults);
                Ok((spectra(&bands, readings, *percent, &|reading, _| reading.line, faults), Light::D65))
            }
            Values::Lab { columns, light } => {
                let label = |i: usize| ["L*", "a*", "b*"][i].to_owned();
                let readings = self.readings(rows, columns, &label, number, faults);
                Ok((colours(readings, *light, faults), *light))
            }
        }
    }

    /// The numbers in some columns of every row that has them all.
    fn readings<'a>(
        &self,
        rows: &mut dyn Iterator<Item = Result<Row<'a>, Error>>,
        columns: &[usize],
        label: &dyn Fn(usize) -> String,
        number: &dyn Fn(&str) -> Option<f64>,
        faults: &mut Faults,
    ) -> Vec<Reading> {
        let mut readings = Vec::new();
        let rows = rows.filter(|row| !row.as_ref().is_ok_and(|row| row.cell(0).starts_with('#')));
        for (index, row) in rows.enumerate() {
            let row = match row {
                Ok(row) => row,
                Err(fault) => {
                    faults.push(fault);
                    continue;
                }
            };
            if readings.len() == MOST_SAMPLES {
                faults.push(too_many(row.line));
                break;
            }
            let name = named(self.name.map_or("", |column| row.cell(column)), index + 1);
            let values: Result<Vec<f64>, String> = columns
                .iter()
                .enumerate()
                .map(|(i, column)| {
                    let cell = row.cell(*column);
                    number(cell).ok_or_else(|| no_number(&name, &label(i), cell))
                })
                .collect();
            match values {
                Ok(values) => readings.push(Reading { name, line: row.line, values }),
                Err(reason) => faults.push(Error::table(row.line, reason)),
            }
        }
        readings
    }
}

/// The columns of L*, a* and b* among headers in plain letters.
fn lab_columns(headers: &[String], light: Light) -> Option<Values> {
    let (mut light, mut columns) = (light, [0; 3]);
    for (column, letter) in columns.iter_mut().zip(["l", "a", "b"]) {
        let (found, stated) = headers.iter().enumerate().find_map(|(column, header)| {
            let (header, stated) = match (header.strip_suffix("d50"), header.strip_suffix("d65")) {
                (Some(header), _) => (header, Some(Light::D50)),
                (_, Some(header)) => (header, Some(Light::D65)),
                _ => (&**header, None),
            };
            let header = header.strip_prefix("cie").unwrap_or(header);
            (header.strip_prefix("lab").unwrap_or(header) == letter).then_some((column, stated))
        })?;
        *column = found;
        light = stated.unwrap_or(light);
    }
    Some(Values::Lab { columns, light })
}
