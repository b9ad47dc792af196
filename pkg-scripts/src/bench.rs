//! How fast the core is and how large the page, against the budgets.

use std::collections::BTreeMap;
use std::process::Command as Process;

use anyhow::{Context, Result, ensure};

use crate::evaluate::plot;
use crate::process::{cargo, program};
use crate::size::{self, Size};
use crate::{Command, pack, start, workspace};

pub(crate) const COMMAND: Command = Command {
    name: "bench",
    summary: "measure speed and size against the budgets",
    help: "
  --start   only how the hosted page starts on a phone, by Lighthouse

Compiles the core as it ships, times its sums on one processor, and, where the
browser tests are installed, the page in Chromium. Prints a table of figures,
verdicts and budgets, and how searches grow, drawn in target/growth.svg. Sizes
and the page are those built last.
",
    run: |words| match words {
        [word] if word == "--start" => start::start(),
        _ => crate::no_words(words).and_then(|()| bench()),
    },
};

/// A figure of the core, and how the table calls it.
const FIGURES: [(&str, &str); 9] = [
    ("arithmetic limit", "the arithmetic of a mix alone, 36 bands"),
    ("film", "film on paper, 36 bands"),
    ("mix to Lab", "mix of two paints to Lab, 36 bands"),
    ("path", "path, 33 ratios"),
    ("crossing", "crossing of a path"),
    ("sheet", "sheet, 33 ratios by 12 loads"),
    ("neutral partners", "neutral partners among the shelf"),
    ("shading partners", "shading partners among the shelf"),
    ("next paint of the shelf", "next paint, the shelf ranked by reach"),
];

/// Budgets of the design: times the arithmetic limit, milliseconds for what one frame of a drag computes, and for
/// what a frame in a phone's browser has.
const WITHIN_LIMIT: f64 = 1.4;
const FRAME_MS: f64 = 8.0;
const SCREEN_FRAME_MS: f64 = 16.0;
const TASK_MS: f64 = 50.0;

/// How many times native's time the browser may take.
const BROWSER: f64 = 2.0;

/// Budgets in milliseconds, in the browser; natively the report has the same, and searches so much less.
const NATIVELY: f64 = 1.0 / 2.5;
const REPORT_MS: f64 = 40.0;
const RECIPES_MS: f64 = 60.0;
const CHOICE_MS: f64 = 3000.0;
const READY_MS: f64 = 1000.0;

fn bench() -> Result<()> {
    let times = core_times()?;
    let time = |name: &str| times.get(name).copied().with_context(|| format!("no figure \"{name}\""));
    println!();
    for (name, title) in FIGURES {
        row(title, &duration(time(name)?), "");
    }
    let over = time("mix to Lab")? / time("arithmetic limit")?;
    let budget = format!("at most {WITHIN_LIMIT}");
    row("mix, times the arithmetic limit", &times_of(over), &judged(over <= WITHIN_LIMIT, &budget));
    let recipes = time("reach of 15 paints")? + time("recipes of 15 paints")?;
    let report = time("report on 15 paints")?;
    under(
        "path, crossing and sheet, one frame",
        time("path")? + time("sheet")? + time("crossing")?,
        FRAME_MS,
    );
    under("full report on 15 paints", report, REPORT_MS);
    under("recipes, all sets of 15 paints", recipes, NATIVELY * RECIPES_MS);
    under("best 12 of 120 for 500 colours", time("best 12 of 120 for 500 colours")?, NATIVELY * CHOICE_MS);
    match browser_times() {
        Ok(page) => in_browser(&page, report, time("strongest load")?)?,
        Err(error) => row("in the browser", "not measured", &format!("{error:#}")),
    }
    sizes();
    growth(&times)
}

/// How searches grow with the paints they are asked about: a row a search, and a drawing.
///
/// The power is that of the last doubling or less of the paints: 1 is in proportion.
fn growth(times: &BTreeMap<String, f64>) -> Result<()> {
    println!();
    let mut lines: Vec<plot::Line> = Vec::new();
    for (search, paints) in
        [("reach", "paints"), ("report", "paints"), ("recipes", "paints"), ("choice", "candidates")]
    {
        let prefix = format!("growth {search} ");
        let mut points: Vec<(f64, f64)> = times
            .iter()
            .filter_map(|(name, time)| Some((name.strip_prefix(&prefix)?.parse().ok()?, time / 1e6)))
            .collect();
        points.sort_by(|a, b| a.0.total_cmp(&b.0));
        let (Some(half), Some(last)) = (points.get(points.len() / 2), points.last()) else { continue };
        let power = (last.1 / half.1).ln() / (last.0 / half.0).ln();
        let told: Vec<String> =
            points.iter().map(|(size, time)| format!("{size}: {}", duration(time * 1e6))).collect();
        println!("{search} by {paints}, power {power:.1}   {}", told.join("   "));
        if search != "choice" {
            lines.push((search.to_owned(), points));
        }
    }
    let points = || lines.iter().flat_map(|(_, points)| points);
    let most =
        points().fold([0.0, 0.0], |most, point| [f64::max(most[0], point.0), f64::max(most[1], point.1)]);
    let file = workspace::root().join("target/growth.svg");
    plot::lines(&file, "Time of searches", ["paints of the kit", "milliseconds"], most, &lines)
}

/// What the built page takes in Chromium.
fn in_browser(page: &BTreeMap<String, f64>, native_report: f64, native_load: f64) -> Result<()> {
    // The page's figures come in milliseconds.
    let time = |name: &str| {
        let found = page.get(name).with_context(|| format!("no figure \"{name}\" of the page"))?;
        anyhow::Ok(found * 1e6)
    };
    let report = time("report on 15 paints")?;
    under("browser: one frame of a drag, all views", time("frame of a drag")?, FRAME_MS);
    under("browser: full report on 15 paints", report, REPORT_MS);
    under("browser: recipes of 15 paints", time("recipes of 15 paints")?, RECIPES_MS);
    under("browser: best 12 of 120, real surfaces", time("best 12 of 120")?, CHOICE_MS);
    let judge = |title: &str, slower: f64| {
        row(title, &times_of(slower), &judged(slower <= BROWSER, &format!("at most {BROWSER}")));
    };
    judge("report, times native's", report / native_report);
    judge("colours of a film at all loads, times native's", time("strongest load")? / native_load);
    under(
        "drag on a phone, 95 % of frames, throttled 4x",
        time("frame of a drag, throttled")?,
        SCREEN_FRAME_MS,
    );
    under("longest task of ordinary use", time("longest task")?, TASK_MS);
    let kept = page.get("kilobytes kept after 600 steps").context("no figure of what a drag keeps")?;
    row("kilobytes kept after 600 steps of a drag", &format!("{kept:.0}"), "");
    under("ready, hosted, processor throttled 4x", time("ready, hosted")?, READY_MS);
    under("ready, one file, processor throttled 4x", time("ready, one file")?, READY_MS);
    Ok(())
}

fn sizes() {
    let judge = |title: &str, size: Size, bytes: usize, budget: usize, unit: &str| {
        row(title, &bytes.to_string(), &judged(bytes < budget, &format!("under {budget}{unit}; {size}")));
    };
    if let Ok(size) = Size::of(&workspace::packed()) {
        judge("single file", size, size.raw, pack::FILE_BUDGET, "");
    }
    if let Ok(size) = size::first_load() {
        judge("hosted first load", size, size.gzip, pack::SITE_BUDGET, " after gzip");
    }
}

/// A row of nanoseconds against a budget in milliseconds.
fn under(title: &str, nanoseconds: f64, budget: f64) {
    row(title, &duration(nanoseconds), &judged(nanoseconds < budget * 1e6, &format!("under {budget} ms")));
}

pub(crate) fn judged(met: bool, budget: &str) -> String {
    format!("{}  {budget}", if met { "met   " } else { "MISSED" })
}

fn times_of(ratio: f64) -> String {
    format!("{ratio:.1}")
}

/// Nanoseconds by the names the core's example gives.
fn core_times() -> Result<BTreeMap<String, f64>> {
    let words = ["run", "--locked", "--release", "--quiet", "-p", "washpath-core", "--example", "speed"];
    figures(&output(&mut cargo(&words))?)
}

/// Milliseconds by the names `tests/browser/speed.js` gives; it looks at what was built last.
fn browser_times() -> Result<BTreeMap<String, f64>> {
    let tests = workspace::browser_tests();
    ensure!(tests.join("node_modules").exists(), "the browser tests are not installed: run `test` once");
    let mut node = program("node", &tests);
    node.env("PKG_SCRIPTS", workspace::program()?);
    figures(&output(node.arg("speed.js"))?)
}

/// Figures by name, from lines of both with a tab between.
pub(crate) fn figures(text: &str) -> Result<BTreeMap<String, f64>> {
    let lines = text.lines().filter_map(|line| line.split_once('\t'));
    lines.map(|(name, time)| Ok((name.to_owned(), time.parse()?))).collect()
}

pub(crate) fn output(command: &mut Process) -> Result<String> {
    let output = command.output().with_context(|| format!("cannot start {command:?}"))?;
    let said = String::from_utf8_lossy(&output.stderr);
    ensure!(output.status.success(), "{}", said.trim().lines().last().unwrap_or("it failed without a word"));
    Ok(String::from_utf8(output.stdout)?)
}

pub(crate) fn row(title: &str, figure: &str, budget: &str) {
    println!("{title:<42} {figure:>12}   {budget}");
}

fn duration(nanoseconds: f64) -> String {
    match nanoseconds {
        ns if ns < 1e3 => format!("{ns:.0} ns"),
        ns if ns < 1e6 => format!("{:.1} us", ns / 1e3),
        ns => format!("{:.2} ms", ns / 1e6),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn durations_have_a_fitting_unit() {
        assert_eq!([120.4, 1_500.0, 2_340_000.0].map(duration), ["120 ns", "1.5 us", "2.34 ms"]);
    }
}
