//! Colours as numbers: CIELAB to read out, CAM16-UCS for the wheel, RGB to show.
//!
//! All conversions are the `palette` crate's. A colour seen in another light
//! than D65 is first scaled to the light's own white, so L* = 100 always is
//! the perfect white in the light at hand.

pub(crate) mod cells;
pub(crate) mod difference;
pub(crate) mod display;
pub(crate) mod ellipsoid;
pub(crate) mod enclosure;
pub(crate) mod gamut;
pub mod hue;
pub(crate) mod naming;
pub mod notation;
pub(crate) mod outline;

pub use naming::describe;
use palette::cam16::{BakedParameters, Cam16Jmh, Cam16UcsJab, Parameters, StaticWp};
use palette::color_difference::Ciede2000;
use palette::white_point::D65;
// The unclamped conversions: what no display holds must not be cut off on the way.
use palette::convert::{FromColorUnclamped, IntoColorUnclamped};
use palette::{Srgb, Xyz};
use std::sync::LazyLock;
use wide::f32x4;

use crate::numeric::cube_root::cube_roots;

/// CIELAB: L* 0 to 100, a* and b* about -128 to 127 for surface colours.
pub type Lab<F = f32> = palette::Lab<D65, F>;

/// CIELAB from tristimulus values and those of the white they stand under.
#[must_use]
pub fn lab(xyz: [f64; 3], white: [f64; 3]) -> Lab<f64> {
    scaled(xyz, white).into_color_unclamped()
}

/// The same in `f32` from X, Y and Z as parts of white's, as fast as a search needs it.
///
/// Three cube roots of the standard library take as long as all bands of a film.
///
/// Called and not copied to wherever a colour is asked for.
#[inline(never)]
pub(crate) fn lab_of_ratios(ratios: f32x4) -> Lab {
    // CIE 15:2018, 8.2.1.
    const FOOT: f32 = 216.0 / 24389.0;
    const SLOPE: f32 = 24389.0 / 27.0 / 116.0;
    let foot = ratios * SLOPE + 16.0 / 116.0;
    let [x, y, z, _] = ratios.simd_gt(f32x4::splat(FOOT)).select(cube_roots(ratios), foot).to_array();
    Lab::new(116.0 * y - 16.0, 500.0 * (x - y), 200.0 * (y - z))
}

fn scaled(xyz: [f64; 3], white: [f64; 3]) -> Xyz<D65, f64> {
    let [x, y, z] = [0, 1, 2].map(|i| xyz[i] / white[i]);
    Xyz::new(x * D65_WHITE[0], y, z * D65_WHITE[2])
}

/// The white point `palette` calls D65, Y = 1.
const D65_WHITE: [f64; 3] = [0.95047, 1.0, 1.08883];

/// Chroma C*: distance from neutral, 0 to about 130 for paints.
#[must_use]
pub fn chroma(lab: Lab) -> f32 {
    // No colour is so far out that squares overflow; a call of `hypot` takes many times as long.
    (lab.a * lab.a + lab.b * lab.b).sqrt()
}

/// Hue angle h in degrees, 0 to below 360; of no meaning near neutral.
#[must_use]
pub fn hue_angle(lab: Lab) -> f32 {
    let degrees = lab.b.atan2(lab.a).to_degrees();
    if degrees < 0.0 { degrees + 360.0 } else { degrees }
}

/// Colour difference CIEDE2000 with all weights 1; about 1 is just seen.
#[must_use]
pub fn ciede2000(a: Lab<f64>, b: Lab<f64>) -> f64 {
    a.difference(b)
}

/// The same in `f32`.
#[must_use]
pub fn delta_e(a: Lab, b: Lab) -> f32 {
    a.difference(b)
}

/// Wheel radius (CAM16-UCS M') at the rim; the brightest paints reach 43.
pub const RIM: f32 = 46.0;

/// A point of the wheel: CAM16-UCS.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct WheelPoint {
    /// To the right, towards red-violet.
    pub x: f32,
    /// Upwards, towards yellow.
    pub y: f32,
    /// Lightness J', 0 to 100.
    pub lightness: f32,
}

impl WheelPoint {
    /// Distance from neutral, M'; up to about 50 for paints.
    #[must_use]
    pub fn radius(self) -> f32 {
        (self.x * self.x + self.y * self.y).sqrt()
    }

    /// Hue angle in degrees, counter-clockwise from the right, 0 to below 360.
    #[must_use]
    pub fn angle(self) -> f32 {
        let degrees = self.y.atan2(self.x).to_degrees();
        if degrees < 0.0 { degrees + 360.0 } else { degrees }
    }
}

/// Adapting luminance of the wheel's viewing conditions, cd/m²: a white page
/// at 320 lx, 64 / π × 0.2 as sRGB's own conditions have it, average surround.
const ADAPTING_LUMINANCE: f32 = 64.0 / std::f32::consts::PI * 0.2;

static VIEWING: LazyLock<BakedParameters<StaticWp<D65>, f32>> =
    LazyLock::new(|| Parameters::default_static_wp(ADAPTING_LUMINANCE).bake());

/// Where a colour stands on the wheel.
#[must_use]
pub fn wheel(lab: Lab) -> WheelPoint {
    let cam = Cam16Jmh::from_xyz(Xyz::from_color_unclamped(lab), *VIEWING);
    let ucs = Cam16UcsJab::from_color_unclamped(cam);
    let finite = |value: f32| if value.is_finite() { value } else { 0.0 };
    WheelPoint { x: finite(ucs.a), y: finite(ucs.b), lightness: finite(ucs.lightness) }
}

/// The colour of this L* that stands at a point of the wheel's plane, or as near as a few steps come.
///
/// The wheel's hue is nearly CIELAB's and its radius grows with C*, so a secant
/// on both settles at once.
///
/// ```
/// use washpath_core::{Lab, colour::{at_wheel_point, wheel}};
/// let point = wheel(Lab::new(50.0, 20.0, -30.0));
/// let back = at_wheel_point(50.0, point.x, point.y);
/// assert!((back.a - 20.0).abs() < 0.1 && (back.b + 30.0).abs() < 0.1);
/// ```
#[must_use]
pub fn at_wheel_point(lightness: f32, x: f32, y: f32) -> Lab {
    const STEPS: usize = 24;
    let (mut a, mut b) = (2.0 * x, 2.0 * y);
    for _ in 0..STEPS {
        let found = wheel(Lab::new(lightness, a, b));
        // How far CIELAB goes for a unit of the wheel, here.
        let scale = (a.hypot(b) / found.radius().max(1.0)).clamp(0.5, 4.0);
        a += scale * (x - found.x);
        b += scale * (y - found.y);
    }
    Lab::new(lightness, a, b)
}

/// CIELAB of an sRGB colour of three bytes.
#[must_use]
pub fn lab_of_rgb(rgb: [u8; 3]) -> Lab {
    Lab::from_color_unclamped(Srgb::<u8>::from(rgb).into_format::<f32>())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_fast_lab_is_the_exact_one() {
        for step in 0..=4000 {
            // From deep in the straight foot to twice white.
            let y = 1e-5 * 1.003_06f64.powi(step);
            let ratios = [0.8 * y, y, 1.3 * y];
            let [x, _, z] = ratios;
            let exact = lab([x * D65_WHITE[0], y, z * D65_WHITE[2]], D65_WHITE);
            let fast = lab_of_ratios(f32x4::from([x as f32, y as f32, z as f32, 0.0]));
            for (fast, exact) in [(fast.l, exact.l), (fast.a, exact.a), (fast.b, exact.b)] {
                assert!((f64::from(fast) - exact).abs() < 3e-4, "{fast} against {exact} at {y}");
            }
        }
    }
}
