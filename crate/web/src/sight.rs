//! What the painter looks through: paper and light, and the display it is shown on.

use washpath_core::colour::{Shown, WheelPoint, shown_on, wheel};
use washpath_core::{Display, Lab, View};

use crate::readout::Swatch;

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

    /// Place on the wheel and CSS colour.
    pub(crate) fn spot(&self, lab: Lab) -> (WheelPoint, String) {
        (wheel(lab), self.css(lab))
    }

    pub(crate) fn swatch(&self, lab: Lab) -> Swatch {
        Swatch::new(lab, &self.shown(lab))
    }
}
