//! The horizon: how far out on the wheel a whole shelf reaches.

use crate::colour::WheelPoint;
use crate::colour::outline::Outline;
use crate::error::Error;
use crate::optics::view::View;
use crate::paint::number::PaintNumber;
use crate::paint::shelf::Shelf;
use crate::reach::Reach;
use crate::text::limits::counted;

/// Part of the farthest reach of any paint near its angle that a paint must have to count as outer.
const OUTER: f32 = 0.9;

/// Degrees to either side that count as near.
const NEAR: f32 = 20.0;

/// How far out on the wheel all paints of a shelf reach together, alone and in pairs.
///
/// The outer paints' pairs stand for all: duller paints lie within their paths. It
/// takes as long as a few reports; make it once for a view.
///
/// # Errors
///
/// None for a shelf of at most 255 outer paints.
pub fn horizon(shelf: &Shelf, view: &View) -> Result<Outline, Error> {
    let points: Vec<(PaintNumber, WheelPoint)> = shelf
        .paints()
        .iter()
        .map(|paint| (paint.number, view.wheel_point(&paint.film, view.strongest_load(&paint.film))))
        .collect();
    let apart = |a: f32, b: f32| ((a - b + 540.0).rem_euclid(360.0) - 180.0).abs();
    let farthest = |angle: f32| {
        let near = points.iter().filter(|(_, point)| apart(point.angle(), angle) <= NEAR);
        near.map(|(_, point)| point.radius()).fold(0.0, f32::max)
    };
    let outer: Vec<PaintNumber> = points
        .iter()
        .filter(|(_, point)| point.radius() >= OUTER * farthest(point.angle()))
        .map(|(number, _)| *number)
        .collect();
    counted(outer.len(), 0..=255, "outer paints", "a horizon spans")?;
    Ok(Reach::of_pairs(&outer, shelf, view)?.outline())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::colour::wheel;
    use crate::optics::film::Film;
    use crate::optics::observer::Light;
    use crate::optics::paper::Stock;

    #[test]
    fn no_pair_of_the_shelf_lies_far_beyond_the_horizon() {
        let (shelf, view) = (Shelf::built_in(), View::new(&Stock::BrightWhite.paper(), Light::D65));
        let horizon = horizon(shelf, &view).unwrap();
        for (i, a) in shelf.paints().iter().enumerate() {
            for b in &shelf.paints()[i..] {
                for (share, load) in [(0.5, 1.0), (0.5, 0.3), (0.1, 0.5), (0.9, 0.5)] {
                    let point = wheel(view.colour(&Film::between(&a.film, &b.film, share), load));
                    let radius = horizon.radius(point.angle());
                    assert!(point.radius() <= radius + 1.5, "{} {}: {radius}", a.key, b.key);
                }
            }
        }
    }
}
