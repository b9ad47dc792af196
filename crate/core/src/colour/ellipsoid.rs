//! CIEDE2000 close to one colour, where it is an ellipsoid in CIELAB.
//!
//! With the weights taken at the centre the formula is the length of a vector
//! that depends linearly on the difference in L*, a*, b*: a search can compare
//! thousands of colours with one by a few products each. M. R. Luo, G. Cui,
//! B. Rigg, Color Research and Application 26 (2001) 340.

use std::ops::{Add, Mul, Sub};

use wide::f32x4;

use crate::colour::{Lab, delta_e};
use crate::numeric::minmax::{greater, lesser};

/// The ellipsoid of equal CIEDE2000 round a colour.
///
/// Exact at its centre; a test holds that up to a difference of 5 it is off by
/// no more than a third of it, and by 5 % in the median.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Ellipsoid {
    centre: Lab,
    /// From differences in L*, a*, b* to three orthogonal parts of CIEDE2000.
    rows: [[f32; 3]; 3],
}

impl Ellipsoid {
    pub(crate) fn round(centre: Lab) -> Self {
        let chroma_7 = centre.a.hypot(centre.b).powi(7);
        let rotation_weight = (chroma_7 / (chroma_7 + 25f32.powi(7))).sqrt();
        let stretch = 1.5 - 0.5 * rotation_weight;
        let (a, b) = (centre.a * stretch, centre.b);
        let chroma = a.hypot(b);
        let (cos, sin) = if chroma > 0.0 { (a / chroma, b / chroma) } else { (1.0, 0.0) };
        let hue = sin.atan2(cos).to_degrees().rem_euclid(360.0);
        let wave = |factor: f32, phase: f32| (factor * hue - phase).to_radians().cos();
        let t = 1.0 - 0.17 * wave(1.0, 30.0) + 0.24 * wave(2.0, 0.0) + 0.32 * wave(3.0, -6.0)
            - 0.20 * wave(4.0, 63.0);
        let from_50 = (centre.l - 50.0).powi(2);
        let of_l = 1.0 + 0.015 * from_50 / (20.0 + from_50).sqrt();
        let of_chroma = 1.0 + 0.045 * chroma;
        let of_hue = 1.0 + 0.015 * chroma * t;
        let turn = 60.0 * (-((hue - 275.0) / 25.0).powi(2)).exp();
        let rotation = -2.0 * rotation_weight * turn.to_radians().sin();
        let in_chroma = [0.0, stretch * cos / of_chroma, sin / of_chroma];
        let in_hue = [0.0, -stretch * sin / of_hue, cos / of_hue];
        // c² + R c h + h² as a sum of two squares.
        let rest = (1.0 - 0.25 * rotation * rotation).sqrt();
        let rows = [
            [1.0 / of_l, 0.0, 0.0],
            [0, 1, 2].map(|i| in_chroma[i] + 0.5 * rotation * in_hue[i]),
            in_hue.map(|value| rest * value),
        ];
        Self { centre, rows }
    }

    /// Its centre.
    pub(crate) const fn centre(&self) -> Lab {
        self.centre
    }

    /// The three parts of the difference of a colour from the centre.
    pub(crate) fn parts(&self, lab: Lab) -> [f32; 3] {
        self.parts_of([lab.l, lab.a, lab.b])
    }

    /// The same of L*, a* and b* of one colour, or of several side by side.
    fn parts_of<T>(&self, [l, a, b]: [T; 3]) -> [T; 3]
    where
        T: Copy + Add<Output = T> + Sub<f32, Output = T> + Mul<f32, Output = T>,
    {
        let [l, a, b] = [l - self.centre.l, a - self.centre.a, b - self.centre.b];
        [
            l * self.rows[0][0],
            a * self.rows[1][1] + b * self.rows[1][2],
            a * self.rows[2][1] + b * self.rows[2][2],
        ]
    }

    /// The square of the difference.
    pub(crate) fn squared(&self, lab: Lab) -> f32 {
        self.parts(lab).iter().map(|part| part * part).sum()
    }

    /// Whether a colour lies within a limit of CIEDE2000, up to 5, of the centre.
    ///
    /// The formula itself is asked only where the ellipsoid, which is off by a third at most, cannot tell.
    pub(crate) fn lies_within(&self, limit: f32, lab: Lab) -> bool {
        /// The ellipsoid's part of CIEDE2000 at least and at most: a third off, and some to spare.
        const PARTS: [f32; 2] = [0.6, 1.45];
        let [surely, at_most] = PARTS.map(|part| (part * limit).powi(2));
        let squared = self.squared(lab);
        squared <= surely || squared <= at_most && delta_e(lab, self.centre) <= limit
    }

    /// The squares of the differences of four colours, given by their L*, a* and b*.
    pub(crate) fn squared_of_four(&self, colours: [f32x4; 3]) -> f32x4 {
        let [l, c, h] = self.parts_of(colours);
        l * l + c * c + h * h
    }

    /// Half the sides, in L*, a*, b*, of the box round the ellipsoid of a radius.
    pub(crate) fn half_box(&self, radius: f32) -> [f32; 3] {
        let [_, [_, p, q], [_, r, s]] = self.rows;
        let determinant = p * s - q * r;
        [
            radius / self.rows[0][0],
            radius * s.hypot(q) / determinant.abs(),
            radius * r.hypot(p) / determinant.abs(),
        ]
    }

    /// From where to where in b*, relative to the centre, the ellipsoid of a radius reaches
    /// over a range of L* and one of a*, also relative; `None` where it does not.
    pub(crate) fn span(&self, radius: f32, l: [f32; 2], a: [f32; 2]) -> Option<[f32; 2]> {
        let [_, [_, p, q], [_, r, s]] = self.rows;
        let nearest = |range: [f32; 2]| greater(range[0], 0.0) - lesser(range[1], 0.0);
        // (p a + q b)² + (r a + s b)² as a square of b's distance from its middle, and one of a.
        let of_b = q * q + s * s;
        let lean = -(p * q + r * s) / of_b;
        let of_a = (p * s - q * r).powi(2) / of_b;
        let rest = radius * radius - (self.rows[0][0] * nearest(l)).powi(2) - of_a * nearest(a).powi(2);
        let half = (rest >= 0.0).then(|| (rest / of_b).sqrt())?;
        let (left, right) = (lean * a[0], lean * a[1]);
        Some([lesser(left, right) - half, greater(left, right) + half])
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::colour::ciede2000;
    use crate::colour::gamut::gamut;

    fn wide(lab: Lab) -> Lab<f64> {
        Lab::new(f64::from(lab.l), f64::from(lab.a), f64::from(lab.b))
    }

    #[test]
    fn it_follows_the_formula() {
        let mut errors = Vec::new();
        for centre in gamut().iter().chain(&[Lab::new(50.0, 0.3, -0.2)]) {
            let ellipsoid = Ellipsoid::round(*centre);
            for code in 0..125 {
                let [l, a, b] = [code % 5, code / 5 % 5, code / 25].map(|n| (n as f32 - 2.0) * 2.5);
                let near = Lab::new(centre.l + l, centre.a + a, centre.b + b);
                let exact = ciede2000(wide(*centre), wide(near)) as f32;
                for limit in [2.0, 5.0] {
                    assert!(
                        ellipsoid.lies_within(limit, near) == (exact <= limit)
                            || (exact - limit).abs() < 1e-3
                    );
                }
                if exact > 0.1 && exact <= 5.0 {
                    errors.push((ellipsoid.squared(near).sqrt() / exact - 1.0).abs());
                    let half = ellipsoid.half_box(ellipsoid.squared(near).sqrt() * 1.001);
                    assert!(l.abs() <= half[0] && a.abs() <= half[1] && b.abs() <= half[2]);
                    let radius = ellipsoid.squared(near).sqrt() * 1.001;
                    let [low, high] = ellipsoid.span(radius, [l - 1.0, l + 0.5], [a - 0.5, a + 1.0]).unwrap();
                    assert!((low..=high).contains(&b));
                }
            }
        }
        errors.sort_by(f32::total_cmp);
        let (median, worst) = (errors[errors.len() / 2], errors[errors.len() - 1]);
        assert!(median < 0.05 && worst < 0.34, "median {median}, worst {worst}");
    }
}
