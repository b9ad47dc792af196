//! The border between the core and the page.
//!
//! Arguments come in as numbers and plain objects, answers go out as typed
//! arrays, plain objects and strokes on a canvas. No formula lives here: the
//! core computes, [`geometry`] lays out, `wheel` and `dab` draw.

mod adviser;
mod border;
mod choosing;
mod codes;
mod dab;
mod from_page;
pub mod geometry;
mod kits;
mod marks;
mod matching;
mod own;
mod pair;
mod partners;
mod pen;
mod printing;
mod reach;
mod readout;
mod records;
mod scene;
mod shelf;
mod sight;
mod strand;
mod studio;
mod wash;
mod wheel;

pub use adviser::Adviser;
pub use choosing::Choosing;
pub use kits::{decode_kit, encode_kit};
pub use matching::{colours_of, hex_of, read_colour, sample, white_balance};
pub use own::{compare, first_own, lab_of_seen, read_own};
pub use printing::{print_pdf, print_svg, qr_svg};
pub use records::{learn, log_of, read_record, records_of, samples_of};
pub use shelf::{built_in_count, paints, set_shelf};
pub use studio::{Studio, read_paper};
