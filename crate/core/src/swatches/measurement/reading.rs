//! The numbers of a sample as a file has them, and what they come to.

use palette::chromatic_adaptation::adaptation_matrix;
use palette::convert::{Convert, IntoColorUnclamped};
use palette::lms::matrix::Bradford;
use palette::white_point::{D50, D65};
use palette::{Lab as LabOf, Xyz};

use super::bands::{Bands, MOST_REFLECTANCE};
use super::sample::{Measurement, check};
use crate::colour::Lab;
use crate::error::Error;
use crate::optics::observer::Light;
use crate::swatches::calibrate::Seen;
use crate::text::limits::within;
use crate::text::rows::Faults;
use crate::text::words::{clean_line, cut};

/// Most samples that are read of one file.
pub(super) const MOST_SAMPLES: usize = 500;

/// Below nothing by so much a value is read as 0: a meter's dark reading is taken off, with its noise. Half a percent is
/// what handheld meters differ by near black (common practice, no source); more below is no reading.
const LEAST_REFLECTANCE: f64 = -0.005;

/// Longest name in characters; longer ones are cut.
const LONGEST_NAME: usize = 80;

/// Above it a value can only be percent.
const MOST_FRACTION: f64 = 1.5;

/// The numbers of one sample as they stand in the file.
pub(super) struct Reading {
    pub(super) name: String,
    pub(super) line: usize,
    pub(super) values: Vec<f64>,
}

/// Spectra of readings; `line` is where a sample's band stands.
pub(super) fn spectra(
    bands: &Bands,
    readings: Vec<Reading>,
    percent: Option<bool>,
    line: &dyn Fn(&Reading, usize) -> usize,
    faults: &mut Faults,
) -> Vec<Measurement> {
    let above = |reading: &Reading| reading.values.iter().any(|value| *value > MOST_FRACTION);
    let scale = if percent.unwrap_or_else(|| readings.iter().any(above)) { 0.01 } else { 1.0 };
    let mut samples = Vec::new();
    for mut reading in readings {
        for value in &mut reading.values {
            *value *= scale;
            if (LEAST_REFLECTANCE..0.0).contains(value) {
                *value = 0.0;
            }
        }
        let refused = reading.values.iter().enumerate().find_map(|(band, value)| {
            let what = format!("\"{}\" at {}", reading.name, bands.label(band));
            within(&what, *value, [0.0, MOST_REFLECTANCE]).err().map(|fault| (band, fault.to_string()))
        });
        match refused {
            Some((band, reason)) => faults.push(Error::table(line(&reading, band), reason)),
            None => {
                let seen = Seen::Spectrum(Box::new(bands.resample(&reading.values)));
                samples.push(Measurement { name: reading.name, seen });
            }
        }
    }
    samples
}

pub(super) fn colours(readings: Vec<Reading>, light: Light, faults: &mut Faults) -> Vec<Measurement> {
    let mut samples = Vec::new();
    for Reading { name, line, values } in readings {
        let &[l, a, b] = &values[..] else { continue };
        let stated = Seen::Lab(Lab::new(l, a, b));
        match check(&stated) {
            Ok(()) => samples.push(Measurement {
                name,
                seen: if light == Light::D50 { Seen::Lab(from_d50(l, a, b)) } else { stated },
            }),
            Err(reason) => faults.push(Error::table(line, format!("\"{name}\": {reason}"))),
        }
    }
    samples
}

pub(super) fn from_d50(l: f64, a: f64, b: f64) -> Lab<f64> {
    let xyz: Xyz<D50, f64> = LabOf::<D50, f64>::new(l, a, b).into_color_unclamped();
    let xyz: Xyz<D65, f64> = adaptation_matrix::<f64, D50, D65, Bradford>(None, None).convert(xyz);
    xyz.into_color_unclamped()
}

pub(super) fn too_many(line: usize) -> Error {
    Error::table(line, format!("more than {MOST_SAMPLES} samples: the rest is left out"))
}

pub(super) fn no_number(name: &str, label: &str, cell: &str) -> String {
    if cell.is_empty() {
        return format!("\"{name}\" has no value at {label}");
    }
    format!("\"{name}\" at {label} is \"{}\", not a number", cut(cell))
}

/// A name on one line, cut to its longest; of an empty one the number.
pub(super) fn named(name: &str, number: usize) -> String {
    let name: String = clean_line(name).chars().take(LONGEST_NAME).collect();
    if name.is_empty() { number.to_string() } else { name }
}
