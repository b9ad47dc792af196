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

use std::borrow::Cow;

use palette::chromatic_adaptation::adaptation_matrix;
use palette::convert::{Convert, IntoColorUnclamped};
use palette::lms::matrix::Bradford;
use palette::white_point::{D50, D65};
use palette::{Lab as LabOf, Xyz};

use crate::colour::Lab;
use crate::error::Error;
use crate::optics::observer::Light;
use crate::swatches::calibrate::Seen;
use crate::text::decimal;
use crate::text::limits::within;
use crate::text::rows::{Faults, LONGEST_TABLE, Row, Rows, plain};
use crate::text::words::{clean_line, cut};

use bands::{Bands, MOST_REFLECTANCE};

/// Most samples that are read of one file.
pub const MOST_SAMPLES: usize = 500;

/// Below nothing by so much a value is read as 0: a meter's dark reading is taken off, with its noise. Half a percent is
/// what handheld meters differ by near black (common practice, no source); more below is no reading.
const LEAST_REFLECTANCE: f64 = -0.005;

/// Longest name in characters; longer ones are cut.
const LONGEST_NAME: usize = 80;

/// Above it a value can only be percent.
const MOST_FRACTION: f64 = 1.5;

/// One measured sample.
#[derive(Clone, Debug, PartialEq)]
pub struct Measurement {
    /// What the file calls it, else its number in the file; never empty.
    pub name: String,
    /// What the meter read.
    pub seen: Seen,
}

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
/// [`MOST_REFLECTANCE`] is left out and named.
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
            (rows, Layout::Down(header)) => (read_down(rows, &header, &mut faults)?, Light::D65),
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

/// Refuses what no meter reads of a surface.
pub(crate) fn check(seen: &Seen) -> Result<(), Error> {
    match seen {
        Seen::Spectrum(reflectance) => {
            reflectance.iter().try_for_each(|value| within("reflectance", *value, [0.0, MOST_REFLECTANCE]))
        }
        Seen::Lab(lab) => {
            within("L*", lab.l, [0.0, 100.0])?;
            within("a*", lab.a, OPPONENT)?;
            within("b*", lab.b, OPPONENT)
        }
    }
}

/// Every colour of a surface lies well within.
const OPPONENT: [f64; 2] = [-150.0, 150.0];

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

/// Whether reflectance is in percent, where a header says so.
fn percent(header: &str) -> Option<bool> {
    let header = header.trim_end_matches([')', ']', ' ']).to_ascii_lowercase();
    if ["%", "percent", "pct"].iter().any(|unit| header.ends_with(unit)) {
        return Some(true);
    }
    header.ends_with("fraction").then_some(false)
}

/// The wavelength in nanometres that a header names.
fn wavelength(header: &str) -> Option<f64> {
    const WORDS: [&str; 9] =
        ["", "nm", "r", "rnm", "spec", "spectral", "spectralnm", "reflectance", "reflectancenm"];
    const UNITS: [&str; 3] = ["percent", "pct", "fraction"];
    const LONGEST: usize = 60;
    if header.len() > LONGEST {
        return None;
    }
    let start = header.find(|c: char| c.is_ascii_digit())?;
    let digits = &header[start..];
    let length = digits.find(|c: char| !c.is_ascii_digit() && c != '.' && c != ',').unwrap_or(digits.len());
    let mut words = plain(&header[..start]) + &plain(&digits[length..]);
    for unit in UNITS {
        words = words.strip_suffix(unit).map(str::to_owned).unwrap_or(words);
    }
    // Signs that make a date or a negative number of it.
    let odd = header.contains(['-', '/', ':', '+']);
    let value = decimal::read(&digits[..length].replacen(',', ".", 1))?;
    (WORDS.contains(&&*words) && !odd && (200.0..=2500.0).contains(&value)).then_some(value)
}

/// Which columns of a table with one sample a row say what.
///
/// What is read from is dynamic: a copy of this code for each source would weigh on the download.
struct Columns {
    name: Option<usize>,
    values: Values,
    line: usize,
}

enum Values {
    Bands { columns: Vec<(usize, f64)>, percent: Option<bool> },
    Lab { columns: [usize; 3], light: Light },
}

impl Columns {
    /// Of a header, if it has what a sample needs.
    fn of(header: &Row<'_>, light: Light) -> Option<Self> {
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

    fn read<'a>(
        &self,
        rows: &mut dyn Iterator<Item = Result<Row<'a>, Error>>,
        number: &dyn Fn(&str) -> Option<f64>,
        faults: &mut Faults,
    ) -> Result<(Vec<Measurement>, Light), Error> {
        match &self.values {
            Values::Bands { columns, percent } => {
                let bands = Bands::new(columns.iter().map(|(_, nm)| *nm).collect())
                    .map_err(|(_, reason)| Error::table(self.line, reason))?;
                let places: Vec<usize> = columns.iter().map(|(column, _)| *column).collect();
                let readings = self.readings(rows, &places, &|i| bands.label(i), number, faults);
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

/// The numbers of one sample as they stand in the file.
struct Reading {
    name: String,
    line: usize,
    values: Vec<f64>,
}

/// Spectra of readings; `line` is where a sample's band stands.
fn spectra(
    bands: &Bands,
    readings: Vec<Reading>,
    percent: Option<bool>,
    line: &dyn Fn(&Reading, usize) -> usize,
    faults: &mut Faults,
) -> Vec<Measurement> {
    let above = |reading: &Reading| reading.values.iter().any(|value| *value > MOST_FRACTION);
    let scale = if percent.unwrap_or_else(|| readings.iter().any(above)) { 0.01 } else { 1.0 };
    let mut samples = Vec::new();
    for mut reading in readings {
        for value in &mut reading.values {
            *value *= scale;
            if (LEAST_REFLECTANCE..0.0).contains(value) {
                *value = 0.0;
            }
        }
        let refused = reading.values.iter().enumerate().find_map(|(band, value)| {
            let place = format!("\"{}\" at {}", reading.name, bands.label(band));
            within(&place, *value, [0.0, MOST_REFLECTANCE]).err().map(|fault| (band, fault.to_string()))
        });
        match refused {
            Some((band, reason)) => faults.push(Error::table(line(&reading, band), reason)),
            None => {
                let seen = Seen::Spectrum(Box::new(bands.resample(&reading.values)));
                samples.push(Measurement { name: reading.name, seen });
            }
        }
    }
    samples
}

fn colours(readings: Vec<Reading>, light: Light, faults: &mut Faults) -> Vec<Measurement> {
    let mut samples = Vec::new();
    for Reading { name, line, values } in readings {
        let &[l, a, b] = &values[..] else { continue };
        let stated = Seen::Lab(Lab::new(l, a, b));
        match check(&stated) {
            Ok(()) => samples.push(Measurement {
                name,
                seen: if light == Light::D50 { Seen::Lab(from_d50(l, a, b)) } else { stated },
            }),
            Err(reason) => faults.push(Error::table(line, format!("\"{name}\": {reason}"))),
        }
    }
    samples
}

fn from_d50(l: f64, a: f64, b: f64) -> Lab<f64> {
    let xyz: Xyz<D50, f64> = LabOf::<D50, f64>::new(l, a, b).into_color_unclamped();
    let xyz: Xyz<D65, f64> = adaptation_matrix::<f64, D50, D65, Bradford>(None, None).convert(xyz);
    xyz.into_color_unclamped()
}

/// Spectra of a table with one wavelength a row.
fn read_down(mut rows: Rows<'_>, header: &Row<'_>, faults: &mut Faults) -> Result<Vec<Measurement>, Error> {
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

fn too_many(line: usize) -> Error {
    Error::table(line, format!("more than {MOST_SAMPLES} samples: the rest is left out"))
}

fn no_number(name: &str, label: &str, cell: &str) -> String {
    if cell.is_empty() {
        return format!("\"{name}\" has no value at {label}");
    }
    format!("\"{name}\" at {label} is \"{}\", not a number", cut(cell))
}

/// A name on one line, cut to its longest; of an empty one the number.
fn named(name: &str, number: usize) -> String {
    let name: String = clean_line(name).chars().take(LONGEST_NAME).collect();
    if name.is_empty() { number.to_string() } else { name }
}

#[cfg(test)]
mod tests;
