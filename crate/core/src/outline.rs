//! Outlines: how far out on the wheel a kit reaches, in every direction.

use crate::colour::WheelPoint;

/// Rays of an outline, evenly spaced; one a degree.
pub const RAYS: usize = 360;

/// Farthest reach along every ray from neutral on the wheel.
///
/// A ray stands at each whole degree of the wheel's angle. Drawn as a polygon
/// through its [`Self::corners`] it holds every place that was put into it; where
/// a lone place lies between two rays it sticks out by less than a degree to
/// either side of it.
#[derive(Clone, Debug, PartialEq)]
pub struct Outline {
    radii: Vec<f32>,
}

impl Default for Outline {
    fn default() -> Self {
        Self { radii: vec![0.0; RAYS] }
    }
}

impl Outline {
    /// The polygon's corners, counter-clockwise from the right; the last meets the first.
    ///
    /// Lightness is 0: an outline spans all of them.
    #[must_use]
    pub fn corners(&self) -> Vec<WheelPoint> {
        let corner = |(ray, radius): (usize, &f32)| {
            let (sin, cos) = angle_of(ray).sin_cos();
            WheelPoint { x: radius * cos, y: radius * sin, lightness: 0.0 }
        };
        self.radii.iter().enumerate().map(corner).collect()
    }

    /// Radius at an angle in degrees, along the polygon's side there; any finite angle.
    #[must_use]
    pub fn radius(&self, degrees: f32) -> f32 {
        let (low, high, part) = rays_beside(degrees);
        let (r, s) = (self.radii[low], self.radii[high]);
        // The side between two corners, in polar form.
        let across = r * part.to_radians().sin() + s * (1.0 - part).to_radians().sin();
        if across > 0.0 { r * s * 1f32.to_radians().sin() / across } else { 0.0 }
    }

    /// Part of the other's area that this outline covers, 0 to 1.
    #[must_use]
    pub fn area_share(&self, other: &Self) -> f32 {
        let area = |radii: &mut dyn Iterator<Item = f32>| radii.map(|r| r * r).sum::<f32>();
        let common = area(&mut self.radii.iter().zip(&other.radii).map(|(a, b)| a.min(*b)));
        let whole = area(&mut other.radii.iter().copied());
        if whole > 0.0 { common / whole } else { 1.0 }
    }

    /// Widens the outline to hold a place.
    pub(crate) fn hold(&mut self, place: WheelPoint) {
        let (low, high, _) = rays_beside(place.angle());
        for ray in [low, high] {
            self.radii[ray] = self.radii[ray].max(place.radius());
        }
    }

    /// Widens the outline to hold the line between two places.
    pub(crate) fn hold_line(&mut self, from: WheelPoint, to: WheelPoint) {
        let (start, end) = (from.angle(), to.angle());
        let turn = (end - start + 540.0).rem_euclid(360.0) - 180.0;
        // Beyond this the line passes near neutral, where an outline has no corners to gain.
        if turn.abs() > WIDEST_TURN {
            return;
        }
        let (first, last) = if turn >= 0.0 { (start, start + turn) } else { (end, end - turn) };
        for ray in first.ceil() as i32..=last.floor() as i32 {
            let ray = ray.rem_euclid(RAYS as i32) as usize;
            let radius = crossing(from, to, angle_of(ray));
            self.radii[ray] = self.radii[ray].max(radius);
        }
    }
}

const WIDEST_TURN: f32 = 120.0;

/// Angle of a ray in radians.
fn angle_of(ray: usize) -> f32 {
    (ray as f32 * (360.0 / RAYS as f32)).to_radians()
}

/// The rays on both sides of an angle, and how far it lies from the first to the second.
fn rays_beside(degrees: f32) -> (usize, usize, f32) {
    let degrees = if degrees.is_finite() { degrees.rem_euclid(360.0) } else { 0.0 };
    let low = degrees.floor();
    (low as usize % RAYS, (low as usize + 1) % RAYS, degrees - low)
}

/// Distance from neutral at which a ray at `angle` meets the line between two places.
fn crossing(from: WheelPoint, to: WheelPoint, angle: f32) -> f32 {
    let (sin, cos) = angle.sin_cos();
    // Height of each end above the ray.
    let (a, b) = (from.y * cos - from.x * sin, to.y * cos - to.x * sin);
    let along = |place: WheelPoint| place.x * cos + place.y * sin;
    let part = if a == b { 0.0 } else { (a / (a - b)).clamp(0.0, 1.0) };
    (along(from) + part * (along(to) - along(from))).max(0.0)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn place(degrees: f32, radius: f32) -> WheelPoint {
        let (sin, cos) = degrees.to_radians().sin_cos();
        WheelPoint { x: radius * cos, y: radius * sin, lightness: 50.0 }
    }

    proptest! {
        #[test]
        fn what_was_put_in_is_inside(places in proptest::collection::vec((0f32..360.0, 0f32..60.0), 1..20)) {
            let mut outline = Outline::default();
            for (degrees, radius) in &places {
                outline.hold(place(*degrees, *radius));
            }
            for (degrees, radius) in places {
                prop_assert!(outline.radius(degrees) >= radius - 0.01, "{} < {radius}", outline.radius(degrees));
            }
        }

        #[test]
        fn a_line_is_inside(from in 0f32..360.0, turn in -90f32..90.0, radii in (5f32..50.0, 5f32..50.0)) {
            let (a, b) = (place(from, radii.0), place(from + turn, radii.1));
            let mut outline = Outline::default();
            outline.hold(a);
            outline.hold(b);
            outline.hold_line(a, b);
            for part in 0..=20 {
                let part = part as f32 / 20.0;
                let on = WheelPoint { x: a.x + part * (b.x - a.x), y: a.y + part * (b.y - a.y), lightness: 0.0 };
                prop_assert!(outline.radius(on.angle()) >= on.radius() - 0.05);
            }
        }
    }

    #[test]
    fn an_outline_covers_all_of_itself() {
        let mut outline = Outline::default();
        outline.hold_line(place(350.0, 30.0), place(20.0, 30.0));
        assert_eq!(outline.area_share(&outline), 1.0);
        assert_eq!(outline.area_share(&Outline::default()), 1.0);
        assert_eq!(Outline::default().area_share(&outline), 0.0);
        assert_eq!(outline.corners().len(), RAYS);
    }
}
