//! What a display can show, and what a page tells it.
//!
//! Spaces, matrices and curves are the `palette` crate's: sRGB (IEC
//! 61966-2-1) and Display P3 as CSS Color 4 has it, both under D65.

use palette::convert::{FromColorUnclamped, IntoColorUnclamped};
use palette::rgb::{DisplayP3, LinDisplayP3};
use palette::white_point::D65;
use palette::{Lch, LinSrgb, Srgb, Xyz};

use crate::colour::Lab;
use crate::text::decimal::Decimal;

/// The colours a display holds.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum Display {
    /// Any display.
    #[default]
    Srgb,
    /// A wide one: Display P3, which holds sRGB.
    P3,
}

/// A colour as a display shows it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Shown {
    /// sRGB, 0 to 255; the nearest it has of this L* and h.
    pub rgb: [u8; 3],
    /// Display P3, 0 to 1, where the display has it and sRGB does not hold the colour.
    pub p3: Option<[f32; 3]>,
    /// Whether the display holds the colour; else chroma was taken off it.
    pub exact: bool,
}

impl Shown {
    /// As CSS writes it: `#rrggbb`, or `color(display-p3 r g b)` beyond sRGB.
    ///
    /// Four decimals are finer than ten bits a channel.
    #[must_use]
    pub fn css(&self) -> String {
        match self.p3 {
            Some([r, g, b]) => format!("color(display-p3 {} {} {})", Decimal(r), Decimal(g), Decimal(b)),
            None => self.hex(),
        }
    }

    /// The sRGB colour as `#rrggbb`.
    #[must_use]
    pub fn hex(&self) -> String {
        let [r, g, b] = self.rgb;
        format!("#{r:02x}{g:02x}{b:02x}")
    }
}

/// The colour on any display: chroma is reduced at constant L* and h where sRGB does not hold it.
#[must_use]
pub fn shown(lab: Lab) -> Shown {
    let (linear, exact) = held(lab, srgb);
    let rgb = Srgb::<u8>::from_linear(linear);
    Shown { rgb: [rgb.red, rgb.green, rgb.blue], p3: None, exact }
}

/// The colour on a display: chroma is reduced at constant L* and h where it does not hold it.
///
/// ```
/// use washpath_core::{Display, Lab, shown_on};
/// let teal = Lab::new(60.0, -55.0, -5.0);
/// assert!(!shown_on(teal, Display::Srgb).exact);
/// assert!(shown_on(teal, Display::P3).css().starts_with("color(display-p3 "));
/// assert_eq!(shown_on(Lab::new(50.0, 0.0, 0.0), Display::P3).css(), "#777777");
/// ```
#[must_use]
pub fn shown_on(lab: Lab, display: Display) -> Shown {
    let in_srgb = shown(lab);
    if display == Display::Srgb || in_srgb.exact {
        return in_srgb;
    }
    let (linear, exact) = held(lab, p3);
    let rgb = DisplayP3::<f32>::from_linear(linear);
    // Not clamp: CSS knows neither -0 nor NaN.
    let p3 = [rgb.red, rgb.green, rgb.blue].map(|value| if value > 0.0 { value.min(1.0) } else { 0.0 });
    Shown { p3: Some(p3), exact, ..in_srgb }
}

fn srgb(xyz: Xyz<D65, f32>) -> (LinSrgb<f32>, [f32; 3]) {
    let rgb: LinSrgb<f32> = xyz.into_color_unclamped();
    (rgb, [rgb.red, rgb.green, rgb.blue])
}

fn p3(xyz: Xyz<D65, f32>) -> (LinDisplayP3<f32>, [f32; 3]) {
    let rgb: LinDisplayP3<f32> = xyz.into_color_unclamped();
    (rgb, [rgb.red, rgb.green, rgb.blue])
}

/// The colour in a display's linear space, of as much of its chroma as fits; whether all of it does.
fn held<C>(lab: Lab, space: impl Fn(Xyz<D65, f32>) -> (C, [f32; 3])) -> (C, bool) {
    let lch = Lch::<D65, f32>::from_color_unclamped(lab);
    let at = |share: f32| {
        space(Xyz::from_color_unclamped(Lch::<D65, f32>::new(lch.l, lch.chroma * share, lch.hue)))
    };
    let (whole, channels) = at(1.0);
    if displayable(channels) {
        return (whole, true);
    }
    // 12 halvings leave less than one step of 255.
    let (mut inside, mut outside) = (0.0, 1.0);
    for _ in 0..12 {
        let middle = 0.5 * (inside + outside);
        if displayable(at(middle).1) { inside = middle } else { outside = middle }
    }
    (at(inside).0, false)
}

/// Half a step of 255 beyond the cube still rounds into it.
fn displayable(channels: [f32; 3]) -> bool {
    const SLACK: f32 = 2e-4;
    channels.iter().all(|value| (-SLACK..=1.0 + SLACK).contains(value))
}

#[cfg(test)]
mod tests {
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

    /// W3C, CSS Color 4 and its conversion tests, from memory: sRGB colours in Display P3.
    #[test]
    fn srgb_colours_have_the_published_p3_coordinates() {
        near(p3_of(lab_of_rgb([255, 0, 0])), [0.917_49, 0.200_29, 0.138_56]);
        near(p3_of(lab_of_rgb([0, 0x99, 0])), [0.263_74, 0.590_85, 0.164_34]);
        near(p3_of(lab_of_rgb([0, 128, 0])), [0.216_04, 0.494_18, 0.131_51]);
    }

    /// The columns of CSS Color 4's matrix from linear Display P3 to XYZ, from memory.
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
    fn beyond_p3_chroma_alone_gives_way() {
        let vivid = Lab::new(60.0, -110.0, -10.0);
        let shown = shown_on(vivid, Display::P3);
        let again = lab_of_p3(shown.p3.unwrap());
        assert!(!shown.exact);
        assert!((again.l - vivid.l).abs() < 0.3 && (hue_angle(again) - hue_angle(vivid)).abs() < 0.5);
        assert!(chroma(again) > chroma(lab_of_rgb(shown.rgb)), "P3 keeps more than sRGB");
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
}
