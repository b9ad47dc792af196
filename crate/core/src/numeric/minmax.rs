//! The lesser and the greater of two numbers, as fast in a browser as elsewhere.
//!
//! `f32::min` and `f32::max` pass a NaN over, which no instruction of WebAssembly
//! does: there each is a call, and a loop with one never becomes vector code. A
//! comparison does. Both give the second where either number is NaN.

/// The lesser of two numbers.
#[inline]
pub(crate) fn lesser(a: f32, b: f32) -> f32 {
    if a < b { a } else { b }
}

/// The greater of two numbers.
#[inline]
pub(crate) fn greater(a: f32, b: f32) -> f32 {
    if a > b { a } else { b }
}
