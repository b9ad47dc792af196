//! The log: a painter's records as a table that a spreadsheet opens.
//!
//! RFC 4180, in UTF-8: a header, then one record a row.
//!
//! | column | what stands there |
//! |---|---|
//! | `date` | `2024-10-05`, or nothing; read as well as spreadsheets rewrite it ([`dates`]) |
//! | `recipe` | parts and keys: `2 pb29 + 1 pbr7-burnt-sienna`; a key that holds more than letters, digits, `-`, `_`, `.` and `:` between single quotation marks, doubled within: `1 'own:Bob''s grey + blue'`; a paint that is on no shelf by its number: `1 #412`; read are also pigments and names that only one paint has |
//! | `load` | a number, a fraction `1/4`, or a wash: masstone, strong, medium, light or pale wash |
//! | `L`, `a`, `b` | CIELAB in D65; may be left out where a spectrum stands |
//! | `paper` | a stock's name, or an own paper's colour: `lab(93 0 9)`; nothing is bright white |
//! | `note` | up to 200 characters |
//! | `r380` to `r730` | reflectance by 10 nm, 0 to 1; written where any record has a spectrum, and then all or none of a row |
//!
//! Read are also tables whose columns stand in another order or among others,
//! with semicolons or tabs and decimal commas, with a byte order mark, any line
//! ends and line breaks in notes. Where a row has a spectrum its L*, a*, b* are
//! not read. A part that is not named is one.
//!
//! Numbers are written to four decimals. A note that a spreadsheet would take for
//! a formula is written behind a single quotation mark, which is taken away again
//! ([`crate::text::csv`]).

pub(crate) mod dates;
mod recipe;

use crate::colour::Lab;
use crate::colour::notation;
use crate::error::Error;
use crate::optics::paper::KitPaper;
use crate::optics::paper::{OwnPaper, Stock};
use crate::optics::spectrum::{BANDS, Spectrum, wavelength};
use crate::paint::shelf::Shelf;
use crate::swatches::calibrate::Seen;
use crate::swatches::record::{MOST_RECORDS, Record};
use crate::text::csv::{guarded, push_row, unguarded};
use crate::text::decimal::{self, Decimal};
use crate::text::rows::{Faults, Row, Rows, plain};
use crate::text::words::cut;

use dates::{DayOrder, UnsureDate, Written};

/// What could be read of a log and what could not.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub struct LogRead {
    /// The records, in the file's order.
    pub records: Vec<Record>,
    /// The rows that were left out, and why.
    pub faults: Vec<Error>,
    /// The first date that could be of two days, where the file does not tell which and nobody said: its row, and each
    /// like it, has no date.
    pub unsure: Option<UnsureDate>,
}

const NAMES: [&str; 8] = ["date", "recipe", "load", "L", "a", "b", "paper", "note"];

/// Washes by name, as the page has them.
const WASHES: [(&str, f32); 5] =
    [("masstone", 1.0), ("strong", 0.5), ("medium", 0.25), ("light", 0.125), ("pale", 0.0625)];

/// Records as a table; for Excel a byte order mark has to be put in front.
///
/// ```
/// use washpath_core::{KitPaper, Lab, Recipe, Record, Shelf, Stock, calibrate::Seen, read_log, write_log};
/// let shelf = Shelf::built_in();
/// let seen = Seen::Lab(Lab::new(52.0, 4.5, -18.0));
/// let record = Record::new(Recipe::paint(shelf.find("pb29")?.number), 0.25, seen, KitPaper::Stock(Stock::Cream))?
///     .with_note("=wet granite, noon")?;
/// let text = write_log(&[record.clone()], shelf);
/// assert_eq!(
///     text,
///     "date,recipe,load,L,a,b,paper,note\r\n,1 pb29,0.25,52,4.5,-18,cream,\"'=wet granite, noon\"\r\n"
/// );
/// assert_eq!(read_log(&text, shelf, None)?.records, [record]);
/// # Ok::<(), washpath_core::Error>(())
/// ```
#[must_use]
pub fn write_log(records: &[Record], shelf: &Shelf) -> String {
    let spectral = records.iter().any(|record| matches!(record.seen(), Seen::Spectrum(_)));
    let mut header: Vec<String> = NAMES.map(str::to_owned).to_vec();
    if spectral {
        header.extend((0..BANDS).map(band_name));
    }
    let mut text = String::new();
    push_row(&mut text, &header);
    for record in records {
        let mut cells = written(record, shelf);
        if spectral {
            cells.extend((0..BANDS).map(|band| match record.seen() {
                Seen::Spectrum(reflectance) => Decimal(reflectance[band] as f32).to_string(),
                Seen::Lab(_) => String::new(),
            }));
        }
        push_row(&mut text, &cells);
    }
    text
}

/// Reads a log.
///
/// A row that is no record is left out and named with its line; where it spans
/// several lines those behind the first are read as rows of their own, as a
/// quotation mark too many may have joined them.
///
/// A date like `10/5/2024` is of two days; which comes first is told by one with
/// a number above 12 in the same file, else by `order`.
///
/// # Errors
///
/// [`Error::Table`] for a text longer than 2,000,000 bytes or
/// without a header that names a recipe, a load and L, a, b or a spectrum.
pub fn read_log(text: &str, shelf: &Shelf, order: Option<DayOrder>) -> Result<LogRead, Error> {
    let wanted = "no header with the columns recipe, load and L, a, b or r380 to r730";
    let (mut rows, columns) = Rows::behind_header(text, wanted, |row, _| Columns::of(row))?;
    let (mut records, mut faults, mut unsure) = (Vec::new(), Faults::default(), None);
    let order = columns.day_order(rows.clone()).or(order);
    while let Some(row) = rows.next() {
        let row = match row {
            Ok(row) => row,
            Err(fault) => {
                faults.push(fault);
                continue;
            }
        };
        match columns.record(&row, &rows, shelf, order, &mut unsure) {
            Ok(_) if records.len() == MOST_RECORDS => faults.push(Error::table(
                row.line,
                format!("more than {MOST_RECORDS} records: this one is left out"),
            )),
            Ok(record) => records.push(record),
            Err(fault) => {
                faults.push(Error::table(row.line, fault.to_string()));
                rows.reread();
            }
        }
    }
    Ok(LogRead { records, faults: faults.into_errors(), unsure })
}

fn band_name(band: usize) -> String {
    format!("r{}", wavelength(band))
}

/// The cells of a record but for its spectrum, in the order of [`NAMES`].
fn written(record: &Record, shelf: &Shelf) -> Vec<String> {
    let lab = record.lab();
    let [load, l, a, b] = [record.load(), lab.l, lab.a, lab.b].map(|value| Decimal(value).to_string());
    let paper = match record.paper() {
        KitPaper::Stock(stock) => stock.name().to_owned(),
        KitPaper::Own(own) => {
            let colour = own.colour();
            let [l, a, b] = [colour.l, colour.a, colour.b].map(Decimal);
            format!("lab({l} {a} {b})")
        }
    };
    let recipe = recipe::write(record.recipe(), shelf);
    vec![record.date().to_owned(), recipe, load, l, a, b, paper, guarded(record.note())]
}

/// Where a log's columns stand, in the order of [`NAMES`].
struct Columns {
    named: [Option<usize>; NAMES.len()],
    bands: Option<[usize; BANDS]>,
}

impl Columns {
    /// Of a header that has what a record needs.
    fn of(header: &Row<'_>) -> Option<Self> {
        let headers: Vec<String> = header.cells.iter().map(|cell| plain(cell)).collect();
        let index = |wanted: &str| headers.iter().position(|header| header == wanted);
        let named = NAMES.map(|name| index(&name.to_ascii_lowercase()));
        let bands: Option<Vec<usize>> = (0..BANDS).map(|band| index(&band_name(band))).collect();
        let bands = bands.and_then(|bands| bands.try_into().ok());
        let [_, recipe, load, l, a, b, _, _] = named;
        let coloured = bands.is_some() || [l, a, b].iter().all(Option::is_some);
        (recipe.is_some() && load.is_some() && coloured).then_some(Self { named, bands })
    }

    /// What dates above 12 tell of all; nothing where there are none, or where they tell both.
    fn day_order(&self, rows: Rows<'_>) -> Option<DayOrder> {
        let column = self.named[0]?;
        let mut told = rows.filter_map(Result::ok).filter_map(|row| match dates::read(row.cell(column)) {
            Ok(Written::Telling(_, order)) => Some(order),
            _ => None,
        });
        let first = told.next()?;
        told.all(|order| order == first).then_some(first)
    }

    fn record(
        &self,
        row: &Row<'_>,
        rows: &Rows<'_>,
        shelf: &Shelf,
        order: Option<DayOrder>,
        unsure: &mut Option<UnsureDate>,
    ) -> Result<Record, Error> {
        let [date, recipe, load, l, a, b, paper, note] =
            self.named.map(|column| column.map_or("", |column| row.cell(column)));
        let seen = match self.spectrum(row, rows)? {
            Some(reflectance) => Seen::Spectrum(Box::new(reflectance)),
            None => Seen::Lab(Lab::new(number("L", l, rows)?, number("a", a, rows)?, number("b", b, rows)?)),
        };
        let date = dates::read(date)?;
        let record =
            Record::new(recipe::read(recipe, shelf)?, read_load(load, rows)?, seen, read_paper(paper)?)?
                .with_note(unguarded(note))?;
        let day = match (date, order) {
            (Written::Sure(day) | Written::Telling(day, _), _) => day,
            (Written::Unsure(date), Some(order)) => date.day(order).to_owned(),
            (Written::Unsure(date), None) => {
                unsure.get_or_insert(date);
                String::new()
            }
        };
        record.with_date(&day)
    }

    fn spectrum(&self, row: &Row<'_>, rows: &Rows<'_>) -> Result<Option<Spectrum<f64>>, Error> {
        let Some(bands) = self.bands.filter(|bands| bands.iter().any(|column| !row.cell(*column).is_empty()))
        else {
            return Ok(None);
        };
        let mut reflectance = [0.0; BANDS];
        for (band, value) in reflectance.iter_mut().enumerate() {
            *value = number(&band_name(band), row.cell(bands[band]), rows)?;
        }
        Ok(Some(reflectance))
    }
}

#[inline(never)]
fn number(name: &str, cell: &str, rows: &Rows<'_>) -> Result<f64, Error> {
    let fault = || match cell {
        "" => format!("no {name}"),
        _ => format!("{name} is \"{}\", not a number", cut(cell)),
    };
    rows.number(cell).ok_or_else(|| Error::Unreadable(fault()))
}

fn read_load(cell: &str, rows: &Rows<'_>) -> Result<f32, Error> {
    let word = plain(cell);
    let word = word.strip_suffix("wash").unwrap_or(&word);
    if let Some((_, load)) = WASHES.iter().find(|(name, _)| *name == word) {
        return Ok(*load);
    }
    let load = match cell.split_once('/') {
        Some((above, below)) => {
            decimal::read(above.trim()).zip(decimal::read(below.trim())).map(|(a, b)| a / b)
        }
        None => rows.number(cell),
    };
    let fault = || Error::Unreadable(format!("load \"{}\" is not a number, fraction or wash", cut(cell)));
    load.map(|load| load as f32).ok_or_else(fault)
}

fn read_paper(cell: &str) -> Result<KitPaper, Error> {
    if cell.is_empty() {
        return Ok(KitPaper::Stock(Stock::default()));
    }
    let name = cell.to_ascii_lowercase();
    if let Some(stock) = Stock::ALL.into_iter().find(|stock| stock.name() == name) {
        return Ok(KitPaper::Stock(stock));
    }
    let colour = notation::parse(cell).map_err(|_| {
        let names = Stock::ALL.map(Stock::name).join(", ");
        Error::Unreadable(format!("paper \"{}\" is not {names}, nor a colour such as lab(93 0 9)", cut(cell)))
    })?;
    OwnPaper::new(colour).map(KitPaper::Own)
}

#[cfg(test)]
mod tests;
