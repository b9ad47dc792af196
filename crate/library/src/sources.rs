//! Which measurements stand for which paint: `data/sources.csv`.

use crate::error::Error;
use crate::table::Table;

/// One paint of the shelf and the samples it may stand on.
pub struct Source {
    pub key: String,
    pub name: String,
    pub aliases: String,
    /// The handbook's entry for the paint.
    pub handbook: String,
    /// None where the paint is estimated.
    pub samples: Vec<Sample>,
    /// Masstones in one volume of paint as supplied; ultramarine about 1.
    pub strength: f64,
    pub strength_source: String,
}

/// A measured sample.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Sample {
    /// Every card painted with the pigment of this number.
    Cards(String),
    /// A pigment of the phantoms.
    Phantom(String),
}

/// All paints in the order of their numbers, which start at 1.
pub fn sources() -> Result<Vec<Source>, Error> {
    let table = Table::read("sources.csv", include_str!("../data/sources.csv"))?;
    table
        .rows()
        .map(|row| {
            let text = |column: &str| row.text(column).map(str::to_owned);
            let samples = row.text("samples")?.split_whitespace().map(sample).collect();
            Ok(Source {
                key: text("key")?,
                name: text("name")?,
                aliases: text("aliases")?,
                handbook: text("handbook")?,
                samples,
                strength: row.number("strength")?,
                strength_source: text("strength_src")?,
            })
        })
        .collect()
}

fn sample(word: &str) -> Sample {
    match word.strip_prefix("ph:") {
        Some(pigment) => Sample::Phantom(pigment.to_owned()),
        None => Sample::Cards(word.to_owned()),
    }
}
