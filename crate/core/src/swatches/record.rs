//! Records: what a painter mixed and what was seen of it.

use crate::colour::Lab;
use crate::error::Error;
use crate::mixing::load::Load;
use crate::mixing::recipe::Recipe;
use crate::optics::paper::KitPaper;
use crate::swatches::calibrate::Seen;
use crate::swatches::measurement::check;
use crate::text::words::{clean_line, cut, short_line};

/// Most records of a log.
pub const MOST_RECORDS: usize = 500;

/// Longest note in characters.
pub const LONGEST_NOTE: usize = 200;

/// A painted and measured swatch, with when and on what. Built by [`Record::new`], so that its limits hold.
#[derive(Clone, Debug, PartialEq)]
pub struct Record {
    recipe: Recipe,
    load: f32,
    seen: Seen,
    paper: KitPaper,
    date: String,
    note: String,
}

impl Record {
    /// A recipe at a load on a paper, and what was seen of it.
    ///
    /// # Errors
    ///
    /// [`Error::Load`] for a load that is not within 1/32 and 4; [`Error::OutOfRange`]
    /// for L*, a*, b* or a reflectance that no meter reads of a surface.
    ///
    /// ```
    /// use washpath_core::{KitPaper, Lab, Part, Recipe, Record, Stock, calibrate::Seen};
    /// let (paper, seen) = (KitPaper::Stock(Stock::Cream), Seen::Lab(Lab::new(52.0, 4.0, -18.0)));
    /// let record = Record::new(Recipe::new(&[Part::new(1, 2), Part::new(3, 1)])?, 0.25, seen, paper)?
    ///     .with_date("2024-10-05")?
    ///     .with_note("wet granite")?;
    /// assert_eq!((record.load(), record.lab().l), (0.25, 52.0));
    /// assert!(record.with_date("2024-02-30").is_err());
    /// # Ok::<(), washpath_core::Error>(())
    /// ```
    pub fn new(recipe: Recipe, load: f32, seen: Seen, paper: KitPaper) -> Result<Self, Error> {
        if !Load::RANGE.contains(&load) {
            return Err(Error::Load { load, of: "a record" });
        }
        check(&seen)?;
        Ok(Self { recipe, load, seen, paper, date: String::new(), note: String::new() })
    }

    /// The same record of this day, `yyyy-mm-dd` (ISO 8601), or of none where empty.
    ///
    /// # Errors
    ///
    /// [`Error::Date`] for a text that is no day of the calendar.
    pub fn with_date(self, date: &str) -> Result<Self, Error> {
        let date = date.trim();
        if !date.is_empty() && !is_day(date) {
            return Err(Error::Date(cut(date)));
        }
        Ok(Self { date: date.to_owned(), ..self })
    }

    /// The same record with this note: trimmed, control characters become spaces, what nobody sees is left out.
    ///
    /// # Errors
    ///
    /// [`Error::TooLong`] for a note longer than [`LONGEST_NOTE`] characters.
    pub fn with_note(self, note: &str) -> Result<Self, Error> {
        Ok(Self { note: short_line(&clean_line(note), "the note", LONGEST_NOTE)?, ..self })
    }

    /// What was mixed.
    #[must_use]
    pub const fn recipe(&self) -> &Recipe {
        &self.recipe
    }

    /// At which load, 1/32 to 4; 1 is masstone.
    #[must_use]
    pub const fn load(&self) -> f32 {
        self.load
    }

    /// What was seen: a spectrum, or CIELAB in D65.
    #[must_use]
    pub const fn seen(&self) -> &Seen {
        &self.seen
    }

    /// The colour that was seen, in D65.
    #[must_use]
    pub fn lab(&self) -> Lab {
        let lab = self.seen.lab();
        Lab::new(lab.l as f32, lab.a as f32, lab.b as f32)
    }

    /// The paper it lies on.
    #[must_use]
    pub const fn paper(&self) -> KitPaper {
        self.paper
    }

    /// Its day, `yyyy-mm-dd`, or empty.
    #[must_use]
    pub fn date(&self) -> &str {
        &self.date
    }

    /// What the painter noted, perhaps empty.
    #[must_use]
    pub fn note(&self) -> &str {
        &self.note
    }
}

/// Whether a text is a day of the Gregorian calendar, `yyyy-mm-dd`.
pub(crate) fn is_day(text: &str) -> bool {
    let shape = text.bytes().map(|byte| if byte.is_ascii_digit() { b'0' } else { byte });
    if !shape.eq(*b"0000-00-00") {
        return false;
    }
    let part = |range: std::ops::Range<usize>| text[range].parse::<u32>().unwrap_or(0);
    let (year, month, day) = (part(0..4), part(5..7), part(8..10));
    let leap = year % 4 == 0 && (year % 100 != 0 || year % 400 == 0);
    let days = match month {
        2 => 28 + u32::from(leap),
        4 | 6 | 9 | 11 => 30,
        1..=12 => 31,
        _ => 0,
    };
    (1..=days).contains(&day)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::optics::paper::Stock;
    use crate::optics::spectrum::BANDS;
    use crate::text::decimal::Decimal;

    fn record(load: f32, seen: Seen) -> Result<Record, Error> {
        Record::new(Recipe::paint(1.into()), load, seen, KitPaper::Stock(Stock::Cream))
    }

    fn seen(l: f64, a: f64, b: f64) -> Seen {
        Seen::Lab(Lab::new(l, a, b))
    }

    #[test]
    fn days_are_those_of_the_calendar() {
        // The rule of leap years: ISO 8601, from memory.
        for day in ["2024-02-29", "2000-02-29", "2023-12-31", "1999-04-30", ""] {
            assert!(record(1.0, seen(50.0, 0.0, 0.0)).unwrap().with_date(day).is_ok(), "{day}");
        }
        for day in [
            "2023-02-29",
            "1900-02-29",
            "2024-04-31",
            "2024-13-01",
            "2024-00-10",
            "2024-01-00",
            "24-1-1",
            "05.10.2024",
            "2024-10-05T10:00",
            "２０２４-10-05",
        ] {
            let error = record(1.0, seen(50.0, 0.0, 0.0)).unwrap().with_date(day).unwrap_err().to_string();
            assert!(error.ends_with("a day is written yyyy-mm-dd"), "{day}");
        }
    }

    #[test]
    fn limits_are_named() {
        let error = |load, seen| record(load, seen).unwrap_err().to_string();
        for load in [0.03, 4.01, f32::NAN, f32::INFINITY, -1.0] {
            let words = format!("load {}: a record's is within 1/32 and 4", Decimal(load));
            assert_eq!(error(load, seen(50.0, 0.0, 0.0)), words);
        }
        assert_eq!(error(1.0, seen(100.5, 0.0, 0.0)), "L* is 100.5, not between 0 and 100");
        assert_eq!(error(1.0, seen(50.0, f64::NAN, 0.0)), "a* is NaN, not between -150 and 150");
        let mut glow = [0.5; BANDS];
        glow[7] = 1.3;
        assert_eq!(error(1.0, Seen::Spectrum(Box::new(glow))), "reflectance is 1.3, not between 0 and 1.2");
        let plain = || record(1.0, seen(50.0, 0.0, 0.0)).unwrap();
        assert_eq!(plain().with_note(" two\nlines\t").unwrap().note(), "two lines");
        assert!(plain().with_note(&"é".repeat(LONGEST_NOTE)).is_ok());
        let error = plain().with_note(&"é".repeat(LONGEST_NOTE + 1)).unwrap_err();
        assert_eq!(error.to_string(), "the note is longer than 200 characters");
    }
}
