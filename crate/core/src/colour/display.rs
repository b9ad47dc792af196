//! What a display can show, and what a page tells it.
//!
//! Spaces, matrices and curves are the `palette` crate's: sRGB (IEC
//! 61966-2-1) and Display P3 as CSS Color 4 has it, both under D65.
//!
//! What a display does not hold is shown as the nearest it has of the same
//! hue, distances measured in the plane of L* and C* (hue-preserving clipping
//! by the least ΔE*ab: CIE 156:2004, from memory). Taking chroma off at the same L* made
//! bright yellows dull, as sRGB has its vivid yellows only in a narrow range
//! of L*, and a pure paint duller than its mix with a darker one.

use palette::convert::{FromColorUnclamped, IntoColorUnclamped};
use palette::rgb::{DisplayP3, LinDisplayP3};
use palette::white_point::D65;
use palette::{Lch, LinSrgb, Srgb, Xyz};
use std::sync::LazyLock;

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
    /// sRGB, 0 to 255; the nearest it has of this hue.
    pub rgb: [u8; 3],
    /// Display P3, 0 to 1, where the display has it and sRGB does not hold the colour.
    pub p3: Option<[f32; 3]>,
    /// Whether the display holds the colour; else this is the nearest of its hue.
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

/// The colour on any display, or the nearest of its hue where sRGB does not hold it.
#[must_use]
#[inline(never)]
pub fn shown(lab: Lab) -> Shown {
    let (linear, exact) = held(lab, srgb, &SRGB_CUSPS);
    let rgb = Srgb::<u8>::from_linear(linear);
    Shown { rgb: [rgb.red, rgb.green, rgb.blue], p3: None, exact }
}

/// The colour on a display, or the nearest of its hue where that does not hold it.
///
/// ```
/// use washpath_core::{Display, Lab, shown_on};
/// let teal = Lab::new(60.0, -55.0, -5.0);
/// assert!(!shown_on(teal, Display::Srgb).exact);
/// assert!(shown_on(teal, Display::P3).css().starts_with("color(display-p3 "));
/// assert_eq!(shown_on(Lab::new(50.0, 0.0, 0.0), Display::P3).css(), "#777777");
/// ```
#[must_use]
#[inline(never)]
pub fn shown_on(lab: Lab, display: Display) -> Shown {
    let in_srgb = shown(lab);
    if display == Display::Srgb || in_srgb.exact {
        return in_srgb;
    }
    let (linear, exact) = held(lab, p3, &P3_CUSPS);
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

/// The colour in a display's linear space, or the nearest of its hue; whether the display holds it.
#[inline(never)]
fn held<C>(lab: Lab, space: impl Fn(Xyz<D65, f32>) -> (C, [f32; 3]), cusps: &Cusps) -> (C, bool) {
    let lch = Lch::<D65, f32>::from_color_unclamped(lab);
    let at = |[l, c]: [f32; 2]| space(Xyz::from_color_unclamped(Lch::<D65, f32>::new(l, c, lch.hue)));
    let far = [lch.l, lch.chroma];
    let (whole, channels) = at(far);
    if displayable(channels) {
        return (whole, true);
    }
    let near = cusps.within(far, lch.hue.into_positive_degrees());
    // 12 halvings leave less than one step of 255.
    let between = |share: f32| [0, 1].map(|i| near[i] + share * (far[i] - near[i]));
    let (mut inside, mut outside) = (0.0, 1.0);
    for _ in 0..12 {
        let middle = 0.5 * (inside + outside);
        if displayable(at(between(middle)).1) { inside = middle } else { outside = middle }
    }
    (at(between(inside)).0, false)
}

/// The most vivid colours of a display, one for each hue: they stand on the edges of its cube from
/// red by yellow, green, cyan, blue and magenta back to red.
///
/// With black and white each spans a triangle in the plane of L* and C*, which is the display's
/// slice of this hue but for a little bend of the sides.
struct Cusps {
    /// `[h, L*, C*]`, ordered by h in degrees.
    by_hue: Vec<[f32; 3]>,
}

static SRGB_CUSPS: LazyLock<Cusps> =
    LazyLock::new(|| Cusps::new(|[r, g, b]| Srgb::<f32>::new(r, g, b).into_color_unclamped()));
static P3_CUSPS: LazyLock<Cusps> =
    LazyLock::new(|| Cusps::new(|[r, g, b]| DisplayP3::<f32>::new(r, g, b).into_color_unclamped()));

impl Cusps {
    /// So many colours on each edge: hues less than 4 degrees apart.
    const STEPS: u8 = 64;

    fn new(lch: impl Fn([f32; 3]) -> Lch<D65, f32>) -> Self {
        let mut by_hue = Vec::new();
        for channel in 0..3 {
            // One channel full and the next rising; then that full and the first falling.
            for (full, between, rising) in
                [(channel, (channel + 1) % 3, true), ((channel + 1) % 3, channel, false)]
            {
                for step in 0..Self::STEPS {
                    let part = f32::from(step) / f32::from(Self::STEPS);
                    let mut rgb = [0.0; 3];
                    rgb[full] = 1.0;
                    rgb[between] = if rising { part } else { 1.0 - part };
                    let cusp = lch(rgb);
                    by_hue.push([cusp.hue.into_positive_degrees(), cusp.l, cusp.chroma]);
                }
            }
        }
        // Hue rises along all edges; only where it passes 360 does it begin anew.
        let first = by_hue.windows(2).position(|pair| pair[1][0] < pair[0][0]);
        by_hue.rotate_left(first.map_or(0, |before| before + 1));
        Self { by_hue }
    }

    /// L* and C* of the most vivid colour of a hue in degrees, 0 to 360.
    fn of(&self, hue: f32) -> [f32; 2] {
        let count = self.by_hue.len();
        let next = self.by_hue.partition_point(|cusp| cusp[0] <= hue);
        let (before, after) = (self.by_hue[(next + count - 1) % count], self.by_hue[next % count]);
        let width = (after[0] - before[0]).rem_euclid(360.0);
        let part = if width > 0.0 { (hue - before[0]).rem_euclid(360.0) / width } else { 0.0 };
        [1, 2].map(|i| before[i] + part * (after[i] - before[i]))
    }

    /// Where a colour `[L*, C*]` beyond the display is headed: square to the nearer side of its hue's triangle, as
    /// far as the cusp's L*, all of which the display holds.
    fn within(&self, far: [f32; 2], hue: f32) -> [f32; 2] {
        let [l, c] = self.of(hue);
        let [from_black, from_white] = [0.0, 100.0].map(|end| Side { end, run: [l - end, c] });
        let side = if from_black.distance(far) < from_white.distance(far) { from_black } else { from_white };
        let part = side.part(far).clamp(0.0, 1.0);
        [l, (part * c - (1.0 - part) * side.run[0] * side.run[0] / c).max(0.0)]
    }
}

/// A side of a hue's triangle: from L* of black or white at C* 0 by `run` to the cusp.
#[derive(Clone, Copy)]
struct Side {
    end: f32,
    run: [f32; 2],
}

impl Side {
    /// How far along the side its point nearest to another stands: 0 at the axis, 1 at the cusp; beyond, outside it.
    fn part(self, [l, c]: [f32; 2]) -> f32 {
        let [run_l, run_c] = self.run;
        ((l - self.end) * run_l + c * run_c) / (run_l * run_l + run_c * run_c)
    }

    /// The square of the distance to its nearest point.
    fn distance(self, point: [f32; 2]) -> f32 {
        let part = self.part(point).clamp(0.0, 1.0);
        (self.end + part * self.run[0] - point[0]).powi(2) + (part * self.run[1] - point[1]).powi(2)
    }
}

/// Half a step of 255 beyond the cube still rounds into it.
fn displayable(channels: [f32; 3]) -> bool {
    const SLACK: f32 = 2e-4;
    channels.iter().all(|value| (-SLACK..=1.0 + SLACK).contains(value))
}

#[cfg(test)]
#[path = "display_tests.rs"]
mod tests;
