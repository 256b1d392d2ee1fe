//! Results kept from one round of asking to the next, under all they depend on.
//!
//! What a result depends on is written down as a list of integers and compared exactly. Rounds ask for nearly the same
//! in nearly the same order, so a key is looked for first where the last was found, and only else by its hash.

/// Results under their keys.
#[derive(Clone, Debug)]
pub(crate) struct Kept<V> {
    held: Round<V>,
    asked: Round<V>,
    /// Where the next key is looked for first.
    next: usize,
}

/// What one round asked for, in order.
#[derive(Clone, Debug)]
struct Round<V> {
    keys: Keys,
    /// None where a value has gone on to the round after.
    values: Vec<Option<V>>,
}

impl<V> Default for Kept<V> {
    fn default() -> Self {
        let round = || Round {
            keys: Keys::default(),
            values: Vec::new(),
        };
        Self {
            held: round(),
            asked: round(),
            next: 0,
        }
    }
}

impl<V: Clone> Kept<V> {
    /// The result of a key that the last round asked for too, or what `work` gives. A round that asks for a key twice
    /// works it twice.
    pub fn get_or(&mut self, key: &[i32], work: impl FnOnce() -> V) -> V {
        let found = self.held.keys.find(key, self.next);
        let (hash, held) = match found {
            Some((place, hash)) => {
                self.next = place + 1;
                (hash, self.held.values[place].take())
            }
            None => (hash_of(key), None),
        };
        self.asked.keys.push(key, hash);
        let value = held.unwrap_or_else(work);
        self.asked.values.push(Some(value.clone()));
        value
    }

    /// Ends a round: what it did not ask for is forgotten.
    pub fn end_round(&mut self) {
        std::mem::swap(&mut self.held, &mut self.asked);
        self.held.keys.index();
        self.asked.keys.clear();
        self.asked.values.clear();
        self.next = 0;
    }
}

/// Keys one after another, and a table to find them by.
#[derive(Clone, Debug, Default)]
struct Keys {
    words: Vec<i32>,
    /// Where each key ends in `words`, and its hash.
    ends: Vec<(u32, u32)>,
    /// One more than the place of a key, at its hash or the next free place after it; 0 where none is. A power of two
    /// long, at least twice as long as there are keys.
    table: Vec<u32>,
}

impl Keys {
    fn key(&self, place: usize) -> Option<&[i32]> {
        let (end, _) = *self.ends.get(place)?;
        let start = place.checked_sub(1).map_or(0, |before| self.ends[before].0);
        self.words.get(start as usize..end as usize)
    }

    fn push(&mut self, key: &[i32], hash: u32) {
        self.words.extend_from_slice(key);
        self.ends.push((self.words.len() as u32, hash));
    }

    fn clear(&mut self) {
        self.words.clear();
        self.ends.clear();
    }

    fn index(&mut self) {
        let length = (self.ends.len() * 2).next_power_of_two();
        self.table.clear();
        self.table.resize(length, 0);
        for (place, (_, hash)) in (1..).zip(&self.ends) {
            let mut at = *hash as usize & (length - 1);
            while self.table[at] != 0 {
                at = (at + 1) & (length - 1);
            }
            self.table[at] = place;
        }
    }

    /// The place of a key and its hash, tried at `first` before all others.
    fn find(&self, key: &[i32], first: usize) -> Option<(usize, u32)> {
        if self.key(first) == Some(key) {
            return Some((first, self.ends[first].1));
        }
        let hash = hash_of(key);
        let mut at = hash as usize & self.table.len().checked_sub(1)?;
        while let Some(place) = self.table[at].checked_sub(1) {
            let place = place as usize;
            if self.ends[place].1 == hash && self.key(place) == Some(key) {
                return Some((place, hash));
            }
            at = (at + 1) & (self.table.len() - 1);
        }
        None
    }
}

/// The same for equal keys on every machine.
fn hash_of(key: &[i32]) -> u32 {
    let mixed = key.iter().fold(0_u64, |hash, word| {
        (hash.rotate_left(5) ^ u64::from(word.cast_unsigned())).wrapping_mul(0x9E37_79B9_7F4A_7C15)
    });
    (mixed >> 32) as u32
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Each key's value is its sum; how often one was worked out is counted.
    fn ask(kept: &mut Kept<i64>, keys: &[Vec<i32>]) -> usize {
        let mut worked = 0;
        for key in keys {
            let sum = || key.iter().map(|word| i64::from(*word)).sum();
            let value = kept.get_or(key, || {
                worked += 1;
                sum()
            });
            assert_eq!(value, sum());
        }
        kept.end_round();
        worked
    }

    #[test]
    fn a_round_works_out_only_what_the_last_did_not_ask_for() {
        let mut kept = Kept::default();
        let mut keys: Vec<Vec<i32>> = (0..500).map(|number| vec![number, -number, number % 7]).collect();
        keys.push(Vec::new());
        assert_eq!(ask(&mut kept, &keys), 501);
        assert_eq!(ask(&mut kept, &keys), 0);
        keys.reverse();
        assert_eq!(ask(&mut kept, &keys), 0, "in any order");
        keys.truncate(400);
        keys.insert(200, vec![1]);
        keys.push(vec![1, 2]);
        assert_eq!(ask(&mut kept, &keys), 2);
        assert_eq!(ask(&mut kept, &keys[..1]), 0);
        assert_eq!(ask(&mut kept, &keys), 401, "what was not asked for is forgotten");
    }

    #[test]
    fn keys_of_one_hash_are_told_apart() {
        let mut keys = Keys::default();
        for key in [[1, 2], [3, 4], [5, 6]] {
            keys.push(&key, 7);
        }
        keys.index();
        // A key is compared as a whole wherever its hash leads.
        assert_eq!(keys.find(&[3, 4], 1), Some((1, 7)));
        assert_eq!(
            keys.find(&[3, 4], 0).map(|(place, _)| place),
            None,
            "its own hash is another"
        );
        let hash = hash_of(&[9, 9]);
        let mut keys = Keys::default();
        for key in [[1, 2], [9, 9], [5, 6]] {
            keys.push(&key, hash);
        }
        keys.index();
        assert_eq!(keys.find(&[9, 9], 0), Some((1, hash)));
        assert_eq!(keys.find(&[5, 7], 0), None);
    }
}
