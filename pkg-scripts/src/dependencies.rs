//! What others wrote and the program or its tests use: licences, bans, sources, known vulnerabilities.

use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

use anyhow::{Context, Result, anyhow, bail};
use serde_json::Value;
use spdx::{Expression, ParseMode};

use crate::check::Skipped;
use crate::process::{cargo, program, run, succeeds};
use crate::workspace;

/// The rules, for cargo-deny and for [`licences`].
const RULES: &str = "pkg-scripts/deny.toml";

/// Licences that do for npm packages besides: these are run and never handed out.
const FOR_TESTS: [&str; 4] = ["0BSD", "BSD-2-Clause", "BlueOak-1.0.0", "MPL-2.0"];

/// npm packages that state no licence where it is looked for, and what their own text of it is.
const READ: [(&str, &str); 1] = [("node_modules/parse-cache-control", "BSD-3-Clause")];

/// A package and the licence it states.
type Stated = (String, Option<String>);

/// Fails where a package's licence does not do, whether cargo or npm fetched it.
pub(crate) fn licences() -> Result<()> {
    let allowed = allowed()?;
    let crates = crates()?;
    let mut faults = refused(&crates, |licence| allowed.iter().any(|known| known == licence));
    let packages = packages();
    let packages = packages.iter().map(|folder| node_packages(folder)).collect::<Result<Vec<_>>>()?.concat();
    faults.extend(refused(&packages, |licence| {
        FOR_TESTS.contains(&licence) || allowed.iter().any(|known| known == licence)
    }));
    if !faults.is_empty() {
        bail!("licences that {RULES} does not allow:\n{}", faults.join("\n"));
    }
    println!("{} crates and {} npm packages have licences that are allowed", crates.len(), packages.len());
    Ok(())
}

fn allowed() -> Result<Vec<String>> {
    let text = fs::read_to_string(workspace::root().join(RULES)).context(RULES)?;
    let rules: toml::Table = text.parse().context(RULES)?;
    let list = rules.get("licenses").and_then(|licences| licences.get("allow"));
    let list = list.and_then(toml::Value::as_array).with_context(|| format!("{RULES} allows no licences"))?;
    Ok(list.iter().filter_map(|licence| licence.as_str().map(str::to_owned)).collect())
}

fn crates() -> Result<Vec<Stated>> {
    let metadata = json(&mut cargo(&["metadata", "--locked", "--format-version", "1"]))?;
    let packages = metadata["packages"].as_array().context("cargo metadata lists no packages")?;
    Ok(packages.iter().map(|package| stated(package["name"].as_str().unwrap_or_default(), package)).collect())
}

/// The folders with npm packages.
fn packages() -> [PathBuf; 3] {
    [workspace::build_packages(), workspace::browser_tests(), workspace::start_tests()]
}

fn node_packages(folder: &Path) -> Result<Vec<Stated>> {
    let lock = fs::read(folder.join("package-lock.json")).context("package-lock.json")?;
    let lock: Value = serde_json::from_slice(&lock).context("package-lock.json")?;
    let packages = lock["packages"].as_object().context("package-lock.json lists no packages")?;
    let known =
        |place: &str| READ.iter().find(|(name, _)| *name == place).map(|(_, text)| (*text).to_owned());
    let stated = packages.iter().map(|(place, package)| stated(place, package));
    Ok(stated.map(|(place, licence)| (place.clone(), licence.or_else(|| known(&place)))).collect())
}

fn stated(name: &str, package: &Value) -> Stated {
    (name.to_owned(), package["license"].as_str().map(str::to_owned))
}

/// Packages of which no choice their licence leaves is known, one a line.
fn refused(packages: &[Stated], is_known: impl Fn(&str) -> bool) -> Vec<String> {
    let does = |licence: &str| {
        // Older crates write a slash for "or".
        Expression::parse_mode(licence, ParseMode::LAX)
            .is_ok_and(|expression| expression.evaluate(|wanted| is_known(&wanted.to_string())))
    };
    let faults = packages.iter().filter(|(_, licence)| !licence.as_deref().is_some_and(does));
    faults
        .map(|(name, licence)| format!("  {name}: {}", licence.as_deref().unwrap_or("none stated")))
        .collect()
}

/// Runs cargo-deny's rules that need no network.
pub(crate) fn rules() -> Result<()> {
    need_deny()?;
    run(deny("check").args(["--hide-inclusion-graph", "licenses", "bans", "sources"]))
}

/// Asks the advisories on crates, where their database can be had.
pub(crate) fn advisories() -> Result<()> {
    need_deny()?;
    if !succeeds(deny("fetch").arg("db")) {
        return Err(skipped("the database of advisories cannot be fetched here"));
    }
    run(deny("check").arg("advisories"))
}

fn deny(verb: &str) -> Command {
    cargo(&["deny", "--locked", "--config", RULES, verb])
}

fn need_deny() -> Result<()> {
    if succeeds(&mut cargo(&["deny", "--version"])) {
        return Ok(());
    }
    Err(skipped("cargo-deny is not installed: `cargo install --locked cargo-deny`"))
}

/// Asks npm's registry what is known of the packages of build and tests; fails from "high" on.
pub(crate) fn audit() -> Result<()> {
    packages().iter().try_for_each(|folder| audit_of(folder))
}

fn audit_of(folder: &Path) -> Result<()> {
    let report = json(program("npm", folder).args(["audit", "--json"]))?;
    let Some(found) = report["metadata"]["vulnerabilities"].as_object() else {
        return Err(skipped("npm's registry answers no audit here"));
    };
    let count = |grade: &str| found.get(grade).and_then(Value::as_u64).unwrap_or(0);
    let grave = count("high") + count("critical");
    if grave > 0 {
        bail!("{grave} grave vulnerabilities: `npm audit` in {} names them", folder.display());
    }
    println!("{}: no grave vulnerability is known, and {} of lesser grade", folder.display(), count("total"));
    Ok(())
}

/// What a program prints as JSON, whether or not it calls that a success.
fn json(command: &mut Command) -> Result<Value> {
    let output = command.output().with_context(|| format!("cannot start {:?}", command.get_program()))?;
    serde_json::from_slice(&output.stdout)
        .map_err(|_| anyhow!("{}", String::from_utf8_lossy(&output.stderr).trim().to_owned()))
}

fn skipped(reason: &str) -> anyhow::Error {
    Skipped(reason.to_owned()).into()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_licence_must_leave_a_choice_that_is_known() {
        let packages = [
            "MIT OR Apache-2.0",
            "Unlicense/MIT",
            "(MIT OR Apache-2.0) AND Unicode-3.0",
            "Apache-2.0 WITH LLVM-exception OR GPL-2.0-only",
            "MIT AND GPL-3.0-only",
            "GPL-2.0-or-later",
            "Apache-2.0 WITH Classpath-exception-2.0",
            "as you like",
        ];
        let packages = packages.map(|licence| (licence.to_owned(), Some(licence.to_owned())));
        let allowed = allowed().unwrap();
        let faults = refused(&packages, |licence| allowed.iter().any(|known| known == licence));
        let wanted = packages[4..].iter().map(|(licence, _)| format!("  {licence}: {licence}"));
        assert_eq!(faults, wanted.collect::<Vec<_>>());
        assert_eq!(refused(&[("x".into(), None)], |_| true), ["  x: none stated"]);
    }
}
