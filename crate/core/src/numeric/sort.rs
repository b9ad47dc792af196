//! Putting things in order by a number.

/// Things in order of a value of theirs, the least first; equal ones keep their order.
///
/// One sort of numbers serves all kinds of things: a sort for each kind is a
/// large part of a program that has to be downloaded.
///
/// ```
/// use washpath_core::in_order;
/// assert_eq!(in_order(vec!["violet", "red", "blue"], |word| word.len() as f32), ["red", "blue", "violet"]);
/// ```
pub fn in_order<T>(mut things: Vec<T>, value: impl Fn(&T) -> f32) -> Vec<T> {
    let values = things.iter().enumerate().map(|(i, thing)| (value(thing), i as u32)).collect();
    for (place, other) in swaps(order(values)).into_iter().enumerate() {
        things.swap(place, other as usize);
    }
    things
}

/// For each place in turn the place to swap it with, so that what stood where `from` says comes there.
#[inline(never)]
fn swaps(mut from: Vec<u32>) -> Vec<u32> {
    for place in 0..from.len() {
        // What stood at an earlier place has been swapped away from it.
        while (from[place] as usize) < place {
            from[place] = from[from[place] as usize];
        }
    }
    from
}

/// Whole numbers in order of the values beside them; of equal values the lower number first.
pub(crate) fn order(mut values: Vec<(f32, u32)>) -> Vec<u32> {
    values.sort_unstable_by(|a, b| a.0.total_cmp(&b.0).then(a.1.cmp(&b.1)));
    values.into_iter().map(|(_, i)| i).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        /// The standard library's stable sort is the reference.
        #[test]
        fn things_stand_as_a_stable_sort_has_them(values in proptest::collection::vec(0u8..9, 0..40)) {
            let things: Vec<_> = values.into_iter().enumerate().collect();
            let mut wanted = things.clone();
            wanted.sort_by_key(|(_, value)| *value);
            prop_assert_eq!(in_order(things, |(_, value)| f32::from(*value)), wanted);
        }
    }
}
