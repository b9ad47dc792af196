//! Where the names of hues stand round the wheel.

use crate::studio::geometry::{Frame, Spot};
use crate::studio::scene::Scene;

/// The middle of a hue's name: half-way between the rim and the edge of the canvas.
pub(crate) fn name_spot(scene: &Scene, frame: &Frame, angle: f64) -> Spot {
    frame.polar(angle, frame.radius + (scene.size / 2.0 - frame.radius) * 0.5)
}
