//! Derives the built-in shelf of paints from open measurements.
//!
//! The one product is [`shelf_csv`], the text of `crate/core/data/shelf.csv`.
//! It is deterministic and reads nothing but the tables in `data/`, which are
//! part of the program; `data/README.md` names their origin and licence.
//!
//! # Method
//!
//! **1. Absorption and scattering of a film** (`cards`, `patchy`, `grounds`,
//! `separate`). A pigment film was measured over four grounds of one card.
//! Painted films are uneven: measured strong bands look too weak beside weak
//! ones. So a film is taken as patches whose thickness d follows an exponential
//! distribution of mean 1,
//!
//! ```text
//! R(K, S, Rg) = outer( mean over d of layer(K d, S d, Rg) )
//! ```
//!
//! with Kubelka and Munk's `layer` and Saunderson's `outer` (k2 = 0.6; k1 in
//! each band is 0.9 times the darkest reading of the whole set, since no card
//! can be darker than its surface). With even films, ln K falls behind the
//! other two sets (their slope against ours is 1.65 in the median of 20
//! pigments); with exponential ones it agrees (1.2) and the readings are
//! explained as well as before (0.004 in R). Found while choosing the model, on
//! the whole set of 398 cards.
//!
//! Unknown are ln K and ln S of every card in every band and the four grounds,
//! shared by all cards. They are found by turns (least squares for each card
//! given the grounds, for the grounds given the cards), each reading weighted
//! by 1 / (0.004 + 0.02 R + stray light of 0.05 at 410 nm, falling by e in
//! 12 nm). Where a film hides all grounds only K / S is seen; a prior keeps
//! ln S level (random walk of 0.2 a band, bend of 0.15) and ln K smooth (bend
//! of 0.3), so S there is that of the nearest bands that show it.
//! Four grounds leave one freedom a band (a shift of all of them along
//! artanh R). It is closed by two facts: printed greys are smooth in
//! wavelength, and past 690 nm the clearest films show the white ground
//! itself, 0.91 measured.
//!
//! **2. Bands below 410 nm** (`extend`): ln K and ln S go on with half their
//! slope over 410 to 450 nm. The phantoms cover all bands themselves:
//! K = 2 mua, S = 3/4 mus'.
//!
//! **3. From film to paint** (`correction`, `anchor`). Load 1 is masstone on
//! bright white paper. Five numbers turn a film into a paint,
//!
//! ```text
//! ln K' = d + m + (1 + g) (ln K - m) + t1 cos(pi x) + t2 cos(2 pi x)
//! ln S' = d + s + ln S                    m = greatest ln K, x = 0 .. 1 over the bands
//! ```
//!
//! strength d, scattering s, contrast g, tilt t1, bend t2. They minimise the
//! squares of: the masstone's distance from the handbook's (lightness, chroma
//! and hue parts in units of 0.7 just visible steps, 1.5 where the handbook's
//! chroma is an estimate); the hue of the tint half as dark, in units of 5
//! degrees; the contrast ratio, surface light taken off, outside
//! 1 - 0.3 Tr .. 1.4 - 0.3 Tr of the handbook's rating Tr (0 opaque to 4
//! transparent), in units of 0.2; and the corrections themselves, in units of
//! 0.35 (s), 0.3 (g), 0.4 (t1, t2). A hiding film's strength is not in its
//! colour, so the mean of its four strongest bands is kept near 4 within a
//! factor of e^0.6. Where several samples stand for a paint, the one with the
//! smallest sum is taken. Whites have no masstone to anchor: they keep the
//! phantoms' strength at equal pigment volume.
//!
//! **4. Cross-check** (`check`): a paint is cross-checked where a second,
//! independent set agrees in the shape of ln K (or ln K/S of a powder) with
//! r of 0.95 or more and a slope of 0.5 to 2.
//!
//! # Limits
//!
//! Load 1 is the handbook's painted masstone, not a fixed weight of pigment: the
//! strongest paints were painted thinner than a tube holds, so their real
//! strength at equal volume is greater than here.
//! Cards were painted from dry pigment in one binder; makers' paints differ.

mod anchor;
mod appearance;
mod cards;
mod check;
mod correction;
mod error;
mod estimate;
mod extend;
mod grounds;
mod handbook;
mod kinship;
mod patchy;
mod phantoms;
mod separate;
mod shelf;
mod sources;
mod squares;
mod table;
mod trial;

pub use anchor::Anchored;
pub use error::Error;
pub use shelf::{derive, shelf_csv, table};
pub use trial::{Trial, leave_one_out, second_spectra};
