//! The shelf: every paint the program knows.

use std::collections::HashMap;
use std::sync::LazyLock;

use crate::error::Error;
use crate::film::Film;
use crate::paint::{Paint, PaintNumber, Tier};
use crate::spectrum::{BANDS, Spectrum, wavelength};

/// Paints in the order of the table, found by key or by number.
#[derive(Clone, Debug, Default)]
pub struct Shelf {
    paints: Vec<Paint>,
    by_number: HashMap<PaintNumber, usize>,
    by_key: HashMap<String, usize>,
}

static BUILT_IN: LazyLock<Shelf> = LazyLock::new(|| {
    Shelf::from_csv(include_str!("../data/shelf.csv"))
        .expect("shelf.csv is part of the program: a test reads it all")
});

impl Shelf {
    /// The built-in library of measured and estimated paints.
    #[must_use]
    pub fn built_in() -> &'static Self {
        &BUILT_IN
    }

    /// Reads a table of paints: a header row, one paint a row, `#` comments.
    ///
    /// # Errors
    ///
    /// Names the line and what is wrong there: a missing column, a value out
    /// of range, a number or key that stands twice.
    pub fn from_csv(text: &str) -> Result<Self, Error> {
        let mut reader = csv::ReaderBuilder::new().comment(Some(b'#')).from_reader(text.as_bytes());
        let header = reader.headers().map_err(|e| Error::table(0, e.to_string()))?.clone();
        let columns: HashMap<&str, usize> = header.iter().enumerate().map(|(i, name)| (name, i)).collect();
        let mut shelf = Self::default();
        for record in reader.records() {
            let record = record.map_err(|e| Error::table(0, e.to_string()))?;
            let line = record.position().map_or(0, |position| position.line() as usize);
            let row = Row { columns: &columns, record: &record, line };
            shelf.add(row.paint()?).map_err(|reason| Error::table(line, reason))?;
        }
        Ok(shelf)
    }

    /// All paints, in the table's order.
    #[must_use]
    pub fn paints(&self) -> &[Paint] {
        &self.paints
    }

    /// The paint of a key.
    ///
    /// # Errors
    ///
    /// [`Error::UnknownPaint`] where the shelf has none.
    pub fn find(&self, key: &str) -> Result<&Paint, Error> {
        let index = self.by_key.get(key).ok_or_else(|| Error::UnknownPaint(key.to_owned()))?;
        Ok(&self.paints[*index])
    }

    /// The paint of a number.
    ///
    /// # Errors
    ///
    /// [`Error::UnknownPaint`] where the shelf has none.
    pub fn get(&self, number: PaintNumber) -> Result<&Paint, Error> {
        let index =
            self.by_number.get(&number).ok_or_else(|| Error::UnknownPaint(format!("number {number}")))?;
        Ok(&self.paints[*index])
    }

    fn add(&mut self, paint: Paint) -> Result<(), String> {
        let index = self.paints.len();
        if self.by_number.insert(paint.number, index).is_some() {
            return Err(format!("number {} stands twice", paint.number));
        }
        if self.by_key.insert(paint.key.clone(), index).is_some() {
            return Err(format!("key \"{}\" stands twice", paint.key));
        }
        self.paints.push(paint);
        Ok(())
    }
}

/// One row of the table, read by column name.
struct Row<'a> {
    columns: &'a HashMap<&'a str, usize>,
    record: &'a csv::StringRecord,
    line: usize,
}

impl Row<'_> {
    fn paint(&self) -> Result<Paint, Error> {
        let text = |name: &str| self.text(name).map(str::to_owned);
        Ok(Paint {
            number: self.text("number")?.parse().map_err(|_| self.fault("number", "a whole number"))?,
            key: text("key")?,
            code: text("code")?,
            name: text("name")?,
            aliases: self
                .text("aliases")?
                .split(';')
                .map(|s| s.trim().to_owned())
                .filter(|s| !s.is_empty())
                .collect(),
            family: text("family")?,
            hue: text("hue")?,
            transparency: self.rating("transparency")?,
            staining: self.rating("staining")?,
            granulation: self.rating("granulation")?,
            lightfast_tint: self.rating("lightfast_tint")?,
            lightfast_masstone: self.rating("lightfast_masstone")?,
            caution: text("caution")?,
            strength_source: text("strength_src")?,
            tier: Tier::parse(self.text("tier")?).ok_or_else(|| self.fault("tier", "a provenance tier"))?,
            source: text("source")?,
            film: Film { k: self.spectrum('k')?, s: self.spectrum('s')?, strength: self.strength()? },
        })
    }

    fn text(&self, name: &str) -> Result<&str, Error> {
        let index = self.columns.get(name).ok_or_else(|| Error::table(1, format!("no column \"{name}\"")))?;
        Ok(self.record.get(*index).unwrap_or("").trim())
    }

    fn rating(&self, name: &str) -> Result<Option<f32>, Error> {
        let text = self.text(name)?;
        if text.is_empty() {
            return Ok(None);
        }
        self.number(name, text).map(Some)
    }

    fn strength(&self) -> Result<f32, Error> {
        let strength = self.number("strength", self.text("strength")?)?;
        if strength > 0.0 { Ok(strength) } else { Err(self.fault("strength", "a number above 0")) }
    }

    fn spectrum(&self, letter: char) -> Result<Spectrum, Error> {
        let mut spectrum = [0.0; BANDS];
        for (band, value) in spectrum.iter_mut().enumerate() {
            let name = format!("{letter}{}", wavelength(band));
            *value = self.number(&name, self.text(&name)?)?;
        }
        Ok(spectrum)
    }

    fn number(&self, name: &str, text: &str) -> Result<f32, Error> {
        let value: f32 = text.parse().map_err(|_| self.fault(name, "a number"))?;
        if !value.is_finite() || value < 0.0 {
            return Err(self.fault(name, "a finite number from 0 up"));
        }
        Ok(value)
    }

    fn fault(&self, name: &str, wanted: &str) -> Error {
        let found = self.text(name).unwrap_or("");
        Error::table(self.line, format!("{name} is \"{found}\", not {wanted}"))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_built_in_table_is_whole() {
        let shelf = Shelf::built_in();
        assert!(shelf.paints().len() >= 140, "{} paints", shelf.paints().len());
        for paint in shelf.paints() {
            assert_eq!(shelf.find(&paint.key).unwrap().number, paint.number);
            assert_eq!(shelf.get(paint.number).unwrap().key, paint.key);
            assert!(paint.film.k.iter().sum::<f32>() > 0.0, "{} absorbs nothing", paint.key);
        }
    }

    #[test]
    fn faults_name_their_line() {
        assert!(Shelf::from_csv("number,key\n1,a\n").is_err());
        let error = Shelf::from_csv("number,key\nx,a\n").unwrap_err();
        assert_eq!(error.to_string(), "line 2: number is \"x\", not a whole number");
    }
}
