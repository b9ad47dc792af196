//! Predicts what watercolour paints make together.
//!
//! A painter's question is rarely "what is this colour?"; it is "what happens
//! between these two paints?". This crate answers with a [`Path`]: every ratio
//! of two paints at a [load](Path::load()), and where it comes closest to grey
//! ([`Crossing`]). From paths it builds kits: all that a kit mixes ([`Reach`]), what
//! each pan adds and what is missing ([`Report`]), and the best kit there can be
//! ([`Chooser`]).
//!
//! # Scope
//!
//! Pure computation: no I/O, no clock, no browser. A paint is an absorption
//! and a scattering spectrum ([`Film`]); a mixture adds them by parts
//! ([`mix`]); a film on paper follows Kubelka and Munk ([`layer`]); the
//! eye is the CIE 1931 observer ([`observer`]). Colour spaces come from the
//! `palette` crate ([`colour`]).
//!
//! # Simplifications
//!
//! - Films are even and flat: granulation and edges are described, not mixed.
//! - Parts are volumes of paint as supplied, and add without chemistry.
//! - Paper takes up no paint: a wash lies on it.
//! - Light is diffuse and paints do not fluoresce.
//!
//! # Numbers
//!
//! The mixing kernel and everything drawn are `f32`; fitting and derivation
//! are `f64`. [`layer`] serves both.
//!
//! ```
//! use washpath_core::{Light, Path, Shelf, Stock, View};
//!
//! let shelf = Shelf::built_in();
//! let view = View::new(&Stock::BrightWhite.paper(), Light::D65);
//! let ultramarine = &shelf.find("pb29")?.film;
//! let sienna = &shelf.find("pbr7-burnt-sienna")?.film;
//! let path = Path::new(ultramarine, sienna, &view, 1.0);
//! for point in path.points(9) {
//!     println!("{:3.0} % sienna: L* {:.0}", 100.0 * point.share, point.lab.l);
//! }
//! # Ok::<(), washpath_core::Error>(())
//! ```

mod blend;
mod bound;
mod brief;
pub mod calibrate;
mod cells;
mod choose;
mod cluster;
pub mod colour;
mod coverage;
mod decimal;
mod descent;
mod difference;
mod display;
mod ellipsoid;
mod error;
mod expected;
mod extreme;
mod film;
mod gamut;
mod horizon;
pub mod hue;
mod kit;
pub mod layer;
mod log;
mod matches;
mod measurement;
mod minimum;
mod mixture;
mod named_place;
mod nearest;
mod next;
#[cfg(test)]
mod noise;
pub mod notation;
pub mod observer;
mod optimum;
mod order;
mod outline;
mod own_paint;
pub mod packed;
mod paint;
mod paper;
mod partners;
mod path;
mod picture;
mod place;
mod puddle;
mod reach;
mod recipe;
mod record;
mod report;
mod role;
mod rounding;
mod rows;
mod rules;
pub mod share;
mod sheet;
mod shelf;
mod shift;
mod shortfall;
mod smooth;
pub mod spectrum;
mod study;
mod substitute;
mod surface;
mod surround;
mod swatched;
mod table;
mod texture;
mod varint;
mod view;
mod words;

pub use blend::MOST_FULL;
pub use brief::{Brief, LONGEST_BRIEF_NOTE, LONGEST_TASK, MOST_TASKS};
pub use choose::{Choice, Chooser, MOST_CANDIDATES, MOST_TARGETS, Progress, Reason};
pub use cluster::{CLUSTERS, cluster};
pub use colour::{Display, Lab, Shown, WheelPoint};
pub use coverage::{Coverage, LIMITS, MOST_COVERING};
pub use decimal::Decimal;
pub use difference::{Difference, compare};
pub use error::Error;
pub use expected::Doubt;
pub use film::Film;
pub use gamut::{GAMUT_STEP, gamut};
pub use horizon::horizon;
pub use hue::Hue;
pub use kit::{Kit, KitPaper, LONGEST_TITLE, MOST_OWN, MOST_PANS, MOST_PLACES, MOST_PUDDLES, Pan};
pub use log::{LogRead, read_log, write_log};
pub use matches::{EQUALLY_NEAR, FARTHER, MOST_MATCHES, Match, find_matches};
pub use measurement::{MOST_REFLECTANCE, MOST_SAMPLES, Measured, Measurement, read_measurements};
pub use mixture::{BRUSH_PARTS, mix, next_parts, snap, whole_parts};
pub use named_place::{LONGEST_NAME, MOST_KEPT_COLOURS, NamedPlace};
pub use nearest::Found;
pub use next::{Candidate, Wish, next_paints};
pub use observer::Light;
pub use order::in_order;
pub use outline::{Outline, RAYS};
pub use own_paint::{FIRST_OWN, LONGEST_CAUTION, LONGEST_CODE, LONGEST_PAINT_NAME, Origin, OwnPaint, Patch};
pub use paint::{Learned, Paint, PaintNumber, Tier};
pub use paper::{DARKEST_PAPER, OwnPaper, Paper, Stock};
pub use partners::{NeutralPartner, ShadingPartner, neutral_partners, shading_partners};
pub use path::{Crossing, CrossingKind, Laid, Path, PathPoint, position_of, share_at};
pub use picture::Picture;
pub use place::{MOST_COLOURS, Place};
pub use puddle::Puddle;
pub use reach::{DARK_CHROMA, Dark, LOADS, Mix, Reach};
pub use recipe::{MOST_PAINTS, MOST_PARTS, Recipe};
pub use record::{LONGEST_NOTE, MOST_RECORDS, Record};
pub use report::{Deeper, Duplicate, Gap, Neutral, Report, Worth};
pub use role::Role;
pub use rows::LONGEST_TABLE;
pub use rules::{Avoid, Rules};
pub use sheet::Sheet;
pub use shelf::{Own, Shelf};
pub use shift::{PARTED, SAME, Shift, largest_shift};
pub use shortfall::Shortfall;
pub use smooth::{reflectance_below, reflectance_of};
pub use spectrum::{BANDS, Spectrum};
pub use study::{Study, study};
pub use substitute::{ALIKE, Substitute, substitute};
pub use surface::Surface;
pub use texture::{GRANULATES, STAINS, Separation, Texture};
pub use view::{THINNEST, View};
