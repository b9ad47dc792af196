//! Links as QR codes (ISO/IEC 18004), for a screen and for paper.

use std::fmt;

use std::fmt::Write;

use qrcodegen::{Mask, QrCode, QrCodeEcc, QrSegment, Version};

use crate::area::Area;
use crate::error::Error;
use crate::leaf::{INK, Leaf};

/// Longest link in bytes that becomes a code.
pub const LONGEST_LINK: usize = 2000;

/// Bare modules round a code, as the standard asks for.
const QUIET_ZONE: usize = 4;

/// Smallest module that a telephone reads from a sheet at arm's length, mm.
///
/// Common practice, no source: 0.4 is the usual least, five dots of a 300 dpi printer.
pub const LEAST_MODULE: f32 = 0.42;

/// Side of a printed code, quiet zone included, mm; one with too many modules for it grows.
const SIDE: f32 = 42.0;

/// A link as a square of dark and light modules.
#[derive(Clone)]
pub struct Code(QrCode);

impl fmt::Debug for Code {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_struct("Code").field("modules", &self.0.size()).finish()
    }
}

impl Code {
    /// The code of a link.
    ///
    /// Errors are corrected as well as a printed code of 42 mm allows with
    /// modules that are still read; a link too long for any such code takes the
    /// lowest level and a larger square.
    ///
    /// # Errors
    ///
    /// A link of more than [`LONGEST_LINK`] bytes.
    pub fn of(link: &str) -> Result<Self, Error> {
        const LEVELS: [QrCodeEcc; 4] =
            [QrCodeEcc::High, QrCodeEcc::Quartile, QrCodeEcc::Medium, QrCodeEcc::Low];
        if link.len() > LONGEST_LINK {
            return Err(Error::LongLink(link.len()));
        }
        let segments = QrSegment::make_segments(link);
        let code = |level, most: Version| {
            QrCode::encode_segments_advanced(&segments, level, Version::MIN, most, None::<Mask>, true)
        };
        let readable = LEVELS.into_iter().find_map(|level| code(level, most_readable()).ok());
        match readable {
            Some(code) => Ok(Self(code)),
            None => code(QrCodeEcc::Low, Version::MAX).map(Self).map_err(|_| Error::LongLink(link.len())),
        }
    }

    /// Modules along a side, the quiet zone included.
    #[must_use]
    pub fn side(&self) -> usize {
        self.0.size() as usize + 2 * QUIET_ZONE
    }

    /// Whether the module of a column and a row, counted from 0 with the quiet zone, is dark.
    #[must_use]
    pub fn is_dark(&self, column: usize, row: usize) -> bool {
        let at = |index: usize| index as i32 - QUIET_ZONE as i32;
        self.0.get_module(at(column), at(row))
    }

    /// Part of the modules, in percent, that may be lost: 7, 15, 25 or 30.
    #[must_use]
    pub fn correction(&self) -> u8 {
        match self.0.error_correction_level() {
            QrCodeEcc::Low => 7,
            QrCodeEcc::Medium => 15,
            QrCodeEcc::Quartile => 25,
            QrCodeEcc::High => 30,
        }
    }

    /// As an SVG document: black on white, a unit a module.
    #[must_use]
    pub fn svg(&self) -> String {
        let side = self.side();
        let mut path = String::new();
        for (column, row, length) in self.runs() {
            let _ = write!(path, "M{column} {row}h{length}v1h-{length}z");
        }
        format!(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {side} {side}\" \
             shape-rendering=\"crispEdges\"><rect width=\"{side}\" height=\"{side}\" fill=\"#ffffff\"/>\
             <path d=\"{path}\" fill=\"#000000\"/></svg>\n"
        )
    }

    /// Side of the printed code, quiet zone included, mm.
    #[must_use]
    pub fn printed_side(&self) -> f32 {
        SIDE.max(self.side() as f32 * LEAST_MODULE)
    }

    /// Draws it with its corner at a place of a leaf.
    pub(crate) fn draw(&self, leaf: &mut Leaf, left: f32, top: f32) {
        let module = self.printed_side() / self.side() as f32;
        for (column, row, length) in self.runs() {
            let [x, y] = [column, row].map(|index| index as f32 * module);
            let area = Area::new(left + x, top + y, length as f32 * module, module);
            leaf.rectangle(area, Some(INK), None);
        }
    }

    /// Dark modules side by side: column, row, how many.
    fn runs(&self) -> Vec<(usize, usize, usize)> {
        let mut runs: Vec<(usize, usize, usize)> = Vec::new();
        for row in 0..self.side() {
            for column in (0..self.side()).filter(|column| self.is_dark(*column, row)) {
                match runs.last_mut() {
                    Some((first, same, length)) if *same == row && *first + *length == column => *length += 1,
                    _ => runs.push((column, row, 1)),
                }
            }
        }
        runs
    }
}

/// The largest version whose modules are still read at the usual side.
fn most_readable() -> Version {
    // A code of version v has 4 v + 17 modules a side.
    let modules = (SIDE / LEAST_MODULE) as usize - 2 * QUIET_ZONE;
    Version::new(((modules.saturating_sub(17)) / 4).clamp(1, 40) as u8)
}
