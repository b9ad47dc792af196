//! The gamut of real surface colours: an even set of colours to hold a kit's reach against.
//!
//! M. R. Pointer, "The gamut of real surface colours", Color Research and
//! Application 5 (1980) 145: the greatest chroma of 4089 measured surfaces, by
//! L* and h under illuminant C. A colour under D65 is adapted to C (Bradford)
//! and held against the table, interpolated between its rows and columns.
//! A watercolour on paper, whose surface sends back a few percent, cannot reach
//! all of it.

use std::sync::LazyLock;

use palette::chromatic_adaptation::adaptation_matrix;
use palette::convert::{Convert, FromColorUnclamped, IntoColorUnclamped};
use palette::lms::matrix::Bradford;
use palette::white_point::{C, D65};
use palette::{Lab as AnyLab, Xyz};

use crate::colour::{Lab, chroma, hue_angle};
use crate::text::decimal;

/// Distance between neighbours in L*, a* and b*.
pub const GAMUT_STEP: i32 = 10;

/// L* of the table's first row, its rows' and its columns' distance.
const DARKEST: f32 = 15.0;
const LIGHTNESS_STEP: f32 = 5.0;
const ANGLE_STEP: f32 = 10.0;

/// Farthest a* and b* that are looked at; the table's greatest chroma is 132.
const FARTHEST: i32 = 140;

static COLOURS: LazyLock<Vec<Lab>> = LazyLock::new(lattice);

/// Colours spread evenly, 10 units of CIELAB apart, over the gamut of real surfaces; some eight hundred.
#[must_use]
pub fn gamut() -> &'static [Lab] {
    &COLOURS
}

/// The table: a row each L*, a chroma each h. The file is part of the program.
fn table() -> Vec<Vec<f32>> {
    let rows = include_str!("../../data/pointer.csv").lines();
    let numbers = |row: &str| {
        let cells = row.split(',').skip(1);
        cells
            .map(|cell| decimal::read(cell).expect("pointer.csv holds numbers: a test reads it all") as f32)
            .collect()
    };
    rows.filter(|row| row.starts_with(|c: char| c.is_ascii_digit())).map(numbers).collect()
}

fn lattice() -> Vec<Lab> {
    let table = table();
    let under_c = adaptation_matrix::<f32, D65, C, Bradford>(None, None);
    let adapted = |lab: Lab| -> Lab {
        let xyz: Xyz<C, f32> = under_c.convert(Xyz::<D65, f32>::from_color_unclamped(lab));
        let lab: AnyLab<C, f32> = xyz.into_color_unclamped();
        Lab::new(lab.l, lab.a, lab.b)
    };
    let steps = |from: i32, to: i32| (from / GAMUT_STEP..=to / GAMUT_STEP).map(|n| (n * GAMUT_STEP) as f32);
    let mut colours = Vec::new();
    for l in steps(0, 100) {
        for a in steps(-FARTHEST, FARTHEST) {
            for b in steps(-FARTHEST, FARTHEST) {
                let lab = Lab::new(l, a, b);
                if holds(&table, adapted(lab)) {
                    colours.push(lab);
                }
            }
        }
    }
    colours
}

/// Whether the table holds a colour of illuminant C.
fn holds(table: &[Vec<f32>], lab: Lab) -> bool {
    let row = (lab.l - DARKEST) / LIGHTNESS_STEP;
    let last = table.len() - 1;
    if !(0.0..=last as f32).contains(&row) {
        return false;
    }
    let below = (row as usize).min(last - 1);
    let limit = |row: usize| {
        let columns = &table[row];
        let column = hue_angle(lab) / ANGLE_STEP;
        let left = column as usize % columns.len();
        let right = (left + 1) % columns.len();
        columns[left] + column.fract() * (columns[right] - columns[left])
    };
    let part = row - below as f32;
    chroma(lab) <= (1.0 - part) * limit(below) + part * limit(below + 1)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_gamut_is_pointers_as_another_program_has_it() {
        // tests/reference/pointer_gamut.csv says how colour-science made it.
        let path = concat!(env!("CARGO_MANIFEST_DIR"), "/tests/reference/pointer_gamut.csv");
        let text = std::fs::read_to_string(path).unwrap();
        let table = table();
        assert_eq!((table.len(), table.iter().map(Vec::len).sum::<usize>()), (16, 576));
        let under_c = adaptation_matrix::<f32, D65, C, Bradford>(None, None);
        let mut rows = 0;
        for row in text.lines().filter(|row| row.starts_with(|c: char| c.is_ascii_digit())) {
            let cells: Vec<f32> = row.split(',').map(|cell| cell.parse().unwrap()).collect();
            let chroma =
                table[((cells[0] - DARKEST) / LIGHTNESS_STEP) as usize][(cells[1] / ANGLE_STEP) as usize];
            assert_eq!(chroma, cells[2], "{row}");
            let seen = Lab::new(cells[3], cells[4], cells[5]);
            let xyz: Xyz<C, f32> = under_c.convert(Xyz::<D65, f32>::from_color_unclamped(seen));
            let lab: AnyLab<C, f32> = xyz.into_color_unclamped();
            // The first and the last row lie on the table's edge, where rounding decides.
            let lab = Lab::new(lab.l.clamp(DARKEST, 90.0), lab.a, lab.b);
            assert_eq!(holds(&table, lab), cells[6] == 1.0, "{row}");
            rows += 1;
        }
        assert!(rows > 100, "{rows}");
    }

    #[test]
    fn colours_are_many_and_even() {
        let colours = gamut();
        assert!((700..900).contains(&colours.len()), "{}", colours.len());
        assert!(colours.contains(&Lab::new(50.0, 0.0, 0.0)));
        assert!(!colours.contains(&Lab::new(50.0, 0.0, -90.0)));
        assert!(colours.iter().all(|lab| (20.0..=90.0).contains(&lab.l)));
    }
}
