//! Yes-or-no decisions as bytes, each in as many bits as it is surprising.
//!
//! A binary arithmetic coder in integers of 32 bits: the interval of all that could still be written is parted by the
//! chance of each decision (I. H. Witten, R. M. Neal, J. G. Cleary, "Arithmetic coding for data compression",
//! *Communications of the ACM* 30, 1987). Chances are in 65,536ths, between 1 and 65,535.

/// The interval, and the bytes that name a place in it.
#[derive(Clone, Debug)]
pub(super) struct Arithmetic {
    low: u32,
    high: u32,
    bytes: Vec<u8>,
    /// While reading: the next byte and the four that were read last.
    reading: Option<(usize, u32)>,
}

impl Arithmetic {
    /// Nothing written yet.
    pub(super) const fn writing() -> Self {
        Self {
            low: 0,
            high: u32::MAX,
            bytes: Vec::new(),
            reading: None,
        }
    }

    /// At the beginning of these bytes; behind their end stand zeros without end.
    pub(super) fn reading(bytes: Vec<u8>) -> Self {
        let window = (0..4).fold(0, |window, place| window << 8 | byte_at(&bytes, place));
        Self {
            low: 0,
            high: u32::MAX,
            bytes,
            reading: Some((4, window)),
        }
    }

    /// Writes `bit`, or gives the one that was written with the same chance of being set.
    pub(super) fn bit(&mut self, chance_of_set: u32, bit: bool) -> bool {
        let share = (u64::from(self.high - self.low) * u64::from(chance_of_set)) >> 16;
        let middle = self.low + share as u32;
        let bit = self.reading.map_or(bit, |(_, window)| window <= middle);
        if bit {
            self.high = middle;
        } else {
            self.low = middle + 1;
        }
        while (self.low ^ self.high) >> 24 == 0 {
            match &mut self.reading {
                Some((place, window)) => {
                    *window = *window << 8 | byte_at(&self.bytes, *place);
                    *place += 1;
                }
                None => self.bytes.push((self.high >> 24) as u8),
            }
            self.low <<= 8;
            self.high = self.high << 8 | 0xff;
        }
        bit
    }

    /// The bytes written, as few as tell the last decision.
    pub(super) fn finish(mut self) -> Vec<u8> {
        for open_bits in [32, 24, 16, 8, 0] {
            let rest = ((1_u64 << open_bits) - 1) as u32;
            let Some(place) = self.low.checked_add(rest).map(|place| place & !rest) else {
                continue;
            };
            if place <= self.high {
                self.bytes.extend(place.to_be_bytes());
                break;
            }
        }
        while self.bytes.last() == Some(&0) {
            self.bytes.pop();
        }
        self.bytes
    }
}

fn byte_at(bytes: &[u8], place: usize) -> u32 {
    bytes.get(place).copied().map_or(0, u32::from)
}
