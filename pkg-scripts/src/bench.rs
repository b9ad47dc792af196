//! How fast the core is and how large the page, against the budgets.

use std::collections::BTreeMap;
use std::process::Command as Process;

use anyhow::{Context, Result, ensure};

use crate::process::{cargo, program};
use crate::size::{self, Size};
use crate::{Command, pack, workspace};

pub(crate) const COMMAND: Command = Command {
    name: "bench",
    summary: "measure speed and size against the budgets",
    help: "
Compiles the core as it ships, times its sums on one processor, and, where
python3 has NumPy, the same sums there in the same run. Prints a table of
figures and budgets. Sizes are those of what was built last.
",
    run: |words| {
        crate::no_words(words)?;
        bench()
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

/// Budgets of the design: times as fast as NumPy, times the arithmetic limit,
/// milliseconds for what one frame of a drag computes.
const FASTER_THAN_NUMPY: f64 = 8.0;
const WITHIN_LIMIT: f64 = 3.0;
const FRAME_MS: f64 = 8.0;

/// Budgets in milliseconds: natively, and in the browser, where code may take 2.5 times as long.
const REPORT_MS: f64 = 50.0;
const RECIPES_MS: f64 = 60.0 / 2.5;
const CHOICE_MS: f64 = 3000.0 / 2.5;

fn bench() -> Result<()> {
    let times = core_times()?;
    let time = |name: &str| times.get(name).copied().with_context(|| format!("no figure \"{name}\""));
    println!();
    for (name, title) in FIGURES {
        row(title, &duration(time(name)?), "");
    }
    let mix = time("mix to Lab")?;
    match numpy_time() {
        Ok(numpy) => {
            row("the same mix in NumPy, float32", &duration(numpy), "");
            let budget = format!("at least {FASTER_THAN_NUMPY}");
            row("mix, times as fast as NumPy", &format!("{:.1}", numpy / mix), &budget);
        }
        Err(error) => row("the same mix in NumPy, float32", "not measured", &format!("{error:#}")),
    }
    let over = mix / time("arithmetic limit")?;
    row("mix, times the arithmetic limit", &format!("{over:.1}"), &format!("at most {WITHIN_LIMIT}"));
    let frame = time("path")? + time("sheet")? + time("crossing")?;
    row(
        "path, crossing and sheet, one frame",
        &duration(frame),
        &format!("under {FRAME_MS} ms, drawing included"),
    );
    row(
        "full report on 15 paints",
        &duration(time("report on 15 paints")?),
        &format!("under {REPORT_MS} ms"),
    );
    row(
        "best 12 of 120 for 500 colours",
        &duration(time("best 12 of 120 for 500 colours")?),
        &format!("under {CHOICE_MS} ms here, 3 s in the browser"),
    );
    let recipes = time("reach of 15 paints")? + time("recipes of 15 paints")?;
    row(
        "recipes, all sets of 15 paints",
        &duration(recipes),
        &format!("under {RECIPES_MS} ms here, 60 ms in the browser"),
    );
    sizes();
    Ok(())
}

fn sizes() {
    let budget = |bytes: usize, unit: &str| format!("under {bytes}{unit}");
    if let Ok(size) = Size::of(&workspace::packed()) {
        row("single file", &size.to_string(), &budget(pack::FILE_BUDGET, ""));
    }
    if let Ok(size) = size::first_load() {
        row("hosted first load", &size.to_string(), &budget(pack::SITE_BUDGET, " after gzip"));
    }
}

/// Nanoseconds by the names the core's example gives.
fn core_times() -> Result<BTreeMap<String, f64>> {
    let words = ["run", "--locked", "--release", "--quiet", "-p", "washpath-core", "--example", "speed"];
    let text = output(&mut cargo(&words))?;
    let lines = text.lines().filter_map(|line| line.split_once('\t'));
    lines.map(|(name, time)| Ok((name.to_owned(), time.parse()?))).collect()
}

fn numpy_time() -> Result<f64> {
    let script = workspace::root().join("pkg-scripts/reference/mix.py");
    let mut python = program("python3", workspace::root());
    // One processor, as the core has.
    python.env("OPENBLAS_NUM_THREADS", "1").env("OMP_NUM_THREADS", "1").env("MKL_NUM_THREADS", "1");
    Ok(output(python.arg(script))?.trim().parse()?)
}

fn output(command: &mut Process) -> Result<String> {
    let output = command.output().with_context(|| format!("cannot start {command:?}"))?;
    let said = String::from_utf8_lossy(&output.stderr);
    ensure!(output.status.success(), "{}", said.trim().lines().last().unwrap_or("it failed without a word"));
    Ok(String::from_utf8(output.stdout)?)
}

fn row(title: &str, figure: &str, budget: &str) {
    println!("{title:<40} {figure:>14}   {budget}");
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
