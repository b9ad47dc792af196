//! What the painter looks through: paper and light, and the display it is shown on.

use palette::convert::IntoColorUnclamped;
use palette::rgb::DisplayP3;
use palette::{LinSrgb, Srgb};
use washpath_core::colour::{WheelPoint, wheel};
use washpath_core::{Display, Lab, Shown, View, shown_on};

use crate::swatch::Swatch;

/// A view on a display.
pub(crate) struct Sight {
    pub view: View,
    pub display: Display,
}

impl Sight {
    pub(crate) fn shown(&self, lab: Lab) -> Shown {
        shown_on(lab, self.display)
    }

    /// CSS colour.
    pub(crate) fn css(&self, lab: Lab) -> String {
        self.shown(lab).css()
    }

    /// Point of the wheel and CSS colour.
    pub(crate) fn spot(&self, lab: Lab) -> (WheelPoint, String) {
        (wheel(lab), self.css(lab))
    }

    /// In linear light of the display's own space, 0 to 1.
    pub(crate) fn linear(&self, lab: Lab) -> LinSrgb<f32> {
        let shown = self.shown(lab);
        // Display P3 has sRGB's curve, so its channels may pass through the same arithmetic.
        let encoded = match (self.display, shown.p3) {
            (Display::Srgb, _) => Srgb::from(shown.rgb).into_format(),
            (Display::P3, Some([r, g, b])) => Srgb::new(r, g, b),
            (Display::P3, None) => {
                let p3: DisplayP3<f32> = Srgb::from(shown.rgb).into_format::<f32>().into_color_unclamped();
                Srgb::new(p3.red, p3.green, p3.blue)
            }
        };
        encoded.into_linear()
    }

    pub(crate) fn swatch(&self, lab: Lab) -> Swatch {
        Swatch::new(lab, &self.shown(lab))
    }
}
