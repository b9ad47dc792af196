//! Colour science against published values and a reference implementation.

mod support;

use support::table;
use washpath_core::colour::{ciede2000, lab, lab_of_rgb, wheel};
use washpath_core::spectrum::{Spectrum, from_fn, wavelength};
use washpath_core::{Lab, Light, shown};

/// ColorChecker spectra through ASTM E308 to CIELAB within 0.01.
///
/// Reflectances and values from colour-science (BSD-3-Clause); both published
/// sets of the chart (Ohta 1997; BabelColor average).
#[test]
fn colour_checker_by_e308() {
    for set in ["ohta", "babel_average"] {
        let spectra = table(&format!("colorchecker_{set}_reflectance_380_730_10nm.csv"));
        let mut compared = 0;
        for row in table(&format!("a_colorchecker_{set}_e308.csv")) {
            let Some(light) = light(row.text("illuminant")) else { continue };
            if row.text("observer_deg") != "2" {
                continue;
            }
            let spectrum = spectra.iter().find(|s| s.text("patch") == row.text("patch")).unwrap();
            let reflectance: Spectrum<f64> = from_fn(|band| spectrum.number(&wavelength(band).to_string()));
            let weights = light.weights();
            let found = lab(weights.tristimulus(&reflectance), weights.white);
            for (value, column) in [(found.l, "L"), (found.a, "a"), (found.b, "b")] {
                let wanted = row.number(column);
                assert!(
                    (value - wanted).abs() < 0.01,
                    "{} {column}: {value}, not {wanted}",
                    row.text("patch")
                );
            }
            compared += 1;
        }
        assert!(compared >= 24, "{set}: {compared} patches");
    }
}

fn light(name: &str) -> Option<Light> {
    match name {
        "D65" => Some(Light::D65),
        "D50" => Some(Light::D50),
        "A" => Some(Light::A),
        "LED-B3" => Some(Light::Led),
        "FL11" => Some(Light::Fluorescent),
        _ => None,
    }
}

/// G. Sharma, W. Wu, E. Dalal, "The CIEDE2000 color-difference formula", Color
/// Research and Application 30 (2005) 21, table 1: 34 pairs, four decimals.
#[test]
fn ciede2000_of_the_published_pairs() {
    let rows = table("b_ciede2000_sharma34.csv");
    assert_eq!(rows.len(), 34);
    for row in rows {
        let found = difference(&row);
        assert!((found - row.number("dE00_published")).abs() <= 1e-4, "pair {}: {found}", row.text("pair"));
    }
}

/// 200 random pairs by colour-science; `palette` rounds some of its constants, which shows from 1e-7 to 3e-6.
#[test]
fn ciede2000_of_random_pairs() {
    for row in table("b_ciede2000_random200.csv") {
        let (found, wanted) = (difference(&row), row.number("dE00"));
        assert!((found - wanted).abs() < 1e-5, "{found}, not {wanted}");
    }
}

fn difference(row: &support::Row) -> f64 {
    let lab = |i: u8| {
        let [l, a, b] = ["L", "a", "b"].map(|name| row.number(&format!("{name}{i}")));
        Lab::<f64>::new(l, a, b)
    };
    ciede2000(lab(1), lab(2))
}

/// sRGB to CIELAB, and to the wheel's CAM16-UCS, by colour-science.
#[test]
fn srgb_to_lab_and_to_the_wheel() {
    for row in table("d_srgb_lab_oklab_cam16.csv") {
        let rgb = ["R8", "G8", "B8"].map(|name| row.number(name) as u8);
        let found = lab_of_rgb(rgb);
        for (value, column) in [(found.l, "L"), (found.a, "a"), (found.b, "b")] {
            let wanted = row.number(column);
            assert!((f64::from(value) - wanted).abs() < 0.05, "{rgb:?} {column}: {value}, not {wanted}");
        }
        assert_eq!(shown(found).rgb, rgb, "there and back");
        let point = wheel(found);
        for (value, column) in [(point.x, "ucs_a"), (point.y, "ucs_b"), (point.lightness, "ucs_J")] {
            let wanted = row.number(column);
            assert!((f64::from(value) - wanted).abs() < 0.05, "{rgb:?} {column}: {value}, not {wanted}");
        }
    }
}

#[test]
fn colours_no_display_holds_keep_their_hue() {
    let vivid = Lab::new(60.0, -90.0, -10.0);
    let shown = shown(vivid);
    assert!(!shown.exact);
    let again = lab_of_rgb(shown.rgb);
    assert!((again.b.atan2(again.a) - vivid.b.atan2(vivid.a)).abs() < 0.02);
}
