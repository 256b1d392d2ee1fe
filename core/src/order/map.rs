//! Maps and sets kept in the order of their keys.
//!
//! A flat, sorted list by key: putting in or taking out at the end costs nothing, in the middle a move of what comes
//! after. For what a plan holds and what is named, not for tens of thousands of keys put in in no order. Tree maps are
//! written out anew for every kind of key and value, four kilobytes each time, and the page has to be loaded over a
//! network; these take a few hundred bytes.

use std::borrow::Borrow;
use std::fmt;
use std::ops::{Deref, DerefMut, Index};

use litemap::LiteMap;

/// A map in the order of its keys. Looking up: O(log n).
#[derive(Clone, PartialEq, Eq, PartialOrd, Ord)]
pub struct OrderedMap<K, V>(LiteMap<K, V>);

/// A set in order. Looking up: O(log n).
#[derive(Clone, PartialEq, Eq, PartialOrd, Ord)]
pub struct OrderedSet<T>(LiteMap<T, ()>);

impl<K, V> OrderedMap<K, V> {
    /// Without entries.
    #[must_use]
    pub const fn new() -> Self {
        Self(LiteMap::new())
    }

    /// The values, to be changed, by their keys.
    pub fn values_mut(&mut self) -> impl DoubleEndedIterator<Item = &mut V> {
        self.0.iter_mut().map(|(_, value)| value)
    }

    /// The values, by their keys.
    pub fn into_values(self) -> impl DoubleEndedIterator<Item = V> {
        self.0.into_iter().map(|(_, value)| value)
    }

    /// The keys in order.
    pub fn into_keys(self) -> impl DoubleEndedIterator<Item = K> {
        self.0.into_iter().map(|(key, _)| key)
    }
}

impl<T: Ord> OrderedSet<T> {
    /// Without items.
    #[must_use]
    pub const fn new() -> Self {
        Self(LiteMap::new())
    }

    /// Puts one in; `false` when it was there.
    pub fn insert(&mut self, item: T) -> bool {
        self.0.insert(item, ()).is_none()
    }

    /// Takes one out; `false` when it was not there.
    pub fn remove<Q: Ord + ?Sized>(&mut self, item: &Q) -> bool
    where
        T: Borrow<Q>,
    {
        self.0.remove(item).is_some()
    }

    /// Whether it is there.
    #[must_use]
    pub fn contains<Q: Ord + ?Sized>(&self, item: &Q) -> bool
    where
        T: Borrow<Q>,
    {
        self.0.contains_key(item)
    }

    /// The least.
    #[must_use]
    pub fn first(&self) -> Option<&T> {
        self.0.first().map(|(item, ())| item)
    }

    /// The greatest.
    #[must_use]
    pub fn last(&self) -> Option<&T> {
        self.0.last().map(|(item, ())| item)
    }

    /// How many there are.
    #[must_use]
    pub fn len(&self) -> usize {
        self.0.len()
    }

    /// Whether there is none.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// In order.
    pub fn iter(&self) -> impl DoubleEndedIterator<Item = &T> {
        self.0.keys()
    }

    /// Keeps those for which `is_kept` holds.
    pub fn retain(&mut self, mut is_kept: impl FnMut(&T) -> bool) {
        self.0.retain(|item, ()| is_kept(item));
    }
}

impl<K, V> Deref for OrderedMap<K, V> {
    type Target = LiteMap<K, V>;

    fn deref(&self) -> &Self::Target {
        &self.0
    }
}

impl<K, V> DerefMut for OrderedMap<K, V> {
    fn deref_mut(&mut self) -> &mut Self::Target {
        &mut self.0
    }
}

/// The value of a key that is known to be there, as of a tree map.
impl<K: Ord + Borrow<Q>, V, Q: Ord + ?Sized> Index<&Q> for OrderedMap<K, V> {
    type Output = V;

    #[expect(
        clippy::expect_used,
        reason = "indexing says that the key is there, as with every map"
    )]
    fn index(&self, key: &Q) -> &V {
        self.0.get(key).expect("the key is in the map")
    }
}

impl<K, V> Default for OrderedMap<K, V> {
    fn default() -> Self {
        Self::new()
    }
}

impl<T: Ord> Default for OrderedSet<T> {
    fn default() -> Self {
        Self::new()
    }
}

impl<K: fmt::Debug, V: fmt::Debug> fmt::Debug for OrderedMap<K, V> {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.debug_map().entries(self.0.iter()).finish()
    }
}

impl<T: fmt::Debug> fmt::Debug for OrderedSet<T> {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.debug_set().entries(self.0.keys()).finish()
    }
}

/// Put in one by one, of equal keys the last, where collecting into the flat map would write out a sort.
impl<K: Ord, V> FromIterator<(K, V)> for OrderedMap<K, V> {
    fn from_iter<I: IntoIterator<Item = (K, V)>>(pairs: I) -> Self {
        let mut map = Self::new();
        map.extend(pairs);
        map
    }
}

impl<K: Ord, V> Extend<(K, V)> for OrderedMap<K, V> {
    fn extend<I: IntoIterator<Item = (K, V)>>(&mut self, pairs: I) {
        for (key, value) in pairs {
            self.0.insert(key, value);
        }
    }
}

impl<T: Ord> FromIterator<T> for OrderedSet<T> {
    fn from_iter<I: IntoIterator<Item = T>>(items: I) -> Self {
        let mut set = Self::new();
        set.extend(items);
        set
    }
}

impl<T: Ord> Extend<T> for OrderedSet<T> {
    fn extend<I: IntoIterator<Item = T>>(&mut self, items: I) {
        for item in items {
            self.insert(item);
        }
    }
}

impl<'a, T: Ord + Copy + 'a> Extend<&'a T> for OrderedSet<T> {
    fn extend<I: IntoIterator<Item = &'a T>>(&mut self, items: I) {
        self.extend(items.into_iter().copied());
    }
}

impl<K: Ord, V, const N: usize> From<[(K, V); N]> for OrderedMap<K, V> {
    fn from(pairs: [(K, V); N]) -> Self {
        pairs.into_iter().collect()
    }
}

impl<T: Ord, const N: usize> From<[T; N]> for OrderedSet<T> {
    fn from(items: [T; N]) -> Self {
        items.into_iter().collect()
    }
}

impl<K, V> IntoIterator for OrderedMap<K, V> {
    type Item = (K, V);
    type IntoIter = std::vec::IntoIter<(K, V)>;

    fn into_iter(self) -> Self::IntoIter {
        self.0.into_tuple_vec().into_iter()
    }
}

impl<'a, K, V> IntoIterator for &'a OrderedMap<K, V> {
    type Item = (&'a K, &'a V);
    type IntoIter = <&'a LiteMap<K, V> as IntoIterator>::IntoIter;

    fn into_iter(self) -> Self::IntoIter {
        self.0.iter()
    }
}

impl<'a, K, V> IntoIterator for &'a mut OrderedMap<K, V> {
    type Item = (&'a K, &'a mut V);
    type IntoIter = <&'a mut LiteMap<K, V> as IntoIterator>::IntoIter;

    fn into_iter(self) -> Self::IntoIter {
        self.0.iter_mut()
    }
}

impl<T> IntoIterator for OrderedSet<T> {
    type Item = T;
    type IntoIter = std::iter::Map<std::vec::IntoIter<(T, ())>, fn((T, ())) -> T>;

    fn into_iter(self) -> Self::IntoIter {
        self.0.into_tuple_vec().into_iter().map(|(item, ())| item)
    }
}

impl<'a, T> IntoIterator for &'a OrderedSet<T> {
    type Item = &'a T;
    type IntoIter = std::iter::Map<<&'a LiteMap<T, ()> as IntoIterator>::IntoIter, fn((&'a T, &'a ())) -> &'a T>;

    fn into_iter(self) -> Self::IntoIter {
        self.0.iter().map(|(item, ())| item)
    }
}

#[cfg(test)]
mod tests {
    use std::collections::{BTreeMap, BTreeSet};

    use super::*;

    #[test]
    fn equals_the_tree_map_and_the_tree_set_after_any_steps() {
        let (mut map, mut set) = (OrderedMap::new(), OrderedSet::new());
        let (mut tree, mut tree_set) = (BTreeMap::new(), BTreeSet::new());
        let mut state = 11_u64;
        for step in 0..2_000_u64 {
            state = state
                .wrapping_mul(6_364_136_223_846_793_005)
                .wrapping_add(1_442_695_040_888_963_407);
            let key = (state >> 33) % 97;
            if state >> 63 == 0 {
                assert_eq!(map.insert(key, step), tree.insert(key, step));
                assert_eq!(set.insert(key), tree_set.insert(key));
            } else {
                assert_eq!(map.remove(&key), tree.remove(&key));
                assert_eq!(set.remove(&key), tree_set.remove(&key));
            }
            assert_eq!((map.len(), set.len()), (tree.len(), tree_set.len()));
            assert_eq!(map.contains_key(&key), tree.contains_key(&key));
            assert_eq!(set.contains(&key), tree_set.contains(&key));
        }
        map.retain(|key, _| key % 3 > 0);
        tree.retain(|key, _| key % 3 > 0);
        assert!(map.iter().eq(tree.iter()) && map.values_mut().eq(tree.values_mut()));
        assert_eq!((set.first(), set.last()), (tree_set.first(), tree_set.last()));
        assert!(set.iter().eq(tree_set.iter()) && (&set).into_iter().eq(&tree_set));
        assert!(set.into_iter().eq(tree_set) && map.into_keys().eq(tree.into_keys()));
    }

    #[test]
    fn of_equal_keys_the_last_counts() {
        let map = OrderedMap::from([(2, 'a'), (1, 'b'), (2, 'c')]);
        assert_eq!(format!("{map:?}"), "{1: 'b', 2: 'c'}");
        assert_eq!(format!("{:?}", OrderedSet::from([3, 1, 3])), "{1, 3}");
    }
}
