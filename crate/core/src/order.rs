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
pub fn in_order<T>(things: Vec<T>, value: impl Fn(&T) -> f32) -> Vec<T> {
    let values = things.iter().enumerate().map(|(i, thing)| (value(thing), i as u32)).collect();
    let mut things: Vec<Option<T>> = things.into_iter().map(Some).collect();
    order(values).into_iter().filter_map(|i| things[i as usize].take()).collect()
}

/// Whole numbers in order of the values beside them; of equal values the lower number first.
pub(crate) fn order(mut values: Vec<(f32, u32)>) -> Vec<u32> {
    values.sort_unstable_by(|a, b| a.0.total_cmp(&b.0).then(a.1.cmp(&b.1)));
    values.into_iter().map(|(_, i)| i).collect()
}
