//! The shelf as shipped against watercolours that others mixed and measured.

use std::collections::BTreeMap;
use std::fmt::Write as _;
use std::path::PathBuf;

use anyhow::{Result, anyhow};
use lexopt::ValueExt as _;
use washpath_core::calibrate::Swatch;
use washpath_core::{Film, Lab, Light, Paper, Shelf, View, colour::ciede2000, mix};

use super::mixtures::{Singles, read_mixtures, read_singles};
use super::quantile;

pub(super) const HELP: &str = "
evaluate shelf --singles FILE --mixtures FILE

Compares mixtures of the built-in paints with mixtures of other makers' paints of the
same pigments, in CIEDE2000 (D65, 2 degrees): what a painter meets who records nothing.
The files are those of `evaluate mixtures`; paints are paired by the names in the column
pigment. Nothing is fitted but one factor that turns the set's quantities into loads,
the same for all paints; the second line finds it anew for each pair, without any
mixture that holds one of its two paints.
";

/// The set's names and the shelf's paints of the same pigment; the others' pigments are not told.
const SAME: [(&str, &str); 10] = [
    ("cadmium red", "pr108"),
    ("alizarin crimson", "pr83"),
    ("burnt sienna", "pbr7-burnt-sienna"),
    ("lemon yellow", "py3"),
    ("cadmium yellow", "py35-medium"),
    ("raw sienna", "pbr7-raw-sienna"),
    ("ultramarine", "pb29"),
    ("prussian blue", "pb27"),
    ("ivory black", "pbk9"),
    ("chinese white", "pw4"),
];

/// A drop spreads: its film grows as the quantity to this power, the middle of what is thinkable
/// (`calibrate/consensus.rs`).
const GAMMA: f64 = 0.85;

/// Factors tried: a twentieth of an octave apart, three octaves either way.
const FACTORS: i32 = 60;

/// Errors of the shelf's paints against the set's.
pub(super) struct Against {
    /// Each mixture: its paints, its error.
    pub mixtures: Vec<([&'static str; 2], f64)>,
    /// The same, the factor of loads found without both paints.
    pub left_out: Vec<f64>,
    /// Each swatch of a paint alone.
    pub alone: Vec<(&'static str, f64)>,
    /// Each mixture's share of its second paint, and its load.
    pub laid: Vec<[f32; 2]>,
    /// Loads that a unit of the set makes.
    factor: f64,
}

pub(super) fn run(words: &[String]) -> Result<String> {
    let [mut singles, mut mixtures] = [PathBuf::new(), PathBuf::new()];
    let mut parser = lexopt::Parser::from_args(words);
    while let Some(word) = parser.next()? {
        match &word {
            lexopt::Arg::Long("singles") => singles = parser.value()?.string()?.into(),
            lexopt::Arg::Long("mixtures") => mixtures = parser.value()?.string()?.into(),
            _ => return Err(word.unexpected().into()),
        }
    }
    let singles = read_singles(&singles)?;
    let against = against(&singles, &read_mixtures(&mixtures, &singles)?, Shelf::built_in())?;
    let mut text = String::new();
    let errors: Vec<f64> = against.mixtures.iter().map(|(_, error)| *error).collect();
    let alone: Vec<f64> = against.alone.iter().map(|(_, error)| *error).collect();
    for (name, errors) in
        [("mixtures", &errors), ("the same, loads by others", &against.left_out), ("paints alone", &alone)]
    {
        let [median, p90, worst] = [0.5, 0.9, 1.0].map(|part| quantile(errors, part));
        writeln!(text, "{name:<26} n {:3}  median {median:.2}  p90 {p90:.2}  max {worst:.1}", errors.len())?;
    }
    writeln!(text, "a unit of the set is {:.2} loads\n", against.factor)?;
    for (_, key) in SAME {
        writeln!(text, "{key:<18} mixtures {:5.2}  alone {:5.2}", against.of(key), against.alone(key))?;
    }
    let mut pairs: Vec<([&str; 2], f64)> = against.pairs().into_iter().collect();
    pairs.sort_by(|a, b| b.1.total_cmp(&a.1));
    for (pair, median) in pairs {
        writeln!(text, "{median:5.2}  {}", pair.join(" with "))?;
    }
    Ok(text)
}

impl Against {
    /// Median over the mixtures of a paint.
    fn of(&self, key: &str) -> f64 {
        let own = self.mixtures.iter().filter(|(keys, _)| keys.contains(&key)).map(|(_, error)| *error);
        quantile(&own.collect::<Vec<_>>(), 0.5)
    }

    fn alone(&self, key: &str) -> f64 {
        let own = self.alone.iter().filter(|(of, _)| *of == key).map(|(_, error)| *error);
        quantile(&own.collect::<Vec<_>>(), 0.5)
    }

    /// Median of each pair.
    pub(super) fn pairs(&self) -> BTreeMap<[&'static str; 2], f64> {
        let mut pairs: BTreeMap<[&str; 2], Vec<f64>> = BTreeMap::new();
        for (pair, error) in &self.mixtures {
            pairs.entry(*pair).or_default().push(*error);
        }
        pairs.into_iter().map(|(pair, errors)| (pair, quantile(&errors, 0.5))).collect()
    }
}

/// A swatch of the set whose paints are all on the shelf.
struct Match<'a> {
    keys: Vec<&'static str>,
    film: Film,
    /// Of the last paint.
    share: f32,
    quantity: f64,
    seen: Lab<f64>,
    view: &'a View,
}

impl Match<'_> {
    fn load(&self, factor: f64) -> f64 {
        factor * self.quantity.powf(GAMMA)
    }

    fn error(&self, factor: f64) -> f64 {
        let Lab { l, a, b, .. } = self.view.colour(&self.film, self.load(factor) as f32);
        ciede2000(Lab::new(l.into(), a.into(), b.into()), self.seen)
    }
}

/// The shelf's paints, mixed as the set's were.
pub(super) fn against(singles: &Singles, mixtures: &[Swatch], shelf: &Shelf) -> Result<Against> {
    let paper = Paper { name: "the set's".to_owned(), reflectance: singles.paper };
    let view = View::new(&paper, Light::D65);
    let keys: BTreeMap<usize, &str> = SAME
        .iter()
        .map(|(name, key)| {
            let paint = singles
                .names
                .get(*name)
                .copied()
                .ok_or_else(|| anyhow!("no paint of the singles is \"{name}\""))?;
            Ok((paint, *key))
        })
        .collect::<Result<_>>()?;
    let matches = |swatches: &[Swatch]| -> Result<Vec<Match<'_>>> {
        let known =
            swatches.iter().filter(|swatch| swatch.parts.iter().all(|(paint, _)| keys.contains_key(paint)));
        known.map(|swatch| matched(swatch, &keys, shelf, &view)).collect()
    };
    let (mixed, alone) = (matches(mixtures)?, matches(&singles.swatches)?);
    let factor = best_factor(&mixed.iter().collect::<Vec<_>>());
    let mut without: BTreeMap<&[&str], f64> = BTreeMap::new();
    for one in &mixed {
        let strangers = mixed.iter().filter(|other| other.keys.iter().all(|key| !one.keys.contains(key)));
        without.entry(&one.keys).or_insert_with(|| best_factor(&strangers.collect::<Vec<_>>()));
    }
    Ok(Against {
        left_out: mixed.iter().map(|one| one.error(without[&one.keys[..]])).collect(),
        mixtures: mixed.iter().map(|one| ([one.keys[0], one.keys[1]], one.error(factor))).collect(),
        laid: mixed.iter().map(|one| [one.share, one.load(factor) as f32]).collect(),
        alone: alone.iter().map(|one| (one.keys[0], one.error(factor))).collect(),
        factor,
    })
}

fn matched<'a>(
    swatch: &Swatch,
    keys: &BTreeMap<usize, &'static str>,
    shelf: &Shelf,
    view: &'a View,
) -> Result<Match<'a>> {
    let names: Vec<&str> = swatch.parts.iter().map(|(paint, _)| keys[paint]).collect();
    let paints = names.iter().map(|key| shelf.find(key)).collect::<Result<Vec<_>, _>>()?;
    let parts: Vec<(&Film, f32)> = paints
        .iter()
        .zip(&swatch.parts)
        .map(|(paint, (_, quantity))| (&paint.film, *quantity as f32))
        .collect();
    let quantity: f64 = swatch.parts.iter().map(|(_, quantity)| quantity).sum();
    let last = swatch.parts.last().map_or(0.0, |(_, quantity)| *quantity);
    Ok(Match {
        film: mix(&parts)?,
        share: (last / quantity) as f32,
        quantity,
        seen: swatch.seen.lab(),
        keys: names,
        view,
    })
}

/// The factor of loads of the least mean error.
fn best_factor(matches: &[&Match<'_>]) -> f64 {
    let factors = (-FACTORS..=FACTORS).map(|step| (f64::from(step) / 20.0).exp2());
    let sum = |factor: f64| matches.iter().map(|one| one.error(factor)).sum::<f64>();
    let sums = factors.map(|factor| (sum(factor), factor));
    sums.min_by(|a, b| a.0.total_cmp(&b.0)).map_or(1.0, |(_, factor)| factor)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::workspace;

    /// Just above what was measured, so that a change that helps a check and hurts a painter fails.
    const REACHED: [f64; 2] = [5.8, 10.6];

    #[test]
    fn the_shelf_predicts_other_makers_mixtures() {
        let reference = workspace::root().join("tests/reference");
        let singles = read_singles(&reference.join("ntu_singles.csv")).unwrap();
        let mixtures = read_mixtures(&reference.join("ntu_mixtures.csv"), &singles).unwrap();
        let against = against(&singles, &mixtures, Shelf::built_in()).unwrap();
        assert_eq!((against.mixtures.len(), against.alone.len(), against.pairs().len()), (310, 110, 31));
        for (part, most) in [0.5, 0.9].into_iter().zip(REACHED) {
            let found = quantile(&against.left_out, part);
            assert!(found < most, "{part}: {found}");
        }
    }
}
