//! Targets under a name, as a kit keeps them; the page calls them a place.

use crate::colour::Lab;
use crate::error::Error;
use crate::kit::targets::{Target, Targets};
use crate::text::limits::counted;
use crate::text::words::{clean, short_line};

/// Most colours of kept targets.
pub const MOST_KEPT_COLOURS: usize = 24;

/// Longest name in characters.
pub const LONGEST_TARGETS_NAME: usize = 40;

/// Target colours with weights, under a name. Colours are kept in half units, weights in 255ths of the heaviest.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct NamedTargets {
    name: String,
    colours: Vec<([i16; 3], u8)>,
}

impl NamedTargets {
    /// Targets of these colours. The name is trimmed; control characters in it become spaces.
    ///
    /// # Errors
    ///
    /// A name longer than [`LONGEST_TARGETS_NAME`]; no colour or more than
    /// [`MOST_KEPT_COLOURS`]; what is no colour or weight for [`Targets`].
    pub fn new(name: &str, colours: &[Target]) -> Result<Self, Error> {
        Targets::new(colours)?;
        let heaviest = colours.iter().map(|target| target.weight).fold(0.0, f32::max);
        let halves = |value: f32| (2.0 * value).round().clamp(-400.0, 400.0) as i16;
        let kept = colours.iter().map(|Target { colour, weight }| {
            let byte = (255.0 * weight / heaviest).round().clamp(1.0, 255.0) as u8;
            ([colour.l, colour.a, colour.b].map(halves), byte)
        });
        Self::of_halves(name, kept.collect())
    }

    /// Targets of colours in half units and weights as they are kept.
    pub(crate) fn of_halves(name: &str, colours: Vec<([i16; 3], u8)>) -> Result<Self, Error> {
        let name = short_line(name, "a place's name", LONGEST_TARGETS_NAME)?;
        counted(colours.len(), 1..=MOST_KEPT_COLOURS, "colours", "a kept place holds")?;
        if colours.iter().any(|(_, weight)| *weight == 0) {
            return Err(Error::Missing("a colour of a place without any weight"));
        }
        Ok(Self { name, colours })
    }

    /// Takes out of its name what nobody sees.
    pub(crate) fn clean(&mut self) {
        clean(&mut self.name);
    }

    /// Its name, perhaps empty.
    #[must_use]
    pub fn name(&self) -> &str {
        &self.name
    }

    /// Its colours, each with a weight of 1 to 255.
    pub fn colours(&self) -> impl Iterator<Item = Target> {
        self.colours.iter().map(|([l, a, b], weight)| {
            let [l, a, b] = [l, a, b].map(|half| f32::from(*half) / 2.0);
            Target::new(Lab::new(l, a, b), f32::from(*weight))
        })
    }

    pub(crate) fn halves(&self) -> &[([i16; 3], u8)] {
        &self.colours
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn colours_come_back_in_half_units() {
        let targets = NamedTargets::new(
            " Quay\n",
            &[Target::new(Lab::new(50.2, -10.3, 4.0), 2.0), Target::new(Lab::new(90.0, 0.0, 0.0), 1.0)],
        );
        let targets = targets.unwrap();
        assert_eq!(targets.name(), "Quay");
        let colours: Vec<_> = targets.colours().collect();
        assert_eq!(
            colours,
            [Target::new(Lab::new(50.0, -10.5, 4.0), 255.0), Target::new(Lab::new(90.0, 0.0, 0.0), 128.0)]
        );
    }

    #[test]
    fn limits_are_named() {
        let grey = Target::new(Lab::new(50.0, 0.0, 0.0), 1.0);
        let error =
            |name: &str, colours: &[Target]| NamedTargets::new(name, colours).unwrap_err().to_string();
        assert_eq!(error(&"x".repeat(41), &[grey]), "a place's name is longer than 40 characters");
        assert_eq!(error("", &[grey; 25]), "25 colours: a kept place holds 1 to 24");
        assert!(NamedTargets::new("", &[]).is_err());
        assert!(NamedTargets::new("", &[Target::new(Lab::new(f32::NAN, 0.0, 0.0), 1.0)]).is_err());
    }
}
