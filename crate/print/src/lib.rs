//! Leaves to print and to paint on.
//!
//! A teacher's paper: mixing charts, sheets of a pair, wheels, tins with labels
//! and swatch cards, each with the predicted colours beside empty places for the
//! brush. A [`Leaf`] is a page as a few plain shapes in millimetres; [`svg`]
//! and [`pdf`] write it true to scale. [`Code`] makes a link a QR code.
//!
//! # Scope
//!
//! Pure computation: no I/O, no clock, no browser. The caller names title and
//! date. Colours are sRGB of the mix in daylight on the kit's paper; no printer
//! is profiled, so every sheet says that the painted half is the truth.
//!
//! # Simplifications
//!
//! - One weight of one Latin face. In a PDF, characters it lacks are boxes; an
//!   SVG leaves them to the viewer's own faces.
//! - Words run from left to right, one line each.
//!
//! ```
//! use washpath_core::{PaintNumber, Shelf, Stock};
//! use washpath_print::{Order, chart, pdf};
//!
//! let shelf = Shelf::built_in();
//! let paints: Vec<PaintNumber> = ["pb29", "pbr7-burnt-sienna", "py42"]
//!     .iter()
//!     .map(|key| Ok(shelf.find(key)?.number))
//!     .collect::<Result<_, washpath_core::Error>>()?;
//! let order = Order::new(shelf, "Harbour", "1 October", &Stock::BrightWhite.paper());
//! let leaves = chart(&order, &paints, 0.5, false)?;
//! assert_eq!(leaves.len(), 1);
//! assert!(pdf(&leaves, order.title).starts_with(b"%PDF"));
//! # Ok::<(), washpath_print::Error>(())
//! ```

#![warn(missing_debug_implementations)]

mod area;
mod cards;
mod chart;
mod error;
mod font;
mod leaf;
mod order;
mod pair;
mod pdf;
mod qr;
mod svg;
mod tin;
mod wheel;
mod words;

pub use area::Area;
pub use cards::{CARD, cards};
pub use chart::chart;
pub use error::Error;
pub use leaf::{Anchor, HAIR, INK, Leaf, Paintwork, Point, QUIET, Rgb, Shape, Stroke, Text};
pub use order::{Format, Order, RULE};
pub use pair::{Pair, pair};
pub use pdf::pdf;
pub use qr::{Code, LEAST_MODULE, LONGEST_LINK};
pub use svg::svg;
pub use tin::{FULL_PAN, HALF_PAN, Labels, tin};
pub use wheel::wheel;
