//! Limits of counts and numbers.

use std::ops::RangeInclusive;

use crate::error::Error;

/// Refuses a count outside a range; `holder` is what sets it, with its verb.
#[inline(never)]
pub(crate) fn counted(
    count: usize,
    range: RangeInclusive<usize>,
    things: &'static str,
    holder: &'static str,
) -> Result<(), Error> {
    let (least, most) = range.into_inner();
    if (least..=most).contains(&count) {
        Ok(())
    } else {
        Err(Error::Count { count, things, holder, least, most })
    }
}

/// Refuses a number outside a range, and NaN.
#[inline(never)]
pub(crate) fn within(what: &str, value: f64, [least, most]: [f64; 2]) -> Result<(), Error> {
    if (least..=most).contains(&value) {
        return Ok(());
    }
    let [value, least, most] = [value, least, most].map(|value| value as f32);
    Err(Error::OutOfRange { what: what.to_owned(), value, least, most })
}
