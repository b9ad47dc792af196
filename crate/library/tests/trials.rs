//! How far predictions are off, by trying known paints without their spectra.
//!
//! The bounds are a little above what was found, so that a worse method fails.

use std::sync::LazyLock;

use washpath_core::{ExpectedError, Tier};
use washpath_library::{Anchored, Trial, derive, leave_one_out, second_spectra};

static PAINTS: LazyLock<Vec<Anchored>> = LazyLock::new(|| derive().expect("whole tables"));
static LEFT_OUT: LazyLock<Vec<Trial>> = LazyLock::new(|| leave_one_out(&PAINTS).expect("whole tables"));
static SECOND: LazyLock<Vec<Trial>> = LazyLock::new(|| second_spectra(&PAINTS).expect("whole tables"));

/// Median and 90th percentile.
fn spread(values: impl Iterator<Item = f64>) -> [f64; 2] {
    let mut values: Vec<f64> = values.collect();
    values.sort_by(f64::total_cmp);
    [values[values.len() / 2], values[values.len() * 9 / 10]]
}

fn mixes(trials: &[Trial]) -> [f64; 2] {
    spread(trials.iter().flat_map(|trial| trial.mixes.iter().copied()))
}

fn assert_below(found: [f64; 2], bounds: [f64; 2]) {
    assert!(found[0] < bounds[0] && found[1] < bounds[1], "{found:.2?}, bounds {bounds:?}");
}

/// As found: 1.5 and 4.8 in mixes; 0.3, 1.6, 2.3, 2.4 alone at loads 1 to 1/8; 0.040 in R.
#[test]
fn paints_are_estimated_well_without_their_spectra() {
    assert!(LEFT_OUT.len() >= 80, "{} paints", LEFT_OUT.len());
    assert_below(mixes(&LEFT_OUT), [1.7, 5.6]);
    for (wash, bounds) in [[0.6, 2.0], [1.9, 3.8], [2.5, 5.9], [2.6, 6.0]].into_iter().enumerate() {
        assert_below(spread(LEFT_OUT.iter().map(|trial| trial.washes[wash])), bounds);
    }
    assert_below(spread(LEFT_OUT.iter().map(|trial| trial.reflectance)), [0.05, 0.11]);
}

/// As found: 1.7 and 6.5, no less than a good estimate is off.
#[test]
fn second_spectra_tell_how_sure_a_measured_paint_is() {
    assert!(SECOND.len() >= 20, "{} second spectra", SECOND.len());
    assert_below(mixes(&SECOND), [2.1, 7.5]);
}

/// A difference of two like measurements is the root of two times the error of
/// one; an estimate is off from the measured paint, which is off itself.
#[test]
fn the_tiers_errors_are_the_cross_validated_ones() {
    let one = mixes(&SECOND).map(|difference| difference / 2.0_f64.sqrt());
    let estimate = mixes(&LEFT_OUT);
    let estimate = [estimate[0].hypot(one[0]), estimate[1].hypot(one[1])];
    for (tier, found) in [(Tier::CrossChecked, one), (Tier::Measured, one), (Tier::Estimated, estimate)] {
        let ExpectedError { median, p90 } = tier.expected_error();
        for (stated, found) in [median, p90].into_iter().zip(found) {
            assert!((f64::from(stated) - found).abs() < 0.06, "{}: {stated} is {found:.2}", tier.name());
        }
    }
}

#[test]
fn errors_of_two_estimates_add_as_squares() {
    let one = mixes(&LEFT_OUT)[0];
    let two = spread(LEFT_OUT.iter().flat_map(|trial| trial.both.iter().copied()))[0];
    assert!((two / (one * 2.0_f64.sqrt()) - 1.0).abs() < 0.1, "{one:.2} alone, {two:.2} together");
}
