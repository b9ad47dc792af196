//! How the hosted page starts on a phone, as Lighthouse sees it.

use anyhow::{Context, Result};

use crate::bench::{figures, judged, output, row};
use crate::process::program;
use crate::{tools, workspace};

/// Scores from 0 to 1 and their budgets: at least so much.
const SCORES: [(&str, f64); 3] = [("performance", 0.95), ("accessibility", 1.0), ("best practices", 1.0)];

/// Figures of the design, with decimals and unit: at most so much.
const FIGURES: [(&str, f64, usize, &str); 3] =
    [("layout shift", 0.02, 4, ""), ("largest paint", 1800.0, 0, " ms"), ("blocked", 100.0, 0, " ms")];

/// Visits the page that was built last and prints a table of figures, verdicts and budgets.
pub(crate) fn start() -> Result<()> {
    let folder = workspace::start_tests();
    for packages in [&workspace::browser_tests(), &folder] {
        tools::need_node_packages(packages)?;
    }
    let browser = tools::need_browser()?;
    let mut node = program("node", &folder);
    node.env("PKG_SCRIPTS", workspace::program()?).env("CHROMIUM", browser.chromium);
    let found = figures(&output(node.arg("start.js"))?)?;
    let figure = |name: &str| found.get(name).copied().with_context(|| format!("no figure \"{name}\""));
    for (name, least) in SCORES {
        let value = figure(name)?;
        row(name, &format!("{value:.2}"), &judged(value >= least, &format!("at least {least}")));
    }
    for (name, most, decimals, unit) in FIGURES {
        let value = figure(name)?;
        row(
            name,
            &format!("{value:.decimals$}{unit}"),
            &judged(value <= most, &format!("at most {most}{unit}")),
        );
    }
    row("first paint", &format!("{:.0} ms", figure("first paint")?), "");
    Ok(())
}
