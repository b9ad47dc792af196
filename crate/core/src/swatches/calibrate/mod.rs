//! Calibration: paints fitted to swatches of themselves and of their mixes.
//!
//! A swatch is paint of known parts on known paper, measured as a spectrum or
//! as CIELAB. Built-in paints, a painter's new paint and a painter's correction
//! of a paint on the shelf are all fitted here; they differ in what is known
//! before ([`Prior`]).
//!
//! # Model
//!
//! A swatch holds a quantity q_i of each paint; 1 is masstone. A heavier drop
//! spreads wider, so its film grows by less than its quantity:
//!
//! ```text
//! x_i = q_i Q^(gamma - 1)        Q = sum q_i
//! K = sum x_i K_i                S = sum x_i S_i
//! R = surface(film(K, S, paper))
//! ```
//!
//! with the film of [`crate::optics::layer`] and the surface of [`crate::Surface`].
//! gamma belongs to paper and brush, not to a paint; a surface may be a paint's own
//! ([`Ground::floors`]). What swatches do not tell of them [`consensus`] averages over.
//!
//! # What is minimised
//!
//! Over u = (ln K, ln S) of all paints and bands, with u0 what is expected:
//!
//! ```text
//! sum  rho(w (R^(1/3) - M^(1/3)) / 0.01)             spectral swatches M
//! sum  rho(3.1 dL) + rho(3.1 da / SC) + rho(3.1 db / SC)   CIELAB swatches, SC = 1 + 0.045 C*
//! sum  (level (u - u0))² + (slope D1 (u - u0))² + (bend D2 (u - u0))²
//! ```
//!
//! The cube root is the eye's: 0.01 of it is 1.16 L* (CIE 15:2018). w² is a
//! band's share in X, Y and Z, plus a tenth of the mean. rho is Cauchy's, 9
//! ln(1 + r²/9): a square for small r, ever flatter beyond, so that one spoilt
//! swatch does not spoil a paint (P. W. Holland, R. E. Welsch, Commun. Stat. A6
//! (1977) 813, from memory). D1 and D2 are differences along the bands. Solved
//! by Levenberg and Marquardt (D. W. Marquardt, J. SIAM 11 (1963) 431) with
//! exact slopes; the same input always gives the same paints.
//!
//! # Limits
//!
//! Where a film hides its paper only K / S is seen. The level of S, the paint's
//! strength in a mix, then comes from what is expected (S about 1 at masstone)
//! until mixes are learned from.

mod band_matrix;
mod component;
mod consensus;
mod curves;
mod evidence;
mod film;
mod fit;
mod forward;
mod ground;
mod learner;
mod lesson;
mod normal;
mod plan;
mod prior;
mod problem;
mod residual;
mod row;
mod swatch;
mod variance;

pub use consensus::{DRAWS, consensus};
pub use curves::{Curves, LEAST};
pub use evidence::{Evidence, Known};
pub use fit::{Calibration, fit};
pub use ground::Ground;
pub use learner::Learner;
pub use lesson::{ErrorChange, Lesson};
pub use plan::{Plan, PlannedPart, Step, Wanted};
pub use prior::{Hold, Prior};
pub use swatch::{Seen, Swatch};

#[cfg(test)]
mod tests;
