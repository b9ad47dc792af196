//! Dates as spreadsheets rewrite them.
//!
//! | written | read as |
//! |---|---|
//! | `2024-10-05`, `2024/10/5`, `2024.10.05` | year, month, day |
//! | `05.10.2024`, `5.10.24` | day, month, year, as wherever points stand between them |
//! | `10/5/2024`, `10-5-24` | either way round; a number above 12 is the day, and tells it of the whole file |
//!
//! A time of day behind is left out. A year of two digits is of this century.

use crate::error::Error;
use crate::swatches::record::is_day;
use crate::text::words::cut;

/// Which number comes first in a date like `10/5/2024`.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum DayOrder {
    /// The fifth of October is `5/10/2024`.
    DayFirst,
    /// The fifth of October is `10/5/2024`.
    MonthFirst,
}

/// A date that can be read two ways.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct UnsureDate {
    /// As it stands in the file.
    pub written: String,
    /// The day it is, `yyyy-mm-dd`, where the day comes first.
    pub day_first: String,
    /// The day it is where the month comes first.
    pub month_first: String,
}

/// What a cell says.
pub(super) enum Written {
    /// A day, `yyyy-mm-dd`, or none.
    Sure(String),
    /// A day that tells which way round the file has them.
    Telling(String, DayOrder),
    /// One of two.
    Unsure(UnsureDate),
}

/// Reads a cell.
///
/// # Errors
///
/// What is no day of the calendar.
pub(super) fn read(cell: &str) -> Result<Written, Error> {
    let fault = || Error::Date(cut(cell));
    // "2024-10-05T12:30" as well as "10/5/2024 12:30:00 PM".
    let date = cell.split([' ', 'T']).next().unwrap_or_default().trim_end_matches(',');
    if date.is_empty() {
        return Ok(Written::Sure(String::new()));
    }
    let mark = date.chars().find(|c| !c.is_ascii_digit()).ok_or_else(fault)?;
    let numbers: Option<Vec<u16>> = date.split(mark).map(number).collect();
    let Some(&[first, second, third]) = numbers.as_deref() else { return Err(fault()) };
    let year_first = date.find(mark) == Some(4);
    let day = |year, month, day| Some(format!("{year:04}-{month:02}-{day:02}")).filter(|text| is_day(text));
    let year = if date.len() - date.rfind(mark).unwrap_or(0) == 3 { 2000 + third } else { third };
    let (day_first, month_first) = (day(year, second, first), day(year, first, second));
    match (mark, day_first, month_first) {
        ('-' | '/' | '.', ..) if year_first => day(first, second, third).map(Written::Sure),
        ('.', day_first, _) => day_first.map(Written::Sure),
        ('-' | '/', Some(day), Some(month)) if day == month => Some(Written::Sure(day)),
        ('-' | '/', Some(day_first), Some(month_first)) => {
            Some(Written::Unsure(UnsureDate { written: cut(cell), day_first, month_first }))
        }
        ('-' | '/', Some(day), None) => Some(Written::Telling(day, DayOrder::DayFirst)),
        ('-' | '/', None, Some(day)) => Some(Written::Telling(day, DayOrder::MonthFirst)),
        _ => None,
    }
    .ok_or_else(fault)
}

/// One, two or four digits.
fn number(text: &str) -> Option<u16> {
    let is_number = matches!(text.len(), 1 | 2 | 4) && text.bytes().all(|byte| byte.is_ascii_digit());
    if is_number { text.parse().ok() } else { None }
}

impl UnsureDate {
    /// The day in one order.
    pub(super) fn day(&self, order: DayOrder) -> &str {
        match order {
            DayOrder::DayFirst => &self.day_first,
            DayOrder::MonthFirst => &self.month_first,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn dates_are_read_as_spreadsheets_write_them() {
        for (cell, day) in [
            ("", ""),
            ("2024-10-05", "2024-10-05"),
            ("2024-10-05 00:00:00", "2024-10-05"),
            ("2024-10-05T09:30:00Z", "2024-10-05"),
            ("2024/10/5", "2024-10-05"),
            ("2024.10.05", "2024-10-05"),
            ("05.10.2024", "2024-10-05"),
            ("5.10.24", "2024-10-05"),
            ("05.10.2024 00:00", "2024-10-05"),
            ("31.12.1999", "1999-12-31"),
            ("5/5/2024", "2024-05-05"),
        ] {
            assert!(matches!(read(cell), Ok(Written::Sure(found)) if found == day), "{cell}");
        }
        for (cell, day, order) in [
            ("13/5/2024", "2024-05-13", DayOrder::DayFirst),
            ("5/13/2024", "2024-05-13", DayOrder::MonthFirst),
            ("5/13/24 12:00:00 AM", "2024-05-13", DayOrder::MonthFirst),
            ("13-05-2024", "2024-05-13", DayOrder::DayFirst),
            // February has no 30th, but 30 is no month.
            ("30/1/2024", "2024-01-30", DayOrder::DayFirst),
        ] {
            assert!(
                matches!(read(cell), Ok(Written::Telling(found, told)) if found == day && told == order),
                "{cell}"
            );
        }
        let Ok(Written::Unsure(unsure)) = read("10/5/2024 00:00:00") else { panic!("either") };
        assert_eq!(
            (unsure.written.as_str(), unsure.day(DayOrder::DayFirst)),
            ("10/5/2024 00:00:00", "2024-05-10")
        );
        assert_eq!(unsure.day(DayOrder::MonthFirst), "2024-10-05");
    }

    #[test]
    fn what_is_no_day_is_named() {
        for cell in [
            "soon",
            "2024",
            "2024-10",
            "2024-02-30",
            "31.02.2024",
            "13/13/2024",
            "30/2/2024",
            "0/0/0",
            "5.10.024",
            "1.2.3.4",
            "5/10",
            "20241005",
            "-5-10-2024",
            "٥/١٠/٢٠٢٤",
        ] {
            let Err(fault) = read(cell) else { panic!("{cell}") };
            assert!(fault.to_string().starts_with(&format!("date \"{cell}\": a day is written")), "{fault}");
        }
    }
}
