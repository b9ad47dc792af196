//! How well the model predicts, measured against data it was not fitted to.

mod learning;
mod mixtures;
mod neutrals;
pub(crate) mod plot;
mod report;
mod shelf;
mod sureness;
mod table;

use anyhow::{Result, bail};

use crate::Command;

pub(crate) const COMMAND: Command = Command {
    name: "evaluate",
    summary: "measure the model's errors against open measurements",
    help: "
evaluate mixtures --singles FILE --mixtures FILE [--learn FILE]
    fits paints to swatches of themselves and predicts their mixtures
evaluate learning --singles FILE --mixtures FILE
    records ever more mixtures and measures what they teach of the others
evaluate shelf --singles FILE --mixtures FILE
    compares the shelf's paints, as shipped, with mixtures of other makers' paints
evaluate neutrals FILE
    compares where the shelf's paints grey each other with a painter's table
evaluate report
    writes tests/report/README.md: all figures, with plots

Each of them tells more with --help.
",
    run,
};

fn run(words: &[String]) -> Result<()> {
    let Some((name, rest)) = words.split_first() else {
        bail!("evaluate what? mixtures, learning, shelf, neutrals or report; --help tells more");
    };
    let helped = rest.iter().any(|word| word == "--help" || word == "-h");
    let text = match (name.as_str(), helped) {
        ("mixtures", true) => mixtures::HELP.to_owned(),
        ("mixtures", false) => mixtures::run(rest)?,
        ("learning", true) => learning::HELP.to_owned(),
        ("learning", false) => learning::run(rest)?,
        ("neutrals", true) => neutrals::HELP.to_owned(),
        ("neutrals", false) => neutrals::run(rest)?,
        ("shelf", true) => shelf::HELP.to_owned(),
        ("shelf", false) => shelf::run(rest)?,
        ("report", true) => report::HELP.to_owned(),
        ("report", false) => report::run(rest)?,
        (other, _) => {
            bail!("no evaluation \"{other}\"; there are mixtures, learning, shelf, neutrals and report")
        }
    };
    println!("{}", text.trim());
    Ok(())
}

/// The value below which a share of the values lies, between the two nearest; NaN of none.
fn quantile(values: &[f64], share: f64) -> f64 {
    let mut sorted = values.to_vec();
    sorted.sort_by(f64::total_cmp);
    let Some(last) = sorted.len().checked_sub(1) else { return f64::NAN };
    let place = share * last as f64;
    let (low, high) = (sorted[place.floor() as usize], sorted[place.ceil() as usize]);
    low + (high - low) * place.fract()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn quantiles_stand_between_neighbours() {
        assert_eq!(quantile(&[4.0, 1.0, 3.0, 2.0], 0.5), 2.5);
        assert_eq!(quantile(&[1.0], 0.9), 1.0);
        assert!(quantile(&[], 0.5).is_nan());
    }

    #[test]
    fn unknown_evaluations_are_named() {
        let message = run(&["greys".to_owned()]).unwrap_err().to_string();
        assert!(message.contains("\"greys\""), "{message}");
        assert!(run(&[]).is_err());
    }
}
