//! Where the shelf's paints grey each other, against a painter's measured table.

use std::collections::BTreeMap;
use std::fmt::Write as _;
use std::path::Path as FilePath;

use anyhow::{Context as _, Result, bail};
use washpath_core::colour::hue_angle;
use washpath_core::{Crossing, Film, Lab, Light, Path, Shelf, Stock, View};

use super::quantile;
use super::table::{Row, Table};

pub(super) const HELP: &str = "
evaluate neutrals FILE

Compares the crossings of the built-in paints with a table of pairs. FILE is tab
separated, header first, with the columns pigment_A, pigment_B, gives (pure grey,
near grey, NOT grey ...) and hue_bias (magenta, green, yellow, blue or empty).

C* is the least over the ratio at masstone, load 1, on bright white paper in
D65; the second C* is the least over loads 1 to 1/4 as well. The lean is that of
the crossing at load 1. Miss is how far the two paints are from opposite on the
CAM16 wheel, in degrees, each at its strongest load. A pair whose variety of a
pigment is not on the shelf is skipped.
";

/// Handbook names of the shelf's paints, exact varieties only.
const SOURCES: &str = include_str!("../../../crate/library/data/sources.csv");

/// Loads tried for the second minimum: masstone down to two halvings.
const LOADS: [f32; 5] = [1.0, 0.707, 0.5, 0.354, 0.25];

/// Hue angles of the table's four leanings in CIELAB: ours, as the table says
/// them in words only; yellow and blue are the b* axis.
const LEANS: [(&str, f32); 4] = [("yellow", 90.0), ("green", 160.0), ("blue", 270.0), ("magenta", 345.0)];

/// One pair of the table and what the model says of it.
struct Pair {
    class: &'static str,
    crossing: Crossing,
    /// Least C* over the loads.
    least: f32,
    /// Whether the table says which way it leans, and then whether we agree.
    agrees: Option<bool>,
    miss: f32,
}

pub(super) fn run(words: &[String]) -> Result<String> {
    let [file] = words else { bail!("one FILE is wanted; --help tells more") };
    let table = Table::read(FilePath::new(file), b'\t')?;
    report(&table, Shelf::built_in()).with_context(|| file.clone())
}

fn report(table: &Table, shelf: &Shelf) -> Result<String> {
    let keys = keys()?;
    let view = View::new(&Stock::BrightWhite.paper(), Light::D65);
    let mut text = String::new();
    let mut pairs = Vec::new();
    let mut skipped = Vec::new();
    writeln!(
        text,
        "{:<34} {:<10} {:>5} {:>6} {:>4}  {:<8} {:<8} miss",
        "pair", "table", "C*", "least", "L*", "lean", "table"
    )?;
    for row in table.rows() {
        let ids = [row.text("pigment_A")?, row.text("pigment_B")?];
        let class = class(row)?;
        let films = ids.map(|id| keys.get(id).and_then(|key| shelf.find(key).ok()).map(|paint| &paint.film));
        let [Some(a), Some(b)] = films else {
            let missing: Vec<&str> =
                ids.iter().zip(films).filter(|(_, film)| film.is_none()).map(|(id, _)| *id).collect();
            skipped.push(format!("{} + {} ({} not on the shelf)", ids[0], ids[1], missing.join(", ")));
            continue;
        };
        let bias = row.text("hue_bias")?;
        let pair = compare(a, b, &view, class, bias);
        writeln!(
            text,
            "{:<34} {:<10} {:>5.1} {:>6.1} {:>4.0}  {:<8} {:<8} {:>4.0}",
            format!("{} + {}", ids[0], ids[1]),
            class,
            pair.crossing.chroma,
            pair.least,
            pair.crossing.lab.l,
            lean(pair.crossing.lab),
            bias,
            pair.miss
        )?;
        pairs.push(pair);
    }
    writeln!(text, "\n{} pairs, {} skipped", pairs.len(), skipped.len())?;
    for class in CLASSES {
        text += &summary(class, &pairs)?;
    }
    for line in skipped {
        writeln!(text, "skipped: {line}")?;
    }
    Ok(text)
}

const CLASSES: [&str; 4] = ["pure grey", "near grey", "NOT grey", "other"];

fn class(row: Row<'_>) -> Result<&'static str> {
    let gives = row.text("gives")?;
    Ok(CLASSES.into_iter().find(|class| gives.starts_with(class)).unwrap_or("other"))
}

fn compare(a: &Film, b: &Film, view: &View, class: &'static str, bias: &str) -> Pair {
    let crossing = Path::new(a, b, view, 1.0).crossing();
    let chromas = LOADS.map(|load| Path::new(a, b, view, load).crossing().chroma);
    let agrees = LEANS.iter().any(|(word, _)| *word == bias).then(|| lean(crossing.lab) == bias);
    let angle = |film: &Film| view.place(film, view.strongest_load(film)).angle();
    Pair {
        class,
        least: chromas.into_iter().fold(crossing.chroma, f32::min),
        agrees,
        miss: 180.0 - turn(angle(a), angle(b)),
        crossing,
    }
}

fn summary(class: &str, pairs: &[Pair]) -> Result<String> {
    let of_class: Vec<&Pair> = pairs.iter().filter(|pair| pair.class == class).collect();
    let mut text = String::new();
    if of_class.is_empty() {
        return Ok(text);
    }
    let median = |value: &dyn Fn(&Pair) -> f32| {
        quantile(&of_class.iter().map(|pair| f64::from(value(pair))).collect::<Vec<_>>(), 0.5)
    };
    let share = |most: f32| {
        let within = of_class.iter().filter(|pair| pair.crossing.chroma <= most).count();
        100.0 * within as f64 / of_class.len() as f64
    };
    let leans: Vec<bool> = of_class.iter().filter_map(|pair| pair.agrees).collect();
    write!(
        text,
        "{class:<10} n {:>3}  median C* {:.1} (least over loads {:.1})  C* <= 5: {:.0} %  C* <= 8: {:.0} %  median miss of opposite {:.0} degrees",
        of_class.len(),
        median(&|pair| pair.crossing.chroma),
        median(&|pair| pair.least),
        share(5.0),
        share(8.0),
        median(&|pair| pair.miss)
    )?;
    if !leans.is_empty() {
        let agreed = leans.iter().filter(|agrees| **agrees).count();
        write!(text, "  lean agrees {agreed} of {}", leans.len())?;
    }
    text.push('\n');
    Ok(text)
}

/// The leaning nearest in hue.
fn lean(lab: Lab) -> &'static str {
    let hue = hue_angle(lab);
    let nearest = LEANS.iter().min_by(|a, b| turn(a.1, hue).total_cmp(&turn(b.1, hue)));
    nearest.map_or("", |(word, _)| word)
}

/// Degrees between two hue angles, 0 to 180.
fn turn(a: f32, b: f32) -> f32 {
    let turn = (a - b).rem_euclid(360.0);
    turn.min(360.0 - turn)
}

/// Shelf key of each handbook name.
fn keys() -> Result<BTreeMap<String, String>> {
    let table = Table::parse(SOURCES.as_bytes(), b',')?;
    table.rows().map(|row| Ok((row.text("handbook")?.to_owned(), row.text("key")?.to_owned()))).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn parsed(text: &str) -> Table {
        Table::parse(text.as_bytes(), b'\t').unwrap()
    }

    #[test]
    fn varieties_are_matched_exactly() {
        let keys = keys().unwrap();
        assert_eq!(keys["PBr7-rawsienna"], "pbr7-raw-sienna");
        assert_eq!(keys["PB15:3"], "pb15-3");
        // Neither is on the shelf as such: a near relative will not do.
        assert!(!keys.contains_key("PB15:3-mid") && !keys.contains_key("PV15-BS"));
    }

    #[test]
    fn pairs_are_compared_or_skipped() {
        // Measured mixing lines: MacEvoy, handprint.com/HP/WCL/mixtable.
        let table = parsed(
            "pigment_A\tpigment_B\tgives\thue_bias\n\
             PB29\tPBr7-burntsienna\tnear grey\tmagenta\n\
             PV15-BS\tPBr24\tpure grey\t\n",
        );
        let text = report(&table, Shelf::built_in()).unwrap();
        assert!(text.contains("1 pairs, 1 skipped"), "{text}");
        assert!(text.contains("skipped: PV15-BS + PBr24 (PV15-BS"), "{text}");
        assert!(text.contains("near grey  n   1"), "{text}");
    }

    #[test]
    fn a_missing_column_is_named() {
        let error = report(&parsed("pigment_A\tgives\na\tb\n"), Shelf::built_in()).unwrap_err();
        assert_eq!(error.to_string(), "line 1: no column \"pigment_B\"");
    }

    #[test]
    fn leans_are_the_nearest_hue() {
        assert_eq!(lean(Lab::new(50.0, 3.0, -0.5)), "magenta");
        assert_eq!(lean(Lab::new(50.0, -3.0, 0.5)), "green");
        assert_eq!(lean(Lab::new(50.0, 0.0, 3.0)), "yellow");
        assert_eq!(lean(Lab::new(50.0, 0.0, -3.0)), "blue");
    }
}
