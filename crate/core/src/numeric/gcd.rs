//! The greatest common divisor.

/// Of two whole numbers, by Euclid; of 0 and a number that number.
pub(crate) const fn gcd(mut a: u64, mut b: u64) -> u64 {
    while b != 0 {
        (a, b) = (b, a % b);
    }
    a
}
