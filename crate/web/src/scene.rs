//! What the page wants drawn.

use serde::Deserialize;
use washpath_core::PaintNumber;

/// One state of the wheel; lengths in CSS pixels.
#[derive(Clone, Debug, Deserialize)]
#[serde(rename_all = "camelCase")]
pub(crate) struct Scene {
    /// Width and height of the canvas.
    pub size: f64,
    /// Paints of the kit, drawn as dabs.
    pub kit: Vec<PaintNumber>,
    /// Whether the rest of the shelf is shown, as small dots.
    pub show_shelf: bool,
    /// The two ends; 0 where none is chosen.
    pub ends: [PaintNumber; 2],
    /// Share of B in the mix, 0 to 1.
    pub share: f32,
    /// Load of the mix, 1 is masstone.
    pub load: f32,
    /// The paint under the keyboard's cursor; 0 where there is none.
    pub cursor: PaintNumber,
    /// Inks of the drawing, as CSS colours.
    pub ink: Ink,
}

/// Neutral colours of everything that is not paint.
#[derive(Clone, Debug, Deserialize)]
pub(crate) struct Ink {
    /// Ground of the wheel.
    pub paper: String,
    /// Hairlines.
    pub line: String,
    /// Quiet lines on the paper.
    pub quiet: String,
    /// The band round a path that shows how far it may be off.
    pub doubt: String,
    /// Names on the surround, outside the wheel.
    pub rim: String,
    /// Text and the path's edge.
    pub strong: String,
}
