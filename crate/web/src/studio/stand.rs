//! Where a paint stands on the wheel.

use washpath_core::colour::{self, WheelPoint};
use washpath_core::{Paint, THINNEST};

use crate::sight::Sight;
use crate::studio::dab::Dab;

/// Places a tail from masstone to wash is drawn through.
const TAIL_POINTS: usize = 24;

/// A paint as it stands in a view.
pub(crate) struct Stand {
    pub paint: Paint,
    /// Point of the wheel at the strongest load.
    pub point: WheelPoint,
    /// Colour there.
    pub css: String,
    /// Whether the display holds it.
    pub exact: bool,
    /// What is drawn there.
    pub dab: Dab,
    /// From masstone to the thinnest wash.
    pub tail: Vec<(WheelPoint, String)>,
}

impl Stand {
    pub(crate) fn new(paint: &Paint, sight: &Sight) -> Self {
        let strongest = sight.view.strongest_load(&paint.film);
        let colour = |load: f32| sight.view.colour(&paint.film, load);
        let step = |i: usize| sight.spot(colour(THINNEST.powf(i as f32 / (TAIL_POINTS - 1) as f32)));
        let lab = colour(strongest);
        let shown = sight.shown(lab);
        Self {
            paint: paint.clone(),
            point: colour::wheel(lab),
            css: shown.css(),
            exact: shown.exact,
            dab: Dab::new(
                &paint.film,
                None,
                sight,
                paint.granulation.unwrap_or(0.0),
                paint.number.get().into(),
            ),
            tail: (0..TAIL_POINTS).map(step).collect(),
        }
    }
}
