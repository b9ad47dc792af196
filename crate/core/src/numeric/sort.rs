//! Putting things in order by a number.

use std::collections::BinaryHeap;

/// Things in order of a value of theirs, the least first; equal ones keep their order.
///
/// One sort of whole numbers, by a heap, serves all kinds of things: a sort for each
/// kind, or the standard library's for slices, is a large part of a program that has
/// to be downloaded.
///
/// ```
/// use washpath_core::in_order;
/// assert_eq!(in_order(vec!["violet", "red", "blue"], |word| word.len() as f32), ["red", "blue", "violet"]);
/// ```
pub fn in_order<T>(mut things: Vec<T>, value: impl Fn(&T) -> f32) -> Vec<T> {
    let values = things.iter().enumerate().map(|(i, thing)| (value(thing), i as u32)).collect();
    for (index, other) in swaps(order(values)).into_iter().enumerate() {
        things.swap(index, other as usize);
    }
    things
}

/// For each index in turn the index to swap it with, so that what stood where `from` says comes there.
#[inline(never)]
fn swaps(mut from: Vec<u32>) -> Vec<u32> {
    for index in 0..from.len() {
        // What stood at an earlier index has been swapped away from it.
        while (from[index] as usize) < index {
            from[index] = from[from[index] as usize];
        }
    }
    from
}

/// Whole numbers in order of the values beside them; of equal values the lower number first.
pub(crate) fn order(values: Vec<(f32, u32)>) -> Vec<u32> {
    let keys: BinaryHeap<u64> =
        values.into_iter().map(|(value, i)| rank(value) << 32 | u64::from(i)).collect();
    keys.into_sorted_vec().into_iter().map(|key| key as u32).collect()
}

/// A whole number of 32 bits that stands among others as the value does by [`f32::total_cmp`].
fn rank(value: f32) -> u64 {
    let bits = value.to_bits();
    let rank = if value.is_sign_negative() { !bits } else { bits | 1 << 31 };
    u64::from(rank)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        /// The standard library's stable sort is the reference.
        #[test]
        fn things_stand_as_a_stable_sort_has_them(
            values in proptest::collection::vec(prop_oneof![(-4i8..5).prop_map(f32::from), proptest::num::f32::ANY], 0..40)
        ) {
            let things: Vec<_> = values.iter().map(|value| value.to_bits()).enumerate().collect();
            let mut wanted = things.clone();
            wanted.sort_by(|(_, a), (_, b)| f32::from_bits(*a).total_cmp(&f32::from_bits(*b)));
            prop_assert_eq!(in_order(things, |(_, bits)| f32::from_bits(*bits)), wanted);
        }
    }
}
