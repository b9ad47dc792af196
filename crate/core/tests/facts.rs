//! Facts of the trade about pairs of paints: common practice, no source.
//!
//! What every teacher of watercolour shows. Each is put as a bound on colour
//! that the words allow; nothing is fitted to them. What the model does not reach
//! stands in `shortfalls.rs`.

#[path = "support/pairs.rs"]
mod pairs;

use pairs::{GREY, count, crossing, masstone, mixes, paint, within};
use washpath_core::colour::{chroma, hue_angle};
use washpath_core::{Lab, Paint};

/// Asserts that most of the mixes between two paints are as the words say.
fn mostly(a: &str, b: &str, words: &str, is: impl Fn(Lab) -> bool) {
    let (right, all) = count(a, b, is);
    assert!(2 * right > all, "{a} with {b}: {right} of {all} are {words}; {:?}", mixes(a, b));
}

fn deep(lab: Lab) -> bool {
    lab.l < 40.0
}

#[test]
fn perylene_violet_and_black_run_from_green_through_grey_to_violet_all_dark() {
    let crossing = crossing("pv29", "pbk31");
    assert!(crossing.chroma <= GREY && crossing.share > 0.0 && crossing.share < 1.0, "{crossing:?}");
    assert!(mixes("pv29", "pbk31").into_iter().all(|lab| lab.l < 36.0));
}

#[test]
fn perylene_violet_and_yellow_shade_phthalo_green_give_greys() {
    assert!(crossing("pv29", "pg36").chroma <= GREY, "{:?}", crossing("pv29", "pg36"));
}

#[test]
fn perylene_violet_and_perylene_red_give_deep_burgundy() {
    mostly("pv29", "pr178", "deep burgundy", |lab| {
        deep(lab) && within(hue_angle(lab), 350.0, 40.0) && chroma(lab) > 15.0
    });
}

#[test]
fn perylene_violet_and_indanthrone_give_a_purplish_near_black() {
    let found = mixes("pv29", "pb60")
        .into_iter()
        .any(|lab| lab.l < 26.0 && chroma(lab) < 15.0 && within(hue_angle(lab), 280.0, 10.0));
    assert!(found, "{:?}", mixes("pv29", "pb60"));
}

#[test]
fn perylene_violet_and_phthalo_turquoise_give_a_very_neutral_violet() {
    let found =
        mixes("pv29", "pb16").into_iter().any(|lab| chroma(lab) < 8.0 && within(hue_angle(lab), 280.0, 10.0));
    assert!(found, "{:?}", mixes("pv29", "pb16"));
}

#[test]
fn perylene_black_gives_teals_mosses_and_forests() {
    mostly("pbk31", "pb16", "deep dark teals", |lab| deep(lab) && within(hue_angle(lab), 150.0, 235.0));
    mostly("pbk31", "py150", "mossy greens", |lab| within(hue_angle(lab), 85.0, 140.0) && chroma(lab) > 8.0);
    mostly("pbk31", "pg36", "forest greens", |lab| lab.l < 50.0 && within(hue_angle(lab), 120.0, 185.0));
}

#[test]
fn ultramarine_and_burnt_sienna_cross_grey() {
    assert!(crossing("pb29", "pbr7-burnt-sienna").chroma <= GREY);
}

#[test]
fn perylene_black_is_very_dark_very_muted_and_clearly_green() {
    let lab = masstone("pbk31");
    assert!(lab.l < 32.0 && chroma(lab) < 16.0 && chroma(lab) > 4.0, "{lab:?}");
    assert!(within(hue_angle(lab), 110.0, 190.0), "{lab:?}");
}

#[test]
fn earth_hued_quinacridones_do_not_granulate() {
    for key in ["pr206", "po49"] {
        let hue = hue_angle(masstone(key));
        assert!(within(hue, 25.0, 68.0), "{key}: h {hue}");
        assert!(paint(key).granulation.unwrap() < 2.0, "{key} granulates");
    }
}

#[test]
fn thioindigo_violet_is_not_very_lightfast() {
    assert!(paint("pr88").lightfast_tint.unwrap() < 7.0);
}

#[test]
fn many_iron_oxide_reds_are_opaque_while_other_earths_are_transparent() {
    let transparency = |key: &str| paint(key).transparency.unwrap();
    for opaque in ["pr101-light-red", "pr101-indian-red"] {
        assert!(transparency(opaque) < 2.0, "{opaque}");
    }
    for transparent in ["pr101-transparent-red", "py42-transparent"] {
        assert!(transparency(transparent) > 2.0, "{transparent}");
    }
}

/// The words the page has for a rating of 0 to 4 begin at these halves; see `texture.rs`.
fn rated(rating: fn(&Paint) -> Option<f32>, keys: &[&str], words: &str, is: impl Fn(f32) -> bool) {
    for key in keys {
        let rating = rating(paint(key)).expect("it is rated");
        assert!(is(rating), "{key} {words}, not {rating}");
    }
}

#[test]
fn what_granulates_and_what_lies_smooth() {
    let granulation = |paint: &Paint| paint.granulation;
    let grainy = ["pb29", "pb28", "pb35", "pb36", "pg18", "pv14", "pv15", "pv16", "pr233", "pbk11"];
    rated(granulation, &grainy, "granulates", |rating| rating >= 2.0);
    rated(granulation, &["pv14", "pb33", "pr233"], "granulates strongly", |rating| rating >= 3.5);
    let smooth = ["pb15-3", "pg7", "py3", "py154", "pr254", "pr122", "pv19-rose", "pv23", "pr179", "py42"];
    rated(granulation, &smooth, "lies smooth", |rating| rating < 1.0);
}

#[test]
fn what_hides_and_what_is_transparent() {
    let transparency = |paint: &Paint| paint.transparency;
    let opaque = ["pr108", "pg17", "pr101-light-red", "pr101-indian-red", "pw6", "pr101-caput-mortuum"];
    rated(transparency, &opaque, "is opaque", |rating| rating < 1.5);
    rated(transparency, &["py35-medium", "py35-light", "pb35", "pb36"], "hides in part", |rating| {
        rating < 2.5
    });
    let clear = ["pb15-3", "pg7", "pg36", "pg18", "pr179", "pv19-rose", "pr122", "py150", "pr83", "po49"];
    rated(transparency, &clear, "is transparent", |rating| rating >= 3.0);
    let white = |key: &str| paint(key).transparency.expect("it is rated");
    assert!(white("pw6") + 0.5 < white("pw4"), "titanium white hides better than zinc white");
}

#[test]
fn what_stains_and_what_lifts() {
    let staining = |paint: &Paint| paint.staining;
    let stains = ["pb15-3", "pg7", "pg36", "pb27", "pb60", "pr179", "pv19-violet", "pr254", "pv23", "pbk6"];
    rated(staining, &stains, "stains", |rating| rating >= 3.0);
    let lifts = ["pg18", "pv14", "pv15", "pv16", "pb35", "pg23", "pr233", "nr9", "py43", "pb33"];
    rated(staining, &lifts, "lifts", |rating| rating < 2.0);
}
