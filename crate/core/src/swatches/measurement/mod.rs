//! Measurements a painter brings from a meter.
//!
//! | form | what it looks like |
//! |---|---|
//! | one sample a row | a header with wavelengths (`380`, `380 nm`, `R380`, `SPECTRAL_NM_380`, `SPEC_380`), a name column where there is one |
//! | one wavelength a row | wavelengths in the first column, then a column for each sample with its name above |
//! | colours a row | columns `L`, `a`, `b` or `LAB_L`, `LAB_A`, `LAB_B`, perhaps with `D50` behind |
//! | CGATS text | the same fields between `BEGIN_DATA_FORMAT` and `END_DATA` (ISO 28178) |
//!
//! The first three are tables with commas, semicolons or tabs; behind
//! semicolons and tabs a comma may stand before decimals. Columns that are not
//! known are left alone. Where a table has spectra its L*, a*, b* are not read.
//!
//! Reflectance is a fraction of the perfect white's, or percent: as the
//! header of wavelengths says that ends in `%`, `percent` or `fraction`, else percent where any value
//! of the table is above 1.5. So a table whose every value is below 1.5 % needs
//! the header.
//!
//! Colours of CGATS text are under D50 (ISO 13655, from memory) unless its head
//! says D65; where it states the observer of 10 degrees that is said, as colours
//! cannot be turned into the other observer's. Those of other tables are under D65.
//! From D50 they are adapted to D65 by Bradford's transform: of the ColorChecker's patches none is then farther than
//! 1.5 CIEDE2000 from what its spectrum says.

pub(crate) mod bands;
mod cgats;
mod columns;
mod down;
mod header;
mod reading;
mod sample;

use std::borrow::Cow;

use crate::error::Error;
use crate::optics::observer::Light;
use crate::text::rows::{Faults, LONGEST_TABLE, Row, Rows};

use columns::{Columns, Values};
use header::wavelength;

pub use sample::Measurement;
pub(crate) use sample::check;

/// What could be read of a file and what could not.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub struct Measured {
    /// The samples, in the file's order; at least one.
    pub samples: Vec<Measurement>,
    /// The light that colours of the file were taken to be under; D65 where spectra were read.
    pub light: Light,
    /// What was left out, and why.
    pub faults: Vec<Error>,
}

/// Reads a meter's file.
///
/// Spectra are brought to the bands of this crate: between values up to 10 nm
/// apart along a line, between wider ones along the cubic through the four
/// nearest (Lagrange's, as ASTM E2022 does for 20 nm; from memory). Beyond its
/// ends a spectrum goes on level, as ASTM E308 has it.
///
/// # Errors
///
/// [`Error::Table`] where nothing can be read: a text longer than
/// 2,000,000 bytes, no header, wavelengths that do not ascend, are fewer
/// than 16, more than 20 nm apart or do not span 400 to 700 nm, no good sample.
/// A sample of which a value is missing, no number or not within 0 and
/// [`MOST_REFLECTANCE`](crate::MOST_REFLECTANCE) is left out and named.
///
/// ```
/// use washpath_core::read_measurements;
/// let header: Vec<String> = (40..=70).map(|tens| format!("R{tens}0")).collect();
/// let text = format!("name,{}\ngrey,{}\n", header.join(","), ["18.4"; 31].join(","));
/// let measured = read_measurements(&text)?;
/// assert_eq!(measured.samples[0].name, "grey");
/// assert!((measured.samples[0].seen.lab().l - 50.0).abs() < 0.1);
/// # Ok::<(), washpath_core::Error>(())
/// ```
pub fn read_measurements(text: &str) -> Result<Measured, Error> {
    if text.len() > LONGEST_TABLE {
        return Err(Error::table(0, format!("longer than {LONGEST_TABLE} bytes")));
    }
    let mut faults = Faults::default();
    // Meters' programs still end lines by a carriage return alone.
    let text = &*if text.contains('\n') { Cow::Borrowed(text) } else { Cow::Owned(text.replace('\r', "\n")) };
    let (samples, light) = if cgats::is_cgats(text) {
        let table = cgats::read(text, &mut faults)?;
        let number = |cell: &str| crate::text::rows::number(&cell.replacen(',', ".", 1));
        let columns =
            Columns::of(&table.fields, table.light).ok_or_else(|| Error::table(table.fields.line, WANTED))?;
        if let (Some(line), Values::Lab { .. }) = (table.wide_line, &columns.values) {
            faults.push(Error::table(
                line,
                "colours for the observer of 10 degrees are taken as if for 2: spectra would tell more",
            ));
        }
        columns.read(&mut table.rows.into_iter(), &number, &mut faults)?
    } else {
        match Rows::behind_header(text, WANTED, layout)? {
            (mut rows, Layout::Across(columns)) => {
                let numbers = rows.clone();
                columns.read(&mut rows, &|cell| numbers.number(cell), &mut faults)?
            }
            (rows, Layout::Down(header)) => (down::read(rows, &header, &mut faults)?, Light::D65),
        }
    };
    let faults = faults.into_errors();
    if samples.is_empty() {
        return Err(faults
            .into_iter()
            .next()
            .unwrap_or_else(|| Error::table(0, "no sample below the header")));
    }
    Ok(Measured { samples, light, faults })
}

const WANTED: &str = "no column of wavelengths, no header with wavelengths (380 nm, R380, SPECTRAL_NM_380) \
                      and none with L, a and b";

/// How a table is laid out.
enum Layout<'a> {
    /// One sample a row.
    Across(Columns),
    /// One wavelength a row, below this header.
    Down(Row<'a>),
}

fn layout<'a>(row: &Row<'a>, rows: &Rows<'a>) -> Option<Layout<'a>> {
    let columns = Columns::of(row, Light::D65);
    if let Some(Columns { values: Values::Bands { .. }, .. }) = columns {
        return columns.map(Layout::Across);
    }
    let begins_bands = |row: &Row<'_>| {
        wavelength(row.cell(0)).is_some()
            && wavelength(row.cell(1)).is_none()
            && rows.number(row.cell(1)).is_some()
    };
    if begins_bands(row) {
        // No header: the row is read again as the first of the bands.
        return Some(Layout::Down(Row { line: row.line, cells: Vec::new() }));
    }
    if rows.clone().next().and_then(Result::ok).is_some_and(|next| begins_bands(&next)) {
        return Some(Layout::Down(Row { line: row.line, cells: row.cells.clone() }));
    }
    columns.map(Layout::Across)
}

#[cfg(test)]
mod tests;
