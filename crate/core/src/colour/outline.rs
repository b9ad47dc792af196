//! Outlines: how far out on the wheel a kit reaches, in every direction.

use std::sync::LazyLock;

use crate::colour::WheelPoint;
use crate::numeric::minmax::{greater, lesser};

/// Rays of an outline, evenly spaced; one a degree.
pub const RAYS: usize = 360;

/// Farthest reach along every ray from neutral on the wheel.
///
/// A ray stands at each whole degree of the wheel's angle. Drawn as a polygon
/// through its [`Self::corners`] it holds every point that was put into it; where
/// a lone point lies between two rays it sticks out by less than a degree to
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
            let [sin, cos] = RAY[ray];
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

    /// The area on the wheel that three outlines span together, in squares of its unit, by a constant factor.
    pub(crate) fn area_with(&self, others: [&Self; 2]) -> f32 {
        let rays = self.radii.iter().zip(&others[0].radii).zip(&others[1].radii);
        rays.map(|((a, b), c)| greater(greater(*a, *b), *c).powi(2)).sum()
    }

    /// Widens the outline to hold another.
    pub(crate) fn hold_all(&mut self, other: &Self) {
        self.radii.iter_mut().zip(&other.radii).for_each(|(ours, radius)| *ours = greater(*ours, *radius));
    }

    /// The smallest radius of the rays up to `width` of them to either side of an angle.
    pub(crate) fn least_near(&self, degrees: f32, width: usize) -> f32 {
        let (low, ..) = rays_beside(degrees);
        let first = low + RAYS + 1 - width;
        (first..first + 2 * width).map(|ray| self.radii[ray % RAYS]).fold(f32::INFINITY, lesser)
    }

    /// Widens the outline to hold a point.
    pub(crate) fn hold(&mut self, spot: Spot) {
        let (low, high, _) = rays_beside(spot.angle);
        let radius = spot.point.radius();
        for ray in [low, high] {
            self.radii[ray] = greater(self.radii[ray], radius);
        }
    }

    /// Widens the outline to hold the line between two points.
    pub(crate) fn hold_line(&mut self, from: Spot, to: Spot) {
        let turn = (to.angle - from.angle + 540.0).rem_euclid(360.0) - 180.0;
        let first = if turn >= 0.0 { from.angle } else { to.angle };
        for ray in first.ceil() as usize..=(first + turn.abs()) as usize {
            let ray = ray % RAYS;
            self.radii[ray] = greater(self.radii[ray], crossing(from.point, to.point, RAY[ray]));
        }
    }
}

/// A point and its angle, which takes longer to find than the rest.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Spot {
    pub(crate) point: WheelPoint,
    pub(crate) angle: f32,
}

impl From<WheelPoint> for Spot {
    fn from(point: WheelPoint) -> Self {
        Self { point, angle: point.angle() }
    }
}

/// Sine and cosine of every ray's angle.
static RAY: LazyLock<[[f32; 2]; RAYS]> = LazyLock::new(|| {
    std::array::from_fn(|ray| {
        let (sin, cos) = (ray as f32 * (360.0 / RAYS as f32)).to_radians().sin_cos();
        [sin, cos]
    })
});

/// The rays on both sides of an angle, and how far it lies from the first to the second.
fn rays_beside(degrees: f32) -> (usize, usize, f32) {
    let degrees = if degrees.is_finite() { degrees.rem_euclid(360.0) } else { 0.0 };
    let low = degrees.floor();
    (low as usize % RAYS, (low as usize + 1) % RAYS, degrees - low)
}

/// Distance from neutral at which a ray meets the line between two points.
fn crossing(from: WheelPoint, to: WheelPoint, [sin, cos]: [f32; 2]) -> f32 {
    // Height of each end above the ray.
    let (a, b) = (from.y * cos - from.x * sin, to.y * cos - to.x * sin);
    let along = |point: WheelPoint| point.x * cos + point.y * sin;
    let part = if a == b { 0.0 } else { (a / (a - b)).clamp(0.0, 1.0) };
    greater(along(from) + part * (along(to) - along(from)), 0.0)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn point(degrees: f32, radius: f32) -> WheelPoint {
        let (sin, cos) = degrees.to_radians().sin_cos();
        WheelPoint { x: radius * cos, y: radius * sin, lightness: 50.0 }
    }

    proptest! {
        #[test]
        fn what_was_put_in_is_inside(points in proptest::collection::vec((0f32..360.0, 0f32..60.0), 1..20)) {
            let mut outline = Outline::default();
            for (degrees, radius) in &points {
                outline.hold(point(*degrees, *radius).into());
            }
            for (degrees, radius) in points {
                prop_assert!(outline.radius(degrees) >= radius - 0.01, "{} < {radius}", outline.radius(degrees));
            }
        }

        #[test]
        fn a_line_is_inside(from in 0f32..360.0, turn in -175f32..175.0, radii in (5f32..50.0, 5f32..50.0)) {
            let (a, b) = (point(from, radii.0), point(from + turn, radii.1));
            let mut outline = Outline::default();
            outline.hold(a.into());
            outline.hold(b.into());
            outline.hold_line(a.into(), b.into());
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
        outline.hold_line(point(350.0, 30.0).into(), point(20.0, 30.0).into());
        assert_eq!(outline.area_share(&outline), 1.0);
        assert_eq!(outline.area_share(&Outline::default()), 1.0);
        assert_eq!(Outline::default().area_share(&outline), 0.0);
        assert_eq!(outline.corners().len(), RAYS);
    }
}
