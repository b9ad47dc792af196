//! Loads: how much paint lies on the paper.
//!
//! The kernel takes any load as a number, 1 at masstone. What is kept or sent
//! has one of these steps, finer than a brush; what is told has one of these names.

use std::ops::RangeInclusive;

/// A load in quarter octaves, from a thirty-second of masstone to four times masstone.
///
/// ```
/// use washpath_core::Load;
/// assert_eq!(Load::nearest(0.26).map(Load::value), Some(0.25));
/// assert_eq!(Load::nearest(0.0), None);
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Load(i8);

impl Load {
    /// Full strength: 1.
    pub const MASSTONE: Self = Self(0);

    /// A thirty-second of masstone.
    pub const THINNEST: Self = Self(-20);

    /// Four times masstone.
    pub const HEAVIEST: Self = Self(8);

    /// Loads that are kept.
    pub(crate) const RANGE: RangeInclusive<f32> = 1.0 / 32.0..=4.0;

    /// The quarter octave nearest to a load; nothing beyond the thinnest and the heaviest.
    #[must_use]
    pub fn nearest(load: f32) -> Option<Self> {
        let quarters = (4.0 * load.log2()).round();
        let range = f32::from(Self::THINNEST.0)..=f32::from(Self::HEAVIEST.0);
        range.contains(&quarters).then_some(Self(quarters as i8))
    }

    /// So many quarter octaves above masstone, -20 to 8; nothing beyond them.
    #[must_use]
    pub const fn of_quarters(quarters: i8) -> Option<Self> {
        if Self::THINNEST.0 <= quarters && quarters <= Self::HEAVIEST.0 { Some(Self(quarters)) } else { None }
    }

    /// Quarter octaves above masstone, -20 to 8.
    #[must_use]
    pub const fn quarters(self) -> i8 {
        self.0
    }

    /// As a number, 1/32 to 4; 1 is masstone.
    #[must_use]
    pub fn value(self) -> f32 {
        (0.25 * f32::from(self.0)).exp2()
    }

    /// So many quarter octaves heavier or thinner, held between the thinnest wash and masstone.
    pub(crate) fn washed(self, quarters: i8) -> Self {
        Self((self.0 + quarters).clamp(Self::THINNEST.0, Self::MASSTONE.0))
    }

    /// Every load from the thinnest wash to masstone.
    pub(crate) fn washes() -> impl Iterator<Item = Self> {
        (Self::THINNEST.0..=Self::MASSTONE.0).map(Self)
    }
}

/// A load that painters have a name for.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct NamedLoad {
    /// 1 at masstone.
    pub load: f32,
    /// Its name: common practice, no source.
    pub name: &'static str,
    /// Its fraction as text is set.
    pub sign: &'static str,
    /// Its fraction in plain figures.
    pub plain_sign: &'static str,
}

/// Loads by name, thickest first.
pub const NAMED_LOADS: [NamedLoad; 5] = [
    NamedLoad { load: 1.0, name: "masstone", sign: "1", plain_sign: "1" },
    NamedLoad { load: 0.5, name: "strong wash", sign: "½", plain_sign: "1/2" },
    NamedLoad { load: 0.25, name: "medium wash", sign: "¼", plain_sign: "1/4" },
    NamedLoad { load: 0.125, name: "light wash", sign: "⅛", plain_sign: "1/8" },
    NamedLoad { load: 0.0625, name: "pale wash", sign: "1⁄16", plain_sign: "1/16" },
];

/// The name of the nearest of [`NAMED_LOADS`].
///
/// ```
/// assert_eq!(washpath_core::load_name(0.3), "medium wash");
/// ```
#[must_use]
pub fn load_name(load: f32) -> &'static str {
    let away = |named: &NamedLoad| (named.load / load).log2().abs();
    let nearest = NAMED_LOADS.iter().min_by(|a, b| away(a).total_cmp(&away(b)));
    nearest.map_or("wash", |named| named.name)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn loads_keep_their_quarter_octave() {
        for quarters in -20..=8 {
            let load = Load::of_quarters(quarters).unwrap();
            assert_eq!(Load::nearest(load.value() * 1.05), Some(load));
            assert_eq!((load.quarters(), load.value()), (quarters, (0.25 * f32::from(quarters)).exp2()));
        }
        assert_eq!(
            [Load::THINNEST, Load::HEAVIEST].map(Load::value),
            [*Load::RANGE.start(), *Load::RANGE.end()]
        );
        for load in [0.0, -1.0, 0.02, 5.0, f32::NAN, f32::INFINITY, f32::NEG_INFINITY] {
            assert_eq!(Load::nearest(load), None, "{load}");
        }
        assert_eq!([-21, 9, i8::MIN, i8::MAX].map(Load::of_quarters), [None; 4]);
    }

    #[test]
    fn a_load_has_the_name_of_the_nearest() {
        let names = [4.0, 1.0, 0.36, 0.35, 0.09, 0.0].map(load_name);
        assert_eq!(names, ["masstone", "masstone", "strong wash", "medium wash", "light wash", "masstone"]);
        assert_eq!(load_name(1.0 / 32.0), "pale wash");
    }
}
