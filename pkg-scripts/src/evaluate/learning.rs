//! What records teach: paints known from swatches of themselves, and ever more mixtures recorded.

use std::fmt::Write as _;
use std::path::PathBuf;

use anyhow::Result;
use lexopt::ValueExt as _;
use washpath_core::Paper;
use washpath_core::calibrate::{Calibration, Evidence, Known, Learner, PlannedPart, Seen, Swatch, Wanted};

use super::mixtures::{calibrate, halves, read_mixtures, read_singles};
use super::quantile;

pub(super) const HELP: &str = "
evaluate learning --singles FILE --mixtures FILE

Fits each paint to swatches of it alone, then records ever more of the mixtures,
as the page's log would, and prints the CIEDE2000 errors (D65, 2 degrees) of
the mixtures that were not recorded, against the number of records. The files
are those of `evaluate mixtures`.
";

/// Numbers of records.
const COUNTS: [usize; 8] = [0, 9, 18, 26, 52, 104, 208, 312];

/// Draws at each number; medians of all are taken together.
const DRAWS: u64 = 4;

/// Errors of what was not recorded.
pub(super) struct Learned {
    pub records: usize,
    pub by_meter: Vec<f64>,
    pub by_eye: Vec<f64>,
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
    let mixtures = read_mixtures(&mixtures, &singles)?;
    let first = calibrate(&singles)?;
    let mut text = String::from("records  by spectrum: median  p90   by L*, a*, b*: median  p90\n");
    for learned in curve(&first, &mixtures)? {
        let Learned { records, by_meter, by_eye } = &learned;
        let [a, b, c, d] = [(by_meter, 0.5), (by_meter, 0.9), (by_eye, 0.5), (by_eye, 0.9)]
            .map(|(errors, part)| quantile(errors, part));
        writeln!(text, "{records:7}               {a:5.2} {b:5.2}                    {c:5.2} {d:5.2}")?;
    }
    let others = [
        ("two for each paint", two_for_each(&first, &mixtures)?),
        ("planned", planned(&first, &mixtures)?),
        ("every other pair", half_of_pairs(&first, &mixtures)?),
    ];
    for (name, Learned { records, by_meter, by_eye }) in others {
        writeln!(
            text,
            "{name} ({records} records): by spectrum {:.2}, by L*, a*, b* {:.2}",
            quantile(&by_meter, 0.5),
            quantile(&by_eye, 0.5)
        )?;
    }
    Ok(text)
}

/// Errors against the number of records.
pub(super) fn curve(first: &Calibration, mixtures: &[Swatch]) -> Result<Vec<Learned>> {
    COUNTS
        .iter()
        .map(|count| {
            let mut learned = Learned { records: *count, by_meter: Vec::new(), by_eye: Vec::new() };
            for draw in 0..DRAWS {
                let order = shuffled(mixtures.len(), draw + 1);
                let (taught, asked) = order.split_at(*count);
                learned.add(first, mixtures, taught, asked)?;
            }
            Ok(learned)
        })
        .collect()
}

/// Two recorded mixtures for each paint, drawn at random, and what they teach of all others.
pub(super) fn two_for_each(first: &Calibration, mixtures: &[Swatch]) -> Result<Learned> {
    let mut learned = Learned { records: 0, by_meter: Vec::new(), by_eye: Vec::new() };
    for draw in 0..DRAWS {
        let (mut taught, mut asked) = (Vec::new(), Vec::new());
        let mut seen = vec![0; first.paints.len()];
        for i in shuffled(mixtures.len(), draw + 1) {
            let paints = mixtures[i].parts.iter().map(|(paint, _)| *paint);
            if paints.clone().any(|paint| seen[paint] < 2) {
                paints.for_each(|paint| seen[paint] += 1);
                taught.push(i);
            } else {
                asked.push(i);
            }
        }
        learned.records = taught.len();
        learned.add(first, mixtures, &taught, &asked)?;
    }
    Ok(learned)
}

/// Records that the page's plan asks for.
const PLANNED: usize = 18;

/// What the plan would have recorded before anything is known, and what it teaches of all others.
pub(super) fn planned(first: &Calibration, mixtures: &[Swatch]) -> Result<Learned> {
    let mixes: Vec<Wanted> = mixtures
        .iter()
        .map(|swatch| {
            let parts = swatch
                .parts
                .iter()
                .map(|(paint, quantity)| PlannedPart { paint: *paint, parts: quantity.round() as u16 });
            Wanted { parts: parts.collect(), load: evidence(first, swatch, false).load }
        })
        .collect();
    let paper = Paper { name: "the set's".to_owned(), reflectance: first.ground.paper };
    let plan = learner(first).learn(&[])?.plan_among(mixes.clone(), &paper, PLANNED);
    let is_planned =
        |mix: &Wanted| plan.steps.iter().any(|step| step.parts == mix.parts && step.load == mix.load);
    let (taught, asked): (Vec<usize>, Vec<usize>) = (0..mixes.len()).partition(|i| is_planned(&mixes[*i]));
    let mut learned = Learned { records: taught.len(), by_meter: Vec::new(), by_eye: Vec::new() };
    learned.add(first, mixtures, &taught, &asked)?;
    Ok(learned)
}

/// Every other pair recorded, the rest asked, and the other way round.
pub(super) fn half_of_pairs(first: &Calibration, mixtures: &[Swatch]) -> Result<Learned> {
    let [a, b] = halves(mixtures);
    let mut learned = Learned { records: a.len(), by_meter: Vec::new(), by_eye: Vec::new() };
    for (taught, asked) in [(&a, &b), (&b, &a)] {
        let all = [&taught[..], &asked[..]].concat();
        let order: Vec<usize> = (0..all.len()).collect();
        let (taught, asked) = order.split_at(taught.len());
        learned.add(first, &all, taught, asked)?;
    }
    Ok(learned)
}

impl Learned {
    fn add(
        &mut self,
        first: &Calibration,
        mixtures: &[Swatch],
        taught: &[usize],
        asked: &[usize],
    ) -> Result<()> {
        for by_meter in [true, false] {
            let records: Vec<Evidence> =
                taught.iter().map(|i| evidence(first, &mixtures[*i], by_meter)).collect();
            let asked: Vec<Evidence> =
                asked.iter().map(|i| evidence(first, &mixtures[*i], by_meter)).collect();
            let lesson = learner(first).learn(&records)?;
            let errors = lesson.errors(&asked)?;
            if by_meter { &mut self.by_meter } else { &mut self.by_eye }.extend(errors);
        }
        Ok(())
    }
}

fn learner(first: &Calibration) -> Learner {
    let known = first.paints.iter().map(|paint| Known { film: paint.film(), doubt: 1.0 }).collect();
    Learner::new(known, first.ground.surface).with_floors(first.ground.floors.clone())
}

/// A mixture as a record: a heavier drop spreads wider, as the singles showed.
fn evidence(first: &Calibration, swatch: &Swatch, by_meter: bool) -> Evidence {
    let quantity: f64 = swatch.parts.iter().map(|(_, quantity)| quantity).sum();
    Evidence {
        parts: swatch.parts.clone(),
        load: quantity.powf(first.ground.gamma),
        load_doubt: 0.1,
        paper: first.ground.paper,
        seen: if by_meter { swatch.seen.clone() } else { Seen::Lab(swatch.seen.lab()) },
    }
}

/// Numbers below `count` in an order that is the same every time.
fn shuffled(count: usize, seed: u64) -> Vec<usize> {
    let mut state = seed.wrapping_mul(0x9e37_79b9_7f4a_7c15);
    let mut order: Vec<usize> = (0..count).collect();
    for last in (1..count).rev() {
        state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        order.swap(last, (state >> 33) as usize % (last + 1));
    }
    order
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::workspace;

    /// Just above the 2.46 and 5.3 measured; 18 drawn at random give 2.7 and 6.0.
    const REACHED: [f64; 2] = [2.6, 5.6];

    #[test]
    fn the_plan_asks_for_many_different_pairs_and_they_teach_most() {
        let reference = workspace::root().join("tests/reference");
        let singles = read_singles(&reference.join("ntu_singles.csv")).unwrap();
        let mixtures = read_mixtures(&reference.join("ntu_mixtures.csv"), &singles).unwrap();
        let learned = planned(&calibrate(&singles).unwrap(), &mixtures).unwrap();
        assert_eq!(learned.records, PLANNED);
        for (part, most) in [0.5, 0.9].into_iter().zip(REACHED) {
            assert!(quantile(&learned.by_eye, part) < most, "{part}: {}", quantile(&learned.by_eye, part));
        }
    }
}
