//! The report: what the model gets right and where it fails, as a page with plots.

use std::fmt::Write;
use std::fs;
use std::path::Path;

use anyhow::{Context, Result, bail};
use washpath_core::calibrate::DRAWS;
use washpath_core::{Light, Paper, Shelf, Stock, View};
use washpath_library::{Anchored, Trial, derive, leave_one_out, second_spectra};

use super::learning::{Learned, curve, half_of_pairs, planned, two_for_each};
use super::mixtures::{calibrate, halves, learn, left_out, predict, read_mixtures, read_singles};
use super::neutrals::{self, CLASSES, Pair};
use super::plot::{cumulative, lines};
use super::quantile;
use super::shelf::against;
use super::sureness::{self, Mixture, coverage, median_line};
use super::table::Table;
use crate::workspace;

pub(super) const HELP: &str = "
evaluate report

Measures the model against all data in the repository and writes
tests/report/README.md with its plots. Takes about a minute.
";

pub(super) fn run(words: &[String]) -> Result<String> {
    if let [word, ..] = words {
        bail!("report takes no \"{word}\"; --help tells more");
    }
    let place = workspace::root().join("tests/report");
    fs::create_dir_all(&place).with_context(|| format!("no folder {}", place.display()))?;
    let paints = derive()?;
    let page = [
        INTRODUCTION.to_owned(),
        against_others(&place)?,
        masstones(&place, &paints)?,
        trials(&place, &paints)?,
        greys(&place)?,
        mixtures(&place)?,
        learning(&place)?,
        sureness()?,
    ]
    .join("\n");
    let file = place.join("README.md");
    fs::write(&file, page).with_context(|| format!("{} cannot be written", file.display()))?;
    Ok(format!("wrote {}", file.display()))
}

const INTRODUCTION: &str = "# What the model gets right and where it fails

Written by `cargo run -p pkg-scripts -- evaluate report`: do not edit. Errors are CIEDE2000 (D65, 2 degrees)
where nothing else is said. A step of 1 is just visible side by side; 5 is plain.
";

/// A row of a table: count, median, 90th percentile, worst.
fn row(name: &str, errors: &[f64]) -> String {
    format!(
        "| {name} | {} | {:.2} | {:.2} | {:.1} |\n",
        errors.len(),
        quantile(errors, 0.5),
        quantile(errors, 0.9),
        quantile(errors, 1.0)
    )
}

const HEAD: &str = "| | count | median | 90th percentile | worst |\n|---|---|---|---|---|\n";

/// The test a painter lives in: the shelf as shipped, other makers' paints.
fn against_others(place: &Path) -> Result<String> {
    let reference = workspace::root().join("tests/reference");
    let singles = read_singles(&reference.join("ntu_singles.csv"))?;
    let mixtures = read_mixtures(&reference.join("ntu_mixtures.csv"), &singles)?;
    let against = against(&singles, &mixtures, Shelf::built_in())?;
    let errors: Vec<f64> = against.mixtures.iter().map(|(_, error)| *error).collect();
    let alone: Vec<f64> = against.alone.iter().map(|(_, error)| *error).collect();
    cumulative(
        &place.join("shelf.svg"),
        "The shelf against other makers' paints",
        "CIEDE2000",
        16.0,
        &[("mixtures", &errors), ("paints alone", &alone)],
    )?;
    let mut text = format!(
        "## The shelf against paints of other makers\n\nWhat a painter meets who records nothing: ten paints of the shelf, as shipped, \
         against real watercolours of the same pigments (Chen 2019, arXiv:1904.00275), 31 pairs. Nothing is fitted to them but one \
         factor that turns the set's quantities into loads; in the second row it is found anew for each pair without any mixture of \
         its two paints (`evaluate shelf`).\n\n![](shelf.svg)\n\n{HEAD}{}{}{}\n",
        row("mixtures", &errors),
        row("the same, loads told by paints of other pairs", &against.left_out),
        row("paints alone", &alone)
    );
    let mut pairs: Vec<([&str; 2], f64)> = against.pairs().into_iter().collect();
    pairs.sort_by(|a, b| b.1.total_cmp(&a.1));
    let names: Vec<String> =
        pairs.iter().take(8).map(|(pair, error)| format!("{} {error:.1}", pair.join(" with "))).collect();
    writeln!(text, "Farthest, by the median of their mixtures: {}.", names.join(", "))?;
    Ok(text)
}

/// Strong stainers at masstone and heavier.
const STAINERS: [&str; 5] = ["pb15-3", "pg7", "pg36", "pb27", "pr179"];

/// What load 1 is, beside what comes out of the tube.
fn heavier(paints: &[Anchored]) -> Result<String> {
    let view = View::new(&Stock::BrightWhite.paper(), Light::D65);
    let mut text = String::from(
        "\nLoad 1 is the handbook's paint-out, a juicy wash that has dried: its L* is 97 less the measured value range. What is \
         brushed on from the tube holds two to four of it and is darker:\n\n\
         | L* | handbook | load 1 | load 2 | load 4 |\n|---|---|---|---|---|\n",
    );
    for key in STAINERS {
        let paint = Shelf::built_in().find(key)?;
        let wanted = paints.iter().find(|paint| paint.key == key).map_or(f64::NAN, |paint| paint.wanted.l);
        let [one, two, four] = [1.0, 2.0, 4.0].map(|load| view.colour(&paint.film, load).l);
        writeln!(text, "| {} | {wanted:.0} | {one:.0} | {two:.0} | {four:.0} |", paint.name)?;
    }
    Ok(text)
}

fn masstones(place: &Path, paints: &[Anchored]) -> Result<String> {
    let of = |estimated: bool| -> Vec<f64> {
        paints.iter().filter(|paint| paint.estimated == estimated).map(|paint| paint.difference).collect()
    };
    let (measured, estimated) = (of(false), of(true));
    cumulative(
        &place.join("masstones.svg"),
        "Masstone against the handbook",
        "CIEDE2000",
        4.0,
        &[("measured paints", &measured), ("estimated paints", &estimated)],
    )?;
    let turns: Vec<f64> = paints.iter().filter_map(Anchored::turns_too_far_by).map(f64::abs).collect();
    let mut text = format!(
        "## The shelf against the handbook\n\nEvery paint is anchored to its measured masstone: a fit, not a prediction. \
         Source of the colours: B. MacEvoy, handprint.com/HP/WCL.\n\n![](masstones.svg)\n\n{HEAD}{}{}\n",
        row("measured paints", &measured),
        row("estimated paints", &estimated)
    );
    writeln!(
        text,
        "Hue turn from masstone to tint, in degrees off the handbook's: median {:.1}, 90th percentile {:.1}.\n",
        quantile(&turns, 0.5),
        quantile(&turns, 0.9)
    )?;
    for least in [3.0, 8.0] {
        let right: Vec<bool> = paints.iter().filter_map(|paint| paint.turns_as_wanted(least)).collect();
        let agreed = right.iter().filter(|right| **right).count();
        writeln!(
            text,
            "- turns of {least} degrees and more go the right way in {agreed} of {}",
            right.len()
        )?;
    }
    text += &heavier(paints)?;
    Ok(text)
}

fn trials(place: &Path, paints: &[Anchored]) -> Result<String> {
    let (left_out, second) = (leave_one_out(paints)?, second_spectra(paints)?);
    let mixes =
        |trials: &[Trial]| -> Vec<f64> { trials.iter().flat_map(|trial| trial.mixes.clone()).collect() };
    let (estimates, others) = (mixes(&left_out), mixes(&second));
    cumulative(
        &place.join("spectra.svg"),
        "What a paint's spectrum does to its mixes",
        "CIEDE2000",
        12.0,
        &[("spectrum left out and estimated", &estimates), ("a second measured spectrum", &others)],
    )?;
    let mut text = format!(
        "\n## Paints without a spectrum\n\nMeasured paints, estimated from their handbook colours as if they had no spectrum \
         (all varieties of the same Colour Index name left out), and mixed with fifteen others at 4:1, 1:1 and 1:4, \
         loads 1 and 1/4. Beside it, the same with a second, independent measured spectrum.\n\n![](spectra.svg)\n\n{HEAD}{}{}\n",
        row("left out and estimated", &estimates),
        row("second spectrum", &others)
    );
    let mut worst: Vec<(f64, &str)> =
        left_out.iter().map(|trial| (quantile(&trial.mixes, 0.5), trial.key.as_str())).collect();
    worst.sort_by(|a, b| b.0.total_cmp(&a.0));
    let names: Vec<String> = worst.iter().take(8).map(|(error, key)| format!("{key} {error:.1}")).collect();
    writeln!(text, "Hardest to estimate, by the median of their mixes: {}.", names.join(", "))?;
    Ok(text)
}

fn learning(place: &Path) -> Result<String> {
    let reference = workspace::root().join("tests/reference");
    let singles = read_singles(&reference.join("ntu_singles.csv"))?;
    let mixtures = read_mixtures(&reference.join("ntu_mixtures.csv"), &singles)?;
    let first = calibrate(&singles)?;
    let learned = curve(&first, &mixtures)?;
    let line = |part: f64, errors: fn(&Learned) -> &Vec<f64>| -> Vec<(f64, f64)> {
        learned.iter().map(|learned| (learned.records as f64, quantile(errors(learned), part))).collect()
    };
    lines(
        &place.join("learning.svg"),
        "What records teach of mixtures that were not recorded",
        ["mixtures recorded, of 520", "CIEDE2000"],
        [320.0, 10.5],
        &[
            ("median, read as L*, a*, b*".into(), line(0.5, |learned| &learned.by_eye)),
            ("median, by spectrum".into(), line(0.5, |learned| &learned.by_meter)),
            ("90th percentile, read as L*, a*, b*".into(), line(0.9, |learned| &learned.by_eye)),
        ],
    )?;
    let mut text = String::from(
        "\n## What records teach\n\nThe same mixtures and paints; a number of mixtures drawn at random (four draws, taken together) \
         is recorded as the page's log records them, and the others are predicted. Paints are corrected by a strength and twelve \
         smooth numbers each, held to what they were; how far, the records tell (`calibrate/lesson.rs`).\n\n![](learning.svg)\n\n\
         | recorded | errors counted | median, by spectrum | median, as L*, a*, b* | 90th percentile |\n|---|---|---|---|---|\n",
    );
    let mut add = |name: &str, learned: &Learned| {
        let Learned { by_meter, by_eye, .. } = learned;
        writeln!(
            text,
            "| {name} | {} | {:.2} | {:.2} | {:.2} |",
            by_eye.len(),
            quantile(by_meter, 0.5),
            quantile(by_eye, 0.5),
            quantile(by_eye, 0.9)
        )
    };
    for learned in &learned {
        add(&format!("{} mixtures", learned.records), learned)?;
    }
    let two = two_for_each(&first, &mixtures)?;
    add(&format!("two for each paint ({} mixtures)", two.records), &two)?;
    let plan = planned(&first, &mixtures)?;
    add(&format!("planned before anything is known ({} mixtures)", plan.records), &plan)?;
    let half = half_of_pairs(&first, &mixtures)?;
    add(&format!("every other pair ({} mixtures), the other pairs asked", half.records), &half)?;
    Ok(text)
}

fn greys(place: &Path) -> Result<String> {
    let file = workspace::root().join("tests/reference/neutral_pairs.tsv");
    let (pairs, skipped) = neutrals::pairs(&Table::read(&file, b'\t')?, Shelf::built_in())?;
    let chromas = |class: &str| -> Vec<f64> {
        pairs.iter().filter(|pair| pair.class == class).map(|pair| f64::from(pair.crossing.chroma)).collect()
    };
    let (pure, near) = (chromas("pure grey"), chromas("near grey"));
    cumulative(
        &place.join("greys.svg"),
        "Least chroma of measured grey pairs",
        "C* at the crossing, masstone",
        12.0,
        &[("pure grey on paper", &pure), ("near grey on paper", &near)],
    )?;
    let mut text = String::from(
        "\n## Measured neutral pairs\n\nPairs whose mixing line was measured; nothing is fitted to them. A partner's place says how many \
         paints of the shelf, in percent, would neutralise its mate better: by the path's least C*, and by the rule \
         \"opposite on the wheel\". Where the rule is fooled (not grey), the path is not.\n\n![](greys.svg)\n\n\
         | on paper | pairs | C* <= 5 | C* <= 8 | median C* | place by path | by opposition |\n|---|---|---|---|---|---|---|\n",
    );
    for class in CLASSES {
        let of_class: Vec<&Pair> = pairs.iter().filter(|pair| pair.class == class).collect();
        let place = |which: usize| {
            100.0
                * quantile(&of_class.iter().map(|pair| f64::from(pair.ranks[which])).collect::<Vec<_>>(), 0.5)
        };
        writeln!(
            text,
            "| {class} | {} | {:.0} % | {:.0} % | {:.1} | {:.0} % | {:.0} % |",
            of_class.len(),
            100.0 * neutrals::share(class, &pairs, 5.0),
            100.0 * neutrals::share(class, &pairs, 8.0),
            quantile(&chromas(class), 0.5),
            place(0),
            place(1)
        )?;
    }
    let leans: Vec<bool> = pairs.iter().filter_map(Pair::agrees).collect();
    let agreed = leans.iter().filter(|agrees| **agrees).count();
    writeln!(
        text,
        "\nNear greys lean to the measured side in {agreed} of {}. {} pairs were skipped: a variety is not on the shelf.",
        leans.len(),
        skipped.len()
    )?;
    let mut far: Vec<&Pair> =
        pairs.iter().filter(|pair| pair.class == "pure grey" || pair.class == "near grey").collect();
    far.sort_by(|a, b| b.crossing.chroma.total_cmp(&a.crossing.chroma));
    let names: Vec<String> = far
        .iter()
        .take(8)
        .map(|pair| format!("{} {:.1}", pair.ids.join(" with "), pair.crossing.chroma))
        .collect();
    writeln!(text, "Farthest from the grey they make on paper: {}.", names.join(", "))?;
    Ok(text)
}

/// Whether half of all mixtures lie nearer than stated, wherever on a path.
fn sureness() -> Result<String> {
    let reference = workspace::root().join("tests/reference");
    let singles = read_singles(&reference.join("ntu_singles.csv"))?;
    let all = read_mixtures(&reference.join("ntu_mixtures.csv"), &singles)?;
    let of_films = sureness::of_films(&calibrate(&singles)?, &all);
    let [a, b] = median_line(&of_films.iter().collect::<Vec<_>>());
    let in_view: Vec<f64> = of_films.iter().map(|one| a + b * one.steepness).collect();
    let against = against(&singles, &all, Shelf::built_in())?;
    let paper = Paper { name: "the set's".to_owned(), reflectance: singles.paper };
    let (mut of_shelf, mut stated) = (Vec::new(), Vec::new());
    for ((pair, error), [share, load]) in against.mixtures.iter().zip(&against.laid) {
        let [steepness, own] = sureness::stated_of_shelf(&paper, *pair, *share, *load)?;
        of_shelf.push(Mixture { pair: *pair, steepness, error: *error });
        stated.push(own);
    }
    let [c, d] = median_line(&of_shelf.iter().collect::<Vec<_>>());
    let line = |name: &str, thirds: [f64; 3]| {
        let [flat, middle, steep] = thirds;
        format!("| {name} | {flat:.2} | {middle:.2} | {steep:.2} |\n")
    };
    Ok(format!(
        "\n## How sure it says it is\n\nThe page states a median error for every mix. It grows with g, how fast the colour turns with the \
         ratio (CIEDE2000 for 1 of its logarithm): {a:.2} + {b:.2} g for the mixing model. The share of mixtures nearer than stated, \
         in thirds from flat places of paths to steep ones, should be a half:\n\n\
         | | flat | middle | steep |\n|---|---|---|---|\n{}{}{}{}",
        line("the same paints' films, the line fitted to all", coverage(&of_films, &in_view)),
        line(
            "the same, the line found without both paints",
            coverage(&of_films, &sureness::left_out(&of_films))
        ),
        line("the shelf against other makers' paints, as the page states it", coverage(&of_shelf, &stated)),
        line(
            &format!("the same, were a line fitted to it ({c:.1} + {d:.2} g), found without both paints"),
            coverage(&of_shelf, &sureness::left_out(&of_shelf))
        )
    ))
}

fn mixtures(place: &Path) -> Result<String> {
    let reference = workspace::root().join("tests/reference");
    let singles = read_singles(&reference.join("ntu_singles.csv"))?;
    let all = read_mixtures(&reference.join("ntu_mixtures.csv"), &singles)?;
    let first = calibrate(&singles)?;
    let alone = predict(&first, &all).errors;
    let [learned, by_spectrum] = left_out(&first, &singles, &all)?;
    let [even, odd] = halves(&all);
    let mut halved = predict(&learn(&first, &singles, &even)?, &odd).errors;
    halved.extend(predict(&learn(&first, &singles, &odd)?, &even).errors);
    cumulative(
        &place.join("mixtures.svg"),
        "Unseen mixtures of real watercolours",
        "CIEDE2000",
        15.0,
        &[("paints known from single swatches", &alone), ("and from other pairs", &learned)],
    )?;
    Ok(format!(
        "\n## Unseen mixtures of real watercolours\n\n13 paints, 52 pairs (Chen 2019, arXiv:1904.00275), predicted by the film model from \
         swatches of the paints alone, and after learning from other pairs. Nothing is fitted to the mixtures that are \
         asked. What swatches of a paint alone do not tell is averaged over {DRAWS} guesses (`calibrate/consensus.rs`), \
         whose ranges are not chosen by these mixtures.\n\n![](mixtures.svg)\n\n{HEAD}{}{}{}{}",
        row("from singles", &alone),
        row("from singles and five sixths of the other pairs", &learned),
        row("the same, from spectra without colours", &by_spectrum),
        row("from singles and half of the pairs", &halved)
    ))
}
