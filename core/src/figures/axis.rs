//! Named axes and the places in a table over them.
//!
//! A table is a flat list of cells over an ordered list of axes, the last axis fastest. Tables over different axes are
//! brought together by axis: a table without an axis has the same value all along it.

use std::sync::Arc;

use serde::Serialize;

/// One place along an axis.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
pub struct Entry {
    /// Stable id: `townhouse`, `january`.
    pub id: String,
    /// Words for the page.
    pub title: String,
}

impl Entry {
    /// An entry named `id`, read as `title`.
    #[must_use]
    pub fn new(id: impl Into<String>, title: impl Into<String>) -> Self {
        Self {
            id: id.into(),
            title: title.into(),
        }
    }
}

/// The entries of an axis, in order.
#[derive(Clone, Debug, PartialEq)]
pub enum Entries {
    /// Each with an id and words of its own.
    Named(Arc<[Entry]>),
    /// Places on the drawing.
    Places(Arc<Places>),
}

/// Places on the drawing, numbered from one. There are thousands, and few are ever read: an entry is made of a place
/// when it is asked for.
#[derive(Clone, Debug)]
pub struct Places {
    /// What stands before the number in an entry's id.
    pub word: &'static str,
    /// Where they are, as whoever tells them understands it.
    pub at: Vec<[i32; 2]>,
    /// A place in words.
    pub told: fn([i32; 2]) -> String,
}

impl PartialEq for Places {
    /// Words follow from where a place is.
    fn eq(&self, other: &Self) -> bool {
        self.word == other.word && self.at == other.at
    }
}

impl From<Vec<Entry>> for Entries {
    fn from(entries: Vec<Entry>) -> Self {
        Self::Named(entries.into())
    }
}

impl Entries {
    /// How many there are.
    #[must_use]
    pub fn count(&self) -> usize {
        match self {
            Self::Named(entries) => entries.len(),
            Self::Places(places) => places.at.len(),
        }
    }

    /// The entry at a place along the axis.
    #[must_use]
    pub fn get(&self, place: usize) -> Option<Entry> {
        match self {
            Self::Named(entries) => entries.get(place).cloned(),
            Self::Places(places) => {
                let id = [places.word, "_", &(place + 1).to_string()].concat();
                places.at.get(place).map(|at| Entry::new(id, (places.told)(*at)))
            }
        }
    }
}

/// Which axis of a graph.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct AxisIndex(pub(crate) u32);

impl AxisIndex {
    pub(crate) const fn at(self) -> usize {
        self.0 as usize
    }
}

/// An axis as declared. The entries of an open axis arrive with the leaf values.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Axis {
    /// Stable id: `building_type`.
    pub id: String,
    /// Words: `building type`.
    pub title: String,
    /// The entries when they never change (months); `None` for an open axis.
    pub fixed: Option<Vec<Entry>>,
    /// Where each of those entries is laid down: title, section, edition; empty where that is nowhere.
    pub sources: Vec<String>,
}

impl Axis {
    /// Where an entry stands on an axis whose entries never change; `None` on an open axis.
    #[must_use]
    pub fn place_of(&self, entry: &str) -> Option<usize> {
        self.fixed.as_ref()?.iter().position(|held| held.id == entry)
    }
}

/// Number of cells of a table whose axes have these lengths; 1 for no axes.
#[must_use]
pub fn cell_count(lengths: &[usize]) -> usize {
    lengths.iter().product()
}

/// How far a table's cells lie apart along each of `along`: 0 for an axis the table does not have.
///
/// `axes` and `lengths` belong to the table; cell `Σ index × stride` is then the one at `index` along `along`.
#[must_use]
pub fn strides(axes: &[AxisIndex], lengths: &[usize], along: &[AxisIndex]) -> Vec<usize> {
    let mut own = vec![0; axes.len()];
    let mut step = 1;
    for (place, length) in lengths.iter().enumerate().rev() {
        own[place] = step;
        step *= length;
    }
    along
        .iter()
        .map(|axis| {
            axes.iter()
                .position(|own_axis| own_axis == axis)
                .map_or(0, |at| own[at])
        })
        .collect()
}

/// Calls `visit` with every index over `lengths`, the last fastest.
pub fn for_each_index(lengths: &[usize], mut visit: impl FnMut(&[usize])) {
    if lengths.contains(&0) {
        return;
    }
    let mut index = vec![0; lengths.len()];
    loop {
        visit(&index);
        let mut place = lengths.len();
        loop {
            if place == 0 {
                return;
            }
            place -= 1;
            index[place] += 1;
            if index[place] < lengths[place] {
                break;
            }
            index[place] = 0;
        }
    }
}

/// The cell at `index` of a table with these strides.
#[must_use]
pub fn cell_at(index: &[usize], strides: &[usize]) -> usize {
    index.iter().zip(strides).map(|(place, stride)| place * stride).sum()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_table_without_an_axis_is_the_same_along_it() {
        let (month, building_type) = (AxisIndex(0), AxisIndex(1));
        // A table over month × type (12 × 3) read along type, month; a table over type alone; a single number.
        assert_eq!(
            strides(&[month, building_type], &[12, 3], &[building_type, month]),
            [1, 3]
        );
        assert_eq!(strides(&[building_type], &[3], &[building_type, month]), [1, 0]);
        assert_eq!(strides(&[], &[], &[building_type, month]), [0, 0]);
    }

    #[test]
    fn indices_run_with_the_last_axis_fastest() {
        let mut seen = Vec::new();
        for_each_index(&[2, 2], |index| seen.push((index[0], index[1])));
        assert_eq!(seen, [(0, 0), (0, 1), (1, 0), (1, 1)]);
        let mut count = 0;
        for_each_index(&[], |_| count += 1);
        assert_eq!(count, 1, "a single number has one cell");
        for_each_index(&[3, 0], |_| count += 1);
        assert_eq!(count, 1, "an axis without entries has none");
    }
}
