//! Colours and ratings of real watercolours: `data/handbook.csv`.

use washpath_core::Lab;

use crate::error::Error;
use crate::table::Table;

/// One paint of the handbook, averaged over makers.
pub struct Entry {
    pub id: String,
    pub code: String,
    pub family: String,
    pub hue: String,
    /// Masstone, D65.
    pub masstone: Lab<f64>,
    /// Whether all three numbers of the masstone were measured.
    pub measured: bool,
    /// Whether none was.
    pub remembered: bool,
    /// CIELAB hue angle of the tint in degrees.
    pub tint_hue: Option<f64>,
    /// 0 opaque to 4 transparent.
    pub transparency: f64,
    /// Ratings as printed: staining, granulation, lightfastness of tint and masstone.
    pub ratings: [String; 4],
    pub caution: String,
}

/// All entries the shelf uses.
pub fn handbook() -> Result<Vec<Entry>, Error> {
    let table = Table::read("handbook.csv", include_str!("../data/handbook.csv"))?;
    table
        .rows()
        .map(|row| {
            let text = |column: &str| row.text(column).map(str::to_owned);
            Ok(Entry {
                id: text("id")?,
                code: text("code")?,
                family: text("family")?,
                hue: text("hue")?,
                masstone: Lab::new(row.number("lab_l")?, row.number("lab_a")?, row.number("lab_b")?),
                measured: row.text("lab_basis")? == "measured",
                remembered: row.text("lab_basis")? == "estimated",
                tint_hue: row.maybe("tint_hue")?,
                transparency: row.number("transparency")?,
                ratings: [
                    text("staining")?,
                    text("granulation")?,
                    text("lightfast_tint")?,
                    text("lightfast_masstone")?,
                ],
                caution: text("caution")?,
            })
        })
        .collect()
}

impl Entry {
    /// Colour Index name without its form: PB15 of PB15:3.
    pub fn pigment(&self) -> &str {
        self.code.split([':', '/']).next().unwrap_or_default()
    }

    /// A cadmium: its shades are one solid solution, whose edge lies where a maker sets it.
    pub fn solid_solution(&self) -> bool {
        self.family.starts_with("cadmium")
    }

    /// Nothing but white.
    pub fn white(&self) -> bool {
        self.masstone.l > 95.0
    }

    /// A white with a little colour, whose strength its colour does not show.
    pub fn pale(&self) -> bool {
        self.masstone.l > 75.0 && self.masstone.a.hypot(self.masstone.b) < 20.0
    }
}
