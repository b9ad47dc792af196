//! What a painter asks of a paint beside its colour, as the page speaks of it: 0 to 4.

use crate::anchor::Anchored;
use crate::error::Error;
use crate::handbook::Entry;
use crate::table::Table;

/// What stretches the handbook's granulation to the page's words.
///
/// Averages over sheets seldom reach either end: ultramarine, of which every teacher
/// says that it granulates, has 2.0 over 17 sheets. The page's word for that is 3.
const STRETCH: f64 = 1.5;

/// One paint's ratings, as they are printed; empty where nobody rated.
pub struct Ratings {
    pub transparency: String,
    pub staining: String,
    pub granulation: String,
}

/// A rating in place of the handbook's: key, which one, value.
pub type Instead = (String, String, f64);

/// All of `data/ratings.csv`.
pub fn instead() -> Result<Vec<Instead>, Error> {
    let table = Table::read("ratings.csv", include_str!("../data/ratings.csv"))?;
    let rows = table.rows();
    rows.map(|row| Ok((row.text("key")?.to_owned(), row.text("rating")?.to_owned(), row.number("value")?)))
        .collect()
}

/// The ratings of a derived paint.
pub fn ratings(entry: &Entry, paint: &Anchored, instead: &[Instead]) -> Ratings {
    let own = |rating: &str| {
        instead.iter().find(|(key, which, _)| *key == paint.key && which == rating).map(|(.., value)| *value)
    };
    let [staining, granulation, ..] = &entry.ratings;
    let stretched = granulation.parse::<f64>().ok().map(|rating| (STRETCH * rating).min(4.0));
    Ratings {
        transparency: tenths(own("transparency").or(Some(transparency(entry, paint)))),
        staining: own("staining").map_or_else(|| staining.clone(), |value| tenths(Some(value))),
        granulation: tenths(own("granulation").or(stretched)),
    }
}

/// The handbook's, but of whites: over a black line on white paper a white film shows no colour to
/// judge by, and its sheets put zinc below titanium. Theirs is told by how much they hide, by the
/// middle of the rule that anchors all others.
fn transparency(entry: &Entry, paint: &Anchored) -> f64 {
    if entry.white() { ((1.2 - paint.contrast_ratio) / 0.3).clamp(0.0, 4.0) } else { entry.transparency }
}

fn tenths(rating: Option<f64>) -> String {
    rating.map_or_else(String::new, |rating| ((10.0 * rating).round() / 10.0).to_string())
}
