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

#![warn(missing_debug_implementations)]

mod choose;
pub mod colour;
mod error;
mod kit;
mod matching;
mod mixing;
mod numeric;
mod optics;
mod paint;
mod reach;
mod swatches;
mod text;

pub use colour::{hue, notation};
pub use kit::link;
pub use numeric::levenberg;
pub use optics::{layer, observer, spectrum};
pub use paint::{packed, rating};
pub use swatches::calibrate;

pub use choose::choice::{Choice, Reason};
pub use choose::chooser::{Chooser, Progress};
pub use choose::rules::{Avoid, Rules};
pub use colour::difference::{Difference, compare};
pub use colour::display::{Display, Shown, shown, shown_on};
pub use colour::gamut::gamut;
pub use colour::hue::Hue;
pub use colour::outline::Outline;
pub use colour::{Lab, WheelPoint};
pub use error::Error;
pub use kit::brief::{Brief, LONGEST_BRIEF_NOTE, LONGEST_TASK, MOST_TASKS};
pub use kit::named_targets::{LONGEST_TARGETS_NAME, MOST_KEPT_COLOURS, NamedTargets};
pub use kit::puddle::Puddle;
pub use kit::targets::{Target, Targets};
pub use kit::{Kit, LONGEST_TITLE, MOST_NAMED_TARGETS, MOST_OWN_PAINTS, MOST_PANS, MOST_PUDDLES, Pan};
pub use matching::cluster::cluster;
pub use matching::matches::{Match, Parting, find_matches};
pub use matching::picture::Picture;
pub use matching::shortfall::Shortfall;
pub use matching::study::{Study, study};
pub use mixing::doubt::Doubt;
pub use mixing::load::{Load, NAMED_LOADS, NamedLoad, load_name};
pub use mixing::mixture::{mix, next_parts, snap, whole_parts};
pub use mixing::part::Part;
pub use mixing::partners::{NEARLY_GREY, NeutralPartner, ShadingPartner, neutral_partners, shading_partners};
pub use mixing::path::{Crossing, CrossingKind, Laid, Path, PathPoint, position_of, share_at};
pub use mixing::ratio::Ratio;
pub use mixing::recipe::{MOST_PAINTS, Recipe};
pub use mixing::sheet::{SHEET_RATIOS, Sheet};
pub use mixing::shift::{LaidRecipe, SAME, Shift, largest_shift};
pub use numeric::sort::in_order;
pub use optics::film::Film;
pub use optics::observer::Light;
pub use optics::paper::{KitPaper, OwnPaper, Paper, Stock};

pub use optics::spectrum::{BANDS, Spectrum};
pub use optics::surface::Surface;
pub use optics::view::{THINNEST, View};
pub use paint::number::PaintNumber;
pub use paint::shelf::Shelf;
pub use paint::texture::{Separation, Texture};
pub use paint::{DoubtLeft, ExpectedError, Learned, Paint, Tier};

pub use reach::coverage::{Coverage, LIMITS, Within};
pub use reach::darks::{Dark, DarkMix};
pub use reach::horizon::horizon;
pub use reach::nearest::Found;
pub use reach::next::{Candidate, Wish, next_paints};
pub use reach::report::{Deepener, Deeper, Duplicate, Gap, Graded, Neutral, Report, Worth};
pub use reach::role::Role;
pub use reach::substitute::{Substitute, substitute};
pub use reach::{LOADS, Mix, Reach};
pub use swatches::log::dates::{DayOrder, UnsureDate};
pub use swatches::log::{LogRead, read_log, write_log};
pub use swatches::measurement::bands::MOST_REFLECTANCE;
pub use swatches::measurement::{Measured, Measurement, read_measurements};
pub use swatches::own_id::OwnId;
pub use swatches::own_paint::{LONGEST_PAINT_NAME, Origin, OwnPaint};
pub use swatches::patch::{Patch, Wash};
pub use swatches::record::{LONGEST_NOTE, MOST_RECORDS, Record};
pub use swatches::teaching::{Judged, PlannedSwatch, Taught, teach};
pub use text::decimal::Decimal;
