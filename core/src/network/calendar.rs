//! A queue for costs that only grow: a ring of buckets of equal width, the current one held as a small heap.
//!
//! Nothing put in may cost less than what was taken out last, nor more than the ring's width above it; both hold for
//! a shortest-path search, where a step costs at most the network's costliest link. A search's front is spread over
//! about one link's cost, so with a few hundred buckets across that, each holds a handful of entries, and putting one
//! in is a push. Entries leave in exact order of cost, whatever the buckets' width, so the worst case is that of a
//! binary heap. Source: R. B. Dial, "Algorithm 360: shortest-path forest with topological ordering", Communications
//! of the ACM 12, 1969 (from memory).

/// Buckets per mean link cost: more make each heap smaller, fewer let more rows be fetched side by side. By timing.
const BUCKETS_PER_MEAN: u64 = 16;

/// The most buckets a ring has, so that one very costly link does not make it large.
const MOST_BUCKETS: u64 = 1 << 13;

/// Bits of an entry that hold the node; the others hold the cost within its bucket.
const NODE_BITS: u32 = 32;

/// The queue. Empty between searches; keeps its memory.
#[derive(Clone, Debug, Default)]
pub(super) struct Calendar {
    /// A bucket spans `2^shift` units of cost.
    shift: u32,
    /// Number of the current bucket, counted from cost zero.
    current: u64,
    /// What the current bucket still holds: a heap, least first.
    heap: Vec<u64>,
    /// Every other bucket, by the low bits of its number.
    ring: Vec<Vec<u64>>,
    /// One bit for each bucket of the ring that holds something.
    occupied: Vec<u64>,
}

impl Calendar {
    /// Makes the ring fit steps of `mean_cost` on average and `most_cost` at most, and empties it.
    pub fn prepare(&mut self, mean_cost: u64, most_cost: u64) {
        self.heap.clear();
        for (word, bits) in self.occupied.iter_mut().enumerate() {
            while *bits != 0 {
                let bucket = word * 64 + bits.trailing_zeros() as usize;
                self.ring[bucket].clear();
                *bits &= *bits - 1;
            }
        }
        self.current = 0;
        let wide_enough = |shift: u32| (most_cost >> shift) + 2 <= MOST_BUCKETS;
        // At 32 bits the costliest link spans 2^12 buckets, so the loop ends before.
        self.shift = (mean_cost / BUCKETS_PER_MEAN).max(1).ilog2().min(u64::BITS - NODE_BITS);
        while !wide_enough(self.shift) {
            self.shift += 1;
        }
        let buckets = ((most_cost >> self.shift) + 2).next_power_of_two().max(64) as usize;
        if self.ring.len() != buckets {
            self.ring.resize(buckets, Vec::new());
            self.occupied = vec![0; buckets / 64];
        }
    }

    /// Puts in a node at a cost.
    #[inline(always)]
    pub fn push(&mut self, cost: u64, node: u32) {
        let bucket = cost >> self.shift;
        let within = cost & ((1 << self.shift) - 1);
        let entry = (within << NODE_BITS) | u64::from(node);
        if bucket == self.current {
            push_heap(&mut self.heap, entry);
        } else {
            let slot = bucket as usize & (self.ring.len() - 1);
            self.ring[slot].push(entry);
            self.occupied[slot / 64] |= 1 << (slot % 64);
        }
    }

    /// Takes out the least cost and its node (the lowest of several) among the entries of the current bucket.
    #[inline(always)]
    pub fn pop_current(&mut self) -> Option<(u64, u32)> {
        let entry = pop_heap(&mut self.heap)?;
        Some(((self.current << self.shift) | (entry >> NODE_BITS), entry as u32))
    }

    /// Nodes of the entries of the current bucket.
    pub fn current_nodes(&self) -> impl Iterator<Item = u32> + '_ {
        self.heap.iter().map(|&entry| entry as u32)
    }

    /// The least cost the next occupied bucket can hold; `None` when every bucket but the current is empty.
    pub fn next_bucket_cost(&self) -> Option<u64> {
        let mask = self.ring.len() - 1;
        let start = (self.current as usize).wrapping_add(1) & mask;
        let words = self.occupied.len();
        // The first word is looked at twice: its high bits first, its low bits last.
        for step in 0..=words {
            let word = (start / 64 + step) % words;
            let mut bits = self.occupied[word];
            if step == 0 {
                bits &= u64::MAX << (start % 64);
            } else if step == words {
                bits &= !(u64::MAX << (start % 64));
            }
            if bits != 0 {
                let slot = word * 64 + bits.trailing_zeros() as usize;
                let ahead = (slot + self.ring.len() - start) & mask;
                return Some((self.current + 1 + ahead as u64) << self.shift);
            }
        }
        None
    }

    /// Whether a cost belongs into the current bucket.
    pub fn is_current(&self, cost: u64) -> bool {
        cost >> self.shift == self.current
    }

    /// Makes the bucket of `cost` the current one; the current one must be empty, and so every one between.
    pub fn advance_to(&mut self, cost: u64) {
        self.current = cost >> self.shift;
        let slot = self.current as usize & (self.ring.len() - 1);
        if self.occupied[slot / 64] >> (slot % 64) & 1 == 1 {
            self.occupied[slot / 64] &= !(1 << (slot % 64));
            std::mem::swap(&mut self.heap, &mut self.ring[slot]);
            make_heap(&mut self.heap);
        }
    }
}

/// Puts an entry into a binary heap, least first.
fn push_heap(heap: &mut Vec<u64>, entry: u64) {
    heap.push(entry);
    let mut at = heap.len() - 1;
    while at > 0 {
        let parent = (at - 1) / 2;
        if heap[parent] <= entry {
            break;
        }
        heap[at] = heap[parent];
        at = parent;
    }
    heap[at] = entry;
}

/// Takes the least entry out of a binary heap.
#[inline]
fn pop_heap(heap: &mut Vec<u64>) -> Option<u64> {
    let last = heap.pop()?;
    if heap.is_empty() {
        return Some(last);
    }
    let least = heap[0];
    sink(heap, 0, last);
    Some(least)
}

/// Puts `entry` where it belongs at or below `at`, whose own entry is given up.
fn sink(heap: &mut [u64], mut at: usize, entry: u64) {
    loop {
        let mut child = 2 * at + 1;
        if child >= heap.len() {
            break;
        }
        if child + 1 < heap.len() && heap[child + 1] < heap[child] {
            child += 1;
        }
        if heap[child] >= entry {
            break;
        }
        heap[at] = heap[child];
        at = child;
    }
    heap[at] = entry;
}

/// Orders a slice as a binary heap.
fn make_heap(heap: &mut [u64]) {
    for at in (0..heap.len() / 2).rev() {
        sink(heap, at, heap[at]);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Pseudorandom steps by a fixed multiplier.
    fn next(state: &mut u64) -> u64 {
        *state = state
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        *state >> 33
    }

    #[test]
    fn entries_leave_in_order_of_cost_for_any_widths() {
        for (mean, most) in [
            (1, 1),
            (10, 5_000),
            (100_000, 120_000),
            (50, 1 << 44),
            (1 << 40, 1 << 44),
        ] {
            let mut calendar = Calendar::default();
            calendar.prepare(mean, most);
            let mut state = mean ^ most;
            let mut open: Vec<(u64, u32)> = Vec::new();
            let put = |calendar: &mut Calendar, open: &mut Vec<(u64, u32)>, cost, node| {
                calendar.push(cost, node);
                open.push((cost, node));
            };
            put(&mut calendar, &mut open, 0, 0);
            for round in 0..3_000_u32 {
                let taken = loop {
                    if let Some(taken) = calendar.pop_current() {
                        break Some(taken);
                    }
                    match calendar.next_bucket_cost() {
                        Some(cost) => calendar.advance_to(cost),
                        None => break None,
                    }
                };
                let expected = open.iter().copied().min();
                assert_eq!(taken, expected, "mean {mean}, most {most}, round {round}");
                let Some((cost, _)) = taken else { break };
                let place = open.iter().position(|entry| Some(*entry) == taken).expect("was put in");
                open.swap_remove(place);
                if round < 1_500 {
                    for _ in 0..next(&mut state) % 4 {
                        let step = if next(&mut state).is_multiple_of(3) {
                            most
                        } else {
                            mean.min(most)
                        };
                        put(&mut calendar, &mut open, cost + 1 + next(&mut state) % step, round);
                    }
                    if open.is_empty() {
                        put(&mut calendar, &mut open, cost + most, round);
                    }
                }
            }
            calendar.prepare(mean, most);
            assert_eq!(calendar.next_bucket_cost(), None);
        }
    }
}
