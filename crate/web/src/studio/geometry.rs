//! Where things stand on the canvas. Pure: no canvas, no page.

use washpath_core::WheelPoint;
pub use washpath_core::colour::RIM;

/// A place on the canvas in CSS pixels, from the top left.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Spot {
    /// To the right.
    pub x: f64,
    /// Downwards.
    pub y: f64,
}

impl Spot {
    /// Distance to another place.
    #[must_use]
    pub fn distance(self, other: Self) -> f64 {
        (self.x - other.x).hypot(self.y - other.y)
    }
}

/// The wheel's frame: a disc with a margin for the hue names.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Frame {
    /// Centre of the disc, the same across and down.
    pub centre: f64,
    /// Radius of the disc.
    pub radius: f64,
}

impl Frame {
    /// The frame in a square canvas of this size.
    #[must_use]
    pub fn new(size: f64) -> Self {
        let margin = (size * 0.045).clamp(20.0, 30.0);
        Self { centre: size / 2.0, radius: (size / 2.0 - margin).max(1.0) }
    }

    /// Where a colour stands; what lies beyond the rim is held at it.
    #[must_use]
    pub fn spot(&self, point: WheelPoint) -> Spot {
        let (x, y) = (f64::from(point.x), f64::from(point.y));
        let scale = self.radius / x.hypot(y).max(f64::from(RIM));
        Spot { x: self.centre + x * scale, y: self.centre - y * scale }
    }

    /// Where a point of the wheel's plane stands.
    #[must_use]
    pub fn spot_at(&self, [x, y]: [f32; 2]) -> Spot {
        self.spot(WheelPoint { x, y, lightness: 0.0 })
    }

    /// The point of the wheel's plane at a spot, held at the rim; the inverse of [`Self::spot_at`].
    #[must_use]
    pub fn point_at(&self, spot: Spot) -> [f32; 2] {
        let scale = f64::from(RIM) / self.radius;
        let (x, y) = ((spot.x - self.centre) * scale, (self.centre - spot.y) * scale);
        let held = f64::from(RIM) / x.hypot(y).max(f64::from(RIM));
        [(x * held) as f32, (y * held) as f32]
    }

    /// Whether a spot lies on the disc.
    #[must_use]
    pub fn holds(&self, spot: Spot) -> bool {
        spot.distance(Spot { x: self.centre, y: self.centre }) <= self.radius
    }

    /// The spot at an angle (degrees, counter-clockwise from the right) and a radius in pixels.
    #[must_use]
    pub fn polar(&self, degrees: f64, radius: f64) -> Spot {
        let (sin, cos) = degrees.to_radians().sin_cos();
        Spot { x: self.centre + radius * cos, y: self.centre - radius * sin }
    }

    /// A length on the wheel (CAM16-UCS) in pixels.
    #[must_use]
    pub fn length(&self, wheel: f32) -> f64 {
        f64::from(wheel / RIM) * self.radius
    }

    /// Radius of a kit paint's dab.
    #[must_use]
    pub fn dab(&self) -> f64 {
        (self.radius * 0.048).clamp(11.0, 17.0)
    }
}

/// Along a line of places: how far from its start the one nearest to `spot` is.
///
/// In segments and parts of a segment, 0 to one less than the places; `None`
/// for fewer than two places.
#[must_use]
pub fn nearest_along(line: &[Spot], spot: Spot) -> Option<f64> {
    let nearest = |i: usize| {
        let (a, b) = (line[i], line[i + 1]);
        let (dx, dy) = (b.x - a.x, b.y - a.y);
        let square = (dx * dx + dy * dy).max(1e-9);
        let along = (((spot.x - a.x) * dx + (spot.y - a.y) * dy) / square).clamp(0.0, 1.0);
        let foot = Spot { x: a.x + along * dx, y: a.y + along * dy };
        (i as f64 + along, foot.distance(spot))
    };
    (0..line.len().saturating_sub(1)).map(nearest).min_by(|a, b| a.1.total_cmp(&b.1)).map(|found| found.0)
}

/// Outline of a band along a line of places, so wide to each side of each place.
#[must_use]
pub fn band(line: &[Spot], widths: &[f64]) -> Vec<Spot> {
    let last = line.len().saturating_sub(1);
    let side = |sign: f64| {
        (0..line.len()).map(move |i| {
            let (before, after) = (line[i.saturating_sub(1)], line[(i + 1).min(last)]);
            let (dx, dy) = (after.x - before.x, after.y - before.y);
            let reach = sign * widths.get(i).copied().unwrap_or(0.0) / dx.hypot(dy).max(1e-6);
            Spot { x: line[i].x - dy * reach, y: line[i].y + dx * reach }
        })
    };
    let back: Vec<Spot> = side(-1.0).collect();
    side(1.0).chain(back.into_iter().rev()).collect()
}

/// A box that text takes up.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Label {
    /// Left edge.
    pub left: f64,
    /// Top edge.
    pub top: f64,
    /// Width.
    pub width: f64,
    /// Height.
    pub height: f64,
}

impl Label {
    /// Whether two boxes overlap.
    #[must_use]
    pub fn overlaps(&self, other: &Self) -> bool {
        self.left < other.left + other.width
            && other.left < self.left + self.width
            && self.top < other.top + other.height
            && other.top < self.top + self.height
    }

    /// The smallest box round a disc.
    #[must_use]
    pub fn around(spot: Spot, radius: f64) -> Self {
        Self { left: spot.x - radius, top: spot.y - radius, width: 2.0 * radius, height: 2.0 * radius }
    }

    /// The box of this width and height round a place.
    #[must_use]
    pub fn centred(spot: Spot, width: f64, height: f64) -> Self {
        Self { left: spot.x - width / 2.0, top: spot.y - height / 2.0, width, height }
    }

    /// The place in it nearest to another.
    #[must_use]
    pub fn nearest(&self, spot: Spot) -> Spot {
        Spot {
            x: spot.x.max(self.left).min(self.left + self.width),
            y: spot.y.max(self.top).min(self.top + self.height),
        }
    }

    /// The place in its middle.
    #[must_use]
    pub fn middle(&self) -> Spot {
        Spot { x: self.left + self.width / 2.0, y: self.top + self.height / 2.0 }
    }

    /// Its left end, middle and right end: what keeps off these keeps off its text.
    #[must_use]
    pub fn across(&self) -> [Spot; 3] {
        let Spot { x, y } = self.middle();
        [Spot { x: self.left, y }, Spot { x, y }, Spot { x: self.left + self.width, y }]
    }

    /// Distance from its edge to a place; 0 inside.
    #[must_use]
    pub fn distance(&self, spot: Spot) -> f64 {
        let beyond = |low: f64, size: f64, value: f64| (low - value).max(value - low - size).max(0.0);
        beyond(self.left, self.width, spot.x).hypot(beyond(self.top, self.height, spot.y))
    }

    fn within(&self, size: f64) -> bool {
        self.left >= 0.0
            && self.top >= 0.0
            && self.left + self.width <= size
            && self.top + self.height <= size
    }
}

/// A free place for a label beside a dab: outwards first, then round it, then farther off.
///
/// `taken` are the boxes to keep clear of; `None` where all places are taken.
#[must_use]
pub fn place_label(frame: &Frame, dab: Spot, text: (f64, f64), taken: &[Label]) -> Option<Label> {
    let (width, height) = text;
    let outward = (frame.centre - dab.y).atan2(dab.x - frame.centre);
    const TURNS: [f64; 8] = [0.0, 45.0, -45.0, 90.0, -90.0, 135.0, -135.0, 180.0];
    for gap in [4.0, 22.0, 40.0] {
        for turn in TURNS {
            let (sin, cos) = (outward + f64::to_radians(turn)).sin_cos();
            let off = frame.dab() + gap;
            let middle = Spot { x: dab.x + cos * (off + width / 2.0), y: dab.y - sin * (off + height / 2.0) };
            let label = Label::centred(middle, width, height);
            if label.within(2.0 * frame.centre) && !taken.iter().any(|other| other.overlaps(&label)) {
                return Some(label);
            }
        }
    }
    None
}

/// The place round `at` for a label that keeps farthest from all of `keep_off`.
#[must_use]
pub fn place_aside(frame: &Frame, at: Spot, text: (f64, f64), keep_off: &[Spot]) -> Label {
    let (width, height) = text;
    // Beside the place, or a little farther where that is crowded.
    let candidates = [14.0, 26.0].into_iter().flat_map(|gap| (0..8).map(move |eighth| (gap, eighth)));
    let candidates = candidates.map(|(gap, eighth)| {
        let (sin, cos) = (f64::from(eighth) * std::f64::consts::FRAC_PI_4).sin_cos();
        let middle = Spot { x: at.x + cos * (gap + width / 2.0), y: at.y + sin * (gap + height / 2.0) };
        let label = Label::centred(middle, width, height);
        let clear = keep_off.iter().map(|spot| label.distance(*spot)).fold(f64::INFINITY, f64::min);
        // Beyond 30 px farther is no better: then the first in order wins, which does not flicker.
        let inside = if label.within(2.0 * frame.centre) { 0.0 } else { -1e3 };
        (label, clear.min(30.0) + inside)
    });
    let first = (Label::centred(at, width, height), f64::NEG_INFINITY);
    candidates.fold(first, |best, next| if next.1 > best.1 { next } else { best }).0
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn neutral_is_the_middle_and_the_rim_holds() {
        let frame = Frame::new(600.0);
        assert_eq!(frame.spot(WheelPoint::default()), Spot { x: 300.0, y: 300.0 });
        let far = frame.spot(WheelPoint { x: 0.0, y: 500.0, lightness: 50.0 });
        assert!((far.y - (300.0 - frame.radius)).abs() < 1e-9);
        assert!((far.x - 300.0).abs() < 1e-9);
    }

    #[test]
    fn a_wheel_point_comes_back_from_its_spot() {
        let frame = Frame::new(600.0);
        for point in [[0.0, 0.0], [10.0, -30.0], [-20.0, 5.0]] {
            let back = frame.point_at(frame.spot_at(point));
            assert!((back[0] - point[0]).abs() < 1e-4 && (back[1] - point[1]).abs() < 1e-4, "{back:?}");
            assert!(frame.holds(frame.spot_at(point)));
        }
        assert!(!frame.holds(Spot { x: 5.0, y: 5.0 }));
        assert!((frame.point_at(Spot { x: 600.0, y: 300.0 })[0] - RIM).abs() < 1e-4);
    }

    #[test]
    fn yellow_is_up() {
        let frame = Frame::new(600.0);
        assert!(frame.spot(WheelPoint { x: 0.0, y: 20.0, lightness: 80.0 }).y < 300.0);
        assert!(frame.polar(90.0, 100.0).y < 300.0);
    }

    #[test]
    fn the_nearest_place_may_lie_between_two() {
        let line = [Spot { x: 0.0, y: 0.0 }, Spot { x: 10.0, y: 0.0 }, Spot { x: 10.0, y: 10.0 }];
        assert_eq!(nearest_along(&line, Spot { x: 5.0, y: 3.0 }), Some(0.5));
        assert_eq!(nearest_along(&line, Spot { x: 20.0, y: 20.0 }), Some(2.0));
        assert_eq!(nearest_along(&line[..1], Spot::default()), None);
        let nowhere = [Spot::default(); 3];
        assert_eq!(nearest_along(&nowhere, Spot { x: 1.0, y: 1.0 }), Some(0.0));
    }

    #[test]
    fn a_band_runs_out_on_one_side_and_back_on_the_other() {
        let line = [Spot { x: 0.0, y: 0.0 }, Spot { x: 10.0, y: 0.0 }];
        let outline = band(&line, &[1.0, 2.0]);
        let corners = [(0.0, 1.0), (10.0, 2.0), (10.0, -2.0), (0.0, -1.0)].map(|(x, y)| Spot { x, y });
        assert_eq!(outline, corners);
        assert!(band(&[], &[]).is_empty());
    }

    #[test]
    fn labels_keep_clear_of_each_other() {
        let frame = Frame::new(600.0);
        let dab = Spot { x: 400.0, y: 300.0 };
        let first = place_label(&frame, dab, (40.0, 14.0), &[]).unwrap();
        assert!(first.left > dab.x, "outwards is to the right here");
        let second = place_label(&frame, dab, (40.0, 14.0), &[first]).unwrap();
        assert!(!first.overlaps(&second));
        let aside = place_aside(&frame, dab, (80.0, 20.0), &[Spot { x: 470.0, y: 300.0 }]);
        assert!(aside.distance(Spot { x: 470.0, y: 300.0 }) >= 25.0);
        let everywhere = Label { left: 0.0, top: 0.0, width: 600.0, height: 600.0 };
        assert_eq!(place_label(&frame, dab, (40.0, 14.0), &[everywhere]), None);
    }
}
