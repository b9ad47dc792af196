//! Numbers alone: descents, minima, orders.

pub(crate) mod cube_root;
pub(crate) mod descent;
pub(crate) mod gcd;
pub mod levenberg;
pub(crate) mod minimum;
pub(crate) mod minmax;
#[cfg(test)]
pub(crate) mod noise;
pub(crate) mod sort;
