//! Hue families, as a painter would name them across the table.

use crate::colour::{Lab, hue_angle};

/// C* up to which a mix is a pure grey (MacEvoy, measured mixing lines).
pub const PURE_GREY: f32 = 2.0;

/// C* up to which a mix is a near grey (same source).
pub const NEAR_GREY: f32 = 5.0;

/// Hue names round the rim, at the CAM16 hue angles of Munsell's 5R, 5YR, 5Y,
/// 5G and 5P at value 5, chroma 8; blue halfway between 5B and 5PB
/// (tests/reference/d_munsell_hue_angles_V5C8.csv).
pub const HUE_NAMES: [(f64, &str); 6] =
    [(20.8, "red"), (54.9, "orange"), (94.2, "yellow"), (166.4, "green"), (242.0, "blue"), (316.0, "violet")];

/// A hue family: six hues and the usual in-betweens.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Hue {
    /// Around h 30.
    Red,
    /// Around h 48.
    RedOrange,
    /// Around h 60.
    Orange,
    /// Around h 72.
    YellowOrange,
    /// Around h 88.
    Yellow,
    /// Around h 110.
    YellowGreen,
    /// Around h 150.
    Green,
    /// Around h 200.
    BlueGreen,
    /// Around h 265.
    Blue,
    /// Around h 300.
    BlueViolet,
    /// Around h 320.
    Violet,
    /// Around h 355; also called magenta.
    RedViolet,
}

impl Hue {
    /// Every family, from red on.
    pub const ALL: [Self; 12] = [
        Self::Red,
        Self::RedOrange,
        Self::Orange,
        Self::YellowOrange,
        Self::Yellow,
        Self::YellowGreen,
        Self::Green,
        Self::BlueGreen,
        Self::Blue,
        Self::BlueViolet,
        Self::Violet,
        Self::RedViolet,
    ];

    /// Every family with the CIELAB angle at which it begins, from h = 8 on.
    ///
    /// Halfway between the families' middles in measured paints (MacEvoy).
    const BEGINS: [(f32, Self); 12] = [
        (8.0, Self::Red),
        (40.0, Self::RedOrange),
        (54.0, Self::Orange),
        (66.0, Self::YellowOrange),
        (78.0, Self::Yellow),
        (98.0, Self::YellowGreen),
        (130.0, Self::Green),
        (180.0, Self::BlueGreen),
        (232.0, Self::Blue),
        (284.0, Self::BlueViolet),
        (306.0, Self::Violet),
        (335.0, Self::RedViolet),
    ];

    /// The family a CIELAB hue angle in degrees falls into; any finite angle.
    #[must_use]
    pub fn of_angle(degrees: f32) -> Self {
        let angle = degrees.rem_euclid(360.0);
        Self::BEGINS.iter().rev().find(|(begin, _)| angle >= *begin).map_or(Self::RedViolet, |(_, hue)| *hue)
    }

    /// The family of a colour; of no meaning near neutral.
    #[must_use]
    pub fn of(lab: Lab) -> Self {
        Self::of_angle(hue_angle(lab))
    }

    /// Whether painters call it warm: red violet to yellow. Common practice, no source.
    #[must_use]
    pub const fn is_warm(self) -> bool {
        matches!(
            self,
            Self::RedViolet | Self::Red | Self::RedOrange | Self::Orange | Self::YellowOrange | Self::Yellow
        )
    }

    /// Its name.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Red => "red",
            Self::RedOrange => "red orange",
            Self::Orange => "orange",
            Self::YellowOrange => "yellow orange",
            Self::Yellow => "yellow",
            Self::YellowGreen => "yellow green",
            Self::Green => "green",
            Self::BlueGreen => "blue green",
            Self::Blue => "blue",
            Self::BlueViolet => "blue violet",
            Self::Violet => "violet",
            Self::RedViolet => "red violet",
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn measured_masstones_get_the_names_painters_use() {
        // Hue angles: MacEvoy, handprint.com/HP/WCL/waterfs, measured masstones.
        for (angle, name) in [
            (30.5, "red"),         // PR254
            (50.0, "orange"),      // PO20, called cadmium orange: borders on red orange
            (89.0, "yellow"),      // PY35 light
            (161.0, "green"),      // PG36
            (257.0, "blue"),       // PB15:3
            (310.0, "violet"),     // PV23
            (359.0, "red violet"), // PR122
        ] {
            let found = Hue::of_angle(angle).name();
            assert!(found.contains(name), "h {angle} is {found}, not {name}");
        }
    }

    #[test]
    fn every_angle_has_a_name() {
        for tenth in -7200..7200 {
            let _ = Hue::of_angle(tenth as f32 / 10.0);
        }
        assert_eq!(Hue::of_angle(0.0), Hue::RedViolet);
        assert_eq!(Hue::of_angle(360.0), Hue::RedViolet);
    }

    /// Common practice, no source.
    #[test]
    fn fire_is_warm_and_water_is_cool() {
        for (angle, warm) in [(30.0, true), (60.0, true), (88.0, true), (150.0, false), (265.0, false)] {
            assert_eq!(Hue::of_angle(angle).is_warm(), warm, "h {angle}");
        }
    }
}
