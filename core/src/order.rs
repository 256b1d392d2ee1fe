//! Putting lists in order, small.
//!
//! The standard sort is written out anew for every kind of item, several kilobytes each time, and the page has to be
//! loaded over a network. These sort the places of the items by one routine for all of them, then move each item once.
//! They are stable, and some times slower than the standard sort: for lists that are short or seldom sorted; the others
//! are brought into numbers ([`sort_keyed`]).
//! [`OrderedMap`] and [`OrderedSet`] do the same for maps and sets.

mod map;

use std::cmp::Ordering;

pub use litemap::Entry;
pub use map::{OrderedMap, OrderedSet};

/// Sorts by a comparison, items that compare equal keeping their order. O(n log n).
///
/// ```
/// let mut words = vec!["lane", "street", "alley", "path"];
/// hobnail_core::order::sort_by(&mut words, |a, b| a.len().cmp(&b.len()));
/// assert_eq!(words, ["lane", "path", "alley", "street"]);
/// ```
pub fn sort_by<T>(items: &mut [T], mut compare: impl FnMut(&T, &T) -> Ordering) {
    for [place, other] in swaps(items.len(), &mut |a, b| compare(&items[a], &items[b])) {
        items.swap(place, other);
    }
}

/// Sorts by a key, items of equal keys keeping their order. O(n log n), the key worked out at each comparison.
pub fn sort_by_key<T, K: Ord>(items: &mut [T], mut key: impl FnMut(&T) -> K) {
    sort_by(items, |a, b| key(a).cmp(&key(b)));
}

/// Sorts. O(n log n).
pub fn sort<T: Ord>(items: &mut [T]) {
    sort_by(items, T::cmp);
}

/// Sorts a few items by a comparison, items that compare equal keeping their order, without moving them about in other
/// memory. O(n²) for up to sixteen, which is what meets at a place; more are sorted as [`sort_by`] does.
pub fn sort_few_by<T>(items: &mut [T], mut compare: impl FnMut(&T, &T) -> Ordering) {
    if items.len() > 16 {
        return sort_by(items, compare);
    }
    for end in 1..items.len() {
        let mut place = end;
        while place > 0 && compare(&items[place - 1], &items[place]).is_gt() {
            items.swap(place - 1, place);
            place -= 1;
        }
    }
}

/// Sorts keys, each with the number of what it leads to. O(n log n), as fast as the standard sort, which this is: long
/// lists that are sorted while a person draws are brought into these numbers.
pub fn sort_keyed(items: &mut [(u64, u32)]) {
    items.sort_unstable();
}

/// Sorts numbers, as [`sort_keyed`] does keys.
pub fn sort_numbers(items: &mut [u64]) {
    items.sort_unstable();
}

/// The places to be swapped, one pair after another, until `count` items are in order.
fn swaps(count: usize, compare: &mut dyn FnMut(usize, usize) -> Ordering) -> Vec<[usize; 2]> {
    if (1..count).all(|place| compare(place - 1, place).is_le()) {
        return Vec::new();
    }
    let mut order: Vec<usize> = (0..count).collect();
    order.sort_by(|a, b| compare(*a, *b));
    let mut destinations = vec![0; count];
    for (place, from) in order.into_iter().enumerate() {
        destinations[from] = place;
    }
    let mut swaps = Vec::with_capacity(count);
    for place in 0..count {
        while destinations[place] != place {
            let to = destinations[place];
            swaps.push([place, to]);
            destinations.swap(place, to);
        }
    }
    swaps
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn equals_the_standard_sort_and_is_stable() {
        let mut state = 7_u64;
        let mut next = || {
            state = state
                .wrapping_mul(6_364_136_223_846_793_005)
                .wrapping_add(1_442_695_040_888_963_407);
            state >> 33
        };
        for length in 0..200 {
            let items: Vec<(u64, usize)> = (0..length).map(|place| (next() % 17, place)).collect();
            let mut expected = items.clone();
            expected.sort_by_key(|(key, _)| *key);
            let mut sorted = items.clone();
            sort_by_key(&mut sorted, |(key, _)| *key);
            assert_eq!(sorted, expected);
            let mut few = items.clone();
            sort_few_by(&mut few, |a, b| a.0.cmp(&b.0));
            assert_eq!(few, expected);
            let mut whole = items;
            sort(&mut whole);
            assert_eq!(whole, expected);
        }
    }
}
