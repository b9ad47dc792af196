//! The wavelengths a meter measured at, and from there to the bands of this crate.

use crate::optics::spectrum::{Spectrum, from_fn, wavelength};
use crate::text::decimal::Decimal;

/// Highest reflectance, beside a perfect white's: above it a paint would glow.
pub const MOST_REFLECTANCE: f64 = 1.2;

/// Fewest wavelengths of a spectrum.
const FEWEST: usize = 16;

/// What a spectrum must span, in nanometres.
const SPAN: [f64; 2] = [400.0, 700.0];

/// Farthest that neighbours may be apart, in nanometres.
const WIDEST: f64 = 20.0;

/// Up to this distance in nanometres a line is as good as a curve.
const LINEAR: f64 = 10.0;

/// Ascending wavelengths in nanometres.
pub(super) struct Bands(Vec<f64>);

impl Bands {
    /// Refused with the index of the band at fault.
    pub(super) fn new(nm: Vec<f64>) -> Result<Self, (usize, String)> {
        let show = |value: f64| Decimal(value as f32);
        for (i, pair) in nm.windows(2).enumerate() {
            let [before, after] = [pair[0], pair[1]].map(show);
            let reason = if pair[0] == pair[1] {
                format!("{after} nm stands twice")
            } else if pair[0] > pair[1] {
                format!("{after} nm behind {before} nm: wavelengths must ascend")
            } else if pair[1] - pair[0] > WIDEST {
                format!("nothing between {before} and {after} nm: at most {} nm apart", show(WIDEST))
            } else {
                continue;
            };
            return Err((i + 1, reason));
        }
        if nm.len() < FEWEST {
            return Err((0, format!("{} wavelengths: at least {FEWEST}", nm.len())));
        }
        let (first, last) = (nm[0], nm[nm.len() - 1]);
        if first > SPAN[0] || last < SPAN[1] {
            let [first, last, least, most] = [first, last, SPAN[0], SPAN[1]].map(show);
            return Err((0, format!("wavelengths from {first} to {last} nm: at least {least} to {most}")));
        }
        Ok(Self(nm))
    }

    /// A band's wavelength with its unit.
    pub(super) fn label(&self, band: usize) -> String {
        format!("{} nm", Decimal(self.0[band] as f32))
    }

    /// One value a band of this crate from one a band of these.
    pub(super) fn resample(&self, values: &[f64]) -> Spectrum<f64> {
        from_fn(|band| self.at(f64::from(wavelength(band)), values))
    }

    fn at(&self, x: f64, values: &[f64]) -> f64 {
        let (nm, last) = (&self.0, self.0.len() - 1);
        let next = nm.partition_point(|at| *at <= x);
        if next == 0 || next > last {
            return values[next.min(last)];
        }
        // Two nearest wavelengths, or four: at the ends all on one side.
        let points = if nm[next] - nm[next - 1] > LINEAR {
            let start = next.saturating_sub(2).min(last - 3);
            start..start + 4
        } else {
            next - 1..next + 1
        };
        let lagrange = |i: usize| -> f64 {
            points.clone().filter(|j| *j != i).map(|j| (x - nm[j]) / (nm[i] - nm[j])).product()
        };
        let value: f64 = points.clone().map(|i| values[i] * lagrange(i)).sum();
        value.clamp(0.0, MOST_REFLECTANCE)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_cubic_is_kept_from_20_nm_and_a_line_from_any_step() {
        let cubic = |nm: f64| 0.5 + 1e-7 * (nm - 450.0) * (nm - 560.0) * (nm - 640.0);
        let line = |nm: f64| 0.1 + 0.001 * nm;
        for (step, curve) in [(20, cubic as fn(f64) -> f64), (20, line), (10, line), (5, line), (7, line)] {
            let nm: Vec<f64> = (360..=770).step_by(step).map(f64::from).collect();
            let values: Vec<f64> = nm.iter().map(|nm| curve(*nm)).collect();
            let found = Bands::new(nm).unwrap().resample(&values);
            for (band, found) in found.iter().enumerate() {
                let wanted = curve(f64::from(wavelength(band))).clamp(0.0, MOST_REFLECTANCE);
                assert!((found - wanted).abs() < 1e-9, "{step} nm, band {band}: {found}");
            }
        }
    }

    #[test]
    fn ends_go_on_level() {
        let nm: Vec<f64> = (0..31).map(|i| f64::from(400 + 10 * i)).collect();
        let values: Vec<f64> = (0..31).map(|i| 0.01 * f64::from(i)).collect();
        let found = Bands::new(nm).unwrap().resample(&values);
        assert_eq!((found[0], found[1], found[2], found[3]), (0.0, 0.0, 0.0, 0.01));
        assert_eq!([found[32], found[33], found[35]], [values[30]; 3]);
    }

    #[test]
    fn limits_are_named() {
        let refusal = |nm: Vec<i32>| Bands::new(nm.into_iter().map(f64::from).collect()).err().unwrap();
        let by = |step: usize| (400..=700).step_by(step).collect::<Vec<i32>>();
        let mut odd = by(10);
        odd.swap(3, 4);
        assert_eq!(refusal(odd), (4, "430 nm behind 440 nm: wavelengths must ascend".into()));
        let mut odd = by(10);
        odd[5] = 440;
        assert_eq!(refusal(odd), (5, "440 nm stands twice".into()));
        assert_eq!(refusal(by(30)), (1, "nothing between 400 and 430 nm: at most 20 nm apart".into()));
        assert_eq!(refusal((400..415).collect()), (0, "15 wavelengths: at least 16".into()));
        assert_eq!(
            refusal((410..=730).step_by(10).collect()),
            (0, "wavelengths from 410 to 730 nm: at least 400 to 700".into())
        );
    }
}
