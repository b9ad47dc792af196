use super::*;
use crate::colour::{chroma, hue_angle, lab_of_rgb};

fn p3_of(lab: Lab) -> [f32; 3] {
    let (linear, _) = p3(Xyz::from_color_unclamped(lab));
    let rgb = DisplayP3::<f32>::from_linear(linear);
    [rgb.red, rgb.green, rgb.blue]
}

fn lab_of_p3(rgb: [f32; 3]) -> Lab {
    Lab::from_color_unclamped(DisplayP3::<f32>::from(rgb))
}

fn near(found: [f32; 3], wanted: [f32; 3]) {
    for (found, wanted) in found.into_iter().zip(wanted) {
        assert!((found - wanted).abs() < 2e-4, "{found}, not {wanted}");
    }
}

/// W3C, CSS Color 4: sRGB colours in Display P3; colour-science 0.4.7 gives the same to 3e-4.
#[test]
fn srgb_colours_have_the_published_p3_coordinates() {
    near(p3_of(lab_of_rgb([255, 0, 0])), [0.917_49, 0.200_29, 0.138_56]);
    near(p3_of(lab_of_rgb([0, 0x99, 0])), [0.263_74, 0.590_85, 0.164_34]);
    near(p3_of(lab_of_rgb([0, 128, 0])), [0.216_04, 0.494_18, 0.131_51]);
}

/// Columns of the matrix from linear Display P3 to XYZ (CSS Color 4; the same in colour-science 0.4.7).
#[test]
fn the_corners_of_p3_are_shown_exactly() {
    let corners = [
        ([0.486_571, 0.228_975, 0.0], "color(display-p3 1.0000 0.0000 0.0000)"),
        ([0.265_668, 0.691_739, 0.045_113], "color(display-p3 0.0000 1.0000 0.0000)"),
    ];
    for ([x, y, z], css) in corners {
        let shown = shown_on(Lab::from_color_unclamped(Xyz::<D65, f32>::new(x, y, z)), Display::P3);
        assert!(shown.exact, "{css}");
        let wanted: Vec<f32> = css.split([' ', ')']).filter_map(|word| word.parse().ok()).collect();
        near(shown.p3.unwrap(), [wanted[0], wanted[1], wanted[2]]);
    }
}

#[test]
fn what_p3_holds_comes_back() {
    for code in 0..11 * 11 * 11 {
        let rgb = [code % 11, code / 11 % 11, code / 121].map(|v| v as f32 / 10.0);
        let lab = lab_of_p3(rgb);
        let shown = shown_on(lab, Display::P3);
        assert!(shown.exact, "{rgb:?}");
        match shown.p3 {
            // Near black one step of linear light is many of the encoded one.
            Some(found) => assert!(crate::compare(lab_of_p3(found), lab).delta_e < 0.1, "{rgb:?}"),
            None => assert!(crate::compare(lab_of_rgb(shown.rgb), lab).delta_e < 1.0, "{rgb:?}"),
        }
    }
}

#[test]
fn beyond_p3_hue_stays() {
    let vivid = Lab::new(60.0, -110.0, -10.0);
    let shown = shown_on(vivid, Display::P3);
    let again = lab_of_p3(shown.p3.unwrap());
    assert!(!shown.exact);
    assert!((hue_angle(again) - hue_angle(vivid)).abs() < 0.5);
    assert!(chroma(again) > chroma(lab_of_rgb(shown.rgb)), "P3 keeps more than sRGB");
}

#[test]
fn cusps_stand_in_order_of_hue() {
    for cusps in [&SRGB_CUSPS, &P3_CUSPS] {
        assert_eq!(cusps.by_hue.len(), 6 * usize::from(Cusps::STEPS));
        for pair in cusps.by_hue.windows(2) {
            assert!(pair[1][0] > pair[0][0] && pair[1][0] - pair[0][0] < 4.0, "{pair:?}");
        }
    }
}

/// Every colour of the hue that sRGB holds, by steps of L* and C*.
#[test]
fn nothing_of_the_hue_is_nearer() {
    for degrees in (0..360).step_by(7) {
        let hue = (degrees as f32).to_radians();
        let lab = |l: f32, c: f32| Lab::new(l, c * hue.cos(), c * hue.sin());
        for (l, c) in [(20.0, 60.0), (40.0, 100.0), (60.0, 110.0), (75.0, 95.0), (86.0, 97.0), (95.0, 70.0)] {
            let shown = shown(lab(l, c));
            if shown.exact {
                continue;
            }
            let found = lab_of_rgb(shown.rgb);
            let distance = (found.l - l).hypot(chroma(found) - c);
            let mut best = f32::INFINITY;
            for grid_l in 0..=100 {
                for grid_c in 0..=110 {
                    let (grid_l, grid_c) = (grid_l as f32, grid_c as f32);
                    if displayable(srgb(Xyz::from_color_unclamped(lab(grid_l, grid_c))).1) {
                        best = best.min((grid_l - l).hypot(grid_c - c));
                    }
                }
            }
            // Sides bend a little; bytes and the grid round.
            assert!(distance < 1.08 * best + 1.5, "h {degrees}, L* {l}, C* {c}: {distance}, not {best}");
        }
    }
}

/// Steps of colour beyond the display make steps on it that are not much larger.
#[test]
fn what_is_shown_runs_smoothly() {
    for degrees in (0..720).map(|half| half as f32 / 2.0) {
        let hue = degrees.to_radians();
        let mut last: Option<Lab> = None;
        for step in 0..400 {
            // From black by a point far outside to white.
            let (l, c) = (step as f32 / 4.0, 130.0 * (step as f32 / 400.0 * std::f32::consts::PI).sin());
            let rgb = held(Lab::new(l, c * hue.cos(), c * hue.sin()), srgb, &SRGB_CUSPS).0;
            let now = Lab::from_color_unclamped(rgb);
            if let Some(last) = last {
                let apart =
                    ((now.l - last.l).powi(2) + (now.a - last.a).powi(2) + (now.b - last.b).powi(2)).sqrt();
                assert!(apart < 4.0, "h {degrees}, L* {l}: {apart}");
            }
            last = Some(now);
        }
    }
}

#[test]
fn no_number_spoils_the_css() {
    for odd in [f32::NAN, f32::INFINITY, f32::MIN] {
        let css = shown_on(Lab::new(50.0, odd, odd), Display::P3).css();
        assert!(css.starts_with('#') || css.starts_with("color(display-p3 0"), "{css}");
    }
}

#[test]
fn css_of_any_display_is_hex() {
    assert_eq!(shown(lab_of_rgb([0xa1, 0xb2, 0xc3])).css(), "#a1b2c3");
}
