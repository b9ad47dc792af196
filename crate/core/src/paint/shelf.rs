//! The shelf: every paint the program knows.

use std::sync::LazyLock;

use crate::error::Error;
use crate::optics::film::Film;
use crate::optics::spectrum::{BANDS, Spectrum, wavelength};
use crate::paint::number::PaintNumber;
use crate::paint::packed::unpack;
use crate::paint::{DoubtLeft, Learned, Paint, Tier};
use crate::text::decimal;
use crate::text::rows::{self, Rows};

/// Paints in the order of the table, found by key or by number.
#[derive(Clone, Debug, Default)]
pub struct Shelf {
    paints: Vec<Paint>,
    /// Numbers and indices of all paints, by number.
    numbers: Vec<(PaintNumber, usize)>,
}

static BUILT_IN: LazyLock<Shelf> = LazyLock::new(|| {
    Shelf::from_packed(include_str!("../../data/paints.tsv"), include_bytes!("../../data/spectra.bin"))
        // Not `expect`: it would print any error and bring the standard library's floats into the program.
        .unwrap_or_else(|_| unreachable!("both files are part of the program: a test reads them all"))
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
        let is_comment = |row: &rows::Row<'_>| row.cells.first().is_some_and(|cell| cell.starts_with('#'));
        let mut rows = Rows::new(text, b',').filter(|row| !row.as_ref().is_ok_and(is_comment));
        let header = rows.next().ok_or_else(|| Error::table(0, "no header"))??;
        let columns: Vec<&str> = header.cells.iter().map(AsRef::as_ref).collect();
        let mut shelf = Self::default();
        for row in rows {
            let rows::Row { line, cells } = row?;
            let cells: Vec<&str> = cells.iter().map(AsRef::as_ref).collect();
            let row = Row { columns: &columns, cells: &cells, line };
            let mut paint = row.paint()?;
            (paint.film.k, paint.film.s) = (row.spectrum('k')?, row.spectrum('s')?);
            shelf.add(paint, line)?;
        }
        Ok(shelf)
    }

    /// The same table as the program carries it: cells between tabs, and K and S of each row packed.
    fn from_packed(text: &str, spectra: &[u8]) -> Result<Self, Error> {
        let mut rows = text.lines().map(|line| line.split('\t').collect::<Vec<_>>()).enumerate();
        let (_, columns) = rows.next().unwrap_or_default();
        let mut spectra = unpack(spectra);
        let mut shelf = Self::default();
        for (index, cells) in rows {
            let row = Row { columns: &columns, cells: &cells, line: index + 1 };
            let mut paint = row.paint()?;
            for spectrum in [&mut paint.film.k, &mut paint.film.s] {
                *spectrum = spectra.next().ok_or_else(|| Error::table(row.line, "no spectrum"))?;
            }
            shelf.add(paint, row.line)?;
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
        self.paints.iter().find(|paint| paint.key == key).ok_or_else(|| Error::UnknownPaint(key.to_owned()))
    }

    /// The paint of a number.
    ///
    /// # Errors
    ///
    /// [`Error::UnknownPaint`] where the shelf has none.
    pub fn get(&self, number: PaintNumber) -> Result<&Paint, Error> {
        let index = self.index(number).map_err(|_| Error::UnknownPaint(format!("number {number}")))?;
        Ok(&self.paints[self.numbers[index].1])
    }

    /// Where a number stands among the numbers, else where it would.
    fn index(&self, number: PaintNumber) -> Result<usize, usize> {
        self.numbers.binary_search_by_key(&number, |(number, _)| *number)
    }

    /// This shelf with the painter's own paints behind, and with films that were learned in place of its own.
    ///
    /// # Errors
    ///
    /// A number below [`PaintNumber::FIRST_OWN`] for an own paint, a number or name that
    /// stands twice, [`Error::UnknownPaint`] for a film of a paint that is not there.
    pub fn with(&self, own: Vec<Paint>, learned: &[Learned]) -> Result<Self, Error> {
        let mut shelf = self.clone();
        for paint in own {
            let number = paint.number;
            if number < PaintNumber::FIRST_OWN {
                return Err(Error::Value(format!(
                    "own paints have numbers from {} up, not {number}",
                    PaintNumber::FIRST_OWN
                )));
            }
            shelf.add(paint, 0)?;
        }
        for Learned { number, film, doubt_left } in learned {
            let index = shelf.index(*number).map_err(|_| Error::UnknownPaint(format!("number {number}")))?;
            let paint = &mut shelf.paints[shelf.numbers[index].1];
            (paint.film, paint.doubt_left) = (film.clone(), *doubt_left);
        }
        Ok(shelf)
    }

    fn add(&mut self, paint: Paint, line: usize) -> Result<(), Error> {
        let Err(index) = self.index(paint.number) else {
            return Err(Error::table(line, format!("number {} stands twice", paint.number)));
        };
        if self.find(&paint.key).is_ok() {
            return Err(Error::table(line, format!("key \"{}\" stands twice", paint.key)));
        }
        self.numbers.insert(index, (paint.number, self.paints.len()));
        self.paints.push(paint);
        Ok(())
    }
}

/// One row of the table, read by column name.
struct Row<'a> {
    columns: &'a [&'a str],
    cells: &'a [&'a str],
    line: usize,
}

impl Row<'_> {
    /// The paint but for its spectra.
    fn paint(&self) -> Result<Paint, Error> {
        let text = |name: &str| self.text(name).map(str::to_owned);
        Ok(Paint {
            number: self.paint_number()?,
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
            film: Film { strength: self.strength()?, ..Film::CLEAR },
            doubt_left: DoubtLeft::ALL,
        })
    }

    fn paint_number(&self) -> Result<PaintNumber, Error> {
        let number = self.text("number")?.parse().map_err(|_| self.fault("number", "a whole number"))?;
        Ok(PaintNumber::new(number))
    }

    fn text(&self, name: &str) -> Result<&str, Error> {
        let index = self.columns.iter().position(|column| *column == name);
        let index = index.ok_or_else(|| Error::table(1, format!("no column \"{name}\"")))?;
        Ok(self.cells.get(index).copied().unwrap_or("").trim())
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
        let value = decimal::read(text).filter(|value| *value >= 0.0);
        value.map(|value| value as f32).ok_or_else(|| self.fault(name, "a number from 0 up"))
    }

    fn fault(&self, name: &str, wanted: &str) -> Error {
        let found = self.text(name).unwrap_or("");
        Error::table(self.line, format!("{name} is \"{found}\", not {wanted}"))
    }
}

#[cfg(test)]
impl Shelf {
    /// A shelf of these paints, for tests.
    pub(crate) fn of(paints: impl Iterator<Item = Paint>) -> Result<Self, Error> {
        let mut shelf = Self::default();
        for paint in paints {
            shelf.add(paint, 0)?;
        }
        Ok(shelf)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_built_in_files_are_whole() {
        let shelf = Shelf::built_in();
        assert!(shelf.paints().len() >= 140, "{} paints", shelf.paints().len());
        for paint in shelf.paints() {
            assert_eq!(shelf.find(&paint.key).unwrap().number, paint.number);
            assert_eq!(shelf.get(paint.number).unwrap().key, paint.key);
            assert!(paint.film.k.iter().sum::<f32>() > 0.0, "{} absorbs nothing", paint.key);
        }
    }

    #[test]
    fn own_paints_stand_behind_and_learned_films_in_place() {
        let shelf = Shelf::built_in();
        let own = |number| Paint { number, key: "own:grey".into(), ..shelf.get(3.into()).unwrap().clone() };
        let twice = Film { strength: 2.0, ..shelf.get(1.into()).unwrap().film.clone() };
        let with = shelf
            .with(
                vec![own(PaintNumber::own(0))],
                &[Learned {
                    number: 1.into(),
                    film: twice.clone(),
                    doubt_left: DoubtLeft { alone: 0.5, mixed: 0.5 },
                }],
            )
            .unwrap();
        assert_eq!(
            (with.get(1.into()).unwrap().film.clone(), with.find("own:grey").unwrap().number),
            (twice.clone(), PaintNumber::own(0))
        );
        assert_eq!(with.paints().len(), shelf.paints().len() + 1);
        assert!(shelf.with(vec![own(7.into())], &[]).is_err());
        assert!(
            shelf.with(vec![own(PaintNumber::own(0)), own(PaintNumber::own(1))], &[]).is_err(),
            "one name, two paints"
        );
        assert!(
            shelf
                .with(
                    vec![],
                    &[Learned { number: PaintNumber::own(0), film: twice, doubt_left: DoubtLeft::ALL }]
                )
                .is_err()
        );
    }

    #[test]
    fn faults_name_their_line() {
        assert!(Shelf::from_csv("number,key\n1,a\n").is_err());
        let error = Shelf::from_csv("number,key\nx,a\n").unwrap_err();
        assert_eq!(error.to_string(), "line 2: number is \"x\", not a whole number");
    }
}
