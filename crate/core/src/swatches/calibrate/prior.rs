//! What is known of a paint before its swatches.

use super::curves::Curves;
use crate::optics::spectrum::BANDS;

/// How strongly a fit is held: each number is 1 / the standard deviation in ln K or ln S.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Hold {
    /// Of a value from what is expected.
    pub level: f64,
    /// Of a step between neighbouring bands.
    pub slope: f64,
    /// Of a change of step.
    pub bend: f64,
}

/// What is known of a paint before its swatches.
#[derive(Clone, Debug, PartialEq)]
pub struct Prior {
    /// The expected curves.
    pub curves: Curves,
    /// How strongly K is held to them.
    pub k: Hold,
    /// How strongly S is held to them.
    pub s: Hold,
}

impl Prior {
    /// Nothing but that curves are smooth, S the smoother, and S about 1 at masstone.
    ///
    /// The widths are wide enough to fit swatches of several quantities to
    /// about 1 CIEDE2000; where S is not seen, 1 at masstone decides.
    #[must_use]
    pub const fn unknown() -> Self {
        Self {
            curves: Curves { k: [1.0; BANDS], s: [1.0; BANDS] },
            k: Hold { level: 0.0, slope: 0.0, bend: 0.3 },
            s: Hold { level: 0.5, slope: 0.0, bend: 3.0 },
        }
    }

    /// A paint that is known and may be corrected, smoothly: a third in level,
    /// a fifth from band to band.
    #[must_use]
    pub const fn known(curves: Curves) -> Self {
        const HOLD: Hold = Hold { level: 3.0, slope: 5.0, bend: 0.0 };
        Self { curves, k: HOLD, s: HOLD }
    }
}
