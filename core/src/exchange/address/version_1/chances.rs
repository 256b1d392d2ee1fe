//! How likely the next decision is, learned from those before it.
//!
//! Each decision is asked in several contexts at once. A context remembers in one slot how often it was answered with
//! yes; the slots' chances are joined on the logistic scale with weights that are learned too, apart for slots that have
//! seen little and much (M. V. Mahoney, "Adaptive weighing of context models for lossless data compression", Florida
//! Institute of Technology, technical report CS-2005-16, 2005). All in integers: the same on every machine.

/// Most contexts of one decision.
pub(super) const MOST_CONTEXTS: usize = 9;

/// Kinds of decisions that weigh their contexts apart.
pub(super) const SETS: usize = 4;

const SLOT_BITS: u32 = 18;
const LEVELS: usize = 6;
/// A slot that has seen so many answers learns no slower.
const MOST_SEEN: u8 = 48;
const FIRST_WEIGHTS: [i32; LEVELS] = [0, 15_000, 18_000, 19_000, 18_000, 16_000];
const LEARNING: i32 = 30;

/// What a slot that has seen so many answers moves toward the next, in 16,384ths of what is missing: about one part in
/// one more than it has seen.
const SHARES: [i32; MOST_SEEN as usize + 1] = {
    let mut shares = [0; MOST_SEEN as usize + 1];
    let mut seen = 0;
    while seen <= MOST_SEEN as usize {
        shares[seen] = 8 * 16_384 / (8 * seen as i32 + 9);
        seen += 1;
    }
    shares
};

/// The logistic function from −8 to 8 in halves, in 65,536ths.
const LOGISTIC: [i32; 33] = [
    22, 36, 60, 98, 162, 267, 439, 720, 1_179, 1_921, 3_108, 4_971, 7_812, 11_955, 17_625, 24_743, 32_768, 40_793,
    47_911, 53_581, 57_724, 60_565, 62_428, 63_615, 64_357, 64_816, 65_097, 65_269, 65_374, 65_438, 65_476, 65_500,
    65_514,
];

/// What one context has seen.
#[derive(Clone, Copy, Debug)]
struct Slot {
    /// Chance of a yes, in 65,536ths.
    chance: u16,
    /// Tells contexts apart that fall into the same slot.
    mark: u8,
    /// Answers seen.
    seen: u8,
}

/// All that was learned so far.
#[derive(Clone, Debug)]
pub(super) struct Chances {
    slots: Vec<Slot>,
    weights: [[[i32; LEVELS]; MOST_CONTEXTS]; SETS],
    /// Twice the logistic scale's inverse, by chances in 4,096ths.
    stretched: Vec<i16>,
    asked: [(usize, i32, usize); MOST_CONTEXTS],
    count: usize,
    joined: i32,
}

impl Chances {
    pub(super) fn new() -> Self {
        let mut stretched = Vec::with_capacity(4096);
        for place in -2047_i32..=2047 {
            let reached = (squash(place) >> 4) as usize;
            while stretched.len() <= reached {
                stretched.push(place as i16);
            }
        }
        stretched.resize(4096, 2047);
        let empty = Slot {
            chance: 32_768,
            mark: 0,
            seen: 0,
        };
        Self {
            slots: vec![empty; 1 << SLOT_BITS],
            weights: [[FIRST_WEIGHTS; MOST_CONTEXTS]; SETS],
            stretched,
            asked: [(0, 0, 0); MOST_CONTEXTS],
            count: 0,
            joined: 0,
        }
    }

    /// The chance of a yes in these contexts, in 65,536ths.
    pub(super) fn ask(&mut self, set: usize, contexts: impl Iterator<Item = u32>) -> u32 {
        self.count = 0;
        let mut sum = 0_i64;
        for context in contexts.take(MOST_CONTEXTS) {
            // Below the number of slots, since so many bits are left; sets, inputs and levels are below theirs.
            let place = (context >> (32 - SLOT_BITS)) as usize;
            let mark = context as u8;
            let slot = &mut self.slots[place];
            if slot.mark != mark {
                *slot = Slot {
                    chance: 32_768,
                    mark,
                    seen: 0,
                };
            }
            let stretched = i32::from(self.stretched[usize::from(slot.chance >> 4)]);
            let level = match slot.seen {
                0 => 0,
                1 => 1,
                2 => 2,
                3..=5 => 3,
                6..=20 => 4,
                _ => 5,
            };
            sum += i64::from(stretched) * i64::from(self.weights[set][self.count][level]);
            self.asked[self.count] = (place, stretched, level);
            self.count += 1;
        }
        self.joined = squash(((sum >> 16).clamp(-2047, 2047)) as i32);
        self.joined.clamp(16, 65_520) as u32
    }

    /// Learns the answer to what was asked last.
    pub(super) fn learn(&mut self, set: usize, bit: bool) {
        let truth = if bit { 65_535 } else { 0 };
        let error = (truth - self.joined) / 16 * LEARNING;
        for (input, (place, stretched, level)) in self.asked.iter().take(self.count).enumerate() {
            let weight = &mut self.weights[set][input][*level];
            *weight += (stretched * error + 0x8000) >> 16;
            let slot = &mut self.slots[*place];
            let step = ((truth - i32::from(slot.chance)) * SHARES[usize::from(slot.seen)]) >> 14;
            slot.chance = (i32::from(slot.chance) + step) as u16;
            slot.seen = (slot.seen + 1).min(MOST_SEEN);
        }
    }
}

/// The logistic function of a place in 256ths, in 65,536ths.
fn squash(place: i32) -> i32 {
    let from = place + 2048;
    let (whole, part) = ((from >> 7) as usize, from & 127);
    (LOGISTIC[whole] * (128 - part) + LOGISTIC[(whole + 1).min(32)] * part + 64) >> 7
}
