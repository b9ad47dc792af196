//! Derives the built-in shelf of paints from open measurements.
//!
//! The one product is [`files`], those of `crate/core/data` that hold the shelf.
//! They are deterministic and come from nothing but the tables in `data/`, which
//! are part of the program; `data/README.md` names their origin and licence.
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
//! bright white paper, and masstone is the same for every paint: the handbook's
//! measured paint-out, a juicy wash that has dried. Its L* is 97 less the
//! handbook's value range: of 121 shades that have both a measured colour and a
//! value range the two agree by 0.1 in the mean, 1.8 at one standard deviation
//! (each is an average over other makers' paints). It is no brushful from the
//! tube: a strong stainer's paint-out is lighter than what painters call its
//! masstone (PB15:3 L* 40, PG7 43, PG36 51), which is load 2 to 4 (30 to 24, 31
//! to 24, 37 to 27). Eight numbers turn a film into a paint,
//!
//! ```text
//! ln K' = d + m + (1 + g) (ln K(w - v) - m) + t1 cos(pi x) + t2 cos(2 pi x)
//! ln S' = d + s + ln S + u1 cos(pi x) + u2 cos(2 pi x)
//!                                         m = greatest ln K, x = 0 .. 1 over the bands
//! ```
//!
//! strength d, scattering s, contrast g, tilt t1, bend t2, tilt u1 and bend u2 of S
//! as far as the film hid its grounds, and a shift v of the edge of cadmiums. These are
//! one solid solution: the cards' twelve shades have their edges at 487 to 637 nm, a
//! maker's shade lies anywhere between two, and so v is usually half a step, 7 nm.
//! (Without it cadmium yellows were 2.2 off their masstones, and their tints 3 to 5
//! degrees too green.) They minimise the
//! squares of: the masstone's distance from the handbook's (lightness, chroma
//! and hue parts in units of 0.7 just visible steps, 1.5 where the handbook's
//! chroma is an estimate); the hue of the tint half as dark, in units of 5
//! degrees; the contrast ratio, surface light taken off, outside
//! 1 - 0.3 Tr .. 1.4 - 0.3 Tr of the handbook's rating Tr (0 opaque to 4
//! transparent), in units of 0.2; and the corrections themselves, in units of
//! 0.35 (s), 0.3 (g), 0.4 (t1, t2). A hiding film's strength is not in its
//! colour, so the mean of its four strongest bands is kept near 4 within a
//! factor of e^0.6. That, and the cards' S, which is e^0.6 less beside K's peak than
//! acrylics and phantoms have, is why cadmium yellows hide 0.2 to 0.4 where their
//! rating asks 0.4 to 0.64; a wider hold on S changes nothing, as their chroma resists
//! it. A hold of e^1.2 for cadmiums (as minerals' peaks spread that nothing holds)
//! made them 1.6 times as heavy and hide 0.24 to 0.51, but paints that are left out
//! and remade from two colours were worse by a tenth: not kept. Where several samples stand for a paint, the one with the
//! smallest sum is taken. Whites have no masstone to anchor: they hold
//! as much pigment by volume as PV15, the one coloured mineral among the phantoms;
//! organic pigments make a masstone of an eighth of that.
//!
//! **4. Cross-check** (`check`): a paint is cross-checked where a second,
//! independent set agrees in the shape of ln K (or ln K/S of a powder) with
//! r of 0.95 or more and a slope of 0.5 to 2.
//!
//! **5. Paints nobody measured** (`kinship`, `estimate`). A paint with handbook
//! colours but no spectrum is the mean of its relatives, each bent until it
//! shows those colours. Relatives are the twelve measured paints j with the
//! greatest
//!
//! ```text
//! n_j = kinship_j exp(-(dE_j / 15)² / 2)     dE: CIEDE2000 of the two handbook masstones
//! ```
//!
//! kinship being 1 in the same chemical group (perylenes, cadmiums, ...), 0.55
//! among azo and like pigments, 0.3 among organics or among minerals, else
//! 0.15. Each is bent by the first five numbers of step 3 and the
//! shift, here of usually 15 nm, which minimise the same sum of squares.
//! Then
//!
//! ```text
//! ln K = sum n_j ln K_j / sum n_j            ln S alike
//! ```
//!
//! and the mean is anchored once more as in step 3. Kinship's steps and the 15
//! were chosen by leaving paints out (8 to 25 change the mixes' median by 0.1; no
//! kinship at all worsens their 90th percentile by 0.8). Favouring relatives
//! that need less bending did not help, nor did a floor under the nearness of the same
//! group (left out, 0.01 and 0.03 change nothing, 0.1 and 0.3 worsen the 90th percentile by
//! 0.1 and 0.8): perylene black stands on other blacks, as the one measured perylene is a red. A pale paint is a white
//! that holds a little colour; its strength and scattering are left free.
//!
//! **6. How sure** (`trial`). [`leave_one_out`] estimates each measured paint
//! from those of other Colour Index names and mixes both versions with fifteen
//! fixed paints, 4:1 to 1:4, at loads 1 and 1/4. [`second_spectra`] makes a
//! paint from a second set (acrylics, phantoms), anchored alike, and does the
//! same. CIEDE2000, median and 90th percentile:
//!
//! | | load 1 | 1/2 | 1/4 | 1/8 | mixes |
//! |---|---|---|---|---|---|
//! | 86 paints left out | 0.3, 1.2 | 1.6, 3.7 | 2.3, 5.4 | 2.4, 5.5 | 1.5, 4.8 |
//! | 22 second spectra | 0.4, 1.1 | 1.9, 5.0 | 2.8, 8.0 | 2.8, 10.0 | 1.7, 6.5 |
//!
//! If two measurements are equally good, one is off by 1 / sqrt 2 of their
//! difference, and an estimate by the root of the sum of both squares. These are
//! the figures of [`washpath_core::Tier::expected_error`]. A paint whose second
//! set agrees in shape is no nearer to it in its mixes than one whose does not:
//! binder and concentration part them.
//!
//! **7. Strength** (`sources.csv`). Parts are volumes of paint as supplied, load 1
//! is masstone, and strong stainers reach masstone with less. For the pigments of
//! the phantoms, A mm mg/g is the pigment in a masstone film, from
//! K / (2 mua) of the eight strongest bands: 2.0 (PR122), 2.8 (PB15:3, PG7), 3.7
//! (PR170), 4.1 (PV23), 4.6 (PV19 violet, PR202), 6.6 (PO73), 34 (PV15). At equal
//! pigment load strength is 8 / A; PV15 holds about twice as much (common
//! practice). Yellows' A disagrees between bands too much to use. All others
//! have their family's figure or one of common practice without a source:
//! Prussian, carbon and perylene strong, earths, viridian, cobalts, manganese
//! violet weak, ultramarine 1. Where a paint has only the latter and the oils hold
//! its pigment (Geldof 2018: PBk9, PG18, PB27, PB28, PR106, NR4 in zinc white), the
//! figure is the geometric mean of common practice and of the oils' at equal volume
//! of pigment, ultramarine 1 in both (`strength`). Against other makers' watercolours
//! (`evaluate shelf`) that takes the median from 6.0 to 5.5, from 6.1 to 5.7 with
//! loads found without both paints; viridian with burnt sienna, one part each, became
//! a drab brown (C* 17) where it had been an orange one (C* 26).
//!
//! **8. Averaging** over what is not known was tried where one guess decides, and left.
//! Cards: twelve draws of the three holds of step 1, each over a factor of nine
//! (estimates 1.45 and 4.6, second spectra 1.8 and 6.7, other makers' paints 0.02
//! nearer), and of the surface's share, 0.6 to 0.98 (1.49 and 4.7, 1.6 and 6.3, 0.04
//! farther; neutral pairs within C* 5 from 73 to 78 %). Relatives: nearness over five
//! widths from 8 to 25 (estimates 1.46 and 4.8). None helps paints that are left out.
//!
//! # Limits
//!
//! An estimate cannot hold a band that no relative has: left out, manganese and
//! cobalt colours, umbers and coarse iron violets are the worst (5 to 7
//! CIEDE2000 in the median of their mixes), and estimated paints alone in their
//! chemistry are no better.
//! Load 1 is the handbook's painted masstone, not a fixed weight of pigment: the
//! strongest paints were painted thinner than a tube holds, so their real
//! strength at equal volume is greater than K tells: see step 7, good to a factor of 1.7 or so.
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
mod oils;
mod patchy;
mod phantoms;
mod ratings;
mod separate;
mod shelf;
mod sources;
mod squares;
mod strength;
mod table;
mod trial;

pub use anchor::Anchored;
pub use error::Error;
pub use shelf::{File, derive, files};
pub use trial::{Trial, leave_one_out, second_spectra};
