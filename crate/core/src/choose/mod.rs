//! The best kit there can be: so many paints out of many, for some targets, under rules.
//!
//! ```text
//! cost of a kit = sum over the targets of w min(1, (d / 10)²)
//! ```
//!
//! w is a colour's share of the weight; d is CIEDE2000 to the nearest mix of one or
//! two paints of the kit, at any ratio and load, and 0 where three of them surround
//! the colour. So 0 is a kit that mixes all, 1 one that comes near nothing.
//!
//! Where the kits that keep the rules are few, all are tried. Else a greedy kit,
//! and kits disturbed from the best so far, are improved by the best exchange of
//! one paint until none helps. How much better any kit could be at most
//! is proven by a bound.

mod bound;
pub(crate) mod choice;
pub(crate) mod chooser;
mod pair_costs;
pub(crate) mod rules;
mod search;
mod served;
