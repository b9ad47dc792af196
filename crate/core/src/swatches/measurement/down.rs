//! Tables with one wavelength a row.

use super::bands::Bands;
use super::header::{percent, wavelength};
use super::reading::{MOST_SAMPLES, Reading, named, no_number, spectra, too_many};
use super::sample::Measurement;
use crate::error::Error;
use crate::text::rows::{Faults, Row, Rows};
use crate::text::words::cut;

/// Spectra of a table with one wavelength a row.
pub(super) fn read(
    mut rows: Rows<'_>,
    header: &Row<'_>,
    faults: &mut Faults,
) -> Result<Vec<Measurement>, Error> {
    /// A spectrum from 300 to 1300 nm by 1.
    const MOST_ROWS: usize = 1_001;
    if header.cells.is_empty() {
        rows.again();
    }
    let numbers = rows.clone();
    let (mut nm, mut lines, mut bands) = (Vec::new(), Vec::new(), Vec::new());
    for row in rows {
        let row = match row {
            Ok(row) if row.cell(0).starts_with('#') => continue,
            Ok(row) => row,
            Err(fault) => {
                faults.push(fault);
                continue;
            }
        };
        if nm.len() == MOST_ROWS {
            return Err(Error::table(row.line, format!("more than {MOST_ROWS} wavelengths")));
        }
        match wavelength(row.cell(0)) {
            Some(value) => {
                nm.push(value);
                lines.push(row.line);
                bands.push(row);
            }
            None => faults
                .push(Error::table(row.line, format!("\"{}\" is not a wavelength in nm", cut(row.cell(0))))),
        }
    }
    let axis = Bands::new(nm)
        .map_err(|(band, reason)| Error::table(lines.get(band).copied().unwrap_or(0), reason))?;
    let width = bands.iter().map(|row| row.cells.len()).fold(header.cells.len(), usize::max);
    let mut readings = Vec::new();
    for column in 1..width {
        if header.cell(column).is_empty() && bands.iter().all(|row| row.cell(column).is_empty()) {
            continue;
        }
        if readings.len() == MOST_SAMPLES {
            faults.push(too_many(header.line));
            break;
        }
        let name = named(header.cell(column), column);
        let read = bands.iter().enumerate().map(|(band, row)| {
            let cell = row.cell(column);
            let fault = || Error::table(row.line, no_number(&name, &axis.label(band), cell));
            numbers.number(cell).ok_or_else(fault)
        });
        match read.collect() {
            Ok(values) => readings.push(Reading { name, line: header.line, values }),
            Err(fault) => faults.push(fault),
        }
    }
    let percent = percent(header.cell(0));
    Ok(spectra(&axis, readings, percent, &|_, band| lines[band], faults))
}
