//! The one generator of random cases: seeded, so that every failing case can be met again.

/// The splitmix64 generator: all tests here are seeded.
/// Source: G. L. Steele, D. Lea, C. H. Flood, "Fast splittable pseudorandom number generators", OOPSLA 2014.
pub struct Random(pub u64);

impl Random {
    pub fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let z = (self.0 ^ (self.0 >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        let z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        z ^ (z >> 31)
    }

    /// A number in `low..=high`.
    pub fn within(&mut self, low: i32, high: i32) -> i32 {
        let count = (i64::from(high) - i64::from(low) + 1) as u64;
        (i64::from(low) + (self.next() % count) as i64) as i32
    }

    pub fn pick<'a, T>(&mut self, of: &'a [T]) -> &'a T {
        &of[(self.next() % of.len() as u64) as usize]
    }
}
